package cover

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/loads"
)

// A model is a valid, filled input in pounds and inches, with what acts on the
// cover and the frames that carry it.
type model struct {
	in           Input // filled
	room         *room // its memory
	brief        bool  // its members are wanted by their ratios, and not written up
	plan         plan
	rules        rulebook
	strength     *solved    // the members by strength design, where they were chosen by it
	dead         loads.Dead // of the layers, lb/in² of slope
	roofLive     loads.RoofLive
	live         float64 // Lr, lb/in² of plan
	edition      loads.Edition
	snow         snowLoads
	wind         windLoads
	sideways     sideways // of the chosen design
	rafter       *rafterFrame
	lines        []*beamFrame
	limits       limits
	ends         [directions]member.Ends // of the posts, by the plane of each direction
	top          topJoint
	knee         kneeShape
	racking      [directions]racking
	effects      [directions][]effect          // on every post of every line, of the sizes tried last
	parts        [directions][maxLines]float64 // largest part of a push in each line, ratio
	embedded     embedment
	kneed        kneeDesign
	onTrial      trio            // what the search tries, for what needs all three
	singleRafter lumber.Adjusted // a rafter without its neighbors
	quaking      bool            // the site gives its earthquake
	rafters      stock
	beams        stock
	posts        stock

	rafterWoods, beamWoods []wood // candidates
	rafterHold, beamHold   holding
}

// limits are the deflection limits of rafters and beams; the length is filled bay by
// bay.
type limits struct {
	live  member.Limit // live or snow load alone
	total member.Limit // long term, with all of the dead load and its creep
	code  member.Limit // dead plus live load as the building code counts it
	gust  member.Limit // wind as the building code counts it
}

// newModel converts a filled input and makes its frames.
func newModel(in Input) (*model, error) { return new(room).newModel(in, lumber.ASD, nil) }

// newModel makes a model in the room for one design method, and for one design only where
// it is given. The model that was there before must not be used any more.
func (own *room) newModel(in Input, method lumber.Method, only *design) (*model, error) {
	m, err := own.outline(in, method)
	if err != nil {
		return nil, err
	}
	if only != nil {
		m.rafters.size, m.beams.size, m.posts.size = only.rafter.name, only.beam.name, only.post.name
	}
	m.rafterWoods, m.beamWoods = m.rafters.candidatesIn(own, rafterSizes), m.beams.candidatesIn(own, beamSizes)
	if err := m.complete(); err != nil {
		return nil, err
	}
	if only == nil {
		m.findHulls(len(m.rafterWoods) > 1, len(m.beamWoods) > 1)
	}
	return m, nil
}

// outline is a model without candidates and without frames, in a room of its own.
func outline(in Input, method lumber.Method) (*model, error) { return new(room).outline(in, method) }

// outline makes a model in the room without candidates and without frames.
func (own *room) outline(in Input, method lumber.Method) (*model, error) {
	own.leave()
	edition := loads.ASCE716
	if *in.Site.Standard == loads.ASCE722.String() {
		edition = loads.ASCE722
	}
	r, b, p := in.Rafters, in.Beams, in.Posts
	m := &own.model
	*m = model{
		in: in, room: own, plan: own.newPlan(in), rules: own.rulebook(method, edition),
		dead:    loads.NewDead(partsOf(in.Cover.Layers)),
		edition: edition, limits: own.limitsOf(in), top: newTopJoint(in), knee: newKneeShape(in.Lateral),
		quaking: in.Site.shakes(),
		ends:    [directions]member.Ends{heldBy[*in.Lateral.Along], heldBy[*in.Lateral.Out]},
		rafters: newStock(r.Species, r.Grade, r.Size, *r.Wet, *r.Incised, *r.Hot).made(r.makeup(), in.Products),
		beams:   newStock(b.Species, b.Grade, b.Size, *b.Wet, *b.Incised, *b.Hot).made(b.makeup(), in.Products),
		posts:   newStock(p.Species, p.Grade, p.Size, *p.Wet, *p.Incised, *p.Hot).made(p.makeup(), in.Products),
	}
	m.rafters.green, m.beams.green = *r.Green, *b.Green
	m.rafters.use.Method, m.beams.use.Method, m.posts.use.Method = method, method, method
	m.plan.splice(*b.Splices, *b.Stock*calc.Ft)
	m.rafters.use.Repetitive = lumber.Repetitive(len(m.plan.rafters), m.plan.spacing, m.deckSpreads())
	m.roofLive = m.newRoofLive()
	m.live = m.roofLive.Load
	m.wind = own.newWind(in, &m.plan, edition)
	var err error
	m.snow, err = newSnow(in, &m.plan, edition)
	return m, err
}

// complete makes what carries the candidates.
func (m *model) complete() error {
	m.beamHold = m.beamHolding()
	m.embedded = m.newEmbedment()
	var err error
	if m.racking, err = newRackings(m); err != nil {
		return err
	}
	for d := range m.effects {
		m.effects[d] = m.room.effects.take(len(m.plan.lines) * len(m.plan.posts))
	}
	return m.frames()
}

// frames makes the statics of the rafters and of every beam line.
func (m *model) frames() error {
	var err error
	if m.rafter, err = newRafterFrame(m); err != nil {
		return err
	}
	m.lines = m.room.lines[:0]
	for i := range m.plan.lines {
		l, err := newBeamFrame(m, i)
		if err != nil {
			return err
		}
		m.lines = append(m.lines, l)
	}
	m.room.lines = m.lines
	return nil
}

// findHulls finds which arrangements can govern the rafters, and the beams. One candidate is
// graded sooner than they are found.
func (m *model) findHulls(rafters, beams bool) {
	if rafters {
		m.rafter.findHull(m)
	}
	for i := 0; beams && i < len(m.lines); i++ {
		m.lines[i].findHulls(m)
	}
}

// newRoofLive is the roof live load, reduced by the tributary area of a rafter, the
// smallest of the members, so that it serves them all.
func (m *model) newRoofLive() loads.RoofLive {
	base := *m.in.Site.RoofLive * calc.PSF
	reducible := *m.in.Site.RoofLiveReducible && base >= ordinaryLive
	return loads.NewRoofLive(base, m.plan.projection*m.plan.spacing, *m.in.Cover.Slope, reducible)
}

// ordinaryLive is the least roof live load of a place without the appendix, lb/in² of
// plan, and the least that may be reduced; that of the appendix may not (ASCE 7-16 Table
// 4.3-1 and 4.8.2).
const ordinaryLive = 20 * calc.PSF

// layers is the dead load of the layers, lb/in² of slope.
func (m *model) layers(least bool) float64 {
	if least {
		return m.dead.Least
	}
	return m.dead.Most
}

// weightOf is the weight of a layer, its own or that of the table, with its source.
func weightOf(l Layer) LayerLine {
	row, known := loads.LayerNamed(*l.Name)
	out := LayerLine{Name: *l.Name, Certain: yes(l.Certain), Source: row.Source, Status: row.Status}
	if l.Weight != nil {
		out.Weight, out.Source, out.Status = *l.Weight, "as given", calc.Read
		return out
	}
	if known {
		out.Weight = row.Weight / calc.PSF
	}
	return out
}

func partsOf(layers []Layer) []loads.Part {
	out := make([]loads.Part, 0, len(layers))
	for _, l := range layers {
		w := weightOf(l)
		p := loads.Part{Weight: w.Weight * calc.PSF, Certain: w.Certain, Source: w.Source, Status: w.Status}
		out = append(out, p)
	}
	return out
}
