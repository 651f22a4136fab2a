package oracle

import (
	"fmt"
	"math/rand/v2"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/linkage"
)

// Kind is a topology that Random draws.
type Kind int

// The topologies. From the shock, those marked (dyads) can be solved one pair
// of bars after another; those marked (angle) can from some link's angle, not
// from the shock; the others need several equations at once.
const (
	SinglePivot       Kind = iota // shock straight on the swingarm (dyads)
	SinglePivotRocker             // swingarm, tie, rocker with the shock (dyads)
	FourBar                       // axle on the coupler, shock on the rocker (dyads)
	ShortLinks                    // four-bar with short frame links, shock on one (dyads)
	ConcentricAxle                // four-bar with a pin on the axle (dyads)
	ShockOnPin                    // four-bar, the shock on the pin of two links (dyads)
	FloatingShock                 // four-bar, the shock between two moving links (angle)
	SharedPin                     // six-bar, three links on one pin (dyads)
	StephensonI                   // six-bar, rear member guided from the rocker (dyads)
	WattII                        // six-bar, two four-bars in a row (dyads)
	WattI                         // six-bar, the shock on the last bar (angle)
	StephensonIII                 // six-bar, the shock's link on the coupler (angle)
	StephensonII                  // six-bar, rear member on three bars
	StephensonIIFloat             // the same, the shock between two moving links
	SliderOnFrame                 // rear member's carriage on a rail of the frame (dyads)
	SliderOnRocker                // swingarm's pin in a slot of the rocker (dyads)
	SliderFloating                // shock from swingarm to the rocker with the slot (angle)
	Kinds                         // how many
)

// String names the kind.
func (k Kind) String() string { return templates[k].name }

// Random draws a mechanism of a kind: every point of an example by up to
// spread mm to each side and up and down, until the result can be driven
// through the stroke that comes with it, in mm, and a tenth beyond at both
// ends, with a leverage within 0.8 … 6 and no dead point near. It panics where
// a hundred draws bring none.
func Random(rnd *rand.Rand, kind Kind) (*linkage.Mechanism, float64) {
	t := templates[kind]
	for range 100 {
		m := t.draw(rnd)
		if driveable(m, t.stroke) {
			return m, t.stroke
		}
	}
	panic(fmt.Sprintf("oracle: no %v can be driven", kind))
}

const (
	spread = 15.0 // mm
	// Of the Jacobian: examples of this size have 10 to 400; a dead point has
	// infinity.
	conditionFar = 2000.0
)

func driveable(m *linkage.Mechanism, stroke float64) bool {
	states, err := Trace(m, []float64{-0.1 * stroke, 0, 0.25 * stroke, 0.5 * stroke, 0.75 * stroke, stroke, 1.1 * stroke})
	if err != nil {
		return false
	}
	for _, s := range states {
		if l := s.Leverage(m); l < 0.8 || l > 6 || s.Condition > conditionFar {
			return false
		}
	}
	return true
}

// template is the example of a kind.
type template struct {
	name      string
	stroke    float64
	mechanism linkage.Mechanism
}

// draw moves the points. Links and sliders are shared with the template.
func (t template) draw(rnd *rand.Rand) *linkage.Mechanism {
	m := t.mechanism
	m.Points = make([]r2.Vec, len(t.mechanism.Points))
	for i, p := range t.mechanism.Points {
		m.Points[i] = r2.Add(p, r2.Vec{X: spread * (2*rnd.Float64() - 1), Y: spread * (2*rnd.Float64() - 1)})
	}
	return &m
}

