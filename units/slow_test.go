package units

import (
	"math"
	"math/big"
	"regexp"
	"strings"
)

// The reference parser: slow, of regular expressions and big.Rat, and written from the grammar in the package
// documentation, not from the parser. It tells whether a text is read and as what, not why it is refused.

const (
	refSpace = "[ \\t\\n\\v\\f\\r\u00a0\u2009\u202f]"
	refFrac  = "[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]"
)

var (
	refSign = regexp.MustCompile("^(?s)" + refSpace + "*(?:([+\\-\u2212])" + refSpace + "*)?")
	// A number, then what may stand between it and its unit.
	refNumber = regexp.MustCompile("^(?:" + strings.Join([]string{
		`([0-9]*)\.([0-9]+)`,
		"([0-9]+)(?:-|" + refSpace + "+)([0-9]+)[/\u2044]([0-9]+)",
		"([0-9]+)[/\u2044]([0-9]+)",
		"(?:([0-9]+)(?:-|" + refSpace + "*))?(" + refFrac + ")",
		"([0-9]+)",
	}, "|") + ")(-|" + refSpace + "*)")
	refWord   = regexp.MustCompile("^([\u00b5\u03bc]?[A-Za-z]*)")
	refMark   = regexp.MustCompile("^(?:(['’′]['’′]|[\"”″])|['’′])")
	refSquare = regexp.MustCompile("^(?:(?i:square|sq)(?:[.-]|\\.-|\\.?" + refSpace + "+)([\u00b5\u03bc]?[A-Za-z]+)|(?i:sq)([\u00b5\u03bc]?[A-Za-z]+)|([\u00b5\u03bc]?[A-Za-z]+)[2²])")
	refGap    = regexp.MustCompile("^" + refSpace + "*")
)

var refUnits = map[kind]map[string]int64{
	kindLength: {
		"nm": 1, "nanometer": 1, "nanometers": 1, "nanometre": 1, "nanometres": 1,
		"um": 1e3, "\u00b5m": 1e3, "\u03bcm": 1e3, "micrometer": 1e3, "micrometers": 1e3, "micrometre": 1e3, "micrometres": 1e3,
		"mm": 1e6, "millimeter": 1e6, "millimeters": 1e6, "millimetre": 1e6, "millimetres": 1e6,
		"cm": 1e7, "centimeter": 1e7, "centimeters": 1e7, "centimetre": 1e7, "centimetres": 1e7,
		"m": 1e9, "meter": 1e9, "meters": 1e9, "metre": 1e9, "metres": 1e9,
		"in": 25_400_000, "inch": 25_400_000, "inches": 25_400_000,
		"ft": 304_800_000, "foot": 304_800_000, "feet": 304_800_000,
		"yd": 914_400_000, "yds": 914_400_000, "yard": 914_400_000, "yards": 914_400_000,
	},
	kindMass: {
		"ng": 1, "nanogram": 1, "nanograms": 1,
		"mg": 1e6, "milligram": 1e6, "milligrams": 1e6,
		"g": 1e9, "gram": 1e9, "grams": 1e9,
		"kg": 1e12, "kilogram": 1e12, "kilograms": 1e12,
		"oz": 28_349_523_125, "ounce": 28_349_523_125, "ounces": 28_349_523_125,
		"lb": 453_592_370_000, "lbs": 453_592_370_000, "pound": 453_592_370_000, "pounds": 453_592_370_000,
	},
	kindPower: {
		"mw": 1, "milliwatt": 1, "milliwatts": 1,
		"w": 1e3, "watt": 1e3, "watts": 1e3,
		"kw": 1e6, "kilowatt": 1e6, "kilowatts": 1e6,
	},
	kindArea: {
		"um": 1, "\u00b5m": 1, "\u03bcm": 1, "micrometer": 1, "micrometers": 1, "micrometre": 1, "micrometres": 1,
		"mm": 1e6, "millimeter": 1e6, "millimeters": 1e6, "millimetre": 1e6, "millimetres": 1e6,
		"cm": 1e8, "centimeter": 1e8, "centimeters": 1e8, "centimetre": 1e8, "centimetres": 1e8,
		"m": 1e12, "meter": 1e12, "meters": 1e12, "metre": 1e12, "metres": 1e12,
		"in": 645_160_000, "inch": 645_160_000, "inches": 645_160_000,
		"ft": 92_903_040_000, "foot": 92_903_040_000, "feet": 92_903_040_000,
		"yd": 836_127_360_000, "yds": 836_127_360_000, "yard": 836_127_360_000, "yards": 836_127_360_000,
	},
}

var refVulgar = map[string]*big.Rat{
	"¼": big.NewRat(1, 4), "½": big.NewRat(1, 2), "¾": big.NewRat(3, 4), "⅐": big.NewRat(1, 7), "⅑": big.NewRat(1, 9),
	"⅒": big.NewRat(1, 10), "⅓": big.NewRat(1, 3), "⅔": big.NewRat(2, 3), "⅕": big.NewRat(1, 5), "⅖": big.NewRat(2, 5),
	"⅗": big.NewRat(3, 5), "⅘": big.NewRat(4, 5), "⅙": big.NewRat(1, 6), "⅚": big.NewRat(5, 6), "⅛": big.NewRat(1, 8),
	"⅜": big.NewRat(3, 8), "⅝": big.NewRat(5, 8), "⅞": big.NewRat(7, 8),
}

