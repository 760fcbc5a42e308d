package sizing

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// The slow, readable reference: the textbook formula in 400 binary digits.

func bigOf(x float64) *big.Float          { return new(big.Float).SetPrec(400).SetFloat64(x) }
func bigAdd(x, y *big.Float) *big.Float   { return bigOf(0).Add(x, y) }
func bigSub(x, y *big.Float) *big.Float   { return bigOf(0).Sub(x, y) }
func bigMul(x, y *big.Float) *big.Float   { return bigOf(0).Mul(x, y) }
func bigQuo(x, y *big.Float) *big.Float   { return bigOf(0).Quo(x, y) }
func bigSqrt(x *big.Float) *big.Float     { return bigOf(0).Sqrt(x) }
func bigHypot(x, y *big.Float) *big.Float { return bigSqrt(bigAdd(bigMul(x, x), bigMul(y, y))) }
func bigLength(l units.Length) *big.Float { return bigOf(0).SetInt64(int64(l)) }

// artanh is s + s³/3 + s⁵/5 + …
func artanh(s *big.Float) *big.Float {
	sum, power, z := bigOf(0), s, bigMul(s, s)
	for k := 1.0; power.Sign() != 0 && power.MantExp(nil) > sum.MantExp(nil)-400; k += 2 {
		sum = bigAdd(sum, bigQuo(power, bigOf(k)))
		power = bigMul(power, z)
	}
	return sum
}

// bigLog is log x = k·log 2 + log m, with log m = 2·artanh((m-1)/(m+1)).
func bigLog(x *big.Float) *big.Float {
	m := bigOf(0)
	k := x.MantExp(m)
	l := artanh(bigQuo(bigSub(m, bigOf(1)), bigAdd(m, bigOf(1))))
	ln2 := artanh(bigQuo(bigOf(1), bigOf(3)))
	return bigMul(bigOf(2), bigAdd(l, bigMul(ln2, bigOf(float64(k)))))
}

// bigPi is 16·arctan(1/5) - 4·arctan(1/239), J. Machin's formula.
var bigPi = func() *big.Float {
	arctan := func(n float64) *big.Float {
		sum, power, z := bigOf(0), bigQuo(bigOf(1), bigOf(n)), bigOf(-n*n)
		for k := 1.0; power.MantExp(nil) > -420; k += 2 {
			sum = bigAdd(sum, bigQuo(power, bigOf(k)))
			power = bigQuo(power, z)
		}
		return sum
	}
	return bigSub(bigMul(bigOf(16), arctan(5)), bigMul(bigOf(4), arctan(239)))
}()

// bigSlant is √(r² + h²).
func bigSlant(c cone) *big.Float {
	return bigHypot(bigQuo(bigLength(c.BaseDiameter), bigOf(2)), bigLength(c.Height))
}

// bigArea is π·(r₁+r₂)·slope, in square nanometers.
func bigArea(c cone) *big.Float {
	r := bigQuo(bigLength(c.BaseDiameter), bigOf(2))
	f1, f2 := bigDepths(c)
	return bigMul(bigMul(bigPi, bigMul(r, bigAdd(f1, f2))), bigMul(bigSlant(c), bigSub(f2, f1)))
}

// bigDepths are the depths of the two edges below the tip, as parts of the height.
func bigDepths(c cone) (f1, f2 *big.Float) {
	h := bigLength(c.Height)
	return bigQuo(bigLength(c.BareTip), h), bigQuo(bigLength(c.Height-c.BareBase), h)
}

// bigSpiral is (c/2)·[U√(1+U²) + arsinh U] between the edges, with N = S/p turns
// on the whole cone, U = 2πNR/S at the base and c = S²/(2πNR).
func bigSpiral(c cone, p *big.Float) *big.Float { return bigWound(c, p, bigOf(1)) }

// bigWound is bigSpiral to and fro on that part of the way round.
func bigWound(c cone, p, turn *big.Float) *big.Float {
	s := bigSlant(c)
	n := bigMul(bigQuo(s, p), turn)
	m := bigMul(bigMul(bigPi, n), bigLength(c.BaseDiameter)) // 2πNR
	f := func(part *big.Float) *big.Float {
		if part.Sign() == 0 {
			return bigOf(0)
		}
		u := bigQuo(bigMul(m, part), s)
		w := bigHypot(u, bigOf(1))
		return bigAdd(bigMul(u, w), bigLog(bigAdd(u, w)))
	}
	f1, f2 := bigDepths(c)
	return bigMul(bigQuo(bigMul(s, s), bigMul(bigOf(2), m)), bigSub(f(f2), f(f1)))
}

