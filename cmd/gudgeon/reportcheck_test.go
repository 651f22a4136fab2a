package main

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var crosscheckPictures = flag.String("pictures", "", "keep what the browser shows in this `folder`, to be looked at")

// writtenReport writes the report of the designs and returns its path.
func writtenReport(t *testing.T, designs ...string) string {
	t.Helper()
	if !*crosscheck {
		t.Skip("make crosscheck runs this")
	}
	path := filepath.Join(t.TempDir(), "report.html")
	var out, errs bytes.Buffer
	if code := run(append([]string{"report", "-o", path, "-q"}, designs...), nil, &out, &errs); code != 0 {
		t.Fatalf("report: exit code %d: %s", code, errs.String())
	}
	return path
}

// state is what the page shows of the position.
type state struct {
	Travel   string
	Value    string
	Cursors  []float64 // x of each line across a panel
	Dots     [][2]float64
	Pieces   []string
	Readings []string
	Axle     [2]float64 // of the first drawing on the page
	Spoken   string
}

const readState = `(() => {
	const all = (s) => Array.from(document.querySelectorAll(s));
	const number = (e, a) => Number(e.getAttribute(a));
	const linkage = document.querySelector("[data-linkage]");
	const groups = Array.from(linkage.querySelectorAll("[data-piece]"));
	const axle = groups.find((g) => g.querySelectorAll("path").length === 3).getBoundingClientRect();
	return {
		Travel: document.querySelector(".rule output").textContent,
		Value: document.querySelector("#travel").value,
		Cursors: all(".cursor line").map((e) => number(e, "x1")),
		Dots: all(".cursor circle").map((e) => [number(e, "cx"), number(e, "cy")]),
		Pieces: groups.map((g) => g.getAttribute("transform")),
		Readings: all("[data-column]").map((e) => e.textContent),
		Axle: [axle.x, axle.y],
		Spoken: document.querySelector("#travel").getAttribute("aria-valuetext"),
	};
})()`

func (b *chromium) state() state {
	b.t.Helper()
	var s state
	b.eval(readState, &s)
	return s
}

// TestCrosscheckReport opens a report from disk, moves it by keyboard, pointer
// and buttons, and finds the drawing, every cursor and every reading moved to
// what the sweep says there; nothing is logged, nothing asked for.
func TestCrosscheckReport(t *testing.T) {
	path := writtenReport(t, "example:freshet")
	b := startChromium(t)
	b.window(1280, 900, "light", false)
	b.open(path)
	start := b.state()
	if start.Travel != "0.0 mm" || len(start.Cursors) < 8 || len(start.Dots) < 20 {
		t.Fatalf("at the start: %s, %d cursors, %d dots", start.Travel, len(start.Cursors), len(start.Dots))
	}
	kept(t, "report-light.png", b.screenshot(false))

	b.eval(`document.querySelector("#travel").focus()`, nil)
	b.key("End", 35)
	end := b.state()
	if end.Travel != "153.9 mm" || end.Spoken != "153.9 mm of 153.9 mm" {
		t.Errorf("after End: %q, spoken %q", end.Travel, end.Spoken)
	}
	checkMoved(t, start, end)
	checkReadings(t, end, "57.50", "2.499", "2650")
	b.key("ArrowLeft", 37)
	if s := b.state(); s.Travel != "153.1 mm" {
		t.Errorf("a step back from the end: %q", s.Travel)
	}
	b.key("Home", 36)
	if back := b.state(); fmt.Sprint(back) != fmt.Sprint(start) {
		t.Errorf("back at the start it shows\n%v\nand at first\n%v", back, start)
	}
	checkAxle(t, b)
	checkPointer(t, b)
	b.eval(`(() => {
		Array.from(document.querySelectorAll("[data-station]")).find((e) => e.textContent === "sag").click();
		document.querySelector("#travel").blur();
		scrollTo(0, 0);
	})()`, nil)
	if s := b.state(); s.Travel != "48.5 mm" { // the station next to 48.2
		t.Errorf("the stop at sag goes to %s", s.Travel)
	}
	kept(t, "report-sag.png", b.screenshot(false))
	kept(t, "report-whole.png", b.screenshot(true))
	for _, c := range b.complaints(path) {
		t.Error(c)
	}
}

