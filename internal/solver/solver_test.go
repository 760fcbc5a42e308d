package solver

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A problem is a need and offers of one item, all in whole units.
type problem struct {
	shop  shopping.Shop
	needs []shopping.Need
}

// kinds of problems, and how many of each are tried.
var kinds = []struct {
	name   string
	count  int
	random func(r *rand.Rand) problem
}{
	{"pieces", 700, func(r *rand.Rand) problem { return pieces(r, false) }},
	{"pieces, limited", 700, func(r *rand.Rand) problem { return pieces(r, true) }},
	{"strands", 400, func(r *rand.Rand) problem { return strands(r, false) }},
	{"strands, limited", 400, func(r *rand.Rand) problem { return strands(r, true) }},
	{"whole pieces", 100, func(r *rand.Rand) problem { return wholes(r, false) }},
	{"whole pieces, limited", 100, func(r *rand.Rand) problem { return wholes(r, true) }},
}

// price draws a price in whole cents.
func price(r *rand.Rand, least, most int) decimal.Decimal {
	return decimal.New(int64(least+r.IntN(most-least+1)), -2)
}

func shelf(r *rand.Rand, limited bool, most int) shopping.Shelf {
	if limited && r.IntN(3) > 0 {
		if n := shopping.Shelf(r.IntN(most + 1)); n > 0 {
			return n
		}
		return shopping.SoldOut
	}
	return 0
}

func pieces(r *rand.Rand, limited bool) problem {
	p := problem{needs: []shopping.Need{{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 1 + r.IntN(400)}}}}
	for i := range 1 + r.IntN(8) {
		n := 1 + r.IntN(48)
		p.shop.Offers = append(p.shop.Offers, shopping.Offer{
			Item: shopping.Item{Kind: shopping.Pick}, Name: strconv.Itoa(i), Pack: shopping.Quantity{Pieces: n},
			Price: price(r, 20*n, 60*n+100), Shelf: shelf(r, limited, 12),
		})
	}
	p.shop.Owned = []shopping.Lot{{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: r.IntN(30)}}}
	return p
}

func strands(r *rand.Rand, limited bool) problem {
	p := problem{needs: []shopping.Need{{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: units.Length(12+r.IntN(1500)) * units.Inch}}}}
	for i := range 1 + r.IntN(6) {
		n := 24 + r.IntN(160)
		p.shop.Offers = append(p.shop.Offers, shopping.Offer{
			Item: shopping.Item{Kind: shopping.Garland}, Name: strconv.Itoa(i), Pack: shopping.Quantity{Pieces: r.IntN(4), Length: units.Length(n) * units.Inch},
			Price: price(r, 5*n, 15*n), Shelf: shelf(r, limited, 12),
		})
	}
	p.shop.Joins = map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: units.Length(r.IntN(4)) * units.Inch}}
	return p
}

func wholes(r *rand.Rand, limited bool) problem {
	var p problem
	for i := range 2 + r.IntN(2) {
		p.needs = append(p.needs, shopping.Need{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: shopping.Quantity{Pieces: 1 + r.IntN(3), Length: units.Length(9+9*i+r.IntN(9)) * units.Inch}})
	}
	for i := range 1 + r.IntN(2) {
		n := 40 + r.IntN(80)
		p.shop.Offers = append(p.shop.Offers, shopping.Offer{
			Item: shopping.Item{Kind: shopping.Ribbon}, Name: strconv.Itoa(i), Pack: shopping.Quantity{Length: units.Length(n) * units.Inch},
			Price: price(r, 5*n, 15*n), Shelf: shelf(r, limited, 4),
		})
	}
	return p
}

// random returns the n-th problem of a kind, the same on every machine.
func random(kind, n int) problem {
	return kinds[kind].random(rand.New(rand.NewPCG(uint64(kind), uint64(n))))
}

// A row is a constraint or the objective: a sum of terms.
type row []string

func (r *row) add(coefficient int64, variable string) {
	*r = append(*r, fmt.Sprintf("%+d %s", coefficient, variable))
}

