package units

import (
	"encoding/csv"
	"errors"
	"math"
	"math/big"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// readRows returns the rows of a file under testdata, without comments and heading.
func readRows(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(rows), err)
	}
	return rows[1:]
}

// parseAny reads a text as the first kind that reads it.
func parseAny(t *testing.T, s string) (kind, int64) {
	t.Helper()
	for _, k := range allKinds {
		if v, err := parse(k, s); err == nil {
			return k, v
		}
	}
	t.Fatalf("%q is read as nothing", s)
	return 0, 0
}

// TestUnitsCSV checks the conversions of testdata/units.csv: as fractions exactly, as decimals to 39 places.
func TestUnitsCSV(t *testing.T) {
	for _, row := range readRows(t, "units.csv") {
		k, v := parseAny(t, strings.Replace(row[0], "avoirdupois ", "", 1))
		k2, unit := parseAny(t, "1 "+row[1])
		if k != k2 {
			t.Errorf("%v: kinds %d and %d", row, k, k2)
		}
		want, good := new(big.Rat).SetString(row[3])
		if got := big.NewRat(v, unit); !good || got.Cmp(want) != 0 {
			t.Errorf("%s = %v %s, want %s", row[0], got, row[1], row[3])
		}
		places := 39
		wantDec := decimal.RequireFromString(row[2])
		if got, err := Decimal(Length(v), Length(unit), places); err != nil || !got.Equal(wantDec) {
			t.Errorf("%s = %v %s, %v, want %s", row[0], got, row[1], err, row[2])
		}
		// One division of whole numbers below 2⁵³ is correctly rounded, as the reading of the 39 digits is.
		if got, want := k.in(v, unit), wantDec.InexactFloat64(); got != want {
			t.Errorf("%s = %v %s as float64, want %v", row[0], got, row[1], want)
		}
	}
}

// TestGNUUnits checks In against another program's conversions. That program multiplies and divides in float64,
// a few roundings of 2⁻⁵³ each: |x-y| ≤ 8·2⁻⁵³·|y|.
func TestGNUUnits(t *testing.T) {
	for _, row := range readRows(t, "gnuunits.csv") {
		k, v := parseAny(t, row[0])
		_, unit := parseAny(t, "1 "+row[1])
		want, err := decimal.NewFromString(row[2])
		if err != nil {
			t.Fatal(err)
		}
		w := want.InexactFloat64()
		if got := k.in(v, unit); math.Abs(got-w) > 8*0x1p-53*math.Abs(w) {
			t.Errorf("%s = %v %s, want %v", row[0], got, row[1], w)
		}
	}
}

// TestConstants checks every unit against its definition, worked by hand in base units:
// 1 yd = 0.9144 m and 1 lb = 0.45359237 kg (International Yard and Pound Agreement 1959), the rest by the SI prefixes.
func TestConstants(t *testing.T) {
	for _, tt := range []struct {
		name      string
		got, want int64
	}{
		{"nm", int64(nanometer), 1},
		{"um", int64(micrometer), 1_000},
		{"mm", int64(Millimeter), 1_000_000},
		{"cm", int64(Centimeter), 10_000_000},
		{"m", int64(Meter), 1_000_000_000},
		{"in", int64(Inch), 914_400_000 / 36},
		{"ft", int64(Foot), 914_400_000 / 3},
		{"yd", int64(Yard), 914_400_000},
		{"sq um", int64(squareMicrometer), 1},
		{"sq mm", int64(squareMillimeter), 1_000_000},
		{"sq cm", int64(squareCentimeter), 100_000_000},
		{"sq m", int64(SquareMeter), 1_000_000_000_000},
		{"sq in", int64(SquareInch), 25_400 * 25_400},
		{"sq ft", int64(SquareFoot), 304_800 * 304_800},
		{"sq yd", 9 * int64(SquareFoot), 914_400 * 914_400},
		{"ng", int64(nanogram), 1},
		{"mg", int64(milligram), 1_000_000},
		{"g", int64(Gram), 1_000_000_000},
		{"kg", int64(Kilogram), 1_000_000_000_000},
		{"oz", int64(Ounce), 453_592_370_000 / 16},
		{"lb", int64(Pound), 453_592_370_000},
		{"mW", int64(Milliwatt), 1},
		{"W", int64(Watt), 1_000},
		{"kW", 1000 * int64(Watt), 1_000_000},
	} {
		if tt.got != tt.want {
			t.Errorf("1 %s is %d, want %d", tt.name, tt.got, tt.want)
		}
		if _, v := parseAny(t, "1 "+tt.name); v != tt.want {
			t.Errorf("1 %s is read as %d, want %d", tt.name, v, tt.want)
		}
	}
}

