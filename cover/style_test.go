package cover_test

import (
	"fmt"
	"go/ast"
	"go/token"
	"path"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

// The limits of a file, chosen so that each can be read in one sitting.
const (
	maxFileLines     = 700
	maxFunctionLines = 90
	maxParameters    = 6
	maxColumns       = 140 // with a tab of tabColumns
	tabColumns       = 4
)

// unitWord finds the unit of a number in the comment of its field: a unit of the
// trade, or the word that says it has none. The word in counts as inch only where
// a unit stands: first, or after a comma.
var unitWord = regexp.MustCompile(`(?i)\b(inch(es)?|ft|feet|foot|lbs?|pounds?|kip|psi|psf|plf|pcf|pci|mph|gpm|deg|degrees|radians?|rad|` +
	`seconds?|days?|hours?|years?|percent|factors?|ratios?|dimensionless|relative|dollars|pixels?)\b` +
	`|(^|[,;(] ?)in\b|\bin Unit\b|\bin[²³⁴]|\bft[²³]|%|\$|°`)

// A style collects what one file does against the house style.
type style struct {
	source
	faults []string
}

func (s *style) fault(p token.Pos, format string, about ...any) {
	s.faults = append(s.faults, fmt.Sprintf("%s:%d: ", s.name, s.line(p))+fmt.Sprintf(format, about...))
}

// styleFaults lists the faults of a file with their places.
func styleFaults(f source) []string {
	s := &style{source: f}
	s.lengths()
	for _, d := range f.syntax.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			s.function(d)
		case *ast.GenDecl:
			if !f.test() && d.Tok != token.IMPORT {
				s.declaration(d)
			}
		}
	}
	return s.faults
}

func (s *style) lengths() {
	if n := len(s.lines); n > maxFileLines {
		s.faults = append(s.faults, fmt.Sprintf("%s: %d lines, at most %d", s.name, n, maxFileLines))
	}
	for i, line := range s.lines {
		if n := utf8.RuneCountInString(line) + (tabColumns-1)*strings.Count(line, "\t"); n > maxColumns {
			s.faults = append(s.faults, fmt.Sprintf("%s:%d: %d columns, at most %d", s.name, i+1, n, maxColumns))
		}
	}
}

func (s *style) function(d *ast.FuncDecl) {
	if n := s.line(d.End()) - s.line(d.Pos()) + 1; n > maxFunctionLines {
		s.fault(d.Pos(), "%s has %d lines, at most %d", d.Name.Name, n, maxFunctionLines)
	}
	if s.test() {
		return
	}
	if n := d.Type.Params.NumFields(); n > maxParameters {
		s.fault(d.Pos(), "%s has %d parameters, at most %d; take a struct", d.Name.Name, n, maxParameters)
	}
	if d.Name.Name == "init" && d.Recv == nil {
		s.fault(d.Pos(), "init runs unasked; use a variable or a call")
	}
	if d.Name.IsExported() && exportedReceiver(d.Recv) {
		s.exported(d.Name, d.Doc.Text())
	}
}

// exportedReceiver reports whether a user of the package can see the receiver.
func exportedReceiver(recv *ast.FieldList) bool {
	if recv.NumFields() == 0 {
		return true
	}
	seen := true
	ast.Inspect(recv.List[0].Type, func(n ast.Node) bool {
		if name, ok := n.(*ast.Ident); ok {
			seen = name.IsExported()
			return false
		}
		return seen
	})
	return seen
}

// exported wants a comment beside an exported name, and plain English in it.
func (s *style) exported(name *ast.Ident, comment string) {
	if strings.TrimSpace(comment) == "" {
		s.fault(name.Pos(), "%s has no doc comment", name.Name)
	}
	if strings.Contains(name.Name, "_") {
		s.fault(name.Pos(), "%s has an underscore", name.Name)
	}
}

func (s *style) declaration(d *ast.GenDecl) {
	for _, spec := range d.Specs {
		switch spec := spec.(type) {
		case *ast.TypeSpec:
			if spec.Name.IsExported() {
				s.exported(spec.Name, d.Doc.Text()+spec.Doc.Text()+spec.Comment.Text())
				s.members(spec.Type)
			}
		case *ast.ValueSpec:
			for _, name := range spec.Names {
				if name.IsExported() {
					s.exported(name, d.Doc.Text()+spec.Doc.Text()+spec.Comment.Text())
				}
			}
		}
	}
}

// members wants a comment beside every field and method that a user sees, and a
// unit beside every number.
func (s *style) members(e ast.Expr) {
	ast.Inspect(e, func(n ast.Node) bool {
		var list *ast.FieldList
		switch n := n.(type) {
		case *ast.StructType:
			list = n.Fields
		case *ast.InterfaceType:
			list = n.Methods
		case *ast.FuncType:
			return false
		}
		if list == nil {
			return true
		}
		for _, f := range list.List {
			s.member(f)
		}
		return true
	})
}

func (s *style) member(f *ast.Field) {
	comment := f.Doc.Text() + f.Comment.Text()
	unit := comment
	if f.Tag != nil { // the keys of the input and the report end in the unit
		unit += ", " + strings.NewReplacer("_", ", ", `"`, " ").Replace(f.Tag.Value)
	}
	for _, name := range f.Names {
		if !name.IsExported() {
			continue
		}
		s.exported(name, comment)
		if isNumber(f.Type) && strings.TrimSpace(comment) != "" && !unitWord.MatchString(unit) && !saysRatio(name.Name) {
			s.fault(name.Pos(), "%s is a number whose comment names no unit, nor says factor or ratio", name.Name)
		}
	}
}

