package golden

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// hundredths returns n hundredths.
func hundredths(n int) decimal.Decimal { return decimal.New(int64(n), -2) }

func laborPage(p *page) {
	var d draw
	// One kind on a tree: how much of it is on each level, and how long that takes.
	for i := range 120 {
		r := labor.StartingRates()
		r.Reach = units.Length(d.upTo(97)) * units.Inch
		r.Pair = r.Reach + units.Length(d.upTo(49))*units.Inch
		r.Percent["above"], r.Percent["down"] = hundredths(d.upTo(10_001)), hundredths(d.upTo(10_001))
		rate := hundredths(d.upTo(1000))
		r.Minutes["ornaments"] = rate
		w := labor.Work{Height: units.Length(12+d.upTo(300)) * units.Inch, Needs: []shopping.Need{{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: 1 + d.upTo(400)}}}}
		if i%3 == 0 {
			w.From = units.Length(d.upTo(int(w.Height/units.Inch))) * units.Inch
		}
		up, down, err := r.Tasks([]labor.Work{w})
		var text []string
		minutes := 0
		for _, t := range up {
			text = append(text, fmt.Sprintf("%d in %d min by %d", t.Quantity.Pieces, t.Minutes, t.People))
		}
		for _, t := range down {
			minutes += t.Minutes * t.People
		}
		p.add("hang %d at %s min from %s to %s, ladder above %s, two above %s and %s %% = %s; down at %s %% %s", w.Needs[0].Quantity.Pieces, rate, nm(w.From), nm(w.Height), nm(r.Reach), nm(r.Pair), r.Percent["above"],
			strings.Join(text, ", "), r.Percent["down"], or(whole)(minutes, err))
	}
	// Chains of tasks that are not shared, for a crew.
	for range 100 {
		r := labor.StartingRates()
		r.Crew = 1 + d.upTo(4)
		var tasks []labor.Task
		var text []string
		for chain := range 1 + d.upTo(3) {
			var list []string
			for range 1 + d.upTo(2) {
				t := labor.Task{Work: chain, Kind: shopping.Light, Minutes: 1 + d.upTo(30), People: 1 + d.upTo(min(2, r.Crew))}
				tasks = append(tasks, t)
				list = append(list, fmt.Sprintf("%dx%d", t.Minutes, t.People))
			}
			text = append(text, strings.Join(list, " "))
		}
		_, time, err := r.Schedule(tasks)
		p.add("crew of %d does %s = %s", r.Crew, strings.Join(text, " | "), or(func(t units.Range[int]) string { return fmt.Sprintf("%d to %d", t.Min, t.Max) })(time, err))
	}
	// A quote with one line of each kind.
	for range 150 {
		r := labor.StartingRates()
		r.Places = d.upTo(5)
		names := []string{"markup", "discount", "deposit", "goods tax", "work tax", "travel tax"}
		var text []string
		for _, name := range names {
			r.Percent[name] = hundredths(d.upTo(3001))
			text = append(text, name+" "+dec(r.Percent[name]))
		}
		r.Price["hour"], r.Price["visit"], r.Price["consultation"] = hundredths(d.upTo(10_000)), hundredths(d.upTo(10_000)), hundredths(d.upTo(20_000))
		cost, minutes, visits := hundredths(d.upTo(100_000)), d.upTo(1000), d.upTo(4)
		item := shopping.Item{Kind: shopping.Pick}
		list := shopping.List{Total: cost, Purchases: []shopping.Purchase{{Shares: []shopping.Share{{Need: shopping.Need{Item: item}}}, Cost: cost, Buys: []shopping.Buy{{Offer: shopping.Offer{Item: item, Name: "box"}, Packs: 1}}}}}
		options, err := r.Quote(list, []labor.Task{{Minutes: minutes, People: 1}}, nil, visits)
		p.add("quote cost %s, %d min at %s, %d visits at %s, consultation %s, %s, %d places = %s", dec(cost), minutes, dec(r.Price["hour"]), visits, dec(r.Price["visit"]), dec(r.Price["consultation"]), strings.Join(text, ", "), r.Places,
			or(func(all []labor.Option) string {
				var totals []string
				for _, o := range all {
					totals = append(totals, dec(o.Total)+" deposit "+dec(o.Deposit))
				}
				return strings.Join(totals, ", ")
			})(options, err))
	}
	// Glass of two sizes into boxes of two kinds.
	for range 80 {
		large, small := d.upTo(150), d.upTo(200)
		few, many := 4+d.upTo(12), 16+d.upTo(20)
		thing := func(n int, size units.Length) labor.Thing {
			return labor.Thing{Lot: shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Size: size}, Quantity: shopping.Quantity{Pieces: n}}, Fragile: true}
		}
		_, count, err := labor.StartingRates().Pack([]labor.Thing{thing(large, 4*units.Inch), thing(small, 2*units.Inch)}, []labor.Box{
			{Name: "few", Cells: few, Cell: 4 * units.Inch}, {Name: "many", Cells: many, Cell: 2 * units.Inch},
		})
		p.add("pack %d large and %d small in boxes of %d for both or %d small = %s", large, small, few, many, or(func(n units.Range[int]) string { return fmt.Sprintf("%d to %d", n.Min, n.Max) })(count, err))
	}
	for range 80 {
		date := labor.Date(1 + d.upTo(3_652_059))
		p.add("day %d = %s", date, date)
	}
	// The dates of a job with a cut tree.
	for range 60 {
		r := labor.StartingRates()
		workday := 60 + d.upTo(540)
		r.Minutes["day"] = decimal.NewFromInt(int64(workday))
		r.Days["wiring"], r.Days["cut tree"], r.Days["picks"] = d.upTo(6), 1+d.upTo(50), d.upTo(60)
		stand := labor.Date(735_000 + d.upTo(10_000))
		down, minutes := stand+labor.Date(d.upTo(60)), d.upTo(4000)
		days, err := r.Dates(stand, down, minutes, []labor.Work{{Place: "cut tree"}, {Place: "mantel"}}, []shopping.Need{{Item: shopping.Item{Kind: shopping.Pick}}})
		p.add("stand %d down %d, %d min of %d a day, wiring %d, cut tree %d, order %d = %s", stand, down, minutes, workday, r.Days["wiring"], r.Days["cut tree"], r.Days["picks"], or(func(days []labor.Day) string {
			var text []string
			for _, day := range days {
				text = append(text, fmt.Sprintf("%d %s", day.Date, strings.Fields(day.Text)[0]+" "+strings.Fields(day.Text)[len(strings.Fields(day.Text))-1]))
			}
			return strings.Join(text, ", ")
		})(days, err))
	}
	for range 40 {
		item := shopping.Item{Kind: shopping.Pick}
		pieces := func(n int) []shopping.Lot {
			return []shopping.Lot{{Item: item, Quantity: shopping.Quantity{Pieces: n}}}
		}
		own, pack, packs, lost := d.upTo(50), 1+d.upTo(24), 1+d.upTo(5), d.upTo(60)
		list := shopping.List{Purchases: []shopping.Purchase{{Buys: []shopping.Buy{{Offer: shopping.Offer{Item: item, Name: "box", Pack: shopping.Quantity{Pieces: pack}}, Packs: packs}}}}}
		lots, err := labor.NextStock(pieces(own), list, pieces(lost))
		p.add("own %d, buy %d x %d, lose %d = %s", own, packs, pack, lost, or(func(lots []shopping.Lot) string {
			n := 0
			for _, l := range lots {
				n += l.Quantity.Pieces
			}
			return whole(n)
		})(lots, err))
	}
}