func TestIn(t *testing.T) {
	l := 7*Foot + 6*Inch
	for _, tt := range []struct {
		name      string
		got, want float64
	}{
		{"Feet", l.In(Foot), 7.5},
		{"Inches", l.In(Inch), 90},
		{"Yards", l.In(Yard), 2.5},
		{"Meters", l.In(Meter), 2.286},
		{"In(Centimeter)", l.In(Centimeter), 228.6},
		{"In(6 ft)", l.In(6 * Foot), 1.25},
		{"In(-Foot)", l.In(-Foot), -7.5},
		{"area", (12*SquareFoot + 72*SquareInch).In(SquareFoot), 12.5},
		{"mass", (3*Pound + 4*Ounce).In(Pound), 3.25},
		{"power", (175 * Watt).In(1000 * Watt), 0.175},
		{"least", Length(math.MinInt64).In(nanometer), -0x1p63},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, tt.want)
		}
	}
}

// TestInPrecision checks In against big.Rat: correctly rounded up to 2⁵³ base units, within 2⁻⁵² of the value beyond.
func TestInPrecision(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Int64().Draw(t, "value")
		unit := rapid.SampledFrom([]Length{nanometer, Millimeter, Meter, Inch, Foot, Yard, Inch / 64, 7 * Foot}).Draw(t, "unit")
		x := big.NewRat(v, int64(unit))
		got := Length(v).In(unit)
		if v > -1<<53 && v < 1<<53 {
			if want, _ := x.Float64(); got != want {
				t.Fatalf("Length(%d).In(%d) = %v, want %v", v, unit, got, want)
			}
			return
		}
		diff := new(big.Rat).Sub(new(big.Rat).SetFloat64(got), x)
		if diff.Abs(diff).Cmp(x.Abs(x).Mul(x, big.NewRat(1, 1<<52))) > 0 {
			t.Fatalf("Length(%d).In(%d) = %v: off by %v", v, unit, got, diff)
		}
	})
}

func TestInPanicsOnZero(t *testing.T) {
	for want, f := range map[string]func(){
		`units.Length.In: unit "0 ft": out of range: want a unit that is not 0`:  func() { Foot.In(0) },
		`units.Area.In: unit "0 sq ft": out of range: want a unit that is not 0`: func() { SquareFoot.In(0) },
		`units.Mass.In: unit "0 lb": out of range: want a unit that is not 0`:    func() { Pound.In(0) },
		`units.Power.In: unit "0 W": out of range: want a unit that is not 0`:    func() { Watt.In(0) },
	} {
		func() {
			defer func() {
				if e, isError := recover().(*Error); !isError || e.Error() != want || !errors.Is(e, ErrRange) {
					t.Errorf("panic %v, want %s", e, want)
				}
			}()
			f()
		}()
	}
}

