package mantel_test

import (
	"math"
	"math/big"
	"slices"
	"testing"
	"time"

	"example.com/fircone/internal/catenary/slow"
	"example.com/fircone/mantel"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// What a swag does to its hooks, nanogram by nanogram, against chains in 256 bits: each
// weight and pull is within a nanogram of the exact one up to 1 lb, and within a part in
// 1e12 beyond.
func TestLoadsAreExact(t *testing.T) {
	if testing.Short() {
		t.Skip("math/big is slow under an emulator, and the golden numbers hold the bits")
	}
	n, light := 0, 0
	for _, across := range []units.Length{2 * in, 20 * in, 64 * in, 50 * ft} {
		for _, rise := range []units.Length{0, 1, in / 50, 3 * in, -14 * in, 100 * in, -50 * ft} {
			for _, part := range []float64{0.01, 0.05, 0.2, 0.7, 1, 3, 40} {
				for _, swags := range []int{1, 3} {
					sag := units.Length(math.Ceil(part * float64(across)))
					if swags > 1 && (rise != 0 || across < ft) || sag > 50*ft {
						continue
					}
					run := swag(across, rise, sag)
					if swags > 1 {
						hung, err := mantel.Mantel{Length: across}.Hang(mantel.Hanging{Swags: swags, Sag: sag})
						if err != nil {
							t.Fatal(err)
						}
						run = hung
					}
					exact := slow.OfSag(float64(run.Hooks[swags].Along)/float64(swags), float64(rise), float64(sag))
					l, r := exact.Ends()
					for _, perFoot := range []units.Mass{units.Gram, oz / 2, 7 * oz, 20 * lb} {
						got, err := run.Loads(perFoot, mantel.Hook{Rating: lb}, units.InFeetInches)
						if err != nil {
							t.Fatal(err)
						}
						check := func(what string, got units.Mass, length *big.Float) {
							t.Helper()
							want := slow.Quo(slow.Mul(length, slow.Big(float64(perFoot))), slow.Big(float64(ft)))
							off, _ := slow.Sub(slow.Big(float64(got)), want).Float64()
							bound := 1.0
							if n++; got < lb && -got < lb {
								light++
							} else {
								bound = max(1, 1e-12*math.Abs(float64(got)))
							}
							if math.Abs(off) > bound {
								t.Errorf("%v across, rising %v, %v deep, %v a foot: %s %d ng is off by %.3g", across, rise, sag, perFoot, what, got, off)
							}
						}
						check("left", got.Hooks[0].Down, l)
						check("right", got.Hooks[swags].Down, r)
						check("level", got.Hooks[0].Right, exact.Pull())
						check("level", got.Hooks[swags].Left, exact.Pull())
						if swags > 1 {
							check("middle", got.Hooks[1].Down, exact.Length())
						}
						check("weight", got.Weight, slow.Mul(exact.Length(), slow.Big(float64(swags))))
					}
				}
			}
		}
	}
	if n < 2000 || light < 1000 {
		t.Errorf("only %d figures, %d of them under 1 lb", n, light)
	}
}

// uneven draws a run of two swags or more at different heights.
func uneven() *rapid.Generator[mantel.Run] {
	return rapid.Custom(func(t *rapid.T) mantel.Run {
		r := mantel.Run{
			Hooks: []mantel.Point{{Along: lengths(-9*ft, 9*ft).Draw(t, "along"), Below: lengths(-9*ft, 9*ft).Draw(t, "below")}},
			Sag:   lengths(0, 6*ft).Draw(t, "sag"), Left: lengths(0, 3*ft).Draw(t, "left"), Right: lengths(0, 3*ft).Draw(t, "right"),
		}
		for range rapid.IntRange(1, 5).Draw(t, "swags") {
			last := r.Hooks[len(r.Hooks)-1]
			r.Hooks = append(r.Hooks, mantel.Point{Along: last.Along + lengths(2*in, 9*ft).Draw(t, "span"), Below: last.Below + lengths(-6*ft, 6*ft).Draw(t, "rise")})
		}
		return r
	})
}

// The sag that is found uses up the garland, and none beside it does so more nearly.
func TestFindSagOfARun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := uneven().Draw(t, "run")
		least := r
		least.Sag = 0
		straight, err := least.Garland()
		if err != nil {
			t.Fatal(err)
		}
		garland := straight + lengths(0, 9*ft).Draw(t, "slack")
		found, err := r.FindSag(garland)
		if err != nil {
			t.Fatal(err)
		}
		off := func(sag units.Length) units.Length {
			other := found
			other.Sag = sag
			length, err := other.Garland()
			if err != nil {
				t.Fatal(err)
			}
			return max(length-garland, garland-length)
		}
		// A nanometer of garland is a rounding in each swag.
		slack := units.Length(len(r.Hooks) - 1)
		here := off(found.Sag)
		if found.Sag > 0 && off(found.Sag-1) < here-slack || off(found.Sag+1) < here-slack {
			t.Fatalf("%v of garland: sag %v is off by %v, a nanometer less by %v, more by %v", garland, found.Sag, here, off(max(0, found.Sag-1)), off(found.Sag+1))
		}
		if !slices.Equal(found.Hooks, r.Hooks) || found.Left != r.Left || found.Right != r.Right {
			t.Fatalf("%v became %v", r, found)
		}
	})
	// By hand, two lines of 3, 4 and 5 ft; the garland that just reaches, and too little. Then
	// the most, and too much.
	r := mantel.Run{Hooks: []mantel.Point{{}, {Along: 4 * ft, Below: 3 * ft}, {Along: 8 * ft}}, Left: ft}
	if got, err := r.FindSag(11 * ft); err != nil || got.Sag != 0 {
		t.Error(got, err)
	}
	_, err := r.FindSag(11*ft - 1)
	checkError(t, "too short", err, &units.Error{Func: "Run.FindSag", Field: "garland", Want: "at least 11 ft to reach from hook to hook", Err: units.ErrFit})
	r.Sag = 50 * ft
	most, err := r.Garland()
	if err != nil {
		t.Fatal(err)
	}
	if got, err := r.FindSag(most); err != nil || got.Sag > 50*ft || got.Sag < 50*ft-2 {
		t.Error(got, err)
	}
	if got, err := r.FindSag(most + 1); err == nil {
		t.Error(got, err)
	}
	// A nanometer more sag takes 200 nm more of a hundred deep swags: one nm of garland more
	// does not change it, 199 do.
	zigzag := mantel.Run{Sag: 20 * ft}
	for i := range 101 {
		zigzag.Hooks = append(zigzag.Hooks, mantel.Point{Along: units.Length(i) * ft, Below: units.Length(i%2) * in})
	}
	length, err := zigzag.Garland()
	if err != nil {
		t.Fatal(err)
	}
	for more, want := range map[units.Length]units.Length{0: 0, 1: 0, 80: 0, 100: 1, 120: 1, 199: 1, 200: 1} { // a half goes up
		if got, err := zigzag.FindSag(length + more); err != nil || got.Sag != 20*ft+want {
			t.Errorf("%d nm more: %v, %v", more, got.Sag-20*ft, err)
		}
	}
	// A line that is longer than it rounds to.
	if got, err := swag(in, 1, ft).FindSag(in); err != nil || got.Sag != 0 {
		t.Error(got, err)
	}
}

