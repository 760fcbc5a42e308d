package units

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// readings are texts that are read, and as what. The values are worked by hand from the definitions of the units.
var readings = []struct {
	kind   kind
	text   string
	want   int64
	reason string
}{
	{kindLength, "7 ft 6 in", 2_286_000_000, "2.286 m by definition"},
	{kindLength, "7ft6in", 2_286_000_000, "no space"},
	{kindLength, `7'6"`, 2_286_000_000, "typewriter marks"},
	{kindLength, "7′6″", 2_286_000_000, "primes"},
	{kindLength, "7’6”", 2_286_000_000, "marks as a word processor changes them"},
	{kindLength, "7' 6''", 2_286_000_000, "two foot marks for inches"},
	{kindLength, "7′ 6′′", 2_286_000_000, "two primes for inches"},
	{kindLength, `7'-6"`, 2_286_000_000, "hyphen as on drawings"},
	{kindLength, "7 ft-6 in", 2_286_000_000, "hyphen between parts"},
	{kindLength, "7-ft-6-in", 2_286_000_000, "hyphens everywhere"},
	{kindLength, "7-foot", 2_133_600_000, "hyphen as in a 7-foot tree"},
	{kindLength, "-7'-6\"", -2_286_000_000, "the hyphen is no second sign"},
	{kindLength, "7.5 ft", 2_286_000_000, "decimal"},
	{kindLength, "7.50ft", 2_286_000_000, "closing zero"},
	{kindLength, "07.5 ft", 2_286_000_000, "leading zero"},
	{kindLength, ".5 ft", 152_400_000, "nothing before the point"},
	{kindLength, "2 YARDS", 1_828_800_000, "3 ft a yard, in capitals"},
	{kindMass, "4 OZ", 113_398_092_500, "28.349523125 g an ounce, in capitals"},
	{kindLength, "7 1/2 ft", 2_286_000_000, "mixed number"},
	{kindLength, "7½ ft", 2_286_000_000, "one-character fraction"},
	{kindLength, "7 ½ ft", 2_286_000_000, "and space"},
	{kindLength, "7-½ ft", 2_286_000_000, "and hyphen"},
	{kindLength, "½ ft", 152_400_000, "fraction alone"},
	{kindLength, "½-ft", 152_400_000, "fraction alone and hyphen"},
	{kindLength, "7-1/2 in", 190_500_000, "hyphen in a mixed number"},
	{kindLength, "7 ft 6 1/2 in", 2_298_700_000, "fraction in the last part"},
	{kindLength, "7 ft ½ in", 2_146_300_000, "fraction alone in the last part"},
	{kindLength, "7 ft 1/2 in", 2_146_300_000, "fraction alone in the last part"},
	{kindLength, "7 ft-½ in", 2_146_300_000, "hyphen before a one-character fraction"},
	{kindLength, "7 ft .5 in", 2_146_300_000, "decimal in the last part"},
	{kindLength, "7 1⁄2 in", 190_500_000, "fraction slash"},
	{kindLength, "3/2 ft", 457_200_000, "improper fraction"},
	{kindLength, "1/1 ft", 304_800_000, "fraction that is whole"},
	{kindLength, "0/5 ft", 0, "fraction that is nothing"},
	{kindLength, "1 0/5 ft", 304_800_000, "part fraction that is nothing"},
	{kindLength, "1 4/5 ft", 548_640_000, "just below a whole one more"},
	{kindLength, "90in", 2_286_000_000, ""},
	{kindLength, "2 yd 1 ft", 2_133_600_000, "6 ft + 1 ft"},
	{kindLength, "1 yd 2 ft 11 in", 1_803_400_000, "three parts: 71 in"},
	{kindLength, "2.3 m", 2_300_000_000, ""},
	{kindLength, "230 cm", 2_300_000_000, ""},
	{kindLength, "1 m 20 cm 5 mm", 1_205_000_000, ""},
	{kindLength, "5 um", 5_000, ""},
	{kindLength, "5 \u00b5m", 5_000, "micro sign"},
	{kindLength, "5\u03bcm", 5_000, "Greek mu"},
	{kindLength, "5-\u03bcM", 5_000, "Greek mu, hyphen, capital"},
	{kindLength, "5 nm", 5, ""},
	{kindLength, "5 MM", 5_000_000, "in capitals; no length here is said in mega"},
	{kindLength, "230 CENTIMETERS", 2_300_000_000, "the longest name, in capitals"},
	{kindLength, "5 Micrometres", 5_000, "the longest name, with a capital"},
	{kindLength, "1 m 1 yd", 1_914_400_000, "a yard is shorter than a meter"},
	{kindLength, "7 FT 6 IN", 2_286_000_000, "upper case"},
	{kindLength, "7 Feet 6 Inches", 2_286_000_000, "words"},
	{kindLength, "1 foot 1 inch", 330_200_000, "words, one"},
	{kindLength, "1 yard", 914_400_000, ""},
	{kindLength, "2 Yards", 1_828_800_000, ""},
	{kindLength, "2 yds", 1_828_800_000, ""},
	{kindLength, "7 ft. 6 in.", 2_286_000_000, "periods"},
	{kindLength, "7ft.-6in.", 2_286_000_000, "period and hyphen"},
	{kindLength, "  7 ft   6 in\t\n", 2_286_000_000, "space around and between"},
	{kindLength, "\u00a07\u202fft\u20096\v\f\r\tin\u00a0", 2_286_000_000, "other space"},
	{kindLength, "-7 ft 6 in", -2_286_000_000, "the sign is for the whole"},
	{kindLength, " - 7 ft 6 in", -2_286_000_000, "space after the sign"},
	{kindLength, "\u22127 ft 6 in", -2_286_000_000, "minus sign"},
	{kindLength, "+7 ft 6 in", 2_286_000_000, ""},
	{kindLength, "0 ft", 0, ""},
	{kindLength, "-0 ft", 0, "no negative zero"},
	{kindLength, "7 ft 11.99999999999999999999 in", 2_438_400_000, "below 12 in, but the nearest nanometer is 8 ft"},
	{kindLength, "7 ft 11 63/64 in", 2_438_003_125, "8 ft less 396,875 nm"},
	{kindLength, "0.4999999999999999999999999999 nm", 0, "just below half"},
	{kindLength, "0.5 nm", 1, "half goes away from zero"},
	{kindLength, "-0.5 nm", -1, "half goes away from zero"},
	{kindLength, "1.49 nm", 1, "last digits do not carry"},
	{kindLength, "0.00000000049 m", 0, "0.49 nm"},
	{kindLength, "0.0000000005 m", 1, "0.5 nm"},
	{kindLength, "1/2 nm", 1, "half goes away from zero"},
	{kindLength, "1/3 nm", 0, "below half"},
	{kindLength, "2/3 nm", 1, "above half"},
	{kindLength, "1/3 in", 8_466_667, "8,466,666.67 nm"},
	{kindLength, "1/3 ft", 101_600_000, "4 in"},
	{kindLength, "9223372036854775807 nm", math.MaxInt64, "the longest"},
	{kindLength, "+9223372036.854775807 m", math.MaxInt64, "the longest"},
	{kindLength, "9223372036.8547758074999999 m", math.MaxInt64, "rounds down to the longest"},
	{kindLength, "-9223372036854775808 nm", math.MinInt64, "the most negative"},
	{kindLength, "-9223372036.8547758084 m", math.MinInt64, "rounds to the most negative"},
	{kindLength, "1844674407370955161/18446744073709551615 m", 100_000_000, "as large as a fraction may be: one tenth, nearly"},
	{kindLength, "123456 ft", 37_629_388_800_000, "six digits"},
	{kindLength, "1234567 ft", 376_296_021_600_000, "seven digits"},

	{kindArea, "12 sq ft", 1_114_836_480_000, "12 · 0.3048² m²"},
	{kindArea, "12 SQ FT", 1_114_836_480_000, ""},
	{kindArea, "12 square feet", 1_114_836_480_000, ""},
	{kindArea, "12 Square-Feet", 1_114_836_480_000, ""},
	{kindArea, "12 sq. ft.", 1_114_836_480_000, ""},
	{kindArea, "12 sq.ft.", 1_114_836_480_000, ""},
	{kindArea, "12 sq.-ft", 1_114_836_480_000, ""},
	{kindArea, "12sqft", 1_114_836_480_000, ""},
	{kindArea, "12 ft2", 1_114_836_480_000, ""},
	{kindArea, "12 ft²", 1_114_836_480_000, ""},
	{kindArea, "12 feet²", 1_114_836_480_000, ""},
	{kindArea, "12 sq ft 72 sq in", 1_161_288_000_000, "12.5 sq ft"},
	{kindArea, "12ft272in2", 1_161_288_000_000, "the 2 belongs to the unit"},
	{kindArea, "12ft²72in²", 1_161_288_000_000, ""},
	{kindArea, "12.5 sq ft", 1_161_288_000_000, ""},
	{kindArea, "1 sq in", 645_160_000, "2.54² cm²"},
	{kindArea, "1 sq yd", 836_127_360_000, "0.9144² m²"},
	{kindArea, "2 m2", 2_000_000_000_000, ""},
	{kindArea, "1 cm²", 100_000_000, ""},
	{kindArea, "1 sq mm", 1_000_000, ""},
	{kindArea, "1 \u00b5m²", 1, ""},
	{kindArea, "1 sq \u03bcm", 1, ""},
	{kindArea, "1 sq\u03bcm", 1, "together, as sqft is"},
	{kindArea, "0.5 sq um", 1, "half goes away from zero"},
	{kindArea, "-9223372.036854775808 m²", math.MinInt64, ""},

	{kindMass, "3 lb 4 oz", 1_474_175_202_500, "52 · 28,349,523,125 ng"},
	{kindMass, "3 lbs. 4 oz.", 1_474_175_202_500, ""},
	{kindMass, "3 Pounds 4 Ounces", 1_474_175_202_500, ""},
	{kindMass, "3.25 lb", 1_474_175_202_500, ""},
	{kindMass, "1 pound 1 ounce", 481_941_893_125, ""},
	{kindMass, "½ oz", 14_174_761_563, "half a nanogram goes away from zero"},
	{kindMass, "1.5 kg", 1_500_000_000_000, ""},
	{kindMass, "1 kilogram 250 grams", 1_250_000_000_000, ""},
	{kindMass, "2 kilograms", 2_000_000_000_000, ""},
	{kindMass, "1 KG", 1_000_000_000_000, ""},
	{kindMass, "1 gram", 1_000_000_000, ""},
	{kindMass, "1 G", 1_000_000_000, ""},
	{kindMass, "500 mg", 500_000_000, ""},
	{kindMass, "500 Milligrams", 500_000_000, ""},
	{kindMass, "500 mG", 500_000_000, ""},
	{kindMass, "1 milligram", 1_000_000, ""},
	{kindMass, "7 ng", 7, ""},
	{kindMass, "1 nanogram", 1, ""},
	{kindMass, "7 nanograms", 7, ""},

	{kindPower, "175 W", 175_000, ""},
	{kindPower, "175w", 175_000, ""},
	{kindPower, "175 watts", 175_000, ""},
	{kindPower, "1 Watt", 1_000, ""},
	{kindPower, "4.8 W", 4_800, ""},
	{kindPower, "1.5 kW", 1_500_000, ""},
	{kindPower, "1.5 KW", 1_500_000, ""},
	{kindPower, "1.5 kw", 1_500_000, ""},
	{kindPower, "1 kilowatt 250 watts", 1_250_000, ""},
	{kindPower, "2 kilowatts", 2_000_000, ""},
	{kindPower, "70 mW", 70, ""},
	{kindPower, "70 mw", 70, ""},
	{kindPower, "1 milliwatt", 1, ""},
	{kindPower, "2 Milliwatts", 2, ""},
	{kindPower, "0.0005 W", 1, "half goes away from zero"},
}

