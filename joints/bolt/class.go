package bolt

// Class is what a fastener is made of: a strength class or an alloy. MPa.
type Class struct {
	Name     string
	Ultimate float64 // Rm, least
	Yield    float64 // Rp0.2 or ReL, least
	Proof    float64 // Sp; 0 where its standard gives none
	Modulus  float64 // E
	Shear    float64 // τB/Rm
	Thermal  float64 // α, 1/K
	Steel    bool    // quenched and tempered: the fatigue limit of VDI 2230 holds
	Source   string
	upTo     float64 // largest nominal diameter, mm
}

// Where several classes come from.
const (
	iso898  = "ISO 898-1:2013, table 3"
	iso3506 = "ISO 3506-1:2009, table 2, from memory"
)

// Shear ratios τB/Rm: quenched and tempered steel and the others from memory of
// VDI 2230-1:2015, table 7, and MIL-HDBK-5J. Expansions are usual values, from
// memory.
func steelClass(name string, rm, rp, sp, upTo float64, source string) Class {
	return Class{name, rm, rp, sp, 205000, 0.6, 11.5e-6, true, source, upTo}
}

func stainlessClass(name string, rm, rp float64) Class {
	return Class{name, rm, rp, 0, 196000, 0.6, 16.5e-6, false, iso3506, 39}
}

// classes by rising diameter within a name.
var classes = []Class{
	steelClass("8.8", 800, 640, 580, 16, iso898+", to M16, from memory"),
	steelClass("8.8", 830, 660, 600, 39, iso898+", over M16; Rm and ReL from memory"),
	steelClass("10.9", 1040, 940, 830, 39, iso898+"; Rm and ReL from memory"),
	steelClass("12.9", 1220, 1100, 970, 39, iso898+"; Rm and ReL from memory"),
	stainlessClass("A2-50", 500, 210),
	stainlessClass("A2-70", 700, 450),
	stainlessClass("A2-80", 800, 600),
	stainlessClass("A4-50", 500, 210),
	stainlessClass("A4-70", 700, 450),
	stainlessClass("A4-80", 800, 600),
	{"Ti-6Al-4V", 895, 828, 0, 114000, 0.62, 8.8e-6, false, "AMS 4928, annealed bar, from memory", 39},
	{"7075-T6", 531, 462, 0, 71000, 0.56, 23.2e-6, false, "MIL-HDBK-5J, A-basis, from memory", 100},
}

// FindClass returns the class of a name for a nominal diameter, mm. ok is false
// where the name is not one of ClassNames or its standard ends below the
// diameter.
func FindClass(name string, diameter float64) (c Class, ok bool) {
	for _, c := range classes {
		if c.Name == name && diameter <= c.upTo {
			return c, true
		}
	}
	return Class{}, false
}

// ClassNames lists the classes.
func ClassNames() []string {
	var names []string
	for _, c := range classes {
		if len(names) == 0 || names[len(names)-1] != c.Name {
			names = append(names, c.Name)
		}
	}
	return names
}
