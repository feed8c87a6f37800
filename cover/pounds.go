package cover

import (
	"strconv"

	"patiocover/calc"
)

// pounds writes a demand in lb for a sentence: up to the next whole pound, with
// commas between thousands.
func pounds(x float64) string {
	return calc.Grouped(strconv.FormatFloat(calc.RoundUp(x, 1), 'f', 0, 64))
}
