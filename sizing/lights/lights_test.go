package lights

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// Units by their short names.
const (
	in = units.Inch
	ft = units.Foot
)

var label = Label{Lamps: 100, Length: 25 * ft, Power: 4800 * units.Milliwatt, EndToEnd: 8}

func TestStringsCount(t *testing.T) {
	for lamps, want := range map[int]int{0: 0, 1: 1, 100: 1, 101: 2, 900: 9, 1_000_000: 10_000} {
		if s, err := label.For(shopping.Quantity{Pieces: lamps}); s != (Strings{label, want}) || err != nil {
			t.Errorf("%d lamps: %v, %v; want %d strings", lamps, s, err, want)
		}
	}
	for length, want := range map[units.Length]int{0: 0, 1: 1, 25 * ft: 1, 25*ft + 1: 2, 1_000_000 * in: 3334} {
		if s, err := label.For(shopping.Quantity{Length: length}); s != (Strings{label, want}) || err != nil {
			t.Errorf("%v: %v, %v; want %d strings", length, s, err, want)
		}
	}
	// ENERGY STAR, decorative light strings: 70 lamps of 0.05 W over 24 ft; 700
	// lamps take 10 strings and 35 W.
	star := Label{Lamps: 70, Length: 24 * ft, Power: 3500 * units.Milliwatt}
	s, err1 := star.For(shopping.Quantity{Pieces: 700})
	load, err2 := s.Load(Circuit{Volts: 120, Amperes: 15})
	if err1 != nil || err2 != nil || load.Power != 35*units.Watt {
		t.Errorf("%v: %v, %v, %v", s, load, err1, err2)
	}
	for _, row := range []struct{ count, joined, want int }{
		{0, 3, 0}, {1, 3, 1}, {3, 3, 1}, {4, 3, 2}, {9, 3, 3}, {9, 0, 3}, {10, 0, 4}, {9, 1, 9}, {1_000_000, 1000, 1000},
	} {
		s := Strings{label, row.count}
		s.Each.EndToEnd = row.joined
		if n, err := s.Runs(); n != row.want || err != nil {
			t.Errorf("%d strings, %d joined: %d runs, %v; want %d", row.count, row.joined, n, err, row.want)
		}
	}
	if got, want := (Strings{label, 1}).String(), "1 string of 100 lamps, 4.8 W each"; got != want {
		t.Errorf("prints %q, want %q", got, want)
	}
	if got := (Load{Power: units.Watt}).String(); got != unchecked {
		t.Errorf("a load without a limit prints %q", got)
	}
	for _, code := range []string{"load", "overload", "off", "days"} {
		if c := cautionOf(code); c.Code != code || c.Text == "" || c.Source == "" {
			t.Errorf("%s: %+v", code, c)
		}
	}
}

// NEC 210.20(A) as quoted: 80 % of the circuit for a continuous load.
func TestLoad(t *testing.T) {
	watt := units.Watt
	for _, row := range []struct {
		reason string
		s      Strings
		c      Circuit
		power  units.Power
		limit  units.Power
		over   bool
	}{
		{"15 A at 120 V: 1440 W, 12 A", Strings{label, 9}, Circuit{120, 15, 0}, 43_200, 1440 * watt, false},
		{"20 A at 120 V: 1920 W, 16 A", Strings{label, 9}, Circuit{120, 20, 0}, 43_200, 1920 * watt, false},
		{"300 strings are 1440 W: just within", Strings{label, 300}, Circuit{120, 15, 0}, 1440 * watt, 1440 * watt, false},
		{"a milliwatt over", Strings{label, 300}, Circuit{120, 15, 1}, 1_440_001, 1440 * watt, true},
		{"what else is on it counts", Strings{label, 9}, Circuit{120, 15, 1400 * watt}, 1_443_200, 1440 * watt, true},
		{"230 V, 10 A", Strings{label, 0}, Circuit{230, 10, 0}, 0, 1840 * watt, false},
		{"the least circuit", Strings{label, 1}, Circuit{100, 5, 0}, 4800, 400 * watt, false},
		{"the most", Strings{Label{10_000, 1000 * ft, 10_000 * units.Watt, 1000}, 1_000_000}, Circuit{277, 100, 100_000 * units.Watt}, 10_000_100_000_000, 22_160 * watt, true},
	} {
		got, err := row.s.Load(row.c)
		caution := cautionOf("load")
		if row.over {
			caution = cautionOf("overload")
		}
		if want := (Load{row.power, row.limit, caution}); got != want || err != nil {
			t.Errorf("%s: %+v, %v; want %+v", row.reason, got, err, want)
		}
	}
	if got, want := (Load{Power: 1, Limit: 1, Caution: units.Caution{Text: "care"}}).String(), "0.001 W of 0.001 W: within the limit; care"; got != want {
		t.Errorf("prints %q, want %q", got, want)
	}
	if got, want := (Load{Power: 2, Limit: 1, Caution: units.Caution{Text: "care"}}).String(),
		"0.002 W of 0.001 W: OVER THE LIMIT; care"; got != want {
		t.Errorf("prints %q, want %q", got, want)
	}
}

