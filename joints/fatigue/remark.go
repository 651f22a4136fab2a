package fatigue

import (
	"fmt"
	"strings"

	"gudgeon/joints/material"
)

// Remarks returns what a reader of the result must know besides it; loads are
// those of all load cases.
func (m *Model) Remarks(loads []Load) []string {
	var out []string
	add := func(words string) {
		if words != "" {
			out = append(out, words)
		}
	}
	add(m.defaultsRemark())
	add(m.sensitivityRemark())
	note := func(holds func(Load) bool, words string) {
		if n := m.counted(loads, holds); n > 0 {
			add(fmt.Sprintf("%s (%d of %d load cases)", words, n, len(loads)))
		}
	}
	note(func(l Load) bool { return l.Cycles > 0 && l.Cycles < m.least },
		fmt.Sprintf("fewer than %g cycles are judged as so many: the line begins there", m.least))
	note(m.beyond, fmt.Sprintf("no fatigue is told: more cycles than %.3g, to which the endurance of this metal belongs", m.curve.n2))
	note(func(l Load) bool { return l.Cycles > 0 && l.Amplitude > 0 && !m.hurts(l) },
		"cycles wholly in compression are taken to do no harm, which residual tension would undo")
	return out
}

// counted returns the number of loads under which a condition holds.
func (m *Model) counted(loads []Load, holds func(Load) bool) int {
	n := 0
	for _, l := range loads {
		if holds(l) {
			n++
		}
	}
	return n
}

func (m *Model) defaultsRemark() string {
	g, d := m.given, m.detail
	var taken []string
	note := func(left bool, words string) {
		if left {
			taken = append(taken, words)
		}
	}
	if d.welded() {
		note(g.Slope == 0, fmt.Sprintf("slope %g", d.Slope))
	} else {
		note(g.Loading == "", "loading bending")
		note(g.Surface == "" && g.SurfaceFactor == 0, "surface machined")
		note(g.Reliability == 0, "reliability 90 %")
		note(g.MeanStress == "", "mean_stress goodman")
		note(m.geometry.StressConcentration == 1 && g.StressConcentration == 0, "stress_concentration 1 (smooth)")
	}
	if len(taken) == 0 {
		return ""
	}
	return "not given, so taken: " + strings.Join(taken, ", ")
}

// sensitivityRemark says where all of Kt counts for want of knowledge.
func (m *Model) sensitivityRemark() string {
	d := m.detail
	if d.welded() || d.NotchSensitivity > 0 || m.geometry.StressConcentration <= 1 {
		return ""
	}
	if _, ok := d.knownSensitivity(); ok {
		return ""
	}
	if d.Family == material.Steel {
		return fmt.Sprintf("all of Kt counts: Neuber's constant is on record for Rm %.0f to %.0f MPa only", neuberLeast, neuberLargest)
	}
	return fmt.Sprintf("all of Kt counts: no notch sensitivity of %s is on record", d.Family)
}
