package web

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// A fault is one wrong entry in the list at the top of the page.
type fault struct {
	ID    string // of the entry
	Label string // of the entry; its path when the form has no such entry
	Words string
}

// listed words the faults for the top of the page.
func listed(faults []calc.Fault) []fault {
	var out []fault
	for _, f := range faults {
		x := fault{ID: "f-" + plain(f.Path), Label: f.Path, Words: worded(f)}
		if d, ok := cover.FieldOf(f.Path); ok {
			x.Label = d.Label
		}
		for _, g := range groupNotes {
			if g.prefix == f.Path+"[]" {
				x.ID, x.Label = "g-"+plain(g.prefix), g.title
			}
		}
		out = append(out, x)
	}
	return out
}

// keyWords finds the keys and the choices of an input in a sentence.
var keyWords = regexp.MustCompile(`[a-z]+(?:[._][a-z0-9A-Z]+)+`)

// worded says what is wrong in the words of the form: its labels for keys and its
// phrases for choices. What was typed stays as it is.
func worded(f calc.Fault) string {
	group, _, _ := strings.Cut(f.Path, ".")
	d, _ := cover.FieldOf(f.Path)
	f.Allowed = keyWords.ReplaceAllStringFunc(f.Allowed, func(word string) string {
		for _, path := range []string{word, group + "." + word} {
			if other, ok := cover.FieldOf(path); ok {
				return "“" + other.Label + "”"
			}
		}
		if slices.Contains(d.Choices, word) {
			return spoken(word)
		}
		return word
	})
	return f.Words()
}

// phrases are words of the input that need more than a space to be read.
var phrases = map[string]string{
	"true": "yes", "false": "no", "house_diaphragm": "the house by deck and ledger",
	"by_stock": "where the stock length forces it", "enveloped": "the worse of clear and obstructed",
	"live_and_dead": "live and dead load", "all_loads": "all loads, wind too", "rim": "rim joist", "embedded": "embedded in the ground",
	"to_100F": "up to 100 °F", "to_125F": "100 to 125 °F", "to_150F": "125 to 150 °F",
}

// spoken turns a word of the input into words of people.
func spoken(word string) string {
	if words, ok := phrases[word]; ok {
		return words
	}
	return strings.ReplaceAll(word, "_", " ")
}

// unitOf is the unit of the forces on a link.
func unitOf(l cover.Link) string {
	switch l.Per {
	case cover.PerFoot:
		return "lb/ft"
	case cover.PerSquareFoot:
		return "lb/sq ft"
	}
	return "lb"
}

// unitNote says what the figures of a link's calculation are of, where that is not
// one joint.
func unitNote(l cover.Link) string {
	switch l.Per {
	case cover.PerFoot:
		return "Every lb here is for each foot of ledger."
	case cover.PerSquareFoot:
		return "Every lb here is for each square foot of deck. Nails and screws have no uplift rating: T is what they must hold."
	}
	return ""
}

// quantity says how much of a link there is.
func quantity(l cover.Link) string {
	n := strconv.Itoa(l.Count)
	if strings.HasPrefix(l.Mark, "S") {
		return n + ", two at each splice"
	}
	switch l.Per {
	case cover.PerFoot:
		return n + " ft of ledger"
	case cover.PerSquareFoot:
		return n + " sq ft of deck"
	case cover.PerPost:
		return n + ", one at each post"
	}
	return n + ", one at each rafter"
}

// plain makes a path fit to name a place in a page.
func plain(path string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, path)
}
