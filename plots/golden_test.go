package plots

import (
	"flag"
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
			if err := os.WriteFile(filepath.Join(*pictures, s.name+"."+format), b, 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
}
