package sizing

import (
	"math"

	"example.com/fircone/internal/elem"
	"example.com/fircone/units"
)

// A cone is the shape that a tree is dressed on: point up, with a band at the top and
// one at the bottom left bare. Tree.cone has checked it.
type cone struct {
	Height, BaseDiameter, BareTip, BareBase units.Length
}

// The spacings of wraps that this package takes, measured along the slope.
const (
	minSpacing units.Length = units.Inch / 4
	maxSpacing units.Length = 100 * units.Foot
)

const minDressed = 1 * units.Inch

// The plausible diameters of base for a height.
func minBase(height units.Length) units.Length { return (height + 7) / 8 }
func maxBase(height units.Length) units.Length { return height * 3 / 2 }
func wantBase(height units.Length) string {
	return minBase(height).String() + " to " + maxBase(height).String()
}

// checkSpacing is short enough for the compiler to put in the caller's place, with
// the text of the error apart.
func checkSpacing(fn string, spacing units.Length) error {
	if minSpacing <= spacing && spacing <= maxSpacing {
		return nil
	}
	return spacingError(fn, spacing)
}

func spacingError(fn string, spacing units.Length) error {
	return rangeError(fn, "spacing", spacing.String(), "1/4 in to 100 ft")
}

// whole returns the slope of the whole cone in nanometers, within two roundings.
func (c cone) whole() float64 {
	h, d := float64(c.Height), float64(c.BaseDiameter)
	return math.Sqrt(float64(h*h) + float64(d*d)/4)
}

// slant returns the slope between the bare bands in nanometers.
func (c cone) slant() float64 {
	return float64(c.whole()*float64(c.Height-c.BareTip-c.BareBase)) / float64(c.Height)
}

// surface returns the area between the bare bands in nanometers squared, over
// that much, π·(d/2)·s·(y₂² - y₁²)/(h·over) for the whole slope s, within 9.4
// roundings, those of s among them.
func (c cone) surface(s, over float64) float64 {
	sum, diff := c.Height-c.BareBase+c.BareTip, c.Height-c.BareBase-c.BareTip // y₂ + y₁, y₂ - y₁
	slice := float64(float64(sum) * float64(diff))
	return float64(float64(math.Pi/2*s*float64(c.BaseDiameter))*slice) / float64(float64(c.Height)*over)
}

func (c cone) area() units.Area {
	return units.Area(math.Round(c.surface(c.whole(), float64(float64(c.Height)*1e6))))
}

// spiralLength goes turn of the way round in each wrap, 1 for all of it.
func (c cone) spiralLength(spacing units.Length, turn float64) units.Length {
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
func (c cone) spacingOf(fn string, length units.Length, turn float64) (units.Length, error) {
	if least, most := c.spiralLength(maxSpacing, turn), c.spiralLength(minSpacing, turn); length < least || length > most {
		return 0, rangeError(fn, "garland", length.String(), least.String()+" to "+most.String())
	}
	return min(max(c.spacing(length, turn), minSpacing), maxSpacing), nil
}

// spacing solves spiralLength(p) = length, rounded up. Where p is over maxSpacing,
// or length not over the slope, what it returns is over maxSpacing too.
//
// As a function of t = 1/a, the length of the spiral between two radii is
// ∫√(1 + r²t²)dr, increasing and convex, so that Newton's rule from above comes
// down to the root without ever passing it. It starts from the bound that the
// triangle inequality gives,
//
//	L² ≥ (r₂ - r₁)² + (t·(r₂² - r₁²)/2)²
//
// which is exact at both ends.
func (c cone) spacing(length units.Length, turn float64) units.Length {
	l, s, h := float64(length), c.whole(), float64(c.Height)
	r1, r2 := float64(s*float64(c.BareTip))/h, float64(s*float64(c.Height-c.BareBase))/h
	slant, half := r2-r1, float64((r2-r1)*(r2+r1))/2
	if l <= slant { // by less than rounding
		return maxSpacing + 1
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
		// L″ is under arsinh/t³, so that a step of a part of t leaves at most half the
		// square of that part times arsinh/t: 0.005 nm will do.
		step := (t - next) / t
		last := float64(float64(step*step)*x.arsinh) < 0.01*t
		t = next
		if last {
			break
		}
	}
	round := float64(math.Pi * float64(c.BaseDiameter) * turn)
	p := math.Ceil(round / float64(t*s)) // a = p·s/(π·d)
	return units.Length(min(p, float64(maxSpacing+1)))
}

// A Drape is how a garland sags between the branch tips that hold it, as a catenary.
// Without a Sag it hangs straight.
type Drape struct {
	Span units.Length `json:"span"` // from one branch tip to the next, 1 in to 10 ft
	Sag  units.Length `json:"sag"`  // how far the middle hangs below the tips, 0 to Span
}

// Stretch returns how much longer a draped garland is than the line that it follows, 1 to 2.3711,
// within 2 parts in 10¹⁵. With x half the span over the parameter of the catenary, it is
//
//	sinh x / x   where   (cosh x - 1)/(2x) = Sag/Span
//
// A span of 10 in with a sag of 2 in takes a tenth more.
//
// Source: OpenStax, Calculus Volume 2, section 2.9.
func (d Drape) Stretch() (float64, error) {
	const fn = "Drape.Stretch"
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
