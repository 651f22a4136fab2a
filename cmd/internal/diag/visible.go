package diag

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// Quote gives a name as a message shows it: bare where it is made of letters,
// digits, - and _ as a key may be, otherwise in quotes with escapes.
func Quote(name string) string {
	if isBare(name) {
		return name
	}
	r := strings.NewReplacer(`\`, `\\`, `"`, `\"`)
	return `"` + Visible(r.Replace(name)) + `"`
}

func isBare(s string) bool {
	for _, r := range s {
		if !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_') {
			return false
		}
	}
	return s != ""
}

// Visible returns s as plain text on one line: control characters, invisible
// format characters, line separators and bytes that are not UTF-8 become
// escapes.
func Visible(s string) string {
	if !strings.ContainsFunc(s, isHidden) {
		return s
	}
	var b strings.Builder
	for len(s) > 0 {
		r, n := utf8.DecodeRuneInString(s)
		b.WriteString(visibleRune(r, s[:n]))
		s = s[n:]
	}
	return b.String()
}

// IsHidden reports whether s holds a character that Visible would escape.
func IsHidden(s string) bool { return strings.ContainsFunc(s, isHidden) }

// isHidden is true for utf8.RuneError too, which stands for a bad byte.
func isHidden(r rune) bool {
	return r == utf8.RuneError || unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp)
}

func visibleRune(r rune, raw string) string {
	switch {
	case !isHidden(r) || r == utf8.RuneError && len(raw) > 1:
		return raw
	case r == '\n':
		return `\n`
	case r == '\r':
		return `\r`
	case r == '\t':
		return `\t`
	case r == utf8.RuneError:
		return fmt.Sprintf(`\x%02x`, raw[0])
	case r > 0xffff:
		return fmt.Sprintf(`\U%08x`, r)
	}
	return fmt.Sprintf(`\u%04x`, r)
}

// Width is how many terminal cells visible text takes: two for a wide East
// Asian letter, none for a combining mark.
func Width(s string) int {
	n := 0
	for _, r := range s {
		n += cells(r)
	}
	return n
}

// cells is the display width of one character of visible text.
func cells(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}
