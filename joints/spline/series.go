package spline

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// angles is the pressure angles of ISO 4156 and ANSI B92.1, degrees.
var angles = []float64{30, 37.5, 45}

// exactAngle returns the one of angles, rad, that is within a millionth of a
// radian of angle, so that 37.5° does not depend on how it was converted; another
// angle is returned as it is.
func exactAngle(angle float64) float64 {
	for _, degrees := range angles {
		if exact := degrees * math.Pi / 180; math.Abs(angle-exact) < 1e-6 {
			return exact
		}
	}
	return angle
}

// angleKnown notes an angle that is none of angles.
func angleKnown(m *mistake.List, angle float64, standard string) bool {
	for _, degrees := range angles {
		if math.Abs(angle-degrees*math.Pi/180) < 1e-6 {
			return true
		}
	}
	m.Add("pressure_angle", check.NotInSeries, "pressure_angle must be 30, 37.5 or 45 degrees in "+standard,
		mistake.Found(math.Round(1e6*angle*180/math.Pi)/1e6), "")
	return false
}

// rootOf returns the root that is taken at a pressure angle where none is given:
// flat at 30°, and the only one there is at the others.
func rootOf(angle float64) Root {
	if math.Abs(angle-math.Pi/6) < 1e-6 {
		return Flat
	}
	return Fillet
}

// nearestOf names the sizes of a rising series around one that is none of it.
func nearestOf(series []float64, size float64) string {
	i, _ := slices.BinarySearch(series, size)
	switch i {
	case 0:
		return fmt.Sprintf("the smallest is %g", series[0])
	case len(series):
		return fmt.Sprintf("the largest is %g", series[i-1])
	}
	return fmt.Sprintf("the nearest are %g and %g", series[i-1], series[i])
}

// classMistakes notes classes that are not 4, 5, 6 or 7, the keys of classes.
func classMistakes[V any](m *mistake.List, s Spline, classes map[int]V) {
	for _, c := range []struct {
		field string
		class int
	}{{"shaft_class", s.ShaftClass}, {"hub_class", s.HubClass}} {
		if _, ok := classes[c.class]; !ok {
			m.Add(c.field, check.OutOfRange, c.field+" must be one of 4, 5, 6, 7", mistake.Found(float64(c.class)), "4 is the finest, 7 the coarsest")
		}
	}
}

// letterOr returns the letter of a fit, or the usual one where neither letter nor
// class is given: a class alone is half a designation, which is not completed
// by a guess at how tight the pair shall be.
func letterOr(letter string, class int, usual string) string {
	if letter == "" && class == 0 {
		return usual
	}
	return letter
}

// letterMistakes notes a letter of a part, "shaft" or "hub", that is not among
// the known ones, and a class that is told without its letter.
func letterMistakes(m *mistake.List, part string, class int, letter string, known []string, message string) {
	field := part + "_class"
	switch {
	case letter != "":
		m.OneOf(part+"_fit", letter, known, message)
	case !m.Blames(field):
		m.Add(field, check.Missing, fmt.Sprintf("%s must come with its letter, %s_fit", field, part), fmt.Sprintf("this is %d alone", class),
			fmt.Sprintf("add %s_fit, one of %s; or leave %s out too", part, strings.Join(known, ", "), field))
	}
}
