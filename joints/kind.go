package joints

import (
	"fmt"
	"maps"
	"slices"

	"gudgeon/joints/check"
)

// kind is what Size needs of one kind of joint. Another kind is one more entry
// of kinds, in a file beside spline.go, and one more field of Joint.
type kind struct {
	// prepare checks the inputs of a joint; its mistakes come as InputErrors.
	prepare func(Joint) (model, InputErrors)
	// mistake says what the kind cannot take of a load; nil: nothing.
	mistake func(Load) *InputError
}

// model is a joint made ready to be checked.
type model interface {
	geometry() Geometry
	checks(Load) []check.Check
	remarks([]Load) []string
}

// kinds is the kinds by name.
var kinds = map[string]kind{
	KindSpline: {prepare: newSplineModel, mistake: splineLoadMistake},
}

// Kinds lists the kinds of joint, sorted.
func Kinds() []string { return slices.Sorted(maps.Keys(kinds)) }

// unknownKind is the mistake of a kind that is none of Kinds.
func unknownKind(name string) *InputError {
	return &InputError{
		Field: "kind", Code: check.UnknownName, Message: "kind must be a kind of joint",
		Found: fmt.Sprintf("this is %q", name), Name: name, Known: Kinds(),
	}
}
