package linkage

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r2"
)

// Mobility is the count of a planar linkage's freedoms, 3·Moving − 2·Pins −
// Sliders (the criterion of Chebyshev, Grübler and Kutzbach).
type Mobility struct {
	Moving, Pins, Sliders int
}

// Count returns the freedoms that the numbers alone promise.
func (b Mobility) Count() int { return 3*b.Moving - 2*b.Pins - b.Sliders }

// Mobility counts the links other than the frame, the pins (a point of n links
// makes n−1) and the sliders. The shock is no link: it drives.
func (m *Mechanism) Mobility() Mobility {
	at := make([]int, len(m.Points))
	for _, pts := range m.Links {
		for _, p := range pts {
			at[p]++
		}
	}
	b := Mobility{Moving: len(m.Links) - 1, Sliders: len(m.Sliders)}
	for _, n := range at {
		b.Pins += max(0, n-1)
	}
	return b
}

// Fault is what keeps a mechanism from being one linkage of one freedom that
// the shock drives and the axle follows.
type Fault int

// The faults of a mechanism.
const (
	TooFree     Fault = iota + 1 // more than one freedom: Links move with the shock held
	TooStiff                     // no freedom: Links are held
	HiddenRigid                  // one freedom by count; Links are rigid, Loose move without the shock
	ShockIdle                    // the shock's length does not change as the linkage moves
	AxleHeld                     // the axle cannot move
	AxleOnFrame                  // the axle's link is the frame
	ShockOnLink                  // both mounts on one link
)

// MobilityError says what is wrong with a mechanism and with which links.
type MobilityError struct {
	Fault Fault
	Mobility
	Links []int // involved
	Loose []int // for HiddenRigid
}

// Error names the fault and the count.
func (e *MobilityError) Error() string {
	return fmt.Sprintf("linkage: fault %d: %d moving links, %d pins, %d sliders: mobility %d",
		e.Fault, e.Moving, e.Pins, e.Sliders, e.Count())
}

// rankTolerance separates zero from nonzero pivots of the constraint Jacobian
// at a generic geometry, relative to the largest.
const rankTolerance = 1e-9

// Check tells whether m is one linkage of one freedom, driven by its shock,
// that moves its axle. The error is a *MobilityError. It looks at the topology:
// ranks are taken at a geometry shaken off the design position, so that a
// linkage which only stands in a dead point passes.
func (m *Mechanism) Check() error {
	b := m.Mobility()
	fail := func(f Fault, links, loose []int) error {
		return &MobilityError{Fault: f, Mobility: b, Links: links, Loose: loose}
	}
	if m.Carrier == 0 {
		return fail(AxleOnFrame, nil, nil)
	}
	for k := range m.Links {
		if m.has(k, m.Shock[0]) && m.has(k, m.Shock[1]) {
			return fail(ShockOnLink, []int{k}, nil)
		}
	}
	if b.Moving == 0 {
		return fail(TooStiff, nil, nil)
	}
	g := m.shaken()
	free := nullspace(g.constraints(false), 3*b.Moving)
	held := nullspace(g.constraints(true), 3*b.Moving)
	moving, loose := movers(free, b.Moving), movers(held, b.Moving)
	switch n := b.Count(); {
	case n > 1:
		if len(loose) == 0 {
			loose = moving
		}
		return fail(TooFree, loose, nil)
	case n < 1 && len(free) == 0:
		return fail(TooStiff, others(moving, b.Moving), nil)
	case n != 1:
		return fail(HiddenRigid, m.rigid(free), loose)
	case len(free) != 1, len(held) != 0 && len(moving) < b.Moving:
		return fail(HiddenRigid, m.rigid(free), loose)
	case len(held) != 0:
		return fail(ShockIdle, loose, nil)
	case !slices.Contains(moving, m.Carrier):
		return fail(AxleHeld, []int{m.Carrier}, nil)
	}
	return nil
}

func (m *Mechanism) has(link, p int) bool {
	return slices.Contains(m.Links[link], p)
}

// shaken is m with every point moved by up to a twentieth of the whole, by a
// fixed rule that no symmetry survives.
func (m *Mechanism) shaken() *Mechanism {
	lo, hi := m.Points[0], m.Points[0]
	for _, p := range m.Points {
		lo.X, lo.Y = min(lo.X, p.X), min(lo.Y, p.Y)
		hi.X, hi.Y = max(hi.X, p.X), max(hi.Y, p.Y)
	}
	size := r2.Norm(r2.Sub(hi, lo)) / 20
	g := *m
	g.Points = make([]r2.Vec, len(m.Points))
	for k, p := range m.Points {
		// the golden ratio and √2 fill the square evenly and meet no ratio
		x := math.Mod(float64(k+1)*0.6180339887498949, 1)
		y := math.Mod(float64(k+1)*1.4142135623730951, 1)
		g.Points[k] = r2.Add(p, r2.Scale(size, r2.Vec{X: 2*x - 1, Y: 2*y - 1}))
	}
	return &g
}

