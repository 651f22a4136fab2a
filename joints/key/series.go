package key

// size is a parallel key for shafts over one diameter to the next, mm.
type size struct{ upTo, b, h, t1 float64 }

// sizes is DIN 6885-1:1968, sheet 1, shafts over 6 to 50 mm, from memory.
var sizes = []size{
	{8, 2, 2, 1.2}, {10, 3, 3, 1.8}, {12, 4, 4, 2.5}, {17, 5, 5, 3}, {22, 6, 6, 3.5}, {30, 8, 7, 4}, {38, 10, 8, 5}, {44, 12, 8, 5}, {50, 14, 9, 5.5},
}

// standardKey returns the key of a shaft; ok is false outside 6 to 50 mm.
func standardKey(d float64) (s size, ok bool) {
	if !(d > 6) {
		return size{}, false
	}
	for _, s := range sizes {
		if d <= s.upTo {
			return s, true
		}
	}
	return size{}, false
}
