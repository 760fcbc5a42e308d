package mantel_test

import (
	"math"
	"math/big"
	"testing"

	"example.com/fircone/internal/catenary/slow"
	"example.com/fircone/mantel"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

const (
	maxSag    = 50 * ft
	maxSpan   = 50 * ft
	maxLength = 150 * ft
)

// near is how far a rounded result may be from the exact one, in nanometers: half
// of one by rounding, and the error of the arithmetic, which is below 1e-14 of
// 150 ft, 0.0005 nm.
const near = 0.5005

func TestSwagPublished(t *testing.T) {
	// A foot of the source is a foot here. The tolerance is half of the last digit
	// that is printed.
	for _, test := range []struct {
		span, sag, length, tolerance float64
		source                       string
	}{
		{30, 10 * (math.Cosh(1.5) - 1), 42.586, 0.0005, "OpenStax Calculus Vol. 1, Calculus of the Hyperbolic Functions, worked example: y = 10 cosh(x/10), -15 to 15 ft"},
		{40, 15 * (math.Cosh(4./3) - 1), 52.95, 0.005, "same, checkpoint: y = 15 cosh(x/15), -20 to 20 ft"},
		{6, 1, 6.42354207177425, 1e-8, "reference table, by root finding and quadrature in 40 digits"},
		{5, 0.75, 5.28836997429725, 1e-8, "same"},
		{10, 1, 10.2618686812876, 1e-8, "same"},
		{6, 8. / 12, 74.3181550825189 / 12, 1e-8, "same: 72 in and 8 in"},
		{50, 4.360, 51, 0.0005, "the wire of 51 over a span of 50, a textbook exercise; sag 4.360"},
	} {
		s := swag(feet(test.span), 0, feet(test.sag))
		got, err := s.Garland()
		if err != nil || math.Abs(got.In(units.Foot)-test.length) > test.tolerance {
			t.Errorf("%v: got %.9f ft, %v, want %v: %s", s, got.In(units.Foot), err, test.length, test.source)
		}
	}
	got, err := swag(50*ft, 0, 0).FindSag(51 * ft)
	if err != nil || math.Abs(got.Sag.In(units.Foot)-4.360) > 0.0005 {
		t.Errorf("span 50, length 51: sag %.6f, %v, want 4.360", got.Sag.In(units.Foot), err)
	}
}

func feet(f float64) units.Length { return units.Length(math.Round(f * float64(ft))) }

// spans and parts of them that make swags from very flat to as deep as they come.
func grid(yield func(span units.Length, part float64) bool) {
	for _, span := range []units.Length{in, in + 1, 5 * in, ft, 64 * in / 3, 5 * ft, 5*ft + 12345, 17 * ft, 50*ft - 1, 50 * ft} {
		for part := 1e-10; part < 2000; part *= 1.4 {
			if !yield(span, part) {
				return
			}
		}
		// Where the power series ends, both sides of it.
		for _, part := range []float64{0.6905489227709, 0.690548922771, 0.8134302039235, 0.813430203924} {
			if !yield(span, part) {
				return
			}
		}
	}
	// Beyond where the power series end, the starts are furthest off; and the widest
	// swag shows an error most.
	for part := 0.6; part < 1.6; part *= 1.013 {
		if !yield(50*ft, part) {
			return
		}
	}
}

func TestSwagLengthIsExact(t *testing.T) {
	if testing.Short() {
		t.Skip("math/big is slow under an emulator, and the golden numbers hold the bits")
	}
	n, worst := 0, 0.
	for span, part := range grid {
		sag := units.Length(part * float64(span))
		if sag < 1 || sag > maxSag {
			continue
		}
		got, err := swag(span, 0, sag).Garland()
		if err != nil {
			t.Fatal(err)
		}
		n++
		// The span grows with the length at a given sag.
		want := slow.Big(float64(span))
		low, high := slow.LevelSpan(float64(got)-near, float64(sag)), slow.LevelSpan(float64(got)+near, float64(sag))
		if low.Cmp(want) > 0 || high.Cmp(want) < 0 {
			t.Errorf("span %v sag %v: length %v is not the nearest", span, sag, got)
		}
		worst = max(worst, float64(got))
	}
	if n < 500 {
		t.Errorf("only %d swags", n)
	}
	if worst < float64(90*ft) {
		t.Errorf("the longest is only %v", units.Length(worst))
	}
}

func TestSagIsExact(t *testing.T) {
	if testing.Short() {
		t.Skip("math/big is slow under an emulator, and the golden numbers hold the bits")
	}
	n := 0
	for span, part := range grid {
		slack := units.Length(part * float64(span))
		if slack < 1 || span+slack > maxLength {
			continue
		}
		got, err := swag(span, 0, 0).FindSag(span + slack)
		if err != nil {
			// The exact sag of so long a garland is over 50 ft.
			if slow.LevelSpan(float64(span+slack), float64(maxSag)).Cmp(slow.Big(float64(span))) < 0 {
				t.Fatal(span, slack, err)
			}
			continue
		}
		n++
		// The span shrinks as the sag grows at a given length.
		want := slow.Big(float64(span))
		low := slow.LevelSpan(float64(span+slack), float64(got.Sag)+near)
		high := slow.LevelSpan(float64(span+slack), float64(got.Sag)-near)
		if low.Cmp(want) > 0 || high.Cmp(want) < 0 {
			t.Errorf("span %v length %v: sag %v is not the nearest", span, span+slack, got.Sag)
		}
	}
	if n < 500 {
		t.Errorf("only %d swags", n)
	}
}

func TestBelowIsExact(t *testing.T) {
	if testing.Short() {
		t.Skip("math/big is slow under an emulator, and the golden numbers hold the bits")
	}
	for _, span := range []units.Length{in, 5 * ft, 50 * ft} {
		for part := 1e-9; part < 600; part *= 7 {
			sag := units.Length(part * float64(span))
			if sag < 1 || sag > maxSag {
				continue
			}
			s := swag(span, 0, sag)
			for _, at := range []units.Length{1, span / 100, span / 3, span / 2, span - span/5, span - 1} {
				got, err := s.Below(at)
				if err != nil {
					t.Fatal(err)
				}
				diff := slow.Sub(slow.Big(float64(got)), slow.OfSag(float64(span), 0, float64(sag)).Below(float64(at)))
				if diff.Abs(diff).Cmp(big.NewFloat(near)) > 0 {
					t.Errorf("%v: below at %v is %v, off by %v nm", s, at, got, diff)
				}
			}
		}
	}
}

func TestSwagEnds(t *testing.T) {
	for _, span := range []units.Length{in, 50 * ft} {
		s := swag(span, 0, 0)
		if got, err := s.Garland(); err != nil || got != span {
			t.Errorf("%v: length %v, %v, want the span", s, got, err)
		}
		if got, err := s.FindSag(span); err != nil || got.Sag != 0 || len(got.Hooks) != 2 {
			t.Errorf("got %v, %v, want %v", got, err, s)
		}
		if got, err := s.Below(span / 3); err != nil || got != 0 {
			t.Errorf("%v: below %v, %v, want 0", s, got, err)
		}
	}
	for _, test := range [][2]units.Length{{in, 50 * ft}, {50 * ft, 50 * ft}, {5 * ft, 9 * in}, {2 * in, 1}} {
		span, sag := test[0], test[1]
		s := swag(span, 0, sag)
		for at, want := range map[units.Length]units.Length{0: 0, span / 2: sag, span: 0} {
			if got, err := s.Below(at); err != nil || got != want {
				t.Errorf("%v: below %v at %v, %v, want %v", s, got, at, err, want)
			}
		}
	}
	if got, err := swag(50*ft, 0, 0).FindSag(100 * ft); err != nil || got.Sag < 38*ft {
		t.Errorf("longest: %v, %v", got, err)
	}
}

func TestRunErrors(t *testing.T) {
	long := func(r mantel.Run) error { _, err := r.Garland(); return err }
	below := func(r mantel.Run, at units.Length) error { _, err := r.Below(at); return err }
	of := func(span, length units.Length) error {
		r, err := swag(span, 0, 0).FindSag(length)
		if err != nil && r.Hooks != nil {
			t.Errorf("%v with error %v", r, err)
		}
		return err
	}
	sloped := func(length units.Length) error { _, err := swag(30*ft, 40*ft, 0).FindSag(length); return err }
	errOf := func(fn, field, want string, err error) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: err}
	}
	at := func(along, below units.Length) mantel.Run {
		return mantel.Run{Hooks: []mantel.Point{{along, below}, {along + ft, below}}}
	}
	many := mantel.Run{}
	for i := range 102 {
		many.Hooks = append(many.Hooks, mantel.Point{Along: units.Length(i) * in})
	}
	hung := swag(ft, 0, 0)
	lying := hung
	lying.Lying, lying.Sag = true, 1
	left, right := hung, hung
	left.Left, right.Right = -1, 50*ft+1
	// The longest garland over 50 ft; 2 nm more sags a nanometer more.
	deepest, err := swag(50*ft, 0, 50*ft).Garland()
	if err != nil {
		t.Fatal(err)
	}
	wantLength := "at most " + deepest.Format(units.InFeetInches, 1) + ", which hangs 50 ft deep"
	const G, F, B = "Run.Garland", "Run.FindSag", "Run.Below"
	const apart, rise, far = "1 in to 50 ft to the right of the hook before", "at most 50 ft above or below the hook before", "-1000 ft to 1000 ft"
	for i, test := range []struct {
		err  error
		want *units.Error
	}{
		{long(swag(in, 0, 0)), nil},
		{long(swag(in-1, 0, 0)), errOf(G, "/hooks/1/along", apart, units.ErrFit)},
		{long(swag(50*ft, 50*ft, 50*ft)), nil},
		{long(swag(50*ft, -50*ft, 50*ft)), nil},
		{long(swag(50*ft+1, 0, 0)), errOf(G, "/hooks/1/along", apart, units.ErrFit)},
		{long(swag(-ft, 0, 0)), errOf(G, "/hooks/1/along", apart, units.ErrFit)},
		{long(swag(ft, 50*ft+1, 0)), errOf(G, "/hooks/1/below", rise, units.ErrFit)},
		{long(swag(ft, -50*ft-1, 0)), errOf(G, "/hooks/1/below", rise, units.ErrFit)},
		{long(swag(ft, 0, -1)), errOf(G, "/sag", "0 ft to 50 ft", units.ErrRange)},
		{long(swag(ft, 0, 50*ft+1)), errOf(G, "/sag", "0 ft to 50 ft", units.ErrRange)},
		{long(left), errOf(G, "/left", "0 ft to 50 ft", units.ErrRange)},
		{long(right), errOf(G, "/right", "0 ft to 50 ft", units.ErrRange)},
		{long(lying), errOf(G, "/sag", "0 ft for a garland that lies on a shelf", units.ErrFit)},
		{long(at(-1000*ft, 1000*ft)), nil},
		{long(at(999*ft, -1000*ft)), nil},
		{long(at(-1000*ft-1, 0)), errOf(G, "/hooks/0/along", far, units.ErrRange)},
		{long(at(999*ft+1, 0)), errOf(G, "/hooks/1/along", far, units.ErrRange)},
		{long(at(0, 1000*ft+1)), errOf(G, "/hooks/0/below", far, units.ErrRange)},
		{long(mantel.Run{Hooks: many.Hooks[:101]}), nil},
		{long(many), errOf(G, "/hooks", "2 to 101 hooks", units.ErrRange)},
		{long(mantel.Run{Hooks: many.Hooks[:1]}), errOf(G, "/hooks", "2 to 101 hooks", units.ErrRange)},
		{below(hung, -1), errOf(B, "along", "0 ft to 1 ft, from the first hook to the last", units.ErrRange)},
		{below(hung, ft+1), errOf(B, "along", "0 ft to 1 ft, from the first hook to the last", units.ErrRange)},
		{of(50*ft, 150*ft), errOf(F, "garland", wantLength, units.ErrRange)},
		{of(ft, 1<<63-1), errOf(F, "garland", "at most 100 ft 1.6459589 in, which hangs 50 ft deep", units.ErrRange)},
		{of(ft, ft-1), errOf(F, "garland", "at least 1 ft to reach from hook to hook", units.ErrFit)},
		{of(in, 100*ft), nil},
		{of(50*ft, deepest), nil},
		{of(50*ft, deepest+2), errOf(F, "garland", wantLength, units.ErrRange)},
		{sloped(50 * ft), nil}, // 3, 4 and 5
		{sloped(50*ft - 1), errOf(F, "garland", "at least 50 ft to reach from hook to hook", units.ErrFit)},
	} {
		checkError(t, i, test.err, test.want)
	}
}

func TestSwagProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		span := lengths(in, maxSpan).Draw(t, "span")
		// Sags of every size: a part of the most, by powers of two.
		most := maxSag >> rapid.IntRange(0, 33).Draw(t, "halvings")
		sag := lengths(0, most).Draw(t, "sag")
		deeper := lengths(sag, most).Draw(t, "deeper")
		s := swag(span, 0, sag)
		length, err := s.Garland()
		if err != nil || length < span || length < sag*2 {
			t.Fatalf("%v: length %v, %v", s, length, err)
		}
		// Deeper is longer.
		if longer, err := swag(span, 0, deeper).Garland(); err != nil || longer < length {
			t.Fatalf("%v: length %v, but %v at %v", s, length, longer, deeper)
		}
		// A catenary is at least as long as a parabola. The parabola is computed
		// here to 1e-15 of 150 ft, well below half a nanometer.
		if p := parabola(span, sag); float64(length) < p-0.51 {
			t.Fatalf("%v: length %v, parabola %v", s, length, p)
		}
		// And less than down, across and up.
		if length > span+2*sag {
			t.Fatalf("%v: length %v", s, length)
		}
		// Scaling by two scales the length by two, but for the rounding.
		if span <= maxSpan/2 && sag <= maxSag/2 {
			twice, err := swag(2*span, 0, 2*sag).Garland()
			if err != nil || twice-2*length < -2 || twice-2*length > 2 {
				t.Fatalf("%v: length %v, twice as large %v", s, length, twice)
			}
		}
		if length > maxLength {
			return
		}
		// Length and sag are inverse: the length came rounded by up to half a
		// nanometer, so the sag found must take that same length again.
		back, err := swag(span, 0, 0).FindSag(length)
		if err != nil {
			t.Fatal(err)
		}
		// A nanometer of sag is at most 2 of length, so half of one is at most 1.
		if again, err := back.Garland(); err != nil || again-length > 1 || length-again > 1 {
			t.Fatalf("%v: length %v, sag found %v, length again %v", s, length, back.Sag, again)
		}
		// Where a nanometer of sag is a nanometer of length or more, so is the sag.
		if sag > span && (back.Sag-sag > 1 || sag-back.Sag > 1) {
			t.Fatalf("%v: sag found %v", s, back.Sag)
		}
	})
}

func TestBelowProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		span := lengths(in, maxSpan).Draw(t, "span")
		s := swag(span, 0, lengths(0, maxSag).Draw(t, "sag"))
		at := lengths(0, span/2).Draw(t, "at")
		further := lengths(at, span/2).Draw(t, "further")
		a, err := s.Below(at)
		if err != nil {
			t.Fatal(err)
		}
		if b, err := s.Below(span - at); err != nil || a != b {
			t.Fatalf("%v: %v at %v, %v at the mirror place", s, a, at, b)
		}
		if b, err := s.Below(further); err != nil || b < a || b > s.Sag {
			t.Fatalf("%v: %v at %v, %v at %v", s, a, at, b, further)
		}
	})
}

func TestRunAllocatesNothing(t *testing.T) {
	for _, r := range []mantel.Run{swag(5*ft, 0, 0), swag(5*ft, ft, 0)} {
		n := testing.AllocsPerRun(100, func() {
			for _, length := range []units.Length{66 * in, 6 * ft, 60 * ft} {
				r, err := r.FindSag(length)
				if err != nil {
					t.Error(err)
				}
				if _, err := r.Garland(); err != nil {
					t.Error(err)
				}
				if _, err := r.Below(ft); err != nil {
					t.Error(err)
				}
			}
		})
		if n != 0 {
			t.Errorf("%v: %v allocations", r, n)
		}
	}
}

var sink units.Length

func benchmarkSag(b *testing.B, r mantel.Run, length units.Length) {
	for b.Loop() {
		r, _ := r.FindSag(length)
		sink += r.Sag
	}
}

func BenchmarkFindSag(b *testing.B)       { benchmarkSag(b, swag(5*ft, 0, 0), 6*ft) }
func BenchmarkFindSagDeep(b *testing.B)   { benchmarkSag(b, swag(5*ft, 0, 0), 16*ft) }
func BenchmarkFindSagSloped(b *testing.B) { benchmarkSag(b, swag(5*ft, 2*ft, 0), 6*ft) }

func BenchmarkGarland(b *testing.B) {
	r := swag(5*ft, 0, 9*in)
	for b.Loop() {
		l, _ := r.Garland()
		sink += l
	}
}

// parabola returns the length of a parabola of this span and sag, the usual stand-in for
// a catenary: with k = 4·sag/span,
//
//	length = span/2 · (√(1 + k²) + asinh(k)/k)
func parabola(span, sag units.Length) float64 {
	if sag == 0 {
		return float64(span)
	}
	k := 4 * float64(sag) / float64(span)
	return float64(span) / 2 * (math.Sqrt(1+k*k) + math.Asinh(k)/k)
}
