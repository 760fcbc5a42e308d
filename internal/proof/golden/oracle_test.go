package golden

import (
	"fmt"
	"math"
	"math/big"
	"reflect"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/shopspring/decimal"

	"example.com/fircone/internal/proof/surface"
	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

// An oracle works a result out again by other means than the library's, from the arguments
// of a call that was not refused, and says what is wrong, "" if nothing is.
type oracle func(in []any, out any) string

// oracles holds the functions of which rows are worked out again: exactly, in rational numbers, where the
// library counts in integers; and by plain quadrature, bisection or another library where it has a closed form.
var oracles = map[string]oracle{
	"units.Length.In": func(in []any, out any) string {
		want, _ := new(big.Rat).SetFrac64(int64(in[0].(units.Length)), int64(in[1].(units.Length))).Float64()
		return within(out.(float64), want, 2e-16*math.Abs(want))
	},
	"units.Length.Decimal": func(in []any, out any) string {
		want := new(big.Rat).SetFrac64(int64(in[0].(units.Length)), int64(in[1].(units.Length)))
		got := out.(decimal.Decimal)
		half := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Mul(big.NewInt(2), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(in[2].(int))), nil)))
		off := new(big.Rat).Sub(got.Rat(), want)
		if off.Abs(off).Cmp(half) > 0 {
			return fmt.Sprintf("%v is over half a unit of the last place from %v", got, want)
		}
		return ""
	},
	"units.Length.Round": nearest(func(down, up, l *big.Rat) *big.Rat {
		a, b := new(big.Rat).Sub(l, down), new(big.Rat).Sub(up, l)
		if c := a.Cmp(b); c < 0 || c == 0 && l.Sign() < 0 {
			return down
		}
		return up
	}),
	"units.Length.Floor": nearest(func(down, _, _ *big.Rat) *big.Rat { return down }),
	"units.Length.Ceil": nearest(func(down, up, l *big.Rat) *big.Rat {
		if down.Cmp(l) == 0 {
			return down
		}
		return up
	}),
	"units.AreaOf": func(in []any, out any) string {
		// Square nanometers to square micrometers, half away from zero.
		p := new(big.Rat).SetInt(new(big.Int).Mul(big.NewInt(int64(in[0].(units.Length))), big.NewInt(int64(in[1].(units.Length)))))
		p.Quo(p, big.NewRat(1_000_000, 1))
		return equal(int64(out.(units.Area)), away(p))
	},
	"sizing.Rules.Picks":   perFoot(func(r sizing.Rules) int64 { return int64(r.PicksPerFoot) }),
	"sizing.Rules.Lights":  perFoot(func(r sizing.Rules) int64 { return int64(r.LightsPerFoot) }),
	"sizing.Rules.Garland": perFoot(func(r sizing.Rules) int64 { return int64(r.GarlandPerFoot) }),
	"sizing.Rules.Ribbon":  perFoot(func(r sizing.Rules) int64 { return int64(r.RibbonPerFoot) }),
	"sizing.Cone.Slant": func(in []any, out any) string {
		c := in[0].(sizing.Cone)
		h, r := big.NewFloat(float64(c.Height)).SetPrec(200), big.NewFloat(float64(c.BaseDiameter)/2).SetPrec(200)
		h.Mul(h, h)
		r.Mul(r, r)
		want, _ := h.Sqrt(h.Add(h, r)).Float64()
		dressed := want * float64(c.Height-c.BareTip-c.BareBase) / float64(c.Height)
		return within(float64(out.(units.Length)), dressed, 1+1e-15*want)
	},
	"sizing.Cone.SpiralLength": func(in []any, out any) string {
		c := in[0].(sizing.Cone)
		h, r := float64(c.Height), float64(c.BaseDiameter)/2
		s := math.Sqrt(h*h + r*r)
		from, to := s*float64(c.BareTip)/h, s*float64(c.Height-c.BareBase)/h
		k := 2 * math.Pi * r / s / float64(in[1].(units.Length))
		want := simpson(func(x float64) float64 { return math.Sqrt(1 + k*k*x*x) }, from, to)
		return within(float64(out.(units.Length)), want, 2+1e-9*want)
	},
	"sizing.Tree.Spacing": func(in []any, out any) string {
		// The garland wound so far apart is as long as the one given.
		tree, spacing := in[0].(sizing.Tree), float64(out.(units.Length))
		c, _ := tree.Cone()
		degrees, _ := tree.Exposure.Degrees()
		h, r := float64(c.Height), float64(c.BaseDiameter)/2
		s := math.Sqrt(h*h + r*r)
		k := 2 * math.Pi * r / s / spacing * degrees / 360
		length := simpson(func(x float64) float64 { return math.Sqrt(1 + k*k*x*x) }, s*float64(c.BareTip)/h, s)
		return within(float64(in[1].(units.Length)), length, 2+1e-9*length+length/spacing)
	},
	"mantel.Swag.Length": func(in []any, out any) string {
		s := in[0].(mantel.Swag)
		span, sag := float64(s.Span), float64(s.Sag)
		if sag == 0 {
			return within(float64(out.(units.Length)), span, 1)
		}
		// The half span u in units of the parameter, by bisection of sag/span = (cosh u - 1)/2u.
		u := bisect(func(u float64) float64 { s := math.Sinh(u / 2); return s*s/u - sag/span }, 1e-12, 50)
		want := simpson(func(x float64) float64 { return math.Cosh(2 * u * x / span) }, -span/2, span/2)
		return within(float64(out.(units.Length)), want, 2+1e-9*want)
	},
	"palette.Difference": func(in []any, out any) string {
		x, y := in[0].(palette.Lab), in[1].(palette.Lab)
		return within(out.(float64), ciede2000(x, y), 1e-9*max(1, out.(float64)))
	},
	"palette.Color.Lab": func(in []any, out any) string {
		c, got := in[0].(palette.Color), out.(palette.Lab)
		l, a, b := colorful.Color{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255}.Lab()
		// The library rounds the white of D65 to five digits and the matrix to seven: 0.014 at most.
		for _, p := range [][2]float64{{got.L, 100 * l}, {got.A, 100 * a}, {got.B, 100 * b}} {
			if s := within(p[0], p[1], 0.02); s != "" {
				return s
			}
		}
		return ""
	},
	"palette.Apportion": func(in []any, out any) string {
		total, shares, least, counts := in[0].(int), in[1].([]int), in[2].(int), out.([]int)
		sum, all := 0, 0
		for _, s := range shares {
			sum += s
		}
		for i, n := range counts {
			all += n
			quota := new(big.Rat).SetFrac64(int64(total)*int64(shares[i]), int64(sum))
			off := new(big.Rat).Sub(quota, new(big.Rat).SetInt64(int64(n)))
			if least == 0 && off.Abs(off).Cmp(big.NewRat(1, 1)) >= 0 || n < least {
				return fmt.Sprintf("%d for a quota of %v", n, quota)
			}
		}
		return equal(int64(all), int64(total))
	},
}