// refusals are texts that are not read, and why.
var refusals = []struct {
	kind   kind
	text   string
	err    error
	reason string
}{
	{kindLength, "", errEmpty, ""},
	{kindLength, " \t\u00a0", errEmpty, "only space"},
	{kindLength, strings.Repeat("0", 60) + "7 ft ", errTooLong, "65 bytes"},
	{kindLength, strings.Repeat("7", 1000), errTooLong, ""},
	{kindLength, "7", errNoUnit, "bare number"},
	{kindLength, " 7.5 ", errNoUnit, ""},
	{kindLength, "7-", errSign, "a hyphen that joins nothing"},
	{kindLength, "0", errNoUnit, "zero has a unit too"},
	{kindLength, "1/2", errNoUnit, ""},
	{kindLength, "½", errNoUnit, ""},
	{kindLength, "7½", errNoUnit, ""},
	{kindLength, "7'6", errNoUnit, "inches without their mark"},
	{kindLength, "7 ft 6", errNoUnit, ""},
	{kindLength, "7 9 ft", errNoUnit, "two numbers"},
	{kindLength, "7-9 ft", errNoUnit, "a span"},
	{kindLength, "7.5 1/2 ft", errNoUnit, "decimals and a fraction"},
	{kindLength, "7 furlongs", errUnknownUnit, ""},
	{kindLength, "7 km", errUnknownUnit, ""},
	{kindLength, "7 lb", errUnknownUnit, "a mass"},
	{kindLength, "7 e3", errUnknownUnit, "no exponent after a space"},
	{kindLength, "7e", errUnknownUnit, "no digit, so no exponent"},
	{kindLength, "7e+", errUnknownUnit, ""},
	{kindLength, "7e+x", errUnknownUnit, ""},
	{kindLength, "7 $", errUnknownUnit, ""},
	{kindLength, "7 ¼x", errUnknownUnit, ""},
	{kindLength, "7 µ", errUnknownUnit, ""},
	{kindLength, "7 фт", errUnknownUnit, "not Latin"},
	{kindLength, "7 f\u212a", errUnknownUnit, "the Kelvin sign folds to k, but not here"},
	{kindLength, "7 abcdefghijk", errUnknownUnit, "as long as the longest name"},
	{kindLength, "7 abcdefghijkl", errUnknownUnit, "longer than any name"},
	{kindLength, "7 MW", errUnknownUnit, ""},
	{kindLength, "7 sq ft", errUnknownUnit, "an area"},
	{kindLength, "--7 ft", errSign, ""},
	{kindLength, "+-7 ft", errSign, ""},
	{kindLength, "-+7 ft", errSign, ""},
	{kindLength, "\u2212\u22127 ft", errSign, ""},
	{kindLength, "-7 ft -6 in", errSign, ""},
	{kindLength, "7 ft -6 in", errSign, ""},
	{kindLength, "7 ft - 6 in", errSign, ""},
	{kindLength, "7 ft- 6 in", errSign, ""},
	{kindLength, "7 ft +6 in", errSign, ""},
	{kindLength, "7 ft-.5 in", errSign, "a hyphen does not join a point"},
	{kindLength, "7 -ft", errSign, ""},
	{kindLength, "7--1/2 in", errSign, ""},
	{kindLength, "7 -1/2 in", errSign, ""},
	{kindLength, "7-'", errSign, "a hyphen does not join a mark"},
	{kindLength, "7,5 ft", errComma, ""},
	{kindLength, "1,000 ft", errComma, ""},
	{kindLength, "7 ft, 6 in", errComma, ""},
	{kindLength, ",5 ft", errComma, ""},
	{kindLength, "1e3 ft", errExponent, ""},
	{kindLength, "1E3 ft", errExponent, ""},
	{kindLength, "1e+3 ft", errExponent, ""},
	{kindLength, "1.5e-3 ft", errExponent, ""},
	{kindLength, "1e3", errExponent, ""},
	{kindLength, "1/2e3 ft", errExponent, ""},
	{kindLength, "6 in 7 ft", errOrder, ""},
	{kindLength, "7 ft 7 ft", errOrder, "the same unit twice"},
	{kindLength, "7 ft 2 yd", errOrder, ""},
	{kindLength, "1 yd 1 m", errOrder, "a meter is longer than a yard"},
	{kindLength, "7 ft 14 in", errCarry, "likelier a slip than a length"},
	{kindLength, "7 ft 12 in", errCarry, "exactly one foot"},
	{kindLength, "2 yd 7 ft", errCarry, ""},
	{kindLength, "0 ft 12 in", errCarry, ""},
	{kindLength, "7 3/2 ft", errCarry, "a fraction of one or more beside a whole number"},
	{kindLength, "7 2/2 ft", errCarry, ""},
	{kindLength, "7 ft 13 1/2 in", errCarry, ""},
	{kindLength, "7.5 ft 6 in", ErrSyntax, "decimals before the last part"},
	{kindLength, "7.0 ft 6 in", ErrSyntax, "decimals before the last part"},
	{kindLength, "½ ft 1 in", ErrSyntax, "fraction before the last part"},
	{kindLength, "7 1/2 ft 1 in", ErrSyntax, "fraction before the last part"},
	{kindLength, "7. ft", ErrSyntax, "no digit after the point"},
	{kindLength, "7.", ErrSyntax, ""},
	{kindLength, ".", ErrSyntax, ""},
	{kindLength, ". ft", ErrSyntax, ""},
	{kindLength, "7.5.2 ft", ErrSyntax, "two points"},
	{kindLength, "7.5/2 ft", ErrSyntax, ""},
	{kindLength, "7 1/2/3 ft", ErrSyntax, ""},
	{kindLength, "7 ft.6 in", ErrSyntax, "7 ft. 6 in or 7 ft 0.6 in"},
	{kindLength, "1/0 ft", ErrSyntax, "division by zero"},
	{kindLength, "7 1/0 ft", ErrSyntax, ""},
	{kindLength, "0/0 ft", ErrSyntax, ""},
	{kindLength, "1/ ft", ErrSyntax, ""},
	{kindLength, "1/", ErrSyntax, ""},
	{kindLength, "7 1/x ft", ErrSyntax, ""},
	{kindLength, "/2 ft", ErrSyntax, ""},
	{kindLength, "ft", ErrSyntax, "no number"},
	{kindLength, "ft 7", ErrSyntax, ""},
	{kindLength, "-", ErrSyntax, ""},
	{kindLength, "'", ErrSyntax, ""},
	{kindLength, "seven ft", ErrSyntax, ""},
	{kindLength, "7 ft x", ErrSyntax, ""},
	{kindLength, "7 ft..", ErrSyntax, ""},
	{kindLength, "7'.", ErrSyntax, "no period after a mark"},
	{kindLength, "7 ft\x00", ErrSyntax, ""},
	{kindLength, "7 ft \xff", ErrSyntax, "not UTF-8"},
	{kindLength, "7 ft \u2212", errSign, ""},
	{kindLength, "٧ ft", ErrSyntax, "digits of other scripts"},
	{kindLength, "9223372036854775808 nm", ErrRange, "one too many"},
	{kindLength, "-9223372036854775809 nm", ErrRange, "one too many"},
	{kindLength, "9223372036.8547758075 m", ErrRange, "rounds to one too many"},
	{kindLength, "-9223372036.8547758085 m", ErrRange, "rounds to one too many"},
	{kindLength, "18446744073709551615 nm", ErrRange, "the largest of 64 bits"},
	{kindLength, "18446744073709551616 nm", ErrRange, "one more"},
	{kindLength, "18446744073709551626 nm", ErrRange, "ten more"},
	{kindLength, "99999999999999999999999999 ft", ErrRange, ""},
	{kindLength, "99999999999999999999999999.5 ft", ErrRange, ""},
	{kindLength, "30261192000 ft 1 in", ErrRange, "the first part does not fit: 9,223,411,321.6 m"},
	{kindLength, "60518980 ft 99999999999999999999 in", ErrRange, "the second part does not fit"},
	{kindLength, "1/99999999999999999999 ft", ErrRange, "a denominator over 64 bits"},
	{kindLength, "99999999999999999999/100000000000000000000 ft", ErrRange, "both over 64 bits"},
	{kindLength, "7 99999999999999999999/3 ft", ErrRange, "a numerator over 64 bits"},
	{kindLength, "18446744073709551615/1 ft", ErrRange, ""},
	{kindLength, "18446744074/1 m", ErrRange, "2⁶⁴ nanometers and a little"},
	{kindLength, "9223372036854775807/1 m", ErrRange, "above 64 bits in nanometers"},
	{kindLength, "18446744073709551615 1/2 nm", ErrRange, ""},
	{kindLength, "18446744073 9/10 m", ErrRange, "the sum is over 64 bits"},

	{kindArea, "12", errNoUnit, ""},
	{kindArea, "12 ft", errUnknownUnit, "a length"},
	{kindArea, "12 sq", errUnknownUnit, ""},
	{kindArea, "12 sq.", errUnknownUnit, ""},
	{kindArea, "12 square", errUnknownUnit, ""},
	{kindArea, "12 sq 2", errUnknownUnit, ""},
	{kindArea, "12 sq2", errUnknownUnit, ""},
	{kindArea, "12 squareft", errUnknownUnit, ""},
	{kindArea, "12 sq lb", errUnknownUnit, ""},
	{kindArea, "12 sq '", errUnknownUnit, ""},
	{kindArea, "12'", errUnknownUnit, "a mark is a length"},
	{kindArea, "1 sq nm", errUnknownUnit, "below a square micrometer"},
	{kindArea, "1 nm2", errUnknownUnit, ""},
	{kindArea, "12 ft3", errUnknownUnit, "a volume"},
	{kindArea, "12 sqft2", errNoUnit, ""},
	{kindArea, "12 square\u00b5m", errUnknownUnit, ""},
	{kindArea, "12 sq ft 144 sq in", errCarry, ""},
	{kindArea, "1 sq in 1 sq ft", errOrder, ""},
	{kindArea, "9223372.036854775808 m²", ErrRange, ""},

	{kindMass, "3", errNoUnit, ""},
	{kindMass, "3 ft", errUnknownUnit, ""},
	{kindMass, "3 Mg", errUnknownUnit, "megagram"},
	{kindMass, "3 MG", errUnknownUnit, "megagram"},
	{kindMass, "3'", errUnknownUnit, ""},
	{kindMass, "3 lb 16 oz", errCarry, ""},
	{kindMass, "4 oz 3 lb", errOrder, ""},
	{kindMass, "9223372.036854775808 kg", ErrRange, ""},

	{kindPower, "175", errNoUnit, ""},
	{kindPower, "3 MW", errUnknownUnit, "megawatt"},
	{kindPower, "3 Mw", errUnknownUnit, "megawatt"},
	{kindPower, "3 hp", errUnknownUnit, ""},
	{kindPower, "1 kW 1000 W", errCarry, ""},
	{kindPower, "5 W 1 kW", errOrder, ""},
	{kindPower, "9223372036854775.808 W", ErrRange, ""},
}

