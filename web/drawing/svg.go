package drawing

import (
	"fmt"
	"html"
	"io"
	"strconv"
)

// fonts are the letters of the drawings: whatever plain face the reader has.
const fonts = "Arial, Helvetica, sans-serif"

// SVG writes the scene as one svg element that may stand alone in a file or within
// a page. id begins the names that join its title and description to it, so it must
// differ between the drawings of a page.
//
// Colors and sizes are presentation attributes: a page whose policy forbids inline
// styles shows them too. The element is as wide as the paper; a page that is
// narrower sets max-width: 100% and height: auto.
//
// A mark of a connection leads to the place mark-T1 of the page that the element
// stands in.
//
// The error is that of w, or tells of a place that is not a finite number.
func SVG(w io.Writer, s Scene, id string) error {
	for i, item := range s.Items {
		if !item.finite() {
			return fmt.Errorf("drawing: item %d of %q has no finite place", i, s.Title)
		}
	}
	id = html.EscapeString(id)
	b := make([]byte, 0, 160*len(s.Items)+1024)
	b = fmt.Appendf(b, `<svg xmlns="http://www.w3.org/2000/svg" width="%spt" height="%spt" viewBox="0 0 %[1]s %[2]s"`,
		digits(s.Width), digits(s.Height))
	b = fmt.Appendf(b, "\nrole=\"img\" aria-labelledby=\"%s-title %[1]s-desc\"", id)
	b = fmt.Appendf(b, "\nfont-family=\"%s\" fill=\"none\" stroke-linejoin=\"round\">", fonts)
	b = fmt.Appendf(b, "\n<title id=\"%s-title\">%s</title>\n<desc id=\"%[1]s-desc\">%[3]s</desc>\n",
		id, html.EscapeString(s.Title), html.EscapeString(s.Description))
	b = fmt.Appendf(b, "<path fill=\"%s\" d=\"M0 0H%sV%sH0Z\"/>\n", Paper.Hex(), digits(s.Width), digits(s.Height))
	for _, item := range s.Items {
		switch item := item.(type) {
		case Path:
			b = appendLink(b, item.Mark, func(b []byte) []byte { return appendPath(b, item) })
		case Text:
			b = appendLink(b, item.Mark, func(b []byte) []byte { return appendText(b, item) })
		}
	}
	b = append(b, "</svg>\n"...)
	_, err := w.Write(b)
	return err
}

// appendLink lets what is drawn for a connection lead to its row of the page. The
// row is reached by the table too, so the keyboard does not stop at the mark.
func appendLink(b []byte, mark string, draw func([]byte) []byte) []byte {
	if mark == "" {
		return draw(b)
	}
	b = fmt.Appendf(b, `<a href="#mark-%s" tabindex="-1">`, html.EscapeString(mark))
	return append(draw(b), "</a>\n"...)
}

func appendPath(b []byte, p Path) []byte {
	b = append(b, `<path d="`...)
	for i, at := range p.Points {
		b = append(b, "ML"[min(i, 1)])
		b = appendDigits(b, at.X)
		b = append(b, ' ')
		b = appendDigits(b, at.Y)
	}
	if p.Closed {
		b = append(b, 'Z')
	}
	b = append(b, '"')
	if p.Pen.Fill != None {
		b = fmt.Appendf(b, ` fill="%s"`, p.Pen.Fill.Hex())
	}
	if p.Pen.Stroke != None {
		b = fmt.Appendf(b, ` stroke="%s" stroke-width="%s"`, p.Pen.Stroke.Hex(), digits(p.Pen.Width))
	}
	for i, d := range p.Pen.Dash {
		if i == 0 {
			b = append(b, ` stroke-dasharray="`...)
		}
		b = append(appendDigits(b, d), ' ')
		if i == len(p.Pen.Dash)-1 {
			b[len(b)-1] = '"'
		}
	}
	return append(b, "/>\n"...)
}

var anchorWords = [...]string{Start: "start", Middle: "middle", End: "end"}

func appendText(b []byte, t Text) []byte {
	b = fmt.Appendf(b, `<text x="%s" y="%s" font-size="%s" fill="%s"`, digits(t.At.X), digits(t.At.Y), digits(t.Size), t.Ink.Hex())
	if t.Anchor != Start {
		b = fmt.Appendf(b, ` text-anchor="%s"`, anchorWords[t.Anchor])
	}
	if t.Bold {
		b = append(b, ` font-weight="bold"`...)
	}
	if t.Angle != 0 {
		b = fmt.Appendf(b, ` transform="rotate(%s %s %s)"`, digits(t.Angle), digits(t.At.X), digits(t.At.Y))
	}
	b = append(b, '>')
	b = append(b, html.EscapeString(t.Words)...)
	return append(b, "</text>\n"...)
}

// digits writes a size on paper to a hundredth of a point.
func digits(x float64) string { return string(appendDigits(nil, x)) }

// appendDigits writes a size on paper without trailing zeros.
func appendDigits(b []byte, x float64) []byte {
	start := len(b)
	b = strconv.AppendFloat(b, x, 'f', 2, 64)
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	if b[len(b)-1] == '.' {
		b = b[:len(b)-1]
	}
	if string(b[start:]) == "-0" {
		return append(b[:start], '0')
	}
	return b
}
