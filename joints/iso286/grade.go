package iso286

import "sort"

// Bounds of the tables.
const (
	LargestSize      = 500.0  // mm, of a class
	LargestGradeSize = 1250.0 // mm, of a tolerance alone
	LeastGrade       = 4
	LargestGrade     = 12
)

// gradeRow is the standard tolerances of sizes up to and including upTo.
type gradeRow struct {
	upTo float64                                // mm
	it   [LargestGrade - LeastGrade + 1]float64 // IT4, IT5 ... IT12, µm
}

// grades is ISO 286-1:2010, table 1. IT5 to IT9 to 80 mm compared with a public
// listing, IT10 to IT12 to 250 mm with a public program, the rest from memory.
var grades = []gradeRow{
	{3, [9]float64{3, 4, 6, 10, 14, 25, 40, 60, 100}},
	{6, [9]float64{4, 5, 8, 12, 18, 30, 48, 75, 120}},
	{10, [9]float64{4, 6, 9, 15, 22, 36, 58, 90, 150}},
	{18, [9]float64{5, 8, 11, 18, 27, 43, 70, 110, 180}},
	{30, [9]float64{6, 9, 13, 21, 33, 52, 84, 130, 210}},
	{50, [9]float64{7, 11, 16, 25, 39, 62, 100, 160, 250}},
	{80, [9]float64{8, 13, 19, 30, 46, 74, 120, 190, 300}},
	{120, [9]float64{10, 15, 22, 35, 54, 87, 140, 220, 350}},
	{180, [9]float64{12, 18, 25, 40, 63, 100, 160, 250, 400}},
	{250, [9]float64{14, 20, 29, 46, 72, 115, 185, 290, 460}},
	{315, [9]float64{16, 23, 32, 52, 81, 130, 210, 320, 520}},
	{400, [9]float64{18, 25, 36, 57, 89, 140, 230, 360, 570}},
	{500, [9]float64{20, 27, 40, 63, 97, 155, 250, 400, 630}},
	{630, [9]float64{22, 32, 44, 70, 110, 175, 280, 440, 700}},
	{800, [9]float64{25, 36, 50, 80, 125, 200, 320, 500, 800}},
	{1000, [9]float64{28, 40, 56, 90, 140, 230, 360, 560, 900}},
	{1250, [9]float64{33, 47, 66, 105, 165, 260, 420, 660, 1050}},
}

// Tolerance returns the standard tolerance IT of a grade for a size, mm. ok is
// false where the size is not in (0, LargestGradeSize] or the grade not among IT4
// to IT12.
func Tolerance(size float64, grade int) (it float64, ok bool) {
	um, ok := tolerance(size, grade)
	return um / 1000, ok
}

// tolerance is Tolerance in µm.
func tolerance(size float64, grade int) (um float64, ok bool) {
	if !(size > 0) || size > LargestGradeSize || grade < LeastGrade || grade > LargestGrade {
		return 0, false
	}
	return grades[rowOf(size)].it[grade-LeastGrade], true
}

// rowOf returns the row of a size: over one bound, up to and including the next.
func rowOf(size float64) int {
	return sort.Search(len(grades)-1, func(i int) bool { return size <= grades[i].upTo })
}
