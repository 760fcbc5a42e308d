package placement

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/fircone/internal/tally"
)

// How many fit is found in few tries: to a 128th where what fits is a part of the area and where one size is too large, and
// to a twentieth of many; less well where more fit better or worse than few. The tries are counted, so that they stay the same.
func TestMost(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 0))
	counts := tally.New()
	for range 400 {
		var kinds []kind
		total := 0
		digits := 1 + r.IntN(5)
		for range 1 + r.IntN(4) {
			k := kind{class: [layers]int32{int32(r.IntN(2)), -1, int32(r.IntN(2))}, count: r.IntN(int(math.Pow10(digits)) / 4)}
			k.radius = 0.01 * float64(1+k.class[2]) // one to a class
			kinds = append(kinds, k)
			total += k.count
		}
		slices.SortFunc(kinds, func(a, b kind) int { return cmp.Compare(b.radius, a.radius) }) // so that more pieces are no fewer large ones
		area := cover(kinds) * (0.02 + 2*r.Float64())
		part := 0.1 + 0.5*r.Float64()
		many, near := 2*r.Float64()-1, 20 // whether more fit a little better, or worse
		if r.IntN(4) == 0 {
			many, near = 5*many, 5
		}
		large := 0.1
		if digits < 5 && r.IntN(4) == 0 {
			large = 0.015
		}
		tries := 0
		fits := func(kinds []kind, n int) bool {
			tries++
			sum, ok := 0, cover(kinds) <= float64(part*area)*(1-many/math.Sqrt(float64(max(n, 100))))
			for _, k := range kinds {
				sum += k.count
				ok = ok && (k.count == 0 || k.radius < large)
			}
			if sum != n {
				t.Fatalf("%d pieces of %d", sum, n)
			}
			counts.Add(int64(n), int64(len(kinds)), tally.Bit(ok))
			return ok
		}
		if fits(kinds, total) {
			continue
		}
		got := most(kinds, total, area, fits)
		counts.Add(int64(got))
		if tries > 20 {
			t.Errorf("%d tries for %d pieces", tries, total)
		}
		// One more or less of each size comes of its rounding.
		less, more := got-got/128-2, got+got/128+2
		if total > 2*aMany {
			more = got + got/near + 2
		}
		if less > 0 && !fits(share(kinds, less, total), less) {
			t.Errorf("%d of %d, and not even %d fit: %v", got, total, less, kinds)
		}
		if more <= total && fits(share(kinds, more, total), more) {
			t.Errorf("%d of %d, and %d fit too: %v", got, total, more, kinds)
		}
	}
	counts.Check(t, "10735565 fcacc0225b651ece")
}

// The pairs of pieces that are nearer than a reach are those that a look at all pairs finds, each once.
func TestPairs(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 0))
	found := 0
	for range 60 {
		n := 2 + r.IntN(80)
		f := shape(0.3+0.5*r.Float64(), 0.1*r.Float64(), []float64{1, 0.5, 0.25}[r.IntN(3)])
		a := arrangement{stand: stand{surface: f}, spots: f.even(n, 0)}
		kinds := make([]kind, 1+r.IntN(4))
		for i := range kinds {
			kinds[i].radius = f.bound(n) * r.Float64()
		}
		for range a.spots {
			a.who = append(a.who, int32(r.IntN(len(kinds))))
		}
		reach := 1 + r.Float64()
		var got, want [][2]int32
		for _, p := range a.pairs(kinds, reach) {
			got = append(got, [2]int32{min(p[0], p[1]), max(p[0], p[1])})
		}
		for j := range int32(n) {
			for i := range j {
				both := reach * (kinds[a.who[i]].radius + kinds[a.who[j]].radius)
				if dist2(a.at(a.spots[i]), a.at(a.spots[j])) < both*both {
					want = append(want, [2]int32{i, j})
				}
			}
		}
		order := func(p, q [2]int32) int { return slices.Compare(p[:], q[:]) }
		slices.SortFunc(got, order)
		slices.SortFunc(want, order)
		if !slices.Equal(got, want) {
			t.Errorf("%d places, reach %v: %v, want %v", n, reach, got, want)
		}
		found += len(want)
	}
	if found < 1000 {
		t.Errorf("%d pairs", found)
	}
}
