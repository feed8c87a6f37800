package lumber

// A Use is the condition of a piece in service, and the method it is designed by. The
// zero value is the ordinary case: dry, not incised, no sustained heat, alone, on edge,
// allowable stress design.
type Use struct {
	Wet         bool        // moisture content above 19 % for an extended time
	Incised     bool        // incised for treatment; Southern Pine is treated without
	Temperature Temperature // sustained exposure to heat
	Repetitive  bool        // one of three or more that share the load: see [Repetitive]
	Flat        bool        // loaded on the wide face
	Method      Method      // allowable stress, or load and resistance factor design
}

// Adjusted are the design values of a piece in its use: every factor of NDS 2018
// Table 4.3.1 but C_D, C_L, C_P and C_b.
type Adjusted struct {
	Section     Section  // the piece
	Use         Use      // its condition
	Species     string   // species group
	Grade       string   // grade
	Bending     Property // Fb, with the usual face in tension
	Reversed    Property // Fb with the other face in tension: Fbx- of glued laminated timber, else as Bending
	Tension     Property // Ft
	Shear       Property // Fv
	ShearAtCuts Property // Fv at notches and fasteners: with C_vr of glued laminated timber
	Bearing     Property // Fc_perp
	Compression Property // Fc
	Elasticity  Property // E
	Stability   Property // Emin; of glued laminated timber that about the weak axis
	Gravity     Quoted   // G, ratio
	volume      volumeRule
}

// Adjust multiplies the values by the factors that the section and its use ask
// for (NDS 2018 Table 4.3.1). v must be what [Find] returns for the section.
//
// Timbers take no C_r and no size factor but (12/d)^(1/9) on Fb. Table 4.3.8 gives
// C_i for dimension lumber only; incised timbers take the same factors here, as an
// engineering choice on the safe side. Wet Southern Pine timbers keep their values,
// which are for wet service. Wet dimension lumber keeps Fb where Fb C_F is at most
// 1150 psi, and Fc where Fc C_F is at most 750 psi.
//
// Glued laminated timber takes the values of its side when it is used flat, C_M of its
// own, and no C_F and no C_r (NDS 2018 Table 5.3.1). Values from an evaluation report
// take the factors that are given with them; for a use whose factor is not given the
// value is zero. Round poles have values only where they are given.
func Adjust(v Values, s Section, u Use) Adjusted {
	a := Adjusted{Section: s, Use: u, Species: v.Species, Grade: v.Grade, Gravity: v.Gravity, volume: v.volume}
	if u.Flat {
		v = v.laidFlat()
	}
	a.Bending = adjusted(Bending, v.Bending, v, s, u)
	a.Reversed = adjusted(Bending, v.Reversed, v, s, u)
	a.Tension = adjusted(Tension, v.Tension, v, s, u)
	a.Shear = adjusted(Shear, v.Shear, v, s, u)
	a.ShearAtCuts = a.Shear
	if v.Table == Table5A {
		a.ShearAtCuts = a.Shear.cut()
	}
	a.Bearing = adjusted(Bearing, v.Bearing, v, s, u)
	a.Compression = adjusted(Compression, v.Compression, v, s, u)
	a.Elasticity = adjusted(Elasticity, v.Elasticity, v, s, u)
	a.Stability = adjusted(Stability, v.Stability, v, s, u)
	return a
}

// laidFlat returns the values of a piece loaded on its wide face: those of the side of
// glued laminated timber; of given values Fb, where it is given, and no Fv and Fc_perp.
func (v Values) laidFlat() Values {
	switch v.Table {
	case Table5A:
		v.Bending, v.Reversed, v.Bearing = v.side.bending, v.side.bending, v.side.bearing
		v.Shear, v.Elasticity, v.Stability = v.side.shear, v.side.elasticity, v.side.stability
	case GivenValues:
		v.Bending, v.Reversed = v.side.bending, v.side.bending
		v.Shear, v.Bearing = Quoted{}, Quoted{}
	}
	return v
}

func adjusted(k Kind, q Quoted, v Values, s Section, u Use) Property {
	p := Property{Reference: q.Value, Kind: k, Method: u.Method, Status: q.Status, Source: v.Source}
	sized, flattened := size(k, v, s, u), flat(k, v, s, u)
	wetted, heated := wet(k, q.Value, sized.value, v, u), temperature(k, v, u)
	incised, repeated := incising(k, v, s, u), repetitive(k, v, s, u)
	p.Wet, p.Temperature, p.Size = wetted.value, heated.value, sized.value
	p.FlatUse, p.Incising, p.Repetitive = flattened.value, incised.value, repeated.value
	p.why = bases{
		wet: wetted.basis, temperature: heated.basis, size: sized.basis,
		flatUse: flattened.basis, incising: incised.basis, repetitive: repeated.basis,
	}
	p.Value = p.Edgewise() * p.FlatUse
	return p
}

// size returns C_F.
func size(k Kind, v Values, s Section, u Use) factor {
	switch {
	case k != Bending && k != Tension && k != Compression:
		return factor{1, notApplicable}
	case v.Table == Table5A || v.Table == GivenValues:
		return factor{1, notApplicable}
	case v.Table == Table4C:
		return factor{1, sizeMachine}
	case v.Table == Table4D:
		return sizeTimber(k, s, u)
	case v.Table == Table4B:
		return sizeSouthernPine(k, s)
	}
	f := sizeOf(v.Row, s.NominalWidth)
	switch {
	case k == Tension:
		return factor{f.tension, sizeOf4A}
	case k == Compression:
		return factor{f.pressure, sizeOf4A}
	case s.NominalThickness >= 4:
		return factor{f.thick, sizeOf4A}
	}
	return factor{f.thin, sizeOf4A}
}

