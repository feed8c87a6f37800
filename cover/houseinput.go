package cover

// An OldRoof is what the survey of an existing roof knows beyond its spans.
type OldRoof struct {
	System      *string        `json:"system,omitempty"`             // rafters, or plank_and_beam
	Length      *float64       `json:"wall_length_ft,omitempty"`     // ft, house along the wall from gable end to gable end
	Lines       []float64      `json:"interior_lines_ft,omitempty"`  // ft from the near wall to each support between the walls
	RunsOn      *bool          `json:"rafters_run_on,omitempty"`     // they run on over those supports
	WallOpen    *float64       `json:"wall_openings_ft2,omitempty"`  // ft², openings in the wall with the most of them
	Wall        *float64       `json:"wall_area_ft2,omitempty"`      // ft², gross area of that wall
	RestOpen    *float64       `json:"other_openings_ft2,omitempty"` // ft², openings in all other walls and the roof
	Rest        *float64       `json:"other_area_ft2,omitempty"`     // ft², gross area of those
	TieWind     *string        `json:"tie_wind,omitempty"`           // larger of both ways, or main_system alone
	TieDollars  *float64       `json:"tie_dollars,omitempty"`        // dollars, one tie in place
	LateralLoad *float64       `json:"lateral_lb,omitempty"`         // lb, sideways demand on the wall line without the cover
	TailSize    *string        `json:"tail_size,omitempty"`          // nominal size of the rafter tails
	TailSpecies *string        `json:"tail_species,omitempty"`       // species group of the stamp
	TailGrade   *string        `json:"tail_grade,omitempty"`         // grade of the stamp
	TailCut     *float64       `json:"tail_cut_in,omitempty"`        // in, depth of the seat cut at the heel
	TailReach   *float64       `json:"tail_reach_ft,omitempty"`      // ft, heel to the ledger of the cover
	TailSound   *bool          `json:"tails_sound,omitempty"`        // seen to be free of decay and splits
	OpenLong    *float64       `json:"long_side_open,omitempty"`     // ratio, part of the longer open side of the cover below 6 ft 8 in
	OpenOther   *float64       `json:"other_side_open,omitempty"`    // ratio, likewise of one more side
	Layers      []OldLayer     `json:"layers,omitempty"`             // everything on the roof, there, gone or to come
	Below       []BelowLine    `json:"below,omitempty"`              // what stands below the joints, line by line
	Openings    []HouseOpening `json:"openings,omitempty"`           // windows and doors under the cover
}

// An OldLayer is one layer of an existing roof.
type OldLayer struct {
	Name   *string  `json:"name,omitempty"`  // name in the table of weights, or the user's own words
	Weight *float64 `json:"psf,omitempty"`   // psf of sloped surface; the table's when left open
	State  *string  `json:"state,omitempty"` // present, removed, to_remove or planned
	Fixed  *bool    `json:"fixed,omitempty"` // fastened and sure to stay, so it resists uplift; gravel never is
}

// A BelowLine is the path from the joints of one line down to the ground.
type BelowLine struct {
	Line        *string  `json:"line,omitempty"`               // its name, to which the joints refer
	Joints      *float64 `json:"joints_per_post,omitempty"`    // factor: joints that hang on one post or stud
	Beam        *string  `json:"beam_to_post,omitempty"`       // evidence, as of a joint
	BeamSound   *bool    `json:"beam_to_post_sound,omitempty"` // seen to be sound
	BeamHolds   *float64 `json:"beam_to_post_lb,omitempty"`    // lb uplift
	Foot        *string  `json:"post_to_slab,omitempty"`       // evidence, as of a joint
	FootSound   *bool    `json:"post_to_slab_sound,omitempty"` // seen to be sound
	FootHolds   *float64 `json:"post_to_slab_lb,omitempty"`    // lb uplift
	GroundHolds *float64 `json:"ground_lb,omitempty"`          // lb, 0.6 of what the slab or footing weighs there
}

// A HouseOpening is a window or a door of the house below the cover.
type HouseOpening struct {
	Name  *string  `json:"name,omitempty"`          // where it is
	Kind  *string  `json:"kind,omitempty"`          // window, door or escape_window
	Room  *bool    `json:"room_needs_it,omitempty"` // a habitable room has its required light and air through it
	Clear *float64 `json:"clear_path_in,omitempty"` // in, clear path from it to the open
}

// A Joint is one existing roof joint, or a run of equal ones.
type Joint struct {
	Mark      *string  `json:"mark,omitempty"`          // the user's mark
	Wall      *string  `json:"wall,omitempty"`          // wall or line that it stands on, such as north
	First     *int     `json:"first,omitempty"`         // number of the first rafter of a run
	Last      *int     `json:"last,omitempty"`          // number of the last one
	Place     *string  `json:"place,omitempty"`         // eave, far_wall, interior or ridge
	Zone      *string  `json:"zone,omitempty"`          // corner, edge or field
	End       *float64 `json:"end_ft,omitempty"`        // ft, nearest joint of the run to a gable end
	Evidence  *string  `json:"evidence,omitempty"`      // what is seen: strap, toenails, bolts, none_seen or unknown
	Condition *string  `json:"condition,omitempty"`     // sound, rust, split, decay, gap or not_recorded
	Rating    *float64 `json:"rating_lb,omitempty"`     // lb uplift for wind, of a strap, from its label
	RatedFor  *string  `json:"rated_for,omitempty"`     // species group that the rating is for
	Asked     *int     `json:"nails_asked,omitempty"`   // nails that the rating asks for at each end
	There     *int     `json:"nails_there,omitempty"`   // nails counted at the weaker end
	Gauge     *string  `json:"gauge,omitempty"`         // steel of a strap without a rating, by its number
	Width     *float64 `json:"width_in,omitempty"`      // in, of that strap
	Fastener  *string  `json:"fastener,omitempty"`      // nail or bolt: 16d common, 8d box, 1/2
	Count     *int     `json:"count,omitempty"`         // toe-nails or bolts of one joint
	Species   *string  `json:"species,omitempty"`       // species group of the weaker member, if it is stamped
	Plate     *float64 `json:"plate_in,omitempty"`      // in, thickness of the plate or beam below
	Rafter    *float64 `json:"rafter_in,omitempty"`     // in, thickness of the rafter
	Margin    *float64 `json:"end_margin_in,omitempty"` // in, bolt to the end or edge that it pulls toward
	Line      *string  `json:"line,omitempty"`          // line of house.old_roof.below that carries it
	Detail    *string  `json:"detail,omitempty"`        // what is known about it, in words
	Photo     *string  `json:"photo,omitempty"`         // name or number of the photo
}
