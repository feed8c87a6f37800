package cover

import (
	"fmt"
	"math"
	"slices"

	"patiocover/calc"
	"patiocover/connections/anchor"
	"patiocover/connections/footing"
)

// anchorKinds are the anchors that can be checked, by the words of the input.
var anchorKinds = map[string]anchor.Kind{"headed": anchor.Headed, "hooked": anchor.Hooked, "drilled": anchor.Drilled}

// hookDiameters is how far the hook of a bolt reaches where nothing is said, in
// diameters: the least that counts (ACI 318-19 17.6.3.2.2).
const hookDiameters = 3

// strengthPull is the largest net uplift at the foot of a post at strength level, lb:
// 0.9D + 1.0W (ASCE 7 2.3.1 (5)) from the arrangements of 0.6D + 0.6W. dead is the least
// dead load with the post, and tip what the tipping of a braced cover adds under wind of strength
// level.
func (f *beamFrame) strengthPull(post int, dead, own, tip float64) float64 {
	most := 0.0
	for i := range f.arr {
		a := &f.arr[i]
		if !a.least || a.wind == 0 {
			continue
		}
		wind := (a.self*dead - f.forces[i][post] - a.self*own) / a.wind
		most = max(most, wind+tip-strengthDead*dead)
	}
	return most
}

// strengthDead is the factor of strength design on the dead load that resists (ASCE 7
// 2.3.1 (5)).
const strengthDead = 0.9

// around is the concrete around the anchor of a post, in its block or in the slab. A
// circle counts as the square of the same area.
func (m *model) around(b footing.Block) anchor.Concrete {
	f := m.in.Foundation
	if *f.Kind != "slab" {
		c := m.inBlock(b)
		if f.AnchorEdge != nil {
			c.West = min(c.West, *f.AnchorEdge*calc.In)
		}
		return c
	}
	beyond := 2 * calc.Ft // the slab goes on, or its weight would not be counted
	c := anchor.Concrete{
		Strength: *f.Concrete * calc.PSI, Thickness: *f.SlabThickness * calc.In,
		West: inchesOf(f.SlabEdge), South: inchesOf(f.SlabAcross), East: beyond, North: beyond,
	}
	if f.AnchorEdge != nil {
		c.West = min(c.West, *f.AnchorEdge*calc.In)
	}
	return c
}

// inBlock is the concrete around a bolt in the middle of a block.
func (m *model) inBlock(b footing.Block) anchor.Concrete {
	if b.Neck > 0 {
		b.Width = b.Neck // the anchor sits in the neck
	}
	half := math.Sqrt(b.Area()) / 2
	return anchor.Concrete{
		Strength: *m.in.Foundation.Concrete * calc.PSI, Thickness: b.Depth,
		West: half, East: half, South: half, North: half,
	}
}

// anchorOf is the anchor that was said; false where it cannot be checked.
func (m *model) anchorOf() (anchor.Bolt, bool) {
	f := m.in.Foundation
	if f.AnchorKind == nil {
		return anchor.Bolt{}, false
	}
	kind, ok := anchorKinds[*f.AnchorKind]
	if !ok {
		return anchor.Bolt{}, false
	}
	b := newBolt(kind, *f.AnchorDiameter, *f.AnchorEmbedment)
	if f.AnchorCategory != nil {
		b.Category = *f.AnchorCategory
	}
	return b, true
}

// newBolt is a bolt of the mildest steel.
func newBolt(kind anchor.Kind, diameter, embedment float64) anchor.Bolt {
	s, _ := anchor.SizeOf(diameter)
	return anchor.Bolt{
		Kind: kind, Diameter: s.Diameter, Area: s.Area, Head: s.Head, Hook: hookDiameters * s.Diameter,
		Tensile: anchor.Steel36, Embedment: embedment * calc.In,
	}
}