// constraints is the Jacobian of pins, sliders and, where asked, the shock's
// length in the coordinates (x, y, φ) of each moving link, turns about the
// origin scaled to lengths.
func (m *Mechanism) constraints(shock bool) [][]float64 {
	cols := 3 * (len(m.Links) - 1)
	var rows [][]float64
	scale := 0.0
	for _, p := range m.Points {
		scale = max(scale, r2.Norm(p))
	}
	// add puts g·v(point of link) into a row
	add := func(row []float64, link, p int, g r2.Vec) {
		if link == 0 {
			return
		}
		k := 3 * (link - 1)
		row[k] += g.X
		row[k+1] += g.Y
		row[k+2] += r2.Cross(m.Points[p], g) / scale
	}
	for p := range m.Points {
		first := -1
		for k := range m.Links {
			if !m.has(k, p) {
				continue
			}
			if first < 0 {
				first = k
				continue
			}
			for _, g := range []r2.Vec{{X: 1}, {Y: 1}} {
				row := make([]float64, cols)
				add(row, first, p, g)
				add(row, k, p, r2.Scale(-1, g))
				rows = append(rows, row)
			}
		}
	}
	for _, s := range m.Sliders {
		G, K := m.Points[s.Guide[0]], m.Points[s.Guide[1]]
		n := r2.Unit(perp(r2.Sub(K, G)))
		row := make([]float64, cols)
		add(row, s.Link, s.Point, n)
		add(row, s.On, s.Point, r2.Scale(-1, n))
		rows = append(rows, row)
	}
	if shock {
		row := make([]float64, cols)
		u := r2.Unit(r2.Sub(m.Points[m.Shock[0]], m.Points[m.Shock[1]]))
		add(row, m.linkOf(m.Shock[0]), m.Shock[0], u)
		add(row, m.linkOf(m.Shock[1]), m.Shock[1], r2.Scale(-1, u))
		rows = append(rows, row)
	}
	return rows
}

// linkOf is the first link that lists p.
func (m *Mechanism) linkOf(p int) int {
	for k := range m.Links {
		if m.has(k, p) {
			return k
		}
	}
	return 0
}

// nullspace returns unit vectors that span the motions which keep J, len(v) ==
// cols, by elimination with full pivoting. It overwrites J.
func nullspace(J [][]float64, cols int) [][]float64 {
	at := make([]int, cols) // column → variable
	for k := range at {
		at[k] = k
	}
	first, rank := 0.0, 0
	for ; rank < min(len(J), cols); rank++ {
		pivot := eliminate(J, at, rank)
		first = max(first, pivot)
		if pivot <= rankTolerance*first {
			break
		}
	}
	var basis [][]float64
	for free := rank; free < cols; free++ {
		v := make([]float64, cols)
		v[at[free]] = 1
		for k := rank - 1; k >= 0; k-- {
			sum := 0.0
			for c := k + 1; c < cols; c++ {
				sum += J[k][c] * v[at[c]]
			}
			v[at[k]] = -sum / J[k][k]
		}
		floats.Scale(1/floats.Norm(v, 2), v)
		basis = append(basis, v)
	}
	return basis
}

// eliminate brings the largest entry of the rows and columns from k on to k, k,
// clears the column below it and returns its size. at follows the columns.
func eliminate(J [][]float64, at []int, k int) float64 {
	row, col, best := k, k, 0.0
	for r := k; r < len(J); r++ {
		for c := k; c < len(at); c++ {
			if v := math.Abs(J[r][c]); v > best {
				row, col, best = r, c, v
			}
		}
	}
	if best == 0 {
		return 0
	}
	J[k], J[row] = J[row], J[k]
	at[k], at[col] = at[col], at[k]
	for _, r := range J {
		r[k], r[col] = r[col], r[k]
	}
	for _, r := range J[k+1:] {
		if f := r[k] / J[k][k]; f != 0 {
			for c := k; c < len(at); c++ {
				r[c] -= f * J[k][c]
			}
		}
	}
	return best
}

// movers are the links that some motion of the basis moves.
func movers(basis [][]float64, moving int) []int {
	var links []int
	for k := range moving {
		for _, v := range basis {
			if math.Hypot(math.Hypot(v[3*k], v[3*k+1]), v[3*k+2]) > 1e-7 {
				links = append(links, k+1)
				break
			}
		}
	}
	return links
}

// others are the moving links not among l.
func others(l []int, moving int) []int {
	var rest []int
	for k := 1; k <= moving; k++ {
		if !slices.Contains(l, k) {
			rest = append(rest, k)
		}
	}
	return rest
}

// rigid is the largest group of links, two or more, none of which moves
// relative to another in any motion of the basis.
func (m *Mechanism) rigid(basis [][]float64) []int {
	motion := func(v []float64, link, c int) float64 {
		if link == 0 {
			return 0
		}
		return v[3*(link-1)+c]
	}
	var best []int
	for a := range m.Links {
		group := []int{a}
		for b := range m.Links {
			if b == a {
				continue
			}
			same := true
			for _, v := range basis {
				for c := range 3 {
					same = same && math.Abs(motion(v, a, c)-motion(v, b, c)) < 1e-7
				}
			}
			if same {
				group = append(group, b)
			}
		}
		if len(group) > len(best) && len(group) > 1 {
			best = group
		}
	}
	return best
}
