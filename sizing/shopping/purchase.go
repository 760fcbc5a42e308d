package shopping

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/internal/cover"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Purchase is what to buy of one item, or of several that share a box or an owned piece,
// and who gets what.
type Purchase struct {
	Shares []Share         `json:"shares"`          // what each need gets, spares last
	Owned  []Lot           `json:"owned,omitempty"` // what there is already that could serve the needs, item by item and strand by strand
	Buys   []Buy           `json:"buys,omitempty"`  // in the order of the offers; none if what is owned will do
	Left   []Lot           `json:"left,omitempty"`  // what is owned or bought and does not hang, item by item; it goes back into the box
	Cuts   []Cut           `json:"cuts,omitempty"`  // which strands and rolls serve which room, and how they are cut; owned ones first
	Cost   decimal.Decimal `json:"cost"`            // of all Buys, without delivery and tax
	Bound  decimal.Decimal `json:"bound"`           // no purchase that serves as much costs less (tax counted where stores differ); Cost if that is proved
}

// A Share is a need and what it gets.
//
// Gets may be more than planned: all lamps of a string count, and all of a length that
// hangs, less the overlaps of its joins. For whole pieces it is their number and the
// shortest length.
type Share struct {
	Need
	Gets     Quantity `json:"gets"`              // may exceed the plan; see above
	Parts    []Lot    `json:"parts,omitempty"`   // which things, where the need leaves that open; of lights, each string
	Replaced Quantity `json:"replaced,omitzero"` // how much of the shortfall a substitute covers, in its own share
	For      Item     `json:"for,omitzero"`      // what a substitute stands in for
	Spare    bool     `json:"spare,omitempty"`   // against breakage, by Shop.Spares
}

// String returns "picks, mantel (tea room): 4 of 8", what the room gets of what it needs.
func (s Share) String() string {
	text := s.Item.String()
	if s.Room != "" {
		text += " (" + s.Room + ")"
	}
	return text + ": " + s.Gets.String() + " of " + strings.TrimPrefix(s.Need.String(), s.Item.String()+": ")
}

// Short returns what is missing of the plan, beyond Slack and substitutes.
func (s Share) Short() Quantity {
	q := s.Quantity
	if q.Length != 0 && q.Pieces == 0 {
		return Quantity{Length: max(0, q.Length-s.Slack-s.Gets.Length-s.Replaced.Length)}
	}
	n := max(0, q.Pieces-s.Gets.Pieces-s.Replaced.Pieces)
	if n == 0 {
		return Quantity{}
	}
	return Quantity{Pieces: n, Length: q.Length}
}

// Enough reports whether s gets, with what is replaced, at least as much as will do:
// the need's least, in as many types as it asks for.
func (s Share) Enough() bool {
	if s.Spare {
		return true
	}
	least := s.Quantity.Pieces
	if s.Open != (units.Range[int]{}) {
		least = s.Open.Min
	}
	if a := s.assortment(); a.types != 0 && s.Replaced == (Quantity{}) {
		counts := types(s.Parts)
		for _, n := range counts {
			if n < a.least || n > a.most {
				return false
			}
		}
		if len(counts) != a.types {
			return false
		}
	}
	return s.Short() == Quantity{} || s.Quantity.Length == 0 && s.Gets.Pieces+s.Replaced.Pieces >= least
}

// A Buy is a number of packs of one offer.
type Buy struct {
	Offer Offer           `json:"offer"` // what is bought
	Packs int             `json:"packs"` // how many packs of it, 1 or more
	Cost  decimal.Decimal `json:"cost"`  // Packs times the price, or less by the deals
}

// A Cut is one way to use a strand or a roll, and how many of them are used that way.
type Cut struct {
	Offer  string       `json:"offer,omitempty"` // the name of the offer it is bought as; empty if it is owned
	Roll   units.Length `json:"roll"`            // its length
	Rolls  int          `json:"rolls"`           // how many
	Pieces []Need       `json:"pieces"`          // item, room and quantity cut from each roll: whole pieces, "2 of 54 in", then lengths to join, "6 ft"; the rest is left
}

// left returns what is left of each.
func (c Cut) left() units.Length {
	left := c.Roll
	for _, p := range c.Pieces {
		left -= units.Length(max(1, p.Quantity.Pieces)) * p.Quantity.Length
	}
	return left
}

