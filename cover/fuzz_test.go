package cover_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"net/url"
	"os"
	"strings"
	"testing"

	"patiocover/calc"
	"patiocover/cover"
)

// FuzzRead feeds Read anything: it answers with an error that lists faults, or with an
// input that Size answers.
func FuzzRead(f *testing.F) {
	for _, name := range demos {
		text, err := os.ReadFile(demoPath(f, name+".json"))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	for _, in := range []cover.Input{simple(), overhung(), standing()} {
		f.Add(marshal(f, in))
	}
	for _, text := range []string{"", "{}", "null", "[]", `{"schema":1,"schema":2}`, `{"site":{"sources":{"exposure":7}}}`} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		in, err := cover.Read(bytes.NewReader(text))
		answered(t, in, err)
	})
}

// FuzzFromForm feeds FromForm anything that a browser can send.
func FuzzFromForm(f *testing.F) {
	for _, in := range []cover.Input{simple(), overhung(), standing()} {
		f.Add(url.Values(form(cover.ToForm(in))).Encode())
	}
	for _, text := range []string{
		"", "cover.layers[59].name=x", "cover.layers[0].name=x&cover.layers=y", "site.sources.=z", "a.b.c=d", "[0]=1", "cover[0].x=1",
		"cover.layers[0]=x&cover.layers[0].name=y", "site=1&site.exposure=C", "site.sources.wind_speed_mph=a&site.sources=b",
		"site.sources.a[0].b=c", "site.sources.a[0].b=c&site.sources.a=d",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		values, err := url.ParseQuery(text)
		if err != nil {
			t.Skip("no form")
		}
		in, _, err := cover.FromForm(values)
		answered(t, in, err)
	})
}

// answered fails unless an input was refused with its faults, or gets a report without
// anything that is not a number.
func answered(t *testing.T, in cover.Input, err error) {
	t.Helper()
	if err != nil {
		refused(t, err)
		return
	}
	r, err := cover.Size(in)
	if err != nil {
		t.Fatalf("a valid input is not answered: %v", err)
	}
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatalf("the report cannot be written: %v", err)
	}
	for _, word := range []string{"NaN", "+Inf", "-Inf", "%!"} {
		if bytes.Contains(text, []byte(word)) && !strings.Contains(string(marshal(t, in)), word) {
			t.Fatalf("the report says %s", word)
		}
	}
	if open := unsettled(r); r.Verdict == cover.OK && len(open) > 0 {
		t.Fatalf("all is OK, although these are not: %v", open)
	}
	if faults := ratioFaults(r); len(faults) > 0 {
		t.Fatal(faults)
	}
}

func refused(t *testing.T, err error) {
	t.Helper()
	var input *calc.InputError
	var syntax *cover.SyntaxError
	switch {
	case errors.As(err, &syntax):
		if syntax.Reason == "" {
			t.Fatal("refused without a reason")
		}
	case errors.As(err, &input):
		if len(input.Faults) == 0 {
			t.Fatal("refused without a fault")
		}
		for _, f := range input.Faults {
			if f.Given == "" || f.Allowed == "" {
				t.Fatalf("a fault that says too little: %+v", f)
			}
		}
	default:
		t.Fatalf("refused by %v", err)
	}
}

// unsettled are the marks of all parts of a report that are not OK.
func unsettled(r cover.Report) []string {
	var out []string
	note := func(mark string, v cover.Verdict) {
		if v != cover.OK {
			out = append(out, mark)
		}
	}
	for _, l := range r.Links {
		note(l.Mark, l.Verdict)
	}
	for _, m := range r.Members {
		note(m.Mark, m.Verdict)
	}
	for _, w := range r.Lateral {
		note(w.Direction, w.Verdict)
	}
	for _, f := range r.Foundations {
		note(f.Post, f.Verdict)
		note("anchor of "+f.Post, f.AnchorVerdict)
	}
	note("deck", r.Deck.Verdict)
	note("headroom", r.Headroom.Verdict)
	note("drainage", r.Drainage.Verdict)
	if r.Survey != nil {
		note("survey", r.Survey.Verdict)
	}
	for _, s := range r.Summary {
		note(s.Text, s.Verdict)
	}
	for _, s := range r.NotChecked {
		if !s.Standing {
			out = append(out, "left out: "+s.What)
		}
	}
	return out
}
