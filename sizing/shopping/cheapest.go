package shopping

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/fircone/internal/cover"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Purchase is what to buy of one item, and why.
type Purchase struct {
	Item    Item            `json:"item"`           // what it is, as in Need
	Needs   []Need          `json:"needs"`          // what was asked for: the share of each room
	Owned   Quantity        `json:"owned,omitzero"` // what there is already, strands joined
	Buys    []Buy           `json:"buys,omitempty"` // in the order of the offers; none if what is owned will do
	Surplus Quantity        `json:"surplus"`        // what is owned and bought over the needs, offcuts included
	Cost    decimal.Decimal `json:"cost"`           // of all Buys
	Bound   decimal.Decimal `json:"bound"`          // nothing that serves the needs costs less; equal to Cost if that is proved the least
	Cuts    []Cut           `json:"cuts,omitempty"` // how whole pieces are cut, owned rolls first
}

// A Buy is a number of packs of one offer.
type Buy struct {
	Offer Offer           `json:"offer"` // what is bought
	Packs int             `json:"packs"` // how many packs of it, 1 or more
	Cost  decimal.Decimal `json:"cost"`  // Packs times the price
}

// A Cut is one way to cut a roll, and how many rolls are cut that way.
type Cut struct {
	Offer  string       `json:"offer,omitempty"` // the name of the offer the rolls are bought as; empty if they are owned
	Roll   units.Length `json:"roll"`            // the length of each roll
	Rolls  int          `json:"rolls"`           // how many
	Pieces []Quantity   `json:"pieces"`          // the whole pieces cut from each, longest first
	Left   units.Length `json:"left"`            // what is left of each
}

// Cheapest returns the purchase that covers the needs, all of one item, at the
// least cost. What s.Owned has of the item is used first, once for all needs
// together; what is still missing is bought from the offers of that item, and
// never more packs than are left on the shelf. What is offered or owned in pieces
// does not serve a need for lengths, nor the reverse, and is passed over.
//
// Pieces add up. Each need for a running length is a run of its own. Strands for it
// are joined end to end, and each join loses the overlap of the item; a strand may
// be cut to serve several runs, and runs are not joined to each other. A strand that
// is owned and no longer than the overlap cannot be joined, and is left out of every
// run. So n strands of lengths L with c cuts come, for k runs together, to
//
//	ΣL - (n+c-k)·overlap
//
// with a cut at each end of a run but the last, c = k-1, unless it can be made to
// fall on the end of a strand.
//
// Whole pieces are cut from rolls; one piece is never joined from two. If an item
// is needed both as a running length and as whole pieces, the pieces are cut
// first and what is left of the rolls is joined.
//
// Of several purchases of the least cost it takes the one with the least surplus
// (of rolls to cut: the least length bought; of several runs: the least length
// bought, each strand less the overlap), then the fewest packs, then the most packs
// of the first offer, of the second, and so on.
//
// The answer is exact, and Bound says so by being equal to Cost, for pieces, for
// whole pieces of one length, for one run, and for several whose strands do not
// overlap. Several runs of strands that overlap are searched until the least cost is
// proved, which comes about for up to 3 runs in whole feet from strands in whole
// feet and nearly always for 6. Whole pieces of several lengths are searched in the same way, which comes
// about for up to 60 pieces of 8 lengths in the sizes that a decorator cuts (in steps
// of 3 in, from rolls in whole yards) and mostly for odd inches too; there the order
// of the offers does not break the last tie. Where a search ends first, as it may
// with more runs or pieces, or with whole pieces and a running length of one item,
// Cost is above Bound and the least cost lies between the two; and with whole pieces
// and a running length whose strands overlap, there may be a way where the error
// says that the shelves are not enough.
//
// It returns an [units.Error] that names the offer or need and its field: wrapping
// [units.ErrShort] if there is not enough to buy, saying how far it goes (of several runs:
// joined to one line); [units.ErrFit] if an item is needed in pieces and offered and owned
// by length only, or the reverse; [units.ErrLimit] if the problem is past the bounds in the
// package documentation; and [units.ErrRange], [units.ErrSyntax] or [units.ErrDuplicate] for a field that
// is wrong in itself.
func (s Shop) Cheapest(needs ...Need) (Purchase, error) {
	c := newChecker("Shop.Cheapest")
	if err := c.shop(s); err != nil {
		return Purchase{}, err
	}
	if err := c.needs(needs); err != nil {
		return Purchase{}, err
	}
	if len(needs) == 0 {
		return Purchase{}, c.fail(units.ErrRange, "needs", "none", "at least 1")
	}
	for i, n := range needs {
		if n.Item != needs[0].Item {
			return Purchase{}, c.fail(units.ErrFit, at("needs", i, "item"), n.Item.String(), "all of one item, "+strconv.Quote(needs[0].Item.String()))
		}
	}
	return s.cheapest(c, needs)
}

