package dowel

// A Mode is how a dowel connection yields (NDS 2018 Appendix I).
type Mode uint8

// The modes, in the order of the equations.
const (
	BearingMain Mode = iota // Im: the main member crushes
	BearingSide             // Is: the side member crushes
	Rotation                // II: the dowel turns in both members
	BendingMain             // IIIm: one hinge in the main member
	BendingSide             // IIIs: one hinge in the side member
	BendingBoth             // IV: two hinges for each shear plane
	modes
	NoMode // no value: the standard permits none
)

var modeNames = [...]string{"Im", "Is", "II", "IIIm", "IIIs", "IV", "", "none"}

// String returns the name of the mode in the standard, such as IIIs.
func (m Mode) String() string { return modeNames[m] }
