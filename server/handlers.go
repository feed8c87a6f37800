package server

import (
	"encoding/json"
	"errors"
	"fmt"
	"mime"
	"net/http"
	"net/url"
	"strings"

	"github.com/labstack/echo/v4"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web"
)

// handlers answer the routes. demo is the form of the demonstration, by path.
type handlers struct{ demo map[string]string }

// page shows the form, or the report of the input in the address.
func (h handlers) page(c echo.Context) error {
	query, err := url.ParseQuery(c.QueryString())
	if err != nil {
		return unreadable(err) // echo would drop the entry
	}
	if len(query) > 0 {
		return answer(c, query)
	}
	return show(c, http.StatusOK, web.Page{Values: h.demo})
}

// submit shows the report of the form in the body.
func (h handlers) submit(c echo.Context) error {
	form, err := posted(c)
	if err != nil {
		return err
	}
	return answer(c, form)
}

// posted reads the form in the body of a request.
func posted(c echo.Context) (url.Values, error) {
	if err := c.Request().ParseForm(); err != nil {
		return nil, unreadable(err) // ParseMultipartForm would hide it behind ErrNotMultipart
	}
	if err := c.Request().ParseMultipartForm(formMemory); err != nil && !errors.Is(err, http.ErrNotMultipart) {
		return nil, unreadable(err)
	}
	return c.Request().PostForm, nil
}

// answer sizes the cover of a form and shows the report, or the form with its faults.
func answer(c echo.Context, form url.Values) error {
	in, understood, err := cover.FromForm(form)
	p := web.Page{Values: typed(form), Understood: understood}
	var wrong *calc.InputError
	if errors.As(err, &wrong) {
		p.Faults = wrong.Faults
		return show(c, http.StatusUnprocessableEntity, p)
	}
	if err != nil {
		return err
	}
	report, err := sized(c, in, cover.SizeAndMargins)
	if err != nil {
		return err
	}
	p.Report = &report
	return show(c, http.StatusOK, p)
}

// size answers a job in JSON with its report in JSON; with the query margins=true the
// report holds the margins as well.
func (h handlers) size(c echo.Context) error {
	in, err := sent(c)
	if err != nil {
		return err
	}
	way := cover.Size
	switch c.QueryParam("margins") {
	case "", "false":
	case "true":
		way = cover.SizeAndMargins
	default:
		return echo.NewHTTPError(http.StatusBadRequest, "margins is true or false.")
	}
	report, err := sized(c, in, way)
	if err != nil {
		return err
	}
	text, err := json.Marshal(report)
	if err != nil {
		return fmt.Errorf("writing the report: %w", err)
	}
	return c.JSONBlob(http.StatusOK, text)
}

// survey answers a job in JSON with the survey of its old roof in JSON.
func (h handlers) survey(c echo.Context) error {
	in, err := sent(c)
	if err != nil {
		return err
	}
	report, err := sized(c, in, cover.SurveyOnly)
	if err != nil {
		return err
	}
	text, err := json.Marshal(report.SurveyAnswer())
	if err != nil {
		return fmt.Errorf("writing the survey: %w", err)
	}
	return c.JSONBlob(http.StatusOK, text)
}

// sent reads the job in the body of a request.
func sent(c echo.Context) (cover.Input, error) {
	if err := wantsJSON(c); err != nil {
		return cover.Input{}, err
	}
	return cover.Read(c.Request().Body)
}

// wantsJSON refuses a body that does not call itself JSON.
func wantsJSON(c echo.Context) error {
	kind, _, err := mime.ParseMediaType(c.Request().Header.Get(echo.HeaderContentType))
	if err != nil || kind != echo.MIMEApplicationJSON {
		return echo.NewHTTPError(http.StatusUnsupportedMediaType, "Send the job as application/json.")
	}
	return nil
}

// health says that the server answers.
func (h handlers) health(c echo.Context) error { return c.String(http.StatusOK, "ok\n") }

// sized answers one cover in one of the ways unless the time for it is up.
func sized(c echo.Context, in cover.Input, way func(cover.Input) (cover.Report, error)) (cover.Report, error) {
	report, err := way(in)
	if late := c.Request().Context().Err(); late != nil {
		return cover.Report{}, late
	}
	return report, err
}

// show writes a page that is whole.
func show(c echo.Context, status int, p web.Page) error {
	text, err := p.Render()
	if err != nil {
		return err
	}
	return c.HTMLBlob(status, text)
}

// typed is what was typed into each entry of a form.
func typed(form url.Values) map[string]string {
	out := make(map[string]string, len(form))
	for name, texts := range form {
		out[name] = strings.Join(texts, ", ") // an entry given twice is shown as it is read
	}
	return out
}

// unreadable words a form that cannot be read, keeping the status of a body that is
// too large.
func unreadable(err error) error {
	var refused *echo.HTTPError
	if errors.As(err, &refused) {
		return refused
	}
	return echo.NewHTTPError(http.StatusBadRequest, "The form cannot be read.").SetInternal(err)
}
