package dudley

import (
	"math"
	"testing"

	"gudgeon/testdata"
)

// published reads a table or ends the test.
func published(t *testing.T, name string) *testdata.Table {
	t.Helper()
	table, err := testdata.Published(name)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// compare holds got against a printed cell.
func compare(t *testing.T, r testdata.Row, column string, got float64) {
	t.Helper()
	if !r.Agrees(column, got) {
		t.Errorf("row %d, %s: got %.10g, printed %s", r.Number, column, got, r.Text(column))
	}
}

func TestPublishedArithmetic(t *testing.T) {
	for _, r := range published(t, "dudley_arithmetic").Rows {
		n := r.Float
		var got float64
		switch r.Text("quantity") {
		case "root shear":
			got = RootShear(n("T"), n("Dre"), n("Dh"), n("Ka"), 1)
		case "tooth shear":
			got = ToothShear(n("T"), n("D"), int(n("N")), n("Le"), n("t"), n("Ka"), n("Km"), 1)
		case "flank flexible":
			got = FlankFlexible(n("T"), n("D"), int(n("N")), n("Le"), n("h"), n("Ka"), n("Km"), 1)
		case "beam":
			got = Beam(n("T"), n("D"), n("Le"), n("Y"))
		case "bursting":
			got = Bursting(n("S1"), n("S2"), n("S3"), n("Ka"), n("Km"), 1)
		case "rotation":
			got = 1e6 * Rotation(n("rpm"), 1000*n("Doi"), 1000*n("Dri"))
		default:
			t.Fatalf("row %d: unknown quantity %s", r.Number, r.Text("quantity"))
		}
		compare(t, r, "value", got)
	}
}

func TestPublishedAllowables(t *testing.T) {
	rows := map[string]Row{}
	for _, r := range []Row{Soft, Medium, Hard, SurfaceHardened, CaseHardened, ThroughHardened} {
		rows[r.Name] = r
	}
	column := func(r Row, name string) float64 {
		return map[string]float64{"shear": r.Shear, "straight": r.Flank, "crowned": r.Crowned, "tensile": r.Tensile}[name]
	}
	table := published(t, "dudley_allowable")
	if len(table.Rows) != len(rows) {
		t.Errorf("%d rows printed, %d held", len(table.Rows), len(rows))
	}
	for _, r := range table.Rows {
		row, ok := rows[r.Text("row")]
		if !ok {
			t.Fatalf("no row %s", r.Text("row"))
		}
		for _, name := range []string{"shear", "straight", "crowned", "tensile"} {
			if !r.Has(name) {
				if column(row, name) != 0 {
					t.Errorf("%s: %s is not printed", row.Name, name)
				}
				continue
			}
			compare(t, r, name, column(row, name)/PSI)
		}
	}
	for _, r := range published(t, "dudley_allowable_si").Rows {
		compare(t, r, "value", column(rows[r.Text("row")], r.Text("column")))
	}
}

// Factors are printed as exact decimals, so they must be held exactly.
func TestPublishedFactors(t *testing.T) {
	compare := func(t *testing.T, r testdata.Row, column string, got float64) {
		t.Helper()
		if math.Abs(got-r.Float(column)) > 1e-12 {
			t.Errorf("row %d, %s: got %.10g, printed %s", r.Number, column, got, r.Text(column))
		}
	}
	for _, r := range published(t, "dudley_life").Rows {
		for column, reversed := range map[string]bool{"one_way": false, "reversed": true} {
			kf, past := LifeFactor(r.Float("cycles"), reversed)
			compare(t, r, column, kf)
			if past {
				t.Errorf("%g cycles are in the table", r.Float("cycles"))
			}
		}
	}
	for _, r := range published(t, "dudley_wear").Rows {
		kw, past := WearFactor(r.Float("revolutions"))
		compare(t, r, "kw", kw)
		if past {
			t.Errorf("%g revolutions are in the table", r.Float("revolutions"))
		}
	}
	for _, r := range published(t, "dudley_distribution").Rows {
		for column, inch := range map[string]float64{"0.5": 0.5, "1": 1, "2": 2, "4": 4} {
			km, past := DistributionFactor(r.Float("misalignment"), 25.4*inch)
			compare(t, r, column, km)
			if past {
				t.Errorf("misalignment %g, width %s in are in the table", r.Float("misalignment"), column)
			}
		}
	}
	for i, r := range published(t, "dudley_application").Rows {
		for j, column := range []string{"uniform", "light shock", "intermittent shock", "heavy shock"} {
			compare(t, r, column, ApplicationFactor(Drive(i), Duty(j)))
		}
	}
}

// Between the entries the factors are this package's own: they must pass between
// their neighbours, without steps, and hold the end values outside.
func TestFactorsBetweenEntries(t *testing.T) {
	// Halfway on a logarithmic axis log K is halfway: √(1.0·0.4).
	if kf, _ := LifeFactor(math.Sqrt(1e4*1e5), true); math.Abs(kf-math.Sqrt(0.4)) > 1e-12 {
		t.Errorf("Kf halfway from 1e4 to 1e5 is %g", kf)
	}
	// Halfway on both binary axes Km is the mean of the four corners.
	if km, _ := DistributionFactor(0.002*math.Sqrt2, 25.4*math.Sqrt2); math.Abs(km-(1+1.5+1.5+2)/4) > 1e-12 {
		t.Errorf("Km amid four entries is %g", km)
	}
	last := math.Inf(1)
	for e := 2.0; e < 12; e += 0.01 {
		kf, past := LifeFactor(math.Pow(10, e), false)
		if kf > last || kf < 0.3 || kf > 1.8 || past != (math.Pow(10, e) > 1e7) {
			t.Fatalf("Kf(1e%g) = %g after %g, past %v", e, kf, last, past)
		}
		last = kf
	}
	if km, past := DistributionFactor(0, 500); km != 1 || past {
		t.Errorf("aligned: Km %g, past %v", km, past)
	}
	for _, c := range []struct {
		misalignment, width, km float64
		past                    bool
	}{{0.0001, 5, 1, false}, {0.008, 101.6, 3, false}, {0.02, 101.6, 3, true}, {0.008, 200, 3, true}} {
		if km, past := DistributionFactor(c.misalignment, c.width); km != c.km || past != c.past {
			t.Errorf("Km(%g, %g) = %g, %v; want %g, %v", c.misalignment, c.width, km, past, c.km, c.past)
		}
	}
}

// A band of hardness holds from its lower end; what lies between two bands has
// the softer one, and below the table there is none.
func TestByHardness(t *testing.T) {
	for _, c := range []struct {
		hb   float64
		name string
	}{{159, ""}, {160, Soft.Name}, {229.9, Soft.Name}, {230, Medium.Name}, {301, Medium.Name}, {302, Hard.Name}, {389, Hard.Name}, {390, ThroughHardened.Name}, {600, ThroughHardened.Name}} {
		if r, ok := ByHardness(c.hb); r.Name != c.name || ok != (c.name != "") {
			t.Errorf("%g HB: %q, %v; want %q", c.hb, r.Name, ok, c.name)
		}
	}
	if got := ThroughHardened.ForFlank(); got != Hard {
		t.Errorf("flanks of %s by %s", ThroughHardened.Name, got.Name)
	}
	if got := CaseHardened.ForFlank(); got != CaseHardened {
		t.Errorf("flanks of %s by %s", CaseHardened.Name, got.Name)
	}
}

// Identities of the method itself.
func TestIdentities(t *testing.T) {
	// The solid shaft is the hollow one without a bore: 16·T/(π·Dre³), eq. 1.
	if got, want := RootShear(7e4, 21, 0, 1.3, 0.5), 16*7e4*1.3/(math.Pi*21*21*21*0.5); math.Abs(got-want) > 1e-12*want {
		t.Errorf("solid shaft %g, want %g", got, want)
	}
	// The fixed formula is a ninth of the flexible one.
	if got, want := 9*FlankFixed(5, 6, 7, 8, 9, 1.1, 1.2, 0.4), FlankFlexible(5, 6, 7, 8, 9, 1.1, 1.2, 0.4); math.Abs(got-want) > 1e-12*want {
		t.Errorf("nine times fixed %g, flexible %g", got, want)
	}
	// A thin ring under the pressure p of the radial tooth forces carries
	// p·r/tw: T·tan α/(D/2) over the circumference π·D and the length, times
	// r = D/2, over the wall.
	torque, d, l, tw, alpha := 2e5, 30.0, 20.0, 2.0, math.Pi/6
	p := torque / (d / 2) * math.Tan(alpha) / (math.Pi * d * l)
	if got, want := Hoop(torque, alpha, d, tw, l), p*(d/2)/tw; math.Abs(got-want) > 1e-12*want {
		t.Errorf("hoop %g, thin ring %g", got, want)
	}
	// Teeth and shaft are equally sheared for Le = (D/2)·(Dre/D)³·(1 − (Dh/Dre)⁴),
	// where half of the teeth of t = π·D/(2·N) carry.
	n, dre, dh := 20, 26.0, 12.0
	le := d / 2 * math.Pow(dre/d, 3) * (1 - math.Pow(dh/dre, 4))
	tooth := ToothShear(torque, d, n, le, math.Pi*d/(2*float64(n)), 1, 1, 1)
	if root := RootShear(torque, dre, dh, 1, 1); math.Abs(tooth-root) > 1e-12*root {
		t.Errorf("equal-shear length: teeth %g, root %g", tooth, root)
	}
}

// With all lengths k-fold and the torque k³-fold a stress stays as it is.
func TestScaling(t *testing.T) {
	for _, k := range []float64{0.1, 3, 25.4} {
		scaled := []float64{
			RootShear(k*k*k*9e4, k*21, k*8, 1.5, 0.4), ToothShear(k*k*k*9e4, k*25, 20, k*18, k*1.5, 1.5, 1.2, 0.4),
			FlankFlexible(k*k*k*9e4, k*25, 20, k*18, k*0.9, 1.5, 1.2, 2), FlankFixed(k*k*k*9e4, k*25, 20, k*18, k*0.9, 1.5, 1.2, 0.4),
			Hoop(k*k*k*9e4, 0.6, k*25, k*4, k*18), Beam(k*k*k*9e4, k*25, k*18, Y30),
		}
		plain := []float64{
			RootShear(9e4, 21, 8, 1.5, 0.4), ToothShear(9e4, 25, 20, 18, 1.5, 1.5, 1.2, 0.4),
			FlankFlexible(9e4, 25, 20, 18, 0.9, 1.5, 1.2, 2), FlankFixed(9e4, 25, 20, 18, 0.9, 1.5, 1.2, 0.4),
			Hoop(9e4, 0.6, 25, 4, 18), Beam(9e4, 25, 18, Y30),
		}
		for i := range plain {
			if math.Abs(scaled[i]-plain[i]) > 1e-12*plain[i] {
				t.Errorf("stress %d at scale %g: %g, want %g", i, k, scaled[i], plain[i])
			}
		}
	}
}
