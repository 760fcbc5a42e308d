package golden

import (
	"math"
	"math/big"
	"regexp"
	"strings"
)

// chain returns half the span of a swag in units of its parameter, by bisection of sag/span = (cosh u - 1)/2u.
func chain(span, sag float64) float64 {
	return bisect(func(u float64) float64 { s := math.Sinh(u / 2); return s*s/u - sag/span }, 1e-9, 50)
}

// arcLength returns the length of a swag by quadrature.
func arcLength(span, sag float64) float64 {
	if sag < 1e-7*span {
		return span
	}
	u := chain(span, sag)
	return simpson(func(x float64) float64 { return math.Cosh(2 * u * x / span) }, -span/2, span/2)
}

const (
	shelfText = `shelf (\d+) nm high \d+ nm deep \d+ nm opening .* below \d+ nm with (\d+) swags sag (\d+) nm left (\d+) nm right (\d+) nm style \d heavy \d fall \d+ nm thick \d+ nm`
	ounce     = 28_349_523_125
)

// hangs returns the garland that a shelf takes: m is what shelfText reads.
func hangs(m []string) float64 {
	across, swags := float(m[0]), float(m[1])
	if swags > 0 {
		across = swags * arcLength(across/swags, float(m[2]))
	}
	return float(m[3]) + across + float(m[4])
}

// slope returns the length of a swag between two heights, what its ends weigh as lengths of it, and the length that weighs
// as much as its level pull, by bisection of the textbook's sag, a·(cosh m · (cosh u - 1)).
func slope(span, rise, sag float64) (length, left, right, level float64) {
	m := func(u float64) float64 { return math.Asinh(rise * u / (span * math.Sinh(u))) }
	u := bisect(func(u float64) float64 {
		s := math.Sinh(u / 2)
		return span/(2*u)*math.Cosh(m(u))*2*s*s - sag
	}, 1e-9, 50)
	level = span / (2 * u)
	left, right = level*math.Sinh(u-m(u)), level*math.Sinh(u+m(u))
	return left + right, left, right, level
}

