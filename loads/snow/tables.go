package snow

import (
	_ "embed" // the tables

	"patiocover/calc"
	"patiocover/loads"
)

var (
	//go:embed exposure.csv
	exposureCSV string
	//go:embed thermal.csv
	thermalCSV string
	//go:embed category.csv
	categoryCSV string
	//go:embed slope.csv
	slopeCSV string
)

// A factor is one value of a table with the words that find it.
type factor struct {
	key, name string
	value     float64 // factor
	source    string
	status    calc.Status
}

// exposures holds the rows of exposure.csv, by terrain and sheltering.
var exposures = calc.ReadTable("exposure.csv", exposureCSV, func(r calc.Row) factor {
	return factor{r.Text("terrain"), r.Text("sheltering"), r.Num("Ce"), r.Text("source"), r.Status()}
})

// thermalFactors holds the rows of thermal.csv, by edition and condition.
var thermalFactors = calc.ReadTable("thermal.csv", thermalCSV, func(r calc.Row) factor {
	return factor{r.Text("edition"), r.Text("condition"), r.Num("Ct"), r.Text("source"), r.Status()}
})

type category struct {
	edition    string
	category   Category
	importance float64 // Is, factor
	ceiling    float64 // pm max, lb/in²
	rain       float64 // lb/in²
	rainUpTo   float64 // largest pg with a surcharge, lb/in²
	source     string
	status     calc.Status
	rainSource string
	rainStatus calc.Status
}

// categories holds the rows of category.csv.
var categories = calc.ReadTable("category.csv", categoryCSV, func(r calc.Row) category {
	c := category{
		edition: r.Text("edition"), category: Category(r.Num("category")), importance: r.Num("Is"),
		ceiling: r.Num("pm max psf") * calc.PSF, rain: r.Num("rain psf") * calc.PSF,
		rainUpTo: r.Num("rain up to psf") * calc.PSF, source: r.Text("source"), status: r.Status(),
		rainSource: r.Text("rain source"),
	}
	if err := c.rainStatus.UnmarshalText([]byte(r.Text("rain status"))); err != nil {
		panic("snow: category.csv: " + err.Error())
	}
	return c
})

type slope struct {
	upTo     float64 // largest Ct of the row, factor
	slippery bool
	full     float64 // slope up to which Cs is 1, degrees
	none     float64 // slope from which Cs is 0, degrees
	source   string
	status   calc.Status
}

// slopes holds the rows of slope.csv.
var slopes = calc.ReadTable("slope.csv", slopeCSV, func(r calc.Row) slope {
	return slope{
		upTo: r.Num("Ct up to"), slippery: r.Text("slippery") == "yes", full: r.Num("full deg"),
		none: r.Num("none deg"), source: r.Text("source"), status: r.Status(),
	}
})

// find returns the index of a row, or −1.
func find(rows []factor, key, name string) int {
	for i := range rows {
		if rows[i].key == key && rows[i].name == name {
			return i
		}
	}
	return -1
}

// findCategory returns the index of a row of category.csv, or −1.
func findCategory(e loads.Edition, c Category) int {
	for i := range categories {
		if categories[i].edition == e.String() && categories[i].category == c {
			return i
		}
	}
	return -1
}

// findSlope returns the index of the row of slope.csv for a thermal factor. The last
// row of either surface has no end.
func findSlope(thermal float64, slippery bool) int {
	for i := range slopes {
		if slopes[i].slippery == slippery && thermal <= slopes[i].upTo {
			return i
		}
	}
	panic("snow: slope.csv has no row for a thermal factor")
}
