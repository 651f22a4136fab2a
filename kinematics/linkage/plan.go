package linkage

// Plan is how a linkage of one topology is computed: steps in the order in
// which points get placed. It holds no geometry and serves every linkage of
// the topology; it is safe for concurrent use.
type Plan struct {
	links   [][]int
	sliders []Slider
	shock   [2]int
	axle    int
	carrier int

	byAngle    bool // advances by the angle of a link, not by the stroke
	steps      []step
	rotorLinks []int     // rotor → link
	free       []int     // anchors that loops place, points
	loopSize   int       // unknowns of the largest loop
	loopImages int       // and the most images of one
	owner      []int     // point → link by which it is placed, 0 the frame
	carried    []carried // point → how its velocity follows
	needs      []bool    // points whose velocities are kept in a Path
	entries    []Entry
	rows       int // of Reactions
	slots      int // rows of Path.inv

	shockRows [2]int // of Reactions: on the shock at both mounts
}

// carried says from which other point of which link a point's velocity
// follows; link 0 for what stands still.
type carried struct{ base, link int }

// step is one stage of a plan with the constants of one geometry in it.
type step interface {
	clone() step
	bind(m *Motion)
	run(pt *Path, lo, hi int) int    // places and velocities; returns the first position that fails, or hi
	accelerate(pt *Path, lo, hi int) // after run
	react(rx *Reactions, pt *Path, lo, hi int)
	inputs() []int  // points whose velocities it asks for
	outputs() []int // points it places
}

// limited is a step that comes to an end where its gap closes: from 1 far from
// a dead point to 0 there, smooth in the stroke. rate is its derivative by
// stroke, up to a factor above 0 that both share.
type limited interface {
	step
	gap(pt *Path, i int) (g, rate float64)
}
