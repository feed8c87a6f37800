package cover

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"strconv"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A layout is the covers with one spacing and one number of posts, which share their statics.
// It is not safe for concurrent use.
type layout struct {
	*yard
	full   Input // filled, with this spacing and number of posts
	main   solved
	links  solved // by allowable stress design; main itself where members are chosen by it
	lots   lengths
	order  frontOrder
	front  *stairs
	slabs  bool // every post must stand on the slab, and its load is known before the post
	judged int

	rafters []candidate
	beams   []candidate
	posts   []candidate
	classes []class
	probes  []probe
	loaded  int       // the class whose rafters lie on the beams, from 1
	strong  []attempt // by class and beam
	always  []attempt // by beam: it holds under every class
	seated  []attempt // by rafter and seat
	fit     []attempt // by rafter: its joints hold as far as they depend on it alone
	sags    []float64 // in, by class and beam; below 0 where not known yet
	byPost  [][]price // of each post by depth of rafter and beam
	mixed   bool      // posts may be cut from the lots of other members
	depths  int       // how many depths the beams have
}

// An attempt is what came of a check that is made once.
type attempt int8

// What may come of it.
const (
	untried attempt = iota
	holds
	fails
)

// came is an attempt that was made.
func came(held bool) attempt {
	if held {
		return holds
	}
	return fails
}

// A candidate is a stick in a layout.
type candidate struct {
	*stick
	price
	class int     // of a rafter
	seat  int     // of a beam: those that seat a rafter alike
	depth int     // place of its depth among the depths of its kind
	stiff float64 // E I, lb-in²
}

// A class is the rafters of one section and weight, which load the beams alike.
type class struct {
	sticks []int // the cheapest first
	rating float64
	mixed  bool // some may be cut from the lots of other members
	wood   *wood
	own    []float64 // lb of a rafter's own weight on a beam, by line
}

// open makes the model of a layout and its candidates. Where the input rules or the limits do
// not allow it, or nothing can hold in it, the layout is nil and why says so.
func (y *yard) open(spacing, count int) (l *layout, why string, err error) {
	in := y.in.clone()
	in.Rafters.Spacing = new(y.space.Spacings[spacing])
	if len(y.space.PostCounts) > 0 {
		in.Posts.Count = new(y.space.PostCounts[count])
	}
	var refused *calc.InputError
	switch err := in.Validate(); {
	case errors.As(err, &refused):
		return nil, refused.Error(), nil
	case err != nil:
		return nil, "", err
	}
	l = &layout{yard: y}
	l.order[bySpacing], l.order[byCount] = spacing, count
	l.full, _ = in.Assume()
	if l.main.m, err = outline(l.full, y.method); err != nil {
		return nil, "", err
	}
	if why = l.refused(); why != "" {
		return nil, why, nil
	}
	l.slabs = y.method == lumber.ASD && l.full.Foundation.SlabThickness != nil &&
		!slices.ContainsFunc(y.space.Footings, func(w StandingWay) bool { return w.Kind != "slab" }) &&
		(len(y.space.Footings) > 0 || *l.full.Foundation.Kind == "slab")
	l.links = l.main
	if y.method != lumber.ASD {
		if l.links.m, err = outline(l.full, lumber.ASD); err != nil {
			return nil, "", err
		}
	}
	if why = l.stock(); why != "" {
		return nil, why, nil
	}
	if err := l.complete(); err != nil {
		return nil, "", err
	}
	if l.hopeless() {
		return nil, "something is over that no wood mends", nil
	}
	l.classify()
	return l, "", nil
}

// refused says which limit the places of the posts pass, if any.
func (l *layout) refused() string {
	p, most := &l.main.m.plan, l.limits
	if n := len(p.lines) * len(p.posts); most.Posts > 0 && n > most.Posts {
		return strconv.Itoa(n) + " posts are more than the limit of " + strconv.Itoa(most.Posts)
	}
	if slices.ContainsFunc(p.posts, func(x float64) bool { return x > most.ClearFrom*calc.Ft && x < most.ClearTo*calc.Ft }) {
		return "with " + strconv.Itoa(len(p.posts)) + " posts a line one stands in the view that is to be kept"
	}
	return ""
}

// stock takes the candidates of the yard that the stock lengths of the market reach, and says
// where there is none.
func (l *layout) stock() string {
	m := l.main.m
	l.lots = newLengths(m)
	rafters := l.yard.rafters[index(m.rafters.use.Repetitive)]
	l.rafters = l.take(rafters, l.rafterPrice)
	l.beams = l.take(l.yard.beams, l.beamPrice)
	l.posts = l.take(l.yard.posts, func(c *stick) price { return price{alone: c.rate * float64(c.wood.plies())} })
	l.mixed = slices.ContainsFunc(l.posts, func(c candidate) bool { return c.mixed })
	switch {
	case len(rafters) == 0 || len(l.yard.beams) == 0 || len(l.posts) == 0:
		return "no size of the rafters, of the beams or of the posts has published values in the woods of its list"
	case len(l.rafters) == 0:
		return "the rafters or the ledger are longer than any stock length"
	case len(l.beams) == 0:
		return "with " + strconv.Itoa(len(m.plan.posts)) + " posts a line the beams are longer than any stock length"
	}
	return ""
}

