package cover_test

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// valueIn returns the value of a symbol in a check of a member.
func valueIn(t testing.TB, m cover.Member, check, symbol string) float64 {
	t.Helper()
	for _, c := range m.Checks {
		if c.Name != check {
			continue
		}
		for _, l := range c.Check.Lines {
			if l.Symbol == symbol {
				return l.X
			}
		}
	}
	t.Fatalf("%s has no %s in %s", m.Mark, symbol, check)
	return 0
}

// strand is a product whose round values are made up.
func strand() cover.Product {
	return cover.Product{
		Name: new("strand lumber"), Source: new("evaluation report of the maker, table 1"), Bending: new(2600.0),
		Tension: new(1600.0), Shear: new(280.0), Bearing: new(700.0), Compression: new(2400.0),
		Elasticity: new(2.0e6), Stability: new(1.0e6), Gravity: new(0.5),
	}
}

// ofStrand is the simple cover with a beam of that product.
func ofStrand() cover.Input {
	in := simple()
	in.Products = []cover.Product{strand()}
	in.Beams.Species, in.Beams.Grade, in.Beams.Size = new("strand lumber"), new("given"), new("2-1-3/4x11-7/8")
	return in
}

// A beam of glued laminated timber is chosen among its own sizes, with C_V, and the
// report says which side is up.
func TestGluedBeam(t *testing.T) {
	in := simple()
	in.Beams.Species, in.Beams.Grade, in.Beams.Size = new("Glulam DF/DF"), new("24F-V4"), nil
	r := size(t, in)
	m := member(t, r, "BM1")
	assert.Equal(t, cover.OK, m.Verdict)
	assert.Contains(t, m.Size, "/", "an actual size such as 5-1/8x13-1/2")
	assert.Contains(t, strings.Join(m.Product, "\n"), "stamped TOP must be up")
	assert.Equal(t, 2400.0, valueIn(t, m, "bending", "Fb"))
	assert.LessOrEqual(t, valueIn(t, m, "bending", "C_V"), 1.0)
	assert.Equal(t, 650.0, valueIn(t, member(t, r, "P"), "beam seat on the post", "Fc_perp"))
	for _, a := range r.Assumed {
		assert.NotEqual(t, "beams.green", a.Path, "glued timber is dry when it is made")
	}
	balanced := in
	balanced.Beams.Grade = new("24F-V8")
	assert.NotContains(t, strings.Join(member(t, size(t, balanced), "BM1").Product, "\n"), "TOP")
}

// Trap: an unbalanced layup over an inner support has its top in tension: Fb is Fbx-.
func TestTrapLayupOverAnInnerSupport(t *testing.T) {
	in := simple()
	in.Beams.Species, in.Beams.Grade, in.Beams.Size = new("Glulam DF/DF"), new("24F-V4"), new("5-1/8x12")
	in.Posts.Count, in.Beams.Splices = new(3), new("none")
	m := member(t, size(t, in), "BM1")
	assert.Equal(t, 1850.0, valueIn(t, m, "bending", "Fb"), "NDS Supp. 2018 Table 5A, Fbx-")
	in.Beams.Grade = new("24F-V8")
	n := member(t, size(t, in), "BM1")
	assert.Equal(t, 2400.0, valueIn(t, n, "bending", "Fb"))
	assert.Less(t, float64(ratioOf(t, n, "bending")), float64(ratioOf(t, m, "bending")))
}

// Plies may stand in the size or beside it; the take-off buys them one by one.
func TestBeamOfPlies(t *testing.T) {
	in := simple()
	in.Beams.Size, in.Beams.Plies = new("2x12"), new(3)
	r := size(t, in)
	m := member(t, r, "BM1")
	assert.Equal(t, "3-2x12", m.Size)
	assert.Equal(t, "3 x 1.5 x 11.25 in", m.Dressed)
	assert.Contains(t, strings.Join(m.Product, "\n"), "joints of plies over posts only")
	named := simple()
	named.Beams.Size = new("3-2x12")
	assert.Equal(t, m.Ratio, member(t, size(t, named), "BM1").Ratio)
	assert.Equal(t, 1.0, valueIn(t, m, "bending", "C_r"), "a beam is no repetitive member")

	count := 0
	for _, p := range r.TakeOff.Pieces {
		if strings.HasPrefix(p.Item, "2x12 ") && strings.HasPrefix(p.Mark, "BM") {
			count += p.Count
		}
	}
	assert.Equal(t, 3*m.Count, count, "three sticks for each piece of beam")

	open := simple()
	open.Beams.Size, open.Beams.Plies = nil, new(3)
	assert.Regexp(t, `^3-2x`, member(t, size(t, open), "BM1").Size)
}

