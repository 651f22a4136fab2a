package plots

import (
	"slices"

	"gonum.org/v1/plot/vg"
)

// pen is how a line is drawn.
type pen struct {
	ink    ink
	width  vg.Length
	dashes []vg.Length
	quiet  bool
}

// level orders lines for drawing, the lowest first: greys, then solid lines,
// then the shorter dashed the higher, so that of two lines in one place both
// are seen.
func (p pen) level() float64 {
	switch {
	case p.quiet:
		return -2
	case len(p.dashes) == 0:
		return -1
	}
	return 1 / float64(slices.Max(p.dashes))
}

// pens gives every name its pen.
type pens struct {
	order     []string
	ink       map[string]int // by name, from 1; 0: not chosen yet
	highlight string         // where there are more names than inks
}

// add takes note of a name; fixed 0 leaves its ink to settle.
func (s *pens) add(name string, fixed int) {
	if s.ink == nil {
		s.ink = map[string]int{}
	}
	if _, known := s.ink[name]; !known {
		s.order = append(s.order, name)
	}
	s.ink[name] = max(s.ink[name], fixed)
}

// settle gives the names without an ink those that are free, in order. With
// more names than inks, one is highlighted: the first where none is named.
func (s *pens) settle(highlight string) {
	if len(s.order) > MaxSeries {
		s.highlight = highlight
		if highlight == "" {
			s.highlight = s.order[0]
		}
		return
	}
	taken := [MaxSeries + 1]bool{}
	for _, k := range s.ink {
		taken[k] = true
	}
	next := 1
	for _, name := range s.order {
		if s.ink[name] > 0 {
			continue
		}
		for taken[next] {
			next++
		}
		s.ink[name], taken[next] = next, true
	}
}

func (s *pens) pen(name string) pen {
	if len(s.order) <= MaxSeries {
		k := series[s.ink[name]-1]
		return pen{ink: k.ink, width: curveWidth, dashes: k.dashes}
	}
	if name == s.highlight {
		return pen{ink: series[0].ink, width: curveWidth}
	}
	return pen{ink: axisInk, width: greyWidth, quiet: true}
}
