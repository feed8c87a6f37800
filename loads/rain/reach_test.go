package rain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/loads/rain"
)

// A wind of 6 m/s drives average rain 10.8 ft in below an edge at 9 ft (worked figure of
// the digest: 9 · 6 · 0.20).
func TestReachByHand(t *testing.T) {
	r := rain.NewReach(9*calc.Ft, 6/0.44704, 14*calc.Ft)
	calctest.Near(t, 10.8*calc.Ft, r.In, 1e-9)
	calctest.Near(t, 3.2*calc.Ft, r.Dry, 1e-9)
	assert.NoError(t, calctest.Prove(r.Lines()))
	assert.Zero(t, rain.NewReach(9*calc.Ft, 40, 10*calc.Ft).Dry, "the rain reaches through")
}
