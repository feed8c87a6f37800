package diaphragm

import "patiocover/calc"

// Limits of a deck that is held at one side only, of one story. Shape and length stood in
// the IBC before the wood standard took them over; SDPWS 2015 4.2.5.2 allows 35 ft, of
// which the smaller is kept here. What is exempt is from memory.
const (
	mostShape = 1.0          // l/w, ratio (IBC 2305.2.5)
	mostReach = 25 * calc.Ft // l, in (IBC 2305.2.5)
	exempt    = 6 * calc.Ft  // L', in, up to which SDPWS 2015 4.2.5.2 asks for nothing
)

// A Reach is how far a deck stands out from the one side that holds it. The limit is that
// of a torsionally irregular story, which a roof held at one side always is; the wider
// one of 1.5 asks for a computed movement of the open edge.
type Reach struct {
	Out    float64 // L', in, from the held side to the open edge, along the slope
	Width  float64 // W', in, of the held side
	Shape  float64 // L'/W', ratio
	Exempt bool    // it reaches so little that the clause asks for nothing
	byOut  bool    // the length is nearer to its limit than the shape
	use    float64 // the larger of both over their limits, ratio
}

// NewReach measures a deck, in.
func NewReach(out, width float64) Reach {
	r := Reach{Out: out, Width: width, Shape: out / width, Exempt: out <= exempt}
	shape, length := calc.Ratio(r.Shape, mostShape), calc.Ratio(out/calc.Ft, mostReach/calc.Ft)
	r.byOut = length > shape
	r.use = max(shape, length)
	return r
}

// Ratio is the measure over its limit, of the shape or the length whichever is nearer.
// Beyond 1 the deck is outside the method.
func (r Reach) Ratio() float64 { return r.use }

// Explain writes the measure out.
func (r Reach) Explain() calc.Check {
	var s calc.Sheet
	const clause = "IBC 2305.2.5 before SDPWS 4.2.5.2, open front"
	s.Given("L_out", r.Out/calc.Ft, "ft", "from the held side to the open edge, geometry")
	s.Given("W", r.Width/calc.Ft, "ft", "length of the held side, geometry")
	s.Step("c", "L_out / W", r.Shape, "", clause)
	s.Quoted("c_max", mostShape, "", clause+", one story", calc.Read)
	s.Quoted("L_max", mostReach/calc.Ft, "ft", clause, calc.Read)
	if r.byOut {
		return s.Check("reach of the deck", "L_out", "L_max")
	}
	return s.Check("reach of the deck", "c", "c_max")
}
