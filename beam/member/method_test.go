package member_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc/calctest"
)

// Adjusted resistances of a textbook in load and resistance factor design.
func TestPublishedStrengthDesign(t *testing.T) {
	for _, r := range calctest.Published(t, "lrfd.csv") {
		a := adjusted(t, r.Text("species"), r.Text("grade"), r.Text("size"),
			lumber.Use{Method: lumber.LRFD, Wet: r.Has("wet")})
		term := duration(t, r.Text("duration"))
		switch r.Text("quantity") {
		case "moment":
			b := member.NewBending(72_960, a, term, member.Bracing{Held: true})
			calctest.Near(t, r.Num("want"), b.Allowable*b.Modulus, r.Num("within"), r.Text("source"))
			assert.Greater(t, b.Ratio(), 1.0, "the solution finds 72.96 k-in. too much")
		case "shear":
			s := member.NewShear(1520, a, term)
			calctest.Near(t, r.Num("want"), s.Allowable*s.Area*2/3, r.Num("within"), r.Text("source"))
			assert.Less(t, s.Ratio(), 1.0, "the solution finds 1.52 k in order")
		}
	}
}

// Every check is written and proved in load and resistance factor design as well.
func TestStrengthDesignIsProved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, term := piece(t), anyDuration(t)
		use := a.Use
		use.Method = lumber.LRFD
		v, err := lumber.Find(a.Species, a.Grade, a.Section)
		if err != nil {
			t.Fatal(err)
		}
		l := lumber.Adjust(v, a.Section, use)
		force := rapid.Float64Range(1, 20_000).Draw(t, "force")
		place := member.Seat{Width: a.Section.Breadth, Length: rapid.Float64Range(1, 8).Draw(t, "length"), FromEnd: 4}
		axis := member.Axis{Length: rapid.Float64Range(12, 200).Draw(t, "height"), Ends: member.PinnedPinned}
		proved(t, member.NewBending(10*force, &l, term, bracing(t)))
		proved(t, member.NewShear(force, &l, term))
		proved(t, member.NewNotchShear(force, &l, term, notch(t, a.Section.Depth)))
		proved(t, member.NewBearing(force, &l, place))
		proved(t, member.NewBearingAtAngle(force, &l, term, place, 80))
		proved(t, member.NewEndBearing(force, a.Section.Area(), &l, term, false))
		proved(t, member.NewCompression(force, &l, term, member.Column{Deep: axis, Thin: axis}))
		proved(t, member.NewTension(force, a.Section.Area(), &l, term))
	})
}

// The format conversion leaves buckling as it is: under snow F_cE grows by 1.5 and
// Fc* by 2.16 x 0.8 / 1.15 = 1.503, so that C_P is that of allowable stress design.
func TestStabilityFactorsAreThoseOfAllowableStress(t *testing.T) {
	axis := member.Axis{Length: 96, Ends: member.PinnedPinned}
	held := member.Column{Deep: axis, Thin: axis}
	brace := member.Bracing{Unbraced: 120, Loading: member.UniformSpan}
	asd := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{})
	lrfd := adjusted(t, "Hem-Fir", "No.2", "2x8", lumber.Use{Method: lumber.LRFD})
	square := adjusted(t, "Hem-Fir", "No.2", "4x4", lumber.Use{})
	strong := adjusted(t, "Hem-Fir", "No.2", "4x4", lumber.Use{Method: lumber.LRFD})
	calctest.Close(t, member.NewCompression(1, square, lumber.TwoMonths, held).Stability,
		member.NewCompression(1, strong, lumber.TwoMonths, held).Stability, 0.005, 0)
	calctest.Close(t, member.NewBending(1, asd, lumber.TwoMonths, brace).Stability,
		member.NewBending(1, lrfd, lumber.TwoMonths, brace).Stability, 0.005, 0)
}
