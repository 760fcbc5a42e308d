package golden

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// item is what the shelves call the first, the second, ... thing that is bought.
func item(i int) shopping.Item {
	return shopping.Item{Kind: shopping.Ornament, Type: string(rune('a' + i))}
}

// A pack is an offer: what it holds, its price, and how many are left, -1 if nobody knows.
type pack struct {
	holds shopping.Quantity
	price string
	left  int
}

// A wish is what is wanted of one item, and what there is to buy and to use.
type wish struct {
	needs   []shopping.Quantity // one a room
	most    int                 // for pieces: up to so many, if there is the money
	owned   []shopping.Quantity
	overlap units.Length
	packs   []pack
}

func (w wish) String() string {
	var b strings.Builder
	b.WriteString("need ")
	for i, q := range w.needs {
		if i > 0 {
			b.WriteString(" + ")
		}
		b.WriteString(held(q))
	}
	if w.most > 0 {
		fmt.Fprintf(&b, " to %d", w.most)
	}
	for _, q := range w.owned {
		b.WriteString(", own " + held(q))
	}
	if w.overlap > 0 {
		b.WriteString(", overlap " + nm(w.overlap))
	}
	for _, o := range w.packs {
		b.WriteString(", pack " + held(o.holds) + " at " + o.price)
		if o.left >= 0 {
			fmt.Fprintf(&b, " x%d", o.left)
		}
	}
	return b.String()
}

// shop returns the shelves for all the wishes together, and their needs.
func shop(wishes ...wish) (s shopping.Shop, needs []shopping.Need) {
	s.Joins = map[shopping.Item]shopping.Join{}
	for i, w := range wishes {
		for k, q := range w.needs {
			needs = append(needs, shopping.Need{Item: item(i), Room: fmt.Sprintf("room %d", k+1), Quantity: q})
		}
		for _, q := range w.owned {
			s.Owned = append(s.Owned, shopping.Lot{Item: item(i), Quantity: q})
		}
		if w.overlap > 0 {
			s.Joins[item(i)] = shopping.Join{Overlap: w.overlap}
		}
		for k, o := range w.packs {
			offer := shopping.Offer{Item: item(i), Name: fmt.Sprintf("pack %d", k+1), Pack: o.holds, Price: decimal.RequireFromString(o.price)}
			switch {
			case o.left > 0:
				offer.Shelf = shopping.Shelf(o.left)
			case o.left == 0:
				offer.Shelf = shopping.SoldOut
			}
			s.Offers = append(s.Offers, offer)
		}
	}
	return s, needs
}

// bought writes a purchase: how many of each pack, the cost and what it cannot be under, what is over, the cuts.
func bought(w wish, x shopping.Purchase) string {
	counts := make([]int, len(w.packs))
	for _, b := range x.Buys {
		var k int
		fmt.Sscanf(b.Offer.Name, "pack %d", &k)
		counts[k-1] = b.Packs
	}
	s := fmt.Sprintf("buy %s, cost %s, at least %s, over %s", count(counts), dec(x.Cost), dec(x.Bound), held(over(x.Left)))
	for _, c := range wholes(x.Cuts) {
		pieces := make([]string, 0, len(c.Pieces))
		for _, q := range c.Pieces {
			pieces = append(pieces, held(q.Quantity))
		}
		s += fmt.Sprintf(", cut %d x %s into %s, %s left", c.Rolls, nm(c.Roll), strings.Join(pieces, " and "), nm(c.left))
	}
	return s
}

// over adds up what is left.
func over(left []shopping.Lot) (sum shopping.Quantity) {
	for _, l := range left {
		if l.Quantity.Length > 0 {
			sum.Length += units.Length(l.Quantity.Pieces) * l.Quantity.Length
		} else {
			sum.Pieces += l.Quantity.Pieces
		}
	}
	return sum
}

// A cutting is a cut and what is left of each roll.
type cutting struct {
	shopping.Cut
	left units.Length
}

// wholes returns the cuts of whole pieces whoever gets them, and equal ones together.
func wholes(cuts []shopping.Cut) (all []cutting) {
	for _, c := range cuts {
		var pieces []shopping.Need
		left := c.Roll
		for _, q := range c.Pieces {
			left -= units.Length(max(1, q.Quantity.Pieces)) * q.Quantity.Length
			k := len(pieces) - 1
			switch {
			case q.Quantity.Pieces == 0: // joined
			case k >= 0 && pieces[k].Quantity.Length == q.Quantity.Length:
				pieces[k].Quantity.Pieces += q.Quantity.Pieces
			default:
				pieces = append(pieces, shopping.Need{Quantity: q.Quantity})
			}
		}
		if pieces == nil {
			continue
		}
		c.Pieces = pieces
		same := func(a, b shopping.Need) bool { return a.Quantity == b.Quantity }
		if k := len(all) - 1; k >= 0 && all[k].Offer == c.Offer && all[k].Roll == c.Roll && all[k].left == left && slices.EqualFunc(all[k].Pieces, pieces, same) {
			all[k].Rolls += c.Rolls
			continue
		}
		all = append(all, cutting{c, left})
	}
	return all
}

