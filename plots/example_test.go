package plots_test

import (
	"fmt"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/plots"
)

func ExampleCurves() {
	f, err := plots.Curves{
		Caption: plots.Caption{
			Title:       "Leverage ratio over wheel travel",
			Subtitle:    "Tarn 153",
			Description: "The leverage ratio falls from 2.8 to 2.5.",
		},
		X: "vertical wheel travel, mm",
		Panels: []plots.Panel{{
			Heading: "leverage ratio, mm/mm",
			Lines: []plots.Line{{
				Name: "Tarn 153", X: []float64{0, 50, 100, 150}, Y: []float64{2.8, 2.6, 2.5, 2.5},
				Marks: []plots.Mark{{X: 50, Y: 2.6, Name: "sag"}},
			}},
		}},
	}.Figure()
	if err != nil {
		fmt.Println(err)
		return
	}
	svg, err := f.Render("svg")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.Join(strings.SplitN(string(svg), "\n", 4)[:3], "\n"))
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" width="642" height="394" viewBox="0 0 642 394" role="img" style="stroke-linejoin:round">
	// <title>Leverage ratio over wheel travel</title>
	// <desc>The leverage ratio falls from 2.8 to 2.5.</desc>
}

func ExampleLinkage() {
	swingarm := plots.Linkage{
		Caption: plots.Caption{Title: "Sluice 126"},
		X:       "x, mm", Y: "y, mm",
		Points: []string{"main", "axle", "shock-arm", "shock-frame"},
		Links: []plots.LinkShape{
			{Name: "frame", Points: []int{0, 3}, Frame: true},
			{Name: "swingarm", Points: []int{0, 1, 2}},
		},
		Shock: [2]int{3, 2},
		Axle:  1,
		Poses: []plots.Pose{{Label: "0 mm", At: []r2.Vec{{X: 38, Y: 66}, {X: -433, Y: 13}, {X: -110, Y: 214}, {X: 176, Y: 262}}}},
	}
	_, err := swingarm.Figure()
	fmt.Println(err)
	swingarm.Points = append(swingarm.Points, "idler")
	_, err = swingarm.Figure()
	fmt.Println(err)
	// Output:
	// <nil>
	// position 1 ("0 mm") has 4 points, the linkage has 5
}

// A figure tells which letters its PNG would lack.
func ExampleFigure_MissingLetters() {
	f, _ := plots.Trajectory{
		Caption: plots.Caption{Title: "堰 136"},
		Paths:   []plots.Path{{X: []float64{-429, -430}, Y: []float64{4, 140}}},
	}.Figure()
	fmt.Printf("%q\n", f.MissingLetters())
	// Output: ['堰']
}
