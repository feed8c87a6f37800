package web

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"html/template"
	"io"
	"net/url"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web/drawing"
)

// spareWoods is how many empty entries for a wood the form of a comparison offers.
const spareWoods = 3

// A Comparing is the page that sets spacings and woods of the rafters side by side.
type Comparing struct {
	Values     map[string]string // the input as it stands in the form, by path
	Spacings   string            // as typed
	Woods      []string          // as typed
	Faults     []calc.Fault      // what is wrong with the choice
	Comparison *cover.Comparison // the answer, nil where there are faults
}

// comparingView is what the template sees of a comparison.
type comparingView struct {
	Comparing
	Title, Notice string
	Known         template.HTML
	Kept          []entry // of the input, hidden in the form
	Entries       []string
	Back, Search  template.URL
	Cost, Curves  template.HTML
}

// An entry is one hidden entry of a form.
type entry struct{ Path, Value string }

// Render writes the page whole. An error is a fault of this program.
func (p Comparing) Render() ([]byte, error) {
	v := comparingView{
		Comparing: p, Title: "Patio cover: spacings and woods", Notice: cover.Notice, Known: known,
		Back: addressOf("/", p.Values), Search: addressOf("/options", p.Values),
	}
	for _, f := range table {
		for _, path := range pathsOf(p.Values, f.Path) {
			v.Kept = append(v.Kept, entry{path, p.Values[path]})
		}
	}
	for _, path := range pathsOf(p.Values, "site.sources.") {
		v.Kept = append(v.Kept, entry{path, p.Values[path]})
	}
	v.Entries = append(v.Entries, p.Woods...)
	for len(v.Entries) < len(p.Woods)+spareWoods {
		v.Entries = append(v.Entries, "")
	}
	if c := p.Comparison; c != nil {
		for _, d := range []struct {
			into  *template.HTML
			scene drawing.Scene
			id    string
		}{{&v.Cost, drawing.CostAndSag(*c), "cost"}, {&v.Curves, drawing.SpanCurves(*c), "curves"}} {
			var b bytes.Buffer
			if err := drawing.SVG(&b, d.scene, d.id); err != nil {
				return nil, err
			}
			*d.into = template.HTML(b.String()) // the writer escapes every text
		}
	}
	return execute("comparing", usualPage, v)
}

// pathsOf lists the filled paths of the form that belong to a field, in order: the path
// itself, the rows of a list, and all below a path that ends in a point.
func pathsOf(values map[string]string, field string) []string {
	var out []string
	filled := func(path string) {
		if strings.TrimSpace(values[path]) != "" {
			out = append(out, path)
		}
	}
	before, after, list := strings.Cut(field, "[]")
	switch {
	case strings.HasSuffix(field, "."):
		for _, f := range table {
			if name, ok := strings.CutPrefix(f.Path, "site."); ok {
				filled(field + name)
			}
		}
	case list:
		for i := range cover.MaxList {
			filled(before + "[" + strconv.Itoa(i) + "]" + after)
		}
	default:
		filled(field)
	}
	return out
}

// addressOf is the address of a page with what was filled in.
func addressOf(page string, values map[string]string) template.URL {
	q := url.Values{}
	for path, text := range values {
		if strings.TrimSpace(text) != "" {
			q.Set(path, text)
		}
	}
	return template.URL(page + "?" + q.Encode()) // encoded, so that no text leaves the query
}

// inches writes a sag up to a hundredth of an inch.
func inches(x float64) string { return strconv.FormatFloat(calc.RoundUp(x, 0.01), 'f', 2, 64) }

// spent writes the cost of an option in the measure of its comparison.
func spent(c cover.Comparison, o cover.Option) string {
	if c.Measure == cover.InDollars {
		return dollars(&o.Spent)
	}
	return pounds(o.Spent)
}

// costHead heads the column of the cost.
func costHead(c cover.Comparison) string {
	if c.Measure == cover.InDollars {
		return "cost"
	}
	return c.Measure
}

// drop writes how far the underside of the lowest beam is below the high edge, up to the
// next sixteenth of an inch.
func drop(o cover.Option) string { return calc.FeetInches(calc.RoundUp(o.Drop, calc.Sixteenth)) }

// optionName says which option a row is.
func optionName(o cover.Option) string {
	name := calc.Number(o.Spacing) + " in, " + o.Wood.String()
	if o.Drawn {
		return "as drawn: " + name
	}
	return name
}

// ties writes how many ties an option has and how strong the strongest must be.
func ties(o cover.Option) string {
	if o.Ties == 0 {
		return "none"
	}
	return strconv.Itoa(o.Ties) + " of up to " + pounds(o.Tie) + " lb"
}

