package web

import (
	"html"
	"strings"
)

// greek are the names that stand for a letter.
var greek = map[string]string{
	"alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "Delta": "Δ", "epsilon": "ε", "eta": "η", "theta": "θ",
	"lambda": "λ", "mu": "μ", "phi": "φ", "rho": "ρ", "sigma": "σ", "tau": "τ", "omega": "ω", "Omega": "Ω", "pi": "π",
}

// A symbol is an ASCII symbol of a calculation, taken apart for print.
type symbol struct {
	letter string // what stands on the line
	below  string // the subscript
	behind string // prime and star
}

// parts takes C_D, Fb_adj, Fc_perp_adj and delta_LT apart: a prime for _adj, a star
// for _star, ⊥ for _perp, and the second letter of Fb, Fc, Ft, Fv, fb below the line.
func parts(name string) symbol {
	all := strings.Split(name, "_")
	s := symbol{letter: all[0]}
	var below []string
	if len(s.letter) == 2 && (s.letter[0] == 'F' || s.letter[0] == 'f') {
		s.letter, below = s.letter[:1], []string{s.letter[1:]}
	}
	if g, ok := greek[s.letter]; ok {
		s.letter = g
	}
	if s.letter == "Emin" {
		s.letter, below = "E", []string{"min"}
	}
	for _, p := range all[1:] {
		switch p {
		case "adj":
			s.behind += "′"
		case "star":
			s.behind += "*"
		case "perp":
			below = append(below, "⊥")
		default:
			below = append(below, p)
		}
	}
	s.below = joined(below)
	return s
}

// joined sets single letters and signs side by side, longer words apart by a comma.
func joined(all []string) string {
	text := ""
	for i, p := range all {
		if i > 0 && p != "⊥" && (len(p) > 2 || len(all[i-1]) > 2 && all[i-1] != "⊥") {
			text += ","
		}
		text += p
	}
	return text
}

// appendSymbol writes a symbol as markup.
func appendSymbol(b []byte, name string) []byte {
	s := parts(name)
	b = append(b, `<i>`...)
	b = appendEscaped(b, s.letter)
	b = append(b, `</i>`...)
	if s.below != "" {
		b = append(b, `<sub>`...)
		b = appendEscaped(b, s.below)
		b = append(b, `</sub>`...)
	}
	return appendEscaped(b, s.behind)
}

// appendEscaped is the one place by which words get into markup that is appended.
func appendEscaped(b []byte, words string) []byte { return append(b, html.EscapeString(words)...) }
