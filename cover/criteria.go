package cover

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"patiocover/calc"
)

// Notice is what every output carries.
const Notice = "This is a calculation aid, not a sealed design. Structural work must be approved by a licensed engineer " +
	"and by the local building department; local codes govern. What was not checked is listed and must be settled by others."

// Program names this program in the stamp of a report.
const Program = "patiocover 0.1"

// stamp identifies the report of an input.
func stamp(in Input) (Stamp, error) {
	text, err := json.Marshal(in)
	if err != nil {
		return Stamp{}, fmt.Errorf("writing the input for its hash: %w", err)
	}
	sum := sha256.Sum256(text)
	standard := "ASCE 7-16"
	if in.Site.Standard != nil {
		standard = *in.Site.Standard
	}
	return Stamp{
		Program: Program, Schema: SchemaVersion, InputHash: hex.EncodeToString(sum[:]),
		Standards: standard + ", NDS 2018, IRC 2021; allowable stress design",
	}, nil
}

// criteria lists every value of the site with its source: the user's own words
// where there are any.
func criteria(in, full Input) []Criterion {
	said := map[string]bool{}
	visit(reflect.ValueOf(in), "", func(path string, v reflect.Value) {
		said[path] = v.Kind() != reflect.Pointer || !v.IsNil()
	})
	texts := ToForm(full)
	var out []Criterion
	for _, f := range fields {
		name, ok := strings.CutPrefix(f.Path, "site.")
		value, filled := texts[f.Path]
		if !ok || !filled || !in.concerns(f.Path) {
			continue
		}
		c := Criterion{Path: f.Path, Label: f.Label, Value: value, Unit: f.Unit, Given: said[f.Path]}
		switch own, cited := in.Site.Sources[name]; {
		case cited:
			c.Source = own
		case c.Given:
			c.Source = "as given; no source stated"
		default:
			c.Source = "assumed: " + f.Source
		}
		out = append(out, c)
	}
	return out
}

// summary turns the report into sentences, the worst first.
func (r *Report) summary() []Finding {
	var out []Finding
	say := func(v Verdict, mark, format string, args ...any) {
		out = append(out, Finding{Verdict: v, Mark: mark, Text: fmt.Sprintf(format, args...)})
	}
	for _, m := range r.Members {
		say(m.Verdict, m.Mark, "%s %s %s %s: %s governs at ratio %s", m.Name, m.Size, m.Species, m.Grade, m.Governs, ratioText(m.Ratio))
	}
	if r.Headroom.Verdict != OK {
		say(r.Headroom.Verdict, "", "headroom %s below the lowest member; %s is asked for",
			calc.FeetInches(r.Headroom.Clear), calc.FeetInches(r.Headroom.Required))
	}
	if r.Drainage.Verdict != OK {
		say(r.Drainage.Verdict, "", "drainage: %s", r.Drainage.Reason)
	}
	if in := r.Input.Cover.Sides; in != nil && *in != "open" {
		say(NotChecked, "", "wind: %s", closedSides)
	}
	for _, w := range r.Lateral {
		say(w.Verdict, "", "%s: %s", w.Direction, w.Reason)
	}
	r.sayLinks(say)
	r.sayGround(say)
	worstFirst(out)
	return out
}

func (r *Report) sayLinks(say func(Verdict, string, string, ...any)) {
	unchecked := 0
	for _, l := range r.Links {
		if l.Verdict == NotChecked {
			unchecked++
			continue
		}
		say(l.Verdict, l.Mark, "%s: %s", l.Name, l.Reason)
	}
	if unchecked > 0 {
		say(NotChecked, "", "%d connections list what they must carry; the capacity of the hardware is not checked", unchecked)
	}
}

func (r *Report) sayGround(say func(Verdict, string, string, ...any)) {
	count := map[Verdict]int{}
	for _, f := range r.Foundations {
		count[f.Slab]++
	}
	if n := count[Over]; n > 0 {
		say(Over, "", "%d of %d posts may not stand on the slab: they need footings", n, len(r.Foundations))
	}
	if n := count[OK]; n > 0 {
		say(OK, "", "%d of %d posts pass the gravity rule for standing on the slab", n, len(r.Foundations))
	}
	if n := count[NotChecked]; n > 0 {
		say(NotChecked, "", "%d posts stand on foundations whose size is not checked", n)
	}
}

// worstFirst sorts findings by verdict, keeping the order within each.
func worstFirst(list []Finding) {
	for i := 1; i < len(list); i++ {
		for k := i; k > 0 && rank[list[k].Verdict] > rank[list[k-1].Verdict]; k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
}

// ratioText writes a ratio to two digits, never rounding one above 1 down to it.
func ratioText(r Ratio) string {
	x := float64(r)
	if x > 1e6 {
		return "beyond any limit"
	}
	return fmt.Sprintf("%.2f", calc.RoundUp(x, 0.01))
}