// Trap: plies that are not fastened together buckle sideways one by one under uplift.
func TestTrapLoosePliesUnderUplift(t *testing.T) {
	in := simple()
	in.Site.WindSpeed, in.Beams.Size = new(170.0), new("3-2x12")
	loose := member(t, size(t, in), "BM1")
	in.Beams.PlyFastening = new("nailed")
	nailed := member(t, size(t, in), "BM1")
	assert.Less(t, float64(ratioOf(t, nailed, "bending")), float64(ratioOf(t, loose, "bending")))
	assert.Contains(t, strings.Join(nailed.Product, "\n"), "NDS 2018 15.3.3")
	assert.Contains(t, strings.Join(loose.Product, "\n"), "each ply stands alone")
}

func ratioOf(t testing.TB, m cover.Member, check string) cover.Ratio {
	t.Helper()
	for _, c := range m.Checks {
		if c.Name == check {
			return c.Ratio
		}
	}
	t.Fatalf("%s has no check %s", m.Mark, check)
	return 0
}

// Trap: full-sawn and old wood is checked by the sides that were measured, with the
// values and the size factor of its nominal size.
func TestTrapMeasuredRafters(t *testing.T) {
	dressed := member(t, size(t, simple()), "R1")
	in := simple()
	in.Rafters.MeasuredBreadth, in.Rafters.MeasuredDepth = new(2.0), new(8.0)
	full := member(t, size(t, in), "R1")
	assert.Equal(t, "2 x 8 in", full.Dressed)
	assert.Equal(t, valueIn(t, dressed, "bending", "C_F"), valueIn(t, full, "bending", "C_F"))
	calctest.Near(t, 2.0*8*8/6, valueIn(t, full, "bending", "S"), 1e-9, "by hand")
	assert.Less(t, float64(ratioOf(t, full, "bending")), float64(ratioOf(t, dressed, "bending")))
	assert.Contains(t, strings.Join(full.Product, "\n"), "Measured sides")
}

// Values of an evaluation report are used as they stand, and the report names it.
func TestGivenProduct(t *testing.T) {
	r := size(t, ofStrand())
	m := member(t, r, "BM1")
	assert.Equal(t, 2600.0, valueIn(t, m, "bending", "Fb"))
	assert.Contains(t, strings.Join(m.Product, "\n"), "evaluation report of the maker, table 1")
	for _, c := range m.Checks {
		if c.Name == "bending" {
			assert.Equal(t, "given: evaluation report of the maker, table 1", lineOf(c, "Fb"))
		}
	}
	deep := ofStrand()
	deep.Products[0].DepthExponent, deep.Products[0].DepthFrom = new(0.125), new(12.0)
	deep.Beams.Size = new("2-1-3/4x14")
	calctest.Close(t, 0.980915, valueIn(t, member(t, size(t, deep), "BM1"), "bending", "C_V"), 1e-6, 0, "(12/14)^(1/8)")
}

func lineOf(c cover.MemberCheck, symbol string) string {
	for _, l := range c.Check.Lines {
		if l.Symbol == symbol {
			return l.Source
		}
	}
	return ""
}

