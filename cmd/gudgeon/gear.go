package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/diag"
	"gudgeon/kinematics"
)

// gears is a flag value: one gear or several, or all of the design's. The zero
// value is the design's own gear.
type gears struct {
	value []kinematics.Gear
	all   bool
}

func (g *gears) String() string {
	if g.all {
		return "all"
	}
	list := make([]string, len(g.value))
	for i, gear := range g.value {
		list[i] = gear.String()
	}
	return strings.Join(list, ",")
}

func (g *gears) Type() string { return "32x21,…|all" }
func (g *gears) expects() string {
	return "gears, chainring x cog such as 32x21, separated by commas and each once, or all"
}

// Set takes pairs of tooth counts or "all".
func (g *gears) Set(s string) error {
	if s == "all" {
		*g = gears{all: true}
		return nil
	}
	var value []kinematics.Gear
	for part := range strings.SplitSeq(s, ",") {
		gear, ok := gearOf(strings.TrimSpace(part))
		if !ok || slices.Contains(value, gear) {
			return errNotTaken
		}
		value = append(value, gear)
	}
	*g = gears{value: value}
	return nil
}

func gearOf(s string) (kinematics.Gear, bool) {
	g, ok := design.ParseGear(s)
	return g, ok && min(g.Chainring, g.Cog) >= minTeeth && max(g.Chainring, g.Cog) <= maxTeeth
}

// several reports whether results come a gear at a time.
func (g *gears) several() bool { return g.all || len(g.value) > 1 }

// The tooth counts that a sprocket can have, as in the design file.
const (
	minTeeth = 3
	maxTeeth = 1000
)

// of returns the gears for the design; nil stands for its own.
func (g *gears) of(l *loaded) ([]kinematics.Gear, error) {
	drivetrain := l.design.Kinematics.Drivetrain
	switch {
	case !g.all && g.value == nil:
		return nil, nil
	case drivetrain == nil:
		return nil, inputProblem(diag.Diagnostic{Code: "no-drivetrain", File: l.called(),
			Message: "--gear needs [drivetrain]", Hint: "add it to the design, or leave --gear out"})
	case g.all:
		return drivetrain.Gears(), nil
	}
	for _, gear := range g.value {
		if cogs := drivetrain.Cogs; len(cogs) > 0 && !slices.Contains(cogs, gear.Cog) {
			return nil, inputProblem(diag.Diagnostic{Code: "no-such-gear", File: l.called(),
				Message: fmt.Sprintf("the second number of --gear must be one of the cogs; there is no cog of %d", gear.Cog),
				Hint:    "known here: " + diag.Names(gearNames(drivetrain))})
		}
	}
	return g.value, nil
}

func gearNames(d *kinematics.Drivetrain) []string {
	var list []string
	for _, g := range d.Gears() {
		list = append(list, g.String())
	}
	return list
}

// completeGear offers the gears of the file that stands in the call.
func completeGear(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	list := []string{"all"}
	if file := quietly(args); file != nil {
		if d, problems := file.Variant(""); !problems.HasErrors() && d.Kinematics != nil && d.Kinematics.Drivetrain != nil {
			list = append(list, gearNames(d.Kinematics.Drivetrain)...)
		}
	}
	return list, cobra.ShellCompDirectiveNoFileComp
}
