package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// flagGroup is the annotation that puts a flag under a heading of the help.
const flagGroup = "group"

// group puts the named flags of cmd under a heading, in the order given.
func group(cmd *cobra.Command, heading string, flags ...string) {
	for _, name := range flags {
		if err := cmd.Flags().SetAnnotation(name, flagGroup, []string{heading}); err != nil {
			panic("gudgeon: " + err.Error()) // the flag is not there
		}
	}
	if cmd.Annotations == nil {
		cmd.Annotations = map[string]string{}
	}
	cmd.Annotations[flagGroup] += heading + "\x00" + strings.Join(flags, ",") + "\x01"
}

// help writes what a command does, examples that run as they stand, then
// commands or flags by use.
func help(cmd *cobra.Command, _ []string) {
	cmd.InitDefaultHelpFlag()
	cmd.InheritedFlags() // brings the flags of every command into cmd.Flags
	w := cmd.OutOrStdout()
	fmt.Fprintf(w, "%s: %s\n", cmd.CommandPath(), cmd.Short)
	if cmd.Long != "" {
		fmt.Fprintf(w, "\n%s\n", strings.TrimSpace(cmd.Long))
	}
	fmt.Fprintf(w, "\n  %s\n", useLine(cmd))
	if cmd.Example != "" {
		fmt.Fprintf(w, "\nExamples\n")
		for line := range strings.SplitSeq(cmd.Example, "\n") {
			fmt.Fprintf(w, "  %s\n", line)
		}
	}
	helpCommands(w, cmd)
	helpFlags(w, cmd)
	if !cmd.HasParent() {
		helpExitCodes(w)
		fmt.Fprintf(w, "\nMore on a command: gudgeon COMMAND --help\n")
	}
}

func useLine(cmd *cobra.Command) string {
	if cmd.HasAvailableSubCommands() {
		return cmd.CommandPath() + " COMMAND"
	}
	line := cmd.UseLine()
	return strings.Replace(line, " [flags]", "", 1) + " [flags]"
}

func helpCommands(w io.Writer, cmd *cobra.Command) {
	width := 0
	for _, c := range cmd.Commands() {
		width = max(width, len(c.Name()))
	}
	for _, g := range append(cmd.Groups(), &cobra.Group{Title: "Commands"}) {
		heading := "\n" + g.Title + "\n"
		for _, c := range cmd.Commands() {
			if c.GroupID != g.ID || !c.IsAvailableCommand() && c.Name() != "help" {
				continue
			}
			fmt.Fprintf(w, "%s  %-*s  %s\n", heading, width, c.Name(), c.Short)
			heading = ""
		}
	}
}

// helpFlags lists the flags under their headings, then those of every command.
func helpFlags(w io.Writer, cmd *cobra.Command) {
	for _, g := range flagGroups(cmd) {
		fmt.Fprintf(w, "\n%s\n", g.heading)
		width := 0
		for _, f := range g.flags {
			width = max(width, len(flagLeft(f)))
		}
		for _, f := range g.flags {
			fmt.Fprintf(w, "  %-*s  %s\n", width, flagLeft(f), flagRight(f))
		}
	}
}

type groupOfFlags struct {
	heading string
	flags   []*pflag.Flag
}

func flagGroups(cmd *cobra.Command) []groupOfFlags {
	var groups []groupOfFlags
	for part := range strings.SplitSeq(cmd.Annotations[flagGroup], "\x01") {
		heading, list, ok := strings.Cut(part, "\x00")
		if !ok {
			continue
		}
		g := groupOfFlags{heading: heading}
		for name := range strings.SplitSeq(list, ",") {
			g.flags = append(g.flags, cmd.Flags().Lookup(name))
		}
		groups = append(groups, g)
	}
	last := groupOfFlags{heading: "Everywhere"}
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if f.Annotations[flagGroup] == nil && !f.Hidden {
			last.flags = append(last.flags, f)
		}
	})
	return append(groups, last)
}

func flagLeft(f *pflag.Flag) string {
	s := "    --" + f.Name
	if f.Shorthand != "" {
		s = "-" + f.Shorthand + ", --" + f.Name
	}
	if f.Value.Type() != "bool" {
		s += " " + f.Value.Type()
	}
	return s
}

func flagRight(f *pflag.Flag) string {
	if f.DefValue == "" || f.Value.Type() == "bool" {
		return f.Usage
	}
	return fmt.Sprintf("%s (default %s)", f.Usage, f.DefValue)
}

func helpExitCodes(w io.Writer) {
	fmt.Fprintf(w, "\nExit codes\n")
	for _, e := range exitCodes {
		fmt.Fprintf(w, "  %3d  %s\n", e.code, e.means)
	}
}