// What cannot be built, or is not known, is refused with the field that says it.
func TestWoodThatIsRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(in *cover.Input)
		path   string
	}{
		{"wet without a factor", func(in *cover.Input) { in.Beams.Wet = new(true) }, "beams.species: "},
		{"hot without a factor", func(in *cover.Input) { in.Beams.Hot = new("to_125F") }, "beams.species: "},
		{"incised", func(in *cover.Input) { in.Beams.Incised = new(true) }, "beams.species: "},
		{"deep without a factor", func(in *cover.Input) { in.Beams.Size = new("1-3/4x14") }, "beams.species: "},
		{"another grade", func(in *cover.Input) { in.Beams.Grade = new("No.2") }, "beams.grade: "},
		{"no size", func(in *cover.Input) { in.Beams.Size = nil }, "beams.size: "},
		{"a pole that lies", func(in *cover.Input) { in.Beams.Size = new("8 in. round") }, "beams.size: "},
		{"a pole in the ground", func(in *cover.Input) {
			in.Posts.Species, in.Posts.Grade, in.Posts.Size = new("strand lumber"), new("given"), new("8 in. round")
			in.Foundation.Kind, in.Products[0].Flatwise, in.Products[0].Wet = new("embedded"), new(2000.0), new(0.7)
		}, "posts.size: "},
		{"a pole with its beam bolted on", func(in *cover.Input) {
			in.Posts.Species, in.Posts.Grade, in.Posts.Size = new("strand lumber"), new("given"), new("8 in. round")
			in.Beams.OnPost, in.Products[0].Flatwise = new("side_bolted"), new(2000.0)
		}, "posts.size: "},
		{"half a depth factor", func(in *cover.Input) { in.Products[0].DepthFrom = new(12.0) }, "products[0].depth_from_in"},
		{"no source", func(in *cover.Input) { in.Products[0].Source = nil }, "products[0].source"},
		{"no shear", func(in *cover.Input) { in.Products[0].Shear = nil }, "products[0].fv_psi"},
		{"Emin above E", func(in *cover.Input) { in.Products[0].Elasticity = new(0.9e6) }, "products[0].emin_psi"},
		{"the name of a species", func(in *cover.Input) { in.Products[0].Name = new("Hem-Fir") }, "products[0].name"},
		{"a width that is not made", func(in *cover.Input) {
			in.Beams.Species, in.Beams.Grade, in.Beams.Size = new("Glulam DF/DF"), new("24F-V4"), new("5-1/4x12")
		}, "beams.grade: "},
		{"a combination of other wood", func(in *cover.Input) {
			in.Beams.Species, in.Beams.Grade, in.Beams.Size = new("Glulam DF/DF"), new("24F-V3"), nil
		}, "beams.grade: "},
		{"plies said twice", func(in *cover.Input) { in.Posts.Size, in.Posts.Plies = new("3-2x6"), new(2) }, "posts.plies: "},
		{"plies of a board", func(in *cover.Input) { in.Posts.Size, in.Posts.Plies = new("1x6"), new(2) }, "posts.plies: "},
		{"one piece nailed", func(in *cover.Input) { in.Posts.PlyFastening = new("nailed") }, "posts.ply_fastening: "},
		{"half measured", func(in *cover.Input) { in.Rafters.MeasuredDepth = new(8.0) }, "rafters.measured_depth_in"},
		{"measured beside its size", func(in *cover.Input) {
			in.Rafters.MeasuredBreadth, in.Rafters.MeasuredDepth = new(2.0), new(9.5)
		}, "rafters.measured_depth_in"},
		{"measured plies", func(in *cover.Input) {
			in.Rafters.Size, in.Rafters.MeasuredBreadth, in.Rafters.MeasuredDepth = new("2-2x8"), new(2.0), new(8.0)
		}, "rafters.measured_depth_in"},
		{"posts without Fb laid flat", func(in *cover.Input) {
			in.Posts.Species, in.Posts.Grade, in.Posts.Size = new("strand lumber"), new("given"), new("3-1/2x5-1/2")
		}, "posts.species: "},
		{"knee braces of glued posts", func(in *cover.Input) {
			in.Posts.Species, in.Posts.Grade, in.Posts.Size = new("Glulam DF/DF"), new("24F-V4"), new("5-1/8x6")
			in.Lateral.Along = new("knee_braces")
		}, "posts.species: "},
		{"knee braces of machine graded posts", func(in *cover.Input) {
			in.Posts.Grade, in.Posts.Size = new("1650f-1.5E"), new("3-2x6")
			in.Lateral.Along = new("knee_braces")
		}, "posts.grade: "},
		{"a deck of the rafters' glued timber", func(in *cover.Input) {
			in.Rafters.Species, in.Rafters.Grade, in.Rafters.Size = new("Glulam DF/DF"), new("24F-V4"), new("3-1/8x6")
			in.Deck.Kind, in.Deck.Size = new("plank"), new("2x6")
		}, "deck.species"},
	} {
		in := ofStrand()
		require.NoError(t, in.Validate())
		c.change(&in)
		assert.ErrorContains(t, in.Validate(), c.path, c.name)
	}
}

// A product whose report gives the factors may be wet.
func TestGivenProductInWetService(t *testing.T) {
	in := ofStrand()
	in.Beams.Wet, in.Products[0].Wet = new(true), new(0.7)
	m := member(t, size(t, in), "BM1")
	assert.Equal(t, 0.7, valueIn(t, m, "bending", "C_M"))
}

