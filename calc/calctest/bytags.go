package calctest

import (
	"encoding/json"
	"math"

	"patiocover/calc"
)

// LineByTags is a line as encoding/json writes it by the tags of its fields alone, a value
// that is not finite as null behind the rest: the second route to the bytes of
// [calc.Line.MarshalJSON].
func LineByTags(l calc.Line) ([]byte, error) {
	type plain calc.Line // without its methods
	if finite(l.X) {
		return json.Marshal(plain(l))
	}
	return json.Marshal(struct {
		plain
		X *float64 `json:"value"`
	}{plain: plain(l)})
}

// CheckByTags is a check as encoding/json writes it by the tags of its fields alone.
func CheckByTags(c calc.Check) ([]byte, error) {
	type plain calc.Check // its lines keep their own methods
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

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
