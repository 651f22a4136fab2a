package material

// Where several values come from.
var (
	iso683        = Origin{"ISO 683-2:2018, +QT, in a mill's data sheet", Confirmed}
	en10083       = Origin{"EN 10083-3:2006, +QT, in a mill's data sheet", Confirmed}
	en10083Memory = Origin{"EN 10083-3:2006, +QT", FromMemory}
	c45QT         = Origin{"EN 10083-2:2006, +QT, in a mill's data sheet", Confirmed}
	c45N          = Origin{"EN 10083-2:2006, +N, in a mill's data sheet", Confirmed}
	fromStrength  = Origin{"converted from Rm as ISO 18265:2013, table A.1", FromMemory}
	carburized    = Origin{"usual drawing call for carburized parts", CommonPractice}
	induction     = Origin{"usual drawing call for induction-hardened 42CrMo4", CommonPractice}
	milHandbook   = Origin{"MIL-HDBK-5J, A-basis", FromMemory}
	milNear       = Origin{"MIL-HDBK-5J, A-basis, rounded down", FromMemory}
	en755         = Origin{"EN 755-2:2016, extruded bar", FromMemory}
	ams4928       = Origin{"AMS 4928, annealed bar", Confirmed}
	ams4928Thick  = Origin{"AMS 4928, annealed bar, larger sections", FromMemory}
	tableRow      = Origin{"the hardness band itself, to stand on the drawing", CommonPractice}
)

// anySection is for what holds whatever the section.
const anySection = 1e6

// through is the hardness of a quenched and tempered or normalized section, HB.
func through(lo, hi float64, o Origin) Hardness { return Hardness{lo, hi, "HB", Through, o} }

// band is a steel named by its hardness alone, for parts whose drawing calls
// for one; nothing else of it is known.
func band(name, scale string, t Treatment, lo, hi float64) Material {
	return Material{name, Steel, []Grade{{SectionUpTo: anySection, Hardness: Hardness{lo, hi, scale, t, tableRow}}}}
}

// table is every material, for steels by rising hardness.
var table = []Material{
	band("steel HB 160-200", "HB", Through, 160, 200),
	band("steel HB 230-260", "HB", Through, 230, 260),
	band("steel HB 302-351", "HB", Through, 302, 351),
	band("through-hardened steel HRC 42-46", "HRC", Through, 42, 46),
	band("surface-hardened steel HRC 48-53", "HRC", Surface, 48, 53),
	band("case-hardened steel HRC 58-63", "HRC", Case, 58, 63),
	{"C45+N", Steel, []Grade{
		{16, 340, 620, c45N, through(183, 240, fromStrength)},
		{100, 305, 580, c45N, through(172, 240, fromStrength)},
		{250, 275, 560, c45N, through(165, 240, fromStrength)},
	}},
	{"C45+QT", Steel, []Grade{
		{16, 490, 700, c45QT, through(213, 253, fromStrength)},
		{40, 430, 650, c45QT, through(200, 240, fromStrength)},
		{100, 370, 630, c45QT, through(193, 233, fromStrength)},
	}},
	{"4130 normalized", Steel, []Grade{
		{75, 517, 655, milHandbook, through(197, 217, Origin{"usual for 4130 in this condition", CommonPractice})},
	}},
	{"25CrMo4+QT", Steel, []Grade{
		{16, 700, 900, en10083, through(271, 331, en10083)},
		{40, 600, 800, en10083, through(240, 286, en10083)},
		{100, 450, 700, en10083, through(213, 253, en10083)},
		{160, 400, 650, en10083, through(200, 240, en10083)},
	}},
	{"42CrMo4+QT", Steel, []Grade{
		{16, 900, 1100, iso683, through(331, 380, iso683)},
		{40, 750, 1000, iso683, through(298, 359, iso683)},
		{100, 650, 900, iso683, through(271, 331, iso683)},
		{160, 550, 800, iso683, through(240, 286, iso683)},
		{250, 500, 750, iso683, through(225, 271, iso683)},
	}},
	{"34CrNiMo6+QT", Steel, []Grade{
		{16, 1000, 1200, en10083Memory, through(359, 415, fromStrength)},
		{40, 900, 1100, en10083Memory, through(331, 380, fromStrength)},
		{100, 800, 1000, en10083Memory, through(298, 359, fromStrength)},
		{160, 700, 900, en10083Memory, through(271, 331, fromStrength)},
		{250, 600, 800, en10083Memory, through(240, 286, fromStrength)},
	}},
	{"42CrMo4 surface hardened", Steel, []Grade{
		{16, 900, 1100, iso683, Hardness{53, 58, "HRC", Surface, induction}},
		{40, 750, 1000, iso683, Hardness{53, 58, "HRC", Surface, induction}},
		{100, 650, 900, iso683, Hardness{53, 58, "HRC", Surface, induction}},
	}},
	{"16MnCr5 case hardened", Steel, []Grade{
		{40, 0, 0, Origin{}, Hardness{58, 62, "HRC", Case, carburized}},
	}},
	{"18CrNiMo7-6 case hardened", Steel, []Grade{
		{100, 0, 0, Origin{}, Hardness{58, 62, "HRC", Case, carburized}},
	}},
	{"6061-T6", Aluminium, []Grade{{150, 241, 290, milHandbook, Hardness{}}}},
	{"6082-T6", Aluminium, []Grade{
		{20, 250, 295, en755, Hardness{}},
		{150, 260, 310, en755, Hardness{}},
		{200, 240, 280, en755, Hardness{}},
		{250, 200, 270, en755, Hardness{}},
	}},
	{"2014-T6", Aluminium, []Grade{
		{25, 370, 415, en755, Hardness{}},
		{100, 386, 448, milNear, Hardness{}},
		{200, 350, 430, en755, Hardness{}},
	}},
	{"7075-T6", Aluminium, []Grade{
		{100, 462, 531, milHandbook, Hardness{}},
		{150, 440, 530, en755, Hardness{}},
		{200, 400, 470, en755, Hardness{}},
	}},
	{"Ti-6Al-4V", Titanium, []Grade{
		{50, 827, 896, ams4928, Hardness{}},
		{100, 793, 862, ams4928Thick, Hardness{}},
	}},
}
