package supply

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/fircone/internal/intprog"
	"example.com/fircone/internal/tally"

	"github.com/google/go-cmp/cmp"
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
	getsTheirs(t, p, got)
}

// getsTheirs checks that what the demands get is theirs, and there.
func getsTheirs(t rapid.TB, p *Problem, got Result) {
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

// A choice that holds nothing is no pack. By hand: 6 pieces at one cost and bulk are one pack of 6, for which two choices
// have to be made, or two of 3.
func TestChoicesAreNoPacks(t *testing.T) {
	p := &Problem{Have: []int64{0}, Demands: []Demand{{Kinds: [][]int{{0}}, N: 6}}, Packs: []Pack{
		{Holds: []Hold{{0, 3}}, Cost: 1, Bulk: 3, Limit: 9}, {Holds: []Hold{{0, 6}}, Cost: 2, Bulk: 6, Limit: 9}, {Limit: 9}, {Limit: 9},
	}, Rows: []intprog.Row{{Col: []int{2, 1}, Coef: []int64{1, -1}}, {Col: []int{3, 1}, Coef: []int64{1, -1}}}}
	effort := int64(1_000_000)
	if got := Solve(p, nil, &effort); len(got.Packs) != 4 || got.Packs[0] != 0 || got.Packs[1] != 1 {
		t.Errorf("%+v", got)
	}
}

// With no steps what it begins with is what it finds, if that serves. By hand: 6 of one kind, of which there are 2 of the
// first, 3·2 of the second and 4 of the third.
func TestStartServes(t *testing.T) {
	p := &Problem{Have: []int64{2, 0, 4}, Demands: []Demand{{Kinds: [][]int{{0}, {1}, {2}}, N: 6, Take: 1, Least: 1, Most: 9}, {Kinds: [][]int{{0}, {2}}, N: 6}}, Packs: []Pack{
		{Holds: []Hold{{1, 2}}, Cost: 5, Bulk: 2, Limit: 3}, {Holds: []Hold{{0, 9}}, Cost: 9, Bulk: 9, Limit: 9},
	}}
	effort := int64(0)
	if got := Solve(p, []int64{3, 0}, &effort); !slices.Equal(got.Packs, []int64{3, 0}) || got.Cost != 15 {
		t.Errorf("%+v", got)
	}
}

// missing returns how much the demands cannot have of what x makes: the most, of all sets of things, that they
// can have from nothing else, less what there is of the set (Gale).
func missing(p *Problem, x []float64) float64 {
	most := 0.0
	for set := range 1 << len(p.Have) {
		in := func(things []int) bool {
			return !slices.ContainsFunc(things, func(a int) bool { return set>>a&1 == 0 })
		}
		sum := 0.0
		for a, n := range p.Have {
			if set>>a&1 == 1 {
				sum -= float64(n)
			}
		}
		for i, k := range p.Packs {
			for _, h := range k.Holds {
				if set>>h.Thing&1 == 1 {
					sum -= float64(float64(h.N) * x[i])
				}
			}
		}
		y := x[len(p.Packs):]
		for _, d := range p.Demands {
			free := float64(d.N - int64(d.Take)*d.Least)
			for _, things := range d.Kinds {
				switch inside := in(things); {
				case d.Take == 0 && !inside:
					free = 0
				case d.Take > 0 && inside:
					sum += float64(float64(d.Least) * y[0])
				case d.Take > 0:
					free -= float64(float64(d.Most-d.Least) * y[0])
				}
				if d.Take > 0 {
					y = y[1:]
				}
			}
			sum += max(0, free)
		}
		most = max(most, sum)
	}
	return most
}

// The rows that a choice of packs and kinds breaks are short of all that is missing, together, and no column stands
// in one twice.
func TestBrokenRows(t *testing.T) {
	problems := rapid.Custom(draw)
	r := rand.New(rand.NewPCG(3, 14))
	broken := 0
	for seed := range 2000 {
		p := problems.Example(seed)
		m := newModel(p)
		x := make([]float64, len(m.program.Cost))
		for j := range x {
			x[j] = float64(r.Int64N(4*m.program.Hi[j]+1)) / 4
			if seed%2 == 0 {
				x[j] = math.Round(x[j])
			}
		}
		short := 0.0
		rows := m.broken(x)
		for _, row := range rows {
			kept := -float64(row.Least)
			for k, j := range row.Col {
				kept += float64(float64(row.Coef[k]) * x[j])
				if slices.Contains(row.Col[:k], j) {
					t.Fatalf("%+v: column %d twice in %+v", p, j, row)
				}
			}
			if kept >= 0 {
				t.Fatalf("%+v: %v does not break %+v", p, x, row)
			}
			short -= kept
		}
		if want := missing(p, x); math.Abs(short-want) > 1e-6 {
			t.Fatalf("%+v with %v: short of %v by %+v, want %v", p, x, short, rows, want)
		}
		broken += len(rows)
	}
	if broken < 1000 {
		t.Errorf("only %d rows", broken)
	}
}

// Demands that share nothing have rows of their own. By hand: of three demands for 5, each of a thing of its own, there is nothing,
// enough and 2.
func TestRowForEachPart(t *testing.T) {
	p := &Problem{Have: []int64{0, 5, 2}}
	for a := range p.Have {
		p.Demands = append(p.Demands, Demand{Kinds: [][]int{{a}}, N: 5})
		p.Packs = append(p.Packs, Pack{Holds: []Hold{{a, 3}}, Cost: 1, Limit: 9})
	}
	rows := newModel(p).broken([]float64{0, 0, 0})
	if want := []intprog.Row{{Col: []int{0}, Coef: []int64{3}, Least: 5}, {Col: []int{2}, Coef: []int64{3}, Least: 5 - 2}}; !cmp.Equal(rows, want) {
		t.Errorf("%+v, want %+v", rows, want)
	}
}

// What is missing by no more than the errors of a sum is not missing.
func TestBrokenByRounding(t *testing.T) {
	p := &Problem{Have: []int64{0}, Demands: []Demand{{Kinds: [][]int{{0}}, N: 9}}, Packs: []Pack{{Holds: []Hold{{0, 3}}, Cost: 1, Limit: 9}}}
	for x, want := range map[float64]int{3: 0, 3 - 1e-7: 0, 3 - 1e-3: 1} {
		if rows := newModel(p).broken([]float64{x}); len(rows) != want {
			t.Errorf("%v packs of 3 for 9: %v", x, rows)
		}
	}
	// But one piece is, however many there are to be.
	p.Demands[0].N = 3_000_000
	if rows := newModel(p).broken([]float64{1_000_000 - 1.0/3}); len(rows) != 1 {
		t.Error("one piece of 3,000,000 is not missed")
	}
}

// someProblem returns one of more packs and demands than can be tried one by one.
func someProblem(r *rand.Rand) *Problem {
	p := &Problem{}
	things := 3 + r.IntN(5)
	for range things {
		p.Have = append(p.Have, r.Int64N(3)*r.Int64N(2))
	}
	for range things + r.IntN(6) {
		k := Pack{Limit: 1 + r.Int64N(6)}
		for range 1 + r.IntN(3) {
			a, n := r.IntN(things), 1+r.Int64N(6)
			if !slices.ContainsFunc(k.Holds, func(h Hold) bool { return h.Thing == a }) {
				k.Holds = append(k.Holds, Hold{a, n})
				k.Bulk += n
			}
		}
		k.Cost = k.Bulk*4 + r.Int64N(4*k.Bulk)
		p.Packs = append(p.Packs, k)
	}
	for range 2 + r.IntN(4) {
		d := Demand{N: 1 + r.Int64N(8)}
		for _, a := range r.Perm(things)[:1+r.IntN(3)] {
			d.Kinds = append(d.Kinds, []int{a})
		}
		if r.IntN(2) == 0 {
			d.Take = 1 + r.IntN(len(d.Kinds))
			d.Least = 1 + r.Int64N(2)
			d.Most = d.Least + r.Int64N(4)
			d.N = int64(d.Take)*d.Least + r.Int64N(int64(d.Take)*(d.Most-d.Least)+1)
		}
		p.Demands = append(p.Demands, d)
	}
	return p
}

// The steps that the search takes, and what they come to.
func TestWork(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 25))
	c := tally.New()
	served := 0
	for range 150 {
		p := someProblem(r)
		const all = 1_000_000
		effort := int64(all)
		got := Solve(p, nil, &effort)
		c.Add(all-effort, got.Cost, got.Bound, tally.Bit(got.None))
		c.Add(0, got.Packs...)
		if got.Packs == nil {
			continue
		}
		served++
		if got.Bound != got.Cost {
			t.Errorf("%+v: not proved, %+v", p, got)
		}
		getsTheirs(t, p, got)
		// From all packs there are it ends at the same cost.
		most := make([]int64, len(p.Packs))
		for i, k := range p.Packs {
			most[i] = k.Limit
		}
		effort = all
		again := Solve(p, most, &effort)
		c.Add(all-effort, again.Packs...)
		if again.Cost != got.Cost {
			t.Errorf("%+v: %+v from all packs, %+v from none", p, again, got)
		}
	}
	if served < 50 {
		t.Errorf("only %d served", served)
	}
	c.Check(t, "838180 8f20a2dfe69979c1")
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
