package cover

import (
	"slices"

	"patiocover/beam/lumber"
	"patiocover/calc"
)

// A Product is wood whose design values the user takes from an evaluation report. A
// member is made of it when its species is the name and its grade is given.
type Product struct {
	Name          *string  `json:"name,omitempty"`              // as the members call it
	Source        *string  `json:"source,omitempty"`            // report, edition, table
	Bending       *float64 `json:"fb_psi,omitempty"`            // Fb on edge, psi
	Flatwise      *float64 `json:"fb_flat_psi,omitempty"`       // Fb laid flat, psi
	Tension       *float64 `json:"ft_psi,omitempty"`            // Ft, psi
	Shear         *float64 `json:"fv_psi,omitempty"`            // Fv on edge, psi
	Bearing       *float64 `json:"fc_perp_psi,omitempty"`       // Fc_perp on edge, psi
	Compression   *float64 `json:"fc_psi,omitempty"`            // Fc, psi
	Elasticity    *float64 `json:"e_psi,omitempty"`             // E, psi
	Stability     *float64 `json:"emin_psi,omitempty"`          // Emin, psi
	Gravity       *float64 `json:"g,omitempty"`                 // G, ratio
	DepthExponent *float64 `json:"depth_exponent,omitempty"`    // exponent of the depth factor on Fb, ratio
	DepthFrom     *float64 `json:"depth_from_in,omitempty"`     // in, depth at which the depth factor is 1
	Wet           *float64 `json:"wet_factor,omitempty"`        // least factor in wet service
	Heat          *float64 `json:"heat_factor,omitempty"`       // least factor in sustained heat
	Repetitive    *float64 `json:"repetitive_factor,omitempty"` // factor on Fb of repetitive members
}

// givenGrade is the grade of a member whose values the user gives.
const givenGrade = "given"

// given turns the product into values of the wood library. It must be valid.
func (p Product) given() lumber.Given {
	at := func(x *float64) float64 {
		if x == nil {
			return 0
		}
		return *x
	}
	return lumber.Given{
		Product: *p.Name, Source: *p.Source, Bending: *p.Bending, Flatwise: at(p.Flatwise), Tension: *p.Tension,
		Shear: *p.Shear, Bearing: *p.Bearing, Compression: *p.Compression, Elasticity: *p.Elasticity,
		Stability: *p.Stability, Gravity: *p.Gravity, DepthExponent: at(p.DepthExponent),
		DepthFrom: at(p.DepthFrom) * calc.In, Wet: at(p.Wet), Hot: at(p.Heat), Repetitive: at(p.Repetitive),
	}
}

// productNamed finds the product that a member names as its species.
func productNamed(products []Product, species *string) (Product, bool) {
	if species == nil {
		return Product{}, false
	}
	for _, p := range products {
		if is(p.Name, *species) {
			return p, true
		}
	}
	return Product{}, false
}

// checkProducts wants each product whole and under a name of its own.
func (in Input) checkProducts(f *calc.Fields) {
	seen := append(lumber.Species(), lumber.LaminatedSpecies()...)
	for i, p := range in.Products {
		at := f.At("products", i)
		if p.Name != nil && slices.Contains(seen, *p.Name) {
			at.Add("name", shown(*p.Name), "a name that no species and no other product has")
		}
		if p.Name != nil {
			seen = append(seen, *p.Name)
		}
		if (p.DepthExponent == nil) != (p.DepthFrom == nil) {
			at.Missing("depth_from_in", "depth_exponent and depth_from_in together")
		}
		if given(p.Elasticity, p.Stability) && !(*p.Stability < *p.Elasticity) {
			at.Add("emin_psi", calc.Number(*p.Stability)+" psi", "less than E")
		}
		if given(p.Bending, p.Tension) && !(*p.Tension <= *p.Bending) {
			at.Add("ft_psi", calc.Number(*p.Tension)+" psi", "no more than Fb")
		}
	}
	if len(in.Products) > MaxList {
		f.Add("products", shown(len(in.Products))+" products", "at most as many as a list may have")
	}
}
