package spline

import "sort"

// itGrade is the standard tolerances of sizes up to and including upTo, mm.
type itGrade struct {
	upTo             float64
	it10, it11, it12 float64 // µm
}

// itGrades is ISO 286-1:2010, table 1; the rows to 500 mm compared with a public
// transcription, those above from memory.
var itGrades = []itGrade{
	{3, 40, 60, 100}, {6, 48, 75, 120}, {10, 58, 90, 150}, {18, 70, 110, 180}, {30, 84, 130, 210},
	{50, 100, 160, 250}, {80, 120, 190, 300}, {120, 140, 220, 350}, {180, 160, 250, 400}, {250, 185, 290, 460},
	{315, 210, 320, 520}, {400, 230, 360, 570}, {500, 250, 400, 630}, {630, 280, 440, 700},
	{800, 320, 500, 800}, {1000, 360, 560, 900}, {1250, 420, 660, 1050},
}

// itGradeOf returns the tolerances for a size of at most 1250 mm.
func itGradeOf(size float64) itGrade {
	i := sort.Search(len(itGrades)-1, func(i int) bool { return size <= itGrades[i].upTo })
	return itGrades[i]
}
