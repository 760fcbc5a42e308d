package golden

import (
	"math"

	"github.com/shopspring/decimal"

	"example.com/fircone/units"
)

// A quantity is one of the four types of package units.
type quantity[Q any] interface {
	units.Length | units.Area | units.Mass | units.Power
	String() string
	In(Q) float64
}

func unitsPage(p *page) {
	ofUnits(p, "length", nm, units.ParseLength, []string{
		"7 ft 6 in", "7ft6in", "7'6\"", "7′6″", "7'-6\"", "7.5 ft", "7 1/2 ft", "7½ ft", "7-1/2 in", "90in", "2 yd 1 ft", "7 Feet 6 Inches",
		"7 ft. 6 in.", "-7 ft 6 in", "+7 ft", "2.3 m", "228.6 cm", "5 um", "5 µm", "1 nm", "0 ft", "-0 in", "1/64 in", "3/8 in", "7 ft 6 3/16 in",
		"0.1 nm", "0.5 nm", "-0.5 nm", "1.49999999999 nm", "1/3 in", "2/3 ft", "9 metres", "12 millimeters", "9223372036854775807 nm",
		"9223372036854775808 nm", "-9223372036854775808 nm", "-9223372036854775809 nm", "9223372 km", "9999999999 m", "64 in", "14 ft 2 in",
		"4 ft 6 in", "40 ft 6 in", "5 ft 4 in", "1000 ft", "0.0000001 yd", "⅝ in", "9-ft", "6 yd", "3 yd 2 ft 11 in",
		"", "7", "7'6", "7 furlongs", "--7 ft", "7 ft -6 in", "7,5 ft", "1e3 ft", "6 in 7 ft", "7 ft 14 in", "7.5 ft 2 in", "7. ft", "1/0 ft",
		"7 3/2 in", "ft", "7 ft 6", "seven ft", "7 sq ft", "7 lb",
	})
	ofUnits(p, "area", um2, units.ParseArea, []string{
		"12 sq ft", "12 square feet", "12 ft²", "12 ft2", "12 sqft 72 sqin", "2 m2", "12.5 ft²", "1 sq in", "1/3 sq in", "0.5 sq yd", "40 cm²", "7 mm2",
		"1 um2", "0.4 um2", "9223372 m2", "9223373 m2", "-3 sq ft", "0 sq ft", "38.6 sq ft", "7 ft", "12", "12 sq", "1 sq ft 144 sq in",
	})
	ofUnits(p, "mass", ng, units.ParseMass, []string{
		"3 lb 4 oz", "3¼ pounds", "1/16 oz", "1/16 lb", "0.3 lb", "5 lb", "250 g", "1.25 kg", "1 mg", "1 ng", "0.5 ng", "9223372 kg", "9223373 kg",
		"16 oz", "1 lb 16 oz", "-2 oz", "0 oz", "7 Mg", "7", "3 ft",
	})
	ofUnits(p, "power", mW, units.ParsePower, []string{
		"4.8 W", "1.5 kW", "40 mW", "7 watts", "0 W", "0.0005 W", "0.0004 W", "-1 W", "1440 W", "1 kW 200 W", "9223372036854775807 mW", "9223372036854775808 mW",
		"1 MW", "5", "5 V",
	})
	few := []int64{
		0, 1, -1, 2, 7, 999, 1_000_000, 25_399_999, 25_400_000, 304_800_000, -304_800_001, 2_286_000_000, 914_400_000_000, 453_592_370_000,
		-28_349_523_125, math.MaxInt64, math.MinInt64,
	}
	convert(p, "length", nm, few, []units.Length{1, units.Millimeter, units.Inch / 16, units.Inch, units.Foot, units.Yard, units.Meter, 7 * units.Foot})
	convert(p, "area", um2, few, []units.Area{1, units.SquareInch, units.SquareFoot, units.SquareMeter})
	convert(p, "mass", ng, few, []units.Mass{1, units.Gram, units.Ounce, units.Pound, units.Kilogram})
	convert(p, "power", mW, few, []units.Power{units.Milliwatt, units.Watt, 1000 * units.Watt, 7 * units.Watt})
	for _, a := range []string{"1 in", "7 ft", "2.3 m", "1 nm", "-3 ft", "3000 nm", "3.1 m", "90 m"} {
		for _, b := range []string{"1 in", "64 in", "0 ft", "1500 nm", "-7 nm", "100 m", "9000000000 m"} {
			p.add("rectangle %s x %s = %s", a, b, or(um2)(units.AreaOf(length(a), length(b))))
		}
	}
	styles(p)
}