func TestOracles(t *testing.T) {
	rows, functions := 0, 0
	for _, f := range surface.Funcs {
		check, ok := oracles[f.Name]
		if !ok {
			continue
		}
		functions++
		n := 0
		for _, args := range cases(f) {
			out := f.Call(args)
			if err, _ := f.Err(out); err != nil {
				continue
			}
			n++
			in := make([]any, len(args))
			for i, a := range args {
				in[i] = a.Interface()
			}
			if wrong := check(in, out[0].Interface()); wrong != "" {
				t.Errorf("%s(%s) = %s: %s", f.Name, surface.Encode(args), surface.Encode([]reflect.Value{out[0]}), wrong)
			}
		}
		if n < 10 {
			t.Errorf("%s: only %d cases are not refused", f.Name, n)
		}
		rows += n
	}
	if functions != len(oracles) {
		t.Errorf("%d oracles, and functions for %d of them", len(oracles), functions)
	}
	t.Logf("%d rows of %d functions worked out again", rows, functions)
}

func within(got, want, tolerance float64) string {
	if math.Abs(got-want) <= tolerance {
		return ""
	}
	return fmt.Sprintf("want %.17g within %.3g", want, tolerance)
}

func equal(got, want int64) string {
	if got == want {
		return ""
	}
	return fmt.Sprintf("want %d", want)
}

