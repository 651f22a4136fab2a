package dudley

// PSI is one pound-force per square inch in MPa, for the tables that are
// printed in it.
const PSI = 4.4482216152605 / (25.4 * 25.4)

// Row is one row of the table of allowable stresses: a band of hardness and
// what steel of it may bear, MPa. A stress that the table leaves open is 0.
type Row struct {
	Name    string  // as cited, for example "steel HB 302-351 (HRC 33-38)"
	From    float64 // hardness band, HB; 0 for hardened skins
	To      float64
	Shear   float64
	Flank   float64 // compressive, straight teeth
	Crowned float64 // compressive, crowned teeth
	Tensile float64 // bursting
}

// The rows of the table, Machinery's Handbook, 31st ed., "Involute splines",
// table of allowable shear, compressive and tensile stresses. The row printed
// for HRC 42-46 is 390 to 434 HB by ISO 18265:2013, table A.1 (from memory).
var (
	Soft            = row("steel HB 160-200", 160, 200, 20000, 1500, 6000, 22000)
	Medium          = row("steel HB 230-260", 230, 260, 30000, 2000, 8000, 32000)
	Hard            = row("steel HB 302-351 (HRC 33-38)", 302, 351, 40000, 3000, 12000, 45000)
	ThroughHardened = row("through-hardened steel HRC 42-46", 390, 434, 45000, 0, 0, 50000)
	SurfaceHardened = row("surface-hardened steel HRC 48-53", 0, 0, 40000, 4000, 16000, 45000)
	CaseHardened    = row("case-hardened steel HRC 58-63", 0, 0, 50000, 5000, 20000, 55000)
)

// row makes a Row from psi.
func row(name string, from, to, shear, flank, crowned, tensile float64) Row {
	return Row{name, from, to, shear * PSI, flank * PSI, crowned * PSI, tensile * PSI}
}

// ByHardness returns the row for a steel hardened through to hb (Brinell): the
// hardest that begins at or below it. So a hardness between two bands has the
// limits of the softer band. ok is false below 160 HB, where the table begins.
func ByHardness(hb float64) (r Row, ok bool) {
	for _, candidate := range []Row{Soft, Medium, Hard, ThroughHardened} {
		if hb >= candidate.From {
			r, ok = candidate, true
		}
	}
	return r, ok
}

// ForFlank returns the row whose flank pressures hold for r: r itself, or the
// next softer where the table leaves r's open, which is on the safe side.
func (r Row) ForFlank() Row {
	if r.Flank == 0 {
		return Hard
	}
	return r
}
