package drawing_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web/drawing"
)

// compared sets one of the covers side by side.
func compared(t testing.TB, name string) cover.Comparison {
	t.Helper()
	c, err := cover.Compare(read(t, name), cover.Choice{})
	require.NoError(t, err)
	return c
}

// Everything of a chart stands on its paper, is well-formed, and says what it shows.
func TestChartsOfEveryCover(t *testing.T) {
	for _, name := range covers {
		c := compared(t, name)
		for _, s := range []drawing.Scene{drawing.CostAndSag(c), drawing.SpanCurves(c)} {
			text := svg(t, s, "chart")
			d := xml.NewDecoder(strings.NewReader(text))
			var err error
			for err == nil {
				_, err = d.Token()
			}
			assert.True(t, errors.Is(err, io.EOF), "%s: %v", name, err)
			assert.Contains(t, text, `role="img"`)
			assert.Contains(t, text, "<desc id=\"chart-desc\">"+s.Description[:20])
			assert.NotContains(t, text, "style=", "the policy of the page forbids it")
			for _, item := range s.Items {
				if p, ok := item.(drawing.Path); ok {
					for _, at := range p.Points {
						assert.True(t, at.X >= 0 && at.X <= s.Width && at.Y >= 0 && at.Y <= s.Height, "%s: %v of %q", name, at, s.Title)
					}
				}
			}
		}
	}
}

// Every option of the front is named on the chart and in its words, and no other.
func TestCostAndSagNamesTheFront(t *testing.T) {
	c := compared(t, "desert")
	s := drawing.CostAndSag(c)
	n := 0
	for _, o := range c.Options {
		if o.Front {
			n++
			assert.Contains(t, s.Description, o.Rafter+" "+o.Wood.String())
		}
	}
	assert.Equal(t, n, strings.Count(s.Description, "Not bettered"))
	for _, w := range []string{"Douglas Fir-Larch No.2", "Southern Pine No.2", "ring: as drawn", "COST, BOARD FEET"} {
		assert.True(t, s.Has(w), w)
	}
}

// Each size has a curve, and the line at 1 stands out.
func TestSpanCurvesNameEverySize(t *testing.T) {
	c := compared(t, "desert")
	s := drawing.SpanCurves(c)
	for _, k := range c.Curves {
		assert.True(t, s.Has(k.Size), k.Size)
	}
	assert.True(t, s.Has("1: FULL"))
	dashed := 0
	for _, item := range s.Items {
		if p, ok := item.(drawing.Path); ok && len(p.Pen.Dash) > 0 {
			dashed++
		}
	}
	assert.Equal(t, 2, dashed, "the limit, and the span of the cover")
	assert.True(t, s.Has("THIS COVER"))
}

// Without an option that passes, or a curve, the chart says so.
func TestChartsOfNothing(t *testing.T) {
	assert.Contains(t, drawing.CostAndSag(cover.Comparison{}).Description, "No option passes")
	assert.Contains(t, drawing.SpanCurves(cover.Comparison{}).Description, "nothing to draw")
	one := cover.Comparison{Measure: cover.InBoardFeet}
	one.Options = []cover.Option{{Rafter: "2x6", Spent: 100, Sag: 0.2, Framing: cover.OK, Front: true}}
	assert.True(t, drawing.CostAndSag(one).Has(`2x6 @ 0"`), "one option has axes too")
}
