package cover

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"patiocover/calc"
	"patiocover/loads"
	"patiocover/loads/wind"
)

// A windCase is one way that the wind presses on a rafter, strength level.
type windCase struct {
	name   string
	high   float64 // on the high half, lb/in², + down
	low    float64 // on the low half, lb/in², + down
	ends   float64 // on the edge strips at both ends, lb/in², + down
	middle float64 // between them, lb/in², + down
	share  float64 // tributary share of the rafter that feels it: 1, or less at a side edge
}

// windLoads are all the ways that the wind acts on the cover.
type windLoads struct {
	hill     wind.SpeedUp // zero where the site has none
	velocity wind.Velocity
	roof     wind.Roof
	views    wind.Views         // free roof, canopy, overhang side by side
	overhang wind.View          // as an overhang of the house roof, whether it counts or not
	others   []Derivation       // written calculation of the views
	only     bool               // a view that the user chose stands alone
	halves   []derived          // written calculation of each case of the whole roof
	across   []windCase         // wind toward and from the house, whole roof
	along    []windBand         // wind along the house, whole roof
	middle   wind.Component     // a rafter inside the edge strips
	strip    wind.Component     // a rafter in an edge strip
	corner   wind.Component     // a rafter in a corner
	deck     wind.Component     // the deck at a corner
	beams    []wind.Component   // each beam line
	bays     [][]wind.Component // each bay of each beam line
	posts    [][]wind.Component // each post of each beam line
	rafter   []windCase         // everything that a rafter must carry
}

// A windBand is wind along the house: pressures by distance from the windward edge.
type windBand struct {
	name string
	net  [bands]float64 // lb/in², + down, strength level
}

// A derived is a case of the whole roof with what writes it up.
type derived struct {
	name  string
	lines func(wind.Velocity) []calc.Line
}

// newWind works out the wind on the cover.
func newWind(in Input, p *plan, edition loads.Edition) windLoads {
	s := in.Site
	var w windLoads
	w.hill = hillOf(s, p.mean())
	w.velocity = wind.NewVelocity(wind.Site{
		Edition: edition, Exposure: *s.Exposure, Speed: *s.WindSpeed,
		Hill: max(*s.TopographicFactor, w.hill.Factor), Elevation: *s.ElevationFactor, Height: p.mean(),
	})
	w.roof = wind.Roof{Angle: degrees(p.angle), Height: p.mean(), Depth: p.projection, Width: p.width}
	flows := flowsOf(*in.Cover.Flow)
	w.wholeRoof(flows)
	w.components(p, flows)
	w.view(in)
	w.onRafter(p)
	return w
}

// hillOf works out the speed-up over the hill that the site stands on, if any.
func hillOf(s Site, above float64) wind.SpeedUp {
	if s.HillShape == nil {
		return wind.SpeedUp{}
	}
	return wind.NewSpeedUp(wind.Hill{
		Shape: *s.HillShape, Exposure: *s.Exposure, Height: *s.HillHeight * calc.Ft, Half: *s.HillHalf * calc.Ft,
		Distance: *s.HillDistance * calc.Ft, Downwind: yes(s.HillBeyond), Above: above,
	})
}

// flowsOf are the flows that the input asks for.
func flowsOf(word string) []wind.Flow {
	switch word {
	case "clear":
		return []wind.Flow{wind.Clear}
	case "obstructed":
		return []wind.Flow{wind.Obstructed}
	}
	return []wind.Flow{wind.Clear, wind.Obstructed}
}

