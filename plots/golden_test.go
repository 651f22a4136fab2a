package plots

import (
	"bytes"
	"flag"
	"image"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"gudgeon/testdata"
)

var (
	update   = flag.Bool("update", false, "write the golden drawings anew")
	pictures = flag.String("pictures", "", "write every sample in every format, and in grey, into this `folder`, to be looked at")
)

func samples() []sample {
	return slices.Concat(curveSamples, linkageSamples, trajectorySamples, overlaySamples, mapSamples, toothSamples)
}

func mustFigure(t *testing.T, s sample) *Figure {
	t.Helper()
	f, err := s.make()
	if err != nil {
		t.Fatal(s.name, err)
	}
	return f
}

func mustSVG(t *testing.T, f *Figure) []byte {
	t.Helper()
	b, err := f.SVG()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The golden drawings hold what every kind of drawing looked like when somebody
// last looked at it.
func TestGoldenDrawings(t *testing.T) {
	for _, s := range samples() {
		t.Run(s.name, func(t *testing.T) {
			got := mustSVG(t, mustFigure(t, s))
			file := testdata.Path("svg", s.name+".svg")
			if *update {
				if err := os.WriteFile(file, got, 0o666); err != nil {
					t.Fatal(err)
				}
				return
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if line, a, b := difference(string(got), string(want)); line > 0 {
				t.Errorf("line %d is\n%s\nand was\n%s\n(go test ./plots -update writes the drawings anew)", line, a, b)
			}
		})
	}
}

var number = regexp.MustCompile(`[-+]?\d+(\.\d+)?(e[-+]?\d+)?`)

// difference finds the first line where the drawings differ in more than the
// last printed digit of a number.
func difference(got, want string) (line int, a, b string) {
	as, bs := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range max(len(as), len(bs)) {
		a, b = "", ""
		if i < len(as) {
			a = as[i]
		}
		if i < len(bs) {
			b = bs[i]
		}
		if !sameLine(a, b) {
			return i + 1, a, b
		}
	}
	return 0, "", ""
}

func sameLine(a, b string) bool {
	if number.ReplaceAllString(a, "0") != number.ReplaceAllString(b, "0") {
		return false
	}
	as, bs := number.FindAllString(a, -1), number.FindAllString(b, -1)
	for i := range as {
		x, _ := strconv.ParseFloat(as[i], 64)
		y, _ := strconv.ParseFloat(bs[i], 64)
		if math.Abs(x-y) > lastDigit(y)*1.0001 {
			return false
		}
	}
	return true
}

// lastDigit is one unit of the fifth significant digit, the last that an SVG
// of the drawing library has.
func lastDigit(v float64) float64 {
	if v == 0 {
		return 1e-4
	}
	return math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-4)
}

// A golden test that shows no difference is worth nothing.
func TestDifferenceIsSeen(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"M100.01,2", "M100.02,2", true},
		{"M100.01,2", "M100.03,2", false},
		{"M1,2L3,4", "M1,2L3,4L5,6", false},
		{"fill:#0072B2", "fill:#D55E00", false},
		{"0.00012345", "0.00012346", true},
		{"0.00012345", "0.00012348", false},
		{"a", "b", false},
	} {
		if sameLine(c.a, c.b) != c.same {
			t.Errorf("%q and %q: same is not %v", c.a, c.b, c.same)
		}
	}
	if n, _, _ := difference("a\nb", "a"); n != 2 {
		t.Errorf("a missing line is not seen")
	}
}

func TestSameInputSameBytes(t *testing.T) {
	for _, s := range samples() {
		f := mustFigure(t, s)
		want := mustSVG(t, f)
		var wg sync.WaitGroup
		for i := range 4 {
			wg.Go(func() {
				g := f // half of them render one Figure at the same time
				if i%2 == 0 {
					g, _ = s.make()
				}
				if got, err := g.SVG(); err != nil || !bytes.Equal(got, want) {
					t.Errorf("%s: not the same bytes (%v)", s.name, err)
				}
			})
		}
		wg.Wait()
	}
}

func TestPictures(t *testing.T) {
	if *pictures == "" {
		t.Skip("no folder given")
	}
	for _, s := range samples() {
		f := mustFigure(t, s)
		for _, format := range Formats {
			b, err := f.Render(format)
			if err != nil {
				t.Fatal(s.name, err)
			}
			keep(t, s.name+"."+format, b)
			if format == "png" {
				keep(t, s.name+"-grey.png", grey(t, b))
			}
		}
	}
}

func keep(t *testing.T, name string, b []byte) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(*pictures, name), b, 0o666); err != nil {
		t.Fatal(err)
	}
}

// grey is the picture as a printer without colour shows it.
func grey(t *testing.T, b []byte) []byte {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	out := image.NewGray(img.Bounds())
	draw.Draw(out, out.Bounds(), img, image.Point{}, draw.Src)
	var buf bytes.Buffer
	if err := png.Encode(&buf, out); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}
