package server

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"

	"github.com/labstack/echo/v4"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web"
)

// tooSlow is what a page says where a search takes more than the time for an answer.
var tooSlow = fmt.Sprintf("The search took more than %s. Shorten a list, or search from the command line, "+
	"which takes as long as it must.", patience)

// optionsPage searches for the input and by the lists in the address. Without an input it
// leads to the form.
func (h handlers) optionsPage(c echo.Context) error {
	query, err := url.ParseQuery(c.QueryString())
	if err != nil {
		return unreadable(err)
	}
	if len(query) == 0 {
		return c.Redirect(http.StatusSeeOther, "/")
	}
	return searched(c, query)
}

// findOptions does so for a form in the body.
func (h handlers) findOptions(c echo.Context) error {
	form, err := posted(c)
	if err != nil {
		return err
	}
	return searched(c, form)
}

// searched shows what the search of a form finds, or the search with its faults. An input
// with faults is shown in its own form.
func searched(c echo.Context, form url.Values) error {
	asked := split(form)
	in, understood, err := cover.FromForm(form)
	var wrong *calc.InputError
	if errors.As(err, &wrong) {
		return show(c, http.StatusUnprocessableEntity, web.Page{Values: typed(form), Understood: understood, Faults: wrong.Faults})
	}
	if err != nil {
		return err
	}
	search, heard, err := cover.NewSearch(in, typed(asked))
	p := web.Searching{Values: typed(form), Entries: web.AskedOf(search, typed(asked)), Understood: heard}
	var found cover.Found
	if err == nil {
		found, err = search.Run(c.Request().Context(), in, nil)
	}
	status := http.StatusOK
	switch {
	case errors.As(err, &wrong):
		p.Faults, status = wrong.Faults, http.StatusUnprocessableEntity
	case errors.Is(err, context.DeadlineExceeded):
		p.Reason, p.Drawn, status = tooSlow, &found.Drawn, http.StatusServiceUnavailable
	case err != nil:
		return err
	default:
		p.Found = &found
	}
	text, err := p.Render()
	if err != nil {
		return err
	}
	return c.HTMLBlob(status, text)
}

// split takes the entries of a search out of a form that holds the input as well.
func split(form url.Values) url.Values {
	asked := url.Values{}
	for name, texts := range form {
		if cover.SearchEntry(name) {
			asked[name] = texts
			delete(form, name)
		}
	}
	return asked
}

// options answers a job in JSON with every cover that no other one beats, in JSON; the
// queries hold the lists and the limits of the search by their names.
func (h handlers) options(c echo.Context) error {
	in, err := sent(c)
	if err != nil {
		return err
	}
	search, _, err := cover.NewSearch(in, typed(c.QueryParams()))
	if err != nil {
		return err
	}
	found, err := search.Run(c.Request().Context(), in, nil)
	if err != nil {
		return err
	}
	text, err := json.Marshal(found)
	if err != nil {
		return fmt.Errorf("writing the options: %w", err)
	}
	return c.JSONBlob(http.StatusOK, text)
}
