package kinematics

import (
	"fmt"
	"math"
	"strings"
)

// cases checks the load cases: their names, their numbers, and the tables
// that their loads need.
func (c *checker) cases() {
	seen := make(map[string]bool, len(c.d.Cases))
	for i := range c.d.Cases {
		l := &c.d.Cases[i]
		table := item("load_case", i)
		c.unique(table+".name", l.Name, "load case", seen)
		c.checkTravel(table+".travel", l.Travel)
		if l.Force != nil {
			c.number(table+".force[0]", l.Force.X, anyNumber("N"))
			c.number(table+".force[1]", l.Force.Y, anyNumber("N"))
		} else if c.d.Spring == nil {
			c.report(InputError{
				Field: table + ".force", Code: "missing-table", OnKey: true,
				Message: "a load case without force takes it from [spring], which is not given",
				Hint:    "add force = [x, y] in N, or [spring]",
			})
		}
		c.number(table+".lateral", l.Lateral, anyNumber("N"))
		if l.Cycles != 0 {
			c.number(table+".cycles", l.Cycles, positive(""))
		}
		c.checkDrive(table, l)
		c.checkBraking(table, l)
	}
}

func (c *checker) checkTravel(field string, t Travel) {
	if !t.OfFull {
		c.number(field, t.Value, naturalLength)
		return
	}
	c.number(field, t.Value, bounds{min: 0, max: 1, unit: "%", per: 0.01})
}

// checkDrive checks what pulls on the chain.
func (c *checker) checkDrive(table string, l *LoadCase) {
	c.number(table+".chain_tension", l.ChainTension, natural("N"))
	c.number(table+".pedal_force", l.PedalForce, natural("N"))
	if l.CrankLength != 0 {
		c.number(table+".crank_length", l.CrankLength, positiveLength)
	}
	if l.ChainTension != 0 {
		c.needs(table, "chain_tension", map[string]bool{"drivetrain": c.d.Drivetrain != nil, "front": c.d.Front != nil})
	}
	if l.PedalForce != 0 {
		c.needs(table, "pedal_force", map[string]bool{"drivetrain": c.d.Drivetrain != nil, "front": c.d.Front != nil})
		c.checkPedal(table, l)
	}
	if l.Gear == nil {
		return
	}
	if c.d.Drivetrain == nil {
		c.needs(table, "gear", map[string]bool{"drivetrain": false})
		return
	}
	c.gear(table+".gear", *l.Gear)
}

func (c *checker) checkPedal(table string, l *LoadCase) {
	if l.ChainTension != 0 {
		c.report(InputError{
			Field: table + ".pedal_force", Code: "one-drive", Message: "the chain must be pulled by either chain_tension or pedal_force",
			Found: "chain_tension is given", Also: table + ".chain_tension", OnKey: true,
		})
	}
	if l.CrankLength == 0 {
		c.report(InputError{
			Field: table + ".crank_length", Code: "missing-value", Message: "pedal_force needs crank_length, the arm it acts on", OnKey: true,
			Hint: "add crank_length in mm, for example 170",
		})
	}
}

func (c *checker) checkBraking(table string, l *LoadCase) {
	if c.number(table+".brake_force", l.BrakeForce, natural("N")) && l.BrakeForce != 0 {
		c.needs(table, "brake_force", map[string]bool{"brake": c.d.Brake != nil, "front": c.d.Front != nil})
	}
}

// needs reports the tables that a load needs and the design lacks. Loads at
// the ground need the rear wheel's radius too.
func (c *checker) needs(table, key string, given map[string]bool) {
	var missing []string
	for _, t := range []string{"drivetrain", "brake", "front"} {
		if is, asked := given[t]; asked && !is {
			missing = append(missing, "["+t+"]")
		}
	}
	if len(missing) > 0 {
		c.report(InputError{
			Field: table + "." + key, Code: "missing-table", Message: key + " needs " + strings.Join(missing, " and ") + ", not given in this design",
			Hint: "add " + strings.Join(missing, " and ") + ", or leave " + key + " out", OnKey: true,
		})
	}
	if _, ground := given["front"]; ground && c.d.Rear.WheelRadius == 0 && !c.radiusTold {
		c.radiusTold = true
		c.report(InputError{
			Field: "rear.wheel_radius", Code: "missing-value", Message: "wheel_radius is needed for " + key,
			Also: table + "." + key, OnKey: true, Hint: "add wheel_radius in mm",
		})
	}
}

// requirements checks the bounds; the command knows the figures.
func (c *checker) requirements() {
	for i := range c.d.Requirements {
		r := &c.d.Requirements[i]
		table := item("require", i)
		if r.Figure == "" {
			c.report(InputError{Field: table + ".figure", Code: "missing-value", Message: "a requirement needs the figure it bounds"})
		}
		low, high := r.Min, r.Max
		if low == nil && high == nil {
			c.report(InputError{
				Field: table, Code: "no-bound", Message: "a requirement needs min, max or both", OnKey: true,
				Hint: "add min = 5, for example, in the unit of the figure's name",
			})
		}
		ok := low == nil || c.bound(table+".min", *low)
		ok = (high == nil || c.bound(table+".max", *high)) && ok
		if ok && low != nil && high != nil && *low > *high {
			c.report(InputError{
				Field: table + ".min", Code: "out-of-range", Message: fmt.Sprintf("min must not be greater than max, %g", *high),
				Found: fmt.Sprintf("this is %g", *low), Also: table + ".max",
			})
		}
	}
}

func (c *checker) bound(field string, v float64) bool {
	return c.number(field, v, bounds{min: -math.MaxFloat64, max: math.MaxFloat64})
}
