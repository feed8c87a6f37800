package calc

import "strings"

// Grouped puts a comma between the thousands of a written number: 2,081 for 2081 and
// 12,345.678 for 12345.678. A sign before it stays where it is. What does not begin
// with digits, such as NaN, is returned as it is.
func Grouped(number string) string {
	digits := strings.TrimLeft(number, "+-−")
	sign := number[:len(number)-len(digits)]
	whole := digits
	if end := strings.IndexFunc(digits, func(r rune) bool { return r < '0' || r > '9' }); end >= 0 {
		whole = digits[:end]
	}
	part := digits[len(whole):]
	for at := len(whole) - 3; at > 0; at -= 3 {
		whole = whole[:at] + "," + whole[at:]
	}
	return sign + whole + part
}
