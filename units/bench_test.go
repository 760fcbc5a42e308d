package units

import (
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"
)

// BenchmarkParse sets ParseLength beside time.ParseDuration on texts of the same length:
//
//	go test -bench Parse -benchmem ./units
func BenchmarkParse(b *testing.B) {
	for _, s := range []string{"7 ft 6 in", `7'6"`, "7½ ft", "7.5 ft", "7 1/2 ft", "230 cm", "7 Feet 6 Inches"} {
		b.Run("length="+strings.ReplaceAll(s, " ", ""), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := ParseLength(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	// 9 bytes as in 7 ft 6 in: of two parts, and of three.
	for _, s := range []string{"70ms600us", "72h30m15s", "7.5h", "7m6.5s"} {
		b.Run("duration="+s, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := time.ParseDuration(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkString(b *testing.B) {
	b.Run("length", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_ = (7*Foot + 6*Inch).String()
		}
	})
	b.Run("format", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_ = (7*Foot + 6*Inch).Format(InFeet, Inch)
		}
	})
	b.Run("duration", func(b *testing.B) {
		b.ReportAllocs()
		d := 7*time.Hour + 6*time.Minute
		for b.Loop() {
			_ = d.String()
		}
	})
}

func TestAllocations(t *testing.T) {
	l, half := 7*Foot+6*Inch, []byte("7 ft 6 1/2 in")
	long := "7 MILLIMETRES 0.33 nanometres" + strings.Repeat(" ", 35) // 64 bytes
	for name, f := range map[string]func(){
		"ParseLength":   func() { _, _ = ParseLength("7 ft 6 in") },
		"ParseLength½":  func() { _, _ = ParseLength("-7′ 6½″") },
		"ParseLength64": func() { _, _ = ParseLength(long) },
		"ParseArea":     func() { _, _ = ParseArea("12 Square Feet 72.5 sq. in.") },
		"ParseMass":     func() { _, _ = ParseMass("3 Pounds 4 1/3 oz") },
		"ParsePower":    func() { _, _ = ParsePower("1.5 KW") },
		"UnmarshalText": func() { _ = l.UnmarshalText(half) },
		"In":            func() { _ = l.In(Yard) },
		"Round":         func() { _, _ = Round(l, Inch/16) },
		"Ceil":          func() { _, _ = Ceil(l, Inch/16) },
		"Floor":         func() { _, _ = Floor(l, Inch/16) },
		"AreaOf":        func() { _, _ = AreaOf(l, l) },
		"FromFloat":     func() { _, _ = FromFloat(7.5, Foot) },
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
	// The other way round, to know that the measure works.
	if n := testing.AllocsPerRun(100, func() { _, _ = FromDecimal(decimal.New(75, -1), Foot) }); n == 0 {
		t.Error("a decimal product does not allocate?")
	}
}