// textOf wraps one of the four types in what all of them do with text, so that one table tests them all.
type textOf struct {
	parse     func(string) (int64, error)
	unmarshal func([]byte) (int64, error) // on a value that held 42
	text      func(int64) (string, []byte)
}

func ops[Q Quantity](
	parse func(string) (Q, error), text func(Q) (string, []byte), unmarshal func(*Q, []byte) error,
) textOf {
	return textOf{
		func(s string) (int64, error) { v, err := parse(s); return int64(v), err },
		func(b []byte) (int64, error) { v := Q(42); err := unmarshal(&v, b); return int64(v), err },
		func(v int64) (string, []byte) { return text(Q(v)) },
	}
}

func text[Q interface {
	Quantity
	fmt.Stringer
	MarshalText() ([]byte, error)
}](q Q) (string, []byte) {
	m, err := q.MarshalText()
	if err != nil {
		panic(err)
	}
	return q.String(), m
}

var texts = []textOf{
	kindLength: ops(ParseLength, text[Length], (*Length).UnmarshalText),
	kindArea:   ops(ParseArea, text[Area], (*Area).UnmarshalText),
	kindMass:   ops(ParseMass, text[Mass], (*Mass).UnmarshalText),
	kindPower:  ops(ParsePower, text[Power], (*Power).UnmarshalText),
}