// anyCone draws a cone from the whole allowed range, its corners included often.
func anyCone(r *rand.Rand) cone {
	between := func(lo, hi units.Length) units.Length {
		switch r.IntN(6) {
		case 0:
			return lo
		case 1:
			return hi
		}
		return lo + units.Length(r.Int64N(int64(hi-lo)+1))
	}
	var c cone
	c.Height = between(6*in, 100*ft)
	if r.IntN(2) == 0 {
		c.Height = between(6*in, 16*ft)
	}
	c.BaseDiameter = between(minBase(c.Height), maxBase(c.Height))
	if r.IntN(2) == 0 {
		c.BareTip = between(0, c.Height-minDressed)
	}
	if r.IntN(2) == 0 {
		c.BareBase = between(0, c.Height-c.BareTip-minDressed)
	}
	return c
}

// anySpacing draws a spacing evenly by size.
func anySpacing(r *rand.Rand) units.Length {
	switch r.IntN(8) {
	case 0:
		return minSpacing
	case 1:
		return maxSpacing
	}
	x := math.Exp(math.Log(float64(minSpacing)) + r.Float64()*math.Log(float64(maxSpacing)/float64(minSpacing)))
	return min(max(units.Length(x), minSpacing), maxSpacing)
}

// TestSpiralLengthAccuracy holds SpiralLength to the bound in its doc, over the
// whole allowed range.
func TestSpiralLengthAccuracy(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	worst := 0.0
	for range trials(1500) {
		c, p := anyCone(r), anySpacing(r)
		got, err := c.SpiralLength(p)
		if err != nil {
			t.Fatal(err)
		}
		off, _ := bigSub(bigLength(got), bigSpiral(c, bigLength(p))).Float64()
		worst = max(worst, math.Abs(off))
		if !(math.Abs(off) <= 1) {
			t.Errorf("%+v at %v: %d nm is off by %.3f nm", c, p, got, off)
		}
	}
	t.Logf("worst: %.3f nm", worst)
}

// The largest length of all, where a rounding counts most: 4.3e14 nm.
func TestSpiralLengthAtItsLongest(t *testing.T) {
	for d := range units.Length(200) {
		c := cone{Height: maxHeight - d, BaseDiameter: maxBase(maxHeight - d)}
		got, err := c.SpiralLength(minSpacing)
		if err != nil {
			t.Fatal(err)
		}
		if off, _ := bigSub(bigLength(got), bigSpiral(c, bigLength(minSpacing))).Float64(); !(math.Abs(off) <= 1) {
			t.Errorf("%+v: %d nm is off by %.3f nm", c, got, off)
		}
	}
}

// TestSpacingAccuracy holds Spacing to its doc: less than 1.01 nm over the exact
// spacing where the garland goes round at least once, and always one that comes
// to the length, within 1 nm.
func TestSpacingAccuracy(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range trials(700) {
		c, p := anyCone(r), anySpacing(r)
		length, _ := c.SpiralLength(p)
		got, err := c.Spacing(length)
		if err != nil {
			t.Fatalf("%+v, %v of garland: %v", c, length, err)
		}
		l := bigSpiral(c, bigLength(got))
		if off, _ := bigSub(l, bigLength(length)).Float64(); got < maxSpacing && off > 1 || got > minSpacing && off < -1-float64(length)/float64(got) {
			t.Errorf("%+v at %v: a garland of %v would be %.3f nm off", c, got, length, off)
		}
		if back, _ := c.SpiralLength(got); back > length && got < maxSpacing {
			t.Errorf("%+v at %v: takes %v, not %v", c, got, back, length)
		}
		if slant, _ := c.Slant(); p > slant {
			continue
		}
		// One step of Newton's rule from the result, in 400 digits.
		h := bigOf(1e-9)
		slope := bigQuo(bigSub(bigSpiral(c, bigAdd(bigLength(got), h)), l), h)
		over, _ := bigQuo(bigSub(l, bigLength(length)), slope).Float64()
		if !(over > -0.01 && over < 1.01) && got != maxSpacing {
			t.Errorf("%+v, %v of garland: spacing %d nm is %.3f nm over", c, length, got, over)
		}
	}
}

