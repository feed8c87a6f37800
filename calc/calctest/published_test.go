package calctest_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/calc/calctest"
)

// project makes a folder with a go.mod and one published file, and moves the test
// to a folder below it.
func project(t *testing.T, text string) string {
	t.Helper()
	top := t.TempDir()
	for name, content := range map[string]string{"go.mod": "module x\n", "testdata/published/f.csv": text, "a/b/c.go": ""} {
		path := filepath.Join(top, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
	}
	t.Chdir(filepath.Join(top, "a", "b"))
	return top
}

func TestPublished(t *testing.T) {
	project(t, "# note\nD in,want,within,source,status\n0.162,40,0.5,a table,recalled\n0.148,37,0.5,a table,read\n")
	rows := calctest.Published(t, "f.csv")
	require.Len(t, rows, 2)
	assert.Equal(t, 0.162, rows[0].Num("D in"))
	assert.Equal(t, 37.0, rows[1].Num("want"))
	assert.Equal(t, calc.Read, rows[1].Status())
}

func TestPublishedRefuses(t *testing.T) {
	cases := []struct {
		name string
		file string
		text string
		want string
	}{
		{"no rows", "f.csv", "want,source,status\n", "%s has no rows"},
		{"no source in a row", "f.csv", "want,source,status\n1,,read\n", "%s row %d has no source"},
		{"no file", "g.csv", "", "fatal"},
		{"no source column", "f.csv", "want,status\n1,read\n", `calc: table f.csv has no column "source"`},
		{"an unknown status", "f.csv", "want,source,status\n1,a table,seen\n",
			`calc: table f.csv row 1: status "seen" is not one of recalled, computed, read`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			project(t, c.text)
			assert.PanicsWithValue(t, c.want, func() { calctest.Published(&witness{TB: t}, c.file) })
		})
	}
}

func TestRoot(t *testing.T) {
	top := project(t, "")
	want, err := os.Stat(top)
	require.NoError(t, err)
	got, err := os.Stat(calctest.Root(t))
	require.NoError(t, err)
	assert.True(t, os.SameFile(want, got))
}

func TestRootRefusesAFolderOutsideTheProject(t *testing.T) {
	t.Chdir(t.TempDir())
	assert.PanicsWithValue(t, "fatal", func() { calctest.Root(&witness{TB: t}) })
}
