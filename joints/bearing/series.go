package bearing

// series is one size of the built-in table.
type series struct {
	name                  string
	kind                  Kind
	rows                  int
	bore, outer, width    float64 // mm
	chamfer               float64 // rs min, mm
	balls                 int     // of a caged bearing; 0: not documented
	ball                  float64 // mm
	sayDynamic, sayStatic float64 // a catalogue's C and C0, N, which the balls stand for
}

// table is the sizes usual in pivots. Dimensions and chamfers: ISO 15:2017, from
// memory (17 × 26 × 5 looked up). Ratings: a mean of makers' catalogues, from
// memory, which differ by 20 %; the balls are those that give these ratings by
// the formulas of ISO 281 and ISO 76. The sizes of two rows have no balls on
// record: their ratings must be given.
var table = []series{
	{"6800", DeepGroove, 1, 10, 19, 5, 0.3, 11, 2.381, 1830, 925},
	{"6801", DeepGroove, 1, 12, 21, 5, 0.3, 12, 2.381, 1920, 1040},
	{"6802", DeepGroove, 1, 15, 24, 5, 0.3, 14, 2.381, 2070, 1250},
	{"6803", DeepGroove, 1, 17, 26, 5, 0.3, 16, 2.381, 2230, 1460},
	{"6804", DeepGroove, 1, 20, 32, 7, 0.3, 0, 0, 0, 0},
	{"6805", DeepGroove, 1, 25, 37, 7, 0.3, 0, 0, 0, 0},
	{"6900", DeepGroove, 1, 10, 22, 6, 0.3, 9, 3.175, 2700, 1270},
	{"6901", DeepGroove, 1, 12, 24, 6, 0.3, 10, 3.175, 2890, 1460},
	{"6902", DeepGroove, 1, 15, 28, 7, 0.3, 10, 3.969, 4320, 2250},
	{"6903", DeepGroove, 1, 17, 30, 7, 0.3, 11, 3.969, 4600, 2550},
	{"6904", DeepGroove, 1, 20, 37, 9, 0.3, 0, 0, 0, 0},
	{"608", DeepGroove, 1, 8, 22, 7, 0.3, 7, 3.969, 3300, 1370},
	{"688", DeepGroove, 1, 8, 16, 5, 0.2, 0, 0, 0, 0},
	{"698", DeepGroove, 1, 8, 19, 6, 0.3, 0, 0, 0, 0},
	{"6200", DeepGroove, 1, 10, 30, 9, 0.6, 8, 4.762, 5100, 2390},
	{"6203", DeepGroove, 1, 17, 40, 12, 0.6, 8, 6.747, 9550, 4800},
	{"6204", DeepGroove, 1, 20, 47, 14, 1, 8, 7.938, 12800, 6600},
	{"3800", AngularContact, 2, 10, 19, 7, 0.3, 0, 0, 0, 0},
	{"3801", AngularContact, 2, 12, 21, 7, 0.3, 0, 0, 0, 0},
	{"3802", AngularContact, 2, 15, 24, 7, 0.3, 0, 0, 0, 0},
	{"3803", AngularContact, 2, 17, 26, 7, 0.3, 0, 0, 0, 0},
	{"3804", AngularContact, 2, 20, 32, 10, 0.3, 0, 0, 0, 0},
}

// Sizes lists the names of the built-in table in its order.
func Sizes() []string {
	names := make([]string, len(table))
	for i, s := range table {
		names[i] = s.name
	}
	return names
}

// find returns the size of a name; ok is false where there is none.
func find(name string) (s series, ok bool) {
	for _, s := range table {
		if s.name == name {
			return s, true
		}
	}
	return series{}, false
}
