package plots

import (
	"bytes"
	"errors"
	"fmt"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Moving is a linkage taken to pieces that move: its drawing, in which the
// n-th piece is all groups with the attribute data-piece="n", and for each
// piece the transform of its groups at each position of the way. Without
// transforms the drawing is the still one, Figure.SVG of the linkage.
//
// The groups stand in one that is scaled to points with y up; a transform is
// to be set as it is.
type Moving struct {
	SVG    []byte
	Pieces [][]Affine // [piece][position of Way]
	First  int        // the position of Way that is drawn
}

// Moving draws the linkage in pieces. It is an error where Figure is one, when
// Way has fewer than two positions, or when the first of Poses is none of Way.
func (lk Linkage) Moving() (*Moving, error) {
	f, err := lk.Figure()
	if err != nil {
		return nil, err
	}
	s := lk.cleaned().sheet()
	m := &Moving{}
	if m.First, err = s.firstOnWay(); err != nil {
		return nil, err
	}
	w := &pieceWriter{width: f.width, height: f.height}
	writeSVGHead(&w.out, f)
	page := f.drawCaption(draw.NewCanvas(w.canvas(), w.width, w.height))
	sc, p := s.scene(page)
	p.Draw(draw.Crop(page, 0, 0, 0, -headingHeight))
	for _, piece := range sc.pieces(page) {
		if piece.moves == nil {
			piece.draw(w.canvas())
			continue
		}
		w.group(m.piece(sc.transforms(piece.moves)), piece.draw)
	}
	w.flush()
	w.out.WriteString(svgFoot)
	m.SVG = w.out.Bytes()
	return m, w.err
}

// piece is the number of the piece that moves so: one that there is, or the
// next.
func (m *Moving) piece(way []Affine) int {
	for n, other := range m.Pieces {
		if sameWay(way, other) {
			return n
		}
	}
	m.Pieces = append(m.Pieces, way)
	return len(m.Pieces) - 1
}

func sameWay(a, b []Affine) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// transforms lists where a piece is at each position of the way.
func (sc *scene) transforms(m mover) []Affine {
	out := make([]Affine, len(sc.way))
	for i, now := range sc.way {
		out[i] = m(sc.poses[0], now)
	}
	return out
}

// firstOnWay finds the position that is drawn solid on the way.
func (s *linkageSheet) firstOnWay() (int, error) {
	if len(s.Way) < 2 {
		return 0, errors.New("a linkage that moves needs a way of at least two positions")
	}
	for i, pose := range s.Way {
		if samePose(pose, s.Poses[0]) {
			return i, nil
		}
	}
	return 0, fmt.Errorf("the first position (%q) is none of the way", s.Poses[0].Label)
}

func samePose(a, b Pose) bool {
	for k := range a.At {
		if a.At[k] != b.At[k] {
			return false
		}
	}
	return true
}

// pieceWriter writes an SVG whose groups are drawn one after the other, each by
// a canvas of its own: the library's knows no groups.
type pieceWriter struct {
	width, height vg.Length
	out           bytes.Buffer
	current       *vgsvg.Canvas // what is drawn on it is not in out yet; nil: none
	err           error         // the first
}

// canvas is where the next strokes go.
func (w *pieceWriter) canvas() vg.Canvas {
	if w.current == nil {
		w.current = vgsvg.New(w.width, w.height)
	}
	return w.current
}

// flush brings what is drawn into the document.
func (w *pieceWriter) flush() {
	if w.current == nil {
		return
	}
	var raw bytes.Buffer
	_, err := w.current.WriteTo(&raw)
	w.current = nil
	drawn, cutErr := drawnSVG(raw.Bytes())
	w.out.Write(drawn)
	if w.err == nil {
		w.err = errors.Join(err, cutErr)
	}
}

// group draws into a group of the n-th piece.
func (w *pieceWriter) group(n int, paint func(vg.Canvas)) {
	w.flush()
	fmt.Fprintf(&w.out, "<g data-piece=\"%d\">\n", n)
	paint(w.canvas())
	w.flush()
	w.out.WriteString("</g>\n")
}
