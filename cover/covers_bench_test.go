package cover

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"patiocover/beam/lumber"
)

// covers is how many different ones the benchmark grades.
const covers = 2000

// differentCovers draws covers of given sizes that differ in width, projection, slope,
// posts, spacing, loads and sizes; the same ones every time.
func differentCovers(tb testing.TB, n int) []Input {
	tb.Helper()
	base := desert(tb)
	r := rand.New(rand.NewPCG(1, 2))
	step := func(low, high, by float64) *float64 {
		x := low + by*float64(r.IntN(int((high-low)/by)+1))
		return &x
	}
	one := func(words ...string) *string { return &words[r.IntN(len(words))] }
	out := make([]Input, 0, n)
	for len(out) < n {
		in := base.clone()
		in.Cover.Projection, in.Cover.Width = step(8, 16, 0.5), step(10, 36, 0.5)
		in.Cover.Overhang, in.Cover.Slope = step(0, 2, 0.5), step(0.25, 1, 0.25)
		in.Cover.Layers[0].Weight = step(1, 8, 0.5)
		in.Site.WindSpeed, in.Site.RoofSnow = step(90, 140, 5), step(0, 30, 5)
		in.Site.Exposure = one("B", "C")
		count := 2 + int(*in.Cover.Width/12) + r.IntN(2)
		in.Posts.Count = &count
		spacing := []float64{12, 16, 19.2, 24}[r.IntN(4)]
		in.Rafters.Spacing, in.Rafters.Size = &spacing, one("2x6", "2x8", "2x10")
		in.Beams.Size, in.Posts.Size = one("4x8", "4x10", "4x12", "6x10"), one("4x4", "6x6")
		if in.Validate() != nil {
			continue // drawn values contradict each other
		}
		full, _ := in.Assume()
		out = append(out, full)
	}
	return out
}

// BenchmarkCovers grades many different covers of given sizes, from geometry and loads to
// every ratio, with one worker and with two, each with a workspace of its own.
func BenchmarkCovers(b *testing.B) {
	all := differentCovers(b, covers)
	for _, workers := range []int{1, 2} {
		b.Run(fmt.Sprint(workers), func(b *testing.B) {
			b.ReportAllocs()
			ratios := make([]float64, len(all))
			for b.Loop() {
				rooms := workspaces(workers)
				among(workers, len(all), func(worker, i int) {
					ratios[i] = gradedWhole(b, all[i], rooms[worker])
				})
			}
			for _, x := range ratios {
				kept += x
			}
		})
	}
}

// workspaces makes one for each worker, apart in memory, so that none waits for what
// another writes.
func workspaces(workers int) []*workspace {
	out := make([]*workspace, workers)
	for i := range out {
		out[i] = new(workspace)
	}
	return out
}

// gradedWhole is the largest ratio of the members of a cover of given sizes.
func gradedWhole(tb testing.TB, in Input, ws *workspace) float64 {
	m, err := ws.room.newModel(in, lumber.ASD, nil)
	if err != nil {
		tb.Error(err)
		return 0
	}
	ws.fit(m)
	post := m.posts.candidatesIn(m.room, postSizes)
	return m.numbers(ws, &m.rafterWoods[0], &m.beamWoods[0], &post[0])
}
