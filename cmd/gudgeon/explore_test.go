package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/cmd/internal/design"
	"gudgeon/cmd/internal/report"
	"gudgeon/cmd/internal/study"
	"gudgeon/kinematics"
)

// exploration runs gudgeon in the current folder.
func exploration(t *testing.T, want exitCode, args ...string) (stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(args, strings.NewReader(""), &out, &errs); code != int(want) {
		t.Fatalf("%s: exit code %d, want %d\n%s", strings.Join(args, " "), code, want, errs.String())
	}
	return out.String(), errs.String()
}

// movable is a design of which a test writes the numbers anew: upper y, spring
// rate, stroke, spline length.
func movable(upper, rate, stroke, length string) string {
	return fmt.Sprintf(`name = "Sike 140"
[points]
main         = [  12,  36]
rear         = [-392,   4]
upper        = [ -58, %s]
rocker       = [  32, 276]
shock-rocker = [  62, 330]
shock-frame  = [ 205, 118]
axle         = [-436,  12]
[links]
frame     = ["main", "rocker", "shock-frame"]
chainstay = ["main", "rear"]
seatstay  = ["rear", "upper", "axle"]
rocker    = ["rocker", "upper", "shock-rocker"]
[shock]
mounts = ["shock-frame", "shock-rocker"]
stroke = %s
[rear]
axle = "axle"
wheel_radius = 372
[front]
axle = [812, 14]
wheel_radius = 374
head_angle = 64.5
[mass]
total = 100
centre = [60, 700]
[spring]
kind = "coil"
rate = %s
[[load_case]]
name = "landing"
travel = "100%%"
force = [-300, 4200]
[[load_case]]
name = "held"
travel = "40%%"
[[require]]
figure = "progression_percent"
min = 0
[[joint]]
name = "rocker spline"
kind = "spline"
standard = "ISO 4156"
module = 1.25
teeth = 28
pressure_angle = 30
root = "flat"
length = %s
cycles = 100000
shaft_material = "42CrMo4+QT"
hub_material = "7075-T6"
hub_outer_diameter = 52
shaft_class = 6
shaft_fit = "h"
hub_class = 6
hub_fit = "H"
at = "rocker"
link = "rocker"
through = ["upper"]
share = 0.1
`, upper, stroke, rate, length)
}

// rowsByColumn reads rows of CSV, each by its column.
func rowsByColumn(t *testing.T, text string) []map[string]string {
	t.Helper()
	records, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for k, name := range records[0] {
			row[name] = r[k]
		}
		rows = append(rows, row)
	}
	return rows
}

// Every candidate is what its file, written by hand, gives by itself: figures,
// pin forces, joints, and whether it can be built at all.
func TestExploreAgainstFiles(t *testing.T) {
	t.Chdir(t.TempDir())
	writeTestFile(t, "frame.toml", movable("318", `"450 lbf/in"`, "60", "18"))
	out, _ := exploration(t, exitDone, "explore", "frame.toml", "--move", "upper.y=-60:90:30",
		"--move", "spring.rate=70:90:20", "--move", "shock.stroke=±24:24", "--move", "joint[0].length=10:25:15")
	rows := rowsByColumn(t, out)
	if len(rows) != 6*2*3*2 {
		t.Fatalf("%d rows", len(rows))
	}
	status := map[string]int{}
	i := 0
	for _, upper := range []string{"258", "288", "318", "348", "378", "408"} {
		for _, rate := range []string{"70", "90"} {
			for _, stroke := range []string{"36", "60", "84"} {
				for _, length := range []string{"10", "25"} {
					row := rows[i]
					i++
					if row["candidate"] != strconv.Itoa(i) || row["upper.y_mm"] != upper || row["spring.rate_N_per_mm"] != rate ||
						row["shock.stroke_mm"] != stroke || row["joint[0].length_mm"] != length {
						t.Fatalf("row %d is %v", i, row)
					}
					status[row["status"]]++
					compareCandidate(t, row, movable(upper, rate, stroke, length))
				}
			}
		}
	}
	if status["ok"] < 20 || status["dead-point"] < 4 {
		t.Errorf("of %v the test sees too few", status)
	}
}

