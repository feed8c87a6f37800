package web

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strings"
)

// A typesetter writes a formula as markup. leaf writes what a symbol stands for:
// itself, or its number.
type typesetter struct {
	b    []byte
	leaf func(b []byte, name string) []byte
}

// A formula is one of a calculation, read once and written in symbols and in numbers.
type formula struct {
	text string
	tree ast.Expr // nil where the text cannot be parsed
}

// newFormula reads a formula.
func newFormula(text string) formula {
	tree, err := parser.ParseExpr(text)
	if err != nil {
		return formula{text: text}
	}
	return formula{text, tree}
}

// append writes the formula. One that cannot be parsed is written as it is.
func (f formula) append(b []byte, leaf func([]byte, string) []byte) []byte {
	if f.tree == nil {
		return appendEscaped(b, f.text)
	}
	t := typesetter{b: b, leaf: leaf}
	t.write(f.tree)
	return t.b
}

// signs are the operators as print has them.
var signs = map[token.Token]string{token.ADD: " + ", token.SUB: " − ", token.MUL: " × ", token.QUO: " / "}

func (t *typesetter) write(e ast.Expr) {
	switch e := e.(type) {
	case *ast.Ident:
		t.b = t.leaf(t.b, e.Name)
	case *ast.BasicLit:
		t.literal(e.Value)
	case *ast.ParenExpr:
		t.bracketed(e.X)
	case *ast.UnaryExpr:
		t.say("−")
		t.write(e.X)
	case *ast.BinaryExpr:
		t.write(e.X)
		t.say(signs[e.Op])
		t.write(e.Y)
	case *ast.CallExpr:
		t.call(e)
	}
}

func (t *typesetter) say(words string) { t.b = appendEscaped(t.b, words) }

func (t *typesetter) bracketed(e ast.Expr) {
	t.say("(")
	t.write(e)
	t.say(")")
}

// call writes roots and powers as print has them, other functions by their name.
func (t *typesetter) call(e *ast.CallExpr) {
	name := "f"
	if id, ok := e.Fun.(*ast.Ident); ok {
		name = id.Name
	}
	switch {
	case name == "sqrt" && len(e.Args) == 1:
		t.say("√")
		t.grouped(e.Args[0])
	case name == "pow" && len(e.Args) == 2:
		t.grouped(e.Args[0])
		t.b = append(t.b, `<sup>`...)
		t.write(e.Args[1])
		t.b = append(t.b, `</sup>`...)
	default:
		t.say(strings.TrimSuffix(name, "d")) // sind, cosd, tand take degrees, as their argument says
		t.list(e.Args)
	}
}

func (t *typesetter) list(args []ast.Expr) {
	t.say("(")
	for i, a := range args {
		if i > 0 {
			t.say(", ")
		}
		t.write(a)
	}
	t.say(")")
}

// grouped writes a single symbol or number bare and everything else in brackets.
func (t *typesetter) grouped(e ast.Expr) {
	switch inner := e.(type) {
	case *ast.Ident, *ast.BasicLit:
		t.write(e)
	case *ast.ParenExpr:
		t.bracketed(inner.X)
	default:
		t.bracketed(e)
	}
}

// literal writes a number of a formula, powers of ten as print has them.
func (t *typesetter) literal(text string) {
	mantissa, exponent, scientific := strings.Cut(strings.ToLower(text), "e")
	t.say(mantissa)
	if !scientific {
		return
	}
	t.b = append(t.b, `·10<sup>`...)
	t.say(strings.Replace(strings.TrimPrefix(exponent, "+"), "-", "−", 1))
	t.b = append(t.b, `</sup>`...)
}