func TestDecimal(t *testing.T) {
	for _, tt := range []struct {
		v, unit int64
		places  int
		want    string
		reason  string
	}{
		{int64(90 * Inch), int64(Foot), 4, "7.5", ""},
		{int64(Meter), int64(Foot), 4, "3.2808", "3.28083989..."},
		{int64(Meter), int64(Foot), 5, "3.28084", "3.28083989... rounds up"},
		{int64(Meter), int64(Foot), 0, "3", ""},
		{5, 10, 0, "1", "half goes away from zero"},
		{-5, 10, 0, "-1", "half goes away from zero"},
		{5, -10, 0, "-1", "a negative unit"},
		{4, 10, 0, "0", ""},
		{-4, 10, 0, "0", ""},
		{15, 100, 1, "0.2", "half goes away from zero"},
		{25, 100, 1, "0.3", "half goes away from zero, not to even"},
		{1, 3, 64, "0." + strings.Repeat("3", 64), "the most places"},
		{math.MinInt64, 1, 2, "-9223372036854775808", ""},
		{math.MinInt64, math.MinInt64, 2, "1", ""},
	} {
		got, err := Decimal(Length(tt.v), Length(tt.unit), tt.places)
		if err != nil || got.String() != tt.want {
			t.Errorf("Length(%d).Decimal(%d, %d) = %v, %v; want %s (%s)", tt.v, tt.unit, tt.places, got, err, tt.want, tt.reason)
		}
	}
	// The others are the same code.
	a, errA := Decimal((18 * SquareInch), SquareFoot, 3)
	m, errM := Decimal((52 * Ounce), Pound, 3)
	p, errP := Decimal((175 * Watt), 1000*Watt, 3)
	if a.String() != "0.125" || m.String() != "3.25" || p.String() != "0.175" || errA != nil || errM != nil || errP != nil {
		t.Errorf("Decimal: %v %v %v, %v %v %v; want 0.125 3.25 0.175", a, m, p, errA, errM, errP)
	}
}

func TestDecimalRefuses(t *testing.T) {
	check := func(d decimal.Decimal, err error, want string) {
		t.Helper()
		if err == nil || err.Error() != want || !errors.Is(err, ErrRange) || !d.Equal(decimal.Decimal{}) {
			t.Errorf("%v, %v; want 0, %s", d, err, want)
		}
	}
	d, err := Decimal(Foot, 0, 2)
	check(d, err, `units.Decimal: unit "0 ft": out of range: want a unit that is not 0`)
	d, err = Decimal(Foot, Inch, -1)
	check(d, err, `units.Decimal: places "-1": out of range: want 0 to 64`)
	d, err = Decimal(Foot, Inch, 65)
	check(d, err, `units.Decimal: places "65": out of range: want 0 to 64`)
	d, err = Decimal(SquareFoot, 0, 2)
	check(d, err, `units.Decimal: unit "0 sq ft": out of range: want a unit that is not 0`)
	d, err = Decimal(Pound, 0, 2)
	check(d, err, `units.Decimal: unit "0 lb": out of range: want a unit that is not 0`)
	d, err = Decimal(Watt, 0, 2)
	check(d, err, `units.Decimal: unit "0 W": out of range: want a unit that is not 0`)
}

func TestDecimalMatchesRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, unit := rapid.Int64().Draw(t, "value"), rapid.Int64Min(1).Draw(t, "unit")
		places := rapid.IntRange(0, 64).Draw(t, "places")
		got, err := Decimal(Mass(v), Mass(unit), places)
		want := big.NewRat(v, unit).FloatString(places) // rounds half away from zero
		if err != nil || got.StringFixed(int32(places)) != strings.Replace(want, "-0."+strings.Repeat("0", places), "0."+strings.Repeat("0", places), 1) && want != "-0" {
			t.Fatalf("Mass(%d).Decimal(%d, %d) = %v, %v; want %s", v, unit, places, got, err, want)
		}
	})
}

