package cover

import (
	"fmt"
	"slices"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/connections/dowel"
	"patiocover/connections/survey"
	"patiocover/loads/roof"
)

// The words of the input for evidence and condition, in the order of the constants.
var (
	evidenceWords = []string{
		survey.Unknown: "unknown", survey.NoneSeen: "none_seen", survey.Toenails: "toenails",
		survey.Bolts: "bolts", survey.Strap: "strap",
	}
	conditionWords = []string{
		survey.NotRecorded: "not_recorded", survey.Sound: "sound", survey.Rust: "rust", survey.Split: "split",
		survey.Decay: "decay", survey.Gap: "gap",
	}
)

// evidenceOf turns a word of the input into evidence; an unknown word is unknown.
func evidenceOf(word *string) survey.Evidence {
	if word == nil {
		return survey.Unknown
	}
	return survey.Evidence(max(0, slices.Index(evidenceWords, *word)))
}

// verdictOf turns a verdict of a joint into that of the report.
var verdictOf = map[survey.Verdict]Verdict{
	survey.OpenUp: OpenUp, survey.NotChecked: NotChecked, survey.Over: Over, survey.OK: OK,
}

// seenOf is the record of a joint in inches.
func seenOf(j *Joint) survey.Seen {
	s := survey.Seen{
		Evidence:  evidenceOf(j.Evidence),
		Condition: survey.Condition(max(0, slices.Index(conditionWords, *j.Condition))),
		Rating:    orZero(j.Rating) * calc.Lb, Needed: orZero(j.Asked), Present: orZero(j.There),
		Width: orZero(j.Width) * calc.In, Count: orZero(j.Count),
		Holding: orZero(j.Plate) * calc.In, Toed: orZero(j.Rafter) * calc.In, EndMargin: orZero(j.Margin) * calc.In,
	}
	if j.Fastener != nil {
		s.Fastener, _ = fastenerNamed(*j.Fastener, s.Evidence)
	}
	if j.Gauge != nil {
		s.Sheet, _ = dowel.FindSheet(*j.Gauge)
	}
	if j.RatedFor != nil {
		s.RatedFor = gravityOf(*j.RatedFor)
	}
	if j.Species != nil {
		s.Gravity = gravityOf(*j.Species)
	}
	return s
}

// orZero is what a pointer points at, or nothing.
func orZero[T any](p *T) (x T) {
	if p != nil {
		x = *p
	}
	return x
}

// fastenerNamed finds a nail such as 16d common, or a bolt such as 1/2, by its words.
func fastenerNamed(words string, e survey.Evidence) (dowel.Fastener, bool) {
	words = strings.ToLower(strings.TrimSpace(words))
	if e == survey.Bolts {
		return dowel.FindBolt(strings.Fields(words + " ?")[0])
	}
	size, kind, _ := strings.Cut(words, " ")
	return dowel.FindNail(strings.TrimSuffix(strings.TrimSpace(kind), " nail"), size)
}

// gravityOf is the specific gravity of a species group.
func gravityOf(species string) lumber.Quoted {
	section, err := lumber.SectionNamed("2x6")
	if err != nil {
		return lumber.Quoted{}
	}
	for _, grade := range lumber.Graded(species, section) {
		if v, err := lumber.Find(species, grade, section); err == nil {
			return v.Gravity
		}
	}
	return lumber.Quoted{}
}

// runOf is how many joints a record stands for.
func runOf(j *Joint) int {
	if j.First == nil || j.Last == nil {
		return 1
	}
	return *j.Last - *j.First + 1
}

// A group is the joints that may be judged by each other: one wall, place and zone.
type surveyGroup struct {
	wall, place string
	zone        survey.Zone
}

// joints judges every joint: first what was seen in each group, then each joint with it.
func (s *surveying) joints() {
	all := s.m.in.House.Joints
	groups := map[surveyGroup][]int{}
	var order []surveyGroup
	capacities := make([]survey.Capacity, len(all))
	keys := make([]surveyGroup, len(all))
	for i := range all {
		capacities[i] = survey.NewCapacity(seenOf(&all[i]))
		zone, _ := s.roof.zoneOf(&all[i])
		keys[i] = surveyGroup{place: placeOf(&all[i]), zone: zone}
		if all[i].Wall != nil {
			keys[i].wall = *all[i].Wall
		}
		if _, known := groups[keys[i]]; !known {
			order = append(order, keys[i])
		}
		groups[keys[i]] = append(groups[keys[i]], i)
	}
	worst := map[surveyGroup]*survey.Capacity{}
	for _, g := range order {
		worst[g] = s.open(g, groups[g], capacities)
	}
	for i := range all {
		s.judge(&all[i], keys[i], survey.NewJoint(s.demand(keys[i].place, keys[i].zone), capacities[i], worst[keys[i]]))
	}
	s.rank()
}

