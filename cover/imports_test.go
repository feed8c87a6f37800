package cover_test

import (
	"go/ast"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// module is the path of the project's own packages.
const module = "patiocover"

// order is the only direction of imports: a package may import those of its own
// top folder and of the folders before it. The last is main.
var order = []string{"calc", "loads", "beam", "connections", "cover", "web", "server", "."}

// An outside package may be imported in one top folder, or anywhere but in tests
// only.
type outside struct {
	prefix    string
	top       string // the folder that may import it; empty for every folder
	testsOnly bool
}

var outsiders = []outside{
	{prefix: "github.com/labstack/", top: "server"},
	{prefix: "gonum.org/", top: "beam"},
	{prefix: "github.com/spf13/", top: "."},
	{prefix: "github.com/stretchr/testify/", testsOnly: true},
	{prefix: "pgregory.net/rapid", testsOnly: true},
}

// pure are the folders that compute and nothing else.
var pure = []string{"calc", "loads", "beam", "connections"}

// worldly are the standard packages by which a computation would touch the
// world, with everything below them. io/fs is named apart: io itself is harmless.
var worldly = []string{
	"context", "flag", "io/fs", "io/ioutil", "log", "math/rand", "net", "os", "path/filepath", "plugin", "runtime",
	"sync", "syscall", "testing", "time",
}

// topOf is the top folder of a file, "." for one at the top.
func topOf(name string) string {
	top, _, below := strings.Cut(name, "/")
	if !below {
		return "."
	}
	return top
}

// importFault says why the file may not import the package, or nothing.
func importFault(file, imported string) string {
	if imported == module {
		return "nothing imports main"
	}
	if own, ok := strings.CutPrefix(imported, module+"/"); ok {
		return arrowFault(file, own)
	}
	if host, _, _ := strings.Cut(imported, "/"); strings.Contains(host, ".") {
		return outsideFault(file, imported)
	}
	return worldlyFault(file, imported)
}

func arrowFault(file, own string) string {
	from, to := slices.Index(order, topOf(file)), slices.Index(order, topOf(own+"/"))
	switch {
	case from < 0:
		return "the folder " + topOf(file) + " has no place in the order of imports"
	case to < 0:
		return "the folder " + topOf(own+"/") + " has no place in the order of imports"
	case to > from:
		return topOf(file) + " stands before " + topOf(own+"/") + " in the order of imports"
	case own == "calc/calctest" && !strings.HasSuffix(file, "_test.go"):
		return "calctest is for tests"
	}
	return ""
}

func outsideFault(file, imported string) string {
	for _, o := range outsiders {
		if imported != o.prefix && !strings.HasPrefix(imported, strings.TrimSuffix(o.prefix, "/")+"/") {
			continue
		}
		switch {
		case o.testsOnly && !strings.HasSuffix(file, "_test.go") && path.Dir(file) != "calc/calctest":
			return "it is for tests"
		case o.top != "" && o.top != topOf(file):
			return "only the folder " + o.top + " imports it"
		}
		return ""
	}
	return "it is not among the outside packages that the project uses"
}

func worldlyFault(file, imported string) string {
	tests := strings.HasSuffix(file, "_test.go") || path.Dir(file) == "calc/calctest"
	if tests || !slices.Contains(pure, topOf(file)) {
		return ""
	}
	for _, w := range worldly {
		if imported == w || strings.HasPrefix(imported, w+"/") {
			return topOf(file) + " is pure arithmetic"
		}
	}
	return ""
}

// imports lists the packages that a file imports.
func imports(s source) []string {
	var all []string
	for _, i := range s.syntax.Imports {
		name, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			panic(err) // the parser has accepted it
		}
		all = append(all, name)
	}
	return all
}

func TestImportsGoOneWay(t *testing.T) {
	for _, s := range sources(t) {
		for _, imported := range imports(s) {
			if fault := importFault(s.name, imported); fault != "" {
				t.Errorf("%s imports %s: %s", s.name, imported, fault)
			}
		}
	}
}