// A garland so nearly straight that its length, rounded, is under that of the
// slope, and one so long that a nanometer of spacing is worth miles of it.
func TestSpacingAtTheEnds(t *testing.T) {
	straight := 0
	for i := range units.Length(50) {
		c := cone{Height: 6*in + 8*i, BaseDiameter: minBase(6*in + 8*i), BareBase: 5 * in}
		least, err := c.SpiralLength(maxSpacing)
		if err != nil {
			t.Fatal(err)
		}
		if p, err := c.Spacing(least); err != nil || p > maxSpacing {
			t.Errorf("%+v: %v apart, %v", c, p, err)
		} else if float64(least) <= c.slant() && p == maxSpacing {
			straight++
		}
	}
	if straight == 0 {
		t.Error("no garland was as short as the slope")
	}
	r := rand.New(rand.NewPCG(7, 8))
	c := cone{Height: maxHeight, BaseDiameter: maxBase(maxHeight)}
	for range trials(2000) {
		most, _ := c.SpiralLength(minSpacing)
		length := most - units.Length(r.Int64N(1e14))
		p, err := c.Spacing(length)
		if err != nil {
			t.Fatal(err)
		}
		at, _ := c.SpiralLength(p)
		if closer, err := c.SpiralLength(p - 1); at > length || err == nil && closer <= length {
			t.Errorf("%d nm of garland: %d apart takes %d, 1 nm closer %d", length, p, at, closer)
		}
	}
}

func TestAreaAndSlantAccuracy(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range trials(1500) {
		c := anyCone(r)
		area, err1 := c.LateralArea()
		slant, err2 := c.Slant()
		if err := errors.Join(err1, err2); err != nil {
			t.Fatal(err)
		}
		f1, f2 := bigDepths(c)
		wantSlant := bigMul(bigSlant(c), bigSub(f2, f1))
		want, _ := bigQuo(bigArea(c), bigOf(1e6)).Float64()
		if off := math.Abs(float64(area) - want); off > 1+2e-15*want {
			t.Errorf("%+v: area %d um2, off by %g", c, area, off)
		}
		if off, _ := bigSub(bigLength(slant), wantSlant).Float64(); math.Abs(off) > 0.501 {
			t.Errorf("%+v: slant %d nm, off by %g", c, slant, off)
		}
	}
}

func trials(n int) int {
	if testing.Short() {
		return n / 10
	}
	return n
}

// Values from outside, in the units of their source taken as feet.
func TestSpiralPublished(t *testing.T) {
	foot := func(x float64) units.Length { return units.Length(math.Round(x * float64(ft))) }
	for _, row := range []struct {
		source  string
		r, h    float64
		turns   float64 // on the whole cone
		bareTip float64 // of the height
		want    float64
	}{
		// 25.343 in print.
		{"OpenStax, Calculus Vol. 3, section 3.3, spiral (t cos t, t sin t, 2t) for t from 0 to 2 pi", 2 * math.Pi, 4 * math.Pi, 1, 0, 25.3433594878909},
		{"closed form and quadrature of the curve, in 40 digits", 2, 6, 8, 0, 51.0532332741393},
		{"the same", 1.75, 7.5, 12, 0, 66.8802498343513},
		{"the same, crown of a measured fir (NIST)", 1.45, 4.2, 20, 0, 91.3720212513138},
		{"the same, spacing 0.75", 2, 6, math.Sqrt(40) / 0.75, 0, 53.7417300584608},
		{"the same, spacing 0.5", 2, 6, math.Sqrt(40) / 0.5, 0, 80.0325314289085},
		{"the same, the upper quarter bare", 2, 6, 8, 0.25, 47.3982321430346},
	} {
		c := cone{Height: foot(row.h), BaseDiameter: foot(2 * row.r), BareTip: foot(row.h * row.bareTip)}
		spacing := foot(math.Hypot(row.r, row.h) / row.turns)
		got, err := c.SpiralLength(spacing)
		// Rounding the spacing by a nanometer changes the length by this much.
		tolerance := 1e-8 + row.want/float64(spacing)
		if err != nil || math.Abs(got.In(units.Foot)-row.want) > tolerance {
			t.Errorf("%s: %v ft, %v; want %v", row.source, got.In(units.Foot), err, row.want)
		}
		back, err := c.Spacing(got)
		if err != nil || back < spacing-1 || back > spacing+1 {
			t.Errorf("%s: %d ft apart, %v; want %d", row.source, back, err, spacing)
		}
	}
}

// The kernel at the limits that no tree comes to.
func TestSpiralLimits(t *testing.T) {
	length := func(r1, r2, a float64) float64 {
		return a / 2 * ((r2/a)*(r2/a) - (r1/a)*(r1/a) + newSpiral(r1, r2, a).excess())
	}
	for _, row := range []struct {
		source    string
		r1, r2, a float64
		want      float64
	}{
		{"flat: r = theta over one turn; pi*sqrt(4pi^2+1) + ln(2pi+sqrt(4pi^2+1))/2", 0, 2 * math.Pi, 1, 21.2562941482091},
		// A cone of half angle 1e-5 round the radius 1/2 is a cylinder, almost: a
		// helix of one turn that rises 2 pi sqrt(3/4), with length 2 pi.
		{"OpenStax, Calculus Vol. 3, section 3.3, helix", 0.5e5, 0.5e5 + 2*math.Pi*math.Sqrt(0.75), math.Sqrt(0.75) * 1e5, 2 * math.Pi},
		{"no turn at all: 3-4-5", 0, 5, 1e6, 5},
	} {
		if got := length(row.r1, row.r2, row.a); math.Abs(got-row.want) > 1e-4 && row.r1 > 0 || math.Abs(got-row.want) > 1e-9 && row.r1 == 0 {
			t.Errorf("%s: %v, want %v", row.source, got, row.want)
		}
	}
}

