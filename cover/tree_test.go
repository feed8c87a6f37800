package cover_test

import (
	"bytes"
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// topEntries are the only entries at the top of the project.
var topEntries = []string{
	".ci", ".gitignore", "DEVELOPERS.md", "README.md", "beam", "calc", "connections", "cover", "go.mod", "go.sum",
	"loads", "main.go", "server", "testdata", "web",
}

func TestTopEntries(t *testing.T) {
	for _, name := range projectFiles(t) {
		top, _, _ := strings.Cut(name, "/")
		assert.Contains(t, topEntries, top, "%s does not belong at the top", name)
	}
}

// vague are file names that say nothing of what the file holds.
var vague = []string{"util", "utils", "helper", "helpers", "common", "misc", "types", "base", "stuff"}

func TestFileNamesSayWhatTheyHold(t *testing.T) {
	for _, name := range projectFiles(t) {
		stem := strings.TrimSuffix(strings.TrimSuffix(path.Base(name), path.Ext(name)), "_test")
		assert.NotContains(t, vague, stem, name)
	}
}

var (
	machinePath = regexp.MustCompile(`(^|[^\w.\-/])/(work|root|home)/`)
	leftOpen    = regexp.MustCompile(`\b(TO` + `DO|FIX` + `ME|XX` + `X)\b`)
	link        = regexp.MustCompile(`https?://[A-Za-z0-9][^\s"'` + "`" + `)]*`)
)

// namedLinks are names, not places, that a Go file must spell out: XML
// namespaces, the schema dialect, the own machine, and the reserved example
// domain (RFC 2606) that handler tests use.
var namedLinks = []string{
	"http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink", "http://www.w3.org/1999/xhtml",
	"https://json-schema.org/draft/", "http://127.0.0.1", "http://localhost", "http://example.com",
}

// traces are parts of everything that a line may not hold: a line without any is clean, and
// most lines are.
var traces = []string{"/wo" + "rk/", "/ro" + "ot/", "/ho" + "me/", "TO" + "DO", "FIX" + "ME", "XX" + "X", ":/" + "/"}

// lineFault says what a line of the named file may not hold, or nothing.
func lineFault(name, line string) string {
	if !slices.ContainsFunc(traces, func(trace string) bool { return strings.Contains(line, trace) }) {
		return ""
	}
	if m := machinePath.FindString(line); m != "" {
		return "names a folder of one machine: " + strings.TrimSpace(m)
	}
	if m := leftOpen.FindString(line); m != "" {
		return "leaves something open: " + m
	}
	if path.Ext(name) != ".go" {
		return ""
	}
	for _, m := range link.FindAllString(line, -1) {
		if !slices.ContainsFunc(namedLinks, func(allowed string) bool { return linksTo(m, allowed) }) {
			return "holds a link, cite standard, edition and section: " + m
		}
	}
	return ""
}

// linksTo reports whether the link is the allowed one or lies below it.
func linksTo(m, allowed string) bool {
	rest, ok := strings.CutPrefix(m, allowed)
	return ok && (rest == "" || strings.HasSuffix(allowed, "/") || strings.ContainsAny(rest[:1], "/:?#"))
}

func TestFilesHoldNothingForeign(t *testing.T) {
	for _, name := range projectFiles(t) {
		text := content(t, name)
		if bytes.IndexByte(text, 0) >= 0 || path.Ext(name) == ".sum" {
			continue // pictures and checksums are no text
		}
		for i, line := range strings.Split(string(text), "\n") {
			if fault := lineFault(name, line); fault != "" {
				t.Errorf("%s:%d: %s", name, i+1, fault)
			}
		}
	}
}

// The scan must refuse what it is for. The words are put together here so that
// this file passes its own scan.
func TestForeignRules(t *testing.T) {
	folder := func(top string) string { return "/" + top + "/" }
	address := func(scheme, rest string) string { return scheme + ":/" + "/" + rest }
	cases := []struct {
		name, line string
		clean      bool
	}{
		{"a.go", `dir := "` + folder("work") + `x"`, false},
		{"a.md", folder("root") + "go/bin", false},
		{"a.csv", "1,2," + folder("home") + "someone", false},
		{"a.html", `<a href="/api/work/">`, true},
		{"a.md", "a framework/root/house", true},
		{"a.go", "// TO" + "DO: later", false},
		{"a.js", "// FIX" + "ME", false},
		{"a.md", "a mastodon", true},
		{"a.go", "// see " + address("https", "site.test/page"), false},
		{"a.go", `"` + address("http", "127.0.0.1.site.test/") + `"`, false},
		{"a.go", `ns := "` + address("http", "www.w3.org/2000/svg") + `"`, true},
		{"a.go", `id := "` + address("https", "json-schema.org/draft/2020-12/schema") + `"`, true},
		{"a.go", `get(t, "` + address("http", "127.0.0.1:8080/") + `")`, true},
		{"a.go", `fmt.Sprintf("` + address("http", "%s/") + `", address)`, true},
		{"a.md", address("https", "site.test/page"), true},
	}
	for i, c := range cases {
		t.Run(fmt.Sprint(i), func(t *testing.T) { assert.Equal(t, c.clean, lineFault(c.name, c.line) == "", c.line) })
	}
}
