package main

import (
	"fmt"
	"io"
	"os"
	"time"

	"golang.org/x/term"
)

// progress is a line on a terminal that tells how far a long run has come. It
// appears after progressDelay and is taken away at the end; off a terminal
// there is none.
type progress struct {
	w     io.Writer // nil: none
	all   int
	start time.Time
	first int // done before this run
	last  time.Time
	shown bool
}

const (
	progressDelay = 500 * time.Millisecond
	progressPause = 200 * time.Millisecond
)

// newProgress is the progress of so many candidates on standard error.
func (a *app) newProgress(all int) *progress {
	p := &progress{all: all, start: time.Now(), first: -1}
	if f, ok := a.err.(*os.File); ok && !a.global.quiet && !a.jsonErrs && term.IsTerminal(int(f.Fd())) {
		p.w = f
	}
	return p
}

// show tells that so many are done.
func (p *progress) show(done int) {
	if p.first < 0 {
		p.first = done
	}
	now := time.Now()
	if p.w == nil || now.Sub(p.start) < progressDelay || now.Sub(p.last) < progressPause {
		return
	}
	p.last, p.shown = now, true
	fmt.Fprintf(p.w, "\r\x1b[K%s", p.text(done, now))
}

// text is the line: done, all, share, rate, what is left.
func (p *progress) text(done int, now time.Time) string {
	s := fmt.Sprintf("%d of %d, %.0f %%", done, p.all, 100*float64(done)/float64(p.all))
	rate := float64(done-p.first) / now.Sub(p.start).Seconds()
	if rate > 0 {
		left := time.Duration(float64(p.all-done) / rate * float64(time.Second)).Round(time.Second)
		s += fmt.Sprintf(", %.0f a second, %s left", rate, left)
	}
	return s
}

// clear takes the line away.
func (p *progress) clear() {
	if p.shown {
		fmt.Fprint(p.w, "\r\x1b[K")
	}
}
