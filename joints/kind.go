package joints

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"gudgeon/joints/check"
)

// kind is what Size needs of one kind of joint. Another kind is one more entry
// of kinds, in a file of its own beside spline.go, and one more field of Joint.
type kind struct {
	takes []string // the parts of a load, by their keys
	// prepare checks the inputs of a joint; its mistakes come as InputErrors.
	prepare func(Joint) (model, InputErrors)
	// mistakes says what the kind cannot take of the parts that it takes.
	mistakes func(Load) InputErrors
}

// model is a joint made ready to be checked.
type model interface {
	geometry() Geometry
	// checks judges one load by itself. Without any check a load is not judged.
	checks(Load) []check.Check
	// life judges what all loads do together.
	life([]Load) []check.Check
	remarks([]Load) []string
}

// figured is a model of a kind that shows figures beside its checks.
type figured interface{ figures(Load) []check.Figure }

// kinds is the kinds by name.
var kinds = map[string]kind{
	KindSpline:   {[]string{"torque"}, newSpline, splineMistakes},
	KindBolt:     {[]string{"force", "axial", "moment", "torque"}, newBolt, boltMistakes},
	KindPin:      {[]string{"force", "moment"}, newPin, pinMistakes},
	KindBearing:  {[]string{"force", "axial", "moment"}, newBearing, bearingMistakes},
	KindBushing:  {[]string{"force", "axial", "moment"}, newBushing, bushingMistakes},
	KindPressFit: {[]string{"torque", "axial"}, newPressFit, pressFitMistakes},
	KindKey:      {[]string{"torque"}, newKey, keyMistakes},
	KindMember:   {[]string{"axial", "moment", "torque"}, newMember, memberMistakes},
	KindFatigue:  {[]string{"stress"}, newFatigue, fatigueMistakes},
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

// prepared makes a model of the inputs of a kind, which may be missing.
func prepared[T, M any](j Joint, inputs *T, make func(T) (M, error)) (m M, errs InputErrors) {
	if inputs == nil {
		return m, InputErrors{{Field: "kind", Code: check.Missing, Message: fmt.Sprintf("a joint of kind %s must have the inputs of a %s", j.Kind, j.Kind)}}
	}
	m, err := make(*inputs)
	return m, mistakesOf(err)
}

// mistakesOf returns the mistakes that an error of a kind's package holds.
func mistakesOf(err error) InputErrors {
	var errs InputErrors
	errors.As(err, &errs)
	return errs
}

// renamed gives fields the names that they have in a joint, where its package
// calls them otherwise.
func renamed(errs InputErrors, names map[string]string) InputErrors {
	for _, e := range errs {
		if name, ok := names[e.Field]; ok {
			e.Message = strings.Replace(e.Message, e.Field+" ", name+" ", 1)
			e.Field = name
		}
	}
	return errs
}
