package metal

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"gudgeon/joints/check"
	"gudgeon/joints/material"
	"gudgeon/joints/mistake"
)

// Need is what a joint asks to be documented of a metal.
type Need int

// The needs, each with those before it.
const (
	Constants Need = iota // elastic constants, which every metal has
	Yield
	Ultimate
)

// Check notes at field a name that is missing, unknown, not documented in the section,
// mm, or without what is needed. It says nothing of a section that is no number, whose
// lengths are at fault.
func Check(l *mistake.List, from *material.Library, field, name string, section float64, need Need) {
	key := field[strings.LastIndexByte(field, '.')+1:]
	if name == "" {
		l.Missing(field, key+" must be given", "", Names(from)...)
		return
	}
	if !l.OneOf(field, name, Names(from), key+" must be a material of the table") || math.IsNaN(section) || math.IsInf(section, 0) {
		return
	}
	switch m, err := Find(from, name, section); {
	case err != nil && !errors.Is(err, ErrUnknown):
		l.Misfit(field, section, key+" must be documented for the section: "+err.Error(), "take another material")
	case need >= Yield && m.Yield == 0 || need >= Ultimate && m.Ultimate == 0:
		l.Add(field, check.DoesNotFit, key+" must have a documented strength", fmt.Sprintf("that of %q is not", name), "take a material with one")
	}
}
