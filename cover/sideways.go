package cover

import (
	"math"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/loads"
	"patiocover/loads/seismic"
	"patiocover/loads/wind"
)

// verticalShare is the part of SDS that the earthquake adds to the dead load or takes
// from it, factor (ASCE 7-16 12.4.2.2, from memory).
const verticalShare = 0.2

// A push is the horizontal load in one direction: wind, and earthquake where the site
// gives one. Forces are of strength level.
type push struct {
	direction string // in words
	system    string // what the user says holds it
	wind      wind.Sideways
	quake     seismic.Shear
	refusal   seismic.Refusal
	shaken    bool              // the earthquake is computed
	rule      loads.Combination // with the earthquake, that which asks most sideways
}

// sideways is the horizontal load on the cover and how it is shared out.
type sideways struct {
	along, out push
	vertical   float64 // part of the dead load that the earthquake adds or takes, factor
	low        float64 // part of the weight that is below the roof: beams and half of the posts
	width      float64 // in
	projection float64 // in
	outermost  float64 // in, farthest beam line from the house
	attached   bool    // a ledger ties the cover to the house
	spacing    float64 // in
	rafters    int     // ties of rafters to beams, over all lines
	posts      int     // of all lines
}

// push is that of a direction.
func (s *sideways) push(direction int) *push {
	if direction == outward {
		return &s.out
	}
	return &s.along
}

// newSideways works out the horizontal load on the cover as designed. Every post is
// counted in full; none shelters another.
func newSideways(m *model, w trio) sideways {
	p := &m.plan
	s := sideways{
		width: p.width, projection: p.projection, spacing: p.spacing, outermost: p.lines[len(p.lines)-1], attached: p.attached,
		rafters: len(p.rafters) * len(p.lines), posts: len(p.lines) * len(p.posts),
	}
	s.along = push{direction: "along the house", system: *m.in.Lateral.Along}
	s.out = push{direction: "out from the house", system: *m.in.Lateral.Out}
	s.blow(m, w)
	s.shake(m, w)
	return s
}

// postArea is the area of all posts seen from one side, in², and their volume, in³.
func (m *model) postArea(w trio) (area, volume float64) {
	for i := range m.plan.lines {
		height := m.postHeight(i, w.rafter.section.Depth, w.beam.section.Depth)
		area += float64(len(m.plan.posts)) * w.post.section.Widest() * height
		volume += float64(len(m.plan.posts)) * w.post.section.Area() * height
	}
	return area, volume
}

// blow works out the wind in both directions.
func (s *sideways) blow(m *model, w trio) {
	p := &m.plan
	edge := w.rafter.section.Depth / math.Cos(p.angle)
	posts, _ := m.postArea(w)
	beams := float64(len(p.lines)) * p.width * w.beam.section.Depth
	net := 0.0
	for _, c := range m.wind.across {
		net = max(net, math.Abs(c.high+c.low)/2)
	}
	s.along.wind = wind.NewSideways(wind.Sideways{
		Velocity: m.wind.velocity, Angle: m.wind.roof.Angle, Edge: p.slope(p.projection) * edge, Posts: posts,
	})
	s.out.wind = wind.NewSideways(wind.Sideways{
		Velocity: m.wind.velocity, Angle: m.wind.roof.Angle, Edge: p.width * edge, Posts: posts + beams,
		Plan: p.width * p.projection, Net: net, Rise: p.rise,
	})
}

// shakes reports whether the site gives its earthquake.
func (s Site) shakes() bool {
	return given(s.SeismicShort, s.SeismicSecond, s.SeismicMapped) && s.SeismicCategory != nil
}

// shake works out the earthquake in both directions, where the site gives it.
func (s *sideways) shake(m *model, w trio) {
	in := m.in.Site
	if !in.shakes() {
		return
	}
	p := &m.plan
	area := p.width * p.slope(p.projection)
	roof := m.layers(false)*area + w.rafter.most*p.slope(p.projection)*float64(len(p.rafters))
	roof += seismic.SnowShare(m.edition, m.snow.balanced.Flat) * m.snow.even(0) * p.width * p.projection
	_, volume := m.postArea(w)
	low := w.beam.most*p.width*float64(len(p.lines)) + w.post.most*volume/w.post.section.Area()/2
	s.low = low / (roof + low)
	s.vertical = verticalShare * *in.SeismicShort
	site := seismic.Site{Short: *in.SeismicShort, Second: *in.SeismicSecond, Mapped: *in.SeismicMapped, Importance: 1}
	for _, way := range []*push{&s.along, &s.out} {
		system := seismic.OwnPosts()
		if way.byHouse() {
			system = seismic.HouseWalls()
		}
		way.shaken, way.rule = true, strongest(loads.ASDEarthquake(m.edition))
		way.quake = seismic.NewShear(site, system, roof+low, p.mean())
		way.refusal = system.Permits(*in.SeismicCategory, p.mean())
	}
}

