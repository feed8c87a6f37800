package web

import (
	"bytes"
	"fmt"
	"html/template"
	"maps"
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web/drawing"
)

// A Searching is the page that finds every cover that no other one beats.
type Searching struct {
	Values     map[string]string // the input as it stands in the form, by path
	Entries    map[string]string // the search as typed, and the usual where nothing was, by name
	Understood map[string]string // how each length of the search was read, by name
	Faults     []calc.Fault      // what is wrong with the search
	Reason     string            // why there is no answer, where no entry is named
	Found      *cover.Found      // the answer, nil where there is none
	Drawn      *cover.Drawn      // the cover as drawn, where there is no more of an answer
}

// searchingView is what the template sees of a search.
type searchingView struct {
	Searching
	Title, Notice string
	Kept          []entry // of the input, hidden in the form
	Lists, Limits []field
	Wrong         []fault
	Back, Compare template.URL
	Wider         template.URL // the same search over every usual size, empty where it is so already
	Ways          template.URL // the same search over footings, ties and ledger screws, likewise
	AsGiven       string       // which of them are as the input has them
	Stairs        template.HTML
	Heads         []optionCell // of the columns behind the name of an option
	Best          []bestRow
	Groups        []optionGroup
	Hidden        int // options that are folded away
}

// An optionGroup is the options with one number of posts.
type optionGroup struct {
	Posts       int
	Says        string // what they reach
	Shown, Rest []optionRow
}

// An optionRow is one option.
type optionRow struct {
	Link    template.URL // of its report
	Name    string
	Fine    string
	Cells   []optionCell
	Verdict cover.Verdict
}

// An optionCell is one figure of an option.
type optionCell struct {
	Head, Text, Fine string
	Number           bool
}

// A bestRow is an option with what it is best in, or the cover as drawn.
type bestRow struct {
	optionRow
	Title  string
	Reason string // why it has no place among the options
}

// An optionColumn is one column of the tables of options.
type optionColumn struct {
	head   string
	number bool
	cell   func(f *cover.Found, p *cover.FrontPoint) (text, fine string)
	shown  func(s cover.Space) bool // nil for always
}

// optionColumns are the columns behind the name, which says rafter and spacing.
var optionColumns = []optionColumn{
	{"Beam", false, func(f *cover.Found, p *cover.FrontPoint) (string, string) {
		return p.Beam, several(f.Search.Space.BeamWoods, p.BeamWood)
	}, nil},
	{"Posts", false, func(f *cover.Found, p *cover.FrontPoint) (string, string) {
		return strconv.Itoa(p.Posts) + " of " + p.Post, several(f.Search.Space.PostWoods, p.PostWood)
	}, nil},
	{"Stand on", false, func(_ *cover.Found, p *cover.FrontPoint) (string, string) { return wayOf(p.Footing), "" },
		func(s cover.Space) bool { return len(s.Footings) > 0 }},
	{"Ties", false, func(_ *cover.Found, p *cover.FrontPoint) (string, string) { return wayOf(p.Tie), "" },
		func(s cover.Space) bool { return len(s.Ties) > 0 }},
	{"Lags a stud", false, func(_ *cover.Found, p *cover.FrontPoint) (string, string) { return wayOf(p.Ledger), "" },
		func(s cover.Space) bool { return len(s.Ledgers) > 0 }},
	{"Cost", true, func(f *cover.Found, p *cover.FrontPoint) (string, string) { return frontCost(f, p), "" }, nil},
	{"Beam sag, in", true, func(_ *cover.Found, p *cover.FrontPoint) (string, string) { return thousandths(p.Sag), "" }, nil},
	{"Tie rating, lb", true, func(_ *cover.Found, p *cover.FrontPoint) (string, string) { return tieWords(p.Rating), "" }, nil},
	{"Depth, in", true, func(_ *cover.Found, p *cover.FrontPoint) (string, string) { return inches(p.Depth), "" }, nil},
}

// columnsOf are the columns that a search asks for.
func columnsOf(s cover.Space) []optionColumn {
	return slices.DeleteFunc(slices.Clone(optionColumns), func(c optionColumn) bool { return c.shown != nil && !c.shown(s) })
}

// wayOf writes how a part of an option is made: nil as the job has it.
func wayOf[T fmt.Stringer](way *T) string {
	if way == nil {
		return "as given"
	}
	return (*way).String()
}

