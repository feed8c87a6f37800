package table

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"patiocover/calc"
	"patiocover/cover"
)

// Schema is the only version of the format of criteria.
const Schema = 1

// Criteria are the ranges of one table. Nothing in them is assumed: whatever a part
// needs must be given. A part that is left out is not in the table.
type Criteria struct {
	Schema   int       `json:"schema"`             // version of the format
	Place    string    `json:"place"`              // title of the table
	Source   string    `json:"source"`             // where the criteria come from
	Standard string    `json:"standard"`           // ASCE 7-16 or ASCE 7-22
	Loads    []Load    `json:"loads"`              // load columns
	Wind     Wind      `json:"wind"`               // one table for each speed
	Service  Service   `json:"service"`            // of all wood
	Limits   Limits    `json:"limits"`             // of deflection
	Rafters  *Rafters  `json:"rafters,omitempty"`  // longest spans
	Beams    *Beams    `json:"beams,omitempty"`    // least sizes
	Posts    *Posts    `json:"posts,omitempty"`    // least sizes
	Footings *Footings `json:"footings,omitempty"` // least widths
	Ties     *Ties     `json:"ties,omitempty"`     // uplift ratings
}

// A Load is one column of gravity load.
type Load struct {
	Dead float64 `json:"dead_psf"`      // psf of slope, everything on the rafters
	Sure float64 `json:"sure_dead_psf"` // psf of slope, the part of it that is sure to stay, so it resists uplift
	Live float64 `json:"live_psf"`      // psf of plan, roof live load
	Snow float64 `json:"snow_psf"`      // psf of plan, roof snow of the level of the standard, as it lies everywhere
}

// A Wind is what all wind speeds of the table have in common.
type Wind struct {
	Speeds   []float64 `json:"speeds_mph"`         // mph, basic wind speeds
	Exposure string    `json:"exposure"`           // B, C or D
	Hill     float64   `json:"topographic_factor"` // Kzt, factor
	Height   float64   `json:"roof_height_ft"`     // ft, mean height of the cover
	Slope    float64   `json:"slope_in_per_ft"`    // in of fall per ft of plan
	Flow     string    `json:"flow"`               // clear, obstructed or enveloped
}

// A Service is how all wood of the table serves.
type Service struct {
	Wet     *bool   `json:"wet"`              // wet service
	Green   *bool   `json:"green"`            // installed unseasoned
	Incised *bool   `json:"incised"`          // incised for treatment
	Joined  *bool   `json:"deck_joined"`      // the deck is panels or tongue and groove: it holds the top edge and spreads load
	Worker  *bool   `json:"worker"`           // somebody of 300 lb may stand on any member
	Framing float64 `json:"framing_psf"`      // psf of plan, rafters, beams and posts as they weigh on what is below them
	Heat    string  `json:"sustained_heat"`   // to_100F, to_125F or to_150F
	Longest float64 `json:"longest_stock_ft"` // ft, longest rafter that is listed
}

// Limits are the divisors of the span for deflection.
type Limits struct {
	Live  float64 `json:"live"`  // ratio of span to sag under live or snow load
	Total float64 `json:"total"` // ratio of span to sag in the long term, creep counted
}

// Rafters asks for the longest span by wood, size and spacing.
type Rafters struct {
	Woods    []cover.Wood `json:"woods"`           // species and grades
	Sizes    []string     `json:"sizes"`           // nominal
	Spacings []float64    `json:"spacings_in"`     // in on center
	Seat     float64      `json:"seat_in"`         // in, least bearing along the rafter
	Brace    float64      `json:"bottom_brace_ft"` // ft between braces of the bottom edge, for uplift; 0 for the supports alone
}

// Beams asks for the least size by wood, span of the rafters and spacing of the posts.
type Beams struct {
	Woods    []cover.Wood `json:"woods"`            // species and grades
	Sizes    []string     `json:"sizes"`            // nominal, in the order they are tried
	Spans    []float64    `json:"rafter_spans_ft"`  // ft on plan, from the house to the beam
	Overhang float64      `json:"overhang_ft"`      // ft on plan, of the rafters past the beam
	Bays     []float64    `json:"post_spacings_ft"` // ft between posts
	Seat     float64      `json:"seat_in"`          // in, bearing along the beam on a post
}

// Posts asks for the least size by wood, area of roof and height.
type Posts struct {
	Woods   []cover.Wood `json:"woods"`      // species and grades
	Sizes   []string     `json:"sizes"`      // nominal, in the order they are tried
	Areas   []float64    `json:"areas_sqft"` // ft² of plan on one post
	Heights []float64    `json:"heights_ft"` // ft, from base to beam
}

// Footings asks for the least width by area of roof and soil.
type Footings struct {
	Shape string    `json:"shape"`         // square or round
	Areas []float64 `json:"areas_sqft"`    // ft² of plan on one post
	Soils []float64 `json:"soils_psf"`     // psf, allowable bearing pressures
	Depth float64   `json:"depth_in"`      // in, bottom below grade; concrete all the way up
	Frost float64   `json:"frost_in"`      // in, frost depth
	Post  float64   `json:"post_width_in"` // in, width of the post or its base
}

// Ties asks for the rating of the tie at the outer end of a rafter.
type Ties struct {
	Spans    []float64 `json:"rafter_spans_ft"` // ft on plan
	Spacings []float64 `json:"spacings_in"`     // in on center
	Overhang float64   `json:"overhang_ft"`     // ft on plan, past the beam
}

// maxCriteria is the largest text of criteria, bytes.
const maxCriteria = 1 << 20

// Read reads criteria from JSON and lists their faults in a [*calc.InputError]. A text
// that is not JSON gives a [*cover.SyntaxError].
func Read(r io.Reader) (Criteria, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxCriteria+1))
	if err != nil {
		return Criteria{}, fmt.Errorf("reading the criteria: %w", err)
	}
	if len(text) > maxCriteria {
		return Criteria{}, &cover.SyntaxError{Reason: "more than " + strconv.Itoa(maxCriteria) + " bytes"}
	}
	var c Criteria
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&c); err != nil {
		return Criteria{}, refused(err)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return Criteria{}, &cover.SyntaxError{Reason: "something follows the closing brace"}
	}
	return c, c.Validate()
}

// refused turns an error of the decoder into a fault of a field where it names one.
func refused(err error) error {
	var f calc.Fields
	var kind *json.UnmarshalTypeError
	name, unknown := strings.CutPrefix(err.Error(), "json: unknown field ")
	switch {
	case unknown:
		if text, err := strconv.Unquote(name); err == nil {
			name = text
		}
		f.Add(name, "an unknown key", "a key of the criteria of a table")
	case errors.As(err, &kind):
		f.Add(kind.Field, kind.Value, "a value of type "+kind.Type.String())
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return &cover.SyntaxError{Reason: "it ends too early"}
	default:
		return &cover.SyntaxError{Reason: err.Error()}
	}
	return f.Err()
}

// canonical is the form of the criteria that their hash is of: JSON on one line.
func (c Criteria) canonical() ([]byte, error) {
	text, err := json.Marshal(c)
	if err != nil {
		return nil, fmt.Errorf("writing the criteria for their hash: %w", err)
	}
	return text, nil
}

// hashOf is the SHA-256 of the criteria in their canonical form.
func hashOf(canonical []byte) string {
	sum := sha256.Sum256(canonical)
	return hex.EncodeToString(sum[:])
}
