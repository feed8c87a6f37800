package web

import (
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// Rows of the lists that the form offers beyond those in use.
const (
	spareLayers = 2
	leastLayers = 5
	spareJoints = 1
)

// A group is one part of the form.
type group struct {
	ID     string // name in the page
	Title  string
	Note   string // what the group is about, in a sentence
	Fields []field
	Rows   []listRow // of a list: its elements
	More   []field   // folded away: empty entries that the program fills or leaves open
	Extra  []field   // folded away: the sources of the site's criteria
	Paste  *field    // of the joints: a table in place of the rows
}

// A field is one entry of the form.
type field struct {
	Path        string // name of the entry: path in the input
	ID          string // name in the page
	Label       string
	Unit        string
	Hint        string   // what is allowed, and what an empty entry means
	Placeholder string   // stands in an empty entry
	Value       string   // what was typed
	Understood  string   // how a length was read
	Options     []option // of a choice, the first one is empty
	List        string   // name of the list of suggestions
	Mode        string   // kind of keyboard
	Required    bool
	Wide        bool     // takes a line of its own
	Faults      []string // what is wrong with it
}

// A listRow is one element of a list in the form.
type listRow struct {
	Fields []field // shown
	More   []field // folded away: empty entries of a long row
}

// longRow is how many entries of a row are always shown.
const longRow = 9

// foldedRow folds away the empty entries at the end of a long row.
func foldedRow(all []field) listRow {
	var r listRow
	for i, f := range all {
		if i >= longRow && f.Value == "" && !f.Required && len(f.Faults) == 0 {
			r.More = append(r.More, f)
			continue
		}
		r.Fields = append(r.Fields, f)
	}
	return r
}

// An option is one answer to a choice.
type option struct {
	Value, Words string
	Chosen       bool
}

// A groupNote introduces one part of the form: a group of the input, or a list in one.
type groupNote struct{ prefix, title, note string }

// groupNotes are the parts in the order of the form.
var groupNotes = []groupNote{
	{"job", "Job", "Heads the report."},
	{"site", "Site", "Criteria of the building department. An empty entry is assumed as its line says, and the report lists it."},
	{"cover", "Cover", "Sizes on plan, from above. Lengths may be written 12' 6\", 12-6, 12.5 or 3.8 m."},
	{"cover.layers[]", "Roof layers", "Everything the rafters carry, from the top down. Leave the weight empty for a layer of the list."},
	{"rafters", "Rafters", "Leave the size empty to have the smallest one chosen that passes."},
	{"deck", "Roof deck", "What spans from rafter to rafter. Leave it empty to see which panel or plank would serve."},
	{"beams", "Beams", "Leave the lines empty for one beam at the projection less the overhang."},
	{"posts", "Posts", "A number in equal bays, or the place of each post."},
	{"products[]", "Products", "Engineered lumber with the values of its evaluation report: a species of your own, with the grade given."},
	{"foundation", "Foundation", "What the posts stand on."},
	{"lateral", "Sideways", "What keeps the cover from swaying. None is an answer, and it fails."},
	{"house", "House", "What stands behind the cover."},
	{"connections", "Connections", "What holds the parts together. Leave it empty to have hardware proposed that carries the forces."},
	{"house.old_roof", "Old roof", "For the survey of its joints: what carries it, what lies on it, what the cover hangs from."},
	{"house.old_roof.layers[]", "Layers of the old roof", "Instead of its least dead load: what is there, gone, or to come."},
	{"house.old_roof.below[]", "Below the joints", "Line by line down to the ground: tying the rafters alone moves the failure there."},
	{"house.old_roof.openings[]", "Openings under the cover", "Windows and doors of the rooms behind."},
	{"house.joints[]", "Existing roof joints", "Joints of the old roof, one by one or in runs of equal ones."},
	{"market", "Market", "What the yard keeps."},
	{"market.prices[]", "Prices", "Your own prices, by item as the take-off names it. Without them nothing is priced."},
}

// table holds the fields of an input in the order of the form.
var table = cover.Fields()

// groups lays out the form for what was typed.
func groups(p Page) []group {
	faults := map[string][]string{}
	for _, f := range p.Faults {
		faults[f.Path] = append(faults[f.Path], worded(f))
	}
	var out []group
	for _, n := range groupNotes {
		out = append(out, n.group(p, faults))
	}
	return out
}

// group lays out one part of the form.
func (n groupNote) group(p Page, faults map[string][]string) group {
	g := group{ID: "g-" + plain(n.prefix), Title: n.title, Note: n.note}
	if list, ok := strings.CutSuffix(n.prefix, "[]"); ok {
		for i := range rows(p, list) {
			at := list + "[" + strconv.Itoa(i) + "]"
			g.Rows = append(g.Rows, foldedRow(row(fieldsOf(p, faults, n.prefix, at), i)))
		}
		if n.prefix == "house.joints[]" {
			g.Paste = paste(p, faults)
		}
		return g
	}
	all := fieldsOf(p, faults, n.prefix, n.prefix)
	g.Fields, g.More = folded(all)
	if n.prefix == "site" {
		g.Extra = sources(p, faults, all)
	}
	return g
}

// folded parts the entries that everybody looks at from the empty ones that the
// program assumes or leaves open. A size or a line of beams is looked at by everybody.
func folded(all []field) (shown, more []field) {
	for _, f := range all {
		asked := f.Required || f.Wide || f.Path == "deck.kind" ||
			strings.HasSuffix(f.Path, ".size") || strings.HasPrefix(f.Path, "posts.count")
		if asked || f.Value != "" || len(f.Faults) > 0 {
			shown = append(shown, f)
			continue
		}
		more = append(more, f)
	}
	return shown, more
}

// row keeps the hints for the first row of a list, and requires nothing of a row
// that is left empty.
func row(fields []field, i int) []field {
	used := slices.ContainsFunc(fields, func(f field) bool { return f.Value != "" })
	for k := range fields {
		fields[k].Required = fields[k].Required && used
		if i > 0 {
			fields[k].Hint = ""
		}
	}
	return fields
}

// rows is how many rows a list gets: those in use, and some spare ones.
func rows(p Page, list string) int {
	used := 0
	for path, text := range p.Values {
		rest, ok := strings.CutPrefix(path, list+"[")
		if !ok || strings.TrimSpace(text) == "" {
			continue
		}
		number, _, _ := strings.Cut(rest, "]")
		if i, err := strconv.Atoi(number); err == nil && i >= 0 && i < cover.MaxList {
			used = max(used, i+1)
		}
	}
	if list == "cover.layers" {
		return min(max(used+spareLayers, leastLayers), cover.MaxList)
	}
	return min(used+spareJoints, cover.MaxList)
}

// fieldsOf lays out the fields directly below a prefix of the table, at a path of
// the input.
func fieldsOf(p Page, faults map[string][]string, prefix, at string) []field {
	var out []field
	for _, d := range table {
		name, ok := strings.CutPrefix(d.Path, prefix+".")
		if !ok || strings.ContainsAny(name, ".[") {
			continue
		}
		f := newField(d, at+"."+name)
		f.Value, f.Understood, f.Faults = p.Values[f.Path], p.Understood[f.Path], faults[f.Path]
		f.Hint = hint(d, f.Value == "")
		for i := range f.Options {
			f.Options[i].Chosen = f.Options[i].Value == f.Value
		}
		out = append(out, f)
	}
	return out
}

func newField(d cover.Field, path string) field {
	f := field{
		Path: path, ID: "f-" + plain(path), Label: d.Label, Unit: d.Unit,
		Required: d.Need == cover.NeedRequired, List: suggestions(d.Path),
		Wide: strings.HasPrefix(path, "job."),
	}
	switch {
	case d.Kind == cover.KindChoice:
		f.Options = choices(d.Choices, d.Choices)
	case d.Kind == cover.KindFlag:
		f.Options = choices([]string{"true", "false"}, []string{"yes", "no"})
	case d.Kind == cover.KindInteger:
		f.Mode = "numeric"
	case d.Kind == cover.KindNumber && !d.Length():
		f.Mode = "decimal"
	}
	switch {
	case d.Need == cover.NeedAssumed:
		f.Placeholder = "empty: " + spoken(d.Default)
	case d.Need == cover.NeedOpen && strings.HasSuffix(path, ".size"):
		f.Placeholder = "chosen if empty"
	}
	if len(f.Options) > 0 {
		f.Options[0].Words = "not said"
		if d.Need == cover.NeedAssumed {
			f.Options[0].Words = "not said: " + spoken(d.Default)
		}
	}
	return f
}

// choices offers the words behind an empty answer.
func choices(values, words []string) []option {
	out := make([]option, 1, len(values)+1)
	for i, v := range values {
		out = append(out, option{Value: v, Words: spoken(words[i])})
	}
	return out
}

// hint says what is allowed, and how an empty entry is read and why.
func hint(d cover.Field, empty bool) string {
	var all []string
	if d.Low != d.High {
		text := calc.Number(d.Low) + " to " + calc.Number(d.High)
		if d.Unit != "" {
			text += " " + d.Unit
		}
		all = append(all, text)
	}
	if d.Kind == cover.KindNumbers {
		all = append(all, "several with commas between")
	}
	if d.Need == cover.NeedAssumed && empty {
		all = append(all, "if empty: "+spoken(d.Default)+" – "+d.Why)
	}
	if d.Need == cover.NeedOpen && d.Why != "" && empty {
		all = append(all, d.Why)
	}
	return strings.Join(all, "; ")
}

// paste offers an entry for a table of joints.
func paste(p Page, faults map[string][]string) *field {
	return &field{
		Path: cover.JointsTable, ID: "f-" + plain(cover.JointsTable), Label: "Or a table of joints", Value: p.Values[cover.JointsTable],
		Faults: faults[cover.JointsTable],
		Hint: "Copied from a spreadsheet, or a file with commas or semicolons: the first row names the columns, " +
			"such as mark, wall, first, last, place, end_ft, evidence, condition, fastener, count, line.",
	}
}

// sources offers an entry for where each criterion of the site was found.
func sources(p Page, faults map[string][]string, of []field) []field {
	var out []field
	for _, f := range of {
		_, name, _ := strings.Cut(f.Path, ".")
		path := "site.sources." + name
		out = append(out, field{
			Path: path, ID: "f-" + plain(path), Label: f.Label, Value: p.Values[path], Faults: faults[path],
			Placeholder: "criteria sheet, map, measured",
		})
	}
	return out
}
