package calc

import (
	"encoding/json"
	"math"
	"strconv"
	"unicode/utf8"
)

// finite reports whether JSON has a number for x.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// MarshalJSON writes the line; a value that is not finite, such as a share of no
// capacity, as null, after everything else.
func (l Line) MarshalJSON() ([]byte, error) {
	return l.appendJSON(make([]byte, 0, l.length()))
}

// MarshalJSON writes the check; a demand or a capacity that is not finite as null, and
// then both after everything else.
//
// The bytes are those that the encoder makes by the tags of the fields. It would take each
// line for itself and read what it wrote three times over: as a line, in its check, in the
// report. Written here at once they are read once.
func (c Check) MarshalJSON() ([]byte, error) {
	size := aroundCheck
	for i := range c.Lines {
		size += c.Lines[i].length()
	}
	to := append(make([]byte, 0, size), `{"name":`...)
	to = appendText(to, c.Name)
	to = appendText(append(to, `,"demand_symbol":`...), c.DemandSymbol)
	to = appendText(append(to, `,"capacity_symbol":`...), c.CapacitySymbol)
	last := !finite(c.Demand) || !finite(c.Capacity)
	if !last {
		to = c.appendSides(to)
	}
	to = appendGiven(to, `,"unit":`, c.Unit)
	to = append(to, `,"lines":`...)
	to, err := appendLines(to, c.Lines)
	if err != nil {
		return nil, err
	}
	if last {
		to = c.appendSides(to)
	}
	return append(to, '}'), nil
}

// The bytes around the values of a line, and of a check, about.
const (
	aroundLine  = 96
	aroundCheck = 256
)

// length is about how many bytes the line takes.
func (l *Line) length() int {
	return aroundLine + len(l.Symbol) + len(l.Formula) + len(l.Unit) + len(l.Source)
}

// appendSides writes demand and capacity.
func (c *Check) appendSides(to []byte) []byte {
	to = appendNumber(append(to, `,"demand":`...), c.Demand)
	return appendNumber(append(to, `,"capacity":`...), c.Capacity)
}

// appendLines writes a list of lines; one that was never made is null.
func appendLines(to []byte, lines []Line) ([]byte, error) {
	if lines == nil {
		return append(to, "null"...), nil
	}
	to = append(to, '[')
	for i := range lines {
		if i > 0 {
			to = append(to, ',')
		}
		var err error
		if to, err = lines[i].appendJSON(to); err != nil {
			return nil, err
		}
	}
	return append(to, ']'), nil
}

// appendJSON writes the line.
func (l *Line) appendJSON(to []byte) ([]byte, error) {
	status, err := l.Status.MarshalText()
	if err != nil {
		return nil, err
	}
	to = appendText(append(to, `{"symbol":`...), l.Symbol)
	to = appendGiven(to, `,"formula":`, l.Formula)
	if finite(l.X) {
		to = appendNumber(append(to, `,"value":`...), l.X)
	}
	to = appendGiven(to, `,"unit":`, l.Unit)
	to = appendGiven(to, `,"source":`, l.Source)
	to = append(append(append(to, `,"status":"`...), status...), '"')
	if !finite(l.X) {
		to = append(to, `,"value":null`...)
	}
	return append(to, '}'), nil
}

// appendGiven writes a key with its text where there is one.
func appendGiven(to []byte, key, text string) []byte {
	if text == "" {
		return to
	}
	return appendText(append(to, key...), text)
}

// appendText writes a string. What needs an escape is left to the encoder.
func appendText(to []byte, text string) []byte {
	if !plain(text) {
		escaped, _ := json.Marshal(text) // a string has no error
		return append(to, escaped...)
	}
	return append(append(append(to, '"'), text...), '"')
}

// plain reports whether the encoder writes a string as it is: UTF-8 without control
// characters, quotes, what means something in HTML, and the line ends of JavaScript.
func plain(text string) bool {
	for i := 0; i < len(text); {
		c := text[i]
		if c < utf8.RuneSelf {
			if c < ' ' || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' {
				return false
			}
			i++
			continue
		}
		r, size := utf8.DecodeRuneInString(text[i:])
		if r == utf8.RuneError || r == '\u2028' || r == '\u2029' {
			return false
		}
		i += size
	}
	return true
}

// The sizes from which and below which the encoder writes a power of ten.
const (
	large = 1e21
	small = 1e-6
)

// appendNumber writes a number as the encoder does, ES6 style, and null for what is none.
func appendNumber(to []byte, x float64) []byte {
	size := math.Abs(x)
	switch {
	case !finite(x):
		return append(to, "null"...)
	case size == 0 || small <= size && size < large:
		return strconv.AppendFloat(to, x, 'f', -1, 64)
	}
	to = strconv.AppendFloat(to, x, 'e', -1, 64)
	if n := len(to); to[n-2] == '0' && to[n-3] == '-' { // e-07 is e-7
		to[n-2] = to[n-1]
		to = to[:n-1]
	}
	return to
}

// UnmarshalJSON reads what MarshalJSON writes; null is more than any number.
func (l *Line) UnmarshalJSON(text []byte) error {
	type plain Line
	in := struct {
		*plain
		X *float64 `json:"value"`
	}{plain: (*plain)(l)}
	if err := json.Unmarshal(text, &in); err != nil {
		return err
	}
	l.X = math.Inf(1)
	if in.X != nil {
		l.X = *in.X
	}
	return nil
}
