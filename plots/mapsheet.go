package plots

import (
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Sizes of a map, pt.
const (
	mapHeight    = vg.Length(300)
	mapKeyWidth  = vg.Length(104)
	mapKeyBar    = vg.Length(14)
	mapKeyGap    = vg.Length(16) // between the map and its key
	mapOverlap   = vg.Length(0.5)
	hatchPitch   = vg.Length(5)
	contourWidth = vg.Length(1.4)
	contourUnder = vg.Length(3.2) // the white stroke beneath a contour
	idealBands   = 6
)

func (s *mapSheet) draw(c draw.Canvas) []panelPlace {
	area := draw.Crop(c, 0, -mapKeyWidth-mapKeyGap, 0, -headingHeight)
	xs := between(s.columns[0], s.columns[len(s.columns)-1], mostLabels)
	ys := between(s.rows[0], s.rows[len(s.rows)-1], mostLabels)
	p := newPanel(xs, ys, tickFit(s.X, area.Max.X-area.Min.X))
	p.Draw(area)
	data := p.DataCanvas(area)
	toX, toY := p.Transforms(&data)
	drawHeading(draw.Crop(c, 0, -mapKeyWidth, 0, 0), data.Max.Y, s.Y)
	s.drawCells(data, toX, toY)
	s.drawHatching(data, toX, toY)
	for _, b := range s.Bounds {
		s.drawContour(data, toX, toY, b.Value)
	}
	if at := s.Current; at != nil && at.X >= xs.lo && at.X <= xs.hi && at.Y >= ys.lo && at.Y <= ys.hi {
		drawCross(data, series[1].ink, vg.Point{X: toX(at.X), Y: toY(at.Y)})
	}
	s.drawKey(c, data)
	return []panelPlace{placeOf(data, p)}
}

type toPage = func(float64) vg.Length

// drawCells paints the cells, equal neighbours of a row as one. Each reaches a
// little under the next to the right and above, so that no seam is seen.
func (s *mapSheet) drawCells(c draw.Canvas, toX, toY toPage) {
	n := s.bands()
	for j, row := range s.Values {
		for from := 0; from < len(row); {
			k, to := s.band(row[from]), from+1
			for to < len(row) && s.band(row[to]) == k {
				to++
			}
			k0 := paperInk // over the grid, beneath the hatching
			if k >= 0 {
				k0 = hue(k, n)
			}
			fill(c, k0, box(
				toX(s.columns[from]), toY(s.rows[j]),
				min(toX(s.columns[to])+mapOverlap, c.Max.X), min(toY(s.rows[j+1])+mapOverlap, c.Max.Y)))
			from = to
		}
	}
}

func box(x0, y0, x1, y1 vg.Length) vg.Path {
	return polygon(vg.Point{X: x0, Y: y0}, vg.Point{X: x1, Y: y0}, vg.Point{X: x1, Y: y1}, vg.Point{X: x0, Y: y1})
}

// drawHatching strokes the cells without a value: lines y = x + o that run on
// from one cell to the next.
func (s *mapSheet) drawHatching(c draw.Canvas, toX, toY toPage) {
	for j, row := range s.Values {
		for i, v := range row {
			if !drawable(v, 0) {
				hatch(c, vg.Rectangle{
					Min: vg.Point{X: toX(s.columns[i]), Y: toY(s.rows[j])},
					Max: vg.Point{X: toX(s.columns[i+1]), Y: toY(s.rows[j+1])},
				})
			}
		}
	}
}

// hatch strokes the parts of the lines y = x + k·hatchPitch that lie in r.
func hatch(c draw.Canvas, r vg.Rectangle) {
	first := math.Ceil(float64((r.Min.Y - r.Max.X) / hatchPitch))
	for k := first; ; k++ {
		o := vg.Length(k) * hatchPitch
		if o >= r.Max.Y-r.Min.X {
			return
		}
		x0, x1 := max(r.Min.X, r.Min.Y-o), min(r.Max.X, r.Max.Y-o)
		if x1 > x0 {
			stroke(c, axisInk, gridWidth, polyline(vg.Point{X: x0, Y: x0 + o}, vg.Point{X: x1, Y: x1 + o}))
		}
	}
}

// drawContour draws the line on which the quantity has the value: straight
// pieces between neighbouring middles, found by linear interpolation on the
// sides of the squares that these make (marching squares); none in a square
// that lacks a value.
func (s *mapSheet) drawContour(c draw.Canvas, toX, toY toPage, value float64) {
	var path vg.Path
	for j := range len(s.Ys) - 1 {
		for i := range len(s.Xs) - 1 {
			for _, piece := range s.pieces(i, j, value) {
				path.Move(vg.Point{X: toX(piece[0].X), Y: toY(piece[0].Y)})
				path.Line(vg.Point{X: toX(piece[1].X), Y: toY(piece[1].Y)})
			}
		}
	}
	if len(path) > 0 {
		stroke(c, paperInk, contourUnder, path)
		stroke(c, textInk, contourWidth, path)
	}
}

// pieces are the parts of a contour in the square with its lower left corner at
// middle (i, j): the crossings of its sides, joined in pairs. Where all four
// sides are crossed, the mean of the corners says which pairs belong together.
func (s *mapSheet) pieces(i, j int, value float64) [][2]Place {
	corners := [4]Place{{s.Xs[i], s.Ys[j]}, {s.Xs[i+1], s.Ys[j]}, {s.Xs[i+1], s.Ys[j+1]}, {s.Xs[i], s.Ys[j+1]}}
	v := [4]float64{s.Values[j][i], s.Values[j][i+1], s.Values[j+1][i+1], s.Values[j+1][i]}
	mean := 0.0
	for _, w := range v {
		if !drawable(w, 0) {
			return nil
		}
		mean += w / 4
	}
	var at []Place
	for k := range 4 {
		a, b := v[k], v[(k+1)%4]
		if (a >= value) != (b >= value) {
			t, p, q := (value-a)/(b-a), corners[k], corners[(k+1)%4]
			at = append(at, Place{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)})
		}
	}
	switch {
	case len(at) == 2:
		return [][2]Place{{at[0], at[1]}}
	case len(at) == 4 && (mean >= value) == (v[0] >= value): // the first and third corner hang together
		return [][2]Place{{at[0], at[1]}, {at[2], at[3]}}
	case len(at) == 4:
		return [][2]Place{{at[3], at[0]}, {at[1], at[2]}}
	}
	return nil
}

