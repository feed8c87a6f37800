package dowel

import (
	_ "embed"
	"math"

	"patiocover/calc"
)

// A Material is what a dowel bears on.
type Material uint8

// The materials.
const (
	Wood     Material = iota // sawn lumber, glued laminated timber, panels by their G
	Steel                    // side plate: ASTM A653 Grade 33 below 1/4 in., ASTM A36 from there
	Concrete                 // f'c 2500 psi or more
)

var materialNames = [...]string{Wood: "wood", Steel: "steel", Concrete: "concrete"}

// String returns wood, steel or concrete.
func (m Material) String() string { return materialNames[m] }

// A Member is one piece that a dowel passes or enters.
type Member struct {
	Material  Material // the zero value is wood
	Gravity   float64  // G, specific gravity, dimensionless, 0.31 to 0.73; wood only
	Angle     float64  // theta, deg, load to grain, 0 to 90; wood only
	Thickness float64  // in, along the dowel
}

// Conditions of the dowel bearing strength (NDS 2018 Table 12.3.3).
const (
	thick        = 0.25 * calc.In // D from which the grain matters
	bearingRound = 50 * calc.PSI  // step to which the tables of the standard are rounded
)

//go:embed hard.csv
var hardCSV string

type hardRow struct {
	material, grade, source string
	from, strength          float64 // in; psi
	status                  calc.Status
}

var hardRows = calc.ReadTable("hard.csv", hardCSV, func(r calc.Row) hardRow {
	return hardRow{
		material: r.Text("material"), grade: r.Text("grade"), source: r.Text("source"),
		from: r.Num("from in"), strength: r.Num("Fe psi"), status: r.Status(),
	}
})

// hardOf returns the last row of the material that begins at or below the thickness.
func hardOf(m Member) hardRow {
	var found hardRow
	for i := range hardRows {
		if hardRows[i].material == m.Material.String() && m.Thickness >= hardRows[i].from {
			found = hardRows[i]
		}
	}
	return found
}

// A Bearing is the dowel bearing strength of one member.
type Bearing struct {
	Member   Member  // what is borne on
	Diameter float64 // D, nominal, in
	Along    float64 // Fe parallel to grain, psi, rounded; wood only
	Across   float64 // Fe perpendicular to grain, psi, rounded; wood only
	Strength float64 // Fe at the angle, psi
	hard     hardRow
}

// NewBearing returns Fe of the member under a dowel of the nominal diameter, in (NDS
// 2018 Table 12.3.3): below 1/4 in. it is the same at any angle; from there the
// nominal diameter counts across the grain even where the root bends, and the angle
// follows the Hankinson formula (eq. 12.3-11).
func NewBearing(m Member, diameter float64) Bearing {
	b := Bearing{Member: m, Diameter: diameter}
	switch {
	case m.Material != Wood:
		b.hard = hardOf(m)
		b.Strength = b.hard.strength
		return b
	case diameter < thick:
		b.Along = nearest(16600 * math.Pow(m.Gravity, 1.84)) // Table 12.3.3 note
		b.Across = b.Along
		b.Strength = b.Along
		return b
	}
	b.Along = nearest(11200 * m.Gravity)                                         // Table 12.3.3 note
	b.Across = nearest(6100 * math.Pow(m.Gravity, 1.45) / math.Sqrt(b.Diameter)) // Table 12.3.3 note
	sin, cos := math.Sin(m.Angle*math.Pi/180), math.Cos(m.Angle*math.Pi/180)
	b.Strength = b.Along * b.Across / (b.Along*math.Pow(sin, 2) + b.Across*math.Pow(cos, 2)) // eq. 12.3-11
	return b
}

// nearest rounds a strength as the tables of the standard are rounded.
func nearest(strength float64) float64 {
	return math.Floor(strength/bearingRound+0.5) * bearingRound
}

// write adds the lines of the strength; every symbol ends in the letter of the member.
func (b Bearing) write(s *calc.Sheet, member string) {
	fe := "Fe_" + member
	if b.Member.Material != Wood {
		s.Quoted(fe, b.Strength, "psi", b.hard.source+", "+b.Member.Material.String()+" "+b.hard.grade, b.hard.status)
		return
	}
	const source = "NDS 2018 Table 12.3.3 (seen restated), rounded to 50 psi"
	s.Given("G_"+member, b.Member.Gravity, "", "specific gravity of the wood, NDS 2018 Table 12.3.3A")
	g, quoted := "pow(G_"+member+", ", calc.Read
	step := func(symbol, formula string, x float64) {
		s.Append([]calc.Line{{Symbol: symbol, Formula: formula, X: x, Unit: "psi", Source: source, Status: quoted}})
	}
	if b.Diameter < thick {
		step(fe, "floor(16600 * "+g+"1.84) / 50 + 0.5) * 50", b.Strength)
		return
	}
	par, perp, theta := "Fe_par_"+member, "Fe_perp_"+member, "theta_"+member
	s.Given(theta, b.Member.Angle, "deg", "load to grain")
	step(par, "floor(11200 * G_"+member+" / 50 + 0.5) * 50", b.Along)
	step(perp, "floor(6100 * "+g+"1.45) / sqrt(D) / 50 + 0.5) * 50", b.Across)
	s.Step(fe, par+" * "+perp+" / ("+par+" * pow(sind("+theta+"), 2) + "+perp+" * pow(cosd("+theta+"), 2))",
		b.Strength, "psi", "NDS 2018 eq. 12.3-11")
}
