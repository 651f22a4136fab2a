package main

import (
	"io"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/example"
)

// completeFile offers design files and the examples for the one argument.
func completeFile(_ *cobra.Command, args []string, toComplete string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var words []string
	for _, n := range example.Names() {
		words = append(words, examplePrefix+n)
	}
	return words, cobra.ShellCompDirectiveDefault
}

// completeVariant offers the variants of the file that stands in the call.
func completeVariant(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if file := quietly(args); file != nil {
		return append(file.Variants(), everyVariant), cobra.ShellCompDirectiveNoFileComp
	}
	return nil, cobra.ShellCompDirectiveNoFileComp
}

// completeCase offers the load cases of the file that stands in the call.
func completeCase(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	var words []string
	if file := quietly(args); file != nil {
		if d, list := file.Variant(""); !list.HasErrors() && d.Kinematics != nil {
			for _, c := range d.Kinematics.Cases {
				words = append(words, c.Name)
			}
		}
	}
	return words, cobra.ShellCompDirectiveNoFileComp
}

// quietly reads the design file of a half-written call, nil where that is not
// possible: completion has nowhere to tell of mistakes.
func quietly(args []string) *design.File {
	if len(args) == 0 || args[0] == "-" {
		return nil
	}
	a := &app{err: io.Discard}
	in, err := designArg(args[0])
	if err != nil {
		return nil
	}
	called, src, err := a.readSource(in.file)
	if err != nil {
		return nil
	}
	file, list := design.Parse(called, src)
	if list.HasErrors() {
		return nil
	}
	return file
}

// completeWords offers fixed words.
func completeWords(words []string) cobra.CompletionFunc {
	return cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp)
}
