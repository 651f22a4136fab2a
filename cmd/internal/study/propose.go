package study

import (
	"cmp"
	"errors"
	"fmt"
	"runtime"

	"gudgeon/cmd/internal/design"
	"gudgeon/joints"
	"gudgeon/joints/spline"
)

// Room is the request that a spline joint makes of proposals under its loads:
// materials, factors and seat are the joint's; where j.Wanted leaves the room open,
// it is that of the joint's own size, which must have been accepted.
func Room(j design.Joint, loads []joints.Load) spline.Request {
	w := j.Wanted
	r := spline.Request{
		Joint: *j.Spline, Standards: w.Series,
		LargestOuterDiameter: cmp.Or(w.LargestDiameter, j.Spline.HubOuterDiameter),
		LargestLength:        cmp.Or(w.LargestLength, j.Spline.Length),
		LeastBore:            j.Spline.Bore, Safety: cmp.Or(w.Safety, 1),
	}
	if w.LeastBore != nil {
		r.LeastBore = *w.LeastBore
	}
	for _, l := range loads {
		r.Torques = append(r.Torques, l.Torque)
	}
	return r
}

// largestRoom is the largest diameter and length, mm, that are gone through in
// steps of 1 mm.
const largestRoom = 1000

// Propose returns the splines that carry all loads in place of a joint's own. The
// error is joints.InputErrors and names the field of the joint.
func Propose(j design.Joint, loads []joints.Load) (spline.Proposals, error) {
	r := Room(j, loads)
	var errs joints.InputErrors
	for _, f := range []struct {
		field string
		value float64
	}{{"largest_diameter", r.LargestOuterDiameter}, {"largest_length", r.LargestLength}} {
		if f.value > largestRoom {
			errs = append(errs, &joints.InputError{Field: f.field, Code: "out-of-range",
				Message: fmt.Sprintf("%s must be at most %d mm where splines are proposed", f.field, largestRoom),
				Found:   fmt.Sprintf("this is %g mm", f.value), Hint: "give the room that there is"})
		}
	}
	if r.LeastBore < 0 || r.LeastBore >= r.LargestOuterDiameter {
		errs = append(errs, &joints.InputError{Field: "least_bore", Code: "out-of-range",
			Message: "least_bore must be at least 0 and less than the largest diameter of the hub",
			Found:   fmt.Sprintf("this is %g mm in a hub of %g mm", r.LeastBore, r.LargestOuterDiameter), Hint: "give it in mm"})
	}
	if len(errs) > 0 {
		return spline.Proposals{}, errs
	}
	found, err := spline.Propose(r, spline.ProposeSettings{Workers: runtime.GOMAXPROCS(0)})
	return found, inWords(err)
}

// inWords gives the safety of a request the name of its key in a joint.
func inWords(err error) error {
	var errs joints.InputErrors
	if !errors.As(err, &errs) {
		return err
	}
	for _, e := range errs {
		if e.Field == "safety" {
			e.Field, e.Message = "required_safety", "required_"+e.Message
		}
	}
	return errs
}
