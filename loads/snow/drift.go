package snow

import (
	"math"

	"patiocover/calc"
	"patiocover/loads"
)

// leastFetch is the least upwind length of a drift by ASCE 7-16, in. That edition is
// transcribed as printing 20 ft with a bound for shorter roofs; the 25 ft of ASCE 7-10
// (from memory) are kept as the safe side, without the bound.
const leastFetch = 25 * calc.Ft

// farthest is the gap from which the house sheds no drift on the cover, in (ASCE 7-16
// 7.7.2, read in a library's transcription).
const farthest = 20 * calc.Ft

// A Kind says where the snow of a drift comes from.
type Kind uint8

// The kinds of drift. The load is largest at the house, or at the parapet.
const (
	Leeward  Kind = iota // off the roof of the house, in its lee
	Windward             // along the cover, against the house
	Parapet              // along the cover, against a parapet or a fascia that stands above its roof
)

// String names the kind.
func (k Kind) String() string {
	if k > Parapet {
		return "unknown drift"
	}
	return [...]string{"leeward drift", "windward drift", "drift at a parapet"}[k]
}

// A Step is where snow gathers: the height above the roof of the cover and the roofs
// on both sides.
type Step struct {
	Height float64 // h, from the roof of the cover up to the edge of the house roof, or of the parapet, in
	House  float64 // lu of the house roof in the direction of the wind, in; for a leeward drift
	Cover  float64 // depth of the cover away from the step, in; lu of the other drifts
	Gap    float64 // s, clear distance between house and cover on plan, in; 0 where they touch
}

// A Drift is snow on top of the balanced snow: a triangle, largest at the step.
type Drift struct {
	Balanced Balanced // the snow below it
	Step     Step     // as given
	Kind     Kind     // where its snow comes from
	Reason   Reason   // Found, NoSnow, TooLow, TooFar, or a refusal
	Density  float64  // snow density, lb/in³
	Depth    float64  // hb, depth of the balanced snow on the cover, in
	Clear    float64  // hc, step above the balanced snow, in
	Fetch    float64  // lu used, in
	Free     float64  // hd before it is bounded by the step, in
	Height   float64  // hd, in
	Width    float64  // w, from the step to where the drift ends, in
	Cut      float64  // part of the width that falls into the gap, in
	Peak     float64  // pd at the near edge of the cover, lb/in² of plan
	Loaded   float64  // length of the cover under the drift, from its near edge, in
	Far      float64  // pressure at the end of that length, lb/in²: not 0 where the cover ends before the drift
	form     form     // branch taken for height and width
	ends     bool     // the cover ends before the drift
}

// A form is the rule that gave height and width.
type form uint8

const (
	whole    form = iota // the drift fits below the step: w = 4 hd
	bounded              // it fills the step: hd = hc, w wider
	apart                // across a gap, 7.7.2
	unbroken             // windward drift of ASCE 7-22, not bounded by the step
)

// NewDrift returns one drift on the cover (ASCE 7 7.7.1, 7.7.2 and 7.8). By ASCE 7-16
// hd = √Is (0.43 lu^⅓ (pg+10)^¼ − 1.5) and by ASCE 7-22 hd = 1.5 √(pg^0.74 lu^0.70
// W2^1.7 / γ), in feet and psf; three quarters of it for snow from the cover itself.
//
// Where house and cover touch, ASCE 7-16 asks for the larger of the leeward and the
// windward drift, ASCE 7-22 for both; see [Drifts]. The permission to leave the height
// at 60 % of the cover's depth is not taken, and a drift longer than the cover is cut
// off at its end and not tapered to nothing there: both on the safe side.
//
// Special cases: no load where no snow falls, the step stands less than hb/5 above the
// balanced snow, or the gap is too wide. Peak, Loaded and Far are not numbers where the
// Reason is a refusal.
func NewDrift(b Balanced, step Step, kind Kind) Drift {
	d := Drift{Balanced: b, Step: step, Kind: kind}
	if kind == Parapet {
		d.Step.Gap = 0
	}
	d.Reason = d.refusal()
	if d.Reason == Found {
		d.rise()
	}
	switch {
	case d.Reason == Found:
		d.spread()
	case !d.Reason.Known():
		d.Peak, d.Loaded, d.Far = math.NaN(), math.NaN(), math.NaN()
	}
	return d
}

