package lumber

import (
	_ "embed"
	"slices"

	"patiocover/calc"
)

//go:embed table4c.csv
var table4cCSV string

// machineRows holds the rows of Table 4C, without Fv, Fc_perp and G.
var machineRows = calc.ReadTable("table4c.csv", table4cCSV, func(r calc.Row) Values {
	quote := func(name string) Quoted { return Quoted{Value: r.Num(name + " psi"), Status: r.Status()} }
	v := Values{
		Grade: r.Text("grade"), Row: r.Text("grade"), Table: Table4C, Shape: Dimension, Source: r.Text("source"),
		Bending: quote("Fb"), Reversed: quote("Fb"), Tension: quote("Ft"), Compression: quote("Fc"),
		Elasticity: quote("E"), Stability: quote("Emin"),
	}
	v.Stability.Status = calc.Computed.Weakest(v.Elasticity.Status)
	return v
})

// machineThickness is the nominal thickness that Table 4C serves, in.
const machineThickness = 2

// MachineGrades returns the machine stress-rated grades that have values, such as
// 1650f-1.5E. They are of any species, in pieces 2 in. thick and up to 12 in. wide.
func MachineGrades() []string {
	all := make([]string, len(machineRows))
	for i, v := range machineRows {
		all[i] = v.Grade
	}
	return all
}

// findMachine returns the values of a machine stress-rated grade with Fv, Fc_perp and G
// of the species' No.2, and whether the grade is one for this section.
func findMachine(species, grade string, s Section) (Values, bool) {
	i := slices.IndexFunc(machineRows, func(v Values) bool { return v.Grade == grade })
	if i < 0 || s.Class != Dimension || s.NominalThickness != machineThickness || s.NominalWidth > 12 {
		return Values{}, false
	}
	visual, err := Find(species, "No.2", s)
	if err != nil {
		return Values{}, false
	}
	v := machineRows[i]
	v.Species, v.Shear, v.Bearing, v.Gravity = species, visual.Shear, visual.Bearing, visual.Gravity
	v.Source += " and " + visual.Table.String() + " No.2"
	return v, true
}
