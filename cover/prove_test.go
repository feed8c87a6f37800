package cover_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
)

// units are the units that a line may carry; the empty one is a pure number.
var units = []string{
	"", "%", "deg", "ft",
	"ft²", "in", "in/ft", "in²", "in³", "in⁴", "lb", "lb-in",
	"ft³", "lb-ft", "psf/ft", "mph", "pcf", "psf", "plf", "psi", "lb/in", "lb/in³",
	"lb-in²", "lb-in/in", "lb-in/ft", "lb-in²/in", "lb-in²/ft", "s",
}

// A written is one written calculation of a report.
type written struct {
	where string
	lines []calc.Line
}

// calculations gathers everything that a report writes out.
func calculations(r cover.Report) []written {
	var out []written
	for _, m := range r.Members {
		for _, c := range m.Checks {
			out = append(out, written{m.Mark + " " + c.Name, c.Check.Lines})
			if c.Beside != nil {
				out = append(out, written{m.Mark + " " + c.Name + " by " + c.Beside.Method, c.Beside.Check.Lines})
			}
		}
	}
	for _, d := range r.Loads.Derivations {
		out = append(out, written{d.Title, d.Lines})
	}
	for _, l := range r.Links {
		out = append(out, written{l.Mark, l.Calculation.Lines})
	}
	for _, w := range r.Lateral {
		out = append(out, written{w.Direction, w.Lines})
	}
	for _, f := range r.Foundations {
		if f.Kind == "slab" {
			out = append(out, written{f.Post + " slab rule", f.SlabCalc.Lines})
		}
		for _, c := range slices.Concat(f.Checks, f.Anchor) {
			out = append(out, written{f.Post + " " + c.Name, c.Check.Lines})
		}
	}
	out = append(out, surveyCalculations(r.Survey)...)
	if c := r.Drainage.Check; c != nil {
		out = append(out, written{"drainage", c.Lines})
	}
	return append(out, written{"headroom", r.Headroom.Check.Lines})
}

// faultsOf proves every line of a report and every ratio.
func faultsOf(r cover.Report) []string {
	var out []string
	for _, w := range calculations(r) {
		if len(w.lines) == 0 {
			out = append(out, w.where+": nothing is written")
		}
		if err := calctest.Prove(w.lines); err != nil {
			out = append(out, w.where+": "+err.Error())
		}
		for i, l := range w.lines {
			if l.Source == "" {
				out = append(out, fmt.Sprintf("%s: line %d, %s, has no source", w.where, i+1, l.Symbol))
			}
			if !slices.Contains(units, l.Unit) {
				out = append(out, fmt.Sprintf("%s: line %d, %s, has the unit %q", w.where, i+1, l.Symbol, l.Unit))
			}
		}
	}
	return append(out, ratioFaults(r)...)
}

