package cover

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"patiocover/calc"
)

// jointColumns are the columns of a survey in a table: the keys of a joint, in their
// order.
var jointColumns = func() []string {
	t := reflect.TypeFor[Joint]()
	out := make([]string, t.NumField())
	for i := range out {
		out[i] = key(t.Field(i))
	}
	return out
}()

// answerColumns are written behind them, and passed over when a table is read.
var answerColumns = []string{"joints", "uplift_lb", "capacity_lb", "ratio", "verdict", "tie_lb", "reason"}

// ReadJoints reads the joints of an old roof from a table as a spreadsheet writes or
// copies it: columns parted by tabs, semicolons or commas, cells in quotes where they
// hold one, a first row of names in any order. The names are the keys of a joint or
// their labels in the form; lines before them that begin with # are notes. Every fault is
// listed by row and column in a [*calc.InputError].
func ReadJoints(r io.Reader) ([]Joint, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxInput+1))
	if err != nil {
		return nil, fmt.Errorf("reading the joints: %w", err)
	}
	var f calc.Fields
	if len(text) > maxInput {
		f.Add("table", strconv.Itoa(len(text))+" bytes", fmt.Sprintf("at most %d bytes", maxInput))
		return nil, f.Err()
	}
	t := jointTable{faults: &f}
	t.read(text)
	if f.Any() {
		return nil, f.Err()
	}
	return t.joints, nil
}

// A jointTable is a table of joints while it is read.
type jointTable struct {
	faults *calc.Fields
	names  []string // key of each column; empty for one that is passed over
	joints []Joint
	rows   []int // line of each joint
}

// read reads the head and every row.
func (t *jointTable) read(text []byte) {
	text = bytes.TrimPrefix(text, []byte("\ufeff")) // as some spreadsheets begin their files
	text = bytes.ReplaceAll(bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	skipped := 0
	for len(text) > 0 && (text[0] == '#' || text[0] == '\n') {
		_, rest, _ := bytes.Cut(text, []byte("\n"))
		text, skipped = rest, skipped+1
	}
	head, _, _ := bytes.Cut(text, []byte("\n"))
	switch parted := comma(string(head)); parted {
	case '\t':
		t.copied(string(text), skipped)
	default:
		t.exported(text, parted, skipped)
	}
	if t.names == nil && !t.faults.Any() {
		t.faults.Missing("row 1", "a row with the names of the columns: "+strings.Join(jointColumns, ", "))
	}
	if n := len(t.joints); n > MaxList {
		t.faults.Add("table", strconv.Itoa(n)+" joints", fmt.Sprintf("at most %d joints or runs: equal neighbors make one run", MaxList))
	}
}

// copied reads a table as a spreadsheet puts it on the clipboard: one row to a line, tabs
// between the cells, quotes as they were typed.
func (t *jointTable) copied(text string, skipped int) {
	line := skipped
	for row := range strings.SplitSeq(text, "\n") {
		line++
		cells := strings.Split(row, "\t")
		for i, cell := range cells {
			if n := len(cell); n > 1 && cell[0] == '"' && cell[n-1] == '"' {
				cells[i] = strings.ReplaceAll(cell[1:n-1], `""`, `"`)
			}
		}
		t.take(cells, line)
	}
}

// exported reads a table as a spreadsheet writes it to a file.
func (t *jointTable) exported(text []byte, parted rune, skipped int) {
	c := csv.NewReader(bytes.NewReader(text))
	c.Comma, c.FieldsPerRecord = parted, -1
	for {
		cells, err := c.Read()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.unreadable(err, skipped)
			return
		}
		line, _ := c.FieldPos(0)
		t.take(cells, line+skipped)
	}
}

// take takes the first row that is not blank for the head, and the others for joints.
func (t *jointTable) take(cells []string, line int) {
	switch blank := !slices.ContainsFunc(cells, func(s string) bool { return strings.TrimSpace(s) != "" }); {
	case blank:
	case t.names == nil:
		t.head(cells, line)
	default:
		t.row(cells, line)
	}
}

// unreadable words a table whose quotes do not close.
func (t *jointTable) unreadable(err error, skipped int) {
	at, what := "table", err.Error()
	var wrong *csv.ParseError
	if errors.As(err, &wrong) {
		at, what = "row "+strconv.Itoa(wrong.Line+skipped), wrong.Err.Error()
	}
	t.faults.Add(at, what, "cells whose quotes open at their beginning and close at their end")
}