// needs checks each of needs by itself.
func (c *checker) needs(needs []Need) error {
	if len(needs) > maxEntries {
		return c.fail(units.ErrRange, "needs", strconv.Itoa(len(needs)), "at most "+strconv.Itoa(maxEntries)+" of them")
	}
	for i := range needs {
		if err := c.need(&needs[i]); err != nil {
			return at("needs", i, err)
		}
	}
	return nil
}

// need checks one of needs.
func (c *checker) need(n *Need) error {
	if err := n.Item.check(c.method, "/item"); err != nil {
		return err
	}
	if n.MaxSize != 0 && (n.MaxSize < n.Item.Size || n.MaxSize > maxSize) {
		return c.fail(units.ErrRange, "/maxSize", n.MaxSize.String(), "0, or "+n.Item.Size.String()+" to "+maxSize.String())
	}
	if !plain(n.Room) {
		return c.fail(units.ErrSyntax, "/room", n.Room, "at most "+strconv.Itoa(maxName)+" bytes of text in one line")
	}
	q := n.Quantity
	if err := c.quantity("/quantity", q, maxLength); err != nil {
		return err
	}
	switch {
	case q.Length != 0 && n.Open != units.Range[int]{}:
		return c.fail(units.ErrFit, "/quantity", q.String(), "pieces, or nothing open")
	case q.Length != 0 && n.assortment() != assortment{}:
		return c.fail(units.ErrFit, "/quantity", q.String(), "pieces, or no types")
	case n.Open != units.Range[int]{} && (n.Open.Max < q.Pieces || n.Open.Max > maxPieces):
		return c.fail(units.ErrRange, "/open/max", strconv.Itoa(n.Open.Max), q.String()+" to "+strconv.Itoa(maxPieces))
	case n.Open.Min < 0 || n.Open.Min > q.Pieces:
		return c.fail(units.ErrRange, "/open/min", strconv.Itoa(n.Open.Min), "0 to "+q.String())
	case n.Slack < 0 || n.Slack >= max(1, q.Length):
		return c.fail(units.ErrRange, "/slack", n.Slack.String(), "0 to less than the length needed")
	}
	if a := n.assortment(); a != (assortment{}) {
		low, high := int64(a.types)*a.least, int64(a.types)*a.most
		switch {
		case a.types < 1 || a.types > 100:
			return c.fail(units.ErrRange, "/types", strconv.Itoa(a.types), "1 to 100")
		case a.least < 1 || a.least > maxPieces:
			return c.fail(units.ErrRange, "/each/min", strconv.FormatInt(a.least, 10), "1 to "+strconv.Itoa(maxPieces))
		case a.most < a.least || a.most > maxPieces:
			return c.fail(units.ErrRange, "/each/max", strconv.FormatInt(a.most, 10), strconv.FormatInt(a.least, 10)+" to "+strconv.Itoa(maxPieces))
		case n.Item.Type != "":
			return c.fail(units.ErrFit, "/types", n.Item.Type, "no type, or no number of types")
		case int64(q.Pieces) < low || int64(q.Pieces) > high:
			return c.fail(units.ErrRange, "/quantity", q.String(), strconv.FormatInt(low, 10)+" to "+strconv.FormatInt(high, 10)+" for "+a.String())
		}
	}
	return c.instead(n)
}

// instead checks the substitutes of a need.
func (c *checker) instead(n *Need) error {
	if len(n.Instead) > maxInstead {
		return c.fail(units.ErrRange, "/instead", strconv.Itoa(len(n.Instead)), "at most "+strconv.Itoa(maxInstead)+" of them")
	}
	for k := range n.Instead {
		if err := c.substitute(&n.Instead[k], n); err != nil {
			return at("instead", k, err)
		}
	}
	return nil
}

