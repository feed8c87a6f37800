package server_test

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"errors"
	"html"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/calc/calctest"
	"patiocover/cover"
	"patiocover/cover/table"
	"patiocover/server"
)

// covers are the whole inputs in testdata/covers.
var covers = []string{"desert", "snow", "coast", "survey", "ranch"}

// job is the text of one of them.
func job(tb testing.TB, name string) []byte {
	tb.Helper()
	text, err := os.ReadFile(filepath.Join(calctest.Root(tb), "testdata", "covers", name+".json"))
	require.NoError(tb, err)
	return text
}

// input is one of them, read.
func input(tb testing.TB, name string) cover.Input {
	tb.Helper()
	in, err := cover.Read(bytes.NewReader(job(tb, name)))
	require.NoError(tb, err)
	return in
}

// started is the server with the desert as its demonstration, and its log.
func started(tb testing.TB) (*echo.Echo, *bytes.Buffer) {
	tb.Helper()
	var log bytes.Buffer
	return server.New(server.Config{Demo: input(tb, "desert"), Log: slog.New(slog.NewJSONHandler(&log, nil))}), &log
}

// ask sends a request to the server without a network.
func ask(h http.Handler, r *http.Request) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// pages are the answers to the addresses of the whole inputs, each asked for once: its
// margins take longer than all that a test reads from it.
var pages = func() map[string]func(testing.TB) *httptest.ResponseRecorder {
	out := map[string]func(testing.TB) *httptest.ResponseRecorder{}
	for _, name := range covers {
		var once sync.Once
		var got *httptest.ResponseRecorder
		out[name] = func(tb testing.TB) *httptest.ResponseRecorder {
			once.Do(func() {
				e, log := started(tb)
				got = ask(e, request("GET", "/?"+form(input(tb, name)).Encode(), "", nil))
				assert.NotContains(tb, log.String(), `"ERROR"`)
			})
			require.NotNil(tb, got, "another test could not have it")
			return got
		}
	}
	return out
}()

// form writes an input as a browser sends it.
func form(in cover.Input) url.Values {
	out := url.Values{}
	for path, text := range cover.ToForm(in) {
		out.Set(path, text)
	}
	return out
}

// request is a request with a body of the given media type.
func request(method, target, kind string, body io.Reader) *http.Request {
	r := httptest.NewRequest(method, target, body)
	if kind != "" {
		r.Header.Set(echo.HeaderContentType, kind)
	}
	return r
}

