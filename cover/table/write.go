package table

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"

	"patiocover/calc"
	"patiocover/cover"
)

// Notes says what every cell of every table rests on. [Table.Notes] stands in every output.
var Notes = []string{
	"Allowable stress design; each member spans simply between two supports; spans are on plan; the weight of the member itself is counted",
	"Wind is that on the corner of a free roof (ASCE 7-16 30.7), net, with Ke 1.0; rafters and ties take the smallest effective area, " +
		"beams, posts and footings the largest class, and none less than the whole roof (27.3)",
	"The deck holds the top edge of rafters where it is joined, and braces hold their bottom edge as the criteria say; every other " +
		"edge is held at the supports alone",
	"Beams and posts carry (L + o)²/(2L) of roof for a span L and an overhang o of the rafters; posts are pinned at both ends",
	"Footings are concrete from their bottom to grade, centered, held down by 0.6 of their weight, without water in the ground",
	"Not in the table: drift and sliding snow, earthquake, ponding, continuity, notches, the force along a slope, what holds the " +
		"cover sideways, the seat of a beam on its post, hardware",
}

// chunk is how many cells one piece of work has, and so how often the work can be
// taken up again.
const chunk = 512

// head names the columns of the written table.
var head = []string{
	"index", "part", "dead_psf", "sure_dead_psf", "live_psf", "snow_psf", "wind_mph", "species", "grade", "size", "spacing_in",
	"rafter_span_ft", "post_spacing_ft", "area_sqft", "height_ft", "soil_psf", "answer", "unit", "governs", "ratio",
}

// Head is what stands above the rows: the notice, the notes, the criteria whole and by their
// hash, and the names of the columns.
func (t *Table) Head() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n# %s\n", oneLine(t.criteria.Place), cover.Notice)
	for _, n := range t.Notes() {
		fmt.Fprintf(&b, "# %s\n", n)
	}
	fmt.Fprintf(&b, "# %s; criteria %s: %s; %s; %d cells\n# %s\n%s\n", cover.Program,
		t.hash, oneLine(t.criteria.Source), t.criteria.Standard, t.cells, t.canonical, strings.Join(head, ","))
	return b.String()
}

// Notes says what every cell of this table rests on, with the woods some of whose values are
// not yet compared with their print.
func (t *Table) Notes() []string {
	var woods []string
	add := func(all []cover.Wood, pieces [][]piece) {
		for i, w := range all {
			if name := w.String(); slices.ContainsFunc(pieces[i], func(p piece) bool { return p.memory }) && !slices.Contains(woods, name) {
				woods = append(woods, name)
			}
		}
	}
	if r := t.criteria.Rafters; r != nil {
		add(r.Woods, t.rafters)
	}
	if b := t.criteria.Beams; b != nil {
		add(b.Woods, t.beams)
	}
	if p := t.criteria.Posts; p != nil {
		add(p.Woods, t.posts)
	}
	if len(woods) == 0 {
		return Notes
	}
	return append(Notes[:len(Notes):len(Notes)],
		"Design values from memory, not yet compared with their print, are among those of "+strings.Join(woods, ", "))
}

// oneLine takes the line breaks out of a text of the user.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// none stands where nothing of a list passes.
const none = "none"

// row writes one cell.
func (c *Cell) row() []string {
	answer := plain(c.Answer)
	switch {
	case c.None:
		answer = none
	case c.Unit == "":
		answer = c.Size
	}
	size := c.Size
	if c.Part != RafterPart {
		size = ""
	}
	return []string{
		strconv.Itoa(c.Index), c.Part, number(c.Load.Dead), number(c.Load.Sure), number(c.Load.Live), number(c.Load.Snow),
		plain(c.Speed), c.Wood.Species, c.Wood.Grade, size, plain(c.Spacing), plain(c.Span), plain(c.Bay), plain(c.Area),
		plain(c.Height), plain(c.Soil), answer, c.Unit, c.Governs, ratio(c.Ratio),
	}
}

// number writes a number in its shortest form.
func number(x float64) string { return calc.Number(x) }

// plain writes a number, and nothing for zero.
func plain(x float64) string {
	if x == 0 {
		return ""
	}
	return calc.Number(x)
}

// ratio writes a ratio to four digits behind the point, rounded up.
func ratio(r cover.Ratio) string {
	if x := float64(r); x < 1e6 {
		return strconv.FormatFloat(calc.RoundUp(x, 1e-4), 'f', 4, 64)
	}
	return "no capacity"
}

// Text writes the rows of the cells from one number up to another.
func (t *Table) Text(from, to int) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	for n := from; n < to; n++ {
		c := t.Cell(n)
		_ = w.Write(c.row()) // a buffer takes everything
	}
	w.Flush()
	return b.Bytes()
}

// A Job is the part of a table that one run makes.
type Job struct {
	From    int            // number of the first cell
	To      int            // number after the last cell
	Workers int            // goroutines; at least one
	Done    func(next int) // told after each piece in order: all below next is written; may be nil
}

// Write writes the rows of a job in the order of their numbers, whatever the number of
// workers, and stops early when ctx is done. The error is that of ctx or of w; what was
// written before it is whole pieces.
func (t *Table) Write(ctx context.Context, w io.Writer, j Job) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	pieces := (j.To - j.From + chunk - 1) / chunk
	ready := make([]chan []byte, pieces)
	for i := range ready {
		ready[i] = make(chan []byte, 1)
	}
	ahead := make(chan int) // a worker takes the next piece in order
	var all sync.WaitGroup
	for range max(1, j.Workers) {
		all.Go(func() {
			for i := range ahead {
				from := j.From + i*chunk
				ready[i] <- t.Text(from, min(from+chunk, j.To))
			}
		})
	}
	room := make(chan struct{}, 4*max(1, j.Workers)) // pieces that may wait for the writer
	all.Go(func() {
		defer close(ahead)
		for i := range pieces {
			select {
			case room <- struct{}{}:
			case <-ctx.Done():
				return
			}
			ahead <- i
		}
	})
	defer all.Wait()
	defer stop()
	for i := range pieces {
		if err := ctx.Err(); err != nil {
			return err // a piece that is ready would else be taken as likely
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case text := <-ready[i]:
			if _, err := w.Write(text); err != nil {
				return err
			}
			<-room
			if j.Done != nil {
				j.Done(min(j.From+(i+1)*chunk, j.To))
			}
		}
	}
	return nil
}
