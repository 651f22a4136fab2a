package plots

import (
	"bytes"
	"flag"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

var (
	update   = flag.Bool("update", false, "write the golden drawings anew")
	pictures = flag.String("pictures", "", "write every sample as PNG into this `folder`, to be looked at")
)

func samples() []sample { return slices.Concat(curveSamples, linkageSamples, trajectorySamples) }

func TestPictures(t *testing.T) {
	if *pictures == "" {
		t.Skip("no folder given")
	}
	for _, s := range samples() {
		f, err := s.make()
		if err != nil {
			t.Fatal(s.name, err)
		}
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
	if err := os.WriteFile(filepath.Join(*pictures, name), b, 0o666); err != nil {
		t.Fatal(err)
	}
}

// grey is the picture as a printer without colour shows it.
func grey(t *testing.T, b []byte) []byte {
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
