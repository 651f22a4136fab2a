package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
)

// The groups in which gudgeon --help lists the commands.
const (
	groupStart   = "start"
	groupLinkage = "linkage"
	groupJoints  = "joints"
	groupHelp    = "help"
)

// newRoot builds the command tree of one run.
func newRoot(a *app) *cobra.Command {
	root := &cobra.Command{
		Use:   "gudgeon",
		Short: "rear suspension of bicycles and motorcycles: linkage, pin forces, pivot hardware",
		Long: "gudgeon reads a frame's rear suspension from a design file and works out how the linkage moves, what its\n" +
			"pins carry and whether the joints there hold.",
		Example: "gudgeon demo\n" +
			"gudgeon sweep example:freshet\n" +
			"gudgeon sweep frame.toml -o sweep.csv",
		Args:          cobra.ArbitraryArgs,
		RunE:          rootRun,
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.SetIn(a.in)
	root.SetOut(a.out)
	root.SetErr(a.err)
	root.SetHelpFunc(help)
	root.SetFlagErrorFunc(rootFlagError)
	root.AddGroup(
		&cobra.Group{ID: groupStart, Title: "Start here"},
		&cobra.Group{ID: groupLinkage, Title: "Linkage"},
		&cobra.Group{ID: groupJoints, Title: "Loads and joints"},
		&cobra.Group{ID: groupHelp, Title: "About the command"},
	)
	root.SetHelpCommandGroupID(groupHelp)
	root.SetCompletionCommandGroupID(groupHelp)
	cobra.EnableCommandSorting = false // most used first, as added
	a.global.colour = choice{value: "auto", allowed: []string{"auto", "always", "never"}}
	root.PersistentFlags().Var(&a.global.colour, "color", "colours; auto: on a terminal, without NO_COLOR")
	root.PersistentFlags().BoolVarP(&a.global.quiet, "quiet", "q", false, "no remarks on standard error; errors and results stay")
	root.AddCommand(
		newDemo(a), newExamples(a), newReport(a), newSweep(a), newPlot(a), newDraw(a), newCompare(a), newExplore(a), newGather(a), newSensitivity(a), newTolerance(a), newLoads(a), newSize(a), newCheck(a),
		newVersion(a),
	)
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	ownWords(root)
	return root
}

// ownWords gives the commands that come with the command library our words and
// our refusals.
func ownWords(root *cobra.Command) {
	for _, c := range root.Commands() {
		switch c.Name() {
		case "help":
			c.Short = "help for a command"
			c.Run, c.RunE = nil, func(_ *cobra.Command, args []string) error {
				if named, _, err := root.Find(args); err == nil && (named != root || len(args) == 0) {
					return named.Help()
				}
				return rootRun(root, args)
			}
		case "completion":
			c.Short = "completion for bash, zsh, fish or powershell"
			c.Args = cobra.ArbitraryArgs
			c.RunE = rootRun
			for _, shell := range c.Commands() {
				shell.Short = "completion for " + shell.Name()
				shell.Args = noArguments
			}
		}
	}
}

// rootRun is reached where cmd needs a command and none is named: help, or a
// word that is none.
func rootRun(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return cmd.Help()
	}
	var known []string
	for _, c := range cmd.Commands() {
		if c.IsAvailableCommand() {
			known = append(known, c.Name())
		}
	}
	return &problem{code: exitInput, see: cmd.CommandPath(), list: diag.List{{
		Code:    "unknown-command",
		Message: fmt.Sprintf("%s has no command %s", cmd.CommandPath(), diag.Quote(args[0])),
		Hint:    diag.Suggest(args[0], known),
	}}}
}

// rootFlagError tells an unknown command before its flags, which the root
// cannot know.
func rootFlagError(cmd *cobra.Command, err error) error {
	if words := cmd.Flags().Args(); !cmd.HasParent() && len(words) > 0 {
		return rootRun(cmd, words)
	}
	return flagError(cmd, err)
}

// oneFile is the argument of every command that reads a design file.
func oneFile(cmd *cobra.Command, args []string) error {
	switch {
	case len(args) == 1 && args[0] != "":
		return nil
	case len(args) < 2:
		return &problem{code: exitInput, see: cmd.CommandPath(), list: diag.List{{
			Code:    "missing-file",
			Message: fmt.Sprintf("%s needs a design file", cmd.CommandPath()),
			Hint:    fmt.Sprintf("give a path, - for standard input, or try: %s example:freshet", cmd.CommandPath()),
		}}}
	}
	return extraArgument(cmd, "one design file", args[1])
}

// noArguments refuses arguments.
func noArguments(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return extraArgument(cmd, "no argument", args[0])
}

// extraArgument refuses the first argument past what the command takes.
func extraArgument(cmd *cobra.Command, takes, extra string) error {
	return &problem{code: exitInput, see: cmd.CommandPath(), list: diag.List{{
		Code:    "extra-argument",
		Message: fmt.Sprintf("%s takes %s", cmd.CommandPath(), takes),
		Found:   fmt.Sprintf("%s is one too many", diag.Quote(extra)),
	}}}
}
