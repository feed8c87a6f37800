package server

import (
	"log/slog"
	"time"

	"github.com/labstack/echo/v4"
	"github.com/labstack/echo/v4/middleware"

	"patiocover/cover"
	"patiocover/web"
)

// Limits of one request.
const (
	bodyLimit  = "256K"           // of a body; the largest input is far smaller
	formMemory = 256 << 10        // bytes of a form in parts that are held in memory: the whole body
	patience   = 10 * time.Second // for an answer; one cover takes milliseconds
	leastGzip  = 1024             // bytes below which packing costs more than it saves
	longestID  = 64               // letters of a request id that a client may choose
)

// policy lets a page load nothing but what this server sends it, and nothing inline.
const policy = "default-src 'self'; style-src 'self'; script-src 'self'; img-src 'self' data:; object-src 'none'; " +
	"frame-ancestors 'none'; base-uri 'none'; form-action 'self'"

// A Config is what a server is made from.
type Config struct {
	Demo cover.Input  // what the empty form is filled with; valid
	Log  *slog.Logger // one record for each request and for each fault of this program
}

// New returns the server, with every route and limit, ready for [Run].
func New(c Config) *echo.Echo {
	e := echo.New()
	e.HideBanner, e.HidePort = true, true
	e.IPExtractor = echo.ExtractIPDirect() // a client cannot name another's address
	e.HTTPErrorHandler = refuse(c.Log)
	e.Use(
		plainRequestID, middleware.RequestID(), requestLog(c.Log), catch(),
		middleware.SecureWithConfig(middleware.SecureConfig{
			ContentTypeNosniff: "nosniff", XFrameOptions: "DENY",
			ContentSecurityPolicy: policy, ReferrerPolicy: "no-referrer", // the address holds the input
		}),
		middleware.BodyLimit(bodyLimit), middleware.ContextTimeout(patience),
		middleware.GzipWithConfig(middleware.GzipConfig{MinLength: leastGzip}),
	)
	h := handlers{demo: cover.ToForm(c.Demo)}
	e.Match([]string{echo.GET, echo.HEAD}, "/", h.page)
	e.POST("/", h.submit)
	e.POST("/api/v1/size", h.size)
	e.POST("/api/v1/survey", h.survey)
	e.Match([]string{echo.GET, echo.HEAD}, "/compare", h.comparePage)
	e.POST("/api/v1/compare", h.compare)
	e.Match([]string{echo.GET, echo.HEAD}, "/options", h.optionsPage)
	e.POST("/options", h.findOptions)
	e.POST("/api/v1/options", h.options)
	e.Match([]string{echo.GET, echo.HEAD}, "/table", h.tablePage)
	e.POST("/table", h.makeTable)
	e.POST("/api/v1/table", h.table)
	e.Match([]string{echo.GET, echo.HEAD}, "/healthz", h.health)
	e.Group("/static", keepAWhile).StaticFS("/", web.Static())
	return e
}

// plainRequestID drops a request id of the client unless it is short and plain: it
// ends up in the log and in the answer.
func plainRequestID(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		header := c.Request().Header
		if id := header.Get(echo.HeaderXRequestID); !isPlain(id) {
			header.Del(echo.HeaderXRequestID)
		}
		return next(c)
	}
}

func isPlain(id string) bool {
	for _, r := range id {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9'
		if !letter && r != '-' && r != '_' {
			return false
		}
	}
	return len(id) <= longestID
}

// keepAWhile lets browsers keep the assets for some minutes.
func keepAWhile(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		c.Response().Header().Set(echo.HeaderCacheControl, "max-age=300")
		return next(c)
	}
}

// catch turns a panic into a [crash], for the error handler to log once.
func catch() echo.MiddlewareFunc {
	return middleware.RecoverWithConfig(middleware.RecoverConfig{
		DisableStackAll: true,
		LogErrorFunc: func(_ echo.Context, err error, stack []byte) error {
			return &crash{reason: err, stack: string(stack)}
		},
	})
}

// requestLog writes one record for each request: its route, never its address,
// which holds the input.
func requestLog(log *slog.Logger) echo.MiddlewareFunc {
	return middleware.RequestLoggerWithConfig(middleware.RequestLoggerConfig{
		LogMethod: true, LogRoutePath: true, LogStatus: true, LogLatency: true, LogRequestID: true, LogResponseSize: true,
		HandleError: true, // so that the status is the one that is sent
		LogValuesFunc: func(c echo.Context, v middleware.RequestLoggerValues) error {
			log.LogAttrs(c.Request().Context(), slog.LevelInfo, "request",
				slog.String("id", v.RequestID), slog.String("method", v.Method), slog.String("route", v.RoutePath),
				slog.Int("status", v.Status), slog.Duration("took", v.Latency), slog.Int64("bytes", v.ResponseSize))
			return nil
		},
	})
}