// filled returns needs that are planned so full, by the formula in the documentation of Shop.Fullest.
func filled(needs []shopping.Need, percent int) []shopping.Need {
	for i := range needs {
		n := &needs[i]
		n.Quantity.Pieces, n.Open = n.Open.Min+((n.Open.Max-n.Open.Min)*percent+99)/100, units.Range[int]{}
	}
	return needs
}

// errShort and errBudget are for what is a result: the lines have one word for it.
var errShort, errBudget = errors.New("short"), errors.New("budget")

// lacking returns err, or why the list does not serve all needs.
func lacking(l shopping.List, err error) (shopping.List, error) {
	switch {
	case err != nil:
		return l, err
	case l.Least.GreaterThan(l.Total):
		return l, errBudget
	case l.Short() != nil:
		return l, errShort
	}
	return l, nil
}

// cheapest adds the purchase for one item.
func cheapest(p *page, kind string, w wish) {
	s, needs := shop(w)
	l, err := s.List(needs)
	var x shopping.Purchase
	if err == nil {
		x = l.Purchases[0]
	}
	if _, short := lacking(shopping.List{Purchases: []shopping.Purchase{x}}, err); short != nil {
		err = short
	}
	p.add("%s: %s = %s", kind, w, or(func(x shopping.Purchase) string { return bought(w, x) })(x, err))
}

// listed writes a list: each item, and the total.
func listed(wishes []wish) func(shopping.List) string {
	return func(l shopping.List) string {
		texts := make([]string, 0, len(wishes))
		for i, x := range l.Purchases {
			total := shopping.Quantity{}
			for _, n := range x.Shares {
				total.Pieces += n.Gets.Pieces
			}
			texts = append(texts, fmt.Sprintf("for %d %s", total.Pieces, bought(wishes[i], x)))
		}
		return strings.Join(texts, "; ") + "; total " + dec(l.Total)
	}
}

// cents writes a price.
func cents(n int) string { return dec(decimal.New(int64(n), -2)) }

// several draws up to most quantities.
func several(d *draw, most int, one func() shopping.Quantity) []shopping.Quantity {
	all := make([]shopping.Quantity, 0, most)
	for range most {
		all = append(all, one())
	}
	return all[:d.upTo(most+1)]
}

func pieces(n int) shopping.Quantity              { return shopping.Quantity{Pieces: n} }
func running(l units.Length) shopping.Quantity    { return shopping.Quantity{Length: l} }
func cut(n int, l units.Length) shopping.Quantity { return shopping.Quantity{Pieces: n, Length: l} }
func inches(n int) units.Length                   { return units.Length(n) * units.Inch }
func stock(d *draw, limited bool) int {
	if limited && d.upTo(2) == 0 {
		return d.upTo(6)
	}
	return -1
}

// piecesWish draws a wish for pieces, which a search by hand can check.
func piecesWish(d *draw, limited bool) wish {
	w := wish{needs: []shopping.Quantity{pieces(1 + d.upTo(60))}}
	if d.upTo(3) == 0 {
		w.needs = append(w.needs, pieces(d.upTo(20)))
	}
	w.owned = several(d, 1, func() shopping.Quantity { return pieces(d.upTo(25)) })
	for range 1 + d.upTo(4) {
		w.packs = append(w.packs, pack{pieces(1 + d.upTo(25)), cents(50 + 25*d.upTo(80)), stock(d, limited)})
	}
	return w
}

