package golden

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// An oracle works recorded lines out again by other means than the library's, from their text alone.
// It calls nothing of the library, so that no rename touches it.
type oracle struct {
	file  string
	lines string                  // which lines, with what is taken from them in brackets
	least int                     // the fewest lines that there are
	wrong func(m []string) string // what is wrong with one, "" if nothing is; m is what is in the brackets
}

// The recorded lines are true.
func TestOracles(t *testing.T) {
	rows, all := 0, 0
	texts := map[string][]string{}
	for _, f := range pages {
		texts[f.name] = recorded(t, f.name)
		all += len(texts[f.name])
	}
	for _, line := range texts["palette"] {
		if m := regexp.MustCompile(`^color (\S+) = lab (\S+) (\S+) ([^,]+),`).FindStringSubmatch(line); m != nil {
			labOf[m[1]] = [3]float64{float(m[2]), float(m[3]), float(m[4])}
		}
	}
	var oracles []oracle
	oracles = append(oracles, unitsOracles...)
	oracles = append(oracles, paletteOracles...)
	oracles = append(oracles, sizingOracles...)
	oracles = append(oracles, lightsOracles...)
	oracles = append(oracles, shoppingOracles...)
	oracles = append(oracles, placementOracles...)
	oracles = append(oracles, laborOracles...)
	oracles = append(oracles, mantelOracles...)
	oracles = append(oracles, elemOracles...)
	for _, o := range oracles {
		re := regexp.MustCompile("^" + o.lines + "$")
		n := 0
		for i, line := range texts[o.file] {
			m := re.FindStringSubmatch(line)
			if m == nil {
				continue
			}
			n++
			if w := o.wrong(m[1:]); w != "" {
				t.Errorf("%s.txt:%d: %s\n%s", o.file, i+1, w, line)
			}
		}
		if n < o.least {
			t.Errorf("%d lines like %s in %s.txt, want at least %d", n, o.lines, o.file, o.least)
		}
		rows += n
	}
	t.Logf("%d of %d lines worked out again", rows, all)
}

// These read what stands in brackets; a pattern lets only numbers through.

func integer(s string) int64 {
	n, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		panic(err)
	}
	return n
}

func float(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(err)
	}
	return v
}

func ratio(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic(s)
	}
	return r
}

func integers(s string) []int64 {
	fields := strings.Fields(s)
	all := make([]int64, len(fields))
	for i, f := range fields {
		all[i] = integer(f)
	}
	return all
}

func near(got, want, tolerance float64) string {
	if math.Abs(got-want) <= tolerance {
		return ""
	}
	return fmt.Sprintf("want %.17g within %.3g", want, tolerance)
}

func same[T comparable](got, want T) string {
	if got == want {
		return ""
	}
	return fmt.Sprintf("want %v", want)
}

// first returns the first that is wrong.
func first(wrongs ...string) string {
	for _, w := range wrongs {
		if w != "" {
			return w
		}
	}
	return ""
}

// away, down and up round to whole numbers: to the nearest, half away from zero; down; and up.
func away(r *big.Rat) *big.Int {
	if r.Sign() < 0 {
		return new(big.Int).Neg(away(new(big.Rat).Neg(r)))
	}
	return down(new(big.Rat).Add(r, big.NewRat(1, 2)))
}

func down(r *big.Rat) *big.Int { return new(big.Int).Div(r.Num(), r.Denom()) } // Euclidean: down, as the denominator is positive

func up(r *big.Rat) *big.Int { return new(big.Int).Neg(down(new(big.Rat).Neg(r))) }

// told writes a whole number as the lines have it, and what does not fit in 64 bits as refused.
func told(n *big.Int, unit string) string {
	if !n.IsInt64() {
		return "range"
	}
	return n.String() + unit
}

// simpson integrates f by Simpson's rule.
func simpson(f func(float64) float64, a, b float64) float64 {
	const n = 4000
	h := (b - a) / n
	sum := f(a) + f(b)
	for i := 1; i < n; i++ {
		sum += float64(2+2*(i%2)) * f(a+h*float64(i))
	}
	return sum * h / 3
}

