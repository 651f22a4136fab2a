package design

import (
	"errors"

	"gudgeon/cmd/internal/diag"
	"gudgeon/joints"
	"gudgeon/joints/material"
)

// materials reads the file's own materials, each under its name.
func (r *reader) materials(s *section, d *Design) {
	n := s.table("material")
	if n == nil {
		return
	}
	var own []material.Material
	for _, e := range n.entries {
		r.legible(e, e.name, true)
		if e.kind == table {
			if m, ok := r.material(e); ok {
				own = append(own, m)
			}
		} else if e.kind != broken {
			r.tell(e, problem{
				code: "wrong-type", message: "a material must be a table", found: "this is " + e.what(),
				hint: "write [" + join("material", e.name) + "] and its strength below",
			})
		}
	}
	library, err := material.NewLibrary(own...)
	if err != nil {
		for _, m := range own {
			if _, taken := material.Find(m.Name); taken {
				e := n.get(m.Name)
				r.tell(e, problem{code: "duplicate-name", at: e.key, message: "the name of a material must be its own",
					found: "the built-in table has a " + diag.Quote(m.Name), hint: "give it another name"})
			}
		}
		return
	}
	d.Materials = library
}

// material reads one; ok is false where it has a mistake.
func (r *reader) material(n *node) (m material.Material, ok bool) {
	told := r.told
	s := r.open(n, materialKeys, "["+n.path()+"]")
	v := material.Values{
		Name: n.name, Family: s.choice("family", string(material.Steel), string(material.Aluminium), string(material.Titanium)),
		Yield: s.number("yield"), Ultimate: s.number("ultimate"), Modulus: s.number("modulus"), Poisson: s.number("poisson"),
		DensityKgM3: s.number("density"), Expansion: s.number("expansion"), Fatigue: s.number("fatigue"), FatigueCycles: s.number("fatigue_cycles"),
		WeldedYield: s.number("welded_yield"), WeldedUltimate: s.number("welded_ultimate"),
		HardnessMin: s.number("hardness_min"), HardnessMax: s.number("hardness_max"), SectionUpTo: s.number("section_up_to"),
		Source: s.label("source"),
	}
	s.close()
	if r.told > told || n.damaged {
		return m, false // the rest would only follow
	}
	m, err := v.Material()
	var errs joints.InputErrors
	if errors.As(err, &errs) {
		for _, e := range errs {
			r.tellInput(n, e)
		}
	}
	return m, err == nil
}

// tellInput tells a mistake that a package of joints finds in a table.
func (r *reader) tellInput(n *node, e *joints.InputError) {
	p := problem{code: e.Code, path: join(n.path(), e.Field), message: e.Message, found: e.Found, hint: e.Hint, name: e.Name, known: e.Known}
	at := n.get(e.Field)
	if at == nil {
		at, p.at = n, n.key
	}
	r.tell(at, p)
}
