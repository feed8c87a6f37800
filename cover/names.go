package cover

import (
	"fmt"
	"strconv"
)

// mark numbers a mark from 1.
func mark(letter string, i int) string { return fmt.Sprintf("%s%d", letter, i+1) }

// spanName names a bay of a member.
func spanName(bays []bay, b int) string {
	word, number := spanWords(bays, b)
	return word + number
}

// spanWords are the parts of that name; an overhang has no number.
func spanWords(bays []bay, b int) (word, number string) {
	switch {
	case !bays[b].cantilever:
		return "span ", strconv.Itoa(b)
	case b == 0:
		return "overhang at the start", ""
	}
	return "overhang at the end", ""
}

// supportName is the mark of what a rafter bears on at a support.
func (m *model) supportName(support int) string {
	if line := m.plan.lineOf(support); line >= 0 {
		return mark("BM", line)
	}
	return "ledger"
}

// bearsOn says in words what a rafter bears on at a support.
func (m *model) bearsOn(support int) string {
	if line := m.plan.lineOf(support); line >= 0 {
		return m.room.say(phrase{"at beam line BM", strconv.Itoa(line + 1)})
	}
	return "at the ledger"
}