// open writes how much of a group must be opened, and returns the worst that was seen in
// it once that is enough.
func (s *surveying) open(g surveyGroup, members []int, all []survey.Capacity) *survey.Capacity {
	total, seen := 0, 0
	marks := []string{}
	var found []survey.Capacity
	for _, i := range members {
		j := &s.m.in.House.Joints[i]
		n := runOf(j)
		total += n
		if all[i].Basis == survey.NotSeen {
			marks = append(marks, *j.Mark)
			continue
		}
		seen += n
		found = append(found, all[i])
	}
	o := survey.NewOpening(g.zone, total, seen)
	s.out.Opening = append(s.out.Opening, SurveyOpening{
		Wall: g.wall, Place: g.place, Zone: zoneWords[g.zone], Total: total, Seen: seen, Least: o.Least, More: o.More,
		Marks: marks, Enough: o.Enough(), Lines: o.Lines(),
	})
	if w, ok := survey.Worst(found); ok && o.Enough() {
		return &w
	}
	return nil
}

// judge writes one joint.
func (s *surveying) judge(j *Joint, g surveyGroup, x survey.Joint) {
	_, why := s.roof.zoneOf(j)
	c := &x.Capacity
	out := SurveyJoint{
		Mark: *j.Mark, Wall: g.wall, Place: g.place, Zone: zoneWords[g.zone], ZoneWhy: why, End: j.End, Count: runOf(j),
		Evidence: seenWords(j, &x), Basis: c.Basis.String(), Uplift: finite(x.Uplift),
		Capacity: calc.RoundDown(c.Uplift, calc.Lb), Ratio: Ratio(x.Ratio()), Verdict: verdictOf[x.Verdict],
		Rating: x.Rating, Prescriptive: s.prescriptive(&x.Demand),
	}
	out.Where = whereOf(j, &out)
	out.Reason = reasonOf(&out, &x)
	if j.Photo != nil {
		out.Photo = *j.Photo
	}
	if j.Detail != nil {
		out.Note = *j.Detail
	}
	if out.Uplift != nil {
		e := x.Explain()
		out.Check, out.Recalled = &e, e.Recalled()
	}
	s.out.Joints = append(s.out.Joints, out)
}

// seenWords says what was seen at a joint.
func seenWords(j *Joint, x *survey.Joint) string {
	seen := evidenceOf(j.Evidence)
	words := seen.String()
	if seen != survey.Unknown && seen != survey.NoneSeen {
		words += ", " + survey.Condition(max(0, slices.Index(conditionWords, *j.Condition))).String()
	}
	if x.Assumed {
		words += "; taken as the worst seen in its zone"
	}
	return words
}

// whereOf says in words where a joint stands.
func whereOf(j *Joint, out *SurveyJoint) string {
	var parts []string
	if out.Wall != "" {
		parts = append(parts, out.Wall)
	}
	if j.First != nil && j.Last != nil {
		parts = append(parts, fmt.Sprintf("rafters %d to %d", *j.First, *j.Last))
	}
	return strings.Join(append(parts, placeNames[out.Place], out.Zone), ", ")
}

// placeNames are the places in words.
var placeNames = map[string]string{
	atEave: "eave", atFarWall: "far wall", atInterior: "interior support", atRidge: "ridge",
}

