package design

import (
	"regexp"
	"strings"
	"sync"
	"unicode/utf8"

	"gudgeon/cmd/internal/diag"
)

// mistake is one mistake of syntax, as found by the library.
type mistake struct {
	message string // the library's, never shown
	line    string // of the beginning of the expression, without indent
	rest    string // of the file, from where the mistake shows
	at      span
	key     string // that the expression sets, where it can be read
	path    string
	header  bool // the expression is a header
	later   bool // something was opened and not closed: the mistake shows too late
}

func (m *mistake) says(part string) bool { return strings.Contains(m.message, part) }

// opener is the bracket, brace or quote that the value begins with and that may
// span lines; 0 where it begins with none.
func (m *mistake) opener() byte {
	value := strings.TrimLeft(m.behindKey(), " \t")
	if value == "" || !strings.ContainsRune(`[{"'`, rune(value[0])) {
		return 0
	}
	return value[0]
}

// value is what stands behind the = on the line, without a comment.
func (m *mistake) value() string {
	value, _, _ := strings.Cut(m.behindKey(), "#")
	return strings.TrimSpace(value)
}

// behindKey is the line behind its first =.
func (m *mistake) behindKey() string {
	_, rest, _ := strings.Cut(m.line, "=")
	return rest
}

// isWord reports whether all of a value is to blame: a number or a word as
// people write it, but TOML does not.
func (m *mistake) isWord(value string) bool {
	return decimalComma().MatchString(value) || withUnit().MatchString(value) || plainText().MatchString(value) || bareNumber().MatchString(value)
}

func (m *mistake) unclosed() bool {
	return m.says("incomplete") || m.says("not terminated")
}

// width is how many bytes to mark: the word that begins there.
func (m *mistake) width() int {
	end := strings.IndexAny(m.rest, " \t\r\n,]}#=")
	if end < 0 {
		end = len(m.rest)
	}
	if end == 0 || m.isControl() {
		_, n := utf8.DecodeRuneInString(m.rest)
		return max(n, 1)
	}
	return end
}

// problem puts the mistake into words.
func (m *mistake) problem() problem {
	p := problem{code: "syntax", at: m.at, path: m.path}
	p.message, p.found, p.hint = m.words()
	return p
}

func (m *mistake) isControl() bool { return m.says("control characters") || m.says("arriage return") }

// isOpenText reports whether a text has no closing quotes.
func (m *mistake) isOpenText() bool {
	return m.says("nterminated") || m.says("new lines") || m.says("not terminated")
}

