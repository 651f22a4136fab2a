package design

import (
	"path/filepath"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"gudgeon/testdata"
)

// documents are pieces of TOML around what may be set twice and what may be
// added to.
var documents = []string{
	"a = 1\na = 2", "a = 1\nb = 2", "[a]\n[a]", "[a]\nx = 1\n[b]\n[a]\ny = 1", "[a.b]\n[a]\nc = 1", "[a.b]\n[a]\nb = 1", "[a.b]\n[a.b.c]\n[a.d]",
	"a.b = 1\na.c = 2", "a.b = 1\na.b = 2", "a.b = 1\na.b.c = 2", "a = 1\na.b = 2", "a.b = 1\n[a]\nc = 1", "a.b.c = 1\n[a.b]\nd = 1", "a.b.c = 1\n[a.d]\ne = 1",
	"[a]\nb.c = 1\n[a.b]\nd = 1", "[a]\nb.c = 1\n[a.b.d]\ne = 1", "[a.b.c]\nz = 9\n[a]\nb.c.t = 1", "[a.b.c.d]\nz = 9\n[a]\nb.c.d.k.t = 1", "[a.b]\n[a]\nb.c = 1",
	"a = {}\n[a]\nb = 1", "a = {b = 1}\na.c = 2", "a = {b = 1, b = 2}", "a = {b = 1, b.c = 2}", "a = {b.c = 1, b.d = 2}", "a = {b = {c = 1}, b.d = 2}", "a = {}\n[a.b]",
	"[[a]]\n[[a]]", "[[a]]\nb = 1\n[[a]]\nb = 2", "[[a]]\nb = 1\nb = 2", "[a]\n[[a]]", "[[a]]\n[a]", "[[a]]\n[a.b]\n[a.b]", "[[a]]\n[a.b]\n[[a]]\n[a.b]", "[[a]]\n[[a.b]]\n[[a.b]]\n[[a]]\n[[a.b]]",
	"[[a]]\n[[a.b]]\n[a.b]", "a = []\n[[a]]", "a = [{x = 1}]\n[[a]]", "a = [{x = 1}]\n[a.y]", "[a.b]\n[[a]]", "a.b = 1\n[[a]]", "[[a]]\na.b = 1", "[[a.b]]\n[a]\nc = 1", "[[a.b]]\n[a]\nb.c = 1",
	"a = [{b = 1, b = 2}]", "a = [[{b = 1, b = 2}]]", "\"a\" = 1\na = 2", "'a.b' = 1\na.b = 2", "\"\" = 1\n\"\" = 2", "[a]\n[\"a\"]", "a = 1 # x\r\nb = 2\r\n",
	"a = [1, [2, 3], {b = [4]}]", "a = 1979-05-27", "a = 1979-05-27T07:32:00Z", "a = 07:32:00", "a = nan\nb = -inf\nc = 0x1F\nd = 0o17\ne = 0b1\nf = 1_000.5e-3", "a = \"\"\"\nx\"\"\"",
	"a", "a =", "= 1", "[", "[a", "[[a]", "[a]]", "a = [1, 2", "a = [1 2]", "a = {b = 1", "a = {b = 1 c = 2}", "a = \"x", "a = 'x", "a = \"\\q\"", "a = \"\\uD800\"", "a = 01", "a = 1.", "a = .5",
	"a = 1 2", "a = 1 b = 2", "a b = 1", "a. = 1", ".a = 1", "[a.]", "[]", "a = yes", "a = 1__0", "a = +-1", "a = 0x", "a = 1e", "# \x01\na = 1", "a = \"\x01\"", "a = 1\rb = 2", "a = [1,,2]", "a = {,}", "a = {b = 1,}",
	"a = \"\"\"x", "a = '''x", "a = \"\"\"x\"\"\"\"\"\"", "a = [\n1, # x\n2,\n]", "a = {\nb = 1,\n}",
}

