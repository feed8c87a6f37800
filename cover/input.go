package cover

// SchemaVersion is the format version of an input that this program reads.
const SchemaVersion = 1

// An Input is what the user says about one cover, in the trade's units, which the
// key names carry. A pointer that is nil was not said; fields.csv tells for each
// key whether it must be said, may be left open, or is then assumed.
type Input struct {
	Schema      int         `json:"schema"`               // format version, SchemaVersion
	Job         Job         `json:"job,omitzero"`         // what the report is headed with
	Site        Site        `json:"site"`                 // what the place brings
	Cover       Cover       `json:"cover"`                // geometry and roofing
	Rafters     Rafters     `json:"rafters"`              // the sloping members
	Deck        Deck        `json:"deck,omitzero"`        // what lies on the rafters and carries the roof between them
	Beams       Beams       `json:"beams"`                // the lines that carry the rafters
	Posts       Posts       `json:"posts"`                // what carries the beams
	Foundation  Foundation  `json:"foundation"`           // what carries the posts
	Lateral     Lateral     `json:"lateral"`              // what holds the cover sideways
	House       House       `json:"house,omitzero"`       // what stands behind the cover
	Connections Connections `json:"connections,omitzero"` // what holds the parts together, as far as it is chosen
	Products    []Product   `json:"products,omitempty"`   // wood whose values the user gives
	Market      Market      `json:"market,omitzero"`      // what can be bought, and for how much
}

// A Job names the work.
type Job struct {
	Name *string `json:"name,omitempty"` // title of the job
	Note *string `json:"note,omitempty"` // free text, printed below the title
}

// A Site holds the design criteria of the place.
type Site struct {
	Standard          *string           `json:"standard,omitempty"`               // edition of the load standard
	Method            *string           `json:"design_method,omitempty"`          // ASD or LRFD
	WindSpeed         *float64          `json:"wind_speed_mph,omitempty"`         // V, mph, ultimate 3-second gust
	Exposure          *string           `json:"exposure,omitempty"`               // B, C or D
	Topography        *string           `json:"topography,omitempty"`             // flat or hill
	TopographicFactor *float64          `json:"topographic_factor,omitempty"`     // Kzt, factor
	HillShape         *string           `json:"hill_shape,omitempty"`             // ridge, escarpment or hill
	HillHeight        *float64          `json:"hill_height_ft,omitempty"`         // H, ft
	HillHalf          *float64          `json:"hill_half_length_ft,omitempty"`    // Lh, ft
	HillDistance      *float64          `json:"hill_distance_ft,omitempty"`       // x, ft from the crest
	HillBeyond        *bool             `json:"hill_beyond_crest,omitempty"`      // the site lies downwind of the crest
	ElevationFactor   *float64          `json:"elevation_factor,omitempty"`       // Ke, factor
	RoofLive          *float64          `json:"roof_live_psf,omitempty"`          // L0 or Lr, psf of plan
	RoofLiveReducible *bool             `json:"roof_live_reducible,omitempty"`    // R1 and R2 may be used
	PatioAppendix     *bool             `json:"patio_appendix_adopted,omitempty"` // the appendix for patio covers is in force
	GroundSnow        *float64          `json:"ground_snow_psf,omitempty"`        // pg, psf
	GroundSnowBasis   *string           `json:"ground_snow_basis,omitempty"`      // edition that maps pg
	Sheltering        *string           `json:"sheltering,omitempty"`             // fully_exposed, partially_exposed or sheltered
	RiskCategory      *string           `json:"risk_category,omitempty"`          // I to IV
	WinterWind        *float64          `json:"winter_wind,omitempty"`            // W2, ratio
	RoofSnow          *float64          `json:"roof_snow_psf,omitempty"`          // ps, psf of plan
	RoofSnowBasis     *string           `json:"roof_snow_basis,omitempty"`        // allowable or strength level of the roof snow
	FrostDepth        *float64          `json:"frost_depth_in,omitempty"`         // in
	SoilClass         *string           `json:"soil_class,omitempty"`             // class of the table, fill, expansive or unknown
	SoilBearing       *float64          `json:"soil_bearing_psf,omitempty"`       // psf
	SoilLateral       *float64          `json:"soil_lateral_pcf,omitempty"`       // psf for each foot of depth, which is pcf
	GroundWater       *float64          `json:"ground_water_ft,omitempty"`        // ft below grade
	SeismicCategory   *string           `json:"seismic_category,omitempty"`       // A to F
	SeismicShort      *float64          `json:"seismic_sds,omitempty"`            // SDS, factor of gravity
	SeismicSecond     *float64          `json:"seismic_sd1,omitempty"`            // SD1, factor of gravity
	SeismicMapped     *float64          `json:"seismic_s1,omitempty"`             // S1, factor of gravity
	Climate           *string           `json:"climate,omitempty"`                // dry or humid
	Sprinklers        *bool             `json:"sprinklers,omitempty"`             // sprinklers reach the posts
	Rain              *float64          `json:"rain_in_per_hr,omitempty"`         // in/hr, for the flow at the gutter
	RainWind          *float64          `json:"rain_wind_mph,omitempty"`          // mph, wind while it rains
	Sources           map[string]string `json:"sources,omitempty"`                // the user's source text by key of this group
}

