package supply

import (
	"slices"
	"testing"

	"example.com/fircone/internal/intprog"

	"pgregory.net/rapid"
)

// serves reports whether things serve the demands, by giving piece after piece to one that
// may have it, in all ways.
func serves(p *Problem, there []int64) bool {
	gets := make([][]int64, len(p.Demands))
	for d, demand := range p.Demands {
		gets[d] = make([]int64, len(demand.Kinds))
	}
	var fill func(d, k, a int, left int64) bool
	demand := func(d int) bool {
		if d == len(p.Demands) {
			return true
		}
		return fill(d, 0, 0, p.Demands[d].N)
	}
	fill = func(d, k, a int, left int64) bool {
		dm := p.Demands[d]
		if k == len(dm.Kinds) {
			if left > 0 {
				return false
			}
			if dm.Take > 0 {
				used := 0
				for _, n := range gets[d] {
					if n == 0 {
						continue
					}
					if n < dm.Least || n > dm.Most {
						return false
					}
					used++
				}
				if used != dm.Take {
					return false
				}
			}
			return demand(d + 1)
		}
		if a == len(dm.Kinds[k]) {
			return fill(d, k+1, 0, left)
		}
		t := dm.Kinds[k][a]
		for n := min(left, there[t]); n >= 0; n-- {
			there[t] -= n
			gets[d][k] += n
			ok := fill(d, k, a+1, left-n)
			there[t] += n
			gets[d][k] -= n
			if ok {
				return true
			}
		}
		return false
	}
	return demand(0)
}

func draw(t *rapid.T) *Problem {
	p := &Problem{}
	things := rapid.IntRange(1, 3).Draw(t, "things")
	for range things {
		p.Have = append(p.Have, rapid.SampledFrom([]int64{0, 0, 1, 2}).Draw(t, "have"))
	}
	for range rapid.IntRange(1, 3).Draw(t, "packs") {
		k := Pack{Cost: rapid.Int64Range(0, 9).Draw(t, "cost"), Limit: rapid.Int64Range(0, 3).Draw(t, "limit")}
		for a := range things {
			if n := rapid.SampledFrom([]int64{0, 1, 2, 3}).Draw(t, "holds"); n > 0 {
				k.Holds = append(k.Holds, Hold{a, n})
				k.Bulk += n
			}
		}
		if k.Holds != nil {
			p.Packs = append(p.Packs, k)
		}
	}
	for range rapid.IntRange(1, 3).Draw(t, "demands") {
		d := Demand{N: rapid.Int64Range(0, 5).Draw(t, "pieces")}
		for a := range things {
			if rapid.IntRange(0, 3).Draw(t, "will do") > 0 {
				d.Kinds = append(d.Kinds, []int{a})
			}
		}
		if len(d.Kinds) > 1 && rapid.Bool().Draw(t, "one kind") {
			d.Kinds = append([][]int{{d.Kinds[0][0], d.Kinds[1][0]}}, d.Kinds[2:]...)
		}
		if rapid.Bool().Draw(t, "take") && len(d.Kinds) > 0 {
			d.Take = rapid.IntRange(1, len(d.Kinds)).Draw(t, "kinds")
			d.Least = rapid.Int64Range(1, 2).Draw(t, "least")
			d.Most = d.Least + rapid.Int64Range(0, 2).Draw(t, "more")
			d.N = rapid.Int64Range(int64(d.Take)*d.Least, int64(d.Take)*d.Most).Draw(t, "of all")
		}
		p.Demands = append(p.Demands, d)
	}
	return p
}

// Against every choice of packs, each tried by giving the pieces out in all ways.
func TestSolveIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { isBest(t, draw(t)) })
	// The same problems every time.
	problems := rapid.Custom(draw)
	for seed := range 300 {
		isBest(t, problems.Example(seed))
	}
}

