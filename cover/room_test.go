package cover

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What an earlier cover left in a room changes nothing: two workers that grade cover after
// cover, each in one room, find what a room of its own gives each of them.
func TestTrapRoomOfAnotherCover(t *testing.T) {
	all := differentCovers(t, 60)
	rooms, got := workspaces(2), make([]float64, len(all))
	among(len(rooms), len(all), func(worker, i int) { got[i] = gradedWhole(t, all[i], rooms[worker]) })
	for i, in := range all {
		assert.Equal(t, gradedWhole(t, in, &workspace{}), got[i], "cover %d", i)
		assert.Positive(t, got[i])
	}
}

// A room that has held a cover makes the same one again without new blocks.
func TestRoomIsUsedAnew(t *testing.T) {
	in := differentCovers(t, 1)[0]
	var ws workspace
	for range 2 {
		gradedWhole(t, in, &ws) // the second time the blocks have come to their size
	}
	r := &ws.room
	numbers, arr, plan := &r.numbers.block[0], &r.arr.block[0], r.statics[0]
	gradedWhole(t, in, &ws)
	assert.Same(t, numbers, &r.numbers.block[0])
	assert.Same(t, arr, &r.arr.block[0])
	assert.Same(t, plan, r.statics[0])
}

// What is left to each cover in a room that has held one are the factors of its members and
// the sources of a few values: some twenty, where it was more than three hundred.
func TestCoverInAUsedRoomAllocatesLittle(t *testing.T) {
	for i, in := range differentCovers(t, 20) {
		var ws workspace
		for range 2 {
			gradedWhole(t, in, &ws)
		}
		got := testing.AllocsPerRun(5, func() { kept += gradedWhole(t, in, &ws) })
		assert.LessOrEqual(t, got, 40.0, "cover %d", i)
	}
}

// Each piece of work is done once, however many workers there are.
func TestAmongDoesEachOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 100} {
		for _, workers := range []int{1, 2, 7} {
			done := make([]int, n)
			among(workers, n, func(worker, i int) {
				assert.Less(t, worker, workers)
				done[i]++
			})
			for i := range done {
				assert.Equal(t, 1, done[i])
			}
		}
	}
}

func TestSlabHandsOutZerosOfItsOwn(t *testing.T) {
	var s slab[int]
	a := s.take(2)
	b := append(s.take(0), 9) // beyond its end is nobody's
	a[0], a[1] = 1, 2
	c := s.take(3)
	assert.Equal(t, []int{1, 2}, a)
	assert.Equal(t, []int{9}, b)
	assert.Equal(t, []int{0, 0, 0}, c)
	c[0] = 7
	s.used = 0
	assert.Equal(t, []int{0, 0, 0}, s.take(3), "what an earlier one left is gone")
}
