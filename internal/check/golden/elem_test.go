package golden

import (
	"math"

	"example.com/fircone/internal/elem"
)

// elemFunctions are the elementary functions of one argument that the product calls.
var elemFunctions = []struct {
	name string
	f    func(float64) float64
}{
	{"asinh", elem.Asinh},
	{"cbrt", elem.Cbrt},
	{"cosh", elem.Cosh},
	{"exp", elem.Exp},
	{"log", elem.Log},
	{"sin", elem.Sin},
	{"cosine", func(x float64) float64 { _, c := elem.Sincos(x); return c }},
	{"sine", func(x float64) float64 { s, _ := elem.Sincos(x); return s }},
	{"sinh", elem.Sinh},
}

func elemPage(p *page) {
	args := []float64{0, 1, -1, 0.5, 2, math.Pi, 1e-300, 5e-324, 1e-8, 0.1, 1.0 / 3, 0.693, 10, 22, 100, 700, 1e6, 1e15, 1e22, 1e300}
	var d draw
	for i := range 40 {
		args = append(args, (float64(d.upTo(1<<30))+float64(d.upTo(1<<22))/(1<<22))/float64(int64(1)<<(i+1)))
	}
	for _, f := range elemFunctions {
		for _, x := range args {
			p.add("%s %s = %s", f.name, num(x), num(f.f(x)))
		}
	}
	for i := range 120 {
		y, x := float64(d.upTo(1<<20)-1<<19)/1024, float64(d.upTo(1<<20)-1<<19)/float64(int64(1)<<(i%30))
		p.add("angle %s %s = %s", num(y), num(x), num(elem.Atan2(y, x)))
	}
}
