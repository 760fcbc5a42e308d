package supply

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"testing"

	"example.com/fircone/internal/intprog"
	"time"
)

// order: 60 offers, 12 lines, atoms = 4 colors x 4 types
func order(r *rand.Rand) (*intprog.Problem, *Problem) {
	const offers, lines, colors, types = 60, 12, 4, 4
	p := &intprog.Problem{}
	q := &Problem{Have: make([]int64, colors*types)}
	add := func(cost, hi int64, first bool) int {
		p.Cost = append(p.Cost, cost)
		p.Lo = append(p.Lo, 0)
		p.Hi = append(p.Hi, hi)
		p.First = append(p.First, first)
		return len(p.Cost) - 1
	}
	sup := make([]intprog.Row, colors*types)
	for o := range offers {
		var content [colors * types]int64
		n := int64(0)
		switch r.IntN(3) {
		case 0: // one
			k := []int64{1, 4, 6, 8, 12, 24}[r.IntN(6)]
			content[r.IntN(colors*types)] = k
			n = k
		case 1: // one type, several colors
			t := r.IntN(types)
			k := []int64{2, 3, 4, 6, 8}[r.IntN(5)]
			for c := range colors {
				if r.IntN(3) > 0 {
					content[c*types+t] = k
					n += k
				}
			}
		case 2:
			for range 2 + r.IntN(3) {
				k := int64(1 + r.IntN(8))
				a := r.IntN(colors * types)
				content[a] += k
				n += k
			}
		}
		if n == 0 {
			n = 1
			content[0] = 1
		}
		hi := int64(200)
		if r.IntN(2) == 0 {
			hi = int64(1 + r.IntN(8))
		}
				j := add(n*int64(60+r.IntN(120))+int64(r.IntN(100)), hi, true)
		q.Packs = append(q.Packs, Pack{Cost: p.Cost[j], Limit: hi, Bulk: n})
		for a, k := range content {
			if k > 0 {
				q.Packs[o].Holds = append(q.Packs[o].Holds, Hold{a, k})
				sup[a].Col = append(sup[a].Col, j)
				sup[a].Coef = append(sup[a].Coef, k)
			}
		}
	}
	for l := range lines {
		c := r.IntN(colors)
		var match []int
		switch r.IntN(3) {
		case 0:
			match = []int{c*types + r.IntN(types)}
		default:
			for t := range types {
				match = append(match, c*types+t)
			}
		}
		_ = l
		D := int64(5 + r.IntN(40))
		demand := intprog.Row{Least: D}
		assort := len(match) > 1 && r.IntN(2) == 0
		var ys intprog.Row
		dm := Demand{N: D}
		for _, a := range match {
			dm.Kinds = append(dm.Kinds, []int{a})
		}
		if assort {
			dm.Take, dm.Least, dm.Most = 3, max(1, D/3-2), D/3+2
		}
		q.Demands = append(q.Demands, dm)
		for _, a := range match {
			f := add(0, D, false)
			demand.Col = append(demand.Col, f)
			demand.Coef = append(demand.Coef, 1)
			sup[a].Col = append(sup[a].Col, f)
			sup[a].Coef = append(sup[a].Coef, -1)
			if assort {
				y := add(0, 1, true)
				each := D / 3
				p.Rows = append(p.Rows, intprog.Row{Col: []int{f, y}, Coef: []int64{1, -max(1, each-2)}}, intprog.Row{Col: []int{f, y}, Coef: []int64{-1, each + 2}})
				ys.Col = append(ys.Col, y)
				ys.Coef = append(ys.Coef, 1)
			}
		}
		if assort {
			ys.Least = 3
			p.Rows = append(p.Rows, ys)
			neg := intprog.Row{Least: -3}
			for _, j := range ys.Col {
				neg.Col, neg.Coef = append(neg.Col, j), append(neg.Coef, -1)
			}
			p.Rows = append(p.Rows, neg)
		}
		p.Rows = append(p.Rows, demand)
	}
	for _, s := range sup {
		if len(s.Col) > 0 {
			p.Rows = append(p.Rows, s)
		}
	}
	return p, q
}

func lp(p *intprog.Problem) string {
	var b strings.Builder
	b.WriteString("Minimize\n cost:")
	for j, c := range p.Cost {
		if c != 0 {
			fmt.Fprintf(&b, " %+d x%d", c, j)
		}
	}
	b.WriteString("\nSubject To\n")
	for _, r := range p.Rows {
		for k, j := range r.Col {
			fmt.Fprintf(&b, " %+d x%d", r.Coef[k], j)
		}
		fmt.Fprintf(&b, " >= %d\n", r.Least)
	}
	b.WriteString("Bounds\n")
	for j := range p.Cost {
		fmt.Fprintf(&b, " %d <= x%d <= %d\n", p.Lo[j], j, p.Hi[j])
	}
	b.WriteString("General\n")
	for j := range p.Cost {
		fmt.Fprintf(&b, " x%d\n", j)
	}
	b.WriteString("End\n")
	return b.String()
}

func TestScratch(t *testing.T) {
	N := 60
	if os.Getenv("GLP") != "" {
		N = 25
	}
	proved, none := 0, 0
	var ours, theirs time.Duration
	for n := range N {
		p, q := order(rand.New(rand.NewPCG(7, uint64(n))))
		effort := int64(250_000_000)
		t0 := time.Now()
		got := Solve(q, nil, &effort)
		d := time.Since(t0)
		ours += d
		if got.None {
			none++
		}
		if got.None || got.Cost == got.Bound {
			proved++
		}
		line := fmt.Sprintf("%d rows %d cols %d: %v cost %d bound %d effort %dk %s", n, len(p.Rows), len(p.Cost), d, got.Cost, got.Bound, (250_000_000-effort)/1000, Stat)
		if os.Getenv("GLP") != "" {
			os.WriteFile("/tmp/in.lp", []byte(lp(p)), 0o600)
			t0 = time.Now()
			out, _ := exec.Command("glpsol", "--lp", "/tmp/in.lp", "--tmlim", "20", "--write", "/tmp/out.sol").CombinedOutput()
			e := time.Since(t0)
			theirs += e
			_ = out
			data, _ := os.ReadFile("/tmp/out.sol")
			for l := range strings.Lines(string(data)) {
				if strings.HasPrefix(l, "s mip") {
					line += fmt.Sprintf("  | %v %s", e, strings.TrimSpace(l))
				}
			}
		}
		fmt.Println(line)
	}
	fmt.Println("proved", proved, "none", none, "of", N, ours, theirs)
}