func TestAnswers(t *testing.T) {
	e, _ := started(t)
	const json, typed = echo.MIMEApplicationJSON, echo.MIMEApplicationForm
	desert := string(job(t, "desert"))
	filled := form(input(t, "desert")).Encode()
	const few = "space.beam_sizes=4x6&space.rafter_sizes=2x6&"
	cases := []struct {
		name                       string
		method, target, kind, body string
		status                     int
		answer, says               string // media type, and a part of the body
	}{
		{"form", "GET", "/", "", "", 200, "text/html", "Size the cover"},
		{"form, head", "HEAD", "/", "", "", 200, "text/html", ""},
		{"report by address", "GET", "/?" + filled, "", "", 200, "text/html", "Verdict"},
		{"report by form", "POST", "/", typed, filled, 200, "text/html", "Verdict"},
		{"form with nothing in it", "POST", "/", typed, "", 422, "text/html", "site.wind_speed_mph"},
		{"unknown entry", "GET", "/?roof=flat", "", "", 422, "text/html", "roof"},
		{"address that cannot be read", "GET", "/?site.wind_speed_mph=105;site.exposure=C", "", "", 400, "text/html", "cannot be read"},
		{"form that cannot be read", "POST", "/", typed, "job.name=%zz", 400, "text/html", "cannot be read"},
		{"no number", "GET", "/?site.wind_speed_mph=NaN", "", "", 422, "text/html", "NaN"},
		{"survey", "POST", "/api/v1/survey", json, string(job(t, "survey")), 200, json, `"to_open":`},
		{"survey of a job without an old roof", "POST", "/api/v1/survey", json, desert, 422, "application/problem+json", "house.joints"},
		{"survey of a form", "POST", "/api/v1/survey", typed, filled, 415, "application/problem+json", "application/json"},
		{"style sheet", "GET", "/static/style.css", "", "", 200, "text/css", "@media print"},
		{"script", "GET", "/static/page.js", "", "", 200, "text/javascript", "use strict"},
		{"no asset", "GET", "/static/none.css", "", "", 404, "text/html", "Not Found"},
		{"no climbing out", "GET", "/static/../page.go", "", "", 404, "text/html", "Not Found"},
		{"no escaped climbing out", "GET", "/static/..%2fpage.go", "", "", 404, "text/html", "Not Found"},
		{"no page", "GET", "/none", "", "", 404, "text/html", "Not Found"},
		{"no such method", "DELETE", "/", "", "", 405, "text/html", "Method Not Allowed"},
		{"health", "GET", "/healthz", "", "", 200, "text/plain", "ok"},
		{"size", "POST", "/api/v1/size", json, desert, 200, json, `"verdict"`},
		{"size, charset", "POST", "/api/v1/size", json + "; charset=utf-8", desert, 200, json, `"verdict"`},
		{"compare", "POST", "/api/v1/compare?spacing=16,24&wood=Hem-Fir+No.2", json, desert, 200, json, `"options"`},
		{"compare, no such wood", "POST", "/api/v1/compare?wood=Oak+No.2", json, desert, 422, "application/problem+json", "Oak"},
		{"compare, no job", "POST", "/api/v1/compare", json, "{}", 422, "application/problem+json", "site.wind_speed_mph"},
		{"compare, a form for a program", "POST", "/api/v1/compare", typed, filled, 415, "application/problem+json", "application/json"},
		{"options", "POST", "/api/v1/options", json, desert, 200, json, `"points"`},
		{"options, no job", "POST", "/api/v1/options", json, "{}", 422, "application/problem+json", "site.wind_speed_mph"},
		{"options, other lists", "POST", "/api/v1/options?space.beam_sizes=4x6", json, desert, 200, json, `"beam_sizes":["4x6"]`},
		{"options, wrong list", "POST", "/api/v1/options?space.beam_sizes=4", json, desert, 422, "application/problem+json", "beam_sizes"},
		{"options, unknown entry", "POST", "/api/v1/options?space.roof=flat", json, desert, 422, "application/problem+json", "space.roof"},
		{"options, a form for a program", "POST", "/api/v1/options", typed, filled, 415, "application/problem+json", "application/json"},
		{"options page", "GET", "/options?" + few + filled, "", "", 200, "text/html", "Every cover that no other one beats"},
		{"options page, head", "HEAD", "/options?" + few + filled, "", "", 200, "text/html", ""},
		{"options page by form", "POST", "/options", typed, few + filled, 200, "text/html", "Every cover that no other one beats"},
		{"options page, wrong list", "GET", "/options?space.beam_sizes=4x7&" + filled, "", "", 422, "text/html", ">4x7</textarea>"},
		{"options page, no such clear bay", "GET", "/options?limits.clear_from_ft=9&" + filled, "", "", 422, "text/html", "clear bay ends"},
		{"options page, too large", "GET", "/options?" + huge() + filled, "", "", 422, "text/html", "combinations"},
		{"options page, wrong input", "GET", "/options?site.wind_speed_mph=NaN", "", "", 422, "text/html", "NaN"},
		{"options page, nothing asked", "GET", "/options", "", "", 303, "", ""},
		{"options page that cannot be read", "GET", "/options?a=b;c=d", "", "", 400, "text/html", "cannot be read"},
		{"options form that cannot be read", "POST", "/options", typed, "job.name=%zz", 400, "text/html", "cannot be read"},
		{"compare page", "GET", "/compare?" + filled, "", "", 200, "text/html", "side by side"},
		{"compare page, wrong choice", "GET", "/compare?spacing=two&" + filled, "", "", 422, "text/html", "another look"},
		{"compare page, wrong input", "GET", "/compare?site.wind_speed_mph=NaN", "", "", 422, "text/html", "NaN"},
		{"compare page, nothing asked", "GET", "/compare", "", "", 303, "", ""},
		{"table", "POST", "/api/v1/table", json, table.Demo(), 200, json, `"cells"`},
		{"part of a table", "POST", "/api/v1/table?from=5&to=6", json, table.Demo(), 200, json, `"index":5`},
		{"part beyond the table", "POST", "/api/v1/table?to=100000", json, table.Demo(), 400, "application/problem+json", "number of"},
		{"part of nothing", "POST", "/api/v1/table?from=5&to=4", json, table.Demo(), 400, "application/problem+json", "not above"},
		{"table of too many cells", "POST", "/api/v1/table", json, large(t), 422, "application/problem+json", "more than the 20000"},
		{"part of a large table", "POST", "/api/v1/table?from=30000&to=30010", json, large(t), 200, json, `"index":30009`},
		{"table of nothing", "POST", "/api/v1/table", json, `{"schema": 1}`, 422, "application/problem+json", "service.wet"},
		{"table, no JSON", "POST", "/api/v1/table", json, `{`, 400, "application/problem+json", "not valid JSON"},
		{"table page", "GET", "/table", "", "", 200, "text/html", "Invented county"},
		{"table page, made", "POST", "/table", typed, url.Values{"criteria": {table.Demo()}}.Encode(), 200, "text/html", "longest span"},
		{"table page, too large", "POST", "/table", typed, url.Values{"criteria": {large(t)}}.Encode(), 422, "text/html", "command line"},
		{"table page, wrong", "POST", "/table", typed, url.Values{"criteria": {"{"}}.Encode(), 422, "text/html", "another look"},
		{"no job", "POST", "/api/v1/size", json, "", 400, "application/problem+json", "not valid JSON"},
		{"half a job", "POST", "/api/v1/size", json, desert[:len(desert)/2], 400, "application/problem+json", "not valid JSON"},
		{"empty job", "POST", "/api/v1/size", json, "{}", 422, "application/problem+json", "site.wind_speed_mph"},
		{"unknown key", "POST", "/api/v1/size", json, `{"roof":1}`, 422, "application/problem+json", "roof"},
		{"a form for a program", "POST", "/api/v1/size", typed, filled, 415, "application/problem+json", "application/json"},
		{"no media type", "POST", "/api/v1/size", "", desert, 415, "application/problem+json", "application/json"},
		{"wrong media type", "POST", "/api/v1/size", "text/plain", desert, 415, "application/problem+json", "application/json"},
		{"no such method for programs", "GET", "/api/v1/size", "", "", 405, "application/problem+json", "method"},
		{"no such address for programs", "POST", "/api/v1/none", json, desert, 404, "application/problem+json", "nothing"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := ask(e, request(c.method, c.target, c.kind, strings.NewReader(c.body)))
			assert.Equal(t, c.status, got.Code)
			assert.Contains(t, got.Header().Get(echo.HeaderContentType), c.answer)
			says(t, got, c.says)
		})
	}
}

