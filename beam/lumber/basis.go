package lumber

import "patiocover/calc"

// A basis says why a factor has its value: the rule and the table behind it.
type basis uint8

// The rules, for each factor the ordinary case first.
const (
	notApplicable    basis = iota // the factor does not apply to this value
	dry                           // at most 19 % moisture content in service
	wetLumber                     // C_M of Tables 4A and 4B
	wetExempt                     // dimension lumber weak enough for C_M = 1.0
	wetTimber                     // C_M of Table 4D
	wetGlued                      // C_M of Table 5A
	wetGiven                      // given with the values
	wetPine                       // timbers whose values are for wet service
	upTo100Degrees                // no sustained heat
	sustainedHeat                 // C_t of Table 2.3.3
	heatGiven                     // given with the values
	sizeOf4A                      // C_F of Table 4A by nominal width
	sizeOf4B                      // C_F of Southern Pine dimension lumber
	sizeByDepth                   // C_F = (12/d)^(1/9) of timbers deeper than 12 in.
	sizeMachine                   // machine stress-rated lumber has no C_F
	sizeOrdinary                  // C_F is 1.0 in this size
	onEdge                        // loaded on the narrow face
	flatThin                      // C_fu of Tables 4A and 4B, 2 and 3 in. thick
	flatThick                     // C_fu of Tables 4A and 4B, 4 in. thick
	flatStringer                  // wide face factor of beams and stringers
	flatGlued                     // C_fu of Table 5A
	flatGiven                     // Fb given for load on the wide face
	flatPost                      // posts and timbers have no flat use factor
	notIncised                    // no incisions
	incisedDimension              // C_i of Table 4.3.8
	incisedTimber                 // C_i of Table 4.3.8, taken for timbers as well
	notRepetitive                 // not a repetitive member
	repetitiveUse                 // C_r of NDS 4.3.9
	repeatGiven                   // given with the values
	repetitiveTimber              // timbers take no C_r
	notGiven                      // no factor given with the values: no capacity
	cutGlued                      // C_vr of NDS 5.3.10
	basisCount
)

// origin is what a basis quotes.
type origin struct {
	source string
	status calc.Status
}

// origins lists the sources; the status of a table is that of its least confirmed
// row.
var origins = [basisCount]origin{
	notApplicable:    {"NDS 2018 Table 4.3.1", calc.Read},
	dry:              {"NDS 2018 4.1.4, dry service", calc.Read},
	wetLumber:        {"NDS Supp. 2018 Tables 4A, 4B, wet service", wetStatus("dimension")},
	wetExempt:        {"NDS Supp. 2018 Tables 4A, 4B, wet service, low value", calc.Read},
	wetTimber:        {"NDS Supp. 2018 Table 4D, wet service", wetStatus("timbers")},
	wetGlued:         {"NDS Supp. 2018 Table 5A, wet service, 16 % and more", wetStatus("glued laminated")},
	wetGiven:         {"wet service factor given with the values", calc.Read},
	wetPine:          {"NDS Supp. 2018 Table 4D, values are for wet service", wetStatus("Southern Pine timbers")},
	upTo100Degrees:   {"NDS 2018 2.3.3, no sustained heat", calc.Read},
	sustainedHeat:    {"NDS 2018 Table 2.3.3", weakest(heat, heatRow.known)},
	heatGiven:        {"factor for heat given with the values", calc.Read},
	sizeOf4A:         {"NDS Supp. 2018 Table 4A, size factor", weakest(sizeFactors, sizeFactor.known)},
	sizeOf4B:         {"NDS Supp. 2018 Table 4B, size factor (seen transcribed)", calc.Read},
	sizeByDepth:      {"NDS 2018 4.3.6.2", calc.Read},
	sizeMachine:      {"NDS Supp. 2018 Table 4C, no size factor", calc.Read},
	sizeOrdinary:     {"NDS 2018 4.3.6", calc.Read},
	onEdge:           {"NDS 2018 4.3.7, loaded on the narrow face", calc.Read},
	flatThin:         {"NDS Supp. 2018 Tables 4A, 4B, flat use", weakest(thinFlat, flatFactor.known)},
	flatThick:        {"NDS Supp. 2018 Tables 4A, 4B, flat use", weakest(thickFlat, flatFactor.known)},
	flatStringer:     {"NDS Supp. 2018 Table 4D, loaded on the wide face", weakest(flatTimbers, flatTimber.known)},
	flatGlued:        {"NDS Supp. 2018 Table 5A, flat use, (12/d)^(1/9)", calc.Computed},
	flatGiven:        {"Fb given for load on the wide face", calc.Read},
	flatPost:         {"NDS 2018 4.3.7, no factor for posts and timbers", calc.Recalled},
	notIncised:       {"NDS 2018 4.3.8, not incised", calc.Read},
	incisedDimension: {"NDS 2018 Table 4.3.8", weakest(incisions, incision.known)},
	incisedTimber:    {"NDS 2018 Table 4.3.8, taken for timbers by choice", weakest(incisions, incision.known)},
	notRepetitive:    {"NDS 2018 4.3.9, not repetitive", calc.Read},
	repetitiveUse:    {"NDS 2018 4.3.9", calc.Read},
	repeatGiven:      {"repetitive member factor given with the values", calc.Read},
	notGiven:         {"no factor given with the values for this use: no capacity", calc.Read},
	cutGlued:         {"NDS 2018 5.3.10, at notches and fasteners", calc.Recalled},
	repetitiveTimber: {"NDS 2018 4.3.9, not for timbers", calc.Read},
}

// source returns the standard and clause behind the factor.
func (b basis) source() string { return origins[b].source }

// status returns how the rule or its table is known.
func (b basis) status() calc.Status { return origins[b].status }

// weakest returns the least confirmed status of the rows.
func weakest[T any](rows []T, status func(T) calc.Status) calc.Status {
	all := calc.Read
	for _, r := range rows {
		all = all.Weakest(status(r))
	}
	return all
}
