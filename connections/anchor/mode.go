package anchor

// A Mode is how an anchor fails.
type Mode uint8

// The modes of tension and of shear.
const (
	Steel    Mode = iota // the bolt tears
	Breakout             // a cone of concrete comes out
	Pullout              // the head or hook crushes its way out
	Blowout              // the side of the concrete bursts
	Pryout               // sheared, it pries concrete out behind it
	modes
)

var modeNames = [modes]string{"steel", "concrete breakout", "pullout", "side-face blowout", "pryout"}

// String names the mode.
func (m Mode) String() string { return modeNames[m] }

// Strengths are the design strengths of one anchor in tension or in shear, and the least
// of them (ACI 318-19 17.5.2).
type Strengths struct {
	Designs  [modes]float64 // phi N_n or phi V_n by mode, lb
	Counts   [modes]bool    // the mode is possible with this anchor
	Governs  Mode           // least of those that are possible
	Capacity float64        // its strength, lb; 0 with a fault
}

// set adds the strength of a possible mode, lb.
func (s *Strengths) set(m Mode, x float64) { s.Designs[m], s.Counts[m] = x, true }

// govern finds the least; steel is always possible.
func (s *Strengths) govern() {
	for m := Breakout; m < modes; m++ {
		if s.Counts[m] && s.Designs[m] < s.Designs[s.Governs] {
			s.Governs = m
		}
	}
	s.Capacity = s.Designs[s.Governs]
}
