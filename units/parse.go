package units

import (
	"math/bits"
	"strings"
	"unicode/utf8"
)

// maxText is the longest text a parser reads, in bytes.
const maxText = 64

// A fault is why a text was refused. Zero means that it was not.
type fault uint8

const (
	ok fault = iota
	faultEmpty
	faultTooLong
	faultNumber
	faultPoint
	faultPeriod
	faultDenominator
	faultMiddle
	faultNoUnit
	faultUnknownUnit
	faultSign
	faultComma
	faultExponent
	faultOrder
	faultCarry
	faultRange
)

// The reasons for which a text is refused.
var (
	errEmpty       = &reason{"empty", ErrSyntax}
	errTooLong     = &reason{"too long", ErrSyntax}
	errNoUnit      = &reason{"no unit", ErrSyntax}
	errUnknownUnit = &reason{"unknown unit", ErrName}
	errSign        = &reason{"misplaced sign", ErrSyntax}
	errComma       = &reason{"comma", ErrSyntax}
	errExponent    = &reason{"exponent", ErrSyntax}
	errOrder       = &reason{"units out of order", ErrSyntax}
	errCarry       = &reason{"part too large", ErrSyntax}
)

// faults gives each fault its error and what to write instead: with no text, a number and a unit of the kind.
var faults = [...]struct {
	err  error
	want string
}{
	faultEmpty:       {errEmpty, ""},
	faultTooLong:     {errTooLong, "at most 64 bytes"},
	faultNumber:      {ErrSyntax, ""},
	faultPoint:       {ErrSyntax, "a digit after the decimal point"},
	faultPeriod:      {ErrSyntax, "a space after the period of an abbreviation"},
	faultDenominator: {ErrSyntax, "a number from 1 up under the fraction"},
	faultMiddle:      {ErrSyntax, "decimals or a fraction in the last part only"},
	faultNoUnit:      {errNoUnit, ""},
	faultUnknownUnit: {errUnknownUnit, ""},
	faultSign:        {errSign, "at most one sign, in front"},
	faultComma:       {errComma, "a decimal point, and nothing between thousands or parts"},
	faultExponent:    {errExponent, "the number written out"},
	faultOrder:       {errOrder, "each unit smaller than the one before it"},
	faultCarry:       {errCarry, "each part smaller than one of what stands before it"},
	faultRange:       {ErrRange, ""},
}

// parse reads s as a whole number of the base units of k. An error keeps a copy of s, so that s does not
// escape and UnmarshalText need not allocate.
func parse(k kind, s string) (int64, error) {
	v, f := scan(k, s)
	if f != ok {
		return 0, parseError(k, f, s)
	}
	return v, nil
}

// scan reads [sign] part {part}. A part is a number and a unit.
func scan(k kind, s string) (int64, fault) {
	if len(s) > maxText {
		return 0, faultTooLong
	}
	i := skipSpace(s, 0)
	if i == len(s) {
		return 0, faultEmpty
	}
	neg := false
	if n := signLen(s, i); n > 0 {
		neg = s[i] != '+'
		i = skipSpace(s, i+n)
	}
	var total, prev uint64 // prev is the unit of the part before, 0 at the first
	for {
		p, end, f := scanPart(k, s, i)
		switch {
		case f != ok:
			return 0, f
		case prev != 0 && p.unit >= prev:
			return 0, faultOrder
		case prev != 0 && p.floor >= prev:
			return 0, faultCarry
		}
		total += p.floor + p.up // the first part is at most 1<<63, all others together less than its unit
		if i = skipJoint(s, end); i == len(s) {
			break
		}
		if p.broken {
			return 0, faultMiddle
		}
		prev = p.unit
	}
	v, fits := signed(total, neg)
	if !fits {
		return 0, faultRange
	}
	return v, ok
}

