package cover

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"patiocover/calc"
)

// JointsTable is the entry of a form that takes the joints of the old roof as a table
// copied from a spreadsheet, for [ReadJoints], in place of rows of its own.
const JointsTable = "house.joints_table"

// plantJoints reads the joints of a table into a tree of values, behind which the rows of
// the form come later in the order of the fields: both together are a fault.
func plantJoints(tree map[string]any, text string, f *calc.Fields) {
	if strings.TrimSpace(text) == "" {
		return
	}
	house, _ := tree["house"].(map[string]any)
	if house == nil {
		house = map[string]any{}
		tree["house"] = house
	}
	if _, rows := house["joints"]; rows {
		f.Add(JointsTable, "a table beside rows of joints", "one of the two")
		return
	}
	joints, err := ReadJoints(strings.NewReader(text))
	var wrong *calc.InputError
	if errors.As(err, &wrong) {
		for _, x := range wrong.Faults {
			f.Add(JointsTable, x.Path+": "+x.Given, x.Allowed)
		}
		return
	}
	list, err := listOf(joints)
	if err != nil {
		f.Add(JointsTable, err.Error(), "a table of joints")
		return
	}
	house["joints"] = list
}

// listOf turns joints into the values that their JSON carries.
func listOf(joints []Joint) (list []any, err error) {
	text, err := json.Marshal(joints)
	if err != nil {
		return nil, fmt.Errorf("writing the joints: %w", err)
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	return list, d.Decode(&list)
}
