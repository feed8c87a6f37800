package calc

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// International units of length in inches; an inch is 25.4 mm exactly
// (international yard and pound agreement of 1959).
const (
	Millimeter = In / 25.4
	Centimeter = 10 * Millimeter
	Meter      = 1000 * Millimeter
)

// Sixteenth is the finest mark on a carpenter's tape, in.
const Sixteenth = In / 16

// A LengthError is a text that is not a length.
type LengthError struct {
	Text string // as given
}

// Error says what a length may look like.
func (e *LengthError) Error() string {
	return fmt.Sprintf(`%q is not a length such as 12' 6", 12-6, 12'-6 1/2", 150.5", 12.5 or 3.8 m`, e.Text)
}

// The four ways to write a length. An amount is 12, 12.5, 6 1/2, 6-1/2 or 1/2.
var (
	amountForm   = `(?:\d{1,9}[ -]\d{1,3}/\d{1,3}|\d{1,3}/\d{1,3}|\d{1,9}(?:\.\d{0,9})?|\.\d{1,9})`
	feetMark     = `(?:'|ft\.?|foot|feet)`
	inchMark     = `(?:"|in\.?|inch|inches)`
	feetInches   = regexp.MustCompile(`^(\d{1,9}) ?` + feetMark + ` ?-? ?(` + amountForm + `) ?` + inchMark + `?$`)
	dashedInches = regexp.MustCompile(`^(\d{1,9})-(\d{1,2}(?:\.\d{0,9})?|\d{1,2}[ -]\d{1,3}/\d{1,3}) ?` + inchMark + `?$`)
	oneUnit      = regexp.MustCompile(`^(` + amountForm + `) ?(` + feetMark + `|` + inchMark + `|mm|cm|m)?$`)
)

// plainMarks replaces what keyboards and copied drawings bring by what the forms
// above are written in.
var plainMarks = strings.NewReplacer(
	"''", `"`, "’’", `"`, "′′", `"`, "″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'", "‘", "'",
	"–", "-", "—", "-", "−", "-", "‑", "-", "⁄", "/", "\u00a0", " ", "\u202f", " ", "\t", " ",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅓", " 1/3", "⅔", " 2/3",
)

// ParseLength reads a length as a person writes it and returns it in inches. unit
// is the unit of a bare number, Ft or In. It reads 12' 6", 12'-6½", 12ft 6in,
// 150.5", 12.5', 3.8 m, 380 cm, 3800 mm and a bare 12.5; 12-6 is always feet and
// inches, and inches behind feet are less than 12.
//
// Everything else is a [*LengthError]: a sign, an exponent, a decimal comma, and a
// bare 6-1/2, which could be feet and inches or inches and a fraction.
func ParseLength(text string, unit float64) (inches float64, err error) {
	plain := strings.Join(strings.Fields(plainMarks.Replace(strings.ToLower(text))), " ")
	plain = strings.ReplaceAll(plain, "- ", "-")
	for _, form := range []*regexp.Regexp{feetInches, dashedInches} {
		if m := form.FindStringSubmatch(plain); m != nil {
			feet, _ := amount(m[1])
			rest, ok := amount(m[2])
			if !ok || rest >= Ft {
				return 0, &LengthError{text}
			}
			return feet*Ft + rest, nil
		}
	}
	m := oneUnit.FindStringSubmatch(plain)
	if m == nil || m[2] == "" && strings.Contains(m[1], "-") {
		return 0, &LengthError{text}
	}
	x, ok := amount(m[1])
	if !ok {
		return 0, &LengthError{text}
	}
	return x * named(m[2], unit), nil
}

// named returns the unit that a mark stands for, in inches; none stands for bare.
func named(mark string, bare float64) float64 {
	switch {
	case mark == "":
		return bare
	case mark == "mm":
		return Millimeter
	case mark == "cm":
		return Centimeter
	case mark == "m":
		return Meter
	case mark[0] == '\'' || mark[0] == 'f':
		return Ft
	}
	return In
}

// amount reads 12, 12.5, 6 1/2, 6-1/2 or 1/2. A fraction is below one.
func amount(text string) (x float64, ok bool) {
	whole, fraction, mixed := strings.Cut(strings.ReplaceAll(text, "-", " "), " ")
	if !mixed && strings.Contains(text, "/") {
		whole, fraction = "0", text
	}
	x, err := strconv.ParseFloat(whole, 64)
	if err != nil || fraction == "" {
		return x, err == nil
	}
	over, under, _ := strings.Cut(fraction, "/")
	n, err1 := strconv.Atoi(over)
	d, err2 := strconv.Atoi(under)
	if err1 != nil || err2 != nil || n >= d {
		return 0, false
	}
	return x + float64(n)/float64(d), true
}

// FeetInches writes a length, given in inches, as a drawing does: 12'-6 1/2", to
// the nearest sixteenth. What is not a finite number is written as a question mark.
func FeetInches(inches float64) string {
	if math.IsNaN(inches) || math.Abs(inches) > 1e12 {
		return "?"
	}
	n := int64(math.Round(math.Abs(inches) / Sixteenth))
	sign := ""
	if inches < 0 && n > 0 {
		sign = "-"
	}
	perFoot := int64(Ft / Sixteenth)
	perInch := int64(In / Sixteenth)
	text := fmt.Sprintf("%s%d'-%d", sign, n/perFoot, n%perFoot/perInch)
	over, under := n%perInch, perInch
	if over == 0 {
		return text + `"`
	}
	for over%2 == 0 {
		over, under = over/2, under/2
	}
	return fmt.Sprintf(`%s %d/%d"`, text, over, under)
}