func ofUnits[Q quantity[Q]](p *page, name string, base func(Q) string, read func(string) (Q, error), texts []string) {
	for _, s := range texts {
		p.add("read %s %q = %s", name, s, or(base)(read(s)))
	}
	var d draw
	for i := range 60 {
		v := Q(int64(d.upTo(1<<30)) << (i % 24) >> (i % 5) * 7)
		if i%3 == 0 {
			v = Q(d.upTo(40_000)) * 6_350_000
		}
		if i%7 == 0 {
			v = -v
		}
		back, err := read(v.String())
		p.add("print %s = %q, read back %t", base(v), v.String(), err == nil && back == v)
	}
}

func convert[Q quantity[Q]](p *page, name string, base func(Q) string, values []int64, steps []Q) {
	for _, n := range values {
		v := Q(n)
		for _, step := range steps {
			p.add("round %s by %s = %s, down %s, up %s", base(v), base(step), or(base)(units.Round(v, step)), or(base)(units.Floor(v, step)), or(base)(units.Ceil(v, step)))
			p.add("divide %s by %s = %s, to 4 places %s, to 12 places %s", base(v), base(step), num(v.In(step)), or(dec)(units.Decimal(v, step, 4)), or(dec)(units.Decimal(v, step, 12)))
		}
	}
	for _, f := range []float64{0, 0.5, -0.5, 1.5, 7.5, 1.0 / 3, 2.3, -1e-9, 123456789.125, 1e12, 1e300, math.NaN()} {
		for _, step := range steps {
			p.add("times %s %s = %s", num(f), base(step), or(base)(units.FromFloat(f, step)))
		}
	}
	for _, s := range []string{"0", "0.5", "-0.5", "7.5", "0.333333333333333333", "1000000000", "99999999999999999999", "0.00000000000000000001"} {
		for _, step := range steps {
			p.add("exact times %s %s = %s", s, base(step), or(base)(units.FromDecimal(decimal.RequireFromString(s), step)))
		}
	}
}

// styles adds what is printed for people, rounded.
func styles(p *page) {
	for _, s := range []struct {
		word  string
		style units.Style
	}{{"feet and inches", units.InFeetInches}, {"feet", units.InFeet}, {"inches", units.InInches}, {"yards", units.InYards}, {"metric", units.InMetric}} {
		for _, text := range []string{"7 ft 6 in", "62 ft 11 7/16 in", "1/64 in", "2.3 m", "-4 ft 1/2 in", "0 ft", "999 ft 11 31/32 in", "9.99 mm"} {
			for _, step := range []string{"1/16 in", "1/4 in", "1 in", "1 ft", "1 cm", "1 mm"} {
				p.add("show %s in %s to %s = %q", text, s.word, step, length(text).Format(s.style, length(step)))
			}
		}
		for _, a := range []units.Area{0, units.SquareFoot * 12, units.SquareFoot*12 + units.SquareInch*72, units.SquareMeter*3 + 7, -units.SquareInch} {
			for _, step := range []units.Area{units.SquareInch, units.SquareFoot / 10, units.SquareFoot, units.SquareMeter / 10_000} {
				p.add("show %s in %s to %s = %q", um2(a), s.word, um2(step), a.Format(s.style, step))
			}
		}
	}
	for _, s := range []struct {
		word  string
		style units.Style
	}{{"pounds and ounces", units.InFeetInches}, {"pounds", units.InFeet}, {"ounces", units.InInches}, {"metric", units.InMetric}} {
		for _, m := range []units.Mass{0, units.Pound*3 + units.Ounce*4, units.Ounce / 16, units.Kilogram + 7, -units.Ounce * 17, units.Gram * 250} {
			for _, step := range []units.Mass{units.Ounce / 10, units.Ounce, units.Pound, units.Gram} {
				p.add("show %s in %s to %s = %q", ng(m), s.word, ng(step), m.Format(s.style, step))
			}
		}
	}
	for _, w := range []units.Power{0, 4800, 1_440_000, 57_600, -1, 999_999} {
		for _, step := range []units.Power{units.Watt / 10, units.Watt, 1000 * units.Watt} {
			p.add("show %s in metric to %s = %q", mW(w), mW(step), w.Format(units.InMetric, step))
		}
	}
}
