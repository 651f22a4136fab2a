package plots

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/font/liberation"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

const ellipsis = "…"

// clean makes text from outside fit to be drawn: one line, valid UTF-8, single
// blanks, and nothing that acts instead of being read. Line breaks and tabs
// become blanks; other control characters, marks that turn the reading
// direction and code points without a meaning are written out as escapes.
func clean(s string) string {
	var b strings.Builder
	for _, r := range strings.ToValidUTF8(s, "\uFFFD") {
		switch {
		case unicode.IsSpace(r) && r != '\u00A0':
			b.WriteByte(' ')
		case r == '\u200C' || r == '\u200D' || r == '\u00A0' || unicode.IsPrint(r):
			b.WriteRune(r) // joiners shape letters and belong to the word
		case r < 0x100:
			fmt.Fprintf(&b, `\x%02x`, r)
		case r < 0x10000:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			fmt.Fprintf(&b, `\U%08x`, r)
		}
	}
	return strings.Join(strings.FieldsFunc(b.String(), func(r rune) bool { return r == ' ' }), " ")
}

var faces = font.NewCache(liberation.Collection())

// lettering is one size and weight of the drawing typeface.
type lettering struct {
	face   font.Face
	metric font.Extents
}

func newLettering(size vg.Length, bold bool) lettering {
	face := faces.Lookup(sansFont(size, bold), size)
	return lettering{face, face.Extents()}
}

// width is the length of s on the page. A letter that the typeface lacks is
// supplied by the reader's system and taken to be as wide as it is high.
func (t lettering) width(s string) vg.Length {
	missing := 0
	known := strings.Map(func(r rune) rune {
		if !hasGlyph(t.face, r) {
			missing++
			return -1
		}
		return r
	}, s)
	return t.face.Width(known) + vg.Length(missing)*t.face.Font.Size
}

// rise is the height of a capital letter, drop what reaches below the line.
func (t lettering) rise() vg.Length { return 0.72 * t.face.Font.Size }
func (t lettering) drop() vg.Length { return t.metric.Descent }

// left, right and centre draw s with its line of writing at p.
func (t lettering) left(c draw.Canvas, k ink, p vg.Point, s string) {
	if s == "" {
		return
	}
	c.SetColor(k)
	c.FillString(t.face, p, s)
}

func (t lettering) right(c draw.Canvas, k ink, p vg.Point, s string) {
	p.X -= t.width(s)
	t.left(c, k, p, s)
}

func (t lettering) centre(c draw.Canvas, k ink, p vg.Point, s string) {
	p.X -= t.width(s) / 2
	t.left(c, k, p, s)
}

// shorten cuts s at its end, with an ellipsis, to fit into the width.
func (t lettering) shorten(s string, width vg.Length) string {
	if t.width(s) <= width {
		return s
	}
	runes := []rune(s)
	// The width grows with the count of letters, so halve the interval.
	lo, hi := 0, len(runes)
	for lo+1 < hi {
		mid := (lo + hi) / 2
		if t.width(string(runes[:mid])+ellipsis) <= width {
			lo = mid
		} else {
			hi = mid
		}
	}
	return strings.TrimRight(string(runes[:lo]), " ,;") + ellipsis
}

// wrap breaks s into lines of the width at most, the last of them shortened
// where s needs more than the given number. No text is no line.
func (t lettering) wrap(s string, width vg.Length, lines int) []string {
	var out []string
	for s != "" {
		if len(out) == lines-1 {
			return append(out, t.shorten(s, width))
		}
		n := t.fitting(s, width)
		out = append(out, strings.TrimRight(s[:n], " "))
		s = strings.TrimLeft(s[n:], " ")
	}
	return out
}

// fitting is how many bytes of s make a line of the width: whole words, or at
// least one letter of a word that is longer than the line.
func (t lettering) fitting(s string, width vg.Length) int {
	if t.width(s) <= width {
		return len(s)
	}
	fits := 0
	for i := range s {
		if s[i] != ' ' {
			continue
		}
		if t.width(s[:i]) > width {
			break
		}
		fits = i
	}
	if fits > 0 {
		return fits
	}
	for i := range s {
		if i > 0 && t.width(s[:i]) > width {
			return fits
		}
		fits = i
	}
	_, n := utf8.DecodeRuneInString(s)
	return max(fits, n)
}

// measuredText is the library's plain text that remembers the sizes of what it
// has measured: laying out a panel measures each tick label some ten times.
type measuredText struct {
	text.Plain
	sizes map[measuredKey][3]vg.Length // width, height, depth
}

type measuredKey struct {
	text string
	font font.Font
}

// Box implements text.Handler.
func (m measuredText) Box(s string, f font.Font) (width, height, depth vg.Length) {
	key := measuredKey{s, f}
	size, known := m.sizes[key]
	if !known {
		size[0], size[1], size[2] = m.Plain.Box(s, f)
		m.sizes[key] = size
	}
	return size[0], size[1], size[2]
}

// hasGlyph tells whether the typeface can draw r.
func hasGlyph(f font.Face, r rune) bool {
	if r < 0x7f && r >= 0x20 {
		return true
	}
	var buf sfnt.Buffer
	i, err := f.Face.GlyphIndex(&buf, r)
	return err == nil && i != 0
}

// missingLetters lists the letters of s that the drawing typeface lacks, each
// once and in order.
func missingLetters(s string) []rune {
	var missing []rune
	for _, r := range s {
		if !hasGlyph(labelType.face, r) {
			missing = append(missing, r)
		}
	}
	slices.Sort(missing)
	return slices.Compact(missing)
}
