package joints

import (
	"gudgeon/joints/check"
	"gudgeon/joints/member"
)

// memberModel makes a member a model.
type memberModel struct{ *member.Model }

// memberLoads are the parts of a member's load that a joint calls otherwise.
var memberLoads = map[string]string{"moment": "moment[0]", "moment_out_of_plane": "moment[1]", "torsion": "torque"}

func newMember(j Joint) (model, InputErrors) {
	m, errs := prepared(j, j.Member, member.New)
	return memberModel{m}, errs
}

func memberLoad(l Load) member.Load {
	return member.Load{Axial: l.Axial, Moment: l.Moment.X, MomentOutOfPlane: l.Moment.Y, Torsion: l.Torque}
}

func memberMistakes(l Load) InputErrors {
	return renamed(mistakesOf(member.CheckLoad(memberLoad(l))), memberLoads)
}

func (m memberModel) geometry() Geometry { return m.Geometry() }

func (m memberModel) checks(l Load) []check.Check { return m.Checks(memberLoad(l)) }

func (m memberModel) life([]Load) []check.Check { return nil }

func (m memberModel) remarks(loads []Load) []string { return m.Remarks(perLoad(loads, memberLoad)) }