// comma finds what parts the columns of a head: the first of tab, semicolon and comma
// that it holds outside of quotes.
func comma(head string) rune {
	quoted := false
	plain := strings.Map(func(r rune) rune {
		if r == '"' {
			quoted = !quoted
		}
		if quoted {
			return -1
		}
		return r
	}, head)
	for _, r := range "\t;" {
		if strings.ContainsRune(plain, r) {
			return r
		}
	}
	return ','
}

// squeezed writes a word with small letters and nothing but letters and digits, so that
// toe-nails, Toe nails and toenails are one.
func squeezed(word string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, strings.ToLower(word))
}

// head reads the names of the columns.
func (t *jointTable) head(cells []string, line int) {
	t.names = make([]string, len(cells))
	for i, cell := range cells {
		at := cellAt(line, cell, i)
		name, known := columnNamed(cell)
		switch {
		case strings.TrimSpace(cell) == "" && !known:
			continue // an empty column, unless a cell below it is filled
		case !known:
			t.faults.Add(at, shown(cell), "one of "+strings.Join(jointColumns, ", "))
		case name != "" && slices.Contains(t.names[:i], name):
			t.faults.Add(at, "given twice", "one column "+name)
		}
		t.names[i] = name
	}
	if !slices.Contains(t.names, "mark") {
		t.faults.Missing("row "+strconv.Itoa(line), "a column mark with a mark for every joint")
	}
}

// columnNamed finds the key of a column by its key or label; empty for an answer, which
// is passed over.
func columnNamed(cell string) (name string, known bool) {
	word := squeezed(cell)
	for _, k := range jointColumns {
		d, _ := FieldOf("house.joints[]." + k)
		if word == squeezed(k) || word == squeezed(d.Label) {
			return k, true
		}
	}
	return "", slices.ContainsFunc(answerColumns, func(k string) bool { return word == squeezed(k) })
}

// cellAt names a cell by its row and column.
func cellAt(line int, column string, i int) string {
	if strings.TrimSpace(column) == "" {
		column = strconv.Itoa(i + 1)
	}
	return "row " + strconv.Itoa(line) + ", column " + strings.TrimSpace(column)
}

// row reads one joint.
func (t *jointTable) row(cells []string, line int) {
	values := map[string]any{}
	var own calc.Fields
	for i, cell := range cells {
		text := unguarded(strings.TrimSpace(cell))
		if text == "" {
			continue
		}
		if i >= len(t.names) {
			own.Add(cellAt(line, "", i), shown(text), "empty: the row has more cells than the head")
			continue
		}
		if t.names[i] == "" {
			continue
		}
		d, _ := FieldOf("house.joints[]." + t.names[i])
		x, _, ok := formValue(choiceOf(text, d), d)
		if !ok {
			own.Add(cellAt(line, t.names[i], i), shown(text), d.Allowed()+d.manner())
			continue
		}
		values[t.names[i]] = x
	}
	j, err := jointOf(values)
	if err != nil {
		own.Add("row "+strconv.Itoa(line), err.Error(), "one joint")
	}
	t.check(&j, line, &own)
	t.joints, t.rows = append(t.joints, j), append(t.rows, line)
}

// choiceOf turns what was typed for a choice into its word, if it is one.
func choiceOf(text string, d Field) string {
	for _, c := range d.Choices {
		if squeezed(text) == squeezed(c) {
			return c
		}
	}
	return text
}

// jointOf makes a joint of values by key.
func jointOf(values map[string]any) (Joint, error) {
	text, err := json.Marshal(values)
	if err != nil {
		return Joint{}, err
	}
	var j Joint
	err = json.Unmarshal(text, &j)
	return j, err
}

// check checks the values of one joint against the table of fields, and takes over the
// faults with their row and column.
func (t *jointTable) check(j *Joint, line int, own *calc.Fields) {
	visit(reflect.ValueOf(*j), "house.joints[0]", func(path string, v reflect.Value) {
		var f calc.Fields
		checkField(path, v, &f)
		var wrong *calc.InputError
		if errors.As(f.Err(), &wrong) {
			_, name, _ := strings.Cut(path, "].")
			for _, x := range wrong.Faults {
				own.Add(cellAt(line, name, 0), x.Given, x.Allowed)
			}
		}
	})
	var all *calc.InputError
	if !errors.As(own.Err(), &all) {
		return
	}
	seen := map[string]bool{}
	for _, x := range all.Faults { // a value that could not be read is not missing too
		if !seen[x.Path] {
			t.faults.Add(x.Path, x.Given, x.Allowed)
		}
		seen[x.Path] = true
	}
}