// needs checks each of needs by itself.
func (c *checker) needs(needs []Need) error {
	if len(needs) > maxEntries {
		return c.fail(units.ErrRange, "needs", strconv.Itoa(len(needs)), "at most "+strconv.Itoa(maxEntries)+" of them")
	}
	for i, n := range needs {
		if err := n.Item.check(c.method, at("needs", i, "item")); err != nil {
			return err
		}
		if !plain(n.Room) {
			return c.fail(units.ErrSyntax, at("needs", i, "room"), n.Room, "at most "+strconv.Itoa(maxName)+" bytes of text in one line")
		}
		if err := c.quantity(at("needs", i, "quantity"), n.Quantity, maxLength); err != nil {
			return err
		}
	}
	return nil
}

// A demand is what the needs of one item come to.
type demand struct {
	pieces  int64        // pieces that come in packs
	running units.Length // a length that may be joined, of all runs together
	runs    []units.Length
	wholes  []Quantity // pieces of one length each, longest first
}

// An itemStock is what there is of one item, owned and offered.
type itemStock struct {
	offers  []Offer
	owned   []Quantity // all owned, in order
	overlap units.Length
}

// cheapest is [Shop.Cheapest] for a shop and needs that have been checked.
func (s Shop) cheapest(c *checker, needs []Need) (Purchase, error) {
	item := needs[0].Item
	d, err := c.demand(needs)
	if err != nil {
		return Purchase{}, err
	}
	stock, err := s.stock(c, item, d)
	if err != nil {
		return Purchase{}, err
	}
	p := Purchase{Item: item, Needs: slices.Clone(needs)}
	switch {
	case len(d.wholes) > 0:
		err = p.cut(c, d, stock)
	case d.running > 0:
		err = p.join(c, d.runs, stock)
	default:
		err = p.pack(c, d.pieces, stock)
	}
	if err != nil {
		return Purchase{}, err
	}
	return p, nil
}

// demand adds up needs of one item.
func (c *checker) demand(needs []Need) (demand, error) {
	var d demand
	wholes := make(map[units.Length]int64)
	lengths, whole := units.Length(0), int64(0)
	for _, n := range needs {
		q := n.Quantity
		switch {
		case q.Length == 0:
			d.pieces += int64(q.Pieces)
		case q.Pieces == 0:
			d.running += q.Length
			d.runs = append(d.runs, q.Length)
			lengths += q.Length
		default:
			wholes[q.Length] += int64(q.Pieces)
			whole += int64(q.Pieces)
			lengths += units.Length(q.Pieces) * q.Length
		}
	}
	const field = "needs"
	all := needs[0].Item.String() + " in all: "
	switch {
	case d.pieces > maxPieces:
		return demand{}, c.fail(units.ErrRange, field, all+strconv.FormatInt(d.pieces, 10), "0 to "+strconv.Itoa(maxPieces)+" pieces")
	case whole > maxPieces:
		return demand{}, c.fail(units.ErrRange, field, all+strconv.FormatInt(whole, 10), "0 to "+strconv.Itoa(maxPieces)+" pieces")
	case lengths > maxLength:
		return demand{}, c.fail(units.ErrRange, field, all+lengths.String(), "0 to "+maxLength.String())
	case d.pieces > 0 && lengths > 0:
		return demand{}, c.fail(units.ErrFit, field, all+lengths.String()+" and "+strconv.FormatInt(d.pieces, 10)+" pieces", "either pieces or lengths")
	}
	for l, n := range wholes {
		d.wholes = append(d.wholes, Quantity{Pieces: int(n), Length: l})
	}
	slices.SortFunc(d.wholes, func(a, b Quantity) int { return cmp.Compare(b.Length, a.Length) })
	return d, nil
}