// ratioFaults compares every ratio with its written check, and every verdict with
// its ratio.
func ratioFaults(r cover.Report) []string {
	var out []string
	worst := cover.OK
	for _, m := range r.Members {
		for _, c := range m.Checks {
			if c.Ratio != cover.Ratio(c.Check.Ratio()) {
				out = append(out, fmt.Sprintf("%s %s: ratio %v, written %v", m.Mark, c.Name, c.Ratio, c.Check.Ratio()))
			}
			if c.Verdict != c.Ratio.Verdict() || m.Verdict.Worse(c.Verdict) != m.Verdict {
				out = append(out, fmt.Sprintf("%s %s: verdict %s at %v", m.Mark, c.Name, c.Verdict, c.Ratio))
			}
			if c.Recalled != c.Check.Recalled() {
				out = append(out, m.Mark+" "+c.Name+": the mark for recalled values is lost")
			}
			if c.Ratio > m.Ratio && c.Name != "stock length" {
				out = append(out, m.Mark+" "+c.Name+": larger than the largest")
			}
		}
		worst = worst.Worse(m.Verdict)
	}
	for _, l := range r.Links {
		worst = worst.Worse(l.Verdict)
		if l.Rating < l.Up.Value && l.Name != "deck to rafter" {
			out = append(out, fmt.Sprintf("%s: rating %v below the uplift %v", l.Mark, l.Rating, l.Up.Value))
		}
	}
	for _, f := range r.Foundations {
		rule := cover.Ratio(f.SlabCalc.Ratio()).Verdict()
		unadopted := rule == cover.OK && f.Slab == cover.NotChecked
		if f.Kind == "slab" && f.Slab != rule && !unadopted {
			out = append(out, f.Post+": the slab rule says another thing than its calculation")
		}
		out = append(out, groundFaults(f)...)
		worst = worst.Worse(f.Verdict).Worse(f.AnchorVerdict)
	}
	for _, w := range r.Lateral {
		worst = worst.Worse(w.Verdict)
	}
	if eave := r.Input.House.Eave; eave != nil && *r.Input.Cover.Attachment != "freestanding" && *r.Input.Cover.HighEdge > *eave {
		worst = cover.Over
	}
	if r.Survey != nil {
		worst = worst.Worse(r.Survey.Verdict)
		out = append(out, surveyFaults(r.Survey)...)
	}
	if worst = worst.Worse(r.Headroom.Verdict).Worse(r.Drainage.Verdict); worst != r.Verdict {
		out = append(out, fmt.Sprintf("verdict %s, the worst part is %s", r.Verdict, worst))
	}
	return out
}

// groundFaults compares the verdicts of a foundation and its anchor with their checks.
func groundFaults(f cover.FoundationAt) []string {
	var out []string
	for _, c := range slices.Concat(f.Checks, f.Anchor) {
		if c.Ratio != cover.Ratio(c.Check.Ratio()) || c.Recalled != c.Check.Recalled() {
			out = append(out, fmt.Sprintf("%s %s: ratio %v, written %v", f.Post, c.Name, c.Ratio, c.Check.Ratio()))
		}
		if c.Verdict == cover.OK != (c.Ratio <= 1) {
			out = append(out, fmt.Sprintf("%s %s: verdict %s at %v", f.Post, c.Name, c.Verdict, c.Ratio))
		}
	}
	for _, c := range f.Checks {
		if f.Verdict.Worse(c.Verdict) != f.Verdict || c.Ratio > f.Ratio {
			out = append(out, fmt.Sprintf("%s: verdict %s, but %s of %s", f.Post, f.Verdict, c.Verdict, c.Name))
		}
	}
	for _, c := range f.Anchor {
		if f.AnchorVerdict.Worse(c.Verdict) != f.AnchorVerdict {
			out = append(out, fmt.Sprintf("%s: anchor %s, but %s of %s", f.Post, f.AnchorVerdict, c.Verdict, c.Name))
		}
	}
	if f.Reason == "" || f.AnchorReason == "" || f.AnchorVerdict == "" || f.Verdict == "" {
		out = append(out, f.Post+": nothing is said of the foundation or its anchor")
	}
	return out
}

func TestDemosAreProved(t *testing.T) {
	t.Parallel()
	for _, name := range demos {
		t.Run(name, func(t *testing.T) {
			r := size(t, demo(t, name))
			assert.Empty(t, faultsOf(r))
			assert.Greater(t, len(calculations(r)), 20)
		})
	}
}

func TestRandomCoversAreProved(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r, err := cover.Size(randomCover(t))
		if err != nil {
			t.Fatal(err)
		}
		if faults := append(faultsOf(r), lawFaults(r)...); len(faults) > 0 {
			t.Fatal(faults)
		}
	})
}

// What is quoted from memory is marked, in the check and in the list of it.
func TestRecalledValuesAreMarked(t *testing.T) {
	count := 0
	for _, name := range demos {
		for _, m := range size(t, demo(t, name)).Members {
			for _, c := range m.Checks {
				if c.Recalled {
					count++
				}
			}
		}
	}
	assert.Positive(t, count, "some values of the tables are from memory; when all are read, drop this test")
}
