package plots

import (
	"math"
	"strings"
	"testing"
)

// hills is a map of n by m cells with a smooth shape.
func hills(n, m int) Map {
	mp := Map{
		Caption: Caption{Title: "Progression over the place of a pivot", Subtitle: "Tarn 153; 41 × 31 designs, × marks the current one"},
		X:       "main x, mm", Y: "main y, mm", Key: "progression, %", Missing: "cannot be built",
	}
	for i := range n {
		mp.Xs = append(mp.Xs, 40*float64(i)/float64(n-1))
	}
	for j := range m {
		mp.Ys = append(mp.Ys, 30*float64(j)/float64(m-1))
		row := make([]float64, n)
		for i, x := range mp.Xs {
			row[i] = 12 + 8*math.Sin(x/9)*math.Cos(mp.Ys[j]/7) + x/6
		}
		mp.Values = append(mp.Values, row)
	}
	mp.Current = &Place{18, 14}
	return mp
}

var mapSamples = []sample{
	{"map", func() (*Figure, error) {
		m := hills(41, 31)
		m.Bounds = []Bound{{10, "at least 10"}, {18.2, "at most 18.2"}}
		for j, y := range m.Ys {
			for i, x := range m.Xs {
				if x+2*y < 16 {
					m.Values[j][i] = math.NaN()
				}
			}
		}
		return m.Figure()
	}},
	{"map-coarse", func() (*Figure, error) { return hills(2, 3).Figure() }},
	{"map-one-value", func() (*Figure, error) {
		m := hills(5, 5)
		for j := range m.Values {
			for i := range m.Values[j] {
				m.Values[j][i] = 3.5
			}
		}
		m.Values[2][2] = math.Inf(1)
		m.Bounds = []Bound{{3.5, "at least 3.5"}, {3.5, "at most 3.5"}, {9, "off the key"}}
		return m.Figure()
	}},
	{"map-hostile", func() (*Figure, error) {
		m := hills(12, 9)
		m.Title, m.X, m.Y = "<b>\x1b[31m map", strings.Repeat("a very long label & ", 12), strings.Repeat("another <long> label ", 12)
		m.Key, m.Missing = strings.Repeat("key ", 30), strings.Repeat("nothing ", 30)
		m.Values[0][0] = math.NaN()
		m.Bounds = []Bound{{10, strings.Repeat("far too long a name ", 9)}}
		return m.Figure()
	}},
}

// Borders lie half way between the middles, also of unequal steps.
func TestBorders(t *testing.T) {
	got := borders([]float64{0, 2, 6})
	for i, want := range []float64{-1, 1, 4, 8} {
		if got[i] != want {
			t.Errorf("border %d is %v, want %v", i, got[i], want)
		}
	}
}

// The contour of a plane is the straight line that solves it, in every square
// that it crosses, and has the length of that line.
func TestContour(t *testing.T) {
	m := hills(11, 11) // x from 0 to 40, y from 0 to 30
	for j, y := range m.Ys {
		for i, x := range m.Xs {
			m.Values[j][i] = 3*x + 4*y
		}
	}
	s := &mapSheet{Map: m}
	length := 0.0
	for j := range 10 {
		for i := range 10 {
			for _, p := range s.pieces(i, j, 101) {
				for _, at := range p {
					if math.Abs(3*at.X+4*at.Y-101) > 1e-12*101 {
						t.Errorf("the contour passes through (%v, %v), where the value is %v", at.X, at.Y, 3*at.X+4*at.Y)
					}
				}
				length += math.Hypot(p[1].X-p[0].X, p[1].Y-p[0].Y)
			}
		}
	}
	// from (0, 101/4) to (101/3, 0)
	if want := math.Hypot(101.0/3, 101.0/4); math.Abs(length-want) > 1e-12*want {
		t.Errorf("the contour is %v long, want %v", length, want)
	}
}

// A saddle is cut into two pieces that do not cross; the mean says which.
func TestSaddle(t *testing.T) {
	s := &mapSheet{Map: Map{Xs: []float64{0, 1}, Ys: []float64{0, 1}}}
	for _, c := range []struct {
		value  float64
		joined bool // the high corners, lower left and upper right
	}{{0.4, true}, {0.6, false}} {
		s.Values = [][]float64{{1, 0}, {0, 1}}
		pieces := s.pieces(0, 0, c.value)
		if len(pieces) != 2 {
			t.Fatalf("%d pieces", len(pieces))
		}
		// a piece that cuts off the lower left corner has both ends near it
		cuts := false
		for _, p := range pieces {
			cuts = cuts || p[0].X+p[0].Y < 1 && p[1].X+p[1].Y < 1 && p[0].X*p[1].Y+p[0].Y*p[1].X > 0
		}
		if cuts == c.joined {
			t.Errorf("at %v the high corners are joined: %v, want %v", c.value, !cuts, c.joined)
		}
	}
}

// Every step of hue differs from the next in grey too.
func TestHues(t *testing.T) {
	for n := 2; n <= 8; n++ {
		before := 300.0
		for k := range n {
			h := hue(k, n)
			grey := 0.2126*float64(h.r) + 0.7152*float64(h.g) + 0.0722*float64(h.b)
			if grey > before-15 {
				t.Errorf("step %d of %d is %v in grey, the one before %v", k, n, grey, before)
			}
			before = grey
		}
	}
}

func TestMapRefused(t *testing.T) {
	for want, change := range map[string]func(*Map){
		"two columns":           func(m *Map) { m.Xs = m.Xs[:1] },
		"rows of a map must":    func(m *Map) { m.Ys[1] = m.Ys[0] },
		"columns of a map must": func(m *Map) { m.Xs[1] = math.NaN() },
		"has values for":        func(m *Map) { m.Values = m.Values[1:] },
		"has a row of":          func(m *Map) { m.Values[1] = nil },
		"no cell": func(m *Map) {
			for _, r := range m.Values {
				for i := range r {
					r[i] = math.NaN()
				}
			}
		},
		"beyond":           func(m *Map) { m.Values[0][0] = 1e200 },
		"contour cannot":   func(m *Map) { m.Bounds = []Bound{{math.Inf(1), ""}} },
		"cannot be marked": func(m *Map) { m.Current = &Place{math.NaN(), 0} },
	} {
		m := hills(4, 4)
		change(&m)
		if _, err := m.Figure(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v does not say %q", err, want)
		}
	}
}
