package mantel

import (
	"math"

	"example.com/fircone/internal/catenary"
	"example.com/fircone/units"
)

// The bounds of a swag.
const (
	minSpan       units.Length = units.Inch
	maxSpan       units.Length = 50 * units.Foot
	maxSag        units.Length = 50 * units.Foot
	maxRise       units.Length = 50 * units.Foot
	maxSwagLength units.Length = 150 * units.Foot

	wantSpan = "1 in to 50 ft"
	wantSag  = "0 ft to 50 ft"
	wantRise = "-50 ft to 50 ft"
)

// A swag is one catenary of a run.
type swag struct{ span, rise, sag units.Length }

func (s swag) curve() catenary.Curve {
	if s.rise == 0 {
		return catenary.Level(float64(s.span), float64(s.sag))
	}
	return catenary.Sloped(float64(s.span), float64(s.rise), float64(s.sag))
}

func (s swag) length() units.Length {
	if s.rise == 0 {
		return s.span + nearest(s.curve().Slack())
	}
	return nearest(s.curve().Length())
}

// checkTaut checks that a swag of a span sags enough for its pulls to be known.
func checkTaut(fn string, sag, span units.Length, n int) error {
	if sag*units.Length(100*n) < span {
		least := units.Length(divideUp(span, units.Length(100*n)))
		return rangeError(fn, "/sag", exact(sag), "0 ft, or a hundredth of the span or more, "+exact(least)+": a taut garland pulls without limit")
	}
	return nil
}

func nearest(nm float64) units.Length { return units.Length(math.Round(nm)) }
