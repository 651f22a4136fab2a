package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const root = "../.."

// importsByFolder returns what the files of each folder import, tests apart.
func importsByFolder(t *testing.T) map[string][]string {
	t.Helper()
	imports := map[string][]string{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && path != root {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		folder, err := filepath.Rel(root, filepath.Dir(path))
		if err != nil {
			return err
		}
		folder = filepath.ToSlash(folder)
		for _, i := range file.Imports {
			name, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				return err
			}
			imports[folder] = append(imports[folder], name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(imports["kinematics"]) == 0 || len(imports["cmd/gudgeon"]) == 0 {
		t.Fatal("the packages were not found")
	}
	return imports
}

// under reports whether path is prefix or lies below it.
func under(path, prefix string) bool { return path == prefix || strings.HasPrefix(path, prefix+"/") }

// Each of these modules is known to one package only, so that it can be
// exchanged there.
func TestImportsOfModules(t *testing.T) {
	home := map[string]string{
		"github.com/spf13/cobra":          "cmd/gudgeon",
		"github.com/spf13/pflag":          "cmd/gudgeon",
		"github.com/google/renameio/v2":   "cmd/gudgeon",
		"github.com/pelletier/go-toml":    "cmd/internal/design",
		"github.com/hbollon/go-edlib":     "cmd/internal/diag",
		"gonum.org/v1/plot":               "plots",
		"github.com/rogpeppe/go-internal": "", // tests only
		"pgregory.net/rapid":              "",
		"github.com/google/go-cmp":        "",
	}
	used := map[string]bool{}
	for folder, list := range importsByFolder(t) {
		for _, name := range list {
			for module, place := range home {
				if !under(name, module) {
					continue
				}
				used[module] = true
				if !under(folder, place) || place == "" {
					t.Errorf("%s imports %s, which belongs in %q", folder, name, place)
				}
			}
		}
	}
	for module, place := range home {
		if place != "" && !used[module] {
			t.Errorf("nothing imports %s: drop it from this list", module)
		}
	}
}

// Imports go down the picture of DEVELOPERS.md only.
func TestImportsGoDown(t *testing.T) {
	forbidden := []struct{ from, to string }{
		{"kinematics", "gudgeon/joints"}, {"kinematics", "gudgeon/plots"}, {"kinematics", "gudgeon/cmd"},
		{"joints", "gudgeon/kinematics"}, {"joints", "gudgeon/plots"}, {"joints", "gudgeon/cmd"},
		{"plots", "gudgeon/kinematics"}, {"plots", "gudgeon/joints"}, {"plots", "gudgeon/cmd"},
		{"cmd/internal/units", "gudgeon"},
		{"cmd/internal/diag", "gudgeon"},
		{"cmd/internal/dossier", "gudgeon/kinematics"}, {"cmd/internal/dossier", "gudgeon/joints"},
		{"cmd/internal/dossier", "gudgeon/cmd/internal/design"}, {"cmd/internal/dossier", "gudgeon/cmd/internal/study"},
		{"cmd/internal/report", "gudgeon/cmd/internal/design"}, {"cmd/internal/report", "gudgeon/cmd/internal/study"},
		{"cmd/internal/design", "gudgeon/cmd/internal/report"}, {"cmd/internal/design", "gudgeon/cmd/internal/study"},
	}
	for folder, list := range importsByFolder(t) {
		for _, name := range list {
			for _, f := range forbidden {
				if under(folder, f.from) && under(name, f.to) && !under(name, "gudgeon/"+f.from) {
					t.Errorf("%s imports %s", folder, name)
				}
			}
			if under(folder, "kinematics") && folder != "kinematics" && name == "gudgeon/kinematics" ||
				under(folder, "joints") && folder != "joints" && name == "gudgeon/joints" {
				t.Errorf("%s imports its root", folder)
			}
			if under(folder, "kinematics") || under(folder, "joints") {
				standard := !strings.Contains(strings.Split(name, "/")[0], ".")
				if !standard && !under(name, "gonum.org/v1/gonum") {
					t.Errorf("%s imports %s: the standard library and gonum only", folder, name)
				}
			}
		}
	}
}

// A file is named by the concept it holds.
func TestNoGrabBagFiles(t *testing.T) {
	grabBags := []string{"util.go", "utils.go", "types.go", "helpers.go", "common.go", "misc.go"}
	filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err == nil && slices.Contains(grabBags, d.Name()) {
			t.Errorf("%s is no concept", path)
		}
		return nil
	})
}
