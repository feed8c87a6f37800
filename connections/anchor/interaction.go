package anchor

import "patiocover/calc"

// Interaction of tension and shear (ACI 318-19 17.8, from memory).
const (
	slight = 0.2 // up to this part of its strength the lesser of the two does not count
	both   = 1.2 // sum of the two parts at most
)

// An Interaction is the check of tension and shear together.
type Interaction struct {
	Pull float64 // N_ua / phi N_n, ratio
	Push float64 // V_ua / phi V_n, ratio
	Both bool    // each uses more than a fifth of its strength: they add up
	Used float64 // sum over 1.2, or the larger, ratio
}

// NewInteraction combines the two checks.
func NewInteraction(t Tension, v Shear) Interaction {
	i := Interaction{Pull: t.Ratio(), Push: v.Ratio()}
	i.Both = i.Pull > slight && i.Push > slight
	i.Used = max(i.Pull, i.Push)
	if i.Both {
		i.Used = max(i.Used, (i.Pull+i.Push)/both)
	}
	return i
}

// Ratio is what is used of the strength.
func (i Interaction) Ratio() float64 { return calc.Ratio(i.Used, 1) }

// Explain writes the check out. Both ratios must be finite.
func (i Interaction) Explain() calc.Check {
	var s calc.Sheet
	s.Given("r_N", i.Pull, "", "N_ua / phiN_n, from the check in tension")
	s.Given("r_V", i.Push, "", "V_ua / phiV_n, from the check in shear")
	if i.Both {
		s.Quoted("r_max", both, "", "ACI 318-19 17.8.3 (318-14 17.6.3 seen restated)", calc.Read)
		s.Step("r", "max(r_N, r_V, (r_N + r_V) / r_max)", i.Used, "", "ACI 318-19 17.8.3")
	}
	if !i.Both {
		s.Step("r", "max(r_N, r_V)", i.Used, "", "ACI 318-19 17.8.1 and 17.8.2: one of them is at most 0.2")
	}
	s.Given("r_lim", 1, "", "ACI 318-19 17.8")
	return s.Check("anchor in tension and shear", "r", "r_lim")
}