// The path goes through every hook, and is where Below has it; between two hooks both are
// the exact chain.
func TestBelowOfARun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := uneven().Draw(t, "run")
		r.Sag++ // the reference has no straight line
		pieces := rapid.IntRange(1, 9).Draw(t, "pieces")
		path, err := r.AppendPath(nil, pieces)
		if err != nil {
			t.Fatal(err)
		}
		first, last := r.Hooks[0], r.Hooks[len(r.Hooks)-1]
		if r.Left > 0 {
			if want := (mantel.Point{Along: first.Along, Below: first.Below + r.Left}); path[0] != want {
				t.Fatalf("%v, want %v", path[0], want)
			}
			path = path[1:]
		}
		if end := len(path) - 1; r.Right > 0 {
			if want := (mantel.Point{Along: last.Along, Below: last.Below + r.Right}); path[end] != want {
				t.Fatalf("%v, want %v", path[end], want)
			}
			path = path[:end]
		}
		if len(path) != (len(r.Hooks)-1)*pieces+1 || path[len(path)-1] != last {
			t.Fatalf("%d points, the last at %v", len(path), path[len(path)-1])
		}
		for i, p := range path {
			// Along is rounded, by less than a nanometer either way, and a steep garland falls more than that.
			low, err := r.Below(p.Along)
			high := low
			for _, along := range []units.Length{p.Along - 1, p.Along + 1} {
				if below, err := r.Below(along); err == nil {
					low, high = min(low, below), max(high, below)
				}
			}
			if err != nil || p.Below < low-1 || p.Below > high+1 {
				t.Fatalf("%v, below %v to %v, %v", p, low, high, err)
			}
			if i%pieces == 0 && p != r.Hooks[i/pieces] {
				t.Fatalf("%v is not the hook at %v", p, r.Hooks[i/pieces])
			}
			if i > 0 && i%pieces > 0 { // the pieces of a swag are as wide as each other, with both ends rounded
				left, right := r.Hooks[i/pieces].Along, r.Hooks[i/pieces+1].Along
				if off := (p.Along-path[i-1].Along)*units.Length(pieces) - (right - left); max(off, -off) >= 2*units.Length(pieces) {
					t.Fatalf("%v after %v in %d pieces from %v to %v", p.Along, path[i-1].Along, pieces, left, right)
				}
			}
		}
		i := rapid.IntRange(0, len(path)-2).Draw(t, "point")
		left, right := r.Hooks[i/pieces], r.Hooks[i/pieces+1]
		exact := slow.OfSag(float64(right.Along-left.Along), float64(left.Below-right.Below), float64(r.Sag))
		// In an even run a point is at an exact part of the span, in others at a whole nanometer.
		off := math.Inf(1)
		for _, at := range []float64{float64(path[i].Along - left.Along), float64(right.Along-left.Along) * float64(i%pieces) / float64(pieces)} {
			want := slow.Add(exact.Below(at), slow.Big(float64(left.Below)))
			by, _ := slow.Sub(slow.Big(float64(path[i].Below)), want).Float64()
			off = min(off, math.Abs(by))
		}
		if off > 0.6 {
			t.Fatalf("%v is off by %v nm", path[i], off)
		}
	})
}

