package web

import (
	"math"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// decimals are the digits behind the point that a unit deserves. A unit that is not
// listed, and a factor without one, gets three.
var decimals = map[string]int{
	"lb": 0, "psi": 0, "lb-in": 0, "lb-ft": 0, "pcf": 1, "plf": 1, "psf": 1, "mph": 1, "deg": 2, "%": 1,
	"gpm": 1, "ft²": 1, "in²": 2, "in³": 2, "in⁴": 1,
}

// number writes a value for a calculation: as many digits as its unit deserves and
// not fewer than three that count, without trailing zeros.
func number(x float64, unit string) string {
	switch {
	case math.IsNaN(x):
		return "unknown"
	case math.IsInf(x, 1):
		return "∞"
	case math.IsInf(x, -1):
		return "−∞"
	case x == 0:
		return "0"
	}
	return grouped(strconv.FormatFloat(x, 'f', places(x, unit), 64))
}

// places is how many digits behind the point a value gets.
func places(x float64, unit string) int {
	digits, listed := decimals[unit]
	if !listed {
		digits = 3
	}
	counting := 2 - int(math.Floor(math.Log10(math.Abs(x))))
	return min(max(digits, counting), 9)
}

// compared writes two values of one unit with digits enough to tell them apart.
func compared(a, b float64, unit string) (string, string) {
	first, second := number(a, unit), number(b, unit)
	for digits := 1; first == second && a != b && digits <= 9; digits++ {
		first = grouped(strconv.FormatFloat(a, 'f', digits, 64))
		second = grouped(strconv.FormatFloat(b, 'f', digits, 64))
	}
	return first, second
}

// grouped puts commas between thousands, drops trailing zeros behind the point and
// writes a true minus.
func grouped(text string) string {
	text, negative := strings.CutPrefix(text, "-")
	whole, part, _ := strings.Cut(text, ".")
	part = strings.TrimRight(part, "0")
	whole = calc.Grouped(whole)
	if part != "" {
		whole += "." + part
	}
	if negative && strings.Trim(whole, "0.,") != "" {
		return "−" + whole
	}
	return whole
}

// pounds writes a demand that somebody builds for: up to the next whole pound.
func pounds(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return number(x, "lb")
	}
	return grouped(strconv.FormatFloat(math.Copysign(calc.RoundUp(math.Abs(x), 1), x), 'f', 0, 64))
}

// ratio writes demand over capacity to two digits, up, so that one above 1 never
// reads 1.00.
func ratio(r cover.Ratio) string {
	x := float64(r)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return "no capacity"
	case x > 99:
		return "over 99"
	}
	return strconv.FormatFloat(calc.RoundUp(x, 0.01), 'f', 2, 64)
}

// feet writes a length given in feet as a drawing does.
func feet(x float64) string { return calc.FeetInches(x * calc.Ft) }

// clearHeight writes a clear height given in inches: down to the sixteenth.
func clearHeight(inches float64) string {
	return calc.FeetInches(calc.RoundDown(inches, calc.Sixteenth))
}

// pressure writes a load in psf to a tenth, with its sign.
func pressure(x float64) string { return grouped(strconv.FormatFloat(x, 'f', 1, 64)) }

// percent writes a relative difference, in words when it is below a millionth.
func percent(x float64) string {
	if math.Abs(x) < 1e-6 {
		return "below 0.0001 %"
	}
	return strconv.FormatFloat(100*x, 'f', 4, 64) + " %"
}

// largestGap is the largest relative difference between applied load and reactions.
func largestGap(all []cover.Closure) float64 {
	most := 0.0
	for _, c := range all {
		most = max(most, math.Abs(c.Gap))
	}
	return most
}
