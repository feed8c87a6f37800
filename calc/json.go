package calc

import (
	"encoding/json"
	"math"
)

// finite reports whether JSON has a number for x.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// MarshalJSON writes the line; a value that is not finite, such as a share of no
// capacity, as null.
func (l Line) MarshalJSON() ([]byte, error) {
	type plain Line
	if finite(l.X) {
		return json.Marshal(plain(l))
	}
	return json.Marshal(struct {
		plain
		X *float64 `json:"value"`
	}{plain: plain(l)})
}

// UnmarshalJSON reads what MarshalJSON writes; null is more than any number.
func (l *Line) UnmarshalJSON(text []byte) error {
	type plain Line
	in := struct {
		*plain
		X *float64 `json:"value"`
	}{plain: (*plain)(l)}
	if err := json.Unmarshal(text, &in); err != nil {
		return err
	}
	l.X = math.Inf(1)
	if in.X != nil {
		l.X = *in.X
	}
	return nil
}

// MarshalJSON writes the check; a demand or a capacity that is not finite as null.
func (c Check) MarshalJSON() ([]byte, error) {
	type plain Check
	if finite(c.Demand) && finite(c.Capacity) {
		return json.Marshal(plain(c))
	}
	out := struct {
		plain
		Demand   *float64 `json:"demand"`
		Capacity *float64 `json:"capacity"`
	}{plain: plain(c)}
	if finite(c.Demand) {
		out.Demand = &c.Demand
	}
	if finite(c.Capacity) {
		out.Capacity = &c.Capacity
	}
	return json.Marshal(out)
}
