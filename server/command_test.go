package server_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
	"patiocover/cover/table"
)

// program builds the command line program and returns its path.
func program(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "patiocover")
	build := exec.Command("go", "build", "-buildvcs=false", "-o", path, ".")
	build.Dir = calctest.Root(t)
	text, err := build.CombinedOutput()
	require.NoError(t, err, string(text))
	return path
}

// A call is a command with what it reads, and what is expected of it.
type call struct {
	name       string
	args       []string
	in         string
	code       int
	out, fault string // a part of each output; empty wants the output empty
}

// check runs the program and compares.
func (c call) check(t *testing.T, path string) {
	var out, fault bytes.Buffer
	p := exec.Command(path, c.args...)
	p.Stdin, p.Stdout, p.Stderr = strings.NewReader(c.in), &out, &fault
	var left *exec.ExitError
	if err := p.Run(); !errors.As(err, &left) {
		require.NoError(t, err)
	}
	assert.Equal(t, c.code, p.ProcessState.ExitCode(), "exit code; standard error: %s", fault.String())
	for _, stream := range []struct{ name, want, got string }{{"output", c.out, out.String()}, {"error", c.fault, fault.String()}} {
		if stream.want == "" {
			assert.Empty(t, stream.got, "standard %s", stream.name)
			continue
		}
		assert.True(t, strings.Contains(stream.got, stream.want), "standard %s lacks %q: %.300s", stream.name, stream.want, stream.got)
	}
}

// The program is built once for all of its tests.
func TestCommandLine(t *testing.T) {
	path := program(t)
	t.Run("answers", func(t *testing.T) { testCalls(t, path) })
	t.Run("lists every fault", func(t *testing.T) { testFaults(t, path) })
	t.Run("prints the report", func(t *testing.T) { testReports(t, path) })
	t.Run("serves", func(t *testing.T) { testServing(t, path) })
}

func testCalls(t *testing.T, path string) {
	desert := string(job(t, "desert"))
	at := filepath.Join(t.TempDir(), "job.json")
	require.NoError(t, os.WriteFile(at, []byte(desert), 0o600))
	ranch := filepath.Join(calctest.Root(t), "testdata", "covers", "ranch.json")
	report, err := cover.Size(input(t, "desert"))
	require.NoError(t, err)
	require.NotEqual(t, cover.OK, report.Verdict, "hardware is never checked")
	cases := []call{
		{"help", []string{"--help"}, "", 0, cover.Notice, ""},
		{"nothing asked", nil, "", 0, "Usage:", ""},
		{"file", []string{"size", at}, "", 3, "Verdict: " + string(report.Verdict), ""},
		{"standard input", []string{"size", "-"}, desert, 3, report.Stamp.InputHash, ""},
		{"flag before the file", []string{"size", "--json", at}, "", 3, `"input_hash":`, ""},
		{"flag behind the file", []string{"size", at, "--json"}, "", 3, `"input_hash":`, ""},
		{"written calculation", []string{"size", at, "--calc"}, "", 3, "Fb_adj", ""},
		{"two kinds of print", []string{"size", at, "--calc", "--json"}, "", 2, "", "calc"},
		{"unknown flag behind the file", []string{"size", at, "--wind", "120"}, "", 2, "", "unknown flag: --wind"},
		{"compare", []string{"compare", at, "--spacing", "16,32", "--wood", "Hem-Fir No.2"}, "", 3, "repetitive member factor", ""},
		{"compare as JSON", []string{"compare", "-", "--json", "--spacing", "16"}, desert, 3, `"options":[`, ""},
		{"compare as values", []string{"compare", at, "--csv", "--spacing", "16"}, "", 3, "as_drawn,spacing_in,species", ""},
		{"options", []string{"options", at, "--clear-from", "9", "--clear-to", "11"}, "", 0, "beaten by no other one", ""},
		{"options, nothing holds", []string{"options", at, "--depth", "5", "--rafter-sizes", "2x6"}, "", 3, "0 of ", ""},
		{"options, limit below 0", []string{"options", at, "--depth", "-1"}, "", 2, "", "limits.depth_in: "},
		{"options of other lists", []string{"options", at, "--beam-sizes", "4x6", "--rafter-sizes", "2x6"}, "", 0, "of 280 covers", ""},
		{"options as values", []string{"options", at, "--csv", "--beam-sizes", "4x6"}, "", 0, "as_drawn,cost,measure", ""},
		{"options as JSON", []string{"options", "-", "--json", "--beam-sizes", "4x6"}, desert, 0, `"as_drawn":{`, ""},
		{"options, no such size", []string{"options", at, "--beam-sizes", "4x7"}, "", 2, "", "space.beam_sizes: "},
		{"compare at no spacing", []string{"compare", at, "--spacing", "two"}, "", 2, "", "spacing: "},
		{"table", []string{"table", "-", "--from", "3", "--to", "4"}, table.Demo(), 0, "\n", ""},
		{"head of a table", []string{"table", "-", "--to", "1"}, table.Demo(), 0, cover.Notice, ""},
		{"size of a table", []string{"table", "-", "--count"}, table.Demo(), 0, "284", ""},
		{"table into a file", []string{"table", "-", "-o", filepath.Join(t.TempDir(), "t.csv")}, table.Demo(), 0, "", "284 of 284 cells"},
		{"criteria to begin from", []string{"table", "--example"}, "", 0, "Invented county", ""},
		{"table of nothing", []string{"table"}, "", 2, "", "--example"},
		{"no such part", []string{"table", "-", "--to", "285"}, table.Demo(), 2, "", "0 to 284"},
		{"criteria with faults", []string{"table", "-"}, `{"schema": 1}`, 2, "", "service.wet"},
		{"no file named", []string{"size"}, "", 2, "", "arg"},
		{"two files", []string{"size", at, at}, "", 2, "", "arg"},
		{"no such file", []string{"size", "none.json"}, "", 2, "", "none.json"},
		{"folder", []string{"size", filepath.Dir(at)}, "", 2, "", filepath.Dir(at)},
		{"half a job", []string{"size", "-"}, desert[:len(desert)/2], 2, "", "not valid JSON"},
		{"no job", []string{"size", "-"}, "", 2, "", "not valid JSON"},
		{"unknown key", []string{"size", "-"}, strings.Replace(desert, `"spacing_in"`, `"spacing"`, 1), 2, "", "rafters.spacing"},
		{"survey", []string{"survey", "-"}, string(job(t, "survey")), 3, "WHAT TO OPEN UP", ""},
		{"survey as JSON", []string{"survey", "-", "--json"}, string(job(t, "survey")), 3, `"keep_visible":`, ""},
		{"survey as a table", []string{"survey", "-", "--as-csv"}, string(job(t, "survey")), 3, "mark,wall,first", ""},
		{"survey with its calculations", []string{"survey", "-", "--calc"}, string(job(t, "survey")), 3, "C_up", ""},
		{"survey with joints of a table", []string{"survey", ranch, "--csv", "-"},
			"mark\tevidence\tend ft\nQ7\tNone seen\t12\n", 3, "Q7", ""},
		{"survey with a wrong table", []string{"survey", ranch, "--csv", "-"},
			"mark,evidence\nQ7,glue\n", 2, "", "row 2, column evidence"},
		{"survey with a line that is not there", []string{"survey", ranch, "--csv", "-"},
			"mark,line\nQ7,roof\n", 2, "", "house.joints[0].line"},
		{"survey with no such table", []string{"survey", ranch, "--csv", "none.csv"}, "", 2, "", "none.csv"},
		{"survey without an old roof", []string{"survey", "-"}, desert, 2, "", "house.joints"},
		{"unknown command", []string{"guess"}, "", 2, "", "guess"},
		{"schema", []string{"schema"}, "", 0, string(cover.Schema()), ""},
		{"schema of something", []string{"schema", "x"}, "", 2, "", "unknown command"},
		{"address that cannot be", []string{"serve", "--addr", "127.0.0.1:port"}, "", 2, "", "listening"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { c.check(t, path) })
	}
}

