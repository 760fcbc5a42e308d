package mantel_test

import (
	"math"
	"math/big"
	"testing"

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
		s := mantel.Swag{Span: feet(test.span), Sag: feet(test.sag)}
		got, err := s.Length()
		if err != nil || math.Abs(got.In(units.Foot)-test.length) > test.tolerance {
			t.Errorf("%v: got %.9f ft, %v, want %v: %s", s, got.In(units.Foot), err, test.length, test.source)
		}
	}
	got, err := mantel.Swag{Span: 50 * ft}.FindSag(51 * ft)
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
	n, worst := 0, 0.
	for span, part := range grid {
		sag := units.Length(part * float64(span))
		if sag < 1 || sag > maxSag {
			continue
		}
		got, err := mantel.Swag{Span: span, Sag: sag}.Length()
		if err != nil {
			t.Fatal(err)
		}
		n++
		// The span grows with the length at a given sag.
		want := bigOf(float64(span))
		low, high := exactSpan(float64(got)-near, float64(sag)), exactSpan(float64(got)+near, float64(sag))
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
	n := 0
	for span, part := range grid {
		slack := units.Length(part * float64(span))
		if slack < 1 || span+slack > maxLength {
			continue
		}
		got, err := mantel.Swag{Span: span}.FindSag(span + slack)
		if err != nil {
			// The exact sag of so long a garland is over 50 ft.
			if exactSpan(float64(span+slack), float64(maxSag)).Cmp(bigOf(float64(span))) < 0 {
				t.Fatal(span, slack, err)
			}
			continue
		}
		if got.Span != span {
			t.Fatal(got)
		}
		n++
		// The span shrinks as the sag grows at a given length.
		want := bigOf(float64(span))
		low := exactSpan(float64(span+slack), float64(got.Sag)+near)
		high := exactSpan(float64(span+slack), float64(got.Sag)-near)
		if low.Cmp(want) > 0 || high.Cmp(want) < 0 {
			t.Errorf("span %v length %v: sag %v is not the nearest", span, span+slack, got.Sag)
		}
	}
	if n < 500 {
		t.Errorf("only %d swags", n)
	}
}

func TestBelowIsExact(t *testing.T) {
	for _, span := range []units.Length{in, 5 * ft, 50 * ft} {
		for part := 1e-9; part < 600; part *= 7 {
			sag := units.Length(part * float64(span))
			if sag < 1 || sag > maxSag {
				continue
			}
			s := mantel.Swag{Span: span, Sag: sag}
			for _, at := range []units.Length{1, span / 100, span / 3, span / 2, span - span/5, span - 1} {
				got, err := s.Below(at)
				if err != nil {
					t.Fatal(err)
				}
				diff := sub(bigOf(float64(got)), exactBelow(float64(span), float64(sag), float64(at)))
				if diff.Abs(diff).Cmp(big.NewFloat(near)) > 0 {
					t.Errorf("%v: below at %v is %v, off by %v nm", s, at, got, diff)
				}
			}
		}
	}
}

func TestSwagEnds(t *testing.T) {
	for _, s := range []mantel.Swag{{Span: in}, {Span: 50 * ft}} {
		if got, err := s.Length(); err != nil || got != s.Span {
			t.Errorf("%v: length %v, %v, want the span", s, got, err)
		}
		if got, err := (mantel.Swag{Span: s.Span}).FindSag(s.Span); err != nil || got != s {
			t.Errorf("got %v, %v, want %v", got, err, s)
		}
		if got, err := s.Below(s.Span / 3); err != nil || got != 0 {
			t.Errorf("%v: below %v, %v, want 0", s, got, err)
		}
	}
	for _, s := range []mantel.Swag{{Span: in, Sag: 50 * ft}, {Span: 50 * ft, Sag: 50 * ft}, {Span: 5 * ft, Sag: 9 * in}, {Span: 2 * in, Sag: 1}} {
		for at, want := range map[units.Length]units.Length{0: 0, s.Span / 2: s.Sag, s.Span: 0} {
			if got, err := s.Below(at); err != nil || got != want {
				t.Errorf("%v: below %v at %v, %v, want %v", s, got, at, err, want)
			}
		}
	}
	if got, err := (mantel.Swag{Span: 50 * ft}).FindSag(100 * ft); err != nil || got.Sag < 38*ft {
		t.Errorf("longest: %v, %v", got, err)
	}
}