// A part is a number of one unit, all in base units.
type part struct {
	unit   uint64 // not 0
	floor  uint64 // the value rounded down, at most 1<<63
	up     uint64 // 1 if what was rounded away is half or more, else 0
	broken bool   // the number has decimals or a fraction
}

// scanPart reads the part at s[i:] and returns where it ends.
func scanPart(k kind, s string, i int) (p part, end int, f fault) {
	if unit, v, end := scanPlain(k, s, i); unit != 0 {
		return part{unit: unit, floor: v}, end, ok
	}
	var num number
	if i, f = num.scan(s, i); f != ok {
		return part{}, 0, f
	}
	p.unit, end, f = scanUnit(k, s, skipJoint(s, i))
	if f != ok {
		return part{}, 0, f
	}
	p.floor, p.up, f = num.times(s, p.unit)
	p.broken = num.broken()
	return p, end, f
}

// scanPlain reads the commonest kind of part faster: up to six digits, at most one space, and a unit of letters that
// [lookup] knows as it stands, before a space, a digit or the end. For any other it returns a unit of 0.
func scanPlain(k kind, s string, i int) (unit, v uint64, end int) {
	start := i
	for ; i < len(s) && isDigit(s[i]); i++ {
		v = 10*v + uint64(s[i]-'0')
	}
	if i == start || i > start+6 || k == kindArea {
		return 0, 0, 0
	}
	if i < len(s) && s[i] == ' ' {
		i++
	}
	end = i
	for end < len(s) && isLetter(s[end]) {
		end++
	}
	if end < len(s) && s[end] != ' ' && !isDigit(s[end]) {
		return 0, 0, 0
	}
	unit = lookup(k, s[i:end])
	return unit, v * unit, end
}

// A number is what stands before a unit: 7, 7.5, 1/2, 7 1/2.
type number struct {
	n        uint64 // the whole part
	num, den uint64 // the fraction, den 0 if there is none
	from, to int    // the digits after the point are s[from:to]
	big      bool   // n, num or den does not fit
}

func (x *number) broken() bool { return x.den != 0 || x.to != 0 }

// scan reads the number at s[i:] and returns where it ends.
func (x *number) scan(s string, i int) (int, fault) {
	start := i
	x.n, i = x.digits(s, i)
	switch {
	case i < len(s) && s[i] == '.':
		x.from = i + 1
		for i++; i < len(s) && isDigit(s[i]); i++ {
		}
		x.to = i
		if x.from == x.to {
			if x.from == start+1 {
				return 0, faultNumber
			}
			return 0, faultPoint
		}
	case i > start && slashLen(s, i) > 0:
		x.num, x.n = x.n, 0
		if i = x.denominator(s, i); i < 0 {
			return 0, faultDenominator
		}
	case i == start:
		num, den, n := vulgar(s, i)
		if n == 0 {
			return 0, faultAt(s, i)
		}
		x.num, x.den = num, den
		return i + n, ok
	default:
		j := skipJoint(s, i)
		if num, den, n := vulgar(s, j); n > 0 {
			x.num, x.den = num, den
			return j + n, ok
		}
		if j == i || j == len(s) || !isDigit(s[j]) {
			break
		}
		num, j := x.digits(s, j)
		if slashLen(s, j) == 0 {
			break // two numbers: the first has no unit
		}
		if j = x.denominator(s, j); j < 0 {
			return 0, faultDenominator
		}
		if x.num = num; num >= x.den && !x.big {
			return 0, faultCarry
		}
		i = j
	}
	if i < len(s) && s[i]|0x20 == 'e' {
		j := i + 1
		j += signLen(s, j)
		if j < len(s) && isDigit(s[j]) {
			return 0, faultExponent
		}
	}
	return i, ok
}

