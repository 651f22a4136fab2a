package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"gudgeon/cmd/internal/diag"
)

// expecting is a flag value that says in words what it takes; flagError
// builds its message from it.
type expecting interface {
	pflag.Value
	expects() string
}

// errNotTaken is what Set returns; the message comes from expects.
var errNotTaken = errors.New("not taken")

// choice is one of a fixed list of words.
type choice struct {
	value   string
	allowed []string
}

func (c *choice) String() string  { return c.value }
func (c *choice) Type() string    { return strings.Join(c.allowed, "|") }
func (c *choice) expects() string { return "one of " + strings.Join(c.allowed, ", ") }

// Set takes one of the allowed words, as it is written.
func (c *choice) Set(s string) error {
	for _, a := range c.allowed {
		if s == a {
			c.value = s
			return nil
		}
	}
	return errNotTaken
}

// whole is a whole number within bounds.
type whole struct {
	value, least, most int
}

func (w *whole) String() string { return strconv.Itoa(w.value) }
func (w *whole) Type() string   { return "N" }
func (w *whole) expects() string {
	return fmt.Sprintf("a whole number from %d to %d", w.least, w.most)
}

// Set takes a number written in digits.
func (w *whole) Set(s string) error {
	n, err := strconv.Atoi(s)
	if err != nil || n < w.least || n > w.most {
		return errNotTaken
	}
	w.value = n
	return nil
}

// word is any text; kind names it in the help.
type word struct {
	value *string
	kind  string
}

func (w *word) String() string     { return *w.value }
func (w *word) Set(s string) error { *w.value = s; return nil }
func (w *word) Type() string       { return w.kind }

// list is a flag that may be given several times.
type list struct {
	value *[]string
	kind  string
}

func (l *list) String() string     { return strings.Join(*l.value, ",") }
func (l *list) Set(s string) error { *l.value = append(*l.value, s); return nil }
func (l *list) Type() string       { return l.kind }

// names is a list of names, separated by commas.
type names struct {
	value   []string
	allowed []string // nil: anything
	what    string   // "column"
}

func (n *names) String() string { return strings.Join(n.value, ",") }
func (n *names) Type() string   { return "a,b,…" }
func (n *names) expects() string {
	return fmt.Sprintf("names of %ss, separated by commas", n.what)
}

// Set takes the list; what is not allowed is told by unknown.
func (n *names) Set(s string) error {
	n.value = nil
	for name := range strings.SplitSeq(s, ",") {
		if name = strings.TrimSpace(name); name == "" {
			return errNotTaken
		}
		n.value = append(n.value, name)
	}
	return nil
}

// unknown tells the first name that is not allowed or comes twice.
func (n *names) unknown(flag string) error {
	seen := map[string]bool{}
	for _, name := range n.value {
		switch {
		case !contains(n.allowed, name):
			return inputProblem(diag.Diagnostic{Code: "unknown-" + n.what,
				Message: fmt.Sprintf("there is no %s %s", n.what, diag.Quote(name)),
				Hint:    diag.Suggest(name, n.allowed)})
		case seen[name]:
			return inputProblem(diag.Diagnostic{Code: "named-twice",
				Message: fmt.Sprintf("--%s names %s twice", flag, diag.Quote(name))})
		}
		seen[name] = true
	}
	return nil
}

func contains(list []string, s string) bool {
	for _, e := range list {
		if e == s {
			return true
		}
	}
	return false
}

// flagError turns what pflag found into a message of our own.
func flagError(cmd *cobra.Command, err error) error {
	d := diag.Diagnostic{Code: "wrong-flag", Message: err.Error()}
	var (
		unknown *pflag.NotExistError
		noValue *pflag.ValueRequiredError
		invalid *pflag.InvalidValueError
		syntax  *pflag.InvalidSyntaxError
	)
	switch {
	case errors.As(err, &unknown):
		d = unknownFlag(cmd, unknown)
	case errors.As(err, &noValue):
		d = diag.Diagnostic{Code: "missing-value", Message: fmt.Sprintf("--%s needs a value", noValue.GetFlag().Name),
			Hint: expectation(noValue.GetFlag())}
	case errors.As(err, &invalid):
		d = diag.Diagnostic{Code: "wrong-value",
			Message: fmt.Sprintf("--%s takes %s", invalid.GetFlag().Name, takes(invalid.GetFlag())),
			Found:   "this is " + diag.Quote(invalid.GetValue()), Hint: nearValue(invalid.GetFlag(), invalid.GetValue())}
	case errors.As(err, &syntax):
		d.Message = fmt.Sprintf("%s is not a flag", diag.Quote(syntax.GetSpecifiedFlag()))
	}
	return &problem{code: exitInput, list: diag.List{d}, see: cmd.CommandPath()}
}

func unknownFlag(cmd *cobra.Command, err *pflag.NotExistError) diag.Diagnostic {
	name := err.GetSpecifiedName()
	if err.GetSpecifiedShortnames() != "" {
		return diag.Diagnostic{Code: "unknown-flag", Message: fmt.Sprintf("%s has no flag -%s", cmd.CommandPath(), name)}
	}
	var known []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
	d := diag.Diagnostic{Code: "unknown-flag", Message: fmt.Sprintf("%s has no flag --%s", cmd.CommandPath(), name)}
	if near, ok := diag.Nearest(name, known); ok {
		d.Hint = "did you mean --" + near + "?"
	}
	return d
}

// takes says what a flag takes, for a message.
func takes(f *pflag.Flag) string {
	if e, ok := f.Value.(expecting); ok {
		return e.expects()
	}
	if f.Value.Type() == "bool" {
		return "true or false, or nothing"
	}
	return "a value"
}

func expectation(f *pflag.Flag) string {
	if e, ok := f.Value.(expecting); ok {
		return "give " + e.expects()
	}
	return ""
}

func nearValue(f *pflag.Flag, value string) string {
	if c, ok := f.Value.(*choice); ok {
		if near, ok := diag.Nearest(value, c.allowed); ok {
			return "did you mean " + near + "?"
		}
	}
	return ""
}