// US Department of Energy and ENERGY STAR, as quoted: 12 h for 40 days at $0.119.
func TestUse(t *testing.T) {
	twelve := decimal.New(12, 0)
	for _, row := range []struct {
		watts        units.Power
		energy, cost string
	}{{175, "84", "9.996"}, {48, "23.04", "2.74176"}} {
		got, err := Strings{Label{Lamps: 1, Length: ft, Power: row.watts * units.Watt}, 1}.Use(twelve, 40)
		if err != nil || got.Energy.String() != row.energy || got.Energy.Mul(decimal.New(119, -3)).String() != row.cost || got.Caution != cautionOf("off") {
			t.Errorf("%d W: %v, %v; want %s kWh for %s", row.watts, got, err, row.energy, row.cost)
		}
	}
	if got, err := (Strings{label, 1}).Use(twelve, 90); err != nil || got.Caution != cautionOf("off") {
		t.Errorf("90 days: %v, %v", got, err)
	}
	if got, err := (Strings{label, 1}).Use(twelve, 91); err != nil || got.Caution != cautionOf("days") {
		t.Errorf("91 days: %v, %v", got, err)
	}
	got, err := Strings{Label{10_000, 1000 * ft, 10_000 * units.Watt, 1000}, 1_000_000}.Use(decimal.New(24, 0), 366)
	if err != nil || got.Energy.String() != "87840000000" {
		t.Errorf("the most: %v, %v", got, err)
	}
	if got, err := (Strings{label, 1}).Use(decimal.Decimal{}, 0); err != nil || !got.Energy.IsZero() {
		t.Errorf("no season: %v, %v", got, err)
	}
	if got, err := (Strings{label, 1}).Use(decimal.New(5_500_000_001, -9), 1); err != nil || got.Energy.String() != "0.0264000000048" {
		t.Errorf("a fine season: %v, %v", got, err)
	}
	for _, row := range []struct {
		field, value string
		hours        decimal.Decimal
		days         int
	}{
		{"hoursPerDay", "-1", decimal.New(-1, 0), 0},
		{"hoursPerDay", "25", decimal.New(25, 0), 0},
		{"hoursPerDay", "24.000000001", decimal.New(24_000_000_001, -9), 0},
		{"hoursPerDay", "0.00000000000000001", decimal.New(1, -17), 0},
		{"hoursPerDay", "1.00000000000000001", decimal.New(100_000_000_000_000_001, -17), 0},
		{"hoursPerDay", "1e-2000000000", decimal.New(1, -2_000_000_000), 0},
		{"hoursPerDay", "1e2000000000", decimal.New(1, 2_000_000_000), 0},
		{"hoursPerDay", "-1e2147483647", decimal.New(-1, math.MaxInt32), 0},
		{"hoursPerDay", "1e-2147483648", decimal.New(1, math.MinInt32), 0},
		{"hoursPerDay", strings.Repeat("9", 64), decimal.RequireFromString(strings.Repeat("9", 64)), 0},
		{"hoursPerDay", strings.Repeat("9", 64) + "...", decimal.RequireFromString(strings.Repeat("9", 70)), 0},
		{"days", "-1", decimal.Decimal{}, -1},
		{"days", "367", decimal.Decimal{}, 367},
	} {
		got, err := Strings{label, 1}.Use(row.hours, row.days)
		refused(t, err, units.ErrRange, "Strings.Use", row.field)
		if e, ok := err.(*units.Error); !ok || e.Value != row.value || !got.Energy.IsZero() || got.Caution != (units.Caution{}) {
			t.Errorf("%s %s: %v, %v", row.field, row.value, got, err)
		}
	}
}

