package server

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"strings"

	"github.com/labstack/echo/v4"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web"
)

// A crash is a panic that was caught.
type crash struct {
	reason error
	stack  string
}

// Error returns the reason without the stack.
func (c *crash) Error() string { return "panic: " + c.reason.Error() }

// A problem is the answer to a request that cannot be served (RFC 9457).
type problem struct {
	Type     string       `json:"type"` // about:blank: the status says it all
	Title    string       `json:"title"`
	Status   int          `json:"status"`
	Detail   string       `json:"detail,omitempty"`
	Instance string       `json:"instance"`
	Errors   []calc.Fault `json:"errors,omitempty"` // every wrong field
	Notice   string       `json:"notice"`           // as in a report
}

// details words the refusals whose status alone does not tell what to do.
var details = map[int]string{
	http.StatusNotFound:              "There is nothing at this address.",
	http.StatusMethodNotAllowed:      "This address does not take that method.",
	http.StatusRequestEntityTooLarge: "More than 256 kB was sent; a job is far smaller.",
	http.StatusServiceUnavailable:    "The answer took too long. Try again.",
	http.StatusInternalServerError:   "This is a fault of the program, not of the input. It has been recorded.",
}

// refuse returns the one place where an error becomes an answer: faults of the input
// 422, text that is not JSON 400, echo's own errors their code, everything else 500,
// which is logged and not told.
func refuse(log *slog.Logger) echo.HTTPErrorHandler {
	return func(err error, c echo.Context) {
		if c.Response().Committed {
			return
		}
		p := problemOf(err)
		p.Instance = c.Request().URL.Path
		if p.Status == http.StatusInternalServerError {
			record(log, c, err)
		}
		if err := write(c, p); err != nil {
			record(log, c, fmt.Errorf("writing the refusal: %w", err))
		}
	}
}

func problemOf(err error) problem {
	p := problem{Type: "about:blank", Status: http.StatusInternalServerError, Notice: cover.Notice}
	var wrong *calc.InputError
	var syntax *cover.SyntaxError
	var refused *echo.HTTPError
	switch {
	case errors.As(err, &wrong):
		p.Status, p.Errors = http.StatusUnprocessableEntity, wrong.Faults
		p.Detail = "The job has wrong or missing fields; each is listed with what is allowed."
	case errors.As(err, &refused):
		p.Status = refused.Code
		p.Detail = detail(refused)
	case errors.As(err, &syntax):
		p.Status, p.Detail = http.StatusBadRequest, syntax.Error()
	case errors.Is(err, context.DeadlineExceeded), errors.Is(err, context.Canceled):
		p.Status = http.StatusServiceUnavailable
	}
	p.Title = http.StatusText(p.Status)
	if own, ok := details[p.Status]; ok {
		p.Detail = own
	}
	return p
}

// detail is the message of one of echo's errors when it says more than its status.
func detail(e *echo.HTTPError) string {
	if text, ok := e.Message.(string); ok && text != http.StatusText(e.Code) {
		return text
	}
	return ""
}

// record logs a fault of this program once, with the stack of a panic.
func record(log *slog.Logger, c echo.Context, err error) {
	args := []any{
		"id", c.Response().Header().Get(echo.HeaderXRequestID), "method", c.Request().Method, "route", c.Path(), "error", err,
	}
	var panicked *crash
	if errors.As(err, &panicked) {
		args = append(args, "stack", panicked.stack)
	}
	log.Error("fault", args...)
}

// write answers programs with problem details and people with a page.
func write(c echo.Context, p problem) error {
	if c.Request().Method == http.MethodHead {
		return c.NoContent(p.Status)
	}
	if strings.HasPrefix(p.Instance, "/api/") {
		text, err := json.Marshal(p)
		if err != nil {
			return err
		}
		return c.Blob(p.Status, "application/problem+json", text)
	}
	page, err := web.Refusal{Status: p.Status, Title: p.Title, Detail: p.Detail}.Render()
	if err != nil {
		return err
	}
	return c.HTMLBlob(p.Status, page)
}
