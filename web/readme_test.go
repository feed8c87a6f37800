package web_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
	"patiocover/web"
)

// fenced finds the fenced blocks of a page: their language and their text.
var fenced = regexp.MustCompile("(?ms)^```(\\w+)\n(.*?)^```$")

// The example of README.md is a job that this program reads, and what stands below it
// is part of what this program answers.
func TestReadmeExample(t *testing.T) {
	page, err := os.ReadFile(filepath.Join(calctest.Root(t), "README.md"))
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(page), "<!-- example: begin -->")
	require.True(t, ok)
	example, _, ok := strings.Cut(rest, "<!-- example: end -->")
	require.True(t, ok)
	blocks := fenced.FindAllStringSubmatch(example, -1)
	require.Len(t, blocks, 3)
	require.Equal(t, "json", blocks[0][1])
	in, err := cover.Read(strings.NewReader(blocks[0][2]))
	require.NoError(t, err)
	report, err := cover.Size(in)
	require.NoError(t, err)
	var text strings.Builder
	require.NoError(t, web.Text(&text, report))
	for _, b := range blocks[1:] {
		require.Contains(t, text.String(), b[2])
	}
}

// The table of joints in README.md is one that this program reads.
func TestReadmeSurveyTable(t *testing.T) {
	page, err := os.ReadFile(filepath.Join(calctest.Root(t), "README.md"))
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(page), "<!-- survey table -->")
	require.True(t, ok)
	blocks := fenced.FindAllStringSubmatch(rest, 1)
	require.Equal(t, "csv", blocks[0][1])
	joints, err := cover.ReadJoints(strings.NewReader(blocks[0][2]))
	require.NoError(t, err)
	require.Len(t, joints, 3)
	require.Equal(t, 6.5, *joints[1].End)
}