// A Cover is the roof: its plan, its slope, its layers.
type Cover struct {
	Attachment   *string  `json:"attachment,omitempty"`          // ledger, rafter_tails or freestanding
	Projection   *float64 `json:"projection_ft,omitempty"`       // ft on plan, house wall to outer roof edge
	Width        *float64 `json:"width_ft,omitempty"`            // ft along the house
	Overhang     *float64 `json:"overhang_ft,omitempty"`         // ft on plan, outer beam line to roof edge
	Slope        *float64 `json:"slope_in_per_ft,omitempty"`     // in of fall per ft of plan, away from the house
	HighEdge     *float64 `json:"high_edge_ft,omitempty"`        // ft, top of the rafters at the ledger or high edge above the slab
	SlabFall     *float64 `json:"slab_fall_in_per_ft,omitempty"` // in of fall per ft, away from the house
	Covering     *string  `json:"covering,omitempty"`            // solid or lattice
	Roofing      *string  `json:"roofing,omitempty"`             // kind of covering, for its least slope
	Ceiling      *string  `json:"ceiling,omitempty"`             // none, board or plaster
	Sides        *string  `json:"sides,omitempty"`               // open, screened or walled
	Flow         *string  `json:"flow,omitempty"`                // enveloped, clear or obstructed
	WindView     *string  `json:"wind_view,omitempty"`           // as_computed, free_roof, attached_canopy or overhang
	CanopyUp     *float64 `json:"canopy_up,omitempty"`           // GCpn upward, factor, not positive
	CanopyDown   *float64 `json:"canopy_down,omitempty"`         // GCpn downward, factor, not negative
	CanopySource *string  `json:"canopy_source,omitempty"`       // where the coefficients stand
	Layers       []Layer  `json:"layers,omitempty"`              // everything on the rafters, from the top
}

// A Layer is one part of the roof's dead load.
type Layer struct {
	Name    *string  `json:"name,omitempty"`    // name in the table of weights, or the user's own words
	Weight  *float64 `json:"psf,omitempty"`     // psf of sloped surface; the table's when left open
	Certain *bool    `json:"certain,omitempty"` // fastened and sure to stay, so it resists uplift
}

