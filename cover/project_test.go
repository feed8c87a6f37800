package cover_test

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
)

// A source is one Go file of the project.
type source struct {
	name   string // path from the top, with slashes
	lines  []string
	set    *token.FileSet
	syntax *ast.File
}

// test reports whether the file is compiled into tests only.
func (s source) test() bool { return strings.HasSuffix(s.name, "_test.go") }

// line is the line number of a position.
func (s source) line(p token.Pos) int { return s.set.Position(p).Line }

// parse reads the text of a Go file called name.
func parse(t *testing.T, name, text string) source {
	t.Helper()
	set := token.NewFileSet()
	syntax, err := parser.ParseFile(set, name, text, parser.ParseComments|parser.SkipObjectResolution)
	require.NoError(t, err)
	return source{name: name, lines: strings.Split(strings.TrimSuffix(text, "\n"), "\n"), set: set, syntax: syntax}
}

// sources parses every Go file of the project.
func sources(t *testing.T) []source {
	t.Helper()
	var all []source
	for _, name := range projectFiles(t) {
		if path.Ext(name) == ".go" {
			all = append(all, parse(t, name, string(content(t, name))))
		}
	}
	require.NotEmpty(t, all)
	return all
}

// content reads a file by its path from the top.
func content(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(calctest.Root(t), filepath.FromSlash(name)))
	require.NoError(t, err)
	return text
}

// projectFiles lists the files of the project by path from the top: those in the
// folder that version control holds or would take in. Without version control it
// lists all.
func projectFiles(t *testing.T) []string {
	t.Helper()
	root := calctest.Root(t)
	names := walk(t, root)
	if _, err := os.Stat(filepath.Join(root, ".git")); err != nil {
		return names
	}
	list := exec.Command("git", "-c", "safe.directory=*", "ls-files", "-z", "--cached", "--others", "--exclude-standard")
	list.Dir = root
	text, err := list.Output()
	require.NoError(t, err, "git ls-files")
	held := map[string]bool{}
	for name := range bytes.SplitSeq(text, []byte{0}) {
		held[string(name)] = true
	}
	return slices.DeleteFunc(names, func(name string) bool { return !held[name] })
}

// walk lists the files below root. It opens every folder itself, so that a cached
// result of these tests is dropped when a file comes or goes.
func walk(t *testing.T, root string) []string {
	t.Helper()
	var names []string
	require.NoError(t, fs.WalkDir(os.DirFS(root), ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err == nil && d.IsDir() && d.Name() == ".git":
			return fs.SkipDir
		case err == nil && d.Type().IsRegular():
			names = append(names, name)
		}
		return err
	}))
	return names
}

// Both ways of listing the project must see the Go files of this package.
func TestProjectFilesAreFound(t *testing.T) {
	require.Contains(t, projectFiles(t), "cover/project_test.go")
	require.Contains(t, projectFiles(t), "go.mod")
	require.Contains(t, walk(t, calctest.Root(t)), "cover/project_test.go")
}
