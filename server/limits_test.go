package server_test

import (
	"bytes"
	"context"
	"log/slog"
	"mime/multipart"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/server"
)

// newParts writes an input as a form in parts and returns its media type.
func newParts(t *testing.T, body *bytes.Buffer, in cover.Input) string {
	t.Helper()
	w := multipart.NewWriter(body)
	for path, text := range cover.ToForm(in) {
		require.NoError(t, w.WriteField(path, text))
	}
	require.NoError(t, w.Close())
	return w.FormDataContentType()
}

// A body of ten megabytes is refused by its size: told by its head, found while it is
// read, as JSON, and as a form. A decoder may wrap the refusal; it stays a 413.
func TestTrapBodyLimitBehindDecoder(t *testing.T) {
	big := strings.Repeat(" ", 10<<20)
	long := input(t, "desert")
	long.Job.Note = &big
	var parts bytes.Buffer
	kind := newParts(t, &parts, long)
	cases := []struct{ name, target, kind, body string }{
		{"json", "/api/v1/size", echo.MIMEApplicationJSON, big},
		{"json, one key", "/api/v1/size", echo.MIMEApplicationJSON, `{"job":{"name":"` + big + `"}}`},
		{"form", "/", echo.MIMEApplicationForm, "job.name=" + strings.Repeat("x", 10<<20)},
		{"form in parts", "/", kind, parts.String()},
	}
	for _, c := range cases {
		for _, told := range []bool{true, false} {
			e, log := started(t)
			r := request("POST", c.target, c.kind, strings.NewReader(c.body))
			if !told {
				r.ContentLength = -1
			}
			got := ask(e, r)
			assert.Equal(t, http.StatusRequestEntityTooLarge, got.Code, "%s, length told: %v", c.name, told)
			says(t, got, "256 kB")
			assert.NotContains(t, log.String(), `"ERROR"`, c.name)
		}
	}
}

// Every answer forbids what the page does not need: of the page, of an asset, of a
// refusal and of a program's answer.
func TestSecurityHeaders(t *testing.T) {
	e, _ := started(t)
	for _, target := range []string{"/", "/none", "/static/style.css", "/static/none", "/healthz", "/api/v1/none"} {
		h := ask(e, request("GET", target, "", nil)).Header()
		assert.Equal(t, "nosniff", h.Get(echo.HeaderXContentTypeOptions), target)
		assert.Equal(t, "DENY", h.Get(echo.HeaderXFrameOptions), target)
		assert.Equal(t, "no-referrer", h.Get(echo.HeaderReferrerPolicy), "the address holds the input: %s", target)
		assert.Empty(t, h.Get(echo.HeaderStrictTransportSecurity), "plain http")
		policy := h.Get(echo.HeaderContentSecurityPolicy)
		for _, part := range []string{"default-src 'self'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'self'"} {
			assert.Contains(t, policy, part, target)
		}
		assert.NotContains(t, policy, "unsafe", target)
	}
}

// The policy forbids style and script in the page: there must be none, or it would be
// dead, and a drawing black.
func TestTrapNothingInlineUnderThePolicy(t *testing.T) {
	for _, name := range covers {
		page := pages[name](t).Body.String()
		for _, foreign := range []string{" style=", "<style", "javascript:", " onclick=", " onload=", "<script>"} {
			assert.False(t, strings.Contains(page, foreign), "%s: %s", name, foreign)
		}
	}
}

// A client chooses its request id only when it is short and plain: it stands in the log
// and in the answer.
func TestTrapRequestIDOfTheClient(t *testing.T) {
	cases := []struct {
		id   string
		kept bool
	}{
		{"abc-123_X", true}, {strings.Repeat("a", 64), true}, {strings.Repeat("a", 65), false},
		{"a b", false}, {`a","level":"x`, false}, {"<b>", false}, {"a\x1b[31m", false}, {"ä", false},
	}
	for _, c := range cases {
		e, log := started(t)
		r := request("GET", "/healthz", "", nil)
		r.Header.Set(echo.HeaderXRequestID, c.id)
		got := ask(e, r).Header().Get(echo.HeaderXRequestID)
		assert.NotEmpty(t, got)
		assert.Equal(t, c.kept, got == c.id, "%q", c.id)
		assert.Contains(t, log.String(), got)
	}
}

// A client cannot name another's address.
func TestTrapForwardedForIsNotBelieved(t *testing.T) {
	e, _ := started(t)
	e.GET("/who", func(c echo.Context) error { return c.String(http.StatusOK, c.RealIP()) })
	r := request("GET", "/who", "", nil)
	r.RemoteAddr = "192.0.2.7:1234"
	r.Header.Set(echo.HeaderXForwardedFor, "198.51.100.9")
	r.Header.Set(echo.HeaderXRealIP, "198.51.100.9")
	assert.Equal(t, "192.0.2.7", ask(e, r).Body.String())
}

// The log has the route and never the address, which holds the input.
func TestLogHoldsNoInput(t *testing.T) {
	e, log := started(t)
	ask(e, request("GET", "/?job.name=Secret+garden", "", nil))
	ask(e, request("POST", "/api/v1/size", echo.MIMEApplicationJSON, strings.NewReader(`{"job":{"name":"Secret garden"}}`)))
	assert.Equal(t, 2, strings.Count(log.String(), `"msg":"request"`))
	assert.Equal(t, 2, strings.Count(log.String(), `"status":422`))
	assert.Contains(t, log.String(), `"route":"/api/v1/size"`)
	assert.NotContains(t, log.String(), "Secret")
}

// An answer that comes after its time is a 503, even though the computation itself
// cannot be stopped.
func TestTrapTimeIsUpAfterComputing(t *testing.T) {
	e, log := started(t)
	late, cancel := context.WithTimeout(context.Background(), time.Nanosecond)
	defer cancel()
	<-late.Done()
	r := request("POST", "/api/v1/size", echo.MIMEApplicationJSON, bytes.NewReader(job(t, "desert"))).WithContext(late)
	got := ask(e, r)
	assert.Equal(t, http.StatusServiceUnavailable, got.Code)
	assert.NotContains(t, log.String(), `"ERROR"`)
}

// Run answers at its address and stops when it is told to.
func TestRunStops(t *testing.T) {
	e, _ := started(t)
	free, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	addr := free.Addr().String()
	require.NoError(t, free.Close())
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- server.Run(ctx, addr, e, slog.New(slog.DiscardHandler)) }()
	require.Eventually(t, func() bool {
		got, err := http.Get("http://" + addr + "/healthz")
		if err != nil {
			return false
		}
		return got.Body.Close() == nil && got.StatusCode == http.StatusOK
	}, 10*time.Second, 10*time.Millisecond)
	stop()
	select {
	case err := <-done:
		assert.NoError(t, err)
	case <-time.After(10 * time.Second):
		t.Fatal("the server did not stop")
	}
}

func TestRunSaysWhyItCannotListen(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	defer taken.Close()
	e, _ := started(t)
	err = server.Run(context.Background(), taken.Addr().String(), e, slog.New(slog.DiscardHandler))
	assert.ErrorContains(t, err, "listening")
}
