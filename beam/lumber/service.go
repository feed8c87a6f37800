package lumber

import (
	_ "embed"
	"fmt"

	"patiocover/calc"
)

// A Temperature is the highest temperature of sustained exposure. A roof that
// cools at night is not sustained exposure.
type Temperature uint8

// The ranges of NDS 2018 Table 2.3.3.
const (
	UpTo100F Temperature = iota // up to 100 °F: C_t = 1.0
	UpTo125F                    // above 100 to 125 °F
	UpTo150F                    // above 125 to 150 °F
)

// String returns the range in words.
func (t Temperature) String() string {
	switch t {
	case UpTo100F:
		return "up to 100 °F"
	case UpTo125F:
		return "above 100 to 125 °F"
	case UpTo150F:
		return "above 125 to 150 °F"
	}
	return fmt.Sprintf("Temperature(%d)", uint8(t))
}

//go:embed cm.csv
var cmCSV string

//go:embed ct.csv
var ctCSV string

//go:embed ci.csv
var ciCSV string

// A wetRow is one row of the wet service factors, by kind of value.
type wetRow struct {
	product string
	factor  [kinds]float64
	status  calc.Status
}

var wetRows = calc.ReadTable("cm.csv", cmCSV, func(r calc.Row) wetRow {
	w := wetRow{product: r.Text("product"), status: r.Status()}
	for k := range kinds {
		w.factor[k] = r.Num(k.Symbol())
	}
	return w
})

// wetService returns the row of the product, which is one of ours.
func wetService(product string) wetRow {
	for _, w := range wetRows {
		if w.product == product {
			return w
		}
	}
	panic("lumber: cm.csv has no row " + product)
}

func wetStatus(product string) calc.Status { return wetService(product).status }

// A heatRow is one row of the temperature factors.
type heatRow struct {
	property, moisture string
	factor             [UpTo150F + 1]float64 // factor by Temperature
	status             calc.Status
}

func (h heatRow) known() calc.Status { return h.status }

var heat = calc.ReadTable("ct.csv", ctCSV, func(r calc.Row) heatRow {
	return heatRow{
		property: r.Text("property"), moisture: r.Text("moisture"), status: r.Status(),
		factor: [...]float64{r.Num("to 100 F"), r.Num("to 125 F"), r.Num("to 150 F")},
	}
})

// heatFactors holds C_t by kind, dry or wet, and temperature.
var heatFactors = func() (all [kinds][2][UpTo150F + 1]float64) {
	for _, h := range heat {
		for k := range kinds {
			if k.Symbol() == h.property {
				all[k][column(h.moisture == "wet")] = h.factor
			}
		}
	}
	return all
}()

// column is 1 for wet and 0 for dry.
func column(wet bool) int {
	if wet {
		return 1
	}
	return 0
}

// An incision is one row of the incising factors.
type incision struct {
	property string
	factor   float64
	status   calc.Status
}

func (i incision) known() calc.Status { return i.status }

var incisions = calc.ReadTable("ci.csv", ciCSV, func(r calc.Row) incision {
	return incision{property: r.Text("property"), factor: r.Num("factor"), status: r.Status()}
})

// incisingFactors holds C_i by kind.
var incisingFactors = func() (all [kinds]float64) {
	for _, i := range incisions {
		for k := range kinds {
			if k.Symbol() == i.property {
				all[k] = i.factor
			}
		}
	}
	return all
}()

// repetitiveFactor is C_r on Fb of dimension lumber (NDS 2018 4.3.9).
const repetitiveFactor = 1.15

// repetitiveSpacing is the widest spacing, in, of repetitive members, and
// repetitiveCount their least number (NDS 2018 4.3.9).
const (
	repetitiveSpacing = 24 * calc.In
	repetitiveCount   = 3
)

// Repetitive reports whether parallel members may take C_r: at least three, in
// contact or at most 24 in. on center, and joined by sheathing, decking or another
// element that is able to spread the load (NDS 2018 4.3.9). count is their number,
// spacing is on center, in. That they must be dimension lumber is seen by [Adjust].
func Repetitive(count int, spacing float64, sheathed bool) bool {
	return count >= repetitiveCount && 0 <= spacing && spacing <= repetitiveSpacing && sheathed
}
