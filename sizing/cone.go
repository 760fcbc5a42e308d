package sizing

import (
	"math"
	"strconv"

	"example.com/fircone/internal/elem"
	"example.com/fircone/units"
)

// A Cone is the shape that a tree is dressed on: a right circular cone, point
// up, of which a band at the top and one at the bottom may be left bare. What
// its methods measure is the sloped surface between the two; so a garland from
// any height to any height is that of a Cone with both bands set, and the parts
// of a tree add up to the whole.
//
// The methods return an [units.Error] wrapping [units.ErrRange] if a field is out of its
// range. Cones are comparable with ==.
type Cone struct {
	// Height is from the base to the tip, 6 in to 100 ft.
	Height units.Length `json:"height"`

	// BaseDiameter is across the base, from an eighth of Height to one and a
	// half times Height.
	BaseDiameter units.Length `json:"baseDiameter"`

	// BareTip is the height of the band at the top that is left bare, and
	// BareBase that of the one at the bottom. Neither is negative, and at least
	// 1 in of Height remains between them.
	BareTip  units.Length `json:"bareTip"`
	BareBase units.Length `json:"bareBase"`
}

// The spacings of wraps that this package takes, measured along the slope.
const (
	MinSpacing units.Length = units.Inch / 4
	MaxSpacing units.Length = 100 * units.Foot
)

const (
	minConeHeight = 6 * units.Inch
	minDressed    = 1 * units.Inch
)

// check returns what is wrong with c, on behalf of the method fn. Fields are named
// after at, "/" for a receiver.
func (c Cone) check(fn, at string) error {
	switch {
	case c.Height < minConeHeight || c.Height > MaxHeight:
		return rangeError(fn, at+"height", c.Height.String(), "6 in to 100 ft")
	case c.BaseDiameter < minBase(c.Height) || c.BaseDiameter > maxBase(c.Height):
		return rangeError(fn, at+"baseDiameter", c.BaseDiameter.String(), wantBase(c.Height))
	case c.BareTip < 0 || c.BareTip > c.Height-minDressed:
		return rangeError(fn, at+"bareTip", c.BareTip.String(), "0 ft to "+(c.Height-minDressed).String())
	case c.BareBase < 0 || c.BareBase > c.Height-c.BareTip-minDressed:
		return rangeError(fn, at+"bareBase", c.BareBase.String(), "0 ft to "+(c.Height-c.BareTip-minDressed).String())
	}
	return nil
}

// The plausible diameters of base for a height.
func minBase(height units.Length) units.Length { return (height + 7) / 8 }
func maxBase(height units.Length) units.Length { return height * 3 / 2 }
func wantBase(height units.Length) string {
	return minBase(height).String() + " to " + maxBase(height).String()
}

// checkSpacing is short enough for the compiler to put in the caller's place, with
// the text of the error apart.
func checkSpacing(fn string, spacing units.Length) error {
	if MinSpacing <= spacing && spacing <= MaxSpacing {
		return nil
	}
	return spacingError(fn, spacing)
}

func spacingError(fn string, spacing units.Length) error {
	return rangeError(fn, "spacing", spacing.String(), "1/4 in to 100 ft")
}

// Slant returns the length of the slope from the lower bare band to the upper
// one. With base radius r and height h the whole slope is
//
//	s = √(r² + h²)
//
// and the bands take their share of it. It is rounded to the nearest nanometer.
func (c Cone) Slant() (units.Length, error) {
	if err := c.check("Cone.Slant", "/"); err != nil {
		return 0, err
	}
	return units.Length(math.Round(c.slant())), nil
}

// LateralArea returns the area of the sloped surface between the bare bands,
// without the base. With radii r₁ and r₂ at their edges and the slope s between
// them it is
//
//	π·(r₁ + r₂)·s
//
// to within a square micrometer and two parts in 10¹⁵.
func (c Cone) LateralArea() (units.Area, error) {
	if err := c.check("Cone.LateralArea", "/"); err != nil {
		return 0, err
	}
	return c.area(), nil
}

