package calc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
)

const good = `# A note, with, commas and "quotes.
species,Fb psi,note,status
Oak, 900 ,,read
# a note between the rows
"Fir, old",-1.5e3,"said ""so""",recalled
`

func row(r calc.Row) calc.Row { return r }

func TestReadTable(t *testing.T) {
	rows := calc.ReadTable("good.csv", good, row)
	require.Len(t, rows, 2)
	assert.Equal(t, "Oak", rows[0].Text("species"))
	assert.Equal(t, 900.0, rows[0].Num("Fb psi"))
	assert.False(t, rows[0].Has("note"))
	assert.Equal(t, calc.Read, rows[0].Status())
	assert.Equal(t, "Fir, old", rows[1].Text("species"))
	assert.Equal(t, -1500.0, rows[1].Num("Fb psi"))
	assert.True(t, rows[1].Has("note"))
	assert.Equal(t, `said "so"`, rows[1].Text("note"))
	assert.Equal(t, calc.Recalled, rows[1].Status())
}

func TestReadTableOfNoRows(t *testing.T) {
	assert.Empty(t, calc.ReadTable("empty.csv", "a,b\n", row))
}

func TestReadTablePanicsOnAMalformedTable(t *testing.T) {
	cases := []struct {
		name string
		text string
		want string
	}{
		{"nothing", "", "calc: table bad.csv: EOF"},
		{"only notes", "# note\n", "calc: table bad.csv: EOF"},
		{"two columns of one name", "a,b,a\n1,2,3\n", `calc: table bad.csv has two columns "a"`},
		{"row too short", "a,b\n1\n", "calc: table bad.csv: record on line 2: wrong number of fields"},
		{"row too long", "a,b\n1,2,3\n", "calc: table bad.csv: record on line 2: wrong number of fields"},
		{"open quote", "a,b\n\"1,2\n", `calc: table bad.csv: parse error on line 2, column 6: extraneous or missing " in quoted-field`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			assert.PanicsWithValue(t, c.want, func() { calc.ReadTable("bad.csv", c.text, row) })
		})
	}
}

func TestRowPanicsOnAMalformedCell(t *testing.T) {
	num := func(r calc.Row) float64 { return r.Num("x") }
	cases := []struct {
		name string
		text string
		read func(calc.Row) float64
		want string
	}{
		{"no such column", "y\n1\n", num, `calc: table bad.csv has no column "x"`},
		{"empty", "x,y\n,1\n", num, `calc: table bad.csv row 1 column "x": "" is not a number`},
		{"word", "x\n1\nabc\n", num, `calc: table bad.csv row 2 column "x": "abc" is not a number`},
		{"not a number", "x\nNaN\n", num, `calc: table bad.csv row 1 column "x": "NaN" is not a number`},
		{"infinite", "x\nInf\n", num, `calc: table bad.csv row 1 column "x": "Inf" is not a number`},
		{"too large", "x\n1e999\n", num, `calc: table bad.csv row 1 column "x": "1e999" is not a number`},
		{"status", "x,status\n1,seen\n", func(r calc.Row) float64 { return float64(r.Status()) },
			`calc: table bad.csv row 1: status "seen" is not one of recalled, computed, read`},
		{"no status", "x\n1\n", func(r calc.Row) float64 { return float64(r.Status()) },
			`calc: table bad.csv has no column "status"`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			assert.PanicsWithValue(t, c.want, func() { calc.ReadTable("bad.csv", c.text, c.read) })
		})
	}
}

func BenchmarkReadTable(b *testing.B) {
	for b.Loop() {
		calc.ReadTable("good.csv", good, row)
	}
}
