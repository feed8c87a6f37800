package connections

import "slices"

// A Kind is one link of the load path.
type Kind uint8

// The links, from the roof down.
const (
	DeckToRafter   Kind = iota // roof deck or slats to the rafter
	RafterToLedger             // upper end of the rafter to the ledger
	LedgerToHouse              // ledger to the wall, or to the rafter tails
	HouseFraming               // the framing behind the ledger, down to the foundation
	RafterToBeam               // rafter to a beam line
	BeamToPost                 // beam to the post top
	BeamSplice                 // each piece of a spliced beam to the post below the splice
	PostToBase                 // post foot to the post base
	BaseToGround               // post base to slab, footing or pier
	Ground                     // slab or footing to the soil
	kinds
)

// detail holds what is said of each kind, in the order of the constants.
var detail = [kinds]struct {
	letter, name, from, to, hardware, stage string
}{
	DeckToRafter: {"D", "deck to rafter", "roof deck", "rafter",
		"ring shank nails or screws", "sheathing and roof nailing, before the roofing"},
	RafterToLedger: {"H", "rafter to ledger", "rafter", "ledger",
		"hanger rated down and up", "framing, before anything covers it"},
	LedgerToHouse: {"L", "ledger to house", "ledger", "house framing",
		"lags, bolts or structural screws into framing", "framing, before flashing and cladding close it"},
	HouseFraming: {"W", "house behind the ledger", "house framing", "foundation of the house",
		"studs or rim, plates and their own ties", "when the wall is open"},
	RafterToBeam: {"T", "rafter to beam", "rafter", "beam",
		"tie or strap at each rafter", "framing, before the soffit"},
	BeamToPost: {"C", "beam to post", "beam", "post",
		"post cap, or straps on both sides", "framing"},
	BeamSplice: {"S", "beam splice to post", "each piece of beam", "post",
		"a tie for each piece", "framing"},
	PostToBase: {"B", "post to base", "post", "post base",
		"post base with side plates and a stand-off", "framing"},
	BaseToGround: {"A", "base to concrete", "post base", "slab or footing",
		"cast-in bolt or embedded base", "before the concrete is placed"},
	Ground: {"F", "footing to soil", "slab or footing", "soil",
		"weight of concrete", "holes dug and steel set, before the concrete"},
}

// Letter is the letter of the mark on the drawings, such as T.
func (k Kind) Letter() string { return detail[k].letter }

// String names the link.
func (k Kind) String() string { return detail[k].name }

// From is the part above the link.
func (k Kind) From() string { return detail[k].from }

// To is the part below the link.
func (k Kind) To() string { return detail[k].to }

// Hardware is what usually makes the link, in generic words.
func (k Kind) Hardware() string { return detail[k].hardware }

// Stage is when an inspector can see the link.
func (k Kind) Stage() string { return detail[k].stage }

// attached lists the links of a cover that hangs on the house on one side.
var attached = []Kind{
	DeckToRafter, RafterToLedger, LedgerToHouse, HouseFraming, RafterToBeam,
	BeamToPost, PostToBase, BaseToGround, Ground,
}

// freestanding lists the links of a cover that stands on its own posts.
var freestanding = []Kind{
	DeckToRafter, RafterToBeam, BeamToPost, PostToBase, BaseToGround, Ground,
}

// Path returns the links that a cover must have, from the roof down. A cover that
// lacks one of them has no load path. A beam that is spliced over a post needs
// [BeamSplice] besides.
func Path(attachedToHouse bool) []Kind {
	if attachedToHouse {
		return slices.Clone(attached)
	}
	return slices.Clone(freestanding)
}
