package beam

import "slices"

// divide cuts the member for all cases and lays out its bays and stations.
func (p *Plan) divide(cases [][]Load) {
	p.cuts = p.cuts[:0]
	p.cuts = append(p.cuts, cut{x: 0, support: -1})
	for i, x := range p.line.supports {
		if x == 0 {
			p.cuts[0].support = i
			continue
		}
		p.cuts = append(p.cuts, cut{x: x, support: i})
	}
	if p.cuts[len(p.cuts)-1].x < p.line.length {
		p.cuts = append(p.cuts, cut{x: p.line.length, support: -1})
	}
	p.varying = false
	for _, loads := range cases {
		near := 0
		for i := range loads {
			l := &loads[i]
			near = p.mark(l.From, near)
			if l.point {
				continue
			}
			near = p.mark(l.To, near)
			p.varying = p.varying || l.Start != l.End
		}
	}
	p.stations()
}

// mark cuts the member at x unless there is a cut already, and returns the index of
// the cut. Searching starts at the cut near, which makes loads in order cheap.
func (p *Plan) mark(x float64, near int) int {
	i := p.search(x, near)
	if i == len(p.cuts) || p.cuts[i].x-x > coincident*p.line.length {
		p.cuts = slices.Insert(p.cuts, i, cut{x: x, support: -1})
	}
	return i
}

// search returns the index of the first cut that is not before x, searching from
// the cut near. A cut that coincides with x is not before it.
func (p *Plan) search(x float64, near int) int {
	low := x - coincident*p.line.length
	for near < len(p.cuts) && p.cuts[near].x < low {
		near++
	}
	for near > 0 && p.cuts[near-1].x >= low {
		near--
	}
	return near
}

// stations numbers the left ends of all segments, bay by bay, and the right end of
// each bay as a station of its own.
func (p *Plan) stations() {
	p.bays, p.at, p.lengths = p.bays[:0], p.at[:0], p.lengths[:0]
	if p.cuts[0].support == 0 {
		p.bays = append(p.bays, bay{}) // no left overhang
	}
	first := 0
	for i := range p.cuts {
		c := &p.cuts[i]
		last := i == len(p.cuts)-1
		if i > 0 && (c.support >= 0 || last) {
			p.bays = append(p.bays, bay{first: first, last: len(p.at), length: c.x - p.at[first]})
			p.at, p.lengths = append(p.at, c.x), append(p.lengths, 0)
			first = len(p.at)
		}
		if last {
			c.begin = len(p.at) - 1
			continue
		}
		c.begin = len(p.at)
		p.at, p.lengths = append(p.at, c.x), append(p.lengths, p.cuts[i+1].x-c.x)
	}
	if p.cuts[len(p.cuts)-1].support >= 0 {
		p.bays = append(p.bays, bay{}) // no right overhang
	}
}
