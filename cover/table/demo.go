package table

import _ "embed" // the demonstration

//go:embed invented.json
var demo string

// Demo is the text of complete criteria of a place that does not exist, to begin from.
func Demo() string { return demo }