func TestFromFloat(t *testing.T) {
	for _, tt := range []struct {
		v      float64
		unit   Length
		want   Length
		reason string
	}{
		{7.5, Foot, 7*Foot + 6*Inch, ""},
		{-7.5, Foot, -7*Foot - 6*Inch, ""},
		{7.5, -Foot, -7*Foot - 6*Inch, "a negative unit"},
		{2.3, Meter, 2300 * Millimeter, "2.3 is not exact in binary; the product rounds to it"},
		{0.5, nanometer, 1, "half goes away from zero"},
		{-0.5, nanometer, -1, "half goes away from zero"},
		{0.49999999999999994, nanometer, 0, "the float64 just below a half"},
		{1.5, nanometer, 2, ""},
		{2.5, nanometer, 3, "away from zero, not to even"},
		{math.Copysign(0, -1), Foot, 0, ""},
		{math.SmallestNonzeroFloat64, Yard, 0, ""},
		{9223372036854774784, nanometer, 9223372036854774784, "the float64 below 2⁶³"},
		{-9223372036854775808, nanometer, math.MinInt64, "-2⁶³"},
	} {
		if got, err := FromFloat(tt.v, tt.unit); err != nil || got != tt.want {
			t.Errorf("FromFloat(%v, %d) = %d, %v; want %d (%s)", tt.v, tt.unit, got, err, tt.want, tt.reason)
		}
	}
	a, errA := FromFloat(12.5, SquareFoot)
	m, errM := FromFloat(3.25, Pound)
	p, errP := FromFloat(4.8, Watt)
	if a != 1800*SquareInch || m != 52*Ounce || p != 4800*Milliwatt || errA != nil || errM != nil || errP != nil {
		t.Errorf("FromFloat: %v %v %v, %v %v %v; want 12 sq ft 72 sq in, 3 lb 4 oz, 4.8 W", a, m, p, errA, errM, errP)
	}
}

// checkRefused checks that a constructor gives 0 and this error.
func checkRefused[Q Quantity](t *testing.T, q Q, err error, want string) {
	t.Helper()
	if err == nil || err.Error() != want || !errors.Is(err, ErrRange) || q != 0 {
		t.Errorf("%d, %v;\nwant 0, %s", q, err, want)
	}
}

func TestFromFloatRefuses(t *testing.T) {
	const (
		wantLength = ": out of range: want -9223372036.854775808 m to 9223372036.854775807 m in that unit"
		wantArea   = ": out of range: want -9223372.036854775808 m² to 9223372.036854775807 m² in that unit"
		wantMass   = ": out of range: want -9223372.036854775808 kg to 9223372.036854775807 kg in that unit"
		wantPower  = ": out of range: want -9223372036854775.808 W to 9223372036854775.807 W in that unit"
	)
	for v, text := range map[float64]string{
		math.NaN():            "NaN",
		math.Inf(1):           "+Inf",
		math.Inf(-1):          "-Inf",
		9223372036854775808:   "9.223372036854776e+18",
		-9223372036854777856:  "-9.223372036854778e+18",
		math.MaxFloat64:       "1.7976931348623157e+308",
		-math.MaxFloat64:      "-1.7976931348623157e+308",
		1e30:                  "1e+30",
		2 * math.MaxInt64:     "1.8446744073709552e+19",
		-2 * (1 << 62) * 1.25: "-1.1529215046068470e+19",
	} {
		text = strings.Replace(text, "470e+19", "47e+19", 1)
		l, err := FromFloat(v, nanometer)
		checkRefused(t, l, err, `units.FromFloat: value "`+text+`"`+wantLength)
	}
	a, err := FromFloat(math.NaN(), SquareFoot)
	checkRefused(t, a, err, `units.FromFloat: value "NaN"`+wantArea)
	m, err := FromFloat(math.NaN(), Pound)
	checkRefused(t, m, err, `units.FromFloat: value "NaN"`+wantMass)
	p, err := FromFloat(math.NaN(), Watt)
	checkRefused(t, p, err, `units.FromFloat: value "NaN"`+wantPower)
	l, err := FromFloat(1, Length(0))
	checkRefused(t, l, err, `units.FromFloat: unit "0 ft": out of range: want a unit that is not 0`)
	p, err = FromFloat(1, Power(0))
	checkRefused(t, p, err, `units.FromFloat: unit "0 W": out of range: want a unit that is not 0`)
}