// reasonOf says why a joint has its verdict.
func reasonOf(out *SurveyJoint, x *survey.Joint) string {
	switch out.Verdict {
	case OK:
		words := fmt.Sprintf("holds %s lb; the wind asks %s lb", poundsDown(x.Capacity.Uplift), pounds(x.Uplift))
		if x.Assumed {
			words += "; taken as the worst seen in its zone"
		}
		return words
	case NotChecked:
		return "what the wind asks of it is outside the method or not known: " + out.Basis
	case OpenUp:
		words := out.Basis + ": open it up"
		if out.Rating > 0 {
			words += "; a tie here would be rated " + pounds(out.Rating) + " lb"
		}
		return words
	}
	tie := "no uplift is asked; replace what is damaged"
	if out.Rating > 0 {
		tie = "tie rated " + pounds(out.Rating) + " lb uplift or more (ASD, wind), for the whole of " + pounds(x.Uplift) + " lb"
	}
	if out.Uplift == nil {
		tie = "what the wind asks is not known"
	}
	switch x.Capacity.Basis {
	case survey.DamagedJoint:
		return "replace on damage: " + tie
	case survey.NothingThere, survey.HalfNailed:
		return out.Basis + ": " + tie
	}
	if x.Assumed {
		tie += "; taken as the worst seen in its zone"
	}
	return fmt.Sprintf("holds %s lb only: %s", poundsDown(x.Capacity.Uplift), tie)
}

// poundsDown writes a capacity for a sentence: down to the whole pound.
func poundsDown(x float64) string { return pounds(calc.RoundDown(x, calc.Lb)) }

// Limits of the nailing schedule of the code for new rafters: tabulated uplift and
// spacing (IRC 2018 R802.11.1, exception, read).
const (
	scheduleUplift  = 200 * calc.Lb
	scheduleSpacing = 24 * calc.In
)

// prescriptive says what the code's own table and nailing schedule would say of new
// framing at this roof. It is never the verdict.
func (s *surveying) prescriptive(d *survey.Demand) string {
	switch {
	case !s.known:
		return ""
	case is(s.m.in.House.OldRoof.System, "plank_and_beam"):
		return "the nailing schedule is for rafters: beams of a roof need designed connections (IRC 2018 R802.11)"
	case d.Cover > 0 || s.hung.there:
		return "the nailing schedule does not reach roofs that carry a cover (IRC 2018 R802.11)"
	}
	if s.nailedWithoutReckoning() {
		return "new framing could be nailed by schedule without reckoning (IRC 2018 R802.11.1: 115 mph, exposure B, 5 in 12, 32 ft); " +
			"an old nail has no value by it"
	}
	t := roof.NewTie(s.roof.joint, roof.TableBasis(s.roof.angle >= degrees(angleOf(steepRoof))))
	if !(t.Uplift <= scheduleUplift && s.roof.joint.Spacing <= scheduleSpacing) {
		return fmt.Sprintf("by the code's table %s lb: above 200 lb or 24 in., new framing needs a tie (IRC 2018 R802.11)",
			pounds(t.Uplift))
	}
	return fmt.Sprintf("by the code's table %s lb: new framing could be nailed by schedule (IRC 2018 R802.11.1); "+
		"an old nail has no value by it", pounds(t.Uplift))
}

// nailedWithoutReckoning reports whether the code lets new rafters be nailed by schedule
// with no look at the uplift (IRC 2018 R802.11.1, exception 2, read).
func (s *surveying) nailedWithoutReckoning() bool {
	const speed, span = 115, 32 * calc.Ft // mph; in
	site := s.m.in.Site
	return *site.WindSpeed <= speed && *site.Exposure == "B" && s.roof.angle >= degrees(angleOf(steepRoof)) && s.roof.joint.Span <= span
}

// rank lists the ties that are needed by how much they are over, then by cost.
func (s *surveying) rank() {
	price := s.m.in.House.OldRoof.TieDollars
	total := 0.0
	for i := range s.out.Joints {
		j := &s.out.Joints[i]
		if j.Verdict != Over || j.Rating == 0 {
			continue
		}
		r := SurveyRank{Mark: j.Mark, Where: j.Where, Ratio: j.Ratio, Rating: j.Rating, Count: j.Count}
		if price != nil {
			r.Cost = new(*price * float64(j.Count))
			total += *r.Cost
		}
		s.out.Ranking = append(s.out.Ranking, r)
	}
	slices.SortStableFunc(s.out.Ranking, func(a, b SurveyRank) int {
		switch {
		case a.Ratio != b.Ratio && a.Ratio > b.Ratio:
			return -1
		case a.Ratio != b.Ratio:
			return 1
		case a.Rating != b.Rating:
			return int(b.Rating - a.Rating)
		}
		return a.Count - b.Count
	})
	if price != nil {
		s.out.TieCost = &total
	}
}