func TestParseReads(t *testing.T) {
	for _, tt := range readings {
		got, err := texts[tt.kind].parse(tt.text)
		if err != nil || got != tt.want {
			t.Errorf("%d: parse(%q) = %d, %v; want %d (%s)", tt.kind, tt.text, got, err, tt.want, tt.reason)
		}
		if got, err := texts[tt.kind].unmarshal([]byte(tt.text)); err != nil || got != tt.want {
			t.Errorf("%d: unmarshal(%q) = %d, %v; want %d", tt.kind, tt.text, got, err, tt.want)
		}
		if got, read := refParse(tt.kind, tt.text); !read || got != tt.want {
			t.Errorf("%d: the reference reads %q as %d, %t; want %d", tt.kind, tt.text, got, read, tt.want)
		}
	}
}

// TestVulgar reads every fraction that Unicode has as one character with a numerator, U+00BC to U+00BE and U+2150 to U+215E,
// but the ones with a zero: ↉ is none of them. The values are in the characters' names, as "vulgar fraction three quarters".
func TestVulgar(t *testing.T) {
	for r := rune(0xa0); r < 0x3000; r++ {
		want := refVulgar[string(r)]
		got, err := ParseLength(string(r) + " m")
		if (want == nil) != (err != nil) {
			t.Errorf("%q m: %d, %v", r, got, err)
		}
		if want == nil {
			continue
		}
		nm := refRound(new(big.Rat).Mul(want, big.NewRat(1_000_000_000, 1)))
		if int64(got) != nm.Int64() {
			t.Errorf("%q m is %d nm, want %v", r, got, nm)
		}
		if got, err := ParseLength("2" + string(r) + " m"); err != nil || int64(got) != 2_000_000_000+nm.Int64() {
			t.Errorf("2%q m is %d nm, %v; want 2 m more than %v nm", r, got, err, nm)
		}
	}
	if len(refVulgar) != 18 {
		t.Errorf("%d fractions, want 18", len(refVulgar))
	}
}

