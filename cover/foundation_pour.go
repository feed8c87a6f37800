package cover

import (
	"fmt"

	"patiocover/calc"
	"patiocover/connections/anchor"
	"patiocover/connections/footing"
)

// A FootingChoice is how the sizes of footings were chosen: one for all posts, or each its
// own.
type FootingChoice struct {
	OneSize bool          `json:"one_size"`         // all are poured in the one size
	Size    string        `json:"size"`             // the one size that does for every post, in words
	Bolt    string        `json:"anchor,omitempty"` // the one bolt that does for every post, in words; empty where none was chosen
	All     ConcreteTotal `json:"one_size_total"`   // concrete of all footings in the one size
	Each    ConcreteTotal `json:"own_sizes_total"`  // concrete of all footings, each in the least size of its own post
}

// A poured is a block with the bolt in it.
type poured struct {
	block footing.Block
	ratio float64      // largest of the checks of the block
	bolt  *anchor.Bolt // nil where none is chosen
	used  float64      // largest ratio of the bolt; 0 without
}

// pour chooses the footings of all posts and their bolts, and puts the posts on them. It
// returns nil where the sizes were given.
func (m *model) pour(all []FoundationAt, needs []footingNeed, g *bed) *FootingChoice {
	p := m.planOf(*m.in.Foundation.Kind, g, &needs[0]) // every post has the same section
	loads := make([]anchor.Load, len(all))
	for i, f := range all {
		loads[i] = anchor.Load{Pull: f.Pull, Push: f.Push}
	}
	same := m.block(needs, loads, g, p)
	choice := FootingChoice{OneSize: *m.in.Foundation.OneSize, Size: blockWords(same.block)}
	if same.bolt != nil && same.used <= 1 {
		choice.Bolt = boltWords(*same.bolt)
	}
	for i := range all {
		f := &all[i]
		own := m.block(needs[i:i+1], loads[i:i+1], g, p)
		choice.All.pour(feetOf(same.block))
		choice.Each.pour(feetOf(own.block))
		if choice.OneSize {
			f.Own = blockWords(own.block)
			own = same
		}
		f.Verdict, f.Reason = f.Slab, f.SlabWhy
		m.stand(f, &needs[i], g, p, own)
	}
	if p.width > 0 && p.depth > 0 {
		return nil
	}
	return &choice
}

// A bolting is what a bolt to be chosen must hold, and where it sits.
type bolting struct {
	loads  []anchor.Load
	wanted anchor.Wanted
	around func(footing.Block) anchor.Concrete
}

// block chooses the block for posts, and a bolt in it where none was said.
func (m *model) block(needs []footingNeed, loads []anchor.Load, g *bed, p footingPlan) poured {
	f := m.in.Foundation
	if f.AnchorKind != nil || *f.Kind == "embedded" {
		b, ratio := g.choose(needs, p)
		return poured{block: b, ratio: ratio}
	}
	return g.chooseWithBolt(needs, p, bolting{
		loads: loads, around: m.around,
		wanted: anchor.Wanted{Diameter: inchesOf(f.AnchorDiameter), Embedment: inchesOf(f.AnchorEmbedment)},
	})
}

// chooseWithBolt chooses a block and the least bolt in it. Where no bolt holds in it,
// because the edges are too near, wider blocks are tried. A bolt sits in the neck of a
// block with one, which a wider pad does not help, nor one too deep for its block.
func (g *bed) chooseWithBolt(needs []footingNeed, p footingPlan, t bolting) poured {
	first := g.withBolt(needs, p, &t)
	if first.used <= 1 || first.ratio > 1 || p.width > 0 || p.neck > 0 || t.wanted.Embedment > 0 {
		return first
	}
	for p.least = first.block.Width + footingStep; p.least <= widestChosen; p.least += footingStep {
		if next := g.withBolt(needs, p, &t); next.ratio <= 1 && next.used <= 1 {
			return next
		}
	}
	return first
}

// withBolt chooses a block, and the least bolt in it.
func (g *bed) withBolt(needs []footingNeed, p footingPlan, t *bolting) poured {
	b, ratio := g.choose(needs, p)
	bolt, used := anchor.Least(t.loads, t.wanted, t.around(b))
	return poured{block: b, ratio: ratio, bolt: &bolt, used: used}
}

// boltsOf lists the bolts that were chosen, one for each post.
func boltsOf(all []FoundationAt) []Part {
	var out []Part
	for _, f := range all {
		if f.AnchorChosen && f.AnchorVerdict != Over {
			item := fmt.Sprintf("headed anchor bolt %s in, %s in in the concrete, with nut and washer",
				calc.Number(f.AnchorDiameter), calc.Number(f.AnchorDepth))
			out = append(out, Part{Item: item, Each: 1, Total: 1})
		}
	}
	return out
}

// feetOf is the concrete of a block, ft³.
func feetOf(b footing.Block) float64 { return b.Volume() / (calc.SqFt * calc.Ft) }

// pour adds one footing, ft³.
func (t *ConcreteTotal) pour(feet float64) {
	t.Count++
	t.Feet += feet
	t.Yards = t.Feet / cubicYard
}
