package cover

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
)

// formulaSigns begin what a spreadsheet would take for a formula.
const formulaSigns = "=+-@'"

// guarded keeps a text from being taken for a formula, and unguarded takes it back.
func guarded(text string) string {
	if text != "" && strings.ContainsRune(formulaSigns, rune(text[0])) {
		return "'" + text
	}
	return text
}

func unguarded(text string) string {
	if len(text) > 1 && text[0] == '\'' && strings.ContainsRune(formulaSigns, rune(text[1])) {
		return text[1:]
	}
	return text
}

// WriteJoints writes joints as a table that [ReadJoints] reads back. The error is that
// of w.
func WriteJoints(w io.Writer, joints []Joint) error {
	return writeTable(w, jointColumns, len(joints), func(i int) []string { return cellsOf(&joints[i]) })
}

// WriteSurvey writes the joints of a report with the answer for each behind them. The
// error is that of w.
func WriteSurvey(w io.Writer, r Report) error {
	joints := r.Input.House.Joints
	return writeTable(w, slices.Concat(jointColumns, answerColumns), len(joints), func(i int) []string {
		return append(cellsOf(&joints[i]), answersOf(&r.Survey.Joints[i])...)
	})
}

// writeTable writes the notice, a head and rows.
func writeTable(w io.Writer, head []string, rows int, row func(i int) []string) error {
	out := bufio.NewWriter(w)
	fmt.Fprintln(out, "# "+Notice)
	c := csv.NewWriter(out)
	lines := [][]string{head}
	for i := range rows {
		lines = append(lines, row(i))
	}
	if err := c.WriteAll(lines); err != nil {
		return err
	}
	return out.Flush()
}

// cellsOf writes the values of one joint.
func cellsOf(j *Joint) []string {
	var out []string
	visit(reflect.ValueOf(*j), "", func(_ string, v reflect.Value) {
		cell := ""
		if !v.IsNil() {
			switch x := v.Elem(); x.Kind() {
			case reflect.Float64:
				cell = calc.Number(x.Float())
			case reflect.Int:
				cell = strconv.FormatInt(x.Int(), 10)
			default:
				cell = guarded(x.String())
			}
		}
		out = append(out, cell)
	})
	return out
}

// answersOf writes what the survey says of one joint.
func answersOf(j *SurveyJoint) []string {
	uplift := ""
	if j.Uplift != nil {
		uplift = strconv.FormatFloat(calc.RoundUp(*j.Uplift, 1), 'f', 0, 64)
	}
	return []string{
		strconv.Itoa(j.Count), uplift, calc.Number(j.Capacity), ratioText(j.Ratio), string(j.Verdict),
		calc.Number(j.Rating), guarded(j.Reason),
	}
}
