package table_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
	"patiocover/cover/table"
)

// criteria are the sample's, after a change.
func criteria(t testing.TB, change func(*table.Criteria)) table.Criteria {
	t.Helper()
	text, err := os.ReadFile("invented.json")
	require.NoError(t, err)
	c, err := table.Read(bytes.NewReader(text))
	require.NoError(t, err)
	if change != nil {
		change(&c)
	}
	return c
}

func made(t testing.TB, c table.Criteria) *table.Table {
	t.Helper()
	tab, err := table.New(c)
	require.NoError(t, err)
	return tab
}

// written is the table whole, with so many workers.
func written(t testing.TB, tab *table.Table, workers int) string {
	t.Helper()
	var b bytes.Buffer
	b.WriteString(tab.Head())
	require.NoError(t, tab.Write(context.Background(), &b, table.Job{To: tab.Len(), Workers: workers}))
	return b.String()
}

// One worker or several, the table is the same to the letter; so are its parts joined in
// the order of their numbers.
func TestTableIsTheSameOnAnyNumberOfWorkers(t *testing.T) {
	c := criteria(t, func(c *table.Criteria) {
		c.Rafters.Spacings = nil
		for s := 10.0; s <= 34; s++ {
			c.Rafters.Spacings = append(c.Rafters.Spacings, s)
		}
	})
	tab := made(t, c)
	require.Greater(t, tab.Len(), 800, "more than one piece of work")
	one := written(t, tab, 1)
	assert.Equal(t, one, written(t, tab, 2))
	assert.Equal(t, one, written(t, tab, 5))
	var joined bytes.Buffer
	joined.WriteString(tab.Head())
	for _, cut := range [][2]int{{0, 1}, {1, 513}, {513, 700}, {700, tab.Len()}} {
		require.NoError(t, tab.Write(context.Background(), &joined, table.Job{From: cut[0], To: cut[1], Workers: 2}))
	}
	assert.Equal(t, one, joined.String())
}

// The written table can be read back, a row for each cell in the order of the numbers,
// behind the notice.
func TestTableCanBeReadBack(t *testing.T) {
	tab := made(t, criteria(t, nil))
	text := written(t, tab, 2)
	assert.Contains(t, text, "# "+cover.Notice)
	assert.Contains(t, text, tab.Hash())
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, tab.Len()+1)
	for i, row := range rows[1:] {
		assert.Equal(t, fmt.Sprint(i), row[0])
	}
}

// The head says all that the cells rest on: the criteria can be read back from it, with the
// woods some of whose design values are not yet compared with their print.
func TestTableHeadHoldsItsCriteria(t *testing.T) {
	tab := made(t, criteria(t, nil))
	for line := range strings.Lines(tab.Head()) {
		text, ok := strings.CutPrefix(line, "# {")
		if !ok {
			continue
		}
		again, err := table.Read(strings.NewReader("{" + text))
		require.NoError(t, err)
		assert.Equal(t, tab.Hash(), made(t, again).Hash())
	}
	assert.Contains(t, tab.Head(), "# {")
	assert.Contains(t, tab.Head(), cover.Program)
	assert.Contains(t, tab.Head(), "from memory, not yet compared with their print, are among those of Douglas Fir-Larch No.2\n")
}

// What was interrupted is taken up where its state left off and becomes the same file.
func TestTableIsTakenUpAgain(t *testing.T) {
	tab := made(t, criteria(t, func(c *table.Criteria) {
		c.Rafters.Spacings = nil
		for s := 6.0; s <= 40; s++ {
			c.Rafters.Spacings = append(c.Rafters.Spacings, s)
		}
	}))
	dir := t.TempDir()
	whole, broken := filepath.Join(dir, "whole.csv"), filepath.Join(dir, "broken.csv")
	job := table.Job{To: tab.Len(), Workers: 2}
	require.NoError(t, tab.WriteFile(context.Background(), whole, job, nil))
	ctx, stop := context.WithCancel(context.Background())
	err := tab.WriteFile(ctx, broken, job, func(int, int) { stop() })
	require.ErrorIs(t, err, context.Canceled)
	f, err := os.OpenFile(broken, os.O_APPEND|os.O_WRONLY, 0)
	require.NoError(t, err)
	_, err = io.WriteString(f, "half a row")
	require.NoError(t, err)
	require.NoError(t, f.Close())
	first := 0
	require.NoError(t, tab.WriteFile(context.Background(), broken, job, func(done, all int) {
		if first == 0 {
			first = done
		}
		assert.Equal(t, tab.Len(), all)
	}))
	assert.Greater(t, first, 512, "what was done is not done again")
	a, err := os.ReadFile(whole)
	require.NoError(t, err)
	b, err := os.ReadFile(broken)
	require.NoError(t, err)
	assert.Equal(t, string(a), string(b))
	assert.Equal(t, written(t, tab, 1), string(a))
	require.NoError(t, tab.WriteFile(context.Background(), whole, job, nil), "all is done already")
}

