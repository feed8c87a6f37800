package drawing_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web/drawing"
)

// The plan of an old roof says in words and shapes what each joint is.
func TestOldRoofOfForty(t *testing.T) {
	x := report(t, "ranch", nil).Survey
	require.NotNil(t, x)
	s := drawing.OldRoof(*x)
	for _, want := range []string{"OLD ROOF", "tied: it holds", "tie needed", "open up", "not judged", "N4 ×8", "S3 ×11", "FAR WALL"} {
		assert.True(t, s.Has(want), want)
	}
	assert.Contains(t, s.Description, "26 need a tie, 14 to open up")
	within(t, s)
}

// within wants every text and line of a scene on its paper.
func within(t testing.TB, s drawing.Scene) {
	t.Helper()
	for _, item := range s.Items {
		switch x := item.(type) {
		case drawing.Path:
			for _, at := range x.Points {
				assert.True(t, at.X >= 0 && at.X <= s.Width && at.Y >= 0 && at.Y <= s.Height, "%v off the paper", at)
			}
		case drawing.Text:
			wide := 0.55 * x.Size * float64(len([]rune(x.Words)))
			left := x.At.X
			if x.Anchor == drawing.Middle {
				left -= wide / 2
			}
			assert.True(t, left >= -2 && left+wide <= s.Width+2, "%q off the paper", x.Words)
		}
	}
}

// Each verdict has a shape of its own, so that none rests on color.
func TestTrapVerdictsByColorAlone(t *testing.T) {
	shapes := map[string]cover.Verdict{}
	for _, v := range []cover.Verdict{cover.OK, cover.Over, cover.OpenUp, cover.NotChecked} {
		x := cover.Survey{Joints: []cover.SurveyJoint{{Mark: "Q", Place: "eave", Count: 1, Verdict: v}}}
		with, none := drawing.OldRoof(x), drawing.OldRoof(cover.Survey{})
		var own []string
		for _, item := range with.Items[len(none.Items)-legendItems(none):] {
			if p, ok := item.(drawing.Path); ok {
				own = append(own, fmt.Sprint(len(p.Points), p.Closed, p.Pen.Fill))
			}
		}
		key := strings.Join(own, ";")
		assert.Empty(t, shapes[key], "%s looks as %s", v, shapes[key])
		shapes[key] = v
	}
}

// legendItems counts the items that follow the joints of a scene without joints: its
// legend and title.
func legendItems(s drawing.Scene) int {
	for i, item := range s.Items {
		if x, ok := item.(drawing.Text); ok && strings.HasPrefix(x.Words, "tied") {
			return len(s.Items) - i + 1
		}
	}
	return 0
}

// Many joints on one wall, long marks, and a roof whose size nobody gave are drawn.
func TestOldRoofOfManyJoints(t *testing.T) {
	var x cover.Survey
	for i := range 60 {
		x.Joints = append(x.Joints, cover.SurveyJoint{
			Mark: fmt.Sprintf("a very long mark %d", i), Place: []string{"eave", "far_wall", "ridge", "interior"}[i%4], Count: i,
			Verdict: cover.OpenUp,
		})
	}
	within(t, drawing.OldRoof(x))
	svg(t, drawing.OldRoof(x), "old")
	within(t, drawing.OldRoof(cover.Survey{}))
	for _, r := range []cover.SurveyRoof{
		{Known: true, Span: 60, Overhang: 8, Length: 4, Zoned: true, Edge: 3, Corner: 3},
		{Known: true, Span: 4, Length: 400, Lines: []float64{2}, Zoned: true, Edge: 1, Corner: 2},
	} {
		x.Roof = r
		within(t, drawing.OldRoof(x))
	}
}