// away rounds to the nearest whole number, half away from zero.
func away(r *big.Rat) int64 {
	half := big.NewRat(1, 2)
	if r.Sign() < 0 {
		return -away(new(big.Rat).Neg(r))
	}
	r = new(big.Rat).Add(r, half)
	return new(big.Int).Quo(r.Num(), r.Denom()).Int64()
}

// nearest makes an oracle of a choice between the multiples of the step below and above.
func nearest(choose func(down, up, l *big.Rat) *big.Rat) oracle {
	return func(in []any, out any) string {
		l, step := int64(in[0].(units.Length)), int64(in[1].(units.Length))
		q := new(big.Int).Div(big.NewInt(l), big.NewInt(step)) // Euclidean: down, since step is positive
		down := new(big.Rat).SetInt(new(big.Int).Mul(q, big.NewInt(step)))
		up := new(big.Rat).Add(down, new(big.Rat).SetInt64(step))
		want := choose(down, up, new(big.Rat).SetInt64(l))
		return equal(int64(out.(units.Length)), want.Num().Int64())
	}
}

// perFoot makes an oracle of a supply: so much for each foot of the exact height, rounded up.
func perFoot(each func(sizing.Rules) int64) oracle {
	return func(in []any, out any) string {
		want := new(big.Rat).SetFrac64(each(in[0].(sizing.Rules)), int64(units.Foot))
		want.Mul(want, new(big.Rat).SetInt64(int64(in[1].(units.Length))))
		q, rest := new(big.Int).QuoRem(want.Num(), want.Denom(), new(big.Int))
		if rest.Sign() > 0 {
			q.Add(q, big.NewInt(1))
		}
		return equal(reflect.ValueOf(out).Int(), q.Int64())
	}
}

// simpson integrates f by Simpson's rule in 20,000 steps.
func simpson(f func(float64) float64, a, b float64) float64 {
	const n = 20_000
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

// ciede2000 is the formula as printed, in degrees and with package math.
//
// Source: G. Sharma, W. Wu and E. N. Dalal, "The CIEDE2000 color-difference formula", 2005, equations 2 to 22.
func ciede2000(x, y palette.Lab) float64 {
	deg := math.Pi / 180
	pow7 := func(v float64) float64 { return math.Sqrt(math.Pow(v, 7) / (math.Pow(v, 7) + math.Pow(25, 7))) }
	g := 0.5 * (1 - pow7((math.Hypot(x.A, x.B)+math.Hypot(y.A, y.B))/2))
	a1, a2 := (1+g)*x.A, (1+g)*y.A
	c1, c2 := math.Hypot(a1, x.B), math.Hypot(a2, y.B)
	hue := func(b, a float64) float64 {
		if a == 0 && b == 0 {
			return 0
		}
		h := math.Atan2(b, a) / deg
		if h < 0 {
			h += 360
		}
		return h
	}
	h1, h2 := hue(x.B, a1), hue(y.B, a2)
	dh, hm := 0.0, h1+h2
	if c1*c2 != 0 {
		dh = h2 - h1
		hm = (h1 + h2) / 2
		switch {
		case dh > 180:
			dh -= 360
		case dh < -180:
			dh += 360
		}
		if math.Abs(h1-h2) > 180 {
			if h1+h2 < 360 {
				hm += 180
			} else {
				hm -= 180
			}
		}
	}
	dH := 2 * math.Sqrt(c1*c2) * math.Sin(dh/2*deg)
	lm, cm := (x.L+y.L)/2, (c1+c2)/2
	t := 1 - 0.17*math.Cos((hm-30)*deg) + 0.24*math.Cos(2*hm*deg) + 0.32*math.Cos((3*hm+6)*deg) - 0.20*math.Cos((4*hm-63)*deg)
	turn := 30 * math.Exp(-math.Pow((hm-275)/25, 2))
	sl := 1 + 0.015*math.Pow(lm-50, 2)/math.Sqrt(20+math.Pow(lm-50, 2))
	sc, sh := 1+0.045*cm, 1+0.015*cm*t
	rt := -2 * pow7(cm) * math.Sin(2*turn*deg)
	l, c, h := (y.L-x.L)/sl, (c2-c1)/sc, dH/sh
	return math.Sqrt(l*l + c*c + h*h + rt*c*h)
}