// wholeRoof lists the cases of the main wind force resisting system from all four
// sides.
func (w *windLoads) wholeRoof(flows []wind.Flow) {
	q := w.velocity.Pressure * wind.Gust
	for _, h := range wind.Halves(w.roof) {
		if !slices.Contains(flows, h.Flow) {
			continue
		}
		from := "wind from the house side"
		if h.MeetsLow {
			from = "wind from the garden side"
		}
		w.across = append(w.across, windCase{
			name: fmt.Sprintf("%s, case %s, %s%s", from, h.Case, h.Flow, w.row(h)),
			high: q * h.High(), low: q * h.Low(), share: 1,
		})
		c := w.across[len(w.across)-1]
		w.halves = append(w.halves, derived{c.name, h.Lines})
		if w.roof.Angle >= twoReadings {
			w.across = append(w.across, windCase{name: c.name + ", halves exchanged", high: c.low, low: c.high, share: 1})
		}
	}
	for _, b := range wind.Bands() {
		if !slices.Contains(flows, b.Flow) {
			continue
		}
		band := windBand{name: fmt.Sprintf("wind along the house, case %s, %s", b.Case, b.Flow)}
		for i, net := range b.Net {
			band.net[i] = q * net
		}
		w.along = append(w.along, band)
		w.halves = append(w.halves, derived{band.name, b.Lines})
	}
}

// twoReadings is the slope from which the two directions of the figure differ, degrees.
// Which of them meets the high edge follows from how the wind lifts and presses a sloped
// plate; the sketch of the figure was not seen. So each case is carried with its halves
// exchanged too, and a wrong reading cannot be unsafe.
const twoReadings = 5.0

// row tells the rows of the figure apart where two of them serve.
func (w *windLoads) row(h wind.Half) string {
	if h.Angle == w.roof.Angle || !w.roof.BetweenRows() {
		return ""
	}
	return fmt.Sprintf(", row of %g degrees", h.Angle)
}

// components works out the pressures on parts by their effective areas: of rafters that
// of their shortest span, at the sides of the roof with the least width.
func (w *windLoads) components(p *plan, flows []wind.Flow) {
	span := p.slope(shortestSpan(p.supports(), p.projection))
	inner, edge := wind.EffectiveArea(span, p.spacing), wind.EffectiveArea(span, p.spacing*min(p.shares[0], p.shares[len(p.shares)-1]))
	w.middle = wind.NewComponent(w.velocity, w.roof, inner, wind.Middle, flows)
	w.strip = wind.NewComponent(w.velocity, w.roof, edge, wind.Interior, flows)
	w.corner = wind.NewComponent(w.velocity, w.roof, edge, wind.SideEdge, flows)
	w.deck = wind.NewComponent(w.velocity, w.roof, wind.EffectiveArea(p.spacing, 0), wind.SideEdge, flows)
	bay := longestSpan(p.posts, p.width)
	for i := range p.lines {
		area := wind.EffectiveArea(bay, p.slope(p.strip(i)))
		w.beams = append(w.beams, wind.NewComponent(w.velocity, w.roof, area, wind.Interior, flows))
		w.bays = append(w.bays, w.onBays(p, i, flows))
		var posts []wind.Component
		for n := range p.posts {
			posts = append(posts, w.onPost(p, i, n, flows))
		}
		w.posts = append(w.posts, posts)
	}
}

// onRafter gathers everything that a rafter must carry: the whole roof from all four
// sides, and the pressures on it as a component: inside, in the strip along a side
// edge, and at the edge itself.
func (w *windLoads) onRafter(p *plan) {
	w.rafter = append(w.rafter, w.across...)
	if w.only {
		return
	}
	w.rafter = append(w.rafter, w.firstBand()...)
	beside, share := p.besideEdge(w.strip.Width)
	for _, sign := range []float64{1, -1} {
		inner := component("inner rafter", w.strip, w.middle, sign)
		side := component("rafter in the side strip", w.corner, w.strip, sign)
		edge := side
		edge.name, edge.share = "edge "+side.name, max(p.shares[0], p.shares[len(p.shares)-1])
		side.share = share
		side.ends += (1 - beside) * (inner.ends - side.ends)
		side.middle += (1 - beside) * (inner.middle - side.middle)
		w.rafter = append(w.rafter, inner)
		if beside > 0 {
			w.rafter = append(w.rafter, side)
		}
		if beside < 1 {
			w.rafter = append(w.rafter, edge) // else it has a part of what the one beside it has
		}
	}
}

