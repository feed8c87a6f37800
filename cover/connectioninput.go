package cover

// Connections are what the user has or buys to hold the parts together. What is left open the
// program proposes.
type Connections struct {
	Green        *bool    `json:"fastened_green,omitempty"`       // the lumber is above 19 % moisture when it is fastened
	Corrosion    *string  `json:"corrosion,omitempty"`            // ordinary or severe
	RatedGravity *float64 `json:"rated_for_gravity,omitempty"`    // G of the wood that the ratings below are for, a ratio
	Deck         *string  `json:"deck,omitempty"`                 // fastened or none
	DeckNail     *string  `json:"deck_nail,omitempty"`            // type of the nails
	DeckNailSize *string  `json:"deck_nail_size,omitempty"`       // size of the nails, such as 8d
	DeckSpacing  *float64 `json:"deck_nail_spacing_in,omitempty"` // in, along each rafter
	Tie          *string  `json:"rafter_tie,omitempty"`           // rated, straps, toenails or none
	TieUp        *float64 `json:"rafter_tie_up_lb,omitempty"`     // lb, rating in uplift
	TieSide      *float64 `json:"rafter_tie_side_lb,omitempty"`   // lb, rating sideways
	StrapGauge   *string  `json:"strap_gauge,omitempty"`          // gauge of plain straps
	StrapWidth   *float64 `json:"strap_width_in,omitempty"`       // in
	StrapNails   *int     `json:"strap_nails,omitempty"`          // 8d nails at each end of one strap
	Hanger       *string  `json:"hanger,omitempty"`               // rated or none
	HangerDown   *float64 `json:"hanger_down_lb,omitempty"`       // lb, rating downward at C_D = 1
	HangerUp     *float64 `json:"hanger_up_lb,omitempty"`         // lb, rating in uplift
	HangerSide   *float64 `json:"hanger_side_lb,omitempty"`       // lb, rating sideways
	Ledger       *string  `json:"ledger,omitempty"`               // lags or none
	LagSize      *string  `json:"ledger_lag,omitempty"`           // diameter of the lag screws, as ordered
	LagLength    *float64 `json:"ledger_lag_length_in,omitempty"` // in
	LagsEach     *int     `json:"ledger_lags_each,omitempty"`     // at each stud, or at each spacing of a rim
	LagSpacing   *float64 `json:"ledger_spacing_in,omitempty"`    // in: studs on center, or the spacing along a rim
	WallGap      *float64 `json:"wall_gap_in,omitempty"`          // in: stucco, sheathing or spacer between ledger and framing
	WallSpecies  *string  `json:"wall_species,omitempty"`         // species group of the studs or the rim
	WallBlocked  *bool    `json:"wall_blocked,omitempty"`         // blocking between the studs takes the force along the house
	WallFraming  *string  `json:"wall_framing,omitempty"`         // unknown or verified: the house framing for these forces
	PostTop      *string  `json:"post_top,omitempty"`             // cap, notch or none
	CapUp        *float64 `json:"cap_up_lb,omitempty"`            // lb, rating in uplift
	CapSide      *float64 `json:"cap_side_lb,omitempty"`          // lb, rating sideways
	Splice       *string  `json:"splice_ties,omitempty"`          // each_piece or none
	Base         *string  `json:"post_base,omitempty"`            // rated or none
	BaseUp       *float64 `json:"base_up_lb,omitempty"`           // lb, rating in uplift
	BaseSide     *float64 `json:"base_side_lb,omitempty"`         // lb, rating sideways
}
