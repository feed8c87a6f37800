package cover

import (
	"math"
	"slices"
	"strings"

	"patiocover/calc"
	"patiocover/connections"
	"patiocover/cover/cutting"
)

// A TakeOff is what to buy for the members, with what the user's own prices make of it.
// It has no allowance for waste beyond the cutting of the lengths, and no prices but
// those of the input.
type TakeOff struct {
	Pieces    []PieceLine `json:"pieces"`        // the pieces of wood, by mark
	Wood      []WoodLine  `json:"wood"`          // what to buy for them, by size, species and grade
	Other     []BuyLine   `json:"other"`         // what is no wood
	BoardFeet float64     `json:"board_feet"`    // board feet bought, a factor of 1/12 ft³ nominal
	Weight    float64     `json:"weight_lb"`     // lb, of the finished wood at high moisture
	Cost      *float64    `json:"cost_dollars"`  // dollars, of the lines with a price; nil when no price is given
	Unpriced  []string    `json:"without_price"` // items that have no price, so that the cost leaves them out
	Notes     []string    `json:"notes"`         // what the lengths and counts rest on
}

// A PieceLine is one cut length of one mark.
type PieceLine struct {
	Mark   string  `json:"mark"`      // of the member
	Item   string  `json:"item"`      // size, species, grade
	Count  int     `json:"count"`     // how many
	Length float64 `json:"length_ft"` // ft, cut length
}

// A WoodLine is the sticks of one size, species and grade.
type WoodLine struct {
	Item      string    `json:"item"`            // size, species, grade
	Cuts      []CutLine `json:"cuts"`            // how the sticks are cut
	Sticks    int       `json:"sticks"`          // how many
	Bought    float64   `json:"bought_ft"`       // ft, length of all sticks
	Used      float64   `json:"used_ft"`         // ft, length of the finished pieces
	BoardFeet float64   `json:"board_feet"`      // board feet bought, a factor of 1/12 ft³ nominal
	Cost      *float64  `json:"cost_dollars"`    // dollars; nil without a price
	Exact     bool      `json:"least"`           // no other choice of sticks is shorter, or cheaper where there are prices
	TooLong   []float64 `json:"longer_than_ft"`  // ft, pieces that no stick is long enough for; they are not in the sums
	Price     *Price    `json:"price,omitempty"` // the price that was used
}

// A CutLine is one way to cut a stick.
type CutLine struct {
	Count  int       `json:"count"`     // sticks cut so
	Stick  float64   `json:"stick_ft"`  // ft, length bought
	Pieces []float64 `json:"pieces_ft"` // ft, what comes out of each
}

// A BuyLine is one item that is no wood.
type BuyLine struct {
	Item     string   `json:"item"`         // what it is
	Quantity float64  `json:"quantity"`     // how much, in Unit: a factor
	Unit     string   `json:"unit"`         // each, square_foot, cubic_yard
	Cost     *float64 `json:"cost_dollars"` // dollars; nil without a price
}

// sawKerf is the width of a saw cut, in (common practice).
const sawKerf = 0.125 * calc.In

// perBoardFoot is the volume of a board foot, in³: a foot of 1 in. by 12 in. nominal.
const perBoardFoot = 1 * calc.In * calc.SqFt

// A lot is the pieces of one item that are cut from the same sticks.
type lot struct {
	item    string
	nominal float64 // in², thickness times width by name, of one ply
	weight  float64 // lb/in, of one ply
	pieces  []cutting.Piece
	marks   []string
}

// add puts pieces of one length into the lot.
func (l *lot) add(mark string, length float64, count int) {
	for i := range l.pieces {
		if l.marks[i] == mark && math.Abs(l.pieces[i].Length-length) < tiny {
			l.pieces[i].Count += count
			return
		}
	}
	l.pieces = append(l.pieces, cutting.Piece{Length: length, Count: count})
	l.marks = append(l.marks, mark)
}

// lengths counts the pieces of each length, whatever their mark: they are cut alike.
func (l *lot) lengths() []cutting.Piece {
	var out []cutting.Piece
	for _, at := range l.pieces {
		i := slices.IndexFunc(out, func(p cutting.Piece) bool { return math.Abs(p.Length-at.Length) < tiny })
		if i < 0 {
			out = append(out, at)
			continue
		}
		out[i].Count += at.Count
		out[i].Length = max(out[i].Length, at.Length)
	}
	return out
}