// A run that is moved along the wall and down it hangs the same, to the nanometer, though no span is a whole number of them.
func TestMovedRun(t *testing.T) {
	here, err := mantel.Mantel{Length: 64 * in}.Hang(mantel.Hanging{Swags: 61, Sag: in / 2, Left: ft})
	if err != nil {
		t.Fatal(err)
	}
	moved, by := here, mantel.Point{Along: -20 * ft, Below: 5 * ft}
	moved.Hooks = nil
	for _, p := range here.Hooks {
		moved.Hooks = append(moved.Hooks, mantel.Point{Along: p.Along + by.Along, Below: p.Below + by.Below})
	}
	a, err1 := here.Garland()
	b, err2 := moved.Garland()
	if err1 != nil || err2 != nil || a != b {
		t.Errorf("%v nm of garland, %v; moved %v nm, %v", int64(a), err1, int64(b), err2)
	}
	for at := units.Length(0); at <= 64*in; at += 64 * in / 1000 {
		a, err1 := here.Below(at)
		b, err2 := moved.Below(at + by.Along)
		if err1 != nil || err2 != nil || a+by.Below != b {
			t.Errorf("at %v: %v, %v; moved %v, %v", at, a, err1, b, err2)
		}
	}
}

// By hand: two lines of 5 ft that lie on something sloped, a foot and 2 ft falling.
func TestLyingRun(t *testing.T) {
	r := mantel.Run{Hooks: []mantel.Point{{}, {Along: 4 * ft, Below: 3 * ft}, {Along: 8 * ft}}, Left: ft, Right: 2 * ft, Lying: true}
	got, err := r.Loads(oz, mantel.Hook{Rating: lb}, units.InFeetInches)
	if err != nil {
		t.Fatal(err)
	}
	equalLoads(t, got, mantel.Loads{Weight: 13 * oz, Working: lb / 5, Hooks: []mantel.HookLoad{
		{Down: oz, Total: oz}, {At: r.Hooks[1]}, {At: r.Hooks[2], Down: 2 * oz, Total: 2 * oz},
	}})
	fastened := r // and then it hangs on the hooks, half of each line on either
	fastened.Lying = false
	if got, err = fastened.Loads(lb, mantel.Hook{Rating: 100 * lb}, units.InFeetInches); err != nil {
		t.Fatal(err)
	}
	equalLoads(t, got, mantel.Loads{Weight: 13 * lb, Working: 20 * lb, Hooks: []mantel.HookLoad{
		{Down: 7 * lb / 2, Total: 7 * lb / 2}, {At: r.Hooks[1], Down: 5 * lb, Total: 5 * lb}, {At: r.Hooks[2], Down: 9 * lb / 2, Total: 9 * lb / 2},
	}})
	path, err := r.AppendPath(nil, 9)
	if err != nil || !slices.Equal(path, []mantel.Point{{0, ft}, {}, {4 * ft, 3 * ft}, {8 * ft, 0}, {8 * ft, 2 * ft}}) {
		t.Error(path, err)
	}
	if below, err := r.Below(2 * ft); err != nil || below != 18*in {
		t.Error(below, err)
	}
	needs, err := r.Needs(0, units.InFeetInches)
	if want := "10 ft along the shelf, 1 ft falling at the left, 2 ft at the right"; err != nil || needs[0].Basis != want || needs[0].Quantity.Length != 13*ft {
		t.Error(needs, err)
	}
}

