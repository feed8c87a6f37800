package table

import (
	"context"
	"fmt"
	"sync"

	"patiocover/calc"
	"patiocover/cover"
)

// An Answer is a part of a table as data.
type Answer struct {
	Notice   string   `json:"notice"`   // who must approve this
	Program  string   `json:"program"`  // name and version of the program
	Hash     string   `json:"hash"`     // SHA-256 of the criteria
	Criteria Criteria `json:"criteria"` // as given
	Notes    []string `json:"notes"`    // what every cell rests on
	Total    int      `json:"total"`    // cells of the whole table
	Cells    []Cell   `json:"cells"`    // in the order of their numbers
}

// Answer answers the cells of a job, unless ctx is done before.
func (t *Table) Answer(ctx context.Context, j Job) (Answer, error) {
	out := Answer{
		Notice: cover.Notice, Program: cover.Program, Hash: t.hash, Criteria: t.criteria, Notes: t.Notes(), Total: t.cells,
		Cells: make([]Cell, j.To-j.From),
	}
	var all sync.WaitGroup
	workers := max(1, j.Workers)
	for w := range workers {
		all.Go(func() {
			for i := w; i < len(out.Cells) && ctx.Err() == nil; i += workers {
				out.Cells[i] = t.Cell(j.From + i)
			}
		})
	}
	all.Wait()
	return out, ctx.Err()
}

// A Grid is one table for people: the second range of a part down, the third across.
type Grid struct {
	Title   string   // part, load, wind and wood
	Down    string   // what the rows are
	Across  string   // what the columns are
	Rows    []string // heads of the rows
	Columns []string // heads of the columns
	Cells   [][]Cell // by row
}

// Grids lays all cells out for people.
func (t *Table) Grids() []Grid {
	var out []Grid
	for _, p := range t.parts {
		g := t.frame(p.name)
		size := p.sizes[1] * p.sizes[2]
		for first := p.first; first < p.first+p.count; first += size {
			h := g
			c := t.Cell(first)
			h.Title = c.title()
			for j := range p.sizes[1] {
				var row []Cell
				for k := range p.sizes[2] {
					row = append(row, t.Cell(first+j*p.sizes[2]+k))
				}
				h.Cells = append(h.Cells, row)
			}
			out = append(out, h)
		}
	}
	return out
}

// frame is the grid of a part without its cells.
func (t *Table) frame(part string) Grid {
	c := &t.criteria
	switch part {
	case RafterPart:
		return Grid{Down: "size", Across: "spacing", Rows: c.Rafters.Sizes, Columns: with(c.Rafters.Spacings, "in")}
	case BeamPart:
		return Grid{Down: "rafter span", Across: "post spacing", Rows: with(c.Beams.Spans, "ft"), Columns: with(c.Beams.Bays, "ft")}
	case PostPart:
		return Grid{Down: "roof on the post", Across: "height", Rows: with(c.Posts.Areas, "sq ft"), Columns: with(c.Posts.Heights, "ft")}
	case FootingPart:
		return Grid{Down: "roof on the post", Across: "soil", Rows: with(c.Footings.Areas, "sq ft"), Columns: with(c.Footings.Soils, "psf")}
	}
	return Grid{Down: "rafter span", Across: "spacing", Rows: with(c.Ties.Spans, "ft"), Columns: with(c.Ties.Spacings, "in")}
}

// with writes the numbers with their unit.
func with(all []float64, unit string) []string {
	var out []string
	for _, x := range all {
		out = append(out, calc.Number(x)+" "+unit)
	}
	return out
}

// titles word what a part answers.
var titles = map[string]string{
	RafterPart: "Rafters, longest span", BeamPart: "Beams, least size", PostPart: "Posts, least size",
	FootingPart: "Footings, least width", TiePart: "Ties at the outer end of rafters, uplift rating",
}

// title says of which load, wind and wood the grid of a cell is.
func (c *Cell) title() string {
	out := fmt.Sprintf("%s; dead %s, of it %s sure to stay, live %s, snow %s psf; wind %s mph", titles[c.Part],
		calc.Number(c.Load.Dead), calc.Number(c.Load.Sure), calc.Number(c.Load.Live), calc.Number(c.Load.Snow), calc.Number(c.Speed))
	if c.Wood.Species != "" {
		out += "; " + c.Wood.String()
	}
	return out
}

// Words writes the answer for people: a span or a width in feet and inches, a size, a
// rating.
func (c Cell) Words() string {
	switch {
	case c.None:
		return none
	case c.Unit == "in":
		return calc.FeetInches(c.Answer)
	case c.Unit == "":
		return c.Size
	case c.Answer == 0:
		return "no uplift"
	}
	return calc.Number(c.Answer) + " lb"
}