// An independent reference: Simpson's rule over the curve in space, by the angle.
func TestSpiralByQuadrature(t *testing.T) {
	for _, c := range []cone{
		{Height: 7 * ft, BaseDiameter: 7 * ft * 65 / 100},
		{Height: 7 * ft, BaseDiameter: 7 * ft * 65 / 100, BareTip: 1 * ft, BareBase: 8 * in},
		{Height: 1900 * units.Millimeter, BaseDiameter: 1700 * units.Millimeter},
		{Height: 9 * ft, BaseDiameter: 27 * in, BareTip: 6 * in},
	} {
		for _, p := range []units.Length{4 * in, 10 * in, 3 * ft, 20 * ft} {
			h, r := float64(c.Height), float64(c.BaseDiameter)/2
			sin := r / math.Hypot(r, h)
			// A turn comes down p along the slope: at the angle x the depth along
			// the slope is p·x/(2·pi), with the radius and the drop in proportion.
			angle := func(depth units.Length) float64 {
				return 2 * math.Pi * float64(depth) * math.Hypot(r, h) / h / float64(p)
			}
			speed := func(x float64) float64 {
				per := float64(p) / (2 * math.Pi)
				dr, dz, radius := per*sin, per*math.Sqrt(1-sin*sin), per*sin*x
				dx, dy := dr*math.Cos(x)-radius*math.Sin(x), dr*math.Sin(x)+radius*math.Cos(x)
				return math.Sqrt(dx*dx + dy*dy + dz*dz)
			}
			x1, x2 := angle(c.BareTip), angle(c.Height-c.BareBase)
			const n = 4000
			sum := speed(x1) + speed(x2)
			for i := 1; i < n; i++ {
				sum += float64(2+i%2*2) * speed(x1+(x2-x1)*float64(i)/n)
			}
			want := sum * (x2 - x1) / (3 * n)
			got, err := c.SpiralLength(p)
			if err != nil || math.Abs(float64(got)/want-1) > 1e-9 {
				t.Errorf("%+v at %v: %d nm, %v; quadrature gives %.1f", c, p, got, err, want)
			}
		}
	}
}

func TestConePublished(t *testing.T) {
	// A 3-4-5 triangle.
	c := cone{Height: 4 * ft, BaseDiameter: 6 * ft}
	slant, err1 := c.Slant()
	area, err2 := c.LateralArea()
	if slant != 5*ft || err1 != nil || math.Abs(area.In(units.SquareFoot)-47.1238898038469) > 1e-9 || err2 != nil {
		t.Errorf("3-4-5 cone: slant %v, %v; area %v sq ft, %v", slant, err1, area.In(units.SquareFoot), err2)
	}
	// OpenStax, Calculus Vol. 2, section 2.4: a frustum is pi (r1+r2) l.
	// Here the radii are 3 and 3/4 and the slope 3/4 of 5.
	c.BareTip = 1 * ft
	slant, _ = c.Slant()
	area, _ = c.LateralArea()
	if slant != 45*in || math.Abs(area.In(units.SquareFoot)-math.Pi*3.75*3.75) > 1e-9 {
		t.Errorf("frustum: slant %v, area %v sq ft", slant, area.In(units.SquareFoot))
	}
	// Crown of a measured Douglas-fir, 1.9 m high and 1.7 m wide: Mell and others,
	// Combustion and Flame 156 (2009), as tabled by NIST.
	c = cone{Height: 1900 * units.Millimeter, BaseDiameter: 1700 * units.Millimeter}
	if area, _ := c.LateralArea(); math.Abs(area.In(units.SquareMeter)-5.55825009525727) > 1e-9 {
		t.Errorf("fir: area %v", area.In(units.SquareMeter))
	}
	if slant, err := (Tree{Height: 4 * ft, Base: 6 * ft}).Slant(); slant.In(6*in) != 10 || err != nil {
		t.Errorf("5 ft of slope at 6 in: %v turns, %v", slant.In(6*in), err)
	}
}

