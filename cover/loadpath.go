package cover

import (
	"strings"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/loads"
)

// A LoadPath is the chain of links from the roof to the ground at one line of posts, or
// to the house. It is no better than its weakest link.
type LoadPath struct {
	To      string      `json:"to"`      // house, or the beam line whose posts it goes down
	Marks   []string    `json:"marks"`   // the links from the top
	Weakest string      `json:"weakest"` // mark of the weakest link: the worst verdict, of equals the largest ratio
	Ratio   Ratio       `json:"ratio"`   // largest ratio of a checked link, 0 when none is
	Verdict Verdict     `json:"verdict"` // that of the weakest link
	Reason  string      `json:"reason"`  // what is said of it
	Lines   []calc.Line `json:"lines"`   // where it is the first path: the sum of all uplifts against the roof
}

// housePath and postPath are the kinds of the links of a path, from the top.
var (
	housePath = []connections.Kind{
		connections.DeckToRafter, connections.RafterToLedger, connections.LedgerToHouse, connections.HouseFraming,
	}
	postPath = []connections.Kind{
		connections.DeckToRafter, connections.RafterToBeam, connections.BeamToPost, connections.BeamSplice,
		connections.PostToBase, connections.BaseToGround, connections.Ground,
	}
)

// paths lists the path to the house, of an attached cover, and that of each line of
// posts.
func (m *model) paths(links []Link, closure []Closure) []LoadPath {
	var out []LoadPath
	if m.plan.attached {
		out = append(out, pathOf("house", links, housePath, 0))
	}
	for i := range m.plan.lines {
		out = append(out, pathOf(mark("BM", i), links, postPath, i))
	}
	out[0].Lines = m.sumOfUplift(closure)
	return out
}

// pathOf follows the links of the kinds at one line. The deck has one link for all.
func pathOf(to string, links []Link, kinds []connections.Kind, line int) LoadPath {
	p := LoadPath{To: to, Verdict: OK}
	for _, kind := range kinds {
		at := mark(kind.Letter(), line)
		if kind == connections.DeckToRafter {
			at = mark(kind.Letter(), 0)
		}
		for i := range links {
			if links[i].Mark == at {
				p.take(&links[i])
			}
		}
	}
	return p
}

// take adds a link, and keeps it when it is the weakest.
func (p *LoadPath) take(l *Link) {
	p.Marks = append(p.Marks, l.Mark)
	worse := rank[l.Verdict] > rank[p.Verdict] || l.Verdict == p.Verdict && l.Connector.Ratio > p.Ratio
	if p.Weakest == "" || worse {
		p.Weakest, p.Verdict, p.Reason = l.Mark, l.Verdict, l.Reason
	}
	p.Ratio = max(p.Ratio, l.Connector.Ratio)
}

// sumOfUplift compares the uplift of the whole roof less 0.6 of the dead load with the
// sum of what house and posts must hold, in the combination that lifts most.
func (m *model) sumOfUplift(closure []Closure) []calc.Line {
	var s calc.Sheet
	worst := Closure{}
	for _, c := range closure {
		if strings.HasPrefix(c.Case, m.upliftName()) && (worst.Case == "" || c.Applied < worst.Applied) {
			worst = c
		}
	}
	s.Given("Q_roof", -worst.Applied, "lb", worst.Case+", from areas, pressures and weights, + up")
	s.Given("Q_held", -worst.Reactions, "lb", "sum over the ledger and all posts, from the statics, + up")
	s.Step("gap", "abs(Q_roof - Q_held) / max(abs(Q_roof), 1)", worst.Gap, "", "the path carries all of it to the ground and the house")
	return s.Lines()
}

// upliftName is the name of the combination of the least dead load with wind.
func (m *model) upliftName() string {
	for _, c := range loads.ASD(m.edition) {
		if c.DeadLeast && c.Wind != 0 {
			return c.Name
		}
	}
	return loads.ASD(m.edition)[0].Name
}
