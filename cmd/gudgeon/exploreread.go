package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/study"
)

// exploreHead is the first line of a result in JSON Lines, read again.
type exploreHead struct {
	Schema     string   `json:"schema"`
	Candidates int      `json:"candidates"`
	Shard      *string  `json:"shard"`
	Digest     string   `json:"digest"`
	Columns    []string `json:"columns"`
}

// span is the candidates, from 0, that the part holds; false where the first
// line does not say so in a way that can be.
func (h *exploreHead) span() (part shard, lo, hi int, ok bool) {
	if h.Shard == nil {
		return shard{1, 1}, 0, h.Candidates, true
	}
	if err := part.Set(*h.Shard); err != nil {
		return part, 0, 0, false
	}
	lo, hi = study.Shard(h.Candidates, part.part, part.of)
	return part, lo, hi, true
}

// exploreRow is what has to be known of a row to go on behind it.
type exploreRow struct {
	Candidate int    `json:"candidate"`
	Status    string `json:"status"`
	Meets     *bool  `json:"meets"`
}

// longestLine bounds what is read at a time: a row of ten thousand columns.
const longestLine = 1 << 20

// lineReader reads the whole lines of a result.
type lineReader struct {
	file string
	r    *bufio.Reader
	line int
}

func newLineReader(file string, r io.Reader) *lineReader {
	return &lineReader{file: file, r: bufio.NewReaderSize(r, longestLine)}
}

// next returns a line with its end. partial holds where the file ends without
// one, and the line is what there is of it.
func (r *lineReader) next() (line []byte, partial bool, err error) {
	line, err = r.r.ReadSlice('\n')
	r.line++
	switch {
	case errors.Is(err, bufio.ErrBufferFull):
		return nil, false, r.wrong("a line must be shorter than 1 MiB", "")
	case errors.Is(err, io.EOF) && len(line) > 0:
		return line, true, nil
	case errors.Is(err, io.EOF):
		return nil, false, io.EOF
	case err != nil:
		return nil, false, unreadable(r.file, err)
	}
	return line, false, nil
}

func (r *lineReader) wrong(message, found string) error {
	return inputProblem(diag.Diagnostic{Code: "not-a-result", File: r.file, Line: r.line, Column: 1, EndLine: r.line, EndColumn: 1,
		Message: message, Found: found})
}

// head reads the first line.
func (r *lineReader) head() (h *exploreHead, line []byte, err error) {
	line, partial, err := r.next()
	if err == io.EOF {
		return nil, nil, inputProblem(diag.Diagnostic{Code: "not-a-result", File: r.file, Message: "this must be a result of gudgeon explore in JSON Lines", Found: "it is empty"})
	}
	if err != nil {
		return nil, nil, err
	}
	h = &exploreHead{}
	if partial || json.Unmarshal(line, h) != nil || h.Schema != exploreSchema || h.Candidates < 1 || len(h.Columns) == 0 {
		return nil, nil, r.wrong("this must be a result of gudgeon explore in JSON Lines", "its first line does not say so")
	}
	return h, bytes.Clone(line), nil
}

// row reads the row of candidate i, from 0. It returns io.EOF at the end of the
// file, and partial for a row that is cut off.
func (r *lineReader) row(i int) (row exploreRow, line []byte, partial bool, err error) {
	line, partial, err = r.next()
	if err != nil || partial {
		return row, line, partial, err
	}
	if json.Unmarshal(line, &row) != nil || row.Candidate != i+1 {
		return row, nil, false, r.wrong("rows must be of one candidate after the other", fmt.Sprintf("this is not candidate %d", i+1))
	}
	return row, line, false, nil
}
