package design

import (
	"path/filepath"
	"slices"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/joints"
	"gudgeon/joints/material"
	"gudgeon/kinematics"
)

// Design is what one variant of a file describes.
type Design struct {
	Kinematics *kinematics.Design // nil where the file holds joints alone
	Joints     []Joint            // in the order of the file
	Materials  *material.Library  // the table and the file's own
	Tolerance  *Tolerance         // nil: the file has none
}

// Joint is a joint to size and what it carries: Loads of its own, or a Tie and
// one load with what the linkage cannot know, which comes to that of every load
// case.
type Joint struct {
	joints.Joint
	Loads  []joints.Load
	Tie    *Tie
	Wanted Wanted // of proposals, splines only
}

// TieForm is what a joint takes from the linkage.
type TieForm int

// The forms.
const (
	MomentTie TieForm = iota // Share of the moment about At of the pin forces on Link at Through
	PinTie                   // Share of the pin's force on Link at At
	LinkTie                  // Share of the forces at the Ends of Link
)

// Tie says where in the linkage a joint takes its loads from, in every load case.
// What its form does not name is not used.
type Tie struct {
	Form           TieForm
	At, Link       string
	Through        []string
	Against        string    // PinTie: the link that Link swings against; "": the only other one at the pin
	Ends           [2]string // LinkTie: from, to; both "": the two pins of the link
	Share          float64   // (0, 1]
	ShareTaken     bool      // Share is the default of one of two sides
	Offset         float64   // PinTie: of the force from the joint's middle, mm towards +z, where the joint has none of its own
	StressPerForce float64   // PinTie of a place: nominal stress over the pin's force, MPa/N
}

// JointError is the error of sizing one joint of a Design, for Locate: the
// fields of Err are seen from the joint.
type JointError struct {
	Index int // in Design.Joints
	Err   error
}

// Error gives the error of the joint.
func (e *JointError) Error() string { return e.Err.Error() }

// Unwrap gives the error of the joint.
func (e *JointError) Unwrap() error { return e.Err }

// File is a design file that was read without a mistake. It is safe for
// concurrent use.
type File struct {
	src      *source
	root     *node
	variants []string
	merged   map[string]*node // the file with each variant laid over it
}

// Parse reads a design file; name is what messages call it. All variants are
// read and checked too. Where the list has errors the file is nil.
func Parse(name string, src []byte) (*File, diag.List) {
	s, bad := newSource(name, src)
	out := newProblems()
	if bad != nil {
		out.add(*bad)
		return nil, out.diagnostics(s)
	}
	root := index(s, out)
	if root == nil {
		return nil, out.diagnostics(s)
	}
	f := &File{src: s, root: root, merged: map[string]*node{}}
	f.readAll(out)
	if len(out.list) > 0 {
		return nil, out.diagnostics(s)
	}
	return f, nil
}

// readAll reads and checks the base and every variant.
func (f *File) readAll(out *problems) {
	base := f.reader(out, "")
	base.check(f.root, base.read(f.root, f.title()))
	variants := f.root.get("variant")
	if variants == nil || variants.kind != table {
		return
	}
	for _, v := range variants.entries {
		if v.kind != table {
			continue
		}
		r := f.reader(out, v.name)
		r.partial, r.lost = base.partial, slices.Clone(base.lost)
		merged := r.overlay(f.root, v, "")
		f.variants = append(f.variants, v.name)
		f.merged[v.name] = merged
		r.check(merged, r.read(merged, f.title()))
	}
}

func (f *File) reader(out *problems, variant string) *reader {
	return &reader{src: f.src, out: out, variant: variant}
}

// title names a design whose file does not.
func (f *File) title() string {
	if strings.HasPrefix(f.src.name, "<") {
		return ""
	}
	base := filepath.Base(f.src.name)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

// Variants returns the names of the file's variants, in its order.
func (f *File) Variants() []string { return f.variants }

// Variant returns the design with the named variant laid over it, or the
// design as it stands for "". The design is the caller's own. The list is not
// empty where the file has no such variant.
func (f *File) Variant(name string) (*Design, diag.List) {
	root, ok := f.tree(name)
	if !ok {
		d := diag.Diagnostic{
			Code: "no-such-variant", File: f.src.name, Message: "there is no variant " + diag.Quote(name),
			Hint: diag.Suggest(name, f.variants),
		}
		if len(f.variants) == 0 {
			d.Hint = "the file has no variants"
		}
		return nil, diag.List{d}
	}
	return f.reader(newProblems(), name).read(root, f.title()), nil
}

func (f *File) tree(variant string) (*node, bool) {
	if variant == "" {
		return f.root, true
	}
	n, ok := f.merged[variant]
	return n, ok
}

// Locate turns an error about a design of this file, as kinematics and joints
// return them, into diagnostics at the values to blame; variant is the one
// that the design was read with, and the base where the file has none of that
// name. An error without a path is told without a place.
func (f *File) Locate(variant string, err error) diag.List {
	root, ok := f.tree(variant)
	if !ok {
		root, variant = f.root, ""
	}
	out := newProblems()
	r := f.reader(out, variant)
	for _, x := range faults(err, "") {
		out.add(r.place(root, x))
	}
	return out.diagnostics(f.src)
}
