package spline

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"gudgeon/joints/check"
)

// wanted is a request that all standards meet.
func wanted() Request {
	s := sound()
	s.Standard, s.Module, s.Teeth, s.PressureAngle, s.Root = "", 0, 0, 0, ""
	return Request{Joint: s, Torques: []float64{-120e3, 180e3}, LargestOuterDiameter: 50, LargestLength: 30, LeastBore: 10, Safety: 1.2}
}

// What any list of proposals must be:
//
//  1. each is taken by New and reaches the safety under every torque, within the
//     room, with the numbers that it tells;
//  2. one step shorter, slimmer or more bored, none does;
//  3. none betters another in all of diameter, length, mass and play.
func TestProposals(t *testing.T) {
	for _, standard := range append(Standards(), "") {
		r := wanted()
		if standard != "" {
			r.Standards = []string{standard}
		}
		if standard == iso14Name {
			r.LargestOuterDiameter, r.LargestLength = 70, 60
		}
		got, err := Propose(r, ProposeSettings{})
		if err != nil {
			t.Fatal(err)
		}
		if len(got.List) == 0 || got.Tried < 100 {
			t.Errorf("%q: %d proposals of %d tried: %v", standard, len(got.List), got.Tried, got.Refusals)
		}
		for i, p := range got.List {
			m, err := New(p.Spline)
			if err != nil {
				t.Fatalf("%s: %v", p.Designation, err)
			}
			for _, torque := range r.Torques {
				if safety, _ := check.Lowest(m.Checks(torque)); safety < r.Safety || torque == 180e3 && (safety != p.Safety || p.Governing.Safety != safety) {
					t.Errorf("%s: safety %g, told %g", p.Designation, safety, p.Safety)
				}
			}
			if p.OuterDiameter > r.LargestOuterDiameter || p.Length > r.LargestLength || p.Spline.Bore < r.LeastBore || p.OuterDiameter != p.Spline.HubOuterDiameter ||
				p.Length != p.Spline.Length || p.Play != m.Geometry().Play.Worst || p.Mass <= 0 || p.Designation != m.Geometry().External.Designation {
				t.Errorf("%+v", p)
			}
			for _, n := range []Neighbour{p.Shorter, p.Slimmer, p.Bored} {
				if n.Safety >= r.Safety || n.Reason == "" {
					t.Errorf("%s, %g x %g, bore %g: next %+v", p.Designation, p.OuterDiameter, p.Length, p.Spline.Bore, n)
				}
			}
			for j, q := range got.List {
				if i != j && q.OuterDiameter <= p.OuterDiameter && q.Length <= p.Length && q.Mass <= p.Mass && q.Play <= p.Play {
					t.Errorf("%+v betters %+v", q, p)
				}
			}
		}
	}
}

// Against trying everything by New: each spline that serves is matched or bettered
// by a proposal, and each proposal is among them.
func TestProposalsAgainstAll(t *testing.T) {
	r := wanted()
	r.Standards = []string{din5480Name}
	r.LargestOuterDiameter, r.LargestLength, r.LeastBore, r.LengthStep, r.DiameterStep, r.BoreStep = 38, 24, 8, 4, 3, 3
	r.Torques = []float64{90e3}
	r.Joint.ToleranceLength = 0
	got, err := Propose(r, ProposeSettings{})
	if err != nil {
		t.Fatal(err)
	}
	type all struct{ outer, length, mass, play float64 }
	var served []all
	for _, size := range sizesOf(din5480Name) {
		if size(Spline{}).ReferenceDiameter > 36 {
			continue // no hub of 38 mm has a wall outside it
		}
		for length := 4.0; length <= 24; length += 4 {
			for outer := 38.0; outer > 14; outer -= 3 {
				for bore := 8.0; bore < 36; bore += 3 {
					s := size(r.Joint.template(din5480Name))
					s.Length, s.HubOuterDiameter, s.Bore = length, outer, bore
					m, err := New(s)
					if err != nil || m.wall() < 2*s.Module-1e-9 {
						continue
					}
					if safety, _ := check.Lowest(m.Checks(90e3)); safety < r.Safety {
						continue
					}
					d := m.geometry.PitchDiameter
					mass := math.Pi / 4 * length * (7850e-9*(d*d-bore*bore) + 2800e-9*(outer*outer-d*d))
					served = append(served, all{outer, length, mass, m.geometry.Play.Worst})
				}
			}
		}
	}
	if len(served) < 50 || len(got.List) < 3 {
		t.Fatalf("%d serve, %d proposed", len(served), len(got.List))
	}
	const slack = 1 + 1e-12 // of masses, formed in another order
	for _, s := range served {
		matched := false
		for _, p := range got.List {
			matched = matched || p.OuterDiameter <= s.outer && p.Length <= s.length && p.Mass <= s.mass*slack && p.Play <= s.play
		}
		if !matched {
			t.Errorf("%+v is not matched", s)
		}
	}
	for _, p := range got.List {
		among := false
		for _, s := range served {
			among = among || s.outer == p.OuterDiameter && s.length == p.Length && s.play == p.Play && math.Abs(s.mass/p.Mass-1) < 1e-12
		}
		if !among {
			t.Errorf("%+v does not serve", p)
		}
	}
}

