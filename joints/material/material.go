package material

// Family is the kind of metal.
type Family string

// The families.
const (
	Steel     Family = "steel"
	Aluminium Family = "aluminium"
	Titanium  Family = "titanium"
)

// Tag says how sure a value is.
type Tag string

// The tags.
const (
	Confirmed      Tag = "confirmed"
	CommonPractice Tag = "common practice"
	FromMemory     Tag = "from memory"
)

// Origin is where values come from.
type Origin struct {
	Source string // publication, edition, table
	Tag    Tag
}

// String gives the source and, where it was not looked up, the tag.
func (o Origin) String() string {
	if o.Tag == Confirmed {
		return o.Source
	}
	return o.Source + ", " + string(o.Tag)
}

// Treatment is how a steel is hardened.
type Treatment string

// The treatments.
const (
	Through Treatment = "through" // one hardness in the whole section
	Surface Treatment = "surface" // induction or flame hardened skin
	Case    Treatment = "case"    // carburized and hardened
)

// Hardness is a range by the scale that its origin uses. The zero value is a
// hardness not documented.
type Hardness struct {
	Min, Max  float64
	Scale     string // "HB" or "HRC"
	Treatment Treatment
	Origin    Origin
}

// Grade is a material in sections up to a size.
type Grade struct {
	SectionUpTo float64 // mm, including
	Yield       float64 // Re or Rp0.2, MPa; 0: not documented
	Ultimate    float64 // Rm, MPa; 0: not documented
	Strength    Origin  // of Yield and Ultimate
	Hardness    Hardness
}

// Elastic is the constants that hardly depend on the condition.
type Elastic struct {
	Modulus   float64 // E, MPa
	Shear     float64 // G, MPa
	Poisson   float64 // ν
	Density   float64 // ρ, kg/mm³
	Expansion float64 // α, 1/K, about 20 to 100 °C
	Origin    Origin
}

// Fatigue is the amplitude of a fully reversed stress, R = −1, that a smooth
// polished specimen bears for a number of cycles. The zero value is a strength
// not documented.
type Fatigue struct {
	Amplitude float64 // MPa
	Cycles    float64
	Ultimate  float64 // Rm of the specimen, MPa
	Origin    Origin
}

// At returns the amplitude for a grade: in proportion to its ultimate strength,
// never more than documented. It is 0 where one of the two is not known.
func (f Fatigue) At(g Grade) float64 {
	if f.Ultimate == 0 || g.Ultimate == 0 {
		return 0
	}
	return f.Amplitude * min(1, g.Ultimate/f.Ultimate)
}

// Welded is the strength beside a weld, in the zone that its heat changes. The
// zero value is a strength not documented.
type Welded struct {
	Yield, Ultimate float64 // MPa
	Origin          Origin
}

// Material is one metal in one condition. Its grades rise by section.
type Material struct {
	Name    string
	Family  Family
	Elastic Elastic
	Grades  []Grade
	Fatigue Fatigue
	Welded  Welded
}

// Find returns the material of a name, written exactly as in Names.
func Find(name string) (m Material, ok bool) { return (*Library)(nil).Find(name) }

// Names lists the materials in the order of the table: steels from soft to
// hard, aluminium, titanium.
func Names() []string { return (*Library)(nil).Names() }

// At returns the grade for a section, mm. ok is false where the material is not
// documented that thick.
func (m Material) At(section float64) (g Grade, ok bool) {
	for _, g := range m.Grades {
		if section <= g.SectionUpTo {
			return g, true
		}
	}
	return Grade{}, false
}

// LargestSection returns the largest section that the material is documented
// for, mm.
func (m Material) LargestSection() float64 { return m.Grades[len(m.Grades)-1].SectionUpTo }
