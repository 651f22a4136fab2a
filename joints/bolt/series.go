package bolt

// size is what standards fix for a nominal diameter, mm.
type size struct {
	head float64 // dW min of a hexagon head, product grade A
	hole float64 // clearance hole, medium
}

// sizes is ISO 4017 (dW) and ISO 273:1979, medium series; M5 to M14 and the holes
// of M4 to M12 compared with public listings, dW and the rest from memory.
var sizes = map[float64]size{
	4: {5.88, 4.5}, 5: {6.88, 5.5}, 6: {8.88, 6.6}, 8: {11.63, 9}, 10: {14.63, 11},
	12: {16.63, 13.5}, 14: {19.64, 15.5}, 16: {22.49, 17.5},
}
