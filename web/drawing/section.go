package drawing

import "patiocover/cover"

// Section draws the cover cut from the house to its outer edge.
func Section(r cover.Report) Scene {
	return Scene{Title: "Section A-A", Width: sheetWidth, Height: titleHeight}
}
