package sizing

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	fsizing "example.com/fircone/sizing"
	"example.com/fircone/units"
)

func numeric(c fsizing.Cone, p float64, n int) float64 {
	h, r := float64(c.Height), float64(c.BaseDiameter)/2
	s := math.Sqrt(r*r + h*h)
	turns := s / p
	top := float64(c.BareTip)/h*s
	f := func(x float64) float64 {
		u := 2 * math.Pi * turns * r / s * x / s
		return math.Sqrt(1 + u*u)
	}
	return quad.Fixed(f, top, s, n, nil, 0)
}

func BenchmarkQ(b *testing.B) {
	for _, p := range []units.Length{units.Inch, 3*units.Inch, 10*units.Inch} {
		for _, tip := range []units.Length{0, units.Foot} {
		c := fsizing.Cone{Height: 7 * units.Foot, BaseDiameter: 7 * units.Foot * 65 / 100, BareTip: tip}
		want := numeric(c, float64(p), 400)
		n := 1
		for ; n < 400; n++ {
			if math.Abs(numeric(c, float64(p), n)/want-1) < 1e-12 { break }
		}
		b.Logf("%v %v: %d nodes", p, tip, n)
		b.Run(p.String()+tip.String()+"gonum", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() { numeric(c, float64(p), n) }
		})
		b.Run(p.String()+tip.String()+"closed", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() { c.SpiralLength(p) }
		})
	}}
}
