package draw

import (
	"math"

	"example.com/fircone/internal/elem"
)

// The pictures come out alike on every machine, so these do not use package math, whose last digits differ. In a copy
// math.Sincos and math.Hypot will do.

func sincos(x float64) (sin, cos float64) { return elem.Sincos(x) }

func sine(x float64) float64 {
	sin, _ := elem.Sincos(x)
	return sin
}

func cosine(x float64) float64 {
	_, cos := elem.Sincos(x)
	return cos
}

func hypot(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }
