package shopping

import (
	"cmp"
	"database/sql/driver"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Shop is what can be bought, what is already owned, and the rules and the money of the
// house. It is also a file format:
//
//	{
//	  "offers": [
//	    {"item": "picks", "name": "box of 12", "pack": 12, "price": "9.00", "shelf": 3},
//	    {"name": "mixed box", "contents": [
//	      {"item": "crimson ornaments", "quantity": 8},
//	      {"item": "gold ornaments", "quantity": 8}], "price": "14.00"},
//	    {"item": "garland", "name": "6 ft strand", "pack": "6 ft", "price": "7.50",
//	      "deals": [{"packs": 3, "price": "15.00"}]},
//	    {"item": "ribbon", "name": "2 rolls of 5 yd", "pack": "2 of 5 yd", "price": "8.80"}
//	  ],
//	  "owned": [{"item": "picks", "quantity": 5}],
//	  "joins": {"garland": {"overlap": "2 in"}},
//	  "spares": {"ornaments": 4},
//	  "coin": "0.01",
//	  "budget": "120.00"
//	}
//
// Leave out an unknown price; the methods refuse it. A free thing has the
// price 0. The methods check the whole Shop and change nothing in it.
type Shop struct {
	Offers []Offer         `json:"offers,omitempty"` // what can be bought
	Owned  []Lot           `json:"owned,omitempty"`  // what there is already
	Joins  map[Item]Join   `json:"joins,omitempty"`  // how strands are joined: by item, else by kind and type, else by kind
	Spares ByKind[int]     `json:"spares,omitzero"`  // extra pieces against breakage, in percent, 0 to 100, rounded up; none for lengths and lights
	Stores []Store         `json:"stores,omitempty"` // those that deliver for a fee, or add tax
	Coin   decimal.Decimal `json:"coin,omitzero"`    // the smallest amount that is paid, to which a till rounds tax; 0: 0.01
	Budget decimal.Decimal `json:"budget,omitzero"`  // Shop.Fullest: zero buys nothing; job.Make: zero is no limit; Shop.List ignores it
}

// A Lot is a quantity of one item: pieces, or one or more strands or rolls of one length.
// Each string of lights is a lot of its own.
type Lot struct {
	Item     Item     `json:"item"`     // what it is
	Quantity Quantity `json:"quantity"` // how much of it
}

// String returns "picks: 12".
func (l Lot) String() string { return l.Item.String() + ": " + l.Quantity.String() }

// An Offer is one kind of pack that can be bought.
type Offer struct {
	Item     Item            `json:"item,omitzero"`      // what it is; empty if Contents says it
	Name     string          `json:"name"`               // what the shelf calls it, "box of 12"; no two offers of an item share one
	Pack     Quantity        `json:"pack,omitzero"`      // what one pack holds: pieces, one strand or roll, or several of one length
	Contents []Lot           `json:"contents,omitempty"` // of a mixed box: pieces of several items, or several strings of lights
	Price    decimal.Decimal `json:"price"`              // of one pack: 0 to 1,000,000, at most four decimal places; decimal.New(0, 0) is free; decimal.Zero, like Decimal{}, means unknown
	Deals    []Deal          `json:"deals,omitempty"`    // what several packs cost together
	Shelf    Shelf           `json:"shelf,omitzero"`     // how many packs are left
	Store    string          `json:"store,omitempty"`    // where; a name in Shop.Stores, or any other
}

// MarshalJSON returns an object, without prices that are not known.
func (o Offer) MarshalJSON() ([]byte, error) {
	price, err := written("/price", o.Price)
	if err != nil {
		return nil, err
	}
	type plain Offer // without this method
	type deal struct {
		Deal
		Price *decimal.Decimal `json:"price,omitempty"`
	}
	deals := make([]deal, len(o.Deals))
	for i, d := range o.Deals {
		deals[i].Deal = d
		if deals[i].Price, err = written("/deals/"+strconv.Itoa(i)+"/price", d.Price); err != nil {
			return nil, err
		}
	}
	return json.Marshal(struct {
		plain
		Price *decimal.Decimal `json:"price,omitempty"`
		Deals []deal           `json:"deals,omitempty"`
	}{plain(o), price, deals})
}

// written returns the price d as it is written, or nil if it is not known. One that is out of its range is refused: with
// an exponent of a million it would take a million digits.
func written(field string, d decimal.Decimal) (*decimal.Decimal, error) {
	if d == (decimal.Decimal{}) {
		return nil, nil
	}
	_, err := newChecker("Offer.MarshalJSON").money(field, d, maxPrice)
	return &d, err
}

// holds returns what one pack holds.
func (o Offer) holds() []Lot {
	if len(o.Contents) > 0 {
		return o.Contents
	}
	return []Lot{{o.Item, o.Pack}}
}

// A Deal is a price for several packs. Exactly one of Packs and From is set:
//
//	{"packs": 3, "price": "18.00"}   3 packs together for 18.00, as often as wanted
//	{"from": 10, "price": "7.50"}    7.50 a pack from 10 packs on; must undercut the price
type Deal struct {
	Packs int             `json:"packs,omitempty"` // 2 to 1000
	From  int             `json:"from,omitempty"`  // 2 to 1000
	Price decimal.Decimal `json:"price"`           // of Packs together, or of each
}

// A Join says how strands of an item are joined and cut.
type Join struct {
	Overlap  units.Length `json:"overlap,omitzero"`  // what each join of two strands loses
	Shortest units.Length `json:"shortest,omitzero"` // the shortest piece that may be joined in
	Uncut    bool         `json:"uncut,omitempty"`   // a strand is never cut, as pre-lit garland is not
}

// A Store is where offers are bought.
type Store struct {
	Name     string          `json:"name"`              // as Offer.Store has it
	Delivery decimal.Decimal `json:"delivery,omitzero"` // of an order of any size
	FreeFrom decimal.Decimal `json:"freeFrom,omitzero"` // the cost of goods from which delivery is free; 0: it never is
	Tax      decimal.Decimal `json:"tax,omitzero"`      // percent added at the till, 0 to 100, at most two decimal places; 0: prices include tax
}

// A Shelf is how many packs of an offer are left, or [SoldOut]. Zero means unknown, and
// counts as enough. JSON and databases hold the number, 0 for sold out, null for unknown.
type Shelf int

// SoldOut is a shelf that holds nothing.
const SoldOut Shelf = -1

// MarshalJSON returns the number, or null.
func (s Shelf) MarshalJSON() ([]byte, error) {
	if s == 0 {
		return []byte("null"), nil
	}
	return strconv.AppendInt(nil, max(0, int64(s)), 10), nil
}

// UnmarshalJSON reads a whole number of packs, or null.
func (s *Shelf) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		*s = 0
		return nil
	}
	return s.read("shopping.Shelf.UnmarshalJSON", string(data))
}

// Value returns the number, or nil.
func (s Shelf) Value() (driver.Value, error) {
	if s == 0 {
		return nil, nil
	}
	return max(0, int64(s)), nil
}

// Scan reads a whole number of packs, as a number or its text, or NULL.
func (s *Shelf) Scan(src any) error {
	if src == nil {
		*s = 0
		return nil
	}
	if text, ok := src.([]byte); ok {
		src = string(text)
	}
	return s.read("shopping.Shelf.Scan", fmt.Sprint(src))
}

// read sets s to the number of packs in a text.
func (s *Shelf) read(fn, text string) error {
	n, ok := parseDigits(text)
	if !ok {
		return &units.Error{Func: fn, Field: "shelf", Value: clip(text), Want: "a whole number of at most 9 digits, or null", Err: units.ErrSyntax}
	}
	*s = left(int64(n))
	return nil
}

// Bounds of what the methods take. They are in the documentation of the package.
const (
	maxName     = 64                      // bytes in the name of an item, an offer or a room
	maxEntries  = 5_000                   // offers, owned entries, needs
	maxPieces   = 1_000_000               // pieces of an item, in a pack, on the shelf or owned
	maxOwned    = 1_000_000_000           // pieces of an item owned in all entries
	maxStrand   = 1_000 * units.Meter     // one strand, roll or whole piece, and all in one pack
	maxLength   = 1_000_000 * units.Meter // all of one need or owned entry
	maxPrice    = 1_000_000               // of a pack, in units of money
	maxBudget   = 1_000_000_000           // in units of money
	maxWork     = 250_000_000             // steps of all searches of one call
	maxTogether = 4_500_000               // steps of one search for needs that are bought together
	maxContents = 64                      // items in a mixed box
	maxStrings  = 100_000                 // strings of lights owned and bought, since each is listed
	maxDeals    = 8                       // deals of an offer
	maxStores   = 8                       // stores
	maxInstead  = 8                       // substitutes of a need
	places      = 4                       // decimal places of money, as many as any currency of ISO 4217 has
	unit        = 10_000                  // 10^places
)

