package web_test

import (
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web"
)

// covers are the whole inputs that every page is tried with.
var covers = []string{"desert", "coast", "snow", "survey", "drift", "ranch", "garden"}

// inputOf reads one of the covers.
func inputOf(t testing.TB, name string) cover.Input {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "testdata", "covers", name+".json"))
	require.NoError(t, err)
	defer f.Close()
	in, err := cover.Read(f)
	require.NoError(t, err)
	return in
}

// report sizes one of the covers.
func report(t testing.TB, name string) cover.Report {
	t.Helper()
	r, err := cover.Size(inputOf(t, name))
	require.NoError(t, err)
	return r
}

// rendered is the page of a report with its form filled.
func rendered(t testing.TB, r cover.Report) string {
	t.Helper()
	page, err := web.Page{Values: cover.ToForm(r.Input), Report: &r}.Render()
	require.NoError(t, err)
	return string(page)
}

func TestPageOfEveryCover(t *testing.T) {
	for _, name := range covers {
		t.Run(name, func(t *testing.T) {
			r := report(t, name)
			page := rendered(t, r)
			assert.Empty(t, pageFaults(page))
			words := text(page)
			for _, said := range sayings(t, r) {
				there := strings.Contains(words, said) || strings.Contains(words, spoken.Replace(said))
				assert.True(t, there, "the page does not say %q", said)
			}
			for _, l := range r.Links {
				assert.Contains(t, page, `<span class="mark">`+l.Mark+`</span>`)
			}
			assert.Equal(t, 2, strings.Count(words, cover.Notice), "at the top and at the bottom")
			assert.Contains(t, words, r.Stamp.InputHash)
		})
	}
}

// unsaid are the keys of a report whose texts a page sets in another way: symbols,
// the drawing, and the input, which stands there as a job file.
var unsaid = []string{
	"symbol", "formula", "demand_symbol", "capacity_symbol", "calculation", "status", "input", "geometry", "path", "title", "schema",
}

// sayings are all texts of a report that a page must show, each once.
func sayings(t testing.TB, r cover.Report) []string {
	t.Helper()
	text, err := json.Marshal(r)
	require.NoError(t, err)
	var tree any
	require.NoError(t, json.Unmarshal(text, &tree))
	all := words(tree, nil)
	slices.Sort(all)
	return slices.Compact(all)
}

func words(tree any, all []string) []string {
	switch x := tree.(type) {
	case map[string]any:
		for key, value := range x {
			if !slices.Contains(unsaid, key) {
				all = words(value, all)
			}
		}
	case []any:
		for _, value := range x {
			all = words(value, all)
		}
	case string:
		all = append(all, strings.Join(strings.Fields(x), " "))
	}
	return all
}

// spoken are the words of an input that a page says in its own way.
var spoken = strings.NewReplacer("true", "yes", "false", "no", "to_100F", "up to 100 °F",
	"house_diaphragm", "the house by deck and ledger", "by_stock", "where the stock length forces it",
	"enveloped", "the worse of clear and obstructed", "live_and_dead", "live and dead load",
	"rim", "rim joist", "_", " ")

// The verdict stands before every number, in a word and not in a color alone.
func TestVerdictFirst(t *testing.T) {
	r := report(t, "desert")
	words := text(rendered(t, r))
	at := strings.Index(words, "Verdict ✕ "+string(r.Verdict))
	require.Positive(t, at)
	assert.Less(t, at, strings.Index(words, r.Summary[0].Text))
	assert.Less(t, at, strings.Index(words, "Members Mark"))
}

func TestEmptyForm(t *testing.T) {
	page, err := web.Page{}.Render()
	require.NoError(t, err)
	assert.Empty(t, pageFaults(string(page)))
	words := text(string(page))
	for _, d := range cover.Fields() {
		if d.Path == "schema" {
			continue
		}
		path := strings.ReplaceAll(d.Path, "[]", "[0]")
		assert.Contains(t, string(page), ` name="`+path+`"`, "every field of the input has its entry")
		assert.Contains(t, words, d.Label)
	}
}

