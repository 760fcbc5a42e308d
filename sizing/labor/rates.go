package labor

import (
	"maps"
	"slices"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Rates are the values of a house. Each of the four tables has values by name: one left out is
// zero, which "day" and "cut tree" may not be; an unknown one is an error. Decimals have at
// most four places.
type Rates struct {
	// Minutes, 0 to 1000, by the name of a kind: for each piece, each yard of what is measured
	// by length, each 100 lights. "artificial tree" is for each foot of a tree that is shaped,
	// "mantel" for a whole mantel, "day" the minutes of a working day, 1 to 1440.
	Minutes map[string]decimal.Decimal `json:"minutes"`

	// Days, 0 to 365, from order to delivery by the name of a kind. "wiring": from wiring to putting
	// up; "cut tree": its longest stay in a room, at least 1.
	Days map[string]int `json:"days"`

	// Percent, 0 to 1000: "above", the extra time above Pair, and "markup" on goods. 0 to 100: "down", the time of
	// taking down and packing as a share of putting up; "discount", off every price before tax;
	// "deposit"; "goods tax", "work tax" and "travel tax".
	Percent map[string]decimal.Decimal `json:"percent"`

	// Price, 0 to 1,000,000, of an "hour" of one person, a "visit" and a "consultation".
	Price map[string]decimal.Decimal `json:"price"`

	Reach  units.Length `json:"reach"`          // where ladders begin, 0 to 100 ft
	Pair   units.Length `json:"pair"`           // where two people begin, one to hold the ladder: Reach to 100 ft
	Crew   int          `json:"crew"`           // people at work, 1 to 50
	Lift   units.Mass   `json:"lift"`           // the most that one person lifts, up to 100 lb
	Places int          `json:"places"`         // decimal places of the currency, 0 to 4
	Units  units.Style  `json:"units,omitzero"` // of the lengths in texts and labels; job.Make takes House.Units
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

// StartingRates returns values to start from; time your own work and replace them.
//
//	shaping an artificial tree   8 min a foot       (6 to 10)
//	lights                       9 min for each 100 (6 to 12)
//	ornaments                    1.2 min each       (40 to 60 an hour)
//	picks                        1.5 min each       (1 to 2)
//	garland, ribbon              1 min a yard
//	mantel                       90 min             (60 to 120)
//	ladder above                 6 ft
//	two people above             8 ft, 40 % longer  (a third to a half)
//	taking down and packing      40 %               (a third to a half)
//	markup                       50 %               (50 to 100)
//	deposit                      50 %
//	one person lifts             40 lb              (40 to 50)
//
// Choices of this package: a topper takes 10 min, a skirt 5, a bell 2, a stocking, a hook and a
// yard of base garland 3, ties none; a crew of 2; a day of 480 min; 14 days for delivery, 28 for
// garland and base garland; 1 for wiring; 28 for a cut tree; 2 decimal places. Prices, taxes
// and the discount are zero.
//
// Source: from memory, all of it; house rates.
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

// say returns a length in the units of the house: exactly in feet and inches, else to a quarter inch, or to a centimeter and below a meter to half of one.
func (r Rates) say(l units.Length) string {
	switch r.Units {
	case units.InFeetInches:
		return l.String()
	case units.InMetric:
		step := units.Centimeter / 2
		if l >= units.Meter {
			step = units.Centimeter
		}
		return l.Format(r.Units, step)
	}
	return l.Format(r.Units, units.Inch/4)
}

// style checks the units.
func (c *checker) style(s units.Style) {
	if _, err := s.MarshalText(); err != nil {
		c.fail(units.ErrName, "/units", s.String(), "a style of package units")
	}
}

// A limit is the most that a table may have of what is no kind.
type limit struct {
	name string
	most int64
}

// The names in each table, in the order in which they are told, with the most of each.
var (
	ofMinutes = []limit{{shaping, maxRate}, {workday, 1440}, {mantels, maxRate}}
	ofPercent = []limit{{above, maxRate}, {deposit, 100}, {discount, 100}, {down, 100}, {goodsTax, 100}, {markup, maxRate}, {roadTax, 100}, {workTax, 100}}
	ofPrice   = []limit{{consult, maxMoney}, {hour, maxMoney}, {visit, maxMoney}}
	ofDays    = []limit{{cutTree, 365}, {wiring, 365}}
)

// mostOf returns the most of a name in a table with so much of a kind, or -1 if it has no such name.
func mostOf(name string, limits []limit, kinds int64) int64 {
	for _, l := range limits {
		if l.name == name {
			return l.most
		}
	}
	for k := 1; kinds > 0 && k < len(starting); k++ {
		if shopping.Kind(k).String() == name {
			return kinds
		}
	}
	return -1
}

// table checks a table of decimals: limits has the most of each that is no kind, and each is at most kinds if it is one.
func (c *checker) table(field string, table map[string]decimal.Decimal, limits []limit, kinds int64) {
	fine := true
	for name, d := range table { // in any order, since nearly always all of them are
		fine = fine && inRange(d, mostOf(name, limits, kinds))
	}
	if fine {
		return
	}
	for _, name := range slices.Sorted(maps.Keys(table)) {
		if most := mostOf(name, limits, kinds); c.name(field, name, most >= 0, limits, kinds > 0) {
			c.decimal(field+"/"+name, table[name], most)
		}
	}
}

// name refuses a name that a table does not have, and reports whether it has it.
func (c *checker) name(field, name string, ok bool, limits []limit, kinds bool) bool {
	if !ok {
		want := limits[0].name
		for _, l := range limits[1:] {
			want += ", " + l.name
		}
		if kinds {
			want += ", or a kind of package shopping"
		}
		c.fail(units.ErrName, field+"/"+strings.NewReplacer("~", "~0", "/", "~1").Replace(name), name, want)
	}
	return ok
}

func (c *checker) minutesTable(r Rates) { c.table("/minutes", r.Minutes, ofMinutes, maxRate) }

func (c *checker) percentTable(r Rates) { c.table("/percent", r.Percent, ofPercent, 0) }

func (c *checker) priceTable(r Rates) { c.table("/price", r.Price, ofPrice, 0) }

func (c *checker) daysTable(r Rates) {
	fine := true
	for name, n := range r.Days {
		fine = fine && n >= 0 && int64(n) <= mostOf(name, ofDays, 365)
	}
	if !fine {
		for _, name := range slices.Sorted(maps.Keys(r.Days)) {
			if c.name("/days", name, mostOf(name, ofDays, 365) >= 0, ofDays, true) {
				c.whole("/days/"+name, r.Days[name], 0, 365)
			}
		}
	}
	c.whole("/days/"+cutTree, r.Days[cutTree], 1, 365)
}