// SpiralLength returns the length of garland wound round the slope from one bare
// band to the other, its wraps one spacing apart along the slope, 1/4 in to
// 100 ft. Unrolled flat, the cone is a sector and the garland a spiral of
// Archimedes on it: with base diameter d, height h, whole slope s and spacing p,
//
//	a    = p·s/(π·d)
//	u(y) = π·d·y/(h·p)
//	F(u) = u·√(1 + u²) + arsinh u
//	L    = a/2 · (F(u(y₂)) - F(u(y₁)))
//
// where y₁ and y₂ are the depths below the tip of the upper and the lower edge.
// A spacing much wider than the slope gives the slope itself; a small one tends
// to the area divided by the spacing, from above.
//
// The result is within 1 nm of the exact length: it is rounded to the nearest,
// and all else is less than 1.2·10⁻¹⁵ of the area over the spacing, 0.5 nm at
// the most.
//
// Source: the arc length of a spiral of Archimedes, in any textbook of calculus;
// OpenStax, Calculus Volume 3, section 3.3, has a spiral on a cone.
func (c Cone) SpiralLength(spacing units.Length) (units.Length, error) {
	const fn = "Cone.SpiralLength"
	if err := c.check(fn, "/"); err != nil {
		return 0, err
	}
	if err := checkSpacing(fn, spacing); err != nil {
		return 0, err
	}
	return c.spiralLength(spacing, 1), nil
}

// Turns returns how many times a garland goes round from one bare band to the
// other with its wraps one spacing apart along the slope, 1/4 in to 100 ft:
//
//	turns = slope / spacing
//
// within 4 parts in 10¹⁶.
func (c Cone) Turns(spacing units.Length) (float64, error) {
	const fn = "Cone.Turns"
	if err := c.check(fn, "/"); err != nil {
		return 0, err
	}
	if err := checkSpacing(fn, spacing); err != nil {
		return 0, err
	}
	return c.slant() / float64(spacing), nil
}

// Spacing returns how far apart along the slope the wraps are of a garland of
// this length that goes from one bare band to the other: the inverse of
// [Cone.SpiralLength], rounded up to a nanometer, so that the length suffices. For a
// tree of which only part is seen, see [Tree.Spacing].
//
// Where the garland goes round at least once, the result is less than 1.01 nm
// over the exact spacing. Where it does not, a spacing changes the length by
// less than a nanometer in the end, and the result is one of many that come to
// this length, within 1 nm.
//
// It returns an [units.Error] wrapping [units.ErrRange] if length is one that no spacing
// from 1/4 in to 100 ft comes to.
func (c Cone) Spacing(length units.Length) (units.Length, error) {
	const fn = "Cone.Spacing"
	if err := c.check(fn, "/"); err != nil {
		return 0, err
	}
	return c.spacingOf(fn, "length", length, 1)
}

// The rest is for cones that check has passed.

// whole returns the slope of the whole cone in nanometers, within two roundings.
func (c Cone) whole() float64 {
	h, d := float64(c.Height), float64(c.BaseDiameter)
	return math.Sqrt(float64(h*h) + float64(d*d)/4)
}

// slant returns the slope between the bare bands in nanometers.
func (c Cone) slant() float64 {
	return float64(c.whole()*float64(c.Height-c.BareTip-c.BareBase)) / float64(c.Height)
}

// surface returns the area between the bare bands in nanometers squared, over
// that much, π·(d/2)·s·(y₂² - y₁²)/(h·over) for the whole slope s, within 9.4
// roundings, those of s among them.
func (c Cone) surface(s, over float64) float64 {
	sum, diff := c.Height-c.BareBase+c.BareTip, c.Height-c.BareBase-c.BareTip // y₂ + y₁, y₂ - y₁
	slice := float64(float64(sum) * float64(diff))
	return float64(float64(math.Pi/2*s*float64(c.BaseDiameter))*slice) / float64(float64(c.Height)*over)
}

