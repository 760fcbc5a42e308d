package labor

import (
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Rates are the values of a house: how long its people take, what it charges, how it packs and
// how far ahead it orders. Minutes, percentages and money have at most four decimal places; money is in one
// currency, which is not named. A field of zero asks for no time, no money or no days, and
// is shown as such. The methods check the fields they use.
type Rates struct {
	// Fluff is the minutes for each foot of an artificial tree, to shape its
	// branches, 0 to 1000.
	Fluff decimal.Decimal `json:"fluff"`

	// Each is the minutes for each piece of a kind, 0 to 1000; of a kind that is measured by
	// length for each yard, and of lights for each 100 lamps.
	Each shopping.ByKind[decimal.Decimal] `json:"each"`

	// Mantel is the minutes for a mantel with all that goes on it, 0 to 1000.
	Mantel decimal.Decimal `json:"mantel"`

	// Reach is the height above which a ladder is used, 0 to 100 ft.
	Reach units.Length `json:"reach"`

	// Pair is the height above which it takes two people, one of them to hold the ladder and
	// hand things up: Reach to 100 ft.
	Pair units.Length `json:"pair"`

	// Above is how much longer the work above Pair takes, in percent, 0 to 1000.
	Above decimal.Decimal `json:"above"`

	// Down is how long it takes to take down and pack, in percent of putting up, 0 to 100.
	Down decimal.Decimal `json:"down"`

	// Crew is how many people work at a time, 1 to 50.
	Crew int `json:"crew"`

	// Day is the working minutes of a day, 1 to 1440.
	Day int `json:"day"`

	// Markup is added to the cost of goods, in percent, 0 to 1000; 0 passes them on at cost.
	Markup decimal.Decimal `json:"markup"`

	Hourly  decimal.Decimal `json:"hourly"`  // the price of an hour of one person, 0 to 1,000,000
	Consult decimal.Decimal `json:"consult"` // the price of a consultation, 0 to 1,000,000
	Travel  decimal.Decimal `json:"travel"`  // the price of a visit, there and back, 0 to 1,000,000

	// GoodsTax, WorkTax and TravelTax are the tax on each, in percent, 0 to 100.
	GoodsTax  decimal.Decimal `json:"goodsTax"`
	WorkTax   decimal.Decimal `json:"workTax"`
	TravelTax decimal.Decimal `json:"travelTax"`

	Discount decimal.Decimal `json:"discount"` // taken off every price before tax, in percent, 0 to 100
	Deposit  decimal.Decimal `json:"deposit"`  // of the total, due with the order, in percent, 0 to 100
	Places   int             `json:"places"`   // decimal places of the currency, 0 to 4

	Lift units.Mass `json:"lift"` // the most that one person lifts, up to 100 lb; a box over it takes two

	// Lead is the days from an order to the goods in hand, by kind, 0 to 365.
	Lead shopping.ByKind[int] `json:"lead"`

	Prepare int `json:"prepare"` // days before putting up on which to wire and shape, 0 to 365
	CutDays int `json:"cutDays"` // the most days that a cut tree stays in a room, 1 to 365
}

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
// The prices, taxes and the discount are zero: they are yours to set. Not from the trade but choices of this package are
// the minutes of a topper (10), a skirt (5), a bell (2), a stocking (3), a hook (3), and a yard of base garland (3); that ties are part of the
// other work; a crew of 2; a day of 480 min; lead times of 14 days, and 28 for garland and base garland; a day to
// prepare; and 28 days for a cut tree.
//
// Source: from memory, all of it; nothing of this is published as a standard. These are house rates.
func StartingRates() Rates {
	r := Rates{
		Fluff:   decimal.NewFromInt(8),
		Mantel:  decimal.NewFromInt(90),
		Reach:   6 * units.Foot,
		Pair:    8 * units.Foot,
		Above:   decimal.NewFromInt(40),
		Down:    decimal.NewFromInt(40),
		Crew:    2,
		Day:     480,
		Markup:  decimal.NewFromInt(50),
		Deposit: decimal.NewFromInt(50),
		Places:  2,
		Lift:    40 * units.Pound,
		Prepare: 1,
		CutDays: 28,
	}
	for kind, s := range starting {
		r.Each[kind], r.Lead[kind] = decimal.New(s.tenths, -1), s.lead
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
