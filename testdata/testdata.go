// Package testdata finds the files that tests of any package share, and reads
// the tables of published values among them.
//
//	published/  one CSV a source, values as printed
//	designs/    design files that are right, and wrong ones
//
// It is a package so that a test names a file the same way wherever the test
// stands: testdata.Path("designs", "good", "x.toml").
package testdata

import (
	"path/filepath"
	"runtime"
)

// Path returns the absolute path of a file below testdata, its parts joined.
// With no parts it is the folder itself.
func Path(parts ...string) string {
	_, here, _, ok := runtime.Caller(0)
	if !ok {
		panic("testdata: the place of the source file is unknown")
	}
	return filepath.Join(append([]string{filepath.Dir(here)}, parts...)...)
}
