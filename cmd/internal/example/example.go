// Package example holds the designs that are built into the command, so that
// every command can be tried without a file: gudgeon sweep example:freshet.
//
// All are invented. Their names are words for moving water.
package example

import (
	"embed"
	"io/fs"
	"strings"
)

//go:embed designs/*.toml
var designs embed.FS

// Names lists the examples, sorted.
func Names() []string {
	entries, err := fs.ReadDir(designs, "designs")
	if err != nil {
		panic("example: " + err.Error()) // embedded, so it is there
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), ".toml")
	}
	return names
}

// Source returns the text of the example's design file.
func Source(name string) (text []byte, ok bool) {
	text, err := designs.ReadFile("designs/" + name + ".toml")
	return text, err == nil
}