// TestFromFloatRoundTrip: a division and a product of float64, each off by 2⁻⁵³ of the value at most, are together
// off by less than half a nanometer below 2⁵¹ nm.
func TestFromFloatRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(-1<<51, 1<<51).Draw(t, "length"))
		unit := rapid.SampledFrom([]Length{nanometer, Millimeter, Meter, Inch, Foot, Yard}).Draw(t, "unit")
		if got, err := FromFloat(l.In(unit), unit); err != nil || got != l {
			t.Fatalf("FromFloat(%v, %d) = %d, %v; want %d", l.In(unit), unit, got, err, l)
		}
	})
}

// TestFromFloatOffByOne checks the stated bound: at most one base unit from the exact product below 2⁵³.
func TestFromFloatOffByOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]Length{nanometer, Millimeter, Meter, Inch, Foot, Yard}).Draw(t, "unit")
		limit := 0x1p53 / float64(unit)
		v := rapid.Float64Range(-limit, limit).Draw(t, "value")
		got, err := FromFloat(v, unit)
		x := new(big.Rat).SetFloat64(v)
		x.Mul(x, big.NewRat(int64(unit), 1)).Sub(x, big.NewRat(int64(got), 1))
		if err != nil || x.Abs(x).Cmp(big.NewRat(1, 1)) > 0 {
			t.Fatalf("FromFloat(%v, %d) = %d, %v: off by %v", v, unit, got, err, x)
		}
	})
}

// dec reads a decimal. Its exponent may be larger than the decimal package reads.
func dec(s string) decimal.Decimal {
	s, exp, found := strings.Cut(s, "e")
	d := decimal.RequireFromString(s)
	if found {
		n, err := strconv.ParseInt(exp, 10, 32)
		if err != nil {
			panic(err)
		}
		d = decimal.NewFromBigInt(d.Coefficient(), d.Exponent()+int32(n))
	}
	return d
}

func TestFromDecimal(t *testing.T) {
	for _, tt := range []struct {
		d      string
		unit   Length
		want   Length
		reason string
	}{
		{"7.5", Foot, 7*Foot + 6*Inch, ""},
		{"-7.5", Foot, -7*Foot - 6*Inch, ""},
		{"7.5", -Foot, -7*Foot - 6*Inch, "a negative unit"},
		{"2.3", Meter, 2300 * Millimeter, ""},
		{"0.5", nanometer, 1, "half goes away from zero"},
		{"-0.5", nanometer, -1, "half goes away from zero"},
		{"0.4999999999999999999999999999999999999999999999999999999999999999999999", nanometer, 0, "long, just below a half"},
		{"0", Foot, 0, ""},
		{"0e2147483647", Foot, 0, "nothing, with a huge exponent"},
		{"0e-2147483648", Foot, 0, ""},
		{"1e-2147483647", Yard, 0, "next to nothing, with a huge exponent"},
		{"-1e-21", math.MaxInt64, 0, "a tenth and less"},
		{"1e-19", math.MaxInt64, 1, "0.92"},
		{"9e-20", math.MaxInt64, 1, "0.83"},
		{"5e-20", math.MaxInt64, 0, "0.46"},
		{"5e18", nanometer, 5_000_000_000_000_000_000, "a positive exponent"},
		{"9223372036854775807", nanometer, math.MaxInt64, ""},
		{"9223372036854775807.49", nanometer, math.MaxInt64, ""},
		{"-9223372036854775808.49", nanometer, math.MinInt64, ""},
		{"9223372036.854775807", Meter, math.MaxInt64, ""},
	} {
		if got, err := FromDecimal(dec(tt.d), tt.unit); err != nil || got != tt.want {
			t.Errorf("FromDecimal(%v, %d) = %d, %v; want %d (%s)", tt.d, tt.unit, got, err, tt.want, tt.reason)
		}
	}
	a, errA := FromDecimal(decimal.RequireFromString("12.5"), SquareFoot)
	m, errM := FromDecimal(decimal.RequireFromString("3.25"), Pound)
	p, errP := FromDecimal(decimal.RequireFromString("4.8"), Watt)
	if a != 1800*SquareInch || m != 52*Ounce || p != 4800*Milliwatt || errA != nil || errM != nil || errP != nil {
		t.Errorf("FromDecimal: %v %v %v, %v %v %v; want 12 sq ft 72 sq in, 3 lb 4 oz, 4.8 W", a, m, p, errA, errM, errP)
	}
}