// sizeTimber returns C_F of NDS 2018 4.3.6.2, which is for Fb; the depth lies in
// the direction of the load.
func sizeTimber(k Kind, s Section, u Use) factor {
	depth := s.Depth
	if u.Flat {
		depth = s.Breadth
	}
	if k != Bending || depth <= sizeDepth {
		return factor{1, sizeOrdinary}
	}
	return factor{timberSize(depth), sizeByDepth}
}

// sizeSouthernPine returns C_F by the notes of Table 4B.
func sizeSouthernPine(k Kind, s Section) factor {
	switch {
	case s.NominalWidth > 12 && k == Bending && s.NominalThickness >= 4:
		return factor{thickSouthernPine * wideSouthernPine, sizeOf4B}
	case s.NominalWidth > 12:
		return factor{wideSouthernPine, sizeOf4B}
	case k == Bending && s.NominalThickness >= 4 && s.NominalWidth >= 8:
		return factor{thickSouthernPine, sizeOf4B}
	}
	return factor{1, sizeOrdinary}
}

// wet returns C_M. reference is the tabulated value and size its C_F.
func wet(k Kind, reference, size float64, v Values, u Use) factor {
	switch {
	case !u.Wet:
		return factor{1, dry}
	case v.Table == GivenValues:
		return given(v.permits.wet, wetGiven)
	case v.Table == Table5A:
		return factor{wetLaminated.factor[k], wetGlued}
	case v.Table == Table4D && v.Species == southernPine:
		return factor{wetSouthernPine.factor[k], wetPine}
	case v.Table == Table4D:
		return factor{wetTimbers.factor[k], wetTimber}
	case exempt(k, reference*sizeInTest(size, v)):
		return factor{1, wetExempt}
	}
	return factor{wetDimension.factor[k], wetLumber}
}

var (
	wetLaminated    = wetService("glued laminated")
	wetDimension    = wetService("dimension")
	wetTimbers      = wetService("timbers")
	wetSouthernPine = wetService("Southern Pine timbers")
)

// sizeInTest is the C_F that the test for low values counts. Southern Pine is
// tested on its tabulated value, in which the size already is; a factor above 1
// is counted, to be safe.
func sizeInTest(size float64, v Values) float64 {
	if v.Table == Table4B {
		return max(1, size)
	}
	return size
}

// exempt reports whether wet dimension lumber keeps the value (notes of the wet
// service factors in Tables 4A and 4B). sized is the value times C_F, psi.
func exempt(k Kind, sized float64) bool {
	return k == Bending && sized <= exemptBending || k == Compression && sized <= exemptCompression
}

// given returns a factor that came with given values, or zero where none did.
func given(x float64, why basis) factor {
	if x == 0 {
		return factor{0, notGiven}
	}
	return factor{x, why}
}

// temperature returns C_t.
func temperature(k Kind, v Values, u Use) factor {
	switch {
	case u.Temperature == UpTo100F:
		return factor{1, upTo100Degrees}
	case v.Table == GivenValues:
		return given(v.permits.hot, heatGiven)
	}
	return factor{heatFactors[k][column(u.Wet)][u.Temperature], sustainedHeat}
}

// flat returns C_fu.
func flat(k Kind, v Values, s Section, u Use) factor {
	switch {
	case u.Flat && s.Class == BeamStringer && v.Table != GivenValues:
		return flatStringers(k, v.Row)
	case k != Bending:
		return factor{1, notApplicable}
	case !u.Flat:
		return factor{1, onEdge}
	case v.Table == GivenValues:
		return factor{1, flatGiven}
	case v.Table == Table5A:
		return factor{laminatedFlat(s.Ply()), flatGlued}
	case s.Class == PostTimber:
		return factor{1, flatPost}
	}
	return flatUse(s)
}

// flatStringers returns the wide face factor of beams and stringers.
func flatStringers(k Kind, grade string) factor {
	wide := wideFace(grade)
	switch k {
	case Bending:
		return factor{wide.bending, flatStringer}
	case Elasticity:
		return factor{wide.elasticity, flatStringer}
	case Stability:
		return factor{wide.stability, flatStringer}
	}
	return factor{1, notApplicable}
}

// incising returns C_i.
func incising(k Kind, v Values, s Section, u Use) factor {
	switch {
	case v.Table == GivenValues && u.Incised:
		return factor{0, notGiven}
	case s.Class == Manufactured && !u.Incised || v.Table == GivenValues:
		return factor{1, notApplicable}
	case !u.Incised:
		return factor{1, notIncised}
	case s.Class == Dimension:
		return factor{incisingFactors[k], incisedDimension}
	}
	return factor{incisingFactors[k], incisedTimber}
}

// repetitive returns C_r.
func repetitive(k Kind, v Values, s Section, u Use) factor {
	switch {
	case k != Bending || v.Table == Table5A:
		return factor{1, notApplicable}
	case !u.Repetitive:
		return factor{1, notRepetitive}
	case v.Table == GivenValues && v.permits.repetitive == 0:
		return factor{1, notRepetitive}
	case v.Table == GivenValues:
		return factor{v.permits.repetitive, repeatGiven}
	case s.Class != Dimension:
		return factor{1, repetitiveTimber}
	}
	return factor{repetitiveFactor, repetitiveUse}
}
