package chain

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
)

// pitchDiameters are printed values: diameters of the pitch circle for a chain
// of the given pitch.
var pitchDiameters = []struct {
	source string
	pitch  float64
	rows   string // teeth diameter
}{
	{
		// www.tandwiel.info, "Pitch diameter of roller chain wheels", table for
		// a chain of one inch, mm; read 2026.
		"table for one inch", 25.4,
		`8 66.37   9 74.26   10 82.20  11 90.16  12 98.14  13 106.14 14 114.15 15 122.17 16 130.20
		17 138.23 18 146.27 19 154.32 20 162.37 21 170.42 22 178.48 23 186.54 24 194.60 25 202.66
		26 210.72 27 218.79 28 226.86 29 234.93 30 243.00 31 251.07 32 259.14 33 267.21 34 275.28
		35 283.36 36 291.43 37 299.51 38 307.58 39 315.66 40 323.74 42 339.89 44 356.05 46 372.20
		48 388.36 50 404.52 51 412.60 52 420.68 60 485.33 68 549.98 80 646.97 98 792.47 120 970.32
		152 1229.02`,
	},
	{
		// ISO 606:2015, annex A (normative), diameters for unit pitch; from
		// memory. 11 and 22 teeth are not held here: they are remembered as
		// 3.5494 and 7.0266, cut off where the others are rounded. The table
		// above has both.
		"ISO 606 annex A", 1,
		`9 2.9238 10 3.2361 12 3.8637 13 4.1786 14 4.4940 15 4.8097 16 5.1258 17 5.4422
		18 5.7588 19 6.0755 20 6.3925 21 6.7095 23 7.3439 24 7.6613 25 7.9787`,
	},
}

func TestPitchRadiusPublished(t *testing.T) {
	for _, p := range pitchDiameters {
		f := strings.Fields(p.rows)
		for i := 0; i < len(f); i += 2 {
			z, err := strconv.Atoi(f[i])
			if err != nil {
				t.Fatal(err)
			}
			want, err := strconv.ParseFloat(f[i+1], 64)
			if err != nil {
				t.Fatal(err)
			}
			r, err := PitchRadius(z, p.pitch)
			if err != nil {
				t.Fatal(err)
			}
			_, decimals, _ := strings.Cut(f[i+1], ".")
			half := 0.5*math.Pow10(-len(decimals)) + 1e-9
			if d := 2 * r; math.Abs(d-want) > half {
				t.Errorf("%s: %d teeth: diameter %.6f, printed %s", p.source, z, d, f[i+1])
			}
		}
	}
}

// The corners of a regular polygon: triangle, square, hexagon.
func TestPitchRadiusPolygons(t *testing.T) {
	for z, want := range map[int]float64{3: 1 / math.Sqrt(3), 4: 1 / math.Sqrt2, 6: 1} {
		if r, err := PitchRadius(z, 1); err != nil || math.Abs(r-want) > 4e-16 {
			t.Errorf("%d teeth: %v, %v; want %v", z, r, err, want)
		}
	}
}

func TestPitchRadiusRefuses(t *testing.T) {
	for _, c := range []struct {
		teeth int
		pitch float64
		field string
	}{
		{2, 12.7, "teeth"}, {0, 12.7, "teeth"}, {-5, 12.7, "teeth"},
		{32, 0, "pitch"}, {32, -12.7, "pitch"}, {32, math.NaN(), "pitch"}, {32, math.Inf(1), "pitch"},
	} {
		var e *InputError
		if s, err := NewSprocket(c.teeth, c.pitch); !errors.As(err, &e) || e.Path() != c.field || s.Radius != 0 {
			t.Errorf("%d teeth, pitch %v: %v, %v; want an error on %s", c.teeth, c.pitch, s, err, c.field)
		}
	}
}
