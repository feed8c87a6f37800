package web_test

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web"
)

// comparisons holds those that were made, by the name of the cover.
var comparisons = map[string]cover.Comparison{}

// comparison sets one of the covers side by side. Tests share it, each with options of its
// own.
func comparison(t testing.TB, name string) cover.Comparison {
	t.Helper()
	c, made := comparisons[name]
	if !made {
		var err error
		c, err = cover.Compare(inputOf(t, name), cover.Choice{})
		require.NoError(t, err)
		comparisons[name] = c
	}
	c.Options = slices.Clone(c.Options)
	return c
}

func TestComparingPage(t *testing.T) {
	for _, name := range covers {
		c := comparison(t, name)
		page, err := web.Comparing{Values: cover.ToForm(c.Input), Comparison: &c}.Render()
		require.NoError(t, err)
		assert.Empty(t, pageFaults(string(page)), name)
		words := text(string(page))
		for _, s := range append(append([]string{c.Notice, c.Stamp.InputHash}, c.Says...), c.Notes...) {
			assert.True(t, strings.Contains(words, s), "%s: the page does not say %q", name, s)
		}
		for path, value := range cover.ToForm(c.Input) {
			assert.Contains(t, string(page), `<input type="hidden" name="`+path+`" value="`, "%s: %s", path, value)
		}
	}
}

// What was typed and is in no list of the tables is shown as text, never as a tag.
func TestTrapComparingEscapesWhatWasTyped(t *testing.T) {
	const tag = `"><script>alert(1)</script>`
	_, err := web.Comparing{Spacings: tag, Woods: []string{tag}}.Render()
	assert.Error(t, err, "a page without faults has a comparison")
	c := comparison(t, "desert")
	c.Input.Job.Name, c.Options[1].Missing = new(tag), tag
	page, err := web.Comparing{
		Values: map[string]string{"job.name": tag, "rafters.species": tag}, Spacings: tag, Woods: []string{tag}, Comparison: &c,
	}.Render()
	require.NoError(t, err)
	assert.NotContains(t, string(page), "<script>alert")
	assert.Empty(t, pageFaults(string(page)))
}

func TestComparedText(t *testing.T) {
	c := comparison(t, "desert")
	var b strings.Builder
	require.NoError(t, web.Compared(&b, c))
	for _, o := range c.Options {
		assert.Contains(t, b.String(), o.Wood.String())
	}
	assert.Contains(t, b.String(), "as drawn: 24 in, Douglas Fir-Larch No.2")
	assert.Error(t, web.Compared(full{}, c))
	assert.Error(t, web.ComparedCSV(full{}, c))
}

// The values can be read back, one row for each option, none taken for a formula.
func TestComparedCSV(t *testing.T) {
	c := comparison(t, "coast")
	c.Options[1].Governs = "=1+1"
	var b strings.Builder
	require.NoError(t, web.ComparedCSV(&b, c))
	assert.True(t, strings.HasPrefix(b.String(), "# "+cover.Notice))
	r := csv.NewReader(strings.NewReader(b.String()))
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(c.Options)+1)
	assert.Equal(t, "'=1+1", rows[2][7])
	for i, o := range c.Options {
		assert.Equal(t, o.Rafter, rows[i+1][4])
		assert.Equal(t, string(o.Framing), rows[i+1][21])
	}
}
