package golden

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"
)

// An offered pack, as a line has it: how much it holds and costs, in cents, and how many are left.
type offered struct{ holds, cents, left int64 }

var (
	packText = regexp.MustCompile(`pack (\d+)(?: nm)? at (\S+?)(?: x(\d+))?(?:,|;|$)`)
	ownText  = regexp.MustCompile(`own (\d+)(?: nm)?`)
	boughtIn = regexp.MustCompile(`^buy ([\d ]+), cost (\S+), at least (\S+), over (\d+)(?: nm)?(?:,|$)`)
	cutText  = regexp.MustCompile(`cut (\d+) x (\d+) nm into (.*?), (\d+) nm left`)
)

func inCents(s string) int64 { return new(big.Rat).Mul(ratio(s), big.NewRat(100, 1)).Num().Int64() }

func offers(text string) []offered {
	var all []offered
	for _, m := range packText.FindAllStringSubmatch(text, -1) {
		o := offered{integer(m[1]), inCents(m[2]), -1}
		if m[3] != "" {
			o.left = integer(m[3])
		}
		all = append(all, o)
	}
	return all
}

func owned(text string) int64 {
	n := int64(0)
	for _, m := range ownText.FindAllStringSubmatch(text, -1) {
		n += integer(m[1])
	}
	return n
}

// tryAll tries every choice of packs that holds at least need, where each pack but the first loses the overlap, and
// returns the counts of the best: the least cost, then the least over, then the fewest, then the most of
// the first pack, of the second and so on. It returns nil if no choice does.
func tryAll(need, joined, overlap int64, packs []offered) []int64 {
	counts, best := make([]int64, len(packs)), []int64(nil)
	var bestCost, bestOver, bestNumber int64
	var from func(i int, held, cost, number int64)
	from = func(i int, held, cost, number int64) {
		over := held - need
		if number > 0 {
			over -= (number - 1) * overlap
		}
		if i == len(packs) {
			if over < 0 {
				return
			}
			better := best == nil || cost < bestCost
			if !better && cost == bestCost {
				better = over < bestOver || over == bestOver && number < bestNumber
				for k := 0; !better && over == bestOver && number == bestNumber && k < len(counts); k++ {
					if counts[k] != best[k] {
						better = counts[k] > best[k]
						break
					}
				}
			}
			if better {
				best, bestCost, bestOver, bestNumber = append([]int64(nil), counts...), cost, over, number
			}
			return
		}
		o := packs[i]
		for n := int64(0); o.left < 0 || n <= o.left; n++ {
			counts[i] = n
			if best != nil && cost+n*o.cents > bestCost {
				break
			}
			from(i+1, held+n*o.holds, cost+n*o.cents, number+n)
			if rest := need - held; n*(o.holds-overlap) >= rest+overlap || o.holds <= overlap {
				break // one more serves nothing
			}
		}
		counts[i] = 0
	}
	from(0, 0, 0, joined)
	return best
}

// judge compares a purchase with the best that there is. Only where the ties are broken as tryAll does, exactly
// holds for the counts too.
func judge(best []int64, packs []offered, result string, exactly bool) string {
	m := boughtIn.FindStringSubmatch(result)
	switch {
	case best == nil:
		return same(result, "short")
	case m == nil:
		return fmt.Sprintf("want %v of the packs", best)
	}
	cost := int64(0)
	for i, n := range best {
		cost += n * packs[i].cents
	}
	wrong := first(same(inCents(m[2]), cost), same(m[3], m[2]))
	if exactly {
		wrong = first(wrong, same(m[1], strings.Trim(fmt.Sprint(best), "[]")))
	}
	return wrong
}

// pieceBest is the best purchase of pieces for a text such as "need 20 + 5 to 30, own 3, pack 6 at 5", of which n are needed.
func pieceBest(text string, n int64) []int64 {
	return tryAll(max(n-owned(text), 0), 0, 0, offers(text))
}

// wanted adds up the pieces that are needed.
func wanted(text string) int64 {
	n := int64(0)
	text, _, _ = strings.Cut(strings.TrimPrefix(text, "need "), ",")
	for part := range strings.SplitSeq(text, " + ") {
		n += integer(strings.Fields(part)[0])
	}
	return n
}

// costs returns what n pieces cost at the least, and false if there are not so many.
func costs(text string, n int64) (int64, bool) {
	best := pieceBest(text, n)
	cost := int64(0)
	for i, k := range best {
		cost += k * offers(text)[i].cents
	}
	return cost, best != nil
}

