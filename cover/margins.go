package cover

import (
	"math"
	"slices"
)

// A Margin says how far one quantity may go before the first check of the members is
// over, everything else and all sizes kept as chosen.
type Margin struct {
	Path    string  `json:"path"`              // field of the input that is moved
	What    string  `json:"what"`              // in words
	Unit    string  `json:"unit"`              // of the values
	Now     float64 `json:"now"`               // present value, in Unit
	Passes  float64 `json:"passes"`            // farthest value found that passes, in Unit; 0 when none was found
	Reached bool    `json:"limit_reached"`     // it passes as far as this program answers, so Passes is that limit
	Over    float64 `json:"over"`              // nearest value found that is over, in Unit; 0 where the limit is reached
	Mark    string  `json:"mark,omitempty"`    // member whose check is over there
	Check   string  `json:"check,omitempty"`   // that check
	Ratio   Ratio   `json:"ratio"`             // its ratio there
	Missing string  `json:"missing,omitempty"` // why there is no answer
}

// A mover is one quantity that a margin moves. Far is the end of the search, in the
// unit of the field.
type mover struct {
	path, what string
	now        func(in *Input) float64
	set        func(in *Input, x float64)
	far        float64
	step       float64 // least step of the search
	ws         *workspace
}

// The steps of the search for a margin: the factor between two values that are tried,
// and how close the two ends are brought together, as a part of the larger.
const (
	marginStep  = 1.05
	marginClose = 1e-4
)

// movers are the quantities in the order of the report.
func movers() []mover {
	number := func(path, what string, at func(*Input) **float64, step float64) mover {
		f, _ := FieldOf(path)
		return mover{
			path: path, what: what, far: f.High, step: step,
			now: func(in *Input) float64 { return **at(in) },
			set: func(in *Input, x float64) { *at(in) = &x },
		}
	}
	return []mover{
		{
			path: "cover.projection_ft", far: 40, step: 0.1,
			what: "projection, with the overhang kept and the beam lines moved in proportion",
			now:  func(in *Input) float64 { return *in.Cover.Projection }, set: stretch,
		},
		{
			path: "cover.width_ft", what: "width, with the number of posts kept and the bays made longer", far: 100, step: 0.1,
			now: func(in *Input) float64 { return *in.Cover.Width }, set: widen,
		},
		number("rafters.spacing_in", "rafter spacing", func(in *Input) **float64 { return &in.Rafters.Spacing }, 0.1),
		number("site.wind_speed_mph", "wind speed", func(in *Input) **float64 { return &in.Site.WindSpeed }, 1),
		number("site.roof_live_psf", "roof live load", func(in *Input) **float64 { return &in.Site.RoofLive }, 0.5),
		{path: "site.roof_snow_psf", what: "snow", far: 300, step: 1, now: snowOf, set: setSnow},
		{
			path: "cover.layers[].psf", what: "dead load added to the roof layers", far: 100, step: 0.5,
			now: func(*Input) float64 { return 0 }, set: addLayer,
		},
	}
}

// stretch moves the roof edge, with the overhang as it is and the beam lines in
// proportion to what is left.
func stretch(in *Input, projection float64) {
	before, after := *in.Cover.Projection-*in.Cover.Overhang, projection-*in.Cover.Overhang
	in.Beams.Lines = slices.Clone(in.Beams.Lines)
	for i := range in.Beams.Lines {
		in.Beams.Lines[i] *= after / before
	}
	in.Cover.Projection = &projection
}

// widen moves the right edge, with listed posts in proportion.
func widen(in *Input, width float64) {
	f := width / *in.Cover.Width
	in.Posts.Positions = slices.Clone(in.Posts.Positions)
	for i := range in.Posts.Positions {
		in.Posts.Positions[i] *= f
	}
	in.Cover.Width = &width
}

// snowOf is the snow load that was given: that of the ground where there is one.
func snowOf(in *Input) float64 {
	if in.Site.GroundSnow != nil {
		return *in.Site.GroundSnow
	}
	return *in.Site.RoofSnow
}

// setSnow sets the snow load that was given.
func setSnow(in *Input, psf float64) {
	if in.Site.GroundSnow != nil {
		in.Site.GroundSnow = &psf
		return
	}
	in.Site.RoofSnow = &psf
}

// addLayer adds a layer that does not resist uplift.
func addLayer(in *Input, psf float64) {
	name, certain := "added dead load", false
	layers := append([]Layer(nil), in.Cover.Layers...)
	in.Cover.Layers = append(layers, Layer{Name: &name, Weight: &psf, Certain: &certain})
}

// margins finds the margin of every quantity for the design that answered the input. It
// moves the input as it was given, so that what was assumed follows.
func (m *model) margins(in Input, d *design) []Margin {
	in = in.clone()
	in.Rafters.Size, in.Beams.Size, in.Posts.Size = &d.rafter.section.Name, &d.beam.section.Name, &d.post.section.Name
	in.keepDeck(m.deck())
	var out []Margin
	ws := &workspace{}
	for _, q := range movers() {
		q.ws = ws
		out = append(out, q.margin(in, q.now(&m.in)))
	}
	return out
}