func (c Cone) area() units.Area {
	return units.Area(math.Round(c.surface(c.whole(), float64(float64(c.Height)*1e6))))
}

// spiralLength goes turn of the way round in each wrap, 1 for all of it.
func (c Cone) spiralLength(spacing units.Length, turn float64) units.Length {
	s, p := c.whole(), float64(spacing)
	ph, round := float64(p*float64(c.Height)), float64(math.Pi*float64(c.BaseDiameter)*turn)
	x := newSpiral(float64(round*float64(c.BareTip)), float64(round*float64(c.Height-c.BareBase)), ph)
	// a/2·u² is the area over the spacing, the greater part of any long garland,
	// and 9.4 roundings of it are all that counts. The other part is never more
	// than a few times the slope.
	length := float64(c.surface(s, ph)*turn) + float64(float64(s*p)/(2*round)*x.excess())
	return units.Length(length + 0.5)
}

// A spiral is what the length of the spiral of Archimedes r = a·φ is made from,
// between r = a·u₁ and r = a·u₂: u/(u+√(1+u²)) and arsinh u, from u₁ to u₂ each.
type spiral struct{ part, arsinh float64 }

// newSpiral returns that for u = x/over.
func newSpiral(x1, x2, over float64) spiral {
	square := float64(over * over)
	v2 := x2 + math.Sqrt(float64(x2*x2)+square) // times over
	if x1 == 0 {
		return spiral{part: x2 / v2, arsinh: elem.Log(v2 / over)}
	}
	v1 := x1 + math.Sqrt(float64(x1*x1)+square)
	return spiral{part: x2/v2 - x1/v1, arsinh: elem.Log(v2 / v1)}
}

// excess returns what the length is more than area over spacing:
// a/2·(u₂² - u₁² + excess) is the length.
func (x spiral) excess() float64 { return x.part + x.arsinh }

// spacingOf is spacing for a length that some spacing comes to.
func (c Cone) spacingOf(fn, field string, length units.Length, turn float64) (units.Length, error) {
	if least, most := c.spiralLength(MaxSpacing, turn), c.spiralLength(MinSpacing, turn); length < least || length > most {
		return 0, rangeError(fn, field, length.String(), least.String()+" to "+most.String())
	}
	return min(max(c.spacing(length, turn), MinSpacing), MaxSpacing), nil
}

// spacing solves spiralLength(p) = length, rounded up. Where p is over MaxSpacing,
// or length not over the slope, what it returns is over MaxSpacing too.
//
// As a function of t = 1/a, the length of the spiral between two radii is
// ∫√(1 + r²t²)dr, increasing and convex, so that Newton's rule from above comes
// down to the root without ever passing it. It starts from the bound that the
// triangle inequality gives,
//
//	L² ≥ (r₂ - r₁)² + (t·(r₂² - r₁²)/2)²
//
// which is exact at both ends.
func (c Cone) spacing(length units.Length, turn float64) units.Length {
	l, s, h := float64(length), c.whole(), float64(c.Height)
	r1, r2 := float64(s*float64(c.BareTip))/h, float64(s*float64(c.Height-c.BareBase))/h
	slant, half := r2-r1, float64((r2-r1)*(r2+r1))/2
	if l <= slant { // by less than rounding
		return MaxSpacing + 1
	}
	t := math.Sqrt(float64((l-slant)*(l+slant))) / half
	for range 60 { // three times or four
		x := newSpiral(float64(r1*t), float64(r2*t), 1)
		over := (float64(half*t) - l) + x.excess()/(2*t)
		// The length grows by 1/(2·t²)·(u₂² - u₁² + part - arsinh) with t.
		growth := float64(2*half*t*t) + (x.part - x.arsinh)
		next := t - float64(over/growth*float64(2*t*t))
		if !(next < t) {
			break
		}
		// A step of one part in 2**26 leaves less than one in 2**53, as a step is
		// squared by the next and t·L″ is never over L′. And L″ is under arsinh/t³, so
		// that a step leaves at most half its square times that: 0.005 nm will do.
		step := (t - next) / t
		last := step < 0x1p-26 || float64(float64(step*step)*x.arsinh) < 0.01*t
		t = next
		if last {
			break
		}
	}
	round := float64(math.Pi * float64(c.BaseDiameter) * turn)
	p := math.Ceil(round / float64(t*s)) // a = p·s/(π·d)
	return units.Length(min(p, float64(MaxSpacing+1)))
}