// several writes a wood where the space has more than one.
func several(of []cover.Wood, w cover.Wood) string {
	if len(of) < 2 {
		return ""
	}
	return w.String()
}

// frontCost writes the cost of an option in the measure of its search.
func frontCost(f *cover.Found, p *cover.FrontPoint) string {
	if f.Measure == cover.InDollars {
		return dollars(&p.Cost)
	}
	return pounds(p.Cost)
}

// thousandths writes the sag of a beam, up to a thousandth of an inch: stiff beams differ in no
// more.
func thousandths(x float64) string { return strconv.FormatFloat(calc.RoundUp(x, 0.001), 'f', 3, 64) }

// frontName says which option a row is.
func frontName(p *cover.FrontPoint) string {
	return p.Rafter + " at " + calc.Number(p.Spacing) + " in"
}

// AskedOf is what stands in the entries of a search: what was typed, and where nothing was what
// is searched.
func AskedOf(s cover.Search, typed map[string]string) map[string]string {
	out := s.Words()
	for name, text := range typed {
		if strings.TrimSpace(text) != "" {
			out[name] = text
		}
	}
	return out
}

// Render writes the page whole. An error is a fault of this program.
func (p Searching) Render() ([]byte, error) {
	v := searchingView{
		Searching: p, Title: "Patio cover: all options", Notice: cover.Notice,
		Back: addressOf("/", p.Values), Compare: addressOf("/compare", p.Values),
	}
	for _, path := range slices.Sorted(maps.Keys(p.Values)) {
		if strings.TrimSpace(p.Values[path]) != "" {
			v.Kept = append(v.Kept, entry{path, p.Values[path]})
		}
	}
	v.entries()
	if p.Found != nil {
		if err := v.answer(p.Found); err != nil {
			return nil, err
		}
	}
	return execute("searching", usualPage, v)
}

// entries lays out the form of the search, and words the faults: one of the input leads to
// the form of the input.
func (v *searchingView) entries() {
	wrong := map[string][]string{}
	for _, f := range v.Faults {
		name := entryOf(f.Path)
		wrong[name] = append(wrong[name], f.Words())
	}
	labels := map[string]string{}
	for _, e := range cover.SpaceEntries() {
		f := field{
			Path: e.Name, ID: "s-" + plain(e.Name), Label: e.Label, Unit: e.Unit, Hint: e.Allowed, Value: v.Entries[e.Name],
			Understood: v.Understood[e.Name], Faults: wrong[e.Name],
		}
		labels[e.Name] = e.Label
		if len(e.Choices) > 0 {
			f.Hint, f.Options = "", choices(e.Choices, e.Choices)
			f.Options[0].Words = "no limit"
			for i := range f.Options {
				f.Options[i].Chosen = f.Options[i].Value == f.Value
			}
		}
		if e.Limit {
			f.Placeholder = "no limit"
			v.Limits = append(v.Limits, f)
			continue
		}
		f.Placeholder = "empty: the usual, or as the job has it"
		v.Lists = append(v.Lists, f)
	}
	for _, f := range v.Faults {
		x := fault{ID: "#s-" + plain(entryOf(f.Path)), Label: labels[entryOf(f.Path)], Words: f.Words()}
		if x.Label == "" {
			x = fault{ID: "#search", Label: f.Path, Words: f.Words()}
			if d, ok := cover.FieldOf(f.Path); ok {
				x = fault{ID: string(v.Back) + "#f-" + plain(f.Path), Label: d.Label, Words: worded(f)}
			}
		}
		v.Wrong = append(v.Wrong, x)
	}
}

// entryOf is the entry that a path of a fault belongs to: space.ties of space.ties[0].kind.
func entryOf(path string) string {
	name, _, _ := strings.Cut(path, "[")
	return name
}