// large is the criteria of a table of more cells than one answer holds.
func large(t *testing.T) string {
	t.Helper()
	c, err := table.Read(strings.NewReader(table.Demo()))
	require.NoError(t, err)
	c.Wind.Speeds = nil
	for v := 90.0; v < 140; v++ {
		c.Wind.Speeds = append(c.Wind.Speeds, v)
	}
	for len(c.Loads) < 20 {
		l := c.Loads[len(c.Loads)-1]
		l.Snow++
		c.Loads = append(c.Loads, l)
	}
	text, err := json.Marshal(c)
	require.NoError(t, err)
	return string(text)
}

// says fails when the body of an answer lacks the words. It does not print the body,
// which may be a whole page.
func says(t *testing.T, got *httptest.ResponseRecorder, words string) {
	t.Helper()
	assert.True(t, strings.Contains(got.Body.String(), words), "the answer does not say %q", words)
}

// A program gets what [cover.Size] answers, and the page of the same input the same
// verdict.
func TestReportOfEveryCover(t *testing.T) {
	e, log := started(t)
	for _, name := range covers {
		t.Run(name, func(t *testing.T) {
			want, err := cover.Size(input(t, name))
			require.NoError(t, err)
			got := ask(e, request("POST", "/api/v1/size", echo.MIMEApplicationJSON, bytes.NewReader(job(t, name))))
			require.Equal(t, 200, got.Code)
			text, err := json.Marshal(want)
			require.NoError(t, err)
			assert.True(t, bytes.Equal(text, got.Body.Bytes()), "the program gets another report")

			page := pages[name](t)
			require.Equal(t, 200, page.Code)
			for _, f := range want.Summary {
				says(t, page, string(f.Verdict))
			}
			says(t, page, want.Stamp.InputHash)
		})
	}
	assert.NotContains(t, log.String(), `"ERROR"`)
}

