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
// positions of a Path, N: (FX, FY)[k][i] is that of Entries[k]. Shock is
// positive in compression. It is the caller's buffer, like a Path.
type Reactions struct {
	Entries []Entry
	FX, FY  [][]float64
	Shock   []float64

	loads []linkLoad
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

func (rx *Reactions) load(link int) *linkLoad { return &rx.loads[link] }

// pair adds (x, y) to the entry plus and takes it from the entry minus.
func (rx *Reactions) pair(plus, minus, i int, x, y float64) {
	rx.FX[plus][i] += x
	rx.FY[plus][i] += y
	rx.FX[minus][i] -= x
	rx.FY[minus][i] -= y
}

// NewReactions returns buffers for n positions of the plan.
func (p *Plan) NewReactions(n int) *Reactions {
	rx := &Reactions{
		Entries: p.entries,
		FX:      make([][]float64, len(p.entries)), FY: make([][]float64, len(p.entries)),
		loads: make([]linkLoad, len(p.links)),
	}
	buf := make([]float64, n*(2*len(p.entries)+3*len(p.links)+1))
	next := func() []float64 {
		row := buf[:n:n]
		buf = buf[n:]
		return row
	}
	for k := range rx.FX {
		rx.FX[k], rx.FY[k] = next(), next()
	}
	for k := range rx.loads {
		rx.loads[k] = linkLoad{next(), next(), next()}
	}
	rx.Shock = next()
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
	for k := range dst.FX {
		clear(dst.FX[k][:n])
		clear(dst.FY[k][:n])
	}
	for k := range dst.loads {
		takeRow(dst.loads[k].x[:n], loads.FX[k])
		takeRow(dst.loads[k].y[:n], loads.FY[k])
		takeRow(dst.loads[k].m[:n], loads.M[k])
	}
	if m.plan.byAngle {
		m.shockByWork(dst, pt, n)
	}
	for lo := 0; lo < n; lo += chunk {
		hi := min(lo+chunk, n)
		for k := len(m.steps) - 1; k >= 0; k-- {
			m.steps[k].react(dst, pt, lo, hi)
		}
	}
}

func takeRow(dst, src []float64) {
	if src == nil {
		clear(dst)
		return
	}
	copy(dst, src)
}

// shockByWork finds the shock force by virtual work, Σ(F·v + M·ω) = shock
// force per unit of stroke, and puts it on the links at its mounts, for a plan
// that advances by an angle.
func (m *Motion) shockByWork(rx *Reactions, pt *Path, n int) {
	p := m.plan
	for i := range n {
		work := 0.0
		for k := 1; k < len(p.links); k++ {
			f := rx.load(k)
			if f.x[i] == 0 && f.y[i] == 0 && f.m[i] == 0 {
				continue
			}
			a := p.spans[k].p
			A, v := pt.At(a, i), pt.V(a, i)
			work += f.x[i]*v.X + f.y[i]*v.Y + f.about(i, A)*m.Omega(pt, k, i)
		}
		P, G := pt.At(p.shock[0], i), pt.At(p.shock[1], i)
		D := r2.Sub(P, G)
		F := r2.Scale(work/r2.Norm(D), D)
		rx.Shock[i] = work
		e := p.shockEntries
		rx.pair(e[0], e[1], i, F.X, F.Y)
		rx.pair(e[3], e[2], i, F.X, F.Y)
		rx.load(p.owner[p.shock[0]]).add(i, P, F.X, F.Y)
		rx.load(p.owner[p.shock[1]]).add(i, G, -F.X, -F.Y)
	}
}
