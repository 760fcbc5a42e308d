package golden

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"
	"time"
)

// ceiling returns x rounded up.
func ceiling(x *big.Rat) int64 {
	n := new(big.Int).Quo(x.Num(), x.Denom())
	if new(big.Rat).SetInt(n).Cmp(x) < 0 {
		n.Add(n, big.NewInt(1))
	}
	return n.Int64()
}

// halfAway rounds to places, half away from zero.
func halfAway(x *big.Rat, places int64) *big.Rat {
	scale := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(places), nil))
	y := new(big.Rat).Add(new(big.Rat).Mul(new(big.Rat).Abs(x), scale), big.NewRat(1, 2))
	r := new(big.Rat).Quo(new(big.Rat).SetInt(new(big.Int).Quo(y.Num(), y.Denom())), scale)
	if x.Sign() < 0 {
		r.Neg(r)
	}
	return r
}

func times(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }

func percentOf(s string) *big.Rat { return new(big.Rat).Quo(ratio(s), big.NewRat(100, 1)) }

// A chained task of a line, "12x2" for 12 minutes of two people.
type chained struct{ minutes, people int64 }

// leastTime tries every order of starting tasks, each as early as its chain and the crew let it, and returns the least end:
// one of these orders gives an optimal schedule.
func leastTime(chains [][]chained, crew int64) int64 {
	best := int64(1 << 40)
	busy := map[int64]int64{} // people by minute
	next, ready := make([]int, len(chains)), make([]int64, len(chains))
	var from func(left int, end int64)
	from = func(left int, end int64) {
		if end >= best {
			return
		}
		if left == 0 {
			best = end
			return
		}
		for c := range chains {
			if next[c] == len(chains[c]) {
				continue
			}
			t, start := chains[c][next[c]], ready[c]
			for m := start; m < start+t.minutes; m++ {
				if busy[m]+t.people > crew {
					start = m + 1
				}
			}
			was := ready[c]
			for m := start; m < start+t.minutes; m++ {
				busy[m] += t.people
			}
			next[c]++
			ready[c] = start + t.minutes
			from(left-1, max(end, ready[c]))
			ready[c] = was
			next[c]--
			for m := start; m < start+t.minutes; m++ {
				busy[m] -= t.people
			}
		}
	}
	n := 0
	for _, c := range chains {
		n += len(c)
	}
	from(n, 0)
	return best
}

var chainText = regexp.MustCompile(`(\d+)x(\d+)`)

