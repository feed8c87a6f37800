package calctest

import (
	"os"
	"path/filepath"
	"testing"

	"patiocover/calc"
)

// Published returns the rows of a file in testdata/published at the top of the
// project. Every file there has the columns source and status beside its values.
func Published(t testing.TB, file string) []calc.Row {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(Root(t), "testdata", "published", file))
	if err != nil {
		t.Fatal(err)
	}
	rows := calc.ReadTable(file, string(text), func(r calc.Row) calc.Row { return r })
	if len(rows) == 0 {
		t.Fatalf("%s has no rows", file)
	}
	for i, r := range rows {
		if r.Status(); r.Text("source") == "" {
			t.Fatalf("%s row %d has no source", file, i+1)
		}
	}
	return rows
}

// Root returns the folder of the project's go.mod, above the folder of the
// running test.
func Root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod above the test")
		}
		dir = up
	}
}
