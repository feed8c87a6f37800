package lumber

import "patiocover/calc"

// A Basis says why a factor has its value: the rule and the table behind it.
type Basis uint8

// The rules, for each factor the ordinary case first.
const (
	NotApplicable    Basis = iota // the factor does not apply to this value
	Dry                           // at most 19 % moisture content in service
	WetDimension                  // C_M of Tables 4A and 4B
	WetExempt                     // dimension lumber weak enough for C_M = 1.0
	WetTimber                     // C_M of Table 4D
	WetSouthernPine               // timbers whose values are for wet service
	UpTo100Degrees                // no sustained heat
	SustainedHeat                 // C_t of Table 2.3.3
	SizeTable4A                   // C_F of Table 4A by nominal width
	SizeTable4B                   // C_F of Southern Pine dimension lumber
	SizeTimber                    // C_F = (12/d)^(1/9) of timbers deeper than 12 in.
	SizeOrdinary                  // C_F is 1.0 in this size
	OnEdge                        // loaded on the narrow face
	FlatThin                      // C_fu of Tables 4A and 4B, 2 and 3 in. thick
	FlatThick                     // C_fu of Tables 4A and 4B, 4 in. thick
	FlatTimber                    // wide face factor of beams and stringers
	FlatPost                      // posts and timbers have no flat use factor
	NotIncised                    // no incisions
	IncisedDimension              // C_i of Table 4.3.8
	IncisedTimber                 // C_i of Table 4.3.8, taken for timbers as well
	Single                        // not a repetitive member
	RepetitiveUse                 // C_r of NDS 4.3.9
	RepetitiveTimber              // timbers take no C_r
	bases
)

// origin is what a basis quotes.
type origin struct {
	source string
	status calc.Status
}

// origins lists the sources; the status of a table is that of its least confirmed
// row.
var origins = [bases]origin{
	NotApplicable:    {"NDS 2018 Table 4.3.1", calc.Read},
	Dry:              {"NDS 2018 4.1.4, dry service", calc.Read},
	WetDimension:     {"NDS Supp. 2018 Tables 4A, 4B, wet service", wetStatus("dimension")},
	WetExempt:        {"NDS Supp. 2018 Tables 4A, 4B, wet service, low value", calc.Read},
	WetTimber:        {"NDS Supp. 2018 Table 4D, wet service", wetStatus("timbers")},
	WetSouthernPine:  {"NDS Supp. 2018 Table 4D, values are for wet service", wetStatus("Southern Pine timbers")},
	UpTo100Degrees:   {"NDS 2018 2.3.3, no sustained heat", calc.Read},
	SustainedHeat:    {"NDS 2018 Table 2.3.3", weakest(heat, heatRow.known)},
	SizeTable4A:      {"NDS Supp. 2018 Table 4A, size factor", weakest(sizeFactors, sizeFactor.known)},
	SizeTable4B:      {"NDS Supp. 2018 Table 4B, size factor (seen transcribed)", calc.Read},
	SizeTimber:       {"NDS 2018 4.3.6.2", calc.Read},
	SizeOrdinary:     {"NDS 2018 4.3.6", calc.Read},
	OnEdge:           {"NDS 2018 4.3.7, loaded on the narrow face", calc.Read},
	FlatThin:         {"NDS Supp. 2018 Tables 4A, 4B, flat use", weakest(thinFlat, flatFactor.known)},
	FlatThick:        {"NDS Supp. 2018 Tables 4A, 4B, flat use", weakest(thickFlat, flatFactor.known)},
	FlatTimber:       {"NDS Supp. 2018 Table 4D, loaded on the wide face", weakest(flatTimbers, flatTimber.known)},
	FlatPost:         {"NDS 2018 4.3.7, no factor for posts and timbers", calc.Recalled},
	NotIncised:       {"NDS 2018 4.3.8, not incised", calc.Read},
	IncisedDimension: {"NDS 2018 Table 4.3.8", weakest(incisions, incision.known)},
	IncisedTimber:    {"NDS 2018 Table 4.3.8, taken for timbers by choice", weakest(incisions, incision.known)},
	Single:           {"NDS 2018 4.3.9, not repetitive", calc.Read},
	RepetitiveUse:    {"NDS 2018 4.3.9", calc.Read},
	RepetitiveTimber: {"NDS 2018 4.3.9, not for timbers", calc.Read},
}

// Source returns the standard and clause behind the factor.
func (b Basis) Source() string { return origins[b].source }

// Status returns how the rule or its table is known.
func (b Basis) Status() calc.Status { return origins[b].status }

// weakest returns the least confirmed status of the rows.
func weakest[T any](rows []T, status func(T) calc.Status) calc.Status {
	all := calc.Read
	for _, r := range rows {
		all = all.Weakest(status(r))
	}
	return all
}
