package web

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"patiocover/calc"
)

func TestSymbol(t *testing.T) {
	for name, want := range map[string]string{
		"C_D":         "<i>C</i><sub>D</sub>",
		"Fb_adj":      "<i>F</i><sub>b</sub>′",
		"Fb_star":     "<i>F</i><sub>b</sub>*",
		"Fc_perp":     "<i>F</i><sub>c⊥</sub>",
		"Fc_perp_adj": "<i>F</i><sub>c⊥</sub>′",
		"fb":          "<i>f</i><sub>b</sub>",
		"f_b":         "<i>f</i><sub>b</sub>",
		"F_bE":        "<i>F</i><sub>bE</sub>",
		"Emin_adj":    "<i>E</i><sub>min</sub>′",
		"C_M_perp":    "<i>C</i><sub>M⊥</sub>",
		"C_t_min":     "<i>C</i><sub>t,min</sub>",
		"delta_LT":    "<i>δ</i><sub>LT</sub>",
		"theta":       "<i>θ</i>",
		"M":           "<i>M</i>",
		"d_rafter":    "<i>d</i><sub>rafter</sub>",
		"allowed":     "<i>allowed</i>",
		"<b>_<i>":     "<i>&lt;b&gt;</i><sub>&lt;i&gt;</sub>",
	} {
		assert.Equal(t, want, string(appendSymbol(nil, name)), name)
	}
}

func TestFormula(t *testing.T) {
	for text, want := range map[string]string{
		"M / S":                      "<i>M</i> / <i>S</i>",
		"b * pow(d, 2) / 6":          "<i>b</i> × <i>d</i><sup>2</sup> / 6",
		"pow(a + b, n)":              "(<i>a</i> + <i>b</i>)<sup><i>n</i></sup>",
		"a - sqrt(pow(a, 2) - b)":    "<i>a</i> − √(<i>a</i><sup>2</sup> − <i>b</i>)",
		"-a * (b + 1)":               "−<i>a</i> × (<i>b</i> + 1)",
		"max(0, R) / A_b":            "max(0, <i>R</i>) / <i>A</i><sub>b</sub>",
		"d_rafter / cosd(theta)":     "<i>d</i><sub>rafter</sub> / cos(<i>θ</i>)",
		"1.5e-3 * x":                 "1.5·10<sup>−3</sup> × <i>x</i>",
		"not a formula <script> at)": "not a formula &lt;script&gt; at)",
	} {
		assert.Equal(t, want, string(newFormula(text).append(nil, appendSymbol)), text)
	}
}

// The bending check of a 2x6 (NDS 2018 eq. 3.3-2), as a reader sees it.
func TestSheetShowsTheNumbersPutIn(t *testing.T) {
	var s calc.Sheet
	s.Given("M", 11348.094, "lb-in", "bending moment of the combination")
	s.Given("w", -2, "psf", "wind")
	s.Given("S", 7.5625, "in³", "NDS 2018 3.3.2")
	s.Step("f_b", "M / S", 11348.094/7.5625, "psi", "NDS 2018 eq. 3.3-2")
	s.Step("v", "w * pi", -2*math.Pi, "psf", "geometry")
	s.Quoted("Fb_adj", 1681.875, "psi", "NDS Supp. 2018 Table 4A", calc.Recalled)
	page := string(checkOf(s.Check("bending", "f_b", "Fb_adj")))
	for _, want := range []string{
		"<i>M</i> / <i>S</i></td><td>11,348 / 7.56</td><td class=\"num\">1,501</td><td>psi</td>",
		"<td>(−2) × <i>π</i></td>", // a negative number stands in brackets, pi as itself
		"NDS Supp. 2018 Table 4A <span class=\"memory\">" + fromMemory + "</span>",
		"<i>f</i><sub>b</sub> = 1,501 psi ≤ <i>F</i><sub>b</sub>′ = 1,682 psi",
	} {
		assert.Contains(t, page, want)
	}
	assert.Equal(t, 1, strings.Count(page, fromMemory), "only the recalled line is marked")
}

func TestCheckOverItsCapacity(t *testing.T) {
	var s calc.Sheet
	s.Given("P", 750.2, "lb", "statics")
	s.Given("P_lim", 750, "lb", "slab rule")
	page := string(checkOf(s.Check("slab", "P", "P_lim")))
	assert.Contains(t, page, "<i>P</i> = 750.2 lb &gt; <i>P</i><sub>lim</sub> = 750 lb")
	assert.Empty(t, checkOf(calc.Check{}), "nothing to show where nothing was calculated")
}

// Every word of a calculation passes the one escaping function.
func TestTrapMarkupInACalculation(t *testing.T) {
	const evil = `<script>alert("x")</script>`
	lines := []calc.Line{{Symbol: evil, Formula: evil, X: 1, Unit: evil, Source: evil}}
	page := string(sheetOf(lines))
	assert.NotContains(t, page, "<script")
	assert.GreaterOrEqual(t, strings.Count(page, "&lt;script&gt;"), 4)
}