// answer lays out what was found.
func (v *searchingView) answer(f *cover.Found) error {
	var b bytes.Buffer
	if err := drawing.SVG(&b, drawing.FrontStairs(*f), "stairs"); err != nil {
		return err
	}
	v.Stairs = template.HTML(b.String()) // the writer escapes every text
	for _, c := range columnsOf(f.Search.Space) {
		v.Heads = append(v.Heads, optionCell{Text: headOf(f, c), Number: c.number})
	}
	drawn := bestRow{Title: "As drawn", Reason: f.Drawn.Reason}
	if f.Drawn.Point != nil {
		drawn.optionRow = v.row(f, f.Drawn.Point)
	}
	drawn.Link, drawn.Verdict = v.Back, f.Drawn.Verdict
	v.Best = append(v.Best, drawn)
	for _, x := range f.Best {
		row := bestRow{optionRow: v.row(f, &f.Points[x.Point])}
		row.Title = "Least " + strings.Join(x.Least, ", ")
		v.Best = append(v.Best, row)
	}
	for _, g := range f.ByPosts() {
		out := optionGroup{Posts: g.Posts, Says: reaches(f, g)}
		for i := range g.Stairs {
			out.Shown = append(out.Shown, v.row(f, &g.Stairs[i]))
		}
		for i := range g.Rest {
			out.Rest = append(out.Rest, v.row(f, &g.Rest[i]))
		}
		v.Hidden += len(out.Rest)
		v.Groups = append(v.Groups, out)
	}
	v.widen(f)
	return nil
}

// An optionTable is what the template needs to set some options in a table.
type optionTable struct {
	Heads []optionCell
	Rows  []optionRow
}

// tableOf sets options below the heads of their columns.
func tableOf(heads []optionCell, rows []optionRow) optionTable { return optionTable{heads, rows} }

// rowsOf says how many options two lists hold.
func rowsOf(a, b []optionRow) string {
	if n := len(a) + len(b); n != 1 {
		return strconv.Itoa(n) + " rows"
	}
	return "1 row"
}

// whole writes a count.
func whole(x float64) string { return calc.Grouped(strconv.FormatFloat(x, 'f', 0, 64)) }

// headOf is the head of a column, with the measure of the cost.
func headOf(f *cover.Found, c optionColumn) string {
	if c.head == "Cost" {
		return "Cost, " + f.Measure
	}
	return c.head
}

// row lays out one option. Its link holds the whole input with what the option is made of.
func (v *searchingView) row(f *cover.Found, p *cover.FrontPoint) optionRow {
	out := optionRow{
		Link: addressOf("/", cover.ToForm(p.Apply(f.Input))), Name: frontName(p), Fine: several(f.Search.Space.RafterWoods, p.RafterWood),
		Verdict: p.Verdict,
	}
	for _, c := range columnsOf(f.Search.Space) {
		x := optionCell{Head: headOf(f, c), Number: c.number}
		x.Text, x.Fine = c.cell(f, p)
		out.Cells = append(out.Cells, x)
	}
	return out
}

// reaches says how far a group goes in cost and sag.
func reaches(f *cover.Found, g cover.FrontGroup) string {
	first, last := &g.Stairs[0], &g.Stairs[len(g.Stairs)-1]
	if len(g.Stairs) == 1 {
		return "cost " + frontCost(f, first) + ", beam sag " + thousandths(first.Sag) + " in"
	}
	return "from cost " + frontCost(f, first) + " with " + thousandths(first.Sag) + " in of beam sag to " +
		frontCost(f, last) + " with " + thousandths(last.Sag) + " in"
}

// widen leads to the same search over every usual size, where the input gives one, and over
// ways to put the cover together, where the search leaves them as they are.
func (v *searchingView) widen(f *cover.Found) {
	in := f.Input
	if in.Rafters.Size != nil || in.Beams.Size != nil || in.Posts.Size != nil {
		in.Rafters.Size, in.Beams.Size, in.Posts.Size = nil, nil, nil
		usual, sizes := cover.Search{Space: cover.UsualSpace(in)}.Words(), map[string]string{}
		for name, text := range usual {
			if strings.HasSuffix(name, "_sizes") && text != v.Entries[name] {
				sizes[name] = text
			}
		}
		v.Wider = v.with(sizes)
	}
	ways, usual := map[string]string{}, cover.UsualWays(f.Input)
	var kept []string
	for _, e := range cover.SpaceEntries() {
		if text := usual[e.Name]; text != "" && v.Entries[e.Name] == "" {
			ways[e.Name], kept = text, append(kept, strings.ToLower(e.Label[:1])+e.Label[1:])
		}
	}
	v.Ways, v.AsGiven = v.with(ways), strings.Join(kept, ", ")
}

// with is the address of the same search with other entries, empty where there are none.
func (v *searchingView) with(other map[string]string) template.URL {
	if len(other) == 0 {
		return ""
	}
	all := maps.Clone(v.Entries)
	maps.Copy(all, other)
	maps.Copy(all, v.Values)
	return addressOf("/options", all)
}
