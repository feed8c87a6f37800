package cover

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
	"patiocover/loads"
)

// A stock is what the user says of the wood of one kind of member.
type stock struct {
	species, grade string
	size           string // by name, empty when it is to be chosen
	plies          int    // pieces of the size side by side; 0 where the size says it
	fastening      lumber.Fastening
	measured       [2]float64    // in, breadth and depth of a rough or old piece; zero for dressed wood
	product        *lumber.Given // values that the user gives
	use            lumber.Use
	green          bool
}

// newStock says of what wood one kind of member is made; wet, incised and heat are
// its service.
func newStock(species, grade, size *string, wet, incised bool, hot string) stock {
	st := stock{species: *species, grade: *grade}
	if size != nil {
		st.size = *size
	}
	st.use = lumber.Use{Wet: wet, Incised: incised, Temperature: heat[hot]}
	return st
}

// made adds how the pieces are made up: plies, their fastening, measured sides, and the
// products of the user.
func (st stock) made(up makeup, products []Product) stock {
	if up.plies != nil {
		st.plies = *up.plies
	}
	if up.fastening != nil {
		st.fastening = fastenings[*up.fastening]
	}
	if given(up.breadth, up.depth) {
		st.measured = [2]float64{*up.breadth * calc.In, *up.depth * calc.In}
	}
	if p, ok := productNamed(products, &st.species); ok {
		g := p.given()
		st.product = &g
	}
	return st
}

// solid returns the wood without what makes up its pieces: one dressed piece of a size,
// or of any where the size is empty.
func (st stock) solid(size *string) stock {
	st.size, st.plies, st.fastening, st.measured = "", 0, lumber.Unfastened, [2]float64{}
	if size != nil {
		st.size = *size
	}
	return st
}

// A makeup is what the input says of one kind of member beside species, grade and size.
type makeup struct {
	plies          *int
	fastening      *string
	breadth, depth *float64 // in, measured
}

func (r Rafters) makeup() makeup { return makeup{breadth: r.MeasuredBreadth, depth: r.MeasuredDepth} }

func (b Beams) makeup() makeup {
	return makeup{b.Plies, b.PlyFastening, b.MeasuredBreadth, b.MeasuredDepth}
}

func (p Posts) makeup() makeup {
	return makeup{p.Plies, p.PlyFastening, p.MeasuredBreadth, p.MeasuredDepth}
}

// fastenings maps the words of the input to what holds plies together.
var fastenings = map[string]lumber.Fastening{
	"unfastened": lumber.Unfastened, "nailed": lumber.Nailed, "bolted": lumber.Bolted,
}

// section returns the section of a size by name, made up as the user says. The error
// says what does not fit.
func (st stock) section(size string) (lumber.Section, error) {
	s, err := lumber.SectionNamed(size)
	if err != nil {
		return s, err
	}
	if st.plies > 1 && s.Plies == 0 {
		var ok bool
		if s, ok = s.Times(st.plies); !ok {
			return s, &lumber.NotListed{What: "size of plies", Given: size}
		}
	}
	if st.measured[0] > 0 {
		return lumber.Measured(s.NominalThickness, s.NominalWidth, st.measured[0], st.measured[1])
	}
	return s.Fastened(st.fastening), nil
}

// values returns the reference values of the wood in a section.
func (st stock) values(s lumber.Section) (lumber.Values, error) {
	if st.product != nil {
		return st.product.Values(), nil
	}
	return lumber.Find(st.species, st.grade, s)
}

// A wood is one candidate for a member: a section of a species and grade in its
// use, with what depends on nothing else worked out.
type wood struct {
	name     string // of the size that it was made from
	section  lumber.Section
	dry      lumber.Adjusted // values in the member's own service
	flat     lumber.Adjusted // values in its own service, loaded on the wide face
	seat     lumber.Adjusted // values at seats that stay wet: beam seats, ledgers, post feet
	green    bool            // installed unseasoned
	balanced bool            // bends either way with the same strength
	most     float64         // weight at high moisture, acting down, lb/in
	least    float64         // weight at low moisture, resisting uplift, lb/in
}

// newWood works out one candidate. The error says that there are no published
// values for it.
func newWood(st stock, size string) (wood, error) {
	s, err := st.section(size)
	if err != nil {
		return wood{}, err
	}
	v, err := st.values(s)
	if err != nil {
		return wood{}, err
	}
	wet, flat := st.use, st.use
	wet.Wet, flat.Flat = true, true
	w := wood{
		name: size, section: s, green: st.green && s.Class != lumber.Manufactured, balanced: v.Balanced(),
		dry: lumber.Adjust(v, s, st.use), flat: lumber.Adjust(v, s, flat), seat: lumber.Adjust(v, s, wet),
	}
	g := v.Gravity.Value
	w.most = loads.Density(g, loads.MoistureHigh) * s.Area()
	w.least = loads.Density(g, loads.MoistureLow) * s.Area()
	return w, nil
}

// weight is the weight at low moisture, which resists uplift, or at high, lb/in.
func (w *wood) weight(least bool) float64 {
	if least {
		return w.least
	}
	return w.most
}

// sizes returns the sizes to try: the given one, those of glued laminated timber, those
// that build up in plies, or the list.
func (st stock) sizes(list []string) []string {
	switch {
	case st.size != "":
		return []string{st.size}
	case lumber.Laminated(st.species):
		return laminatedSizes(st.species)
	case st.plies > 1:
		return plySizes
	}
	return list
}

// candidates returns the woods to try: the given size, or every size of the list
// that has published values, in the order of the list.
func (st stock) candidates(sizes []string) []wood { return st.candidatesIn(new(room), sizes) }

// candidatesIn lists them in a room.
func (st stock) candidatesIn(r *room, sizes []string) []wood {
	given := [1]string{st.size}
	if st.size != "" {
		sizes = given[:]
	} else {
		sizes = st.sizes(sizes)
	}
	out := r.woods.take(len(sizes))[:0]
	for _, size := range sizes {
		if w, err := newWood(st, size); err == nil {
			out = append(out, w)
		}
	}
	return out
}

// plies is how many pieces lie side by side.
func (w *wood) plies() int { return max(1, w.section.Plies) }

// seasoning is the moisture of the wood over its life.
func (w *wood) seasoning() member.Seasoning {
	return member.Seasoning{Green: w.green, Wet: w.dry.Use.Wet}
}

// heat maps the words of the input to the ranges of the temperature factor.
var heat = map[string]lumber.Temperature{
	"to_100F": lumber.UpTo100F, "to_125F": lumber.UpTo125F, "to_150F": lumber.UpTo150F,
}