func TestParseRefuses(t *testing.T) {
	for _, tt := range refusals {
		got, err := texts[tt.kind].parse(tt.text)
		if !errors.Is(err, tt.err) || got != 0 {
			t.Errorf("%d: parse(%q) = %d, %v; want 0, %v (%s)", tt.kind, tt.text, got, err, tt.err, tt.reason)
		}
		if got, err2 := texts[tt.kind].unmarshal([]byte(tt.text)); got != 42 || err2 == nil || err == nil || err2.Error() != err.Error() {
			t.Errorf("%d: unmarshal(%q) = %d, %v; want 42, unchanged, and %v", tt.kind, tt.text, got, err2, err)
		}
		func() {
			defer func() {
				if e, isError := recover().(error); !isError || !errors.Is(e, tt.err) {
					t.Errorf("%d: must(%q) panics with %v, want %v", tt.kind, tt.text, e, tt.err)
				}
			}()
			Must(texts[tt.kind].parse(tt.text))
		}()
		if got, read := refParse(tt.kind, tt.text); read {
			t.Errorf("%d: the reference reads %q as %d", tt.kind, tt.text, got)
		}
	}
}

// TestParseError checks the whole text of an error of each kind and cause.
func TestParseError(t *testing.T) {
	long := strings.Repeat("7", 65)
	for _, tt := range []struct {
		kind kind
		text string
		want string
	}{
		{kindLength, "7", `units.ParseLength: text "7": no unit: want a number and a unit, such as 7 ft 6 in`},
		{kindLength, "7'6", `units.ParseLength: text "7'6": no unit: want a number and a unit, such as 7 ft 6 in or 7'6"`},
		{kindLength, "7′6", `units.ParseLength: text "7′6": no unit: want a number and a unit, such as 7 ft 6 in or 7'6"`},
		{kindArea, "7", `units.ParseArea: text "7": no unit: want a number and a unit, such as 12 sq ft`},
		{kindMass, "7", `units.ParseMass: text "7": no unit: want a number and a unit, such as 3 lb 4 oz`},
		{kindPower, "7", `units.ParsePower: text "7": no unit: want a number and a unit, such as 175 W`},
		{kindLength, "", `units.ParseLength: text "": empty: want a number and a unit, such as 7 ft 6 in`},
		{kindLength, long, `units.ParseLength: text "` + long[:64] + `...": too long: want at most 64 bytes`},
		{kindLength, "x", `units.ParseLength: text "x": not understood: want a number and a unit, such as 7 ft 6 in`},
		{kindLength, "7. ft", `units.ParseLength: text "7. ft": not understood: want a digit after the decimal point`},
		{kindLength, "7 ft.6 in", `units.ParseLength: text "7 ft.6 in": not understood: want a space after the period of an abbreviation`},
		{kindLength, "1/0 ft", `units.ParseLength: text "1/0 ft": not understood: want a number from 1 up under the fraction`},
		{kindLength, "½ ft 1 in", `units.ParseLength: text "½ ft 1 in": not understood: want decimals or a fraction in the last part only`},
		{kindLength, "7 x", `units.ParseLength: text "7 x": unknown unit: want one of yd, ft, in, m, cm, mm, um, nm`},
		{kindArea, "7 x", `units.ParseArea: text "7 x": unknown unit: want one of sq yd, sq ft, sq in, sq m, sq cm, sq mm, sq um`},
		{kindMass, "7 x", `units.ParseMass: text "7 x": unknown unit: want one of lb, oz, kg, g, mg, ng`},
		{kindPower, "7 x", `units.ParsePower: text "7 x": unknown unit: want one of kW, W, mW`},
		{kindLength, "--7 ft", `units.ParseLength: text "--7 ft": misplaced sign: want at most one sign, in front`},
		{kindLength, "7,5 ft", `units.ParseLength: text "7,5 ft": comma: want a decimal point, and nothing between thousands or parts`},
		{kindLength, "1e3 ft", `units.ParseLength: text "1e3 ft": exponent: want the number written out`},
		{kindLength, "6 in 7 ft", `units.ParseLength: text "6 in 7 ft": units out of order: want each unit smaller than the one before it`},
		{kindLength, "7 ft 14 in", `units.ParseLength: text "7 ft 14 in": part too large: want each part smaller than one of what stands before it`},
		{kindLength, "1" + long[:20] + " m", `units.ParseLength: text "177777777777777777777 m": out of range: want -9223372036.854775808 m to 9223372036.854775807 m`},
		{kindArea, "9999999999 m2", `units.ParseArea: text "9999999999 m2": out of range: want -9223372.036854775808 m² to 9223372.036854775807 m²`},
		{kindMass, "9999999999 kg", `units.ParseMass: text "9999999999 kg": out of range: want -9223372.036854775808 kg to 9223372.036854775807 kg`},
		{kindPower, "9999999999999999 kW", `units.ParsePower: text "9999999999999999 kW": out of range: want -9223372036854775.808 W to 9223372036854775.807 W`},
	} {
		_, err := texts[tt.kind].parse(tt.text)
		if err == nil || err.Error() != tt.want {
			t.Errorf("parse(%q): %v\nwant %s", tt.text, err, tt.want)
		}
		var e *Error
		if !errors.As(err, &e) || e.Field != "text" || e.Unwrap() != e.Err || (len(tt.text) <= 64 && e.Value != tt.text) {
			t.Errorf("parse(%q): %#v is not an *Error of the text", tt.text, err)
		}
	}
}

