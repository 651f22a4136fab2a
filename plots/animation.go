package plots

import (
	"bytes"
	"fmt"
	"strconv"
)

// animationTime is how long the linkage takes through its way, s; as long
// again takes the way back.
const animationTime = 2.4

// Animation draws the linkage as an SVG that moves by itself: from the first of
// Poses through Way to its end, back to its start, and so on. It begins as the
// still drawing, and stays that where the reader's system asks for less motion
// or shows none. It is an error where Moving is one.
//
// The names of its style sheet are those of one document: two animations
// cannot stand inline in one page.
func (lk Linkage) Animation() ([]byte, error) {
	m, err := lk.Moving()
	if err != nil {
		return nil, err
	}
	head, rest, _ := bytes.Cut(m.SVG, []byte("</desc>\n"))
	return bytes.Join([][]byte{head, []byte("</desc>\n"), m.styleSheet(len(lk.Way)), rest}, nil), nil
}

// styleSheet gives each piece its way as key frames, in equal times.
func (m *Moving) styleSheet(positions int) []byte {
	steps := float64(positions - 1)
	var b bytes.Buffer
	b.WriteString("<style>\n@media (prefers-reduced-motion: no-preference) {\n")
	fmt.Fprintf(&b, "[data-piece] { animation: %gs linear %ss infinite alternate }\n",
		animationTime, decimals(-animationTime*float64(m.First)/steps, 4))
	for n := range m.Pieces {
		fmt.Fprintf(&b, "[data-piece=\"%d\"] { animation-name: piece%d }\n", n, n)
	}
	b.WriteString("}\n")
	for n, way := range m.Pieces {
		fmt.Fprintf(&b, "@keyframes piece%d {\n", n)
		write := translation
		if !upright(way) {
			write = matrix
		}
		for i, t := range way {
			fmt.Fprintf(&b, "%s%%{transform:%s}\n", decimals(100*float64(i)/steps, 3), write(t))
		}
		b.WriteString("}\n")
	}
	b.WriteString("</style>\n")
	return b.Bytes()
}

// upright tells whether the way only shifts.
func upright(way []Affine) bool {
	for _, t := range way {
		if [4]float64(t[:4]) != [4]float64(still[:4]) {
			return false
		}
	}
	return true
}

func translation(t Affine) string {
	return "translate(" + decimals(t[4], 2) + "px," + decimals(t[5], 2) + "px)"
}

// matrix writes the map so that nothing on a page is off by more than 0.01 pt.
func matrix(t Affine) string {
	return "matrix(" + decimals(t[0], 6) + "," + decimals(t[1], 6) + "," + decimals(t[2], 6) + "," +
		decimals(t[3], 6) + "," + decimals(t[4], 2) + "," + decimals(t[5], 2) + ")"
}

// decimals writes v with at most n decimals and no -0.
func decimals(v float64, n int) string {
	s := strconv.FormatFloat(v, 'f', n, 64)
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	if s == "-0" {
		return "0"
	}
	return s
}
