package elem

import (
	"math"
	"testing"
)

// Beside package math, which may use the machine's own instructions.
func BenchmarkElem(b *testing.B) {
	xs := make([]float64, 256)
	for i := range xs {
		xs[i] = 0.1 + float64(i)*0.05
	}
	var sink float64
	for _, f := range []struct {
		name      string
		ours, std func(float64) float64
	}{
		{"Log", Log, math.Log},
		{"Exp", Exp, math.Exp},
		{"Sin", Sin, math.Sin},
		{"Sinh", Sinh, math.Sinh},
		{"Cosh", Cosh, math.Cosh},
		{"Asinh", Asinh, math.Asinh},
		{"Cbrt", Cbrt, math.Cbrt},
		{"Atan2", func(x float64) float64 { return Atan2(x, 3) }, func(x float64) float64 { return math.Atan2(x, 3) }},
	} {
		b.Run(f.name+"/elem", func(b *testing.B) {
			i := 0
			for b.Loop() {
				sink += f.ours(xs[i&255])
				i++
			}
		})
		b.Run(f.name+"/math", func(b *testing.B) {
			i := 0
			for b.Loop() {
				sink += f.std(xs[i&255])
				i++
			}
		})
	}
	_ = sink
}