var shoppingOracles = []oracle{
	{"shopping", `pieces: (.*) = (.*)`, 160, func(m []string) string {
		return judge(pieceBest(m[0], wanted(m[0])), offers(m[0]), m[1], true)
	}},
	{"shopping", `run: (need (\d+) nm.*) = (.*)`, 75, func(m []string) string {
		overlap, joined := int64(0), int64(0)
		if o := regexp.MustCompile(`overlap (\d+)`).FindStringSubmatch(m[0]); o != nil {
			overlap = integer(o[1])
		}
		own := owned(m[0])
		if own > overlap {
			joined = 1
		} else {
			own = 0
		}
		need := integer(m[1]) - own
		if need <= 0 {
			return judge(make([]int64, len(offers(m[0]))), offers(m[0]), m[2], true)
		}
		return judge(tryAll(need, joined, overlap, offers(m[0])), offers(m[0]), m[2], true)
	}},
	{"shopping", `equal cuts: (need (\d+) of (\d+) nm.*) = (.*)`, 55, func(m []string) string {
		// A roll holds so many whole pieces.
		each := integer(m[2])
		packs := offers(m[0])
		for i := range packs {
			packs[i].holds /= each
		}
		rest := integer(m[1])
		for _, o := range ownText.FindAllStringSubmatch(m[0], -1) {
			rest -= integer(o[1]) / each
		}
		return first(judge(tryAll(max(rest, 0), 0, 0, packs), packs, m[3], false), cutsServe(m[0], m[3]))
	}},
	{"shopping", `cuts: (.*) = (.*)`, 55, func(m []string) string {
		b := boughtIn.FindStringSubmatch(m[1])
		if b == nil {
			return ""
		}
		// Nothing costs less than all the pieces together by the price a length of the cheapest roll.
		all, least := int64(0), (*big.Rat)(nil)
		for _, n := range regexp.MustCompile(`(\d+) of (\d+) nm`).FindAllStringSubmatch(m[0], -1) {
			all += integer(n[1]) * integer(n[2])
		}
		for _, o := range offers(m[0]) {
			if r := big.NewRat(o.cents, o.holds); least == nil || r.Cmp(least) < 0 {
				least = r
			}
		}
		if floor := least.Mul(least, big.NewRat(all, 1)); floor.Cmp(big.NewRat(inCents(b[2]), 1)) > 0 {
			return "too cheap"
		}
		return cutsServe(m[0], m[1])
	}},
	{"shopping", `list (.*) = (.*); total (\S+)`, 55, func(m []string) string {
		total := int64(0)
		results := strings.Split(m[1], "; ")
		for i, text := range strings.Split(m[0], "; ") {
			cost, ok := costs(text, wanted(text))
			_, result, _ := strings.Cut(results[i], " buy ")
			if w := judge(pieceBest(text, wanted(text)), offers(text), "buy "+result, true); w != "" || !ok {
				return w + " for item " + fmt.Sprint(i+1)
			}
			total += cost
		}
		return same(inCents(m[2]), total)
	}},
	{"shopping", `(fullest for|filled to) ([\d.]+): (.*) = (.*); total (\S+)`, 60, func(m []string) string {
		total, fewest := int64(0), []int64{}
		results := strings.Split(m[3], "; ")
		texts := strings.Split(m[2], "; ")
		for i, text := range texts {
			span := regexp.MustCompile(`^need (\d+)(?: to (\d+))?`).FindStringSubmatch(text)
			var n int64
			fmt.Sscanf(results[i], "for %d", &n)
			least, most := integer(span[1]), integer(span[1])
			if span[2] != "" {
				most = integer(span[2])
			}
			if n < least || n > most {
				return fmt.Sprintf("%d is not from %d to %d", n, least, most)
			}
			if m[0] == "filled to" && n < least+(integer(m[1])*(most-least)+99)/100 {
				return fmt.Sprintf("%d is not full enough", n)
			}
			cost, _ := costs(text, n)
			total += cost
			fewest = append(fewest, n, most)
		}
		if w := same(inCents(m[4]), total); w != "" {
			return w
		}
		if m[0] == "fullest for" {
			budget := inCents(m[1])
			if total > budget {
				return "over the budget"
			}
			// Nothing more can be had for any one item.
			for i, text := range texts {
				now, _ := costs(text, fewest[2*i])
				for n := fewest[2*i] + 1; n <= fewest[2*i+1]; n++ {
					if cost, ok := costs(text, n); ok && total-now+cost <= budget {
						return fmt.Sprintf("item %d could have %d", i+1, n)
					}
				}
			}
		}
		return ""
	}},
}

// cutsServe says what is wrong with how rolls are cut: every cut fits its roll, says what is left, is of a roll that is bought or
// owned, and together they give at least the pieces that are needed.
func cutsServe(text, result string) string {
	want, have := map[string]int64{}, map[string]int64{}
	for _, n := range regexp.MustCompile(`(\d+) of (\d+) nm`).FindAllStringSubmatch(text, -1) {
		want[n[2]] += integer(n[1])
	}
	if boughtIn.FindString(result) == "" {
		return ""
	}
	for _, c := range cutText.FindAllStringSubmatch(result, -1) {
		used := int64(0)
		for part := range strings.SplitSeq(c[3], " and ") {
			n := regexp.MustCompile(`^(\d+) of (\d+) nm$`).FindStringSubmatch(part)
			have[n[2]] += integer(c[1]) * integer(n[1])
			used += integer(n[1]) * integer(n[2])
		}
		if used+integer(c[4]) != integer(c[2]) {
			return "a cut does not add up"
		}
	}
	for l, n := range want {
		if have[l] < n {
			return fmt.Sprintf("%d pieces of %s nm are cut, want %d", have[l], l, n)
		}
	}
	return ""
}