// takeOff counts what to buy for the design.
func (m *model) takeOff(r *Report, d *design) TakeOff {
	t := TakeOff{Notes: []string{
		"Lengths are those of the drawings, with 1/8 in for each saw cut and no other allowance for waste",
		"Of the layers those that are sure to stay are listed, by the area of the roof; allowances are not bought",
	}}
	if d.deck != nil {
		t.Notes = append(t.Notes,
			"The deck is listed by its pieces, and the layer of the dead load that is the deck is the same thing: price one of them")
	}
	if m.in.Rafters.Brace != nil || yes(m.in.Deck.Blocked) {
		t.Notes = append(t.Notes, "Blocking between the rafters is not listed: count it from the drawings")
	}
	if m.kneed.braced {
		t.Notes = append(t.Notes, "Knee braces are listed by the length between their joints: add what the ends need")
	}
	if d.buried != nil {
		t.Notes = append(t.Notes, "Posts in the ground are taken down to the bottom of their footings")
	}
	for _, l := range m.lots(d) {
		t.buyWood(l, m.in.Market)
	}
	t.buyOther(m.otherItems(r, d), m.in.Market.Prices)
	for _, w := range t.Wood {
		t.BoardFeet += w.BoardFeet
		if w.Cost == nil {
			t.Unpriced = append(t.Unpriced, w.Item)
			continue
		}
		t.spend(*w.Cost)
	}
	for _, item := range t.unused(m.in.Market.Prices) {
		t.Notes = append(t.Notes, "The price of "+item+" belongs to no item of this list")
	}
	return t
}

// buyOther prices what is no wood.
func (t *TakeOff) buyOther(items []BuyLine, prices []Price) {
	t.Other = items
	for i := range t.Other {
		t.priceOther(&t.Other[i], prices)
	}
}

// spend adds to the cost.
func (t *TakeOff) spend(dollars float64) {
	if t.Cost == nil {
		t.Cost = new(float64)
	}
	*t.Cost += dollars
}

// buried is how far each post reaches below grade, in: down to the bottom of the footing
// that it is set in. It is nil where posts stand on their bases.
func buried(ground []FoundationAt) []float64 {
	var out []float64
	for _, f := range ground {
		if f.Kind == "embedded" {
			out = append(out, f.Depth*calc.In)
		}
	}
	return out
}

// lots lists the wood of the design by item, in the order of the marks.
func (m *model) lots(d *design) []*lot {
	var out []*lot
	of := func(st stock, w *wood) *lot {
		one := w.dry.OnePly().Section
		item := strings.Join([]string{one.Name, st.species, st.grade}, " ")
		for _, l := range out {
			if l.item == item {
				return l
			}
		}
		l := &lot{item: item, nominal: one.NominalThickness * one.NominalWidth, weight: w.most / float64(w.plies())}
		out = append(out, l)
		return l
	}
	p := &m.plan
	rafter := of(m.rafters, &d.rafter)
	slanted := p.slope(p.projection) + d.rafter.section.Depth*p.rise // both plumb cuts
	rafter.add("R1", slanted, len(p.rafters)*d.rafter.plies())
	if p.attached && *m.in.Cover.Attachment == "ledger" {
		n := math.Ceil(p.width/m.longestStick() - leastBay)
		rafter.add("ledger", p.width/n, int(n))
	}
	for i := range p.lines {
		for _, q := range p.pieces() {
			of(m.beams, &d.beam).add(mark("BM", i), q[1]-q[0], d.beam.plies())
		}
	}
	for i := range p.lines {
		height := m.postHeight(i, d.rafter.section.Depth, d.beam.section.Depth)
		for n := range p.posts {
			below := 0.0
			if d.buried != nil {
				below = d.buried[i*len(p.posts)+n]
			}
			of(m.posts, &d.post).add("P", height+below, d.post.plies())
		}
	}
	if m.kneed.braced {
		of(m.posts, &m.kneed.wood).add(kneeMark, m.kneeLength(), m.kneeCount())
	}
	if more := m.kneed.plies - 1; more > 0 {
		rafter.add("R1", slanted, more*len(p.posts))
	}
	if d.deck != nil {
		for _, r := range d.deck.pieces {
			of(d.deck.stock, &d.deck.wood).add(deckMark, r.length, r.count)
		}
	}
	return out
}

// longestStick is the longest stick of the market, in.
func (m *model) longestStick() float64 {
	return slices.Max(m.in.Market.StockLengths) * calc.Ft
}

