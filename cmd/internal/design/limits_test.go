package design

import (
	"strings"
	"testing"
)

func codesOf(src string) []string {
	_, list := Parse("x.toml", []byte(src))
	var out []string
	for _, d := range list {
		out = append(out, d.Code)
	}
	return out
}

// One to either side of each limit.
func TestLimits(t *testing.T) {
	fill := func(n int) string { return small + "#" + strings.Repeat("x", n-len(small)-1) }
	nested := func(n int) string { return small + "x = " + strings.Repeat("[", n) + strings.Repeat("]", n) + "\n" }
	dots := func(n int) string { return "[shock]\n" + strings.Repeat("a.", n) + "b = 1\n" }
	for _, c := range []struct {
		name, src string
		code      string
		is        bool
	}{
		{"4 MiB", fill(maxBytes), "too-large", false}, {"past 4 MiB", fill(maxBytes + 1), "too-large", true},
		{"nested", nested(maxDepth - 1), "too-deep", false}, {"nested too deep", nested(maxDepth), "too-deep", true},
		{"nested past the parser's limit", nested(20000), "too-deep", true},
		{"dotted", dots(maxDepth - 1), "too-deep", false}, {"dotted too deep", dots(maxDepth), "too-deep", true},
		{"header too deep", "[" + strings.Repeat("a.", maxDepth) + "b]\n", "too-deep", true},
	} {
		got := codesOf(c.src)
		if is := len(got) == 1 && got[0] == c.code; is != c.is {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	if got := codesOf(fill(maxBytes)); got != nil {
		t.Errorf("a file of 4 MiB: %v", got)
	}
}

// A file of nothing but mistakes lists what can be read and counts the rest.
func TestManyMistakes(t *testing.T) {
	src := small + strings.Repeat("[[slider]]\n", 30)
	_, list := Parse("x.toml", []byte(src))
	if len(list) != 30*4 {
		t.Fatalf("%d mistakes, want 120", len(list))
	}
	var b strings.Builder
	if err := list.Write(&b, false); err != nil {
		t.Fatal(err)
	}
	if !strings.HasSuffix(b.String(), "x.toml: 120 errors; the first 50 are shown\n") || strings.Count(b.String(), ": error: ") != 50 {
		t.Errorf("text ends with %q", b.String()[b.Len()-80:])
	}
	checkList(t, list, []byte(src))
}

// A file of another format is told as one after three lines; a design with as
// many mistakes is read to its end.
func TestForeignFile(t *testing.T) {
	if got := codesOf(strings.Repeat("0.5,1.5\n", 40)); len(got) != 3 {
		t.Errorf("a table of numbers: %v", got)
	}
	if got := codesOf("name = \"x\"\n" + strings.Repeat("0.5,1.5\n", 4)); len(got) != 4 {
		t.Errorf("four lines that are none: %v", got)
	}
}

// Names with control characters, line ends or invisible marks are refused; all
// others are only names.
func TestNamesThatPrint(t *testing.T) {
	for name, ok := range map[string]bool{
		"ok": true, "Ö-3 ½": true, "日本": true, "<b>": true, "a\\\\b": true, "a\\nb": false, "a\\tb": false, "\\u001b[2J": false, "a\\u200bb": false, "\\u2028": false, "\\u009b1m": false, "\\u202e": false,
	} {
		got := codesOf(renamed(name))
		if ok && got != nil || !ok && (len(got) != 1 || got[0] != "control-character") {
			t.Errorf("%s: %v", name, got)
		}
	}
	for _, blank := range []string{" ", "   ", "\\u00a0", "\\u3000 "} {
		if got := codesOf(renamed(blank)); len(got) != 1 || got[0] != "empty-name" {
			t.Errorf("%q: %v", blank, got)
		}
		if got := codesOf("name = \"" + blank + "\"\n" + small); len(got) != 1 || got[0] != "empty-name" {
			t.Errorf("a design called %q: %v", blank, got)
		}
	}
}

// renamed is the small design with another name for its sliding point.
func renamed(name string) string {
	return strings.NewReplacer(`"slide"`, `"`+name+`"`, "slide ", `"`+name+`" `).Replace(small)
}

// The same mistake written as people do it, in places of every kind.
func TestMistakesByHand(t *testing.T) {
	for _, c := range []struct{ from, to, message, hint string }{
		{"stroke =", "Stroke =", "[shock] has no key Stroke", "did you mean stroke?"},
		{"wheel_radius", "wheel-radius", "[rear] has no key wheel-radius", "did you mean wheel_radius?"},
		{"[shock]", "[Shock]", "a design file has no table Shock", "did you mean shock?"},
		{"[points]", "[point]", "a design file has no table point", "did you mean points?"},
		{`"55 mm"`, `"55mm."`, "stroke must have a unit of length", `write stroke = "55 mm"`},
		{`"55 mm"`, `"55 in mm"`, "stroke must have a unit of length", "units of length: mm, cm, m, in"},
		{`"55 mm"`, `"mm 55"`, "stroke must be a number in mm, or a text with its unit", "write stroke = 60"},
		{`"55 mm"`, `55 mm`, "a number with a unit must stand in quotes", `write stroke = "55 mm"`},
		{`"55 mm"`, `2,1`, "a decimal number must be written with a point", "write stroke = 2.1"},
		{`"55 mm"`, `2,1 in`, "a decimal number must be written with a point", `write stroke = "2.1 in"`},
		{`"55 mm"`, `["55 mm"]`, "stroke must be a number in mm, or a text with its unit", "write stroke = 60"},
		{`"55 mm"`, `{ value = 55 }`, "stroke must be a number in mm, or a text with its unit", "write stroke = 60"},
		{`"55 mm"`, `'55 deg'`, "stroke must be a length", "units of length: mm, cm, m, in"},
		{`"55 mm"`, `""`, "stroke must be a number in mm, or a text with its unit", "write stroke = 60"},
		{`"55 mm"`, `True`, "yes or no must be written true or false", "write stroke = true"},
		{`"55 mm"`, ``, "stroke must have a value behind the =", ""},
		{`"55 mm"`, `"55 mm`, "a text must end with the quotes that it begins with", "close it on the same line"},
		{`"55 mm"`, `55 # mm " {`, "", ""},
		{`"55 mm"`, `NaN`, "a text must stand in quotes", `write stroke = "NaN"`},
		{`["top", "arm"]`, `("top", "arm")`, `mounts must have a value that can be read`, "numbers stand alone, texts in quotes, lists in [ ]"},
		{`["top", "arm"]`, `["top"; "arm"]`, "the values of a list must be separated by commas", "write [12, 36]"},
		{`["top", "arm"]`, `"top", "arm"`, "a line must hold one key and one value", "begin a new line, or a comment with #"},
		{`["top", "arm"]`, `[top, arm]`, "mounts must have a value that can be read", "numbers stand alone, texts in quotes, lists in [ ]"},
		{`["top", "arm"]`, `["top", "arm"`, "a list must be closed, with a comma between its values", "close it with ]"},
		{`["top", "arm"]`, `["top", "arm", "arm"]`, "mounts must be a list of two names", `write mounts = ["shock-frame", "shock-rocker"]`},
		{`["top", "arm"]`, `["top", "Arm"]`, "a point must be one of [points]", "did you mean arm?"},
		{`["top", "arm"]`, `["top", "amr"]`, "a point must be one of [points]", "did you mean arm?"},
		{`axle         = "axle"`, `axle: "axle"`, "a key and its value must be joined by =", `write axle = "axle"`},
		{"[rear]", "[[rear]]", "rear must be a table", "there is one only: write [rear]"},
		{"[rear]", "[rear", "a table header must be one name in brackets, alone on its line", "write [shock], or [[load_case]] for one of several"},
		{"[rear]", "rear:", "a table must begin with its name in brackets", "write [rear]"},
		{"= 30", "30", "a line must be a key, = and a value", "write stroke = 60, for example; a comment begins with #"},
		{"frame = [", "Frame = [", "one link must be called frame, the fixed one", "list the points that are fixed on the frame: frame = [\"main\", \"shock-frame\"]"},
	} {
		_, list := Parse("x.toml", []byte(strings.Replace(small, c.from, c.to, 1)))
		if c.message == "" {
			if list != nil {
				t.Errorf("%s: %+v", c.to, list)
			}
			continue
		}
		found := false
		for _, d := range list {
			found = found || d.Message == c.message && d.Hint == c.hint
		}
		if !found {
			t.Errorf("%s: want %q, hint %q; got %+v", c.to, c.message, c.hint, list)
		}
	}
}