func TestGrade(t *testing.T) {
	for _, row := range []struct {
		source       string
		height, base units.Length
		want         string
	}{
		{"fir, 89.47 % (NIST)", 1900 * units.Millimeter, 1700 * units.Millimeter, "normal"},
		{"fir, 69.05 % (NIST)", 4200 * units.Millimeter, 2900 * units.Millimeter, "normal"},
		{"at 40 %", 10 * ft, 4 * ft, "normal"},
		{"just under 40 %", 10 * ft, 4*ft - 1, "candlestick"},
		{"at 90 %", 10 * ft, 9 * ft, "normal"},
		{"just over 90 %", 10 * ft, 9*ft + 1, "flared"},
		{"the narrowest", 8 * ft, 1 * ft, "candlestick"},
		{"the widest", 10 * ft, 15 * ft, "flared"},
	} {
		got, err := Tree{Height: row.height, Base: row.base}.Grade()
		if got != row.want || err != nil {
			t.Errorf("%s: %v, %v; want %v", row.source, got, err, row.want)
		}
	}
}

// refused fails unless err is an [*units.Error] wrapping want that names fn and field,
// inside a value or not.
func refused(t *testing.T, err, want error, fn, field string) {
	t.Helper()
	var e *units.Error
	if !errors.As(err, &e) || !errors.Is(err, want) || e.Func != "sizing."+fn || e.Field != field && !strings.HasSuffix(e.Field, "/"+field) || e.Want == "" || e.Value == "" && field != "taper" {
		t.Errorf("error %v; want %v of %s in %s", err, want, field, fn)
	}
}

