package lights

import (
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Label describes one light string. All but EndToEnd is required.
type Label struct {
	Lamps  int          `json:"lamps"`  // lamps on one string, 1 to 10,000
	Length units.Length `json:"length"` // the part with lamps, first to last, 1 in to 1000 ft
	Power  units.Power  `json:"power"`  // what one string draws, 1 mW to 10 kW

	// EndToEnd is the most strings that may be joined, up to 1000. Zero is for a label that
	// does not say, and counts as 3, the usual limit for incandescent strings.
	EndToEnd int `json:"endToEnd"`
}

func (s Label) check(fn, at string) error {
	switch {
	case s.Lamps < 1 || s.Lamps > 10_000:
		return rangeError(fn, at+"/lamps", strconv.Itoa(s.Lamps), "1 to 10000")
	case s.Length < units.Inch || s.Length > 1000*units.Foot:
		return rangeError(fn, at+"/length", s.Length.String(), "1 in to 1000 ft")
	case s.Power < units.Milliwatt || s.Power > 10_000*units.Watt:
		return rangeError(fn, at+"/power", s.Power.String(), "1 mW to 10 kW")
	case s.EndToEnd < 0 || s.EndToEnd > 1000:
		return rangeError(fn, at+"/endToEnd", strconv.Itoa(s.EndToEnd), "0 to 1000")
	}
	return nil
}

// Strings are a number of strings of one kind.
type Strings struct {
	Each  Label `json:"each"`  // what the label of one says
	Count int   `json:"count"` // 0 to 1,000,000
}

const maxStrings = 1_000_000

// String returns one line such as "9 strings of 100 lamps, 4.8 W each".
func (s Strings) String() string {
	return plural(s.Count, "string") + " of " + plural(s.Each.Lamps, "lamp") + ", " + s.Each.Power.String() + " each"
}

func (s Strings) check(fn string) error {
	if err := s.Each.check(fn, "/each"); err != nil {
		return err
	}
	return checkCount(fn, "/count", s.Count, maxStrings)
}

// For returns the strings for so many lamps, 0 to 1,000,000, or along a length, 0 to 25,400 m,
// rounded up. sizing.Rules.Compare says how many lamps a tree takes, and
// sizing.Tree.SpiralLength how long they run.
func (s Label) For(quantity shopping.Quantity) (Strings, error) {
	const fn = "Label.For"
	if err := s.check(fn, ""); err != nil {
		return Strings{}, err
	}
	switch {
	case quantity.Length < 0 || quantity.Length > maxStrings*units.Inch || quantity.Pieces < 0 || quantity.Pieces > 1_000_000 || quantity.Length != 0 && quantity.Pieces != 0:
		return Strings{}, rangeError(fn, "quantity", quantity.String(), "0 to 1000000 lamps, or 0 ft to 25400 m")
	case quantity.Length != 0:
		return Strings{Each: s, Count: int((quantity.Length + s.Length - 1) / s.Length)}, nil
	}
	return Strings{Each: s, Count: (quantity.Pieces + s.Lamps - 1) / s.Lamps}, nil
}

// Runs returns how many plugs the strings need, if no more are joined than the label allows:
//
//	Count / EndToEnd, taking 0 as 3
//
// rounded up. Do not join lights of different makes or kinds.
func (s Strings) Runs() (int, error) {
	if err := s.check("Strings.Runs"); err != nil {
		return 0, err
	}
	joined := s.Each.EndToEnd
	if joined == 0 {
		joined = 3
	}
	return (s.Count + joined - 1) / joined, nil
}

// A Circuit is the branch circuit that the lights are plugged into.
type Circuit struct {
	Volts   int         `json:"volts"`   // 100 to 277
	Amperes int         `json:"amperes"` // of the breaker or fuse, 5 to 100
	Other   units.Power `json:"other"`   // what else is on the circuit, up to 100 kW
}

// A Load is what lights draw from a circuit, against what it may carry.
type Load struct {
	Power units.Power `json:"power"` // of the strings and of what else is on the circuit
	Limit units.Power `json:"limit"` // 80 % of the circuit, for a load on for 3 h or more

	Caution units.Caution `json:"caution"` // "load", or "overload" over Limit: what to do, and whom to ask
}

// The cautions by their codes.
func cautionOf(code string) units.Caution {
	c := units.Caution{Code: code}
	const nec = "National Electrical Code 210.20(A), quoted"
	switch code {
	case "load":
		c.Text, c.Source = "follow the labels on lights, cords and timers; local code decides; ask a licensed electrician", nec
	case "overload":
		c.Text, c.Source = "do not switch it on: use fewer lights or a second circuit; local code decides; ask a licensed electrician", nec
	case "days":
		c.Text, c.Source = "seasonal lights are not made for more than 90 days: take them down and look them over for damage", "UL 588, scope, and NEC 590, quoted"
	case "off":
		c.Text, c.Source = "switch lights off when leaving and when going to bed", "NFPA and ESFI holiday safety tips, quoted"
	}
	return c
}

// unchecked is the text of a result that came with an error, where any other would
// read as safe.
const unchecked = "nothing was checked"

// Load returns what the strings and the rest of a circuit draw, against the limit for 3 h or
// more:
//
//	power = Count · Power of each + Other
//	limit = 80 % of Volts · Amperes
//
// So 15 A at 120 V may carry 1440 W, and 20 A 1920 W. The current is power over volts.
//
// Source: National Electrical Code 210.20(A), quoted.
func (s Strings) Load(circuit Circuit) (Load, error) {
	const fn = "Strings.Load"
	if err := s.check(fn); err != nil {
		return Load{}, err
	}
	switch {
	case circuit.Volts < 100 || circuit.Volts > 277:
		return Load{}, rangeError(fn, "/circuit/volts", strconv.Itoa(circuit.Volts), "100 to 277")
	case circuit.Amperes < 5 || circuit.Amperes > 100:
		return Load{}, rangeError(fn, "/circuit/amperes", strconv.Itoa(circuit.Amperes), "5 to 100")
	case circuit.Other < 0 || circuit.Other > 100_000*units.Watt:
		return Load{}, rangeError(fn, "/circuit/other", circuit.Other.String(), "0 W to 100 kW")
	}
	l := Load{
		Power:   units.Power(s.Count)*s.Each.Power + circuit.Other,
		Limit:   units.Power(circuit.Volts) * units.Power(circuit.Amperes) * units.Watt * 80 / 100,
		Caution: cautionOf("load"),
	}
	if l.Power > l.Limit {
		l.Caution = cautionOf("overload")
	}
	return l, nil
}

// String returns one line such as "43.2 W of 1440 W: within the limit; follow the labels ...".
// The zero Load is "nothing was checked".
func (l Load) String() string {
	if l.Limit == 0 {
		return unchecked
	}
	verdict := "within the limit"
	if l.Power > l.Limit {
		verdict = "OVER THE LIMIT"
	}
	return l.Power.String() + " of " + l.Limit.String() + ": " + verdict + "; " + l.Caution.Text
}

// A Use is what lights take in a season.
type Use struct {
	Energy  decimal.Decimal `json:"energy"`  // in kilowatt-hours
	Caution units.Caution   `json:"caution"` // "off", or "days" past 90 days: how to use them safely
}

// Use returns the energy that the strings take in a season, exactly:
//
//	Count · kilowatts of each · hours per day · days
//
// for 0 to 24 hours, with up to 16 decimal places, and 0 to 366 days. The usual season is 12 hours
// a day for 40 days. The cost is Energy.Mul(price), the price being for a kilowatt-hour.
//
// Source: see the package.
func (s Strings) Use(hoursPerDay decimal.Decimal, days int) (Use, error) {
	const fn = "Strings.Use"
	if err := s.check(fn); err != nil {
		return Use{}, err
	}
	hours, err := checkDecimal(fn, "hoursPerDay", hoursPerDay, 24)
	if err != nil {
		return Use{}, err
	}
	if err := checkCount(fn, "days", days, 366); err != nil {
		return Use{}, err
	}
	kilowattDays := decimal.New(int64(s.Count)*int64(s.Each.Power)*int64(days), -6)
	u := Use{Energy: kilowattDays.Mul(hours), Caution: cautionOf("off")}
	if days > 90 {
		u.Caution = cautionOf("days")
	}
	return u, nil
}

// String returns one line such as "84 kWh; switch lights off ...". The zero Use is "nothing was
// checked".
func (u Use) String() string {
	if u.Caution == (units.Caution{}) {
		return unchecked
	}
	return decimalText(u.Energy) + " kWh; " + u.Caution.Text
}

// checkDecimal returns the value of d if it is from 0 to most, with at most 16
// decimal places. It counts the digits first, since a decimal such as 1e999999
// takes a million of them to compare.
func checkDecimal(fn, field string, d decimal.Decimal, most int64) (decimal.Decimal, error) {
	const places = 16
	if d.IsZero() {
		return decimal.Decimal{}, nil
	}
	if whole := int64(d.NumDigits()) + int64(d.Exponent()); -places < whole && whole <= 18 {
		value := d.Truncate(places)
		if value.Equal(d) && !d.IsNegative() && !d.GreaterThan(decimal.New(most, 0)) {
			return value, nil
		}
	}
	return decimal.Decimal{}, rangeError(fn, field, clip(decimalText(d)),
		"0 to "+strconv.FormatInt(most, 10)+", to at most "+strconv.Itoa(places)+" decimal places")
}

// decimalText writes a decimal out, or as digits and a power of ten where that
// would take more than 64 zeros.
func decimalText(d decimal.Decimal) string {
	e := d.Exponent()
	switch {
	case d.IsZero():
		return "0"
	case e < -64 || e > 64:
		return d.Coefficient().String() + "e" + strconv.Itoa(int(e))
	}
	return d.String()
}

// plural returns "1 lamp" or "2 lamps".
func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// clip shortens a refused text to what an error may show.
func clip(s string) string {
	if len(s) > 64 {
		return s[:64] + "..."
	}
	return s
}

func checkCount(fn, field string, n, most int) error {
	if n < 0 || n > most {
		return rangeError(fn, field, strconv.Itoa(n), "0 to "+strconv.Itoa(most))
	}
	return nil
}

func rangeError(fn, field, value, want string) error {
	return &units.Error{Func: "lights." + fn, Field: field, Value: value, Want: want, Err: units.ErrRange}
}
