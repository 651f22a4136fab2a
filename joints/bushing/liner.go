package bushing

// liner is what a bushing is made of.
type liner struct {
	name             string
	static, swinging float64 // MPa
	pv               float64 // MPa·m/s
	wear             float64 // mm³/(N·m)
}

// liners: planning values from memory of makers' catalogues; each may be three
// times more or less.
var liners = []liner{
	{"PTFE on steel", 250, 140, 1.8, 1e-6},
	{"filament wound", 200, 100, 1.0, 1e-6},
	{"POM", 60, 20, 0.1, 1e-5},
	{"filled polyamide", 80, 40, 0.2, 1e-6},
	{"sintered bronze", 40, 10, 1.6, 1e-6},
	{"anodised aluminium", 15, 7, 0.05, 1e-4},
}

// Liners lists the names of the built-in liners.
func Liners() []string {
	names := make([]string, len(liners))
	for i, l := range liners {
		names[i] = l.name
	}
	return names
}

// find returns the liner of a name; ok is false where there is none.
func find(name string) (l liner, ok bool) {
	for _, l := range liners {
		if l.name == name {
			return l, true
		}
	}
	return liner{}, false
}
