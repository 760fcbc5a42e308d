package labor

import (
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// An Option is one way in which a client can have the job.
type Option struct {
	Name    string          `json:"name"`    // "consultation", "done for you", "goods only"
	Lines   []Line          `json:"lines"`   // goods, work, travel, each with its discount and tax
	Total   decimal.Decimal `json:"total"`   // of all lines
	Deposit decimal.Decimal `json:"deposit"` // due with the order
}

// A Line is one line of an option.
type Line struct {
	Text  string          `json:"text"`            // what it is for, "tax of 5 % on the goods"
	Basis string          `json:"basis,omitempty"` // costs and hours, for the house: clear it before a client sees the JSON
	Price decimal.Decimal `json:"price"`           // below zero for a discount
}

const (
	maxMoney  = 1_000_000     // a price
	maxCosts  = 1_000_000_000 // what goods cost
	maxVisits = 1_000         // visits
	places64  = 64            // bytes of a line's text
	sheet     = 76            // characters in a line
	priceAt   = 12            // characters that a price takes
)

// Quote returns what the job costs, as three options:
//
//	consultation   the fee, and one visit
//	done for you   the goods, the work of all tasks, and the visits
//	goods only     the goods; left out if there are none
//
// The goods are whole packs. Delivery, or whatever else the list's total has beyond purchases and
// tax, is a line of its own. The tax on its bills is passed on as it was paid; if you resell the
// goods, buy them without it. Up and down are those of [Rates.Tasks], with a line for each room;
// down is nil if the house does not take it down. Up to 1,000 visits. A line whose price is not
// among the rates says "without a price" and counts as zero. The prices are
//
//	goods     cost · (1 + markup)
//	work      minutes · people / 60 · hour, of a room together
//	travel    visits · visit
//	discount  of goods, work and travel
//	tax       of what is left of each
//	deposit   of the total
//
// each exact and then rounded to Places, half away from zero. More goods, tasks or higher rates
// (discount aside) never cost less. ErrFit reports purchases and tax that cost more than the total
// of their list.
func (r Rates) Quote(goods shopping.List, up, down []Task, visits int) ([]Option, error) {
	c := &checker{fn: "Rates.Quote"}
	c.percentTable(r)
	c.priceTable(r)
	c.whole("/places", r.Places, 0, maxPlaces)
	c.tasks("/up", up)
	c.tasks("/down", down)
	c.whole("visits", visits, 0, maxVisits)
	rest, tax := c.goods(goods)
	if c.err != nil {
		return nil, c.err
	}

	var bought []Line
	for _, p := range goods.Purchases {
		if len(p.Buys) == 0 {
			continue
		}
		packs := make([]string, len(p.Buys))
		for i, b := range p.Buys {
			packs[i] = strconv.Itoa(b.Packs) + " x " + b.Offer.Name
		}
		bought = append(bought, r.sold(itemsOf(p)+", "+strings.Join(packs, ", "), p.Cost))
	}
	if !rest.IsZero() {
		bought = append(bought, r.sold("delivery and the like", rest))
	}
	var passed []Line
	if !tax.IsZero() {
		passed = []Line{{Text: "tax on the goods, as paid", Basis: "tax " + r.money(tax), Price: r.round(tax)}}
	}
	work := append(worked(r, up, "putting up"), worked(r, down, "taking down and packing")...)
	travel := func(visits int) []Line {
		return []Line{{
			Text: countOf(visits, "visit") + r.unpriced(visit), Basis: strconv.Itoa(visits) + " at " + r.Price[visit].String(),
			Price: r.round(r.Price[visit].Mul(decimal.NewFromInt(int64(visits)))),
		}}
	}
	fee := []Line{{Text: "consultation" + r.unpriced(consult), Basis: "the fee of " + r.Price[consult].String(), Price: r.round(r.Price[consult])}}
	options := []Option{
		r.option("consultation", nil, nil, fee, travel(1)),
		r.option("done for you", bought, passed, work, travel(visits)),
	}
	if len(bought)+len(passed) > 0 {
		options = append(options, r.option("goods only", bought, passed, nil, nil))
	}
	return options, nil
}

// itemsOf returns what a purchase is of, "crimson ornaments, 2 in and 4 in, and gold ornaments".
func itemsOf(p shopping.Purchase) string {
	var names []string
	sizes := map[string][]string{}
	for _, s := range p.Shares {
		item, name := s.Item, ""
		if item.Kind != shopping.Ornament && item.Type != "" {
			name, item.Type = item.Type+" ", "" // mantel picks
		}
		sized := item.String()
		item.Size = 0
		size := strings.TrimPrefix(sized, item.String())
		if name += item.String(); !slices.Contains(names, name) {
			names = append(names, name)
		}
		if size = strings.TrimPrefix(size, ", "); size != "" && !slices.Contains(sizes[name], size) {
			sizes[name] = append(sizes[name], size)
		}
	}
	join := " and "
	for i, name := range names {
		if of := sizes[name]; len(of) > 0 {
			names[i], join = name+", "+strings.Join(of, " and "), ", and "
		}
	}
	return strings.Join(names, join)
}

// goods checks a list, and returns what its total has beyond the purchases: the tax of its bills, and the rest.
func (c *checker) goods(l shopping.List) (rest, tax decimal.Decimal) {
	if len(l.Purchases) > maxNeeds {
		c.fail(units.ErrRange, "/goods/purchases", strconv.Itoa(len(l.Purchases)), "at most 5,000 purchases")
	}
	sum := decimal.Zero
	for i, p := range l.Purchases {
		if c.err != nil {
			return decimal.Zero, decimal.Zero
		}
		list := at("/goods/purchases", i, "")
		for k, s := range p.Shares {
			c.item(at(list+"/shares", k, "item"), s.Item)
		}
		c.decimal(list+"/cost", p.Cost, maxCosts)
		for j, b := range p.Buys {
			c.whole(at(list+"/buys", j, "packs"), b.Packs, 1, maxPieces)
			c.text(at(list+"/buys", j, "offer")+"/name", b.Offer.Name, false)
		}
		if c.err == nil {
			sum = sum.Add(p.Cost)
		}
	}
	for i, b := range l.Bills {
		if c.decimal(at("/goods/bills", i, "tax"), b.Tax, maxCosts); c.err != nil {
			return decimal.Zero, decimal.Zero
		}
		tax, sum = tax.Add(b.Tax), sum.Add(b.Tax)
	}
	c.decimal("/goods/total", l.Total, maxCosts)
	if c.err == nil && sum.GreaterThan(l.Total) {
		c.fail(units.ErrFit, "/goods/total", l.Total.String(), sum.String()+" or more, as the purchases and the tax come to")
	}
	if c.err != nil {
		return decimal.Zero, decimal.Zero
	}
	return l.Total.Sub(sum), tax
}

// round rounds money to the places of the currency.
func (r Rates) round(d decimal.Decimal) decimal.Decimal { return d.Round(int32(r.Places)) }

// percent returns so many percent of d, rounded.
func (r Rates) percent(percent, d decimal.Decimal) decimal.Decimal {
	return r.round(d.Mul(percent).Shift(-2))
}

// sold returns the line of goods that cost so much.
func (r Rates) sold(text string, cost decimal.Decimal) Line {
	l := Line{Text: text, Basis: "cost " + r.money(cost)}
	more := r.Percent[markup]
	if !more.IsZero() {
		l.Basis += ", and " + more.String() + " %"
	}
	l.Price = r.round(cost.Mul(decimal.NewFromInt(100).Add(more)).Shift(-2))
	return l
}

// unpriced returns what a line says that counts nothing since there is no price of its name.
func (r Rates) unpriced(name string) string {
	if _, ok := r.Price[name]; ok {
		return ""
	}
	return ", without a price"
}

// worked returns a line for each room, in the order in which they come.
func worked(r Rates, tasks []Task, text string) []Line {
	minutes := map[string]int64{}
	var order []string
	for _, t := range tasks {
		if _, ok := minutes[t.Room]; !ok {
			order = append(order, t.Room)
		}
		minutes[t.Room] += int64(t.Minutes) * int64(t.People)
	}
	var lines []Line
	for _, room := range order {
		n := minutes[room]
		l := Line{
			Text: text, Basis: minutesText(int(n)) + " at " + r.money(r.Price[hour]) + " an hour",
			Price: r.Price[hour].Mul(decimal.NewFromInt(n)).DivRound(decimal.NewFromInt(60), int32(r.Places)),
		}
		if room != "" {
			l.Text = room + ", " + text
		}
		l.Text += r.unpriced(hour)
		lines = append(lines, l)
	}
	return lines
}

// option returns goods, work and travel with their discounts and taxes, and after the goods what is passed on as it is.
func (r Rates) option(name string, goods, passed, work, travel []Line) Option {
	o := Option{Name: name}
	for _, part := range []struct {
		name  string
		lines []Line
		tax   decimal.Decimal
	}{{"goods", goods, r.Percent[goodsTax]}, {"", passed, decimal.Zero}, {"work", work, r.Percent[workTax]}, {"travel", travel, r.Percent[roadTax]}} {
		sum := decimal.Zero
		for _, l := range part.lines {
			sum = sum.Add(l.Price)
		}
		o.Lines = append(o.Lines, part.lines...)
		if len(part.lines) == 0 {
			continue
		}
		if part.name != "" && !r.Percent[discount].IsZero() {
			off := r.percent(r.Percent[discount], sum)
			o.Lines = append(o.Lines, Line{Text: "discount of " + r.Percent[discount].String() + " % on the " + part.name, Basis: "of " + r.money(sum), Price: off.Neg()})
			sum = sum.Sub(off)
		}
		if !part.tax.IsZero() {
			o.Lines = append(o.Lines, Line{Text: "tax of " + part.tax.String() + " % on the " + part.name, Basis: "of " + r.money(sum), Price: r.percent(part.tax, sum)})
		}
	}
	for _, l := range o.Lines {
		o.Total = o.Total.Add(l.Price)
	}
	o.Deposit = r.percent(r.Percent[deposit], o.Total)
	return o
}

// money returns d with the places of the currency, or all that it has.
func (r Rates) money(d decimal.Decimal) string {
	if d.Equal(d.Truncate(int32(r.Places))) {
		return d.StringFixed(int32(r.Places))
	}
	return d.String()
}

// Sheet returns an option as lines of at most 76 characters with prices to Places, the total, the
// deposit and the balance. Unless it is for the client, each line has its basis below.
func (r Rates) Sheet(o Option, client bool) string {
	var b strings.Builder
	places := int32(max(0, min(r.Places, maxPlaces)))
	row := func(text string, price decimal.Decimal) {
		value := price.StringFixed(places)
		for {
			room := sheet - priceAt
			head := text
			if len([]rune(text)) > room {
				cut := strings.LastIndexByte(string([]rune(text)[:room+1]), ' ')
				if cut <= 2 {
					cut = len(string([]rune(text)[:room]))
				}
				head = text[:cut]
				b.WriteString(head + "\n")
				text = "  " + strings.TrimLeft(text[cut:], " ")
				continue
			}
			b.WriteString(head + strings.Repeat(" ", max(1, sheet-len([]rune(head))-len(value))) + value + "\n")
			return
		}
	}
	b.WriteString(o.Name + "\n")
	for _, l := range o.Lines {
		row("  "+l.Text, l.Price)
		if l.Basis != "" && !client {
			b.WriteString("    " + l.Basis + "\n")
		}
	}
	row("total", o.Total)
	if !o.Deposit.IsZero() {
		row("  deposit", o.Deposit)
		row("  balance", o.Total.Sub(o.Deposit))
	}
	return b.String()
}

// countOf returns "1 visit" or "2 visits".
func countOf(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
