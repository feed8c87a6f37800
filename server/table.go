package server

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"runtime"
	"strconv"
	"strings"

	"github.com/labstack/echo/v4"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/cover/table"
	"patiocover/web"
)

// maxTableCells is the most cells of one answer: as many as fit well into the time for
// it. A larger table is asked for by parts.
const maxTableCells = 20_000

// tablePage shows the form for the criteria of a table.
func (h handlers) tablePage(c echo.Context) error {
	return showTable(c, http.StatusOK, web.Tabling{Text: table.Demo()})
}

// makeTable shows the table of the criteria that were typed.
func (h handlers) makeTable(c echo.Context) error {
	if err := c.Request().ParseForm(); err != nil {
		return unreadable(err)
	}
	p := web.Tabling{Text: c.Request().PostForm.Get("criteria")}
	criteria, err := table.Read(strings.NewReader(p.Text))
	var wrong *calc.InputError
	var syntax *cover.SyntaxError
	switch {
	case errors.As(err, &wrong):
		p.Faults = wrong.Faults
	case errors.As(err, &syntax):
		p.Reason = syntax.Error()
	case err != nil:
		return err
	case criteria.Len() > web.MaxGridCells:
		p.Reason = fmt.Sprintf("%d cells are more than the %d that a page shows: the command line writes them to a file",
			criteria.Len(), web.MaxGridCells)
	default:
		if p.Table, err = table.New(criteria); err != nil {
			return err
		}
		return showTable(c, http.StatusOK, p)
	}
	return showTable(c, http.StatusUnprocessableEntity, p)
}

// showTable writes a page that is whole.
func showTable(c echo.Context, status int, p web.Tabling) error {
	text, err := p.Render()
	if err != nil {
		return err
	}
	return c.HTMLBlob(status, text)
}

// table answers criteria in JSON with the cells of their table in JSON, or with those
// from one number up to another that the queries from and to name.
func (h handlers) table(c echo.Context) error {
	if err := wantsJSON(c); err != nil {
		return err
	}
	criteria, err := table.Read(c.Request().Body)
	if err != nil {
		return err
	}
	t, err := table.New(criteria)
	if err != nil {
		return err
	}
	job := table.Job{To: t.Len(), Workers: runtime.GOMAXPROCS(0)}
	if err := between(c, &job); err != nil {
		return err
	}
	if n := job.To - job.From; n > maxTableCells {
		return echo.NewHTTPError(http.StatusUnprocessableEntity, fmt.Sprintf(
			"%d cells are more than the %d of one answer: ask for a part with from and to, or use the command line.", n, maxTableCells))
	}
	out, err := t.Answer(c.Request().Context(), job)
	if err != nil {
		return err
	}
	text, err := json.Marshal(out)
	if err != nil {
		return fmt.Errorf("writing the table: %w", err)
	}
	return c.JSONBlob(http.StatusOK, text)
}

// between narrows a job to the numbers of the queries from and to.
func between(c echo.Context, job *table.Job) error {
	for _, q := range []struct {
		name string
		into *int
	}{{"from", &job.From}, {"to", &job.To}} {
		text := c.QueryParam(q.name)
		if text == "" {
			continue
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < 0 || n > job.To {
			return echo.NewHTTPError(http.StatusBadRequest, q.name+" is the number of a cell of the table.")
		}
		*q.into = n
	}
	if job.From > job.To {
		return echo.NewHTTPError(http.StatusBadRequest, "from is not above to.")
	}
	return nil
}
