package main

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"gudgeon/testdata"
)

var rewrite = flag.Bool("rewrite", false, "write what the commands give now into the transcripts, README.md and doc.go")

// TestTranscripts runs testdata/cli/*.txt, each in a folder of its own:
//
//	# What it guards, in a sentence or two.
//
//	--- frame.toml            a file, up to the next line of ---
//	name = "…"
//	---
//	$ gudgeon sweep frame.toml
//	what goes to standard output
//	! what goes to standard error
//	= 2                       the exit code, where it is not 0
//
// A line of … stands for any number of lines, long numbers may differ in their
// last digits, escape characters are shown as ␛. The commands are gudgeon, cat
// and ls; < and > take a file.
func TestTranscripts(t *testing.T) {
	files, err := filepath.Glob(testdata.Path("cli", "*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no transcripts: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if !strings.HasPrefix(string(text), "# ") {
				t.Error("the transcript does not open with what it guards")
			}
			t.Chdir(t.TempDir())
			got := runTranscript(t, string(text), true)
			if *rewrite {
				if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

// runTranscript runs the commands of a transcript and compares what each
// gives. It returns the text with what they gave. Without marks both streams
// stand one after the other and the exit code is not shown.
func runTranscript(t *testing.T, text string, marks bool) string {
	t.Helper()
	var got strings.Builder
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	for i := 0; i < len(lines); {
		line := lines[i]
		i++
		got.WriteString(line + "\n")
		if name, ok := strings.CutPrefix(line, "--- "); ok {
			start := i
			for lines[i] != "---" {
				got.WriteString(lines[i] + "\n")
				i++
			}
			writeTestFile(t, name, strings.Join(lines[start:i], "\n")+"\n")
			continue
		}
		command, ok := strings.CutPrefix(line, "$ ")
		if !ok {
			continue
		}
		start := i
		for i < len(lines) && !opensPart(lines[i]) {
			i++
		}
		end := i
		for end > start && lines[end-1] == "" { // blank lines before the next command
			end--
		}
		want := lines[start:end]
		output := runCommand(t, command, marks)
		if !*rewrite && !matches(want, output) {
			t.Errorf("$ %s\n%s", command, cmp.Diff(want, output))
		}
		for _, l := range elide(output, want) {
			got.WriteString(l + "\n")
		}
		got.WriteString(strings.Repeat("\n", i-end))
	}
	return got.String()
}

// opensPart reports whether a line of a transcript is not output.
func opensPart(line string) bool {
	return strings.HasPrefix(line, "$ ") || strings.HasPrefix(line, "--- ") || strings.HasPrefix(line, "# ")
}

func writeTestFile(t *testing.T, name, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(unpicture(text)), 0o666); err != nil {
		t.Fatal(err)
	}
}

// unpicture turns pictures of control characters into these.
func unpicture(s string) string { return strings.NewReplacer("␛", "\x1b", "␍", "\r").Replace(s) }

const anyLines = "…"

// elide leaves as many lines at either end of output as want has outside its
// first and last ….
func elide(output, want []string) []string {
	first := slices.Index(want, anyLines)
	if first < 0 {
		return output
	}
	last := len(want) - 1
	for want[last] != anyLines {
		last--
	}
	tail := len(want) - 1 - last
	if first+tail > len(output) {
		return output
	}
	return slices.Concat(output[:first], []string{anyLines}, output[len(output)-tail:])
}

// matches compares line by line; … in want stands for any lines.
func matches(want, got []string) bool {
	if len(want) == 0 {
		return len(got) == 0
	}
	if want[0] != anyLines {
		return len(got) > 0 && sameLine(want[0], got[0]) && matches(want[1:], got[1:])
	}
	for k := 0; k <= len(got); k++ {
		if matches(want[1:], got[k:]) {
			return true
		}
	}
	return false
}

// number is a number of an output; a long one is written with all its digits.
var (
	number     = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?(e-?[0-9]+)?`)
	longNumber = regexp.MustCompile(`\.[0-9]{6,}|e-`)
)

// lastDigits is how far two long numbers may differ: processors round
// multiply-adds differently, which reaches the last of 12 digits.
const lastDigits = 1e-9

// sameLine compares the words of two lines exactly, and their numbers too
// unless one of them is long: then within lastDigits.
func sameLine(want, got string) bool {
	return want == got ||
		number.ReplaceAllString(want, "#") == number.ReplaceAllString(got, "#") &&
			slices.EqualFunc(number.FindAllString(want, -1), number.FindAllString(got, -1), sameNumber)
}

func sameNumber(want, got string) bool {
	if want == got || !longNumber.MatchString(want) && !longNumber.MatchString(got) {
		return want == got
	}
	x, errX := strconv.ParseFloat(want, 64)
	y, errY := strconv.ParseFloat(got, 64)
	return errX == nil && errY == nil && math.Abs(x-y) <= lastDigits*max(1, math.Abs(x))
}

// runCommand runs one command line and returns its output in lines.
func runCommand(t *testing.T, line string, marks bool) []string {
	t.Helper()
	words, stdin, stdout := splitCommand(t, unpicture(line))
	var out, errs bytes.Buffer
	code := 0
	switch words[0] {
	case "gudgeon":
		code = run(words[1:], bytes.NewReader(stdin), &out, &errs)
	case "cat":
		text, err := os.ReadFile(words[1])
		if err != nil {
			t.Fatal(err)
		}
		out.Write(text)
	case "ls":
		entries, err := os.ReadDir(words[1])
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			fmt.Fprintln(&out, e.Name())
		}
	default:
		t.Fatalf("no command %s", words[0])
	}
	if stdout != "" {
		if err := os.WriteFile(stdout, out.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
		out.Reset()
	}
	output := outputLines(out.String(), "")
	if !marks {
		return append(output, outputLines(errs.String(), "")...)
	}
	output = append(output, outputLines(errs.String(), "! ")...)
	if code != 0 {
		output = append(output, fmt.Sprintf("= %d", code))
	}
	return output
}

func outputLines(text, mark string) []string {
	if text == "" {
		return nil
	}
	text = strings.ReplaceAll(strings.TrimSuffix(text, "\n"), "\x1b", "␛")
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(mark+lines[i], " ")
	}
	return lines
}

// splitCommand splits at blanks outside single quotes, and takes < and > out.
func splitCommand(t *testing.T, line string) (words []string, stdin []byte, stdout string) {
	t.Helper()
	for i, part := range strings.Split(line, "'") {
		if i%2 == 1 {
			words = append(words, part)
		} else {
			words = append(words, strings.Fields(part)...)
		}
	}
	for i := 0; i+1 < len(words); i++ {
		switch words[i] {
		case "<":
			text, err := os.ReadFile(words[i+1])
			if err != nil {
				t.Fatal(err)
			}
			stdin, words = text, append(words[:i], words[i+2:]...)
		case ">":
			stdout, words = words[i+1], append(words[:i], words[i+2:]...)
		}
	}
	return words, stdin, stdout
}

// The transcripts' own matching must be able to fail.
func TestMatches(t *testing.T) {
	got := []string{"a", "b", "c"}
	for _, want := range [][]string{{"a", "b", "c"}, {anyLines}, {"a", anyLines}, {anyLines, "c"}, {anyLines, "b", anyLines}, {"a", "b", "c", anyLines}} {
		if !matches(want, got) {
			t.Errorf("%q does not match", want)
		}
	}
	for _, want := range [][]string{{}, {"a"}, {"a", "b"}, {"a", "b", "c", "d"}, {anyLines, "b"}, {"b", anyLines}, {"A", "b", "c"}} {
		if matches(want, got) {
			t.Errorf("%q matches", want)
		}
	}
	const line = `{"travel_mm": 152.097039563, "pass": true}`
	for want, same := range map[string]bool{
		`{"travel_mm": 152.097039564, "pass": true}`:  true,
		`{"travel_mm": 152.097040563, "pass": true}`:  false,
		`{"travel_mm": 152.097039563, "pass": false}`: false,
		`{"travel_mm": 152.1, "pass": true}`:          false,
		`{"travel_mm": 152, "pass": true}`:            false,
	} {
		if sameLine(want, line) != same {
			t.Errorf("%s: same is not %v", want, same)
		}
	}
}

// Every `$ gudgeon` block of the README and of the manual gives what is printed
// under it.
func TestDocumentedCommands(t *testing.T) {
	readme, err := filepath.Abs("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	manual, err := filepath.Abs("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, doc := range []struct{ path, prefix string }{{readme, ""}, {manual, "//\t"}} {
		t.Run(filepath.Base(doc.path), func(t *testing.T) {
			text, err := os.ReadFile(doc.path)
			if err != nil {
				t.Fatal(err)
			}
			t.Chdir(t.TempDir())
			got, blocks := runDocument(t, string(text), doc.prefix)
			if blocks == 0 {
				t.Error("no command is shown")
			}
			if *rewrite {
				if err := os.WriteFile(doc.path, []byte(got), 0o666); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

// runDocument runs the blocks whose first line is `$ gudgeon`. A block ends at
// the first line that does not begin with prefix, in Markdown (prefix "") at
// the fence.
func runDocument(t *testing.T, text, prefix string) (got string, blocks int) {
	t.Helper()
	var b strings.Builder
	lines := strings.Split(text, "\n")
	inside := func(l string) bool {
		if prefix == "" {
			return !strings.HasPrefix(l, "```")
		}
		return strings.HasPrefix(l, prefix) || l == strings.TrimSpace(prefix)
	}
	for i := 0; i < len(lines); {
		if !strings.HasPrefix(lines[i], prefix+"$ gudgeon") {
			b.WriteString(lines[i] + "\n")
			i++
			continue
		}
		var block []string
		for ; i < len(lines) && inside(lines[i]); i++ {
			block = append(block, strings.TrimPrefix(strings.TrimPrefix(lines[i], prefix), strings.TrimSpace(prefix)))
		}
		var after string
		for len(block) > 0 && block[len(block)-1] == "" { // the comment's blank line after the block
			block, after = block[:len(block)-1], after+strings.TrimSpace(prefix)+"\n"
		}
		blocks++
		for l := range strings.SplitSeq(strings.TrimSuffix(runTranscript(t, strings.Join(block, "\n"), false), "\n"), "\n") {
			b.WriteString(strings.TrimRight(prefix+l, " \t") + "\n")
		}
		b.WriteString(after)
	}
	return strings.TrimSuffix(b.String(), "\n"), blocks
}

