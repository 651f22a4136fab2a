package linkage

import "gonum.org/v1/gonum/spatial/r2"

// ShockMember stands for the shock in Entry.Link.
const ShockMember = -1

// Entry names one force in Reactions: that of the pin or slider at Point on
// Link, an index or ShockMember.
type Entry struct {
	Point  int
	Link   int
	Slider bool // the guide's force, not the pin's

	rows []int // of Reactions, summed
	sign float64
}

// Loads are the outside loads on the links over the positions of a Path: the
// force (FX, FY)[link][i] and its moment M[link][i] about the origin. Rows may
// be nil: no load.
type Loads struct {
	FX, FY, M [][]float64
}

// NewLoads returns loads without rows for the plan's links.
func (p *Plan) NewLoads() *Loads {
	n := len(p.links)
	return &Loads{FX: make([][]float64, n), FY: make([][]float64, n), M: make([][]float64, n)}
}

// Add puts the force F at the place r, and a moment (N·mm, counter-clockwise),
// on link at position i of n.
func (l *Loads) Add(link, i, n int, r, F r2.Vec, moment float64) {
	if l.FX[link] == nil {
		l.FX[link], l.FY[link], l.M[link] = make([]float64, n), make([]float64, n), make([]float64, n)
	}
	l.FX[link][i] += F.X
	l.FY[link][i] += F.Y
	l.M[link][i] += r2.Cross(r, F) + moment
}

// Reactions are the forces in every pin, slider and the shock over the
// positions of a Path, N. Shock is positive in compression. It is the caller's
// buffer, like a Path.
//
// A pin of n members has n−1 rows, the force on each member but the one that
// brings the point; that one takes the sum the other way.
type Reactions struct {
	Entries []Entry
	Shock   []float64

	x, y  [][]float64
	loads []linkLoad
	live  []bool // [link]: loads holds something
	zero  []float64
}

// Force returns the force of entry k at position i.
func (rx *Reactions) Force(k, i int) r2.Vec {
	e := &rx.Entries[k]
	var F r2.Vec
	for _, row := range e.rows {
		F.X += rx.x[row][i]
		F.Y += rx.y[row][i]
	}
	return r2.Scale(e.sign, F)
}

// linkLoad is what a link carries besides the forces not yet found.
type linkLoad struct{ x, y, m []float64 }

// about is the moment about A at position i.
func (f *linkLoad) about(i int, A r2.Vec) float64 {
	return f.m[i] - (A.X*f.y[i] - A.Y*f.x[i])
}

// add puts the force (x, y) at A on the link.
func (f *linkLoad) add(i int, A r2.Vec, x, y float64) {
	f.x[i] += x
	f.y[i] += y
	f.m[i] += A.X*y - A.Y*x
}

// load is what the link carries so far, zeros where that is nothing.
func (rx *Reactions) load(link int) linkLoad {
	if !rx.live[link] {
		return linkLoad{rx.zero, rx.zero, rx.zero}
	}
	return rx.loads[link]
}

// take is load for a step that adds to it over the positions lo to hi.
func (rx *Reactions) take(link, lo, hi int) linkLoad {
	f := rx.loads[link]
	if !rx.live[link] {
		rx.live[link] = true
		clear(f.x[lo:hi])
		clear(f.y[lo:hi])
		clear(f.m[lo:hi])
	}
	return f
}

func (rx *Reactions) pin(row int) (x, y []float64) { return rx.x[row], rx.y[row] }

func (rx *Reactions) setPin(row, i int, F r2.Vec) { rx.x[row][i], rx.y[row][i] = F.X, F.Y }

// NewReactions returns buffers for n positions of the plan.
func (p *Plan) NewReactions(n int) *Reactions {
	rx := &Reactions{
		Entries: p.entries,
		x:       make([][]float64, p.rows), y: make([][]float64, p.rows),
		loads: make([]linkLoad, len(p.links)), live: make([]bool, len(p.links)),
	}
	buf := make([]float64, n*(2*p.rows+3*len(p.links)+2))
	next := func() []float64 {
		row := buf[:n:n]
		buf = buf[n:]
		return row
	}
	for k := range rx.x {
		rx.x[k], rx.y[k] = next(), next()
	}
	for k := range rx.loads {
		rx.loads[k] = linkLoad{next(), next(), next()}
	}
	rx.Shock, rx.zero = next(), next()
	return rx
}

// React finds the pin and shock forces that hold every link in equilibrium
// under loads at every position of pt, which this motion has swept. Links are
// massless, pins and sliders without friction. The steps of the plan are
// walked backwards: what is placed last carries nobody else, so each step's
// forces follow from the loads on its own links alone. dst must come from the
// same plan and be as long as pt. It allocates nothing.
func (m *Motion) React(dst *Reactions, pt *Path, loads *Loads) {
	n := len(pt.Stroke)
	pt.fillFrame(m)
	for lo := 0; lo < n; lo += chunk {
		hi := min(lo+chunk, n)
		for k := range dst.loads {
			dst.live[k] = loads.FX[k] != nil
			if dst.live[k] {
				copy(dst.loads[k].x[lo:hi], loads.FX[k][lo:hi])
				copy(dst.loads[k].y[lo:hi], loads.FY[k][lo:hi])
				copy(dst.loads[k].m[lo:hi], loads.M[k][lo:hi])
			}
		}
		if m.plan.byAngle {
			m.shockByWork(dst, pt, lo, hi)
		}
		for k := len(m.steps) - 1; k >= 0; k-- {
			m.steps[k].react(dst, pt, lo, hi)
		}
	}
}

// shockByWork finds the shock force by virtual work, Σ(F·v + M·ω) = shock
// force per unit of stroke, and puts it on the links at its mounts, for a plan
// that advances by an angle.
func (m *Motion) shockByWork(rx *Reactions, pt *Path, lo, hi int) {
	p := m.plan
	work := rx.Shock
	clear(work[lo:hi])
	for k := 1; k < len(p.links); k++ {
		if !rx.live[k] {
			continue
		}
		f, a := &rx.loads[k], p.links[k][0]
		for i := lo; i < hi; i++ {
			v := pt.V(a, i)
			work[i] += f.x[i]*v.X + f.y[i]*v.Y + f.about(i, pt.At(a, i))*pt.w[k][i]
		}
	}
	near, far := rx.take(p.owner[p.shock[0]], lo, hi), rx.take(p.owner[p.shock[1]], lo, hi)
	for i := lo; i < hi; i++ {
		P, G := pt.At(p.shock[0], i), pt.At(p.shock[1], i)
		D := r2.Sub(P, G)
		F := r2.Scale(work[i]/r2.Norm(D), D)
		rx.setPin(p.shockRows[0], i, r2.Scale(-1, F))
		rx.setPin(p.shockRows[1], i, F)
		near.add(i, P, F.X, F.Y)
		far.add(i, G, -F.X, -F.Y)
	}
}