// buyWood lays a lot into sticks and prices it.
func (t *TakeOff) buyWood(l *lot, market Market) {
	price := priceOf(market.Prices, l.item, "board_foot", "foot")
	var sticks []cutting.Stick
	for _, ft := range market.StockLengths {
		length := ft * calc.Ft
		sticks = append(sticks, cutting.Stick{Length: length, Price: l.dollars(price, length)})
	}
	lengths := l.lengths()
	plan := cutting.New(lengths, sticks, sawKerf)
	w := WoodLine{
		Item: l.item, Sticks: plan.Sticks, Bought: plan.Bought / calc.Ft, Used: plan.Used / calc.Ft,
		BoardFeet: plan.Bought * l.nominal / perBoardFoot, Exact: plan.Exact, Price: price,
	}
	for i, at := range l.pieces {
		t.Pieces = append(t.Pieces, PieceLine{Mark: l.marks[i], Item: l.item, Count: at.Count, Length: at.Length / calc.Ft})
		t.Weight += at.Length * float64(at.Count) * l.weight
	}
	for i, n := range plan.Unmet {
		if n > 0 {
			w.TooLong = append(w.TooLong, lengths[i].Length/calc.Ft)
		}
	}
	for _, c := range plan.Cuts {
		line := CutLine{Count: c.Count, Stick: sticks[c.Stick].Length / calc.Ft}
		for i, n := range c.Pieces {
			for range n {
				line.Pieces = append(line.Pieces, lengths[i].Length/calc.Ft)
			}
		}
		w.Cuts = append(w.Cuts, line)
	}
	if price != nil {
		w.Cost = new(plan.Price)
	}
	if !plan.Exact {
		t.Notes = append(t.Notes, "The sticks of "+l.item+" are cut length by length: there are too many pieces to try every mixture, "+
			"and less may do")
	}
	t.Wood = append(t.Wood, w)
}

// dollars is what a stick costs; without a price its length in feet, so that the least
// length is bought.
func (l *lot) dollars(p *Price, length float64) float64 {
	switch {
	case p == nil:
		return length / calc.Ft
	case *p.Per == "board_foot":
		return *p.Dollars * length * l.nominal / perBoardFoot
	}
	return *p.Dollars * length / calc.Ft
}

// otherItems counts what is no wood: the roof by area, its layers, and every connector
// of the load path that is bought with a rating.
func (m *model) otherItems(r *Report, d *design) []BuyLine {
	area := m.plan.width * m.plan.slope(m.plan.projection) / calc.SqFt
	var out []BuyLine
	for _, l := range m.in.Cover.Layers {
		if yes(l.Certain) {
			out = append(out, BuyLine{Item: *l.Name, Quantity: calc.RoundUp(area, 1), Unit: "square_foot"})
		}
	}
	if d.deck != nil && m.deckKind() == panelDeck {
		item := "deck panels rated " + d.deck.member.Size + ", 4 ft by 8 ft"
		out = append(out, BuyLine{Item: item, Quantity: float64(d.deck.member.Count), Unit: "each"})
	}
	bolts := boltsOf(r.Foundations)
	for _, l := range r.Links {
		if l.Name == connections.BaseToGround.String() && len(bolts) > 0 {
			continue // the bolts below are what holds the bases
		}
		for _, p := range l.Connector.Parts {
			if p.Total > 0 {
				out = addPart(out, p)
			}
		}
		if len(l.Connector.Parts) == 0 && l.Rating > 0 && (l.Per == PerJoint || l.Per == PerPost) && bought(l) {
			item := l.Name + " rated " + pounds(l.Rating) + " lb"
			out = append(out, BuyLine{Item: item, Quantity: float64(l.Count), Unit: "each"})
		}
	}
	for _, p := range bolts {
		out = addPart(out, p)
	}
	if r.Concrete.Yards > 0 {
		out = append(out, BuyLine{Item: "concrete", Quantity: calc.RoundUp(r.Concrete.Yards, 0.01), Unit: "cubic_yard"})
	}
	return out
}

// addPart adds what one mark needs to the same item of other marks.
func addPart(list []BuyLine, p Part) []BuyLine {
	i := slices.IndexFunc(list, func(b BuyLine) bool { return b.Item == p.Item && b.Unit == "each" })
	if i < 0 {
		return append(list, BuyLine{Item: p.Item, Quantity: float64(p.Total), Unit: "each"})
	}
	list[i].Quantity += float64(p.Total)
	return list
}

// bought reports whether a link is a piece of hardware.
func bought(l Link) bool {
	return !strings.ContainsAny(l.Mark[:1], "FLW")
}

// priceOther prices an item.
func (t *TakeOff) priceOther(b *BuyLine, prices []Price) {
	p := priceOf(prices, b.Item, b.Unit)
	if p == nil {
		t.Unpriced = append(t.Unpriced, b.Item)
		return
	}
	b.Cost = new(*p.Dollars * b.Quantity)
	t.spend(*b.Cost)
}

// priceOf finds the first price of the item in one of the units.
func priceOf(prices []Price, item string, units ...string) *Price {
	for i, p := range prices {
		if strings.EqualFold(strings.TrimSpace(*p.Item), item) && slices.Contains(units, *p.Per) {
			return &prices[i]
		}
	}
	return nil
}

// unused names the prices that no item of the take-off took, so that a misspelt one is
// seen.
func (t *TakeOff) unused(prices []Price) []string {
	var out []string
	for i := range prices {
		p := &prices[i]
		inWood := slices.ContainsFunc(t.Wood, func(w WoodLine) bool { return w.Price == p })
		inOther := slices.ContainsFunc(t.Other, func(b BuyLine) bool { return priceOf(prices, b.Item, b.Unit) == p })
		if !inWood && !inOther {
			out = append(out, *p.Item)
		}
	}
	return out
}
