package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Every code that a mistake in the call can have stands in the manual, and the
// manual lists none that is gone.
func TestCodesAreListed(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	used := []string{"unknown-column", "unknown-picture", "unknown-figure", "unknown-pin"} // put together from what is unknown
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") || file == "doc.go" {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`Code:\s+"([a-z-]+[a-z])"`).FindAllSubmatch(text, -1) {
			used = append(used, string(m[1]))
		}
	}
	manual, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	_, list, found := strings.Cut(string(manual), "The codes of mistakes in the call are\n")
	list, _, ended := strings.Cut(list, "// those of mistakes in the file")
	if !found || !ended {
		t.Fatal("the manual's list of codes was not found")
	}
	var listed []string
	for line := range strings.Lines(list) {
		if codes, ok := strings.CutPrefix(line, "//\t"); ok {
			listed = append(listed, strings.Fields(codes)...)
		}
	}
	for _, code := range used {
		if !slices.Contains(listed, code) {
			t.Errorf("%s is not in the manual", code)
		}
	}
	for _, code := range listed {
		if !slices.Contains(used, code) {
			t.Errorf("the manual lists %s, which nothing uses", code)
		}
	}
}
