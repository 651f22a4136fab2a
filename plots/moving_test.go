package plots

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// onWay gives the drawing n positions to move through.
func (m moving) onWay(poses, n int) Linkage {
	lk := m.posed(poses)
	for i := range n {
		lk.Way = append(lk.Way, Pose{At: m.at(m.last * float64(i) / float64(n-1))})
	}
	return lk
}

// onWheels puts the wheels on.
func onWheels(lk Linkage) Linkage {
	lk.WheelRadius = 372
	lk.Front = &Wheel{r2.Vec{X: 812, Y: 14}, 374}
	return lk
}

func movingSamples() map[string]Linkage {
	return map[string]Linkage{
		"tarn": tarn().onWay(4, 13), "sluice": sluice().onWay(2, 13), "culvert": culvert().onWay(3, 13),
		"penstock": penstock().onWay(3, 13), "weir": weir().onWay(3, 13),
		"wheels": onWheels(tarn().onWay(4, 13)), "hostile": named(tarn().onWay(2, 3), func(s string) string { return s + `</g><script>"&'` }),
	}
}

func mustMove(t *testing.T, lk Linkage) *Moving {
	t.Helper()
	m, err := lk.Moving()
	if err != nil {
		t.Fatal(err)
	}
	return m
}

var groupLines = regexp.MustCompile(`(?m)^(<g data-piece="\d+">|</g>)\n`)

// Without its groups the moving drawing is the still one, byte for byte.
func TestMovingIsTheStill(t *testing.T) {
	for name, lk := range movingSamples() {
		m := mustMove(t, lk)
		f, err := lk.Figure()
		if err != nil {
			t.Fatal(err)
		}
		still := groupLines.ReplaceAllString(string(mustSVG(t, f)), "")
		if got := groupLines.ReplaceAllString(string(m.SVG), ""); got != still {
			line, a, b := difference(got, still)
			t.Errorf("%s: line %d is\n%s\nand in the still drawing\n%s", name, line, a, b)
		}
		readSVG(t, m.SVG)
		if len(m.Pieces) < 4 {
			t.Errorf("%s: only %d pieces move", name, len(m.Pieces))
		}
		for n, way := range m.Pieces {
			if off := apartAffine(way[m.First], atRest); off > 1e-9 {
				t.Errorf("%s: piece %d starts %g pt from where it is drawn", name, n, off)
			}
		}
	}
}

var atRest = Affine{1, 0, 0, 1, 0, 0}

// apartAffine is how far two maps take a point of a page apart, pt.
func apartAffine(a, b Affine) float64 {
	far := 0.0
	for _, p := range [][2]float64{{0, 0}, {500, 0}, {0, 400}, {500, 400}} {
		ax, ay := a.of(p)
		bx, by := b.of(p)
		far = max(far, math.Hypot(ax-bx, ay-by))
	}
	return far
}

func (t Affine) of(p [2]float64) (x, y float64) {
	return t[0]*p[0] + t[2]*p[1] + t[4], t[1]*p[0] + t[3]*p[1] + t[5]
}

// groupsOf lists what each group draws, names apart: its corners, pt, y up.
func groupsOf(svg []byte) (pieces []int, corners [][][2]float64) {
	for _, m := range regexp.MustCompile(`(?s)<g data-piece="(\d+)">\n(.*?)</g>\n`).FindAllStringSubmatch(string(svg), -1) {
		if strings.Contains(m[2], "<text") || strings.Contains(m[2], "fill-opacity:0.6\"") || strings.Contains(m[2], "stroke-width:0.6") {
			continue // a name, which has another place in every drawing
		}
		n, _ := strconv.Atoi(m[1])
		var pts [][2]float64
		for _, c := range coordinate.FindAllStringSubmatch(m[2], -1) {
			x, _ := strconv.ParseFloat(c[1], 64)
			y, _ := strconv.ParseFloat(c[2], 64)
			pts = append(pts, [2]float64{x, y})
		}
		pieces, corners = append(pieces, n), append(corners, pts)
	}
	return pieces, corners
}

// Every piece moved by its transform stands where a drawing of that position
// has it: links, shock, carriage, pins, wheels, ground.
func TestMovingPiecesArrive(t *testing.T) {
	for name, lk := range movingSamples() {
		if name == "hostile" {
			continue
		}
		m := mustMove(t, lk)
		pieces, corners := groupsOf(m.SVG)
		for _, i := range []int{1, 6, 12} {
			there := lk
			there.Poses = slices.Concat([]Pose{{At: lk.Way[i].At}}, lk.Poses[1:])
			otherPieces, want := groupsOf(mustMove(t, there).SVG)
			if len(want) != len(corners) {
				t.Fatalf("%s: %d groups at position %d, %d at the first", name, len(want), i, len(corners))
			}
			for g := range corners {
				what := fmt.Sprintf("%s, position %d, group %d (piece %d, %d there)", name, i, g, pieces[g], otherPieces[g])
				arrives(t, what, m.Pieces[pieces[g]][i], corners[g], want[g])
			}
		}
	}
}