// A checker makes the errors of one method, and keeps count of the work it does.
type checker struct {
	method string
	work   int64 // steps of search that are left
	items  int64 // items to search for, the present one included
	tired  bool  // a search for a way to cut was given up
}

func newChecker(method string) *checker { return &checker{method: method, work: maxWork, items: 1} }

func (c *checker) fail(err error, field, value, want string) error {
	return &units.Error{Func: "shopping." + c.method, Field: field, Value: clip(value), Want: want, Err: err}
}

// shop checks all of s.
func (c *checker) shop(s Shop) error {
	if len(s.Offers) > maxEntries {
		return c.fail(units.ErrRange, "/offers", strconv.Itoa(len(s.Offers)), "at most "+strconv.Itoa(maxEntries)+" of them")
	}
	if len(s.Owned) > maxEntries {
		return c.fail(units.ErrRange, "/owned", strconv.Itoa(len(s.Owned)), "at most "+strconv.Itoa(maxEntries)+" entries")
	}
	type label struct {
		item Item
		name string
	}
	seen := make(map[label]bool, len(s.Offers))
	for i := range s.Offers {
		o := &s.Offers[i]
		if err := c.offer(&s, o); err != nil {
			return at("offers", i, err)
		}
		l := label{o.holds()[0].Item, o.Name}
		if seen[l] {
			return at("offers", i, c.fail(units.ErrDuplicate, "/name", o.Name, "one offer of that name for "+strconv.Quote(l.item.String())))
		}
		seen[l] = true
	}
	for i, o := range s.Owned {
		if err := c.lot(o); err != nil {
			return at("owned", i, err)
		}
	}
	joined := make([]Item, 0, len(s.Joins))
	for item := range s.Joins {
		joined = append(joined, item)
	}
	slices.SortFunc(joined, func(a, b Item) int { return cmp.Compare(a.String(), b.String()) })
	for _, item := range joined {
		field := "/joins/" + pointerToken(item.String())
		if err := item.check(c.method, field); err != nil {
			return err
		}
		j := s.Joins[item]
		if j.Overlap < 0 || j.Overlap > maxStrand {
			return c.fail(units.ErrRange, field+"/overlap", j.Overlap.String(), "0 to "+maxStrand.String())
		}
		if j.Shortest < 0 || j.Shortest > maxStrand {
			return c.fail(units.ErrRange, field+"/shortest", j.Shortest.String(), "0 to "+maxStrand.String())
		}
	}
	for k := Kind(1); k < numKinds; k++ {
		most, want := 100, "0 to 100 percent"
		if k.Running() || k.whole() {
			most, want = 0, "0: spares are of pieces, not of lengths or strings of lights"
		}
		if n := s.Spares[k]; n < 0 || n > most {
			return c.fail(units.ErrRange, "/spares/"+pointerToken(k.String()), strconv.Itoa(n), want)
		}
	}
	if len(s.Stores) > maxStores {
		return c.fail(units.ErrRange, "/stores", strconv.Itoa(len(s.Stores)), "at most "+strconv.Itoa(maxStores)+" of them")
	}
	for i, st := range s.Stores {
		if err := c.store(st, s.Stores[:i]); err != nil {
			return at("stores", i, err)
		}
	}
	if _, err := c.money("/coin", s.Coin, maxPrice); err != nil {
		return err
	}
	return nil
}

