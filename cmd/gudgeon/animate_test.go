package main

import (
	"slices"
	"testing"
)

// A swing rises from 0 to the full travel and passes the first position
// exactly, wherever that lies.
func TestSwing(t *testing.T) {
	const full = 153.8
	for _, first := range []float64{0, 0.01, 3, 76.9, 120, 153.79, full} {
		ws := swing(first, full)
		if ws[0] != 0 || ws[len(ws)-1] != full || !slices.Contains(ws, first) {
			t.Errorf("first %g: from %g to %g, it is %v that the first is there", first, ws[0], ws[len(ws)-1], slices.Contains(ws, first))
		}
		for i := 1; i < len(ws); i++ {
			if ws[i] <= ws[i-1] {
				t.Errorf("first %g: position %d goes back from %g to %g", first, i, ws[i-1], ws[i])
			}
		}
	}
}