// The rules must refuse what they are for.
func TestImportRules(t *testing.T) {
	cases := []struct {
		file, imported string
		want           string
	}{
		{"calc/sheet.go", "math", ""},
		{"calc/sheet.go", "patiocover/loads/wind", "calc stands before loads in the order of imports"},
		{"loads/wind/free.go", "patiocover/calc", ""},
		{"loads/wind/free.go", "patiocover/loads/site", ""},
		{"loads/wind/free.go", "patiocover/beam/lumber", "loads stands before beam in the order of imports"},
		{"beam/span.go", "patiocover/connections", "beam stands before connections in the order of imports"},
		{"connections/dowel/nail_test.go", "patiocover/cover", "connections stands before cover in the order of imports"},
		{"cover/size.go", "patiocover/connections", ""},
		{"cover/size.go", "patiocover/web", "cover stands before web in the order of imports"},
		{"web/page.go", "patiocover/server", "web stands before server in the order of imports"},
		{"server/jobs/store.go", "patiocover/cover", ""},
		{"main.go", "patiocover/server", ""},
		{"server/run.go", "patiocover", "nothing imports main"},
		{"helpers/x.go", "patiocover/calc", "the folder helpers has no place in the order of imports"},
		{"cover/size.go", "patiocover/helpers", "the folder helpers has no place in the order of imports"},
		{"beam/span_test.go", "patiocover/calc/calctest", ""},
		{"beam/span.go", "patiocover/calc/calctest", "calctest is for tests"},
		{"server/handler.go", "github.com/labstack/echo/v4", ""},
		{"web/page.go", "github.com/labstack/echo/v4", "only the folder server imports it"},
		{"main.go", "github.com/labstack/echo/v4", "only the folder server imports it"},
		{"beam/span.go", "gonum.org/v1/gonum/mat", ""},
		{"loads/wind/free.go", "gonum.org/v1/gonum/mat", "only the folder beam imports it"},
		{"main.go", "github.com/spf13/cobra", ""},
		{"server/run.go", "github.com/spf13/cobra", "only the folder . imports it"},
		{"calc/x_test.go", "github.com/stretchr/testify/assert", ""},
		{"calc/x.go", "github.com/stretchr/testify/assert", "it is for tests"},
		{"calc/x_test.go", "pgregory.net/rapid", ""},
		{"calc/x.go", "pgregory.net/rapid", "it is for tests"},
		{"calc/x_test.go", "pgregory.net/rapidly", "it is not among the outside packages that the project uses"},
		{"cover/size.go", "golang.org/x/exp/maps", "it is not among the outside packages that the project uses"},
		{"loads/wind/free.go", "embed", ""},
		{"loads/wind/free.go", "os", "loads is pure arithmetic"},
		{"beam/span.go", "time", "beam is pure arithmetic"},
		{"beam/span.go", "log/slog", "beam is pure arithmetic"},
		{"connections/path.go", "net/http", "connections is pure arithmetic"},
		{"connections/path.go", "net/netip", "connections is pure arithmetic"},
		{"connections/path.go", "math/rand/v2", "connections is pure arithmetic"},
		{"connections/path.go", "sync/atomic", "connections is pure arithmetic"},
		{"connections/path.go", "io/fs", "connections is pure arithmetic"},
		{"connections/path.go", "math/bits", ""},
		{"calc/sheet.go", "os", "calc is pure arithmetic"},
		{"calc/calctest/near.go", "testing", ""},
		{"connections/path_test.go", "os", ""},
		{"server/handler.go", "net/http", ""},
	}
	for _, c := range cases {
		t.Run(c.file+" "+c.imported, func(t *testing.T) { assert.Equal(t, c.want, importFault(c.file, c.imported)) })
	}
}

// startFaults lists what a pure package does beside computing: goroutines, and
// embedding anything into more than a variable.
func startFaults(s source) []string {
	var faults []string
	ast.Inspect(s.syntax, func(n ast.Node) bool {
		if g, ok := n.(*ast.GoStmt); ok {
			faults = append(faults, s.name+":"+strconv.Itoa(s.line(g.Pos()))+": starts a goroutine")
		}
		return true
	})
	for _, i := range s.syntax.Imports {
		if i.Path.Value == `"embed"` && (i.Name == nil || i.Name.Name != "_") {
			faults = append(faults, s.name+":"+strconv.Itoa(s.line(i.Pos()))+": embeds a file system; embed a text")
		}
	}
	return faults
}

func TestPurePackagesOnlyCompute(t *testing.T) {
	for _, s := range sources(t) {
		if slices.Contains(pure, topOf(s.name)) && !s.test() {
			assert.Empty(t, startFaults(s))
		}
	}
}

func TestPureRules(t *testing.T) {
	impure := parse(t, "beam/x.go", "package beam\n\nimport \"embed\"\n\nvar f embed.FS\n\nfunc x() { go x() }\n")
	assert.Equal(t, []string{
		"beam/x.go:7: starts a goroutine", "beam/x.go:3: embeds a file system; embed a text",
	}, startFaults(impure))
	assert.Empty(t, startFaults(parse(t, "beam/x.go", "package beam\n\nimport _ \"embed\"\n\n//go:embed t.csv\nvar t string\n")))
}
