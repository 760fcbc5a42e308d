// Package units holds lengths, areas, masses and electric powers exactly: it reads what people write,
// converts without loss, rounds to a step, and prints for people.
//
// [Length], [Area], [Mass] and [Power] are whole numbers of a small base unit (nm, μm², ng, mW),
// as [time.Duration] is of nanoseconds. An inch is 25,400,000 nm by definition, so a foot, a yard,
// a millimeter and a sixty-fourth of an inch are all exact, and they add up without rounding.
// Multiply by a unit to write one down, and compare with == and <:
//
//	height := 7*units.Foot + 6*units.Inch
//
// As with any integer, a sum or product beyond the range of the type wraps;
// what is dressed here is thousands of times smaller than that.
// Two lengths multiplied with * are not an area: [AreaOf] makes one.
//
// # Reading
//
// [ParseLength], [ParseArea], [ParseMass] and [ParsePower] read a text of up to 64 bytes:
//
//	value    = [ sign ] part { part }
//	part     = number unit
//	number   = digits | [ digits ] "." digits | [ digits ] fraction
//	fraction = digits "/" digits | "½" | "⅓" | "¼" | "¾" | "⅝" | ...
//
// All of these hold:
//   - Every number has a unit, zero too: a bare number does not say whether it is feet or inches.
//   - The sign, + or -, is in front and holds for the whole: -7 ft 6 in is 90 inches below nothing.
//   - Units fall in size, and each part is less than one of the unit before it. 7 ft 14 in is refused,
//     since it is likelier a slip than a length; and so is 7 3/2 in.
//   - Only the last part has decimals or a fraction. (ISO 8601 has the same rule for durations.)
//   - Upper and lower case are the same, except that a capital M before W or g would say mega,
//     so MW and Mg are refused.
//   - Space may stand around the value and between its words. In place of that space one hyphen may stand
//     before a digit, a letter or ½, with no space on either side: 7-1/2 in, 7'-6", 9-ft.
//   - A period may follow a word: ft., sq. in.
//   - There is no comma and no exponent, since 7,500 is two different numbers to two readers.
//
// The units, also in full and in the plural (foot, feet, metres, pounds, kilowatts):
//
//	length   yd (yds), ft, in, m, cm, mm, um (µm), nm
//	         ' ’ ′ for feet, " ” ″ or two foot marks for inches
//	area     any of these from yd to um as sq ft, square feet, sqft, ft² or ft2
//	mass     lb (lbs), oz, kg, g, mg, ng
//	power    kW, W, mW
//
// These texts, among others, are read, and printed by String as beside them:
//
//	7 ft 6 in        7 ft 6 in
//	7ft6in           7 ft 6 in
//	7'6"             7 ft 6 in
//	7′6″             7 ft 6 in
//	7'-6"            7 ft 6 in
//	7.5 ft           7 ft 6 in
//	7 1/2 ft         7 ft 6 in
//	7½ ft            7 ft 6 in
//	7-1/2 in         7 1/2 in
//	90in             7 ft 6 in
//	2 yd 1 ft        7 ft
//	7 Feet 6 Inches  7 ft 6 in
//	7 ft. 6 in.      7 ft 6 in
//	-7 ft 6 in       -7 ft 6 in
//	2.3 m            2.3 m
//	228.6 cm         7 ft 6 in
//	5 um             0.005 mm
//	12 sq ft         12 sq ft
//	12 square feet   12 sq ft
//	12 ft²           12 sq ft
//	12 ft2           12 sq ft
//	12 sqft 72 sqin  12 sq ft 72 sq in
//	3 lb 4 oz        3 lb 4 oz
//	3¼ pounds        3 lb 4 oz
//	1.5 kW           1500 W
//
// These are refused, with an error that wraps [ErrSyntax], [ErrName] for an unknown unit, or
// [ErrRange], and whose text begins with the reason:
//
//	""             empty
//	"7"            no unit
//	"7'6"          no unit
//	"7 furlongs"   unknown unit
//	"--7 ft"       misplaced sign
//	"7 ft -6 in"   misplaced sign
//	"7,5 ft"       comma
//	"1e3 ft"       exponent
//	"6 in 7 ft"    units out of order
//	"7 ft 14 in"   part too large
//	"7.5 ft 2 in"  not understood
//	"7. ft"        not understood
//	"1/0 ft"       not understood
//	"9999999999 m" out of range
//	"7777...7777"  too long
//
// The last one is of 65 digits. Inches need their mark: 7'6 is refused, since it may be 7.6 ft or a slip, and 7'6" is read.
//
// # Printing
//
// String is exact, whatever the value: what it prints is read back as the same value. It prints feet and inches
// down to 1/64 in, whole square inches, whole ounces; what is none of these it prints in metric decimals.
// MarshalText and AppendText give the same text, so a value in JSON, in a flag (see [flag.FlagSet.TextVar])
// or in a file of settings reads as a person would write it. A database column of 64-bit integers holds the base units.
//
// Format rounds: to a step such as a sixteenth of an inch, and in a [Style] such as [InFeet].
//
// # Rounding
//
// There is one rule: to the nearest, and of two as near, to the one away from zero.
// It holds for what is read with more digits than the base unit has, for Round, for Format,
// for Decimal, for [AreaOf], for [FromFloat] and for [FromDecimal]. Ceil goes up and Floor goes down, also below zero.
// What does not fit is an error, never the largest value and never a wrapped one.
//
// # Converting
//
// In divides by a unit and gives a float64. It is the float64 nearest to the true quotient
// while value and unit are below 2⁵³ base units (9007 km, 9007 m², 9007 kg), and within 2⁻⁵² of it, relatively, beyond.
// Decimal gives a decimal of up to 64 places. [FromFloat] and [FromDecimal] go the other way;
// FromFloat(l.In(unit), unit) is l again while l is below 2⁵¹ base units.
//
// The conversions are exact by definition, and those marked ≈ are rounded here to ten places:
//
//	1 in    =          2.54 cm
//	1 ft    =            12 in
//	1 ft    =         30.48 cm
//	1 yd    =             3 ft
//	1 yd    =        0.9144 m
//	1 cm    ≈  0.3937007874 in
//	1 m     ≈   3.280839895 ft
//	1 m     ≈  1.0936132983 yd
//	1 sq in =        6.4516 cm²
//	1 sq ft =           144 sq in
//	1 sq ft =    0.09290304 m²
//	1 sq yd =    0.83612736 m²
//	1 m²    ≈ 10.7639104167 sq ft
//	1 oz    =  28.349523125 g
//	1 lb    =            16 oz
//	1 lb    =    0.45359237 kg
//	1 kg    ≈  2.2046226218 lb
//
// Parsing and these conversions do not allocate, except for decimals and errors.
//
// # Sources
//
// The yard of 0.9144 m and the pound of 0.45359237 kg are those of the International Yard and Pound Agreement,
// in force 1 July 1959. The U.S. survey foot, two millionths longer, went out of use on 31 December 2022
// (85 FR 62698, National Institute of Standards and Technology, 2020) and is not here.
// Metric prefixes and symbols are those of The International System of Units (SI), BIPM;
// other symbols those of NIST Handbook 44, Appendix C (from memory). Marks and hyphens are common practice.
package units
