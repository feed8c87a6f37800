package cover

import (
	"math"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/loads/wind"
)

// sideways is the horizontal wind on the cover and how it is shared out, strength
// level.
type sideways struct {
	along, out wind.Sideways
	lateral    Lateral
	width      float64 // in
	projection float64 // in
	spacing    float64 // in
	rafters    int
	lines      int
	posts      int // of all lines
}

// newSideways works out the horizontal wind on the cover as designed. Every post is
// counted in full; none shelters another.
func newSideways(m *model, d *design) sideways {
	p := &m.plan
	s := sideways{
		lateral: m.in.Lateral, width: p.width, projection: p.projection, spacing: p.spacing,
		rafters: len(p.rafters), lines: len(p.lines), posts: len(p.lines) * len(p.posts),
	}
	edge := d.rafter.section.Depth / math.Cos(p.angle)
	posts := 0.0
	for _, y := range p.lines {
		height := m.beamTop(y, d.rafter.section.Depth) - d.beam.section.Depth
		posts += float64(len(p.posts)) * d.post.section.Depth * height
	}
	beams := float64(len(p.lines)) * p.width * d.beam.section.Depth
	net := 0.0
	for _, c := range m.wind.across {
		net = max(net, math.Abs(c.high+c.low)/2)
	}
	s.along = wind.NewSideways(wind.Sideways{
		Velocity: m.wind.velocity, Angle: m.wind.roof.Angle, Edge: p.slope(p.projection) * edge, Posts: posts,
	})
	s.out = wind.NewSideways(wind.Sideways{
		Velocity: m.wind.velocity, Angle: m.wind.roof.Angle, Edge: p.width * edge, Posts: posts + beams,
		Plan: p.width * p.projection, Net: net, Rise: p.rise,
	})
	return s
}

// at is the sideways force on one joint of a kind, strength level, lb: on the ledger
// per foot. Where the house holds the cover, the roof edges go through the deck to
// the ledger and the posts and beams through the ties to the deck; else everything
// goes through ties, caps and posts to the ground.
func (s *sideways) at(kind connections.Kind) (along, out float64) {
	byHouseAlong := *s.lateral.Along == "house_diaphragm"
	byHouseOut := *s.lateral.Out == "house_diaphragm"
	switch kind {
	case connections.LedgerToHouse, connections.RafterToLedger:
		per := calc.Ft / s.width
		if kind == connections.RafterToLedger {
			per = s.spacing / s.width
		}
		if byHouseAlong {
			along = s.along.Force * per
			out = 6 * s.along.Force * s.projection / 2 / s.width * per // turning moment over the length of the ledger
		}
		if byHouseOut {
			out = max(out, s.out.Force*per)
		}
		return along, out
	case connections.RafterToBeam:
		n := float64(s.rafters * s.lines)
		return through(s.along, byHouseAlong) / n, through(s.out, byHouseOut) / n
	case connections.BeamToPost, connections.PostToBase, connections.BaseToGround, connections.Ground:
		n := float64(s.posts)
		return through(s.along, byHouseAlong) / n, through(s.out, byHouseOut) / n
	}
	return 0, 0
}

// through is the force that goes through ties and posts: what acts on posts and
// beams where the house holds the roof, else everything.
func through(s wind.Sideways, byHouse bool) float64 {
	if byHouse {
		return max(s.OnPosts, s.Least)
	}
	return s.Force
}

// asdWind is the factor on wind in allowable stress design (ASCE 7 2.4.1).
const asdWind = 0.6

// ways writes down what holds the cover sideways.
func (s *sideways) ways() []LateralWay {
	return []LateralWay{
		way("along the house", *s.lateral.Along, s.along),
		way("out from the house", *s.lateral.Out, s.out),
	}
}

func way(direction, system string, f wind.Sideways) LateralWay {
	var sheet calc.Sheet
	sheet.Append(f.Lines())
	sheet.Given("f_W", asdWind, "", "ASCE 7 2.4.1, factor on wind")
	sheet.Step("H", "f_W * F", asdWind*f.Force, "lb", "allowable stress design")
	out := LateralWay{
		Direction: direction, System: system, Demand: asdWind * f.Force, Lines: sheet.Lines(),
		Verdict: NotChecked, Reason: systemReasons[system],
	}
	if system == "none" {
		out.Verdict = Over
	}
	return out
}

// systemReasons says of each lateral system what is not checked, or what is wrong.
var systemReasons = map[string]string{
	"none":            "nothing holds the cover sideways: choose the house, knee braces or embedded posts",
	"house_diaphragm": "held by the house through deck and ledger; the deck, its nailing and the house are not checked",
	"knee_braces":     "held by knee braces; the braces, their bolts and the bending of the posts are not checked",
	"embedded_posts":  "held by posts in the ground; their embedment and bending are not checked",
}
