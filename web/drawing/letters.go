package drawing

import "strings"

// Sizes of letters on paper, in points. Nothing is smaller than small.
const (
	small  = 9.5
	normal = 10.0
	large  = 11.5
)

// widthOf estimates how wide words are set, in points. It takes the wider of the
// usual plain faces for each kind of letter, so that what keeps apart by it keeps
// apart in any of them.
func widthOf(words string, size float64, bold bool) float64 {
	em := 0.0
	for _, r := range words {
		em += letterWidth(r)
	}
	if bold {
		em *= 1.1 // heavy faces run a tenth wider
	}
	return em * size
}

// letterWidth is the width of one letter in em, a ratio.
func letterWidth(r rune) float64 {
	switch {
	case strings.ContainsRune(" '.,:;|!", r):
		return 0.32
	case strings.ContainsRune("ijlIfrt/()-[]", r):
		return 0.4
	case strings.ContainsRune("mwMW@%", r):
		return 0.98
	case r == '"':
		return 0.46
	case r >= 'A' && r <= 'Z':
		return 0.72
	}
	return 0.64
}
