package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
	"gudgeon/kinematics"
	"gudgeon/plots"
)

// drawOptions are what gudgeon draw is asked for.
type drawOptions struct {
	input   inputOptions
	output  pictureOptions
	at      places
	atGiven bool // --at was given: with a load case these lie beneath its position
	wheels  bool
	chain   bool
	centre  bool
	load    string // the load case whose forces are drawn; "" none
	gear    gears
	animate bool
}

// newDraw builds gudgeon draw.
func newDraw(a *app) *cobra.Command {
	o := &drawOptions{at: defaultPlaces()}
	cmd := &cobra.Command{
		Use:     "draw FILE",
		Short:   "the linkage to scale at chosen positions, as SVG or PNG",
		GroupID: groupLinkage,
		Long: "FILE is a design file, - for standard input, or example:freshet.\n" +
			"The first position is drawn solid, the others faded beneath it. With --animate the solid one moves through the\n" +
			"travel and back in any browser, and stands still for who asks their system for less motion.\n" +
			"Chain, instant centre and forces are drawn at the first position; --case puts that of the load case first.",
		Example: "gudgeon draw example:freshet\n" +
			"gudgeon draw example:freshet --at 0,30%,120 -o linkage.png\n" +
			"gudgeon draw example:freshet --wheels --chain --centre --at 30%\n" +
			"gudgeon draw example:freshet --case landing\n" +
			"gudgeon draw example:freshet --animate --wheels\n" +
			"gudgeon draw example:freshet -o - > linkage.svg",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.input.file = args[0]
			o.atGiven = cmd.Flags().Changed("at")
			return a.draw(o)
		},
	}
	f := cmd.Flags()
	f.Var(&o.at, "at", "positions: mm of travel, or % of it")
	f.BoolVar(&o.wheels, "wheels", false, "draw the wheels and the ground too")
	f.BoolVar(&o.chain, "chain", false, "draw the upper run of the chain")
	f.BoolVar(&o.centre, "centre", false, "draw the instant centre of the wheel's link, with the line to it from the axle")
	f.Var(&word{&o.load, "NAME"}, "case", "draw the forces of this load case to scale, at its position")
	f.Var(&o.gear, "gear", "the chain's gear (default the load case's or the design's)")
	f.BoolVar(&o.animate, "animate", false, "an SVG that moves by itself")
	o.output.add(cmd)
	o.input.addVariant(cmd)
	group(cmd, "Result", "at", "wheels", "chain", "centre", "case", "animate", "format", "output")
	group(cmd, "Design", "variant", "gear")
	cmd.RegisterFlagCompletionFunc("case", completeCase)
	cmd.RegisterFlagCompletionFunc("gear", completeGear)
	return cmd
}

// places is a flag value: positions of the wheel.
type places struct {
	value []kinematics.Travel
	text  string
}

func defaultPlaces() places {
	var p places
	if err := p.Set("0,25%,50%,100%"); err != nil {
		panic("gudgeon: " + err.Error()) // the default is well formed
	}
	return p
}

func (p *places) String() string { return p.text }
func (p *places) Type() string   { return "w,w,…" }
func (p *places) expects() string {
	return "travels separated by commas: mm such as 40, or shares such as 25%, up to 100%"
}

// Set takes 1 to maxPlaces travels.
func (p *places) Set(s string) error {
	var value []kinematics.Travel
	for part := range strings.SplitSeq(s, ",") {
		number, share := strings.CutSuffix(strings.TrimSpace(part), "%")
		w, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
		if err != nil || !(w >= 0) || !report.Exists(w) || share && w > 100 || len(value) == maxPlaces {
			return errNotTaken
		}
		if share {
			w /= 100
		}
		value = append(value, kinematics.Travel{Value: w, OfFull: share})
	}
	p.value, p.text = value, s
	return nil
}

// maxPlaces is how many positions a drawing takes before it is a blur.
const maxPlaces = 25

// draw runs the command.
func (a *app) draw(o *drawOptions) error {
	kind, err := o.output.kind()
	if err != nil {
		return err
	}
	if o.animate && kind != "svg" {
		return inputProblem(diag.Diagnostic{Code: "wrong-value", Message: "--animate draws an SVG",
			Found: "asked for is " + kind, Hint: "leave --animate out, or give -o a name that ends in .svg"})
	}
	if err := o.together(); err != nil {
		return err
	}
	f, err := a.loadFamily(o.input)
	if err != nil {
		return err
	}
	var pictures []picture
	err = f.each(func(l *loaded) error {
		p, err := o.picture(l)
		p.name += f.suffix(l)
		pictures = append(pictures, p)
		return err
	})
	if err != nil {
		return err
	}
	return a.deliverPictures(o.output, f.first(), pictures)
}

