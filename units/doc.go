// Package units holds exact lengths, areas, masses and electric powers. It reads
// what people write, converts without loss, rounds to a step and prints for people.
//
// [Length], [Area], [Mass] and [Power] are whole numbers of a small base unit
// (nm, μm², ng, mW), as [time.Duration] counts nanoseconds. An inch is
// 25,400,000 nm by definition, so feet, yards, millimeters and 1/64 in are all
// exact. Multiply by a unit:
//
//	height := 7*units.Foot + 6*units.Inch
//
// Compare quantities with == and <. As with any integer, a sum beyond the range wraps.
// For an area use [AreaOf]: multiplying two lengths with * does not give one.
//
// Begin with [Length], [ParseLength], [Length.Format] and [Length.In].
//
// # Reading
//
// [ParseLength], [ParseArea], [ParseMass] and [ParsePower] read up to 64 bytes:
//
//	value    = [ sign ] part { part }
//	part     = number unit
//	number   = digits | [ digits ] "." digits | [ digits ] fraction
//	fraction = digits "/" digits | "½" | "⅓" | "¼" | "¾" | "⅝" | ...
//
// The rules:
//   - Every number has a unit, even 0: a bare number could be feet or inches.
//   - A sign applies to the whole: -7 ft 6 in is -90 in.
//   - Each part is less than one unit of the part before it: 7 ft 14 in is refused.
//   - Only the last part may have decimals or a fraction.
//   - Case does not matter, but MW and Mg (mega) are refused; Mm is mm.
//   - Spaces are optional; a hyphen may replace them before a digit, letter or ½:
//     7-1/2 in, 9-ft. A period may follow a word: ft., sq. in.
//   - There are no commas and no exponents.
//
// The units, which may also be spelled out (foot, feet, metres, pounds, kilowatts):
//
//	length   yd (yds), ft, in, m, cm, mm, um (µm), nm
//	         ' ’ ′ for feet, " ” ″ or two foot marks for inches
//	area     any of these from yd to um as sq ft, square feet, sqft, ft² or ft2
//	mass     lb (lbs), oz, kg, g, mg, ng
//	power    kW, W, mW
//
// Texts read, and what String prints for them:
//
//	7 ft 6 in        7 ft 6 in
//	7ft6in           7 ft 6 in
//	7'6"             7 ft 6 in
//	7'-6"            7 ft 6 in
//	7.5 ft           7 ft 6 in
//	7½ ft            7 ft 6 in
//	7-1/2 in         7 1/2 in
//	90in             7 ft 6 in
//	2 yd 1 ft        7 ft
//	-7 ft 6 in       -7 ft 6 in
//	2.3 m            2.3 m
//	5 um             0.005 mm
//	12 sq ft         12 sq ft
//	12 sqft 72 sqin  12 sq ft 72 sq in
//	3 lb 4 oz        3 lb 4 oz
//	3¼ pounds        3 lb 4 oz
//	1.5 kW           1500 W
//
// Texts refused, and why. The error wraps [ErrSyntax], [ErrRange] or, for an
// unknown unit, [ErrName]:
//
//	""             empty
//	"7"            no unit
//	"7'6"          no unit
//	"7 furlongs"   unknown unit
//	"7 ft -6 in"   misplaced sign
//	"7,5 ft"       comma
//	"1e3 ft"       exponent
//	"6 in 7 ft"    units out of order
//	"7 ft 14 in"   part too large
//	"7.5 ft 2 in"  not understood
//	"1/0 ft"       not understood
//	"9999999999 m" out of range
//	"7777...7777"  too long
//
// The last has 65 digits. 7'6 could mean 7.6 ft.
//
// # Printing
//
// String is exact, and the parsers read back the same value. It prints feet and inches down
// to 1/64 in, whole square inches and whole ounces; anything else is in metric decimals.
// JSON, flags ([flag.FlagSet.TextVar]) and databases hold that text. On an error
// UnmarshalText and Scan leave the old value.
//
// Format rounds to a step, such as 1/16 in, and prints in a [Style], such as [InFeet].
//
// # Rounding
//
// All functions but [Ceil] and [Floor] round to nearest; halves go away from zero.
//
// # Converting
//
// In divides by a unit and returns the nearest float64 if value and unit are below 2⁵³
// base units (9007 km, 9007 m², 9007 kg), with a relative error under 2⁻⁵¹ otherwise.
// [FromFloat] undoes it exactly below 2⁵¹ base units.
//
// Conversions are exact by definition; those marked ≈ are rounded to ten places:
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
// # Sources
//
// The yard of 0.9144 m and the pound of 0.45359237 kg: International Yard and Pound
// Agreement, in force 1 July 1959. The U.S. survey foot, two millionths longer, ended
// on 31 December 2022 (85 FR 62698, National Institute of Standards and Technology,
// 2020) and is not here. Metric units: The International System of Units (SI), BIPM.
// Other symbols: NIST Handbook 44, Appendix C (from memory). Marks and hyphens:
// common practice.
package units
