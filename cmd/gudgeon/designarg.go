package main

import (
	"os"
	"strings"

	"gudgeon/cmd/internal/diag"
)

// variantMark stands between a file and a variant of it: frame.toml@low.
const variantMark = "@"

// designArg reads FILE or FILE@VARIANT. Names of files may hold the mark too,
// as may names of variants: the longest part of arg, up to a mark or to its
// end, that names something on disk is the file. A file called frame.toml@low
// is so reached by its name, and one in a folder called bikes@home as well.
//
//	arg               on disk              file              variant
//	frame.toml@low    frame.toml           frame.toml        low
//	frame.toml@low    frame.toml@low       frame.toml@low
//	a@b/frame.toml    a@b/frame.toml       a@b/frame.toml
//	frame.toml@a@b    frame.toml           frame.toml        a@b
//	frame.toml@low    neither              frame.toml        low, for the message
//	a@b/frame.toml    nothing              a@b/frame.toml    for the message: so ends no variant
//
// Names of examples hold no mark, nor does - for standard input.
func designArg(arg string) (inputOptions, error) {
	if strings.HasPrefix(arg, examplePrefix) || strings.HasPrefix(arg, "-"+variantMark) {
		file, variant, marked := strings.Cut(arg, variantMark)
		return namedVariant(arg, file, variant, marked)
	}
	if onDisk(arg) || !strings.Contains(arg, variantMark) {
		return inputOptions{file: arg}, nil
	}
	last := strings.LastIndex(arg, variantMark)
	for i := last; i > 0; i = strings.LastIndex(arg[:i], variantMark) {
		if onDisk(arg[:i]) {
			return namedVariant(arg, arg[:i], arg[i+1:], true)
		}
	}
	if behind := arg[last+1:]; strings.ContainsRune(behind, '/') || strings.ContainsRune(behind, os.PathSeparator) || strings.HasSuffix(behind, designEnding) {
		return inputOptions{file: arg}, nil
	}
	return namedVariant(arg, arg[:last], arg[last+1:], true)
}

func onDisk(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// namedVariant refuses a mark with nothing before or after it.
func namedVariant(arg, file, variant string, marked bool) (inputOptions, error) {
	if marked && (variant == "" || file == "" || file == examplePrefix) {
		return inputOptions{}, inputProblem(diag.Diagnostic{Code: "missing-value", File: arg,
			Message: "a design is FILE or FILE@VARIANT", Found: "nothing stands " + beforeOrAfter(file) + " @",
			Hint: "leave @ out for the design as it stands"})
	}
	return inputOptions{file: file, variant: variant}, nil
}

func beforeOrAfter(file string) string {
	if file == "" || file == examplePrefix {
		return "before"
	}
	return "after"
}
