package design

import (
	"cmp"
	"slices"
	"strings"

	"gudgeon/cmd/internal/diag"
)

// problem is a mistake before it is shown. Near names are looked for only in
// those that are.
type problem struct {
	code    string
	at      span
	path    string // in the file
	message string
	found   string
	hint    string
	name    string   // the name that is not known; with known, the hint where hint is empty
	known   []string // what would have been right
	variant string   // the variant that it shows in, where its own lines are not to blame
	nowhere bool     // it has no place in the file
}

// sameProblem is what makes two problems one: the base and its variants tell
// a mistake of their common lines several times.
type sameProblem struct {
	at         span
	code, path string
}

// problems gathers the mistakes of a file.
type problems struct {
	list   []problem
	seen   map[sameProblem]bool
	blamed map[string]bool // paths in the file that have a mistake
}

func newProblems() *problems {
	return &problems{seen: map[sameProblem]bool{}, blamed: map[string]bool{}}
}

// add tells a problem once. What reading finds wrong at a path is to blame for
// what checking finds there later.
func (p *problems) add(x problem) {
	p.blamed[x.path] = true
	p.append(x)
}

// append is add for what checking finds.
func (p *problems) append(x problem) {
	k := sameProblem{x.at, x.code, x.path}
	if p.seen[k] {
		return
	}
	p.seen[k] = true
	p.list = append(p.list, x)
}

// isBlamed reports whether a path or one that holds it has a mistake already.
func (p *problems) isBlamed(path string) bool {
	for path != "" {
		if p.blamed[path] {
			return true
		}
		cut := strings.LastIndexAny(path, ".[")
		if cut < 0 {
			return false
		}
		path = path[:cut]
	}
	return false
}

// diagnostics sorts the problems by place and puts them into words.
func (p *problems) diagnostics(s *source) diag.List {
	slices.SortStableFunc(p.list, func(a, b problem) int {
		return cmp.Or(cmp.Compare(a.at.start, b.at.start), cmp.Compare(a.at.end, b.at.end))
	})
	var l diag.List
	for i, x := range p.list {
		d := diag.Diagnostic{Code: x.code, Path: x.path, Message: x.message, Found: x.found, Hint: x.hint}
		if x.variant != "" {
			d.Message = "in variant " + diag.Quote(x.variant) + ": " + d.Message
		}
		if i >= diag.MaxShown {
			s.placeLine(&d, x.at)
			l = append(l, d)
			continue
		}
		if d.Hint == "" && len(x.known) > 0 {
			d.Hint = diag.Suggest(x.name, x.known)
		}
		if x.nowhere {
			d.File = s.name
		} else {
			s.place(&d, x.at)
		}
		l = append(l, d)
	}
	return l
}
