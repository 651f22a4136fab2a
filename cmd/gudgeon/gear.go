package main

import (
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/kinematics"
)

// gears is a flag value: one gear, or all of the design's. The zero value is
// the design's own gear.
type gears struct {
	one *kinematics.Gear
	all bool
}

func (g *gears) String() string {
	switch {
	case g.all:
		return "all"
	case g.one != nil:
		return g.one.String()
	}
	return ""
}

func (g *gears) Type() string    { return "32x21|all" }
func (g *gears) expects() string { return "a gear, chainring x cog, such as 32x21, or all" }

// Set takes two tooth counts or "all".
func (g *gears) Set(s string) error {
	if s == "all" {
		*g = gears{all: true}
		return nil
	}
	ring, cog, ok := strings.Cut(s, "x")
	teeth, errRing := strconv.Atoi(ring)
	cogTeeth, errCog := strconv.Atoi(cog)
	if !ok || errRing != nil || errCog != nil || teeth < minTeeth || cogTeeth < minTeeth || teeth > maxTeeth || cogTeeth > maxTeeth {
		return errNotTaken
	}
	*g = gears{one: &kinematics.Gear{Chainring: teeth, Cog: cogTeeth}}
	return nil
}

// The tooth counts that a sprocket can have, as in the design file.
const (
	minTeeth = 3
	maxTeeth = 1000
)

// of returns the gears for the design; nil stands for its own.
func (g *gears) of(l *loaded) ([]kinematics.Gear, error) {
	drivetrain := l.design.Kinematics.Drivetrain
	switch {
	case !g.all && g.one == nil:
		return nil, nil
	case drivetrain == nil:
		return nil, inputProblem(diag.Diagnostic{Code: "no-drivetrain", File: l.called(),
			Message: "--gear needs [drivetrain]", Hint: "add it to the design, or leave --gear out"})
	case g.all:
		return drivetrain.Gears(), nil
	}
	return []kinematics.Gear{*g.one}, nil
}

// completeGear offers the gears of the file that stands in the call.
func completeGear(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	list := []string{"all"}
	if file := quietly(args); file != nil {
		if d, problems := file.Variant(""); !problems.HasErrors() && d.Kinematics != nil && d.Kinematics.Drivetrain != nil {
			for _, g := range d.Kinematics.Drivetrain.Gears() {
				list = append(list, g.String())
			}
		}
	}
	return list, cobra.ShellCompDirectiveNoFileComp
}
