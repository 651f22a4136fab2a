package design

import (
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"gudgeon/cmd/internal/diag"
)

// maxMistakes is after how many mistakes of syntax reading stops: a file past
// it is no design file, and each can cost a walk through the whole of it.
const maxMistakes = diag.MaxShown

// maxForeign is after how many mistakes reading stops where no line was of any
// use before: a file of another format.
const maxForeign = 3

// fresh matches a line that begins something new: a header, or a key with its
// value.
var fresh = pattern(`^[ \t]*(\[\[?[ \t]*[\w."' \t-]+\]\]?[ \t]*(#.*)?|("[^"]*"|'[^']*'|[\w.-]+)[ \t]*=.*)$`)

// recover tells a mistake of syntax and moves the parser behind it; false where
// nothing follows.
func (x *indexer) recover(err error) bool {
	e, at := x.parserError(err)
	if strings.HasPrefix(e.Message, "arrays and inline tables are nested") {
		return x.tooDeep(span{at, at + 1})
	}
	start := x.failedLine(at)
	first, last := x.src.line(start), x.src.line(at)
	m := mistake{message: e.Message, line: strings.TrimLeft(x.src.lineText(first), " \t"), rest: x.src.whole[at:]}
	m.later = m.opener() != 0 && (last > first || m.unclosed())
	if m.later {
		last = first
	}
	m.at = x.blame(start, at, &m)
	x.broken(start, &m)
	x.out.add(m.problem())
	if x.mistakes++; x.mistakes >= maxMistakes || x.mistakes >= maxForeign && len(x.root.entries) == 0 {
		return false
	}
	return x.resume(last+1, m.later || m.opener() != 0 && !m.says("expected newline"))
}

// blame is what to mark for a mistake that shows at a place, in an expression
// that begins at start: what was opened and not closed, a whole word, or what
// stands there.
func (x *indexer) blame(start, at int, m *mistake) span {
	behind := start + len(m.line) - len(m.behindKey())
	opened := behind + strings.IndexByte(m.behindKey(), m.opener())
	value := m.value()
	switch {
	case m.later:
		return span{opened, opened + 1}
	case m.opener() != 0 && m.isOpenText():
		return span{opened, start + len(m.line)}
	case !strings.Contains(m.line, "=") && !m.isControl():
		return span{start, start + len(m.line)}
	case !strings.HasPrefix(m.line, "=") && value != "" && m.isWord(value):
		i := behind + strings.Index(m.behindKey(), value)
		return span{i, i + len(value)}
	}
	return span{at, min(len(x.src.text), at+m.width())}
}

// resume moves the parser to the line, or behind a value that may span lines to
// the next one from there that begins something new; false where there is none.
func (x *indexer) resume(line int, spans bool) bool {
	for spans && line < len(x.src.lines) && !fresh().MatchString(x.src.lineText(line)) {
		line++
	}
	if line >= len(x.src.lines) {
		return false
	}
	x.base, x.end = x.src.lines[line], x.src.lines[line]
	x.parser.Reset(x.src.text[x.base:])
	return true
}

// failedLine returns where the expression begins that did not parse: the first
// line with more than a comment behind the last one that did, but no later
// than the mistake.
func (x *indexer) failedLine(at int) int {
	line := x.src.line(x.end)
	if x.end > x.src.lines[line] {
		line++ // the rest of its line was read
	}
	for ; line < x.src.line(at); line++ {
		t := strings.TrimLeft(x.src.lineText(line), " \t")
		if t != "" && t[0] != '#' {
			break
		}
	}
	line = min(line, x.src.line(at))
	begin := x.src.lines[line]
	return begin + len(x.src.lineText(line)) - len(strings.TrimLeft(x.src.lineText(line), " \t"))
}

// broken notes in the tree what the failed expression would have set, so that
// it is not told as missing.
func (x *indexer) broken(start int, m *mistake) {
	if strings.HasPrefix(m.line, "[") {
		m.header = true
		x.lose()
		return
	}
	if strings.HasPrefix(m.line, "#") {
		return
	}
	if colonHeader().MatchString(m.line) {
		x.lose()
		return
	}
	key, _, ok := strings.Cut(m.line, "=")
	var p unstable.Parser
	p.Reset([]byte(key + "= 0"))
	if !ok || !p.NextExpression() {
		x.here.damaged = true
		return
	}
	parent := x.here
	var names []string
	for it := p.Expression().Key(); it.Next(); {
		names = append(names, string(it.Node().Data))
	}
	for _, name := range names[:len(names)-1] {
		next := parent.get(name)
		if next == nil || next.kind != table {
			parent.damaged = true
			return
		}
		parent = next
	}
	at := span{start, start + len(strings.TrimRight(key, " \t"))}
	n := &node{kind: broken, name: names[len(names)-1], parent: parent, key: at, value: m.at}
	if old := parent.get(n.name); old == nil {
		parent.put(n)
	}
	m.key, m.path = n.name, n.path()
}
