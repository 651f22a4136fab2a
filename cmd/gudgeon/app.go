package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strings"
	"sync"

	"golang.org/x/term"

	"gudgeon/cmd/internal/diag"
)

// app is one run of the command. Results go to out; errors, remarks and what
// was written go to err. Nothing reaches either before the input is known to
// be right.
type app struct {
	in       io.Reader
	out, err io.Writer
	global   globalOptions
	jsonErrs bool      // --format json stands in the call: errors are JSON
	warnings diag.List // told at the end, with the errors

	placing   sync.Mutex // held while files are put in place
	placed    bool       // files were put in place; under placing
	cancelled bool       // Ctrl-C came first; under placing
	discard   func()     // takes a file that is not whole yet away; under placing
}

// globalOptions are the flags that every command has.
type globalOptions struct {
	colour choice
	quiet  bool
}

// run executes one call and returns its exit code. After Ctrl-C it returns
// without waiting for the computation; files that are just being put in place
// are finished first, so that there are all of them or none.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	a := &app{in: stdin, out: stdout, err: stderr, jsonErrs: asksForJSON(args)}
	done := make(chan exitCode, 1)
	go func() { done <- a.execute(args) }()
	select {
	case code := <-done:
		return int(code)
	case <-ctx.Done():
	}
	a.placing.Lock()
	a.cancelled = true
	placed := a.placed
	if a.discard != nil {
		a.discard()
	}
	a.placing.Unlock()
	if placed {
		return int(<-done)
	}
	return int(exitInterrupted)
}

// execute runs the command tree and tells what went wrong, all of it at once.
func (a *app) execute(args []string) exitCode {
	root := newRoot(a)
	root.SetArgs(args)
	p := &problem{}
	if err := root.Execute(); err != nil && !errors.As(err, &p) {
		p = &problem{code: exitInput, list: diag.List{{Code: "wrong-call", Message: err.Error()}}}
	}
	a.tell(p)
	return p.code
}

// problem ends a command: what to tell, where to read on, what to exit with.
type problem struct {
	code exitCode
	list diag.List
	see  string // the command whose help serves; "" where none does
}

// Error gives the first message, for logs and tests.
func (p *problem) Error() string {
	if len(p.list) == 0 {
		return fmt.Sprintf("exit %d", p.code)
	}
	return p.list[0].Message
}

// inputProblem is a problem of exit code 2 with one message.
func inputProblem(d diag.Diagnostic) *problem {
	return &problem{code: exitInput, list: diag.List{d}}
}

// listProblem is a problem of exit code 2, nil where the list has no error.
func listProblem(l diag.List) error {
	if !l.HasErrors() {
		return nil
	}
	return &problem{code: exitInput, list: l}
}

// tell writes the warnings and p to standard error. That its own write could
// fail is passed over: there is nobody left to tell.
func (a *app) tell(p *problem) {
	list := slices.Concat(a.warnings, p.list)
	switch {
	case len(list) == 0:
	case a.jsonErrs:
		list.WriteJSON(a.err)
	default:
		list.Write(a.err, a.coloured(a.err))
	}
	if p.see != "" && !a.jsonErrs {
		fmt.Fprintf(a.err, "see: %s --help\n", p.see)
	}
}

// warn keeps warnings to be told, each once; -q drops them.
func (a *app) warn(warnings ...diag.Diagnostic) {
	for _, w := range warnings {
		if w.Severity = diag.Warning; !a.global.quiet && !slices.Contains(a.warnings, w) {
			a.warnings = append(a.warnings, w)
		}
	}
}

// remark writes a line to standard error; -q and JSON errors drop it.
func (a *app) remark(format string, args ...any) {
	if !a.global.quiet && !a.jsonErrs {
		fmt.Fprintln(a.err, diag.Visible(fmt.Sprintf(format, args...)))
	}
}

// coloured reports whether w gets colours: by --color, otherwise where w is a
// terminal that has not asked for none.
func (a *app) coloured(w io.Writer) bool {
	switch a.global.colour.value {
	case "always":
		return true
	case "never":
		return false
	}
	f, ok := w.(*os.File)
	return ok && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb" && term.IsTerminal(int(f.Fd()))
}

// asksForJSON reports whether the call has --format json, seen before the
// flags are parsed so that a wrong flag is told in JSON too.
func asksForJSON(args []string) bool {
	for i, arg := range args {
		switch {
		case arg == "--":
			return false
		case arg == "--format" || arg == "-f":
			if i+1 < len(args) && args[i+1] == "json" {
				return true
			}
		case strings.TrimPrefix(arg, "--format=") == "json" && arg != "json":
			return true
		}
	}
	return false
}
