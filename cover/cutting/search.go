package cutting

// A way is one cutting pattern.
type way struct {
	stick int
	yield []int // pieces of each kind
}

// A worth is what a plan costs, in the order in which plans are compared.
type worth struct {
	price, length float64
	sticks        int
	way           int // index of the last way taken
	from          int // state before it
}

// less reports whether a plan is better by more than rounding.
func (a worth) less(b worth) bool {
	switch {
	case a.price < b.price-rounding || a.price > b.price+rounding:
		return a.price < b.price
	case a.length < b.length-rounding || a.length > b.length+rounding:
		return a.length < b.length
	}
	return a.sticks < b.sticks
}

// rounding is a difference of sums that is none.
const rounding = 1e-9

// search finds the cheapest sticks for what is needed, all of which fits: dynamic
// programming over what is still missing, every state reached by taking one stick off.
func search(pieces []Piece, sticks []Stick, kerf float64, need []int) []Cut {
	ways := patterns(pieces, sticks, kerf, need)
	stride := make([]int, len(need))
	last := 1
	for i, n := range need {
		stride[i] = last
		last *= n + 1
	}
	best := make([]worth, last)
	missing := make([]int, len(need))
	for state := 1; state < last; state++ {
		for i := range need {
			missing[i] = state / stride[i] % (need[i] + 1)
		}
		best[state] = take(best, ways, sticks, missing, stride)
	}
	var out []Cut
	for state := last - 1; state > 0; state = best[state].from {
		w, cut := ways[best[state].way], make([]int, len(need))
		for i := range need {
			cut[i] = min(w.yield[i], state/stride[i]%(need[i]+1))
		}
		out = append(out, Cut{Stick: w.stick, Pieces: cut, Count: 1})
	}
	return out
}

// take finds the best stick to cut first when the pieces are missing.
func take(best []worth, ways []way, sticks []Stick, missing, stride []int) worth {
	found := false
	var at worth
	for k, w := range ways {
		from, gain := 0, 0
		for i, m := range missing {
			cut := min(w.yield[i], m)
			gain += cut
			from += (m - cut) * stride[i]
		}
		if gain == 0 {
			continue
		}
		s := sticks[w.stick]
		next := worth{best[from].price + s.Price, best[from].length + s.Length, best[from].sticks + 1, k, from}
		if !found || next.less(at) {
			at, found = next, true
		}
	}
	return at
}

// patterns lists the ways to cut every stick that leave no room for one piece more,
// of no more pieces than are needed.
func patterns(pieces []Piece, sticks []Stick, kerf float64, need []int) []way {
	var out []way
	for s, stick := range sticks {
		yield := make([]int, len(pieces))
		var fill func(kind int, room float64)
		fill = func(kind int, room float64) {
			if kind == len(pieces) {
				if full(pieces, need, yield, kerf, room) {
					out = append(out, way{s, append([]int(nil), yield...)})
				}
				return
			}
			most := 0
			for most < need[kind] && fits(pieces[kind].Length, kerf, most+1, room) {
				most++
			}
			for n := most; n >= 0; n-- {
				yield[kind] = n
				fill(kind+1, room-float64(n)*(pieces[kind].Length+kerf))
			}
			yield[kind] = 0
		}
		fill(0, stick.Length+kerf) // the last cut may fall beyond the end
	}
	return out
}

// fits reports whether n pieces, each with its cut, fit in the room.
func fits(length, kerf float64, n int, room float64) bool {
	return float64(n)*(length+kerf) <= room+rounding
}

// full reports whether something is cut and no further piece that is needed fits.
func full(pieces []Piece, need, yield []int, kerf, room float64) bool {
	sum := 0
	for i := range pieces {
		sum += yield[i]
		if yield[i] < need[i] && fits(pieces[i].Length, kerf, 1, room) {
			return false
		}
	}
	return sum > 0
}
