package cover

import (
	"encoding/json"
	"math"
)

// A Verdict is the answer to one check or to all of them.
type Verdict string

// The four verdicts, from good to bad. NotChecked is never OK.
const (
	OK         Verdict = "OK"          // every ratio is 1 or less
	NotChecked Verdict = "NOT CHECKED" // outside the method; the reason stands beside it
	OpenUp     Verdict = "OPEN UP"     // cannot be judged until it is seen
	Over       Verdict = "OVER"        // a ratio is above 1, or a rule is broken
)

// rank orders the verdicts from good to bad.
var rank = map[Verdict]int{OK: 0, NotChecked: 1, OpenUp: 2, Over: 3}

// Worse returns the worse of two verdicts.
func (v Verdict) Worse(other Verdict) Verdict {
	if rank[other] > rank[v] {
		return other
	}
	return v
}

// A Ratio is demand over capacity. It is written as null when it is not finite:
// something is demanded of no capacity.
type Ratio float64

// MarshalJSON writes the number, or null.
func (r Ratio) MarshalJSON() ([]byte, error) {
	if math.IsInf(float64(r), 0) || math.IsNaN(float64(r)) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(r))
}

// UnmarshalJSON reads what MarshalJSON writes.
func (r *Ratio) UnmarshalJSON(text []byte) error {
	if string(text) == "null" {
		*r = Ratio(math.Inf(1))
		return nil
	}
	return json.Unmarshal(text, (*float64)(r))
}

// Verdict is OK up to 1.
func (r Ratio) Verdict() Verdict {
	if r <= 1 {
		return OK
	}
	return Over
}
