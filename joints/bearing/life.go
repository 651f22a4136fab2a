package bearing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gudgeon/joints/check"
)

// reliabilities is a1 by percent: ISO 281:2007, table 12, from memory.
var reliabilities = []struct{ percent, a1 float64 }{{90, 1}, {95, 0.64}, {96, 0.55}, {97, 0.47}, {98, 0.37}, {99, 0.25}}

// a1 returns the factor of one of reliabilities.
func a1(percent float64) float64 {
	k := slices.IndexFunc(reliabilities, func(r struct{ percent, a1 float64 }) bool { return r.percent == percent })
	return reliabilities[k].a1
}

// lifeLimit is the share of C, or all of C0 where that is less, above which ISO
// 281 has the maker asked: balls and rings then yield.
const lifeLimit = 0.5

// past is why a life cannot be told of one bearing under one load.
type past struct{ frets, heavy, axial bool }

func (p past) any() bool { return p.frets || p.heavy || p.axial }

// judge returns P of one bearing and what keeps its life from being told.
func (m *Model) judge(l Load, c carried) (p float64, out past) {
	p, out.axial = m.dynamicLoad(c)
	out.heavy = p > math.Min(lifeLimit*m.bearing.DynamicRating, m.bearing.StaticRating)
	out.frets = m.rollingOf(l.Swing, c.radial) == frets
	return p, out
}

// wears tells whether a life is asked for at all.
func (l Load) wears() bool { return l.Cycles > 0 }

// life returns the life check of one bearing over all loads, by Palmgren and
// Miner: the load that would use up the rating in so many cycles,
//
//	(Σ Pj³·nj/(a1·aISO·10⁶))^(1/3)         nj revolutions
//
// which must not pass C. Cases whose loads point elsewhere press other parts of the
// race, so the sum is on the safe side. ok is false where no load asks for a life or one has a
// life that cannot be told.
func (m *Model) life(i int, loads []Load) (c check.Check, ok bool) {
	name, share, revs := "", 0.0, 0.0
	for _, l := range loads {
		if !l.wears() {
			continue
		}
		carried := m.carry(l)[i]
		p, past := m.judge(l, carried)
		if past.any() {
			return check.Check{}, false
		}
		n := revolutions(l.Cycles, l.Swing)
		name, share, revs, ok = carried.name, share+p*p*p*n, revs+n, true
	}
	if !ok {
		return check.Check{}, false
	}
	b := m.bearing
	factor := a1(b.Reliability) * b.LifeFactor
	mean := math.Cbrt(share / revs)
	c = check.New("rolling life", math.Cbrt(share/(factor*1e6)), b.DynamicRating, "N")
	c.Part = name
	c.Source = m.ratingSource("C")
	c.Method = fmt.Sprintf("ISO 281: P %.4g N for %.4g revolutions' worth of swings, a1 %.3g (%g %%), aISO %.3g", mean, revs, a1(b.Reliability), b.Reliability, b.LifeFactor)
	c.Remedy = "a larger bearing, a wider span"
	return c, true
}

// ratingSource says where C or C0 comes from.
func (m *Model) ratingSource(symbol string) string {
	given, standard := m.given.DynamicRating, "ISO 281:2007"
	if symbol == "C0" {
		given, standard = m.given.StaticRating, "ISO 76:2006"
	}
	if given > 0 {
		return symbol + " as given"
	}
	b := m.bearing
	words := []string{fmt.Sprintf("%s of %d balls of %.4g mm by %s", symbol, b.Balls*b.Rows, b.BallDiameter, standard)}
	if m.given.BallDiameter == 0 {
		words = append(words, "balls fitted to catalogue ratings, from memory")
	}
	return strings.Join(words, "; ")
}
