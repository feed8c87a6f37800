package drawing

import (
	"fmt"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// Paper for the snow above the section, in points.
const (
	snowHead = 16.0 // the line that names the load scale
	snowRoom = 24.0 // of words above a load
	snowTall = 44.0 // most that a load is high
	snowFoot = 34.0 // below a load: how far the heap reaches
)

// snowBand is the paper that the loads of snow take above the section, pt. There is
// none unless snow lies deeper near the house.
func snowBand(r *cover.Report) float64 {
	if len(r.Loads.Heaps) == 0 {
		return 0
	}
	return snowHead + float64(len(r.Loads.Heaps))*(snowRoom+snowTall+snowFoot)
}

// snow draws each heap on its even snow, one below the other, all to one load scale,
// straight above the roof that carries them.
func (s *sectionSheet) snow() {
	if len(s.report.Loads.Heaps) == 0 {
		return
	}
	most := 0.0
	for _, h := range s.report.Loads.Heaps {
		most = max(most, h.Even+max(h.Peak, h.Far))
	}
	inch := loadScale(most)
	s.left(heavy, "SNOW ON PLAN, "+calc.Grouped(calc.Number(inch))+" PSF TO THE INCH", Point{8, snowHead / 2})
	below := s.field
	for i, h := range s.report.Loads.Heaps {
		top := snowHead + float64(i)*(snowRoom+snowTall+snowFoot)
		s.field = box{2, top, sheetWidth - 2, top + snowRoom + snowTall}
		s.heap(h, 72/inch)
	}
	s.field = below
}

// loadScale is a round number of psf to the inch of paper at which the largest load,
// psf, is not too high.
func loadScale(most float64) float64 {
	for _, decade := range []float64{10, 100, 1000} {
		for _, n := range []float64{1, 1.5, 2, 3, 5, 7.5} {
			if most/(n*decade)*72 <= snowTall {
				return n * decade
			}
		}
	}
	return 10_000
}

// heap draws one heap at the foot of the field. psf is the height of one psf, pt.
func (s *sectionSheet) heap(h cover.HeapLine, psf float64) {
	base := s.field.bottom
	at := func(y, load float64) Point { return Point{s.at(y, 0).X, base - load*psf} }
	if attached(s.g) {
		wall := s.bar(existing, Point{s.at(s.start, 0).X, s.field.top + snowRoom/2}, at(0, 0))
		s.hatch(wall, 6)
		s.solid = append(s.solid, wall)
	}
	strip := s.bar(Pen{Fill: Pale, Stroke: Existing, Width: 0.7}, at(0, 0), at(s.g.Projection, h.Even))
	s.solid = append(s.solid, strip)
	s.shape(Pen{Fill: Snow, Stroke: Black, Width: 0.9},
		at(0, h.Even), at(0, h.Even+h.Peak), at(h.Reach, h.Even+h.Far), at(h.Reach, h.Even))
	load := func(y float64) float64 { return h.Even + h.Peak - (h.Peak-h.Far)*y/h.Reach }
	step := 7 / s.scale.foot
	for y := 0.0; y < h.Reach; y += step {
		s.line(hatching, at(y, h.Even), at(y, load(y)))
		end := min(y+step, h.Reach)
		s.solid = append(s.solid, spanning(at(y, h.Even), at(end, max(load(y), load(end)))))
	}
	s.dimensions(strand{stops: []float64{0, h.Reach}, edge: (s.origin.Y - base) / s.scale.foot, offset: 13})
	third := h.Reach / 3
	s.callout(plain, heapWords(h), at(third, (h.Even+load(third))/2), hint{angle: -40, least: 16, most: 240})
	past := (max(h.Reach, s.g.Projection/2) + s.g.Projection) / 2
	s.callout(plain, "EVEN SNOW "+psfWords(h.Even), at(past, h.Even/2), hint{angle: -70, least: 16, most: 240})
}

// heapWords name a heap with its load at the high edge, and at its end where there is
// still some.
func heapWords(h cover.HeapLine) string {
	words := strings.ToUpper(h.Name) + " " + psfWords(h.Peak)
	if h.Far > 0 && h.Far != h.Peak {
		words = strings.TrimSuffix(words, "PSF") + "TO " + psfWords(h.Far)
	}
	return words
}

// psfWords writes a load up to the next whole psf.
func psfWords(load float64) string { return fmt.Sprintf("%.0f PSF", calc.RoundUp(load, 1)) }

// snowWords tell the heaps to who cannot see them.
func snowWords(r *cover.Report) string {
	var out strings.Builder
	for _, h := range r.Loads.Heaps {
		fmt.Fprintf(&out, " Above it %s of %s at the high edge and %s at %s from it, on even snow of %s.", h.Name,
			strings.ToLower(psfWords(h.Peak)), strings.ToLower(psfWords(h.Far)), feetInches(h.Reach), strings.ToLower(psfWords(h.Even)))
	}
	return out.String()
}
