package cover

import (
	"slices"
	"strconv"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// The items of the lists that say how a cover is put together, and what of it counts.
var (
	standings = item[StandingWay]{StandingWay.String, readStanding, commaParts,
		"slab, or footing or pier with or without a width of " + rangeOf("foundation.width_in")}
	tieWays = item[TieWay]{TieWay.String, readTie, commaParts,
		"rated, straps, or straps of a gauge: " + choicesOf("connections.strap_gauge")}
	ledgerWays = item[LedgerWay]{LedgerWay.String, readLedger, commaParts,
		rangeOf("connections.ledger_lags_each") + " of " + choicesOf("connections.ledger_lag") + ", such as 2 of 1/2"}
	measured = item[string]{measureWords, readMeasure, commaParts, "one of " + allMeasureWords()}
)

// UsualWays are entries of a search that lets it choose how the posts stand, how the rafters
// are tied and how the ledger is fastened, as far as the input has such parts.
func UsualWays(in Input) map[string]string {
	full, _ := in.Assume()
	out := map[string]string{spacePrefix + "ties": "rated, straps"}
	if kind := *full.Foundation.Kind; kind != "embedded" {
		out[spacePrefix+"footings"] = "slab, footing, pier"
	}
	if *full.Cover.Attachment == "ledger" {
		out[spacePrefix+"ledgers"] = "1 of 1/2, 2 of 1/2, 1 of 5/8, 2 of 5/8"
	}
	return out
}

// choicesOf lists the words of a choice of the input.
func choicesOf(path string) string {
	d, _ := FieldOf(path)
	return strings.Join(d.Choices, ", ")
}

// String writes the way as it is typed: footing 24.
func (w StandingWay) String() string {
	if w.Width == 0 {
		return w.Kind
	}
	return w.Kind + " " + calc.Number(w.Width)
}

// readStanding reads a kind of footing, with its width behind it where it is given.
func readStanding(_ *Input, text string) (StandingWay, bool) {
	kind, width, wide := strings.Cut(text, " ")
	w := StandingWay{Kind: strings.ToLower(kind)}
	if !slices.Contains([]string{"slab", "footing", "pier"}, w.Kind) || wide && w.Kind == "slab" {
		return w, false
	}
	if !wide {
		return w, true
	}
	d, _ := FieldOf("foundation.width_in")
	x, err := calc.ParseLength(width, calc.In)
	w.Width = x / calc.In
	return w, err == nil && w.Width >= d.Low && w.Width <= d.High
}

// String writes the way as it is typed: straps 16.
func (w TieWay) String() string { return strings.TrimSpace(w.Kind + " " + w.Gauge) }

// readTie reads a kind of tie, with the gauge of straps behind it where it is given.
func readTie(_ *Input, text string) (TieWay, bool) {
	kind, gauge, _ := strings.Cut(text, " ")
	w := TieWay{Kind: strings.ToLower(kind), Gauge: gauge}
	d, _ := FieldOf("connections.strap_gauge")
	return w, w.Kind == "rated" && gauge == "" || w.Kind == "straps" && (gauge == "" || slices.Contains(d.Choices, gauge))
}

// String writes the way as it is typed: 2 of 1/2.
func (w LedgerWay) String() string { return strconv.Itoa(w.Each) + " of " + w.Lag }

// readLedger reads how many lag screws of what thickness stand at each stud.
func readLedger(_ *Input, text string) (LedgerWay, bool) {
	count, lag, _ := strings.Cut(text, " of ")
	n, err := strconv.Atoi(count)
	w := LedgerWay{Lag: strings.TrimSpace(strings.TrimSuffix(lag, "in")), Each: n}
	each, _ := FieldOf("connections.ledger_lags_each")
	size, _ := FieldOf("connections.ledger_lag")
	return w, err == nil && float64(n) >= each.Low && float64(n) <= each.High && slices.Contains(size.Choices, w.Lag)
}

// measureWords writes a key of what counts as words, without its unit.
func measureWords(key string) string {
	return strings.ReplaceAll(strings.TrimSuffix(strings.TrimSuffix(key, "_in"), "_lb"), "_", " ")
}

// readMeasure reads what counts, as words or as its key.
func readMeasure(_ *Input, text string) (string, bool) {
	for _, key := range measureNames {
		if strings.EqualFold(text, measureWords(key)) || strings.EqualFold(text, key) {
			return key, true
		}
	}
	return text, false
}

// allMeasureWords are the words of everything that may count.
func allMeasureWords() string {
	var all []string
	for _, key := range measureNames {
		all = append(all, measureWords(key))
	}
	return strings.Join(all, ", ")
}

// countLimit is the entry of a limit that is a whole number.
func countLimit(key, label string, at func(*Limits) *int) SpaceEntry {
	const most = 1000 // far beyond any cover
	e := SpaceEntry{Name: limitPrefix + key, Label: label, Limit: true, Allowed: "0 to 1000; 0 or empty: no limit"}
	e.words = func(s *Search) string {
		if n := *at(&s.Limits); n != 0 {
			return strconv.Itoa(n)
		}
		return ""
	}
	e.read = func(s *Search, _ *Input, text string, f *calc.Fields) string {
		n, err := strconv.Atoi(text)
		if err != nil || n < 0 || n > most {
			f.Add(e.Name, strconv.Quote(text), e.Allowed)
			return ""
		}
		*at(&s.Limits) = n
		return ""
	}
	return e
}

// flagLimit is the entry of a limit that holds or not.
func flagLimit(key, label string, at func(*Limits) *bool) SpaceEntry {
	e := SpaceEntry{
		Name: limitPrefix + key, Label: label, Limit: true, Allowed: "true or false; empty: no limit", Choices: []string{"true"},
	}
	e.words = func(s *Search) string {
		if *at(&s.Limits) {
			return "true"
		}
		return ""
	}
	e.read = func(s *Search, _ *Input, text string, f *calc.Fields) string {
		b, err := strconv.ParseBool(text)
		if err != nil {
			f.Add(e.Name, strconv.Quote(text), e.Allowed)
		}
		*at(&s.Limits) = b
		return ""
	}
	return e
}

// speciesLimit is the entry of species that are on hand.
func speciesLimit(key, label string, at func(*Limits) *[]string) SpaceEntry {
	e := SpaceEntry{Name: limitPrefix + key, Label: label, Limit: true, Allowed: "species with commas between; empty: any"}
	e.words = func(s *Search) string { return strings.Join(*at(&s.Limits), ", ") }
	e.read = func(s *Search, in *Input, text string, f *calc.Fields) string {
		var list []string
		known := append(lumber.Species(), lumber.LaminatedSpecies()...)
		for _, p := range in.Products {
			known = append(known, *p.Name)
		}
		for _, part := range commaParts(in, text) {
			i := slices.IndexFunc(known, func(k string) bool { return strings.EqualFold(k, part) })
			if i < 0 {
				f.Add(e.Name, strconv.Quote(part), "species with commas between, out of "+strings.Join(known, ", "))
				continue
			}
			if !slices.Contains(list, known[i]) {
				list = append(list, known[i])
			}
		}
		*at(&s.Limits) = list
		return ""
	}
	return e
}
