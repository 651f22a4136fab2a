package bushing

import (
	"cmp"
	"fmt"

	"gudgeon/joints/mistake"
)

// usualWear is the play that a pivot of a bicycle may gain, mm: common practice.
const usualWear = 0.05

// withDefaults fills in what the liner says.
func (b Bushing) withDefaults() Bushing {
	l, _ := find(b.Liner)
	b.StaticPressure = cmp.Or(b.StaticPressure, l.static)
	b.SwingingPressure = cmp.Or(b.SwingingPressure, l.swinging)
	b.PressureSpeed = cmp.Or(b.PressureSpeed, l.pv)
	b.WearRate = cmp.Or(b.WearRate, l.wear)
	b.WearAllowed = cmp.Or(b.WearAllowed, usualWear)
	return b
}

// mistakes returns what is wrong with b, its defaults filled in.
func (b Bushing) mistakes() error {
	var l mistake.List
	l.Length("bore", b.Bore, "give the bore in mm")
	l.Length("length", b.Length, "give the length of one bushing in mm")
	if b.Liner != "" {
		l.OneOf("liner", b.Liner, Liners(), "liner must be one of the table, or left out with its four limits given")
	}
	if !l.Blames("liner") {
		const hint = "give it, or a liner"
		l.Positive("static_pressure", b.StaticPressure, mistake.LargestStress, hint)
		l.Positive("swinging_pressure", b.SwingingPressure, mistake.LargestStress, hint)
		l.Positive("pressure_speed", b.PressureSpeed, mistake.LargestStress, hint)
		l.Positive("wear_rate", b.WearRate, 1, hint)
	}
	l.Length("wear_allowed", b.WearAllowed, "give the depth in mm that may wear off")
	if l.Optional("flange_diameter", b.FlangeDiameter, 0.001, mistake.LargestLength, "give its outside in mm, or leave it out for none") &&
		b.FlangeDiameter != 0 && !l.Blames("bore") && b.FlangeDiameter < b.Bore+0.001 {
		l.Misfit("flange_diameter", b.FlangeDiameter, fmt.Sprintf("flange_diameter must be larger than bore, %g", b.Bore), "")
	}
	l.Between("offset", b.Offset, -mistake.LargestLength, mistake.LargestLength, "give where the force acts, from the middle, in mm")
	if l.Optional("span", b.Span, 0.1, mistake.LargestLength, "give the distance of the two middles, or leave it out for one bushing") &&
		b.Span != 0 && !l.Blames("length") && b.Span < b.Length {
		l.Misfit("span", b.Span, fmt.Sprintf("span must be at least the length of a bushing, %g", b.Length), "it is the distance of the two middles")
	}
	return l.Err()
}

// CheckLoad returns check.InputErrors, every mistake of the load at once, nil
// where there is none.
func CheckLoad(load Load) error {
	var l mistake.List
	l.PivotLoad(load.Force, load.Axial, load.Moment, load.Swing, load.Cycles)
	l.Between("frequency", load.Frequency, 0, 1e4, "give the swings there and back a second, in Hz")
	return l.Err()
}
