package cover

import "fmt"

// mark numbers a mark from 1.
func mark(letter string, i int) string { return fmt.Sprintf("%s%d", letter, i+1) }

// spanName names a bay of a member.
func spanName(bays []bay, b int) string {
	if !bays[b].cantilever {
		return fmt.Sprintf("span %d", b)
	}
	if b == 0 {
		return "overhang at the start"
	}
	return "overhang at the end"
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
		return "at beam line " + mark("BM", line)
	}
	return "at the ledger"
}
