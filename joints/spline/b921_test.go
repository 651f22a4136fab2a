package spline

import (
	"math"
	"testing"
)

func TestB921Sheets(t *testing.T) {
	for _, r := range published(t, "b921_sheets").Rows {
		s := b921Defaults(Spline{
			DiametralPitch: r.Float("pitch"), Teeth: int(r.Float("n")), PressureAngle: r.Float("degrees") * degree, Root: Root(r.Text("root")), Fit: Fit(r.Text("fit")),
			ShaftClass: int(r.Float("class")), HubClass: int(r.Float("class")),
		})
		g := b921(s)
		tolerance := b921ToleranceOf(s.HubClass, s.DiametralPitch, float64(s.Teeth))
		got, ok := map[string]float64{
			"D": g.PitchDiameter / inch, "Db": g.BaseDiameter / inch, "Dri": g.Internal.MajorDiameterMax / inch, "DFi": g.Internal.FormDiameter / inch,
			"Di": g.Internal.MinorDiameterMin / inch, "sv min": g.Internal.SpaceWidthEffectiveMin / inch, "hub pin": g.Internal.PinDiameter / inch,
			"Do": g.External.MajorDiameterMax / inch, "machining": 1e4 * tolerance.machining, "variation": 1e4 * tolerance.variation,
		}[r.Text("quantity")]
		if !ok || !r.Agrees("value", got) {
			t.Errorf("%s: %s = %.6f, printed %s", g.Internal.Designation, r.Text("quantity"), got, r.Text("value"))
		}
	}
}

// Table 2 by hand at P = 8 and at P = 20, N = 20, for every column; where (N − 2)/P
// is put to flat roots, or fine fillets are missed, this tells.
func TestB921Columns(t *testing.T) {
	const n = 20
	for _, c := range []struct {
		degrees                                    float64
		root                                       Root
		fit                                        Fit
		p                                          float64
		width, dri, do, di, dre, dfi, dfe, pinT, c float64
	}{
		{30, Flat, SideFit, 8, math.Pi / 16, 21.35 / 8, 21.0 / 8, 19.0 / 8, 18.65 / 8, 21.0/8 + 0.005, 19.0/8 - 0.005, 1.92 / 8, 1.728 / 8},
		{30, Flat, SideFit, 20, math.Pi / 40, 21.35 / 20, 21.0 / 20, 19.0 / 20, 18.65 / 20, 21.0/20 + 0.004, 19.0/20 - 0.004, 1.92 / 20, 1.728 / 20},
		{30, Flat, MajorFit, 8, math.Pi / 16, 21.0 / 8, 21.0 / 8, 19.0 / 8, 18.65 / 8, 20.8/8 - 0.004 + 0.005, 19.0/8 - 0.005, 1.92 / 8, 1.728 / 8},
		{30, Fillet, SideFit, 12, math.Pi / 24, 21.8 / 12, 21.0 / 12, 19.0 / 12, 18.2 / 12, 21.0/12 + 0.004, 19.0/12 - 0.004, 1.92 / 12, 1.728 / 12},
		{30, Fillet, SideFit, 16, math.Pi / 32, 21.8 / 16, 21.0 / 16, 19.0 / 16, 18.0 / 16, 21.0/16 + 0.004, 19.0/16 - 0.004, 1.92 / 16, 1.728 / 16},
		{37.5, Fillet, SideFit, 20, (math.Pi/2 + 0.1) / 20, 21.6 / 20, 21.0 / 20, 19.2 / 20, 18.7 / 20, 21.0/20 + 0.004, 19.2/20 - 0.004, 1.92 / 20, 1.728 / 20},
		{45, Fillet, SideFit, 20, (math.Pi/2 + 0.2) / 20, 21.4 / 20, 21.0 / 20, 19.4 / 20, 19.0 / 20, 21.0/20 + 0.004, 19.4/20 - 0.004, 1.92 / 20, 1.92 / 20},
	} {
		g := b921(b921Defaults(Spline{DiametralPitch: c.p, Teeth: n, PressureAngle: c.degrees * degree, Root: c.root, Fit: c.fit}))
		e, i := g.External, g.Internal
		for name, v := range map[string][2]float64{
			"sv": {i.SpaceWidthEffectiveMin, c.width}, "tv": {e.ToothThicknessEffectiveMax, c.width}, "Dri": {i.MajorDiameterMax, c.dri}, "Do": {e.MajorDiameterMax, c.do},
			"Di": {i.MinorDiameterMin, c.di}, "Dre": {e.MinorDiameterMin, c.dre}, "DFi": {i.FormDiameter, c.dfi}, "DFe": {e.FormDiameter, c.dfe},
			"shaft pin": {e.PinDiameter, c.pinT}, "hub pin": {i.PinDiameter, c.c},
		} {
			if math.Abs(v[0]-25.4*v[1]) > 1e-12*v[0] {
				t.Errorf("%s: %s is %.6f in, want %.6f", e.Designation, name, v[0]/25.4, v[1])
			}
		}
	}
}

