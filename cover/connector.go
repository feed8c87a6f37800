package cover

import (
	"math"
	"strconv"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections"
	"patiocover/connections/dowel"
)

// What a connector rests on.
const (
	ProposedFasteners = "proposed"  // fasteners that the program chose and checked
	GivenHardware     = "given"     // what the user has or buys, checked
	SpecifiedRating   = "specified" // a rating asked of what is bought; the wood beside it is checked
	NoConnector       = "none"      // nothing that could be checked
)

// A Connector is what makes a link: hardware with its checks. A specified rating is a
// requirement placed on the purchase, not a capacity that was found.
type Connector struct {
	Basis   string        `json:"basis"`             // proposed, given, specified or none
	What    string        `json:"what"`              // the hardware in generic words
	Up      float64       `json:"asked_up_lb"`       // lb, rating in uplift that is asked for beside its side force; 0 for none
	Side    float64       `json:"asked_sideways_lb"` // lb, rating sideways that is asked for; 0 for none
	Down    float64       `json:"asked_down_lb"`     // lb, rating downward at C_D = 1 that is asked for; 0 for none
	Ratio   Ratio         `json:"ratio"`             // largest ratio of its checks
	Governs string        `json:"governs"`           // name of the check with the largest ratio; empty without checks
	Checks  []MemberCheck `json:"checks,omitempty"`  // worst of each kind
	Parts   []Part        `json:"parts,omitempty"`   // what to buy for all joints of the mark
	Notes   []string      `json:"notes,omitempty"`   // how it must be built, coating, what to mind

	lags *lagging // of a ledger, as they were chosen or given
}

// A Part is one item to buy for a link.
type Part struct {
	Item  string `json:"item"`  // what it is, in generic words
	Each  int    `json:"each"`  // for one joint; 0 where it is counted by area
	Total int    `json:"total"` // for all of them
}

// add writes a check up and keeps the worst.
func (c *Connector) add(name, combination, where string, r calc.Result) {
	sheet := r.Explain()
	sheet.Name = name
	ratio := Ratio(r.Ratio())
	c.Checks = append(c.Checks, checked(sheet, ratio, combination, where))
	if c.Governs == "" || ratio > c.Ratio {
		c.Ratio, c.Governs = ratio, name
	}
}

// part adds an item to buy, so many for each of the joints.
func (c *Connector) part(item string, each, joints int) {
	c.Parts = append(c.Parts, Part{Item: item, Each: each, Total: each * joints})
}

// verdict is that of the checks; a connector without checks is not checked.
func (c *Connector) verdict() Verdict {
	if len(c.Checks) == 0 {
		return NotChecked
	}
	return c.Ratio.Verdict()
}

// hold puts a connector and its verdict into the link.
func (l *Link) hold(c Connector) {
	l.Connector, l.Verdict = c, c.verdict()
	if l.Per == PerJoint || l.Per == PerPost {
		l.Hardware = c.What + l.aside
	}
	switch {
	case l.Verdict == NotChecked:
		l.Reason = "nothing of it could be checked: " + c.What
	case c.Basis == SpecifiedRating:
		ratio, governs := c.wood()
		l.Reason = "specified: " + c.What + "; of the wood, " + governs + " governs at ratio " + ratioText(ratio)
	default:
		l.Reason = c.Basis + ": " + c.What + "; " + c.Governs + " governs at ratio " + ratioText(c.Ratio)
	}
	l.Reason += l.aside
}

// wood is the worst check of the wood: a specified rating fits its demand by its making.
func (c *Connector) wood() (Ratio, string) {
	most, name := Ratio(-1), ""
	for _, k := range c.Checks {
		if k.Name != ratingCheck && k.Name != downCheck && k.Ratio > most {
			most, name = k.Ratio, k.Name
		}
	}
	return most, name
}

// Names of the checks of a rating.
const (
	ratingCheck = "rating"
	downCheck   = "downward rating"
)

// refuse says that a link is not made, or not in a way that is permitted.
func (l *Link) refuse(v Verdict, why string) {
	l.Connector = Connector{Basis: NoConnector, What: "none"}
	l.Verdict, l.Reason = v, why
}

// worstOf makes a check for every demand and returns the one with the largest ratio,
// with its combination. Of equal ones the first.
func worstOf[T calc.Result](demands []connections.Demand, check func(connections.Demand) T) (T, string) {
	var worst T
	name := ""
	for i, d := range demands {
		if c := check(d); i == 0 || c.Ratio() > worst.Ratio() {
			worst, name = c, d.Combination
		}
	}
	return worst, name
}

// upward is the uplift of a demand, lb, not negative.
func upward(d connections.Demand) float64 { return max(0, -d.Vertical) }

// aside is the larger side force of a demand, lb: the wind, and the earthquake, come
// from one side at a time.
func aside(d connections.Demand) float64 { return max(d.Along, d.Out) }

// conditions are those of fasteners in the wood for a demand.
func (m *model) conditions(duration lumber.Duration, wet bool) dowel.Conditions {
	c := dowel.Conditions{Duration: duration}
	if *m.in.Connections.Green {
		c.Fabricated = dowel.Wet
	}
	if wet {
		c.Service = dowel.Wet
	}
	return c
}

// woodGravity is the specific gravity of a wood.
func woodGravity(w *wood) float64 { return w.dry.Gravity.Value }

// coating says what fasteners and connectors must be made of (IRC 2018 R317.3).
func (m *model) coating() string {
	if *m.in.Connections.Corrosion == "severe" {
		return "stainless steel, type 304 or 316, for fasteners and connectors alike: salt, pools and fertilizer eat zinc"
	}
	return "hot-dip galvanized, fasteners to ASTM A153, connectors G185, where the wood is treated or gets wet; " +
		"electroplated zinc does not last outdoors, and stainless does not go with galvanized"
}

// inchWords writes inches, whole or with a fraction, without the unit.
func inchWords(x float64) string {
	if x == math.Trunc(x) {
		return calc.Number(x)
	}
	return fraction(x)
}

// fastenerWords names a fastener as it is ordered: a screw by thickness and length.
func fastenerWords(f dowel.Fastener) string {
	if f.Kind == dowel.WoodScrew || f.Kind == dowel.LagScrew {
		thick := strings.TrimSuffix(strings.TrimSuffix(f.Name, f.Kind.String()), " in. ")
		return strings.TrimSpace(thick) + " x " + inchWords(f.Length) + " in " + f.Kind.String()
	}
	return f.Name
}

// several counts pieces whose name begins with a number: in words, since 1 1/2 in bolt would be
// read as 1-1/2 in.
func several(n int, piece string) string {
	if n == 1 {
		return "one " + piece
	}
	small := [...]string{2: "two", "three", "four", "five", "six", "seven", "eight", "nine"}
	if n > 1 && n < len(small) {
		return small[n] + " " + piece + "s"
	}
	return strconv.Itoa(n) + " pieces of " + piece
}
