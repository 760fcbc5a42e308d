package main

import (
	"encoding/json"
	"maps"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A jsonPlan is what the test reads of a plan.
type jsonPlan struct {
	Trees []struct {
		Shares []jsonShare
		Pieces []jsonLot
	}
	Mantels []struct {
		Shares []jsonShare
		Spots  []jsonSpot
	}
	Basket *struct {
		Total     decimal.Decimal
		Purchases []struct {
			Shares []jsonShare
			Buys   []struct {
				Offer struct {
					Item     string
					Name     string
					Pack     any
					Contents []jsonLot
				}
				Packs int
				Cost  decimal.Decimal
			}
			Left []jsonLot
		}
	}
}

type jsonShare struct {
	Item string
	Gets any
}

type jsonSpot struct {
	Item  string
	Along units.Length
}

type jsonLot struct {
	Item     string
	Quantity any
}

// ornament returns the color of an ornament.
func ornament(item string) (color string, is bool) {
	name, _, _ := strings.Cut(item, ", ")
	if name == "ornaments" {
		return "", true
	}
	return strings.CutSuffix(name, " ornaments")
}

// tally adds a number to a color.
func tally(to map[string]int, item string, quantity any, times int) {
	n, counted := quantity.(float64)
	if color, is := ornament(item); is && counted {
		to[color] += int(n) * times
	}
}

// entries returns the lines of a section, each with what wraps below it in a column, up to an amount of money.
func entries(section string, column int) []string {
	var list []string
	ended := false
	for line := range strings.Lines(section) {
		line = strings.TrimSuffix(line, "\n")
		if indent := strings.Repeat(" ", column); len(list) > 0 && !ended && strings.HasPrefix(line, indent) && !strings.HasPrefix(line[column:], " ") {
			list[len(list)-1] += " " + strings.TrimPrefix(line, indent)
		} else {
			list = append(list, line)
		}
		ended = column == 6 && amount.MatchString(line)
	}
	return list
}

var (
	inAll    = regexp.MustCompile(`^  ornaments +(\d+) in all`)
	ofColor  = regexp.MustCompile(`^    (.+?)  +(.+)$`)
	has      = regexp.MustCompile(`^(?:planned \d+, (?:only |budget allows )?)?(none|\d+)\b( others in their place)?`)
	priced   = regexp.MustCompile(`^  (\[ \]|   ) (.*?) +(\d+\.\d\d)$`)
	bought   = regexp.MustCompile(`(\d+) x ([^:;]+?) at (\d+\.\d\d)( \([^)]*(?: for | from )[^)]*\))?`)
	amount   = regexp.MustCompile(`^.{75}\d\.\d\d$`)
	counting = regexp.MustCompile(`(\d+)(?: of (\d+))? ([a-z][a-z ]*)`)
)

// number is what a text says, or zero for none.
func number(text string) int {
	n, _ := strconv.Atoi(text)
	return n
}

// What the sheet prints adds up, and is what the plan has: ornaments tree by tree and color by color, the packs bought and what
// they cost, and what comes from stock and goes back.
func TestSheetAgreesWithPlan(t *testing.T) {
	files, err := filepath.Glob("testdata/*.json")
	if err != nil || len(files) < 9 {
		t.Fatal(files, err)
	}
	calls := [][]string{nil, {"-budget", "90.00"}, {"-budget", "0"}, {"-units", "metric"}, {"-request", "demo/station.json"}}
	for _, f := range files {
		calls = append(calls, []string{"-request", f})
	}
	for _, args := range calls {
		text, stderr, status := call(args...)
		data, _, _ := call(append(args, "-json")...)
		var p jsonPlan
		if err := json.Unmarshal([]byte(data), &p); err != nil || status != 0 {
			t.Fatalf("%q: status %d, %s, %v", args, status, stderr, err)
		}
		complain := func(format string, values ...any) {
			t.Helper()
			t.Errorf("%q: "+format, append([]any{args}, values...)...)
		}
		trees, mantels := 0, 0
		for section := range strings.SplitSeq(text, "\n\n") {
			if head, _, _ := strings.Cut(section, "\n"); strings.Contains(head, ": tree, ") {
				lines := entries(section, 16)
				ornaments(lines, p.Trees[trees].Pieces, p.Trees[trees].Shares, complain)
				strands(lines, p.Trees[trees].Shares, complain)
				trees++
			} else if strings.Contains(section, "Lay the garland on a table") || strings.Contains(section, "NO GARLAND IS TO BE HAD") {
				gaps(section, p.Mantels[mantels].Shares, p.Mantels[mantels].Spots, complain)
				mantels++
			}
		}
		if trees != len(p.Trees) || mantels != len(p.Mantels) {
			complain("%d trees and %d mantels, want %d and %d", trees, mantels, len(p.Trees), len(p.Mantels))
		}
		if p.Basket != nil {
			basket(text, p, complain)
		}
		short(text, complain)
	}
}

// ornaments compares what the page of a tree says of them.
func ornaments(lines []string, pieces []jsonLot, shares []jsonShare, complain func(string, ...any)) {
	printed, hung, given := map[string]int{}, map[string]int{}, map[string]int{}
	all, sum := 0, 0
	for i, line := range lines {
		if m := inAll.FindStringSubmatch(line); m != nil {
			all = number(m[1])
			lines = lines[i+1:]
			break
		}
	}
	for _, line := range lines {
		m := ofColor.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		color, _, _ := strings.Cut(m[1], ", ")
		if color == "any color" {
			color = ""
		}
		n := 0
		if h := has.FindStringSubmatch(m[2]); h != nil && h[2] == "" {
			n = number(h[1])
		}
		printed[color] += n
		sum += n
		if _, parts, found := strings.Cut(m[2], ": "); found {
			for part := range strings.SplitSeq(parts, ", ") {
				count, _, _ := strings.Cut(part, " ")
				n -= number(count)
			}
			if n != 0 {
				complain("the parts miss the count by %d: %s", n, line)
			}
		}
	}
	for _, p := range pieces {
		tally(hung, p.Item, p.Quantity, 1)
	}
	total := 0
	for _, share := range shares {
		tally(given, share.Item, share.Gets, 1)
	}
	for color, n := range hung {
		total += n
		if printed[color] != n || given[color] != n {
			complain("%d of %q on the sheet, %d in the pieces of the plan, %d in its shares", printed[color], color, n, given[color])
		}
	}
	if all != total || sum != total {
		complain("%d in all, %d in the lines, want %d", all, sum, total)
	}
}

var (
	running = regexp.MustCompile(`^  (garland|ribbon) +(?:planned .*, only )?([^;:,(]+?)(?: \(planned .*?\))?(?:, lapped ([^:]+))?: ([^;]+)`)
	whole   = regexp.MustCompile(`^(\d+) x (?:your own )?(.+)$`)
	cutOff  = regexp.MustCompile(`^(?:(\d+) x )?(.+) off .+$`)
)

// strands adds up what a garland or a ribbon is joined from, with what the joins take: the length in front of it, to a quarter of an
// inch or half a centimeter, or 10 cm of a long one, for each strand; and that is no less than the plan has.
func strands(lines []string, shares []jsonShare, complain func(string, ...any)) {
	length := func(text string) (l units.Length) {
		text = strings.TrimSuffix(strings.TrimSuffix(text, " strand"), " roll")
		if text != "" && l.UnmarshalText([]byte(text)) != nil {
			complain("no length: %s", text)
		}
		return l
	}
	for _, line := range lines {
		m := running.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		sum, joins := units.Length(0), units.Length(-1)
		for part := range strings.SplitSeq(m[4], ", ") {
			n, one := 1, ""
			if c := cutOff.FindStringSubmatch(part); c != nil {
				n, one = max(1, number(c[1])), c[2]
			} else if w := whole.FindStringSubmatch(part); w != nil {
				n, one = number(w[1]), w[2]
			}
			sum += units.Length(n) * length(one)
			joins += units.Length(n)
		}
		sum -= joins * length(m[3])
		off, near := length(m[2])-sum, 6*units.Centimeter+(joins+1)*units.Centimeter/2
		if off > near || off < -near {
			complain("%v in front of %v: %s", length(m[2]), sum, line)
		}
		for _, share := range shares {
			if text, is := share.Gets.(string); is && share.Item == m[1] && length(m[2]) < length(text)-near {
				complain("%s of %s in the plan: %s", text, m[1], line)
			}
		}
	}
}

var (
	inGaps = regexp.MustCompile(`gaps from the (left|right): (.*?)(?: \d+ [A-Z]|$)`)
	gapsOf = regexp.MustCompile(`^(\d+(?:, \d+)*) (.*)$`)
)

// gaps compares which gaps of a mantel get which ornaments, where they are told, with the spots of the plan; and the spots with
// how many picks and ornaments the mantel gets.
func gaps(section string, shares []jsonShare, spots []jsonSpot, complain func(string, ...any)) {
	text := strings.Join(strings.Fields(section), " ")
	if len(spots) == 0 {
		return // along stairs or a door
	}
	given, picks := map[string]int{}, 0
	for _, share := range shares {
		tally(given, share.Item, share.Gets, 1)
		if n, counted := share.Gets.(float64); counted && strings.HasPrefix(share.Item, "picks") {
			picks += int(n)
		}
	}
	var at []units.Length
	for _, s := range spots {
		if color, is := ornament(s.Item); is {
			given[color]--
		} else if strings.HasPrefix(s.Item, "picks") {
			at = append(at, s.Along)
		}
	}
	for color, n := range given {
		if n != 0 {
			complain("%d of %q have no spot", n, color)
		}
	}
	if len(at) != picks {
		complain("%d spots for %d picks", len(at), picks)
	}
	m := inGaps.FindStringSubmatch(text)
	if m == nil {
		return
	}
	want, told := map[string]int{}, map[string]int{}
	for _, s := range spots {
		if color, is := ornament(s.Item); is {
			gap := 0
			for _, p := range at {
				if m[1] == "left" && p < s.Along || m[1] == "right" && p > s.Along {
					gap++
				}
			}
			want[strconv.Itoa(gap)+" "+color]++
		}
	}
	for part := range strings.SplitSeq(m[2], "; ") {
		if list := gapsOf.FindStringSubmatch(part); list != nil {
			for gap := range strings.SplitSeq(list[1], ", ") {
				for name := range strings.SplitSeq(strings.ReplaceAll(list[2], " and ", ", "), ", ") {
					name, _, _ = strings.Cut(name, " of ")
					told[gap+" "+name]++
				}
			}
		}
	}
	if !maps.Equal(told, want) {
		complain("the gaps are %v, want %v: %s", told, want, m[0])
	}
}

var (
	missing = regexp.MustCompile(`(?m)^    (\d+) (.+) ornaments? \((.+ \d+)\)$`)
	pageOf  = regexp.MustCompile(`^    (.+?)  +planned (\d+), (?:only (\d+)|none)`)
)

// short compares what is short of a color in a room, in all sizes, with what the page of its tree has of what is planned.
func short(text string, complain func(string, ...any)) {
	told, pages := map[string]int{}, map[string]int{}
	for section := range strings.SplitSeq(text, "\n\n") {
		for _, m := range missing.FindAllStringSubmatch(section, -1) {
			color, _, _ := strings.Cut(m[2], ", ")
			for part := range strings.SplitSeq(m[3], ", ") {
				if at := strings.LastIndex(part, " "); at > 0 {
					told[strings.ToUpper(part[:at])+" "+color] += number(part[at+1:])
				}
			}
		}
		room, _, tree := strings.Cut(section, ": tree, ")
		for _, line := range entries(section, 16) {
			if m := pageOf.FindStringSubmatch(line); tree && m != nil {
				color, _, _ := strings.Cut(m[1], ", ")
				pages[room+" "+color] += number(m[2]) - number(m[3])
			}
		}
	}
	for name, n := range told {
		if of, is := pages[name]; is && of != n {
			complain("%s: %d short, and %d on its page", name, n, of)
		}
	}
}

// basket compares what is bought, what comes from stock and what is left.
func basket(text string, p jsonPlan, complain func(string, ...any)) {
	section, _, _ := strings.Cut(text, "\n\n")
	sum, total := decimal.Decimal{}, decimal.Decimal{}
	packs := map[string]int{}
	for _, line := range entries(section, 6) {
		m := priced.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		amount := decimal.RequireFromString(m[3])
		if strings.HasPrefix(m[2], "total") {
			total = amount
			continue
		}
		sum = sum.Add(amount)
		cost, deal := decimal.Decimal{}, false
		for _, b := range bought.FindAllStringSubmatch(m[2], -1) {
			packs[b[2]] += number(b[1])
			cost = cost.Add(decimal.RequireFromString(b[3]).Mul(decimal.NewFromInt(int64(number(b[1])))))
			deal = deal || b[4] != ""
		}
		if m[1] == "[ ]" && !deal && !cost.Equal(amount) {
			complain("comes to %v: %s", cost, line)
		}
	}
	if !sum.Equal(total) || !total.Equal(p.Basket.Total) {
		complain("the lines come to %v, the total is %v, and %v in the plan", sum, total, p.Basket.Total)
	}
	gets, buys, left := map[string]int{}, map[string]int{}, map[string]int{}
	for _, purchase := range p.Basket.Purchases {
		for _, share := range purchase.Shares {
			tally(gets, share.Item, share.Gets, 1)
		}
		for _, lot := range purchase.Left {
			tally(left, lot.Item, lot.Quantity, 1)
		}
		for _, b := range purchase.Buys {
			packs[b.Offer.Name] -= b.Packs
			tally(buys, b.Offer.Item, b.Offer.Pack, b.Packs)
			for _, lot := range b.Offer.Contents {
				tally(buys, lot.Item, lot.Quantity, b.Packs)
			}
		}
	}
	for name, n := range packs {
		if n != 0 {
			complain("%+d of %q on the sheet", n, name)
		}
	}
	list := strings.Join(strings.Fields(section), " ")
	part := func(head string) string {
		_, rest, _ := strings.Cut(list, head)
		for _, next := range []string{" SHORT,", ". Left over, ", ". Spares, "} {
			rest, _, _ = strings.Cut(rest, next)
		}
		return rest
	}
	stock, back := part("From stock: "), part("Left over, back into the box: ")
	used, unused := colors(stock, gets)
	back2, _ := colors(back, gets)
	delete(gets, "") // whose lots are told without a color, by type
	for color, n := range gets {
		if used[color]+buys[color]+unused[color] != n+left[color] || back2[color] != left[color] {
			complain("%s: %d from stock and %d bought for %d; left %d on the sheet, %d in the plan, %d of them stayed in the box", color, used[color], buys[color], n, back2[color], left[color], unused[color])
		}
	}
}

// colors returns how many ornaments of each color a list names, and how many are not used of those it names them from.
func colors(list string, known map[string]int) (used, unused map[string]int) {
	used, unused = map[string]int{}, map[string]int{}
	for _, m := range counting.FindAllStringSubmatch(list, -1) {
		color := strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(strings.TrimSpace(m[3]), "s"), "ornament"))
		if _, is := known[color]; !is || color == "" {
			continue
		}
		used[color] += number(m[1])
		if m[2] != "" {
			unused[color] += number(m[2]) - number(m[1])
		}
	}
	return used, unused
}

