package main

import (
	"io"
	"strings"
	"testing"
)

// BenchmarkSweep is the sweep command without the start of a process.
func BenchmarkSweep(b *testing.B) {
	for _, format := range []string{"csv", "json", "table"} {
		b.Run(format, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if code := run([]string{"sweep", "example:freshet", "--format", format}, strings.NewReader(""), io.Discard, io.Discard); code != 0 {
					b.Fatal(code)
				}
			}
		})
	}
}