// The README's pictures are what the command draws.
func TestReadmePictures(t *testing.T) {
	for name, args := range map[string][]string{
		"linkage.svg": {"draw", "example:freshet"},
		"landing.svg": {"draw", "example:freshet", "--case", "landing"},
	} {
		var out, errs bytes.Buffer
		if code := run(append(args, "-o", "-"), nil, &out, &errs); code != 0 {
			t.Fatalf("%s: exit code %d: %s", name, code, errs.String())
		}
		file := testdata.Path("readme", name)
		if *rewrite {
			if err := os.WriteFile(file, out.Bytes(), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !samePicture(string(want), out.String()) {
			t.Errorf("testdata/readme/%s is not what gudgeon draws; write it anew with -rewrite and look at it", name)
		}
	}
}

// samePicture compares two SVGs, their numbers within a tenth of a point, which
// nobody sees.
func samePicture(want, got string) bool {
	near := func(a, b string) bool {
		x, errX := strconv.ParseFloat(a, 64)
		y, errY := strconv.ParseFloat(b, 64)
		return errX == nil && errY == nil && math.Abs(x-y) <= 0.1
	}
	return number.ReplaceAllString(want, "#") == number.ReplaceAllString(got, "#") &&
		slices.EqualFunc(number.FindAllString(want, -1), number.FindAllString(got, -1), near)
}