func TestFromDecimalRefuses(t *testing.T) {
	const wantLength = ": out of range: want -9223372036.854775808 m to 9223372036.854775807 m in that unit"
	for d, text := range map[string]string{
		"9223372036854775808":               "9223372036854775808",
		"9223372036854775807.5":             "9223372036854775807.5",
		"-9223372036854775808.5":            "-9223372036854775808.5",
		"1e19":                              "1e19",
		"1e20":                              "1e20",
		"-1e20":                             "-1e20",
		"1e2147483647":                      "1e2147483647",
		strings.Repeat("9", 64):             strings.Repeat("9", 64),
		strings.Repeat("9", 65):             strings.Repeat("9", 64) + "...",
		strings.Repeat("9", 60) + ".123456": strings.Repeat("9", 60) + ".123...",
	} {
		l, err := FromDecimal(dec(d), nanometer)
		checkRefused(t, l, err, `units.FromDecimal: value "`+text+`"`+wantLength)
	}
	one := decimal.NewFromInt(1)
	l, err := FromDecimal(one, Length(0))
	checkRefused(t, l, err, `units.FromDecimal: unit "0 ft": out of range: want a unit that is not 0`)
	p, err := FromDecimal(one, Power(0))
	checkRefused(t, p, err, `units.FromDecimal: unit "0 W": out of range: want a unit that is not 0`)
}

// TestFromDecimalMatchesRat compares with big.Rat, and with Decimal, which it undoes.
func TestFromDecimalMatchesRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := decimal.New(rapid.Int64().Draw(t, "coefficient"), rapid.Int32Range(-60, 25).Draw(t, "exponent"))
		unit := rapid.SampledFrom([]int64{1, int64(Inch), int64(Foot), int64(Meter), math.MaxInt64, math.MinInt64}).Draw(t, "unit")
		want := refRound(new(big.Rat).Mul(d.Rat(), new(big.Rat).SetInt64(unit)))
		got, err := FromDecimal(d, Length(unit))
		if want.IsInt64() != (err == nil) || err == nil && int64(got) != want.Int64() || err != nil && got != 0 {
			t.Fatalf("FromDecimal(%v, %d) = %d, %v; want %v", d, unit, got, err, want)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		// Ten places of a foot are 0.03 nm apart.
		l := Length(rapid.Int64().Draw(t, "length"))
		d, err := Decimal(l, Foot, 10)
		got, err2 := FromDecimal(d, Foot)
		if err != nil || err2 != nil || got != l {
			t.Fatalf("%d is %v ft and back %d, %v, %v", l, d, got, err, err2)
		}
	})
}

// TestConversionsCompose: a length in one unit, made a length again and put in a second, is the length in the second.
func TestConversionsCompose(t *testing.T) {
	all := []Length{nanometer, micrometer, Millimeter, Centimeter, Meter, Inch, Foot, Yard}
	rapid.Check(t, func(t *rapid.T) {
		u, v := rapid.SampledFrom(all).Draw(t, "unit"), rapid.SampledFrom(all).Draw(t, "unit")
		l := Length(rapid.Int64Range(-1<<51, 1<<51).Draw(t, "length"))
		m, err := FromFloat(l.In(u), u)
		if err != nil || m.In(v) != l.In(v) {
			t.Fatalf("%d: %v, then %v; want %v, %v", l, l.In(u), m.In(v), l.In(v), err)
		}
	})
}