// take prices candidates, leaves out what no stock is long enough for, and puts the cheaper
// ones first.
func (l *layout) take(all []stick, of func(*stick) price) []candidate {
	var depths []float64
	var seats []seatKey
	place := func(w *wood) int {
		i := slices.Index(depths, w.section.Depth)
		if i < 0 {
			i, depths = len(depths), append(depths, w.section.Depth)
		}
		return i
	}
	var out []candidate
	for i := range all {
		c := candidate{stick: &all[i], price: of(&all[i])}
		if math.IsInf(c.alone, 1) {
			continue
		}
		c.depth, c.stiff = place(&c.wood), c.wood.dry.Elasticity.Value*c.wood.section.Inertia()
		key := seatOf(&c.wood)
		if c.seat = slices.Index(seats, key); c.seat < 0 {
			c.seat, seats = len(seats), append(seats, key)
		}
		out = append(out, c)
	}
	slices.SortFunc(out, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.alone, b.alone), cmp.Compare(a.size, b.size), cmp.Compare(a.grade, b.grade))
	})
	return out
}

// A seatKey is all of a beam that a check of the rafters on it asks for.
type seatKey struct {
	breadth, contact, bearing, wet float64
	class                          lumber.Class
}

func seatOf(w *wood) seatKey {
	s := w.section
	return seatKey{s.Breadth, s.Contact(s.Breadth), w.dry.Bearing.Value, w.seat.Bearing.Value, s.Class}
}

// complete makes the frames, for the candidates of the layout.
func (l *layout) complete() error {
	for i, at := range []*solved{&l.main, &l.links} {
		if i > 0 && at.m == l.main.m {
			*at = l.main
			break
		}
		m := at.m
		m.rafterWoods, m.beamWoods = nil, nil
		for _, c := range l.rafters {
			m.rafterWoods = append(m.rafterWoods, *l.woodFor(m, c.stick))
		}
		for _, c := range l.beams {
			m.beamWoods = append(m.beamWoods, *l.woodFor(m, c.stick))
		}
		if err := m.complete(); err != nil {
			return err
		}
		m.findHulls(true, true)
		at.ws = newWorkspace(m)
	}
	return nil
}

// woodFor is the wood of a stick by the method of a model.
func (l *layout) woodFor(m *model, c *stick) *wood {
	if m.rules.method == l.method {
		return &c.wood
	}
	return &c.plain
}

// hopeless reports whether something is over that no wood mends.
func (l *layout) hopeless() bool {
	m := l.links.m
	r := Report{Input: l.full}
	_, _, over := r.aboveEave()
	return over || m.drainage().Verdict == Over || *l.full.Lateral.Along == "none" || *l.full.Lateral.Out == "none"
}

// classify puts the rafters into classes and makes room for what the search remembers.
func (l *layout) classify() {
	m := l.main.m
	for i := range l.rafters {
		c := &l.rafters[i]
		w := &c.wood
		at := slices.IndexFunc(l.classes, func(k class) bool {
			return k.wood.section == w.section && k.wood.most == w.most && k.wood.least == w.least
		})
		if at < 0 {
			at = len(l.classes)
			k := class{wood: w, rating: l.links.m.tieRating(l.woodFor(l.links.m, c.stick))}
			for _, line := range m.lines {
				k.own = append(k.own, m.rafter.ownAt(line.support, w, false))
			}
			l.classes = append(l.classes, k)
		}
		c.class, l.classes[at].mixed = at, l.classes[at].mixed || c.mixed
		l.classes[at].sticks = append(l.classes[at].sticks, i)
	}
	n, seats, depths := len(l.classes)*len(l.beams), 0, 0
	for i := range l.beams {
		seats, l.depths = max(seats, l.beams[i].seat+1), max(l.depths, l.beams[i].depth+1)
	}
	for i := range l.rafters {
		depths = max(depths, l.rafters[i].depth+1)
	}
	l.strong, l.always = make([]attempt, n), make([]attempt, len(l.beams))
	l.seated, l.fit = make([]attempt, len(l.rafters)*seats), make([]attempt, len(l.rafters))
	l.sags, l.byPost = slices.Repeat([]float64{-1}, n), make([][]price, depths*l.depths)
	l.probe()
}

// load puts the rafters of a class on the beams.
func (l *layout) load(c int) {
	if l.loaded != c+1 {
		l.main.m.loadBeams(l.classes[c].wood)
		l.loaded = c + 1
	}
}
