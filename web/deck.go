package web

import (
	"patiocover/calc"
	"patiocover/cover"
)

// deckNote says what the choices of a deck rest on.
const deckNote = "The least deck that carries the loads of this cover by rafter spacing: span rating of dry sheathing panels " +
	"over two spans or more, and planks of the wood of the rafters on simple spans. None: nothing of the list serves."

// deck prints what is known of the roof deck and what would serve.
func (p *printer) deck(d cover.DeckReport) {
	p.head("Roof deck")
	p.row(string(d.Verdict), d.Reason)
	for _, n := range d.Notes {
		p.say("  - " + n)
	}
	if len(d.Choices) == 0 {
		return
	}
	p.say(deckNote)
	p.row("rafter spacing", "panels, edges held", "panels, edges free", "tongue and groove planks")
	for _, c := range d.Choices {
		spacing := calc.Number(c.Spacing) + " in"
		if c.Own {
			spacing += ", this cover"
		}
		p.row(spacing, c.Held, c.Free, c.Plank)
	}
}
