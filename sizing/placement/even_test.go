package placement

import "math"

func shape(ratio, bare, arc float64) surface {
	s := math.Sqrt(1 + ratio*ratio/4)
	return surface{sin: ratio / 2 / s, cos: 1 / s, top: bare * s, bottom: s, arc: arc * 2 * math.Pi, round: arc == 1}
}