// Grade returns what grading rules for Christmas trees call the shape, by base
// diameter over height: "candlestick" under 40 %, "normal" up to 90 %, and "flared"
// over that. The bare bands do not matter.
//
// Source: Ontario R.R.O. 1990, Reg. 377, s. 1 (revoked 2009) for 40 %; U.S.
// Standards for Grades of Christmas Trees, USDA AMS, 1989, for 90 %, from memory.
func (c Cone) Grade() (string, error) {
	if err := c.check("Cone.Grade", "/"); err != nil {
		return "", err
	}
	switch {
	case 100*c.BaseDiameter < 40*c.Height:
		return "candlestick", nil
	case 100*c.BaseDiameter <= 90*c.Height:
		return "normal", nil
	}
	return "flared", nil
}

// A Drape is how a garland hangs between the branch tips that hold it: freely,
// as a catenary. The zero value hangs straight from tip to tip. Drapes are
// comparable with ==.
type Drape struct {
	// Span is the distance from one branch tip to the next along the garland,
	// 1 in to 10 ft. Ignored if Sag is zero.
	Span units.Length `json:"span"`

	// Sag is how far the middle hangs below the tips, from zero to Span.
	Sag units.Length `json:"sag"`
}

// Stretch returns how much longer a draped garland is than the straight line
// that it follows. With x half the span over the catenary's parameter it is
//
//	sinh x / x   where   (cosh x - 1)/(2x) = Sag/Span
//
// 1 where it does not sag, and 2.372 at the most, within 2 parts in 10¹⁵. It
// returns an [units.Error] wrapping [units.ErrRange] if a field is out of its range.
//
// Source: OpenStax, Calculus Volume 2, section 2.9, Calculus of the Hyperbolic
// Functions.
func (d Drape) Stretch() (float64, error) { return d.stretch("Drape.Stretch") }

func (d Drape) stretch(fn string) (float64, error) {
	if d.Sag == 0 {
		return 1, nil
	}
	if d.Span < units.Inch || d.Span > 10*units.Foot {
		return 0, rangeError(fn, "/span", d.Span.String(), "1 in to 10 ft")
	}
	if d.Sag < 0 || d.Sag > d.Span {
		return 0, rangeError(fn, "/sag", d.Sag.String(), "0 ft to "+d.Span.String())
	}
	// (cosh x - 1)/(2x) = sinh²(x/2)/x is convex and at least x/4, so that
	// Newton's rule from 4·Sag/Span comes down to the root.
	k := float64(d.Sag) / float64(d.Span)
	x := 4 * k
	for range 60 {
		s := elem.Sinh(x / 2)
		g := float64(s*s) / x
		next := x - float64((g-k)*x)/(elem.Sinh(x)/2-g)
		if !(next < x) {
			break
		}
		x = next
	}
	return elem.Sinh(x) / x, nil
}

// Length returns how much garland a straight run takes when it is draped, up to
// 500 km: run times [Drape.Stretch], rounded to the nearest nanometer.
// It returns an [units.Error] wrapping [units.ErrRange] if run or a field is out of its range.
func (d Drape) Length(run units.Length) (units.Length, error) {
	const fn = "Drape.Length"
	if run < 0 || run > maxRun {
		return 0, rangeError(fn, "run", run.String(), "0 ft to "+strconv.Itoa(int(maxRun/units.Meter))+" m")
	}
	k, err := d.stretch(fn)
	if err != nil {
		return 0, err
	}
	return units.Length(math.Round(float64(float64(run) * k))), nil
}

// maxRun is more than any spiral here: 4.31·10¹⁴ nm.
const maxRun = 500_000 * units.Meter
