package cover_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// kneeCheck is the joint of the braces and its check of a name.
func kneeCheck(t testing.TB, r cover.Report, name string) (cover.Link, cover.MemberCheck) {
	t.Helper()
	l := linkOf(t, r, "K1")
	for _, c := range l.Connector.Checks {
		if c.Name == name {
			return l, c
		}
	}
	require.Fail(t, "no check", name)
	return l, cover.MemberCheck{}
}

// The joint of the braces is described whole, and its verdict is that of its checks: OK in
// little wind, over in much.
func TestKneeJointFollowsFromItsChecks(t *testing.T) {
	in := demo(t, "garden")
	r := size(t, in)
	l := linkOf(t, r, "K1")
	assert.Equal(t, cover.OK, l.Verdict, l.Reason)
	assert.Equal(t, cover.ProposedFasteners, l.Connector.Basis)
	for _, name := range []string{
		"bolts in the brace", "bolts in the post", "bolts in the beam", "bolts in the rafters", "row of bolts torn out of the brace",
		"steel plates", "beam beside the bolts", "rafters beside the bolts",
	} {
		_, c := kneeCheck(t, r, name)
		assert.NoError(t, calctest.Prove(c.Check.Lines), name)
		assert.Greater(t, float64(c.Ratio), 0.0, name)
		assert.LessOrEqual(t, c.Ratio, l.Connector.Ratio, name)
	}
	assert.NotEmpty(t, l.Connector.Parts)
	in.Posts.Holes = new(0.3)
	none := linkOf(t, size(t, in), "K1")
	assert.Equal(t, cover.Over, none.Verdict, "no bolt is so thin")
	assert.Contains(t, none.Reason, "no bolt fits")
	windy := demo(t, "garden")
	windy.Site.WindSpeed, windy.Site.Exposure = new(170.0), new("D")
	assert.Equal(t, cover.Over, linkOf(t, size(t, windy), "K1").Verdict)
}

// Trap 28 and 13: the force of one brace put on the bolts of a post that has two. Their
// upright parts cancel, the level parts add: 2 F cos(phi) across the grain of the post. All
// other pieces take F, and bolts stand at the middle of the depth, the loaded edge on either
// side.
func TestTrapTwoBracesAtOnePost(t *testing.T) {
	in := demo(t, "garden")
	in.Lateral.Out, in.Lateral.BraceAngle = new("house_diaphragm"), new(40.0)
	in.Cover.Attachment = new("ledger")
	in.Beams.Lines = []float64{12}
	r := size(t, in)
	force := value(t, check(t, r, "K", "tension at the bolts"), "T")
	_, brace := kneeCheck(t, r, "bolts in the brace")
	_, post := kneeCheck(t, r, "bolts in the post")
	_, beam := kneeCheck(t, r, "bolts in the beam")
	assert.Equal(t, force, value(t, brace, "V"))
	assert.Equal(t, force, value(t, beam, "V"))
	calctest.Close(t, 2*force*math.Cos(40*math.Pi/180), value(t, post, "V"), exact, 0, "three posts: the middle one has two")
	assert.Equal(t, 90.0, value(t, post, "theta_m"), "what remains counts as across the grain")
	assert.Equal(t, 40.0, value(t, beam, "theta_m"))
}

// Trap: splitting of the beam at the bolts of a brace (NDS 2018 3.4.3.3). Half of the depth
// counts, less so within 5 d of the end of a piece, and the shear is that of the loads at
// the brace with that of the brace itself.
func TestTrapSplittingAtTheKnee(t *testing.T) {
	r := size(t, demo(t, "garden"))
	_, c := kneeCheck(t, r, "beam beside the bolts")
	d := value(t, c, "d")
	assert.Equal(t, d/2, value(t, c, "d_e"))
	b, fv := value(t, c, "b"), value(t, c, "Fv_adj")
	assert.GreaterOrEqual(t, value(t, c, "l_end"), 24.0, "the brace meets the beam 2 ft from its post")
	want := 2.0 / 3 * fv * b * d / 2
	if value(t, c, "l_end") < 5*d {
		want /= 4
	}
	calctest.Close(t, want, value(t, c, "V_r"), exact, 0)
	calctest.Close(t, value(t, c, "V_g")+value(t, c, "V_b"), value(t, c, "V"), exact, 0)
	whole := check(t, r, "BM2", "shear with the knee braces")
	assert.LessOrEqual(t, value(t, c, "V_g"), value(t, whole, "V_g")*(1+1e-9), "at the brace no more than the largest of the bay")
}

