package plots

import (
	"strings"
	"testing"
	"unicode/utf8"

	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"plain":                       "plain",
		"  two \t words\r\n":          "two words",
		"line\nbreak":                 "line break",
		"\x1b[31mred\x1b[0m":          `\x1b[31mred\x1b[0m`,
		"nul\x00 bell\a":              `nul\x00 bell\x07`,
		"right\u202eleft":             `right\u202eleft`,
		"zero\u200bwidth":             `zero\u200bwidth`,
		"bad\xffutf":                  "bad\uFFFDutf",
		"not a character\uffff":       `not a character\uffff`,
		"tag\U000e0041":               `tag\U000e0041`,
		"<b>&\"'":                     "<b>&\"'",
		"क्\u200dष":                   "क्\u200dष",
		"thin\u2009and\u3000wide":     "thin and wide",
		"kept\u00a0together":          "kept\u00a0together",
		"del\x7f c1\u0085 line\u2028": `del\x7f c1 line`,
	} {
		if got := clean(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

// xmlChar is the production Char of XML 1.0, section 2.2.
func xmlChar(r rune) bool {
	return r == 0x9 || r == 0xA || r == 0xD || r >= 0x20 && r <= 0xD7FF || r >= 0xE000 && r <= 0xFFFD || r >= 0x10000 && r <= 0x10FFFF
}

func TestCleanIsFitForXML(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := clean(string(rapid.SliceOf(rapid.Byte()).Draw(t, "bytes")) + rapid.String().Draw(t, "text"))
		for _, r := range s {
			if !xmlChar(r) || r < 0x20 || r == 0x7f {
				t.Fatalf("%q holds %U", s, r)
			}
		}
		if !utf8.ValidString(s) || clean(s) != s {
			t.Fatalf("%q is not clean", s)
		}
	})
}

func TestShorten(t *testing.T) {
	if got := nameType.shorten("short", 100); got != "short" {
		t.Errorf("%q", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		s := clean(rapid.StringN(0, 60, -1).Draw(t, "s"))
		w := vg.Length(rapid.Float64Range(20, 200).Draw(t, "w"))
		got := nameType.shorten(s, w)
		if nameType.width(got) > w {
			t.Fatalf("%q is %.1f wide, there is room for %.1f", got, nameType.width(got), w)
		}
		if body, cut := strings.CutSuffix(got, ellipsis); got != s && (!cut || !strings.HasPrefix(s, body)) {
			t.Fatalf("%q became %q", s, got)
		}
	})
}

func TestWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-zé中m]{1,30}`)
		s := strings.Join(rapid.SliceOfN(word, 0, 30).Draw(t, "words"), " ")
		const width = 120
		lines := subtitleType.wrap(s, width, 4)
		if len(lines) > 4 || s == "" && len(lines) > 0 {
			t.Fatalf("%d lines", len(lines))
		}
		for _, l := range lines {
			if subtitleType.width(l) > width || l == "" {
				t.Fatalf("line %q is %.1f wide", l, subtitleType.width(l))
			}
		}
		// Nothing is lost unless an ellipsis says so.
		whole := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
		body, cut := strings.CutSuffix(whole, ellipsis)
		if all := strings.ReplaceAll(s, " ", ""); !cut && whole != all || !strings.HasPrefix(all, body) {
			t.Fatalf("%q became %q", s, lines)
		}
	})
	if got := subtitleType.wrap("aaaa bbbb cccc", subtitleType.width("aaaa bbbb")+1, 3); len(got) != 2 || got[0] != "aaaa bbbb" || got[1] != "cccc" {
		t.Errorf("words are not kept whole: %q", got)
	}
}

// A caption of any length leaves the drawing its page.
func TestEndlessCaption(t *testing.T) {
	endless := strings.Repeat("and on ", 500)
	f, err := Curves{Caption: Caption{Title: endless, Subtitle: endless}, Panels: []Panel{{endless, []Line{{Name: endless, X: []float64{0, 1}, Y: []float64{0, 1}}}}}}.Figure()
	if err != nil {
		t.Fatal(err)
	}
	d := readSVG(t, mustSVG(t, f))
	if d.h > 500 {
		t.Errorf("the page is %g px high", d.h)
	}
	cut := 0
	for _, s := range d.texts {
		if strings.HasSuffix(s.s, ellipsis) {
			cut++
		}
	}
	if cut != 4 || d.title != clean(endless) {
		t.Errorf("%d shortened texts, want title, subtitle, heading and name; the whole title stays in <title>", cut)
	}
}

func TestMissingLetters(t *testing.T) {
	for in, want := range map[string]string{
		"Federweg, mm −5 °C Δ µ Ø ä é ß Ж Ω …": "",
		"中 🚲 b 中": "中🚲",
	} {
		if got := string(missingLetters(in)); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
	f, err := Curves{Caption: Caption{Title: "title 中", Description: "文 is not drawn"}, Panels: []Panel{{"heading 🚲", []Line{{Name: "name ☃", X: []float64{0, 1}, Y: []float64{0, 1}}}}}}.Figure()
	if err != nil {
		t.Fatal(err)
	}
	if got := string(f.MissingLetters()); got != "☃中🚲" {
		t.Errorf("a figure misses %q", got)
	}
}