// digits reads the whole number at s[i:]. A number that does not fit in 64 bits sets x.big.
func (x *number) digits(s string, i int) (uint64, int) {
	var n uint64
	for ; i < len(s) && isDigit(s[i]); i++ {
		hi, lo := bits.Mul64(n, 10)
		sum, carry := bits.Add64(lo, uint64(s[i]-'0'), 0)
		if hi != 0 || carry != 0 {
			x.big = true
			continue
		}
		n = sum
	}
	return n, i
}

// denominator reads the slash and the digits at s[i:] into x.den and returns where they end, or -1.
func (x *number) denominator(s string, i int) int {
	i += slashLen(s, i)
	x.den, i = x.digits(s, i)
	if x.den == 0 {
		return -1
	}
	return i
}

// times returns x times unit, rounded down, and 1 if what is left over is half or more.
func (x *number) times(s string, unit uint64) (v, up uint64, f fault) {
	hi, v := bits.Mul64(x.n, unit)
	var q uint64
	switch {
	case x.den != 0:
		fhi, flo := bits.Mul64(x.num, unit)
		if fhi >= x.den {
			return 0, 0, faultRange
		}
		var r uint64
		if q, r = bits.Div64(fhi, flo, x.den); r >= x.den-r {
			up = 1
		}
	case x.to != 0:
		// From the last digit to the first, (digit*unit + rest)/10: each quotient drops only what
		// is below its last place, so the last quotient is exact and its remainder decides the rounding.
		var r uint64
		for j := x.to - 1; j >= x.from; j-- {
			q += uint64(s[j]-'0') * unit
			q, r = q/10, q%10
		}
		if r >= 5 {
			up = 1
		}
	}
	v, carry := bits.Add64(v, q, 0)
	if x.big || hi != 0 || carry != 0 || v > 1<<63 {
		return 0, 0, faultRange
	}
	return v, up, ok
}

// scanUnit reads the unit at s[i:] and returns its size in base units and where it ends.
func scanUnit(k kind, s string, i int) (unit uint64, end int, f fault) {
	if i == len(s) || isDigit(s[i]) {
		return 0, 0, faultNoUnit
	}
	end = wordEnd(s, i)
	if end == i {
		if k == kindLength {
			if unit, n := mark(s, i); n > 0 {
				return unit, i + n, ok
			}
		}
		if f = faultAt(s, i); f == faultNumber && s[i] != '.' && s[i] != '/' {
			f = faultUnknownUnit
		}
		return 0, 0, f
	}
	if k == kindArea {
		unit, end = areaUnit(s, i, end)
	} else {
		unit = fold(k, s[i:end])
	}
	if unit == 0 {
		return 0, 0, faultUnknownUnit
	}
	if end < len(s) && s[end] == '.' {
		end++
		if end < len(s) && isDigit(s[end]) {
			return 0, 0, faultPeriod
		}
	}
	return unit, end, ok
}

// areaUnit reads the rest of an area's unit that begins with the word s[i:end]: sq ft, square feet, sqft, ft2 or ft².
func areaUnit(s string, i, end int) (unit uint64, _ int) {
	word := s[i:end]
	switch {
	case strings.EqualFold(word, "sq") || strings.EqualFold(word, "square"):
		i = end
		if i < len(s) && s[i] == '.' {
			i++
		}
		if i = skipJoint(s, i); i == end && len(word) > len("sq") {
			return 0, 0 // squareµm is no word, nor is squareft
		}
		end = wordEnd(s, i)
		word = s[i:end]
	case len(word) > 2 && strings.EqualFold(word[:2], "sq"):
		word = word[2:]
	case end < len(s) && s[end] == '2':
		end++
	case strings.HasPrefix(s[end:], "²"):
		end += len("²")
	default:
		return 0, 0
	}
	unit = fold(kindLength, word)
	return unit * unit / 1_000_000, end // square nanometers to square micrometers; a square nanometer is none
}

