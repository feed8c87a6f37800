package table

import (
	"patiocover/cover"
)

// A Table answers every cell of its criteria. It is safe for use by several goroutines
// at once.
type Table struct {
	criteria  Criteria
	hash      string
	canonical string   // the criteria on one line
	columns   []column // by load and wind speed, the speed faster
	parts     []part
	cells     int
	shared    float64   // widest spacing of rafters that share their load, in
	rafters   [][]piece // by wood and size, sharing their load
	alone     [][]piece // not sharing it
	beams     [][]piece
	posts     [][]piece
}

// A part is a block of cells: columns of load, each with every place of the ranges.
type part struct {
	name  string
	first int    // number of its first cell
	count int    // cells
	sizes [3]int // of its three ranges, the last the fastest
	cell  func(c *column, i, j, k int) Cell
}

// New prepares the table of valid criteria. The error lists their faults.
func New(c Criteria) (*Table, error) {
	if err := c.Validate(); err != nil {
		return nil, err
	}
	text, err := c.canonical()
	if err != nil {
		return nil, err
	}
	t := &Table{criteria: c, hash: hashOf(text), canonical: string(text), shared: sharedSpacing(*c.Service.Joined)}
	for _, l := range c.Loads {
		for _, v := range c.Wind.Speeds {
			t.columns = append(t.columns, newColumn(&c, l, v))
		}
	}
	if r := c.Rafters; r != nil {
		t.rafters, t.alone = c.pieces(r.Woods, r.Sizes, true), c.pieces(r.Woods, r.Sizes, false)
	}
	if b := c.Beams; b != nil {
		t.beams = c.pieces(b.Woods, b.Sizes, false)
	}
	if p := c.Posts; p != nil {
		t.posts = c.pieces(p.Woods, p.Sizes, false)
	}
	t.parts = c.parts()
	for i := range t.parts {
		t.parts[i].cell = t.answerer(t.parts[i].name)
		t.cells += t.parts[i].count
	}
	return t, nil
}

// pieces works every size of every wood out.
func (c *Criteria) pieces(woods []cover.Wood, sizes []string, repetitive bool) [][]piece {
	out := make([][]piece, len(woods))
	for i, w := range woods {
		for _, s := range sizes {
			out[i] = append(out[i], newPiece(c, w, s, repetitive))
		}
	}
	return out
}

// parts lists the blocks of cells in their order.
func (c Criteria) parts() []part {
	var out []part
	first := 0
	add := func(name string, i, j, k int) {
		p := part{name: name, first: first, sizes: [3]int{i, j, k}, count: len(c.Loads) * len(c.Wind.Speeds) * i * j * k}
		first += p.count
		out = append(out, p)
	}
	if r := c.Rafters; r != nil {
		add(RafterPart, len(r.Woods), len(r.Sizes), len(r.Spacings))
	}
	if b := c.Beams; b != nil {
		add(BeamPart, len(b.Woods), len(b.Spans), len(b.Bays))
	}
	if p := c.Posts; p != nil {
		add(PostPart, len(p.Woods), len(p.Areas), len(p.Heights))
	}
	if g := c.Footings; g != nil {
		add(FootingPart, 1, len(g.Areas), len(g.Soils))
	}
	if t := c.Ties; t != nil {
		add(TiePart, 1, len(t.Spans), len(t.Spacings))
	}
	return out
}

// Len counts the cells of the criteria.
func (c Criteria) Len() int {
	n := 0
	for _, p := range c.parts() {
		n += p.count
	}
	return n
}

// answerer returns what answers the cells of a part.
func (t *Table) answerer(name string) func(c *column, i, j, k int) Cell {
	switch name {
	case RafterPart:
		return t.rafterCell
	case BeamPart:
		return t.beamCell
	case PostPart:
		return t.postCell
	case FootingPart:
		return func(c *column, _, j, k int) Cell { return t.footingCell(c, j, k) }
	}
	return func(c *column, _, j, k int) Cell { return t.tieCell(c, j, k) }
}

// Len counts the cells.
func (t *Table) Len() int { return t.cells }

// Criteria returns what the table was made from.
func (t *Table) Criteria() Criteria { return t.criteria }

// Hash is the SHA-256 of the criteria in their canonical form.
func (t *Table) Hash() string { return t.hash }

// Cell answers the cell with the number n, from 0 up to Len. It allocates nothing and
// depends on nothing but the number. It panics on a number outside.
func (t *Table) Cell(n int) Cell {
	for i := range t.parts {
		p := &t.parts[i]
		if n < p.first || n >= p.first+p.count {
			continue
		}
		at := n - p.first
		k := at % p.sizes[2]
		at /= p.sizes[2]
		j := at % p.sizes[1]
		at /= p.sizes[1]
		i := at % p.sizes[0]
		c := &t.columns[at/p.sizes[0]]
		out := p.cell(c, i, j, k)
		out.Index, out.Load, out.Speed = n, c.load, c.speed
		return out
	}
	panic("table: no cell has that number")
}
