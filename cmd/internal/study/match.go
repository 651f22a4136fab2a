package study

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/diag"
	"gudgeon/kinematics"
)

// Rename is a part of the first design that may be the same as one of the
// other under another name. Reason says what speaks for it.
type Rename struct {
	From, To string
	Reason   string
}

// Matching is how the names of one kind of part in two designs stand to each
// other.
type Matching struct {
	Kind      string // "point", "link", …
	Both      []string
	OnlyFirst []string
	OnlyOther []string
	Renamed   []Rename // out of OnlyFirst and OnlyOther, each at most once
}

// alike gives what speaks for a part of the first design being the same as one
// of the other; "" where nothing does.
type alike func(first, other string) string

// matchNames matches by name, each list in its own order. What has no match is
// held against what is left on the other side: first by same, nil for none,
// then by near names.
func matchNames(kind string, first, other []string, same alike) Matching {
	m := Matching{Kind: kind}
	for _, n := range first {
		if slices.Contains(other, n) {
			m.Both = append(m.Both, n)
		} else {
			m.OnlyFirst = append(m.OnlyFirst, n)
		}
	}
	for _, n := range other {
		if !slices.Contains(first, n) {
			m.OnlyOther = append(m.OnlyOther, n)
		}
	}
	m.suspect(same)
	return m
}

// suspect fills Renamed.
func (m *Matching) suspect(same alike) {
	left := slices.Clone(m.OnlyOther)
	pair := func(from, to, reason string) {
		m.Renamed = append(m.Renamed, Rename{from, to, reason})
		left = slices.DeleteFunc(left, func(n string) bool { return n == to })
	}
	var open []string
	for _, from := range m.OnlyFirst {
		reason, at := "", 0
		for i := 0; same != nil && i < len(left) && reason == ""; i++ {
			reason, at = same(from, left[i]), i
		}
		if reason == "" {
			open = append(open, from)
			continue
		}
		pair(from, left[at], reason)
	}
	for _, from := range open {
		if to, ok := diag.Nearest(from, left); ok {
			pair(from, to, "near names")
		}
	}
}

// MatchParts matches the points, links and load cases of two designs; nil has
// none of them. Points in the same place and links through the same points may
// be the same under another name.
func MatchParts(first, other *kinematics.Design) []Matching {
	if first == nil {
		first = &kinematics.Design{}
	}
	if other == nil {
		other = &kinematics.Design{}
	}
	samePlace := func(a, b string) string {
		if placeOf(first, a) == placeOf(other, b) {
			return "the same place"
		}
		return ""
	}
	sameLink := func(a, b string) string {
		if slices.Equal(linkPoints(first, a), linkPoints(other, b)) {
			return "the same points"
		}
		return ""
	}
	return []Matching{
		matchNames("point", pointNames(first), pointNames(other), samePlace),
		matchNames("link", linkNames(first), linkNames(other), sameLink),
		matchNames("load case", caseNames(first), caseNames(other), nil),
	}
}

// MatchJoints matches the joints of two designs.
func MatchJoints(first, other []string) Matching { return matchNames("joint", first, other, nil) }

func pointNames(d *kinematics.Design) []string {
	return namesOf(d.Points, func(p kinematics.Point) string { return p.Name })
}

func linkNames(d *kinematics.Design) []string {
	return namesOf(d.Links, func(l kinematics.Link) string { return l.Name })
}

func caseNames(d *kinematics.Design) []string {
	return namesOf(d.Cases, func(c kinematics.LoadCase) string { return c.Name })
}

func namesOf[T any](list []T, name func(T) string) []string {
	names := make([]string, len(list))
	for i, e := range list {
		names[i] = name(e)
	}
	return names
}

// placeOf is where the design has its point of that name.
func placeOf(d *kinematics.Design, name string) r2.Vec {
	return d.Points[slices.Index(pointNames(d), name)].At
}

// linkPoints are the points of a link, sorted.
func linkPoints(d *kinematics.Design, name string) []string {
	return slices.Sorted(slices.Values(d.Links[slices.Index(linkNames(d), name)].Points))
}

// PointMove is a point that does not stand in the same place in all designs.
type PointMove struct {
	Point string
	From  r2.Vec   // in the first design, mm
	By    []r2.Vec // in each design, from From, mm; NaN where it has no such point
}

// MovedPoints lists the points of the first design that another one has
// elsewhere; a nil design has no points.
func MovedPoints(designs []*kinematics.Design) []PointMove {
	var list []PointMove
	if designs[0] == nil {
		return nil
	}
	for _, p := range designs[0].Points {
		move, moved := PointMove{p.Name, p.At, make([]r2.Vec, len(designs))}, false
		for k, d := range designs {
			move.By[k] = r2.Vec{X: math.NaN(), Y: math.NaN()}
			if d == nil || !slices.Contains(pointNames(d), p.Name) {
				continue
			}
			move.By[k] = r2.Sub(placeOf(d, p.Name), p.At)
			moved = moved || move.By[k] != r2.Vec{}
		}
		if moved {
			list = append(list, move)
		}
	}
	return list
}

// CommonCases are the load cases that every design has which has any, in the
// order of the first of these.
func CommonCases(designs []*kinematics.Design) []string {
	var common []string
	started := false
	for _, d := range designs {
		switch {
		case d == nil || len(d.Cases) == 0:
		case !started:
			common, started = caseNames(d), true
		default:
			common = slices.DeleteFunc(common, func(n string) bool { return !slices.Contains(caseNames(d), n) })
		}
	}
	return common
}

// CaseInputs lists what two load cases of one name are given differently, as
// the words of the design file; nil where they are the same.
func CaseInputs(first, other kinematics.LoadCase) []string {
	var list []string
	differ := func(key string, same bool) {
		if !same {
			list = append(list, key)
		}
	}
	differ("travel", first.Travel == other.Travel)
	differ("force", equalPointers(first.Force, other.Force))
	differ("chain_tension", first.ChainTension == other.ChainTension)
	differ("pedal_force", first.PedalForce == other.PedalForce)
	differ("crank_length", first.CrankLength == other.CrankLength)
	differ("gear", equalPointers(first.Gear, other.Gear))
	differ("brake_force", first.BrakeForce == other.BrakeForce)
	differ("lateral", first.Lateral == other.Lateral)
	differ("cycles", first.Cycles == other.Cycles)
	return list
}

func equalPointers[T comparable](a, b *T) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}

// String tells the rename as a guess.
func (r Rename) String() string {
	return fmt.Sprintf("%s perhaps renamed to %s (%s)", diag.Quote(r.From), diag.Quote(r.To), r.Reason)
}