// Of equal totals, and of hooks that are lifted.
func TestLiftedHook(t *testing.T) {
	got, err := swag(20*in, 100*in, in).Loads(lb, mantel.Hook{Rating: 100 * lb}, units.InFeetInches)
	if err != nil || got.Hooks[0].Down >= 0 || got.Hooks[1].Down <= got.Weight || got.Hooks[0].Left != 0 || got.Hooks[0].Right != got.Hooks[1].Left {
		t.Error(got, err)
	}
	if text := got.Hooks[0].String(); text[len(text)-12:] != "to the right" {
		t.Error(text)
	}
}

// BenchmarkSloped times a swag between hooks at two heights beside the level one of the same
// span and sag, in one run: its garland from the sag, and its sag from the garland. Both take
// turns in short blocks, and the quickest block of each counts.
func BenchmarkSloped(b *testing.B) {
	for name, sag := range map[string]units.Length{"flat": in, "usual": 9 * in, "deep": 9 * ft} {
		level, sloped := swag(5*ft, 0, sag), swag(5*ft, 2*ft, sag)
		long, _ := level.Garland()
		longer, _ := sloped.Garland()
		for what, pair := range map[string][2]func(){
			"garland": {func() { sink, _ = level.Garland() }, func() { sink, _ = sloped.Garland() }},
			"sag":     {func() { _, _ = level.FindSag(long) }, func() { _, _ = sloped.FindSag(longer) }},
		} {
			b.Run(what+"/"+name, func(b *testing.B) {
				least := [2]float64{math.Inf(1), math.Inf(1)}
				for b.Loop() {
					for i, call := range pair {
						start := time.Now()
						for range 100 {
							call()
						}
						least[i] = min(least[i], float64(time.Since(start).Nanoseconds())/100)
					}
				}
				b.ReportMetric(0, "ns/op")
				b.ReportMetric(least[0], "level-ns")
				b.ReportMetric(least[1]/least[0], "sloped/level")
			})
		}
	}
}

// What is printed of a run, by how it goes.
func TestRunText(t *testing.T) {
	two := []mantel.Point{{Along: -ft}, {Along: 8 * ft, Below: ft}}
	for want, r := range map[string]mantel.Run{
		"no hooks": {},
		"1 swag 6 in deep over 9 ft, falling 0 ft at the left and 1 ft at the right":    {Hooks: two, Sag: 6 * in, Right: ft},
		"close along 2 hooks over 9 ft, falling 0 ft at the left and 0 ft at the right": {Hooks: two},
		"along the shelf over 9 ft, falling 1 ft at the left and 0 ft at the right":     {Hooks: two, Lying: true, Left: ft},
	} {
		if got := r.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