// fold looks a unit up as it is written and then in lower case.
func fold(k kind, word string) uint64 {
	if unit := lookup(k, word); unit != 0 {
		return unit
	}
	var buf [len("centimeters")]byte // no name is longer
	if len(word) > len(buf) {
		return 0
	}
	if len(word) == 2 && word[0] == 'M' && k != kindLength {
		return 0 // MW and Mg say mega
	}
	for i := range len(word) {
		c := word[i]
		if 'A' <= c && c <= 'Z' {
			c |= 0x20
		}
		buf[i] = c
	}
	return lookup(k, string(buf[:len(word)]))
}

// lookup returns the size of a unit in base units, 0 if there is none of that name.
func lookup(k kind, word string) uint64 {
	switch k {
	case kindMass:
		switch word {
		case "lb", "lbs", "pound", "pounds":
			return uint64(Pound)
		case "oz", "ounce", "ounces":
			return uint64(Ounce)
		case "kg", "kilogram", "kilograms":
			return uint64(Kilogram)
		case "g", "gram", "grams":
			return uint64(Gram)
		case "mg", "milligram", "milligrams":
			return uint64(Gram / 1000)
		case "ng", "nanogram", "nanograms":
			return 1
		}
	case kindPower:
		switch word {
		case "W", "w", "watt", "watts":
			return uint64(Watt)
		case "kW", "kw", "kilowatt", "kilowatts":
			return 1_000 * uint64(Watt)
		case "mW", "mw", "milliwatt", "milliwatts":
			return uint64(Milliwatt)
		}
	default:
		switch word {
		case "ft", "foot", "feet":
			return uint64(Foot)
		case "in", "inch", "inches":
			return uint64(Inch)
		case "yd", "yds", "yard", "yards":
			return uint64(Yard)
		case "m", "meter", "meters", "metre", "metres":
			return uint64(Meter)
		case "cm", "centimeter", "centimeters", "centimetre", "centimetres":
			return uint64(Centimeter)
		case "mm", "millimeter", "millimeters", "millimetre", "millimetres":
			return uint64(Millimeter)
		case "um", "\u00b5m", "\u03bcm", "micrometer", "micrometers", "micrometre", "micrometres":
			return uint64(Millimeter / 1000)
		case "nm", "nanometer", "nanometers", "nanometre", "nanometres":
			return 1
		}
	}
	return 0
}

// mark reads a foot or inch mark at s[i:]: ' ’ ′ for feet, " ” ″ or two foot marks for inches.
func mark(s string, i int) (unit uint64, n int) {
	if n = footMark(s, i); n > 0 {
		if m := footMark(s, i+n); m > 0 {
			return uint64(Inch), n + m
		}
		return uint64(Foot), n
	}
	if s[i] == '"' {
		return uint64(Inch), 1
	}
	if strings.HasPrefix(s[i:], "″") || strings.HasPrefix(s[i:], "”") {
		return uint64(Inch), len("″")
	}
	return 0, 0
}

func footMark(s string, i int) int {
	if strings.HasPrefix(s[i:], "'") {
		return 1
	}
	if strings.HasPrefix(s[i:], "′") || strings.HasPrefix(s[i:], "’") {
		return len("′")
	}
	return 0
}

// vulgar reads a fraction that is one character, such as ½, and returns its length, 0 if there is none.
func vulgar(s string, i int) (num, den uint64, n int) {
	if i == len(s) || s[i] < utf8.RuneSelf {
		return 0, 0, 0
	}
	r, n := utf8.DecodeRuneInString(s[i:])
	switch r {
	case '¼':
		return 1, 4, n
	case '½':
		return 1, 2, n
	case '¾':
		return 3, 4, n
	case '⅐':
		return 1, 7, n
	case '⅑':
		return 1, 9, n
	case '⅒':
		return 1, 10, n
	case '⅓', '⅔':
		return uint64(r-'⅓') + 1, 3, n
	case '⅕', '⅖', '⅗', '⅘':
		return uint64(r-'⅕') + 1, 5, n
	case '⅙':
		return 1, 6, n
	case '⅚':
		return 5, 6, n
	case '⅛', '⅜', '⅝', '⅞':
		return 2*uint64(r-'⅛') + 1, 8, n
	}
	return 0, 0, 0
}