// sameAsReference fails unless the parser and the reference agree on s.
func sameAsReference(t interface {
	Helper()
	Fatalf(string, ...any)
}, k kind, s string,
) {
	t.Helper()
	want, read := refParse(k, s)
	got, err := texts[k].parse(s)
	if read != (err == nil) || read && got != want || err != nil && got != 0 {
		t.Fatalf("kind %d: parse(%q) = %d, %v; the reference: %d, %t", k, s, got, err, want, read)
	}
}

// TestParseTokens compares with the reference on texts pieced together from what a text may hold and what it may not.
func TestParseTokens(t *testing.T) {
	tokens := []string{
		"7", "0", "12", "6", "64", "1000000", "999999", "18446744073709551615", ".", ".5", ".4999999", "/", "⁄", "1/2", "3/2", "½", "⅞",
		" ", " ", "\u00a0", "-", "-", "\u2212", "+", ",", "e", "E", "'", "’", "′", `"`, "”", "″", "2", "²",
		"ft", "in", "yd", "m", "cm", "mm", "um", "µm", "μm", "nm", "FT", "Inches", "metres", "sq", "square", "Sq", "ft²", "in2",
		"lb", "oz", "kg", "g", "mg", "MG", "W", "kW", "MW", "mw", "x", "é", "\xff", "\x00",
	}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(allKinds).Draw(t, "kind")
		s := strings.Join(rapid.SliceOfN(rapid.SampledFrom(tokens), 0, 9).Draw(t, "tokens"), "")
		sameAsReference(t, k, s)
	})
}

