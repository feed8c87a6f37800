package server_test

import (
	"bytes"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"runtime"
	"testing"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/require"

	"patiocover/server"
)

// BenchmarkHello is the server without a cover: what every answer costs at least.
func BenchmarkHello(b *testing.B) {
	measure(b, func() *http.Request { return request("GET", "/healthz", "", nil) })
}

// BenchmarkSizeJSON is a cover from JSON to JSON.
func BenchmarkSizeJSON(b *testing.B) {
	text := job(b, "desert")
	measure(b, func() *http.Request {
		return request("POST", "/api/v1/size", echo.MIMEApplicationJSON, bytes.NewReader(text))
	})
}

// BenchmarkSizePage is a cover from its address to the whole page with both drawings.
func BenchmarkSizePage(b *testing.B) {
	address := "/?" + form(input(b, "desert")).Encode()
	measure(b, func() *http.Request { return request("GET", address, "", nil) })
}

// measure asks the same over and over, in this process.
func measure(b *testing.B, next func() *http.Request) {
	e, log := started(b)
	b.ReportAllocs()
	for b.Loop() {
		got := ask(e, next())
		require.Equal(b, http.StatusOK, got.Code)
		b.SetBytes(int64(got.Body.Len()))
		log.Reset()
	}
}

// connections are how many ask at once over the network of the machine itself.
const connections = 16

// BenchmarkLoopback asks a listening server over many connections at once, for nothing and
// for a report in JSON: what is left of the requests in a second when each sizes a cover.
func BenchmarkLoopback(b *testing.B) {
	e := server.New(server.Config{Demo: input(b, "desert"), Log: slog.New(slog.DiscardHandler)})
	s := httptest.NewServer(e)
	defer s.Close()
	client := &http.Client{Transport: &http.Transport{
		MaxIdleConnsPerHost: connections, MaxConnsPerHost: connections, DisableCompression: true,
	}}
	text := job(b, "desert")
	b.Run("hello", func(b *testing.B) {
		atOnce(b, func() (*http.Response, error) { return client.Get(s.URL + "/healthz") })
	})
	b.Run("size", func(b *testing.B) {
		atOnce(b, func() (*http.Response, error) {
			return client.Post(s.URL+"/api/v1/size", echo.MIMEApplicationJSON, bytes.NewReader(text))
		})
	})
}

// atOnce asks the same over all connections and reads every answer to its end.
func atOnce(b *testing.B, ask func() (*http.Response, error)) {
	b.SetParallelism(max(1, connections/runtime.GOMAXPROCS(0)))
	b.ReportAllocs()
	b.RunParallel(func(pb *testing.PB) {
		for pb.Next() {
			got, err := ask()
			if err != nil {
				b.Error(err)
				return
			}
			if _, err := io.Copy(io.Discard, got.Body); err != nil || got.StatusCode != http.StatusOK {
				b.Errorf("status %d, %v", got.StatusCode, err)
			}
			if err := got.Body.Close(); err != nil {
				b.Error(err)
			}
		}
	})
}
