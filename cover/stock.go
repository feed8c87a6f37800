package cover

import "patiocover/calc"

// stockName is the check that is no matter of strength: it governs only when it is
// broken.
const stockName = "stock length"

// A stockCheck compares the longest piece with the longest stock.
type stockCheck struct {
	piece float64 // in
	stock float64 // in
}

// Ratio is the length of the piece over that of the stock.
func (s stockCheck) Ratio() float64 { return calc.Ratio(s.piece, s.stock) }

// Explain writes the two lengths.
func (s stockCheck) Explain() calc.Check {
	var sheet calc.Sheet
	sheet.Given("l_piece", s.piece, "in", "longest piece between splices, from the layout of the posts")
	sheet.Given("l_stock", s.stock, "in", "longest stock, input beams.stock_length_ft")
	return sheet.Check(stockName, "l_piece", "l_stock")
}
