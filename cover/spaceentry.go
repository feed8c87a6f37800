package cover

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A SpaceEntry is one list of a [Space], or one of its [Limits], as a person types it.
type SpaceEntry struct {
	Name    string   // of the entry in a form, an address and a fault: space.rafter_sizes
	Label   string   // what it is, for people
	Unit    string   // unit of a number, empty when dimensionless
	Allowed string   // what may be typed
	Limit   bool     // one limit, which may stay empty, and not a list
	Choices []string // words of a choice; empty where anything may be typed

	words func(s *Search) string
	read  func(s *Search, in *Input, text string, f *calc.Fields) (heard string)
}

// The beginnings of the names of entries.
const (
	spacePrefix = "space."
	limitPrefix = "limits."
)

// spaceEntries are all of them in the order of the form.
var spaceEntries = []SpaceEntry{
	listEntry("rafter_woods", "Woods of rafters and ledger", "", woodAllowed, func(s *Space) *[]Wood { return &s.RafterWoods }, woods),
	listEntry("rafter_sizes", "Rafter sizes", "", sizeAllowed, func(s *Space) *[]string { return &s.RafterSizes }, sizeNames),
	listEntry("rafter_spacings_in", "Rafter spacings", "in on center", numbersAllowed("rafters.spacing_in"),
		func(s *Space) *[]float64 { return &s.Spacings }, spacingsIn),
	listEntry("beam_woods", "Woods of the beams", "", woodAllowed, func(s *Space) *[]Wood { return &s.BeamWoods }, woods),
	listEntry("beam_sizes", "Beam sizes", "", sizeAllowed, func(s *Space) *[]string { return &s.BeamSizes }, sizeNames),
	listEntry("post_counts", "Posts of each beam line", "", numbersAllowed("posts.count"),
		func(s *Space) *[]int { return &s.PostCounts }, counts),
	listEntry("post_woods", "Woods of the posts", "", woodAllowed, func(s *Space) *[]Wood { return &s.PostWoods }, woods),
	listEntry("post_sizes", "Post sizes", "", sizeAllowed, func(s *Space) *[]string { return &s.PostSizes }, sizeNames),
	listEntry("footings", "What the posts stand on", "",
		"slab, footing or pier, with a width in inches where it is not chosen: slab, footing 24",
		func(s *Space) *[]StandingWay { return &s.Footings }, standings),
	listEntry("ties", "Ties of the rafters", "", "rated, straps, or straps of a gauge: rated, straps 16",
		func(s *Space) *[]TieWay { return &s.Ties }, tieWays),
	listEntry("ledgers", "Lag screws of the ledger at each stud", "", "how many of what thickness: 1 of 1/2, 2 of 1/2, 2 of 5/8",
		func(s *Space) *[]LedgerWay { return &s.Ledgers }, ledgerWays),
	listEntry("compare", "What counts", "", "some of "+allMeasureWords()+"; empty: all",
		func(s *Space) *[]string { return &s.Compare }, measured),
	countLimit("posts", "Most posts in all", func(l *Limits) *int { return &l.Posts }),
	lengthLimit("depth_in", "Deepest frame, rafter and beam together", "in", 0, 100, func(l *Limits) *float64 { return &l.Depth }),
	ratingLimit("tie_rating_lb", "Strongest tie of a rafter, uplift rating", func(l *Limits) *float64 { return &l.Rating }),
	lengthLimit("clear_from_ft", "Keep a view, no post between: from, off the left end", "ft", 0, 100,
		func(l *Limits) *float64 { return &l.ClearFrom }),
	lengthLimit("clear_to_ft", "Keep a view, no post between: to, off the left end", "ft", 0, 100,
		func(l *Limits) *float64 { return &l.ClearTo }),
	flagLimit("slab_only", "Posts on the slab or not at all", func(l *Limits) *bool { return &l.SlabOnly }),
	speciesLimit("species_on_hand", "Species on hand: no wood of others", func(l *Limits) *[]string { return &l.Species }),
}

// SpaceEntries returns every entry by which a search is typed, in the order of the form.
func SpaceEntries() []SpaceEntry { return slices.Clone(spaceEntries) }

// Flag is the name of the entry on the command line: without group and unit.
func (e SpaceEntry) Flag() string {
	_, key, _ := strings.Cut(e.Name, ".")
	for _, unit := range []string{"_in", "_ft", "_lb"} {
		key = strings.TrimSuffix(key, unit)
	}
	return strings.ReplaceAll(key, "_", "-")
}

// What may be typed into a list.
const (
	woodAllowed = "species with grade, such as Hem-Fir No.2, with commas between"
	sizeAllowed = "nominal sizes with commas between, such as 2x8, 4x10, 2-2x10"
)

// numbersAllowed is what may be typed where several values of a field of the input are tried.
func numbersAllowed(path string) string { return rangeOf(path) + ", several with commas between" }

// rangeOf is the range of a field of the input.
func rangeOf(path string) string {
	d, _ := FieldOf(path)
	return strings.TrimSpace(calc.Number(d.Low) + " to " + calc.Number(d.High) + " " + d.Unit)
}

// An item says how one element of a list is written and read.
type item[T any] struct {
	write func(T) string
	read  func(in *Input, text string) (T, bool)
	cut   func(in *Input, text string) []string
	one   string // what one element may be, for a fault
}

