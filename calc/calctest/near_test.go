package calctest_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc/calctest"
)

// A witness is a test that only remembers whether it was failed.
type witness struct {
	testing.TB
	failed string
}

func (w *witness) Helper() {}

func (w *witness) Errorf(format string, _ ...any) { w.failed = format }

func (w *witness) Fatal(...any) { panic("fatal") }

func (w *witness) Fatalf(format string, _ ...any) { panic(format) }

func TestNear(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	cases := []struct {
		name              string
		want, got, within float64
		pass              bool
	}{
		{"equal", 5, 5, 0, true},
		{"at the limit", 5, 5.5, 0.5, true},
		{"past the limit", 5, 5.51, 0.5, false},
		{"below the limit", 5, 4.49, 0.5, false},
		{"got is not a number", 5, nan, 1e300, false},
		{"want is not a number", nan, 5, 1e300, false},
		{"neither is a number", nan, nan, 1e300, false},
		{"no tolerance is known", 5, 5, nan, false},
		{"infinite", 5, inf, 1e300, false},
		{"both infinite have no distance", inf, inf, 1, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			w := &witness{TB: t}
			calctest.Near(w, c.want, c.got, c.within)
			assert.Equal(t, c.pass, w.failed == "")
		})
	}
}

func TestClose(t *testing.T) {
	cases := []struct {
		name                       string
		want, got, relative, floor float64
		pass                       bool
	}{
		{"within a thousandth", 1000, 1000.9, 1e-3, 0, true},
		{"past a thousandth", 1000, 1001.1, 1e-3, 0, false},
		{"negative, within", -1000, -1000.9, 1e-3, 0, true},
		{"negative, past", -1000, -1001.1, 1e-3, 0, false},
		{"zero within the floor", 0, 1e-9, 1e-3, 1e-6, true},
		{"zero past the floor", 0, 1e-5, 1e-3, 1e-6, false},
		{"not a number", 0, math.NaN(), 1e-3, 1e-6, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			w := &witness{TB: t}
			calctest.Close(w, c.want, c.got, c.relative, c.floor)
			assert.Equal(t, c.pass, w.failed == "")
		})
	}
}