var wound = regexp.MustCompile(`(?m)^  garland +([^;]+); wind it (.+) apart$`)

// Wound as far apart as the sheet says, the garland reaches the foot of the tree: the spiral is no longer than what hangs.
func TestSheetWindsToTheFoot(t *testing.T) {
	for _, height := range []string{"18 in", "4 ft", "8 ft", "9 ft", "11 ft 3 in", "60 cm", "2.5 m"} {
		for _, style := range []string{"feet and inches", "metric"} {
			text, stderr, status := call("-tree", height, "-size-by", "rule", "-units", style)
			m := wound.FindStringSubmatch(text)
			if m == nil || status != 0 {
				t.Fatalf("%s: %s%s", height, text, stderr)
			}
			var tall, garland, apart units.Length
			for i, l := range []*units.Length{&tall, &garland, &apart} {
				if err := l.UnmarshalText([]byte([]string{height, m[1], m[2]}[i])); err != nil {
					t.Fatal(m, err)
				}
			}
			long, err := sizing.Tree{Height: tall}.SpiralLength(apart)
			if err != nil || long > garland {
				t.Errorf("%s: wound %s apart it takes %v, and %s hang (%v)", height, m[2], long, m[1], err)
			}
			if long < garland*9/10 {
				t.Errorf("%s: wound %s apart it takes %v of %s", height, m[2], long, m[1])
			}
		}
	}
}
