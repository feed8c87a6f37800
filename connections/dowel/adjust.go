package dowel

import (
	_ "embed"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// Conditions are what the factors of chapter 11 depend on. The zero value is the
// ordinary case: allowable stress, ten years, dry, one row, side grain.
type Conditions struct {
	Method     lumber.Method      // allowable stress, or load and resistance factor design
	Duration   lumber.Duration    // of the shortest load of the combination
	Fabricated Moisture           // of the lumber when it was fastened
	Service    Moisture           // of the lumber in use
	Heat       lumber.Temperature // highest sustained temperature
	Rows       bool               // more than one row of bolts or lag screws, tied by one piece across the grain
	EndGrain   bool               // loaded sideways in end grain
	Toenail    bool               // a toe-nail, whose withdrawal takes no C_M
}

// A Moisture is above or below 19 percent.
type Moisture uint8

// The two moistures.
const (
	Dry Moisture = iota // 19 percent or less
	Wet                 // above 19 percent
)

// String returns dry or wet.
func (m Moisture) String() string {
	if m == Dry {
		return "dry"
	}
	return "wet"
}

// Factors of the method, and of end grain (NDS 2018 Tables 11.3.1, N1 and N2; 12.5.2.2).
const (
	longestDuration  = 1.6  // largest C_D of a connection, factor
	largestTime      = 1.0  // largest lambda of a connection, factor
	formatFactor     = 3.32 // K_F of connections
	resistanceFactor = 0.65 // phi_z
	endGrainLateral  = 0.67 // C_eg, factor
)

//go:embed wet.csv
var wetCSV string

//go:embed heat.csv
var heatCSV string

type wetRow struct {
	kind, fabrication, service, rows, source string
	lateral, withdrawal                      float64
	status                                   calc.Status
}

var wetRows = calc.ReadTable("wet.csv", wetCSV, func(r calc.Row) wetRow {
	return wetRow{
		kind: r.Text("kind"), fabrication: r.Text("fabrication"), service: r.Text("service"), rows: r.Text("rows"),
		lateral: r.Num("lateral"), withdrawal: r.Num("withdrawal"), source: r.Text("source"), status: r.Status(),
	}
})

type heatRow struct {
	service, source string
	factor          [lumber.UpTo150F + 1]float64
	status          calc.Status
}

var heatRows = calc.ReadTable("heat.csv", heatCSV, func(r calc.Row) heatRow {
	return heatRow{
		service: r.Text("service"), source: r.Text("source"), status: r.Status(),
		factor: [...]float64{r.Num("to 100 F"), r.Num("to 125 F"), r.Num("to 150 F")},
	}
})

// Factors are the adjustment factors of one reference value.
type Factors struct {
	Conditions  Conditions // what they follow from
	Time        float64    // C_D, or K_F phi lambda, factor
	Moisture    float64    // C_M, factor
	Temperature float64    // C_t, factor
	Group       float64    // C_g, factor; 1 unless set by With
	Geometry    float64    // C_Delta, factor; 1 unless set by With
	EndGrain    float64    // C_eg sideways, factor; that of withdrawal is in the reference value
	Product     float64    // of all, factor
	withdrawal  bool
	wet         wetRow
	heat        heatRow
}

// LateralFactors returns the factors of a lateral value (NDS 2018 Table 11.3.1). Group
// and geometry factors depend on the layout: see [Factors.With].
func LateralFactors(kind Kind, c Conditions) Factors {
	f := newFactors(kind, c)
	f.Moisture = f.wet.lateral
	if c.EndGrain {
		f.EndGrain = endGrainLateral
	}
	return f.multiply()
}

// WithdrawalFactors returns the factors of a withdrawal value (NDS 2018 Table 11.3.1).
// C_M does not apply to toe-nails (note 2). End grain is in the value: see
// [NewWithdrawal].
func WithdrawalFactors(kind Kind, c Conditions) Factors {
	f := newFactors(kind, c)
	f.withdrawal = true
	f.Moisture = f.wet.withdrawal
	if c.Toenail {
		f.Moisture = 1
	}
	return f.multiply()
}

// With returns the factors with those of the layout: C_g of NDS 2018 11.3.6 and C_Delta
// of 12.5.1, which withdrawal does not take.
func (f Factors) With(group, geometry float64) Factors {
	f.Group, f.Geometry = group, geometry
	return f.multiply()
}

func newFactors(kind Kind, c Conditions) Factors {
	f := Factors{Conditions: c, Group: 1, Geometry: 1, EndGrain: 1, Time: timeFactor(c.Method, c.Duration)}
	for i := range wetRows {
		if wetRows[i].serves(kind, c) {
			f.wet = wetRows[i]
			break
		}
	}
	for i := range heatRows {
		if heatRows[i].service == c.Service.String() {
			f.heat = heatRows[i]
		}
	}
	f.Temperature = f.heat.factor[c.Heat]
	return f
}

// serves reports whether the row holds for the fastener in the conditions.
func (r *wetRow) serves(kind Kind, c Conditions) bool {
	rows := "one"
	if c.Rows {
		rows = "more"
	}
	if c.Fabricated == Dry && r.fabrication == "dry" {
		rows = "one" // dry lumber does not shrink onto its rows
	}
	return r.kind == kind.String() && r.service == c.Service.String() &&
		(r.fabrication == "any" || r.fabrication == c.Fabricated.String()) && (r.rows == "any" || r.rows == rows)
}

// timeFactor returns C_D, at most 1.6, or K_F phi lambda, lambda at most 1.
func timeFactor(m lumber.Method, d lumber.Duration) float64 {
	if m == lumber.LRFD {
		return formatFactor * resistanceFactor * min(largestTime, d.TimeEffect())
	}
	return min(longestDuration, d.Factor())
}

func (f Factors) multiply() Factors {
	f.Product = f.Time * f.Moisture * f.Temperature * f.Group * f.Geometry * f.EndGrain
	return f
}

// write adds the lines of the factors and returns their product as a formula.
func (f *Factors) write(s *calc.Sheet) string {
	c := f.Conditions
	product := "C_D"
	if c.Method == lumber.LRFD {
		s.Quoted("K_F", formatFactor, "", "NDS 2018 Table N1, connections (seen restated)", calc.Read)
		s.Quoted("phi_z", resistanceFactor, "", "NDS 2018 Table N2, connections (seen restated)", calc.Read)
		s.Quoted("lambda", min(largestTime, c.Duration.TimeEffect()), "", "NDS 2018 Table N3, connections at most 1.0", calc.Recalled)
		product = "K_F * phi_z * lambda"
	}
	if c.Method == lumber.ASD {
		s.Quoted("C_D", f.Time, "", "NDS 2018 Table 2.3.2, "+c.Duration.Load()+", connections at most 1.6", calc.Read)
	}
	wet := f.wet.source + ", " + c.Fabricated.String() + " when fastened, " + c.Service.String() + " in use"
	if f.withdrawal && c.Toenail {
		s.Quoted("C_M", f.Moisture, "", "NDS 2018 Table 11.3.1 note 2: none for toe-nails in withdrawal", calc.Read)
	}
	if !f.withdrawal || !c.Toenail {
		s.Quoted("C_M", f.Moisture, "", wet, f.wet.status)
	}
	s.Quoted("C_t", f.Temperature, "", f.heat.source+", "+c.Heat.String(), f.heat.status)
	product += " * C_M * C_t"
	if f.withdrawal {
		return product
	}
	s.Given("C_g", f.Group, "", "NDS 2018 11.3.6, group action")
	s.Given("C_Delta", f.Geometry, "", "NDS 2018 12.5.1, distances")
	s.Quoted("C_eg", f.EndGrain, "", "NDS 2018 12.5.2.2, 0.67 in end grain", calc.Recalled)
	return product + " * C_g * C_Delta * C_eg"
}