func (p *push) byHouse() bool { return p.system == "house_diaphragm" }

// A share is what one joint takes of the loads of one direction, strength level, lb.
type share struct{ wind, quake float64 }

// by takes a force or moment per pound of the push.
func (s share) by(factor float64) share { return share{s.wind * factor, s.quake * factor} }

// orNothing is not a number where x is none, so that nothing passes by it.
func (s share) orNothing(x float64) share { return share{s.wind + 0*x, s.quake + 0*x} }

// at is the sideways force on one joint of a kind, on the ledger per foot. Where the
// house holds the cover, the roof goes through the deck to the ledger and the posts and
// beams through the ties to the deck; else everything goes through ties, caps and posts
// to the ground.
func (s *sideways) at(kind connections.Kind) (along, out share) {
	switch kind {
	case connections.LedgerToHouse:
		return s.onLedger(calc.Ft)
	case connections.RafterToLedger:
		along, out := s.onLedger(s.spacing)
		if s.along.byHouse() { // the edge rafters are the chords of the deck; all hangers are alike
			c := s.chord()
			out = share{max(out.wind, c.wind), max(out.quake, c.quake)}
		}
		return along, out
	case connections.RafterToBeam:
		return s.through(&s.along, s.rafters), s.through(&s.out, s.rafters)
	case connections.BeamToPost, connections.PostToBase, connections.BaseToGround, connections.Ground:
		return s.through(&s.along, s.posts), s.through(&s.out, s.posts)
	}
	return share{}, share{}
}

// onLedger is the force on a length of ledger. A force along the house turns the roof
// about the ledger: the turning moment M pulls at its ends with 6 M / L² per length, as in
// a beam of that depth. A ledger beside posts of the cover's own is stiffer than they are
// and draws the push first: it is fastened for all of it.
func (s *sideways) onLedger(length float64) (along, out share) {
	part := length / s.width
	if s.along.byHouse() || s.attached {
		turn, per := s.turning(), 6/s.width*part
		along = share{s.along.wind.Force * part, s.along.quake.Force * part}
		out = share{turn.wind * per, turn.quake * per}
	}
	if s.out.byHouse() || s.attached {
		out.wind = max(out.wind, s.out.wind.Force*part)
		out.quake = max(out.quake, s.out.quake.Force*part)
	}
	return along, out
}

// through is the force through one of n joints below the roof.
func (s *sideways) through(p *push, n int) share {
	f := share{p.wind.Force, p.quake.Force}
	if p.byHouse() {
		f = share{max(p.wind.OnPosts, p.wind.Least), p.quake.Force * s.low}
	}
	return share{f.wind / float64(n), f.quake / float64(n)}
}

// way begins the way of the push: the force, and what the user says holds it.
func (p *push) way() LateralWay {
	var sheet calc.Sheet
	sheet.Append(p.wind.Lines())
	sheet.Given("f_W", loads.WindASD, "", "ASCE 7 2.4.1, factor on wind")
	wind := loads.WindASD * p.wind.Force
	sheet.Step("H_W", "f_W * F", wind, "lb", "allowable stress design")
	out := LateralWay{
		Direction: p.direction, System: p.system, Demand: wind, Verdict: OK, Reason: systemReasons[p.system],
	}
	if p.shaken {
		sheet.Append(p.quake.Lines())
		sheet.Quoted("f_E", p.rule.Earthquake, "", p.rule.Clause+", factor on earthquake", p.rule.Status)
		quake := p.rule.Earthquake * p.quake.Force
		sheet.Step("H_E", "f_E * V", quake, "lb", "allowable stress design")
		out.Demand = max(wind, quake)
		sheet.Step("H", "max(H_W, H_E)", out.Demand, "lb", "the larger governs")
		out.Reason += "; " + larger(wind, quake) + " governs with " + pounds(out.Demand) + " lb"
	}
	out.Lines = sheet.Lines()
	return out
}

func larger(wind, quake float64) string {
	if quake > wind {
		return "earthquake"
	}
	return "wind"
}

// systemReasons says of each lateral system how it works, or what is wrong.
var systemReasons = map[string]string{
	"none":            "nothing holds the cover sideways: choose the house, knee braces or embedded posts",
	"house_diaphragm": "held by the house through deck and ledger",
	"knee_braces":     "held by knee braces",
	"embedded_posts":  "held by posts in the ground",
}
