package anchor

import "patiocover/calc"

// Concrete around a bolt that is cast into a footing (from memory; the cover read in a
// reply that quotes ACI 318-08).
const (
	earthCover  = 3 * calc.In // on steel cast against earth (ACI 318-19 Table 20.5.1.3.1)
	torquedEdge = 6           // diameters to an edge, of a bolt whose nut is tightened (ACI 318-19 17.9.2)
)

// A Room is the check that a footing has room for a bolt cast into it: cover against the
// earth on all sides of its head, and no edge that splits when the nut is tightened.
type Room struct {
	Diameter       float64 // d_a, in
	Embedment      float64 // h_0, to the bearing face of the head, in
	Nearest        float64 // c_min, to the nearest edge, in
	LeastEdge      float64 // c_req, in
	Thickness      float64 // h_a, of the concrete, in
	LeastThickness float64 // h_req, in
	Used           float64 // the larger of c_req / c_min and h_req / h_a, ratio
}

// NewRoom checks the concrete around a bolt cast into a footing. The head is taken to
// reach one diameter out from the middle of the bolt and one below its bearing face,
// which is more than a hex head does.
func NewRoom(b Bolt, c Concrete) Room {
	c = c.within()
	r := Room{Diameter: b.Diameter, Embedment: b.Embedment, Nearest: c.nearest(), Thickness: c.Thickness}
	r.LeastEdge = max(torquedEdge*b.Diameter, earthCover+b.Diameter)
	r.LeastThickness = b.Embedment + b.Diameter + earthCover
	r.Used = max(calc.Ratio(r.LeastEdge, r.Nearest), calc.Ratio(r.LeastThickness, r.Thickness))
	return r
}

// Ratio is what is asked for over what is there.
func (r Room) Ratio() float64 { return calc.Ratio(r.Used, 1) }

// Explain writes the check out. There must be concrete on every side.
func (r Room) Explain() calc.Check {
	var s calc.Sheet
	s.Given("d_a", r.Diameter, "in", "diameter of the bolt")
	s.Given("h_0", r.Embedment, "in", "embedment, to the bearing face of the head")
	s.Given("c_min", r.Nearest, "in", "nearest edge of the concrete")
	s.Given("h_a", r.Thickness, "in", "thickness of the concrete")
	s.Quoted("c_0", earthCover, "in", "ACI 318-19 Table 20.5.1.3.1, cover of steel cast against earth (318-14 seen transcribed)", calc.Read)
	s.Quoted("n_d", torquedEdge, "", "ACI 318-19 17.9.2, diameters to the edge of a bolt that is tightened", calc.Recalled)
	s.Step("c_req", "max(n_d * d_a, c_0 + d_a)", r.LeastEdge, "in", "ACI 318-19 17.9.2, the head reaching one diameter out")
	s.Step("h_req", "h_0 + d_a + c_0", r.LeastThickness, "in", "ACI 318-19 Table 20.5.1.3.1, the head one diameter high")
	s.Step("r", "max(c_req / c_min, h_req / h_a)", r.Used, "", "the larger part")
	s.Given("r_lim", 1, "", "no less concrete than asked for")
	return s.Check("concrete around the anchor", "r", "r_lim")
}
