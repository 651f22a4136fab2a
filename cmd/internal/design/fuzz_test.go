package design

import (
	"bytes"
	"path/filepath"
	"testing"

	"gudgeon/cmd/internal/diag"
	"gudgeon/testdata"
)

// FuzzParse asks of any bytes that reading them does not panic, that every
// range lies in the file, that a second reading says the same, that syntax is
// judged as the decoder does, and that a file without errors has every variant.
func FuzzParse(f *testing.F) {
	for _, dir := range []string{"good", "bad"} {
		names, _ := filepath.Glob(testdata.Path("designs", dir, "*.toml"))
		for _, name := range names {
			f.Add(readFile(f, name))
		}
	}
	for _, doc := range documents {
		f.Add([]byte(doc))
	}
	f.Add([]byte(small + joint))
	f.Fuzz(func(t *testing.T, src []byte) {
		file, list := Parse("fuzz.toml", src)
		checkList(t, list, src)
		again, second := Parse("fuzz.toml", src)
		if (file == nil) != (again == nil) || !equalLists(list, second) {
			t.Error("a second reading says something else")
		}
		if (file == nil) != list.HasErrors() {
			t.Error("a file with errors, or none without")
		}
		if file == nil {
			return
		}
		checkAgainstDecoder(t, string(bytes.TrimPrefix(src, byteOrderMark)))
		for _, v := range append(file.Variants(), "") {
			if d, list := file.Variant(v); d == nil || list != nil {
				t.Errorf("variant %q: %v", v, list)
			}
		}
	})
}

func equalLists(a, b diag.List) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
