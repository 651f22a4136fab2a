package material

import (
	"gudgeon/joints/check"
	"gudgeon/joints/mistake"
)

// Library is the table and the materials that somebody adds to it. A nil Library
// is the table alone.
type Library struct{ own []Material }

// NewLibrary returns the table with own materials beside it. The error is
// check.InputErrors: a name that is in the table already, or twice in own.
func NewLibrary(own ...Material) (*Library, error) {
	var m mistake.List
	l := &Library{}
	for _, material := range own {
		if _, taken := l.Find(material.Name); taken {
			m.Add("name", check.DoesNotFit, "the name of a material must be its own", "there is a "+material.Name+" already", "give it another name")
			continue
		}
		l.own = append(l.own, material)
	}
	if err := m.Err(); err != nil {
		return nil, err
	}
	return l, nil
}

// Find returns the material of a name, written exactly as in Names.
func (l *Library) Find(name string) (m Material, ok bool) {
	for _, list := range [][]Material{table, l.added()} {
		for i := range list { // by index: a Material is large
			if list[i].Name == name {
				return list[i], true
			}
		}
	}
	return Material{}, false
}

// Names lists the table, and after it one's own.
func (l *Library) Names() []string {
	var names []string
	for _, list := range [][]Material{table, l.added()} {
		for _, m := range list {
			names = append(names, m.Name)
		}
	}
	return names
}

func (l *Library) added() []Material {
	if l == nil {
		return nil
	}
	return l.own
}