func TestAreaOf(t *testing.T) {
	for _, tt := range []struct {
		w, h   Length
		want   Area
		reason string
	}{
		{3 * Foot, 4 * Foot, 12 * SquareFoot, ""},
		{1 * Foot, 6 * Inch, 72 * SquareInch, ""},
		{2 * Foot, 2 * Foot, 4 * SquareFoot, "a square"},
		{-2 * Foot, -2 * Foot, 4 * SquareFoot, "a square, both negative"},
		{2 * Meter, 1500 * Millimeter, 3 * SquareMeter, ""},
		{-3 * Foot, 4 * Foot, -12 * SquareFoot, "one negative"},
		{3 * Foot, -4 * Foot, -12 * SquareFoot, "one negative"},
		{-3 * Foot, -4 * Foot, 12 * SquareFoot, "both negative"},
		{0, 4 * Foot, 0, ""},
		{math.MinInt64, 0, 0, ""},
		{999, 500, 0, "499,500 nm², below half"},
		{1000, 500, 1, "half goes away from zero"},
		{-1000, 500, -1, "half goes away from zero"},
		{1001, 1498, 1, "1,499,498 nm²"},
		{1000, 1500, 2, "half goes away from zero"},
		{Yard, Inch, 36 * SquareInch, ""},
		{math.MaxInt64, 1_000_000, math.MaxInt64, "the largest"},
		{math.MinInt64, 1_000_000, math.MinInt64, "the most negative"},
		{-1_000_000, math.MinInt64 + 1, math.MaxInt64, "the largest"},
	} {
		if got, err := AreaOf(tt.w, tt.h); err != nil || got != tt.want {
			t.Errorf("AreaOf(%d, %d) = %d, %v; want %d (%s)", tt.w, tt.h, got, err, tt.want, tt.reason)
		}
	}
	for _, tt := range []struct{ w, h Length }{
		{math.MinInt64, -1_000_000},             // 2⁶³
		{math.MaxInt64, 1_000_001},              // a little too large
		{math.MaxInt64, 2_000_000},              // below 2⁶⁴
		{math.MaxInt64, 3_000_000},              // above 2⁶⁴
		{1_000_000 << 22, 1 << 42},              // 10⁶·2⁶⁴ nm²
		{math.MinInt64, math.MinInt64},          // far above
		{math.MaxInt64, math.MinInt64},          // far below
		{1_000_000_000 * Meter, 100_000 * Yard}, // too large
	} {
		got, err := AreaOf(tt.w, tt.h)
		want := `units.AreaOf: width "` + tt.w.String() + ` by ` + tt.h.String() +
			`": out of range: want an area from -9223372.036854775808 m² to 9223372.036854775807 m²`
		checkRefused(t, got, err, want)
	}
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-1e10, 1e10)).Draw(t, "width")
		h := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-1e10, 1e10)).Draw(t, "height")
		x := new(big.Rat).SetInt(new(big.Int).Mul(big.NewInt(w), big.NewInt(h)))
		want := refRound(x.Quo(x, big.NewRat(1_000_000, 1)))
		got, err := AreaOf(Length(w), Length(h))
		if want.IsInt64() != (err == nil) || err == nil && int64(got) != want.Int64() {
			t.Fatalf("AreaOf(%d, %d) = %d, %v; want %v", w, h, got, err, want)
		}
		if other, err2 := AreaOf(Length(h), Length(w)); other != got || (err2 == nil) != (err == nil) {
			t.Fatalf("AreaOf(%d, %d) = %d, but %d the other way round", w, h, got, other)
		}
	})
}
