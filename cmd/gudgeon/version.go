package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// newVersion builds gudgeon version.
func newVersion(a *app) *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "which build this is",
		GroupID: groupHelp,
		Args:    noArguments,
		RunE: func(*cobra.Command, []string) error {
			version := "(built from source)"
			if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
				version = info.Main.Version
			}
			return a.print(fmt.Appendf(nil, "gudgeon %s, %s %s/%s\n", version, runtime.Version(), runtime.GOOS, runtime.GOARCH))
		},
	}
}