// The items of the lists.
var (
	woods = item[Wood]{Wood.String, readWood, woodParts, "a species and one of its grades, such as Hem-Fir No.2; species: " +
		strings.Join(append(lumber.Species(), lumber.LaminatedSpecies()...), ", ")}
	sizeNames  = item[string]{func(s string) string { return s }, readSize, commaParts, "a nominal size of the tables, such as 2x8 or 4x10"}
	spacingsIn = item[float64]{calc.Number, readSpacing, commaParts, rangeOf("rafters.spacing_in")}
	counts     = item[int]{strconv.Itoa, readCount, commaParts, "a whole number, " + rangeOf("posts.count")}
)

// listEntry is the entry of one list of the space. What is typed twice counts once.
func listEntry[T comparable](key, label, unit, allowed string, at func(*Space) *[]T, of item[T]) SpaceEntry {
	e := SpaceEntry{Name: spacePrefix + key, Label: label, Unit: unit, Allowed: allowed}
	e.words = func(s *Search) string {
		var all []string
		for _, x := range *at(&s.Space) {
			all = append(all, of.write(x))
		}
		return strings.Join(all, ", ")
	}
	e.read = func(s *Search, in *Input, text string, f *calc.Fields) string {
		var list []T
		for _, part := range of.cut(in, text) {
			x, ok := of.read(in, part)
			switch {
			case !ok:
				f.Add(e.Name, strconv.Quote(part), of.one)
			case !slices.Contains(list, x):
				list = append(list, x)
			}
		}
		if len(list) > 0 {
			*at(&s.Space) = list
		}
		return ""
	}
	return e
}

// lengthLimit is the entry of a limit that is a length, in its unit.
func lengthLimit(key, label, unit string, low, high float64, at func(*Limits) *float64) SpaceEntry {
	e := SpaceEntry{
		Name: limitPrefix + key, Label: label, Unit: unit, Limit: true,
		Allowed: calc.Number(low) + " to " + calc.Number(high) + " " + unit + "; 0 or empty: no limit",
	}
	e.words = limitWords(at)
	e.read = func(s *Search, _ *Input, text string, f *calc.Fields) string {
		one := unitOf(Field{Unit: unit})
		x, err := calc.ParseLength(text, one)
		if err != nil || x < low*one || x > high*one {
			f.Add(e.Name, strconv.Quote(text), e.Allowed)
			return ""
		}
		*at(&s.Limits) = x / one
		return calc.FeetInches(x)
	}
	return e
}

// ratingLimit is the entry of a limit in lb.
func ratingLimit(key, label string, at func(*Limits) *float64) SpaceEntry {
	const most = 1e5 // lb, far beyond any tie
	e := SpaceEntry{Name: limitPrefix + key, Label: label, Unit: "lb", Limit: true, Allowed: "0 to 100000 lb; 0 or empty: no limit"}
	e.words = limitWords(at)
	e.read = func(s *Search, _ *Input, text string, f *calc.Fields) string {
		x, err := strconv.ParseFloat(text, 64)
		if err != nil || !(x >= 0 && x <= most) {
			f.Add(e.Name, strconv.Quote(text), e.Allowed)
			return ""
		}
		*at(&s.Limits) = x
		return ""
	}
	return e
}

// limitWords writes a limit; one of 0 is none.
func limitWords(at func(*Limits) *float64) func(*Search) string {
	return func(s *Search) string {
		if x := *at(&s.Limits); x != 0 {
			return calc.Number(math.Round(x*1e9) / 1e9)
		}
		return ""
	}
}

// commaParts cuts a list at commas, semicolons and ends of lines, and drops empty parts.
func commaParts(_ *Input, text string) []string {
	var out []string
	for part := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ',' || r == ';' || r == '\n' }) {
		if part = strings.Join(strings.Fields(part), " "); part != "" {
			out = append(out, part)
		}
	}
	return out
}

// woodParts does so for woods, some of whose grades have a comma in their names.
func woodParts(in *Input, text string) []string {
	var out []string
	parts := commaParts(in, text)
	for i := 0; i < len(parts); i++ {
		if i+1 < len(parts) {
			if _, ok := readWood(in, parts[i]+", "+parts[i+1]); ok {
				parts[i+1] = parts[i] + ", " + parts[i+1]
				continue
			}
		}
		out = append(out, parts[i])
	}
	return out
}

// readWood reads a wood of the tables, sawn or glued, or a product of the input.
func readWood(in *Input, text string) (Wood, bool) {
	species := append(lumber.Species(), lumber.LaminatedSpecies()...)
	for _, p := range in.Products {
		species = append(species, *p.Name)
	}
	return woodAmong(text, species, func(species string) []string {
		if _, product := productNamed(in.Products, &species); product {
			return []string{givenGrade}
		}
		return append(slices.Clone(lumber.Grades(species)), lumber.MachineGrades()...)
	})
}

// readSize reads a nominal size that the tables know, or one that the input itself names.
func readSize(in *Input, text string) (string, bool) {
	size := sizeWords.Replace(text)
	for _, own := range []*string{in.Rafters.Size, in.Beams.Size, in.Posts.Size} {
		if own != nil && size == *own {
			return size, true
		}
	}
	_, err := lumber.SectionNamed(size)
	return size, err == nil
}

// readSpacing reads a spacing, in.
func readSpacing(_ *Input, text string) (float64, bool) {
	d, _ := FieldOf("rafters.spacing_in")
	x, err := calc.ParseLength(text, calc.In)
	x = math.Round(x/calc.In*1e9) / 1e9
	return x, err == nil && x >= d.Low && x <= d.High
}

// readCount reads a number of posts.
func readCount(_ *Input, text string) (int, bool) {
	d, _ := FieldOf("posts.count")
	n, err := strconv.Atoi(text)
	return n, err == nil && float64(n) >= d.Low && float64(n) <= d.High
}
