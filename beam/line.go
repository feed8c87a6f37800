package beam

import (
	"slices"
	"strconv"

	"patiocover/calc"
)

const (
	// longest is the longest line, in: far beyond any member, near enough that no
	// product of load and length overflows.
	longest = 1e6
	// coincident is the part of the length, a ratio, within which two positions are
	// one: above the rounding of sums of spacings, far below any real distance.
	coincident = 1e-10
	// closest is the shortest span as a part of the length, a ratio. Below it the
	// deflections lose the digits that the tests promise.
	closest = 1e-6
)

// A Line is the geometry of one straight member of uniform stiffness on simple
// supports. Make one with [NewLine]; the zero value is ready for [Line.Set].
//
// It is not safe for concurrent use while Set runs.
type Line struct {
	length    float64
	supports  []float64 // in from the left tip, ascending
	spans     []float64 // in, between neighbouring supports
	influence []float64 // moment over inner support i per unit of load term j, factor
	before    []float64 // spans of the last factorization, in
}

// NewLine returns the line of the given length in inches, up to 1e6, on supports
// whose positions are given in ascending order, in inches from the left tip. There
// are at least two; the first and the last may lie inward of the tips.
//
// The error is a *[calc.InputError] that lists everything wrong, unless the equations
// of the support moments could not be solved, which geometry within these rules does
// not bring about.
func NewLine(length float64, supports []float64) (*Line, error) {
	l := new(Line)
	if err := l.Set(length, supports); err != nil {
		return nil, err
	}
	return l, nil
}

// Set gives the line another geometry under the rules of [NewLine] and reuses its
// storage. The factorization is kept when the spans between the supports stay as
// they are, whatever becomes of the overhangs; Set then allocates nothing. After a
// *[calc.InputError] the line is as it was before. Plans made from the line keep the geometry
// they were made with.
func (l *Line) Set(length float64, supports []float64) error {
	if !valid(length, supports) {
		return lineFaults(length, supports)
	}
	l.length = length
	l.supports = append(l.supports[:0], supports...)
	l.snapTips()
	l.spans = l.spans[:0]
	for i := 1; i < len(l.supports); i++ {
		l.spans = append(l.spans, l.supports[i]-l.supports[i-1])
	}
	if slices.EqualFunc(l.spans, l.before, unchanged) {
		return nil
	}
	l.before = l.before[:0]
	if err := l.factor(); err != nil {
		*l = Line{}
		return err
	}
	l.before = append(l.before, l.spans...)
	return nil
}

// unchanged reports whether two spans are one but for the rounding of the positions
// of their supports, which is far below what closure allows.
func unchanged(a, b float64) bool { return abs(a-b) <= rounding*b }

// rounding is the part of a span, a ratio, by which it may come out different when
// the member is shifted on its supports.
const rounding = 1e-12

// Length returns the length, in.
func (l *Line) Length() float64 { return l.length }

// Spans returns the number of spans between supports, one less than the supports.
func (l *Line) Spans() int { return len(l.spans) }

// Support returns the position of support i, counted from 0, in from the left tip.
func (l *Line) Support(i int) float64 { return l.supports[i] }

// Span returns the length of span k, counted from 1, in. Span 0 is the left
// overhang and the one past the last the right overhang; they may be 0 in.
func (l *Line) Span(k int) float64 {
	switch k {
	case 0:
		return l.supports[0]
	case len(l.supports):
		return l.length - l.supports[k-1]
	}
	return l.spans[k-1]
}

// snapTips moves a support that rounding has put beside a tip onto the tip.
func (l *Line) snapTips() {
	last, tolerance := len(l.supports)-1, coincident*l.length
	if l.supports[0] <= tolerance {
		l.supports[0] = 0
	}
	if l.length-l.supports[last] <= tolerance {
		l.supports[last] = l.length
	}
}

func valid(length float64, supports []float64) bool {
	if !(0 < length && length <= longest) || len(supports) < 2 {
		return false
	}
	tolerance := coincident * length
	if !(-tolerance <= supports[0] && supports[len(supports)-1] <= length+tolerance) {
		return false
	}
	for i := 1; i < len(supports); i++ {
		if !(supports[i]-supports[i-1] >= closest*length) {
			return false
		}
	}
	return true
}

// lineFaults lists everything that valid refuses.
func lineFaults(length float64, supports []float64) error {
	var f calc.Fields
	end := length
	if !(0 < length && length <= longest) {
		f.Add("length", calc.Number(length)+" in", "more than 0 in, up to "+calc.Number(longest)+" in")
		end = longest
	}
	if len(supports) < 2 {
		f.Add("supports", strconv.Itoa(len(supports)), "at least 2")
	}
	tolerance := coincident * end
	for i, x := range supports {
		name := "supports[" + strconv.Itoa(i) + "]"
		switch {
		case !(-tolerance <= x && x <= end+tolerance):
			f.Add(name, calc.Number(x)+" in", "on the member, 0 to "+calc.Number(end)+" in")
		case i > 0 && !(x-supports[i-1] >= closest*end):
			f.Add(name, calc.Number(x)+" in", "past the support before it by a millionth of the length")
		}
	}
	return f.Err()
}