// refParse returns what s says, and whether it is read at all.
func refParse(k kind, s string) (v int64, read bool) {
	if len(s) > 64 {
		return 0, false
	}
	m := refSign.FindStringSubmatch(s)
	neg := m[1] == "-" || m[1] == "\u2212"
	s = s[len(m[0]):]
	total := new(big.Rat)
	var prev *big.Rat
	for {
		x, whole, n := refReadNumber(s)
		if x == nil {
			return 0, false
		}
		s = s[n:]
		unit, n := refReadUnit(k, s)
		if unit == nil {
			return 0, false
		}
		s = s[n:]
		x.Mul(x, unit)
		if prev != nil && (unit.Cmp(prev) >= 0 || x.Cmp(prev) >= 0) {
			return 0, false
		}
		prev = unit
		total.Add(total, x)
		if s = s[len(refGap.FindString(s)):]; s == "" {
			break
		}
		if !whole {
			return 0, false
		}
	}
	if neg {
		total.Neg(total)
	}
	n := refRound(total)
	return n.Int64(), n.IsInt64()
}

// refReadNumber reads a number and the joint after it.
func refReadNumber(s string) (x *big.Rat, whole bool, n int) {
	// A hyphen before a number joins it to the unit before it, if no space is near: the caller has skipped none then.
	m := refNumber.FindStringSubmatch(s)
	if m == nil {
		return nil, false, 0
	}
	joint := m[len(m)-1]
	if joint == "-" && !regexp.MustCompile("^[\u00b5\u03bcA-Za-z]").MatchString(s[len(m[0]):]) {
		return nil, false, 0
	}
	fits := true
	num := func(s string) *big.Rat {
		x, _ := new(big.Int).SetString("0"+s, 10)
		fits = fits && x.IsUint64()
		return new(big.Rat).SetInt(x)
	}
	switch {
	case m[2] != "":
		x, _ = new(big.Rat).SetString(m[1] + "." + m[2])
		num(m[1])
	case m[5] != "":
		a, b, c := num(m[3]), num(m[4]), num(m[5])
		if c.Sign() == 0 || b.Cmp(c) >= 0 {
			return nil, false, 0
		}
		x = a.Add(a, b.Quo(b, c))
	case m[7] != "":
		a, b := num(m[6]), num(m[7])
		if b.Sign() == 0 {
			return nil, false, 0
		}
		x = a.Quo(a, b)
	case m[9] != "":
		x = num(m[8])
		x.Add(x, refVulgar[m[9]])
	default:
		x, whole = num(m[10]), true
	}
	if !fits {
		return nil, false, 0
	}
	return x, whole, len(m[0])
}

// refReadUnit reads a unit, the period of an abbreviation, and a hyphen that joins it to the number after it.
func refReadUnit(k kind, s string) (unit *big.Rat, n int) {
	var word string
	if m := refMark.FindStringSubmatch(s); m != nil && k == kindLength {
		n = len(m[0])
		unit = big.NewRat(int64(Foot), 1)
		if m[1] != "" {
			unit = big.NewRat(int64(Inch), 1)
		}
	} else {
		if k == kindArea {
			m := refSquare.FindStringSubmatch(s)
			if m == nil {
				return nil, 0
			}
			n = len(m[0])
			word = m[1] + m[2] + m[3]
		} else {
			word = refWord.FindString(s)
			n = len(word)
		}
		if word == "MW" || word == "Mw" || word == "MG" || word == "Mg" {
			return nil, 0
		}
		size, found := refUnits[k][strings.ToLower(word)]
		if !found {
			return nil, 0
		}
		unit = big.NewRat(size, 1)
		if strings.HasPrefix(s[n:], ".") {
			n++
			if regexp.MustCompile("^[0-9]").MatchString(s[n:]) {
				return nil, 0
			}
		}
	}
	if m := regexp.MustCompile("^-(?:[0-9]|" + refFrac + ")").FindString(s[n:]); m != "" {
		n++
	}
	return unit, n
}

// refRound returns x rounded to a whole number, half away from zero.
func refRound(x *big.Rat) *big.Int {
	half := big.NewRat(int64(x.Sign()), 2)
	y := new(big.Rat).Add(x, half)
	return new(big.Int).Quo(y.Num(), y.Denom()) // truncates
}

var allKinds = []kind{kindLength, kindArea, kindMass, kindPower}

// edges are values where something may overflow.
var edges = []int64{
	0, 1, -1, 2, -2, math.MaxInt64, math.MinInt64, math.MaxInt64 - 1, math.MinInt64 + 1,
	int64(Foot), -int64(Foot), int64(Inch), int64(Inch) / 64, int64(Meter), int64(Meter) - 1, int64(Pound), int64(SquareFoot),
	1 << 53, 1<<53 + 1, 1 << 62, -1 << 62,
}
