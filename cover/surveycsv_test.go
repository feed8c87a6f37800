package cover_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"patiocover/calc"
	"patiocover/cover"
)

// faultsOfTable are the faults of a table of joints.
func faultsOfTable(t testing.TB, text string) []string {
	t.Helper()
	_, err := cover.ReadJoints(strings.NewReader(text))
	var wrong *calc.InputError
	require.ErrorAs(t, err, &wrong, text)
	var out []string
	for _, f := range wrong.Faults {
		out = append(out, f.String())
	}
	return out
}

// The three ways of parting columns, names in any order and by label, quoted cells,
// a byte order mark, blank lines, and lengths as carpenters write them.
func TestJointsFromASpreadsheet(t *testing.T) {
	want := []cover.Joint{
		{Mark: new("N1"), Evidence: new("toenails"), Condition: new("sound"), Fastener: new("16d common"), Count: new(3),
			End: new(6.5), Detail: new("three; one bent")},
		{Mark: new("N2"), Evidence: new("none_seen")},
	}
	for name, text := range map[string]string{
		"commas": "mark,end_ft,evidence,condition,fastener,count,detail\n" +
			"N1,\"6' 6\"\"\",toe-nails,Sound,16d common,3,three; one bent\n\nN2,,None seen,,,,\n",
		"semicolons": "\ufeffcount;mark;Seen at the joint;condition;fastener;end_ft;detail\r\n" +
			"3;N1;toenails;sound;16d common;6.5;\"three; one bent\"\r\n;N2;none_seen;;;;\r\n",
		"tabs": "# a note\n\nMark\tEvidence\tCondition\tFastener\tCount\tend ft\tNote\tVerdict\n" +
			"N1\ttoenails\tsound\t16d common\t3\t6' 6\"\tthree; one bent\tOVER\nN2\tnone-seen\t\t\t\t\t\t\n",
	} {
		got, err := cover.ReadJoints(strings.NewReader(text))
		require.NoError(t, err, name)
		assert.Equal(t, want, got, name)
	}
}

// Every fault is listed with its row and column.
func TestTrapFaultsOfATableByRowAndColumn(t *testing.T) {
	assert.Equal(t, []string{
		`row 2, column evidence: "glue" is not one of strap, toenails, bolts, none_seen, unknown`,
		`row 2, column rating_lb: 50000 lb is not 1 to 20000 lb`,
		`row 3, column mark: missing: text of 1 to 400 characters`,
		`row 4, column count: "many" is not a whole number from 1 to 12, written with a point and without its unit`,
	}, faultsOfTable(t, "mark,evidence,rating_lb,count\nA,glue,50000,\n,strap,500,2\nB,strap,,many\n"))
	for text, want := range map[string]string{
		"":                                   "row 1: missing: a row with the names",
		"evidence\nstrap\n":                  "row 1: missing: a column mark",
		"mark,colour\nA,red\n":               `row 1, column colour: "colour" is not one of mark,`,
		"mark,mark\nA,B\n":                   "row 1, column mark: given twice",
		"mark\nA,B\n":                        "row 2, column 2:",
		"mark,detail\nA,\"open\n":            "row 2",
		"mark\n" + strings.Repeat("A\n", 61): "table: 61 joints",
	} {
		assert.Contains(t, strings.Join(faultsOfTable(t, text), "; "), want)
	}
}

// What is written is read back the same, whatever stands in the cells, and a text that a
// spreadsheet would take for a formula is not one.
func TestJointsRoundTrip(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"survey", "ranch"} {
		r := size(t, demo(t, name))
		var plain, whole bytes.Buffer
		require.NoError(t, cover.WriteJoints(&plain, r.Input.House.Joints))
		require.NoError(t, cover.WriteSurvey(&whole, r))
		for _, text := range []string{plain.String(), whole.String()} {
			assert.Contains(t, text, cover.Notice)
			back, err := cover.ReadJoints(strings.NewReader(text))
			require.NoError(t, err)
			assert.Equal(t, r.Input.House.Joints, back)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.StringMatching(`[=+\-@'a-z"; ,\n]{0,12}[a-z]`)
		in := []cover.Joint{{
			Mark: new(strings.TrimSpace("m" + words.Draw(t, "mark"))), Detail: new(strings.TrimSpace(words.Draw(t, "detail"))),
			End: new(float64(rapid.IntRange(0, 400).Draw(t, "end"))), Count: new(rapid.IntRange(1, 12).Draw(t, "count")),
		}}
		var b bytes.Buffer
		if err := cover.WriteJoints(&b, in); err != nil {
			t.Fatal(err)
		}
		back, err := cover.ReadJoints(&b)
		if err != nil {
			t.Fatal(err)
		}
		if !assert.ObjectsAreEqual(in, back) {
			t.Fatalf("%q came back as %q", *in[0].Detail, *back[0].Detail)
		}
	})
}

func TestTrapFormulaInATable(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, cover.WriteJoints(&b, []cover.Joint{{Mark: new("=1+1"), Detail: new("@sum")}}))
	assert.Contains(t, b.String(), "'=1+1")
	assert.NotContains(t, b.String(), "\n=1+1")
}

// Whatever is thrown at the reader, it answers with joints or with faults.
func FuzzReadJoints(f *testing.F) {
	f.Add("mark,evidence\nA,strap\n")
	f.Add("mark;end_ft\nA;6' 6\"\n")
	f.Add("\"mark\n")
	f.Fuzz(func(t *testing.T, text string) {
		joints, err := cover.ReadJoints(strings.NewReader(text))
		var wrong *calc.InputError
		if err != nil && !errors.As(err, &wrong) {
			t.Fatal(err)
		}
		for _, j := range joints {
			if j.Mark == nil {
				t.Fatal("a joint without a mark")
			}
		}
	})
}

// A table in the form gives the joints; wrong cells are faults of its entry, and rows
// beside it are one too.
func TestJointsTableInTheForm(t *testing.T) {
	in := demo(t, "ranch")
	var table bytes.Buffer
	require.NoError(t, cover.WriteJoints(&table, in.House.Joints))
	rows := in
	rows.House.Joints = nil
	form := map[string][]string{cover.JointsTable: {table.String()}}
	for path, text := range cover.ToForm(rows) {
		form[path] = []string{text}
	}
	got, _, err := cover.FromForm(form)
	require.NoError(t, err)
	assert.Equal(t, in, got)
	form["house.joints[0].mark"] = []string{"A"}
	_, _, err = cover.FromForm(form)
	assert.ErrorContains(t, err, "one of the two")
	delete(form, "house.joints[0].mark")
	form[cover.JointsTable] = []string{"mark\tevidence\nA\tglue\n"}
	_, _, err = cover.FromForm(form)
	assert.ErrorContains(t, err, "house.joints_table: row 2, column evidence")
}
