package server

import (
	"encoding/json"
	"fmt"
	"net/http"

	"github.com/labstack/echo/v4"

	"patiocover/cover"
)

// options answers a job in JSON with every cover that no other one beats, in JSON.
func (h handlers) options(c echo.Context) error {
	in, err := sent(c)
	if err != nil {
		return err
	}
	out, err := cover.Undominated(c.Request().Context(), in, cover.UsualSpace(in), cover.Limits{}, nil)
	if err != nil {
		return err
	}
	text, err := json.Marshal(out)
	if err != nil {
		return fmt.Errorf("writing the options: %w", err)
	}
	return c.JSONBlob(http.StatusOK, text)
}
