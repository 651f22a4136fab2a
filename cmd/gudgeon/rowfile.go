package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"gudgeon/cmd/internal/diag"
)

// rowFile is where rows go as they are computed: standard output, a file that
// is put in place whole at the end, or one that is gone on with. Whole rows are
// written at a time, and after Ctrl-C none.
type rowFile struct {
	app  *app
	path string // "" for standard output
	w    io.Writer
	file *os.File // nil for standard output
	temp string   // where the file is kept until it is whole; "" where it is written in place
}

// openRows opens file for rows; input is the design file, which is never
// written over.
func (a *app) openRows(input, file string) (*rowFile, error) {
	if file == "" || file == "-" {
		return &rowFile{app: a, w: a.out}, nil
	}
	if sameFile(input, file) {
		return nil, inputProblem(diag.Diagnostic{Code: "would-overwrite", File: file,
			Message: "the output would overwrite the design file", Hint: "give another name to -o"})
	}
	r := &rowFile{app: a, path: file}
	perm, err := r.target()
	if err != nil {
		return nil, outputProblem(file, err)
	}
	if r.file == nil {
		if err := r.openBeside(perm); err != nil {
			return nil, outputProblem(file, err)
		}
	}
	r.w = r.file
	return r, nil
}

// openBeside opens the file that is to take the path's place, with the
// permissions of what stands there; 0 for those of a new file.
func (r *rowFile) openBeside(perm fs.FileMode) error {
	r.temp = filepath.Join(filepath.Dir(r.path), fmt.Sprintf(".%s-%d.part", filepath.Base(r.path), os.Getpid()))
	file, err := os.OpenFile(r.temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	r.file = file
	r.app.placing.Lock()
	r.app.discard = r.remove
	r.app.placing.Unlock()
	if perm != 0 {
		if err := file.Chmod(perm); err != nil {
			r.abandon()
			return err
		}
	}
	return nil
}

// target looks at what stands at the path: links are followed, and what is not
// a regular file is opened to be written to as it is.
func (r *rowFile) target() (perm fs.FileMode, err error) {
	info, err := os.Stat(r.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return 0, nil
	case err != nil:
		return 0, err
	case info.IsDir():
		return 0, errors.New("there is a folder of that name")
	case !info.Mode().IsRegular():
		r.file, err = os.OpenFile(r.path, os.O_WRONLY, 0)
		return 0, err
	}
	r.path, err = filepath.EvalSymlinks(r.path)
	return info.Mode().Perm(), err
}

// write writes whole rows.
func (r *rowFile) write(rows []byte) error {
	r.app.placing.Lock()
	defer r.app.placing.Unlock()
	if r.app.cancelled {
		return &problem{code: exitInterrupted}
	}
	if _, err := r.w.Write(rows); err != nil {
		return r.failed(err)
	}
	return nil
}

func (r *rowFile) failed(err error) error {
	if r.path == "" {
		return outputProblem("<stdout>", err)
	}
	return outputProblem(r.path, err)
}

// finish puts the file in place.
func (r *rowFile) finish() error {
	if r.file == nil {
		return nil
	}
	if r.temp == "" {
		err := r.file.Close()
		r.file = nil
		return r.told(err)
	}
	err := errors.Join(r.file.Sync(), r.file.Close())
	r.app.placing.Lock()
	defer r.app.placing.Unlock()
	switch {
	case r.app.cancelled:
		return &problem{code: exitInterrupted}
	case err != nil:
		return r.failed(err)
	}
	if err := os.Rename(r.temp, r.path); err != nil {
		return r.failed(err)
	}
	r.file, r.app.discard, r.app.placed = nil, nil, true
	return r.told(nil)
}

func (r *rowFile) told(err error) error {
	if err != nil {
		return r.failed(err)
	}
	r.app.remark("wrote %s", r.path)
	return nil
}

// abandon gives up what was not finished.
func (r *rowFile) abandon() {
	if r.file == nil {
		return
	}
	r.file.Close()
	r.app.placing.Lock()
	defer r.app.placing.Unlock()
	r.app.discard = nil
	r.remove()
}

func (r *rowFile) remove() {
	if r.temp != "" {
		os.Remove(r.temp)
	}
}
