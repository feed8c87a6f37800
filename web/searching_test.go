package web_test

import (
	"encoding/csv"
	"fmt"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web"
)

// found searches a small space of one of the covers, some of whose combinations hold.
func found(t testing.TB) (cover.Found, map[string]string) {
	t.Helper()
	in := report(t, "drift").Input
	s, _, err := cover.NewSearch(in, map[string]string{
		"space.rafter_sizes": "2x8, 2x10", "space.beam_sizes": "4x10, 4x12, 6x12",
		"space.post_counts": "3, 4", "space.post_sizes": "4x6, 6x6",
		"space.rafter_spacings_in": "12, 16", "space.rafter_woods": "Hem-Fir No.2, Douglas Fir-Larch No.2",
	})
	require.NoError(t, err)
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	require.Greater(t, len(f.Points), 5)
	return f, s.Words()
}

// searching is the page of what was found.
func searching(t testing.TB, f cover.Found, entries map[string]string) string {
	t.Helper()
	page, err := web.Searching{Values: cover.ToForm(f.Input), Entries: entries, Found: &f}.Render()
	require.NoError(t, err)
	return string(page)
}

// The page says what was searched and found, with the notice at both ends, and holds the job
// and the search so that sending it again asks the same.
func TestSearchingPage(t *testing.T) {
	f, entries := found(t)
	page := searching(t, f, entries)
	assert.Empty(t, pageFaults(page))
	words := text(page)
	assert.Equal(t, 2, strings.Count(words, cover.Notice), "at the top and at the bottom")
	require.NotEmpty(t, f.Open)
	for _, x := range f.Open {
		assert.Contains(t, words, strings.Join(strings.Fields(x.Text), " "))
	}
	for _, s := range append([]string{
		f.Stamp.InputHash, fmt.Sprintf("%d of %.0f combinations", len(f.Points), f.Options),
		fmt.Sprintf("%d rows", len(f.Points)), "As drawn",
	}, f.Notes...) {
		assert.Contains(t, words, s)
	}
	for path, value := range cover.ToForm(f.Input) {
		assert.Contains(t, page, `<input type="hidden" name="`+path+`" value="`, value)
	}
	for _, e := range cover.SpaceEntries() {
		assert.Contains(t, page, ` name="`+e.Name+`"`)
		assert.Contains(t, words, e.Label)
		if !e.Limit {
			assert.Contains(t, page, ">"+entries[e.Name]+"</textarea>")
		}
	}
}

var rowLink = regexp.MustCompile(`<th scope="row"><a href="/\?([^"]*)"`)

// Each option leads to its own report: its link holds the whole input with what it is made of.
func TestEveryOptionLeadsToItsReport(t *testing.T) {
	f, entries := found(t)
	links := rowLink.FindAllStringSubmatch(searching(t, f, entries), -1)
	require.Len(t, links, len(f.Points))
	there := map[string]int{}
	for _, l := range links {
		query, err := url.ParseQuery(entity.Replace(l[1]))
		require.NoError(t, err)
		in, _, err := cover.FromForm(query)
		require.NoError(t, err)
		there[cover.ToForm(in)["rafters.size"]+fmt.Sprint(cover.ToForm(in))]++
	}
	for _, p := range f.Points {
		want := cover.ToForm(p.Apply(f.Input))
		assert.Equal(t, 1, there[want["rafters.size"]+fmt.Sprint(want)], "%+v", p)
	}
}

// With nothing found the page says what is over in the cover as drawn.
func TestSearchingPageOfNothing(t *testing.T) {
	in := report(t, "desert").Input
	s, _, err := cover.NewSearch(in, map[string]string{"space.beam_sizes": "4x4", "space.rafter_sizes": "2x4"})
	require.NoError(t, err)
	f, err := s.Run(t.Context(), in, nil)
	require.NoError(t, err)
	require.Empty(t, f.Points)
	page := searching(t, f, s.Words())
	assert.Empty(t, pageFaults(page))
	require.NotEmpty(t, f.Drawn.Over)
	assert.Contains(t, text(page), f.Drawn.Over[0].Text)
	assert.NotContains(t, page, "<svg xmlns", "there is nothing to draw")
}

// A thousand options stay grouped, and most of them folded away.
func TestSearchingPageOfAThousandOptions(t *testing.T) {
	f, entries := found(t)
	one := f.Points[0]
	f.Points = nil
	for i := range 1000 {
		p := one
		p.Posts = 3 + i%4
		p.Cost, p.Sag = 500+float64(i/4), 0.5-0.001*float64(i/8)
		p.Rating, p.Depth = 500-float64(i%9), 12+float64(i%7)
		f.Points = append(f.Points, p)
	}
	f.Best = []cover.Best{{Point: 0, Least: []string{"cost"}}}
	page := searching(t, f, entries)
	assert.Empty(t, pageFaults(page))
	assert.Equal(t, 1000, strings.Count(page, `<th scope="row"><a href="`))
	assert.Equal(t, 4, strings.Count(page, "<h3 id=\"posts-"))
	assert.Contains(t, text(page), "1000 rows")
	assert.Contains(t, text(page), "more with a smaller tie or less depth")
}