func (r row) String() string { return strings.Join(r, " ") }

// A model is an integer program in the format called CPLEX LP.
type model struct {
	objective row
	rows      []string
	bounds    []string
	integers  []string
}

func (m *model) String() string {
	return "Minimize\n cost: " + m.objective.String() + "\nSubject To\n " + strings.Join(m.rows, "\n ") +
		"\nBounds\n " + strings.Join(m.bounds, "\n ") + "\nGeneral\n " + strings.Join(m.integers, "\n ") + "\nEnd\n"
}

// inches returns a length in whole inches.
func inches(l units.Length) int64 { return int64(l / units.Inch) }

// program writes p as an integer program with its cost in cents, straight from the rules and not
// from what the library does: a variable for the packs of each offer; for whole
// pieces also one for the pieces of each length in each roll. If total is not negative,
// the cost must be total, and what is minimized is a hundred times what is bought, and the packs.
func (p problem) program(total int64) string {
	m := &model{}
	var cost, bought, cover row
	need := p.needs[0].Quantity
	overlap := inches(p.shop.Joins[p.needs[0].Item].Overlap)
	whole := need.Pieces > 0 && need.Length > 0
	for i, o := range p.shop.Offers {
		n := "n" + strconv.Itoa(i)
		m.integers = append(m.integers, n)
		if o.Shelf != 0 {
			m.bounds = append(m.bounds, fmt.Sprintf("%s <= %d", n, max(0, o.Shelf)))
		}
		cost.add(o.Price.Shift(2).IntPart(), n)
		size := int64(o.Pack.Pieces)
		if o.Pack.Length > 0 {
			size = max(1, size) * (inches(o.Pack.Length) - overlap)
		}
		bought.add(100*size+1, n)
		cover.add(size, n)
	}
	switch {
	case whole:
		var shares []row
		for range p.needs {
			shares = append(shares, nil)
		}
		pieces := 0
		for _, n := range p.needs {
			pieces += n.Quantity.Pieces
		}
		for i, o := range p.shop.Offers {
			var used row
			for j := range pieces {
				roll := fmt.Sprintf("u%d_%d", i, j) // 1 if the j-th roll of offer i is cut
				m.integers = append(m.integers, roll)
				m.bounds = append(m.bounds, roll+" <= 1")
				used.add(1, roll)
				var length row
				for k, n := range p.needs {
					x := fmt.Sprintf("x%d_%d_%d", i, j, k) // pieces of length k from it
					m.integers = append(m.integers, x)
					length.add(inches(n.Quantity.Length), x)
					shares[k].add(1, x)
				}
				length.add(-inches(o.Pack.Length), roll)
				m.rows = append(m.rows, length.String()+" <= 0")
				if j > 0 { // the rolls are alike: cut them in order
					m.rows = append(m.rows, fmt.Sprintf("%s - u%d_%d <= 0", roll, i, j-1))
				}
			}
			used.add(-1, "n"+strconv.Itoa(i))
			m.rows = append(m.rows, used.String()+" <= 0")
		}
		for k, n := range p.needs {
			m.rows = append(m.rows, fmt.Sprintf("%s = %d", shares[k], n.Quantity.Pieces))
		}
	case need.Length > 0:
		// n strands of length L come to Σ(L - overlap) + overlap.
		m.rows = append(m.rows, fmt.Sprintf("%s >= %d", cover, max(1, inches(need.Length)-overlap)))
	default:
		m.rows = append(m.rows, fmt.Sprintf("%s >= %d", cover, need.Pieces-p.shop.Owned[0].Quantity.Pieces))
	}
	m.objective = cost
	if total >= 0 {
		m.rows = append(m.rows, fmt.Sprintf("%s = %d", cost, total))
		m.objective = bought
	}
	return m.String()
}

