package cover_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/cover"
)

// The garden cover holds as a whole. Take away any one connection of its load path, or say
// that it is not known (a drilled anchor without its report), and it does not: a path is as good as its weakest link.
func TestRemovingAnyLinkFlipsTheVerdict(t *testing.T) {
	whole := size(t, demo(t, "garden"))
	require.Equal(t, cover.OK, whole.Verdict)
	for _, c := range []struct {
		mark   string // of the links that the change takes away
		remove func(in *cover.Input)
	}{
		{"D", func(in *cover.Input) { in.Connections.Deck = new("none") }},
		{"T", func(in *cover.Input) { in.Connections.Tie = new("none") }},
		{"C", func(in *cover.Input) { in.Connections.PostTop = new("none") }},
		{"S", func(in *cover.Input) { in.Connections.Splice = new("none") }},
		{"B", func(in *cover.Input) { in.Connections.Base = new("none") }},
		{"A", func(in *cover.Input) {
			in.Foundation.AnchorKind, in.Foundation.AnchorDiameter, in.Foundation.AnchorEmbedment = new("drilled"), new(0.5), new(3.0)
		}},
		{"K", func(in *cover.Input) { in.Lateral.Along, in.Lateral.Out = new("none"), new("none") }},
	} {
		has := false
		for _, l := range whole.Links {
			has = has || strings.HasPrefix(l.Mark, c.mark)
		}
		if !has {
			continue
		}
		in := demo(t, "garden")
		c.remove(&in)
		assert.NotEqual(t, cover.OK, size(t, in).Verdict, "without %s", c.mark)
	}
}

// Every link of every demonstration has a verdict and counts: none is better than the
// report.
func TestNoReportIsBetterThanItsLinks(t *testing.T) {
	for _, name := range demos {
		r := size(t, demo(t, name))
		for _, l := range r.Links {
			assert.Equal(t, r.Verdict, r.Verdict.Worse(l.Verdict), "%s %s", name, l.Mark)
		}
	}
}
