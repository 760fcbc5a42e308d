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
		// With few steps from all there is, nothing can be spared of what is found.
		effort = int64(4 * k)
		some := Solve(p, p.Hi, &effort)
		c.Add(int64(4*k)-effort, some.Bound)
		c.Add(0, some.X...)
		if some.X == nil || some.Bound > got.Cost || some.Cost < got.Bound {
			t.Fatalf("%+v: %+v from all there is, %+v from nothing", p, some, got)
		}
		for j := range some.X {
			if some.X[j]--; p.Kept(some.X) {
				t.Fatalf("%+v: one of %d too many in %v", p, j, some.X)
			}
			some.X[j]++
		}
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
	c.Check(t, "9478324 78ceecb655086402")
}

// The same of problems with coefficients, costs and bounds of either sign, some with rows that are found only when they are broken
// or with columns to decide first. Written down or found when they are broken, the rows leave the same least; where there are few x, it is
// that of all x.
func TestSignedWork(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 3))
	c := tally.New()
	proved := 0
	for k := range 160 {
		n, wide := 6, int64(3)
		if k%2 == 1 {
			n, wide = 14, 7
		}
		p := &Problem{}
		for range n {
			p.Cost = append(p.Cost, r.Int64N(60)-8)
			p.Lo = append(p.Lo, r.Int64N(4)-2)
			p.Hi = append(p.Hi, p.Lo[len(p.Lo)-1]+1+r.Int64N(wide))
		}
		for range n - 2 {
			row := Row{}
			for j := range n {
				if a := r.Int64N(17) - 6; a != 0 && r.IntN(3) > 0 {
					row.Col, row.Coef = append(row.Col, j), append(row.Coef, a)
					row.Least += a * (p.Lo[j] + p.Hi[j]) / 2
				}
			}
			row.Least += r.Int64N(8)
			p.Rows = append(p.Rows, row)
		}
		if k%3 == 1 {
			for j := range n {
				p.First, p.Tie = append(p.First, j%3 == 0), append(p.Tie, r.Int64N(5))
			}
		}
		hidden := *p
		hidden.Rows = p.Rows[:1]
		hidden.Broken = func(x []float64) (broken []Row) {
			for _, row := range p.Rows[1:] {
				sum := 0.0
				for k, j := range row.Col {
					sum += float64(float64(row.Coef[k]) * x[j])
				}
				if sum < float64(row.Least)-1e-6 {
					broken = append(broken, row)
				}
			}
			return broken
		}
		const all = 200_000
		var found [2]Result
		for h, q := range []*Problem{p, &hidden} {
			effort := int64(all)
			got := Solve(q, nil, &effort)
			if got.X != nil && (!p.Kept(got.X) || p.price(got.X) != got.Cost || got.Bound > got.Cost) {
				t.Fatalf("%+v: %+v", p, got)
			}
			c.Add(all-effort, got.Cost, got.Bound, tally.Bit(got.None))
			c.Add(0, got.X...)
			found[h] = got
		}
		done := func(r Result) bool { return r.None || r.X != nil && r.Bound == r.Cost }
		if a, b := found[0], found[1]; done(a) && done(b) {
			proved++
			if a.None != b.None || a.Cost != b.Cost {
				t.Fatalf("%+v: %+v, and %+v with hidden rows", p, a, b)
			}
		}
		if k%2 == 0 {
			if want, tie, ok := both(p); found[0].None == ok || ok && (found[0].Cost != want || found[0].Bound != want || p.tie(found[0].X) != tie) {
				t.Fatalf("%+v: %+v, want %d, %d, %t", p, found[0], want, tie, ok)
			}
		}
	}
	if proved < 100 {
		t.Errorf("only %d of 160 proved", proved)
	}
	c.Check(t, "7044268 415b792cc03868dc")
}
