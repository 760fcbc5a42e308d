package units

import (
	"errors"
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestString(t *testing.T) {
	for _, tt := range []struct {
		kind   kind
		v      int64
		want   string
		reason string
	}{
		{kindLength, 0, "0 ft", ""},
		{kindLength, int64(7*Foot + 6*Inch), "7 ft 6 in", ""},
		{kindLength, int64(64 * Inch), "5 ft 4 in", ""},
		{kindLength, int64(8 * Inch), "8 in", ""},
		{kindLength, int64(9 * Foot), "9 ft", ""},
		{kindLength, -int64(9 * Foot), "-9 ft", ""},
		{kindLength, -int64(7*Foot + 6*Inch), "-7 ft 6 in", "the sign is for the whole"},
		{kindLength, -int64(6 * Inch), "-6 in", ""},
		{kindLength, int64(7*Foot + 13*Inch/2), "7 ft 6 1/2 in", ""},
		{kindLength, int64(7*Foot + Inch/2), "7 ft 1/2 in", ""},
		{kindLength, int64(Inch / 2), "1/2 in", ""},
		{kindLength, int64(3 * Inch / 4), "3/4 in", "reduced"},
		{kindLength, int64(Inch / 64), "1/64 in", "the finest"},
		{kindLength, int64(12*Inch - Inch/64), "11 63/64 in", ""},
		{kindLength, int64(Inch / 128), "0.198437 mm", "finer than 1/64 in"},
		{kindLength, int64(254 * Millimeter), "10 in", "a metric length that is whole inches"},
		{kindLength, int64(2300 * Millimeter), "2.3 m", ""},
		{kindLength, int64(Meter), "1 m", ""},
		{kindLength, int64(Meter) - 1, "99.9999999 cm", "just below a meter"},
		{kindLength, int64(Centimeter), "1 cm", ""},
		{kindLength, int64(Centimeter) - 1, "9.999999 mm", "just below a centimeter"},
		{kindLength, 1, "0.000001 mm", ""},
		{kindLength, -1, "-0.000001 mm", ""},
		{kindLength, math.MaxInt64, "9223372036.854775807 m", ""},
		{kindLength, math.MinInt64, "-9223372036.854775808 m", ""},
		{kindArea, 0, "0 sq ft", ""},
		{kindArea, int64(12 * SquareFoot), "12 sq ft", ""},
		{kindArea, int64(1800 * SquareInch), "12 sq ft 72 sq in", ""},
		{kindArea, -int64(SquareInch), "-1 sq in", ""},
		{kindArea, int64(SquareInch / 2), "3.2258 cm²", "half a square inch"},
		{kindArea, int64(5 * SquareMeter / 2), "2.5 m²", ""},
		{kindArea, int64(SquareMeter) - 1, "9999.99999999 cm²", ""},
		{kindArea, int64(squareCentimeter) - 1, "99.999999 mm²", ""},
		{kindArea, 1, "0.000001 mm²", ""},
		{kindArea, math.MinInt64, "-9223372.036854775808 m²", ""},
		{kindMass, 0, "0 lb", ""},
		{kindMass, int64(52 * Ounce), "3 lb 4 oz", ""},
		{kindMass, int64(Ounce), "1 oz", ""},
		{kindMass, -int64(Pound), "-1 lb", ""},
		{kindMass, int64(1500 * Gram), "1.5 kg", ""},
		{kindMass, int64(Kilogram) - 1, "999.999999999 g", ""},
		{kindMass, int64(Gram) - 1, "999.999999 mg", ""},
		{kindMass, 1, "0.000001 mg", ""},
		{kindMass, math.MinInt64, "-9223372.036854775808 kg", ""},
		{kindPower, 0, "0 W", ""},
		{kindPower, int64(175 * Watt), "175 W", ""},
		{kindPower, int64(1440 * Watt), "1440 W", "no kilowatts"},
		{kindPower, 70, "0.07 W", ""},
		{kindPower, -4800, "-4.8 W", ""},
		{kindPower, math.MinInt64, "-9223372036854775.808 W", ""},
	} {
		if s, _ := texts[tt.kind].text(tt.v); s != tt.want {
			t.Errorf("%d: %d is %q, want %q (%s)", tt.kind, tt.v, s, tt.want, tt.reason)
		}
	}
}

func TestFormat(t *testing.T) {
	const f, in, cm = int64(Foot), int64(Inch), int64(Centimeter)
	const sqft, sqin = int64(SquareFoot), int64(SquareInch)
	const lb, oz, g = int64(Pound), int64(Ounce), int64(Gram)
	for _, tt := range []struct {
		kind   kind
		v      int64
		style  Style
		step   int64
		want   string
		reason string
	}{
		{kindLength, 90 * in, InFeetInches, in / 16, "7 ft 6 in", ""},
		{kindLength, 90*in + in/16, InFeetInches, in / 16, "7 ft 6 1/16 in", ""},
		{kindLength, 90*in + in/32, InFeetInches, in / 16, "7 ft 6 1/16 in", "half goes up"},
		{kindLength, 90*in + in/32 - 1, InFeetInches, in / 16, "7 ft 6 in", "below half"},
		{kindLength, -90*in - in/32, InFeetInches, in / 16, "-7 ft 6 1/16 in", "half goes away from zero"},
		{kindLength, 96*in - in/32, InFeetInches, in / 16, "8 ft", "rounds up to a whole foot"},
		{kindLength, in / 32, InFeetInches, in / 16, "1/16 in", ""},
		{kindLength, 1, InFeetInches, in / 16, "0 ft", ""},
		{kindLength, -1, InFeetInches, in / 16, "0 ft", "no minus nothing"},
		{kindLength, 5 * in, InFeetInches, f, "0 ft", "step of a foot"},
		{kindLength, 6 * in, InFeetInches, f, "1 ft", "step of a foot"},
		{kindLength, 64 * in, InFeetInches, 3 * in, "5 ft 3 in", ""},
		{kindLength, 64 * in, InFeetInches, in / 10, "5 ft 4 in", "tenths of an inch"},
		{kindLength, 90*in + in/4, InFeetInches, in / 10, "7 ft 6.3 in", "tenths of an inch"},
		{kindLength, in / 4, InFeetInches, in / 10, "0.3 in", "no feet"},
		{kindLength, 230 * cm, InFeetInches, cm, "7 ft 6.6 in", "2.3 m is 90.551 in"},
		{kindLength, 213 * cm, InFeetInches, cm, "6 ft 11.9 in", "213 cm is 83.858 in"},
		{kindLength, 95*in + 98*in/100, InFeetInches, 2 * in / 100, "7 ft 11.98 in", ""},
		{kindLength, 95_999_999 * in / 1_000_000, InFeetInches, 49_999 * in / 1_000_000, "8 ft", "12.00 in is a foot"},
		{kindLength, 11_999_999 * in / 1_000_000, InFeetInches, 49_999 * in / 1_000_000, "1 ft", "12.00 in is a foot"},
		{kindLength, 90 * in, InFeet, in, "7.5 ft", ""},
		{kindLength, 64 * in, InFeet, in, "5.33 ft", "5.3333 ft; an inch is 0.0833 ft"},
		{kindLength, 64 * in, InFeet, f / 10, "5.3 ft", ""},
		{kindLength, 64 * in, InFeet, f, "5 ft", ""},
		{kindLength, 64 * in, InFeet, in / 16, "5.333 ft", "1/16 in is 0.0052 ft"},
		{kindLength, 64 * in, InFeet, 1, "5.333333333 ft", "a nanometer is 3.3e-9 ft"},
		{kindLength, -64 * in, InFeet, f / 10, "-5.3 ft", ""},
		{kindLength, 0, InFeet, f / 10, "0 ft", ""},
		{kindLength, 36 * in / 100, InFeet, f / 100, "0.03 ft", "zero after the point"},
		{kindLength, 9_999 * f / 10_000, InFeet, 3_333 * f / 10_000, "1 ft", "0.9999 ft: four places are three too many"},
		{kindLength, 9_999 * f / 10_000, InFeet, 33 * f / 10_000, "0.9999 ft", "0.9999 ft: four places are one more than three"},
		{kindLength, 29 * f / 4, InFeet, f / 4, "7.25 ft", "one place more than one makes quarters exact"},
		{kindLength, 57 * f / 8, InFeet, f / 8, "7.125 ft", "two places more make eighths exact"},
		{kindLength, 113 * f / 16, InFeet, f / 16, "7.0625 ft", "two more than two make sixteenths exact"},
		{kindLength, 225 * f / 32, InFeet, f / 32, "7.03 ft", "7.03125 ft: three more are too many"},
		{kindLength, f / 8, InFeet, f / 32, "0.13 ft", "0.125 ft to two places: half goes up"},
		{kindLength, -f / 8, InFeet, f / 32, "-0.13 ft", "half goes away from zero"},
		{kindLength, 5 * f / 2, InFeet, 5 * f / 2, "2.5 ft", "step over a foot"},
		{kindLength, 64 * in, InInches, in, "64 in", ""},
		{kindLength, 64*in + in/2, InInches, in / 4, "64 1/2 in", ""},
		{kindLength, in / 4, InInches, in / 4, "1/4 in", ""},
		{kindLength, 0, InInches, in / 4, "0 in", ""},
		{kindLength, 64*in + in/2, InInches, in / 10, "64.5 in", ""},
		{kindLength, 162 * cm, InInches, cm, "63.8 in", "63.7795 in"},
		{kindLength, 90 * in, InYards, in, "2.5 yd", ""},
		{kindLength, 81 * f, InYards, f, "27 yd", ""},
		{kindLength, 20 * f, InYards, f, "6.7 yd", "6.667 yd; a foot is 0.33 yd"},
		{kindLength, 90 * in, InMetric, cm, "2.29 m", "228.6 cm"},
		{kindLength, 90 * in, InMetric, cm / 10, "2.286 m", ""},
		{kindLength, 90 * in, InMetric, 10 * cm, "2.3 m", ""},
		{kindLength, 90 * in, InMetric, 100 * cm, "2 m", ""},
		{kindLength, 18 * in, InMetric, cm, "46 cm", "45.72 cm"},
		{kindLength, 995 * cm / 10, InMetric, cm, "1 m", "99.5 cm rounds up to a meter"},
		{kindLength, 18 * in, InMetric, cm / 10, "45.7 cm", ""},
		{kindLength, 3 * cm / 10, InMetric, cm / 10, "3 mm", ""},
		{kindLength, 3 * cm / 10, InMetric, cm, "0 m", ""},
		{kindLength, -18 * in, InMetric, cm, "-46 cm", ""},
		{kindLength, 90*in + 1, InFeet, 0, "2.286000001 m", "no step: exact"},
		{kindLength, 90 * in, InFeet, -in, "7 ft 6 in", "a negative step: exact"},
		{kindLength, 90*in + 1, numStyles, in, "2.286000001 m", "no style: exact"},
		{kindLength, 90*in + 1, 255, in, "2.286000001 m", "no style: exact"},
		{kindLength, math.MaxInt64, InMetric, 1, "9223372036.854775807 m", "no overflow"},
		{kindLength, math.MinInt64, InMetric, 1, "-9223372036.854775808 m", "no overflow"},
		{kindLength, math.MaxInt64, InMetric, math.MaxInt64, "9223372037 m", "no overflow"},
		{kindLength, math.MinInt64, InMetric, 1<<62 + 1, "-9223372037 m", "rounds to 2⁶³+2 nm, more than a Length holds"},
		{kindLength, math.MinInt64, InMetric, 6_148_914_691_236_517_205, "-12297829382 m", "rounds to 1.33·2⁶³ nm"},
		{kindLength, math.MinInt64, InFeet, 1, "-30260406945.06160042 ft", "2⁶³/304,800,000"},

		{kindArea, 1800 * sqin, InFeetInches, sqin, "12 sq ft 72 sq in", ""},
		{kindArea, 1800*sqin + sqin/4, InFeetInches, sqin / 4, "12 sq ft 72.25 sq in", "decimals, no fractions"},
		{kindArea, 1800 * sqin, InFeet, sqft / 10, "12.5 sq ft", ""},
		{kindArea, 1800 * sqin, InInches, sqin, "1800 sq in", ""},
		{kindArea, 1800 * sqin, InYards, sqft, "1.4 sq yd", "1.444 sq yd: 13 sq ft to the nearest"},
		{kindArea, 1800 * sqin, InMetric, int64(SquareMeter) / 100, "1.16 m²", "1.1613 m²"},
		{kindArea, 64 * sqin, InMetric, int64(squareCentimeter), "413 cm²", "412.9 cm²"},

		{kindMass, 52 * oz, InFeetInches, oz, "3 lb 4 oz", ""},
		{kindMass, 52*oz + oz/2, InFeetInches, oz, "3 lb 4 oz", "half an ounce less half a nanogram"},
		{kindMass, 52*oz + oz/2 + 1, InFeetInches, oz, "3 lb 5 oz", "just above half"},
		{kindMass, 52*oz + oz/2, InFeetInches, oz / 10, "3 lb 4.5 oz", "decimals, no fractions"},
		{kindMass, 52 * oz, InFeet, lb / 100, "3.25 lb", ""},
		{kindMass, 52 * oz, InInches, oz, "52 oz", ""},
		{kindMass, 52 * oz, InYards, lb / 100, "3.25 lb", "the larger unit"},
		{kindPower, 175_400, InFeetInches, 1000, "175 W", "watts in every style"},
		{kindPower, 175_400, InYards, 100, "175.4 W", "watts in every style"},
		{kindMass, 52 * oz, InMetric, 10 * g, "1.47 kg", "1474 g"},
		{kindMass, 12 * oz, InMetric, g, "340 g", "340.19 g"},
		{kindMass, g / 2, InMetric, g / 1000, "500 mg", ""},
		{kindMass, 0, InMetric, g, "0 kg", ""},

		{kindPower, 4_800, InMetric, 1_000, "5 W", ""},
		{kindPower, 4_849, InMetric, 100, "4.8 W", ""},
		{kindPower, 1_440_000, InMetric, 1_000, "1440 W", ""},
		{kindPower, 0, InMetric, 1_000, "0 W", ""},
	} {
		var got string
		switch tt.kind {
		case kindLength:
			got = Length(tt.v).Format(tt.style, Length(tt.step))
		case kindArea:
			got = Area(tt.v).Format(tt.style, Area(tt.step))
		case kindMass:
			got = Mass(tt.v).Format(tt.style, Mass(tt.step))
		case kindPower:
			got = Power(tt.v).Format(tt.style, Power(tt.step))
		}
		if got != tt.want {
			t.Errorf("%d: Format(%d, style %d, step %d) = %q, want %q (%s)", tt.kind, tt.v, tt.style, tt.step, got, tt.want, tt.reason)
		}
	}
}

// TestFormatReads checks that what Format prints is read back as a value no further from the value
// than half a step and half a place of a decimal that is no larger than a step: together one step.
func TestFormatReads(t *testing.T) {
	all := []Style{InFeetInches, InFeet, InInches, InYards, InMetric}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(allKinds).Draw(t, "kind")
		style := rapid.SampledFrom(all).Draw(t, "style")
		v := rapid.OneOf(rapid.Int64Range(-1<<62, 1<<62), rapid.Int64Range(-1e10, 1e10), rapid.Int64Range(-1e13, 1e13)).Draw(t, "value")
		step := rapid.OneOf(rapid.Int64Range(1, 1e9), rapid.Int64Range(1, 1<<61), rapid.SampledFrom([]int64{
			int64(Inch), int64(Inch / 16), int64(Centimeter), int64(SquareFoot), int64(Ounce), int64(Watt),
		})).Draw(t, "step")
		s := k.format(v, style, step)
		got, err := texts[k].parse(s)
		if err != nil {
			t.Fatalf("format(%d, %d, %d) = %q: %v", v, style, step, s, err)
		}
		diff := new(big.Int).Sub(big.NewInt(got), big.NewInt(v))
		if diff.CmpAbs(big.NewInt(step)) > 0 {
			t.Fatalf("format(%d, %d, %d) = %q, which is %d: off by more than a step", v, style, step, s, got)
		}
		if strings.Contains(s, ".") && strings.Contains(s, "0 ") && strings.HasSuffix(strings.Fields(s[strings.Index(s, "."):])[0], "0") {
			t.Fatalf("format(%d, %d, %d) = %q has closing zeros", v, style, step, s)
		}
		if next := k.format(v+step, style, step); next == s {
			t.Fatalf("format(%d, %d, %d) = %q, and so is the value a step on", v, style, step, s)
		}
	})
}

