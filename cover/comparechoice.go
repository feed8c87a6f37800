package cover

import (
	"slices"
	"strconv"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// Where a fault of a choice is, as the command line and the addresses name it.
const (
	spacingField = "spacing"
	woodField    = "wood"
)

// NewChoice reads a choice as it is typed: spacings with commas between, and each wood
// as species and grade, such as Hem-Fir No.2. Empty texts leave the choice open. Every
// fault is listed in a [*calc.InputError].
func NewChoice(spacings string, woods []string) (Choice, error) {
	var c Choice
	var f calc.Fields
	for part := range strings.SplitSeq(spacings, ",") {
		part = strings.TrimSpace(part)
		if part == "" {
			continue
		}
		x, err := calc.ParseLength(part, calc.In)
		if err != nil {
			f.Add(spacingField, strconv.Quote(part), "spacings in inches with commas between, such as 12, 16, 19.2, 24")
			continue
		}
		c.Spacings = append(c.Spacings, x/calc.In)
	}
	for _, text := range woods {
		text = strings.Join(strings.Fields(text), " ")
		if text == "" {
			continue
		}
		w, ok := woodOf(text)
		if !ok {
			f.Add(woodField, strconv.Quote(text), "a species and its grade, such as Hem-Fir No.2; species: "+
				strings.Join(lumber.Species(), ", "))
			continue
		}
		c.Woods = append(c.Woods, w)
	}
	if err := f.Err(); err != nil {
		return Choice{}, err
	}
	return c, c.validate()
}

// woodOf reads a species of sawn lumber and one of its grades.
func woodOf(text string) (Wood, bool) { return woodAmong(text, lumber.Species(), lumber.Grades) }

// woodAmong takes the longest of the species that begins the text, and the rest for one of
// its grades.
func woodAmong(text string, species []string, grades func(species string) []string) (Wood, bool) {
	var w Wood
	for _, s := range species {
		if len(text) > len(s) && strings.EqualFold(text[:len(s)], s) && text[len(s)] == ' ' && len(s) > len(w.Species) {
			w = Wood{Species: s, Grade: text[len(s)+1:]}
		}
	}
	if w.Species == "" {
		return Wood{}, false
	}
	all := grades(w.Species)
	i := slices.IndexFunc(all, func(g string) bool { return strings.EqualFold(g, w.Grade) })
	if i < 0 {
		return Wood{}, false
	}
	w.Grade = all[i]
	return w, true
}

// validate lists every fault of the choice.
func (c Choice) validate() error {
	var f calc.Fields
	d, _ := FieldOf("rafters.spacing_in")
	for _, s := range c.Spacings {
		f.Within(spacingField, s, d.Low, d.High, d.Unit)
	}
	if len(c.Spacings) > maxSpacings {
		f.Add(spacingField, strconv.Itoa(len(c.Spacings))+" spacings", "up to "+strconv.Itoa(maxSpacings)+" of them")
	}
	for _, w := range c.Woods {
		if !slices.Contains(lumber.Grades(w.Species), w.Grade) {
			f.Add(woodField, strconv.Quote(w.String()), "a species of the tables with one of its grades")
		}
	}
	if len(c.Woods) > maxWoods {
		f.Add(woodField, strconv.Itoa(len(c.Woods))+" woods", "up to "+strconv.Itoa(maxWoods)+" of them")
	}
	if n := len(c.Spacings) * len(c.Woods); n > maxOptions && !f.Any() {
		f.Add(woodField, strconv.Itoa(n)+" options", "spacings times woods up to "+strconv.Itoa(maxOptions))
	}
	return f.Err()
}
