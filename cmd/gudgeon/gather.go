package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
)

// gatherOptions are what gudgeon gather is asked for.
type gatherOptions struct {
	parts  []string
	output outputOptions
}

// newGather builds gudgeon gather.
func newGather(a *app) *cobra.Command {
	o := &gatherOptions{output: outputOptions{formats: report.RowFormats}}
	cmd := &cobra.Command{
		Use:     "gather PART…",
		Short:   "joins the parts that gudgeon explore --shard computed",
		GroupID: groupLinkage,
		Long: "Each PART is a file that gudgeon explore --shard wrote as JSON Lines; they may be given in any order. Parts of\n" +
			"different explorations, parts that are missing or given twice and rows that are cut off are refused. The result\n" +
			"is, byte for byte, what one run without --shard gives, and so is the exit code.",
		Example: "gudgeon gather part1.jsonl part2.jsonl -o all.csv\n" +
			"gudgeon gather parts/*.jsonl > all.csv",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 && !slices.Contains(args, "") {
				return nil
			}
			return &problem{code: exitInput, see: cmd.CommandPath(), list: diag.List{{Code: "missing-file",
				Message: "gudgeon gather needs parts", Hint: "give the files that gudgeon explore --shard wrote"}}}
		},
		RunE: func(_ *cobra.Command, args []string) error {
			o.parts = args
			return a.gather(o)
		},
	}
	o.output.add(cmd)
	f := cmd.Flags()
	f.Lookup("format").Usage = "csv on standard output; the ending of a file decides"
	group(cmd, "Result", "format", "output")
	return cmd
}

// partFile is a part with its place in the whole.
type partFile struct {
	path   string
	head   *exploreHead
	first  []byte // its first line
	shard  shard
	lo, hi int // candidates
}

// gather runs the command. All parts are looked through before anything is
// written, since standard output cannot be taken back.
func (a *app) gather(o *gatherOptions) error {
	format, err := (&exploreOptions{output: o.output}).format()
	if err != nil {
		return err
	}
	parts, err := openParts(o.parts)
	if err != nil {
		return err
	}
	var sum tally
	for _, p := range parts {
		if o.output.file != "" && sameFile(p.path, o.output.file) {
			return inputProblem(diag.Diagnostic{Code: "would-overwrite", File: o.output.file, Message: "the output would overwrite a part", Hint: "give another name to -o"})
		}
		err := p.rows(func(row exploreRow, _ []byte) error {
			sum.add(row.Status, row.Meets == nil || *row.Meets)
			return nil
		})
		if err != nil {
			return err
		}
	}
	if err := a.writeGathered(o, format, parts); err != nil {
		return err
	}
	if !slices.Contains(parts[0].head.Columns, "meets") {
		return nil
	}
	return sum.judge("")
}

// writeGathered writes the rows of all parts behind one first line.
func (a *app) writeGathered(o *gatherOptions, format report.Format, parts []*partFile) error {
	out, err := a.openRows(parts[0].path, o.output.file)
	if err != nil {
		return err
	}
	defer out.abandon()
	head := parts[0].head
	first := report.AppendHeader(nil, head.Columns)
	if format == report.Lines {
		first = parts[0].wholeHead()
	}
	if err := out.write(first); err != nil {
		return err
	}
	for _, p := range parts {
		var buf []byte
		err := p.rows(func(_ exploreRow, line []byte) error {
			if format == report.Lines {
				return out.write(line)
			}
			buf, err = appendCSV(buf[:0], line, head.Columns)
			if err != nil {
				return err
			}
			return out.write(buf)
		})
		if err != nil {
			return err
		}
	}
	return out.finish()
}

