package golden

import (
	"fmt"

	"github.com/shopspring/decimal"

	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

func lightsPage(p *page) {
	for _, s := range []lights.Label{
		{Lamps: 100, Length: length("25 ft"), Power: 4800 * units.Milliwatt, EndToEnd: 3},
		{Lamps: 100, Length: length("33 ft"), Power: 40_800 * units.Milliwatt},
		{Lamps: 50, Length: length("12 ft 2 in"), Power: 25 * units.Watt, EndToEnd: 5},
		{Lamps: 300, Length: length("23.8 m"), Power: 7 * units.Watt, EndToEnd: 40},
		{Lamps: 1, Length: length("1 in"), Power: units.Milliwatt, EndToEnd: 1000},
	} {
		text := fmt.Sprintf("%d lamps %s %s joined %d", s.Lamps, nm(s.Length), mW(s.Power), s.EndToEnd)
		counted := func(s lights.Strings) string { return whole(s.Count) }
		for _, n := range []int{0, 1, 49, 50, 99, 100, 101, 450, 700, 900, 1148, 100_000} {
			p.add("strings of %s for %d lamps = %s", text, n, or(counted)(s.For(shopping.Quantity{Pieces: n})))
		}
		for _, l := range []string{"0 ft", "1 nm", "24 ft 11 in", "25 ft", "63 ft", "104 ft 2 in", "300 m"} {
			p.add("strings of %s for %s = %s", text, nm(length(l)), or(counted)(s.For(shopping.Quantity{Length: length(l)})))
		}
		for _, n := range []int{0, 1, 3, 4, 12, 41, 1000} {
			all := lights.Strings{Each: s, Count: n}
			p.add("runs of %d of %s = %s", n, text, or(whole)(all.Runs()))
			for _, c := range []lights.Circuit{{Volts: 120, Amperes: 15}, {Volts: 120, Amperes: 20, Other: 300 * units.Watt}, {Volts: 230, Amperes: 16, Other: 1}} {
				l, err := all.Load(c)
				p.add("load of %d of %s on %d V %d A and %s = %s", n, text, c.Volts, c.Amperes, mW(c.Other), or(func(l lights.Load) string {
					return fmt.Sprintf("%s of %s, %d mA of %d mA, over %t", mW(l.Power), mW(l.Limit), (l.Power+units.Power(c.Volts)-1)/units.Power(c.Volts), l.Limit/units.Power(c.Volts), l.Power > l.Limit)
				})(l, err))
			}
			for _, season := range []struct {
				hours, price string
				days         int
			}{{"12", "0.119", 40}, {"5.5", "0.3", 27}, {"24", "0", 366}, {"0", "1", 90}} {
				u, err := all.Use(decimal.RequireFromString(season.hours), season.days)
				p.add("season of %d of %s for %s h on %d days at %s = %s", n, text, season.hours, season.days, season.price, or(func(u lights.Use) string {
					return dec(u.Energy) + " kWh, " + dec(u.Energy.Mul(decimal.RequireFromString(season.price)))
				})(u, err))
			}
		}
	}
}
