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
	canopy   wind.Canopy        // where its coefficients are given
	canopied bool               // they are
	only     bool               // a view that the user chose stands alone
	flows    []wind.Flow        // that are asked for
	room     *room              // of the lists and the names
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

// newWind works out the wind on the cover.
func (own *room) newWind(in Input, p *plan, edition loads.Edition) windLoads {
	s := in.Site
	w := windLoads{room: own, flows: flowsOf(*in.Cover.Flow)}
	w.hill = hillOf(s, p.mean())
	w.velocity = wind.NewVelocity(wind.Site{
		Edition: edition, Exposure: *s.Exposure, Speed: *s.WindSpeed,
		Hill: max(*s.TopographicFactor, w.hill.Factor), Elevation: *s.ElevationFactor, Height: p.mean(),
	})
	w.roof = wind.Roof{Angle: degrees(p.angle), Height: p.mean(), Depth: p.projection, Width: p.width}
	w.wholeRoof()
	w.components(p)
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
		return bothFlows[:1]
	case "obstructed":
		return bothFlows[1:]
	}
	return bothFlows
}

var bothFlows = []wind.Flow{wind.Clear, wind.Obstructed}

// wholeRoof lists the cases of the main wind force resisting system from all four
// sides.
func (w *windLoads) wholeRoof() {
	q := w.velocity.Pressure * wind.Gust
	var halves [wind.MostHalves]wind.Half
	w.across = w.room.pushes.take(2*len(halves) + 4)[:0] // with room for the views
	for _, h := range wind.AppendHalves(halves[:0], w.roof) {
		if !slices.Contains(w.flows, h.Flow) {
			continue
		}
		c := windCase{name: w.halfName(h, ""), high: q * h.High(), low: q * h.Low(), share: 1}
		w.across = append(w.across, c)
		if w.roof.Angle >= twoReadings {
			c.name, c.high, c.low = w.halfName(h, ", halves exchanged"), c.low, c.high
			w.across = append(w.across, c)
		}
	}
	var bands [8]wind.Band
	w.along = w.room.bands.take(len(bands))[:0]
	for _, b := range wind.AppendBands(bands[:0]) {
		if !slices.Contains(w.flows, b.Flow) {
			continue
		}
		band := windBand{name: w.bandName(b, "")}
		for i, net := range b.Net {
			band.net[i] = q * net
		}
		w.along = append(w.along, band)
	}
}

// halfName names a case of the wind toward or from the house.
func (w *windLoads) halfName(h wind.Half, then string) string {
	from := "wind from the house side, case "
	if h.MeetsLow {
		from = "wind from the garden side, case "
	}
	return w.room.say(phrase{from, h.Case, ", ", string(h.Flow), w.row(h), then})
}

// bandName names a case of the wind along the house.
func (w *windLoads) bandName(b wind.Band, then string) string {
	return w.room.say(phrase{"wind along the house, case ", b.Case, ", ", string(b.Flow), then})
}

// written is the calculation of each case of the whole roof.
func (w *windLoads) written() []Derivation {
	const title = "Wind on the whole roof: "
	var out []Derivation
	for _, h := range wind.Halves(w.roof) {
		if slices.Contains(w.flows, h.Flow) {
			out = append(out, Derivation{title + w.halfName(h, ""), h.Lines(w.velocity)})
		}
	}
	for _, b := range wind.Bands() {
		if slices.Contains(w.flows, b.Flow) {
			out = append(out, Derivation{title + w.bandName(b, ""), b.Lines(w.velocity)})
		}
	}
	return out
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
func (w *windLoads) components(p *plan) {
	flows := w.flows
	span := p.slope(shortestSpan(p.supports(), p.projection))
	inner, edge := wind.EffectiveArea(span, p.spacing), wind.EffectiveArea(span, p.spacing*min(p.shares[0], p.shares[len(p.shares)-1]))
	w.middle = wind.NewComponent(w.velocity, w.roof, inner, wind.Middle, flows)
	w.strip = wind.NewComponent(w.velocity, w.roof, edge, wind.Interior, flows)
	w.corner = wind.NewComponent(w.velocity, w.roof, edge, wind.SideEdge, flows)
	w.deck = wind.NewComponent(w.velocity, w.roof, wind.EffectiveArea(p.spacing, 0), wind.SideEdge, flows)
	bay := longestSpan(p.posts, p.width)
	n := len(p.lines)
	w.beams, w.bays, w.posts = w.room.parts.take(n), w.room.strips.take(n), w.room.strips.take(n)
	for i := range p.lines {
		area := wind.EffectiveArea(bay, p.slope(p.strip(i)))
		w.beams[i] = wind.NewComponent(w.velocity, w.roof, area, wind.Interior, flows)
		w.bays[i] = w.onBays(p, i)
		w.posts[i] = w.room.parts.take(len(p.posts))
		for n := range p.posts {
			w.posts[i][n] = w.onPost(p, i, n)
		}
	}
}

// onRafter gathers everything that a rafter must carry: the whole roof from all four
// sides, and the pressures on it as a component: inside, in the strip along a side
// edge, and at the edge itself.
func (w *windLoads) onRafter(p *plan) {
	w.rafter = append(w.room.pushes.take(len(w.across) + 8)[:0], w.across...)
	if w.only {
		return
	}
	down, up := w.firstBand()
	w.rafter = append(w.rafter, down, up)
	beside, share := p.besideEdge(w.strip.Width)
	for _, sign := range []float64{1, -1} {
		inner := w.room.component("inner rafter", w.strip, w.middle, sign)
		side := w.room.component("rafter in the side strip", w.corner, w.strip, sign)
		edge := side
		edge.name, edge.share = w.room.say(phrase{"edge ", side.name}), max(p.shares[0], p.shares[len(p.shares)-1])
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
func (w *windLoads) firstBand() (down, up windCase) {
	for _, b := range w.along {
		c := windCase{name: w.room.say(phrase{b.name, ", first band"}), high: b.net[0], low: b.net[0], share: 1}
		if c.high > down.high {
			down = c
		}
		if c.high < up.high {
			up = c
		}
	}
	return down, up
}

// component is the pressure on a member as a component: one zone at its ends and one
// between them, down for sign 1, up for −1.
func (r *room) component(name string, ends, middle wind.Component, sign float64) windCase {
	c := componentAlone(ends, middle, sign)
	sense := " down"
	if sign < 0 {
		sense = " up"
	}
	words := phrase{name, ", zone ", strconv.Itoa(ends.Zone), "", "", sense}
	if middle.Zone != ends.Zone {
		words = phrase{name, ", zones ", strconv.Itoa(ends.Zone), " and ", strconv.Itoa(middle.Zone), sense}
	}
	c.name = r.say(words)
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
			part := m.room.component("beam as a component", c, c, sign)
			consider(part.name, r.windAt(m, support, part))
		}
	}
	out := append(m.room.winds.take(4 + 2*len(w.along))[:0], high, low)
	out = w.byBay(out, m, line, support)
	for side, from := range [...]string{"from the left", "from the right"} {
		for _, b := range w.along {
			on := windOn{name: m.room.say(phrase{b.name, ", ", from}), side: side + 1}
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
