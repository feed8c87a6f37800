package cover_test

import (
	"fmt"
	"strings"

	"patiocover/cover"
)

// A cover of 12 ft by 20 ft at 105 mph and 20 psf of roof live load: what is left out is
// assumed or chosen, and the report says so. The tie is that of the closed form, 0.6
// times wind less dead load on u s (L+a)²/2L, rounded up to 25 lb.
func ExampleSize() {
	in, err := cover.Read(strings.NewReader(`{
		"schema": 1,
		"site": {"wind_speed_mph": 105, "roof_snow_psf": 0, "frost_depth_in": 0, "climate": "dry"},
		"cover": {
			"attachment": "ledger", "projection_ft": 12, "width_ft": 20, "overhang_ft": 2, "slope_in_per_ft": 0.25,
			"high_edge_ft": 9, "covering": "solid", "layers": [{"name": "deck and roofing", "psf": 5, "certain": true}]
		},
		"rafters": {"species": "Douglas Fir-Larch", "grade": "No.2", "spacing_in": 24},
		"beams": {"species": "Douglas Fir-Larch", "grade": "No.2"},
		"posts": {"count": 3, "species": "Douglas Fir-Larch", "grade": "No.2"},
		"foundation": {"kind": "footing"},
		"lateral": {"along_house": "house_diaphragm", "out_from_house": "house_diaphragm"},
		"house": {"wall": "studs"}
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := cover.Size(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range report.Members {
		fmt.Printf("%d %s %s: %s\n", m.Count, m.Name, m.Size, m.Verdict)
	}
	for _, l := range report.Links {
		if l.Name == "rafter to beam" {
			fmt.Printf("%d ties of %.0f lb: %s\n", l.Count, l.Rating, l.Verdict)
		}
	}
	fmt.Println(report.Verdict)
	// Output:
	// 9 rafter 2x8: OK
	// 2 edge rafter 2x8: OK
	// 1 beam 4x8: OK
	// 3 post 4x4: OK
	// 11 ties of 250 lb: OK
	// OPEN UP
}

// Every fault of an input is told at once.
func ExampleRead() {
	_, err := cover.Read(strings.NewReader(`{"schema": 1, "site": {"wind_speed_mph": 300}, "job": {"up": "none"}}`))
	for _, fault := range strings.Split(err.Error(), "; ")[:3] {
		fmt.Println(fault)
	}
	// Output:
	// job.up: an unknown key is not one of name, note
	// site.wind_speed_mph: 300 mph is not 85 to 200 mph
	// site.frost_depth_in: missing: a number from 0 to 120 in
}
