package calctest_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/calc/calctest"
)

// over returns lines a = 3, b = 4 and the formula with its value.
func over(formula string, x float64) []calc.Line {
	var s calc.Sheet
	s.Given("a", 3, "in", "test")
	s.Given("b", 4, "in", "test")
	s.Step("c", formula, x, "in", "test")
	return s.Lines()
}

func TestProveAcceptsArithmetic(t *testing.T) {
	cases := []struct {
		formula string
		want    float64
	}{
		{"a", 3}, {"7", 7}, {"1.5e3", 1500}, {"-a", -3}, {"-(a - b)", 1},
		{"a + b * 2", 11}, {"(a + b) * 2", 14}, {"b / a", 4.0 / 3}, {"5 / 2", 2.5}, {"a - b - 1", -2},
		{"-pow(a, 2)", -9}, {"pow(a, b)", 81}, {"pow(b, 1 / 2)", 2}, {"sqrt(a*a + b*b)", 5},
		{"min(a, b)", 3}, {"max(a, b)", 4}, {"min(9, b, a, 5)", 3}, {"max(1, a, b, 2)", 4}, {"abs(a - b)", 1},
		{"ceil(a / b)", 1}, {"floor(a / b)", 0}, {"exp(a - 3)", 1}, {"pi", math.Pi},
		{"sin(pi / 6)", 0.5}, {"cos(pi / 3)", 0.5}, {"tan(pi / 4)", 1},
		{"sind(30)", 0.5}, {"cosd(60)", 0.5}, {"tand(45)", 1}, {"1 / (a - 3)", math.Inf(1)},
	}
	for _, c := range cases {
		t.Run(c.formula, func(t *testing.T) { assert.NoError(t, calctest.Prove(over(c.formula, c.want))) })
	}
}

func TestProveRejects(t *testing.T) {
	cases := []struct {
		name    string
		formula string
		x       float64
		want    string
	}{
		{"a wrong value", "a + b", 7.001, "line 3, c = a + b: shows 7.001, evaluates to 7"},
		{"a value off by more than the tolerance", "a + b", 7 * (1 + 2e-9), "evaluates to 7"},
		{"a wrong sign", "a - b", 1, "evaluates to -1"},
		{"zero shown for something", "a / 1e9", 0, "shows 0"},
		{"something shown for zero", "a - 3", 1e-9, "evaluates to 0"},
		{"not a number shown", "a + b", math.NaN(), "shows NaN"},
		{"not a number found", "sqrt(a - b)", math.NaN(), "evaluates to NaN"},
		{"infinite shown", "a + b", math.Inf(1), "shows +Inf"},
		{"infinite of the other sign", "1 / (3 - a)", math.Inf(-1), "shows -Inf"},
		{"an unknown symbol", "a + d", 7, "no line above defines d"},
		{"its own symbol", "c", 7, "no line above defines c"},
		{"an unknown symbol left", "d * 0", 0, "no line above defines d"},
		{"an unknown symbol in a call", "sqrt(d)", 0, "no line above defines d"},
		{"an unknown symbol under a sign", "-d", 0, "no line above defines d"},
		{"an unknown function", "cbrt(a)", 1.44, "no function cbrt of 1 arguments"},
		{"a function with too few", "pow(a)", 3, "no function pow of 1 arguments"},
		{"a function with too many", "sqrt(a, b)", 2, "no function sqrt of 2 arguments"},
		{"a minimum of one", "min(a)", 3, "no function min of 1 arguments"},
		{"a list as arguments", "min(a, b...)", 3, "min(...) is not arithmetic"},
		{"a function that is selected", "math.Sqrt(b)", 2, "is not a function name"},
		{"a selection", "a.b", 3, "*ast.SelectorExpr is not arithmetic"},
		{"an index", "a[0]", 3, "*ast.IndexExpr is not arithmetic"},
		{"a comparison", "a == b", 0, "operator == is not arithmetic"},
		{"a remainder", "a % b", 3, "operator % is not arithmetic"},
		{"the caret of another notation", "a ^ 2", 9, "operator ^ is not arithmetic"},
		{"a complement", "^a", -4, "operator ^ is not arithmetic"},
		{"a text", `"a"`, 3, "invalid syntax"},
		{"an imaginary number", "2i", 2, "invalid syntax"},
		{"nothing to add", "a +", 3, "expected operand"},
		{"two expressions", "a b", 3, "c = a b"},
		{"an open parenthesis", "(a + b", 7, "expected ')'"},
		{"an equation", "c = a + b", 7, "c = c = a + b"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { assert.ErrorContains(t, calctest.Prove(over(c.formula, c.x)), c.want) })
	}
}

