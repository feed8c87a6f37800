package lumber

import "patiocover/calc"

// Given are design values that the user takes from an evaluation report, of a product
// that no table lists, and the adjustments that the report permits. The load duration
// factor and those of stability apply as to any wood; everything else only where a
// factor is given: without one, wet, hot or incised pieces have no capacity.
type Given struct {
	Product       string  // what the product is, in general words
	Source        string  // report, edition, table: printed with every value
	Bending       float64 // Fb on edge, psi
	Flatwise      float64 // Fb with load on the wide face, psi; 0: not given
	Tension       float64 // Ft, psi
	Shear         float64 // Fv on edge, psi
	Bearing       float64 // Fc_perp on edge, psi
	Compression   float64 // Fc, psi
	Elasticity    float64 // E, psi, mean
	Stability     float64 // Emin, psi, for buckling and sideways bending
	Gravity       float64 // G, ratio, for connections and weight
	DepthExponent float64 // exponent of the depth factor on Fb, ratio; 0: none given
	DepthFrom     float64 // in: depth at which the depth factor is 1
	Wet           float64 // least factor in wet service, on every value; 0: not given
	Hot           float64 // least factor in sustained heat, on every value; 0: not given
	Repetitive    float64 // repetitive member factor on Fb; 0: not given
}

// permits are the factors that come with given values; zero: not given.
type permits struct{ wet, hot, repetitive float64 }

// Values returns the given values in the form of a table's row. Each carries the source
// of the report and counts as read.
func (g Given) Values() Values {
	quote := func(x float64) Quoted { return Quoted{Value: x, Status: calc.Read} }
	source := "given: " + g.Source
	v := Values{
		Species: g.Product, Grade: "given", Row: "given", Table: GivenValues, Source: source,
		Bending: quote(g.Bending), Reversed: quote(g.Bending), Tension: quote(g.Tension), Shear: quote(g.Shear),
		Bearing: quote(g.Bearing), Compression: quote(g.Compression), Elasticity: quote(g.Elasticity),
		Stability: quote(g.Stability), Gravity: quote(g.Gravity),
		side:    sideValues{bending: quote(g.Flatwise)},
		permits: permits{wet: g.Wet, hot: g.Hot, repetitive: g.Repetitive},
	}
	v.volume = volumeRule{exponent: g.DepthExponent, depth: g.DepthFrom, source: source, status: calc.Read}
	v.volume.unknown = g.DepthExponent == 0
	return v
}

// Missing names what the given values lack for a use: the factors without which the
// pieces have no capacity. It is empty when nothing is missing.
func (g Given) Missing(s Section, u Use) []string {
	var lacks []string
	if u.Wet && g.Wet == 0 {
		lacks = append(lacks, "a wet service factor")
	}
	if u.Temperature != UpTo100F && g.Hot == 0 {
		lacks = append(lacks, "a factor for sustained heat")
	}
	if u.Incised {
		lacks = append(lacks, "values for incised pieces")
	}
	if g.DepthExponent == 0 && s.Depth > volumeDepth {
		lacks = append(lacks, "a depth factor, above 12 in. deep")
	}
	return lacks
}
