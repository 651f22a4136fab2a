package plots

import "testing"

func benchmarkSVG(b *testing.B, list []sample, name string) {
	for _, s := range list {
		if s.name != name {
			continue
		}
		b.ReportAllocs()
		for b.Loop() {
			f, err := s.make()
			if err != nil {
				b.Fatal(err)
			}
			if _, err := f.SVG(); err != nil {
				b.Fatal(err)
			}
		}
		return
	}
	b.Fatal("no sample ", name)
}

func BenchmarkCurvesSVG(b *testing.B)     { benchmarkSVG(b, curveSamples, "curves-compare") }
func BenchmarkLinkageSVG(b *testing.B)    { benchmarkSVG(b, linkageSamples, "linkage-tarn") }
func BenchmarkTwentyPoses(b *testing.B)   { benchmarkSVG(b, linkageSamples, "linkage-tarn-twenty") }
func BenchmarkTrajectorySVG(b *testing.B) { benchmarkSVG(b, trajectorySamples, "axle-path-compare") }

func BenchmarkCurvesPNG(b *testing.B) {
	f, err := curveSamples[1].make()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := f.PNG(); err != nil {
			b.Fatal(err)
		}
	}
}
