package plots

import (
	"math"
	"testing"
)

// px is where a frame says that a value stands.
func (f Frame) px(x, y float64) [2]float64 {
	return [2]float64{
		f.Left + (x-f.XMin)/(f.XMax-f.XMin)*(f.Right-f.Left),
		f.Bottom - (y-f.YMin)/(f.YMax-f.YMin)*(f.Bottom-f.Top),
	}
}

// pathNear is the distance from p to the nearest point of the drawing's paths
// in the ink of the first series.
func pathNear(d svgDrawing, p [2]float64) float64 {
	near := math.Inf(1)
	for _, path := range d.paths {
		if path.style != "fill:none;stroke:#0072B2;stroke-width:1.8" {
			continue
		}
		for _, q := range path.pts {
			near = min(near, math.Hypot(p[0]-q[0], p[1]-q[1]))
		}
	}
	return near
}

// The SVG writes 5 significant digits of points: 0.01 pt is 0.013 px.
const drawnPx = 0.015

// Frames say where the drawn lines are: both ends of each line of each panel.
func TestFramesOfCurves(t *testing.T) {
	x := []float64{-3, 10, 151}
	ys := [][]float64{{2.9, 2.7, 2.45}, {-400, 100, 3000}, {0, 1e-5, 3e-5}}
	cv := Curves{X: "travel, mm"}
	for _, y := range ys {
		cv.Panels = append(cv.Panels, Panel{Heading: "quantity", Lines: []Line{{X: x, Y: y}}})
	}
	f, err := cv.Figure()
	if err != nil {
		t.Fatal(err)
	}
	frames, d := f.Frames(), readSVG(t, mustSVG(t, f))
	if len(frames) != len(ys) {
		t.Fatalf("%d frames for %d panels", len(frames), len(ys))
	}
	for i, y := range ys {
		for _, k := range []int{0, 2} {
			if off := pathNear(d, frames[i].px(x[k], y[k])); off > drawnPx {
				t.Errorf("panel %d: (%g, %g) is drawn %.3f px from where its frame says", i, x[k], y[k], off)
			}
		}
		if i > 0 && frames[i].Top < frames[i-1].Bottom {
			t.Errorf("panel %d begins at %g, above the end of the one before", i, frames[i].Top)
		}
	}
	if w, h := f.Size(); w != d.w || h != d.h {
		t.Errorf("size %g × %g, the SVG is %g × %g", w, h, d.w, d.h)
	}
}

// A trajectory has the way at equal scale, then the distance from the start.
func TestFramesOfTrajectory(t *testing.T) {
	x, y := []float64{-436, -437, -420}, []float64{14, 70, 168}
	f, err := Trajectory{X: "x, mm", Y: "y, mm", Offset: "offset, mm", Paths: []Path{{X: x, Y: y}}}.Figure()
	if err != nil {
		t.Fatal(err)
	}
	frames, d := f.Frames(), readSVG(t, mustSVG(t, f))
	if len(frames) != 2 {
		t.Fatalf("%d frames", len(frames))
	}
	for k := range x {
		if off := pathNear(d, frames[0].px(x[k], y[k])); off > drawnPx {
			t.Errorf("equal scale: point %d is %.3f px off", k, off)
		}
		if off := pathNear(d, frames[1].px(x[k]-x[0], y[k])); off > drawnPx {
			t.Errorf("stretched: point %d is %.3f px off", k, off)
		}
	}
	equal := frames[0]
	sx, sy := (equal.Right-equal.Left)/(equal.XMax-equal.XMin), (equal.Bottom-equal.Top)/(equal.YMax-equal.YMin)
	if math.Abs(sx/sy-1) > 1e-9 {
		t.Errorf("%g px a mm across, %g px a mm up", sx, sy)
	}
}

// The frame of a linkage is where its axle is drawn.
func TestFrameOfLinkage(t *testing.T) {
	lk := tarn().posed(2)
	f, err := lk.Figure()
	if err != nil {
		t.Fatal(err)
	}
	frames, d := f.Frames(), readSVG(t, mustSVG(t, f))
	if len(frames) != 1 {
		t.Fatalf("%d frames", len(frames))
	}
	axle := lk.Poses[0].At[lk.Axle]
	want := frames[0].px(axle.X, axle.Y)
	want[0] += float64(axleRadius / pixel) // where the circle begins
	near := math.Inf(1)
	for _, path := range d.paths {
		for _, q := range path.pts {
			near = min(near, math.Hypot(want[0]-q[0], want[1]-q[1]))
		}
	}
	if near > drawnPx {
		t.Errorf("the axle is drawn %.3f px from where the frame says", near)
	}
}

func TestInk(t *testing.T) {
	if got := Ink(1) + Ink(2) + Ink(MaxSeries); got != "#0072B2#D55E00#662200" {
		t.Error(got)
	}
}
