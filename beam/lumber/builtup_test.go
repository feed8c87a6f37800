package lumber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam/lumber"
	"patiocover/calc/calctest"
)

func TestNamesOfSizes(t *testing.T) {
	for _, c := range []struct {
		name, want     string // canonical name; empty: refused
		breadth, depth float64
		plies          int
		class          lumber.Class
	}{
		{"2x8", "2x8", 1.5, 7.25, 0, lumber.Dimension},
		{"2-2x10", "2-2x10", 3, 9.25, 2, lumber.Dimension},
		{"3-2x10", "3-2x10", 4.5, 9.25, 3, lumber.Dimension},
		{"5-2x6", "5-2x6", 7.5, 5.5, 5, lumber.Dimension},
		{"2-3x12", "2-3x12", 5, 11.25, 2, lumber.Dimension},
		{"5-1/8x12", "5-1/8x12", 5.125, 12, 0, lumber.Manufactured},
		{"5.125x12", "5-1/8x12", 5.125, 12, 0, lumber.Manufactured},
		{"6-3/4x13-1/2", "6-3/4x13-1/2", 6.75, 13.5, 0, lumber.Manufactured},
		{"1-3/4x9-1/2", "1-3/4x9-1/2", 1.75, 9.5, 0, lumber.Manufactured},
		{"2-1-3/4x9-1/2", "2-1-3/4x9-1/2", 3.5, 9.5, 2, lumber.Manufactured},
		{"8 in. round", "8 in. round", 8, 8, 0, lumber.Pole},
		{"7-1/2 round", "7-1/2 in. round", 7.5, 7.5, 0, lumber.Pole},
		{"6-2x6", "", 0, 0, 0, 0},      // six plies
		{"1-2x6", "", 0, 0, 0, 0},      // one ply
		{"2-1x6", "", 0, 0, 0, 0},      // boards do not build up
		{"2-2x7", "", 0, 0, 0, 0},      // no such lumber
		{"5x12", "", 0, 0, 0, 0},       // two whole numbers are nominal
		{"12x5-1/8", "", 0, 0, 0, 0},   // large side first
		{"5-9/8x12", "", 0, 0, 0, 0},   // no fraction
		{"2-8 round", "", 0, 0, 0, 0},  // poles do not build up
		{"2 round", "", 0, 0, 0, 0},    // too slim
		{"2-2-2x6", "", 0, 0, 0, 0},    // plies of plies
		{"1/2x9-1/2", "", 0, 0, 0, 0},  // too thin
		{"5-1/8x120", "", 0, 0, 0, 0},  // too deep to be read
		{"5-1/8 x 12", "", 0, 0, 0, 0}, // spaces
	} {
		s, err := lumber.SectionNamed(c.name)
		if c.want == "" {
			assert.Error(t, err, c.name)
			continue
		}
		require.NoError(t, err, c.name)
		assert.Equal(t, c.want, s.Name)
		assert.Equal(t, c.breadth, s.Breadth, c.name)
		assert.Equal(t, c.depth, s.Depth, c.name)
		assert.Equal(t, c.plies, s.Plies, c.name)
		assert.Equal(t, c.class, s.Class, c.name)
		again, err := lumber.SectionNamed(s.Name)
		require.NoError(t, err, s.Name)
		assert.Equal(t, s, again, "a name reads as itself")
	}
}

// Plies on edge carry together; laid flat, or sideways, each for itself.
func TestSectionOfPlies(t *testing.T) {
	one, three := section(t, "2x10"), section(t, "3-2x10")
	calctest.Close(t, 3*one.Area(), three.Area(), 1e-12, 0)
	calctest.Close(t, 3*one.Modulus(), three.Modulus(), 1e-12, 0)
	calctest.Close(t, 3*one.Inertia(), three.Inertia(), 1e-12, 0)
	calctest.Close(t, 3*one.ModulusFlat(), three.ModulusFlat(), 1e-12, 0, "the plies slip on each other")
	calctest.Close(t, 3*one.InertiaFlat(), three.InertiaFlat(), 1e-12, 0, "the plies slip on each other")
	assert.Equal(t, 1.5, three.Ply())
	assert.Equal(t, 1.5, three.Lateral(), "not fastened together")
	assert.Equal(t, 4.5, three.Fastened(lumber.Nailed).Lateral())
	assert.Equal(t, one, one.Fastened(lumber.Nailed), "nothing to fasten")

	v, err := lumber.Find("Hem-Fir", "No.2", three)
	require.NoError(t, err)
	a := lumber.Adjust(v, three, lumber.Use{})
	assert.Equal(t, 1.1, a.Bending.Size, "C_F by the size of one ply, NDS Supp. 2018 Table 4A")
	single := a.OnePly()
	assert.Equal(t, "2x10", single.Section.Name)
	assert.Equal(t, 1.5, single.Section.Breadth)
	assert.Zero(t, single.Section.Plies)
}

// A beam of three plies is not a repetitive member unless the user says so, and two
// plies are none at all: 4.3.9 asks for three members.
func TestTrapRepetitiveFactorOfPlies(t *testing.T) {
	assert.False(t, lumber.Repetitive(2, 0, true), "two plies in contact")
	three := section(t, "3-2x10")
	v, err := lumber.Find("Hem-Fir", "No.2", three)
	require.NoError(t, err)
	assert.Equal(t, 1.0, lumber.Adjust(v, three, lumber.Use{}).Bending.Repetitive, "default off")
}

