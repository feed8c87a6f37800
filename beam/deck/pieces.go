package deck

import (
	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// workerStrip is the width of joined planks that carries the concentrated load, in (IBC
// 2012 Table 2308.10.9, in the 2013 California Building Code: a strip of 12 in.).
const workerStrip = 12 * calc.In

// blockedSlats is how many slats share the concentrated load where they are blocked to
// each other, an engineering choice.
const blockedSlats = 2

// NewPlank is one plank of a closed deck on the span, in. joined: tongue and groove,
// so that a strip of 12 in. carries the concentrated load; else one plank does.
func NewPlank(piece *lumber.Adjusted, span float64, joined bool, layup Layup) Strip {
	face := across(piece)
	s := Strip{Piece: piece, Span: span, Width: face, Share: 1, Layup: layup}
	if joined {
		s.Share = min(1, face/workerStrip)
	}
	return s.braced(false)
}

// NewPurlin is one purlin below metal panels on the span, in; spacing is on center, in.
// The panels hold its top edge. It carries the concentrated load alone.
func NewPurlin(piece *lumber.Adjusted, span, spacing float64) Strip {
	return Strip{Piece: piece, Span: span, Width: spacing, Share: 1}.braced(true)
}

// NewSlat is one slat of an open deck on the span, in; spacing is on center, in. Nothing
// holds its edges between the rafters. It carries the concentrated load alone, or with
// its neighbor where slats are blocked to each other.
func NewSlat(piece *lumber.Adjusted, span, spacing float64, blocked bool) Strip {
	s := Strip{Piece: piece, Span: span, Width: spacing, Share: 1}
	if blocked {
		s.Share = 1.0 / blockedSlats
	}
	return s.braced(false)
}

// braced fills in how the edges are held between the rafters.
func (s Strip) braced(top bool) Strip {
	free := member.Bracing{Unbraced: s.Span, Loading: member.AnyLoading}
	s.Top, s.Bottom = free, free
	s.Top.Held = top
	return s
}

// across returns the width of the piece on plan, in.
func across(piece *lumber.Adjusted) float64 {
	if piece.Use.Flat {
		return piece.Section.Depth
	}
	return piece.Section.Breadth
}