// arrives wants every corner near one of those that are wanted; the drawings
// round to 5 digits.
func arrives(t *testing.T, what string, by Affine, from, to [][2]float64) {
	t.Helper()
	if len(from) == 0 || len(from) != len(to) {
		t.Errorf("%s: %d corners, %d wanted", what, len(from), len(to))
		return
	}
	for _, p := range from {
		x, y := by.of(p)
		near := math.Inf(1)
		for _, q := range to {
			near = min(near, math.Hypot(x-q[0], y-q[1]))
		}
		if near > 0.03 {
			t.Errorf("%s: a corner ends %.3f pt off", what, near)
			return
		}
	}
}

// An animation begins as the still drawing, says so to who wants no motion, is
// well-formed, small, and the same bytes every time.
func TestAnimation(t *testing.T) {
	for name, lk := range movingSamples() {
		svg, err := lk.Animation()
		if err != nil {
			t.Fatal(err)
		}
		again, _ := lk.Animation()
		if !bytes.Equal(svg, again) {
			t.Errorf("%s: two runs give different bytes", name)
		}
		if len(svg) > 200_000 {
			t.Errorf("%s: %d bytes", name, len(svg))
		}
		readSVG(t, svg)
		head, rest, _ := strings.Cut(string(svg), "<style>\n")
		style, tail, found := strings.Cut(rest, "</style>\n")
		m := mustMove(t, lk)
		if !found || head+tail != string(m.SVG) {
			t.Errorf("%s: without its style sheet it is not the moving drawing", name)
		}
		if !strings.HasPrefix(style, "@media (prefers-reduced-motion: no-preference) {\n") {
			t.Errorf("%s: it moves for everybody", name)
		}
		checkKeyFrames(t, name, style, m)
	}
}

// checkKeyFrames reads the transforms back out of a style sheet.
func checkKeyFrames(t *testing.T, name, style string, m *Moving) {
	t.Helper()
	blocks := regexp.MustCompile(`(?s)@keyframes piece(\d+) \{\n(.*?)\n\}\n`).FindAllStringSubmatch(style, -1)
	if len(blocks) != len(m.Pieces) {
		t.Fatalf("%s: %d ways for %d pieces", name, len(blocks), len(m.Pieces))
	}
	frame := regexp.MustCompile(`^([\d.]+)%\{transform:(matrix|translate)\((.*)\)\}$`)
	for n, b := range blocks {
		lines := strings.Split(b[2], "\n")
		if len(lines) != len(m.Pieces[n]) {
			t.Fatalf("%s, piece %d: %d key frames for %d positions", name, n, len(lines), len(m.Pieces[n]))
		}
		for i, line := range lines {
			f := frame.FindStringSubmatch(line)
			if f == nil {
				t.Fatalf("%s, piece %d: %q", name, n, line)
			}
			if at, _ := strconv.ParseFloat(f[1], 64); math.Abs(at-100*float64(i)/float64(len(lines)-1)) > 1e-3 {
				t.Errorf("%s, piece %d: key frame %d stands at %s %%", name, n, i, f[1])
			}
			if off := apartAffine(readTransform(f[2], f[3]), m.Pieces[n][i]); off > 0.01 {
				t.Errorf("%s, piece %d, key frame %d is %.4f pt off", name, n, i, off)
			}
		}
	}
}

func readTransform(kind, numbers string) Affine {
	out := Affine{1, 0, 0, 1}
	for i, s := range strings.Split(numbers, ",") {
		v, _ := strconv.ParseFloat(strings.TrimSuffix(s, "px"), 64)
		if kind == "translate" {
			i += 4
		}
		out[i] = v
	}
	return out
}

// An animation of a position in the middle of the way begins there.
func TestAnimationBeginsAtTheFirstPosition(t *testing.T) {
	lk := tarn().onWay(2, 9)
	lk.Poses[0] = lk.Way[2]
	svg, err := lk.Animation()
	if err != nil {
		t.Fatal(err)
	}
	if want := "animation: 2.4s linear -0.6s infinite alternate"; !strings.Contains(string(svg), want) {
		t.Errorf("no %q", want)
	}
}

func TestMovingRefuses(t *testing.T) {
	none := tarn().posed(2)
	short := tarn().onWay(2, 9)
	short.Way = short.Way[:1]
	elsewhere := tarn().onWay(2, 9)
	elsewhere.Way = elsewhere.Way[1:]
	wrong := tarn().onWay(2, 9)
	wrong.Way[3].At = wrong.Way[3].At[1:]
	for _, c := range []struct {
		lk   Linkage
		want string
	}{
		{none, "a way of at least two positions"}, {short, "a way of at least two positions"},
		{elsewhere, "none of the way"}, {wrong, "has 6 points, the linkage has 7"},
	} {
		if _, err := c.lk.Animation(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error %v, want %q in it", err, c.want)
		}
	}
}