// Rafters are the members from the ledger outward.
type Rafters struct {
	Species *string  `json:"species,omitempty"`         // species group of the tables
	Grade   *string  `json:"grade,omitempty"`           // grade of the tables
	Size    *string  `json:"size,omitempty"`            // nominal, such as 2x6; chosen when left open
	Spacing *float64 `json:"spacing_in,omitempty"`      // in on center
	Brace   *float64 `json:"bottom_brace_ft,omitempty"` // ft between braces of the bottom edge; the full span when left open
	SeatCut *float64 `json:"seat_cut_in,omitempty"`     // in, height of the plumb cut over a dropped beam; 0 for none
	Green   *bool    `json:"green,omitempty"`           // installed unseasoned
	Wet     *bool    `json:"wet,omitempty"`             // wet service
	Incised *bool    `json:"incised,omitempty"`         // incised for treatment
	Hot     *string  `json:"sustained_heat,omitempty"`  // to_100F, to_125F or to_150F

	MeasuredBreadth *float64 `json:"measured_breadth_in,omitempty"` // in, of a rough or old piece, the small side
	MeasuredDepth   *float64 `json:"measured_depth_in,omitempty"`   // in, of a rough or old piece, the large side
}

// A Deck is what spans from rafter to rafter.
type Deck struct {
	Kind    *string  `json:"kind,omitempty"`         // panel, plank, purlins, slats or other
	Rating  *string  `json:"panel_rating,omitempty"` // span rating of panels; chosen when left open
	Size    *string  `json:"size,omitempty"`         // nominal, of a deck of lumber; chosen when left open
	Species *string  `json:"species,omitempty"`      // species group of the tables
	Grade   *string  `json:"grade,omitempty"`        // grade of the tables
	Spacing *float64 `json:"spacing_in,omitempty"`   // in on center, of purlins and slats
	OnEdge  *bool    `json:"on_edge,omitempty"`      // purlins and slats stand on their narrow face
	Held    *bool    `json:"edges_held,omitempty"`   // clips or blocking, tongue and groove, or blocking between slats
	Blocked *bool    `json:"blocked,omitempty"`      // framing of 2 in. nominal below every edge of the panels, nailed
	Layup   *string  `json:"layup,omitempty"`        // simple_span, two_spans or controlled_random, of planks
	Workers *bool    `json:"workers,omitempty"`      // a worker may step on it
	Green   *bool    `json:"green,omitempty"`        // installed unseasoned
	Wet     *bool    `json:"wet,omitempty"`          // wet service
	Incised *bool    `json:"incised,omitempty"`      // incised for treatment
}

// Beams are the lines parallel to the house.
type Beams struct {
	Lines    []float64 `json:"lines_ft,omitempty"`        // ft on plan from the house wall or high edge, in order
	Species  *string   `json:"species,omitempty"`         // species group of the tables
	Grade    *string   `json:"grade,omitempty"`           // grade of the tables
	Size     *string   `json:"size,omitempty"`            // nominal; chosen when left open
	Position *string   `json:"position,omitempty"`        // dropped or flush
	OnPost   *string   `json:"on_post,omitempty"`         // seated, notched or side_bolted
	Notch    *float64  `json:"notch_in,omitempty"`        // in, cut from the underside of the beam over its posts
	BoltLow  *float64  `json:"bolt_low_in,omitempty"`     // in, lowest bolt at a post above the lower edge
	BoltHigh *float64  `json:"bolt_high_in,omitempty"`    // in, highest bolt above the lower edge
	Splices  *string   `json:"splices,omitempty"`         // by_stock, every_post or none
	Stock    *float64  `json:"stock_length_ft,omitempty"` // ft, longest piece
	Green    *bool     `json:"green,omitempty"`           // installed unseasoned
	Wet      *bool     `json:"wet,omitempty"`             // wet service
	Incised  *bool     `json:"incised,omitempty"`         // incised for treatment
	Hot      *string   `json:"sustained_heat,omitempty"`  // to_100F, to_125F or to_150F

	Plies           *int     `json:"plies,omitempty"`               // pieces of the size side by side
	PlyFastening    *string  `json:"ply_fastening,omitempty"`       // unfastened, nailed or bolted
	MeasuredBreadth *float64 `json:"measured_breadth_in,omitempty"` // in, of a rough or old piece, the small side
	MeasuredDepth   *float64 `json:"measured_depth_in,omitempty"`   // in, of a rough or old piece, the large side
}

