package spline

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"gudgeon/joints/iso286"
)

// din5480Of returns the geometry of a designation, complete.
func din5480Of(reference, m float64, z int) (Spline, *Geometry) {
	s := din5480Defaults(Spline{Standard: din5480Name, ReferenceDiameter: reference, Module: m, Teeth: z})
	g := din5480(s)
	g.complete()
	g.gauge()
	return s, g
}

func TestDIN5480Sheets(t *testing.T) {
	for _, r := range published(t, "din5480_sheets").Rows {
		s := Spline{
			ReferenceDiameter: r.Float("reference_diameter"), Module: r.Float("m"), Teeth: int(r.Float("z")),
			ShaftProcess: Process(r.Text("shaft_process")), HubProcess: Process(r.Text("hub_process")),
			ShaftClass: int(r.Float("shaft_class")), ShaftFit: r.Text("shaft_fit"), HubClass: int(r.Float("hub_class")), HubFit: r.Text("hub_fit"),
		}
		s = din5480Defaults(s)
		g := din5480(s)
		e, i, relations := g.External, g.Internal, newDIN5480(s)
		over, _ := g.shaftFlanks().measure(relations.basic(), 4)
		got, ok := map[string]float64{
			"x1 m": g.ProfileShift, "da1": e.MajorDiameterMax, "df1": e.MinorDiameterMax, "da2": i.MinorDiameterMin, "df2": i.MajorDiameterMin,
			"dFf1": e.FormDiameter, "dFf2": i.FormDiameter, "s": relations.basic(),
			"sv max": e.ToothThicknessEffectiveMax, "s max": e.ToothThicknessMax, "s min": e.ToothThicknessMin,
			"ev min": i.SpaceWidthEffectiveMin, "e min": i.SpaceWidthMin, "e max": i.SpaceWidthMax,
			"over pins 4": over, "span 4": g.spanOver(4, relations.basic()),
		}[r.Text("quantity")]
		if !ok || !r.Agrees("value", got) {
			t.Errorf("%s: %s = %.6f, printed %s", e.Designation, r.Text("quantity"), got, r.Text("value"))
		}
	}
}

// Where x = 0 and a tip of m·(z + 0.9) are taken, W 30x2x14 gets 29.8 and W
// 25x1.25x18 gets 23.6; where dB is taken for the pitch diameter, d is dB.
func TestDIN5480TipIsNotThatOfAGear(t *testing.T) {
	for _, c := range []struct {
		reference, m float64
		z            int
		tip, pitch   float64
	}{{30, 2, 14, 29.6, 28}, {25, 1.25, 18, 24.75, 22.5}} {
		_, g := din5480Of(c.reference, c.m, c.z)
		if math.Abs(g.External.MajorDiameterMax-c.tip) > 1e-12 || g.PitchDiameter != c.pitch {
			t.Errorf("%gx%gx%d: da1 %g, d %g; want %g, %g", c.reference, c.m, c.z, g.External.MajorDiameterMax, g.PitchDiameter, c.tip, c.pitch)
		}
	}
}

// The series against its transcription, entry by entry, and what the
// transcription's makers found of it: but for nine the counts have x1 in the
// window, and those nine replace an odd count above 60 by the next lower even.
func TestDIN5480Series(t *testing.T) {
	table := published(t, "din5480_series")
	listed, outside := 0, 0
	for _, r := range table.Rows {
		reference := r.Float("reference_diameter")
		for _, column := range table.Columns[1:] {
			module, err := strconv.ParseFloat(strings.TrimPrefix(column, "m"), 64)
			if err != nil {
				t.Fatal(err)
			}
			for word := range strings.SplitSeq(r.Text(column), ";") {
				if word == "" {
					continue
				}
				z, err := strconv.Atoi(word)
				if err != nil {
					t.Fatal(err)
				}
				listed++
				if !din5480Listed(reference, module, z) {
					t.Errorf("%g x %g x %d is not in the series", reference, module, z)
				}
				x := din5480Shift(Spline{ReferenceDiameter: reference, Module: module, Teeth: z})
				if inWindow(x) {
					continue
				}
				outside++
				if odd := din5480Teeth(reference, module); z%2 != 0 || x > 0.83+0.005 || len(odd) != 1 || odd[0] != z+1 || odd[0] <= 60 {
					t.Errorf("%g x %g x %d has x1 %g, and %v fit", reference, module, z, x, odd)
				}
			}
		}
	}
	held := 0
	for _, s := range din5480Series() {
		held += len(s.teeth)
	}
	if held != listed || outside == 0 || outside > 9 {
		t.Errorf("%d of %d held, %d outside the window", held, listed, outside)
	}
	// A trade catalogue of splined hubs has 20x1.25x14, 30x2x14 and 25x1x24.
	for _, c := range []struct {
		reference, m float64
		z            int
	}{{20, 1.25, 14}, {30, 2, 13}, {30, 2, 14}, {25, 1, 24}} {
		if !din5480Listed(c.reference, c.m, c.z) {
			t.Errorf("%g x %g x %d is not in the series", c.reference, c.m, c.z)
		}
	}
}

