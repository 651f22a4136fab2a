package spline

import "cmp"

// sized returns s with the size of one entry of a standard's series.
type sized func(s Spline) Spline

// sizesOf lists every size of a standard's series, in a fixed order: ISO 4156 and
// ANSI B92.1 by profile, module or pitch, teeth; DIN 5480 and ISO 14 as their tables.
func sizesOf(standard string) []sized {
	switch standard {
	case iso4156Name:
		return iso4156Sizes()
	case b921Name:
		return b921Sizes()
	case din5480Name:
		return din5480Sizes()
	case iso14Name:
		return iso14Sizes()
	}
	return nil
}

func iso4156Sizes() []sized {
	var out []sized
	for _, p := range iso4156Profiles {
		for _, m := range iso4156Modules {
			for z := iso4156MinTeeth; z <= iso4156MaxTeeth; z++ {
				out = append(out, func(s Spline) Spline {
					s.PressureAngle, s.Root, s.Module, s.Teeth = p.radians(), p.root, m, z
					return s
				})
			}
		}
	}
	return out
}

func b921Sizes() []sized {
	var out []sized
	for _, p := range b921Profiles {
		for _, pitch := range b921Pitches {
			for n := b921MinTeeth; n <= b921MaxTeeth45; n++ {
				out = append(out, func(s Spline) Spline {
					s.PressureAngle, s.Root, s.Fit, s.DiametralPitch, s.Teeth = p.radians(), p.root, p.fit, pitch, n
					return s
				})
			}
		}
	}
	return out
}

func din5480Sizes() []sized {
	var out []sized
	for _, size := range din5480Series() {
		for _, z := range size.teeth {
			out = append(out, func(s Spline) Spline {
				s.ReferenceDiameter, s.Module, s.Teeth = size.reference, size.module, z
				return s
			})
		}
	}
	return out
}

func iso14Sizes() []sized {
	var out []sized
	for _, size := range iso14Series {
		out = append(out, func(s Spline) Spline {
			s.MinorDiameter, s.MajorDiameter, s.Teeth = size.minor, size.major, size.teeth
			return s
		})
	}
	return out
}

// template returns what candidates of a standard have of s: all that is no
// standard's own, and of that the fits and classes where the standard is that of s.
func (s Spline) template(standard string) Spline {
	t := s
	t.Standard = standard
	t.Module, t.DiametralPitch, t.ReferenceDiameter, t.MinorDiameter, t.MajorDiameter = 0, 0, 0, 0, 0
	t.Teeth, t.PressureAngle, t.Root = 0, 0, ""
	t.ShaftPin, t.HubPin = 0, 0
	if cmp.Or(s.Standard, standard) != standard {
		t.Fit, t.ShaftClass, t.ShaftFit, t.HubClass, t.HubFit = "", 0, "", 0, ""
		t.ShaftProcess, t.HubProcess, t.ToleranceLength = "", "", 0
	}
	return t
}
