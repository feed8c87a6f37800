package calc

import "fmt"

// A Status says how a published number came into the project.
type Status uint8

// The three ways, the zero value being the weakest so that a row without a
// status is never taken for a confirmed one.
const (
	Recalled Status = iota // from memory: to be confirmed against the printed source
	Computed               // from the equation that the source names
	Read                   // seen in a text that prints it
)

var statusNames = [...]string{Recalled: "recalled", Computed: "computed", Read: "read"}

// String returns recalled, computed or read.
func (s Status) String() string {
	if int(s) < len(statusNames) {
		return statusNames[s]
	}
	return fmt.Sprintf("Status(%d)", uint8(s))
}

// MarshalText writes the name of the status. A value that is none of the three
// is an error.
func (s Status) MarshalText() ([]byte, error) {
	if int(s) >= len(statusNames) {
		return nil, fmt.Errorf("%v is not one of recalled, computed, read", s)
	}
	return []byte(s.String()), nil
}

// UnmarshalText accepts the names that MarshalText writes.
func (s *Status) UnmarshalText(text []byte) error {
	for i, name := range statusNames {
		if name == string(text) {
			*s = Status(i)
			return nil
		}
	}
	return fmt.Errorf("status %q is not one of recalled, computed, read", text)
}

// Weakest returns the least confirmed of two statuses, as a result drawn from
// both deserves.
func (s Status) Weakest(other Status) Status { return min(s, other) }
