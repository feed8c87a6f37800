package cover

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/loads"
)

// Moisture of wood for its weight, percent: high where weight acts down, low where
// it resists uplift (loads are rounded to the safe side both ways).
const (
	moistureHigh = 19
	moistureLow  = 10
)

// A stock is what the user says of the wood of one kind of member.
type stock struct {
	species, grade string
	size           string // nominal, empty when it is to be chosen
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

// A wood is one candidate for a member: a section of a species and grade in its
// use, with what depends on nothing else worked out.
type wood struct {
	section lumber.Section
	dry     lumber.Adjusted // values in the member's own service
	seat    lumber.Adjusted // values at seats that stay wet: beam seats, ledgers, post feet
	green   bool            // installed unseasoned
	most    float64         // weight at high moisture, acting down, lb/in
	least   float64         // weight at low moisture, resisting uplift, lb/in
}

// newWood works out one candidate. The error says that there are no published
// values for it.
func newWood(st stock, size string) (wood, error) {
	s, err := lumber.SectionNamed(size)
	if err != nil {
		return wood{}, err
	}
	v, err := lumber.Find(st.species, st.grade, s)
	if err != nil {
		return wood{}, err
	}
	wet := st.use
	wet.Wet = true
	w := wood{
		section: s, green: st.green,
		dry: lumber.Adjust(v, s, st.use), seat: lumber.Adjust(v, s, wet),
	}
	g := v.Gravity.Value
	w.most = loads.Density(g, moistureHigh) * s.Area()
	w.least = loads.Density(g, moistureLow) * s.Area()
	return w, nil
}

// weight is the weight at low moisture, which resists uplift, or at high, lb/in.
func (w *wood) weight(least bool) float64 {
	if least {
		return w.least
	}
	return w.most
}

// candidates returns the woods to try: the given size, or every size of the list
// that has published values, in the order of the list.
func (st stock) candidates(sizes []string) []wood {
	if st.size != "" {
		sizes = []string{st.size}
	}
	var out []wood
	for _, size := range sizes {
		if w, err := newWood(st, size); err == nil {
			out = append(out, w)
		}
	}
	return out
}

// seasoning is the moisture of the wood over its life.
func (w *wood) seasoning() member.Seasoning {
	return member.Seasoning{Green: w.green, Wet: w.dry.Use.Wet}
}

// heat maps the words of the input to the ranges of the temperature factor.
var heat = map[string]lumber.Temperature{
	"to_100F": lumber.UpTo100F, "to_125F": lumber.UpTo125F, "to_150F": lumber.UpTo150F,
}
