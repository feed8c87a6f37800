package web

import (
	"html/template"
	"strings"

	"patiocover/calc"
)

// fromMemory is the mark beside a value that nobody has compared with the print.
const fromMemory = "from memory, confirm against the print"

// sheetOf writes a calculation as a table: symbol, formula, the numbers put in,
// result, unit and source.
func sheetOf(lines []calc.Line) template.HTML {
	return template.HTML(appendSheet(make([]byte, 0, room(lines)), lines))
}

// room is about how many bytes a calculation takes.
func room(lines []calc.Line) int { return 320*len(lines) + 512 }

// appendSheet writes a calculation as [sheetOf] does.
func appendSheet(b []byte, lines []calc.Line) []byte {
	b = append(b, `<div class="scroll"><table class="sheet"><thead><tr><th scope="col">Symbol</th>`+
		`<th scope="col">Formula</th><th scope="col">With numbers</th><th scope="col">Result</th>`+
		`<th scope="col">Unit</th><th scope="col">Source</th></tr></thead><tbody>`...)
	known := make(map[string]calc.Line, len(lines))
	for _, l := range lines {
		b = appendLine(b, l, known)
		known[l.Symbol] = l
	}
	return append(b, `</tbody></table></div>`...)
}

// appendLine writes one row. known holds the lines above, whose numbers the formula
// takes.
func appendLine(b []byte, l calc.Line, known map[string]calc.Line) []byte {
	b = append(b, `<tr><th scope="row">`...)
	b = appendSymbol(b, l.Symbol)
	b = append(b, `</th>`...)
	if l.Formula == "" {
		b = append(b, `<td class="given">given</td><td>`...)
	}
	if l.Formula != "" {
		f := newFormula(l.Formula)
		b = append(b, `<td>`...)
		b = f.append(b, appendSymbol)
		b = append(b, `</td><td>`...)
		b = f.append(b, func(b []byte, name string) []byte { return appendValue(b, name, known) })
	}
	b = append(b, `</td><td class="num">`...)
	b = appendEscaped(b, number(l.X, l.Unit))
	b = append(b, `</td><td>`...)
	b = appendEscaped(b, l.Unit)
	b = append(b, `</td><td class="source">`...)
	b = appendEscaped(b, l.Source)
	if l.Status == calc.Recalled {
		b = append(b, ` <span class="memory">`+fromMemory+`</span>`...)
	}
	return append(b, `</td></tr>`...)
}

// appendValue writes the number of a symbol, a negative one in brackets. A symbol
// that no line above defines, such as pi, is written as it is.
func appendValue(b []byte, name string, known map[string]calc.Line) []byte {
	l, ok := known[name]
	if !ok {
		return appendSymbol(b, name)
	}
	text := number(l.X, l.Unit)
	if strings.HasPrefix(text, "−") {
		text = "(" + text + ")"
	}
	return appendEscaped(b, text)
}

// checkOf writes the calculation of a check and closes it with the comparison.
func checkOf(c calc.Check) template.HTML {
	if len(c.Lines) == 0 {
		return ""
	}
	demand, capacity := compared(c.Demand, c.Capacity, c.Unit)
	b := appendSheet(make([]byte, 0, room(c.Lines)), c.Lines)
	b = append(b, `<p class="closing">`...)
	b = appendSymbol(b, c.DemandSymbol)
	b = append(b, ` = `...)
	b = appendEscaped(b, demand+" "+c.Unit)
	b = append(b, comparison(c)...)
	b = appendSymbol(b, c.CapacitySymbol)
	b = append(b, ` = `...)
	b = appendEscaped(b, capacity+" "+c.Unit)
	return template.HTML(append(b, `</p>`...))
}

// comparison is the sign between demand and capacity.
func comparison(c calc.Check) string {
	if c.Ratio() <= 1 {
		return " ≤ "
	}
	return " &gt; "
}