// A number is taken for what it is worth, however it is written.
func TestUseByValue(t *testing.T) {
	third := decimal.New(16, 0).Div(decimal.New(3, 0)) // 5 h 20 min, in 16 places
	for _, row := range []struct {
		hours  decimal.Decimal
		energy string // of a kilowatt
	}{
		{decimal.RequireFromString("12.0000000000"), "12"},
		{decimal.RequireFromString("12." + strings.Repeat("0", 300)), "12"},
		{decimal.New(36, 0).Div(decimal.New(3, 0)), "12"},
		{third, "5.3333333333333333"},
		{decimal.RequireFromString("0.0000000000000001"), "0.0000000000000001"},
		{decimal.New(0, 20), "0"},
		{decimal.New(0, math.MaxInt32), "0"},
		{decimal.New(0, math.MinInt32), "0"},
		{decimal.New(2, 1), "20"},
	} {
		s := Strings{Label{Lamps: 1, Length: ft, Power: 1000 * units.Watt}, 1}
		got, err := s.Use(row.hours, 1)
		if err != nil || got.Energy.String() != row.energy || got.Energy.Exponent() < -22 {
			t.Errorf("%v h: %v, %v; want %s kWh", row.hours.Exponent(), got, err, row.energy)
		}
	}
}

// A use that somebody made up prints at once, whatever its exponents.
func TestUseText(t *testing.T) {
	for _, row := range []struct {
		energy decimal.Decimal
		want   string
	}{
		{decimal.New(1, math.MaxInt32), "1e2147483647 kWh; care"},
		{decimal.New(-25, math.MinInt32), "-25e-2147483648 kWh; care"},
		{decimal.New(0, math.MaxInt32), "0 kWh; care"},
		{decimal.New(1, 64), "1" + strings.Repeat("0", 64) + " kWh; care"},
		{decimal.New(1, -64), "0." + strings.Repeat("0", 63) + "1 kWh; care"},
		{decimal.New(1, 65), "1e65 kWh; care"},
		{decimal.New(1, -65), "1e-65 kWh; care"},
	} {
		use := Use{Energy: row.energy, Caution: units.Caution{Text: "care"}}
		if got := use.String(); got != row.want {
			t.Errorf("prints %.200q, want %q", got, row.want)
		}
	}
	if got := (Use{}).String(); got != unchecked {
		t.Errorf("zero prints %q", got)
	}
}

func TestLightErrors(t *testing.T) {
	for _, row := range []struct {
		field  string
		change func(*Label)
	}{
		{"lamps", func(s *Label) { s.Lamps = 0 }},
		{"lamps", func(s *Label) { s.Lamps = 10_001 }},
		{"length", func(s *Label) { s.Length = in - 1 }},
		{"length", func(s *Label) { s.Length = 1000*ft + 1 }},
		{"power", func(s *Label) { s.Power = 0 }},
		{"power", func(s *Label) { s.Power = 10_000*units.Watt + 1 }},
		{"endToEnd", func(s *Label) { s.EndToEnd = -1 }},
		{"endToEnd", func(s *Label) { s.EndToEnd = 1001 }},
	} {
		s := label
		row.change(&s)
		a, err := s.For(shopping.Quantity{Pieces: 1})
		refused(t, err, units.ErrRange, "Label.For", row.field)
		runs, err := Strings{s, 1}.Runs()
		refused(t, err, units.ErrRange, "Strings.Runs", "each/"+row.field)
		load, err := Strings{s, 1}.Load(Circuit{120, 15, 0})
		refused(t, err, units.ErrRange, "Strings.Load", "each/"+row.field)
		use, err := Strings{s, 1}.Use(decimal.Decimal{}, 0)
		refused(t, err, units.ErrRange, "Strings.Use", "each/"+row.field)
		if a != (Strings{}) || runs != 0 || load != (Load{}) || use.Caution != (units.Caution{}) {
			t.Errorf("%+v: a result with an error", s)
		}
	}
	for _, s := range []Label{{1, in, 1, 0}, {10_000, 1000 * ft, 10_000 * units.Watt, 1000}} {
		if _, err := s.For(shopping.Quantity{Pieces: 1}); err != nil {
			t.Errorf("%+v is at the edge of the range: %v", s, err)
		}
	}
	for _, n := range []int{-1, 1_000_001} {
		_, err := label.For(shopping.Quantity{Pieces: n})
		refused(t, err, units.ErrRange, "Label.For", "quantity")
		_, err = Strings{label, n}.Runs()
		refused(t, err, units.ErrRange, "Strings.Runs", "count")
		_, err = Strings{label, n}.Load(Circuit{120, 15, 0})
		refused(t, err, units.ErrRange, "Strings.Load", "count")
		_, err = Strings{label, n}.Use(decimal.Decimal{}, 0)
		refused(t, err, units.ErrRange, "Strings.Use", "count")
	}
	for _, l := range []units.Length{-1, 1_000_000*in + 1, math.MaxInt64} {
		_, err := label.For(shopping.Quantity{Length: l})
		refused(t, err, units.ErrRange, "Label.For", "quantity")
	}
	_, err := label.For(shopping.Quantity{Length: ft, Pieces: 1})
	refused(t, err, units.ErrRange, "Label.For", "quantity")
	for _, row := range []struct {
		field string
		c     Circuit
	}{
		{"volts", Circuit{99, 15, 0}},
		{"volts", Circuit{278, 15, 0}},
		{"amperes", Circuit{120, 4, 0}},
		{"amperes", Circuit{120, 101, 0}},
		{"other", Circuit{120, 15, -1}},
		{"other", Circuit{120, 15, 100_000*units.Watt + 1}},
	} {
		load, err := Strings{label, 1}.Load(row.c)
		refused(t, err, units.ErrRange, "Strings.Load", row.field)
		if load != (Load{}) {
			t.Errorf("%+v with an error", load)
		}
	}
}