// A braced post by strength design, by hand: 1.2D + 1.0W + 0.5Lr with a time effect factor
// of 1.0 (NDS 2018 Table N3), the push with the factor 1.0 of the same combination, and
// 0.9D + 1.0W in uplift (ASCE 7-16 2.3.1 (4) and (5)).
func TestBracedPostByStrengthDesign(t *testing.T) {
	in := demo(t, "garden")
	in.Site.Method = new("LRFD")
	r := size(t, in)
	pressed := check(t, r, "P", "compression with bending")
	require.Contains(t, pressed.Combination, "1.2D + 1.0W + 0.5Lr")
	v := func(symbol string) float64 { return value(t, pressed, symbol) }
	axial := 1.2*v("P_0_D") + 0.5*v("P_0_L") + 1.0*v("P_0_W")
	calctest.Close(t, axial+1.0*max(v("N_fW"), v("N_tW")), v("P"), exact, 0)
	calctest.Close(t, 1.0*v("V_W")*(v("H")-24), v("M_p"), exact, 0, "drop 24 in")
	assert.Equal(t, 1.0, v("lambda"))
	calctest.Close(t, 2.40*0.90*1.0*v("Fc"), v("Fc_star"), exact, 0, "K_F 2.40, phi 0.90: NDS 2018 Tables N1, N2")
	calctest.Close(t, 2.54*0.85*1.0*v("Fb"), v("Fb_star"), exact, 0, "K_F 2.54, phi 0.85")
	pulled := check(t, r, "P", "tension with bending")
	assert.Contains(t, pulled.Combination, "0.9D + 1.0W")
	assert.Equal(t, 0.9, value(t, pulled, "f_D"))
	assert.Equal(t, 1.0, value(t, pulled, "f_W"))
	for _, name := range []string{"compression with buckling", "tension at the bolts"} {
		knee := check(t, r, "K", name)
		assert.Equal(t, 1.0, value(t, knee, "f_W"), name)
		assert.Equal(t, 1.0, value(t, knee, "lambda"), name)
	}
}

// Trap: a force of allowable stress design compared with a strength. The shear that a push
// brings to a post is 1.0W by strength design and 0.6W by the other method.
func TestTrapPostShearAtTheLevelOfTheMethod(t *testing.T) {
	for _, system := range []string{"knee_braces", "embedded_posts"} {
		in := braced()
		in.Lateral = cover.Lateral{Along: &system, Out: &system}
		if system == "embedded_posts" {
			in.Foundation.Kind = new("embedded")
		}
		for method, factor := range map[string]float64{"ASD": 0.6, "LRFD": 1} {
			in.Site.Method, in.Posts.Size = &method, new("8x8")
			c := check(t, size(t, in), "P", "shear under the push")
			calctest.Close(t, factor*value(t, c, "V_W"), value(t, c, "V"), exact, 0, method, system)
			assert.Equal(t, factor, value(t, c, "f_W"), method)
			assert.NoError(t, calctest.Prove(c.Check.Lines))
		}
	}
}

// The notes say how it is built: where the bolts stand, and that those of two directions
// pass each other.
func TestKneeJointNotes(t *testing.T) {
	l := linkOf(t, size(t, demo(t, "garden")), "K1")
	notes := strings.Join(l.Connector.Notes, "\n")
	for _, words := range []string{"at the middle of the depth", "pass each other", "one pair of plates takes both", "cut square"} {
		assert.Contains(t, notes, words)
	}
}