func TestSwagErrors(t *testing.T) {
	length := func(s mantel.Swag) error { _, err := s.Length(); return err }
	below := func(s mantel.Swag, at units.Length) error { _, err := s.Below(at); return err }
	of := func(span, length units.Length) error {
		s, err := mantel.Swag{Span: span}.FindSag(length)
		if err != nil && s != (mantel.Swag{}) {
			t.Errorf("%v with error %v", s, err)
		}
		return err
	}
	rangeOf := func(fn, field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrRange}
	}
	// The longest garland over 50 ft; 2 nm more sags a nanometer more.
	deepest, err := mantel.Swag{Span: 50 * ft, Sag: 50 * ft}.Length()
	if err != nil {
		t.Fatal(err)
	}
	const wantLength = "at most 150 ft, with a sag of at most 50 ft"
	for i, test := range []struct {
		err  error
		want *units.Error
	}{
		{length(mantel.Swag{Span: in - 1}), rangeOf("Swag.Length", "/span", "1 in to 50 ft")},
		{length(mantel.Swag{Span: 50*ft + 1}), rangeOf("Swag.Length", "/span", "1 in to 50 ft")},
		{length(mantel.Swag{Span: ft, Sag: -1}), rangeOf("Swag.Length", "/sag", "0 ft to 50 ft")},
		{length(mantel.Swag{Span: ft, Sag: 50*ft + 1}), rangeOf("Swag.Length", "/sag", "0 ft to 50 ft")},
		{below(mantel.Swag{}, 0), rangeOf("Swag.Below", "/span", "1 in to 50 ft")},
		{below(mantel.Swag{Span: ft}, -1), rangeOf("Swag.Below", "at", "0 ft to the span, 1 ft")},
		{below(mantel.Swag{Span: ft}, ft+1), rangeOf("Swag.Below", "at", "0 ft to the span, 1 ft")},
		{of(in-1, ft), rangeOf("Swag.FindSag", "/span", "1 in to 50 ft")},
		{of(50*ft+1, 60*ft), rangeOf("Swag.FindSag", "/span", "1 in to 50 ft")},
		{of(50*ft, 150*ft), rangeOf("Swag.FindSag", "length", wantLength)},
		{of(50*ft, 150*ft+1), rangeOf("Swag.FindSag", "length", wantLength)},
		{of(ft, 1<<63-1), rangeOf("Swag.FindSag", "length", wantLength)},
		{of(ft, ft-1), &units.Error{Func: "mantel.Swag.FindSag", Field: "length", Want: "at least the span, 1 ft", Err: units.ErrFit}},
		{of(in, 100*ft), nil},
		{of(50*ft, deepest), nil},
		{of(50*ft, deepest+2), rangeOf("Swag.FindSag", "length", wantLength)},
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
		s := mantel.Swag{Span: span, Sag: sag}
		length, err := s.Length()
		if err != nil || length < span || length < sag*2 {
			t.Fatalf("%v: length %v, %v", s, length, err)
		}
		// Deeper is longer.
		if longer, err := (mantel.Swag{Span: span, Sag: deeper}).Length(); err != nil || longer < length {
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
			twice, err := (mantel.Swag{Span: 2 * span, Sag: 2 * sag}).Length()
			if err != nil || twice-2*length < -2 || twice-2*length > 2 {
				t.Fatalf("%v: length %v, twice as large %v", s, length, twice)
			}
		}
		if length > maxLength {
			return
		}
		// Length and sag are inverse: the length came rounded by up to half a
		// nanometer, so the sag found must take that same length again.
		back, err := mantel.Swag{Span: span}.FindSag(length)
		if err != nil {
			t.Fatal(err)
		}
		// A nanometer of sag is at most 2 of length, so half of one is at most 1.
		if again, err := back.Length(); err != nil || again-length > 1 || length-again > 1 {
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
		s := mantel.Swag{Span: lengths(in, maxSpan).Draw(t, "span"), Sag: lengths(0, maxSag).Draw(t, "sag")}
		at := lengths(0, s.Span/2).Draw(t, "at")
		further := lengths(at, s.Span/2).Draw(t, "further")
		a, err := s.Below(at)
		if err != nil {
			t.Fatal(err)
		}
		if b, err := s.Below(s.Span - at); err != nil || a != b {
			t.Fatalf("%v: %v at %v, %v at the mirror place", s, a, at, b)
		}
		if b, err := s.Below(further); err != nil || b < a || b > s.Sag {
			t.Fatalf("%v: %v at %v, %v at %v", s, a, at, b, further)
		}
	})
}

func TestSwagAllocatesNothing(t *testing.T) {
	n := testing.AllocsPerRun(100, func() {
		for _, length := range []units.Length{5 * ft, 6 * ft, 60 * ft} {
			s, err := mantel.Swag{Span: 5 * ft}.FindSag(length)
			if err != nil {
				t.Error(err)
			}
			if _, err := s.Length(); err != nil {
				t.Error(err)
			}
			if _, err := s.Below(ft); err != nil {
				t.Error(err)
			}
		}
	})
	if n != 0 {
		t.Errorf("%v allocations", n)
	}
}

var sink units.Length

func BenchmarkSwagOf(b *testing.B) {
	for b.Loop() {
		s, _ := mantel.Swag{Span: 5 * ft}.FindSag(6 * ft)
		sink += s.Sag
	}
}

func BenchmarkSwagOfDeep(b *testing.B) {
	for b.Loop() {
		s, _ := mantel.Swag{Span: 5 * ft}.FindSag(16 * ft)
		sink += s.Sag
	}
}

func BenchmarkSwagLength(b *testing.B) {
	for b.Loop() {
		l, _ := mantel.Swag{Span: 5 * ft, Sag: 9 * in}.Length()
		sink += l
	}
}
