package spline

import "testing"

// BenchmarkNew is the whole of one joint: inputs checked, geometry, stresses of
// a unit torque.
func BenchmarkNew(b *testing.B) {
	s := sound()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := New(s); err != nil {
			b.Fatal(err)
		}
	}
}