// words looks at the text rather than at the library's message, which names
// what its grammar wanted there.
func (m *mistake) words() (message, found, hint string) {
	word := m.rest[:min(len(m.rest), m.width())]
	switch {
	case m.isControl():
		return "a text or comment must not hold control characters", "this is " + shown(firstRune(m.rest)), "leave it out"
	case m.header:
		return "a table header must be one name in brackets, alone on its line", "", "write [shock], or [[load_case]] for one of several"
	case m.later && strings.ContainsRune(`"'`, rune(m.opener())), m.isOpenText():
		return "a text must end with the quotes that it begins with", "", "close it on the same line"
	case m.later && m.opener() == '{':
		return "a table in braces must be closed", "", "close it with }; set a comma between its keys"
	case m.later || m.says("array is incomplete"):
		return "a list must be closed, with a comma between its values", "", "close it with ]"
	case m.says("escape") || m.says(`after \`):
		return `a backslash in a text must begin an escape such as \" or \\`, "", `write \\ for a backslash, or use single quotes`
	case m.says("after array value"):
		return "the values of a list must be separated by commas", "", "write [12, 36]"
	case m.says("inline table"):
		return "the keys of a table in braces must be separated by commas", "", `write { point = "idler", teeth = 16 }`
	case m.says("'=' after key") || m.says("start of key"):
		return m.noKey()
	}
	return m.badValue(m.value(), word)
}

func (m *mistake) noKey() (message, found, hint string) {
	if name := colonHeader().FindStringSubmatch(m.line); name != nil {
		return "a table must begin with its name in brackets", "", "write [" + name[1] + "]"
	}
	if i := strings.IndexByte(m.line, ':'); i > 0 && bareKey(m.line[:i]) {
		return "a key and its value must be joined by =", "", "write " + diag.Visible(brief(m.line[:i]+" = "+strings.TrimSpace(m.line[i+1:])))
	}
	if strings.HasPrefix(m.line, "//") || strings.HasPrefix(m.line, ";") {
		return "a comment must begin with #", "", ""
	}
	if i := strings.IndexByte(m.line, '='); i > 0 {
		return "a key must be one word of letters, digits, - and _", "", "put quotes around other keys: " +
			diag.Quote(strings.TrimSpace(m.line[:i])) + " ="
	}
	return "a line must be a key, = and a value", "", "write stroke = 60, for example; a comment begins with #"
}

// badValue words what does not read as a value, most of all numbers.
func (m *mistake) badValue(value, word string) (message, found, hint string) {
	give := func(s string) string { return "write " + m.name() + " = " + s }
	switch {
	case value == "":
		return m.name() + " must have a value behind the =", "there is none", ""
	case decimalComma().MatchString(value):
		return "a decimal number must be written with a point", "", give(quoteUnit(strings.Replace(value, ",", ".", 1)))
	case withUnit().MatchString(value):
		return "a number with a unit must stand in quotes", "this is " + value, give(`"` + value + `"`)
	case m.says("leading zero"):
		return "a number must not begin with a zero", "", give(strings.TrimLeft(value, "0_"))
	case strings.HasPrefix(value, "."):
		return "a decimal number must have a digit before the point", "", give("0" + value)
	case m.says("decimal point must"):
		return "a decimal number must have a digit behind the point", "", give(strings.Replace(value, ".", ".0", 1))
	case value == "yes" || value == "True" || value == "TRUE" || value == "on":
		return "yes or no must be written true or false", "", give("true")
	case value == "no" || value == "False" || value == "FALSE" || value == "off":
		return "yes or no must be written true or false", "", give("false")
	case plainText().MatchString(value):
		return "a text must stand in quotes", "", give(`"` + value + `"`)
	case m.says("expected newline"):
		return "a line must hold one key and one value", "this is behind the value", "begin a new line, or a comment with #"
	}
	return m.name() + " must have a value that can be read", "this is " + shown(word), "numbers stand alone, texts in quotes, lists in [ ]"
}

func (m *mistake) name() string {
	if m.key == "" {
		return "a key"
	}
	return shown(m.key)
}

// What people write where TOML wants a number.
var (
	decimalComma = pattern(`^[+-]?\d+,\d+( *[A-Za-z%°].*)?$`)
	withUnit     = pattern(`^[+-]?[\d.]+([eE][+-]?\d+)? *[A-Za-z%°][\w/ .°²³·%-]*$`)
	bareNumber   = pattern(`^[+-]?[\d._]+$`)
	colonHeader  = pattern(`^([\w-]+):[ \t]*(#.*)?$`)
	plainText    = pattern(`^[A-Za-z][\w .-]*$`)
)

// pattern compiles a regular expression when it is first asked for: only a
// mistake does, and compiling would be a good part of the program's start.
func pattern(expression string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expression) })
}

// quoteUnit puts a number with a unit in quotes.
func quoteUnit(s string) string {
	if withUnit().MatchString(s) {
		return `"` + s + `"`
	}
	return s
}

func firstRune(s string) string {
	_, n := utf8.DecodeRuneInString(s)
	return s[:n]
}

// shown gives a piece of the file for a message: on one line, not too long.
func shown(s string) string { return diag.Quote(brief(s)) }

// brief cuts what is too long for a message.
func brief(s string) string {
	const most = 40
	n := 0
	for i := range s {
		if n++; n > most {
			return s[:i] + "…"
		}
	}
	return s
}