// The form of a report holds the very input, so that sending it again asks the same.
func TestFormRoundTrip(t *testing.T) {
	for _, name := range covers {
		r := report(t, name)
		form := map[string][]string{}
		for path, value := range entries(rendered(t, r)) {
			form[path] = []string{value}
		}
		again, _, err := cover.FromForm(form)
		require.NoError(t, err, name)
		assert.Equal(t, cover.ToForm(r.Input), cover.ToForm(again), name)
	}
}

// A wrong entry keeps what was typed, says what is allowed, and is listed at the top.
func TestFaultsStandAtTheirFields(t *testing.T) {
	form := map[string][]string{"cover.projection_ft": {"twelve"}, "cover.width_ft": {`20' 6"`}, "rafters.grade": {"No.9"}}
	_, understood, err := cover.FromForm(form)
	var wrong *calc.InputError
	require.ErrorAs(t, err, &wrong)
	p := web.Page{
		Values:     map[string]string{"cover.projection_ft": "twelve", "cover.width_ft": `20' 6"`, "rafters.grade": "No.9"},
		Understood: understood, Faults: wrong.Faults,
	}
	raw, err := p.Render()
	require.NoError(t, err)
	page := string(raw)
	assert.Empty(t, pageFaults(page))
	assert.Equal(t, "twelve", entries(page)["cover.projection_ft"])
	assert.Contains(t, text(page), `read as 20'-6"`)
	assert.Contains(t, page, `href="#f-cover-projection-ft"`)
	assert.Contains(t, text(page), strconv.Itoa(len(wrong.Faults))+" entries need another look")
	assert.Equal(t, len(wrong.Faults), strings.Count(page, `<li><a href="#`), "every fault at once")
	_, list, _ := strings.Cut(page, `role="alert"`)
	list, _, _ = strings.Cut(list, "</ul></div>")
	for _, said := range []string{
		`"twelve" is not a number from 3 to 40 ft, written 12' 6", 12-6, 12.5 or 3.8 m`,
		"one of ledger, rafter tails, freestanding", "one of the house by deck and ledger, knee braces",
		"or “Ground snow pg”", "Roof layers: 0 layers", "or “Post positions from the left edge” instead",
	} {
		assert.Contains(t, text(list), said)
	}
	assert.NotContains(t, text(list), "_", "keys of the input are no words of a form")
	assert.Contains(t, page, `aria-invalid="true"`)
}

// A missing entry is told as missing, not as a nothing that is no number.
func TestMissingEntry(t *testing.T) {
	raw, err := web.Page{Faults: []calc.Fault{{Path: "cover.width_ft", Given: "nothing", Allowed: "3 to 100 ft"}}}.Render()
	require.NoError(t, err)
	assert.Contains(t, text(string(raw)), "missing: 3 to 100 ft")
	assert.NotContains(t, text(string(raw)), "nothing is not")
}

// People count rows from one.
func TestRowsAreCountedFromOne(t *testing.T) {
	page, err := web.Page{}.Render()
	require.NoError(t, err)
	assert.Contains(t, string(page), `aria-label="row 1"`)
	assert.NotContains(t, string(page), `aria-label="row 0"`)
}

const evil = `"><script>alert(1)</script><img src=x onerror=alert(1)>`