// A file of other criteria, of another range or of nobody is not written over.
func TestTrapTableOverAnotherFile(t *testing.T) {
	tab := made(t, criteria(t, nil))
	path := filepath.Join(t.TempDir(), "t.csv")
	job := table.Job{To: 10, Workers: 1}
	require.NoError(t, tab.WriteFile(context.Background(), path, job, nil))
	other := made(t, criteria(t, func(c *table.Criteria) { c.Limits.Live = 360 }))
	assert.ErrorContains(t, other.WriteFile(context.Background(), path, job, nil), "other criteria")
	text, err := os.ReadFile(table.StateOf(path))
	require.NoError(t, err)
	older := strings.Replace(string(text), cover.Program, "older 0.0", 1)
	require.NoError(t, os.WriteFile(table.StateOf(path), []byte(older), 0o600))
	assert.ErrorContains(t, tab.WriteFile(context.Background(), path, job, nil), "older 0.0")
	require.NoError(t, os.WriteFile(table.StateOf(path), text, 0o600))
	job.To = 11
	assert.ErrorContains(t, tab.WriteFile(context.Background(), path, job, nil), "another range")
	require.NoError(t, os.Remove(table.StateOf(path)))
	assert.ErrorContains(t, tab.WriteFile(context.Background(), path, job, nil), "there already")
}

// A write that fails stops the table with its error.
func TestTableStopsWhereItCannotWrite(t *testing.T) {
	tab := made(t, criteria(t, nil))
	assert.ErrorIs(t, tab.Write(context.Background(), full{}, table.Job{To: tab.Len(), Workers: 2}), errFull)
}

var errFull = errors.New("no room")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

// answer is a number that a larger load or spacing may not raise for rafters, and may not
// lower for the others; a size counts by its place in the list.
func answer(t testing.TB, c table.Criteria, x table.Cell) float64 {
	t.Helper()
	sizes := map[string][]string{table.BeamPart: c.Beams.Sizes, table.PostPart: c.Posts.Sizes}[x.Part]
	for i, s := range sizes {
		if s == x.Size {
			if x.None {
				i++
			}
			return float64(i)
		}
	}
	if x.None && x.Part == table.FootingPart {
		return math.Inf(1)
	}
	if x.Part == table.RafterPart {
		return -x.Answer
	}
	return x.Answer
}

// No entry gets better where dead load, live load, snow, wind or the spacing, the span or
// the height grows and everything else stays, the dead load that is sure to stay too.
func TestEntriesNeverGainFromMoreLoad(t *testing.T) {
	base := criteria(t, nil)
	rapid.Check(t, func(r *rapid.T) {
		light := table.Load{
			Dead: rapid.Float64Range(5, 15).Draw(r, "dead"), Live: rapid.Float64Range(10, 25).Draw(r, "live"),
			Snow: rapid.Float64Range(1, 40).Draw(r, "snow"), Sure: rapid.Float64Range(0, 5).Draw(r, "sure"),
		}
		heavy, speed := light, rapid.Float64Range(85, 150).Draw(r, "wind")
		more := rapid.Float64Range(0.1, 20).Draw(r, "more")
		faster := speed
		switch rapid.IntRange(0, 3).Draw(r, "which") {
		case 0:
			heavy.Dead += more
		case 1:
			heavy.Live += more
		case 2:
			heavy.Snow += more
		case 3:
			faster += more
		}
		c := base
		c.Loads, c.Wind.Speeds = []table.Load{light}, []float64{speed}
		d := base
		d.Loads, d.Wind.Speeds = []table.Load{heavy}, []float64{faster}
		a, b := made(t, c), made(t, d)
		require.Equal(t, a.Len(), b.Len())
		for n := range a.Len() {
			x, y := a.Cell(n), b.Cell(n)
			assert.LessOrEqual(t, answer(t, c, x), answer(t, c, y), "%+v\n%+v", x, y)
		}
	})
}

// Nor where the spacing of rafters or posts, the span, the area or the height grows.
func TestEntriesNeverGainFromMoreSpace(t *testing.T) {
	c := criteria(t, nil)
	tab := made(t, c)
	for n := 1; n < tab.Len(); n++ {
		a, b := tab.Cell(n-1), tab.Cell(n)
		wider := a.Spacing <= b.Spacing && a.Span <= b.Span && a.Bay <= b.Bay && a.Area <= b.Area && a.Height <= b.Height
		same := a.Part == b.Part && a.Load == b.Load && a.Speed == b.Speed && a.Wood == b.Wood && a.Soil == b.Soil
		if !wider || !same || a.Part == table.RafterPart && a.Size != b.Size {
			continue
		}
		assert.LessOrEqual(t, answer(t, c, a), answer(t, c, b), "%+v\n%+v", a, b)
	}
}