func compareCandidate(t *testing.T, row map[string]string, src string) {
	t.Helper()
	f, list := design.Parse("frame.toml", []byte(src))
	if list.HasErrors() {
		t.Fatal(list)
	}
	d, _ := f.Variant("")
	m, err := kinematics.New(d.Kinematics)
	if err != nil {
		if row["status"] == "ok" || row["reason"] == "" || row["travel_mm"] != "" || row["pin.main_N"] != "" || row["meets"] != "false" {
			t.Errorf("%v is %v", row, err)
		}
		return
	}
	if row["status"] != "ok" || row["reason"] != "" {
		t.Errorf("a design that works is %s: %s", row["status"], row["reason"])
		return
	}
	s := &m.Sweep(kinematics.SweepSettings{}).Summary
	for _, fig := range report.Figures {
		if v, ok := fig.Value(s); ok != (row[fig.Name] != "" || !report.Exists(v) && ok) || ok && report.Number(v) != row[fig.Name] {
			t.Errorf("%s is %q, want %v", fig.Name, row[fig.Name], v)
		}
	}
	cases := m.Loads()
	for _, p := range study.Peaks(cases) {
		if got, want := row["pin."+p.Point+"_N"], report.Number(r2.Norm(p.Force)); got != want {
			t.Errorf("pin %s is %s, want %s", p.Point, got, want)
		}
	}
	r, err := sizeJoint(d.Joints[0], m, cases)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := row["joint.rocker spline.safety"], report.Number(r.Safety); got != want {
		t.Errorf("safety is %s, want %s", got, want)
	}
	if want := strconv.FormatBool(r.Pass && s.ProgressionPercent >= 0); row["meets"] != want {
		t.Errorf("meets is %s, want %s", row["meets"], want)
	}
}

// Any number of workers writes the same bytes, whatever the walk and the form.
func TestExploreJobs(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, walk := range [][]string{
		{"--move", "rocker=±40:10", "--move", "shock.stroke=57.5:70:12.5"},
		{"--move", "rocker=±40", "--move", "spring.rate=±20", "--one-at-a-time", "--format", "jsonl"},
		{"--move", "rocker=±40", "--move", "load_case[0].travel=60:100:10", "--samples", "150", "--seed", "9"},
	} {
		args := append([]string{"explore", "example:freshet"}, walk...)
		want, _ := exploration(t, exitDone, append(args, "--jobs", "1")...)
		for _, jobs := range []string{"2", "7", "0"} {
			if got, _ := exploration(t, exitDone, append(args, "--jobs", jobs)...); got != want {
				t.Errorf("%v: --jobs %s writes other bytes", walk, jobs)
			}
		}
		if lines := strings.Count(want, "\n"); lines < 16 {
			t.Errorf("%v: only %d lines", walk, lines)
		}
	}
}

