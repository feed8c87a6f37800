package server

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"

	"github.com/labstack/echo/v4"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/web"
)

// The entries of an address that are the choice of a comparison and not the input.
const (
	spacingEntry = "spacing"
	woodEntry    = "wood"
)

// comparePage sets spacings and woods side by side for the input in the address. Without
// an input it leads to the form; an input with faults is shown there.
func (h handlers) comparePage(c echo.Context) error {
	query, err := url.ParseQuery(c.QueryString())
	if err != nil {
		return unreadable(err)
	}
	if len(query) == 0 {
		return c.Redirect(http.StatusSeeOther, "/")
	}
	spacings, woods := strings.Join(query[spacingEntry], ", "), query[woodEntry]
	query.Del(spacingEntry)
	query.Del(woodEntry)
	in, understood, err := cover.FromForm(query)
	var wrong *calc.InputError
	if errors.As(err, &wrong) {
		return show(c, http.StatusUnprocessableEntity, web.Page{Values: typed(query), Understood: understood, Faults: wrong.Faults})
	}
	if err != nil {
		return err
	}
	p := web.Comparing{Values: typed(query), Spacings: spacings}
	for _, w := range woods {
		if strings.TrimSpace(w) != "" {
			p.Woods = append(p.Woods, w)
		}
	}
	status := http.StatusOK
	out, err := compared(c, in, spacings, woods)
	switch {
	case errors.As(err, &wrong):
		p.Faults, status = wrong.Faults, http.StatusUnprocessableEntity
	case err != nil:
		return err
	default:
		p.Comparison = &out
	}
	text, err := p.Render()
	if err != nil {
		return err
	}
	return c.HTMLBlob(status, text)
}

// compare answers a job in JSON with its comparison in JSON; the queries spacing and wood
// hold the choice, wood once for each.
func (h handlers) compare(c echo.Context) error {
	in, err := sent(c)
	if err != nil {
		return err
	}
	out, err := compared(c, in, strings.Join(c.QueryParams()[spacingEntry], ","), c.QueryParams()[woodEntry])
	if err != nil {
		return err
	}
	text, err := json.Marshal(out)
	if err != nil {
		return fmt.Errorf("writing the comparison: %w", err)
	}
	return c.JSONBlob(http.StatusOK, text)
}

// compared answers one comparison unless the time for it is up.
func compared(c echo.Context, in cover.Input, spacings string, woods []string) (cover.Comparison, error) {
	choice, err := cover.NewChoice(spacings, woods)
	if err != nil {
		return cover.Comparison{}, err
	}
	out, err := cover.Compare(in, choice)
	if late := c.Request().Context().Err(); late != nil {
		return cover.Comparison{}, late
	}
	return out, err
}
