package lumber

import (
	"fmt"
	"math"
	"regexp"
	"strconv"

	"patiocover/calc"
)

// mostPlies is the most plies of a built-up member (NDS 2018 15.3.1).
const mostPlies = 5

// The forms of the names that no table lists: a side is 12, 5-1/8 or 11.875.
var (
	sideForm  = `(\d{1,2}(?:-\d{1,2}/\d{1,2}|\.\d{1,4})?)`
	pliesForm = regexp.MustCompile(`^([2-9])-(.+)$`)
	gluedForm = regexp.MustCompile(`^` + sideForm + `x` + sideForm + `$`)
	poleForm  = regexp.MustCompile(`^` + sideForm + `(?: ?in\.?)? ?round$`)
	wholeForm = regexp.MustCompile(`^\d+x\d+$`)
)

// dressed returns the size that the table of dressed sizes lists by this name.
func dressed(name string) (Section, bool) {
	for _, s := range sizes {
		if s.Name == name {
			return s, true
		}
	}
	return Section{}, false
}

// otherSize reads the name of glued wood, of a pole, or of plies.
func otherSize(name string) (Section, bool) {
	if m := poleForm.FindStringSubmatch(name); m != nil {
		return poleOf(side(m[1]))
	}
	if s, ok := glued(name); ok {
		return s, true
	}
	m := pliesForm.FindStringSubmatch(name)
	if m == nil {
		return Section{}, false
	}
	one, ok := dressed(m[2])
	if !ok {
		one, ok = glued(m[2])
	}
	n, _ := strconv.Atoi(m[1])
	if !ok {
		return Section{}, false
	}
	return one.Times(n)
}

// glued reads an actual size, which has a fraction in one side at least: two whole
// numbers are a nominal size.
func glued(name string) (Section, bool) {
	m := gluedForm.FindStringSubmatch(name)
	if m == nil || wholeForm.MatchString(name) {
		return Section{}, false
	}
	return gluedOf(side(m[1]), side(m[2]))
}

// side reads 12, 5-1/8 or 11.875, in inches; not a number when the fraction is none.
func side(text string) float64 {
	inches, err := calc.ParseLength(text+" in", calc.In)
	if err != nil {
		return math.NaN()
	}
	return inches
}

// The sizes that the forms accept, in.
const (
	thinnest  = 0.75 // glued wood
	deepest   = 60.0 // glued wood
	slimmest  = 3.0  // poles
	stoutest  = 24.0 // poles
	sixteenth = calc.Sixteenth
)

// gluedOf returns the section of glued wood with the actual breadth and depth, in, the
// small one first.
func gluedOf(breadth, depth float64) (Section, bool) {
	if !(thinnest <= breadth && breadth <= depth && depth <= deepest) {
		return Section{}, false
	}
	return Section{
		Name: inches(breadth) + "x" + inches(depth), Breadth: breadth, Depth: depth,
		NominalThickness: breadth, NominalWidth: depth, Class: Manufactured, Source: "actual size",
	}, true
}

// poleOf returns the section of a round pole with the diameter, in: its least along
// the length that is checked, because poles taper.
func poleOf(diameter float64) (Section, bool) {
	if !(slimmest <= diameter && diameter <= stoutest) {
		return Section{}, false
	}
	return Section{
		Name: inches(diameter) + " in. round", Breadth: diameter, Depth: diameter,
		NominalThickness: diameter, NominalWidth: diameter, Class: Pole, Source: "actual size", Round: true,
	}, true
}

// Times returns plies of the section side by side, two to five, not fastened together.
// Plies are 1-1/2 in. thick at least; thinner boards and poles do not build up.
func (s Section) Times(plies int) (Section, bool) {
	if plies < 2 || plies > mostPlies || s.Round || s.Plies > 1 || s.Breadth < thinnestPly {
		return Section{}, false
	}
	s.Name = fmt.Sprintf("%d-%s", plies, s.Name)
	s.Breadth *= float64(plies)
	s.Plies = plies
	return s, true
}

// inches writes a length as a mill does, 5-1/8, or as a decimal where it lies between
// the sixteenths.
func inches(x float64) string {
	n := math.Round(x / sixteenth)
	if n*sixteenth != x {
		return calc.Number(x)
	}
	whole, over, under := int(n)/16, int(n)%16, 16 // sixteenths of an inch
	if over == 0 {
		return strconv.Itoa(whole)
	}
	for over%2 == 0 {
		over, under = over/2, under/2
	}
	return fmt.Sprintf("%d-%d/%d", whole, over, under)
}