// The parts of an exploration, gathered, are the whole, in either form and from
// any order; so are rows gone on with from any place where a run may have been
// stopped.
func TestExploreParts(t *testing.T) {
	t.Chdir(t.TempDir())
	moves := []string{"--move", "upper.y=-60:90:30", "--move", "main.x=±4:4", "--move", "shock.stroke=60:84:12", "--figures", "travel_mm,pins,joints"}
	explore := func(more ...string) []string {
		return append(append([]string{"explore", "frame.toml"}, moves...), more...)
	}
	writeTestFile(t, "frame.toml", movable("318", "80", "60", "18"))
	exploration(t, exitDone, explore("-o", "whole.jsonl")...)
	exploration(t, exitDone, explore("-o", "whole.csv")...)
	whole, table := readTestFile(t, "whole.jsonl"), readTestFile(t, "whole.csv")
	if !strings.Contains(table, "dead-point") {
		t.Fatal("no candidate is one that cannot be built")
	}
	for _, n := range []int{1, 3, 16, 60} { // 54 candidates: some parts of 60 have none
		var parts []string
		for k := n; k >= 1; k-- {
			part := fmt.Sprintf("part%d-%d.jsonl", k, n)
			exploration(t, exitDone, explore("--shard", fmt.Sprintf("%d/%d", k, n), "-o", part)...)
			parts = append(parts, part)
		}
		exploration(t, exitDone, append([]string{"gather", "-o", "all.jsonl"}, parts...)...)
		if readTestFile(t, "all.jsonl") != whole {
			t.Errorf("%d parts are not the whole", n)
		}
		if out, _ := exploration(t, exitDone, append([]string{"gather"}, parts...)...); out != table {
			t.Errorf("%d parts are not the whole as CSV", n)
		}
	}
	first := strings.Index(whole, "\n") + 1
	for _, cut := range []int{0, 1, first - 1, first, first + 1, first + 900, len(whole) / 2, len(whole) - 1, len(whole)} {
		writeRaw(t, "rows.jsonl", whole[:cut])
		exploration(t, exitDone, explore("--resume", "rows.jsonl")...)
		if readTestFile(t, "rows.jsonl") != whole {
			t.Errorf("cut off behind %d bytes and gone on with, it is not the whole", cut)
		}
	}
	part := readTestFile(t, "part2-3.jsonl")
	writeRaw(t, "rows.jsonl", part[:len(part)*2/3])
	exploration(t, exitDone, explore("--shard", "2/3", "--resume", "rows.jsonl")...)
	if readTestFile(t, "rows.jsonl") != part {
		t.Error("a part that was gone on with is not the part")
	}
	if left, _ := filepath.Glob(".*"); len(left) > 0 {
		t.Errorf("%v were left behind", left)
	}
}

