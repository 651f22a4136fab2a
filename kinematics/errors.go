package kinematics

// InputError is a mistake in a Design. Field is the path of the value to
// blame, written as in the design file: "shock.stroke", "links.rocker[1]",
// `load_case[0].force`; a part that is not a bare key is quoted.
type InputError struct {
	Field   string
	Code    string   // short fixed word, for example "no-such-point"
	Message string   // what must hold
	Found   string   // what is there instead; "" where the message says it
	Hint    string   // what to write; "" where Known serves
	OnKey   bool     // the key is to blame, not the value
	Name    string   // the unknown name, where the mistake is one
	Known   []string // the names that would have been right
	Also    string   // path of a second value that belongs to the mistake; Message ends so that its place can follow
}

// Error gives the message with the field in front.
func (e *InputError) Error() string {
	s := e.Field + ": " + e.Message
	if e.Also != "" {
		s += " at " + e.Also
	}
	if e.Found != "" {
		s += " (" + e.Found + ")"
	}
	return s
}

// Path returns the field to blame.
func (e *InputError) Path() string { return e.Field }

// InputErrors is every mistake of one Design, in the order found, never empty.
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
