package catenary_test

import (
	"math"
	"math/big"
	"testing"

	"example.com/fircone/internal/catenary"
	"example.com/fircone/internal/catenary/slow"
)

// off reports by how much got is off, as a part of scale.
func off(got float64, want *big.Float, scale float64) float64 {
	d, _ := slow.Sub(slow.Big(got), want).Float64()
	return math.Abs(d) / scale
}

// chains are spans, rises and sags of all kinds, in nanometers.
func chains(yield func([3]float64) bool) {
	const in = 25_400_000.
	for _, span := range []float64{in, 20 * in, 600 * in} {
		for _, rise := range []float64{1, 0.02 * in, 3 * in, 14 * in, 100 * in, 600 * in} {
			for _, sag := range []float64{0.01, 0.05, 0.2, 0.7, 1, 3, 40, 600} {
				if sag*span > 600*in {
					continue
				}
				for _, sign := range []float64{1, -1} {
					if !yield([3]float64{span, math.Round(sign * rise), math.Round(sag * span)}) {
						return
					}
				}
			}
		}
	}
}

// A chain from its sag, its pulls and its heights, against 256 bits. Errors are parts
// of the largest measure of the chain; a part in 1e14 of 50 ft is 0.0002 nm. A chain
// that rises more than 30 times its span is all but hanging straight down: there its
// ends keep fewer digits. Where the exponential function takes over from power series,
// u from a length is good to 2e-13.
func TestSloped(t *testing.T) {
	n, worst := 0, 0.
	for c := range chains {
		span, rise, sag := c[0], c[1], c[2]
		n++
		if testing.Short() && n%7 != 3 { // math/big is slow under an emulator
			continue
		}
		got, want := catenary.Sloped(span, rise, sag), slow.OfSag(span, rise, sag)
		length, _ := want.Length().Float64()
		left, right := got.Ends()
		l, r := want.Ends()
		pull, _ := want.Pull().Float64()
		at, below := got.Lowest()
		errs := map[string]float64{
			"length": off(got.Length(), want.Length(), length),
			"left":   off(left, l, length+pull),
			"right":  off(right, r, length+pull),
			"pull":   off(got.Pull(), want.Pull(), pull),
			"sag":    off(got.Sag(), slow.Big(sag), length),
			"lowest": off(below, want.Below(at), length),
		}
		for _, part := range []float64{0, 0.1, 0.5, 0.77, 1} {
			errs["below"] = max(errs["below"], off(got.Below(math.Round(part*span)), want.Below(math.Round(part*span)), length))
			if got.Below(math.Round(part*span)) > below+1e-14*length {
				t.Errorf("%v %v %v: lower at %v than at the lowest, %v", span, rise, sag, part, at/span)
			}
		}
		bound := 1e-14
		if math.Abs(rise) > 30*span {
			bound = 2e-13
		}
		for what, err := range errs {
			worst = max(worst, err)
			if err > bound {
				t.Errorf("span %v rise %v sag %v: %s is off by %.2g", span, rise, sag, what, err)
			}
		}
		// Its length gives it back.
		whole := int64(math.Ceil(length))
		fit, ok := catenary.Fit(int64(span), int64(rise), whole)
		if exact := slow.OfLength(span, math.Abs(rise), float64(whole)); !ok || off(fit.Sag(), exact.Sag(), length) > 2e-13 {
			t.Errorf("span %v rise %v length %v: sag %v, %v, want %v", span, rise, whole, fit.Sag(), ok, exact.Sag())
		}
	}
	if n < 200 {
		t.Errorf("only %d chains", n)
	}
	t.Logf("%d chains, off by %.2g at most", n, worst)
}

// As the comment of Sloped has it: 85 in 100 chains take one or two steps, and none more than 7.
func TestSteps(t *testing.T) {
	few, least, most, n := 0, 99, 0, 245
	for i := range n {
		rise := 0.001 * math.Pow(600/0.001, float64(i)/float64(n-1))
		for j := range n {
			sag := 0.01 * math.Pow(600/0.01, float64(j)/float64(n-1))
			steps := catenary.Steps(1, rise, sag)
			if steps <= 2 {
				few++
			}
			least, most = min(least, steps), max(most, steps)
		}
	}
	if share := float64(few) / float64(n*n); share < 0.85 || least < 1 || most > 7 {
		t.Errorf("%.4f take one or two steps, all %d to %d", share, least, most)
	}
}

// Level chains from their sag and from their length, against 256 bits: on both sides of where the
// exponential function takes over from power series, and near it, where it is less exact.
func TestLevel(t *testing.T) {
	const span = 508_000_000. // 20 in
	for _, part := range []float64{1e-6, 0.001, 0.02, 0.1, 0.3, 0.5, 0.68, 0.69054, 0.69055, 0.7, 0.81343, 0.81344, 0.9, 1, 2, 5, 30, 400} {
		bound := 1e-15
		if part > 0.69 && part < 2 {
			bound = 4e-14
		}
		level, want := catenary.Level(span, part*span), slow.OfSag(span, 0, part*span)
		slack := slow.Sub(want.Length(), slow.Big(span))
		scale, _ := slack.Float64()
		if err := off(level.Slack(), slack, scale); err > bound {
			t.Errorf("sag %v of the span: the slack is off by %.2g", part, err)
		}
		want = slow.OfLength(span, 0, span+part*span)
		scale, _ = want.Sag().Float64()
		if err := off(catenary.Sag(span, part*span), want.Sag(), scale); err > bound {
			t.Errorf("slack %v of the span: the sag is off by %.2g", part, err)
		}
	}
}