func readTestFile(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func writeRaw(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// Where everything is required of candidates and none has it, the exit code is
// 1; rows from an earlier run count too.
func TestExploreJudged(t *testing.T) {
	t.Chdir(t.TempDir())
	writeTestFile(t, "frame.toml", movable("318", "80", "60", "0.5"))
	args := []string{"explore", "frame.toml", "--move", "joint[0].length=0.5:1", "--figures", "joints"}
	_, stderr := exploration(t, exitNotMet, args...)
	if !strings.Contains(stderr, "none of 5 candidates does") {
		t.Error(stderr)
	}
	exploration(t, exitNotMet, append(args, "--resume", "rows.jsonl")...)
	exploration(t, exitNotMet, append(args, "--resume", "rows.jsonl")...)
	exploration(t, exitDone, "explore", "frame.toml", "--move", "joint[0].length=0.5:60", "--figures", "joints")
	exploration(t, exitDone, "explore", "frame.toml", "--move", "joint[0].length=0.5:1", "--figures", "travel_mm") // not asked for, not judged
}

// A part of the largest sample is had without the rest of it, in no time and
// little memory.
func TestExploreHuge(t *testing.T) {
	t.Chdir(t.TempDir())
	out, _ := exploration(t, exitDone, "explore", "example:freshet", "--move", "rocker=±1", "--figures", "travel_mm",
		"--samples", "100000000", "--shard", "99999/100000", "--format", "jsonl")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	var row struct{ Candidate int }
	if err := json.Unmarshal([]byte(lines[1]), &row); err != nil || len(lines) != 1001 || row.Candidate != 99_998_001 {
		t.Errorf("%d lines, the first of candidate %d (%v)", len(lines), row.Candidate, err)
	}
}

// A file of joints alone can be explored too.
func TestExploreJoints(t *testing.T) {
	t.Chdir(t.TempDir())
	src := movable("318", "80", "60", "18")
	src = src[strings.Index(src, "[[joint]]"):strings.Index(src, `at = "rocker"`)] + "torque = 180\n"
	writeTestFile(t, "joint.toml", src)
	out, _ := exploration(t, exitDone, "explore", "joint.toml", "--move", "joint[0].length=10:30:10", "--move", "joint[0].teeth=±2")
	rows := rowsByColumn(t, out)
	if len(rows) != 15 || rows[0]["status"] != "ok" || rows[0]["joint.rocker spline.safety"] == "" {
		t.Errorf("%d rows, the first %v", len(rows), rows[0])
	}
	var last float64
	for _, k := range []int{2, 7, 12} { // longer at 28 teeth
		v, _ := strconv.ParseFloat(rows[k]["joint.rocker spline.safety"], 64)
		if !(v > last) {
			t.Errorf("a longer spline has a safety of %v after %v", v, last)
		}
		last = v
	}
}

// A design that meets a dead point can be explored for one that does not; one
// that is wrong in itself cannot.
func TestExploreFromDeadPoint(t *testing.T) {
	t.Chdir(t.TempDir())
	writeTestFile(t, "frame.toml", movable("318", "80", "84", "18"))
	if _, stderr := exploration(t, exitInput, "sweep", "frame.toml"); !strings.Contains(stderr, "dead point") {
		t.Fatal(stderr)
	}
	out, stderr := exploration(t, exitDone, "explore", "frame.toml", "--move", "shock.stroke=60:84:12")
	rows := rowsByColumn(t, out)
	if len(rows) != 3 || rows[0]["status"] != "ok" || rows[0]["joint.rocker spline.safety"] == "" || rows[0]["pin.main_N"] == "" ||
		rows[2]["status"] != "dead-point" || rows[2]["travel_mm"] != "" || !strings.Contains(rows[2]["reason"], "in line") {
		t.Errorf("%v", rows)
	}
	if !strings.Contains(stderr, "1 of 3 candidates cannot be built: 1 dead-point") {
		t.Error(stderr)
	}
	writeTestFile(t, "frame.toml", strings.Replace(movable("318", "80", "60", "18"), `"upper", "axle"`, `"axle"`, 1))
	exploration(t, exitInput, "explore", "frame.toml", "--move", "shock.stroke=±5")
}

// A file of rows takes the place of the one that was there whole, under its
// permissions and behind its links; a device is written to as it is; a disk that
// is full is told.
func TestExploreFiles(t *testing.T) {
	t.Chdir(t.TempDir())
	args := []string{"explore", "example:freshet", "--move", "rocker.x=±1:1", "--figures", "travel_mm", "--format", "csv", "-o"}
	want, _ := exploration(t, exitDone, args[:len(args)-1]...)
	writeRaw(t, "old.csv", "old")
	if err := os.Chmod("old.csv", 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("old.csv", "link.csv"); err != nil {
		t.Skip(err)
	}
	exploration(t, exitDone, append(args, "link.csv")...)
	info, err := os.Lstat("old.csv")
	if err != nil || info.Mode() != 0o600 || readTestFile(t, "old.csv") != want {
		t.Errorf("behind the link is %v (%v)", info, err)
	}
	if info, err := os.Lstat("link.csv"); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Error("the link was replaced")
	}
	exploration(t, exitDone, append(args, os.DevNull)...)
	if err := os.Mkdir("folder", 0o777); err != nil {
		t.Fatal(err)
	}
	exploration(t, exitOutput, append(args, "folder")...)
	if _, err := os.Stat("/dev/full"); err == nil {
		if _, stderr := exploration(t, exitOutput, append(args, "/dev/full")...); !strings.Contains(stderr, "cannot be written") {
			t.Error(stderr)
		}
	}
	if names, _ := filepath.Glob(".*"); len(names) > 0 {
		t.Errorf("%v was left behind", names)
	}
}

// Ctrl-C ends with 130. A file of -o is then not there and nothing is left
// beside it; one of --resume holds whole rows and can be gone on with.
func TestExploreInterrupt(t *testing.T) {
	args := []string{"explore", "example:freshet", "--move", "rocker=±4:0.01", "--figures", "travel_mm"}
	for _, to := range [][]string{{"-o", "rows.jsonl"}, {"--resume", "rows.jsonl"}} {
		cmd := process(t, append(args, to...)...)
		var stderr bytes.Buffer
		cmd.Stderr = &stderr
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		for size, tries := int64(0), 0; size < 1<<16 && tries < 1000; tries++ {
			time.Sleep(5 * time.Millisecond)
			names, _ := filepath.Glob(filepath.Join(cmd.Dir, "*rows.jsonl*"))
			for _, n := range names {
				if info, err := os.Stat(n); err == nil {
					size = info.Size()
				}
			}
			hidden, _ := filepath.Glob(filepath.Join(cmd.Dir, ".*.part"))
			for _, n := range hidden {
				if info, err := os.Stat(n); err == nil {
					size = info.Size()
				}
			}
		}
		if err := cmd.Process.Signal(os.Interrupt); err != nil {
			t.Fatal(err)
		}
		if code := exitOf(t, cmd.Wait()); code != exitInterrupted || stderr.Len() > 0 {
			t.Errorf("%v: exit code %d, standard error %q", to, code, stderr.String())
		}
		left, err := os.ReadDir(cmd.Dir)
		if err != nil {
			t.Fatal(err)
		}
		if to[0] == "-o" {
			if len(left) > 0 {
				t.Errorf("%v was left", left)
			}
			continue
		}
		text, err := os.ReadFile(filepath.Join(cmd.Dir, "rows.jsonl"))
		if err != nil || len(text) < 1<<16 || text[len(text)-1] != '\n' {
			t.Errorf("%d bytes were left, not of whole rows (%v)", len(text), err)
		}
		for i, line := range bytes.Split(bytes.TrimSpace(text), []byte("\n")) {
			var row struct{ Candidate int }
			if err := json.Unmarshal(line, &row); err != nil || row.Candidate != i {
				t.Fatalf("line %d is %s", i+1, line)
			}
		}
	}
}

// The line of progress.
func TestProgress(t *testing.T) {
	start := time.Unix(0, 0)
	p := &progress{all: 1000, start: start, first: 200}
	if got, want := p.text(500, start.Add(10*time.Second)), "500 of 1000, 50 %, 30 a second, 17s left"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := p.text(200, start.Add(time.Second)), "200 of 1000, 20 %"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// BenchmarkExplore is candidates a second with all summary figures, by one
// worker and by two.
func BenchmarkExplore(b *testing.B) {
	src := movable("318", "80", "60", "18")
	for name, moves := range map[string][]string{
		"points":        {"rocker=±4"},
		"points,spring": {"rocker=±4", "spring.rate=±10"},
	} {
		for _, jobs := range []int{1, 2} {
			for _, figures := range [][]string{report.FigureNames()[:8], {"travel_mm", "pins", "joints"}} {
				b.Run(fmt.Sprintf("%s/jobs=%d/%s", name, jobs, figures[len(figures)-1]), func(b *testing.B) {
					f, _ := design.Parse("frame.toml", []byte(src))
					d, _ := f.Variant("")
					o := &exploreOptions{moves: moves, samples: whole{value: 1000}, asksSamples: true, jobs: whole{value: jobs}, figures: names{value: figures}}
					x, err := o.prepare(&loaded{input: inputOptions{file: "frame.toml"}, file: f, design: d})
					if err != nil {
						b.Fatal(err)
					}
					for b.Loop() {
						x.run(0, 1000, x.rows(report.CSV), func(*batch) error { return nil })
					}
					b.ReportMetric(1000*float64(b.N)/b.Elapsed().Seconds(), "candidates/s")
				})
			}
		}
	}
}