// drawKey draws the steps of hue beside the map with the values between them,
// the contours on it, and what hatched cells are.
func (s *mapSheet) drawKey(c draw.Canvas, data draw.Canvas) {
	left, n := data.Max.X+mapKeyGap, s.bands()
	bottom := data.Min.Y
	if s.gaps {
		bottom += s.drawMissing(c, left, bottom)
	}
	height := data.Max.Y - bottom
	at := func(v float64) vg.Length {
		return bottom + height*vg.Length((v-s.levels.lo)/(s.levels.hi-s.levels.lo))
	}
	for k := range n {
		y0 := bottom + height*vg.Length(k)/vg.Length(n)
		y1 := min(bottom+height*vg.Length(k+1)/vg.Length(n)+mapOverlap, data.Max.Y)
		fill(c, hue(k, n), box(left, y0, left+mapKeyBar, y1))
	}
	stroke(c, axisInk, gridWidth, box(left, bottom, left+mapKeyBar, data.Max.Y))
	drawHeading(draw.Crop(c, left-c.Min.X, 0, 0, 0), data.Max.Y, labelType.shorten(s.Key, c.Max.X-left))
	drawn := s.drawBounds(c, left, at)
	for _, t := range s.levels.Ticks(s.levels.lo, s.levels.hi) {
		y := at(t.Value) - tickType.rise()/2
		clear := true
		for _, taken := range drawn {
			clear = clear && (y-taken > keyLeading || taken-y > keyLeading)
		}
		if clear {
			tickType.left(c, textInk, vg.Point{X: left + mapKeyBar + 6, Y: y}, t.Label)
		}
	}
}

// keyLeading is the least distance of two names beside the key.
const keyLeading = vg.Length(9.5)

// drawBounds names the contours beside the key, each at its value, pushed apart
// upwards, and returns where the names stand. A value off the key is not drawn
// anywhere and is left out.
func (s *mapSheet) drawBounds(c draw.Canvas, left vg.Length, at toPage) (drawn []vg.Length) {
	for _, b := range s.Bounds {
		if b.Value < s.levels.lo || b.Value > s.levels.hi {
			continue
		}
		line := at(b.Value)
		stroke(c, paperInk, contourUnder, polyline(vg.Point{X: left, Y: line}, vg.Point{X: left + mapKeyBar, Y: line}))
		stroke(c, textInk, contourWidth, polyline(vg.Point{X: left, Y: line}, vg.Point{X: left + mapKeyBar + 4, Y: line}))
		y := line - tickType.rise()/2
		for again := true; again; {
			again = false
			for _, taken := range drawn {
				if y-taken < keyLeading && taken-y < keyLeading {
					y, again = taken+keyLeading, true
				}
			}
		}
		drawn = append(drawn, y)
		x := left + mapKeyBar + 6
		pointType.left(c, textInk, vg.Point{X: x, Y: y}, pointType.shorten(b.Name, c.Max.X-x))
	}
	return drawn
}

// drawMissing draws what hatched cells are at the foot of the key and returns
// its height.
func (s *mapSheet) drawMissing(c draw.Canvas, left, bottom vg.Length) vg.Length {
	const side = mapKeyBar
	r := vg.Rectangle{Min: vg.Point{X: left, Y: bottom}, Max: vg.Point{X: left + side, Y: bottom + side}}
	hatch(c, r)
	stroke(c, axisInk, gridWidth, box(r.Min.X, r.Min.Y, r.Max.X, r.Max.Y))
	x := left + side + 6
	lines := tickType.wrap(s.Missing, c.Max.X-x, 2)
	for k, l := range lines {
		up := vg.Length(len(lines)-1-k) * keyLeading
		tickType.left(c, textInk, vg.Point{X: x, Y: bottom + 2 + up}, l)
	}
	return side + panelGap + vg.Length(max(len(lines)-1, 0))*keyLeading
}