// Posts stand below every beam line at the same places along the house.
type Posts struct {
	Count     *int      `json:"count,omitempty"`          // posts per beam line, equal bays
	EndInset  *float64  `json:"end_inset_ft,omitempty"`   // ft, roof edge to the center of the end post
	Positions []float64 `json:"positions_ft,omitempty"`   // ft from the left roof edge, instead of count
	Species   *string   `json:"species,omitempty"`        // species group of the tables
	Grade     *string   `json:"grade,omitempty"`          // grade of the tables
	Size      *string   `json:"size,omitempty"`           // nominal; chosen when left open
	Wet       *bool     `json:"wet,omitempty"`            // wet service
	Incised   *bool     `json:"incised,omitempty"`        // incised for treatment
	Hot       *string   `json:"sustained_heat,omitempty"` // to_100F, to_125F or to_150F

	Plies           *int     `json:"plies,omitempty"`               // pieces of the size side by side
	PlyFastening    *string  `json:"ply_fastening,omitempty"`       // unfastened, nailed or bolted
	MeasuredBreadth *float64 `json:"measured_breadth_in,omitempty"` // in, of a rough or old piece, the small side
	MeasuredDepth   *float64 `json:"measured_depth_in,omitempty"`   // in, of a rough or old piece, the large side

	WideFace          *string  `json:"wide_face,omitempty"`          // along or out: how the wide face of a rectangular post lies
	Tongue            *float64 `json:"tongue_in,omitempty"`          // in, what a notch for the beam leaves of the post top
	LeastEccentricity *bool    `json:"least_eccentricity,omitempty"` // a sixth of the contact, where the beam is centered
	Holes             *float64 `json:"holes_in,omitempty"`           // in, bolt holes beside each other in one cross-section
	FootPlate         *bool    `json:"foot_plate,omitempty"`         // the foot bears on a metal plate
}

// A Foundation is what the posts stand on.
type Foundation struct {
	Kind            *string  `json:"kind,omitempty"`                // slab, footing, pier or embedded
	SlabThickness   *float64 `json:"slab_thickness_in,omitempty"`   // in
	SlabRule        *string  `json:"slab_rule,omitempty"`           // live_and_dead or all_loads
	SlabEdge        *float64 `json:"slab_edge_in,omitempty"`        // in, posts to the nearest edge, joint or crack
	SlabAcross      *float64 `json:"slab_edge_across_in,omitempty"` // in, to the nearest one at right angles to that
	Width           *float64 `json:"width_in,omitempty"`            // in, side or diameter; chosen when left open
	Depth           *float64 `json:"depth_in,omitempty"`            // in, bottom below grade; chosen when left open
	Neck            *float64 `json:"neck_in,omitempty"`             // in, neck from a pad up to grade
	PadThickness    *float64 `json:"pad_thickness_in,omitempty"`    // in, of a pad below a neck; chosen when left open
	OneSize         *bool    `json:"one_size,omitempty"`            // all footings are poured in the size that does for every post
	SoilOver        *bool    `json:"soil_over_pad,omitempty"`       // soil over the pad stays, without slab or paving on it
	FrostExempt     *bool    `json:"frost_exemption,omitempty"`     // that of small freestanding buildings is claimed
	HeldBySlab      *bool    `json:"held_by_slab,omitempty"`        // a rigid slab lies against the embedded posts
	LooseTop        *float64 `json:"loose_top_in,omitempty"`        // in of ground that does not hold embedded posts
	Concrete        *float64 `json:"concrete_psi,omitempty"`        // psi, strength of the concrete
	AnchorKind      *string  `json:"anchor,omitempty"`              // headed, hooked, drilled or embedded_base
	AnchorDiameter  *float64 `json:"anchor_diameter_in,omitempty"`  // in
	AnchorEmbedment *float64 `json:"anchor_embedment_in,omitempty"` // in
	AnchorEdge      *float64 `json:"anchor_edge_in,omitempty"`      // in, to the nearest edge of the concrete
	AnchorCategory  *int     `json:"anchor_category,omitempty"`     // of a drilled anchor, 1 to 3
}

