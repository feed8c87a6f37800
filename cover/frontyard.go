package cover

import (
	"slices"
	"strings"

	"patiocover/beam/lumber"
)

// A yard is what a search builds of: the candidates of every list of a space, worked out
// once for all layouts. Nothing in it changes during a search.
type yard struct {
	in      Input // as given
	space   Space // without empty lists
	limits  Limits
	counts  measures
	dollars bool
	method  lumber.Method

	rafters [2][]stick // without and with the factor of repetitive members
	beams   []stick
	posts   []stick
}

// A stick is one candidate of a search.
type stick struct {
	wood  wood   // by the method that members are chosen by
	plain wood   // by allowable stress design, by which links are judged
	stock stock  // of the method
	other stock  // of allowable stress design
	name  string // of the size
	of    Wood
	item  string  // of the take-off
	lot   int     // its number: sticks with one number are cut from the same lot
	mixed bool    // members of another kind may be cut from its lot as well
	rate  float64 // of an inch of one ply: dollars, or a factor of board feet
	size  int     // place of the size in the space
	grade int     // place of species and grade
}

// newYard works the candidates out. Input and space must be valid.
func newYard(in Input, s Space, l Limits) *yard {
	full, _ := in.Assume()
	y := &yard{in: in, space: s.filled(in), limits: l, counts: s.measures(), method: methodOf(full), dollars: true}
	y.onHand()
	for _, repetitive := range []bool{false, true} {
		of := func(w Wood, method lumber.Method) stock { return rafterStock(in, w, method, repetitive) }
		y.rafters[index(repetitive)] = y.sticks(y.space.RafterWoods, y.space.RafterSizes, of)
	}
	y.beams = y.sticks(y.space.BeamWoods, y.space.BeamSizes, func(w Wood, m lumber.Method) stock { return beamStock(in, w, m) })
	y.posts = y.sticks(y.space.PostWoods, y.space.PostSizes, func(w Wood, m lumber.Method) stock { return postStock(in, w, m) })
	for _, list := range []*[]stick{&y.rafters[0], &y.rafters[1], &y.beams, &y.posts} {
		y.price(*list)
	}
	y.share()
	return y
}

// share numbers the items, and marks those that more than one kind of member may be cut from.
func (y *yard) share() {
	type use struct {
		lot, kind int
		mixed     bool
	}
	lots := map[string]*use{}
	kinds := [][][]stick{{y.rafters[0], y.rafters[1]}, {y.beams}, {y.posts}}
	visit := func(do func(kind int, c *stick)) {
		for kind, lists := range kinds {
			for _, list := range lists {
				for i := range list {
					do(kind, &list[i])
				}
			}
		}
	}
	visit(func(kind int, c *stick) {
		if at, seen := lots[c.item]; seen {
			at.mixed = at.mixed || at.kind != kind
			return
		}
		lots[c.item] = &use{lot: len(lots), kind: kind}
	})
	visit(func(_ int, c *stick) { c.lot, c.mixed = lots[c.item].lot, lots[c.item].mixed })
}

func index(second bool) int {
	if second {
		return 1
	}
	return 0
}

// measure is what cost is told in.
func (y *yard) measure() string {
	if y.dollars {
		return "dollars"
	}
	return "board feet"
}

// onHand keeps the wood and the footings that the limits allow.
func (y *yard) onHand() {
	if len(y.limits.Species) > 0 {
		missing := func(w Wood) bool { return !slices.Contains(y.limits.Species, w.Species) }
		for _, list := range []*[]Wood{&y.space.RafterWoods, &y.space.BeamWoods, &y.space.PostWoods} {
			*list = slices.DeleteFunc(slices.Clone(*list), missing)
		}
	}
	if y.limits.SlabOnly {
		orElse(&y.space.Footings, []StandingWay{{Kind: "slab"}})
		y.space.Footings = slices.DeleteFunc(slices.Clone(y.space.Footings), func(w StandingWay) bool { return w.Kind != "slab" })
	}
}

// rafterStock is the stock of rafters of a wood, with what is then assumed of it.
func rafterStock(in Input, w Wood, method lumber.Method, repetitive bool) stock {
	in = in.clone()
	in.Rafters.Species, in.Rafters.Grade, in.Rafters.Size = &w.Species, &w.Grade, nil
	full, _ := in.Assume()
	r := full.Rafters
	st := newStock(r.Species, r.Grade, nil, *r.Wet, *r.Incised, *r.Hot).made(r.makeup(), full.Products)
	st.green, st.use.Method, st.use.Repetitive = *r.Green, method, repetitive
	return st
}

// beamStock is that of the beams.
func beamStock(in Input, w Wood, method lumber.Method) stock {
	in = in.clone()
	in.Beams.Species, in.Beams.Grade, in.Beams.Size = &w.Species, &w.Grade, nil
	full, _ := in.Assume()
	b := full.Beams
	st := newStock(b.Species, b.Grade, nil, *b.Wet, *b.Incised, *b.Hot).made(b.makeup(), full.Products)
	st.green, st.use.Method = *b.Green, method
	return st
}

// postStock is that of the posts.
func postStock(in Input, w Wood, method lumber.Method) stock {
	in = in.clone()
	in.Posts.Species, in.Posts.Grade, in.Posts.Size = &w.Species, &w.Grade, nil
	full, _ := in.Assume()
	p := full.Posts
	st := newStock(p.Species, p.Grade, nil, *p.Wet, *p.Incised, *p.Hot).made(p.makeup(), full.Products)
	st.use.Method = method
	return st
}

// sticks lists the candidates that have published values.
func (y *yard) sticks(woods []Wood, sizes []string, of func(Wood, lumber.Method) stock) []stick {
	var out []stick
	for j, w := range woods {
		st, plain := of(w, y.method), of(w, lumber.ASD)
		for i, size := range sizes {
			c := stick{stock: st, other: plain, name: size, of: w, size: i, grade: j}
			var err error
			if c.wood, err = newWood(st, size); err != nil {
				continue
			}
			if c.plain, err = newWood(plain, size); err != nil {
				continue
			}
			one := c.wood.dry.OnePly().Section
			c.item = strings.Join([]string{one.Name, w.Species, w.Grade}, " ")
			y.dollars = y.dollars && priceOf(y.in.Market.Prices, c.item, "board_foot", "foot") != nil
			out = append(out, c)
		}
	}
	return out
}

// price works out what an inch of every candidate costs.
func (y *yard) price(all []stick) {
	for i := range all {
		one := all[i].wood.dry.OnePly().Section
		l := lot{nominal: one.NominalThickness * one.NominalWidth}
		all[i].rate = l.nominal / perBoardFoot
		if y.dollars {
			all[i].rate = l.dollars(priceOf(y.in.Market.Prices, all[i].item, "board_foot", "foot"), 1)
		}
	}
}