// anchorage checks the anchor of one post, in tension, in shear and in both. chosen is the
// bolt that was chosen for it, nil where one was said or none can be.
func (m *model) anchorage(f *FoundationAt, b footing.Block, chosen *anchor.Bolt) {
	if *m.in.Foundation.Kind == "embedded" {
		f.AnchorVerdict, f.AnchorReason = NotChecked, "a post in the ground has no anchor: what ties it to its collar is not checked"
		return
	}
	bolt, said := m.anchorOf()
	if chosen != nil {
		bolt = *chosen
	}
	if !said && chosen == nil {
		f.AnchorVerdict, f.AnchorReason = NotChecked, m.noAnchor(f)
		return
	}
	around := m.around(b)
	pull, push := anchor.NewTension(f.Pull, bolt, around), anchor.NewShear(f.Push, bolt, around)
	if pull.Fault == anchor.NoEdge {
		f.AnchorVerdict = NotChecked
		f.AnchorReason = "give foundation.slab_edge_in and foundation.slab_edge_across_in: an anchor near an edge or a joint holds little"
		return
	}
	all := []calc.Result{pull, push}
	if both := anchor.NewInteraction(pull, push); !math.IsInf(both.Ratio(), 0) {
		all = append(all, both)
	}
	if bolt.Kind != anchor.Drilled && b.Width > 0 {
		all = append(all, anchor.NewRoom(bolt, around))
	}
	worst := 0.0
	for _, r := range all {
		f.Anchor = append(f.Anchor, groundCheck(r, levelOf(r), f.Post))
		worst = max(worst, r.Ratio())
	}
	f.AnchorVerdict = Ratio(worst).Verdict()
	f.AnchorDiameter, f.AnchorDepth, f.AnchorChosen = bolt.Diameter/calc.In, bolt.Embedment/calc.In, chosen != nil
	f.AnchorReason = m.anchorWords(bolt, pull, chosen != nil) + ": ratio " + ratioText(Ratio(worst))
	if f.AnchorVerdict == Over && chosen != nil {
		f.AnchorReason = "no headed bolt of the list holds here, nearest a " + f.AnchorReason
	}
	if f.AnchorVerdict == OK {
		m.anchorDoubts(f, bolt)
	}
	if *m.in.Foundation.Kind == "slab" {
		f.AnchorReason += slabCautions(bolt, around)
	}
}

// anchorWords names a bolt, and of a chosen one what it was chosen in.
func (m *model) anchorWords(bolt anchor.Bolt, t anchor.Tension, chosen bool) string {
	if !chosen {
		return fmt.Sprintf("%s, %s in by %s in", bolt.Kind, calc.Number(bolt.Diameter), calc.Number(bolt.Embedment))
	}
	edge := "in the middle of the concrete"
	if m.in.Foundation.AnchorEdge != nil {
		edge = "where it was said to stand"
	}
	return fmt.Sprintf("%s, chosen for cracked concrete of %s psi, %s, %s in from its nearest edge",
		boltWords(bolt), pounds(t.Concrete.Strength), edge, calc.Number(calc.RoundDown(t.First, 0.1)))
}

// boltWords says the size of a chosen bolt.
func boltWords(b anchor.Bolt) string {
	return fmt.Sprintf("headed bolt of %s in cast in %s in deep", inchWords(b.Diameter), inchWords(b.Embedment))
}

// levelOf names the loads of a check of an anchor.
func levelOf(r calc.Result) string {
	if _, room := r.(anchor.Room); room {
		return "sizes"
	}
	return "strength level"
}

// Distances that an anchor in a slab keeps from edges and joints, though its strength is
// worked out nearer to them: practice.
const (
	leastEdge  = 3 * calc.In
	depthsAway = 1.5 // of the embedment, factor: a whole cone
)

// slabCautions are what to mind about an anchor in a slab.
func slabCautions(bolt anchor.Bolt, c anchor.Concrete) string {
	out := ""
	if keep := max(leastEdge, depthsAway*bolt.Embedment); min(c.West, c.South) < keep {
		out += "; keep it " + calc.Number(calc.RoundUp(keep, 0.25)) + " in or more from edges and joints of the slab"
	}
	if bolt.Kind == anchor.Drilled {
		out += "; bars and pins grouted into an old slab hold nothing until they are tested"
	}
	return out
}

// anchorDoubts are what keeps an anchor that holds by the numbers from being OK.
func (m *model) anchorDoubts(f *FoundationAt, bolt anchor.Bolt) {
	doubt := ""
	if c := m.in.Site.SeismicCategory; c != nil && slices.Contains([]string{"C", "D", "E", "F"}, *c) {
		doubt = "; in seismic category " + *c + " it must be ductile too (ACI 318-19 17.10), which is not checked"
	}
	if bolt.Kind == anchor.Drilled {
		doubt += "; its evaluation report must give pullout, least thickness, edge and spacing for cracked concrete"
	}
	if doubt != "" {
		f.AnchorVerdict = NotChecked
		f.AnchorReason += doubt
	}
}

// noAnchor says what an anchor must hold that was neither said nor chosen.
func (m *model) noAnchor(f *FoundationAt) string {
	must := fmt.Sprintf("it must hold %s lb up and %s lb sideways at strength level", pounds(f.Pull), pounds(f.Push))
	if m.in.Foundation.AnchorKind != nil {
		return "a base cast in must be rated for the uplift: its own report says how it sits in the concrete; " + must
	}
	slab := *m.in.Foundation.SlabThickness * calc.In
	deepest := calc.RoundDown(anchor.Deepest(anchor.Drilled, slab), 0.25)
	return fmt.Sprintf("an old slab takes a drilled anchor with an evaluation report for cracked concrete: %s, "+
		"at most %s in deep, %s in or more from edges and joints; give foundation.anchor with its sizes and what its report says",
		must, calc.Number(deepest), calc.Number(calc.RoundUp(max(leastEdge, depthsAway*deepest), 0.25)))
}
