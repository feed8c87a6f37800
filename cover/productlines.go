package cover

import (
	"fmt"

	"patiocover/beam/lumber"
	"patiocover/beam/member"
	"patiocover/calc"
)

// product says what the wood of a member is where it is no single piece of dressed
// lumber of the tables: how it is made up, which side is up, whence its values come.
func (w *wood) product(of string, st stock) []string {
	var out []string
	s := w.section
	if s.Plies > 1 {
		out = append(out, plyLines(of, s)...)
	}
	if s.Round {
		out = append(out, "Round pole: the diameter is the least of its length; seats count the square inside the circle")
	}
	if st.measured[0] > 0 {
		out = append(out, "Measured sides, not dressed: design values and size factors go by the nominal size (NDS 2018 4.1.3)")
	}
	if lumber.Laminated(st.species) {
		line := "Structural glued laminated timber, combination " + st.grade + ", " + st.species +
			"; it counts as wet from 16 % moisture content"
		if of != upright {
			line += ": C_V with the whole length of the piece between points of zero moment"
		}
		out = append(out, line)
	}
	if !w.balanced && of != upright {
		out = append(out, fmt.Sprintf(
			"Unbalanced layup: the side stamped TOP must be up. Over inner supports and in uplift Fb is %s, not %s psi",
			calc.Grouped(calc.Number(w.dry.Reversed.Reference)), calc.Grouped(calc.Number(w.dry.Bending.Reference))))
	}
	if st.product != nil {
		out = append(out, "Design values given by the user: "+st.product.Source)
	}
	return out
}

// upright is the name of the members that stand.
const upright = "post"

// plyLines says how plies are built up (NDS 2018 15.3).
func plyLines(of string, s lumber.Section) []string {
	many := fmt.Sprintf("%d plies side by side, %s in. each", s.Plies, calc.Number(s.Ply()))
	out := []string{many + "; joints of plies over posts only",
		"Counted with the load on top of all plies: a load from one side needs fasteners that hand it on to the others"}
	if of == upright {
		out = []string{many + ", each of the full height, faces in contact (NDS 2018 15.3.1)"}
	}
	if s.Fastening == lumber.Unfastened {
		return append(out, "Not fastened together by NDS 2018 15.3: sideways each ply stands alone")
	}
	d := s.Fasteners(1 * calc.In) // per inch of diameter
	line := fmt.Sprintf("%s together (%s): %s to %s diameters from the ends, %s diameters to %s in. along the grain, "+
		"%s to %s diameters from the edges, %d or more rows %s to %s diameters apart", words[s.Fastening], d.Source,
		calc.Number(d.EndLeast), calc.Number(d.EndMost), calc.Number(d.AlongLeast), calc.Number(d.AlongMost),
		calc.Number(d.EdgeLeast), calc.Number(d.EdgeMost), d.Rows, calc.Number(d.BetweenLow), calc.Number(d.BetweenHigh))
	if d.Length > 0 {
		line += fmt.Sprintf(", from both sides in turn, nails %s in. or longer", calc.Number(d.Length))
	}
	return append(out, line)
}

// words begin a sentence with the fastening.
var words = map[lumber.Fastening]string{lumber.Nailed: "Nailed", lumber.Bolted: "Bolted"}

// sides words the actual size of a section.
func sides(s lumber.Section) string {
	if s.Round {
		return calc.Number(s.Depth) + " in. in diameter"
	}
	if s.Plies > 1 {
		return fmt.Sprintf("%d x ", s.Plies) + calc.Number(s.Ply()) + " x " + calc.Number(s.Depth) + " in"
	}
	return calc.Number(s.Breadth) + " x " + calc.Number(s.Depth) + " in"
}

// sidewaysNote says what the size asks for sideways (NDS 2018 4.4.1), which is a rule for
// sawn lumber.
func sidewaysNote(s lumber.Section) string {
	if s.Class == lumber.Manufactured {
		return "Sideways support: by the calculation of C_L alone (NDS 2018 3.3.3)"
	}
	return "Sideways support by size (NDS 2018 4.4.1): " + member.RestraintOf(s).String()
}