// Whatever stands in a text of an input comes back as words, in the page and in the
// drawings.
func TestTrapMarkupInEveryText(t *testing.T) {
	r := report(t, "survey")
	in := r.Input
	in.Job.Name, in.Job.Note = new(evil), new(evil)
	in.Site.Sources = map[string]string{"wind_speed_mph": evil, "exposure": evil}
	for i := range in.Cover.Layers {
		in.Cover.Layers[i].Name, in.Cover.Layers[i].Weight = new(evil), new(2.0)
	}
	for i := range in.House.Joints {
		in.House.Joints[i].Mark, in.House.Joints[i].Detail = new(evil), new(evil)
		in.House.Joints[i].Wall, in.House.Joints[i].Photo = new(evil), new(evil)
	}
	for i := range in.House.OldRoof.Layers {
		in.House.OldRoof.Layers[i].Name, in.House.OldRoof.Layers[i].Weight = new(evil), new(1.0)
	}
	for i := range in.House.OldRoof.Openings {
		in.House.OldRoof.Openings[i].Name = new(evil)
	}
	r, err := cover.Size(in)
	require.NoError(t, err)
	page := rendered(t, r)
	assert.Empty(t, pageFaults(page))
	assert.NotContains(t, page, "<script>alert")
	assert.NotContains(t, page, "<img")
	assert.Contains(t, page, "&lt;script&gt;alert(1)")
}

// The same for what was typed, for faults, and for whole reports of foreign words.
func TestTrapMarkupInTypedEntries(t *testing.T) {
	values, understood := map[string]string{evil: evil}, map[string]string{}
	var faults []calc.Fault
	for _, d := range cover.Fields() {
		path := strings.ReplaceAll(d.Path, "[]", "[0]")
		values[path], understood[path] = evil, evil
		faults = append(faults, calc.Fault{Path: path, Given: evil, Allowed: evil})
	}
	faults = append(faults, calc.Fault{Path: evil, Given: evil, Allowed: evil})
	raw, err := web.Page{Values: values, Understood: understood, Faults: faults}.Render()
	require.NoError(t, err)
	assert.NotContains(t, string(raw), "<script>alert")
	assert.NotContains(t, string(raw), "<img")
	assert.Empty(t, pageFaults(string(raw)))
	raw, err = web.Refusal{Status: 400, Title: evil, Detail: evil}.Render()
	require.NoError(t, err)
	assert.NotContains(t, string(raw), "<script>alert")
	assert.Empty(t, pageFaults(string(raw)))
}

func TestStaticHoldsWhatThePageNames(t *testing.T) {
	raw, err := web.Page{}.Render()
	require.NoError(t, err)
	named := regexp.MustCompile(`"/static/([^"]+)"`).FindAllStringSubmatch(string(raw), -1)
	require.NotEmpty(t, named)
	for _, m := range named {
		f, err := web.Static().Open(m[1])
		require.NoError(t, err)
		f.Close()
	}
}

// A reader follows the elements of a page.
type reader struct {
	open   []string       // elements not yet closed
	ids    map[string]int // how often each stands
	wanted []string       // ids that something refers to
	faults []string
}

// pageFaults lists what a strict content policy, a screen reader or a parser would
// stumble over.
func pageFaults(page string) []string {
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	r := reader{ids: map[string]int{}}
	for {
		token, err := d.RawToken()
		if errors.Is(err, io.EOF) {
			return append(r.faults, r.names()...)
		}
		if err != nil {
			return append(r.faults, err.Error())
		}
		switch e := token.(type) {
		case xml.StartElement:
			r.start(e)
		case xml.EndElement:
			r.end(e.Name.Local)
		}
	}
}

func (r *reader) start(e xml.StartElement) {
	r.open = append(r.open, e.Name.Local)
	for _, a := range e.Attr {
		switch name := a.Name.Local; {
		case name == "id":
			r.ids[a.Value]++
		case name == "style" || strings.HasPrefix(name, "on"):
			r.faults = append(r.faults, "inline "+name)
		case name == "for" || name == "list" || name == "aria-labelledby":
			r.wanted = append(r.wanted, strings.Fields(a.Value)...)
		}
	}
}

func (r *reader) end(name string) {
	for len(r.open) > 0 && void[r.open[len(r.open)-1]] && r.open[len(r.open)-1] != name {
		r.open = r.open[:len(r.open)-1]
	}
	if len(r.open) == 0 || r.open[len(r.open)-1] != name {
		r.faults = append(r.faults, "</"+name+"> closes nothing, open: "+strings.Join(r.open, " "))
		return
	}
	r.open = r.open[:len(r.open)-1]
}

