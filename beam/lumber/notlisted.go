package lumber

import (
	"strconv"
	"strings"
)

// NotListed says that a table has no row for what was asked, and which it has.
type NotListed struct {
	What    string   // size, species, or grade with the species and size it was asked for
	Given   string   // what was asked
	Allowed []string // what is listed, in the order of the table; may be empty
}

// Error names what is allowed.
func (e *NotListed) Error() string {
	given := e.What + " " + strconv.Quote(e.Given)
	if len(e.Allowed) == 0 {
		return given + " is not listed: no grade has design values here"
	}
	return given + " is not one of " + strings.Join(e.Allowed, ", ")
}
