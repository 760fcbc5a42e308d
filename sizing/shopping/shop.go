package shopping

import (
	"cmp"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Shop is what can be bought, what is already owned, and the money there is.
// It is also a file format: encoding/json reads and writes it as in
//
//	{
//	  "offers": [
//	    {"item": "picks", "name": "box of 12", "pack": 12, "price": "9.00", "shelf": 3},
//	    {"item": "garland", "name": "6 ft strand", "pack": "6 ft", "price": "7.50"},
//	    {"item": "ribbon", "name": "2 rolls of 5 yd", "pack": "2 of 5 yd", "price": "8.80"}
//	  ],
//	  "owned": [{"item": "picks", "quantity": 5}],
//	  "overlap": {"garland": "2 in"},
//	  "budget": "120.00"
//	}
//
// A quantity is a number of pieces, or a text as [ParseQuantity] reads it. Prices
// are texts or numbers, all in one currency, which is not named, and are written as
// texts without closing zeros: "9.00" is written as "9". A price that is
// left out is refused by the methods of Shop, since it is not known to be 0; a
// shelf that is left out is not known. Other fields may be left out, and a field
// that is not listed here is no part of the format.
//
// The methods check the whole Shop and change nothing in it. It holds at most
// 5,000 offers and 5,000 owned entries.
type Shop struct {
	Offers  []Offer               `json:"offers,omitempty"`  // what can be bought
	Owned   []Owned               `json:"owned,omitempty"`   // what there is already
	Overlap map[Item]units.Length `json:"overlap,omitempty"` // by item: what each join of two strands loses; none if not named
	Budget  decimal.Decimal       `json:"budget,omitzero"`   // for Shop.Fullest, to which zero is no money; the other methods leave it alone
}

// An Offer is one kind of pack that can be bought.
type Offer struct {
	Item  Item            `json:"item"`           // what it is, as in Need
	Name  string          `json:"name"`           // what the shelf calls it, "box of 12"; no two offers of an item share one
	Pack  Quantity        `json:"pack"`           // what one pack holds: pieces, one strand or roll, or several of one length
	Price decimal.Decimal `json:"price"`          // of one pack: 0 to 1,000,000, at most four decimal places; a price left out is refused: write decimal.NewFromInt(0) for what is free
	Shelf Shelf           `json:"shelf,omitzero"` // how many packs are left
}

// An Owned is something there is already: pieces, a strand or roll of one
// length, or several of one length. An item may have several entries.
type Owned struct {
	Item     Item     `json:"item"`     // what it is, as in Need
	Quantity Quantity `json:"quantity"` // how much of it
}

// A Shelf says how many packs of an offer are left. The zero value is that
// nobody knows, and is taken as enough; [Left] makes one that is known.
// In JSON it is a number, or null. Shelves are equal if == says so.
type Shelf struct {
	Known bool // whether anybody knows
	Packs int  // 0 unless Known
}

// Left returns a Shelf with packs left, for 0 or more.
func Left(packs int) Shelf { return Shelf{Known: true, Packs: packs} }

// String returns "3 left", or "unknown".
func (s Shelf) String() string {
	if !s.Known {
		return "unknown"
	}
	return strconv.Itoa(s.Packs) + " left"
}

// MarshalJSON returns the number of packs, or null if it is not known.
func (s Shelf) MarshalJSON() ([]byte, error) {
	if !s.Known {
		return []byte("null"), nil
	}
	return strconv.AppendInt(nil, int64(s.Packs), 10), nil
}

// UnmarshalJSON reads a whole number of packs; null is a shelf that is not known.
func (s *Shelf) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		*s = Shelf{}
		return nil
	}
	n, ok := parseDigits(string(data))
	if !ok {
		return &units.Error{Func: "shopping.Shelf.UnmarshalJSON", Field: "shelf", Value: clip(string(data)), Want: "a whole number of at most 9 digits, or null", Err: units.ErrSyntax}
	}
	*s = Left(n)
	return nil
}