// names lists ids that stand twice, and references to ids that stand nowhere.
func (r *reader) names() []string {
	var faults []string
	for id, n := range r.ids {
		if n > 1 {
			faults = append(faults, "id "+id+" stands "+strconv.Itoa(n)+" times")
		}
	}
	for _, id := range r.wanted {
		if r.ids[id] == 0 {
			faults = append(faults, "nothing has the id "+id)
		}
	}
	return faults
}

func TestPageFaults(t *testing.T) {
	for page, want := range map[string]string{
		`<p>x</p>`:                                     "",
		`<p><b>x</p></b>`:                              "</p> closes nothing, open: p b",
		`<p style="x">x</p>`:                           "inline style",
		`<p onclick="x">x</p>`:                         "inline onclick",
		`<p id="a"></p><p id="a"></p>`:                 "id a stands 2 times",
		`<label for="a">x</label>`:                     "nothing has the id a",
		`<p><br>x<input id="a" name="b"></p>`:          "",
		`<svg aria-labelledby="a b"><a id="a"/></svg>`: "nothing has the id b",
	} {
		faults := append(pageFaults(page), "")
		assert.Equal(t, want, faults[0], page)
	}
}

// void are the elements that are never closed.
var void = map[string]bool{"meta": true, "link": true, "input": true, "br": true}

var tag = regexp.MustCompile(`<[^>]*>`)

var entity = strings.NewReplacer("&#39;", "'", "&#34;", `"`, "&lt;", "<", "&gt;", ">", "&amp;", "&", "&#43;", "+")

// text is what a reader sees of a page, its white space folded.
func text(page string) string {
	return strings.Join(strings.Fields(entity.Replace(tag.ReplaceAllString(page, ""))), " ")
}

var (
	input    = regexp.MustCompile(`<input[^>]* name="([^"]*)" value="([^"]*)"`)
	choice   = regexp.MustCompile(`(?s)<select[^>]* name="([^"]*)"[^>]*>(.*?)</select>`)
	selected = regexp.MustCompile(`<option value="([^"]*)" selected>`)
)

// entries are the names and values that a browser would send.
func entries(page string) map[string]string {
	out := map[string]string{}
	for _, m := range input.FindAllStringSubmatch(page, -1) {
		out[m[1]] = entity.Replace(m[2])
	}
	for _, m := range choice.FindAllStringSubmatch(page, -1) {
		if s := selected.FindStringSubmatch(m[2]); s != nil {
			out[m[1]] = entity.Replace(s[1])
		}
	}
	return out
}

// A mark touched in a drawing leads to its row of the connection table, and no row of
// the table is without its mark in a drawing.
func TestMarksLeadToTheirRows(t *testing.T) {
	for _, name := range covers {
		r := report(t, name)
		page := rendered(t, r)
		rows := map[string]bool{}
		for _, l := range r.Links {
			rows[l.Mark] = true
			assert.Contains(t, page, `<tr id="mark-`+l.Mark+`">`)
			assert.Contains(t, page, `<a href="#mark-`+l.Mark+`"`, name)
		}
		for _, to := range regexp.MustCompile(`href="#mark-([^"]*)"`).FindAllStringSubmatch(page, -1) {
			assert.True(t, rows[to[1]], "%s: %s leads nowhere", name, to[1])
		}
	}
}

// An entry that may stay empty says what it is for.
func TestOpenEntriesSayWhatTheyAreFor(t *testing.T) {
	page, err := web.Page{}.Render()
	require.NoError(t, err)
	words := text(string(page))
	for _, f := range cover.Fields() {
		if f.Need == cover.NeedOpen && f.Why != "" {
			assert.Contains(t, words, f.Why, f.Path)
		}
	}
}