// saysRatio reports whether the name itself says that the number has no unit.
func saysRatio(name string) bool {
	return strings.HasSuffix(name, "Ratio") || strings.HasSuffix(name, "Factor")
}

// isNumber reports whether the type is a float64, or a pointer to, list of or
// array of one.
func isNumber(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name == "float64"
	case *ast.StarExpr:
		return isNumber(e.X)
	case *ast.ArrayType:
		return isNumber(e.Elt)
	}
	return false
}

// packageFaults lists the folders of the project whose package says nothing of
// itself.
func packageFaults(all []source) []string {
	said := map[string]bool{}
	var folders, faults []string
	for _, s := range all {
		dir := path.Dir(s.name)
		if s.test() {
			continue
		}
		if _, seen := said[dir]; !seen {
			folders = append(folders, dir)
		}
		said[dir] = said[dir] || strings.TrimSpace(s.syntax.Doc.Text()) != ""
	}
	for _, dir := range folders {
		if !said[dir] {
			faults = append(faults, dir+": no file says what the package is for")
		}
	}
	return faults
}

func TestStyle(t *testing.T) {
	all := sources(t)
	for _, s := range all {
		for _, fault := range styleFaults(s) {
			t.Error(fault)
		}
	}
	for _, fault := range packageFaults(all) {
		t.Error(fault)
	}
}

// The measures must find what they are for.
func TestStyleRules(t *testing.T) {
	cases := []struct {
		name, text string
		want       string
	}{
		{"x.go", "func Bare() {}", "x.go:3: Bare has no doc comment"},
		{"x.go", "// A says.\nfunc A_b() {}", "x.go:4: A_b has an underscore"},
		{"x.go", "func bare(a, b, c int, d, e, f, g int) {}", "x.go:3: bare has 7 parameters, at most 6; take a struct"},
		{"x.go", "func init() {}", "x.go:3: init runs unasked; use a variable or a call"},
		{"x.go", "type t int\n\nfunc (t) Hidden() {}", ""},
		{"x.go", "// T is.\ntype T int\n\nfunc (*T) Bare() {}", "x.go:6: Bare has no doc comment"},
		{"x.go", "// T is.\ntype T[E any] []E\n\nfunc (t *T[E]) Bare() {}", "x.go:6: Bare has no doc comment"},
		{"x.go", "type T int", "x.go:3: T has no doc comment"},
		{"x.go", "var V = 1", "x.go:3: V has no doc comment"},
		{"x.go", "const (\n\tA = 1 // first\n\tB = 2\n)", "x.go:5: B has no doc comment"},
		{"x.go", "// Both are said.\nconst (\n\tA = 1\n\tB = 2\n)", ""},
		{"x.go", "// T is.\ntype T struct {\n\tA int\n}", "x.go:5: A has no doc comment"},
		{"x.go", "// T is.\ntype T interface {\n\tA() int\n}", "x.go:5: A has no doc comment"},
		{"x.go", "// T is.\ntype T struct {\n\tA struct {\n\t\tB int\n\t} // said\n}", "x.go:6: B has no doc comment"},
		{"x.go", "// T is.\ntype T struct {\n\tA float64 // a load\n}",
			"x.go:5: A is a number whose comment names no unit, nor says factor or ratio"},
		{"x.go", "// T is.\ntype T struct {\n\tA []*float64 // a load\n}",
			"x.go:5: A is a number whose comment names no unit, nor says factor or ratio"},
		{"x.go", "// T is.\ntype T struct {\n\tA, B float64 // fb, psi\n\tc float64\n\tD int // how many\n}", ""},
		{"x.go", "// T is.\ntype T struct {\n\tARatio float64 // le/d\n}", ""},
		{"x.go", "// T is.\ntype T struct {\n\tA float64 `json:\"a_ft\"` // a place\n}", ""},
		{"x.go", "// T is.\ntype T struct {\n\tA float64 // D, in\n\tB float64 // what stays in the plane\n}",
			"x.go:6: B is a number whose comment names no unit, nor says factor or ratio"},
		{"x.go", "// x" + strings.Repeat("²", 136), ""},
		{"x.go", "// x" + strings.Repeat("²", 137), "x.go:3: 141 columns, at most 140"},
		{"x.go", "var _ = 1\n\t// " + strings.Repeat("x", 134), "x.go:4: 141 columns, at most 140"},
		{"x_test.go", "func TestBare(a, b, c, d, e, f, g int) {}\n\ntype T struct{ A float64 }", ""},
		{"x_test.go", "func long() {" + strings.Repeat("\n", 89) + "}", ""},
		{"x_test.go", "func long() {" + strings.Repeat("\n", 90) + "}", "x_test.go:3: long has 91 lines, at most 90"},
		{"x_test.go", strings.Repeat("// x\n", 698), "x_test.go: 701 lines, at most 700"},
	}
	for i, c := range cases {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			assert.Equal(t, c.want, strings.Join(styleFaults(parse(t, c.name, "package x\n\n"+c.text+"\n")), "; "))
		})
	}
}

func TestPackageRules(t *testing.T) {
	silent, said := parse(t, "a/b.go", "package a\n"), parse(t, "a/doc.go", "// Package a says.\npackage a\n")
	test := parse(t, "b/b_test.go", "package b\n")
	assert.Equal(t, []string{"a: no file says what the package is for"}, packageFaults([]source{silent, test}))
	assert.Empty(t, packageFaults([]source{silent, said, test}))
}