// The work: exact fractions, all orders, all numbers of boxes, and package time.
var laborOracles = []oracle{
	{"labor", `hang (\d+) at (\S+) min from (\d+) nm to (\d+) nm, ladder above (\d+) nm, two above (\d+) nm and (\S+) % = (.*); down at (\S+) % (\d+)`, 120, func(m []string) string {
		n, from, top := integer(m[0]), integer(m[2]), integer(m[3])
		var want []string
		given, minutes := int64(0), int64(0)
		exact, all, rounded, down := new(big.Rat), int64(0), int64(0), int64(0)
		height := top
		for _, level := range []struct {
			from, people int64
		}{{20 * 304_800_000, 2}, {integer(m[5]), 2}, {integer(m[4]), 1}, {0, 1}} { // what no stepladder reaches comes first
			low := max(level.from, from)
			if low >= height && (from < top || len(want) > 0 || level.from != 0) {
				continue
			}
			height = low
			part := new(big.Rat).SetFrac64(top-low, max(1, top-from))
			upTo := min(n, ceiling(times(times(part, part), big.NewRat(n, 1))))
			if low == from {
				upTo = n
			}
			if upTo == given {
				continue
			}
			time := times(ratio(m[1]), big.NewRat(upTo-given, 1))
			if level.people == 2 {
				time = times(time, new(big.Rat).Add(big.NewRat(1, 1), percentOf(m[6])))
			}
			exact.Add(exact, time)
			took := max(1, ceiling(exact)-minutes)
			want = append(want, fmt.Sprintf("%d in %d min by %d", upTo-given, took, level.people))
			// Those of two people come first, as they are rounded. Each task takes a minute at least.
			all += took
			back := max(1, ceiling(times(percentOf(m[8]), big.NewRat(all, 1)))-rounded)
			rounded += back
			down += back * level.people
			given, minutes = upTo, minutes+took
		}
		if got := strings.Join(want, ", "); got != m[7] {
			return "want " + got
		}
		if down != integer(m[9]) {
			return fmt.Sprintf("want %d person-minutes down", down)
		}
		return ""
	}},
	{"labor", `crew of (\d+) does (.*) = (\d+) to (\d+)`, 100, func(m []string) string {
		var chains [][]chained
		for _, text := range strings.Split(m[1], " | ") {
			var c []chained
			for _, x := range chainText.FindAllStringSubmatch(text, -1) {
				c = append(c, chained{integer(x[1]), integer(x[2])})
			}
			chains = append(chains, c)
		}
		if want := leastTime(chains, integer(m[0])); integer(m[2]) != want || integer(m[3]) != want {
			return fmt.Sprintf("want %d", want)
		}
		return ""
	}},
	{"labor", `quote cost (\S+), (\d+) min at (\S+), (\d+) visits at (\S+), consultation (\S+), markup (\S+), discount (\S+), deposit (\S+), goods tax (\S+), work tax (\S+), travel tax (\S+), (\d) places = (\S+) deposit (\S+), (\S+) deposit (\S+), (\S+) deposit (\S+)`, 150, func(m []string) string {
		places := integer(m[12])
		part := func(price *big.Rat, tax string) *big.Rat {
			price = halfAway(price, places)
			price = new(big.Rat).Sub(price, halfAway(times(price, percentOf(m[7])), places))
			return new(big.Rat).Add(price, halfAway(times(price, percentOf(tax)), places))
		}
		goods := part(times(ratio(m[0]), new(big.Rat).Add(big.NewRat(1, 1), percentOf(m[6]))), m[9])
		work := part(times(ratio(m[2]), big.NewRat(integer(m[1]), 60)), m[10])
		travel := part(times(ratio(m[4]), big.NewRat(integer(m[3]), 1)), m[11])
		visit := part(ratio(m[4]), m[11])
		fee := part(ratio(m[5]), m[10])
		for i, want := range []*big.Rat{new(big.Rat).Add(fee, visit), new(big.Rat).Add(goods, new(big.Rat).Add(work, travel)), goods} {
			if ratio(m[13+2*i]).Cmp(want) != 0 || ratio(m[14+2*i]).Cmp(halfAway(times(want, percentOf(m[8])), places)) != 0 {
				return fmt.Sprintf("option %d: want %s", i+1, want.FloatString(4))
			}
		}
		return ""
	}},
	{"labor", `pack (\d+) large and (\d+) small in boxes of (\d+) for both or (\d+) small = (\d+) to (\d+)`, 80, func(m []string) string {
		large, small, few, many := integer(m[0]), integer(m[1]), integer(m[2]), integer(m[3])
		best := int64(1 << 40)
		for k := (large + few - 1) / few; k <= (large+small+few-1)/few; k++ {
			rest := max(0, small-(k*few-large))
			best = min(best, k+(rest+many-1)/many)
		}
		if integer(m[4]) != best || integer(m[5]) != best {
			return fmt.Sprintf("want %d", best)
		}
		return ""
	}},
	{"labor", `day (\d+) = (\S+)`, 80, func(m []string) string {
		if want := time.Date(1, 1, int(integer(m[0])), 0, 0, 0, 0, time.UTC).Format(time.DateOnly); want != m[1] {
			return "want " + want
		}
		return ""
	}},
	{"labor", `stand (\d+) down (\d+), (\d+) min of (\d+) a day, wiring (\d+), cut tree (\d+), order (\d+) = (.*)`, 60, func(m []string) string {
		stand, down := integer(m[0]), integer(m[1])
		begin := stand - (integer(m[2])+integer(m[3])-1)/integer(m[3])
		wire := begin - integer(m[4])
		in, out := max(down-integer(m[5]), begin-1), min(down, begin+integer(m[5]))
		want := map[string]int64{"order picks": wire - integer(m[6]), "everything hand": wire, "it stands": stand, "take pack": down, "the earliest": min(in, begin)}
		last := int64(0)
		for _, part := range strings.Split(m[7], ", ") {
			day, text, _ := strings.Cut(part, " ")
			if integer(day) < last {
				return "out of order"
			}
			last = integer(day)
			if at, ok := want[text]; ok && at != last {
				return fmt.Sprintf("%s: want %d", text, at)
			}
			delete(want, text)
			if (text == "the latest" || text == "the rest") && last != out {
				return fmt.Sprintf("out: want %d", out)
			}
		}
		if len(want) > 0 {
			return fmt.Sprint("missing: ", want)
		}
		return ""
	}},
	{"labor", `own (\d+), buy (\d+) x (\d+), lose (\d+) = (\S+)`, 40, func(m []string) string {
		want := fmt.Sprint(integer(m[0]) + integer(m[1])*integer(m[2]) - integer(m[3]))
		if strings.HasPrefix(want, "-") {
			want = "range"
		}
		if m[4] != want {
			return "want " + want
		}
		return ""
	}},
}
