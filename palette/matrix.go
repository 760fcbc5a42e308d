package palette

// Three by three, and no product is left for a compiler to fuse into a sum.

type (
	vector [3]float64
	matrix [3]vector
)

func (v vector) dot(w vector) float64 {
	return float64(v[0]*w[0]) + float64(v[1]*w[1]) + float64(v[2]*w[2])
}

// apply returns m·v.
func (m matrix) apply(v vector) vector { return vector{m[0].dot(v), m[1].dot(v), m[2].dot(v)} }
