package loads

// An Edition is an edition of the load standard.
type Edition uint8

// The editions. The zero value is the one that the 2018 and 2021 model codes name.
const (
	ASCE716 Edition = iota // ASCE/SEI 7-16
	ASCE722                // ASCE/SEI 7-22
)

// String names the edition as the standard does.
func (e Edition) String() string {
	if e == ASCE722 {
		return "ASCE 7-22"
	}
	return "ASCE 7-16"
}
