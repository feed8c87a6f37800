package lumber

import "slices"

// southernPine is the species group of Table 4B, whose timbers are valued wet.
const southernPine = "Southern Pine"

// speciesOrder lists the species groups in the order of the tables.
var speciesOrder = func() []string {
	var all []string
	for _, r := range rows {
		if !slices.Contains(all, r.values.Species) {
			all = append(all, r.values.Species)
		}
	}
	return all
}()

// Species returns the species groups that have values, in the order of the tables.
func Species() []string { return slices.Clone(speciesOrder) }

// Grades returns every grade of the species, in the order of the tables: of glued
// laminated timber the combinations. It is empty for a species that is not listed.
func Grades(species string) []string {
	var all []string
	for _, v := range laminatedRows {
		if v.Species == species {
			all = append(all, v.Grade)
		}
	}
	for _, r := range rows {
		if r.values.Species == species && !slices.Contains(all, r.values.Grade) {
			all = append(all, r.values.Grade)
		}
	}
	return all
}

// Graded returns the grades of the species that exist in the size of the section,
// in the order of the tables.
func Graded(species string, s Section) []string {
	var all []string
	for _, r := range rows {
		if r.values.Species == species && r.serves(s) {
			all = append(all, r.values.Grade)
		}
	}
	return all
}

// Find returns the reference design values of the species and grade for a piece of
// the section: Table 4A, or 4B for Southern Pine, up to 4 in. nominal thickness,
// and Table 4D from 5x5, by the shape of the section.
//
// Where a Canadian species has one row No.1/No.2, it serves both grades. Stud
// grade wider than 6 in. takes the No.3 row (Table 4A note). A species, or a grade
// that does not exist in that size, such as Construction wider than 4 in., is a
// [NotListed] that names what is allowed.
//
// A species of [LaminatedSpecies] takes Table 5A, and a grade of [MachineGrades] Table
// 4C. Plies take the values of one of them. Round poles and other glued products have
// none here: see [Given].
func Find(species, grade string, s Section) (Values, error) {
	if Laminated(species) {
		return findLaminated(species, grade, s)
	}
	if v, ok := findMachine(species, grade, s); ok {
		return v, nil
	}
	if !slices.Contains(speciesOrder, species) {
		return Values{}, &NotListed{What: "species", Given: species, Allowed: Species()}
	}
	wanted := []string{grade}
	switch {
	case grade == "Stud" && species != southernPine && s.Class == Dimension && s.NominalWidth > 6:
		wanted = []string{"No.3"}
	case grade == "No.1" || grade == "No.2":
		wanted = []string{grade, "No.1/No.2"}
	}
	for _, name := range wanted {
		for _, r := range rows {
			if r.values.Species == species && r.values.Row == name && r.serves(s) {
				v := r.values
				v.Grade, v.Shape = grade, s.Class
				return v, nil
			}
		}
	}
	return Values{}, &NotListed{
		What: "grade of " + species + " " + s.Name, Given: grade, Allowed: Graded(species, s),
	}
}