// The published worked example y = 10 cosh(x/10), -15 to 15, 42.586 long: OpenStax, Calculus
// Volume 1, Calculus of the Hyperbolic Functions; and part of it, from -5 to 15, whose
// ends are at two heights: 10·(sinh 1.5 + sinh 0.5) = 26.504 long.
func TestPublished(t *testing.T) {
	level := catenary.Level(30, 10*(math.Cosh(1.5)-1))
	if got := 30 + level.Slack(); math.Abs(got-42.586) > 0.0005 || math.Abs(level.Length()-got) > 1e-12 {
		t.Errorf("length %v, %v", got, level.Length())
	}
	rise := 10 * (math.Cosh(1.5) - math.Cosh(0.5))
	sag := 10*(math.Cosh(1.5)+math.Cosh(0.5))/2 - 10*math.Cosh(0.5)
	part := catenary.Sloped(20, rise, sag)
	left, right := part.Ends()
	for what, pair := range map[string][2]float64{
		"length": {part.Length(), 10 * (math.Sinh(1.5) + math.Sinh(0.5))},
		"left":   {left, 10 * math.Sinh(0.5)},
		"right":  {right, 10 * math.Sinh(1.5)},
		"pull":   {part.Pull(), 10},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-12 {
			t.Errorf("%s %v, want %v", what, pair[0], pair[1])
		}
	}
	if at, below := part.Lowest(); math.Abs(at-5) > 1e-12 || math.Abs(below-10*(math.Cosh(0.5)-1)) > 1e-12 {
		t.Errorf("lowest at %v, %v below", at, below)
	}
}

// As the rise goes to nothing a sloped chain becomes the level one.
func TestTendsToLevel(t *testing.T) {
	for _, sag := range []float64{0.01, 0.3, 1, 20} {
		level := catenary.Level(1000, 1000*sag)
		if d := math.Abs(1000 + level.Slack() - level.Length()); d > 1e-10 {
			t.Errorf("sag %v: slack off by %v", sag, d)
		}
		for rise := 100.; rise > 1e-9; rise /= 10 {
			c := catenary.Sloped(1000, rise, 1000*sag)
			left, right := c.Ends()
			if d := math.Abs(c.Length() - level.Length()); d > rise {
				t.Errorf("rise %v: length %v, level %v", rise, c.Length(), level.Length())
			}
			if d := math.Abs(right - left); d > rise*(1+level.Pull()/200) {
				t.Errorf("rise %v: ends %v and %v", rise, left, right)
			}
			if d := math.Abs(c.Below(300) - level.Below(300)); d > rise {
				t.Errorf("rise %v: below %v, level %v", rise, c.Below(300), level.Below(300))
			}
		}
	}
}

func TestStraight(t *testing.T) {
	c := catenary.Sloped(4, 3, 0)
	if c.Length() != 5 || c.Sag() != 0 || c.Below(2) != -1.5 {
		t.Error(c.Length(), c.Sag(), c.Below(2))
	}
	if at, below := c.Lowest(); at != 0 || below != 0 {
		t.Error(at, below)
	}
	if at, below := catenary.Sloped(4, -3, 0).Lowest(); at != 4 || below != 3 {
		t.Error(at, below)
	}
	if at, below := catenary.Level(4, 0).Lowest(); at != 2 || below != 0 {
		t.Error(at, below)
	}
	if c, ok := catenary.Fit(4, -3, 5); !ok || c.Length() != 5 || c.Sag() != 0 {
		t.Error(c, ok)
	}
	for _, length := range []int64{-1, 2, 4} {
		if c, ok := catenary.Fit(4, -3, length); ok {
			t.Error(length, c)
		}
	}
	if got := catenary.Sag(4, 0); got != 0 {
		t.Error(got)
	}
}

var sink float64

func BenchmarkLevel(b *testing.B) {
	for b.Loop() {
		sink += catenary.Level(508_000_000, 101_600_000).Length()
	}
}

func BenchmarkSloped(b *testing.B) {
	for b.Loop() {
		sink += catenary.Sloped(508_000_000, 355_600_000, 101_600_000).Length()
	}
}

func BenchmarkLevelSag(b *testing.B) {
	for b.Loop() {
		sink += catenary.Sag(508_000_000, 142_000_000)
	}
}

func BenchmarkSlopedSag(b *testing.B) {
	for b.Loop() {
		c, _ := catenary.Fit(508_000_000, 355_600_000, 650_000_000)
		sink += c.Sag()
	}
}