// firstBand returns the most downward and the most upward pressure of wind along the
// house on a rafter in the first band, whose coefficients are the largest of either
// sense. Cases that press on all of a rafter alike differ by a factor, so that the two
// extremes govern.
func (w *windLoads) firstBand() []windCase {
	var down, up windCase
	for _, b := range w.along {
		c := windCase{name: b.name + ", first band", high: b.net[0], low: b.net[0], share: 1}
		if c.high > down.high {
			down = c
		}
		if c.high < up.high {
			up = c
		}
	}
	return []windCase{down, up}
}

// component is the pressure on a member as a component: one zone at its ends and one
// between them, down for sign 1, up for −1.
func component(name string, ends, middle wind.Component, sign float64) windCase {
	c := componentAlone(ends, middle, sign)
	sense := " down"
	if sign < 0 {
		sense = " up"
	}
	zones := ", zone " + strconv.Itoa(ends.Zone)
	if middle.Zone != ends.Zone {
		zones = ", zones " + strconv.Itoa(ends.Zone) + " and " + strconv.Itoa(middle.Zone)
	}
	c.name = name + zones + sense
	return c
}

// componentAlone is that pressure without a name.
func componentAlone(ends, middle wind.Component, sign float64) windCase {
	if sign < 0 {
		return windCase{ends: -ends.Suction, middle: -middle.Suction, share: 1}
	}
	return windCase{ends: ends.Pressure, middle: middle.Pressure, share: 1}
}

// down and up tell which ways a case presses anywhere on the roof.
func (w windCase) down() bool { return max(w.high, w.low, w.ends, w.middle) > 0 }
func (w windCase) up() bool   { return min(w.high, w.low, w.ends, w.middle) < 0 }

// suits reports whether a combination counts wind of this kind.
func suits(c *loads.Combination, down, up bool) bool {
	switch c.Sense {
	case loads.EitherWay:
		return true
	case loads.Downward:
		return down
	case loads.UpwardOnly:
		return up
	}
	return false
}

// largeTributary is the tributary area from which a component may be designed for
// the whole roof's wind alone, in² (ASCE 7-16 30.2.3, from memory).
const largeTributary = 700 * calc.SqFt

// on returns the ways that the wind loads the rafters of a beam line. Of the cases
// that load every rafter alike only the most downward and the most upward can
// govern; wind along the house loads the rafters by bands from either end.
func (w *windLoads) on(m *model, line, support int) []windOn {
	r := m.rafter
	low := windOn{force: math.Inf(1)}
	high := windOn{force: math.Inf(-1)}
	consider := func(name string, force float64) {
		if force < low.force {
			low = windOn{name: name, force: force}
		}
		if force > high.force {
			high = windOn{name: name, force: force}
		}
	}
	for _, c := range w.across {
		consider(c.name, r.windAt(m, support, c))
	}
	if c := w.beams[line]; c.Area < largeTributary && !w.only {
		for _, sign := range []float64{1, -1} {
			part := component("beam as a component", c, c, sign)
			consider(part.name, r.windAt(m, support, part))
		}
	}
	byBay := w.byBay(m, line, support)
	out := append(m.room.winds.take(2 + len(byBay) + 2*len(w.along))[:0], high, low)
	out = append(out, byBay...)
	for side, from := range []string{"from the left", "from the right"} {
		for _, b := range w.along {
			on := windOn{name: b.name + ", " + from, side: side + 1}
			for i, net := range b.net {
				on.bands[i] = r.windAt(m, support, windCase{high: net, low: net})
			}
			out = append(out, on)
		}
	}
	return out
}

// down and up tell which ways the wind loads the rafters.
func (w *windOn) down() bool { return w.force > 0 || w.bands[0] > 0 || w.bays[1] > 0 }
func (w *windOn) up() bool   { return w.force < 0 || w.bands[0] < 0 || w.bays[1] < 0 }
