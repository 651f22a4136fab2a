package main

import (
	"bytes"
	"path/filepath"

	"gudgeon/cmd/internal/diag"
)

// deliverWithPictures writes the results in the format asked for and the
// pictures to the name in also ("" for none), or the pictures alone where -o
// names one: all of it or none.
func (a *app) deliverWithPictures(o outputOptions, also string, f *family, results []result, pictures []picture) error {
	input := f.first()
	var files []outFile
	var text bytes.Buffer
	toStdout := !o.isPicture() && (o.file == "" || o.file == "-")
	if !o.isPicture() {
		format, err := o.resolve()
		if err != nil {
			return err
		}
		if err := f.together(results).render(&text, format, toStdout && a.coloured(a.out)); err != nil {
			return err
		}
		if !toStdout {
			files = append(files, outFile{o.file, text.Bytes()})
		}
	}
	for _, target := range []string{o.file, also} {
		kind, ok := pictureEnding(target)
		if !ok || target == o.file && !o.isPicture() {
			continue
		}
		drawn, err := a.renderPictures(pictureOptions{file: target}, kind, input.title(), pictures)
		if err != nil {
			return err
		}
		files = append(files, drawn...)
	}
	if err := namedOnce(files); err != nil {
		return err
	}
	if len(files) > 0 {
		if err := a.place(input.input.file, files); err != nil {
			return err
		}
	}
	if toStdout {
		return a.print(text.Bytes())
	}
	return nil
}

// namedOnce refuses two outputs of one name.
func namedOnce(files []outFile) error {
	seen := map[string]bool{}
	for _, f := range files {
		path := filepath.Clean(f.path)
		if seen[path] {
			return inputProblem(diag.Diagnostic{Code: "named-twice", File: f.path, Message: "two outputs have this name"})
		}
		seen[path] = true
	}
	return nil
}