// The form clearance is held between 0.002 and 0.010 in.
func TestB921FormClearance(t *testing.T) {
	for _, c := range []struct {
		p    float64
		n    int
		want float64
	}{{32, 10, 0.002}, {8, 40, 0.005}, {2.5, 60, 0.010}} {
		if got := newB921(b921Defaults(Spline{DiametralPitch: c.p, Teeth: c.n, PressureAngle: math.Pi / 6})).cF; math.Abs(got-c.want) > 1e-15 {
			t.Errorf("%d teeth of pitch %g: %g, want %g", c.n, c.p, got, c.want)
		}
	}
}

// Classes scale both tolerances of class 5; all classes share the effective
// limits, so that they may be mixed.
func TestB921Classes(t *testing.T) {
	base := b921ToleranceOf(5, 10, 30)
	for class, share := range map[int]float64{4: 0.71, 6: 1.4, 7: 2} {
		got := b921ToleranceOf(class, 10, 30)
		if !near(got.machining, share*base.machining) || !near(got.variation, share*base.variation) {
			t.Errorf("class %d: %+v", class, got)
		}
	}
	s := b921Defaults(Spline{DiametralPitch: 10, Teeth: 30, PressureAngle: math.Pi / 6, ShaftClass: 7, HubClass: 4})
	if p := b921(s).play(); p.Min != 0 || !(p.Worst > p.MaxEffective && p.MaxEffective > 0) {
		t.Errorf("mixed classes: %+v", p)
	}
}

// Every kind, pitch and tooth count of the standard: limits in order, tips clear
// of roots (but in a major-diameter fit, where they touch), involutes past the
// other's tip (but there, where they end at a chamfer), some contact, and a
// remark wherever the pin does not serve.
func TestB921GeometryIsSound(t *testing.T) {
	seen, unmeasured := 0, 0
	for _, p := range b921Profiles {
		for _, pitch := range b921Pitches {
			for n := b921MinTeeth; n <= b921MaxTeeth45; n++ {
				for _, class := range []int{4, 7} {
					s := b921Defaults(Spline{Standard: b921Name, DiametralPitch: pitch, Teeth: n, PressureAngle: p.radians(), Root: p.root, Fit: p.fit, ShaftClass: class, HubClass: class})
					if b921Mistakes(s) != nil {
						continue
					}
					seen++
					g := b921(s)
					g.complete()
					g.gauge()
					e, i := g.External, g.Internal
					fail := func(property int) {
						if !t.Failed() {
							t.Errorf("property %d: %s: %+v", property, e.Designation, g)
						}
					}
					if e.ToothThicknessMin >= e.ToothThicknessMax || e.ToothThicknessEffectiveMin >= e.ToothThicknessEffectiveMax || i.SpaceWidthMin >= i.SpaceWidthMax ||
						e.MinorDiameterMin >= i.MinorDiameterMin || e.MajorDiameterMax > i.MajorDiameterMax+1e-9 || e.FormDiameter >= i.MinorDiameterMin {
						fail(1)
					}
					if p.fit == SideFit && (i.FormDiameter <= e.MajorDiameterMax || e.MajorDiameterMax >= i.MajorDiameterMax) {
						fail(2)
					}
					if g.ContactDepth < 0.5*inch/pitch {
						fail(3)
					}
					model := &Model{spline: s, geometry: g}
					if touches := g.shaftGap().touches(e.PinDiameter) && g.hubGap().touches(i.PinDiameter); !touches || e.unusedPin+i.unusedPin > 0 {
						unmeasured++
						if model.pinRemark("shaft")+model.pinRemark("hub") == "" {
							fail(4)
						}
					} else if model.pinRemark("shaft")+model.pinRemark("hub") != "" || e.OverPinsMin >= e.OverPinsMax || i.BetweenPinsMin >= i.BetweenPinsMax {
						fail(4)
					}
				}
			}
		}
	}
	t.Logf("%d pairs, of %d the standard's pin does not serve", seen, unmeasured)
	if seen < 5000 {
		t.Errorf("%d pairs tried", seen)
	}
}
