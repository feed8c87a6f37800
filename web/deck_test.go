package web_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
	"patiocover/web"
)

// The deck stands on the page and in the text: what is known of it, and what would
// serve at each spacing; its weight where it does not fit the layers.
func TestDeckIsShown(t *testing.T) {
	r := report(t, "desert")
	require.Equal(t, "panel", r.Deck.Kind)
	r.Deck.Notes = []string{"raise the layer"}
	page := rendered(t, r)
	var text strings.Builder
	require.NoError(t, web.Text(&text, r))
	for _, shown := range []string{page, text.String()} {
		assert.Contains(t, shown, "deck panel 40/20")
		assert.Contains(t, shown, "raise the layer")
		assert.Contains(t, shown, "24 in, this cover")
		assert.Contains(t, shown, r.Deck.Choices[len(r.Deck.Choices)-1].Free)
	}
	assert.Contains(t, page, `<section id="deck">`)
	r.Deck = cover.DeckReport{Kind: "other", Verdict: cover.NotChecked, Reason: "nobody knows"}
	page = rendered(t, r)
	assert.Contains(t, page, "nobody knows")
	assert.NotContains(t, page, "this cover")
}
