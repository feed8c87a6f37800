package cover

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/beam/springs"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// A lagging is one way to fasten the ledger.
type lagging struct {
	lag     dowel.Fastener
	size    string // of the diameter, as ordered
	each    int
	ends    int     // at the first and the last place, where the ledger ends beside them
	spacing float64 // in
	thick   float64 // in, of the ledger across the wall: one rafter
}

// laggings lists what to try, the least first: for studs one to three lag screws at
// each, for a rim at spacings that grow closer.
func (m *model) laggings(d *design) []lagging {
	in, thick := m.in.Connections, d.rafter.dry.OnePly().Section.Breadth
	sizes, lengths, counts := []string{"1/4", "5/16", "3/8", "1/2"}, []float64{3, 4, 5, 6, 7, 8}, []int{1, 2, 3}
	spacings := []float64{wideStuds}
	if *m.in.House.Wall == "rim" {
		spacings, counts = []float64{24, 16, 12, 8, 6}, []int{1, 2}
	}
	if in.LagSpacing != nil {
		spacings = []float64{*in.LagSpacing * calc.In}
	}
	if in.LagSize != nil {
		sizes = []string{*in.LagSize}
	}
	if in.LagLength != nil {
		lengths = []float64{*in.LagLength * calc.In}
	}
	if in.LagsEach != nil {
		counts = []int{*in.LagsEach}
	}
	w := m.wallBehind()
	longest := thick + w.gap + w.main.Thickness + sticksOut
	var screws []lagging
	for _, size := range sizes {
		for _, length := range lengths {
			if lag, ok := dowel.FindLag(size, length); ok && (in.LagLength != nil || length <= longest) {
				screws = append(screws, lagging{lag: lag, size: size, thick: thick})
			}
		}
	}
	var out []lagging
	for _, s := range spacings {
		for _, n := range counts {
			for _, g := range screws {
				g.each, g.spacing = n, s
				for g.ends = max(leastAtEnd, n); g.ends <= max(mostAtEnd, n); g.ends++ {
					out = append(out, g)
				}
			}
		}
	}
	return out
}

// sticksOut is how far a lag screw that is proposed may come out behind the framing, in.
const sticksOut = 2 * calc.In

// A lagDemand is one combination on the lag screws at one stud or spacing.
type lagDemand struct {
	duration lumber.Duration
	vertical float64 // lb, + down
	along    float64 // lb
	shear    float64 // lb, resultant in the plane of the wall
	pull     float64 // lb, outward with prying
	angle    float64 // deg, of the shear from the vertical
}

// A station is what the fasteners at one place along the ledger take.
type station struct {
	where  string
	feet   float64 // ft of ledger, of what is spread along it
	even   float64 // ft of ledger, of what the rafters bring, each the same
	single float64 // part of a load at one place, ratio
	tip    float64 // part of what knee braces bring at one rafter, ratio
}

// onLags turns a demand per foot of ledger into one on the lag screws of a station. The
// rafters hang in the face of the ledger; what they press or lift there turns it about
// its far edge and pulls at the fasteners near the other (statics). tip, lb, is what
// knee braces bring at one rafter, in the same sense.
func (g lagging) onLags(q connections.Demand, depth, gap float64, at *station, tip float64) lagDemand {
	x := lagDemand{duration: q.Duration, along: q.Along * at.feet}
	x.vertical = q.Vertical*at.even + q.Single*at.single
	x.vertical += math.Copysign(tip*at.tip, x.vertical)
	x.shear = math.Hypot(x.vertical, x.along)
	x.angle = math.Atan2(x.along, math.Abs(x.vertical)) * 180 / math.Pi
	arm := g.thick + hangerSeat/2 + gap
	x.pull = q.Out*at.feet + math.Abs(x.vertical)*arm/(pryingLever*g.lever(depth))
	return x
}

// row is the ledger on its fasteners, each of which is a spring of 180000 D^1.5 lb/in (NDS
// 2018 11.3.6.1); stiffness is of the ledger, lb-in².
func (g lagging) row(stiffness float64) springs.Row {
	return springs.Row{
		Apart: g.spacing, Spring: float64(g.each) * 180_000 * math.Pow(g.lag.Diameter, 1.5), Stiffness: stiffness,
		Beyond: g.fromEnd() - g.thick/2, First: float64(g.ends) / float64(g.each), // half of the last rafter stands nearer
	}
}

// atEnd is the fastening at the first and the last place.
func (g lagging) atEnd() lagging {
	g.each = g.ends
	return g
}

// How many lag screws stand at the first and the last place, where one load is not shared by
// fasteners on both sides: never one alone, and what fits one above the other.
const (
	leastAtEnd = 2
	mostAtEnd  = 4
)

// lever is the distance from the far edge of the ledger to the fastener that prying
// pulls at, in.
func (g lagging) lever(depth float64) float64 {
	if g.each > 1 {
		return depth - g.edge(depth)
	}
	return depth / 2
}

// edge is how far the rows stand from the edges of the ledger: 4 D, the loaded edge
// either way, or a quarter of the depth where that is more.
func (g lagging) edge(depth float64) float64 {
	if g.each > 1 {
		return max(4*g.lag.Diameter, depth/4)
	}
	return depth / 2
}

// pulling is how many of the fasteners prying pulls at: one row.
func (g lagging) pulling() int {
	if g.each > 1 {
		return g.each - g.each/2
	}
	return g.each
}

// between is the distance between the rows, in; without end where there is one.
func (g lagging) between(depth float64) float64 {
	if g.each == 1 {
		return math.Inf(1)
	}
	return (depth - 2*g.edge(depth)) / float64(g.each-1)
}

// placed is C_Delta of the lag screws: the worse of the ledger, which is loaded across
// its grain, and a stud, whose narrow face leaves little to its edges.
func (g lagging) placed(x lagDemand, w wall, depth float64) float64 {
	in := g.layout(x, depth).Factor
	if !w.studs {
		return in
	}
	place := dowel.Place{End: math.Inf(1), Top: studBreadth / 2, Bottom: studBreadth / 2, Spacing: g.between(depth), Row: math.Inf(1)}
	return min(in, dowel.NewLayout(dowel.NewNeeds(g.lag, g.thick, dowel.FromEnd), place).Factor)
}

// layout compares the place of the rows in the ledger with what the push asks for.
func (g lagging) layout(x lagDemand, depth float64) dowel.Layout {
	push := dowel.TowardTop
	if x.vertical < 0 {
		push = dowel.TowardBottom
	}
	place := dowel.Place{End: g.fromEnd(), Top: g.edge(depth), Bottom: g.edge(depth), Spacing: math.Inf(1), Row: g.between(depth)}
	return dowel.NewLayout(dowel.NewNeeds(g.lag, g.thick, push), place)
}

// fromEnd is how far the last fastener stands from the end of a ledger, in: asked for. At 7 D
// nothing is taken off (NDS 2018 Table 12.5.1A, softwood, toward the end, from memory).
func (g lagging) fromEnd() float64 { return calc.RoundUp(max(2*calc.In, 7*g.lag.Diameter), 0.25) }