// offer checks one offer.
func (c *checker) offer(s *Shop, o *Offer) error {
	if err := c.name("/name", o.Name); err != nil {
		return err
	}
	if !plain(o.Store) {
		return c.fail(units.ErrSyntax, "/store", o.Store, "at most "+strconv.Itoa(maxName)+" bytes of text in one line")
	}
	if len(o.Contents) == 0 {
		if err := o.Item.check(c.method, "/item"); err != nil {
			return err
		}
		if err := c.quantity("/pack", o.Pack, maxStrand); err != nil {
			return err
		}
		if o.Pack == (Quantity{}) {
			return c.fail(units.ErrRange, "/pack", o.Pack.String(), "at least 1 piece or a length")
		}
		if over := s.join(o.Item).Overlap; o.Pack.Length > 0 && o.Pack.Length <= over {
			return c.fail(units.ErrRange, "/pack", o.Pack.String(), "strands longer than the overlap of "+over.String())
		}
	} else {
		if o.Item != (Item{}) || o.Pack != (Quantity{}) {
			return c.fail(units.ErrFit, "/contents", strconv.Itoa(len(o.Contents))+" items", "either contents, or an item and a pack")
		}
		if len(o.Contents) > maxContents {
			return c.fail(units.ErrRange, "/contents", strconv.Itoa(len(o.Contents)), "at most "+strconv.Itoa(maxContents)+" items")
		}
		pieces := 0
		for k, l := range o.Contents {
			pieces += l.Quantity.Pieces
			if err := c.content(l, o.Contents[0], pieces); err != nil {
				return at("contents", k, err)
			}
		}
	}
	if o.Price == (decimal.Decimal{}) {
		return c.fail(units.ErrRange, "/price", "none", "a price, written out even if it is 0")
	}
	each, err := c.money("/price", o.Price, maxPrice)
	if err != nil {
		return err
	}
	if o.Shelf < SoldOut || o.Shelf > 999_999_999 {
		return c.fail(units.ErrRange, "/shelf", strconv.Itoa(int(o.Shelf)), "0 to 999999999, or SoldOut")
	}
	if len(o.Deals) > maxDeals {
		return c.fail(units.ErrRange, "/deals", strconv.Itoa(len(o.Deals)), "at most "+strconv.Itoa(maxDeals)+" of them")
	}
	for k, d := range o.Deals {
		if err := c.deal(d, o.Price, each); err != nil {
			return at("deals", k, err)
		}
	}
	return nil
}

// lot checks an entry of what is owned.
func (c *checker) lot(l Lot) error {
	if err := l.Item.check(c.method, "/item"); err != nil {
		return err
	}
	return c.quantity("/quantity", l.Quantity, maxLength)
}

// content checks what a mixed box holds of one item, which has so many pieces with those before.
func (c *checker) content(l, first Lot, pieces int) error {
	if err := l.Item.check(c.method, "/item"); err != nil {
		return err
	}
	switch {
	case l.Item.Kind.whole() != first.Item.Kind.whole():
		return c.fail(units.ErrFit, "/item", l.Item.String(), "strings of lights alone, or none")
	case l.Quantity.Length != 0:
		return c.fail(units.ErrFit, "/quantity", l.Quantity.String(), "pieces: strands and rolls are offered by themselves")
	case l.Quantity.Pieces < 1 || l.Quantity.Pieces > maxPieces || pieces > maxPieces:
		return c.fail(units.ErrRange, "/quantity", l.Quantity.String(), "1 to "+strconv.Itoa(maxPieces)+" pieces, and no more in all")
	}
	return nil
}

// deal checks a deal of an offer with a price, each in units of 1/10,000.
func (c *checker) deal(d Deal, price decimal.Decimal, each int64) error {
	cost, err := c.money("/price", d.Price, maxPrice)
	switch {
	case err != nil:
		return err
	case d.Price == (decimal.Decimal{}):
		return c.fail(units.ErrRange, "/price", "none", "a price, written out even if it is 0")
	case d.From == 0 && (d.Packs < 2 || d.Packs > 1000):
		return c.fail(units.ErrRange, "/packs", strconv.Itoa(d.Packs), "2 to 1000, or 0 with from")
	case d.From != 0 && (d.Packs != 0 || d.From < 2 || d.From > 1000):
		return c.fail(units.ErrRange, "/from", strconv.Itoa(d.From), "2 to 1000, or 0 with packs")
	case d.From != 0 && cost >= each:
		return c.fail(units.ErrRange, "/price", d.Price.String(), "less than the price of "+price.String())
	}
	return nil
}

// store checks a store, after those before it.
func (c *checker) store(s Store, before []Store) error {
	if err := c.name("/name", s.Name); err != nil {
		return err
	}
	if slices.ContainsFunc(before, func(o Store) bool { return o.Name == s.Name }) {
		return c.fail(units.ErrDuplicate, "/name", s.Name, "one store of that name")
	}
	if _, err := c.money("/delivery", s.Delivery, maxPrice); err != nil {
		return err
	}
	if _, err := c.money("/freeFrom", s.FreeFrom, maxBudget); err != nil {
		return err
	}
	if _, err := c.money("/tax", s.Tax, 100); err != nil || !s.Tax.Equal(s.Tax.Truncate(2)) {
		return c.fail(units.ErrRange, "/tax", s.Tax.String(), "0 to 100 percent with at most 2 decimal places")
	}
	return nil
}

