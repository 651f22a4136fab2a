package bolt

// Roughness is the class of Rz of the faces in a stack.
type Roughness string

// The classes, µm. "" is Medium.
const (
	Fine   Roughness = "fine"   // Rz below 10
	Medium Roughness = "medium" // Rz 10 to 40
	Rough  Roughness = "rough"  // Rz 40 to 160
)

// embedding is what each place flattens, µm.
type embedding struct{ thread, seat, inner float64 }

// embeddings by roughness, then by the load that works on the joint. VDI
// 2230-1:2015, table 5: the row of Rz 10 to 40, axial, seen in a public exercise,
// the others from memory.
var embeddings = map[Roughness][2]embedding{
	Fine:   {{3, 2.5, 1.5}, {3, 3, 2}},
	Medium: {{3, 3, 2}, {3, 4.5, 2.5}},
	Rough:  {{3, 4, 3}, {3, 6.5, 3.5}},
}

// flattening returns fZ, mm: the sum over the thread, the seats that are turned
// or borne on (head and nut) and the faces between the parts.
func flattening(r Roughness, shear bool, seats, inner int) float64 {
	row := embeddings[r][0]
	if shear {
		row = embeddings[r][1]
	}
	return (row.thread + float64(seats)*row.seat + float64(inner)*row.inner) / 1000
}