// Every fault of a job stands on a line of its own.
func testFaults(t *testing.T, path string) {
	bad := strings.Replace(string(job(t, "desert")), `"wind_speed_mph": 105`, `"wind_speed_mph": 20, "gust": 1`, 1)
	bad = strings.Replace(bad, `"exposure": "C"`, `"exposure": "E"`, 1)
	var fault bytes.Buffer
	p := exec.Command(path, "size", "-")
	p.Stdin, p.Stderr = strings.NewReader(bad), &fault
	require.Error(t, p.Run())
	assert.Equal(t, 2, p.ProcessState.ExitCode())
	lines := strings.Split(strings.TrimSpace(fault.String()), "\n")
	require.Len(t, lines, 3)
	for i, field := range []string{"site.gust: ", "site.wind_speed_mph: ", "site.exposure: "} {
		assert.True(t, strings.HasPrefix(lines[i], field), lines[i])
	}
}

// The report of the command line is that of the library, and can be read back.
func testReports(t *testing.T, path string) {
	for _, name := range covers {
		p := exec.Command(path, "size", "-", "--json")
		p.Stdin = bytes.NewReader(job(t, name))
		text, err := p.Output()
		require.Error(t, err, "hardware is never checked")
		require.Equal(t, 3, p.ProcessState.ExitCode())
		want, err := cover.Size(input(t, name))
		require.NoError(t, err)
		expected, err := json.Marshal(want)
		require.NoError(t, err)
		assert.JSONEq(t, string(expected), string(text))
	}
}

// The server of the command line answers on the machine itself, and leaves in peace
// when it is interrupted.
func testServing(t *testing.T, path string) {
	var log lines
	p := exec.Command(path, "serve", "--addr", "127.0.0.1:0")
	p.Stderr = &log
	require.NoError(t, p.Start())
	defer func() { _ = p.Process.Kill() }()
	var address string
	require.Eventually(t, func() bool {
		m := regexp.MustCompile(`address=(\S+)`).FindStringSubmatch(log.String())
		if m != nil {
			address = m[1]
		}
		return m != nil
	}, 20*time.Second, 10*time.Millisecond)
	got, err := http.Get(address + "/healthz")
	require.NoError(t, err)
	require.NoError(t, got.Body.Close())
	assert.Equal(t, http.StatusOK, got.StatusCode)
	require.NoError(t, p.Process.Signal(os.Interrupt))
	assert.NoError(t, p.Wait())
}
