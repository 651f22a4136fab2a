package chain

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// sweepOfCogs is a wheel that swings about a pivot at (12, 36), n positions by
// unit of the angle, with what Growth is handed.
func sweepOfCogs(teeth []int, idler *Idler, n int) (run *Run, tracks Tracks, growth, slope [][]float64) {
	tracks = Tracks{Idler: Track{At: r2.Vec{X: 12, Y: 150}}, Cog: track(n, func(u float64) (at, v r2.Vec) {
		sin, cos := math.Sincos(0.4*u - 0.05)
		return r2.Vec{X: 12 - 448*cos, Y: 36 + 448*sin}, r2.Vec{X: 448 * sin, Y: 448 * cos}
	})}
	d := Drive{Chainring: sprocket(32), Idler: idler}
	for _, z := range teeth {
		d.Cogs = append(d.Cogs, sprocket(z))
	}
	run, err := d.Prepare(Centres{Cog: r2.Vec{X: tracks.Cog.X[0], Y: tracks.Cog.Y[0]}, Idler: tracks.Idler.At})
	if err != nil {
		panic(err)
	}
	return run, tracks, columns(len(teeth), n), columns(len(teeth), n)
}

func sprocket(teeth int) Sprocket {
	s, err := NewSprocket(teeth, HalfInch)
	if err != nil {
		panic(err)
	}
	return s
}

func BenchmarkGrowth(b *testing.B) {
	const n = 101
	cogs := []int{21, 10, 12, 14, 16, 18, 24, 28, 33, 39, 45, 51}
	for _, v := range []struct {
		name  string
		cogs  int
		idler *Idler
	}{
		{"straight", 1, nil},
		{"straight", 12, nil},
		{"idler", 1, &Idler{Sprocket: sprocket(16)}},
		{"idler", 12, &Idler{Sprocket: sprocket(16)}},
	} {
		b.Run(fmt.Sprintf("%s/cogs=%d", v.name, v.cogs), func(b *testing.B) {
			run, tracks, growth, slope := sweepOfCogs(cogs[:v.cogs], v.idler, n)
			b.ReportAllocs()
			for b.Loop() {
				if err := run.Growth(growth, slope, tracks); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/position")
		})
	}
}
