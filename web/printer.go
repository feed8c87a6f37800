package web

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
)

// column is the width to which running text is broken, letters.
const column = 100

// A printer writes plain text and remembers the first error.
type printer struct {
	w   *tabwriter.Writer
	out *bufio.Writer
}

func newPrinter(w io.Writer) *printer {
	out := bufio.NewWriter(w)
	return &printer{w: tabwriter.NewWriter(out, 0, 4, 2, ' ', 0), out: out}
}

// row writes the cells of one row. Cells lose what would break the table.
func (p *printer) row(cells ...string) {
	for i, c := range cells {
		cells[i] = strings.Join(strings.Fields(printable(c)), " ")
	}
	fmt.Fprintln(p.w, "  "+strings.Join(cells, "\t"))
}

// printable drops control characters, so that no text of an input drives a terminal.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r >= 0x7f && r < 0xa0 {
			return ' '
		}
		return r
	}, text)
}

// head ends the table above and begins a part.
func (p *printer) head(words string) {
	p.w.Flush()
	fmt.Fprintf(p.w, "\n%s\n", strings.ToUpper(printable(words)))
}

// say writes running text, broken at words, each line after the first indented.
func (p *printer) say(words string) {
	p.w.Flush()
	at := 0
	for _, word := range strings.Fields(printable(words)) {
		n := len([]rune(word))
		switch {
		case at == 0:
		case at+1+n > column:
			fmt.Fprint(p.w, "\n  ")
			at = 2
		default:
			fmt.Fprint(p.w, " ")
			at++
		}
		fmt.Fprint(p.w, word)
		at += n
	}
	fmt.Fprintln(p.w)
}

// close writes out what is held back. A bufio.Writer keeps the first error of all.
func (p *printer) close() error {
	p.w.Flush()
	return p.out.Flush()
}