// checkMoved wants every piece, cursor and reading elsewhere than before, but
// for those of a value that does not change.
func checkMoved(t *testing.T, a, b state) {
	t.Helper()
	for i := range a.Cursors {
		if a.Cursors[i] == b.Cursors[i] {
			t.Errorf("cursor %d stays at %g px", i, a.Cursors[i])
		}
	}
	for i := range a.Dots {
		if a.Dots[i] == b.Dots[i] {
			t.Errorf("dot %d stays at %v", i, a.Dots[i])
		}
	}
	for i := range a.Pieces {
		if a.Pieces[i] == b.Pieces[i] {
			t.Errorf("piece group %d stays at %s", i, a.Pieces[i])
		}
	}
	for i := range a.Readings {
		if a.Readings[i] == b.Readings[i] {
			t.Errorf("reading %d stays at %s", i, a.Readings[i])
		}
	}
}

// checkReadings wants these texts among the readings.
func checkReadings(t *testing.T, s state, want ...string) {
	t.Helper()
	all := " " + strings.Join(s.Readings, " ") + " "
	for _, w := range want {
		if !strings.Contains(all, " "+w+" ") {
			t.Errorf("no reading %s in%s", w, all)
		}
	}
}

// checkAxle measures on the screen that the axle rises by the travel, in the
// scale that the drawing's own axis has there.
func checkAxle(t *testing.T, b *chromium) {
	t.Helper()
	low := b.state()
	b.eval(`(() => { const s = document.querySelector("#travel"); s.value = 200; s.dispatchEvent(new Event("input")); })()`, nil)
	high := b.state()
	var scale float64 // px on the screen a mm
	b.eval(`(() => {
		const frame = JSON.parse(document.getElementById("data").textContent).linkages[0].frame;
		const svg = document.querySelector("[data-linkage] svg");
		return (frame.bottom - frame.top) / (frame.yMax - frame.yMin) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
	})()`, &scale)
	if rise := (low.Axle[1] - high.Axle[1]) / scale; math.Abs(rise-153.86) > 0.5 {
		t.Errorf("the axle rises by %.2f mm on the screen, by 153.86 in the sweep", rise)
	}
	if forward := (high.Axle[0] - low.Axle[0]) / scale; math.Abs(forward-16.07) > 0.5 {
		t.Errorf("the axle moves forward by %.2f mm on the screen, by 16.07 in the sweep", forward)
	}
}

// checkPointer hovers over the first panel of curves: the cursor follows and
// goes back when the pointer leaves; a click stays.
func checkPointer(t *testing.T, b *chromium) {
	t.Helper()
	var at [3]float64 // middle of a panel, and the y outside
	b.eval(`(() => {
		const figure = document.querySelector("[data-figure]");
		figure.scrollIntoView();
		const box = figure.querySelector("svg").getBoundingClientRect();
		const frame = JSON.parse(document.getElementById("data").textContent).figures[0].panels[0].frame;
		const scale = box.width / figure.querySelector("svg").viewBox.baseVal.width;
		return [box.left + (frame.left + frame.right) / 2 * scale, box.top + (frame.top + frame.bottom) / 2 * scale, box.top - 5];
	})()`, &at)
	before := b.state()
	b.mouse("mouseMoved", at[0], at[1])
	over := b.state()
	if over.Travel == before.Travel || over.Value != before.Value {
		t.Errorf("under the pointer it shows %s, before %s; the rule at %s, before %s", over.Travel, before.Travel, over.Value, before.Value)
	}
	b.mouse("mouseMoved", at[0], at[2])
	if s := b.state(); s.Travel != before.Travel {
		t.Errorf("without the pointer it shows %s, before %s", s.Travel, before.Travel)
	}
	b.mouse("mouseMoved", at[0], at[1])
	b.mouse("click", at[0], at[1])
	if s := b.state(); s.Travel != over.Travel || s.Value == before.Value {
		t.Errorf("after a click it shows %s, the rule at %s", s.Travel, s.Value)
	}
}

