package cover

import (
	"math"

	"patiocover/calc"
)

// geometry writes the cover down as it is drawn.
func (m *model) geometry(d *design) Geometry {
	p := &m.plan
	rafter, beam := d.rafter.section, d.beam.section
	g := Geometry{
		Attachment: *m.in.Cover.Attachment, Width: p.width / calc.Ft, Projection: p.projection / calc.Ft,
		Overhang: p.overhang / calc.Ft, Slope: *m.in.Cover.Slope, Angle: degrees(p.angle),
		HighEdge: p.high / calc.Ft, LowEdge: p.topAt(p.projection) / calc.Ft, Rafters: feet(p.rafters),
		RafterSize: rafter.Name, RafterDepth: rafter.Depth, RafterWidth: rafter.Breadth,
		RafterLength: p.slope(p.projection) / calc.Ft,
	}
	if m.kneed.braced {
		g.KneeDrop, g.KneeReach, g.KneeDepth = m.knee.drop/calc.Ft, m.knee.reach/calc.Ft, m.kneed.wood.section.Depth
	}
	for i, y := range p.lines {
		top := m.beamTop(y, rafter.Depth)
		b := BeamLine{
			Mark: mark("BM", i), Y: y / calc.Ft, Size: beam.Name, Depth: beam.Depth, Breadth: beam.Breadth,
			Top: top / calc.Ft, Bottom: (top - beam.Depth) / calc.Ft, Flush: p.flush, Posts: feet(p.posts),
			PostSize: d.post.section.Name, PostWidth: d.post.section.Breadth,
		}
		for n := range p.posts {
			b.PostMarks = append(b.PostMarks, mark("P", i*len(p.posts)+n))
		}
		for _, n := range p.splices {
			b.Splices = append(b.Splices, p.posts[n]/calc.Ft)
		}
		g.Lines = append(g.Lines, b)
	}
	return g
}

// beamTop is the height of the top of a beam below rafters of the given depth, in.
func (m *model) beamTop(y, rafterDepth float64) float64 {
	if m.plan.flush {
		return m.plan.topAt(y)
	}
	return m.plan.topAt(y) - rafterDepth/math.Cos(m.plan.angle)
}

// postHeight is the height of the posts of a line, from the slab, which falls away from
// the house, to the underside of the beam, in.
func (m *model) postHeight(line int, rafterDepth, beamDepth float64) float64 {
	y := m.plan.lines[line]
	return m.beamTop(y, rafterDepth) + m.sunk(rafterDepth) - beamDepth + *m.in.Cover.SlabFall*calc.In/calc.Ft*y
}

// widestSeat is the breadth of beam up to which posts are taken to be the longer for the
// seat cut of the rafters, in: the widest of the sizes that are tried.
const widestSeat = 8.75 * calc.In

// sunk is how far the rafters sink onto a dropped beam at its middle by their seat cut, at
// most, in: half of the heel where the whole breadth of the beam is cut out, less where
// the cut is shallower.
func (m *model) sunk(rafterDepth float64) float64 {
	switch said := m.in.Rafters.SeatCut; {
	case m.plan.flush:
		return 0
	case said != nil:
		return *said * calc.In
	}
	deepest := rafterDepth / math.Cos(m.plan.angle) / 4 // the deepest cut, NDS 2018 4.4.3
	return min(deepest, widestSeat*m.plan.rise) / 2
}

func feet(inches []float64) []float64 {
	out := make([]float64, len(inches))
	for i, x := range inches {
		out[i] = x / calc.Ft
	}
	return out
}
