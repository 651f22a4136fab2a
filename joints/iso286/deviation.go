package iso286

import "sort"

// shaftDeviations is the fundamental deviation of each shaft letter, µm, by the
// rows of grades to 500 mm: es for a letter to h, ei for one after. ISO
// 286-1:2010, tables 4 and 5; f, g, k, m, n and p to 80 mm compared with a public
// listing, the rest from memory.
var shaftDeviations = map[string][13]float64{
	"d": {-20, -30, -40, -50, -65, -80, -100, -120, -145, -170, -190, -210, -230},
	"e": {-14, -20, -25, -32, -40, -50, -60, -72, -85, -100, -110, -125, -135},
	"f": {-6, -10, -13, -16, -20, -25, -30, -36, -43, -50, -56, -62, -68},
	"g": {-2, -4, -5, -6, -7, -9, -10, -12, -14, -15, -17, -18, -20},
	"h": {},
	"k": {0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5}, // IT4 to IT7; 0 in other grades
	"m": {2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23},
	"n": {4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40},
	"p": {6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68},
}

// j5 and j6 share ei, j7 has its own, µm. ISO 286-1:2010, table 5, from memory.
var (
	shaftJ6 = [13]float64{-2, -2, -2, -3, -4, -5, -7, -9, -11, -13, -16, -18, -20}
	shaftJ7 = [13]float64{-4, -4, -5, -6, -8, -10, -12, -15, -18, -21, -26, -28, -32}
)

// holeJ is ES of J6, J7 and J8, µm. ISO 286-1:2010, table 3, from memory.
var holeJ = map[int][13]float64{
	6: {2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33},
	7: {4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43},
	8: {6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66},
}

// splitDeviation is ei of r and s, whose ranges of sizes are finer, µm.
type splitDeviation struct{ upTo, r, s float64 }

// splitDeviations is ISO 286-1:2010, table 5, r and s, from memory.
var splitDeviations = []splitDeviation{
	{3, 10, 14}, {6, 15, 19}, {10, 19, 23}, {18, 23, 28}, {30, 28, 35}, {50, 34, 43},
	{65, 41, 53}, {80, 43, 59}, {100, 51, 71}, {120, 54, 79}, {140, 63, 92}, {160, 65, 100}, {180, 68, 108},
	{200, 77, 122}, {225, 80, 130}, {250, 84, 140}, {280, 94, 158}, {315, 98, 170}, {355, 108, 190}, {400, 114, 208},
	{450, 126, 232}, {500, 132, 252},
}

// splitOf returns the row of r and s for a size.
func splitOf(size float64) splitDeviation {
	i := sort.Search(len(splitDeviations)-1, func(i int) bool { return size <= splitDeviations[i].upTo })
	return splitDeviations[i]
}

// shaftEI returns ei, µm, of the letters k to s, which lie above the nominal size.
func shaftEI(letter string, grade int, size float64) float64 {
	switch letter {
	case "r":
		return splitOf(size).r
	case "s":
		return splitOf(size).s
	case "k":
		if grade > 7 {
			return 0
		}
	}
	return shaftDeviations[letter][rowOf(size)]
}

// holeES returns ES, µm, of the letters K to S, which lie below the nominal size: the
// shaft's deviation mirrored, raised by Δ = ITn − IT(n−1) in the fine grades so
// that a hole basis fit and its shaft basis twin have the same interference.
//
//	K M N to IT8, P R S to IT7:  ES = −ei + Δ     (Δ = 0 to 3 mm)
//	M, P R S in coarser grades:  ES = −ei
//	N in coarser grades:         ES = 0           (−4 µm to 3 mm)
//
// ISO 286-1:2010, table 3 with its notes, the exception of M6 over 250 to 315 mm
// among them.
func holeES(letter string, grade int, size float64) float64 {
	fine := grade <= 8
	if letter == "P" || letter == "R" || letter == "S" {
		fine = grade <= 7
	}
	ei := shaftEI(lower(letter), 6, size)
	switch {
	case letter == "M" && grade == 6 && size > 250 && size <= 315:
		return -9
	case fine:
		return -ei + delta(size, grade)
	case letter == "N" && size <= 3:
		return -4
	case letter == "N":
		return 0
	}
	return -ei
}

// delta is Δ, µm; grade is over LeastGrade.
func delta(size float64, grade int) float64 {
	if size <= 3 {
		return 0
	}
	it, _ := tolerance(size, grade)
	finer, _ := tolerance(size, grade-1)
	return it - finer
}
