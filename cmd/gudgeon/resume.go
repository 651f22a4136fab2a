package main

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"

	"gudgeon/cmd/internal/diag"
)

// resumeExplored opens the file of --resume. Where it exists it must be of the
// same exploration; what stands behind its last whole row is cut off, and sum
// counts what it has. The rows go straight into the file, so that a run that is
// stopped leaves those it has written.
func (a *app) resumeExplored(x *explored, first []byte, sum *tally) (*rowFile, int, error) {
	if sameFile(x.loaded.input.file, x.resume) {
		return nil, 0, inputProblem(diag.Diagnostic{Code: "would-overwrite", File: x.resume,
			Message: "the output would overwrite the design file", Hint: "give another name to --resume"})
	}
	file, err := os.OpenFile(x.resume, os.O_RDWR|os.O_CREATE, 0o666)
	if err != nil {
		return nil, 0, outputProblem(x.resume, err)
	}
	out := &rowFile{app: a, path: x.resume, w: file, file: file}
	next, end, err := x.whole(file, first, sum)
	if err != nil {
		out.abandon()
		return nil, 0, err
	}
	if err := errors.Join(file.Truncate(end), seekTo(file, end)); err != nil {
		out.abandon()
		return nil, 0, outputProblem(x.resume, err)
	}
	if end == 0 {
		return out, next, out.write(first)
	}
	a.remark("%s of %s are there already", numberWord(next-x.lo, "candidate"), numberWord(x.hi-x.lo, "candidate"))
	return out, next, nil
}

func seekTo(file *os.File, offset int64) error {
	_, err := file.Seek(offset, io.SeekStart)
	return err
}

// whole reads what an earlier run left: the next candidate, and where the last
// whole row ends; 0 in an empty file, or in one whose first line was cut off.
func (x *explored) whole(file *os.File, first []byte, sum *tally) (next int, end int64, err error) {
	info, err := file.Stat()
	if err != nil {
		return 0, 0, outputProblem(x.resume, err)
	}
	if !info.Mode().IsRegular() {
		return 0, 0, outputProblem(x.resume, &fs.PathError{Err: errors.New("this is not a file that can be gone on with")})
	}
	r := newLineReader(x.resume, file)
	line, partial, err := r.next()
	switch {
	case err == io.EOF, partial && bytes.HasPrefix(first, line):
		return x.lo, 0, nil
	case err != nil:
		return 0, 0, err
	case !bytes.Equal(line, first):
		return 0, 0, x.otherExploration(line)
	}
	end = int64(len(line))
	for next = x.lo; ; next++ {
		row, line, partial, err := r.row(next)
		switch {
		case err == io.EOF || partial:
			return next, end, nil
		case err != nil:
			return 0, 0, err
		case next == x.hi:
			return 0, 0, r.wrong("rows must be of one candidate after the other", "this is one too many")
		}
		end += int64(len(line))
		sum.add(row.Status, row.Meets == nil || *row.Meets)
	}
}

// otherExploration tells a file that is not to be gone on with.
func (x *explored) otherExploration(line []byte) error {
	h, _, err := newLineReader(x.resume, bytes.NewReader(line)).head()
	if err != nil {
		return err
	}
	d := diag.Diagnostic{Code: "other-exploration", File: x.resume, Message: "this is the result of another exploration",
		Hint: "the design, the moves, the figures, the seed or the shard are not the same; give --resume another name"}
	if h.Digest == x.digest() {
		d.Found, d.Hint = "it is of another part, or of moves written in another way", "call with the same --shard and --move, or give --resume another name"
	}
	return inputProblem(d)
}
