package palette

// Three by three, and no product is left for a compiler to fuse into a sum.

type (
	vector [3]float64
	matrix [3]vector
)

func (v vector) dot(w vector) float64 {
	return float64(v[0]*w[0]) + float64(v[1]*w[1]) + float64(v[2]*w[2])
}

func (v vector) cross(w vector) vector {
	return vector{
		float64(v[1]*w[2]) - float64(v[2]*w[1]),
		float64(v[2]*w[0]) - float64(v[0]*w[2]),
		float64(v[0]*w[1]) - float64(v[1]*w[0]),
	}
}

func (v vector) scale(f float64) vector {
	return vector{float64(f * v[0]), float64(f * v[1]), float64(f * v[2])}
}

// apply returns m·v.
func (m matrix) apply(v vector) vector { return vector{m[0].dot(v), m[1].dot(v), m[2].dot(v)} }

func (m matrix) transpose() matrix {
	return matrix{
		{m[0][0], m[1][0], m[2][0]},
		{m[0][1], m[1][1], m[2][1]},
		{m[0][2], m[1][2], m[2][2]},
	}
}

// times returns m·n.
func (m matrix) times(n matrix) matrix {
	t := n.transpose()
	return matrix{t.apply(m[0]), t.apply(m[1]), t.apply(m[2])}
}

// inverse returns the inverse of m by its cofactors.
func (m matrix) inverse() matrix {
	cofactors := matrix{m[1].cross(m[2]), m[2].cross(m[0]), m[0].cross(m[1])}
	f := 1 / m[0].dot(cofactors[0])
	return matrix{cofactors[0].scale(f), cofactors[1].scale(f), cofactors[2].scale(f)}.transpose()
}