// simple is a whole cover that spans as a rafter of the table does: one span from the
// ledger to a beam at the roof edge.
func simple(t testing.TB, c table.Criteria, x table.Cell, inches float64) cover.Input {
	t.Helper()
	f, err := os.Open(filepath.Join(calctest.Root(t), "testdata", "covers", "desert.json"))
	require.NoError(t, err)
	defer f.Close()
	in, err := cover.Read(f)
	require.NoError(t, err)
	span := inches * calc.In / calc.Ft
	in.Cover.Projection, in.Cover.Overhang, in.Cover.HighEdge = &span, new(0.0), new(12.0)
	in.Cover.Slope, in.House.Eave = &c.Wind.Slope, nil
	in.Cover.Layers = []cover.Layer{
		{Name: new("sure"), Weight: &x.Load.Sure, Certain: new(true)},
		{Name: new("rest"), Weight: new(x.Load.Dead - x.Load.Sure), Certain: new(false)},
	}
	in.Rafters.Size, in.Rafters.Spacing = &x.Size, &x.Spacing
	in.Rafters.Species, in.Rafters.Grade, in.Rafters.Green = &x.Wood.Species, &x.Wood.Grade, c.Service.Green
	in.Beams.Species, in.Beams.Grade, in.Beams.Size = new("Douglas Fir-Larch"), new("No.1"), new("6x16")
	in.Posts.Count, in.Posts.Size = new(5), new("6x6")
	in.Site.WindSpeed, in.Site.RoofLive, in.Site.RoofSnow = &x.Speed, &x.Load.Live, &x.Load.Snow
	in.Rafters.SeatCut, in.Rafters.Brace = new(0.0), &c.Rafters.Brace
	return in
}

// The checks of a whole cover agree with the table: rafters at the span of the table pass
// it in bending, shear and deflection, and where gravity decides they are full there. In
// wind the table takes the corner of the roof for all of it.
func TestTableAgainstWholeCovers(t *testing.T) {
	for _, slope := range []float64{0.5, 3} {
		c := criteria(t, func(c *table.Criteria) { c.Wind.Slope = slope })
		tab := made(t, c)
		full := 0
		for n := range tab.Len() {
			x := tab.Cell(n)
			if x.Part != table.RafterPart || n%5 != 0 {
				continue
			}
			most := rafterRatio(t, simple(t, c, x, x.Answer))
			assert.LessOrEqual(t, most, 1.0, "%+v", x)
			if slices.Contains(gravity, x.Governs) {
				assert.Greater(t, most, 0.97, "%+v", x)
				full++
			}
		}
		assert.Greater(t, full, 2)
	}
}

// gravity are the checks that no wind has a part in.
var gravity = []string{"bending", "bending under a worker", "live or snow deflection", "long-term deflection"}

// rafterRatio is the largest ratio of the rafters of a cover in bending, shear and
// deflection.
func rafterRatio(t testing.TB, in cover.Input) float64 {
	t.Helper()
	r, err := cover.Size(in)
	require.NoError(t, err)
	most := 0.0
	for _, k := range r.Members[0].Checks {
		if k.Name == "bending" || k.Name == "shear" || strings.Contains(k.Name, "deflection") {
			most = max(most, float64(k.Ratio))
		}
	}
	return most
}

// Beams, posts and footings by hand, where dead and live load decide: 8 psf of layers, 4 of
// framing, 60 of live load, no more wind than the least.
func TestBeamPostAndFootingByHand(t *testing.T) {
	c := criteria(t, func(c *table.Criteria) {
		c.Loads = []table.Load{{Dead: 8, Sure: 8, Live: 60}}
		c.Wind.Speeds = []float64{85}
		c.Beams.Sizes, c.Posts.Sizes = []string{"4x10"}, []string{"4x6"}
	})
	tab := made(t, c)
	const layers, framing, live = 8.0, 4.0, 60.0
	for n := range tab.Len() {
		x := tab.Cell(n)
		switch {
		case x.Part == table.BeamPart && x.Span == 8 && x.Bay == 8: // 4x10: S 49.91 in³, A 32.38 in², 34.2 pcf
			w := (layers+framing+live)*9*9/(2*8) + 34.2*32.38/144
			calctest.Close(t, w*8*8/8*12/49.91/(900*1.2*1.25), float64(x.Ratio), 0.03, 0, "NDS 2018 3.3; C_L near 1")
			assert.Equal(t, "bending", x.Governs)
		case x.Part == table.PostPart && x.Area == 80 && x.Height == 10: // 4x6: A 19.25 in², thin side 3.5 in
			p := (layers+framing+live)*80 + 10*34.2*19.25/144
			euler, star := 0.822*580_000/math.Pow(120/3.5, 2), 1350*1.1*1.25
			b := (1 + euler/star) / 1.6
			stable := b - math.Sqrt(b*b-euler/star/0.8)
			calctest.Close(t, p/19.25/(star*stable), float64(x.Ratio), 0.01, 0, "NDS 2018 eq. 3.7-1")
		case x.Part == table.FootingPart && x.Area == 160 && x.Soil == 1500: // 150 less 100 pcf of soil, 18 in deep
			side := math.Sqrt((layers+framing+live)*160/(1500-50*1.5)) * 12
			assert.Equal(t, math.Ceil(side), x.Answer, "IBC 2018 1806.2, P/A")
			assert.Equal(t, "bearing on the soil", x.Governs)
		}
	}
}

