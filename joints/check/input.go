package check

// InputError is one mistake in a joint's inputs. Field is the key to blame,
// written as in a design file and seen from the joint: "module",
// "shaft_material".
type InputError struct {
	Field   string
	Code    string   // short fixed word, for example "out-of-range"
	Message string   // what must hold
	Found   string   // what is there instead; "" where the message says it
	Hint    string   // what to write; "" where Known serves
	OnKey   bool     // the key is to blame, not the value
	Name    string   // the unknown name, where the mistake is one
	Known   []string // the names that would have been right
}

// Error gives the message with the field in front.
func (e *InputError) Error() string {
	s := e.Field + ": " + e.Message
	if e.Found != "" {
		s += " (" + e.Found + ")"
	}
	return s
}

// Path returns the field to blame.
func (e *InputError) Path() string { return e.Field }

// InputErrors is every mistake of one joint, in the order found, never empty.
type InputErrors []*InputError

// Error gives the mistakes, one a line.
func (l InputErrors) Error() string {
	s := ""
	for i, e := range l {
		if i > 0 {
			s += "\n"
		}
		s += e.Error()
	}
	return s
}

// Unwrap gives the mistakes one by one to errors.As.
func (l InputErrors) Unwrap() []error {
	errs := make([]error, len(l))
	for i, e := range l {
		errs[i] = e
	}
	return errs
}

// The codes of an InputError.
const (
	Missing     = "missing-value" // a value that has no default is not given
	OutOfRange  = "out-of-range"  // not finite, or outside its bounds
	NotInSeries = "not-in-series" // between the sizes of a standard
	UnknownName = "unknown-name"  // not one of Known
	DoesNotFit  = "does-not-fit"  // two values that exclude each other
)
