package spline

import (
	"slices"
	"sync"
)

// din5480Size is one size of the standard's series: reference diameter, module
// and the tooth counts that the standard lists for them.
type din5480Size struct {
	reference, module float64
	teeth             []int
}

// din5480Series is the series of DIN 5480-1:2006 from 10 to 60 mm, row by row (one
// public transcription; nearly every entry lies in the window of x1, see
// din5480_test.go). An odd count above 60 is replaced by the next lower even one,
// so that a few reach x1 = 0.83.
var din5480Series = sync.OnceValue(func() []din5480Size {
	return din5480Rows(
		[]float64{0.5, 0.6, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4},
		[]din5480Row{
			{10, [][]int{{18}, {15}, {12}, {11}, {8}, {6}, nil, nil, nil, nil, nil, nil}},
			{12, [][]int{{22}, {18}, {14}, {13}, {10}, {8}, {6}, nil, nil, nil, nil, nil}},
			{15, [][]int{{28}, {23}, {18}, {17}, {13}, {10}, {8}, {7}, {6}, nil, nil, nil}},
			{17, [][]int{{32}, {27}, {21}, {20}, {15}, {12}, {10}, {8}, {7}, nil, nil, nil}},
			{18, [][]int{{34}, {28}, {22}, {21}, {16}, {13}, {10}, {9}, {7}, nil, nil, nil}},
			{20, [][]int{{38}, {32}, {25}, {23, 24}, {18}, {14}, {12}, {10}, {8}, {6}, nil, nil}},
			{22, [][]int{{42}, {35}, {28}, {26}, {20}, {16}, {13}, {11}, {9}, {7}, {6}, nil}},
			{25, [][]int{{48}, {40}, {32}, {30}, {24}, {18}, {15}, {13}, {11}, {8}, {7}, nil}},
			{28, [][]int{{54}, {45}, {36}, {34}, {26}, {21}, {17}, {14}, {12}, {10}, {8}, nil}},
			{30, [][]int{{58}, {48}, {38}, {36}, {28}, {22}, {18}, {16}, {13, 14}, {10}, {8}, nil}},
			{32, [][]int{{62}, {52}, {41}, {38}, {30}, {24}, {20}, {17}, {14}, {11}, {9}, {6}}},
			{35, [][]int{{68}, {57}, {45}, {42}, {34}, {26}, {22}, {18}, {16}, {12}, {10}, {7}}},
			{38, [][]int{{74}, {62}, {49}, {46}, {36}, {29}, {24}, {20}, {18}, {14}, {11}, {8}}},
			{40, [][]int{{78}, {64}, {52}, {48}, {38}, {30}, {25}, {21}, {18}, {14}, {12}, {8}}},
			{45, [][]int{nil, {74}, {58}, {55}, {44}, {34}, {28}, {24}, {21}, {16}, {13, 14}, {10}}},
			{50, [][]int{nil, nil, {64}, {60}, {48}, {38}, {32}, {27}, {24}, {18}, {15}, {11}}},
			{60, [][]int{nil, nil, nil, {74}, {58}, {46}, {38}, {33}, {28}, {22}, {18}, {13, 14}}},
		})
})

// din5480Row is one row of the printed table: the counts by module.
type din5480Row struct {
	reference float64
	teeth     [][]int
}

// din5480Rows lays the printed table out as sizes.
func din5480Rows(modules []float64, rows []din5480Row) []din5480Size {
	var sizes []din5480Size
	for _, r := range rows {
		for i, teeth := range r.teeth {
			if teeth != nil {
				sizes = append(sizes, din5480Size{r.reference, modules[i], teeth})
			}
		}
	}
	return sizes
}

// din5480Listed tells whether the series has a size with a tooth count.
func din5480Listed(reference, module float64, teeth int) bool {
	return slices.ContainsFunc(din5480Series(), func(s din5480Size) bool {
		return s.reference == reference && s.module == module && slices.Contains(s.teeth, teeth)
	})
}
