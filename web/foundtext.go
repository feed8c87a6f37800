package web

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// FoundText prints what a search found for a terminal. The error is that of w.
func FoundText(w io.Writer, f cover.Found) error {
	p := newPrinter(w)
	if f.Input.Job.Name != nil {
		p.say(*f.Input.Job.Name)
	}
	p.say(f.Notice)
	p.head("What was found")
	p.say(fmt.Sprintf("%d of %s covers hold and are beaten by no other one in what is compared: %s. Cost in %s.",
		len(f.Points), whole(f.Options), strings.Join(f.Counted(), ", "), f.Measure))
	for _, why := range f.WhyNone() {
		p.say("  - " + why)
	}
	p.say("As drawn: " + string(f.Drawn.Verdict) + "; " + f.Drawn.Reason + ".")
	for _, x := range f.Drawn.Over {
		p.say("  - " + x.Text)
	}
	if f.Drawn.Point == nil && len(f.Points) == 0 {
		return p.foundEnd(&f)
	}
	head := []string{"", "verdict", "rafters"}
	for _, c := range columnsOf(f.Search.Space) {
		head = append(head, strings.ToLower(headOf(&f, c)))
	}
	line := func(title string, q *cover.FrontPoint) {
		rafters := frontName(q) + " " + several(f.Search.Space.RafterWoods, q.RafterWood)
		cells := []string{title, string(q.Verdict), strings.TrimSpace(rafters)}
		for _, c := range columnsOf(f.Search.Space) {
			text, fine := c.cell(&f, q)
			cells = append(cells, strings.TrimSpace(text+" "+fine))
		}
		p.row(cells...)
	}
	p.head("As drawn, and best in one thing")
	p.row(head...)
	if f.Drawn.Point != nil {
		line("as drawn", f.Drawn.Point)
	}
	for _, b := range f.Best {
		line("least "+strings.Join(b.Least, ", "), &f.Points[b.Point])
	}
	if len(f.Open) > 0 {
		p.say("Open in the first option, to be opened up or not checked:")
	}
	for _, x := range f.Open {
		p.say("  - " + x.Text)
	}
	for _, g := range f.ByPosts() {
		p.head(fmt.Sprintf("%d posts, * least sag for its cost", g.Posts))
		p.row(head...)
		for i := range g.Stairs {
			line("*", &g.Stairs[i])
		}
		for i := range g.Rest {
			line("", &g.Rest[i])
		}
	}
	return p.foundEnd(&f)
}

// foundEnd prints how to read the options, and the stamp.
func (p *printer) foundEnd(f *cover.Found) error {
	p.head("How to read it")
	for _, n := range append(f.Notes[:len(f.Notes):len(f.Notes)], f.Passed...) {
		p.say("  - " + n)
	}
	p.head("Stamp")
	p.say(f.Stamp.Program + "; " + f.Stamp.Standards)
	p.say("input " + f.Stamp.InputHash)
	return p.close()
}

// foundHead names the columns of the options as a table of values.
var foundHead = []string{
	"as_drawn", "cost", "measure", "beam_sag_in", "posts", "tie_rating_lb", "depth_in", "spacing_in", "posts_a_line",
	"rafter", "rafter_species", "rafter_grade", "beam", "beam_species", "beam_grade", "post", "post_species", "post_grade",
	"footing", "ties", "ledger_lags", "verdict",
}

// FoundCSV writes the options as comma separated values behind the notice, as drawn first
// where it has a place. Cost, sag and rating are rounded up. The error is that of w.
func FoundCSV(w io.Writer, f cover.Found) error {
	if _, err := fmt.Fprintf(w, "# %s\n# input %s\n", f.Notice, f.Stamp.InputHash); err != nil {
		return err
	}
	rows := [][]string{foundHead}
	add := func(drawn bool, p *cover.FrontPoint) {
		rows = append(rows, []string{
			strconv.FormatBool(drawn), plainNumber(calc.RoundUp(p.Cost, 0.01)), f.Measure, thousandths(p.Sag), strconv.Itoa(p.Posts),
			plainNumber(calc.RoundUp(p.Rating, 1)), plainNumber(calc.RoundUp(p.Depth, 0.01)), plainNumber(p.Spacing), strconv.Itoa(p.Count),
			p.Rafter, p.RafterWood.Species, p.RafterWood.Grade, p.Beam, p.BeamWood.Species, p.BeamWood.Grade,
			p.Post, p.PostWood.Species, p.PostWood.Grade,
			wayOf(p.Footing), wayOf(p.Tie), wayOf(p.Ledger), string(p.Verdict),
		})
	}
	if f.Drawn.Point != nil {
		add(true, f.Drawn.Point)
	}
	for i := range f.Points {
		add(false, &f.Points[i])
	}
	for _, r := range rows {
		for i := range r {
			r[i] = cellText(r[i])
		}
	}
	return csv.NewWriter(w).WriteAll(rows)
}
