package fatigue

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"gudgeon/testdata"
)

func TestRainflowAsPrinted(t *testing.T) {
	table, err := testdata.Published("rainflow_astm")
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]float64{}
	for _, c := range Rainflow([]float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}) {
		got[strconv.FormatFloat(c.Range, 'g', -1, 64)] += c.Count
	}
	if len(got) != len(table.Rows) {
		t.Errorf("ranges %v", got)
	}
	for _, r := range table.Rows {
		if got[r.Text("range")] != r.Float("cycles") {
			t.Errorf("range %s: %g cycles, printed %s", r.Text("range"), got[r.Text("range")], r.Text("cycles"))
		}
	}
}

// A large swing with a ripple on it is one large cycle and the ripples, not the
// range of the whole record for each turn.
func TestRippleOnASwing(t *testing.T) {
	got := Rainflow([]float64{0, 60, 50, 100, 0})
	if len(got) != 3 || got[0] != (Cycle{10, 55, 1}) || got[1] != (Cycle{100, 50, 0.5}) || got[2] != (Cycle{100, 50, 0.5}) {
		t.Errorf("%v", got)
	}
	if l := got[0].Load(200); l != (Load{55, 5, 200}) {
		t.Errorf("%v", l)
	}
	for _, none := range [][]float64{nil, {3}, {3, 3, 3}} {
		if got := Rainflow(none); len(got) != 0 {
			t.Errorf("%v: %v", none, got)
		}
	}
}

// Each step of the record belongs to one cycle: 2·Σ count·range is the way up and
// down. The largest range is that of the record. Points on the way change nothing.
func TestRainflowProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		record := rapid.SliceOfN(rapid.Float64Range(-100, 100), 2, 60).Draw(t, "record")
		way, lo, hi := 0.0, record[0], record[0]
		dense := record[:1:1]
		for k, v := range record[1:] {
			way += math.Abs(v - record[k])
			lo, hi = math.Min(lo, v), math.Max(hi, v)
			dense = append(dense, (v+record[k])/2, v)
		}
		sum, largest := 0.0, 0.0
		cycles := Rainflow(record)
		for _, c := range cycles {
			sum += 2 * c.Count * c.Range
			largest = math.Max(largest, c.Range)
			if c.Mean-c.Range/2 < lo-1e-9 || c.Mean+c.Range/2 > hi+1e-9 {
				t.Fatalf("%v outside the record", c)
			}
		}
		if math.Abs(sum-way) > 1e-6 || math.Abs(largest-(hi-lo)) > 1e-9 {
			t.Fatalf("way %g of %g, largest %g of %g", sum, way, largest, hi-lo)
		}
		if again := Rainflow(dense); len(again) != len(cycles) {
			t.Fatalf("%d cycles, with points between %d", len(cycles), len(again))
		}
	})
}