// together refuses flags that ask for what one drawing cannot show.
func (o *drawOptions) together() error {
	wrong := ""
	switch {
	case o.animate && (o.chain || o.centre || o.load != ""):
		wrong = "--animate draws links and wheels alone; leave --chain, --centre and --case out"
	case o.gear.several():
		wrong = "a drawing shows one gear"
	case o.gear.value != nil && !o.chain:
		wrong = "--gear is the gear of --chain"
	default:
		return nil
	}
	return inputProblem(diag.Diagnostic{Code: "wrong-value", Message: wrong})
}

// picture draws the linkage of one variant, still or moving.
func (o *drawOptions) picture(l *loaded) (picture, error) {
	if o.animate {
		svg, err := o.animation(l)
		return picture{name: "motion", svg: svg}, err
	}
	figure, err := o.figure(l)
	return picture{name: "linkage", figure: figure}, err
}

// figure draws the linkage at the positions asked for.
func (o *drawOptions) figure(l *loaded) (*plots.Figure, error) {
	m, err := l.model("draw")
	if err != nil {
		return nil, err
	}
	_, full := m.Reach()
	drawing, err := o.drawing(l, m)
	if err != nil {
		return nil, err
	}
	drawing.Subtitle = fmt.Sprintf("%s in %.1f mm of wheel travel, solid at %s; equal scale on both axes",
		numberWord(len(drawing.Poses), "position"), full, drawing.Poses[0].Label)
	if err := o.addActing(l, m, &drawing); err != nil {
		return nil, err
	}
	figure, err := drawing.Figure()
	if err != nil {
		return nil, l.located(err)
	}
	return figure, nil
}

// drawing is the linkage at the positions asked for, its subtitle still open.
func (o *drawOptions) drawing(l *loaded, m *kinematics.Model) (plots.Linkage, error) {
	_, full := m.Reach()
	drawing := linkageShape(l.design.Kinematics)
	drawing.Caption = plots.Caption{Title: l.title() + ": linkage"}
	places := o.at.value
	if o.load != "" {
		at, err := l.placeOfCase(o.load)
		if err != nil {
			return plots.Linkage{}, err
		}
		if !o.atGiven {
			places = nil
		}
		places = append([]kinematics.Travel{at}, places...)
	}
	for _, at := range places {
		pose, err := pose(m, at, full)
		if err != nil {
			return plots.Linkage{}, err
		}
		drawing.Poses = append(drawing.Poses, pose)
	}
	if !o.wheels {
		drawing.WheelRadius, drawing.Front = 0, nil
	}
	return drawing, nil
}

// pose is the linkage at one travel; full is the travel of the full stroke.
func pose(m *kinematics.Model, at kinematics.Travel, full float64) (plots.Pose, error) {
	w := travelOf(at, full)
	if w > full {
		return plots.Pose{}, inputProblem(diag.Diagnostic{Code: "past-travel",
			Message: fmt.Sprintf("--at must lie in the travel, 0 to %.1f mm", full),
			Found:   "this is " + report.Number(w) + " mm", Hint: "give a share of it, such as 100%"})
	}
	return plots.Pose{Label: fmt.Sprintf("%.0f mm", w), At: m.At(w).Points}, nil
}

// travelOf is a place on the way, mm.
func travelOf(at kinematics.Travel, full float64) float64 {
	if at.OfFull {
		return at.Value * full
	}
	return at.Value
}

// linkageShape turns the names of a design into the indices of a drawing.
func linkageShape(d *kinematics.Design) plots.Linkage {
	index := map[string]int{}
	drawing := plots.Linkage{X: "x, mm", Y: "y, mm", WheelRadius: d.Rear.WheelRadius}
	for i, p := range d.Points {
		index[p.Name] = i
		drawing.Points = append(drawing.Points, p.Name)
	}
	for _, link := range d.Links {
		shape := plots.LinkShape{Name: link.Name, Frame: link.Name == kinematics.FrameLink}
		for _, p := range link.Points {
			shape.Points = append(shape.Points, index[p])
		}
		drawing.Links = append(drawing.Links, shape)
	}
	for _, s := range d.Sliders {
		drawing.Sliders = append(drawing.Sliders, plots.SliderShape{
			Point: index[s.Point], Guide: [2]int{index[s.Guide[0]], index[s.Guide[1]]}})
	}
	drawing.Shock = [2]int{index[d.Shock.Mounts[0]], index[d.Shock.Mounts[1]]}
	drawing.Axle = index[d.Rear.Axle]
	if d.Front != nil {
		drawing.Front = &plots.Wheel{At: d.Front.Axle, Radius: d.Front.WheelRadius}
	}
	return drawing
}