// refusal tells what is missing, or Found.
func (d *Drift) refusal() Reason {
	site, s := d.Balanced.Site, d.Step
	switch {
	case d.Balanced.Reason != Found:
		return d.Balanced.Reason
	case site.GroundBasis == NotGiven || !(site.Ground > 0):
		return NoGround
	case site.Edition == loads.ASCE722 && !(site.WinterWind > 0 && site.WinterWind <= 1):
		return NoWinterWind
	case math.IsNaN(s.Height) || math.IsInf(s.Height, 0) || !positive(s.Gap):
		return NoGeometry
	case !positive(s.Cover) || s.Cover == 0 || d.Kind > Parapet:
		return NoGeometry
	case d.Kind == Leeward && (!positive(s.House) || s.House == 0):
		return NoGeometry
	}
	return Found
}

// rise finds the depths, and the height and width of the drift.
func (d *Drift) rise() {
	b := &d.Balanced
	d.Density = min(0.13*b.Site.Ground/calc.PSF+14, 30) * calc.PCF // eq. 7.7-1
	d.Depth = b.Sloped / d.Density
	d.Clear = d.Step.Height - d.Depth
	d.Fetch = d.Step.Cover
	if d.Kind == Leeward {
		d.Fetch = d.Step.House
	}
	d.Free = d.free()
	switch {
	case d.Kind == Leeward && d.Step.Gap > 0:
		d.across()
	case d.Clear <= 0 || d.Clear < 0.2*d.Depth:
		d.Reason = TooLow
	case d.Kind != Leeward && b.Site.Edition == loads.ASCE722:
		d.form, d.Height, d.Width = unbroken, d.Free, 8*d.Free
	case d.Free <= d.Clear:
		d.form, d.Height, d.Width = whole, d.Free, 4*d.Free
	default:
		d.form, d.Height = bounded, d.Clear
		d.Width = min(4*d.Free*d.Free/d.Clear, 8*d.Clear)
	}
	if d.Kind != Leeward {
		d.Cut = d.Step.Gap
	}
	if d.Reason == Found && d.Cut >= d.Width {
		d.Reason = TooFar
	}
}

// free is the height of the drift that no step bounds, and sets the fetch used, in.
func (d *Drift) free() float64 {
	site, share := d.Balanced.Site, 0.75
	if d.Kind == Leeward {
		share = 1
	}
	ground := site.Ground / calc.PSF
	if site.Edition == loads.ASCE722 {
		gathered := math.Pow(ground, 0.74) * math.Pow(d.Fetch/calc.Ft, 0.70) * math.Pow(site.WinterWind, 1.7)
		return share * 1.5 * math.Sqrt(gathered/(d.Density/calc.PCF)) * calc.Ft // ASCE 7-22 eq. 7.6-1
	}
	d.Fetch = max(d.Fetch, leastFetch)
	h := 0.43*math.Cbrt(d.Fetch/calc.Ft)*math.Pow(ground+10, 0.25) - 1.5 // ASCE 7-16 Fig. 7.6-1
	return share * math.Sqrt(d.Balanced.Importance) * h * calc.Ft
}

// across is the leeward drift on a cover that stands apart (7.7.2).
func (d *Drift) across() {
	below := 6*d.Step.Height - d.Step.Gap
	if d.Step.Gap >= farthest || below <= 0 {
		d.Reason = TooFar
		return
	}
	d.form, d.Height = apart, min(d.Free, below/6)
	d.Width = 6 * d.Height
}

// spread lays the drift on the cover.
func (d *Drift) spread() {
	reach := d.Width - d.Cut
	d.Peak = d.Density * d.Height * (reach / d.Width)
	d.Loaded = reach
	if d.ends = d.Step.Cover < reach; d.ends {
		d.Loaded = d.Step.Cover
		d.Far = d.Peak * (1 - d.Loaded/reach)
	}
}

// A Pair is the two drifts at the wall of the house.
type Pair struct {
	Leeward  Drift // off the roof of the house
	Windward Drift // along the cover
	Both     bool  // each is a case of its own; otherwise the larger alone counts
}

// Drifts returns the leeward and the windward drift at the house. ASCE 7-16 takes the
// larger where house and cover touch; with a gap between, or by ASCE 7-22, each is a
// case of its own.
func Drifts(b Balanced, step Step) Pair {
	return Pair{
		Leeward: NewDrift(b, step, Leeward), Windward: NewDrift(b, step, Windward),
		Both: b.Site.Edition == loads.ASCE722 || step.Gap > 0,
	}
}

// Larger returns the drift with the larger peak, the wider one when they are equal. A
// drift that is refused comes first, so that it is not passed over.
func (p Pair) Larger() Drift {
	switch {
	case !p.Leeward.Reason.Known():
		return p.Leeward
	case !p.Windward.Reason.Known(), p.Windward.Peak > p.Leeward.Peak:
		return p.Windward
	case p.Windward.Peak == p.Leeward.Peak && p.Windward.Width > p.Leeward.Width:
		return p.Windward
	}
	return p.Leeward
}