// substitute checks what may stand in for n.
func (c *checker) substitute(sub, n *Need) error {
	if err := sub.Item.check(c.method, "/item"); err != nil {
		return err
	}
	if sub.MaxSize != 0 && (sub.MaxSize < sub.Item.Size || sub.MaxSize > maxSize) {
		return c.fail(units.ErrRange, "/maxSize", sub.MaxSize.String(), "0, or "+sub.Item.Size.String()+" to "+maxSize.String())
	}
	q := sub.Quantity
	if err := c.quantity("/quantity", q, maxLength); err != nil {
		return err
	}
	if q != (Quantity{}) && n.Quantity == (Quantity{}) {
		return c.fail(units.ErrFit, "/quantity", q.String(), "0, since none is planned")
	}
	whole := q.Pieces > 0 && q.Length > 0
	if whole || q != (Quantity{}) && n.Quantity.Pieces > 0 && n.Quantity.Length > 0 {
		return c.fail(units.ErrFit, "/quantity", q.String(), "pieces or a length, and 0 for whole pieces")
	}
	for _, other := range []struct {
		field string
		set   bool
	}{
		{"room", sub.Room != ""},
		{"open", sub.Open != units.Range[int]{}},
		{"types", sub.assortment() != assortment{}},
		{"slack", sub.Slack != 0},
		{"instead", len(sub.Instead) > 0},
		{"basis", sub.Basis != ""},
		{"source", sub.Source != ""},
	} {
		if other.set {
			return c.fail(units.ErrFit, "/"+other.field, "set", "a substitute with an item, its sizes and a quantity only")
		}
	}
	return nil
}

// A wish is a need as it is planned: least is the fewest pieces that will do.
type wish struct {
	*Need     // as it was given, or one of our own
	at    int // its place in the list
	least int64
	spare bool
	of    *Need    // what it is a substitute for, if it is one
	not   []string // types that will not do, since there are some already

	planned  Quantity // the quantity of the need that was given
	replaced Quantity // how much of it substitutes stand for
}

// wishes returns needs as they are planned.
func wishes(needs []Need) []wish {
	list := make([]wish, len(needs))
	for i := range needs {
		n := &needs[i]
		least, _ := n.open()
		list[i] = wish{Need: n, least: least, planned: n.Quantity}
	}
	return list
}

// withSpares returns wishes and, for each item, the spares of it.
func (s Shop) withSpares(list []wish) []wish {
	if s.Spares == (ByKind[int]{}) {
		return list
	}
	type key struct {
		item Item
		most units.Length
	}
	planned := map[key]int{}
	var keys []key
	for _, w := range list {
		k := key{w.Item, w.MaxSize}
		if s.Spares[w.Item.Kind] == 0 || w.Quantity.Length != 0 {
			continue
		}
		if _, ok := planned[k]; !ok {
			keys = append(keys, k)
		}
		planned[k] += w.Quantity.Pieces
	}
	for _, k := range keys {
		if n := spares(planned[k], s.Spares[k.item.Kind]); n != 0 {
			need := Need{Item: k.item, MaxSize: k.most, Room: "spares", Quantity: Quantity{Pieces: n}, Basis: strconv.Itoa(s.Spares[k.item.Kind]) + " % of " + strconv.Itoa(planned[k]) + ", against breakage", Source: "a rule of the house"}
			list = append(list, wish{Need: &need, spare: true})
		}
	}
	return list
}

// spares returns percent of n, rounded up.
func spares(n, percent int) int { return (n*percent + 99) / 100 }

// A line is needs that are served alike.
type line struct {
	like   *Need // the first of them
	wishes []*wish
	count  int // of them
}

// assort returns what number of types l asks for. Wishes that ask for one are lines of their own.
func (l *line) assort() assortment { return l.like.assortment() }

// takes reports whether item will do for l.
func (l *line) takes(item Item) bool {
	return matches(l.like.Item, l.like.MaxSize, item) && !slices.Contains(l.wishes[0].not, item.Type)
}

func matches(want Item, most units.Length, item Item) bool {
	if item.Kind != want.Kind || want.Type != "" && item.Type != want.Type || want.Color != "" && item.Color != want.Color {
		return false
	}
	if want.Size == 0 && most == 0 {
		return true
	}
	return want.Size <= item.Size && item.Size <= max(want.Size, most)
}

// planned returns the pieces that are planned, and the fewest that will do.
func (l *line) planned() (pieces, least int64) {
	for _, w := range l.wishes {
		pieces += int64(w.Quantity.Pieces)
		least += w.least
	}
	return pieces, least
}

// lines puts wishes into lines, in the order in which they come first, and notes their places. The lines point to the list.
func lines(list []wish) []*line {
	type key struct {
		item Item
		most units.Length
	}
	made := make([]line, 0, len(list))
	all := make([]*line, 0, len(list))
	index := make(map[key]*line, len(list))
	of := make([]*line, len(list))
	for i := range list {
		w := &list[i]
		k := key{w.Item, w.MaxSize}
		l := index[k]
		if l == nil || w.assortment() != (assortment{}) {
			made = append(made, line{like: w.Need})
			l = &made[len(made)-1]
			all = append(all, l)
			if w.assortment() == (assortment{}) {
				index[k] = l
			}
		}
		of[i] = l
		l.count++
	}
	wishes := make([]*wish, len(list)) // of all lines
	for _, l := range all {
		l.wishes, wishes = wishes[:0:l.count], wishes[l.count:]
	}
	for i, l := range of {
		list[i].at = i
		l.wishes = append(l.wishes, &list[i])
	}
	return all
}