func shoppingPage(p *page) {
	// The examples of the trade and of the literature first.
	plain := func(n int, packs ...string) wish {
		w := wish{needs: []shopping.Quantity{pieces(n)}}
		for _, o := range packs {
			var size int
			var price string
			fmt.Sscanf(o, "%d %s", &size, &price)
			w.packs = append(w.packs, pack{pieces(size), price, -1})
		}
		return w
	}
	cheapest(p, "pieces", plain(6, "1 1", "3 3", "4 4"))
	cheapest(p, "pieces", plain(43, "9 4.5", "20 10", "6 3"))
	cheapest(p, "pieces", plain(30, "1 1", "10 7", "25 15"))
	cheapest(p, "pieces", plain(49, "6 5", "12 9", "24 16"))
	cheapest(p, "pieces", plain(43, "6 6", "9 9", "20 20"))
	var d draw
	for i := range 160 {
		cheapest(p, "pieces", piecesWish(&d, i%2 == 0))
	}
	for range 80 { // one running length
		w := wish{needs: []shopping.Quantity{running(inches(12 * (1 + d.upTo(90))))}, overlap: inches(d.upTo(4))}
		w.owned = several(&d, 1, func() shopping.Quantity { return running(inches(12 * (1 + d.upTo(30)))) })
		for range 1 + d.upTo(3) {
			w.packs = append(w.packs, pack{running(inches(6 * (8 + d.upTo(50)))), cents(300 + 25*d.upTo(80)), stock(&d, d.upTo(3) == 0)})
		}
		cheapest(p, "run", w)
	}
	for range 60 { // several running lengths
		w := wish{overlap: inches(2 * d.upTo(2))}
		for range 2 + d.upTo(2) {
			w.needs = append(w.needs, running(inches(12*(2+d.upTo(30)))))
		}
		w.owned = several(&d, 2, func() shopping.Quantity { return running(inches(12 * (1 + d.upTo(10)))) })
		for range 1 + d.upTo(3) {
			w.packs = append(w.packs, pack{running(inches(12 * (4 + d.upTo(30)))), cents(300 + 25*d.upTo(80)), stock(&d, d.upTo(3) == 0)})
		}
		cheapest(p, "runs", w)
	}
	for range 60 { // whole pieces of one length
		w := wish{needs: []shopping.Quantity{cut(1+d.upTo(20), inches(6+3*d.upTo(20)))}}
		w.owned = several(&d, 1, func() shopping.Quantity { return running(inches(12 * (1 + d.upTo(20)))) })
		for range 1 + d.upTo(3) {
			w.packs = append(w.packs, pack{running(inches(36 * (1 + d.upTo(12)))), cents(200 + 25*d.upTo(60)), stock(&d, d.upTo(3) == 0)})
		}
		cheapest(p, "equal cuts", w)
	}
	for range 60 { // whole pieces of several lengths
		var w wish
		for range 2 + d.upTo(3) {
			w.needs = append(w.needs, cut(1+d.upTo(6), inches(9+3*d.upTo(20))))
		}
		for range 1 + d.upTo(3) {
			w.packs = append(w.packs, pack{running(inches(36 * (2 + d.upTo(10)))), cents(200 + 25*d.upTo(60)), -1})
		}
		cheapest(p, "cuts", w)
	}
	for range 60 { // lists
		wishes := make([]wish, 1+d.upTo(3))
		texts := make([]string, len(wishes))
		for i := range wishes {
			wishes[i] = piecesWish(&d, false)
			texts[i] = wishes[i].String()
		}
		s, needs := shop(wishes...)
		p.add("list %s = %s", strings.Join(texts, "; "), or(listed(wishes))(lacking(s.List(needs))))
	}
	for i := range 80 { // as full as the money allows
		wishes := make([]wish, 1+d.upTo(3))
		texts := make([]string, len(wishes))
		for i := range wishes {
			w := piecesWish(&d, false)
			w.needs = w.needs[:1]
			w.most = w.needs[0].Pieces + d.upTo(30)
			wishes[i], texts[i] = w, w.String()
		}
		s, needs := shop(wishes...)
		for i := range needs {
			needs[i].Open = units.Range[int]{Min: needs[i].Quantity.Pieces, Max: wishes[i].most}
		}
		if i%2 == 0 {
			s.Budget = decimal.RequireFromString(cents(1000 + 100*d.upTo(80)))
			p.add("fullest for %s: %s = %s", dec(s.Budget), strings.Join(texts, "; "), or(listed(wishes))(lacking(s.Fullest(needs))))
			continue
		}
		percent := d.upTo(101)
		p.add("filled to %d: %s = %s", percent, strings.Join(texts, "; "), or(listed(wishes))(lacking(s.List(filled(needs, percent)))))
	}
	for _, text := range []string{"27", "81 ft", "4 of 54 in", "4 of 4 ft 6 in", "0", "1 of 1 nm", "", "27 pieces", "-4", "1e3", "2 x 9 ft", "3 of", "of 3 ft", "7'6\""} {
		q, err := shopping.ParseQuantity(text)
		p.add("read quantity %q = %s", text, or(func(q shopping.Quantity) string { return held(q) + fmt.Sprintf(", %q", q) })(q, err))
	}
}
