package server_test

import (
	"bytes"
	"net/http"
	"testing"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/require"
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
