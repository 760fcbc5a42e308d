package intprog

import (
	"math/rand/v2"
	"testing"

	"example.com/fircone/internal/tally"
)

// basket returns a problem of mixed boxes: each column is a box with a few of some kinds, each row a kind of which there are to be
// so many, and a limited shelf.
func basket(r *rand.Rand, boxes, kinds int) *Problem {
	p := &Problem{Rows: make([]Row, kinds)}
	for j := range boxes {
		in := int64(0)
		for range 1 + r.IntN(3) {
			row := &p.Rows[r.IntN(kinds)]
			if n := len(row.Col); n > 0 && row.Col[n-1] == j {
				continue
			}
			n := 2 + r.Int64N(11)
			row.Col, row.Coef = append(row.Col, j), append(row.Coef, n)
			in += n
		}
		p.Cost = append(p.Cost, 40*in+r.Int64N(60*in))
		p.Tie = append(p.Tie, in)
		p.Lo, p.Hi = append(p.Lo, 0), append(p.Hi, 1+r.Int64N(6))
	}
	for i := range p.Rows {
		there := int64(0)
		for k, j := range p.Rows[i].Col {
			there += p.Rows[i].Coef[k] * p.Hi[j]
		}
		p.Rows[i].Least = there * (2 + r.Int64N(6)) / 10
	}
	return p
}

// The steps that the search takes, and what they come to, with enough of them and with few. Where all were enough, a start
// from what was found proves the same.
func TestWork(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	c := tally.New()
	proved := 0
	for k := range 120 {
		p := basket(r, 8+k%3*14, 3+k%4*2)
		all := int64(300_000)
		if k%4 == 0 {
			all = r.Int64N(20_000)
		}
		effort := all
		got := Solve(p, nil, &effort)
		if got.X != nil && (!p.Kept(got.X) || p.price(got.X) != got.Cost || got.Bound > got.Cost) {
			t.Fatalf("%+v: %+v", p, got)
		}
		c.Add(all-effort, got.Cost, got.Bound)
		if got.X == nil || got.Bound < got.Cost {
			continue
		}
		proved++
		c.Add(0, got.X...)
		effort = 300_000
		again := Solve(p, got.X, &effort)
		c.Add(300_000-effort, again.Bound)
		if again.Cost != got.Cost || again.Bound > got.Cost {
			t.Fatalf("%+v: %+v from what was found, %+v", p, again, got)
		}
	}
	if proved < 60 {
		t.Errorf("%d of 120 proved", proved)
	}
	c.Check(t, "9447157 71d73584b96bd6e5")
}