var mantelOracles = []oracle{
	{"mantel", `slope (\d+) nm rise (-?\d+) nm sag (\d+) nm = (\d+) nm`, 40, func(m []string) string {
		want, _, _, _ := slope(float(m[0]), float(m[1]), float(m[2]))
		return near(float(m[3]), want, 2+1e-9*want)
	}},
	{"mantel", `slope (\d+) nm rise (-?\d+) nm sag (\d+) nm loads = (-?\d+) and (-?\d+) down, (\d+) level`, 30, func(m []string) string {
		_, left, right, level := slope(float(m[0]), float(m[1]), float(m[2]))
		const weight = 12 * ounce / float64(foot)
		slack := 2 + 1e-7*weight*(math.Abs(left)+math.Abs(right)+level)
		return first(near(float(m[3]), left*weight, slack), near(float(m[4]), right*weight, slack), near(float(m[5]), level*weight, slack))
	}},
	{"mantel", `slope (\d+) nm rise (-?\d+) nm sag (\d+) nm and an inch more = (\d+) nm`, 40, func(m []string) string {
		before, _, _, _ := slope(float(m[0]), float(m[1]), float(m[2]))
		after, _, _, _ := slope(float(m[0]), float(m[1]), float(m[3]))
		return near(after-before, float64(inch), 8+1e-9*after)
	}},
	{"mantel", `rule (even|uneven) (.+) (garland|picks) = (\d+).*`, 40, func(m []string) string {
		// From the handbook: 2 ft over and a pick each 8 in, or all the weight on one side, 4 ft over and a pick each 3 in.
		l, _ := readLength(m[1])
		over, each := big.NewRat(2*foot, 1), big.NewRat(8*inch, 1)
		if m[0] == "uneven" {
			over, each = big.NewRat(4*foot, 1), big.NewRat(3*inch, 1)
		}
		if m[2] == "garland" {
			return same(m[3], away(over.Add(over, l)).String())
		}
		return same(m[3], up(each.Quo(l, each)).String())
	}},
	{"mantel", `rule (?:even|uneven) (.+) heavy \d spots = (\d.*)`, 40, func(m []string) string {
		l, _ := readLength(m[0])
		for spot := range strings.SplitSeq(m[1], ", ") {
			if along := integers(spot)[0]; along < 0 || l.Cmp(big.NewRat(along, 1)) < 0 {
				return "off the shelf"
			}
		}
		return ""
	}},
	{"mantel", `swag (\d+) nm sag (\d+) nm = (\d+) nm.*`, 40, func(m []string) string {
		want := arcLength(float(m[0]), float(m[1]))
		return near(float(m[2]), want, 2+1e-9*want)
	}},
	{"mantel", `swag (\d+) nm sag (\d+) nm at (\d+) nm = (\d+) nm below`, 80, func(m []string) string {
		span, sag, at := float(m[0]), float(m[1]), float(m[2])
		if sag < 1e-6*span { // a parabola
			return near(float(m[3]), 4*sag*at*(span-at)/(span*span), 1)
		}
		u := chain(span, sag)
		want := sag - span/(2*u)*(math.Cosh(u*(1-2*at/span))-1)
		return near(float(m[3]), want, 2+1e-8*sag)
	}},
	{"mantel", `swag (\d+) nm of (\d+) nm = sags (\d+) nm.*`, 30, func(m []string) string {
		span, sag := float(m[0]), float(m[2])
		got := arcLength(span, sag)
		// A nanometer of sag is up to 16/3 sag/span nanometers of length, and never over two.
		return near(got, float(m[1]), 3+1e-9*got)
	}},
	{"mantel", `garland ` + shelfText + ` = (\d+) nm.*`, 15, func(m []string) string {
		want := hangs(m)
		return near(float(m[5]), want, 7+1e-9*want)
	}},
	{"mantel", `hooks ` + shelfText + ` = (.+) nm`, 15, func(m []string) string {
		n := max(integer(m[1]), 1)
		at := integers(m[5])
		for i, x := range at {
			if w := near(float64(x), float(m[0])*float64(i)/float64(n), 1); w != "" {
				return w
			}
		}
		return same(int64(len(at)), n+1)
	}},
	{"mantel", `sag of (\d+) nm on ` + shelfText + ` = (\d+) nm`, 5, func(m []string) string {
		want := hangs([]string{m[1], m[2], m[6], m[4], m[5]})
		return near(float(m[0]), want, 10+1e-8*want)
	}},
	{"mantel", `drops of (\d+) nm, \w+, on ` + shelfText + ` = (\d+) nm and (\d+) nm`, 30, func(m []string) string {
		want := hangs([]string{m[1], m[2], m[3], m[6], m[7]})
		return near(float(m[0]), want, 7+1e-9*want)
	}},
	{"mantel", `loads of 12 oz a foot on hooks of (\d+) ng by (\d+), ` + shelfText + ` = weight (\d+) ng, shelf (\d+) ng, every (\d+) nm, carries (\d+) ng, heaviest (\d+), over (\d+)(; .*)`, 20, func(m []string) string {
		factor := integer(m[1])
		if factor == 0 {
			factor = 5
		}
		weight, carries := integer(m[7]), integer(m[10])
		sum, over := integer(m[8]), int64(0)
		for _, k := range regexp.MustCompile(`at \d+ down (\d+) left (\d+) right (\d+) total (\d+)`).FindAllStringSubmatch(m[13], -1) {
			total := integer(k[4])
			sum += integer(k[1])
			if total > carries {
				over++
			}
			if w := near(float64(total), math.Hypot(float(k[1]), float(k[2])-float(k[3])), 2+1e-12*float64(total)); w != "" {
				return w
			}
		}
		want := hangs(m[2:]) / foot * 12 * ounce
		return first(same(sum, weight), near(float64(weight), want, 1e4+1e-9*want), same(carries, integer(m[0])/factor), same(integer(m[12]), over))
	}},
	{"mantel", `hook of (\d+) ng by (\d+), (\d+) ng a foot = carries (\d+) ng, every (\d+) nm`, 12, func(m []string) string {
		factor := integer(m[1])
		if factor == 0 {
			factor = 5
		}
		carries := integer(m[0]) / factor
		return first(same(integer(m[3]), carries), same(m[4], down(new(big.Rat).Mul(big.NewRat(foot, 1), big.NewRat(carries, integer(m[2])))).String()))
	}},
}