// stock returns what s has of item of the kind that d asks for. It is an error if
// there is something of the other kind only.
func (s Shop) stock(c *checker, item Item, d demand) (itemStock, error) {
	stock := itemStock{overlap: s.Overlap[item]}
	if d.pieces == 0 && d.running == 0 && d.wholes == nil {
		return stock, nil
	}
	want := "pieces, as it is needed"
	if d.pieces == 0 {
		want = "lengths, as it is needed"
	}
	var other error // of the first that is of the other kind
	for i, o := range s.Offers {
		switch {
		case o.Item != item:
		case (o.Pack.Length == 0) == (d.pieces > 0):
			stock.offers = append(stock.offers, o)
		case other == nil:
			other = c.fail(units.ErrFit, at("offers", i, "pack"), o.Pack.String(), want)
		}
	}
	pieces := int64(0)
	for i, o := range s.Owned {
		switch {
		case o.Item != item || o.Quantity == (Quantity{}):
		case (o.Quantity.Length == 0) == (d.pieces > 0):
			if pieces += int64(o.Quantity.Pieces); pieces > maxOwned {
				return itemStock{}, c.fail(units.ErrRange, "/owned", item.String()+" in all: "+strconv.FormatInt(pieces, 10), "at most "+strconv.Itoa(maxOwned)+" pieces")
			}
			stock.owned = append(stock.owned, o.Quantity)
		case other == nil:
			other = c.fail(units.ErrFit, at("owned", i, "quantity"), o.Quantity.String(), want)
		}
	}
	if len(stock.offers) == 0 && len(stock.owned) == 0 && other != nil {
		return itemStock{}, other
	}
	return stock, nil
}

// limit returns how many packs there are on s, and many more than any need takes if nobody knows.
func (s Shelf) limit() int64 {
	if s.Known {
		return int64(s.Packs)
	}
	return 1 << 50
}

// A strand is a number of strands or rolls of one length.
type strand struct {
	n      int64
	length units.Length
}

// strand returns what strands q is.
func (q Quantity) strand() strand { return strand{int64(max(1, q.Pieces)), q.Length} }

// strands returns the strands that are owned.
func (stock itemStock) strands() []strand {
	var strands []strand
	for _, q := range stock.owned {
		strands = append(strands, q.strand())
	}
	return strands
}

// length returns the length of strands laid end to end.
func length(strands []strand) units.Length {
	var sum units.Length
	for _, s := range strands {
		sum += units.Length(s.n) * s.length
	}
	return sum
}

// packs returns how many pieces are owned, and the offers as packs of pieces.
func (stock itemStock) packs() (owned int64, packs []cover.Pack) {
	for _, q := range stock.owned {
		owned += int64(q.Pieces)
	}
	for _, o := range stock.offers {
		n := int64(o.Pack.Pieces)
		packs = append(packs, cover.Pack{Size: n, Bulk: n, Cost: price(o.Price), Limit: o.Shelf.limit()})
	}
	return owned, packs
}

// pack fills in p for a need in pieces.
func (p *Purchase) pack(c *checker, need int64, stock itemStock) error {
	owned, packs := stock.packs()
	counts, short, err := c.cover(p.Item, need-owned, packs)
	if err != nil {
		return err
	}
	if short > 0 {
		return c.short(p.Item, strconv.FormatInt(need, 10), strconv.FormatInt(need-short, 10), strconv.FormatInt(short, 10))
	}
	surplus := owned - need
	for i, n := range counts {
		surplus += n * packs[i].Size
	}
	p.Owned.Pieces, p.Surplus.Pieces = int(owned), int(surplus)
	p.buy(stock.offers, counts)
	p.Bound = p.Cost
	return nil
}

// join fills in p for running lengths, one for each run.
func (p *Purchase) join(c *checker, runs []units.Length, stock itemStock) error {
	var need units.Length
	for _, l := range runs {
		need += l
	}
	owned := stock.strands()
	have := joined(owned, stock.overlap)
	counts, short, err := c.strands(p.Item, need, have, stock)
	if err != nil {
		return err
	}
	packs := stock.joinable()
	best := joining{counts: counts, groups: 1}
	if short == 0 {
		best.key = weigh(counts, packs)
		best.bound = best.key[0]
	}
	if len(runs) > 1 && stock.overlap > 0 {
		if best, err = c.part(p.Item, runs, packs, stock, best); err != nil {
			return err
		}
	}
	if best.counts == nil {
		return c.short(p.Item, need.String(), (need - short).String(), short.String())
	}
	p.Owned.Length = have
	p.buy(stock.offers, best.counts)
	p.Surplus.Length = joined(append(owned, p.bought()...), stock.overlap) - need + units.Length(best.groups-1)*stock.overlap
	p.Bound = amount(best.bound)
	return nil
}

// joinable returns the offers as packs of strands to join.
func (stock itemStock) joinable() []cover.Pack {
	packs := make([]cover.Pack, len(stock.offers))
	for i, o := range stock.offers {
		st := o.Pack.strand()
		size := st.n * int64(st.length-stock.overlap)
		packs[i] = cover.Pack{Size: size, Bulk: size, Cost: price(o.Price), Limit: o.Shelf.limit()}
	}
	return packs
}