// Where dB/m is whole two counts fit, at the ends of the window; else one.
func TestDIN5480TeethInWindow(t *testing.T) {
	for _, c := range []struct {
		reference, m float64
		want         []int
	}{{30, 2, []int{13, 14}}, {50, 2, []int{23, 24}}, {25, 2, []int{11}}, {8, 2, nil}} {
		got := din5480Teeth(c.reference, c.m)
		if len(got) != len(c.want) {
			t.Errorf("%g x %g: %v, want %v", c.reference, c.m, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%g x %g: %v, want %v", c.reference, c.m, got, c.want)
			}
		}
	}
}

// Range ends of the tolerance groups are "up to and including", both kinds.
func TestDIN5480Groups(t *testing.T) {
	for _, c := range []struct {
		reference, m     float64
		diameter, module int
	}{{12, 1, 0, 0}, {12.5, 1.5, 1, 0}, {25, 1.75, 1, 1}, {50, 4, 2, 1}, {51, 5, 3, 2}, {100, 1, 3, 0}, {200, 1, 4, 0}, {400, 10, 5, 2}, {401, 10, 6, 2}} {
		if d, m := din5480Group(c.reference, c.m); d != c.diameter || m != c.module {
			t.Errorf("dB %g m %g: groups %d, %d", c.reference, c.m, d, m)
		}
	}
	// The deviations printed for the step of 12.5 µm.
	for k, printed := range []float64{12, 25, 37, 50, 62, 75, 88, 100, 112, 125} {
		for letter, step := range din5480ShaftFits {
			if step == float64(k+1) && math.Abs(1000*din5480Deviation(din5480ShaftFits, letter, 100, 2)-printed) > 1e-9 {
				t.Errorf("%s: %g µm, printed %g", letter, 1000*din5480Deviation(din5480ShaftFits, letter, 100, 2), printed)
			}
		}
	}
	// Each pair sums to the next preferred number: R20 of ISO 3 in whole µm.
	for i, sum := range []float64{12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 56, 63, 71, 80, 90, 100, 112, 125, 140, 160, 180, 200, 224, 250, 280, 320, 360} {
		if pair := din5480Tolerances[i]; pair[0]+pair[1] != sum {
			t.Errorf("pair %d sums to %g, want %g", i, pair[0]+pair[1], sum)
		}
	}
}

// rootTolerance is IT14 by ten times IT9: 250 at 3 mm, 520 at 30, 870 at 120, as
// ISO 286-1:2010 prints (from memory).
func TestRootTolerance(t *testing.T) {
	for size, it := range map[float64]float64{3: 0.250, 30: 0.520, 120: 0.870} {
		if math.Abs(rootTolerance(size)-it) > 1e-12 {
			t.Errorf("IT14 of %g: %g", size, rootTolerance(size))
		}
	}
	if it, _ := iso286.Tolerance(30, 11); tipTolerance(30) != it {
		t.Error("IT11")
	}
}

