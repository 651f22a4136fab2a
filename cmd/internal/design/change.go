package design

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/units"
	"gudgeon/kinematics"
)

// Number is a number that stands in a file.
type Number struct {
	Path    string     // of the design, as messages write it: "spring.rate", "points.rocker[0]"
	Value   float64    // in the plain unit of Unit, as a number without a unit in a file
	Unit    units.Kind //
	Whole   bool       // a count: teeth, a class
	Percent bool       // written with %, of the full travel
}

// UnitSymbol is the unit of Value, "" where it has none.
func (n Number) UnitSymbol() string {
	if n.Percent {
		return "%"
	}
	return n.Unit.Plain()
}

// Numbers lists every number of the file with the variant laid over it, in the
// order in which they are read. The file must have the variant.
func (f *File) Numbers(variant string) []Number {
	root, _ := f.tree(variant)
	var list []Number
	r := f.reader(newProblems(), variant)
	r.numbers = &list
	r.read(root, f.title())
	return list
}

// note keeps a number that was read, v in the base unit of its kind.
func (r *reader) note(n *node, v float64, is Number) {
	if r.numbers == nil || math.IsNaN(v) {
		return
	}
	is.Value = v
	if u, ok := units.Lookup(is.Unit.Plain()); ok {
		is.Value = u.FromBase(v)
	}
	if written, ok := decimal(n.text); ok && n.kind == number {
		is.Value = written // as it stands
	}
	is.Path = n.path()
	if r.variant != "" {
		is.Path = strings.TrimPrefix(is.Path, join("variant", r.variant)+".")
	}
	*r.numbers = append(*r.numbers, is)
}

// Changer gives a file's design with some of its numbers changed. It is safe
// for concurrent use.
type Changer struct {
	file    *File
	variant string
	root    *node
	targets []target
	base    *Design // where all targets are coordinates in the plane, else nil
}

// target is a number to change.
type target struct {
	Number
	steps       []step
	point, axis int // of a coordinate
}

// Changer prepares changes of the given numbers, which must be of Numbers of
// the variant, each once.
func (f *File) Changer(variant string, numbers []Number) *Changer {
	c := &Changer{file: f, variant: variant}
	c.root, _ = f.tree(variant)
	base, _ := f.Variant(variant)
	plane := true
	for _, n := range numbers {
		t := target{Number: n, steps: steps(n.Path)}
		if t.inPlane() {
			t.axis = t.steps[2].index
			t.point = slices.IndexFunc(base.Kinematics.Points, func(p kinematics.Point) bool { return p.Name == t.steps[1].name })
		} else {
			plane = false
		}
		c.targets = append(c.targets, t)
	}
	if plane {
		c.base = base
	}
	return c
}

// inPlane reports whether t is the x or y of a point.
func (t target) inPlane() bool {
	return len(t.steps) == 3 && t.steps[0].name == "points" && t.steps[2].index < 2
}

// Design returns the design with the numbers at values, each in the plain unit
// of its Number: the design that the file with these numbers written in it
// would give. Gears that name the teeth of the chainring or the cog that changes
// go on naming them. The list is not empty where the file could not hold the
// numbers.
func (c *Changer) Design(values []float64) (*Design, diag.List) {
	if c.base != nil {
		return c.moved(values), nil
	}
	root := c.root
	for i, t := range c.targets {
		root = replaced(root, t.steps, t.written(values[i]))
		if t.teeth() {
			root = c.followed(root, t, values[i])
		}
	}
	out := newProblems()
	d := c.file.reader(out, c.variant).read(root, c.file.title())
	return d, out.diagnostics(c.file.src)
}

// teeth reports whether t is the chainring or a cog.
func (t target) teeth() bool {
	return t.Path == "drivetrain.chainring" || strings.HasPrefix(t.Path, "drivetrain.cogs[")
}

// followed rewrites the gears that name the teeth that t has in the file.
func (c *Changer) followed(root *node, t target, v float64) *node {
	paths := []string{"drivetrain.gear"}
	for k := range root.get("load_case").elements() {
		paths = append(paths, fmt.Sprintf("load_case[%d].gear", k))
	}
	now := strconv.FormatFloat(v, 'g', -1, 64)
	for _, path := range paths {
		n, there := root.find(path)
		original, _ := c.root.find(path)
		if !there || n.kind != text {
			continue
		}
		was, ok := ParseGear(original.text)
		ring, cog, _ := strings.Cut(n.text, "x")
		switch {
		case !ok:
			continue
		case t.Path == "drivetrain.chainring" && float64(was.Chainring) == t.Value:
			ring = now
		case t.Path != "drivetrain.chainring" && float64(was.Cog) == t.Value:
			cog = now
		}
		root = replaced(root, steps(path), func(n *node) { n.text = ring + "x" + cog })
	}
	return root
}

// elements are the items of a list, none of a nil node.
func (n *node) elements() []*node {
	if n == nil {
		return nil
	}
	return n.items
}

// moved is Design for coordinates alone, which nothing but the list of points
// holds.
func (c *Changer) moved(values []float64) *Design {
	d, k := *c.base, *c.base.Kinematics
	k.Points = slices.Clone(k.Points)
	for i, t := range c.targets {
		if at := &k.Points[t.point].At; t.axis == 0 {
			at.X = values[i]
		} else {
			at.Y = values[i]
		}
	}
	d.Kinematics = &k
	return &d
}

// written is the value as the file would hold it.
func (t target) written(v float64) func(*node) {
	s := strconv.FormatFloat(v, 'g', -1, 64)
	if t.Percent {
		return func(n *node) { n.kind, n.text = text, s+"%" }
	}
	return func(n *node) { n.kind, n.text = number, s }
}

// replaced is the tree with the value at a path rewritten. Only the nodes on
// the way are copied; they keep their places in the file.
func replaced(n *node, path []step, write func(*node)) *node {
	m := *n
	switch {
	case len(path) == 0:
		write(&m)
	case path[0].key:
		i := n.entry(path[0].name)
		m.entries = slices.Clone(n.entries)
		m.entries[i] = replaced(n.entries[i], path[1:], write)
	default:
		i := path[0].index
		m.items = slices.Clone(n.items)
		m.items[i] = replaced(n.items[i], path[1:], write)
	}
	return &m
}

// CoordinatePath is the path of a point's coordinate: 0 its x, 1 its y, 2 its z.
func CoordinatePath(point string, axis int) string {
	return fmt.Sprintf("%s[%d]", join("points", point), axis)
}

// Source returns the text of the file.
func (f *File) Source() string { return f.src.whole }