// Bounds of what the methods take. They are in the documentation of the package.
const (
	maxName    = 64                      // bytes in the name of an item, an offer or a room
	maxEntries = 5_000                   // offers, owned entries, needs
	maxPieces  = 1_000_000               // pieces of an item, in a pack, on the shelf or owned
	maxOwned   = 1_000_000_000           // pieces of an item owned in all entries
	maxStrand  = 1_000 * units.Meter     // one strand, roll or whole piece, and all in one pack
	maxLength  = 1_000_000 * units.Meter // all of one need or owned entry
	maxPrice   = 1_000_000               // of a pack, in units of money
	maxBudget  = 1_000_000_000           // in units of money
	maxWork    = 250_000_000             // steps of all searches of one call
	places     = 4                       // decimal places of money, as many as any currency of ISO 4217 has
	unit       = 10_000                  // 10^places
)

// A checker makes the errors of one method, and keeps count of the work it does.
type checker struct {
	method string
	work   int64 // steps of search that are left
	items  int64 // items to search for, the present one included
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
	for i, o := range s.Offers {
		if err := c.name(at("offers", i, "name"), o.Name); err != nil {
			return err
		}
		if err := o.Item.check(c.method, at("offers", i, "item")); err != nil {
			return err
		}
		if seen[label{o.Item, o.Name}] {
			return c.fail(units.ErrDuplicate, at("offers", i, "name"), o.Name, "one offer of that name for "+strconv.Quote(o.Item.String()))
		}
		seen[label{o.Item, o.Name}] = true
		if err := c.quantity(at("offers", i, "pack"), o.Pack, maxStrand); err != nil {
			return err
		}
		if o.Pack == (Quantity{}) {
			return c.fail(units.ErrRange, at("offers", i, "pack"), o.Pack.String(), "at least 1 piece or a length")
		}
		if o.Pack.Length > 0 && o.Pack.Length <= s.Overlap[o.Item] {
			return c.fail(units.ErrRange, at("offers", i, "pack"), o.Pack.String(), "strands longer than the overlap of "+s.Overlap[o.Item].String())
		}
		if o.Price == (decimal.Decimal{}) {
			return c.fail(units.ErrRange, at("offers", i, "price"), "none", "a price, written out even if it is 0")
		}
		if _, err := c.money(at("offers", i, "price"), o.Price, maxPrice); err != nil {
			return err
		}
		if !o.Shelf.Known && o.Shelf.Packs != 0 || o.Shelf.Packs < 0 || o.Shelf.Packs > 999_999_999 {
			return c.fail(units.ErrRange, at("offers", i, "shelf"), strconv.Itoa(o.Shelf.Packs), "0 to 999999999, or 0 if it is not known")
		}
	}
	for i, o := range s.Owned {
		if err := o.Item.check(c.method, at("owned", i, "item")); err != nil {
			return err
		}
		if err := c.quantity(at("owned", i, "quantity"), o.Quantity, maxLength); err != nil {
			return err
		}
	}
	for _, item := range slices.SortedFunc(maps.Keys(s.Overlap), func(a, b Item) int { return cmp.Compare(a.String(), b.String()) }) {
		field := "/overlap/" + pointerToken(item.String())
		if err := item.check(c.method, field); err != nil {
			return err
		}
		if l := s.Overlap[item]; l < 0 || l > maxStrand {
			return c.fail(units.ErrRange, field, l.String(), "0 to "+maxStrand.String())
		}
	}
	return nil
}

// at returns the JSON Pointer to a field of an entry of a list.
func at(list string, i int, field string) string {
	return "/" + list + "/" + strconv.Itoa(i) + "/" + field
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
	want := "0 to " + strconv.FormatInt(most, 10) + " with at most " + strconv.Itoa(places) + " decimal places"
	e := int(d.Exponent())
	digits := d.NumDigits()
	if e < -64 || e > 64 || digits > 64 {
		return 0, c.fail(units.ErrRange, field, "a number of "+strconv.Itoa(digits)+" digits times 10^"+strconv.Itoa(e), want)
	}
	if d.Sign() < 0 || d.GreaterThan(decimal.NewFromInt(most)) || !d.Equal(d.Truncate(places)) {
		return 0, c.fail(units.ErrRange, field, d.String(), want)
	}
	return d.Shift(places).IntPart(), nil
}

// price is [checker.money] for a price that has been checked.
func price(d decimal.Decimal) int64 { return d.Shift(places).IntPart() }

// amount returns n units of 1/10,000 as money.
func amount(n int64) decimal.Decimal { return decimal.New(n, -places) }