// bisect returns where f crosses zero going up.
func bisect(f func(float64) float64, lo, hi float64) float64 {
	for range 200 {
		if mid := (lo + hi) / 2; f(mid) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

const (
	foot = 304_800_000
	inch = 25_400_000
)

var unitsOracles = []oracle{
	{"units", `read length "([^"'′]+)" = (\S+)(?: nm)?`, 40, func(m []string) string {
		r, ok := readLength(m[0])
		if !ok || strings.ContainsAny(m[0], "eE") || m[1] == "refused" {
			return "" // a way of writing that only the library reads, or one that it is not to read
		}
		return same(m[1], told(away(r), ""))
	}},
	{"units", `print (-?\d+) nm = "([^"]+)", read back true`, 55, func(m []string) string {
		r, ok := readLength(strings.ReplaceAll(m[1], "-", "-"))
		if !ok {
			return "not a length"
		}
		return same(r.Cmp(ratio(m[0])), 0)
	}},
	{"units", `round (-?\d+)( \w+) by (\d+) \w+ = ([^,]+), down ([^,]+), up ([^,]+)`, 300, func(m []string) string {
		step := ratio(m[2])
		q := new(big.Rat).Quo(ratio(m[0]), step)
		times := func(n *big.Int) string { return told(n.Mul(n, step.Num()), m[1]) }
		return first(same(m[3], times(away(q))), same(m[4], times(down(q))), same(m[5], times(up(q))))
	}},
	{"units", `divide (-?\d+) \w+ by (\d+) \w+ = (\S+), to 4 places (\S+), to 12 places (\S+)`, 300, func(m []string) string {
		q := new(big.Rat).Quo(ratio(m[0]), ratio(m[1]))
		want, _ := q.Float64()
		places := func(n int64) *big.Rat {
			scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(n), nil)
			return new(big.Rat).SetFrac(away(new(big.Rat).Mul(q, new(big.Rat).SetInt(scale))), scale)
		}
		// Beyond 2^53 base units the float is within an ulp.
		return first(near(float(m[2]), want, 0x1p-52*math.Abs(want)), same(ratio(m[3]).Cmp(places(4)), 0), same(ratio(m[4]).Cmp(places(12)), 0))
	}},
	{"units", `exact times (\S+) (\d+)( \w+) = (.+)`, 100, func(m []string) string {
		return same(m[3], told(away(new(big.Rat).Mul(ratio(m[0]), ratio(m[1]))), m[2]))
	}},
	{"units", `times (\S+) (\d+)( \w+) = (.+)`, 150, func(m []string) string {
		v := float(m[0])
		if math.IsNaN(v) {
			return same(m[3], "range")
		}
		p := new(big.Rat).Mul(new(big.Rat).SetFloat64(v), ratio(m[1]))
		if m[3] == "range" {
			return same(away(p).IsInt64(), false)
		}
		want, _ := p.Float64()
		return near(float(strings.TrimSuffix(m[3], m[2])), want, 1+0x1p-52*math.Abs(want))
	}},
	{"units", `rectangle (.+) x (.+) = (.+)`, 50, func(m []string) string {
		a, _ := readLength(m[0])
		b, _ := readLength(m[1])
		return same(m[2], told(away(new(big.Rat).Quo(a.Mul(a, b), big.NewRat(1_000_000, 1))), " um2"))
	}},
}

var elemOracles = []oracle{
	{"elem", `(\w+) (\S+) = (\S+)`, 500, func(m []string) string {
		f := map[string]func(float64) float64{
			"asinh": math.Asinh, "cbrt": math.Cbrt, "cosh": math.Cosh, "exp": math.Exp, "log": logarithm, "sin": math.Sin, "sine": math.Sin, "cosine": math.Cos,
			"sinh": math.Sinh,
		}[m[0]]
		return beside(float(m[2]), f(float(m[1])))
	}},
	{"elem", `angle (\S+) (\S+) = (\S+)`, 100, func(m []string) string { return beside(float(m[2]), math.Atan2(float(m[0]), float(m[1]))) }},
}

// logarithm is math.Log, which is wrong below the normal numbers on some machines.
func logarithm(x float64) float64 {
	f, e := math.Frexp(x)
	return math.Log(f) + float64(e)*math.Ln2
}

// beside compares with a result of package math, which is within some ulps.
func beside(got, want float64) string {
	if got == want || math.IsNaN(got) && math.IsNaN(want) {
		return ""
	}
	return near(got, want, 1e-14*math.Abs(want)+5e-324)
}

var lightsOracles = []oracle{
	{"lights", `strings of (\d+) lamps (\d+) nm \d+ mW joined \d+ for (\d+) (lamps|nm) = (\d+)`, 80, func(m []string) string {
		each := m[0]
		if m[3] == "nm" {
			each = m[1]
		}
		return same(m[4], up(new(big.Rat).Quo(ratio(m[2]), ratio(each))).String())
	}},
	{"lights", `runs of (\d+) of .* joined (\d+) = (\d+)`, 30, func(m []string) string {
		joined := m[1]
		if joined == "0" {
			joined = "3" // the usual limit
		}
		return same(m[2], up(new(big.Rat).Quo(ratio(m[0]), ratio(joined))).String())
	}},
	{"lights", `load of (\d+) of \d+ lamps \d+ nm (\d+) mW joined \d+ on (\d+) V (\d+) A and (\d+) mW = (\d+) mW of (\d+) mW, (\d+) mA of (\d+) mA, over (\w+)`, 90, func(m []string) string {
		power := integer(m[0])*integer(m[1]) + integer(m[4])
		limit := integer(m[2]) * integer(m[3]) * 800
		return first(same(integer(m[5]), power), same(integer(m[6]), limit), same(m[7], up(big.NewRat(power, integer(m[2]))).String()),
			same(integer(m[8]), integer(m[3])*800), same(m[9], fmt.Sprint(power > limit)))
	}},
	{"lights", `season of (\d+) of \d+ lamps \d+ nm (\d+) mW joined \d+ for (\S+) h on (\d+) days at (\S+) = (\S+) kWh, (\S+)`, 120, func(m []string) string {
		energy := big.NewRat(1, 1_000_000)
		for _, s := range m[:4] {
			energy.Mul(energy, ratio(s))
		}
		return first(same(ratio(m[5]).Cmp(energy), 0), same(ratio(m[6]).Cmp(energy.Mul(energy, ratio(m[4]))), 0))
	}},
}