// templates are invented, mm, x forward and y up from the crank's axis.
var templates = [Kinds]template{
	SinglePivot: {"single pivot", 48, linkage.Mechanism{
		// main, axle, shock arm, shock frame
		Points: []r2.Vec{{X: 38, Y: 66}, {X: -433, Y: 13}, {X: -110, Y: 214}, {X: 176, Y: 262}},
		Links:  [][]int{{0, 3}, {0, 1, 2}},
		Shock:  [2]int{3, 2}, Axle: 1, Carrier: 1,
	}},
	SinglePivotRocker: {"single pivot with rocker", 60, linkage.Mechanism{
		// main, axle, tie low, tie up, rocker, shock rocker, shock frame
		Points: []r2.Vec{{X: 14, Y: 158}, {X: -428, Y: 15}, {X: -146, Y: 198}, {X: -92, Y: 326}, {X: 4, Y: 312}, {X: 60, Y: 392}, {X: 172, Y: 124}},
		Links:  [][]int{{0, 4, 6}, {0, 1, 2}, {2, 3}, {4, 3, 5}},
		Shock:  [2]int{6, 5}, Axle: 1, Carrier: 1,
	}},
	FourBar: {"four-bar", 50, linkage.Mechanism{
		// main, rear, upper, rocker, shock rocker, shock frame, axle
		Points: []r2.Vec{{X: 12, Y: 36}, {X: -392, Y: 4}, {X: -58, Y: 318}, {X: 32, Y: 276}, {X: 62, Y: 330}, {X: 205, Y: 118}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 3, 5}, {0, 1}, {1, 2, 6}, {3, 2, 4}},
		Shock:  [2]int{5, 4}, Axle: 6, Carrier: 2,
	}},
	ShortLinks: {"four-bar with short links", 45, linkage.Mechanism{
		// low frame, low rear, up frame, up rear, axle, shock up, shock frame
		Points: []r2.Vec{{X: -54, Y: 30}, {X: 12, Y: 34}, {X: -8, Y: 246}, {X: -92, Y: 314}, {X: -434, Y: 14}, {X: 22, Y: 302}, {X: 190, Y: 84}},
		Links:  [][]int{{0, 2, 6}, {0, 1}, {2, 3, 5}, {1, 3, 4}},
		Shock:  [2]int{5, 6}, Axle: 4, Carrier: 3,
	}},
	ConcentricAxle: {"pin on the axle", 50, linkage.Mechanism{
		// main, axle, upper, rocker, shock rocker, shock frame
		Points: []r2.Vec{{X: 12, Y: 56}, {X: -432, Y: 8}, {X: -58, Y: 318}, {X: 32, Y: 276}, {X: 62, Y: 330}, {X: 205, Y: 118}},
		Links:  [][]int{{0, 3, 5}, {0, 1}, {1, 2}, {3, 2, 4}},
		Shock:  [2]int{5, 4}, Axle: 1, Carrier: 1,
	}},
	ShockOnPin: {"shock on a pin", 45, linkage.Mechanism{
		// main, rear, upper, rocker, shock frame, axle
		Points: []r2.Vec{{X: 8, Y: 54}, {X: -372, Y: 34}, {X: -60, Y: 234}, {X: -6, Y: 352}, {X: 186, Y: 202}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 3, 4}, {0, 1}, {1, 2, 5}, {3, 2}},
		Shock:  [2]int{2, 4}, Axle: 5, Carrier: 2,
	}},
	FloatingShock: {"floating shock", 50, linkage.Mechanism{
		// main, rear, upper, rocker, shock rocker, shock stay, axle
		Points: []r2.Vec{{X: -2, Y: 14}, {X: -354, Y: -8}, {X: -42, Y: 356}, {X: 0, Y: 252}, {X: 92, Y: 300}, {X: 62, Y: 84}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 3}, {0, 1, 5}, {1, 2, 6}, {3, 2, 4}},
		Shock:  [2]int{5, 4}, Axle: 6, Carrier: 2,
	}},
	SharedPin: {"three links on a pin", 45, linkage.Mechanism{
		// main, rear, upper, rocker, tie bell, bell, shock bell, shock frame, axle
		Points: []r2.Vec{{X: 12, Y: 36}, {X: -392, Y: 4}, {X: -58, Y: 318}, {X: 32, Y: 266}, {X: 40, Y: 400}, {X: 110, Y: 366}, {X: 150, Y: 410}, {X: 250, Y: 190}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 3, 5, 7}, {0, 1}, {1, 2, 8}, {3, 2}, {2, 4}, {5, 4, 6}},
		Shock:  [2]int{7, 6}, Axle: 8, Carrier: 2,
	}},
	StephensonI: {"Stephenson I", 50, linkage.Mechanism{
		// rocker, shock rocker, shock frame, main, tie rocker, tie arm, rear, rod rocker, rod rear, axle
		Points: []r2.Vec{{X: 32, Y: 276}, {X: 62, Y: 330}, {X: 205, Y: 118}, {X: 12, Y: 36}, {X: -40, Y: 290}, {X: -130, Y: 92}, {X: -392, Y: 4}, {X: -58, Y: 318}, {X: -372, Y: 96}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 2, 3}, {0, 1, 4, 7}, {4, 5}, {3, 5, 6}, {6, 8, 9}, {7, 8}},
		Shock:  [2]int{2, 1}, Axle: 9, Carrier: 4,
	}},
	WattII: {"Watt II", 45, linkage.Mechanism{
		// shock rocker, shock frame, rocker, tie rocker, tie bell, bell, upper, main, rear, axle
		Points: []r2.Vec{{X: 126, Y: 410}, {X: 290, Y: 136}, {X: 128, Y: 316}, {X: 82, Y: 438}, {X: -86, Y: 436}, {X: 72, Y: 336}, {X: -18, Y: 362}, {X: -26, Y: 14}, {X: -352, Y: -20}, {X: -436, Y: 12}},
		Links:  [][]int{{1, 2, 5, 7}, {0, 2, 3}, {3, 4}, {4, 5, 6}, {6, 8, 9}, {7, 8}},
		Shock:  [2]int{1, 0}, Axle: 9, Carrier: 4,
	}},
	WattI: {"Watt I", 45, linkage.Mechanism{
		// main, rear, upper, rocker, bar stay, bar rocker, knee, shock frame, axle
		Points: []r2.Vec{{X: 12, Y: 36}, {X: -392, Y: 4}, {X: -58, Y: 318}, {X: 32, Y: 276}, {X: -150, Y: 300}, {X: 20, Y: 360}, {X: -60, Y: 420}, {X: 180, Y: 330}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 3, 7}, {0, 1}, {1, 2, 4, 8}, {3, 2, 5}, {4, 6}, {5, 6}},
		Shock:  [2]int{7, 6}, Axle: 8, Carrier: 2,
	}},
	StephensonIII: {"Stephenson III", 45, linkage.Mechanism{
		// main, rear, upper, rocker, push stay, push link, link, shock link, shock frame, axle
		Points: []r2.Vec{{X: -54, Y: 48}, {X: -382, Y: 64}, {X: -94, Y: 350}, {X: -44, Y: 258}, {X: -204, Y: 184}, {X: -32, Y: 178}, {X: -24, Y: 62}, {X: -52, Y: 250}, {X: 170, Y: 158}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 3, 6, 8}, {0, 1}, {1, 2, 4, 9}, {3, 2}, {4, 5}, {6, 5, 7}},
		Shock:  [2]int{8, 7}, Axle: 9, Carrier: 2,
	}},
	StephensonII: {"Stephenson II", 45, linkage.Mechanism{
		// main, rear, rocker, upper bar rocker, lower bar rocker, upper bar stay, lower bar stay, shock rocker, shock frame, axle
		Points: []r2.Vec{{X: 34, Y: 18}, {X: -422, Y: -8}, {X: 54, Y: 238}, {X: -94, Y: 306}, {X: -56, Y: 254}, {X: -252, Y: 226}, {X: -218, Y: 54}, {X: 90, Y: 322}, {X: 228, Y: 100}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 2, 8}, {0, 1}, {1, 5, 6, 9}, {2, 3, 4, 7}, {3, 5}, {4, 6}},
		Shock:  [2]int{8, 7}, Axle: 9, Carrier: 2,
	}},
	StephensonIIFloat: {"Stephenson II with floating shock", 45, linkage.Mechanism{
		// main, rear, rocker, upper bar rocker, lower bar rocker, upper bar stay, lower bar stay, shock rocker, shock stay, axle
		Points: []r2.Vec{{X: 0, Y: 68}, {X: -400, Y: -30}, {X: -4, Y: 298}, {X: -104, Y: 332}, {X: -80, Y: 228}, {X: -274, Y: 224}, {X: -184, Y: 48}, {X: 68, Y: 346}, {X: 18, Y: 90}, {X: -436, Y: 12}},
		Links:  [][]int{{0, 2}, {0, 1, 8}, {1, 5, 6, 9}, {2, 3, 4, 7}, {3, 5}, {4, 6}},
		Shock:  [2]int{8, 7}, Axle: 9, Carrier: 2,
	}},
	SliderOnFrame: {"slider on the frame", 50, linkage.Mechanism{
		// rail low, carriage, rail high, upper, rocker, shock rocker, shock frame, axle
		Points:  []r2.Vec{{X: 28, Y: -6}, {X: 28, Y: 42}, {X: 28, Y: 118}, {X: -84, Y: 296}, {X: 8, Y: 258}, {X: 30, Y: 326}, {X: 168, Y: 110}, {X: -429, Y: 4}},
		Links:   [][]int{{0, 2, 4, 6}, {1, 3, 7}, {4, 3, 5}},
		Sliders: []linkage.Slider{{Point: 1, Link: 1, Guide: [2]int{0, 2}, On: 0}},
		Shock:   [2]int{6, 5}, Axle: 7, Carrier: 1,
	}},
	SliderOnRocker: {"slider on the rocker", 45, linkage.Mechanism{
		// main, axle, pin, slot near, slot far, rocker, shock rocker, shock frame
		Points:  []r2.Vec{{X: 60, Y: 48}, {X: -428, Y: 15}, {X: -148, Y: 328}, {X: -72, Y: 244}, {X: -112, Y: 310}, {X: 34, Y: 246}, {X: 86, Y: 392}, {X: 146, Y: 172}},
		Links:   [][]int{{0, 5, 7}, {0, 1, 2}, {5, 3, 4, 6}},
		Sliders: []linkage.Slider{{Point: 2, Link: 1, Guide: [2]int{3, 4}, On: 2}},
		Shock:   [2]int{7, 6}, Axle: 1, Carrier: 1,
	}},
	SliderFloating: {"slider on the rocker with floating shock", 45, linkage.Mechanism{
		// main, axle, pin, slot near, slot far, rocker, shock rocker, shock arm
		Points:  []r2.Vec{{X: 46, Y: 72}, {X: -428, Y: 15}, {X: -162, Y: 240}, {X: -6, Y: 272}, {X: -164, Y: 246}, {X: -44, Y: 238}, {X: 82, Y: 372}, {X: 26, Y: 108}},
		Links:   [][]int{{0, 5}, {0, 1, 2, 7}, {5, 3, 4, 6}},
		Sliders: []linkage.Slider{{Point: 2, Link: 1, Guide: [2]int{3, 4}, On: 2}},
		Shock:   [2]int{7, 6}, Axle: 1, Carrier: 1,
	}},
}