// Every fault of a search stands at its entry and at the top, with what was typed left as it
// is; one of the input leads to the form of the input.
func TestSearchingPageWithFaults(t *testing.T) {
	in := report(t, "desert").Input
	typed := map[string]string{"space.beam_sizes": "4x7, 4x8", "limits.depth_in": "deep"}
	s, _, err := cover.NewSearch(in, typed)
	var wrong *calc.InputError
	require.ErrorAs(t, err, &wrong)
	faults := append(wrong.Faults, calc.Fault{Path: "posts.count", Given: "nothing", Allowed: "a number"},
		calc.Fault{Path: "space", Given: "0", Allowed: "1"})
	page, err := web.Searching{Values: cover.ToForm(in), Entries: web.AskedOf(s, typed), Faults: faults}.Render()
	require.NoError(t, err)
	assert.Empty(t, pageFaults(string(page)))
	for _, want := range []string{
		`>4x7, 4x8</textarea>`, ` value="deep"`, `href="#s-space-beam-sizes"`, `id="s-space-beam-sizes"`, `#f-posts-count"`,
		`href="#search"`,
		`>2x4, 2x6, 2x8`,
	} {
		assert.Contains(t, string(page), want)
	}
	assert.Equal(t, 2, strings.Count(text(string(page)), `"4x7" is not`), "at the top and at the entry")
	assert.Equal(t, 2, strings.Count(text(string(page)), cover.Notice))
}

// What was typed is shown as text, never as a tag, wherever it stands.
func TestTrapSearchingEscapesWhatWasTyped(t *testing.T) {
	const tag = `"></textarea><script>alert(1)</script>`
	f, _ := found(t)
	entries, values, heard := map[string]string{}, map[string]string{"job.name": tag, tag: tag}, map[string]string{}
	var faults []calc.Fault
	for _, e := range cover.SpaceEntries() {
		entries[e.Name], heard[e.Name] = tag, tag
		faults = append(faults, calc.Fault{Path: e.Name, Given: tag, Allowed: tag})
	}
	faults = append(faults, calc.Fault{Path: tag, Given: tag, Allowed: tag})
	f.Input.Job.Name = new(tag)
	f.Drawn.Reason, f.Drawn.Over = tag, []cover.Finding{{Verdict: cover.Over, Text: tag, Mark: tag}}
	f.Passed, f.Notes = []string{tag}, []string{tag}
	f.Points[0].Beam, f.Points[1].RafterWood.Species = tag, tag
	for _, p := range []web.Searching{
		{Values: values, Entries: entries, Understood: heard, Found: &f},
		{Values: values, Entries: entries, Understood: heard, Faults: faults},
		{Values: values, Entries: entries, Reason: tag},
	} {
		page, err := p.Render()
		require.NoError(t, err)
		assert.NotContains(t, string(page), "<script>alert")
		assert.Empty(t, pageFaults(string(page)))
	}
}

// The text says the same as the page, and its writer's error is told.
func TestFoundText(t *testing.T) {
	f, _ := found(t)
	var b strings.Builder
	require.NoError(t, web.FoundText(&b, f))
	for _, want := range append([]string{"as drawn", "3 POSTS", "least cost", "Hem-Fir No.2", f.Stamp.InputHash}, f.Passed...) {
		assert.Contains(t, b.String(), want)
	}
	assert.Error(t, web.FoundText(full{}, f))
	assert.Error(t, web.FoundCSV(full{}, f))
}

// The values can be read back, as drawn first, one row for each option, none taken for a
// formula.
func TestFoundCSV(t *testing.T) {
	f, _ := found(t)
	f.Points[0].Beam = "=1+1"
	var b strings.Builder
	require.NoError(t, web.FoundCSV(&b, f))
	assert.True(t, strings.HasPrefix(b.String(), "# "+cover.Notice))
	r := csv.NewReader(strings.NewReader(b.String()))
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.NotNil(t, f.Drawn.Point)
	require.Len(t, rows, len(f.Points)+2)
	assert.Equal(t, "true", rows[1][0])
	assert.Equal(t, "'=1+1", rows[2][12])
	for i, p := range f.Points {
		assert.Equal(t, p.Rafter, rows[i+2][9])
	}
}
