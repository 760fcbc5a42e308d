// Package units holds exact lengths, areas, masses and electric powers. It reads
// what people write, converts without loss, rounds to a step and prints for people.
//
// [Length], [Area], [Mass] and [Power] are whole numbers of a small base unit
// (nm, μm², ng, mW), as [time.Duration] counts nanoseconds. An inch is
// 25,400,000 nm by definition, so a foot, a yard, a millimeter and 1/64 in are all
// exact and add up without rounding. To write a value, multiply by a unit:
//
//	height := 7*units.Foot + 6*units.Inch
//
// All four types are comparable with == and <, and their zero value is zero. As with
// any integer, a sum or product beyond the range wraps; nothing that is dressed here
// comes near it. Two lengths multiplied with * are not an area: use [AreaOf].
//
// Begin with [Length], [ParseLength], [Length.Format] and [Length.In].
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
// The rules:
//   - Every number has a unit, zero too: nothing says whether a bare number is feet or inches.
//   - The sign, + or -, comes first and applies to the whole: -7 ft 6 in is -90 in.
//   - Each unit is smaller than the one before it, and each part less than one of it.
//     7 ft 14 in and 7 3/2 in are refused: they are more likely slips than lengths.
//   - Only the last part has decimals or a fraction.
//   - Case does not matter, except that MW and Mg are refused, since a capital M means mega.
//   - Spaces may stand around the value and between its words. A hyphen may replace a
//     space before a digit, a letter or ½: 7-1/2 in, 7'-6", 9-ft.
//   - A period may follow a word: ft., sq. in.
//   - There is no comma and no exponent: readers disagree on what 7,500 means.
//
// The units, which may also be spelled out (foot, feet, metres, pounds, kilowatts):
//
//	length   yd (yds), ft, in, m, cm, mm, um (µm), nm
//	         ' ’ ′ for feet, " ” ″ or two foot marks for inches
//	area     any of these from yd to um as sq ft, square feet, sqft, ft² or ft2
//	mass     lb (lbs), oz, kg, g, mg, ng
//	power    kW, W, mW
//
// Examples of what is read, with what String prints for it:
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
// The last one has 65 digits. Inches need their mark: 7'6" is read and 7'6 is refused,
// since it may mean 7.6 ft.
//
// # Printing
//
// String is exact: Parse returns the same value from it. It prints feet and inches down
// to 1/64 in, whole square inches and whole ounces, and everything else in metric
// decimals. MarshalText returns the same text, so a value in JSON, in a
// flag (see [flag.FlagSet.TextVar]) or in a configuration file reads as a person would
// write it. A database column may hold that text, or a whole number of base units.
//
// Format rounds to a step, such as 1/16 in, and prints in a [Style], such as [InFeet].
//
// # Rounding
//
// There is one rule: to the nearest, and halfway goes away from zero. It applies to
// Parse, Round, Format, Decimal, [AreaOf], [FromFloat] and [FromDecimal]. Ceil rounds
// up and Floor down, below zero too. A value that does not fit is an error.
//
// # Converting
//
// In divides by a unit and returns the nearest float64, as long as both are below 2⁵³
// base units (9007 km, 9007 m², 9007 kg); beyond that it is within 2⁻⁵² of the exact
// quotient. Decimal returns up to 64 decimal places. [FromFloat] and [FromDecimal]
// convert back; FromFloat(l.In(unit), unit) is l while l is below 2⁵¹ base units.
//
// Conversions are exact by definition; those marked ≈ are rounded to ten places here:
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
