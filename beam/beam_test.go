package beam_test

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam"
	"patiocover/calc"
	"patiocover/calc/calctest"
)

// inputs is a published beam as its row describes it.
type inputs struct {
	Supports []float64   `json:"supports"` // in
	Length   float64     `json:"length"`   // in
	E        float64     `json:"E"`        // psi
	I        json.Number `json:"I"`        // in⁴
	Loads    []struct {
		Type string   `json:"type"`
		X    float64  `json:"x"`    // in
		P    float64  `json:"P"`    // lb
		W    float64  `json:"w"`    // lb/in
		From *float64 `json:"from"` // in; absent: the left tip
		To   *float64 `json:"to"`   // in; absent: the right tip
	} `json:"loads"`
}

// read returns the plan and the stiffness of a row.
func read(t *testing.T, r calc.Row) (*beam.Plan, float64) {
	t.Helper()
	var in inputs
	text := r.Text("inputs")
	if text[0] == '"' {
		require.NoError(t, json.Unmarshal([]byte(text), &text))
	}
	require.NoError(t, json.Unmarshal([]byte(text), &in))
	var loads []beam.Load
	for _, l := range in.Loads {
		switch l.Type {
		case "point":
			loads = append(loads, beam.Point(l.X, l.P))
		case "uniform":
			from, to := 0.0, in.Length
			if l.From != nil {
				from, to = *l.From, *l.To
			}
			loads = append(loads, beam.Uniform(from, to, l.W))
		default:
			t.Fatalf("%s: load %q", r.Text("id"), l.Type)
		}
	}
	i, err := in.I.Float64()
	require.NoError(t, err)
	return plan(t, in.Length, in.Supports, loads), in.E * i
}

// plan returns the plan of one case.
func plan(t testing.TB, length float64, supports []float64, cases ...[]beam.Load) *beam.Plan {
	t.Helper()
	line, err := beam.NewLine(length, supports)
	require.NoError(t, err)
	p, err := beam.NewPlan(line, cases)
	require.NoError(t, err)
	return p
}

var quantity = regexp.MustCompile(`^(\w+?)(?:\[(\d+)\])?$`)

// answer picks the quantity of a row out of what the plan gives.
func answer(t *testing.T, p *beam.Plan, stiffness float64, name string) float64 {
	t.Helper()
	part := quantity.FindStringSubmatch(name)
	require.NotNil(t, part, name)
	k := 0
	if part[2] != "" {
		var err error
		k, err = strconv.Atoi(part[2])
		require.NoError(t, err)
	}
	var r beam.Response
	var l beam.Location
	p.Run([]float64{1}, stiffness, &r)
	p.Locate([]float64{1}, stiffness, &l)
	switch part[1] {
	case "reaction":
		return r.Reactions[k]
	case "support_moment":
		return r.SupportMoments[k]
	case "moment_max":
		return r.Bays[k].MomentMax
	case "moment_min":
		return r.Bays[k].MomentMin
	case "deflection_max":
		return r.Bays[k].DeflectionMax
	case "deflection_min":
		return r.Bays[k].DeflectionMin
	case "x_moment_max":
		return l.Bays[k].MomentMax.At
	case "x_deflection_max":
		return l.Bays[k].DeflectionMax.At
	case "x_deflection_min":
		return l.Bays[k].DeflectionMin.At
	case "shear_left":
		return r.Bays[k].ShearLeft
	case "shear_right":
		return r.Bays[k].ShearRight
	case "tip_deflection":
		calctest.Close(t, r.LeftTip, r.RightTip, 1e-9, 0, "the row is of a symmetric beam")
		return r.LeftTip
	}
	t.Fatalf("quantity %q", name)
	return 0
}

func TestPublished(t *testing.T) {
	rows := calctest.Published(t, "beam.csv")
	assert.Len(t, rows, 92)
	for _, r := range rows {
		t.Run(r.Text("id"), func(t *testing.T) {
			p, stiffness := read(t, r)
			got := answer(t, p, stiffness, r.Text("quantity"))
			calctest.Near(t, r.Num("want"), got, r.Num("within"), r.Text("source"), r.Text("note"))
		})
	}
}

// Two equal spans of 10 ft under 120 plf, AWC Design Aid No. 6 (Beam Formulas with
// Shear and Moment Diagrams, 2007), Fig. 29: the end reactions are 0.375 w L, the
// inner one 1.25 w L, the moment over it w L²/8.
func Example() {
	span, load := 10*calc.Ft, 120*calc.PLF
	line, err := beam.NewLine(2*span, []float64{0, span, 2 * span})
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := beam.NewPlan(line, [][]beam.Load{{beam.Uniform(0, 2*span, load)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	var r beam.Response
	p.Run([]float64{1}, 1600000*230.8, &r)
	for i, reaction := range r.Reactions {
		fmt.Printf("R%d = %.0f lb = %.3f w L\n", i+1, reaction, reaction/(load*span))
	}
	fmt.Printf("M2 = %.0f lb-in = %.3f w L²\n", r.SupportMoments[1], r.SupportMoments[1]/(load*span*span))
	fmt.Printf("M max = %.0f lb-in, y max = %.4f in\n", r.Bays[1].MomentMax, r.Bays[1].DeflectionMax)
	// Output:
	// R1 = 450 lb = 0.375 w L
	// R2 = 1500 lb = 1.250 w L
	// R3 = 450 lb = 0.375 w L
	// M2 = -18000 lb-in = -0.125 w L²
	// M max = 10125 lb-in, y max = 0.0304 in
}
