package labor

import (
	"maps"
	"slices"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Rates are the values of a house: how long its people take, what it charges, how it packs and
// how far ahead it orders. The four tables have a value for each name; a name that is left out
// stands for zero, which asks for no time, no money or no days and is shown as such. A name
// that is not listed here is an error. Minutes, percentages and money have at most four
// decimal places; money is in one currency, which is not named.
type Rates struct {
	// Minutes are 0 to 1000 for each piece of a kind, by its name ("ornaments"); of a kind that is
	// measured by length for each yard, and of lights for each 100 lamps. "artificial tree" is
	// for each foot of a tree whose branches are shaped, "mantel" for a mantel with all that goes on it, and "day" the
	// working minutes of a day, 1 to 1440.
	Minutes map[string]decimal.Decimal `json:"minutes"`

	// Days are 0 to 365 from an order to the goods in hand, by the name of the kind. "wiring" is
	// the days before putting up on which to wire and shape, and "cut tree" the most days
	// that a cut tree stays in a room, at least 1.
	Days map[string]int `json:"days"`

	// Percent has "above", how much longer the work above Pair takes, and "markup", what is added to the cost of
	// goods, each 0 to 1000; and 0 to 100 each "down", how long it takes to take down and
	// pack as a share of putting up; "discount", taken off every price before tax; "deposit", due with
	// the order; and "goods tax", "work tax" and "travel tax".
	Percent map[string]decimal.Decimal `json:"percent"`

	// Price has an "hour" of one person, a "visit", there and back, and a "consultation", each 0 to 1,000,000.
	Price map[string]decimal.Decimal `json:"price"`

	Reach  units.Length `json:"reach"`  // the height above which a ladder is used, 0 to 100 ft
	Pair   units.Length `json:"pair"`   // the height above which it takes two people, one to hold the ladder and hand things up: Reach to 100 ft
	Crew   int          `json:"crew"`   // how many people work at a time, 1 to 50
	Lift   units.Mass   `json:"lift"`   // the most that one person lifts, up to 100 lb; a carton over it takes two
	Places int          `json:"places"` // decimal places of the currency, 0 to 4
}

// The names in the tables that are no kinds.
const (
	shaping  = "artificial tree"
	mantels  = "mantel"
	workday  = "day"
	wiring   = "wiring"
	cutTree  = "cut tree"
	above    = "above"
	down     = "down"
	markup   = "markup"
	discount = "discount"
	deposit  = "deposit"
	goodsTax = "goods tax"
	workTax  = "work tax"
	roadTax  = "travel tax"
	hour     = "hour"
	visit    = "visit"
	consult  = "consultation"
)

// StartingRates returns values to start from; replace them with your own as you time your
// own work.
//
//	shaping an artificial tree   8 min a foot       (6 to 10)
//	lights                       9 min for each 100 (6 to 12)
//	ornaments                    1.2 min each       (40 to 60 an hour)
//	picks                        1.5 min each       (1 to 2)
//	garland, ribbon              1 min a yard
//	mantel                       90 min             (60 to 120)
//	ladder above                 6 ft
//	two people above             8 ft, and 40 % longer (a third to a half)
//	taking down and packing      40 % of putting up (a third to a half)
//	markup on goods              50 %               (50 to 100)
//	deposit                      50 %
//	one person lifts             40 lb              (40 to 50)
//
// Prices, taxes and the discount are zero: they are yours to set. Not from the trade but
// choices of this package are the minutes of a topper (10), a skirt (5), a bell (2), a stocking
// (3), a hook (3) and a yard of base garland (3); that ties are part of the other work; a crew
// of 2; a day of 480 min; lead times of 14 days, and 28 for garland and base garland; a day
// for wiring; and 28 days for a cut tree.
//
// Source: from memory, all of it; no standard has these figures. They are house rates.
func StartingRates() Rates {
	n := decimal.NewFromInt
	r := Rates{
		Minutes: map[string]decimal.Decimal{shaping: n(8), mantels: n(90), workday: n(480)},
		Days:    map[string]int{wiring: 1, cutTree: 28},
		Percent: map[string]decimal.Decimal{above: n(40), down: n(40), markup: n(50), deposit: n(50)},
		Price:   map[string]decimal.Decimal{},
		Reach:   6 * units.Foot,
		Pair:    8 * units.Foot,
		Crew:    2,
		Lift:    40 * units.Pound,
		Places:  2,
	}
	for kind, s := range starting {
		if kind > 0 {
			name := shopping.Kind(kind).String()
			r.Minutes[name], r.Days[name] = decimal.New(s.tenths, -1), s.lead
		}
	}
	return r
}

// starting are the tenths of minutes, and the days of lead, to start from.
var starting = shopping.ByKind[struct {
	tenths int64
	lead   int
}]{
	shopping.Ornament:    {12, 14},
	shopping.Garland:     {10, 28},
	shopping.Ribbon:      {10, 14},
	shopping.Pick:        {15, 14},
	shopping.Light:       {90, 14},
	shopping.Topper:      {100, 14},
	shopping.Skirt:       {50, 14},
	shopping.BaseGarland: {30, 28},
	shopping.Bell:        {20, 14},
	shopping.Stocking:    {30, 14},
	shopping.Tie:         {0, 14},
	shopping.Hook:        {30, 14},
}

// minutes returns the minutes of a kind.
func (r Rates) minutes(k shopping.Kind) decimal.Decimal { return r.Minutes[k.String()] }

// table checks a table of decimals: names has the most of each that is no kind, and each is at most kinds if it is one.
func (c *checker) table(field string, table map[string]decimal.Decimal, names map[string]int64, kinds int64) {
	for _, name := range slices.Sorted(maps.Keys(table)) {
		most, ok := names[name]
		if !ok && kinds > 0 && isKind(name) {
			most, ok = kinds, true
		}
		if c.name(field, name, ok, slices.Sorted(maps.Keys(names)), kinds > 0); ok {
			c.decimal(field+"/"+name, table[name], most)
		}
	}
}

// name refuses a name that a table does not have.
func (c *checker) name(field, name string, ok bool, names []string, kinds bool) {
	if !ok {
		want := strings.Join(names, ", ")
		if kinds {
			want += ", or a kind of package shopping"
		}
		c.fail(units.ErrName, field+"/"+strings.NewReplacer("~", "~0", "/", "~1").Replace(name), name, want)
	}
}

// isKind reports whether name is that of a kind.
func isKind(name string) bool {
	k, err := shopping.ParseKind(name)
	return err == nil && k.String() == name
}

func (c *checker) minutesTable(r Rates) {
	c.table("/minutes", r.Minutes, map[string]int64{shaping: maxRate, mantels: maxRate, workday: 1440}, maxRate)
}

func (c *checker) percentTable(r Rates) {
	c.table("/percent", r.Percent, map[string]int64{above: maxRate, markup: maxRate, down: 100, discount: 100, deposit: 100, goodsTax: 100, workTax: 100, roadTax: 100}, 0)
}

func (c *checker) priceTable(r Rates) {
	c.table("/price", r.Price, map[string]int64{hour: maxMoney, visit: maxMoney, consult: maxMoney}, 0)
}

func (c *checker) daysTable(r Rates) {
	for _, name := range slices.Sorted(maps.Keys(r.Days)) {
		ok := name == wiring || name == cutTree || isKind(name)
		if c.name("/days", name, ok, []string{cutTree, wiring}, true); ok {
			c.whole("/days/"+name, r.Days[name], 0, 365)
		}
	}
	c.whole("/days/"+cutTree, r.Days[cutTree], 1, 365)
}