// TestCrosscheckReportDark finds the page and every drawing dark where the
// system is, with letters that stand out.
func TestCrosscheckReportDark(t *testing.T) {
	path := writtenReport(t, "example:freshet")
	b := startChromium(t)
	b.window(1280, 900, "dark", false)
	b.open(path)
	dark := decodedPNG(t, b.screenshot(false))
	kept(t, "report-dark.png", b.screenshot(false))
	if bright := brightShare(dark); bright > 0.05 {
		t.Errorf("%.1f %% of the dark page is white", 100*bright)
	}
	var inks []string
	b.eval(`Array.from(new Set(Array.from(document.querySelectorAll("figure svg path, figure svg text"))
		.flatMap((e) => [getComputedStyle(e).fill, getComputedStyle(e).stroke])))`, &inks)
	light := regexp.MustCompile(`^rgb\((31, 41, 51|95, 107, 122|255, 255, 255|227, 232, 237|0, 114, 178|213, 94, 0|0, 158, 115)\)`)
	for _, ink := range inks {
		if light.MatchString(ink) {
			t.Errorf("%s of the light page is left in a drawing", ink)
		}
	}
	b.window(1280, 900, "light", false)
	if bright := brightShare(decodedPNG(t, b.screenshot(false))); bright < 0.6 {
		t.Errorf("%.1f %% of the light page is white", 100*bright)
	}
}

func decodedPNG(t *testing.T, data []byte) image.Image {
	t.Helper()
	picture, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// brightShare is the share of a picture that is nearly white.
func brightShare(picture image.Image) float64 {
	b := picture.Bounds()
	n := 0
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if r, g, bl, _ := picture.At(x, y).RGBA(); r > 0xf000 && g > 0xf000 && bl > 0xf000 {
				n++
			}
		}
	}
	return float64(n) / float64(b.Dx()*b.Dy())
}

