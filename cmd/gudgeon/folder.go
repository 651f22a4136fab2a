package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// placeInFolder is place for files of one folder, which is made where it is not there
// and taken away again where the files cannot be written. No folder is the one that
// they are in already.
func (a *app) placeInFolder(folder, input string, files []outFile) error {
	if folder == "" {
		return a.place(input, files)
	}
	made, err := makeFolder(folder)
	if err == nil {
		err = a.place(input, files)
	}
	if err != nil {
		for _, path := range made {
			os.Remove(path)
		}
	}
	return err
}

// makeFolder makes a folder with those that it lies in, and returns what it made,
// innermost first.
func makeFolder(path string) (made []string, err error) {
	for up := filepath.Clean(path); ; up = filepath.Dir(up) {
		if _, err := os.Stat(up); !errors.Is(err, fs.ErrNotExist) || up == filepath.Dir(up) {
			break
		}
		made = append(made, up)
	}
	err = os.MkdirAll(path, 0o777)
	if err == nil {
		return made, nil
	}
	if info, statErr := os.Stat(path); statErr == nil && !info.IsDir() || errors.Is(err, fs.ErrExist) {
		err = errors.New("there is a file of that name")
	}
	return made, outputProblem(path, err)
}
