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
	en1999        = Origin{"EN 1999-1-1:2007, table 3.2b", Confirmed}
	en1999Memory  = Origin{"EN 1999-1-1:2007, table 3.2b", FromMemory}
	handbookFat   = Origin{"MIL-HDBK-5J, typical, smooth specimens", FromMemory}
	typical       = Origin{"typical values of the trade", FromMemory}
	tableRow      = Origin{"the hardness band itself, to stand on the drawing", CommonPractice}
)

// anySection is for what holds whatever the section.
const anySection = 1e6

// through is the hardness of a quenched and tempered or normalized section, HB.
func through(lo, hi float64, o Origin) Hardness { return Hardness{lo, hi, "HB", Through, o} }

// band is a steel named by its hardness alone, for parts whose drawing calls
// for one; nothing else of it is known.
func band(name, scale string, t Treatment, lo, hi float64) Material {
	return Material{Name: name, Family: Steel, Elastic: families[Steel], Grades: []Grade{{SectionUpTo: anySection, Hardness: Hardness{lo, hi, scale, t, tableRow}}}}
}

// table is every material, for steels by rising hardness.
var table = []Material{
	band("steel HB 160-200", "HB", Through, 160, 200),
	band("steel HB 230-260", "HB", Through, 230, 260),
	band("steel HB 302-351", "HB", Through, 302, 351),
	band("through-hardened steel HRC 42-46", "HRC", Through, 42, 46),
	band("surface-hardened steel HRC 48-53", "HRC", Surface, 48, 53),
	band("case-hardened steel HRC 58-63", "HRC", Case, 58, 63),
	{Name: "C45+N", Family: Steel, Elastic: families[Steel], Grades: []Grade{
		{16, 340, 620, c45N, through(183, 240, fromStrength)},
		{100, 305, 580, c45N, through(172, 240, fromStrength)},
		{250, 275, 560, c45N, through(165, 240, fromStrength)},
	}},
	{Name: "C45+QT", Family: Steel, Elastic: families[Steel], Grades: []Grade{
		{16, 490, 700, c45QT, through(213, 253, fromStrength)},
		{40, 430, 650, c45QT, through(200, 240, fromStrength)},
		{100, 370, 630, c45QT, through(193, 233, fromStrength)},
	}},
	{Name: "4130 normalized", Family: Steel, Elastic: elastic(200000, 76000, 0.32, 7830, 11.3, constants), Fatigue: Fatigue{290, 1e7, 655, handbookFat}, Grades: []Grade{
		{75, 517, 655, milHandbook, through(197, 217, Origin{"usual for 4130 in this condition", CommonPractice})},
	}},
	{Name: "25CrMo4+QT", Family: Steel, Elastic: alloySteel, Grades: []Grade{
		{16, 700, 900, en10083, through(271, 331, en10083)},
		{40, 600, 800, en10083, through(240, 286, en10083)},
		{100, 450, 700, en10083, through(213, 253, en10083)},
		{160, 400, 650, en10083, through(200, 240, en10083)},
	}},
	{Name: "42CrMo4+QT", Family: Steel, Elastic: alloySteel, Fatigue: Fatigue{480, 1e7, 1100, typical}, Grades: []Grade{
		{16, 900, 1100, iso683, through(331, 380, iso683)},
		{40, 750, 1000, iso683, through(298, 359, iso683)},
		{100, 650, 900, iso683, through(271, 331, iso683)},
		{160, 550, 800, iso683, through(240, 286, iso683)},
		{250, 500, 750, iso683, through(225, 271, iso683)},
	}},
	{Name: "34CrNiMo6+QT", Family: Steel, Elastic: alloySteel, Fatigue: Fatigue{480, 1e7, 1100, typical}, Grades: []Grade{
		{16, 1000, 1200, en10083Memory, through(359, 415, fromStrength)},
		{40, 900, 1100, en10083Memory, through(331, 380, fromStrength)},
		{100, 800, 1000, en10083Memory, through(298, 359, fromStrength)},
		{160, 700, 900, en10083Memory, through(271, 331, fromStrength)},
		{250, 600, 800, en10083Memory, through(240, 286, fromStrength)},
	}},
	{Name: "42CrMo4 surface hardened", Family: Steel, Elastic: alloySteel, Grades: []Grade{
		{16, 900, 1100, iso683, Hardness{53, 58, "HRC", Surface, induction}},
		{40, 750, 1000, iso683, Hardness{53, 58, "HRC", Surface, induction}},
		{100, 650, 900, iso683, Hardness{53, 58, "HRC", Surface, induction}},
	}},
	{Name: "16MnCr5 case hardened", Family: Steel, Elastic: families[Steel], Grades: []Grade{
		{40, 0, 0, Origin{}, Hardness{58, 62, "HRC", Case, carburized}},
	}},
	{Name: "18CrNiMo7-6 case hardened", Family: Steel, Elastic: families[Steel], Grades: []Grade{
		{100, 0, 0, Origin{}, Hardness{58, 62, "HRC", Case, carburized}},
	}},
	{Name: "304 annealed", Family: Steel, Elastic: elastic(193000, 77000, 0.29, 8000, 17.2, constants), Fatigue: Fatigue{240, 1e7, 515, typical}, Grades: []Grade{
		{75, 205, 515, Origin{"ASTM A276, 304 annealed bar", FromMemory}, through(130, 180, Origin{"usual for 304 annealed", CommonPractice})},
	}},
	{Name: "17-4PH H900", Family: Steel, Elastic: elastic(196000, 77000, 0.27, 7800, 10.8, constants), Fatigue: Fatigue{540, 1e7, 1310, handbookFat}, Grades: []Grade{
		{75, 1170, 1310, milHandbook, through(388, 444, Origin{"AMS 5643, H900", FromMemory})},
	}},
	{Name: "6061-T6", Family: Aluminium, Elastic: al6061Plate, Fatigue: Fatigue{97, 5e8, 290, handbookFat}, Welded: Welded{115, 175, en1999}, Grades: []Grade{{150, 241, 290, milHandbook, Hardness{}}}},
	{Name: "6061-T6 extruded", Family: Aluminium, Elastic: al6061, Fatigue: Fatigue{97, 5e8, 290, handbookFat}, Welded: Welded{115, 175, en1999}, Grades: []Grade{{20, 240, 260, en1999, Hardness{}}}},
	{Name: "6061-T4", Family: Aluminium, Elastic: al6061, Fatigue: Fatigue{70, 1e7, 180, typical}, Welded: Welded{95, 150, en1999}, Grades: []Grade{{25, 110, 180, en1999, Hardness{}}}},
	{Name: "6061-O", Family: Aluminium, Elastic: al6061, Fatigue: Fatigue{62, 5e8, 124, typical}, Grades: []Grade{{150, 55, 124, typical, Hardness{}}}},
	{Name: "6061-T6 as welded", Family: Aluminium, Elastic: al6061, Welded: Welded{115, 175, en1999}, Grades: []Grade{{20, 115, 175, en1999, Hardness{}}}},
	{Name: "6066-T6", Family: Aluminium, Elastic: elastic(69000, 26000, 0.33, 2720, 23.2, typical), Fatigue: Fatigue{110, 5e8, 345, typical}, Grades: []Grade{{75, 310, 345, typical, Hardness{}}}},
	{Name: "7005-T6", Family: Aluminium, Elastic: elastic(71000, 26900, 0.33, 2780, 23.1, typical), Fatigue: Fatigue{120, 5e8, 350, typical}, Grades: []Grade{{40, 290, 350, typical, Hardness{}}}},
	{Name: "7050-T74", Family: Aluminium, Elastic: elastic(71000, 26900, 0.33, 2830, 23.0, constants), Fatigue: Fatigue{145, 5e8, 510, typical}, Grades: []Grade{{100, 441, 510, milNear, Hardness{}}}},
	{Name: "6082-T6", Family: Aluminium, Elastic: elastic(70000, 26300, 0.33, 2700, 23.4, typical), Welded: Welded{125, 185, en1999Memory}, Grades: []Grade{
		{20, 250, 295, en755, Hardness{}},
		{150, 260, 310, en755, Hardness{}},
		{200, 240, 280, en755, Hardness{}},
		{250, 200, 270, en755, Hardness{}},
	}},
	{Name: "2014-T6", Family: Aluminium, Elastic: elastic(73000, 27600, 0.33, 2800, 22.5, constants), Fatigue: Fatigue{124, 5e8, 448, handbookFat}, Grades: []Grade{
		{25, 370, 415, en755, Hardness{}},
		{100, 386, 448, milNear, Hardness{}},
		{200, 350, 430, en755, Hardness{}},
	}},
	{Name: "7075-T6", Family: Aluminium, Elastic: elastic(71000, 26900, 0.33, 2800, 23.2, constants), Fatigue: Fatigue{159, 5e8, 531, handbookFat}, Grades: []Grade{
		{100, 462, 531, milHandbook, Hardness{}},
		{150, 440, 530, en755, Hardness{}},
		{200, 400, 470, en755, Hardness{}},
	}},
	{Name: "Ti-6Al-4V", Family: Titanium, Elastic: families[Titanium], Fatigue: Fatigue{500, 1e7, 896, handbookFat}, Grades: []Grade{
		{50, 827, 896, ams4928, Hardness{}},
		{100, 793, 862, ams4928Thick, Hardness{}},
	}},
	{Name: "Ti-3Al-2.5V CWSR", Family: Titanium, Elastic: elastic(103000, 39000, 0.31, 4480, 9.3, constants), Fatigue: Fatigue{300, 1e7, 862, typical}, Grades: []Grade{{50, 724, 862, typical, Hardness{}}}},
}