// openParts reads the first line of every part and puts them in order.
func openParts(paths []string) ([]*partFile, error) {
	var parts []*partFile
	for _, path := range paths {
		p, err := openPart(path)
		if err != nil {
			return nil, err
		}
		parts = append(parts, p)
	}
	refuse := func(p *partFile, code, message, found, hint string) ([]*partFile, error) {
		return nil, inputProblem(diag.Diagnostic{Code: code, File: p.path, Message: message, Found: found, Hint: hint})
	}
	whole := parts[0]
	for _, p := range parts {
		if p.head.Digest != whole.head.Digest || !bytes.Equal(p.wholeHead(), whole.wholeHead()) {
			return refuse(p, "other-exploration", "the parts must be of one exploration", "this is of another one than "+whole.path,
				"the design, the moves, the figures or the seed are not the same")
		}
		if p.shard.of != whole.shard.of {
			return refuse(p, "other-exploration", "the parts must be of one division",
				fmt.Sprintf("this is part %s, %s is part %s", p.shard.String(), whole.path, whole.shard.String()), "")
		}
	}
	slices.SortStableFunc(parts, func(p, q *partFile) int { return p.shard.part - q.shard.part })
	for k := 1; k < len(parts); k++ {
		if parts[k].shard == parts[k-1].shard {
			return refuse(parts[k], "named-twice", "a part must be given once", "part "+parts[k].shard.String()+" is "+parts[k-1].path+" too", "")
		}
	}
	if missing := missingParts(parts); missing != "" {
		return nil, inputProblem(diag.Diagnostic{Code: "missing-part", Message: fmt.Sprintf("all %d parts must be given", whole.shard.of), Found: "missing: " + missing})
	}
	return parts, nil
}

func openPart(path string) (*partFile, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, unreadable(path, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && !info.Mode().IsRegular() {
		return nil, inputProblem(diag.Diagnostic{Code: "not-a-file", File: path, Message: "a part must be a file"}) // it is read twice
	}
	r := newLineReader(path, f)
	head, line, err := r.head()
	if err != nil {
		return nil, err
	}
	p := &partFile{path: path, head: head, first: line}
	var ok bool
	if p.shard, p.lo, p.hi, ok = head.span(); !ok {
		return nil, r.wrong("the first line must say which part this is", "shard is "+*head.Shard)
	}
	return p, nil
}

// missingParts lists parts that are not given, at most ten.
func missingParts(parts []*partFile) string {
	var list []string
	next := 0
	for k := 1; k <= parts[0].shard.of; k++ {
		if next < len(parts) && parts[next].shard.part == k {
			next++
			continue
		}
		if len(list) == 10 {
			list = append(list, "…")
			break
		}
		list = append(list, fmt.Sprintf("%d/%d", k, parts[0].shard.of))
	}
	return strings.Join(list, ", ")
}

// wholeHead is the first line that the whole has.
func (p *partFile) wholeHead() []byte {
	if p.head.Shard == nil {
		return p.first
	}
	return bytes.Replace(p.first, []byte(`, "shard": "`+*p.head.Shard+`", `), []byte(`, "shard": null, `), 1)
}

// rows hands the lines of the part over; it must have all its candidates.
func (p *partFile) rows(take func(row exploreRow, line []byte) error) error {
	f, err := os.Open(p.path)
	if err != nil {
		return unreadable(p.path, err)
	}
	defer f.Close()
	r := newLineReader(p.path, f)
	if _, _, err := r.head(); err != nil {
		return err
	}
	for i := p.lo; ; i++ {
		row, line, partial, err := r.row(i)
		switch {
		case err == io.EOF && i == p.hi:
			return nil
		case err == io.EOF || partial:
			return inputProblem(diag.Diagnostic{Code: "cut-off", File: p.path, Message: "a part must have all its candidates",
				Found: fmt.Sprintf("it ends behind candidate %d, before %d", i, p.hi), Hint: "go on with it: gudgeon explore … --resume " + p.path})
		case err != nil:
			return err
		case i == p.hi:
			return r.wrong("rows must be of one candidate after the other", "this is one too many")
		}
		if err := take(row, line); err != nil {
			return err
		}
	}
}

// appendCSV appends a row of JSON Lines as one of CSV. Numbers are copied as
// they are written.
func appendCSV(dst, line []byte, columns []string) ([]byte, error) {
	var row map[string]any
	d := json.NewDecoder(bytes.NewReader(line))
	d.UseNumber()
	if err := d.Decode(&row); err != nil {
		return nil, err
	}
	l := make(report.Line, len(columns))
	for k, name := range columns {
		v := row[name]
		switch n := v.(type) {
		case json.Number:
			v = n.String()
		case nil, string, bool:
		default:
			v = nil // no row has one
		}
		l[k] = report.Member{Name: name, Value: v}
	}
	return report.AppendRow(dst, l), nil
}