// Every calculation of a report on other wood than dressed lumber is proved.
func TestProductsAreProved(t *testing.T) {
	glued := simple()
	glued.Beams.Species, glued.Beams.Grade, glued.Beams.Size = new("Glulam SP/SP"), new("24F-V3"), nil
	glued.Posts.Species, glued.Posts.Grade, glued.Posts.Size = new("Glulam DF/DF"), new("24F-V4"), new("5-1/8x6")
	plies := overhung()
	plies.Beams.Size, plies.Posts.Size, plies.Posts.PlyFastening = new("3-2x12"), new("3-2x6"), new("nailed")
	plies.Rafters.MeasuredBreadth, plies.Rafters.MeasuredDepth = new(1.625), new(7.5)
	for name, in := range map[string]cover.Input{"glued": glued, "plies": plies, "given": ofStrand()} {
		r := size(t, in)
		assert.Empty(t, faultsOf(r), name)
		text, err := json.Marshal(in)
		require.NoError(t, err)
		again, err := cover.Read(bytes.NewReader(text))
		require.NoError(t, err, name)
		assert.Equal(t, in, again, "an input reads as it was written")
	}
}

// Posts of glued wood have a bending strength: their height is known for C_V, and where
// the moment may turn to either side the weaker face counts.
func TestGluedPostsBend(t *testing.T) {
	in := overhung()
	in.Posts.Species, in.Posts.Grade, in.Posts.Size = new("Glulam DF/DF"), new("24F-V4"), new("5-1/8x6")
	r := size(t, in)
	for _, m := range r.Members {
		if strings.HasPrefix(m.Mark, "P") {
			assert.Less(t, float64(m.Ratio), 1.0, m.Mark)
			assert.Positive(t, float64(m.Ratio))
		}
	}
}

// Posts of plies stand by 15.3, with K_f across the plies; loose ones each for itself.
func TestPostsOfPlies(t *testing.T) {
	in := simple()
	in.Posts.Size, in.Posts.Plies, in.Posts.PlyFastening = new("2x6"), new(3), new("bolted")
	r := size(t, in)
	bolted := member(t, r, "P")
	assert.Equal(t, "3-2x6", bolted.Size)
	assert.Equal(t, 0.75, valueIn(t, bolted, "compression with buckling", "K_f"), "NDS 2018 15.3.2")
	assert.Contains(t, strings.Join(bolted.Product, "\n"), "each of the full height")
	in.Posts.PlyFastening = new("nailed")
	nailed := member(t, size(t, in), "P")
	in.Posts.PlyFastening = nil
	loose := size(t, in)
	const buckling = "compression with buckling"
	assert.Greater(t, float64(ratioOf(t, member(t, loose, "P"), buckling)), float64(ratioOf(t, nailed, buckling)))
	assert.Greater(t, float64(ratioOf(t, nailed, buckling)), float64(ratioOf(t, bolted, buckling)))
	assert.True(t, slices.ContainsFunc(loose.Assumed, func(a cover.Assumption) bool { return a.Path == "posts.ply_fastening" }))
	assert.Empty(t, faultsOf(r))
}

// Knee braces of posts of plies are single sticks.
func TestBracesOfPostsOfPlies(t *testing.T) {
	in := standing()
	in.Posts.Size, in.Posts.PlyFastening = new("4-2x8"), new("bolted")
	r := size(t, in)
	for _, m := range r.Members {
		if m.Name == "knee brace" {
			assert.NotContains(t, m.Size, "-2x", "one stick")
		}
	}
	assert.Empty(t, faultsOf(r))
}

// A pole stands as a post: circle, square of equal area for buckling, square inside the
// circle for the seat.
func TestPolesAsPosts(t *testing.T) {
	in := ofStrand()
	in.Products[0].Flatwise = new(2600.0)
	in.Posts.Species, in.Posts.Grade, in.Posts.Size = new("strand lumber"), new("given"), new("6 round")
	r := size(t, in)
	p := member(t, r, "P")
	assert.Equal(t, "6 in. round", p.Size)
	calctest.Close(t, 28.274334, valueIn(t, p, "compression with buckling", "A"), 1e-6, 0, "pi 6²/4")
	assert.Equal(t, 0.85, valueIn(t, p, "compression with buckling", "c"), "NDS 2018 3.7.1.5")
	calctest.Close(t, 6/math.Sqrt2, valueIn(t, p, "beam seat on the post", "l_b"), 1e-9, 0)
	assert.Empty(t, faultsOf(r))
}
