package lumber

import (
	_ "embed"
	"fmt"

	"patiocover/calc"
)

// A Duration is how long the shortest load of a combination acts over the life of
// the structure. A combination takes the largest factor of its loads, and every
// combination is checked with its own (NDS 2018 2.3.2).
type Duration uint8

// The durations of NDS 2018 Table 2.3.2, the ordinary one first.
const (
	TenYears   Duration = iota // occupancy live load, 1.0: the tabulated values
	Permanent                  // dead load alone, 0.9
	TwoMonths                  // snow, 1.15
	SevenDays                  // roof live or construction load, 1.25
	TenMinutes                 // wind or seismic, 1.6
	Impact                     // impact, 2.0: not for treated lumber, see [Duration.Treated]
	durations
)

//go:embed duration.csv
var durationCSV string

type durationRow struct {
	name, load, source string
	factor             float64 // C_D
	status             calc.Status
}

var durationRows = calc.ReadTable("duration.csv", durationCSV, func(r calc.Row) durationRow {
	return durationRow{
		name: r.Text("duration"), load: r.Text("load"), source: r.Text("source"),
		factor: r.Num("factor"), status: r.Status(),
	}
})

// durationTable holds the rows by Duration.
var durationTable = func() (all [durations]durationRow) {
	names := [durations]string{
		TenYears: "ten years", Permanent: "permanent", TwoMonths: "two months",
		SevenDays: "seven days", TenMinutes: "ten minutes", Impact: "impact",
	}
	for _, r := range durationRows {
		for d, name := range names {
			if r.name == name {
				all[d] = r
			}
		}
	}
	return all
}()

// Durations returns every duration, the longest first.
func Durations() []Duration {
	return []Duration{Permanent, TenYears, TwoMonths, SevenDays, TenMinutes, Impact}
}

// Factor returns C_D, the load duration factor. It applies to Fb, Ft, Fv and Fc,
// never to Fc_perp, E or Emin.
func (d Duration) Factor() float64 { return durationTable[d].factor }

// Treated returns the duration that lumber treated with waterborne preservative or
// fire retardant may count: at most C_D = 1.6 (NDS 2018 Table 2.3.2 note 2).
func (d Duration) Treated() Duration {
	if d == Impact {
		return TenMinutes
	}
	return d
}

// Load names the load that usually has this duration.
func (d Duration) Load() string { return durationTable[d].load }

// String returns the duration in words.
func (d Duration) String() string {
	if d < durations {
		return durationTable[d].name
	}
	return fmt.Sprintf("Duration(%d)", uint8(d))
}

// Write adds the line of C_D to a written calculation.
func (d Duration) Write(s *calc.Sheet) {
	r := durationTable[d]
	s.Quoted("C_D", r.factor, "", r.source+", "+r.load, r.status)
}
