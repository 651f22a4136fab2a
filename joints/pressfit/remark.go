package pressfit

import (
	"fmt"
	"math"
	"strings"
)

// Remarks returns what a reader must know besides the checks: what was taken, where
// the fit is loose, what is left of a bearing's clearance, what is not judged.
func (m *Model) Remarks(loads []Load) []string {
	var out []string
	for _, r := range []string{m.defaultsRemark(), m.looseRemark(), m.freeRemark(), m.clearanceRemark(), m.strengthRemark(), m.wallRemark(), m.roundRemark(), m.gripRemark(loads)} {
		if r != "" {
			out = append(out, r)
		}
	}
	return out
}

func (m *Model) defaultsRemark() string {
	var taken []string
	if m.given.Friction == 0 {
		taken = append(taken, fmt.Sprintf("friction %g", m.fit.Friction))
	}
	if m.given.HubRz == 0 && m.given.ShaftRz == 0 {
		taken = append(taken, "smooth faces (hub_rz, shaft_rz)")
	}
	if len(taken) == 0 {
		return ""
	}
	return "not given, so taken: " + strings.Join(taken, ", ")
}

// looseRemark names the temperatures at which a fit may be loose.
func (m *Model) looseRemark() string {
	var at []string
	for _, s := range m.geometry.At {
		if s.Interference.Min <= 0 {
			at = append(at, fmt.Sprintf("%g °C (%s to %s µm)", s.Celsius, microns(s.Interference.Min), microns(s.Interference.Max)))
		}
	}
	if len(at) == 0 {
		return ""
	}
	return "the fit may be loose, so that the part creeps and frets, at " + strings.Join(at, ", ") + "; negative is play"
}

func (m *Model) freeRemark() string {
	if !m.geometry.Frees {
		return ""
	}
	side := "above"
	if m.geometry.FreeAt < assembly {
		side = "below"
	}
	return fmt.Sprintf("the loosest pair of the tolerances is free %s %.0f °C", side, m.geometry.FreeAt)
}

// clearanceRemark tells what is left of a bearing's clearance.
func (m *Model) clearanceRemark() string {
	switch {
	case !m.geometry.bearing:
		return ""
	case !m.geometry.cleared:
		return "clearance is not given, so only what the fit takes of it is told"
	}
	var at []string
	negative := false
	for _, s := range m.geometry.At {
		negative = negative || s.Clearance.Min < 0
		at = append(at, fmt.Sprintf("%s to %s µm at %g °C", microns(s.Clearance.Min), microns(s.Clearance.Max), s.Celsius))
	}
	out := "radial clearance left: " + strings.Join(at, ", ")
	if negative {
		out += "; negative is preload, usual in the cold with a tight seat in aluminium: where it is more than some µm take a larger clearance group"
	}
	return out
}

func (m *Model) strengthRemark() string {
	var names []string
	if m.hub.Yield == 0 {
		names = append(names, "hub ("+m.hub.Name+")")
	}
	if m.shaft.Yield == 0 {
		names = append(names, "shaft ("+m.shaft.Name+")")
	}
	if len(names) == 0 {
		return ""
	}
	return "stress is not judged in parts whose strength is not documented: " + strings.Join(names, ", ")
}

// wallRemark warns of a wall so thin that it does not stay round.
func (m *Model) wallRemark() string {
	if m.fit.Ring == InnerRing || m.fit.OuterDiameter >= 1.2*m.fit.Diameter {
		return ""
	}
	return fmt.Sprintf("the wall around the joint is thin, Do/d %.3g: it follows the inner part and what holds it outside", m.fit.OuterDiameter/m.fit.Diameter)
}

func (m *Model) roundRemark() string {
	if m.fit.LargestOuterDiameter == m.fit.OuterDiameter {
		return ""
	}
	return fmt.Sprintf("the outer part is not round: judged with %g and %g mm outside, the pressure varies between %.4g and %.4g MPa at the largest interference",
		m.fit.OuterDiameter, m.fit.LargestOuterDiameter, m.small.pressure(m.geometry.largestPressure().Interference.Max), m.geometry.largestPressure().Pressure.Max)
}

func (m *Model) gripRemark(loads []Load) string {
	for _, l := range loads {
		if l != (Load{}) && m.geometry.leastPressure().Interference.Min <= 0 {
			return "nothing grips at the least interference: the load needs a shoulder, a key or retaining compound"
		}
	}
	return ""
}

// microns writes mm as µm with one decimal, never -0.0.
func microns(mm float64) string { return fmt.Sprintf("%.1f", math.Round(10000*mm)/10+0) }