// weigh returns the cost, the bulk and the number of packs.
func weigh(counts []int64, packs []cover.Pack) (key [3]int64) {
	for i, n := range counts {
		key[0] += n * packs[i].Cost
		key[1] += n * packs[i].Bulk
		key[2] += n
	}
	return key
}

// strands returns how many packs of each offer to join to a strand of length
// have, which may be 0, to make need, or how much is missing if all the packs
// there are will not do.
func (c *checker) strands(item Item, need, have units.Length, stock itemStock) (counts []int64, short units.Length, err error) {
	missing := int64(need - have)
	if have == 0 {
		// The first strand joins nothing; and any one strand is longer than the overlap.
		missing = max(1, missing-int64(stock.overlap))
	}
	counts, n, err := c.cover(item, missing, stock.joinable())
	short = units.Length(n)
	if have == 0 && n == missing {
		short = need // there is nothing at all
	}
	return counts, short, err
}

// joined returns how long the strands come to with each join losing overlap.
// A strand that is no longer than the overlap adds nothing and is left out.
func joined(strands []strand, overlap units.Length) units.Length {
	var total units.Length
	for _, s := range strands {
		total += units.Length(s.n) * max(0, s.length-overlap)
	}
	if total == 0 {
		return 0
	}
	return total + overlap // there is one join less than there are strands
}

// cover returns how many of each of packs cover need at the least cost, or how
// much is missing if all of them do not. It takes nothing if need is not positive.
func (c *checker) cover(item Item, need int64, packs []cover.Pack) (counts []int64, short int64, err error) {
	counts = make([]int64, len(packs))
	if need <= 0 {
		return counts, 0, nil
	}
	kinds, packs := usable(packs)
	short = need
	for _, p := range packs {
		short = max(0, short-p.Size*min(p.Limit, need/p.Size+1))
	}
	if short > 0 {
		return nil, short, nil
	}
	some, ok := cover.Counts(need, packs, &c.work)
	if !ok {
		return nil, 0, c.size(item, len(packs))
	}
	for k, n := range some {
		counts[kinds[k]] = n
	}
	return counts, 0, nil
}

// costs returns a function for the least cost of covering n, for n up to need;
// it is cover.Never if the packs do not reach.
func (c *checker) costs(item Item, need int64, packs []cover.Pack) (func(n int64) int64, error) {
	_, packs = usable(packs)
	held, ok := cover.New(max(1, need), packs, &c.work)
	if !ok {
		return nil, c.size(item, len(packs))
	}
	costs, ok := held.Costs(&c.work)
	if !ok {
		return nil, c.size(item, len(packs))
	}
	return func(n int64) int64 { return costs[(max(0, n)+held.Measure-1)/held.Measure] }, nil
}

// usable returns the packs that there are any of and that cover anything, with their indices.
func usable(packs []cover.Pack) (kinds []int, some []cover.Pack) {
	for i, p := range packs {
		if p.Size > 0 && p.Limit > 0 {
			kinds = append(kinds, i)
			some = append(some, p)
		}
	}
	return kinds, some
}

// size makes the error for a cover that is too large.
func (c *checker) size(item Item, offers int) error {
	return c.fail(units.ErrLimit, "/offers", strconv.Itoa(offers)+" of "+item.String(), "fewer offers, a smaller need, or sizes with a larger common measure")
}

// short makes the error for a need that the shelves do not cover.
func (c *checker) short(item Item, need, reach, missing string) error {
	return c.fail(units.ErrShort, "needs", item.String()+": "+need, "at most "+reach+": "+missing+" short")
}

// buy fills in the packs bought and what they cost.
func (p *Purchase) buy(offers []Offer, counts []int64) {
	p.Buys, p.Cost = nil, amount(0)
	for i, n := range counts {
		if n > 0 {
			b := Buy{Offer: offers[i], Packs: int(n), Cost: offers[i].Price.Mul(decimal.NewFromInt(n))}
			p.Buys = append(p.Buys, b)
			p.Cost = p.Cost.Add(b.Cost)
		}
	}
}

// bought returns the strands in p.Buys.
func (p *Purchase) bought() []strand {
	var strands []strand
	for _, b := range p.Buys {
		s := b.Offer.Pack.strand()
		strands = append(strands, strand{s.n * int64(b.Packs), s.length})
	}
	return strands
}
