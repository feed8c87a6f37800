package web_test

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web"
)

func TestTextOfEveryCover(t *testing.T) {
	for _, name := range covers {
		r := report(t, name)
		var b strings.Builder
		require.NoError(t, web.Text(&b, r))
		require.NoError(t, web.Calculations(&b, r))
		words := strings.Join(strings.Fields(b.String()), " ")
		assert.Contains(t, words, "Verdict: "+string(r.Verdict))
		assert.Equal(t, 2, strings.Count(words, cover.Notice), "at the top and at the bottom")
		for _, l := range r.Links {
			assert.Contains(t, words, l.Mark+" "+l.Name)
			assert.Contains(t, words, l.Hardware)
		}
		for _, s := range r.NotChecked {
			assert.Contains(t, words, s.Why)
		}
		for _, a := range r.Assumed {
			assert.Contains(t, words, a.Path)
		}
		for _, m := range r.Members {
			for _, c := range m.Checks {
				assert.Contains(t, words, strings.ToUpper(m.Mark+" "+m.Size+", "+c.Name))
			}
		}
	}
}

// Hardware without a rating, such as the nails of the deck, must still hold the uplift.
func TestTrapNoRatingIsNotNoUplift(t *testing.T) {
	r := report(t, "desert")
	r.Links = r.Links[:1]
	for _, c := range []struct {
		rating, up float64
		want       string
	}{{0, 49, "49 0 0 as up OK"}, {0, 0, "0 0 0 none OK"}, {1575, 1570, "1,570 0 0 1,575 OK"}} {
		r.Links[0].Rating, r.Links[0].Up.Value = c.rating, c.up
		r.Links[0].Along.Value, r.Links[0].Out.Value = 0, 0
		var b strings.Builder
		require.NoError(t, web.Text(&b, r))
		assert.Contains(t, strings.Join(strings.Fields(b.String()), " "), c.want)
	}
}

// A text of the input cannot drive a terminal, nor break a row in two.
func TestTrapControlCharactersInText(t *testing.T) {
	r := report(t, "desert")
	r.Input.Job.Name = new("red\x1b[31m\x07 job\u009b2J")
	r.Links[0].Hardware = "nails\nB9\tfake\rrow"
	var b strings.Builder
	require.NoError(t, web.Text(&b, r))
	assert.NotContains(t, b.String(), "\x1b")
	assert.NotContains(t, b.String(), "\x07")
	assert.NotContains(t, b.String(), "\u009b")
	assert.Contains(t, b.String(), "nails B9 fake row")
}

// The survey alone, as text and with its calculations.
func TestSurveyText(t *testing.T) {
	for _, name := range []string{"survey", "ranch"} {
		r := report(t, name)
		var b strings.Builder
		require.NoError(t, web.SurveyText(&b, r))
		words := strings.Join(strings.Fields(b.String()), " ")
		assert.Contains(t, words, "Verdict of the survey: "+string(r.Survey.Verdict))
		assert.Contains(t, words, r.Notice)
		for _, j := range r.Survey.Joints {
			assert.Contains(t, words, j.Reason)
		}
		for _, v := range r.Survey.Visible {
			assert.Contains(t, words, v.What)
		}
		for _, c := range r.Survey.Checklist {
			assert.Contains(t, words, c.Answer+" "+c.Item)
		}
		if x := r.Survey.Tails; x != nil {
			for _, a := range x.Alternatives {
				assert.Contains(t, words, a.Name)
			}
		}
		var c strings.Builder
		require.NoError(t, web.SurveyCalculations(&c, r))
		assert.Contains(t, c.String(), "JOINT "+strings.ToUpper(r.Survey.Joints[0].Mark))
	}
	var b strings.Builder
	require.NoError(t, web.SurveyText(&b, report(t, "desert")))
	assert.Contains(t, b.String(), "says nothing of an existing roof")
	assert.EqualError(t, web.SurveyText(full{}, report(t, "ranch")), "no room")
}

// full is a writer on a disk that is full.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room") }

func TestTextTellsOfAFailingWriter(t *testing.T) {
	r := report(t, "desert")
	assert.EqualError(t, web.Text(full{}, r), "no room")
	assert.EqualError(t, web.Calculations(full{}, r), "no room")
}

// The velocity pressure of ASCE 7-16 eq. 26.10-1 at 115 mph, exposure C, 15 ft,
// with the factors of Tables 26.10-1 and 26.6-1.
func ExampleCalculations() {
	var s calc.Sheet
	s.Given("V", 115, "mph", "criteria sheet")
	s.Quoted("K_z", 0.85, "", "ASCE 7-16 Table 26.10-1", calc.Read)
	s.Quoted("K_d", 0.85, "", "ASCE 7-16 Table 26.6-1", calc.Recalled)
	s.Step("q_z", "0.00256 * K_z * K_d * pow(V, 2)", 0.00256*0.85*0.85*115*115, "psf", "ASCE 7-16 eq. 26.10-1")
	var r cover.Report
	r.Loads.Derivations = []cover.Derivation{{Title: "Velocity pressure", Lines: s.Lines()}}
	if err := web.Calculations(os.Stdout, r); err != nil {
		fmt.Println(err)
	}
	// Output:
	// LOAD: VELOCITY PRESSURE
	//   V    given                              = 115   mph  criteria sheet
	//   K_z  given                              = 0.85       ASCE 7-16 Table 26.10-1
	//   K_d  given                              = 0.85       ASCE 7-16 Table 26.6-1 (from memory, confirm against the print)
	//   q_z  = 0.00256 * K_z * K_d * pow(V, 2)  = 24.5  psf  ASCE 7-16 eq. 26.10-1
}

// The rating of a ledger is for each foot of it, and that of a deck for each square
// foot: read as that of one lag, it would be far too little.
func TestTrapRatingReadAsThatOfOnePiece(t *testing.T) {
	r := report(t, "desert")
	var b strings.Builder
	require.NoError(t, web.Text(&b, r))
	text := strings.Join(strings.Fields(b.String()), " ")
	assert.Contains(t, text, "L1 ledger to house 20 ft of ledger lb/ft")
	assert.Contains(t, text, "D1 deck to rafter 221 sq ft of deck lb/sq ft")
	assert.Contains(t, text, "T1 rafter to beam 11, one at each rafter lb ")
	assert.Contains(t, text, "C1 beam to post 3, one at each post lb ")
	require.NoError(t, web.Calculations(&b, r))
	assert.Contains(t, b.String(), "L1, LEDGER TO HOUSE, PER FOOT OF LEDGER")
	page, err := web.Page{Report: &r}.Render()
	require.NoError(t, err)
	assert.Contains(t, string(page), "<b>Every lb here is for each foot of ledger.</b>")
	for _, l := range r.Links {
		unit := map[string]string{cover.PerFoot: "lb/ft", cover.PerSquareFoot: "lb/sq ft"}[l.Per]
		if unit == "" {
			unit = "lb"
		}
		assert.Contains(t, string(page), " "+unit+"</div></td>", l.Mark)
		if l.Per == cover.PerFoot {
			assert.Contains(t, l.Hardware, "for each foot of ledger")
			assert.Contains(t, string(page), " lb/ft</b></div></td>")
		}
	}
}
