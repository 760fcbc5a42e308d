package placement

import (
	"iter"
	"math"

	"example.com/fircone/internal/elem"
	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

// A Winding is a garland or a string of lights wound down the dressed part of a
// tree.
type Winding struct {
	Spacing units.Length `json:"spacing"` // between turns along the slope, 1/4 in to 100 ft
	Drape   sizing.Drape `json:"drape"`   // zero follows the surface

	// Length is how much there is, 1 ft to 25,400 m. If the spacing would take more, the
	// turns are spread over the dressed part. Zero is no limit.
	Length units.Length `json:"length"`

	// Step is the distance between points along the garland, 1/10 in to 100 ft.
	Step units.Length `json:"step"`
}

const (
	minSpacing = units.Inch / 4
	maxSpacing = 100 * units.Foot

	minStep = units.Inch / 10
	maxStep = 100 * units.Foot

	maxLength = 25_400 * units.Meter
)

// Wind returns the points along a winding from its upper end down, one Step apart, both
// ends included: the bulbs of a string of lights, or the line of a garland.
//
// The line, that of [sizing.Tree.SpiralLength], starts at the back, or at the dressed
// part's right edge. Its length is
//
//	∫ √(1 + (arc·sin α·s/p)²) ds
//
// over the distance s from the tip along the slope, for spacing p, the dressed arc in radians
// and the angle α between trunk and slope. A draped garland hangs below that line as a
// catenary in each span, and is longer by [sizing.Drape.Stretch]. It ends higher by its sag,
// so that none hangs below the dressed part. Both ends are tied to the line: where Length
// ends inside a span, the last step rises.
func (l Layout) Wind(winding Winding) (iter.Seq[Position], error) {
	const fn = "Layout.Wind"
	s, err := l.stand(fn)
	if err != nil {
		return nil, err
	}
	switch {
	case winding.Spacing < minSpacing || winding.Spacing > maxSpacing:
		return nil, rangeError(fn, "/winding/spacing", winding.Spacing.String(), "1/4 in to 100 ft")
	case winding.Length < 0 || winding.Length > maxLength || winding.Length > 0 && winding.Length < units.Foot:
		return nil, rangeError(fn, "/winding/length", winding.Length.String(), "0 ft, or 1 ft to 25400 m")
	case winding.Step < minStep || winding.Step > maxStep:
		return nil, rangeError(fn, "/winding/step", winding.Step.String(), "1/10 in to 100 ft")
	}
	hang, err := s.hang(winding.Drape)
	if err != nil {
		return nil, inside(fn, "/winding/drape", err)
	}
	// What is draped ends as much higher as it sags, and so keeps off the floor.
	hung := s.surface
	hung.bottom = max(hung.bottom-hang.sag/hung.cos, hung.top)
	spiral := hung.winding(float64(winding.Spacing) / s.height)
	if winding.Length != 0 {
		reach, _ := hang.at(float64(winding.Length) / s.height)
		spiral = hung.within(spiral, float64(winding.Spacing)/s.height, reach)
	}
	step := float64(winding.Step) / s.height
	return func(yield func(Position) bool) {
		slant := s.top
		for k := 0; ; k++ {
			along, drop := hang.at(float64(float64(k) * step))
			last := along >= spiral.length
			if last {
				// The ends are tied, so that the last point does not hang.
				along, drop = spiral.length, 0
			}
			slant = spiral.slant(along, slant)
			at, _ := s.point(spot{slant, spiral.azimuth(slant)}, 0, drop)
			if !yield(at) || last {
				return
			}
		}
	}, nil
}

// A winding is the line that a garland follows, in heights of the tree.
type winding struct {
	surface
	turn   float64 // azimuth to the unit of slant
	length float64
}

func (f surface) winding(spacing float64) winding {
	w := winding{surface: f, turn: f.arc / spacing}
	w.length = w.from(f.top, f.bottom)
	return w
}

// within returns the winding that takes no more than length, its turns no closer than
// spacing, by halving the range of spacings.
func (f surface) within(w winding, spacing, length float64) winding {
	if w.length <= length {
		return w
	}
	close, far := spacing, float64(1000*f.bottom)
	for range 60 {
		if middle := (close + far) / 2; f.winding(middle).length > length {
			close = middle
		} else {
			far = middle
		}
	}
	w = f.winding(far)
	w.length = min(w.length, length) // what is too short even straight down ends above
	return w
}

// from returns the length of the line from slant s to slant t. With u = k·s it
// is F/2k, where F = u·√(1 + u²) + arsinh u, from end to end.
func (w winding) from(s, t float64) float64 {
	k := float64(w.turn * w.sin)
	u, v := float64(k*s), float64(k*t)
	a, b := math.Sqrt(1+float64(u*u)), math.Sqrt(1+float64(v*v))
	return (float64(v*b) - float64(u*a) + elem.Log((v+b)/(u+a))) / (2 * k)
}

// slant returns where the line is after a length of along, by Newton's rule from
// a slant that is not below it. The length is convex in the slant, so that the
// first step passes the root and the others come back to it.
func (w winding) slant(along, s float64) float64 {
	k := float64(w.turn * w.sin)
	for range 60 {
		u := float64(k * s)
		next := s - (w.from(w.top, s)-along)/math.Sqrt(1+float64(u*u))
		next = min(max(next, w.top), w.bottom)
		moved := math.Abs(next - s)
		s = next
		if moved < 1e-13 {
			break
		}
	}
	return s
}

// azimuth returns the azimuth of the line at a slant.
func (w winding) azimuth(s float64) float64 {
	turn := float64((s - w.top) * w.turn)
	if w.round {
		return math.Mod(turn, 2*math.Pi) - math.Pi
	}
	// back and forth
	turn -= float64(2 * w.arc * math.Floor(turn/(2*w.arc)))
	return math.Abs(turn-w.arc) - w.arc/2
}

// A hang is how a garland hangs in each span, in heights of the tree.
type hang struct {
	span   float64 // from tip to tip; 0 hangs straight
	length float64 // of garland in a span
	sag    float64
	a      float64 // the parameter of the catenary
}

func (s stand) hang(d sizing.Drape) (hang, error) {
	stretch, err := d.Stretch()
	if err != nil || d.Sag == 0 {
		return hang{}, err
	}
	h := hang{span: float64(d.Span) / s.height, sag: float64(d.Sag) / s.height}
	h.length = float64(h.span * stretch)
	half := h.length / 2
	h.a = (half - h.sag) * (half + h.sag) / (2 * h.sag)
	return h, nil
}

// at returns how far a garland reaches after a length of it, and how far it hangs
// there below the line from tip to tip.
func (h hang) at(length float64) (along, drop float64) {
	if h.span == 0 {
		return length, 0
	}
	spans := math.Floor(length / h.length)
	half := float64(h.length * (spans + 0.5))
	x := float64(h.a * elem.Asinh((length-half)/h.a)) // from the middle of the span
	return float64(h.span*(spans+0.5)) + x, h.sag - float64(h.a*(elem.Cosh(x/h.a)-1))
}