// The input of a report travels through form, address and page unchanged.
func TestSameInputByAddressFormAndProgram(t *testing.T) {
	e, _ := started(t)
	in := input(t, "survey")
	want, err := cover.Size(in)
	require.NoError(t, err)
	var body bytes.Buffer
	parts := newParts(t, &body, in)
	says(t, pages["survey"](t), want.Stamp.InputHash)
	for name, r := range map[string]*http.Request{
		"form":      request("POST", "/", echo.MIMEApplicationForm, strings.NewReader(form(in).Encode())),
		"multipart": request("POST", "/", parts, &body),
	} {
		got := ask(e, r)
		assert.Equal(t, 200, got.Code, name)
		says(t, got, want.Stamp.InputHash)
	}
}

func TestPageHasTheDemonstration(t *testing.T) {
	e, _ := started(t)
	got := ask(e, request("GET", "/", "", nil))
	says(t, got, *input(t, "desert").Job.Name)
	assert.False(t, strings.Contains(got.Body.String(), `id="members"`), "a report before anything was asked")
}

// A wrong entry keeps what was typed, and says what is allowed.
func TestFaultsKeepWhatWasTyped(t *testing.T) {
	e, _ := started(t)
	filled := form(input(t, "desert"))
	filled.Set("cover.projection_ft", `1000' 6"`)
	filled.Set("site.exposure", "E")
	got := ask(e, request("GET", "/?"+filled.Encode(), "", nil))
	assert.Equal(t, 422, got.Code)
	says(t, got, `value="1000&#39; 6&#34;"`)
	says(t, got, "3 to 40 ft")
	says(t, got, "one of B, C, D")
}

// Refusals for programs follow RFC 9457, section 3.
func TestProblemDetails(t *testing.T) {
	e, _ := started(t)
	filled := bytes.Replace(job(t, "desert"), []byte(`"wind_speed_mph": 105`), []byte(`"wind_speed_mph": 20`), 1)
	filled = bytes.Replace(filled, []byte(`"exposure": "C"`), []byte(`"exposure": "E"`), 1)
	got := ask(e, request("POST", "/api/v1/size", echo.MIMEApplicationJSON, bytes.NewReader(filled)))
	assert.Equal(t, "application/problem+json", got.Header().Get(echo.HeaderContentType))
	var p struct {
		Type, Title, Detail, Instance, Notice string
		Status                                int
		Errors                                []calc.Fault
	}
	require.NoError(t, json.Unmarshal(got.Body.Bytes(), &p))
	assert.Equal(t, 422, p.Status)
	assert.Equal(t, "about:blank", p.Type)
	assert.Equal(t, "Unprocessable Entity", p.Title)
	assert.Equal(t, "/api/v1/size", p.Instance)
	assert.NotEmpty(t, p.Detail)
	assert.Equal(t, cover.Notice, p.Notice, "a refusal carries it like every answer")
	assert.Equal(t, []calc.Fault{
		{Path: "site.wind_speed_mph", Given: "20 mph", Allowed: "85 to 200 mph"},
		{Path: "site.exposure", Given: `"E"`, Allowed: "one of B, C, D"},
	}, p.Errors)
}

