package calc

import (
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A Row is one line of an embedded table. Its methods panic on a missing column
// or a malformed cell: the tables are part of the program.
type Row struct {
	table string
	line  int
	head  map[string]int
	cells []string
}

// ReadTable reads a comma separated table: lines that start with # are notes, the
// first other line names the columns. It calls make for each row and returns the
// results in order. It panics if the table is malformed.
func ReadTable[T any](name, text string, make func(Row) T) []T {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	head, err := r.Read()
	if err != nil {
		panic(fmt.Sprintf("calc: table %s: %v", name, err))
	}
	columns := map[string]int{}
	for i, h := range head {
		if _, twice := columns[h]; twice {
			panic(fmt.Sprintf("calc: table %s has two columns %q", name, h))
		}
		columns[h] = i
	}
	rest, err := r.ReadAll()
	if err != nil {
		panic(fmt.Sprintf("calc: table %s: %v", name, err))
	}
	var out []T
	for i, cells := range rest {
		out = append(out, make(Row{table: name, line: i + 1, head: columns, cells: cells}))
	}
	return out
}

// Text returns the cell of the column, without surrounding space.
func (r Row) Text(column string) string {
	i, ok := r.head[column]
	if !ok {
		panic(fmt.Sprintf("calc: table %s has no column %q", r.table, column))
	}
	return strings.TrimSpace(r.cells[i])
}

// Has reports whether the cell of the column is filled.
func (r Row) Has(column string) bool { return r.Text(column) != "" }

// Num returns the cell of the column as a finite number.
func (r Row) Num(column string) float64 {
	x, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		panic(fmt.Sprintf("calc: table %s row %d column %q: %q is not a number", r.table, r.line, column, r.Text(column)))
	}
	return x
}

// Status returns the status of the row from its column called status.
func (r Row) Status() Status {
	var s Status
	if err := s.UnmarshalText([]byte(r.Text("status"))); err != nil {
		panic(fmt.Sprintf("calc: table %s row %d: %v", r.table, r.line, err))
	}
	return s
}
