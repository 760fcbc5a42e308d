package cover

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/fircone/internal/tally"
)

// testWork is as many steps as a search has.
const testWork = 250_000_000

// somePacks returns kinds of packs of up to most, at any price, at one price a
// piece, or nearly at one, some of them limited.
func somePacks(r *rand.Rand, kinds int, most int64) []Pack {
	packs := make([]Pack, kinds)
	way := r.IntN(3)
	for i := range packs {
		p := &packs[i]
		p.Size = 1 + r.Int64N(most)
		switch p.Cost = 3 * p.Size; way {
		case 0:
			p.Cost = r.Int64N(9)
		case 1:
			p.Cost += r.Int64N(4)
		}
		p.Bulk = p.Size + r.Int64N(2)*r.Int64N(3)
		p.Limit = 1 << 50
		if r.IntN(2) == 0 {
			p.Limit = 1 + r.Int64N(7)
		}
	}
	return packs
}

func TestCoverWork(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	c := tally.New()
	for range 400 {
		scale := []int64{1, 1, 6, 100_000_007}[r.IntN(4)]
		packs := somePacks(r, 1+r.IntN(4), 12)
		need := 1 + r.Int64N(24)
		for i := range packs {
			packs[i].Size *= scale
		}
		need = need*scale - r.Int64N(scale)
		want := bruteCover(need, packs)
		if want == nil {
			continue
		}
		work := int64(testWork)
		got, ok := Counts(need, packs, &work)
		if !ok || !slices.Equal(got, want) {
			t.Errorf("need %d of %+v: got %v, want %v", need, packs, got, want)
		}
		c.Add(testWork - work)
		// So many steps are enough, and one less is not.
		steps := testWork - work
		for _, spare := range []int64{0, -1} {
			work := steps + spare
			if _, ok := Counts(need, packs, &work); ok != (spare == 0) && steps > 0 {
				t.Errorf("need %d of %+v: %t with %d of %d steps", need, packs, ok, steps+spare, steps)
			}
		}
	}
	c.Check(t, counted[t.Name()])
}

// Against the search with nothing settled beforehand.
func TestLargeCoverWork(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	c := tally.New()
	for range 60 {
		packs := somePacks(r, 2+r.IntN(8), 60)
		for i := range packs {
			packs[i].Limit = min(packs[i].Limit, 1<<(40*r.Int64N(2))*(1+r.Int64N(60)))
		}
		all, need := int64(0), 1+r.Int64N(2_000)
		for _, p := range packs {
			all += p.Size * min(p.Limit, need)
		}
		if all < need {
			continue
		}
		work := int64(testWork)
		plain, _ := New(need, packs, &work)
		want, _ := plain.counts(&work)
		c.Add(testWork - work)
		work = testWork
		got, ok := Counts(need, packs, &work)
		if !ok || !slices.Equal(got, want) {
			t.Errorf("need %d of %+v: got %v, want %v", need, packs, got, want)
		}
		c.Add(testWork - work)
	}
	c.Check(t, counted[t.Name()])
}

// Sizes without a useful common measure.
func TestSparseWork(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	c := tally.New()
	for range 60 {
		packs := make([]Pack, 1+r.IntN(3))
		for i := range packs {
			size := 1_000_000 + r.Int64N(9_000_000)
			packs[i] = Pack{Size: size, Bulk: size, Cost: size / 1_000_000, Limit: 1 + r.Int64N(4)}
			if r.IntN(3) == 0 {
				packs[i].Limit = 1 << 50
			}
		}
		need := 2_000_000 + r.Int64N(20_000_000)
		if r.IntN(4) == 0 {
			need = packs[0].Size * (2 + r.Int64N(3))
		}
		want := bruteCover(need, packs)
		if want == nil {
			continue
		}
		work := int64(testWork)
		cover, ok := New(need, packs, &work)
		if !ok {
			t.Fatal("too large")
		}
		steps := testWork - work
		if got, _ := cover.counts(&work); !slices.Equal(got, want) {
			t.Errorf("need %d of %+v: got %v, want %v", need, packs, got, want)
		}
		c.Add(testWork-work, int64(cover.top))
		if cover.amounts == nil {
			continue
		}
		for _, spare := range []int64{0, -1} {
			work := steps + spare
			if _, ok := New(need, packs, &work); ok != (spare == 0) {
				t.Errorf("need %d of %+v: %t with %d of %d steps", need, packs, ok, steps+spare, steps)
			}
		}
	}
	c.Check(t, counted[t.Name()])
}

// counted was recorded on amd64 and is the same on arm64, arm, riscv64, s390x and wasm.
var counted = map[string]string{
	"TestCoverWork":      "6841 f7c07b64715d6de0",
	"TestLargeCoverWork": "1196889 9f216f960fdb1955",
	"TestSparseWork":     "926305 6783b5d70c3e09a9",
}