// More lamps never take fewer strings, plugs or watts, and the strings suffice.
func TestLightProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Label{
			Lamps:    rapid.IntRange(1, 10_000).Draw(t, "lamps"),
			Length:   units.Length(rapid.Int64Range(int64(in), int64(1000*ft)).Draw(t, "length")),
			Power:    units.Power(rapid.Int64Range(1, int64(10_000*units.Watt)).Draw(t, "power")),
			EndToEnd: rapid.IntRange(0, 1000).Draw(t, "end to end"),
		}
		n := rapid.IntRange(0, 999_999).Draw(t, "n")
		a, err1 := s.For(shopping.Quantity{Pieces: n})
		b, err2 := s.For(shopping.Quantity{Pieces: n + 1})
		if err1 != nil || err2 != nil || a.Count > b.Count || a.Count*s.Lamps < n || (a.Count-1)*s.Lamps >= n && n > 0 {
			t.Fatalf("%d lamps: %v, one more %v; %v, %v", n, a, b, err1, err2)
		}
		c, err1 := s.For(shopping.Quantity{Length: units.Length(n) * in})
		if err1 != nil || units.Length(c.Count)*s.Length < units.Length(n)*in || n > 0 && units.Length(c.Count-1)*s.Length >= units.Length(n)*in {
			t.Fatalf("%d in: %v, %v", n, c, err1)
		}
		circuit := Circuit{rapid.IntRange(100, 277).Draw(t, "volts"), rapid.IntRange(5, 100).Draw(t, "amperes"), 0}
		la, err1 := a.Load(circuit)
		lb, err2 := b.Load(circuit)
		if err1 != nil || err2 != nil || lb.Power < la.Power || (la.Caution.Code == "overload") != (la.Power > la.Limit) ||
			5*la.Limit != 4*units.Power(circuit.Volts*circuit.Amperes)*units.Watt {
			t.Fatalf("%v, %v: %v, %v", a, b, la, lb)
		}
		ra, err1 := a.Runs()
		rb, err2 := b.Runs()
		if err1 != nil || err2 != nil || ra > rb || ra > a.Count {
			t.Fatalf("%v in %d runs, %v in %d", a, ra, b, rb)
		}
	})
}

// refused fails unless err is an [*units.Error] wrapping want that names fn and field,
// inside a value or not.
func refused(t *testing.T, err, want error, fn, field string) {
	t.Helper()
	var e *units.Error
	if !errors.As(err, &e) || !errors.Is(err, want) || e.Func != "lights."+fn || e.Field != field && !strings.HasSuffix(e.Field, "/"+field) || e.Want == "" || e.Value == "" {
		t.Errorf("error %v; want %v of %s in %s", err, want, field, fn)
	}
}
