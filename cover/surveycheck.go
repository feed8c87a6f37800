package cover

import (
	"fmt"

	"patiocover/calc"
)

// Limits of the rules about the rooms behind a cover.
const (
	openPart    = 0.65         // of the long side and of one more, below 6 ft 8 in (IRC 2018 Appendix H AH103.1, read)
	clearPath   = 36 * calc.In // from an escape opening to the open (a city's handout, read)
	roofedPorch = 7 * calc.Ft  // ceiling of a roofed porch over required windows (IRC 2018 R303.8, read)
)

// checklist asks what a cover does to the rooms behind it.
func (s *surveying) checklist() {
	o := s.m.in.House.OldRoof
	s.openness()
	if len(o.Openings) == 0 {
		s.ask("windows and doors under the cover", "none was described: light, air and escape of the rooms behind are open",
			"IRC 2018 R303, R310")
		return
	}
	for i := range o.Openings {
		x := &o.Openings[i]
		if yes(x.Room) {
			s.lightAndAir(x)
		}
		if is(x.Kind, "escape_window") {
			s.escape(x)
		}
		if is(x.Kind, "door") {
			s.ask("door "+*x.Name, "landing at its threshold, 2 percent of slope at most, and a receptacle within reach must be drawn",
				"IRC 2018 R311.3; electrical code 210.52(E)(3)")
		}
	}
}

// item adds an answer.
func (s *surveying) item(item string, passes bool, reason, source string) {
	answer := AnswerFails
	if passes {
		answer = AnswerPasses
	}
	s.out.Checklist = append(s.out.Checklist, CheckItem{Item: item, Answer: answer, Reason: reason, Source: source})
}

// ask adds a question.
func (s *surveying) ask(item, reason, source string) {
	s.out.Checklist = append(s.out.Checklist, CheckItem{Item: item, Answer: AnswerAsk, Reason: reason, Source: source})
}

// openSide is the part of a side that is open: as said, or all of it where all sides are.
func (s *surveying) openSide(said *float64) (part float64, known bool) {
	if said != nil {
		return *said, true
	}
	return 1, *s.m.in.Cover.Sides == "open"
}

// openness asks for 65 percent of the longer side and of one more.
func (s *surveying) openness() {
	const item, source = "openness of the cover", "IRC 2018 Appendix H AH103.1"
	o := s.m.in.House.OldRoof
	long, known := s.openSide(o.OpenLong)
	other, both := s.openSide(o.OpenOther)
	if !known || !both {
		s.ask(item, "screens or walls close its sides: say how much of the longer side and of one more stays open below 6 ft 8 in", source)
		return
	}
	s.item(item, min(long, other) >= openPart,
		fmt.Sprintf("%.0f %% of the longer side and %.0f %% of one more are open; 65 %% of both is asked for", 100*long, 100*other), source)
}

// lightAndAir asks whether a window that a room needs may open below the cover.
func (s *surveying) lightAndAir(x *HouseOpening) {
	const source = "IRC 2018 R303.8, R303.1 exception 3"
	item := "light and air through " + *x.Name
	long, known := s.openSide(s.m.in.House.OldRoof.OpenLong)
	if !known {
		s.ask(item, "how much of the longer side of the cover stays open is not said", source)
		return
	}
	s.item(item, long >= openPart && s.clear >= roofedPorch, fmt.Sprintf(
		"a porch may stand before it with 65 %% of its long side open and a ceiling at 7 ft: here %.0f %% and %s",
		100*long, calc.FeetInches(s.clear)), source)
}

// escape asks whether somebody may escape through a window below the cover.
func (s *surveying) escape(x *HouseOpening) {
	const source = "IRC 2018 Appendix H AH103.2; R310; clear path of 36 in. by a city's handout"
	item := "escape through " + *x.Name
	if *s.m.in.Cover.Sides != "open" {
		s.item(item, false, "a cover before an escape opening must be unenclosed: its sides are "+spokenSides[*s.m.in.Cover.Sides], source)
		return
	}
	if x.Clear == nil {
		s.ask(item, "the clear path from it to the open is not said: 36 in. wide is asked for", source)
		return
	}
	s.item(item, *x.Clear*calc.In >= clearPath, "clear path "+calc.FeetInches(*x.Clear*calc.In)+"; 36 in. is asked for", source)
}

// spokenSides are the sides of a cover in words.
var spokenSides = map[string]string{"screened": "screened", "walled": "walled"}
