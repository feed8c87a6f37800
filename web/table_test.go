package web_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
	"patiocover/cover/table"
	"patiocover/web"
)

// The page of a table shows every cell, and its criteria to be changed.
func TestTablingPage(t *testing.T) {
	c, err := table.Read(strings.NewReader(table.Demo()))
	require.NoError(t, err)
	tab, err := table.New(c)
	require.NoError(t, err)
	page, err := web.Tabling{Text: table.Demo(), Table: tab}.Render()
	require.NoError(t, err)
	assert.Empty(t, pageFaults(string(page)))
	assert.Equal(t, tab.Len(), strings.Count(string(page), `<td class="num"><b>`), "a cell for each")
	words := text(string(page))
	for n := range tab.Len() {
		assert.True(t, strings.Contains(words, tab.Cell(n).Words()), "%d", n)
	}
	for _, n := range table.Notes {
		assert.True(t, strings.Contains(words, n), n)
	}
}

// What was typed stays, as text.
func TestTrapTablingEscapesWhatWasTyped(t *testing.T) {
	const tag = `</textarea><script>alert(1)</script>`
	for _, p := range []web.Tabling{
		{Text: tag}, {Text: tag, Reason: tag}, {Text: tag, Faults: []calc.Fault{{Path: tag, Given: tag, Allowed: tag}}},
	} {
		page, err := p.Render()
		require.NoError(t, err)
		assert.NotContains(t, string(page), "<script>alert")
		assert.Empty(t, pageFaults(string(page)))
	}
}
