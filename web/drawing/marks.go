package drawing

import (
	"strconv"
	"strings"

	"patiocover/cover"
)

// linksOf returns the links of the report whose mark begins with the letter, in the
// order of the beam lines.
func linksOf(r *cover.Report, letter string) []cover.Link {
	var out []cover.Link
	for _, l := range r.Links {
		if strings.HasPrefix(l.Mark, letter) {
			out = append(out, l)
		}
	}
	return out
}

// markAt returns the mark of the link with the letter at a beam line, from 0; empty
// when the report has none.
func markAt(r *cover.Report, letter string, line int) string {
	all := linksOf(r, letter)
	if line >= len(all) {
		return ""
	}
	return all[line].Mark
}

// marks points at the connections that are seen from above.
func (p *planSheet) marks() {
	p.point("D", 0, p.deckPoint(), hint{angle: -135, least: 16, most: 70})
	if x, ok := p.rafterNear(0.12); ok && attached(p.g) {
		p.point("H", 0, p.at(x, ft(ledgerThick)), hint{angle: 70, least: 18, most: 70})
		ledger := p.at(x, ft(ledgerThick)/2).plus(12, 0)
		p.point("L", 0, ledger, hint{angle: -60, least: 14, most: 60})
		p.behindLedger()
	}
	for i, l := range p.g.Lines {
		if x, ok := p.rafterNear(0.3); ok {
			p.point("T", i, p.at(x, l.Y), hint{angle: 120, least: 14, most: 70})
		}
		if n := len(l.Posts); n > 0 {
			p.point("C", i, p.at(l.Posts[n-1], l.Y), hint{angle: -140, least: 16, most: 70})
		}
		if len(l.Splices) > 0 {
			p.point("S", i, p.at(l.Splices[0], l.Y), hint{angle: -120, least: 16, most: 70})
		}
	}
}

// behindLedger marks the house behind the ledger where there is room along the wall.
func (p *planSheet) behindLedger() {
	m := markAt(p.report, "W", 0)
	if m == "" {
		return
	}
	wide, high := tagRoom(m)
	for _, part := range []float64{0.9, 0.6, 0.4, 0.75, 0.25, 0.97, 0.05, 0.5, 0.15, 0.83, 0.33, 0.67} {
		for _, angle := range []float64{-70, -110, 80, 110, -30, -150, 30, 150} {
			joint, h := p.at(part*p.g.Width, 0), hint{angle: angle, least: 14, most: 260}
			if _, ok := p.place(joint, wide, high, h); ok {
				p.mark(m, joint, h)
				return
			}
		}
	}
}

// point marks one connection, when the report has it.
func (p *planSheet) point(letter string, line int, joint Point, h hint) {
	if m := markAt(p.report, letter, line); m != "" {
		p.mark(m, joint, h)
	}
}

// deckPoint is a place of the deck between two rafters near the house.
func (p *planSheet) deckPoint() Point {
	x := 0.72 * p.g.Width
	return p.at(x, 0.22*p.g.Projection)
}

// rafterNear is the x of the rafter nearest to a part of the width, ft.
func (p *planSheet) rafterNear(part float64) (x float64, ok bool) {
	best := -1
	for i, at := range p.g.Rafters {
		want := part * p.g.Width
		if best < 0 || (at-want)*(at-want) < (p.g.Rafters[best]-want)*(p.g.Rafters[best]-want) {
			best = i
		}
	}
	if best < 0 {
		return 0, false
	}
	return p.g.Rafters[best], true
}

// key lists the marks with the given letters below the drawing, in two columns from
// the height top, and returns where it ends, pt.
func (c *canvas) key(r *cover.Report, top float64, letters string) float64 {
	const row, column = 18.0, sheetWidth / 2
	n := 0
	for _, l := range r.Links {
		if !strings.ContainsAny(letters, l.Mark[:1]) {
			continue
		}
		at := Point{24 + column*float64(n%2), top + row*(float64(n/2)+0.5)}
		c.hexagon(l.Mark, at)
		c.left(plain, keyWords(&l), at.plus(18, 0))
		n++
	}
	return top + row*float64((n+1)/2)
}

// keyWords tells what a mark stands for, and how many there are where they count.
func keyWords(l *cover.Link) string {
	if strings.HasPrefix(l.Per, "each") {
		return l.Name + ", " + strconv.Itoa(l.Count)
	}
	return l.Name
}
