package cover

import (
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// A lagging is one way to fasten the ledger.
type lagging struct {
	lag     dowel.Fastener
	size    string // of the diameter, as ordered
	each    int
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
				out = append(out, g)
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

// onLags turns a demand per foot of ledger into one on the lag screws at a spacing. The
// rafters hang in the face of the ledger; what they press or lift there turns it about
// its far edge and pulls at the fasteners near the other (statics). share is how many
// feet of ledger hand their load to the fasteners right behind a rafter. tip, lb, is what
// knee braces bring at one rafter, in the same sense, all of it on those fasteners.
func (g lagging) onLags(q connections.Demand, depth, gap, share, tip float64) lagDemand {
	feet := g.spacing / calc.Ft
	x := lagDemand{duration: q.Duration, along: q.Along * feet}
	x.vertical = q.Vertical*share + math.Copysign(tip, q.Vertical)
	x.shear = math.Hypot(x.vertical, x.along)
	x.angle = math.Atan2(x.along, math.Abs(x.vertical)) * 180 / math.Pi
	arm := g.thick + hangerSeat/2 + gap
	x.pull = q.Out*feet + math.Abs(x.vertical)*arm/(pryingLever*g.lever(depth))
	return x
}

// spread is the part of the load of a rafter that the fasteners right behind it take, a
// ratio, where every rafter brings the same: the ledger is a beam on springs of 180000
// D^1.5 lb/in each (NDS 2018 11.3.6.1), and its neighbors add theirs (Hetenyi's infinite
// beam). The closed form stays within a hundredth of single springs. It is never less
// than the spacing of the fasteners over that of the rafters; stiffness is of the
// ledger, lb-in².
func (g lagging) spread(rafters, stiffness float64) float64 {
	spring := float64(g.each) * 180_000 * math.Pow(g.lag.Diameter, 1.5)
	lambda := math.Pow(spring/(4*g.spacing*stiffness), 0.25)
	sum := 1.0
	for i := 1.0; i <= 3; i++ {
		x := lambda * rafters * i
		sum += 2 * math.Exp(-x) * (math.Cos(x) + math.Sin(x))
	}
	return springSlack * max(g.spacing/rafters, min(1, lambda*g.spacing/2*sum))
}

// springSlack makes up for springs that stand apart, ratio.
const springSlack = 1.01

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
	place := dowel.Place{End: ledgerEnd, Top: g.edge(depth), Bottom: g.edge(depth), Spacing: math.Inf(1), Row: g.between(depth)}
	return dowel.NewLayout(dowel.NewNeeds(g.lag, g.thick, push), place)
}

// ledgerEnd is how far the last fastener stands from the end of a ledger, in: asked for.
const ledgerEnd = 4 * calc.In
