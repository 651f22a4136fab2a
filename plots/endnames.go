package plots

import (
	"cmp"
	"fmt"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Room for the names at the right end of the lines, pt.
const (
	nameRoomLeast = vg.Length(52)
	nameRoomMost  = vg.Length(136)
	nameIndent    = vg.Length(13) // from the panel's edge to the name: the leader's room
	nameLeading   = vg.Length(12.5)
)

// endName is the name of a line and where the line ends.
type endName struct {
	text  string
	ink   ink
	quiet bool // one of many: small, grey
	at    vg.Point
}

func (n endName) letters() lettering {
	if n.quiet {
		return pointType
	}
	return nameType
}

// nameRoom is the width to leave beside the panels for the names.
func nameRoom(names []endName) vg.Length {
	room := vg.Length(0)
	for _, n := range names {
		if n.text != "" {
			room = max(room, nameRoomLeast, nameIndent+n.letters().width(n.text))
		}
	}
	return min(room, nameRoomMost)
}

// drawEndNames writes the names in the column that begins at the right edge of
// the panel, each as close to the height of its line's end as the others let
// it; those that end at one height keep their order, from the top. Names
// beyond what the panel's height holds are counted, not written; quiet ones
// give way first, then the last.
func drawEndNames(c draw.Canvas, panel vg.Rectangle, names []endName) {
	names = slices.DeleteFunc(slices.Clone(names), func(n endName) bool { return n.text == "" })
	names = fewer(names, int((panel.Max.Y-panel.Min.Y)/nameLeading)+1, panel)
	slices.Reverse(names)
	slices.SortStableFunc(names, func(a, b endName) int { return cmp.Compare(a.at.Y, b.at.Y) })
	want := make([]vg.Length, len(names))
	for i, n := range names {
		want[i] = n.at.Y
	}
	for i, y := range pushApart(want, nameLeading, panel.Min.Y, panel.Max.Y) {
		n := names[i]
		t := n.letters()
		x := panel.Max.X + nameIndent
		if n.at.X >= panel.Min.X {
			stroke(c, n.ink, leaderWidth, polyline(
				vg.Point{X: n.at.X + 1.5, Y: n.at.Y}, vg.Point{X: panel.Max.X + 1.5, Y: n.at.Y}, vg.Point{X: x - 3, Y: y}))
		}
		t.left(c, n.textInk(), vg.Point{X: x, Y: y - t.rise()/2}, t.shorten(n.text, c.Max.X-x))
	}
}

func (n endName) textInk() ink {
	if n.quiet {
		return quietInk
	}
	return n.ink
}

// fewer keeps at most n names; the last place then says how many are missing.
func fewer(names []endName, n int, panel vg.Rectangle) []endName {
	if len(names) <= n {
		return names
	}
	kept := slices.Clone(names)
	slices.SortStableFunc(kept, func(a, b endName) int {
		switch {
		case a.quiet == b.quiet:
			return 0
		case a.quiet:
			return 1
		}
		return -1
	})
	kept = kept[:n-1]
	below := vg.Point{X: panel.Min.X - 1, Y: panel.Min.Y - nameLeading} // left of the panel: no leader
	return append(kept, endName{fmt.Sprintf("and %d more", len(names)-len(kept)), quietInk, true, below})
}

// pushApart moves the sorted heights apart to the gap, as little as possible in
// the sum of squares, inside lo to hi: pool-adjacent-violators on the heights
// less their share of gaps (Barlow et al., Statistical Inference under Order
// Restrictions, 1972, section 1.2).
func pushApart(want []vg.Length, gap, lo, hi vg.Length) []vg.Length {
	type pool struct {
		sum vg.Length
		n   int
	}
	mean := func(p pool) vg.Length { return p.sum / vg.Length(p.n) }
	var pools []pool
	for i, y := range want {
		pools = append(pools, pool{y - vg.Length(i)*gap, 1})
		for k := len(pools) - 1; k > 0 && mean(pools[k-1]) > mean(pools[k]); k-- {
			pools[k-1] = pool{pools[k-1].sum + pools[k].sum, pools[k-1].n + pools[k].n}
			pools = pools[:k]
		}
	}
	top := max(lo, hi-vg.Length(len(want)-1)*gap)
	out := make([]vg.Length, 0, len(want))
	for _, p := range pools {
		for range p.n {
			out = append(out, min(max(mean(p), lo), top)+vg.Length(len(out))*gap)
		}
	}
	return out
}