func TestProveRejectsALine(t *testing.T) {
	cases := []struct {
		name string
		line calc.Line
		want string
	}{
		{"no symbol", calc.Line{X: 1, Source: "test"}, `the symbol "" is not`},
		{"a symbol that is no name", calc.Line{Symbol: "Fb'", X: 1, Source: "test"}, `the symbol "Fb'" is not`},
		{"a Greek symbol", calc.Line{Symbol: "λ", X: 1, Source: "test"}, `the symbol "λ" is not`},
		{"a word of the language", calc.Line{Symbol: "range", X: 1, Source: "test"}, `the symbol "range" is not`},
		{"no source", calc.Line{Symbol: "a", X: 1}, "has neither formula nor source"},
		{"given not a number", calc.Line{Symbol: "a", X: math.NaN(), Source: "test"}, "NaN is not a finite number"},
		{"given infinite", calc.Line{Symbol: "a", X: math.Inf(1), Source: "test"}, "+Inf is not a finite number"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			assert.ErrorContains(t, calctest.Prove([]calc.Line{c.line}), "line 1, ")
			assert.ErrorContains(t, calctest.Prove([]calc.Line{c.line}), c.want)
		})
	}
}

// A formula may use what stands above it, not what stands below.
func TestProveReadsDownward(t *testing.T) {
	lines := over("a + b", 7)
	assert.NoError(t, calctest.Prove(lines))
	lines[0], lines[2] = lines[2], lines[0]
	assert.ErrorContains(t, calctest.Prove(lines), "no line above defines a")
	assert.NoError(t, calctest.Prove(nil))
}

// A symbol that is written twice has its latest value.
func TestProveTakesTheLatestValue(t *testing.T) {
	var s calc.Sheet
	s.Given("a", 3, "in", "test")
	s.Given("a", 5, "in", "test")
	s.Step("b", "2 * a", 10, "in", "test")
	assert.NoError(t, calctest.Prove(s.Lines()))
}

// Whatever the numbers, the true value holds and one a millionth away does not.
func TestProveTellsTrueFromNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0.001, 1e6).Draw(t, "a")
		b := rapid.Float64Range(0.001, 1e6).Draw(t, "b")
		lines := func(x float64) []calc.Line {
			var s calc.Sheet
			s.Given("a", a, "in", "test")
			s.Given("b", b, "in", "test")
			s.Step("c", "sqrt(a) * b / (a + b)", x, "in", "test")
			return s.Lines()
		}
		x := math.Sqrt(a) * b / (a + b)
		if err := calctest.Prove(lines(x)); err != nil {
			t.Fatal(err)
		}
		if calctest.Prove(lines(x*(1+1e-6))) == nil {
			t.Fatalf("%v passed for %v", x*(1+1e-6), x)
		}
	})
}

// FuzzProve feeds any text as a formula: it is refused or evaluated, never a
// panic, and one that passes with a value fails with the next.
func FuzzProve(f *testing.F) {
	for _, seed := range []string{
		"a + b", "sqrt(a*a + b*b)", "min(a, b...)", "-pow(a, 2)", "a.b(c)", "func() {}", "a[", "0x1p-2", "'a'",
		"((((a))))", "a /* note */ + b", "[]int{a}", "a\n+b", "\x00", strings.Repeat("(", 2000), strings.Repeat("-", 2000) + "a",
	} {
		f.Add(seed, 7.0)
	}
	f.Fuzz(func(t *testing.T, formula string, x float64) {
		if formula == "" || calctest.Prove(over(formula, x)) != nil || math.IsInf(x, 0) {
			return
		}
		if far := x + 1e-3*math.Max(1, math.Abs(x)); calctest.Prove(over(formula, far)) == nil {
			t.Fatalf("%q holds for %v and for %v", formula, x, far)
		}
	})
}

// The 3-4-5 triangle.
func ExampleProve() {
	var s calc.Sheet
	s.Given("a", 3, "ft", "plan")
	s.Given("b", 4, "ft", "plan")
	s.Step("c", "sqrt(a*a + b*b)", 5, "ft", "Pythagoras")
	fmt.Println(calctest.Prove(s.Lines()))
	s.Step("area", "a * b / 2", 12, "ft²", "plane geometry")
	fmt.Println(calctest.Prove(s.Lines()))
	// Output:
	// <nil>
	// line 4, area = a * b / 2: shows 12, evaluates to 6
}