func TestStyleText(t *testing.T) {
	for s := range numStyles {
		text, err := s.MarshalText()
		var back Style
		if err != nil || back.UnmarshalText(text) != nil || back != s || string(text) != s.String() {
			t.Errorf("%d: %q, %v comes back as %v", s, text, err, back)
		}
	}
	if text, err := numStyles.MarshalText(); text != nil || !errors.Is(err, ErrName) || numStyles.String() != "Style(5)" {
		t.Errorf("no style: %q, %v, %v", text, err, numStyles)
	}
	if v, err := numStyles.Value(); v != nil || !errors.Is(err, ErrName) {
		t.Errorf("no style for a database: %v, %v", v, err)
	}
	style := InYards
	if err := style.UnmarshalText([]byte(strings.Repeat("x", 100))); !errors.Is(err, ErrName) || style != InYards {
		t.Errorf("a long text: %v, %v", style, err)
	}
	longest := "feet" + strings.Repeat(" ", maxText-len("feet"))
	if err := style.UnmarshalText([]byte(longest + " ")); !errors.Is(err, ErrName) || style != InYards {
		t.Errorf("a name and space, %d bytes: %v, %v", maxText+1, style, err)
	}
	if err := style.UnmarshalText([]byte(longest)); err != nil || style != InFeet {
		t.Errorf("a name and space, %d bytes: %v, %v", maxText, style, err)
	}
}
