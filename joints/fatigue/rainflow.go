package fatigue

import "math"

// Cycle is one cycle, or half of one, of a record.
type Cycle struct {
	Range, Mean float64
	Count       float64 // 1, or 0.5
}

// Load is the cycle as load case, repeated so often.
func (c Cycle) Load(repeats float64) Load {
	return Load{Mean: c.Mean, Amplitude: c.Range / 2, Cycles: c.Count * repeats}
}

// reversals returns the record without what lies between its turns; both ends
// count as turns.
func reversals(record []float64) []float64 {
	var out []float64
	for _, v := range record {
		n := len(out)
		switch {
		case n > 0 && v == out[n-1]:
		case n > 1 && (v > out[n-1]) == (out[n-1] > out[n-2]):
			out[n-1] = v
		default:
			out = append(out, v)
		}
	}
	return out
}

// Rainflow counts the cycles of a record of finite values by ASTM E1049-85, 5.4.4,
// in the order in which they close; what never closes follows as half cycles.
//
//	X the newest range, Y the one before
//	X <  Y: read on
//	X >= Y: Y holds the start of the record? half a cycle, drop its first point
//	        else a cycle, drop both of its points
func Rainflow(record []float64) []Cycle {
	var out []Cycle
	var stack []float64
	add := func(a, b, count float64) {
		out = append(out, Cycle{Range: math.Abs(b - a), Mean: (a + b) / 2, Count: count})
	}
	for _, v := range reversals(record) {
		stack = append(stack, v)
		for len(stack) >= 3 {
			n := len(stack)
			a, b, c := stack[n-3], stack[n-2], stack[n-1]
			if math.Abs(c-b) < math.Abs(b-a) {
				break
			}
			if n == 3 {
				add(a, b, 0.5)
				stack = stack[1:]
				continue
			}
			add(a, b, 1)
			stack = append(stack[:n-3], c)
		}
	}
	for k := 1; k < len(stack); k++ {
		add(stack[k-1], stack[k], 0.5)
	}
	return out
}
