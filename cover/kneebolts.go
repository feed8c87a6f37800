package cover

import (
	"fmt"
	"math"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections/dowel"
	"patiocover/connections/steel"
)

// The joint of a knee brace: a flat steel plate on either side at each end, a row of bolts
// through the brace along its grain, and a row of as many through post, beam or rafters
// along theirs, at the middle of its depth. The brace is cut square.
const (
	kneePlateWide = 3 * calc.In       // least width of a plate across the brace
	kneeClear     = 0.5 * calc.In     // from the corner of the brace to what it meets
	steelModulus  = 29e6 * calc.PSI   // E of steel
	mostKneeBolts = 6                 // in a row
	inBrace       = 4.0               // spacing in the brace, diameters: full (NDS 2018 Table 12.5.1B)
	inHost        = 5.0               // spacing in what it meets, diameters: rows under a force across the grain (Table 12.5.1D)
	toBraceEnd    = 7.0               // end distance in the brace, diameters: full in tension (Table 12.5.1A)
	toPlateEnd    = 2.0               // last bolt to the end of a plate, diameters
	kneeDuration  = lumber.TenMinutes // wind and earthquake alone press and pull a brace
)

// holeRoom is the most that a bolt hole is larger than its bolt, in (NDS 2018 12.1.3.2,
// from memory).
const holeRoom = 1.0 / 16 * calc.In

// A kneeHost is what a brace is joined to.
type kneeHost struct {
	name   string
	wood   *wood
	thick  float64 // in, between the plates
	depth  float64 // in, across its grain in the plane of the brace
	angle  float64 // deg, force to grain
	facing float64 // deg, brace to grain, which the force of two braces together leaves
	times  float64 // force over that of one brace, ratio
	end    float64 // in, from the middle of the row to the nearer end
}

// A kneeJoint is the bolts at the ends of the knee braces and their plates.
type kneeJoint struct {
	bolt   dowel.Fastener
	count  int // in each row
	stock  steel.Stock
	brace  dowel.Shear   // of the bolts in the brace
	held   []dowel.Shear // and in each host
	row    dowel.TearOut // of the brace
	plates steel.Plate
}

// ratio is the largest of all its checks.
func (j *kneeJoint) ratio() float64 {
	most := max(j.brace.Ratio(), j.row.Ratio(), j.plates.Ratio())
	for i := range j.held {
		most = max(most, j.held[i].Ratio())
	}
	return most
}

// kneeHosts are what the braces are joined to. A post with braces on both sides takes both
// by one pair of plates: the upright parts of the two forces cancel where they are alike,
// and what remains counts as across the grain.
func (m *model) kneeHosts(d *design) []kneeHost {
	phi := m.knee.angle
	s := &d.post.section
	thin := min(s.Breadth, s.Depth)
	post := kneeHost{"the post", &d.post, thin, thin, 90 - phi, 90 - phi, 1, m.knee.drop}
	if m.kneesMeet() {
		post.angle, post.times = 90, max(1, 2*math.Cos(phi*math.Pi/180))
	}
	out := []kneeHost{post}
	if m.racking[alongHouse].braced() {
		out = append(out, kneeHost{"the beam", &d.beam, d.beam.section.Breadth, d.beam.section.Depth, phi, phi, 1, m.knee.reach})
	}
	if m.kneed.plies > 0 {
		end := m.knee.reach
		if at := m.plan.supports(); m.racking[outward].first > 0 {
			end = min(end, at[1]-at[0]-m.knee.reach)
		}
		r := &d.rafter.section
		out = append(out, kneeHost{"the rafters", &d.rafter, r.Breadth * float64(m.kneed.plies), r.Depth, phi, phi, 1, end})
	}
	return out
}

// kneesMeet reports whether a post has two braces in one direction.
func (m *model) kneesMeet() bool {
	for d := range m.racking {
		for _, p := range m.racking[d].row.Posts {
			if p.Braces > 1 {
				return true
			}
		}
	}
	return false
}

