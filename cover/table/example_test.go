package table_test

import (
	"fmt"
	"strings"

	"patiocover/cover/table"
)

// The longest 2x6 at 12 in on center under D 8, Lr 20 psf: a worker of 300 lb decides. By
// hand, with M' = 7.5625 in³ of 900 psi times 1.3 (size), 1.15 (repetitive) and 1.25
// (seven days), NDS 2018 Table 4.3.1: w L²/8 + 300 L/4 = 12720 lb-in gives 11 ft
// 9.7 in with w of 8 psf and the rafter's own 2 plf.
func ExampleTable_Cell() {
	criteria, err := table.Read(strings.NewReader(table.Demo()))
	if err != nil {
		fmt.Println(err)
		return
	}
	t, err := table.New(criteria)
	if err != nil {
		fmt.Println(err)
		return
	}
	c := t.Cell(0)
	fmt.Println(c.Wood, c.Size, "at", c.Spacing, "in:", c.Words()+";", c.Governs)
	// Output: Douglas Fir-Larch No.2 2x6 at 12 in: 11'-9"; bending under a worker
}
