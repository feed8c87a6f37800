package drawing

import (
	"math"

	"patiocover/calc"
	"patiocover/cover"
)

// unsizedDepth is how deep a foundation is drawn that the report does not size, in. It
// keeps the picture readable and is drawn with dashes; the frost depth makes it deeper.
var unsizedDepth = map[string]float64{
	"footing": 12 * calc.In, "pier": 24 * calc.In, "embedded": 36 * calc.In,
}

// slabThickness is the thickness that was said, or a common one, in.
func slabThickness(r *cover.Report) float64 {
	const common = 4 * calc.In // drawn only
	if t := r.Input.Foundation.SlabThickness; t != nil {
		return *t
	}
	return common
}

// kind is what the posts stand on.
func (s *sectionSheet) kind() string {
	if len(s.report.Foundations) == 0 {
		return ""
	}
	return s.report.Foundations[0].Kind
}

// frost is the frost depth that was said, ft; 0 when there is none.
func (s *sectionSheet) frost() float64 {
	if d := s.report.Input.Site.FrostDepth; d != nil {
		return ft(*d)
	}
	return 0
}

// depth is how far below the slab the deepest foundation is drawn, ft.
func (s *sectionSheet) depth() float64 {
	deepest := 0.0
	for i := range s.g.Lines {
		deepest = max(deepest, s.depthAt(&s.g.Lines[i]))
	}
	return deepest
}

// depthAt is how far below the slab the foundation of a line is drawn, ft.
func (s *sectionSheet) depthAt(l *cover.BeamLine) float64 {
	if f := sizedAt(s.report, l); f != nil {
		return ft(f.Depth)
	}
	least, deep := unsizedDepth[s.kind()]
	if !deep {
		return 0
	}
	return max(ft(least), s.frost())
}

// sizedAt is the largest footing of a line, nil where none has a size.
func sizedAt(r *cover.Report, l *cover.BeamLine) *cover.FoundationAt {
	var most *cover.FoundationAt
	for i := range r.Foundations {
		f := &r.Foundations[i]
		if f.Width > 0 && math.Abs(f.Y-l.Y) < 1e-6 && (most == nil || f.Concrete > most.Concrete) {
			most = f
		}
	}
	return most
}

// ground draws the earth, the slab and the foundations.
func (s *sectionSheet) ground() {
	end := s.g.Projection + ft(slabBeyond)
	s.earth(end)
	for i := range s.g.Lines {
		s.foundation(&s.g.Lines[i])
	}
	from := 0.0
	s.shape(concrete, s.at(from, 0), s.at(end, s.floor(end)), s.at(end, s.floor(end)-s.slab), s.at(from, -s.slab))
	step := 20 / s.scale.foot
	for y, n := from+step/2, 0; y < end; y, n = y+step, n+1 {
		low := s.slab * []float64{0.3, 0.6}[n%2]
		at := s.at(y, s.floor(y)-low)
		s.shape(hatching, at.plus(-1.5, 1), at.plus(1.5, 1), at.plus(0, -1.5))
	}
	s.solid = append(s.solid, spanning(s.at(from, 0), s.at(end, s.floor(end)-s.slab)))
}

// earth draws short strokes below the slab.
func (s *sectionSheet) earth(end float64) {
	step := 22 / s.scale.foot
	for y := step / 2; y < end; y += step {
		at := s.at(y, s.floor(y)-s.slab)
		for i := range 3 {
			p := at.plus(4*float64(i), 1)
			s.line(hatching, p, p.plus(-4, 5))
		}
	}
}

// foundation draws the largest footing of a line cut, or with dashes where it has no
// size.
func (s *sectionSheet) foundation(l *cover.BeamLine) {
	half, pen := map[string]float64{"footing": 9 * calc.In, "pier": 6 * calc.In, "embedded": 6 * calc.In}[s.kind()], unsized
	if f := sizedAt(s.report, l); f != nil {
		half, pen = f.Width/2, concrete
	}
	if half == 0 {
		return
	}
	top := s.floor(l.Y)
	end, pad := top-s.slab-s.depthAt(l), top
	if f := sizedAt(s.report, l); f != nil && f.Neck > 0 {
		pad = end + ft(f.Pad)
		neck := s.bar(pen, s.at(l.Y-ft(f.Neck)/2, top), s.at(l.Y+ft(f.Neck)/2, pad))
		s.solid = append(s.solid, neck)
	}
	b := s.bar(pen, s.at(l.Y-ft(half), pad), s.at(l.Y+ft(half), end))
	s.solid = append(s.solid, b)
	s.anchorBolt(l, top)
	if s.kind() == "embedded" {
		post := ft(l.PostWidth) / 2
		s.bar(hidden, s.at(l.Y-post, top), s.at(l.Y+post, end))
	}
}

// anchorBolt draws the bolt that is cast into the footing of a line, with its head.
func (s *sectionSheet) anchorBolt(l *cover.BeamLine, top float64) {
	f := sizedAt(s.report, l)
	if f == nil || f.AnchorDepth == 0 {
		return
	}
	s.line(bold, s.at(l.Y, top), s.at(l.Y, top-ft(f.AnchorDepth)))
	s.line(bold, s.at(l.Y-ft(f.AnchorDiameter), top-ft(f.AnchorDepth)), s.at(l.Y+ft(f.AnchorDiameter), top-ft(f.AnchorDepth)))
}

// groundNames writes what lies below.
func (s *sectionSheet) groundNames() {
	slab := "SLAB (EXISTING)"
	if t := s.report.Input.Foundation.SlabThickness; t != nil {
		slab = "SLAB " + calc.Number(*t) + `"`
	}
	y := 0.35 * s.g.Projection
	s.callout(plain, slab, s.at(y, s.floor(y)-s.slab/2), hint{angle: -60, least: 20, most: 80})
	if s.depth() > 0 && len(s.g.Lines) > 0 {
		l := &s.g.Lines[len(s.g.Lines)-1]
		at := s.at(l.Y, s.floor(l.Y)-s.slab-s.depthAt(l)/2)
		s.callout(plain, s.foundationName(l), at, hint{angle: 180, least: 40, most: 160})
		if f := sizedAt(s.report, l); f != nil && f.AnchorChosen && f.AnchorVerdict != cover.Over {
			bolt := inches(f.AnchorDiameter) + `" BOLT, ` + inches(f.AnchorDepth) + `" IN CONCRETE`
			s.callout(plain, bolt, s.at(l.Y, s.floor(l.Y)-ft(f.AnchorDepth)), hint{angle: 180, least: 40, most: 160})
		}
	}
	if f := s.frost(); f > 0 {
		from, to := s.at(0, -f), s.at(s.g.Projection, -f)
		s.line(levelLine, from, to)
		s.near(backed, "FROST DEPTH "+inches(f*calc.Ft)+`"`, from.plus(50, 0), hint{angle: 0, least: 0, most: 60})
	}
}

// foundationName says what a foundation is and how large, and what is wrong with it.
func (s *sectionSheet) foundationName(l *cover.BeamLine) string {
	f := sizedAt(s.report, l)
	if f == nil {
		return foundationWords[s.kind()] + ", NOT SIZED HERE"
	}
	across := `" SQ x `
	if f.Shape == "round" {
		across = `" DIA x `
	}
	name := foundationWords[s.kind()] + " " + inches(f.Width) + across + inches(f.Depth) + `" DEEP`
	if f.Verdict != cover.OK {
		name += ": " + string(f.Verdict)
	}
	return name
}

// foundationWords name a foundation.
var foundationWords = map[string]string{"footing": "FOOTING", "pier": "PIER", "embedded": "COLLAR"}
