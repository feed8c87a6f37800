package rain

import "patiocover/calc"

const (
	drivenShare  = 0.20    // s/m, driving rain factor of average rain: one over the speed at which drops fall
	meterPerMile = 0.44704 // m/s in one mph, exact
)

// A Reach is how far wind-driven rain falls in below an open edge, and the floor that
// stays dry behind it. It says what the cover protects, not what it is built for.
type Reach struct {
	Edge  float64 // height of the open edge above the floor, in
	Speed float64 // wind at the edge while it rains, mph
	Depth float64 // depth of the cover from the open edge, in
	In    float64 // reach of the rain, in
	Dry   float64 // floor that stays dry, in; 0 when the rain reaches through
}

// NewReach returns the reach x = h V / Vt of rain whose drops fall at 5 m/s (a building
// science digest on driving rain gives 0.20 to 0.25 s/m for average rain).
func NewReach(edge, speed, depth float64) Reach {
	r := Reach{Edge: edge, Speed: speed, Depth: depth}
	r.In = edge * speed * meterPerMile * drivenShare
	r.Dry = max(0, depth-r.In)
	return r
}

// Lines writes the reach up.
func (r Reach) Lines() []calc.Line {
	var s calc.Sheet
	s.Given("h_e", r.Edge, "in", "height of the open edge above the slab, geometry")
	s.Given("V_r", r.Speed, "mph", "wind while it rains, input site.rain_wind_mph")
	s.Given("c_m", meterPerMile, "", "m/s in one mph")
	s.Quoted("k_d", drivenShare, "s/m", "building science digest on driving rain, average rain", calc.Read)
	s.Step("x", "h_e * V_r * c_m * k_d", r.In, "in", "path of a falling drop")
	s.Given("d", r.Depth, "in", "depth of the cover from the open edge, geometry")
	s.Step("d_dry", "max(0, d - x)", r.Dry, "in", "floor that stays dry")
	return s.Lines()
}
