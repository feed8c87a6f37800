package member_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc/calctest"
)

// Nailed plies are no solid post: across the plies C_P takes Kf = 0.6, and loose plies
// count one by one.
func TestTrapNailedPliesAsSolidPost(t *testing.T) {
	axis := member.Axis{Length: 108, Ends: member.PinnedPinned}
	column := member.Column{Deep: axis, Thin: axis}
	post := func(by lumber.Fastening) *lumber.Adjusted {
		return built(t, "Hem-Fir", "No.2", "3-2x6", by, lumber.Use{})
	}
	solid := post(lumber.Unfastened)
	solid.Section.Plies = 0
	whole := member.NewCompression(4000, solid, lumber.SevenDays, column).Allowable
	for by, share := range map[lumber.Fastening]float64{lumber.Nailed: 0.6, lumber.Bolted: 0.75} {
		got := member.NewCompression(4000, post(by), lumber.SevenDays, column).Allowable
		calctest.Close(t, share, got/whole, 1e-12, 0, "NDS 2018 15.3.2.4", by)
	}
	loose := member.NewCompression(4000, post(lumber.Unfastened), lumber.SevenDays, column)
	assert.Zero(t, loose.Allowable, "108/1.5 = 72 is above 50")
}

// A beam bolted to the side of a 6x6 stands (5.5 + 3)/2 in. off its axis: the post is
// used many times more than under a centered load.
func TestTrapSideMountedBeamWithoutEccentricity(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "6x6", lumber.Use{})
	pinned := member.Axis{Length: 96, Ends: member.PinnedPinned}
	stay := member.Stay{Column: member.Column{Deep: pinned, Thin: pinned}}
	center := member.NewCombined(member.Actions{Force: 3000}, a, laid(t, a), lumber.SevenDays, stay)
	side := member.NewCombined(member.Actions{Force: 3000, EdgeOffset: (5.5 + 3) / 2}, a, laid(t, a), lumber.SevenDays, stay)
	assert.Less(t, center.Sum, 0.03)
	assert.Greater(t, side.Sum, 10*center.Sum)
}

// A post notched to a 1-1/2 in. tongue carries on the tongue, not on its full area.
func TestTrapNotchedPostAtFullArea(t *testing.T) {
	a := adjusted(t, "Douglas Fir-Larch", "No.2", "6x6", lumber.Use{})
	tongue := member.NewNetSection(3000, 1.5*5.5, a, lumber.SevenDays)
	calctest.Close(t, 5.5/1.5, tongue.Stress/(3000/30.25), 1e-12, 0)
	pulled := member.NewCombined(member.Actions{Force: -3000}, a, laid(t, a), lumber.TenMinutes, member.Stay{Net: 1.5 * 5.5})
	whole := member.NewCombined(member.Actions{Force: -3000}, a, laid(t, a), lumber.TenMinutes, member.Stay{})
	calctest.Close(t, 5.5/1.5, pulled.Ratio()/whole.Ratio(), 1e-12, 0, "NDS 2018 3.1.2")
}

// The load duration of the interaction is one, that of the combination: wind with its
// 1.6 does not lend it to another combination, and each is checked with its own.
func TestTrapDurationsMixedInTheInteraction(t *testing.T) {
	edge := adjusted(t, "Southern Pine", "No.1", "2x6", lumber.Use{})
	column := member.Column{Deep: member.Axis{Length: 108, Ends: member.PinnedPinned}, Thin: member.Axis{Held: true}}
	stay := member.Stay{Column: column, Bracing: member.Bracing{Held: true}}
	x := member.Actions{Force: 1400, Edgewise: 12_150}
	wind := member.NewCombined(x, edge, laid(t, edge), lumber.TenMinutes, stay)
	snow := member.NewCombined(x, edge, laid(t, edge), lumber.TwoMonths, stay)
	assert.Less(t, wind.Ratio(), 1.0)
	assert.Greater(t, snow.Ratio(), 1.0)
	assert.Equal(t, wind.Edge.Duration, wind.Compression.Duration)
	assert.Equal(t, wind.Flat.Duration, wind.Compression.Duration)
}