// TestParseGrammar compares with the reference on texts that are mostly right.
func TestParseGrammar(t *testing.T) {
	units := [][]string{
		kindLength: {"yd", "yards", "ft", "foot", "'", "′", "in", "inches", `"`, "''", "m", "meter", "cm", "mm", "um", "nm"},
		kindArea:   {"sq yd", "sq ft", "ft2", "square foot", "in²", "sq. in.", "m2", "cm²", "sqmm", "um2"},
		kindMass:   {"lb", "pounds", "lbs.", "oz", "ounce", "kg", "g", "mg", "ng"},
		kindPower:  {"kW", "kilowatts", "W", "watt", "mW"},
	}
	gap := rapid.SampledFrom([]string{"", " ", "  ", "-", "\u00a0"})
	number := rapid.OneOf(
		rapid.StringMatching(`[0-9]{1,4}`),
		rapid.StringMatching(`[0-9]{0,3}\.[0-9]{1,24}`),
		rapid.StringMatching(`([0-9]{1,2}[ -])?[0-9]{1,3}/[1-9][0-9]{0,2}`),
		rapid.StringMatching(`([0-9]{1,2}[ -]?)?[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]`),
		rapid.StringMatching(`[0-9]{5,19}`),
	)
	small := rapid.StringMatching(`[0-9]{1,2}`)
	read := 0
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(allKinds).Draw(t, "kind")
		s := rapid.SampledFrom([]string{"", "", " ", "-", "+", "\u2212"}).Draw(t, "sign")
		from := 0
		n := rapid.IntRange(1, 3).Draw(t, "parts")
		for i := range n {
			num := small
			if i == n-1 {
				num = number
			}
			from = rapid.IntRange(from, len(units[k])-1).Draw(t, "unit")
			s += num.Draw(t, "number") + gap.Draw(t, "gap") + units[k][from] + gap.Draw(t, "gap")
		}
		sameAsReference(t, k, strings.TrimSuffix(s, "-"))
		if _, err := texts[k].parse(s); err == nil {
			read++
		}
	})
	if read < 20 && !testing.Short() { // when short, 20 texts in all are drawn
		t.Errorf("only %d texts were read: the generator is no use", read)
	}
}