// kneeRoom is the least length of beam or rafter between the joints of two braces that
// lean toward each other, in.
func (m *model) kneeRoom() float64 {
	room := math.Inf(1)
	for d := range m.racking {
		r := &m.racking[d]
		for i := 1; i < len(r.row.Posts); i++ {
			if r.row.Posts[i-1].Braces > 0 && r.row.Posts[i].Braces > 0 {
				room = min(room, r.row.Geometry.Supports[i]-r.row.Geometry.Supports[i-1]-2*m.knee.reach)
			}
		}
	}
	return room
}

// chooseKneeJoint returns the fewest bolts that hold the force, lb, the thinnest of
// equals, and the thinnest plates; where none do, the strongest that was tried.
func (m *model) chooseKneeJoint(d *design, force float64) kneeJoint {
	hosts := m.kneeHosts(d)
	room := m.kneeRoom()
	var best kneeJoint
	for n := 1; n <= mostKneeBolts; n++ {
		for _, b := range dowel.Bolts() {
			if !m.fits(b, hosts) || room < inHost*b.Diameter*float64(n) {
				continue
			}
			j := m.kneeBolted(b, n, hosts, force)
			if best.count == 0 || j.ratio() < best.ratio() {
				best = j
			}
			if j.ratio() <= 1 {
				return j
			}
		}
	}
	return best
}

// fits reports whether a bolt may stand in the middle of every piece: its hole no wider
// than was counted, and the loaded edges 4 diameters away (NDS 2018 Table 12.5.1C).
func (m *model) fits(b dowel.Fastener, hosts []kneeHost) bool {
	for _, p := range hosts {
		if p.depth/2 < 4*b.Diameter {
			return false
		}
	}
	return b.Diameter+holeRoom <= m.top.holes*(1+tiny)
}

// kneeBolted checks one group of bolts with the thinnest plates that hold.
func (m *model) kneeBolted(b dowel.Fastener, count int, hosts []kneeHost, force float64) kneeJoint {
	j := kneeJoint{bolt: b, count: count}
	knee := &m.kneed.wood
	gap, free, times := 0.0, 0.0, 1.0
	for i := range hosts {
		h := &hosts[i]
		gap = max(gap, (h.widest()-knee.section.Breadth)/2)
		free = max(free, m.kneeFree(b, h))
		times = max(times, h.times)
		j.held = append(j.held, m.kneeShear(&j, h, force))
	}
	j.brace = m.kneeShear(&j, &kneeHost{
		wood: knee, thick: knee.section.Breadth, depth: knee.section.Depth, times: 1, end: toBraceEnd * b.Diameter,
	}, force, gap)
	j.row = dowel.NewTearOut(force, dowel.Plug{
		Count: count, Thickness: knee.section.Breadth, End: toBraceEnd * b.Diameter, Spacing: inBrace * b.Diameter,
	}, &knee.dry, kneeDuration)
	for _, s := range steel.Stocks() {
		j.stock = s
		j.plates = steel.NewPlate(force*times, steel.Shape{
			Stock: s, Width: max(kneePlateWide, 4*b.Diameter), Diameter: b.Diameter, Count: count,
			Spacing: inBrace * b.Diameter, End: toPlateEnd * b.Diameter, Free: free,
		})
		if j.plates.Ratio() <= 1 {
			break
		}
	}
	return j
}

// widest is the larger size of what the plates lie on, in: a post whose way of standing is
// not said may show either.
func (h *kneeHost) widest() float64 {
	if h.wood.section.Breadth*h.wood.section.Depth == h.thick*h.thick || h.name != "the post" {
		return h.thick
	}
	return h.wood.section.Widest()
}

// kneeFree is the length of plate between the last bolt of the brace and the row in the
// host, along the brace, in: the corner of the brace, cut square, stands clear of the host.
func (m *model) kneeFree(b dowel.Fastener, h *kneeHost) float64 {
	sin, cos := math.Sincos(h.facing * math.Pi / 180)
	return h.depth/2/sin + m.kneed.wood.section.Depth/2*cos/sin + kneeClear + toBraceEnd*b.Diameter
}

