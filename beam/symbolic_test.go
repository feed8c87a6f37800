package beam_test

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"patiocover/beam"
	"patiocover/calc/calctest"
)

// A symbolicCase is one beam as testdata/reference/beams.py reads it. Numbers are
// text, so that both sides begin with the same rational numbers.
type symbolicCase struct {
	Length    string      `json:"length"`    // in
	Stiffness string      `json:"stiffness"` // E I, lb-in²
	Supports  []string    `json:"supports"`  // in
	Loads     [][4]string `json:"loads"`     // from, to, in; start, end, lb/in, or lb where from is to
	At        []string    `json:"at"`        // in, where moment and deflection are asked
}

// symbolicCases draws beams of one to four spans with overhangs under what covers put
// on them: rafters as point loads, own weight, loads on part of the length, drifts.
func symbolicCases() []symbolicCase {
	r := rand.New(rand.NewPCG(7, 16))
	number := func(low, high int) int { return low + r.IntN(high-low+1) }
	var all []symbolicCase
	for spans := range 8 {
		c := symbolicCase{Stiffness: strconv.Itoa(number(40, 900) * 1_000_000)}
		at := number(0, 1) * number(6, 48)
		c.Supports = []string{strconv.Itoa(at)}
		for range spans/2 + 1 {
			at += number(60, 180)
			c.Supports = append(c.Supports, strconv.Itoa(at))
		}
		length := at + number(0, 1)*number(6, 60)
		c.Length = strconv.Itoa(length)
		load := func(from, to int, start, end int) {
			c.Loads = append(c.Loads, [4]string{strconv.Itoa(from), strconv.Itoa(to), strconv.Itoa(start), strconv.Itoa(end)})
		}
		load(0, length, 1, 1)
		if spans%2 == 0 {
			for x := number(0, 20); x <= length; x += 24 {
				load(x, x, number(-300, 400), 0)
			}
		}
		if spans%2 == 1 {
			load(number(0, length/3), number(length/3+1, length), number(-9, 9), number(10, 30))
			load(number(length/2, length-1), length, 12, 0)
		}
		for range 7 {
			c.At = append(c.At, strconv.Itoa(number(0, length)))
		}
		all = append(all, c)
	}
	return all
}

// symbolic runs the script on the cases and returns its rows. Without Python and SymPy
// the test is skipped, but never in the gate, which installs both.
func symbolic(t *testing.T, cases []symbolicCase) [][]string {
	t.Helper()
	if err := exec.Command("python3", "-c", "import sympy").Run(); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("python3 with sympy is needed in the gate: %v", err)
		}
		t.Skip("python3 with sympy is not installed (Debian: python3-sympy)")
	}
	input, err := json.Marshal(cases)
	require.NoError(t, err)
	run := exec.Command("python3", filepath.Join(calctest.Root(t), "testdata", "reference", "beams.py"))
	run.Stdin = bytes.NewReader(input)
	var faults strings.Builder
	run.Stderr = &faults
	output, err := run.Output()
	require.NoError(t, err, faults.String())
	var rows [][]string
	for line := range strings.Lines(string(output)) {
		rows = append(rows, strings.Split(strings.TrimSpace(line), ","))
	}
	return rows
}

func amount(t testing.TB, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return x
}

// run returns the plan of the case and its response.
func (c symbolicCase) run(t *testing.T) (*beam.Plan, beam.Response) {
	t.Helper()
	var supports []float64
	for _, s := range c.Supports {
		supports = append(supports, amount(t, s))
	}
	var loads []beam.Load
	for _, l := range c.Loads {
		from, to, start, end := amount(t, l[0]), amount(t, l[1]), amount(t, l[2]), amount(t, l[3])
		if from == to {
			loads = append(loads, beam.Point(from, start))
			continue
		}
		loads = append(loads, beam.Linear(from, to, start, end))
	}
	p := plan(t, amount(t, c.Length), supports, loads)
	var r beam.Response
	p.Run([]float64{1}, amount(t, c.Stiffness), &r)
	return p, r
}

// Reactions, moments and the deflected shape of continuous overhanging beams agree with
// SymPy's beam module, a general library that integrates singularity functions exactly.
func TestAgreesWithSymbolicAlgebra(t *testing.T) {
	cases := symbolicCases()
	rows := symbolic(t, cases)
	asked := 0
	for _, c := range cases {
		asked += len(c.Supports) + 2*len(c.At)
	}
	require.Len(t, rows, asked)
	plans, responses := make([]*beam.Plan, len(cases)), make([]beam.Response, len(cases))
	for i, c := range cases {
		plans[i], responses[i] = c.run(t)
	}
	for _, row := range rows {
		i := int(amount(t, row[0]))
		stiffness := amount(t, cases[i].Stiffness)
		want := amount(t, row[3])
		switch row[1] {
		case "reaction":
			calctest.Close(t, want, responses[i].Reactions[int(amount(t, row[2]))], 1e-11, 1e-8, row)
		case "moment":
			calctest.Close(t, want, plans[i].At([]float64{1}, stiffness, amount(t, row[2])).Moment, 1e-10, 1e-6, row)
		case "deflection":
			calctest.Close(t, want, plans[i].At([]float64{1}, stiffness, amount(t, row[2])).Deflection, 1e-9, 1e-11, row)
		default:
			t.Errorf("unknown row %v", row)
		}
	}
}