func TestMeasuringErrors(t *testing.T) {
	good := Tree{Height: 7 * ft, Base: 4 * ft, BareTip: 1 * ft, BareBase: 1 * ft}
	methods := map[string]func(Tree) (any, any, error){
		"Measured":     func(t Tree) (any, any, error) { v, err := t.Measured(); return v, Tree{}, err },
		"Slant":        func(t Tree) (any, any, error) { v, err := t.Slant(); return v, units.Length(0), err },
		"DressedArea":  func(t Tree) (any, any, error) { v, err := t.DressedArea(); return v, units.Area(0), err },
		"SpiralLength": func(t Tree) (any, any, error) { v, err := t.SpiralLength(10 * in); return v, units.Length(0), err },
		"Spacing":      func(t Tree) (any, any, error) { v, err := t.Spacing(20 * ft); return v, units.Length(0), err },
		"Grade":        func(t Tree) (any, any, error) { v, err := t.Grade(); return v, "", err },
		"Skirt":        func(t Tree) (any, any, error) { v, err := t.Skirt(); return v, lengthRange{}, err },
		"Seen":         func(t Tree) (any, any, error) { v, err := t.Seen(90, 500*ft); return v, Exposure(0), err },
	}
	for name, call := range methods {
		for _, row := range []struct {
			field string
			t     Tree
		}{
			{"/height", Tree{}},
			{"/height", Tree{Height: 1*ft - 1, Base: 4 * in}},
			{"/height", Tree{Height: 100*ft + 1, Base: 50 * ft}},
			{"/height", Tree{Height: math.MinInt64}},
			{"/height", Tree{Height: math.MaxInt64}},
			{"/base", Tree{Height: 8 * ft, Base: 1*ft - 1}},
			{"/base", Tree{Height: 8*ft + 1, Base: 1 * ft}},
			{"/base", Tree{Height: 8 * ft, Base: 12*ft + 1}},
			{"/base", Tree{Height: 8 * ft, Base: -1}},
			{"/bareTip", Tree{Height: 8 * ft, Base: 4 * ft, BareTip: -1}},
			{"/bareTip", Tree{Height: 8 * ft, Base: 4 * ft, BareTip: 95*in + 1}},
			{"/bareTip", Tree{Height: 8 * ft, Base: 4 * ft, BareTip: math.MaxInt64}},
			{"/bareBase", Tree{Height: 8 * ft, Base: 4 * ft, BareBase: -1}},
			{"/bareBase", Tree{Height: 8 * ft, Base: 4 * ft, BareBase: 95*in + 1}},
			{"/bareBase", Tree{Height: 8 * ft, Base: 4 * ft, BareTip: 4 * ft, BareBase: 47*in + 1}},
			{"/bareBase", Tree{Height: 8 * ft, Base: 4 * ft, BareBase: math.MinInt64}},
		} {
			got, zero, err := call(row.t)
			refused(t, err, units.ErrRange, "Tree."+name, row.field)
			if got != zero {
				t.Errorf("%s: %v with an error", name, got)
			}
		}
		if _, _, err := call(good); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, tree := range []Tree{
		{Height: 1 * ft, Handle: 6 * in, Base: 4 * in},
		{Height: 100 * ft, Base: 50 * ft},
		{Height: 8 * ft, Base: 1 * ft},
		{Height: 8 * ft, Base: 12 * ft},
		{Height: 8 * ft, Base: 4 * ft, BareTip: 95 * in},
		{Height: 8 * ft, Base: 4 * ft, BareTip: 4 * ft, BareBase: 47 * in},
	} {
		if _, err := tree.Slant(); err != nil {
			t.Errorf("%+v is at the edge of the range: %v", tree, err)
		}
	}
	for _, p := range []units.Length{minSpacing - 1, maxSpacing + 1, 0, -1, math.MaxInt64} {
		l, err := good.SpiralLength(p)
		refused(t, err, units.ErrRange, "Tree.SpiralLength", "spacing")
		if l != 0 {
			t.Errorf("at %v: %v", p, l)
		}
	}
	least, err1 := good.SpiralLength(maxSpacing)
	most, err2 := good.SpiralLength(minSpacing)
	if err := errors.Join(err1, err2); err != nil {
		t.Fatal(err)
	}
	for _, l := range []units.Length{least - 1, most + 1, 0, -1, math.MaxInt64} {
		p, err := good.Spacing(l)
		refused(t, err, units.ErrRange, "Tree.Spacing", "garland")
		if p != 0 {
			t.Errorf("%v of garland: %v apart", l, p)
		}
	}
	if p, err := good.Spacing(most); p < minSpacing || p > minSpacing+1 || err != nil {
		t.Errorf("the longest garland: %v apart, %v", p, err)
	}
	if _, err := good.Spacing(least); err != nil {
		t.Errorf("the shortest garland: %v", err)
	}
}

func drawCone(t *rapid.T) cone {
	height := units.Length(rapid.Int64Range(int64(6*in), int64(50*ft)).Draw(t, "height"))
	base := units.Length(rapid.Int64Range(int64(minBase(height)), int64(maxBase(height))).Draw(t, "base"))
	tip := units.Length(rapid.Int64Range(0, int64(height-minDressed)).Draw(t, "bare tip"))
	foot := units.Length(rapid.Int64Range(0, int64(height-tip-minDressed)).Draw(t, "bare base"))
	return cone{height, base, tip, foot}
}

func TestConeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCone(t)
		p := units.Length(rapid.Int64Range(int64(minSpacing), int64(50*ft)).Draw(t, "spacing"))
		length := func(c cone, p units.Length) units.Length {
			l, err := c.SpiralLength(p)
			if err != nil {
				t.Fatal(err)
			}
			return l
		}
		l := length(c, p)
		slant, _ := c.Slant()
		area, _ := c.LateralArea()

		// No shorter than the slope, nor than the area over the spacing, which it
		// tends to from above; and no longer than the two in a right angle's legs.
		byArea := float64(area) * 1e6 / float64(p)
		tolerance := 2 + 3e-15*byArea + 5e5/float64(p) // 1 nm each way; half a um2 of area
		if l < slant-1 || float64(l) < byArea-tolerance || float64(l) > byArea+float64(slant)+tolerance {
			t.Fatalf("%+v at %v: %v; slope %v, area over spacing %v", c, p, l, slant, byArea)
		}
		if l < units.Length(math.Hypot(float64(slant), byArea)-tolerance) {
			t.Fatalf("%+v at %v: %v is under the triangle inequality", c, p, l)
		}

		// Part by part it adds up to the whole: three roundings of 1 nm each.
		cut := units.Length(rapid.Int64Range(0, int64(c.Height-c.BareTip-c.BareBase)).Draw(t, "cut"))
		if cut >= minDressed && c.Height-c.BareTip-c.BareBase-cut >= minDressed {
			upper, lower := c, c
			lower.BareTip = c.BareTip + cut
			upper.BareBase = c.Height - c.BareTip - cut
			if sum := length(upper, p) + length(lower, p); sum < l-3 || sum > l+3 {
				t.Fatalf("%+v at %v: parts of %v, whole %v", c, p, sum, l)
			}
		}

		// Twice the size: twice the length and the slope, four times the area.
		double := cone{2 * c.Height, 2 * c.BaseDiameter, 2 * c.BareTip, 2 * c.BareBase}
		slant2, _ := double.Slant()
		area2, _ := double.LateralArea()
		if l2 := length(double, 2*p); l2 < 2*l-3 || l2 > 2*l+3 || slant2 < 2*slant-1 || slant2 > 2*slant+1 || area2 < 4*area-8 || area2 > 4*area+8 {
			t.Fatalf("%+v at %v doubled: %v for %v, %v for %v, %v for %v", c, p, l2, l, slant2, slant, area2, area)
		}

		// More tree takes more, a wider spacing less, or no more at all.
		wider, taller := c, c
		wider.BaseDiameter = min(c.BaseDiameter+units.Length(rapid.Int64Range(1, int64(ft)).Draw(t, "wider")), maxBase(c.Height))
		if length(wider, p) < l-1 {
			t.Fatalf("%+v at %v: wider takes less", c, p)
		}
		taller.Height += units.Length(rapid.Int64Range(1, int64(ft)).Draw(t, "taller"))
		taller.BaseDiameter = max(c.BaseDiameter, minBase(taller.Height))
		if c.BareTip == 0 && length(taller, p) < l-1 {
			t.Fatalf("%+v at %v: taller takes less", c, p)
		}
		if length(c, p+units.Length(rapid.Int64Range(1, int64(ft)).Draw(t, "apart"))) > l+1 {
			t.Fatalf("%+v at %v: farther apart takes more", c, p)
		}

		// Length and spacing are inverse.
		back, err := c.Spacing(l)
		if err != nil {
			t.Fatal(err)
		}
		// A nanometer of length, which rounding takes, is worth no more than this.
		worth := 2 + units.Length(float64(p)/float64(max(1, l-slant)))
		if p <= slant && (back < p-worth || back > p+worth) {
			t.Fatalf("%+v at %v: %v comes to %v apart", c, p, l, back)
		}
		if again := length(c, back); again > l || float64(again) < float64(l)-1-2*float64(l)/float64(p) {
			t.Fatalf("%+v: %v apart takes %v, not %v", c, back, again, l)
		}
	})
}