// index takes exactly the documents that go-toml's decoder takes: the same
// syntax and the same rules on what is set twice. Dates and numbers past their
// range are left out, they are refused where they are read.
func TestIndexAgreesWithDecoder(t *testing.T) {
	for _, doc := range documents {
		checkAgainstDecoder(t, doc)
	}
	for _, pattern := range []string{"good", "bad"} {
		names, _ := filepath.Glob(testdata.Path("designs", pattern, "*.toml"))
		for _, name := range names {
			if base := filepath.Base(name); base == "not-finite.toml" || base == "too-deep.toml" {
				continue
			}
			checkAgainstDecoder(t, string(readFile(t, name)))
		}
	}
}

func checkAgainstDecoder(t *testing.T, doc string) {
	t.Helper()
	src, bad := newSource("x.toml", []byte(doc))
	if bad != nil {
		return
	}
	out := newProblems()
	root := index(src, out)
	var decoded map[string]any
	err := toml.Unmarshal(src.text, &decoded)
	if (err == nil) == (len(out.list) > 0) {
		t.Errorf("%q: the decoder says %v, index %+v", doc, err, out.list)
	}
	if err == nil && root != nil && len(out.list) == 0 {
		checkTree(t, doc, root, decoded)
	}
}

// checkTree compares the keys of a tree, and how many values its lists have,
// with what was decoded, and the text that each span marks.
func checkTree(t *testing.T, doc string, n *node, decoded any) {
	t.Helper()
	switch v := decoded.(type) {
	case map[string]any:
		if n.kind != table || len(v) != len(n.entries) {
			t.Errorf("%q: %s has %d entries, decoded %d", doc, n.path(), len(n.entries), len(v))
			return
		}
		for _, e := range n.entries {
			checkTree(t, doc, e, v[e.name])
		}
	case []any:
		if n.kind != list || len(v) != len(n.items) {
			t.Errorf("%q: %s has %d items, decoded %d", doc, n.path(), len(n.items), len(v))
			return
		}
		for i, e := range n.items {
			checkTree(t, doc, e, v[i])
		}
	case string:
		if n.kind != text || n.text != v {
			t.Errorf("%q: %s is %q, decoded %q", doc, n.path(), n.text, v)
		}
	case int64:
		if got, ok := decimal(n.text); !ok || n.kind != number || got != float64(v) {
			t.Errorf("%q: %s is %q, decoded %d", doc, n.path(), n.text, v)
		}
	case float64:
		if got, ok := decimal(n.text); !ok || n.kind != number || got != v && v == v {
			t.Errorf("%q: %s is %q, decoded %v", doc, n.path(), n.text, v)
		}
	case bool:
		if n.kind != boolean || (n.text == "true") != v {
			t.Errorf("%q: %s is %q, decoded %v", doc, n.path(), n.text, v)
		}
	}
}

// Spans mark what they should, with the parser started anew behind a mistake
// too.
func TestSpans(t *testing.T) {
	const doc = "bad = 1 2\n[a.\"b c\"]\nd = [ 1 , 'two' , [3] ]\ne.f = { g = \"x\" } # c\n[[h]]\ni = -0.5\n"
	src, _ := newSource("x.toml", []byte(doc))
	root := index(src, newProblems())
	for _, c := range []struct{ path, key, value string }{
		{`a."b c"`, `a."b c"`, `a."b c"`}, {`a."b c".d`, "d", "[ 1 , 'two' , [3] ]"}, {`a."b c".d[0]`, "1", "1"}, {`a."b c".d[1]`, "'two'", "'two'"},
		{`a."b c".d[2][0]`, "3", "3"}, {`a."b c".e`, "e", "e"}, {`a."b c".e.f`, "f", `{ g = "x" }`}, {`a."b c".e.f.g`, "g", `"x"`}, {"h[0].i", "i", "-0.5"},
	} {
		n, ok := root.find(c.path)
		if !ok {
			t.Errorf("%s is not there", c.path)
			continue
		}
		if got := doc[n.key.start:n.key.end]; got != c.key {
			t.Errorf("%s: key %q, want %q", c.path, got, c.key)
		}
		if got := doc[n.value.start:n.value.end]; got != c.value {
			t.Errorf("%s: value %q, want %q", c.path, got, c.value)
		}
		if n.path() != c.path {
			t.Errorf("%s calls itself %s", c.path, n.path())
		}
	}
}