// join returns how strands of item are joined: by the entry for the item, or for its
// kind and type, or for its kind.
func (s Shop) join(item Item) Join {
	for _, i := range []Item{item, {Kind: item.Kind, Type: item.Type}, {Kind: item.Kind}} {
		if j, ok := s.Joins[i]; ok {
			return j
		}
	}
	return Join{}
}

// at returns an error about a field of the i-th entry of a list as one about the list. Only an error has a pointer
// to its place: to make one for each field that is looked at would be most of the work.
func at(list string, i int, err error) error {
	if e, ok := err.(*units.Error); ok {
		e.Field = "/" + list + "/" + strconv.Itoa(i) + e.Field
	}
	return err
}

// pointerToken returns s as one token of a JSON Pointer (RFC 6901, section 3).
func pointerToken(s string) string {
	return strings.ReplaceAll(strings.ReplaceAll(s, "~", "~0"), "/", "~1")
}

// name checks the name of an offer.
func (c *checker) name(field, name string) error {
	if name == "" || !plain(name) {
		return c.fail(units.ErrSyntax, field, name, "1 to "+strconv.Itoa(maxName)+" bytes of text in one line")
	}
	return nil
}

// plain reports whether s is at most 64 bytes of text in one line.
func plain(s string) bool {
	return len(s) <= maxName && utf8.ValidString(s) && !strings.ContainsFunc(s, unicode.IsControl)
}

// quantity checks the bounds of q, whose length in all is at most most.
func (c *checker) quantity(field string, q Quantity, most units.Length) error {
	switch {
	case q.Pieces < 0 || q.Pieces > maxPieces:
		return c.fail(units.ErrRange, field, q.String(), "0 to "+strconv.Itoa(maxPieces)+" pieces")
	case q.Pieces == 0 && (q.Length < 0 || q.Length > most):
		return c.fail(units.ErrRange, field, q.String(), "0 to "+most.String())
	case q.Pieces > 0 && (q.Length < 0 || q.Length > maxStrand):
		return c.fail(units.ErrRange, field, q.String(), "pieces of 0 to "+maxStrand.String()+" each")
	case q.Pieces > 0 && q.Length > most/units.Length(q.Pieces):
		return c.fail(units.ErrRange, field, q.String(), "at most "+most.String()+" in all")
	}
	return nil
}

// money returns d in units of 1/10,000. It looks at the exponent before it does
// any arithmetic, since 1e-1000000 takes a million digits to write out.
func (c *checker) money(field string, d decimal.Decimal, most int64) (int64, error) {
	e, digits := int(d.Exponent()), d.NumDigits()
	value := ""
	switch {
	case e < -64 || e > 64 || digits > 64:
		value = "a number of " + strconv.Itoa(digits) + " digits times 10^" + strconv.Itoa(e)
	case d.Sign() == 0:
		return 0, nil
	case d.Sign() < 0 || digits+e > 10 || price(d) > most*unit || e < -places && !d.Equal(d.Truncate(places)):
		value = d.String()
	default:
		return price(d), nil
	}
	return 0, c.fail(units.ErrRange, field, value, "0 to "+strconv.FormatInt(most, 10)+" with at most "+strconv.Itoa(places)+" decimal places")
}

// price is [checker.money] for a price that has been checked. Decimals take memory for each sum, so that
// the usual ones, of cents, are worked out by whole numbers.
func price(d decimal.Decimal) int64 {
	e := d.Exponent() + places
	if e <= 0 {
		return d.Shift(places).IntPart()
	}
	n := d.CoefficientInt64()
	for ; e > 0 && n != 0; e-- {
		n *= 10
	}
	return n
}

// added returns a + b, the other itself if one is zero.
func added(a, b decimal.Decimal) decimal.Decimal {
	const small = 18 // digits, so that the sum is a whole number of 64 bits
	switch e := a.Exponent(); {
	case a.Sign() == 0:
		return b
	case b.Sign() == 0:
		return a
	case e == b.Exponent() && a.NumDigits() <= small && b.NumDigits() <= small:
		return decimal.New(a.CoefficientInt64()+b.CoefficientInt64(), e)
	}
	return a.Add(b)
}

// amount returns n units of 1/10,000 as money.
func amount(n int64) decimal.Decimal { return decimal.New(n, -places) }