// glpsol returns the least value of the objective, or false if there is no solution.
func glpsol(tb testing.TB, dir, program string) (int64, bool) {
	tb.Helper()
	in, out := filepath.Join(dir, "in.lp"), filepath.Join(dir, "out.sol")
	if err := os.WriteFile(in, []byte(program), 0o600); err != nil {
		tb.Fatal(err)
	}
	log, err := exec.Command("glpsol", "--lp", in, "--write", out).CombinedOutput()
	if err != nil {
		tb.Fatalf("%v\n%s\n%s", err, log, program)
	}
	data, err := os.ReadFile(out)
	if err != nil {
		tb.Fatal(err)
	}
	for line := range strings.Lines(string(data)) {
		// s mip ROWS COLUMNS STATUS OBJECTIVE
		if f := strings.Fields(line); len(f) == 6 && f[0] == "s" && f[1] == "mip" {
			value, err := strconv.ParseFloat(f[5], 64)
			if err != nil {
				tb.Fatal(err)
			}
			if f[4] != "o" {
				return 0, false
			}
			return int64(value + 0.5), true
		}
	}
	tb.Fatalf("no answer:\n%s\n%s", log, program)
	return 0, false
}

// find skips the test, and says so, if there is no glpsol.
func find(tb testing.TB) {
	tb.Helper()
	if _, err := exec.LookPath("glpsol"); err != nil {
		tb.Skip("SKIPPED, NOTHING WAS COMPARED: no glpsol here; apt-get install glpk-utils")
	}
}

// TestSameOptimum compares the cost, and at that cost what is bought and the packs.
//
// Source of the other answers: GLPK, GNU Linear Programming Kit, A. Makhorin.
func TestSameOptimum(t *testing.T) {
	find(t)
	dir := t.TempDir()
	for k, kind := range kinds {
		solved, short := 0, 0
		for n := range kind.count {
			p := random(k, n)
			list, err := p.shop.List(p.needs)
			want, ok := glpsol(t, dir, p.program(-1))
			if !ok {
				if err != nil || list.Short() == nil {
					t.Fatalf("%s %d: got %v, %v; there is no way\n%s", kind.name, n, list, err, p.program(-1))
				}
				short++
				continue
			}
			if err != nil || !list.Total.Equal(decimal.New(want, -2)) || !list.Bound.Equal(list.Total) {
				t.Fatalf("%s %d: got %v, %v, want %d\n%s", kind.name, n, list, err, want, p.program(-1))
			}
			var bought int64
			for _, b := range list.Purchases[0].Buys {
				size := int64(b.Offer.Pack.Pieces)
				if l := b.Offer.Pack.Length; l > 0 {
					size = max(1, size) * inches(l-p.shop.Joins[b.Offer.Item].Overlap)
				}
				bought += int64(b.Packs) * (100*size + 1)
			}
			if want, ok := glpsol(t, dir, p.program(want)); !ok || bought != want {
				t.Fatalf("%s %d: bought %d, want %d\n%s", kind.name, n, bought, want, p.program(-1))
			}
			solved++
		}
		t.Logf("%s: the same optimum on %d problems; %d that cannot be covered", kind.name, solved, short)
	}
}

// Benchmark solves the same problems with both. The time of glpsol is that of the
// whole command, reading and writing its files included; "glpsol, nothing" is
// that of a command with hardly anything to solve, to be taken off for the solving alone.
func Benchmark(b *testing.B) {
	find(b)
	const problems = 40
	for k, kind := range kinds {
		b.Run(kind.name+"/fircone", func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				p := random(k, i%problems)
				p.shop.List(p.needs)
			}
		})
		b.Run(kind.name+"/glpsol", func(b *testing.B) {
			dir := b.TempDir()
			for i := 0; b.Loop(); i++ {
				glpsol(b, dir, random(k, i%problems).program(-1))
			}
		})
	}
	b.Run("nothing/glpsol", func(b *testing.B) {
		dir := b.TempDir()
		for b.Loop() {
			glpsol(b, dir, "Minimize\n cost: x\nSubject To\n x >= 1\nGeneral\n x\nEnd\n")
		}
	})
}