// A demand is what the needs of one item come to.
type demand struct {
	pieces  int64        // pieces that come in packs
	running units.Length // a length that may be joined, of all runs together
	runs    []units.Length
	wholes  []Quantity // pieces of one length each, longest first
}

// add adds a quantity to d.
func (d *demand) add(q Quantity) {
	switch {
	case q.Length == 0:
		d.pieces += int64(q.Pieces)
	case q.Pieces == 0:
		d.running += q.Length
		d.runs = append(d.runs, q.Length)
	default:
		k, found := slices.BinarySearchFunc(d.wholes, q.Length, func(w Quantity, l units.Length) int { return cmp.Compare(l, w.Length) })
		if found {
			d.wholes[k].Pieces += q.Pieces
		} else {
			d.wholes = slices.Insert(d.wholes, k, q)
		}
	}
}

// sum adds up what rooms get of one item.
func sum(list []portion) (d demand) {
	for i := range list {
		d.add(list[i].quantity)
	}
	return d
}

// portions returns wishes as what their rooms are to get.
func portions(wishes []*wish) []portion {
	list := make([]portion, len(wishes))
	for i, w := range wishes {
		list[i] = portion{w.Room, w.Quantity}
	}
	return list
}

// demand adds up needs of one item and checks the sums.
func (c *checker) demand(list []*wish) (d demand, err error) {
	lengths, whole := units.Length(0), int64(0)
	for _, w := range list {
		q := w.Quantity
		d.add(q)
		switch {
		case q.Length == 0:
		case q.Pieces == 0:
			lengths += q.Length
		default:
			whole += int64(q.Pieces)
			lengths += units.Length(q.Pieces) * q.Length
		}
	}
	bad := func(err error, value, want string) (demand, error) {
		return demand{}, c.fail(err, "needs", list[0].Item.String()+" in all: "+value, want)
	}
	switch {
	case d.pieces > maxPieces:
		return bad(units.ErrRange, strconv.FormatInt(d.pieces, 10), "0 to "+strconv.Itoa(maxPieces)+" pieces")
	case whole > maxPieces:
		return bad(units.ErrRange, strconv.FormatInt(whole, 10), "0 to "+strconv.Itoa(maxPieces)+" pieces")
	case lengths > maxLength:
		return bad(units.ErrRange, lengths.String(), "0 to "+maxLength.String())
	case d.pieces > 0 && lengths > 0:
		return bad(units.ErrFit, lengths.String()+" and "+strconv.FormatInt(d.pieces, 10)+" pieces", "either pieces or lengths")
	}
	return d, nil
}

// A stocked is an offer and what of it serves a line.
type stocked struct {
	*Offer          // in the shop, which stays as it is
	Shelf  Shelf    // that of the offer, or what is left of it
	pack   Quantity // what of a pack serves the line
	each   int64    // the price of a pack to reckon with, in units of 1/10,000
}

// An itemStock is what there is for one line, owned and offered.
type itemStock struct {
	offers []stocked
	owned  []Lot // all owned, in order
	join   Join
}

// few is how many entries the lists begin with that do not leave a function: the stack has room for them.
const few = 8