func FuzzSpacing(f *testing.F) {
	f.Add(int64(7*ft), int64(4*ft), int64(0), int64(0), int64(63*ft))
	f.Add(int64(6*in), int64(9*in), int64(4*in), int64(in), int64(in))
	f.Add(int64(100*ft), int64(150*ft), int64(0), int64(0), int64(400_000*units.Meter))
	f.Add(int64(math.MaxInt64), int64(1), int64(math.MinInt64), int64(-1), int64(0))
	f.Fuzz(func(t *testing.T, height, base, tip, foot, length int64) {
		c := Tree{Height: units.Length(height), Base: units.Length(base), BareTip: units.Length(tip), BareBase: units.Length(foot)}
		p, err := c.Spacing(units.Length(length))
		if err != nil {
			if p != 0 || !errors.Is(err, units.ErrRange) {
				t.Errorf("%v, %v", p, err)
			}
			return
		}
		if p < minSpacing || p > maxSpacing {
			t.Fatalf("%+v: %v apart", c, p)
		}
		if l, err := c.SpiralLength(p); err != nil || l > units.Length(length) {
			t.Errorf("%+v: %d nm apart takes %d of %d nm, %v", c, p, l, length, err)
		}
	})
}

func TestDrape(t *testing.T) {
	for _, row := range []struct {
		source    string
		span, sag float64
		want      float64 // length
	}{
		// Published: 42.586 ft; the sag is a (cosh(L/2a) - 1).
		{"OpenStax, Calculus Vol. 2, section 2.9, y = 10 cosh(x/10) over 30 ft", 30, 10 * (math.Cosh(1.5) - 1), 42.5855891018963},
		{"the same, y = 15 cosh(x/15) over 40 ft", 40, 15 * (math.Cosh(4.0/3) - 1), 52.9510613485118},
		{"root found in 40 digits", 6, 1, 6.42354207177425},
		{"the same", 5, 0.75, 5.28836997429725},
		{"the same", 10, 1, 10.2618686812876},
		{"the same", 72, 8, 74.3181550825189},
	} {
		// To a tenth of the size, which fits between branch tips.
		d := Drape{units.Length(math.Round(row.span * float64(ft) / 10)), units.Length(math.Round(row.sag * float64(ft) / 10))}
		got, err := d.Stretch()
		if want := row.want / row.span; err != nil || math.Abs(got-want) > 2e-9 {
			t.Errorf("%s: %v, %v; want %v", row.source, got, err, want)
		}
	}
	long, err1 := Drape{Span: 10 * in, Sag: 2 * in}.Stretch()
	if err1 != nil || math.Abs(63*long-69.28224715550984) > 1e-12 {
		t.Errorf("63 ft draped: %v, %v", 63*long, err1)
	}
	if k, err := (Drape{Span: -5}).Stretch(); k != 1 || err != nil {
		t.Errorf("straight: %v, %v", k, err)
	}
	if k, err := (Drape{1 * in, 1 * in}).Stretch(); err != nil || math.Abs(k-2.37101941810022) > 5e-15 {
		t.Errorf("sagging by its span: %v, %v", k, err)
	}
	for _, row := range []struct {
		field string
		d     Drape
	}{
		{"span", Drape{in - 1, 1}},
		{"span", Drape{10*ft + 1, 1}},
		{"sag", Drape{10 * ft, -1}},
		{"sag", Drape{10 * in, 10*in + 1}},
	} {
		k, err := row.d.Stretch()
		refused(t, err, units.ErrRange, "Drape.Stretch", row.field)
		if k != 0 {
			t.Errorf("%+v: %v", row.d, k)
		}
	}
	if _, err := (Drape{10 * ft, 10 * ft}).Stretch(); err != nil {
		t.Error(err)
	}
}