// TestCrosscheckReportPrints prints on A4: some pages, all of that size, with
// every chapter and without the rule.
func TestCrosscheckReportPrints(t *testing.T) {
	path := writtenReport(t, "example:freshet")
	b := startChromium(t)
	b.window(1280, 900, "dark", false) // paper is white all the same
	b.open(path)
	b.eval(`(() => { const s = document.querySelector("#travel"); s.value = 120; s.dispatchEvent(new Event("input")); })()`, nil)
	b.eval(`dispatchEvent(new Event("beforeprint"))`, nil)
	if s := b.state(); s.Travel != "0.0 mm" || s.Value != "120" {
		t.Errorf("on paper it stands at %s, the rule at %s", s.Travel, s.Value)
	}
	b.eval(`dispatchEvent(new Event("afterprint"))`, nil)
	if s := b.state(); s.Travel != "92.3 mm" {
		t.Errorf("after printing it stands at %s", s.Travel)
	}
	pdf := b.pdf()
	kept(t, "report.pdf", pdf)
	boxes := regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`).FindAllSubmatch(pdf, -1)
	if len(boxes) < 5 || len(boxes) > 14 {
		t.Errorf("%d pages", len(boxes))
	}
	for _, box := range boxes {
		if w, h := string(box[1]), string(box[2]); !strings.HasPrefix(w, "594.9") && !strings.HasPrefix(w, "595") || !strings.HasPrefix(h, "841.") && !strings.HasPrefix(h, "842") {
			t.Errorf("a page of %s × %s pt", w, h)
		}
	}
}

// TestCrosscheckReportSizes finds nothing wider than the window, from a telephone to
// a wide screen, and the report of several designs as sound as that of one.
func TestCrosscheckReportSizes(t *testing.T) {
	path := writtenReport(t, "example:freshet", "example:freshet@lively", "example:beck")
	b := startChromium(t)
	for _, width := range []int{360, 800, 1280, 1920} {
		b.window(width, 800, "light", false)
		b.open(path)
		var wide float64
		b.eval(`document.documentElement.scrollWidth`, &wide)
		if wide > float64(width) {
			t.Errorf("the page is %g px wide in a window of %d", wide, width)
		}
		kept(t, fmt.Sprintf("report-several-%d.png", width), b.screenshot(true))
	}
	start := b.state()
	b.eval(`(() => { const s = document.querySelector("#travel"); s.value = 200; s.dispatchEvent(new Event("input")); })()`, nil)
	if end := b.state(); end.Travel == start.Travel || fmt.Sprint(end.Dots) == fmt.Sprint(start.Dots) {
		t.Errorf("the rule moves nothing: %s", end.Travel)
	}
	for _, c := range b.complaints(path) {
		t.Error(c)
	}
}

// TestCrosscheckReportWithoutScript finds every chapter and figure legible, and
// no rule that could not work.
func TestCrosscheckReportWithoutScript(t *testing.T) {
	path := writtenReport(t, "example:freshet")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	cut := regexp.MustCompile(`(?s)<script>.*?</script>`).ReplaceAll(text, nil)
	if err := os.WriteFile(path, cut, 0o666); err != nil {
		t.Fatal(err)
	}
	b := startChromium(t)
	b.window(1280, 900, "light", false)
	b.open(path)
	var words string
	b.eval(`document.body.innerText`, &words)
	for _, w := range []string{"Layout", "Kinematics", "Chain and brake", "Spring", "Loads", "Joints", "Requirements", "Cautions", "Inputs",
		"11639", "flank pressure", "153.86", "[[load_case]]"} {
		if !strings.Contains(words, w) {
			t.Errorf("%q cannot be read", w)
		}
	}
	var height float64
	b.eval(`document.querySelector(".rule").getBoundingClientRect().height`, &height)
	if height != 0 {
		t.Error("a rule is shown that does nothing")
	}
}

// TestCrosscheckAnimation finds a drawing that moves by itself, and stands
// still for who asks for less motion.
func TestCrosscheckAnimation(t *testing.T) {
	if !*crosscheck {
		t.Skip("make crosscheck runs this")
	}
	path := filepath.Join(t.TempDir(), "motion.svg")
	var out, errs bytes.Buffer
	if code := run([]string{"draw", "example:freshet", "--animate", "--wheels", "-o", path, "-q"}, nil, &out, &errs); code != 0 {
		t.Fatalf("draw: exit code %d: %s", code, errs.String())
	}
	rendered, err := exec.Command("rsvg-convert", path).Output() // which shows it as it begins
	if err != nil {
		t.Fatalf("rsvg-convert: %v", err)
	}
	checkInk(t, decodedPNG(t, rendered))
	b := startChromium(t)
	b.window(700, 600, "light", false)
	b.open(path)
	// Paused at a time, so that no clock decides what is seen: 2.4 s is the end
	// of the travel, 4.8 s the start again.
	at := func(seconds float64) (places []string) {
		b.eval(fmt.Sprintf(`document.getAnimations().forEach((a) => { a.pause(); a.currentTime = %g; });
			Array.from(document.querySelectorAll("[data-piece]")).map((g) => { const r = g.getBoundingClientRect(); return r.x.toFixed(1) + " " + r.y.toFixed(1); })`,
			1000*seconds), &places)
		return places
	}
	start, end, again := at(0), at(2.4), at(4.8)
	if len(start) < 12 {
		t.Errorf("%d groups", len(start))
	}
	for i := range start {
		if start[i] != again[i] {
			t.Errorf("group %d starts at %s and comes back to %s", i, start[i], again[i])
		}
	}
	moved := 0
	for i := range start {
		if start[i] != end[i] {
			moved++
		}
	}
	if moved < len(start)-1 { // the ground may stay where it is
		t.Errorf("%d of %d groups move", moved, len(start))
	}
	at(1.2)
	kept(t, "motion.png", b.screenshot(false))
	b.window(700, 600, "light", true)
	var running int
	b.eval(`document.getAnimations().length`, &running)
	if running != 0 {
		t.Errorf("%d animations run for who asks for less motion", running)
	}
	for _, c := range b.complaints(path) {
		t.Error(c)
	}
}