// Any number of workers gives the same, to the bit.
func TestProposeWorkers(t *testing.T) {
	r := wanted()
	r.LargestOuterDiameter, r.LengthStep = 40, 2
	one, err := Propose(r, ProposeSettings{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{0, 2, 7} {
		if many, _ := Propose(r, ProposeSettings{Workers: n}); !reflect.DeepEqual(one, many) {
			t.Errorf("%d workers differ from one", n)
		}
	}
}

// Where nothing serves, it is said why.
func TestProposeNothing(t *testing.T) {
	r := wanted()
	r.Torques = []float64{1e9}
	got, err := Propose(r, ProposeSettings{})
	if err != nil || len(got.List) != 0 || len(got.Refusals) == 0 {
		t.Fatalf("%v, %d proposals, %v", err, len(got.List), got.Refusals)
	}
	sum, words := 0, ""
	for _, f := range got.Refusals {
		sum += f.Sizes
		words += f.Reason + ";"
	}
	if sum != got.Sizes || !strings.Contains(words, "root shear") || !strings.Contains(words, "hub larger than allowed") {
		t.Errorf("%d of %d: %s", sum, got.Sizes, words)
	}
}

func TestProposeMistakes(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		spoil func(*Request)
		field string
	}{
		{func(r *Request) { r.Standards = []string{"DIN 5482"} }, "standards"},
		{func(r *Request) { r.Standards = []string{} }, "standards"},
		{func(r *Request) { r.Torques = nil }, "torque"},
		{func(r *Request) { r.Torques = []float64{1, nan} }, "torque"},
		{func(r *Request) { r.LargestOuterDiameter = 0 }, "largest_outer_diameter"},
		{func(r *Request) { r.LargestLength = nan }, "largest_length"},
		{func(r *Request) { r.LeastBore = -1 }, "least_bore"},
		{func(r *Request) { r.Safety = -1 }, "safety"},
		{func(r *Request) { r.LengthStep = -1 }, "length_step"},
		{func(r *Request) { r.LengthStep = 1e-6 }, "length_step"},
		{func(r *Request) { r.DiameterStep = nan }, "diameter_step"},
		{func(r *Request) { r.BoreStep = 1e-9 }, "bore_step"},
		{func(r *Request) { r.Joint.HubMaterial = "wood" }, "hub_material"},
		{func(r *Request) { r.Joint.Cycles = 0 }, "cycles"},
		{func(r *Request) { r.Joint.Piloted = false }, "seat"},
		{func(r *Request) { r.Joint.Standard, r.Joint.ShaftClass = iso4156Name, 9 }, "shaft_class"},
		{func(r *Request) { r.Joint.Standard, r.Joint.Fit = b921Name, "sliding" }, "fit"},
		{func(r *Request) { r.Joint.Standard, r.Joint.ShaftFit = din5480Name, "Q" }, "shaft_fit"},
	} {
		r := wanted()
		c.spoil(&r)
		_, err := Propose(r, ProposeSettings{})
		var errs check.InputErrors
		if !errors.As(err, &errs) || len(errs) != 1 || errs[0].Field != c.field {
			t.Errorf("%s: %v", c.field, err)
		}
	}
}

// Fits and classes hold for their own standard, and a grip for all.
func TestProposeKeepsTheJoint(t *testing.T) {
	r := wanted()
	r.Joint.Standard, r.Joint.ShaftFit, r.Joint.ShaftClass = iso4156Name, "d", 6
	r.Joint.Grip = Grip{Kind: Pinch, Force: 5e3}
	got, err := Propose(r, ProposeSettings{})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range got.List {
		own := p.Spline.Standard == iso4156Name
		if own != (p.Spline.ShaftFit == "d") || own != (p.Spline.ShaftClass == 6) || p.Spline.Grip != r.Joint.Grip {
			t.Errorf("%+v", p.Spline)
		}
	}
}

// BenchmarkPropose is a search through the series of all standards.
func BenchmarkPropose(b *testing.B) {
	for _, workers := range []int{1, 2} {
		b.Run([]string{"", "one", "two"}[workers], func(b *testing.B) {
			tried := 0
			for b.Loop() {
				got, err := Propose(wanted(), ProposeSettings{Workers: workers})
				if err != nil {
					b.Fatal(err)
				}
				tried = got.Tried
			}
			b.ReportMetric(float64(tried), "tried")
		})
	}
}