// TestParseRounds checks the rounding against big.Rat where it is closest: on and beside every half.
func TestParseRounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]struct {
			size int64
			name string
		}{{int64(Yard), "yd"}, {int64(Foot), "ft"}, {int64(Inch), "in"}, {int64(Meter), "m"}, {1, "nm"}}).Draw(t, "unit")
		twice := rapid.Int64Range(0, 4*unit.size).Draw(t, "halves of a nanometer")
		places := rapid.IntRange(1, 40).Draw(t, "places")
		nudge := rapid.Int64Range(-1, 1).Draw(t, "nudge")
		// The decimal with so many places next to twice/2 nm, and the ones beside it.
		scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
		n := new(big.Int).Mul(big.NewInt(twice), scale)
		n.Quo(n, big.NewInt(2*unit.size))
		n.Add(n, big.NewInt(nudge))
		if n.Sign() < 0 {
			n.SetInt64(0)
		}
		x := new(big.Rat).SetFrac(n, scale)
		s := x.FloatString(places) + " " + unit.name
		want := refRound(new(big.Rat).Mul(x, new(big.Rat).SetInt64(unit.size)))
		if got, err := ParseLength(s); err != nil || int64(got) != want.Int64() {
			t.Fatalf("ParseLength(%q) = %d nm, %v; want %d nm", s, int64(got), err, want)
		}
	})
}

// TestTextRoundTrip checks that every form of a value is the same text, and is read back as the same value.
func TestTextRoundTrip(t *testing.T) {
	check := func(t interface {
		Helper()
		Fatalf(string, ...any)
	}, k kind, v int64,
	) {
		t.Helper()
		s, m := texts[k].text(v)
		if string(m) != s {
			t.Fatalf("kind %d: String %q, MarshalText %q", k, s, m)
		}
		if len(s) > 32 {
			t.Fatalf("kind %d: %q is longer than 32 bytes", k, s)
		}
		got, err := texts[k].parse(s)
		if err != nil || got != v {
			t.Fatalf("kind %d: %d is printed as %q, which is read as %d, %v", k, v, s, got, err)
		}
		if ref, read := refParse(k, s); !read || ref != v {
			t.Fatalf("kind %d: the reference reads %q as %d, %t; want %d", k, s, ref, read, v)
		}
	}
	for _, k := range allKinds {
		for _, v := range edges {
			check(t, k, v)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(allKinds).Draw(t, "kind")
		v := rapid.Int64().Draw(t, "value")
		check(t, k, v)
		const part = int64(Inch / 64)
		check(t, k, v/part*part) // a whole number of 64ths of an inch
		check(t, k, v/int64(SquareInch)*int64(SquareInch))
		check(t, k, v/int64(Ounce)*int64(Ounce))
		check(t, k, v%int64(10*Foot))
	})
}

// What is missing in a number with a point depends on what stands before the point.
func TestPointErrors(t *testing.T) {
	for in, want := range map[string]string{
		".":     "a number and a unit, such as 7 ft 6 in",
		". ft":  "a number and a unit, such as 7 ft 6 in",
		"7.":    "a digit after the decimal point",
		"7. ft": "a digit after the decimal point",
	} {
		var e *Error
		if _, err := ParseLength(in); !errors.As(err, &e) || e.Want != want {
			t.Errorf("ParseLength(%q): %v, want %q", in, err, want)
		}
	}
}

// UnmarshalText and Scan look at no more of a text than they must, but at all of one that may be read: at its last byte too.
func TestUnmarshalLongest(t *testing.T) {
	pad := func(s string, n int) []byte { return []byte(s + strings.Repeat(" ", n-len(s)-1) + "5") }
	var (
		l Length
		a Area
		m Mass
		p Power
	)
	for what, unmarshal := range map[string]func([]byte) error{
		"1 ft": l.UnmarshalText, "1 sq ft": a.UnmarshalText, "1 lb": m.UnmarshalText, "1 W": p.UnmarshalText,
		"1 in": func(text []byte) error { return l.Scan(text) },
	} {
		if err := unmarshal(pad(what, maxText)); !errors.Is(err, errNoUnit) {
			t.Errorf("%s and a 5 at byte %d: %v, want %v", what, maxText, err, errNoUnit)
		}
		if err := unmarshal(pad(what, maxText+1)); !errors.Is(err, errTooLong) {
			t.Errorf("%s and a 5 at byte %d: %v, want %v", what, maxText+1, err, errTooLong)
		}
		if err := unmarshal([]byte(what + strings.Repeat(" ", maxText-len(what)))); err != nil {
			t.Errorf("%s, padded to %d bytes: %v", what, maxText, err)
		}
	}
}