// Compared prints a comparison for a terminal. The error is that of w.
func Compared(w io.Writer, c cover.Comparison) error {
	p := newPrinter(w)
	if c.Input.Job.Name != nil {
		p.say(*c.Input.Job.Name)
	}
	p.say(c.Notice)
	p.head("What it comes to")
	for _, s := range c.Says {
		p.say(s)
	}
	p.say("Cost in " + c.Measure + ": " + c.Reason + ".")
	p.head("Options, * none better in both cost and sag")
	p.row("", "spacing, wood", "rafters", "ratio", "governs", "live sag", "total sag", costHead(c), "weight", "ties", "framing", "whole")
	for _, o := range c.Options {
		star := ""
		if o.Front {
			star = "*"
		}
		if o.Missing != "" {
			p.row("", optionName(o), "no answer: "+o.Missing)
			continue
		}
		p.row(star, optionName(o), strconv.Itoa(o.Pieces)+" of "+o.Rafter, ratio(o.Ratio), o.Governs,
			inches(o.Live)+" in", inches(o.Sag)+" in", spent(c, o), pounds(o.Weight)+" lb", ties(o),
			string(o.Framing), string(o.Verdict))
	}
	p.head("Deck, beam and posts below")
	p.row("spacing, wood", "deck", "fasteners", "beam", "post", "below the high edge", "clear", "over")
	for _, o := range c.Options {
		if o.Missing != "" {
			continue
		}
		p.row(optionName(o), o.Deck, strconv.Itoa(o.Fasteners), o.Beam, o.Post, drop(o), clearHeight(o.Clear), strings.Join(o.Over, "; "))
	}
	p.head("How to read it")
	for _, n := range c.Notes {
		p.say("  - " + n)
	}
	p.head("Stamp")
	p.say(c.Stamp.Program + "; " + c.Stamp.Standards)
	p.say("input " + c.Stamp.InputHash)
	return p.close()
}

// comparedHead names the columns of a comparison as a table of values.
var comparedHead = []string{
	"as_drawn", "spacing_in", "species", "grade", "rafter", "rafters", "ratio", "governs", "live_sag_in", "total_sag_in", "deck",
	"beam", "post", "board_feet", "weight_lb", "cost_dollars", "ties", "tie_rating_lb", "fasteners",
	"clear_in", "drop_in", "framing", "verdict",
	"front", "over", "no_answer", "without_price",
}

// ComparedCSV writes the options as comma separated values behind the notice. Demands
// are rounded up, capacities and heights down. The error is that of w.
func ComparedCSV(w io.Writer, c cover.Comparison) error {
	if _, err := fmt.Fprintf(w, "# %s\n# %s; %s; input %s\n# cost told in %s: %s\n", c.Notice,
		c.Stamp.Program, c.Stamp.Standards, c.Stamp.InputHash, c.Measure, oneLine(c.Reason)); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	rows := [][]string{comparedHead}
	for _, o := range c.Options {
		cost := ""
		if o.Cost != nil {
			cost = plainNumber(calc.RoundUp(*o.Cost, 0.01))
		}
		rows = append(rows, []string{
			strconv.FormatBool(o.Drawn), plainNumber(o.Spacing), o.Wood.Species, o.Wood.Grade, o.Rafter, strconv.Itoa(o.Pieces),
			ratio(o.Ratio), o.Governs, inches(o.Live), inches(o.Sag), o.Deck, o.Beam, o.Post, plainNumber(calc.RoundUp(o.BoardFeet, 0.1)),
			plainNumber(calc.RoundUp(o.Weight, 1)), cost, strconv.Itoa(o.Ties), plainNumber(o.Tie), strconv.Itoa(o.Fasteners),
			plainNumber(calc.RoundDown(o.Clear, calc.Sixteenth)), plainNumber(calc.RoundUp(o.Drop, calc.Sixteenth)),
			string(o.Framing), string(o.Verdict), strconv.FormatBool(o.Front), strings.Join(o.Over, "; "), o.Missing,
			strings.Join(o.Unpriced, "; "),
		})
	}
	for _, r := range rows {
		for i := range r {
			r[i] = cellText(r[i])
		}
	}
	return out.WriteAll(rows)
}

// plainNumber writes a number without commas, to nine digits.
func plainNumber(x float64) string { return strconv.FormatFloat(x, 'g', 9, 64) }

// oneLine takes the line breaks out of a text that may hold words of the user, so that it
// stays behind the sign of a comment.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// cellText keeps a spreadsheet from taking a text for a formula.
func cellText(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}
