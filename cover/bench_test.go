package cover

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
)

// kept holds results, so that nothing is left out as unused.
var kept float64

// desert is the demonstration in the desert.
func desert(tb testing.TB) Input {
	tb.Helper()
	f, err := os.Open(filepath.Join(calctest.Root(tb), "testdata", "covers", "desert.json"))
	require.NoError(tb, err)
	defer func() { require.NoError(tb, f.Close()) }()
	in, err := Read(f)
	require.NoError(tb, err)
	return in
}

// chosen prepares the model of an input, room for its numbers, and the sizes it gets.
func chosen(tb testing.TB, in Input) (*model, *workspace, design) {
	tb.Helper()
	full, _ := in.Assume()
	m, err := newModel(full)
	require.NoError(tb, err)
	ws := newWorkspace(m)
	return m, ws, m.choose(ws)
}

// BenchmarkSize takes one cover with its sizes from the loads to every ratio, as a
// search does over and over; the same with every ratio written up; and one cover from its
// input to the whole report, which has both design methods, connections, foundations and
// what to buy.
func BenchmarkSize(b *testing.B) {
	in := desert(b)
	b.Run("numbers", func(b *testing.B) {
		m, ws, d := chosen(b, in)
		b.ReportAllocs()
		for b.Loop() {
			kept += m.numbers(ws, &d.rafter, &d.beam, &d.post)
		}
	})
	b.Run("report", func(b *testing.B) {
		m, ws, d := chosen(b, in)
		m.sideways = newSideways(m, d.woods())
		b.ReportAllocs()
		for b.Loop() {
			kept += m.numbers(ws, &d.rafter, &d.beam, &d.post)
			kept += float64(m.members(ws, &d)[0].Ratio)
		}
	})
	b.Run("whole", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			r, err := Size(in)
			require.NoError(b, err)
			kept += float64(r.Members[0].Ratio)
		}
	})
}

func TestNumbersAllocateNothing(t *testing.T) {
	cut := desert(t)
	cut.Cover.Slope, cut.Cover.HighEdge, cut.Cover.Covering = new(3.0), new(12.0), new("lattice")
	cut.Beams.Notch, cut.Beams.OnPost, cut.Lateral.Out = new(1.0), new("side_bolted"), new("embedded_posts")
	planted := desert(t)
	planted.Foundation = Foundation{Kind: new("embedded")}
	planted.Lateral = Lateral{Along: new("embedded_posts"), Out: new("embedded_posts")}
	for name, in := range map[string]Input{
		"desert": desert(t), "steep lattice with cuts and bolts": cut, "posts in the ground": planted,
	} {
		m, ws, d := chosen(t, in)
		assert.Zero(t, testing.AllocsPerRun(20, func() { kept += m.numbers(ws, &d.rafter, &d.beam, &d.post) }), name)
	}
}

// The numbers of the search are those of the report, and grading once more changes
// nothing.
func TestNumbersAreThoseOfTheReport(t *testing.T) {
	in := desert(t)
	m, ws, d := chosen(t, in)
	r, err := Size(in)
	require.NoError(t, err)
	most := 0.0
	for _, x := range r.Members {
		most = max(most, float64(x.Ratio))
	}
	for range 3 {
		calctest.Close(t, most, m.numbers(ws, &d.rafter, &d.beam, &d.post), 1e-12, 0, "tried are those that can govern")
	}
}
