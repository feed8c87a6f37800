package web

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"html/template"
	"io/fs"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web/drawing"
)

//go:embed templates/*.html
var templateFiles embed.FS

//go:embed static/*
var staticFiles embed.FS

// templates are parsed once, at start.
var templates = template.Must(template.New("").Funcs(template.FuncMap{
	"check": checkOf, "clear": clearHeight, "feet": feet, "lines": sheetOf, "percent": percent, "pounds": pounds,
	"pressure": pressure, "ratio": ratio, "spoken": spoken, "symbolOf": glyph, "classOf": class, "bar": bar,
	"unitOf": unitOf, "unitNote": unitNote, "quantity": quantity,
	"lifts": func(f cover.Force) bool { return f.Value > 0 }, "number": number,
	"memory": func(s calc.Status) bool { return s == calc.Recalled }, "fromMemory": func() string { return fromMemory },
	"boardFeet": boardFeet, "totalOf": totalOf, "reach": reach, "atEnd": atEnd,
	"restOf": restOf, "belowSize": belowSize, "marginNotes": func() []string { return marginNotes },
	"dollars": dollars, "pieces": pieces, "unitName": unitName,
	"sag": inches, "drop": drop, "spent": spent, "ties": ties, "tableOf": tableOf, "rowsOf": rowsOf, "whole": whole,
	"anchor": plain, "after": func(i int) int { return i + 1 }, "largestGap": largestGap,
	"viewsOfTies": func() string { return viewsOfTies },
	"poundsOr":    poundsOr, "poundsDown": poundsDown, "surveyPlan": surveyPlan,
	"deckNote":     func() string { return deckNote },
	"strengthNote": func() string { return strengthNote }, "unusedNote": func() string { return unusedNote },
}).ParseFS(templateFiles, "templates/*.html"))

// Static returns the style sheet, the script and the icon.
func Static() fs.FS {
	sub, err := fs.Sub(staticFiles, "static")
	if err != nil {
		panic("web: static: " + err.Error()) // the folder is embedded by its name
	}
	return sub
}

// A Page is the calculator: its form and, when there is one, the report.
type Page struct {
	Values     map[string]string // what stands in the form, by path of the input
	Understood map[string]string // how each length was read, by path
	Faults     []calc.Fault      // what is wrong with the input
	Report     *cover.Report     // the answer, nil before there is one
}

// A Refusal is the page that says why there is no answer.
type Refusal struct {
	Status int    // HTTP status
	Title  string // in a few words
	Detail string // what to do about it
}

// view is what the templates see of a page.
type view struct {
	Page
	Title         string
	Notice        string
	Groups        []group
	Known         template.HTML // lists of suggestions
	Wrong         []fault
	Count         string // how many findings there are of each verdict
	Plan, Section template.HTML
	Job           string // the input as JSON
	Compare       template.URL
	Options       template.URL
}

// Render writes the page whole. An error is a fault of this program.
func (p Page) Render() ([]byte, error) {
	v := view{Page: p, Title: "Patio cover", Notice: cover.Notice, Groups: groups(p), Known: known, Wrong: listed(p.Faults)}
	if p.Report == nil {
		return execute("page", usualPage, v)
	}
	if err := v.draw(p.Report); err != nil {
		return nil, err
	}
	return execute("page", usualReport, v)
}

// Render writes the page whole. An error is a fault of this program.
func (r Refusal) Render() ([]byte, error) {
	return execute("refusal", 0, struct {
		Refusal
		Notice string
	}{r, cover.Notice})
}

// draw adds what only a report has: the drawings, the title and the job file.
func (v *view) draw(r *cover.Report) error {
	if r.Input.Job.Name != nil {
		v.Title = *r.Input.Job.Name
	}
	v.Count = count(r.Summary)
	for _, d := range []struct {
		into  *template.HTML
		scene drawing.Scene
		id    string
	}{{&v.Plan, drawing.Plan(*r), "plan"}, {&v.Section, drawing.Section(*r), "section"}} {
		var b bytes.Buffer
		if err := drawing.SVG(&b, d.scene, d.id); err != nil {
			return err
		}
		*d.into = template.HTML(b.String()) // the writer escapes every text
	}
	job, err := json.MarshalIndent(r.Input, "", "  ")
	if err != nil {
		return fmt.Errorf("writing the input back: %w", err)
	}
	v.Job = string(job)
	v.Compare, v.Options = addressOf("/compare", v.Values), addressOf("/options", v.Values)
	return nil
}

// The bytes that pages mostly take: of a form, and of one with its report.
const (
	usualPage   = 1 << 16
	usualReport = 1 << 20
)

func execute(name string, room int, data any) ([]byte, error) {
	var b bytes.Buffer
	b.Grow(room)
	if err := templates.ExecuteTemplate(&b, name, data); err != nil {
		return nil, fmt.Errorf("rendering the %s: %w", name, err)
	}
	return b.Bytes(), nil
}
