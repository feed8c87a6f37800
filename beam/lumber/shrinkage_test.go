package lumber_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// argument returns a number of the column arguments, such as "d=9.25; M1=19".
func argument(t testing.TB, r calc.Row, name string) float64 {
	t.Helper()
	for word := range strings.SplitSeq(r.Text("arguments"), ";") {
		key, value, _ := strings.Cut(strings.TrimSpace(word), "=")
		if key != name {
			continue
		}
		x, err := strconv.ParseFloat(value, 64)
		assert.NoError(t, err)
		return x
	}
	t.Fatalf("%s has no argument %s", r.Text("id"), name)
	return 0
}

func TestPublishedShrinkage(t *testing.T) {
	for _, r := range calctest.Published(t, "wood.csv") {
		if r.Text("quantity") != "shrink" {
			continue
		}
		s := lumber.NewShrinkage("Douglas Fir-Larch", lumber.AcrossWidth,
			argument(t, r, "d"), argument(t, r, "M1"), argument(t, r, "M2"))
		calctest.Near(t, r.Num("want"), s.Final, r.Num("within"), r.Text("source"))
	}
}

// FPL-RP-489 as worked in words: green (28 %) to 8 % takes 4.3 % of the depth.
func TestGreenLumberShrinks(t *testing.T) {
	s := lumber.NewShrinkage("Douglas Fir-Larch", lumber.AcrossWidth, 9.25, 28, 8)
	calctest.Near(t, 4.3, 100*s.Change/s.Size, 0.05, "FPL-RP-489, S = 6.031 - 0.215 M")
	stable := lumber.NewShrinkage("Redwood", lumber.AcrossWidth, 9.25, 28, 8)
	assert.Less(t, stable.Change, s.Change, "redwood shrinks less")
	thin := lumber.NewShrinkage("Douglas Fir-Larch", lumber.AcrossThickness, 9.25, 28, 8)
	assert.Less(t, thin.Change, s.Change, "the thickness shrinks less")
	assert.Equal(t, stable.Final, lumber.NewShrinkage("Western Cedars", lumber.AcrossWidth, 9.25, 28, 8).Final)
}

func TestShrinkageLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(0.5, 24).Draw(t, "size")
		from := rapid.Float64Range(5, 40).Draw(t, "from")
		to := rapid.Float64Range(5, 40).Draw(t, "to")
		direction := rapid.SampledFrom([]lumber.Direction{
			lumber.AcrossWidth, lumber.AcrossThickness,
		}).Draw(t, "direction")
		s := lumber.NewShrinkage(rapid.SampledFrom(lumber.Species()).Draw(t, "species"), direction, size, from, to)
		if err := calctest.Prove(s.Lines()); err != nil {
			t.Fatal(err)
		}
		if to < from && s.Change < 0 || to > from && s.Change > 0 {
			t.Fatalf("from %v to %v %%: change %v", from, to, s.Change)
		}
		back := lumber.NewShrinkage("Hem-Fir", direction, size, from, from)
		if !near(size, back.Final) {
			t.Fatalf("the same moisture changed %v in to %v in", size, back.Final)
		}
	})
}
