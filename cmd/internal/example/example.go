// Package example holds the designs that are built into the command, so that
// every command can be tried without a file: gudgeon sweep example:freshet.
//
// All are invented. Their names are words for water and what it makes. Between
// them they show the layouts that rear suspensions are built to, and every
// table of the design file.
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

// About tells in half a sentence what the example is and why one would choose
// its layout: the first sentence of its file, without the design's name before
// and the full stop after it.
//
//	# Freshet 154: a four-bar trail bike with …, for braking that … free to work.
func About(name string) (sentence string, ok bool) {
	text, ok := Source(name)
	if !ok {
		return "", false
	}
	var words []string
	for line := range strings.Lines(string(text)) {
		comment, isComment := strings.CutPrefix(line, "#")
		if !isComment {
			break
		}
		words = append(words, strings.Fields(comment)...)
		if n := len(words); n > 0 && strings.HasSuffix(words[n-1], ".") {
			break
		}
	}
	_, sentence, ok = strings.Cut(strings.Join(words, " "), ": ")
	return strings.TrimSuffix(sentence, "."), ok
}
