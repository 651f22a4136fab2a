package design

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gudgeon/cmd/internal/units"
	"gudgeon/joints"
)

// docSections returns the reference in doc.go, cut at its headings.
func docSections(t *testing.T) map[string]string {
	t.Helper()
	b, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	sections := map[string]string{}
	heading := ""
	for line := range strings.Lines(string(b)) {
		line = strings.TrimPrefix(strings.TrimPrefix(line, "//"), " ")
		if h, ok := strings.CutPrefix(line, "# "); ok {
			heading, _, _ = strings.Cut(strings.TrimSpace(h), ":")
			continue
		}
		sections[heading] += line
	}
	return sections
}

// Every key that is read stands in the reference with its unit and its star,
// and every key of the reference is read.
func TestReferenceListsEveryKey(t *testing.T) {
	sections := docSections(t)
	tables := map[string][]key{
		"[[slider]]": sliderKeys, "[shock]": shockKeys, "[rear]": rearKeys, "[front]": frontKeys, "[drivetrain]": drivetrainKeys,
		"[drivetrain.idler]": idlerKeys, "[brake]": brakeKeys, "[mass]": massKeys, "[spring]": append(append([]key{}, coilKeys...), airKeys[1:]...),
		"[spring.bumper]": bumperKeys, "[[load_case]]": loadCaseKeys, "[[require]]": requireKeys, "[material.NAME]": materialKeys,
		"[tolerance]": toleranceKeys,
		"[[joint]]":   jointKeys, "Loads": loadKeys, "Loads from the linkage": tieKeys,
		"Each part of a bolt's stack": layerKeys, "[joint.across] of a bolt": acrossKeys, "middle and outer of a pin": lugKeys,
	}
	for name, k := range jointKinds {
		tables["[[joint]] of kind "+name] = k.keys
	}
	for heading, keys := range tables {
		listed := map[string]string{}
		for _, m := range regexp.MustCompile(`(?m)^\t([a-z_]+)( \*)?(?: +(.*))?$`).FindAllStringSubmatch(sections[heading], -1) {
			if _, ok := listed[m[1]]; ok {
				t.Errorf("%s: %s is listed twice", heading, m[1])
			}
			listed[m[1]] = m[2] + "|" + m[3]
		}
		for _, k := range keys {
			if k.example == "" {
				continue // a table of its own
			}
			star, what, _ := strings.Cut(listed[k.name], "|")
			if _, ok := listed[k.name]; !ok {
				t.Errorf("%s: %s is not in the reference", heading, k.name)
			} else if (star != "") != k.required {
				t.Errorf("%s: %s: required %v, but the reference has %q", heading, k.name, k.required, star)
			}
			if k.unit != units.Number && !strings.Contains(what, k.unit.Plain()) {
				t.Errorf("%s: %s: %q does not name %s", heading, k.name, what, k.unit.Plain())
			}
			delete(listed, k.name)
		}
		for name := range listed {
			t.Errorf("%s: %s is in the reference and not read", heading, name)
		}
	}
}

// codes returns the codes that the reference lists.
func codes(t *testing.T) map[string]bool {
	out := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^\t([a-z0-9-]+) {2,}`).FindAllStringSubmatch(docSections(t)["Diagnostics"], -1) {
		out[m[1]] = true
	}
	return out
}

// laterCodes are those that no file shows by being read: the place of each is
// tested in locate_test.go, or its size in limits_test.go.
var laterCodes = map[string]bool{
	"too-large": true, "no-such-variant": true, "no-such-figure": true, "mobility": true, "dead-point": true, "failed": true, "one-spring": true,
}

// Every code of the reference has a file in designs/bad, and the reference has
// every code.
func TestEveryCodeHasAFile(t *testing.T) {
	listed, shown := codes(t), map[string]bool{}
	for _, name := range badFiles(t) {
		_, list := Parse(name, readFile(t, name))
		for _, d := range list {
			shown[d.Code] = true
			if !listed[d.Code] {
				t.Errorf("%s: %s is not in the reference", name, d.Code)
			}
		}
	}
	for c := range listed {
		if !shown[c] && !laterCodes[c] {
			t.Errorf("no file in designs/bad shows %s", c)
		}
	}
}

// The example of the package comment is read without a mistake.
func TestReferenceExample(t *testing.T) {
	src, _, _ := strings.Cut(docSections(t)[""], "[Parse]")
	_, src, _ = strings.Cut(src, "reference of the format.")
	if _, list := Parse("example.toml", []byte(strings.ReplaceAll(src, "\n\t", "\n"))); list != nil {
		t.Error(list)
	}
}

// The reference says which loads a kind takes and how it takes them from the
// linkage, as they are read.
func TestReferenceListsLoads(t *testing.T) {
	sections := docSections(t)
	for name, k := range jointKinds {
		text := strings.Join(strings.Fields(sections["[[joint]] of kind "+name]), " ")
		if want := "Loads: " + strings.Join(k.loads, ", ") + "."; !strings.Contains(text, want) {
			t.Errorf("%s: the reference has no %q", name, want)
		}
		words := slices.Clone(k.ties)
		for i, w := range words {
			if slices.Contains(k.form.required(), w) || w == "stress_per_force" {
				words[i] = w + " *"
			}
		}
		if want := "From the linkage: " + strings.Join(words, ", "); !strings.Contains(text, want) {
			t.Errorf("%s: the reference has no %q", name, want)
		}
	}
	if len(kindNames) != len(jointKinds) || len(kindNames) != len(joints.Kinds()) {
		t.Errorf("kinds %q, in the package %q", kindNames, joints.Kinds())
	}
}