// Nailed plies reach 0.6 of a solid post across the plies, bolted ones 0.75, and loose
// ones nothing together (NDS 2018 15.3.2).
func TestTrapNailedPliesAsSolid(t *testing.T) {
	assert.Equal(t, 0.6, lumber.Nailed.Share())
	assert.Equal(t, 0.75, lumber.Bolted.Share())
	assert.Zero(t, lumber.Unfastened.Share())
	assert.Equal(t, []string{"unfastened", "nailed", "bolted", "Fastening(9)"}, []string{
		lumber.Unfastened.String(), lumber.Nailed.String(), lumber.Bolted.String(), lumber.Fastening(9).String(),
	})
}

// The places of 0.148 in. nails in three 2x6, by NDS 2018 15.3.3.1: end 15 D to 18 D,
// along the row 20 D to 6 t, rows 10 D to 20 D, edge 5 D to 20 D, two rows above 3 t.
func TestFastenersOfPlies(t *testing.T) {
	s := section(t, "3-2x6").Fastened(lumber.Nailed)
	p := s.Fasteners(0.148)
	assert.True(t, p.Fits)
	calctest.Close(t, 2.22, p.EndLeast, 1e-9, 0)
	calctest.Close(t, 2.664, p.EndMost, 1e-9, 0)
	calctest.Close(t, 2.96, p.AlongLeast, 1e-9, 0)
	calctest.Close(t, 9, p.AlongMost, 1e-9, 0)
	calctest.Close(t, 1.48, p.BetweenLow, 1e-9, 0)
	calctest.Close(t, 2.96, p.BetweenHigh, 1e-9, 0)
	calctest.Close(t, 0.74, p.EdgeLeast, 1e-9, 0)
	calctest.Close(t, 2.96, p.EdgeMost, 1e-9, 0)
	assert.Equal(t, 2, p.Rows, "5-1/2 in. is deeper than 3 times 1-1/2")
	calctest.Close(t, 4.125, p.Length, 1e-9, 0, "two plies and 3/4 of the third")
	assert.Equal(t, 1, section(t, "3-2x4").Fastened(lumber.Nailed).Fasteners(0.148).Rows)
	assert.False(t, section(t, "3-2x6").Fasteners(0.148).Fits, "not fastened")
	assert.False(t, section(t, "6x6").Fastened(lumber.Nailed).Fasteners(0.148).Fits, "one piece")
	assert.False(t, s.Fasteners(0.6).Fits, "20 D is above 6 t")
	bolted := section(t, "3-2x8").Fastened(lumber.Bolted).Fasteners(0.5)
	assert.True(t, bolted.Fits)
	assert.Zero(t, bolted.Length)
}

// A pole has the area, modulus and inertia of a circle, and buckles like the square of
// equal area (NDS 2018 3.7.3). The tables have no values for it.
func TestRoundPoles(t *testing.T) {
	s := section(t, "8 in. round")
	calctest.Close(t, 50.265482, s.Area(), 1e-6, 0, "pi 8²/4")
	calctest.Close(t, 50.265482, s.Modulus(), 1e-6, 0, "pi 8³/32")
	calctest.Close(t, 201.061930, s.Inertia(), 1e-6, 0, "pi 8⁴/64")
	assert.Equal(t, s.Modulus(), s.ModulusFlat())
	assert.Equal(t, s.Inertia(), s.InertiaFlat())
	side := s.BucklingSide(s.Depth)
	calctest.Close(t, s.Area(), side*side, 1e-12, 0)
	calctest.Close(t, 0.886*8, side, 1e-3, 0, "0.886 of the diameter")
	assert.Equal(t, 7.25, section(t, "2x8").BucklingSide(7.25))
	_, err := lumber.Find("Douglas Fir-Larch", "No.2", s)
	assert.Error(t, err)
}

// Rough and old pieces take their stresses from the measured sides and their values
// from the nominal size: a 2x6 of 1-5/8 by 5-1/2 in. keeps C_F 1.3 and has more
// modulus than a dressed one; a worn piece has less, and the nominal size is no size.
func TestTrapMeasuredSides(t *testing.T) {
	old, err := lumber.Measured(2, 6, 1.625, 5.5)
	require.NoError(t, err)
	dressed := section(t, "2x6")
	assert.Greater(t, old.Modulus(), dressed.Modulus())
	worn, err := lumber.Measured(2, 6, 1.375, 5.25)
	require.NoError(t, err)
	assert.Less(t, worn.Modulus(), dressed.Modulus())
	for _, s := range []lumber.Section{old, worn} {
		v, err := lumber.Find("Douglas Fir-Larch", "No.2", s)
		require.NoError(t, err)
		a := lumber.Adjust(v, s, lumber.Use{})
		assert.Equal(t, 1.3, a.Bending.Size, "NDS Supp. 2018 Table 4A by nominal width")
		assert.Less(t, s.Modulus(), 2*6*6/6.0, "nominal")
	}
}

// The larger side of plies may be their breadth; a flat seat on a pole is the square
// inside the circle.
func TestSidesOfSections(t *testing.T) {
	assert.Equal(t, 7.5, section(t, "5-2x4").Widest())
	assert.Equal(t, 7.25, section(t, "2x8").Widest())
	s := section(t, "8 in. round")
	calctest.Close(t, 32, s.Contact(8)*s.Contact(8), 1e-9, 0, "half of the square of the diameter")
	assert.Equal(t, 5.5, section(t, "6x6").Contact(5.5))
}
