package web

import (
	"regexp"
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
		label := f.Path
		for _, d := range table {
			if pattern(f.Path) == d.Path {
				label = d.Label
			}
		}
		out = append(out, fault{ID: "f-" + plain(f.Path), Label: label, Words: f.Words()})
	}
	return out
}

// listNumber is the number of an element in a path.
var listNumber = regexp.MustCompile(`\[\d+\]`)

// pattern is the path of a field as the table of fields has it.
func pattern(path string) string { return listNumber.ReplaceAllString(path, "[]") }

// phrases are words of the input that need more than a space to be read.
var phrases = map[string]string{
	"true": "yes", "false": "no", "to_100F": "up to 100 °F", "to_125F": "100 to 125 °F", "to_150F": "125 to 150 °F",
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

// quantity says how much of a link there is.
func quantity(l cover.Link) string {
	n := strconv.Itoa(l.Count)
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
