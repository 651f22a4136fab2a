package kinematics

import (
	"errors"
	"fmt"
	"strings"

	"gudgeon/kinematics/linkage"
)

// index ties the names of a valid design to the numbers of its mechanism. The
// frame is link 0; the other links keep their order.
type index struct {
	point   map[string]int
	link    map[string]int
	links   []string // names by number
	axle    int
	carrier int // link that carries the wheel

	anyPoint []int // link → one of its points
}

func newIndex(d *Design) index {
	x := index{point: map[string]int{}, link: map[string]int{FrameLink: 0}, links: []string{FrameLink}}
	for k, p := range d.Points {
		x.point[p.Name] = k
	}
	for _, l := range d.Links {
		if l.Name != FrameLink {
			x.link[l.Name] = len(x.links)
			x.links = append(x.links, l.Name)
		}
	}
	x.anyPoint = make([]int, len(x.links))
	for _, l := range d.Links {
		x.anyPoint[x.link[l.Name]] = x.point[l.Points[0]]
	}
	x.axle = x.point[d.Rear.Axle]
	x.carrier = x.carrierOf(d, d.Rear.Axle, d.Rear.Link)
	return x
}

// carrierOf is the link that carries the point: the one named, or else the
// first moving link that lists it, or else the frame.
func (x *index) carrierOf(d *Design, point, named string) int {
	if named != "" {
		return x.link[named]
	}
	for _, l := range d.Links {
		if l.Name == FrameLink {
			continue
		}
		for _, p := range l.Points {
			if p == point {
				return x.link[l.Name]
			}
		}
	}
	return 0
}

func (x *index) mechanism(d *Design) *linkage.Mechanism {
	m := &linkage.Mechanism{
		Links:   make([][]int, len(x.links)),
		Shock:   [2]int{x.point[d.Shock.Mounts[0]], x.point[d.Shock.Mounts[1]]},
		Axle:    x.axle,
		Carrier: x.carrier,
	}
	for _, p := range d.Points {
		m.Points = append(m.Points, p.At)
	}
	for _, l := range d.Links {
		k := x.link[l.Name]
		for _, p := range l.Points {
			m.Links[k] = append(m.Links[k], x.point[p])
		}
	}
	for _, s := range d.Sliders {
		m.Sliders = append(m.Sliders, linkage.Slider{
			Point: x.point[s.Point], Link: x.link[s.Link], On: x.link[s.On],
			Guide: [2]int{x.point[s.Guide[0]], x.point[s.Guide[1]]},
		})
	}
	return m
}

// linkName is the name of a link or of the shock.
func (x *index) linkName(k int) string {
	if k == linkage.ShockMember {
		return ShockName
	}
	return x.links[k]
}

func (x *index) linkNames(l []int) []string {
	names := make([]string, len(l))
	for i, k := range l {
		names[i] = x.linkName(k)
	}
	return names
}

// mobility says in the design's names what linkage.Check found.
func (x *index) mobility(d *Design, err error) error {
	var e *linkage.MobilityError
	if !errors.As(err, &e) {
		return err
	}
	count := fmt.Sprintf("3 × %s − 2 × %s", number(e.Moving, "moving link"), number(e.Pins, "pin"))
	if e.Sliders > 0 {
		count += " − " + number(e.Sliders, "slider")
	}
	count += fmt.Sprintf(" = %d", e.Count())
	in := InputError{Field: "links", Code: "mobility", OnKey: true}
	links, loose := list(x.linkNames(e.Links)), list(x.linkNames(e.Loose))
	switch e.Fault {
	case linkage.TooFree:
		in.Message = "the linkage must have exactly one degree of freedom, " + count
		in.Found = "with the shock held, " + links + " can still move"
		in.Hint = "join the loose links by another pin, or take a link out"
	case linkage.TooStiff:
		in.Message = "the linkage must have exactly one degree of freedom, " + count
		in.Found = links + " cannot move"
		if links == "" {
			in.Found = "nothing can move"
		}
		in.Hint = "take a pin or a slider away, or put a link between"
	case linkage.HiddenRigid:
		in.Code = "rigid-part"
		in.Message = "the linkage must move as one, " + count + " hides a rigid part and a loose one"
		in.Found = links + " form one rigid part"
		if loose != "" {
			in.Found += "; " + loose + " can move with the shock held"
		}
		in.Hint = "pin the loose part where the rigid one has a pin too many"
	case linkage.ShockIdle:
		in.Field, in.Code, in.OnKey = "shock.mounts", "idle-shock", false
		in.Message = "the shock must be driven by the linkage"
		in.Found = "its length stays as it is while " + links + " can move"
		in.Hint = "mount the shock between two links that move against each other"
	case linkage.AxleHeld:
		in.Field, in.Code, in.OnKey = "rear.axle", "held-axle", false
		in.Message = "the rear axle must move with the linkage"
		in.Found = links + " stands still"
		in.Hint = "put the axle on a link that moves"
	default:
		in.Message = "the linkage cannot be put into an order of solving, " + count
	}
	return InputErrors{&in}
}

func number(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// list joins quoted names: `"a", "b" and "c"`.
func list(names []string) string {
	quoted := make([]string, len(names))
	for k, n := range names {
		quoted[k] = Quoted(n)
	}
	if n := len(quoted); n > 1 {
		return strings.Join(quoted[:n-1], ", ") + " and " + quoted[n-1]
	}
	return strings.Join(quoted, "")
}