// Ties take the uplift combination by hand: 0.6 W less 0.6 D on the roof they hold.
func TestTieByHand(t *testing.T) {
	c := criteria(t, nil)
	tab := made(t, c)
	last := tab.Cell(tab.Len() - 1)
	require.Equal(t, table.TiePart, last.Part)
	require.Positive(t, last.Answer)
	assert.Equal(t, 0.0, last.Answer-25*float64(int(last.Answer/25)), "steps of 25 lb")
	narrow := tab.Cell(tab.Len() - 3)
	calctest.Close(t, last.Spacing/narrow.Spacing, last.Answer/narrow.Answer, 0.12, 0, "in proportion to the spacing, but for the steps")
}

// Every fault of the criteria is listed at once, by its path.
func TestFaultsOfCriteria(t *testing.T) {
	c := criteria(t, nil)
	c.Standard, c.Wind.Exposure, c.Service.Wet = "ASCE 7-05", "A", nil
	c.Rafters.Spacings = []float64{24, 16}
	c.Rafters.Woods[0].Grade = "Best"
	c.Footings.Depth = 6
	var wrong *calc.InputError
	require.ErrorAs(t, c.Validate(), &wrong)
	var paths []string
	for _, f := range wrong.Faults {
		paths = append(paths, f.Path)
	}
	assert.Equal(t, []string{
		"standard", "wind.exposure", "service.wet", "rafters.woods[0].grade", "rafters.spacings_in", "footings.depth_in",
	}, paths)
	for text, path := range map[string]string{`{"schema": 1, "roof": 2}`: "roof", `{"place": 3}`: "place"} {
		_, err := table.Read(strings.NewReader(text))
		require.ErrorAs(t, err, &wrong, text)
		assert.Equal(t, path, wrong.Faults[0].Path)
	}
	var syntax *cover.SyntaxError
	for _, text := range []string{"", "{", "[]x", `{"schema": 1} {}`} {
		_, err := table.Read(strings.NewReader(text))
		assert.True(t, errors.As(err, &syntax) || errors.As(err, &wrong), text)
	}
}

// Nothing is assumed: criteria without a flag are refused, not read as no.
func TestTrapFlagLeftOutIsNotNo(t *testing.T) {
	_, err := table.Read(strings.NewReader(`{"schema": 1, "standard": "ASCE 7-16"}`))
	var wrong *calc.InputError
	require.ErrorAs(t, err, &wrong)
	said := err.Error()
	for _, f := range []string{"service.wet", "service.green", "service.incised", "service.deck_joined", "service.worker"} {
		assert.Contains(t, said, f)
	}
}

// BenchmarkTable answers a hundred thousand cells of all parts on every core.
func BenchmarkTable(b *testing.B) {
	c := criteria(b, func(c *table.Criteria) {
		c.Wind.Speeds = nil
		for v := 90.0; v < 140; v++ {
			c.Wind.Speeds = append(c.Wind.Speeds, v)
		}
		c.Loads = nil
		for i := 0.0; i < 30; i++ {
			c.Loads = append(c.Loads, table.Load{Dead: 8 + i/4, Sure: 4, Live: 20, Snow: i})
		}
	})
	tab := made(b, c)
	require.Greater(b, tab.Len(), 100_000)
	for _, workers := range []int{1, 2} {
		b.Run(fmt.Sprint(workers), func(b *testing.B) {
			begun := time.Now()
			for b.Loop() {
				require.NoError(b, tab.Write(context.Background(), io.Discard, table.Job{To: tab.Len(), Workers: workers}))
			}
			b.ReportMetric(float64(tab.Len()*b.N)/time.Since(begun).Seconds(), "cells/s")
		})
	}
}
