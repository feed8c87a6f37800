package calctest

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"strings"
	"unicode"

	"patiocover/calc"
)

// tolerance is the relative difference that Prove allows between a line and its
// formula: the formula is the same arithmetic in perhaps another order.
const tolerance = 1e-9

// Prove evaluates every formula with the lines above it and compares the result
// with the value shown. It returns an error that names the first line that does
// not hold: a symbol that a formula could not use, a formula that does not parse
// or calls on a symbol that no line above defines, a value that differs, a given
// value that is not a finite number, or a given line without a source.
func Prove(lines []calc.Line) error {
	known := map[string]float64{"pi": math.Pi}
	for i, l := range lines {
		if err := proveLine(l, known); err != nil {
			return fmt.Errorf("line %d, %s = %s: %w", i+1, l.Symbol, l.Formula, err)
		}
		known[l.Symbol] = l.X
	}
	return nil
}

func proveLine(l calc.Line, known map[string]float64) error {
	if !isSymbol(l.Symbol) {
		return fmt.Errorf("the symbol %q is not of ASCII letters, digits and underscores", l.Symbol)
	}
	if l.Formula == "" {
		return proveGiven(l)
	}
	got, err := evaluate(l.Formula, known)
	if err != nil {
		return err
	}
	if !same(got, l.X) {
		return fmt.Errorf("shows %v, evaluates to %v", l.X, got)
	}
	return nil
}

func proveGiven(l calc.Line) error {
	if l.Source == "" {
		return errors.New("has neither formula nor source")
	}
	if math.IsNaN(l.X) || math.IsInf(l.X, 0) {
		return fmt.Errorf("the given value %v is not a finite number", l.X)
	}
	return nil
}

// isSymbol reports whether a formula could use s.
func isSymbol(s string) bool {
	return token.IsIdentifier(s) && !strings.ContainsFunc(s, func(r rune) bool { return r > unicode.MaxASCII })
}

func same(a, b float64) bool {
	if math.IsInf(a, 0) || math.IsInf(b, 0) {
		return a == b
	}
	return math.Abs(a-b) <= tolerance*math.Max(1e-6, math.Max(math.Abs(a), math.Abs(b)))
}

func evaluate(formula string, known map[string]float64) (float64, error) {
	tree, err := parser.ParseExpr(formula)
	if err != nil {
		return 0, err
	}
	return value(tree, known)
}

func value(e ast.Expr, known map[string]float64) (float64, error) {
	switch e := e.(type) {
	case *ast.BasicLit:
		return strconv.ParseFloat(e.Value, 64)
	case *ast.Ident:
		x, ok := known[e.Name]
		if !ok {
			return 0, fmt.Errorf("no line above defines %s", e.Name)
		}
		return x, nil
	case *ast.ParenExpr:
		return value(e.X, known)
	case *ast.UnaryExpr:
		x, err := value(e.X, known)
		if e.Op != token.SUB {
			return 0, fmt.Errorf("operator %s is not arithmetic", e.Op)
		}
		return -x, err
	case *ast.BinaryExpr:
		return binary(e, known)
	case *ast.CallExpr:
		return call(e, known)
	}
	return 0, fmt.Errorf("%T is not arithmetic", e)
}

func binary(e *ast.BinaryExpr, known map[string]float64) (float64, error) {
	x, err := value(e.X, known)
	if err != nil {
		return 0, err
	}
	y, err := value(e.Y, known)
	if err != nil {
		return 0, err
	}
	switch e.Op {
	case token.ADD:
		return x + y, nil
	case token.SUB:
		return x - y, nil
	case token.MUL:
		return x * y, nil
	case token.QUO:
		return x / y, nil
	}
	return 0, fmt.Errorf("operator %s is not arithmetic", e.Op)
}

// functions that a formula may call, by name, with one argument.
var functions = map[string]func(float64) float64{
	"sqrt": math.Sqrt, "abs": math.Abs, "exp": math.Exp,
	"sin": math.Sin, "cos": math.Cos, "tan": math.Tan,
	"sind": func(x float64) float64 { return math.Sin(x * math.Pi / 180) },
	"cosd": func(x float64) float64 { return math.Cos(x * math.Pi / 180) },
	"tand": func(x float64) float64 { return math.Tan(x * math.Pi / 180) },
	"ceil": math.Ceil, "floor": math.Floor,
}

func call(e *ast.CallExpr, known map[string]float64) (float64, error) {
	name, ok := e.Fun.(*ast.Ident)
	if !ok {
		return 0, fmt.Errorf("%T is not a function name", e.Fun)
	}
	if e.Ellipsis.IsValid() {
		return 0, fmt.Errorf("%s(...) is not arithmetic", name.Name)
	}
	args := make([]float64, len(e.Args))
	for i, a := range e.Args {
		x, err := value(a, known)
		if err != nil {
			return 0, err
		}
		args[i] = x
	}
	if f, ok := functions[name.Name]; ok && len(args) == 1 {
		return f(args[0]), nil
	}
	return fold(name.Name, args)
}

// fold evaluates the functions of two or more arguments.
func fold(name string, args []float64) (float64, error) {
	if name == "pow" && len(args) == 2 {
		return math.Pow(args[0], args[1]), nil
	}
	pick := map[string]func(float64, float64) float64{"min": math.Min, "max": math.Max}[name]
	if pick == nil || len(args) < 2 {
		return 0, fmt.Errorf("no function %s of %d arguments", name, len(args))
	}
	x := args[0]
	for _, y := range args[1:] {
		x = pick(x, y)
	}
	return x, nil
}
