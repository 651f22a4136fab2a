package diag

import (
	"strings"
	"unicode/utf8"

	edlib "github.com/hbollon/go-edlib"
)

// maxKnown is how many known names a hint lists.
const maxKnown = 12

// Limits of comparing letter by letter, whose work grows with the square of
// the letters: past them only names that differ in case or - and _ are near.
const (
	maxLetters  = 80
	maxCompared = 1000
)

// Nearest returns the known name that name most likely stands for: one that
// differs only in case or in - and _, otherwise the one of the least edit
// distance (swapped neighbours count once) of at most a third of the name's
// letters, at least 1. The first of equals wins; false where none is near.
func Nearest(name string, known []string) (string, bool) {
	folded := fold(name)
	for _, k := range known {
		if fold(k) == folded {
			return k, true
		}
	}
	letters := utf8.RuneCountInString(folded)
	if letters > maxLetters || len(known) > maxCompared {
		return "", false
	}
	best, least, found := "", max(1, letters/3)+1, false
	for _, k := range known {
		f := fold(k)
		if n := utf8.RuneCountInString(f); n >= letters+least || letters >= n+least {
			continue // the lengths alone differ by more
		}
		if d := edlib.OSADamerauLevenshteinDistance(folded, f); d < least && d < letters {
			best, least, found = k, d, true
		}
	}
	return best, found
}

var joiners = strings.NewReplacer("-", "", "_", "", " ", "")

// fold leaves what makes two spellings of a name different words.
func fold(s string) string { return strings.ToLower(joiners.Replace(s)) }

// Suggest is the hint for a name that is not known: the nearest of known, or
// all of them where none is near and they are few enough to read. Empty where
// nothing is known.
func Suggest(name string, known []string) string {
	if near, ok := Nearest(name, known); ok {
		return "did you mean " + Quote(near) + "?"
	}
	if len(known) == 0 {
		return ""
	}
	return "known here: " + Names(known)
}

// Names lists names for a message, at most twelve of them.
func Names(names []string) string {
	var b strings.Builder
	for i, n := range names {
		if i == maxKnown {
			b.WriteString(", …")
			break
		}
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(Quote(n))
	}
	return b.String()
}
