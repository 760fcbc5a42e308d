// Package mantel measures the sag of a swag against general root finders on the same
// equation. The module gonum has no root finder for one variable, so both rivals are
// written here: bisection, and Brent's method as in his book, Algorithms for
// Minimization without Derivatives (1973), chapter 4.
package mantel

import (
	"math"
	"testing"
	"time"

	"example.com/fircone/mantel"
	"example.com/fircone/units"
)

// swags are spans and lengths in nanometers, from flat to deep: the sag is from a
// hundredth of the span to three times the span.
var swags = []struct {
	name         string
	span, length units.Length
}{
	{"flat", 5 * units.Foot, 5*units.Foot + units.Inch/64},
	{"shallow", 5 * units.Foot, 5*units.Foot + 3*units.Inch},
	{"usual", 5 * units.Foot, 6 * units.Foot},
	{"deep", 5 * units.Foot, 9 * units.Foot},
	{"deeper", 5 * units.Foot, 16 * units.Foot},
	{"deepest", 5 * units.Foot, 32 * units.Foot},
}

// The equation that every textbook gives: sinh u/u = length/span.
func equation(u, ratio float64) float64 { return math.Sinh(u)/u - ratio }

// A rival knows only that u is between low and high, which holds for every swag that
// the library takes, and stops when u is known so well that the sag is to a nanometer.
const low, high = 1e-6, 12.0

func tolerance(span float64) float64 { return 1 / span }

func sagAt(u, span float64) units.Length {
	return units.Length(math.Round(span * (math.Cosh(u) - 1) / (2 * u)))
}

func bisection(span, length float64) units.Length {
	ratio, a, b := length/span, float64(low), float64(high)
	for b-a > tolerance(span) {
		if mid := (a + b) / 2; equation(mid, ratio) < 0 {
			a = mid
		} else {
			b = mid
		}
	}
	return sagAt((a+b)/2, span)
}

func brent(span, length float64) units.Length {
	ratio, tol := length/span, tolerance(span)/2
	a, b := float64(low), float64(high)
	fa, fb := equation(a, ratio), equation(b, ratio)
	c, fc := a, fa
	d := b - a
	e := d
	for {
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		m := (c - b) / 2
		if math.Abs(m) <= tol || fb == 0 {
			return sagAt(b, span)
		}
		interpolated := false
		if math.Abs(e) >= tol && math.Abs(fa) > math.Abs(fb) {
			var p, q float64
			if s := fb / fa; a == c { // a secant
				p, q = 2*m*s, 1-s
			} else { // an inverse parabola
				t, r := fa/fc, fb/fc
				p = s * (2*m*t*(t-r) - (b-a)*(r-1))
				q = (t - 1) * (r - 1) * (s - 1)
			}
			if p > 0 {
				q = -q
			} else {
				p = -p
			}
			if 2*p < min(3*m*q-math.Abs(tol*q), math.Abs(e*q)) {
				d, e, interpolated = p/q, d, true
			}
		}
		if !interpolated {
			d, e = m, m
		}
		a, fa = b, fb
		if math.Abs(d) > tol {
			b += d
		} else {
			b += math.Copysign(tol, m)
		}
		fb = equation(b, ratio)
		if (fb > 0) == (fc > 0) {
			c, fc = a, fa
			d = b - a
			e = d
		}
	}
}

// library returns the sag that the library finds.
func library(tb testing.TB, span, length units.Length) units.Length {
	r, err := mantel.Run{Hooks: []mantel.Point{{}, {Along: span}}}.FindSag(length)
	if err != nil {
		tb.Fatal(err)
	}
	return r.Sag
}

// The rivals find the same sag, to what the textbook equation gives in floating point:
// where a swag is flat, sinh u/u is near 1 and has lost half of its digits. The library
// goes by the slack and has not.
func TestSame(t *testing.T) {
	for _, s := range swags {
		got := library(t, s.span, s.length)
		u := 4 * float64(got) / float64(s.span)
		slack := 2 + units.Length(float64(s.span)*1e-15/u)
		for name, rival := range map[string]func(span, length float64) units.Length{"bisection": bisection, "brent": brent} {
			if want := rival(float64(s.span), float64(s.length)); got-want > slack || want-got > slack {
				t.Errorf("%s: sag %d nm, by %s %d nm", s.name, got, name, want)
			}
		}
	}
}

var sink units.Length

// BenchmarkSag times the sag from the length, to a nanometer: the library beside both
// rivals. The three take turns in short blocks, and the quickest block of each counts,
// so that what else the machine does falls on all of them alike. It reports nanoseconds
// a call, and how many times as long each rival takes.
func BenchmarkSag(b *testing.B) {
	for _, s := range swags {
		b.Run(s.name, func(b *testing.B) {
			b.ReportAllocs()
			const block = 100
			span, length := float64(s.span), float64(s.length)
			calls := [...]func(){
				func() { sink = library(b, s.span, s.length) },
				func() { sink = bisection(span, length) },
				func() { sink = brent(span, length) },
			}
			least := [...]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
			for b.Loop() {
				for i, call := range calls {
					start := time.Now()
					for range block {
						call()
					}
					least[i] = min(least[i], float64(time.Since(start).Nanoseconds())/block)
				}
			}
			b.ReportMetric(0, "ns/op") // of a block of all three, which says nothing
			b.ReportMetric(least[0], "library-ns")
			b.ReportMetric(least[1]/least[0], "bisection/library")
			b.ReportMetric(least[2]/least[0], "brent/library")
		})
	}
}