// kneeShear checks the bolts in one piece; gap, in, is on either side of it, that of the
// brace or none given: where the brace is the wider.
func (m *model) kneeShear(j *kneeJoint, h *kneeHost, force float64, gap ...float64) dowel.Shear {
	apart := max(0, (m.kneed.wood.section.Breadth-h.thick)/2)
	for _, g := range gap {
		apart = max(0, g)
	}
	v := dowel.NewLateral(j.bolt, dowel.Joint{
		Side:   dowel.Member{Material: dowel.Steel, Thickness: steel.Stocks()[0].Thickness},
		Main:   dowel.Member{Gravity: h.wood.dry.Gravity.Value, Angle: h.angle, Thickness: h.thick},
		Double: true, Gap: apart,
	})
	spacing, area := inBrace*j.bolt.Diameter, h.wood.section.Area()
	if h.angle > 0 {
		spacing = inHost * j.bolt.Diameter
		area = dowel.CrossArea(h.thick, 0, 1.5*j.bolt.Diameter)
	}
	group := dowel.NewGroup(dowel.Row{
		Count: j.count, Spacing: spacing, Diameter: j.bolt.Diameter, Steel: true,
		MainModulus: h.wood.dry.Elasticity.Value, MainArea: area,
		SideModulus: steelModulus, SideArea: 2 * steel.Stocks()[0].Thickness * kneePlateWide,
	})
	with := m.conditions(kneeDuration, *m.in.Posts.Wet || h.wood.dry.Use.Wet)
	with.Heat = m.posts.use.Temperature
	factors := dowel.LateralFactors(dowel.Bolt, with)
	return dowel.NewShear(force*h.times, v, factors.With(group.Factor, kneeLayout(j, h, spacing, v)), j.count)
}

// kneeLayout is C_Delta of a row for both senses of the force. One at an angle to the grain
// pushes along it and across it, so that all four pushes count.
func kneeLayout(j *kneeJoint, h *kneeHost, spacing float64, v dowel.Lateral) float64 {
	along := dowel.Place{End: h.end, Top: h.depth / 2, Bottom: h.depth / 2, Spacing: spacing, Row: math.Inf(1)}
	if h.angle > 0 {
		along.End -= float64(j.count-1) * spacing / 2
	}
	if j.count == 1 {
		along.Spacing = math.Inf(1)
	}
	across := along
	across.Spacing, across.Row = math.Inf(1), along.Spacing
	least := 1.0
	for push := dowel.TowardEnd; push <= dowel.TowardBottom; push++ {
		place := along
		if push.Across() {
			place = across
		}
		if push.Across() && h.angle == 0 {
			continue
		}
		needs := dowel.NewNeeds(j.bolt, min(v.MainLength, v.SideLength), push)
		least = min(least, dowel.NewLayout(needs, place).Factor)
	}
	return least
}

// words says how the joint is built.
func (j *kneeJoint) words() string {
	d := j.bolt.Diameter
	return fmt.Sprintf("a steel plate %s by %s in or wider (ASTM A36) on each side at either end, "+
		"with %d bolts of %s in through the brace and %d through what it meets",
		j.stock.Name, inchWords(max(kneePlateWide, 4*d)), j.count, inchWords(d), j.count)
}

// notes say where the bolts stand.
func (j *kneeJoint) notes(m *model) []string {
	d := j.bolt.Diameter
	up := func(x float64) string { return inchWords(calc.RoundUp(x, 1.0/8)) }
	out := []string{
		fmt.Sprintf("In the brace: one row along its middle, %s in from its end, cut square, and %s in apart",
			up(toBraceEnd*d), up(inBrace*d)),
		fmt.Sprintf("In post, beam and rafters: one row along the grain at the middle of the depth, %s in apart, "+
			"centered on the line of the brace; at mid-depth no load hangs below it, up or down (NDS 2018 12.5.1.3)", up(inHost*d)),
		fmt.Sprintf("Each plate reaches %s in or more past its last bolts; where a piece is thinner than the other, "+
			"the plates stand off it and the bolts are counted across the gap", up(toPlateEnd*d)),
		"Holes in wood no more than 1/16 in. over the bolt; a washer, or the plate, under head and nut",
	}
	if m.racking[alongHouse].braced() && m.racking[outward].braced() {
		out = append(out, fmt.Sprintf("Braces both ways: set the rows in the post that run one way %s in lower, "+
			"so that the bolts pass each other", up(inHost*d/2)))
	}
	if m.kneesMeet() {
		out = append(out, "Where two braces meet at a post, one pair of plates takes both")
	}
	return out
}