// skipSpace returns the first place from i on that is not space.
func skipSpace(s string, i int) int {
	if i == len(s) || ' ' < s[i] && s[i] < utf8.RuneSelf {
		return i
	}
	return skipSpaces(s, i)
}

func skipSpaces(s string, i int) int {
	for i < len(s) {
		switch c := s[i]; {
		case c == ' ' || '\t' <= c && c <= '\r':
			i++
		case c < utf8.RuneSelf:
			return i
		case strings.HasPrefix(s[i:], "\u00a0"): // no-break space
			i += len("\u00a0")
		case strings.HasPrefix(s[i:], "\u2009"), strings.HasPrefix(s[i:], "\u202f"): // thin spaces
			i += len("\u2009")
		default:
			return i
		}
	}
	return i
}

// skipJoint skips what may stand between two words of a value: space, or one hyphen with no space on either side.
func skipJoint(s string, i int) int {
	// The two commonest cases, for speed.
	if i == len(s) || isDigit(s[i]) || isLetter(s[i]) {
		return i
	}
	if i+1 < len(s) && s[i] == ' ' && (isDigit(s[i+1]) || isLetter(s[i+1])) {
		return i + 1
	}
	if i+1 < len(s) && s[i] == '-' {
		if _, _, n := vulgar(s, i+1); n > 0 || isDigit(s[i+1]) || wordEnd(s, i+1) > i+1 {
			return i + 1
		}
		return i
	}
	return skipSpace(s, i)
}

// wordEnd returns the end of the letters at s[i:], of which the first may be the micro sign.
func wordEnd(s string, i int) int {
	if i < len(s) && s[i] >= utf8.RuneSelf && (strings.HasPrefix(s[i:], "\u00b5") || strings.HasPrefix(s[i:], "\u03bc")) {
		i += len("\u00b5")
	}
	for i < len(s) && isLetter(s[i]) {
		i++
	}
	return i
}

// signLen returns the length of the sign at s[i:], 0 if there is none.
func signLen(s string, i int) int {
	if i < len(s) && (s[i] == '-' || s[i] == '+') {
		return 1
	}
	if strings.HasPrefix(s[i:], "\u2212") { // minus sign
		return len("\u2212")
	}
	return 0
}

// slashLen returns the length of the slash at s[i:], 0 if there is none.
func slashLen(s string, i int) int {
	if strings.HasPrefix(s[i:], "/") {
		return 1
	}
	if strings.HasPrefix(s[i:], "\u2044") { // fraction slash
		return len("\u2044")
	}
	return 0
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }

// faultAt says what is wrong with the character at s[i:], where a number or a unit should stand.
func faultAt(s string, i int) fault {
	switch {
	case signLen(s, i) > 0:
		return faultSign
	case strings.HasPrefix(s[i:], ","):
		return faultComma
	}
	return faultNumber
}

// parseError returns the error for a text that was refused because of f.
func parseError(k kind, f fault, s string) error {
	want := faults[f].want
	switch {
	case f == faultUnknownUnit:
		want = kinds[k].units
	case f == faultRange:
		want = k.limits()
	case want == "":
		want = "a number and a unit, such as " + kinds[k].such
		if f == faultNoUnit && k == kindLength && strings.ContainsAny(s, "'’′") {
			want += ` or 7'6"` // the mark for inches is often left out
		}
	}
	return &Error{Func: "units.Parse" + kinds[k].name, Field: "text", Value: strings.Clone(clip(s)), Want: want, Err: faults[f].err}
}

// clip cuts a text that is too long to show in an error.
func clip(s string) string {
	if len(s) > maxText {
		return s[:maxText] + "..."
	}
	return s
}