// Lateral names what holds the cover sideways in each direction.
type Lateral struct {
	Along *string `json:"along_house,omitempty"`    // house_diaphragm, knee_braces, embedded_posts or none
	Out   *string `json:"out_from_house,omitempty"` // likewise, across

	BraceDrop     *float64 `json:"brace_drop_ft,omitempty"`     // ft, underside of the beam to the joint of brace and post
	BraceAngle    *float64 `json:"brace_angle_deg,omitempty"`   // degrees of the brace from the horizontal
	BraceSize     *string  `json:"brace_size,omitempty"`        // nominal; chosen when left open
	BracedRafters *int     `json:"braced_rafters,omitempty"`    // rafters side by side that a brace meets; chosen when left open
	HouseCapacity *float64 `json:"house_capacity_lb,omitempty"` // lb, allowable stress design, for which the house was designed
	HouseSource   *string  `json:"house_source,omitempty"`      // the design that says so
}

// A House is what stands behind an attached cover.
type House struct {
	Wall           *string  `json:"wall,omitempty"`                   // what the ledger is fastened to
	Eave           *float64 `json:"eave_ft,omitempty"`                // ft, underside of the eave above the slab
	RoofEdge       *float64 `json:"roof_edge_ft,omitempty"`           // ft, edge of the house roof above the slab
	RoofLength     *float64 `json:"roof_length_ft,omitempty"`         // ft, house roof across the wall, for drift
	RoofSlope      *float64 `json:"roof_slope_in_per_ft,omitempty"`   // in of fall per ft, toward the cover
	EaveToRidge    *float64 `json:"eave_to_ridge_ft,omitempty"`       // ft, house roof
	Slippery       *bool    `json:"slippery,omitempty"`               // house roof of metal, membrane or the like
	Gap            *float64 `json:"gap_ft,omitempty"`                 // ft between the cover and the house roof edge
	RafterSpan     *float64 `json:"rafter_span_ft,omitempty"`         // ft, existing rafters, wall to wall
	RafterSpacing  *float64 `json:"rafter_spacing_in,omitempty"`      // in on center, existing rafters
	RafterOverhang *float64 `json:"rafter_overhang_ft,omitempty"`     // ft past the wall, existing rafters
	RafterHeight   *float64 `json:"rafter_height_ft,omitempty"`       // ft, mean height of the existing roof
	RafterSlope    *float64 `json:"rafter_slope_in_per_ft,omitempty"` // in of fall per ft, existing roof
	Dead           *float64 `json:"dead_psf,omitempty"`               // psf of plan, existing roof at its least
	Enclosure      *string  `json:"enclosure,omitempty"`              // enclosed or partially enclosed
	OldRoof        OldRoof  `json:"old_roof,omitzero"`                // more about the existing roof, for the survey of its joints
	Joints         []Joint  `json:"joints,omitempty"`                 // existing roof joints that the user asks about
}

// A Market is what the user can buy.
type Market struct {
	StockLengths []float64 `json:"stock_lengths_ft,omitempty"` // ft, lengths that the yard keeps
	Prices       []Price   `json:"prices,omitempty"`           // the user's own prices
}

// A Price is the user's price of one item of the take-off.
type Price struct {
	Item    *string  `json:"item,omitempty"`    // the item as the take-off names it
	Per     *string  `json:"per,omitempty"`     // board_foot, foot, each, square_foot or cubic_yard
	Dollars *float64 `json:"dollars,omitempty"` // dollars for one
}