// A fault of the program is logged once and told to nobody.
func TestOwnFaultsAreLoggedAndNotTold(t *testing.T) {
	cases := []struct {
		name   string
		answer echo.HandlerFunc
		stack  bool
	}{
		{"error", func(echo.Context) error { return errors.New("the secret of the house") }, false},
		{"panic", func(echo.Context) error { panic("the secret of the house") }, true},
	}
	for _, c := range cases {
		for _, target := range []string{"/broken", "/api/broken"} {
			t.Run(c.name+target, func(t *testing.T) {
				e, log := started(t)
				e.GET(target, c.answer)
				got := ask(e, request("GET", target, "", nil))
				assert.Equal(t, 500, got.Code)
				assert.NotContains(t, got.Body.String(), "secret")
				assert.NotContains(t, got.Body.String(), "goroutine")
				assert.Equal(t, 1, strings.Count(log.String(), "the secret of the house"))
				assert.Equal(t, 1, strings.Count(log.String(), `"level":"ERROR"`))
				assert.Equal(t, c.stack, strings.Contains(log.String(), "server_test.go"), "where the panic was")
			})
		}
	}
}

// A refusal that comes too late for its own head is not written into the answer.
func TestCommittedAnswersAreLeftAlone(t *testing.T) {
	e, _ := started(t)
	e.GET("/half", func(c echo.Context) error {
		_ = c.String(http.StatusOK, "begun")
		return errors.New("too late")
	})
	assert.Equal(t, "begun", ask(e, request("GET", "/half", "", nil)).Body.String())
}

func TestAnswersArePacked(t *testing.T) {
	e, _ := started(t)
	r := request("GET", "/?"+form(input(t, "desert")).Encode(), "", nil)
	r.Header.Set(echo.HeaderAcceptEncoding, "gzip")
	got := ask(e, r)
	require.Equal(t, "gzip", got.Header().Get(echo.HeaderContentEncoding))
	packed := got.Body.Len()
	unpacked, err := gzip.NewReader(got.Body)
	require.NoError(t, err)
	page, err := io.ReadAll(unpacked)
	require.NoError(t, err)
	assert.Contains(t, string(page), "</html>")
	assert.Less(t, packed, len(page)/4)
}

// The margins come with the report where they are asked for, and only there.
func TestSizeWithMargins(t *testing.T) {
	h, _ := started(t)
	for _, c := range []struct {
		query  string
		status int
		has    bool
	}{
		{"", http.StatusOK, false}, {"?margins=true", http.StatusOK, true}, {"?margins=yes", http.StatusBadRequest, false},
	} {
		rec := ask(h, request(http.MethodPost, "/api/v1/size"+c.query, echo.MIMEApplicationJSON, bytes.NewReader(job(t, "desert"))))
		assert.Equal(t, c.status, rec.Code, c.query)
		assert.Equal(t, c.has, strings.Contains(rec.Body.String(), `"margins":[`), c.query)
	}
}

// The report leads to the comparison of the same input, and the comparison back to it.
func TestReportLeadsToItsComparison(t *testing.T) {
	e, _ := started(t)
	for _, name := range covers {
		want, err := cover.Size(input(t, name))
		require.NoError(t, err)
		there := linked(t, pages[name](t).Body.String(), `href="(/compare\?[^"]+)"`)
		comparison := ask(e, request("GET", there, "", nil))
		require.Equal(t, 200, comparison.Code, name)
		says(t, comparison, want.Stamp.InputHash)
		back, err := url.Parse(linked(t, comparison.Body.String(), `href="(/\?[^"]+)"`))
		require.NoError(t, err, name)
		in, _, err := cover.FromForm(back.Query())
		require.NoError(t, err, name)
		again, err := cover.Size(in)
		require.NoError(t, err, name)
		assert.Equal(t, want.Stamp.InputHash, again.Stamp.InputHash, name)
	}
}

// linked is the first address of a page that a pattern finds.
func linked(t *testing.T, page, pattern string) string {
	t.Helper()
	m := regexp.MustCompile(pattern).FindStringSubmatch(page)
	require.NotNil(t, m, pattern)
	return html.UnescapeString(m[1])
}
