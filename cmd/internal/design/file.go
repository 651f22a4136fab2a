package design

import (
	"path/filepath"
	"slices"
	"strings"

	"gudgeon/cmd/internal/diag"
	"gudgeon/joints"
	"gudgeon/kinematics"
)

// Design is what one variant of a file describes.
type Design struct {
	Kinematics *kinematics.Design // nil where the file holds joints alone
	Joints     []Joint            // in the order of the file
}

// Joint is a joint to size and where its torque comes from: Torque is given,
// N·mm, or Tie is; never both, never neither.
type Joint struct {
	joints.Joint
	Torque *float64
	Tie    *Tie
}

// Tie takes a joint's torque from the linkage: Share of the moment about the
// point At of the pin forces on Link at the points Through.
type Tie struct {
	At, Link string
	Through  []string
	Share    float64 // (0, 1]
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