// Every size of the series and every count in the window beyond it, with loose,
// usual and tight fits:
//
//  1. limits are in order, and tips clear roots;
//  2. each involute reaches past the other's tip by the form clearance;
//  3. contact is 0.9 modules deep but for the tolerances of the tips, about the
//     circle dB − 1.1·m but for them, and unless the base circle of fewer than
//     eight teeth ends it;
//  4. the flanks meet outside the base circle, and from eight teeth on the whole
//     of the shaft's involute lies there;
//  5. over the standard's pins and a span the shaft measures within its limits,
//     and where a pin does not touch, a remark says so.
func TestDIN5480GeometryIsSound(t *testing.T) {
	seen, unmeasured := 0, 0
	for _, m := range din5480Modules {
		for reference := 6.0; reference <= 200; reference++ {
			for _, z := range din5480Teeth(reference, m) {
				for _, fit := range []string{"d", "h", "s"} {
					s := din5480Defaults(Spline{Standard: din5480Name, ReferenceDiameter: reference, Module: m, Teeth: z, ShaftFit: fit, ShaftClass: 9})
					if errs := din5480Mistakes(s); errs != nil {
						t.Fatal(errs)
					}
					seen++
					g := din5480(s)
					g.complete()
					g.gauge()
					e, i := g.External, g.Internal
					fail := func(property int) {
						if !t.Failed() {
							t.Errorf("property %d: %s, %s: %+v", property, e.Designation, i.Designation, g)
						}
					}
					if e.MajorDiameterMin >= e.MajorDiameterMax || e.MinorDiameterMin >= e.MinorDiameterMax || e.ToothThicknessMin >= e.ToothThicknessMax ||
						i.MajorDiameterMin >= i.MajorDiameterMax || i.MinorDiameterMin >= i.MinorDiameterMax || i.SpaceWidthMin >= i.SpaceWidthMax ||
						e.MajorDiameterMax > i.MajorDiameterMin-0.1*m || e.MinorDiameterMax > i.MinorDiameterMin-0.1*m {
						fail(1)
					}
					if i.FormDiameter < e.MajorDiameterMax+0.05-1e-9 || e.FormDiameter > i.MinorDiameterMin-0.05+1e-9 {
						fail(2)
					}
					slack := tipTolerance(reference) + 1e-9
					if based := g.BaseDiameter > i.MinorDiameterMax; based && z >= 8 || !based && (g.ContactDepth > 0.9*m+1e-9 || g.ContactDepth < 0.9*m-slack || math.Abs(g.contactDiameter()-(reference-1.1*m)) > slack) {
						fail(3)
					}
					if inner, _ := g.contactEnds(); inner < g.BaseDiameter || (z >= 8 && e.FormDiameter < g.BaseDiameter) {
						fail(4)
					}
					model := &Model{spline: s, geometry: g}
					if touches := g.shaftGap().touches(e.PinDiameter) && g.hubGap().touches(i.PinDiameter); !touches || e.unusedPin+i.unusedPin > 0 {
						unmeasured++
						if model.pinRemark("shaft")+model.pinRemark("hub") == "" {
							fail(5)
						}
					} else if model.pinRemark("shaft")+model.pinRemark("hub") != "" || e.OverPinsMin >= e.OverPinsMax || i.BetweenPinsMin >= i.BetweenPinsMax ||
						e.OverPinsMin <= e.MajorDiameterMax || i.BetweenPinsMax >= i.MinorDiameterMin {
						fail(5)
					}
					if e.SpanTeeth > 0 && !(e.SpanMin < e.SpanMax) {
						fail(5)
					}
				}
			}
		}
	}
	t.Logf("%d pairs, of %d the standard's pin does not serve", seen, unmeasured)
	if seen < 1000 {
		t.Errorf("%d pairs tried", seen)
	}
}

// The span as the books write it, from module and profile shift.
func TestSpanOfTheBooks(t *testing.T) {
	s, g := din5480Of(50, 2, 24)
	m, x, alpha, z := s.Module, din5480Shift(s), math.Pi/6, 24.0
	for k := 2; k <= 6; k++ {
		want := m*math.Cos(alpha)*(math.Pi*(float64(k)-0.5)+z*inv(alpha)) + 2*x*m*math.Sin(alpha)
		if got := g.spanOver(k, newDIN5480(s).basic()); math.Abs(got-want) > 1e-12*want {
			t.Errorf("over %d teeth: %g, want %g", k, got, want)
		}
	}
}