// A trial is the design at one value of the quantity that is moved.
type trial struct {
	x     float64
	ratio float64
	mark  string
	check string
	fault string // why there is no answer
}

// passes reports whether no check is over.
func (t trial) passes() bool { return t.fault == "" && t.ratio <= 1 }

// try grades the design with the quantity at x.
func (q mover) try(base Input, x float64) trial {
	in := base.clone()
	q.set(&in, x)
	s, _, err := solve(in, q.ws)
	if err != nil {
		return trial{x: x, fault: err.Error()}
	}
	t := trial{x: x}
	t.ratio, t.mark, t.check = s.m.worst(s.ws, &s.d)
	return t
}

// margin searches upward from the present value in steps until a check is over, then
// halves the interval. A design that is over already is searched downward.
func (q mover) margin(in Input, now float64) Margin {
	f, _ := FieldOf(q.path)
	out := Margin{Path: q.path, What: q.what, Unit: f.Unit, Now: now}
	good := q.try(in, out.Now)
	if good.fault != "" {
		out.Missing = good.fault
		return out
	}
	var bad trial
	if good.passes() {
		good, bad = q.climb(in, good)
	} else {
		good, bad = q.descend(in, good, f.Low)
	}
	switch {
	case good.fault != "":
		out.Missing = good.fault
	case !good.passes():
		out.Missing = "no smaller value passes"
	case bad.x == 0:
		out.Passes, out.Reached = good.x, true
		return out
	default:
		good, bad = q.close(in, good, bad)
		out.Passes = good.x
	}
	out.Over, out.Mark, out.Check, out.Ratio = bad.x, bad.mark, bad.check, Ratio(bad.ratio)
	return out
}

// climb goes up until a check is over, or to the end, where bad stays empty. Where the
// program has no answer the search ends.
func (q mover) climb(in Input, good trial) (last, bad trial) {
	for good.x < q.far {
		next := q.try(in, min(q.far, max(good.x*marginStep, good.x+q.step)))
		if next.fault != "" {
			return good, trial{}
		}
		if !next.passes() {
			return good, next
		}
		good = next
	}
	return good, trial{}
}

// descend goes down until every check passes, or to the least value allowed.
func (q mover) descend(in Input, bad trial, low float64) (good, last trial) {
	for bad.x > low {
		next := q.try(in, max(low, min(bad.x/marginStep, bad.x-q.step)))
		if next.fault != "" || next.passes() {
			return next, bad
		}
		bad = next
	}
	return bad, bad
}

// close brings a value that passes and one that is over together.
func (q mover) close(in Input, good, bad trial) (trial, trial) {
	for math.Abs(bad.x-good.x) > marginClose*max(good.x, bad.x) {
		middle := q.try(in, (good.x+bad.x)/2)
		switch {
		case middle.fault != "":
			return good, bad
		case middle.passes():
			good = middle
		default:
			bad = middle
		}
	}
	return good, bad
}

// keepDeck gives the input the deck that was chosen.
func (in *Input) keepDeck(roof *decked) {
	if roof == nil {
		return
	}
	keep := &in.Deck.Size
	if is(in.Deck.Kind, panelDeck) {
		keep = &in.Deck.Rating
	}
	*keep = &roof.member.Size
}

// worst grades the design and names the check with the largest ratio of all members.
func (m *model) worst(ws *workspace, d *design) (ratio float64, mark, check string) {
	if s := m.strength; s != nil {
		return s.m.worst(s.ws, &s.d)
	}
	m.numbers(ws, &d.rafter, &d.beam, &d.post)
	take := func(x float64, of, name string) {
		if x > ratio || check == "" {
			ratio, mark, check = x, of, name
		}
	}
	take(max(ws.rafter.ratio(), ws.rafterWater), "R1", nameOrWater(&ws.rafter, ws.rafterWater))
	beam := ws.worstPiece()
	take(max(beam.ratio(), ws.beamWater), "BM", nameOrWater(beam, ws.beamWater))
	k := ws.worstPost()
	post, name := ws.worstOf(k)
	take(post.worst[k].ratio, name, postNames[k])
	if roof := m.deck(); roof != nil {
		take(float64(roof.member.Ratio), deckMark, roof.member.Governs)
	}
	return ratio, mark, check
}

// SizeAndMargins answers one cover as [Size] does, and adds the margins of the design,
// which cost many times the answer itself.
func SizeAndMargins(in Input) (Report, error) {
	s, assumed, err := solve(in, &workspace{})
	if err != nil {
		return Report{}, err
	}
	r, err := s.m.report(in, assumed, s.ws, s.d)
	if err != nil {
		return Report{}, err
	}
	r.Margins = s.m.margins(in, &s.d)
	return r, nil
}