// The stretch against the equation it solves, and growing with the sag.
func TestDrapeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		span := units.Length(rapid.Int64Range(int64(in), int64(10*ft)).Draw(t, "span"))
		sag := units.Length(rapid.Int64Range(0, int64(span)).Draw(t, "sag"))
		k, err := Drape{span, sag}.Stretch()
		if err != nil {
			t.Fatal(err)
		}
		// With s = span, the arc l and the sag f of a catenary give its parameter
		// twice: a = (l² - 4f²)/(8f), and l = 2a·sinh(s/2a).
		if sag > span/100 {
			l := k * float64(span)
			a := (l*l - 4*float64(sag)*float64(sag)) / (8 * float64(sag))
			if want := 2 * a * math.Sinh(float64(span)/(2*a)); math.Abs(l/want-1) > 1e-12 {
				t.Fatalf("span %v, sag %v: stretch %v, want %v", span, sag, k, want/float64(span))
			}
		}
		more, err := Drape{span, min(span, sag+units.Length(rapid.Int64Range(0, int64(ft)).Draw(t, "more")))}.Stretch()
		if err != nil || more < k-1e-15 || k < 1 {
			t.Fatalf("span %v: stretch %v, then %v with more sag, %v", span, k, more, err)
		}
	})
}

// The same to the last nanometer on every machine. The lengths and areas were
// computed apart from this package, in 60 decimal digits; the longest of all came
// to 430900857815561.502 nm there.
func TestConeSameEverywhere(t *testing.T) {
	for _, row := range []struct {
		c       cone
		spacing units.Length
		length  units.Length
		area    units.Area
	}{
		{cone{2133600000, 1386840000, 0, 0}, 254000000, 19504997915, 4887234345314},
		{cone{2743200000, 1783080000, 228600000, 152400000}, 254000000, 28306417706, 7150073716932},
		{cone{2743200000, 1783080000, 0, 0}, 101600000, 79652807880, 8078897591233},
		{cone{1371600000, 891540000, 0, 0}, 203200000, 10139294051, 2019724397808},
		{cone{3657600000, 2377440000, 0, 0}, 254000000, 56844362161, 14362484606637},
		{cone{3657600000, 1097280000, 304800000, 0}, 76200000, 83178795494, 6330510783214},
		{cone{4572000000, 2057400000, 0, 304800000}, 304800000, 43745724774, 13192960218569},
		{cone{30480000000, 45720000000, 0, 0}, 6350000, 430900857815561, 2736220387126488},
		{cone{30480000000, 3810000000, 0, 0}, 30480000000, 31307175865, 182770623920818},
		{cone{152400000, 19050000, 0, 0}, 6350000, 747419227, 4569265598},
		{cone{152400000, 228600000, 101600000, 25400000}, 30480000000, 31754977, 17101377420},
		{cone{2300000000, 1495000001, 123456789, 98765432}, 234567891, 22275687975, 5185630372942},
	} {
		length, err1 := row.c.SpiralLength(row.spacing)
		area, err2 := row.c.LateralArea()
		if length != row.length || area != row.area || err1 != nil || err2 != nil {
			t.Errorf("%+v at %d: %d nm, %v, %d um2, %v; want %d and %d", row.c, row.spacing, length, err1, area, err2, row.length, row.area)
		}
	}
}

func TestMeasuringDoesNotAllocate(t *testing.T) {
	c := Tree{Height: 9 * ft, Base: 6 * ft, BareTip: 1 * ft}
	d := Drape{Span: 10 * in, Sag: 2 * in}
	if n := testing.AllocsPerRun(100, func() {
		l, err1 := c.SpiralLength(10 * in)
		p, err2 := c.Spacing(l)
		k, err3 := d.Stretch()
		if err1 != nil || err2 != nil || err3 != nil || p < 10*in || k < 1 {
			t.Error(p, k, err1, err2, err3)
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