func isBest(t rapid.TB, p *Problem) {
	counts := make([]int64, len(p.Packs))
	best := int64(-1)
	var walk func(i int, there []int64, cost int64)
	walk = func(i int, there []int64, cost int64) {
		if best >= 0 && cost >= best {
			return
		}
		if i == len(counts) {
			if serves(p, there) {
				best = cost
			}
			return
		}
		for n := int64(0); n <= p.Packs[i].Limit; n++ {
			more := slices.Clone(there)
			for _, h := range p.Packs[i].Holds {
				more[h.Thing] += n * h.N
			}
			walk(i+1, more, cost+n*p.Packs[i].Cost)
		}
	}
	walk(0, slices.Clone(p.Have), 0)
	effort := int64(20_000_000)
	got := Solve(p, nil, &effort)
	if best < 0 {
		if !got.None || got.Packs != nil {
			t.Fatalf("got %+v, where there is no way", got)
		}
		return
	}
	if got.Packs == nil || got.Cost != best || got.Bound != best {
		t.Fatalf("got %+v, want %d", got, best)
	}
	// From all packs there are, and with hardly any steps.
	all := make([]int64, len(p.Packs))
	for i, k := range p.Packs {
		all[i] = k.Limit
	}
	for _, effort := range []int64{20_000_000, 0} {
		if from := Solve(p, all, &effort); from.None || from.Bound > best || from.Packs != nil && from.Cost < best || effort > 0 && from.Cost != best {
			t.Fatalf("from all got %+v, want %d", from, best)
		}
	}
	// What the demands get is theirs, and there.
	there := slices.Clone(p.Have)
	for i, n := range got.Packs {
		for _, h := range p.Packs[i].Holds {
			there[h.Thing] += n * h.N
		}
	}
	for d, demand := range p.Demands {
		sum, used := int64(0), 0
		for _, things := range demand.Kinds {
			kind := int64(0)
			for _, a := range things {
				kind += got.Gets[d][a]
			}
			if sum += kind; kind > 0 {
				used++
			}
			if demand.Take > 0 && kind > 0 && (kind < demand.Least || kind > demand.Most) {
				t.Fatalf("%d of one kind for %+v", kind, demand)
			}
		}
		if sum != demand.N || demand.Take > 0 && used != demand.Take {
			t.Fatalf("%v for %+v", got.Gets[d], demand)
		}
		for a, n := range got.Gets[d] {
			there[a] -= n
		}
	}
	if slices.Min(there) < 0 {
		t.Fatalf("%v is more than there is: %v left", got.Gets, there)
	}
}

// Of several at one cost the one of least bulk, and then of the fewest packs. By hand: 6 pieces
// of 2 at 1 each cost 3, as one pack of 8 does, and one of 6.
func TestLightest(t *testing.T) {
	hold := func(n int64) []Hold { return []Hold{{0, n}} }
	p := &Problem{Have: []int64{0}, Demands: []Demand{{Kinds: [][]int{{0}}, N: 6}}, Packs: []Pack{
		{Holds: hold(8), Cost: 3, Bulk: 8, Limit: 9}, {Holds: hold(2), Cost: 1, Bulk: 2, Limit: 9}, {Holds: hold(6), Cost: 3, Bulk: 6, Limit: 9},
	}}
	effort := int64(1_000_000)
	if got := Solve(p, nil, &effort); !slices.Equal(got.Packs, []int64{0, 0, 1}) {
		t.Errorf("%+v", got)
	}
	// A choice that holds nothing may be needed: here the pack of 6 is for one that is made.
	p.Packs = append(p.Packs, Pack{Limit: 1})
	p.Rows = []intprog.Row{{Col: []int{3, 2}, Coef: []int64{1, -1}}, {Col: []int{3}, Coef: []int64{-1}, Least: 0}}
	if got := Solve(p, nil, &effort); !slices.Equal(got.Packs, []int64{0, 3, 0, 0}) {
		t.Errorf("%+v", got)
	}
}

// Where there are too many packs to count them, bulk counts all the same. By hand: 9 pieces cost 3 as one pack of 10
// and as three of 3, of which the shelf has very many.
func TestTooManyToCount(t *testing.T) {
	hold := func(n int64) []Hold { return []Hold{{0, n}} }
	p := &Problem{Have: []int64{0}, Demands: []Demand{{Kinds: [][]int{{0}}, N: 9}}, Packs: []Pack{
		{Holds: hold(10), Cost: 3, Bulk: 10, Limit: 9}, {Holds: hold(3), Cost: 1, Bulk: 3, Limit: 1 << 22},
	}}
	effort := int64(1_000_000)
	if got := Solve(p, nil, &effort); !slices.Equal(got.Packs, []int64{0, 3}) {
		t.Errorf("%+v", got)
	}
}

// Where bulk or cost are too large to weigh one against the other, the least cost is found all the same. By hand: one
// pack serves, and the first and the second cost the same.
func TestTooLargeToWeigh(t *testing.T) {
	for _, c := range []struct {
		name       string
		cost, bulk int64
	}{{"bulk", 3, 1 << 51}, {"cost", 1 << 60, 1}} {
		p := &Problem{Have: []int64{0}, Demands: []Demand{{Kinds: [][]int{{0}}, N: 1}}, Packs: []Pack{
			{Holds: []Hold{{0, 1}}, Cost: c.cost, Bulk: c.bulk, Limit: 1}, {Holds: []Hold{{0, 2}}, Cost: c.cost, Bulk: c.bulk, Limit: 1},
		}}
		effort := int64(1_000_000)
		got := Solve(p, nil, &effort)
		if len(got.Packs) != 2 || got.Packs[0]+got.Packs[1] != 1 || got.Cost != c.cost || got.Bound != c.cost || got.Gets[0][0] != 1 {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}