// stock returns what s has for l, of the kind that d asks for, with its offers appended to a list. It is an error if
// there is something of the other kind only.
func (s Shop) stock(c *checker, l *line, d demand, offers []stocked) (itemStock, error) {
	stock := itemStock{offers: offers}
	if d.pieces == 0 && d.running == 0 && d.wholes == nil {
		return stock, nil
	}
	want := "pieces, as it is needed"
	if d.pieces == 0 {
		want = "lengths, as it is needed"
	}
	var other error // of the first that is of the other kind
	for i := range s.Offers {
		o, q := &s.Offers[i], Quantity{}
		for _, h := range o.holds() {
			switch {
			case !l.takes(h.Item):
			case (h.Quantity.Length == 0) != (d.pieces > 0):
				if other == nil {
					other = at("offers", i, c.fail(units.ErrFit, "/pack", h.Quantity.String(), want))
				}
			case h.Quantity.Length > 0:
				q = h.Quantity
			default:
				q.Pieces += h.Quantity.Pieces
			}
		}
		if q != (Quantity{}) {
			stock.offers = append(stock.offers, stocked{o, o.Shelf, q, price(o.Price)})
		}
	}
	pieces := int64(0)
	for i, o := range s.Owned {
		switch {
		case !l.takes(o.Item) || o.Quantity == (Quantity{}):
		case (o.Quantity.Length == 0) == (d.pieces > 0):
			if pieces += int64(o.Quantity.Pieces); pieces > maxOwned && d.pieces > 0 {
				return itemStock{}, c.fail(units.ErrRange, "/owned", l.like.Item.String()+" in all: "+strconv.FormatInt(pieces, 10), "at most "+strconv.Itoa(maxOwned)+" pieces")
			}
			stock.owned = append(stock.owned, o)
		case other == nil:
			other = at("owned", i, c.fail(units.ErrFit, "/quantity", o.Quantity.String(), want))
		}
	}
	if len(stock.offers) == 0 && len(stock.owned) == 0 && other != nil {
		return itemStock{}, other
	}
	return stock, nil
}

// limit returns how many packs there are on s, and many more than any need takes if nobody knows.
func (s Shelf) limit() int64 {
	switch s {
	case 0:
		return 1 << 50
	case SoldOut:
		return 0
	}
	return int64(s)
}

// left returns the shelf with n packs.
func left(n int64) Shelf {
	if n == 0 {
		return SoldOut
	}
	return Shelf(n)
}

// take adds packs of each offer to p.
func (p *Purchase) take(offers []stocked, counts []int64) {
	some := 0
	for _, n := range counts {
		if n > 0 {
			some++
		}
	}
	p.Buys = slices.Grow(p.Buys, some)
	for i, n := range counts {
		p.buy(offers[i].Offer, n)
	}
}

// buy adds packs of an offer to p.
func (p *Purchase) buy(o *Offer, n int64) {
	if n == 0 {
		return
	}
	b := Buy{Offer: *o, Packs: int(n), Cost: amount(o.cost(n))}
	p.Buys = append(p.Buys, b)
	p.Cost = added(p.Cost, b.Cost)
}

// bound sets what p costs at least, which is no more than it costs.
func (p *Purchase) bound(least int64) {
	if p.Bound = p.Cost; least < price(p.Cost) {
		p.Bound = amount(least)
	}
}

// cost returns the least that n packs of o cost, in units of 1/10,000.
func (o Offer) cost(n int64) int64 {
	each := price(o.Price)
	for _, d := range o.Deals {
		if d.From != 0 && n >= int64(d.From) {
			each = min(each, price(d.Price))
		}
	}
	bundles := slices.DeleteFunc(slices.Clone(o.Deals), func(d Deal) bool { return d.Packs == 0 }) // which takes no memory without deals
	if len(bundles) == 0 {
		return n * each
	}
	// What is bought in bundles counts toward no tier: the tier is of packs by themselves.
	return o.split(n, bundles)
}

// split returns the least that n packs cost, some of them in bundles and the rest by themselves.
func (o Offer) split(n int64, bundles []Deal) int64 {
	alone := Offer{Price: o.Price, Deals: slices.DeleteFunc(slices.Clone(o.Deals), func(d Deal) bool { return d.From == 0 })}
	// The bundle that saves most by the pack is taken but for a rest that is searched.
	slices.SortStableFunc(bundles, func(a, b Deal) int {
		return cmp.Compare(price(a.Price)*int64(b.Packs), price(b.Price)*int64(a.Packs))
	})
	rest := min(n, 4000)
	whole := (n - rest) / int64(bundles[0].Packs)
	rest = n - whole*int64(bundles[0].Packs)
	costs := make([]int64, rest+1) // of bundles alone, for exactly so many packs
	best := alone.cost(rest)
	for k := int64(1); k <= rest; k++ {
		costs[k] = cover.Never
		for _, b := range bundles {
			if m := k - int64(b.Packs); m >= 0 {
				costs[k] = min(costs[k], costs[m]+price(b.Price))
			}
		}
		best = min(best, costs[k]+alone.cost(rest-k))
	}
	return best + whole*price(bundles[0].Price)
}
