package placement_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

func wind(t testing.TB, l placement.Layout, w placement.Winding) []placement.Position {
	t.Helper()
	seq, err := l.Wind(w)
	if err != nil {
		t.Fatal(err)
	}
	return slices.Collect(seq)
}

// length is the line through points, straight from each to the next.
func length(points []placement.Position) (sum float64) {
	for i := 1; i < len(points); i++ {
		p, q := points[i-1], points[i]
		sum += apart([3]float64{float64(p.X), float64(p.Y), float64(p.Z)}, [3]float64{float64(q.X), float64(q.Y), float64(q.Z)})
	}
	return sum
}

// A winding is as long as the formula for the spiral has it, which package sizing
// tests against published examples, and its points are a step apart.
func TestWindLength(t *testing.T) {
	for _, tree := range []sizing.Tree{
		{Height: 9 * units.Foot, Handle: 9 * units.Inch, BareTip: 9 * units.Inch},
		{Height: 7 * units.Foot},
		{Height: 6 * units.Foot, Base: 20 * units.Inch, BareTip: units.Foot},
	} {
		for _, spacing := range []units.Length{4 * units.Inch, 10 * units.Inch, 3 * units.Foot, 100 * units.Foot} {
			want, err := tree.SpiralLength(spacing)
			if err != nil {
				t.Fatal(err)
			}
			step := units.Inch / 2
			got := wind(t, placement.Layout{Tree: tree}, placement.Winding{Spacing: spacing, Step: step})
			if n := int((want+step-1)/step) + 1; len(got) != n {
				t.Errorf("%v, %v: %d points, want %d", tree.Height, spacing, len(got), n)
			}
			// Chords are shorter than arcs, by their square over 24 radii squared.
			if l := length(got); l > float64(want)+1000 || l < float64(want)*0.997 {
				t.Errorf("%v, %v: %v, want %v", tree.Height, spacing, units.Length(l), want)
			}
			first, last := got[0], got[len(got)-1]
			if first.Z != tree.Height-tree.BareTip || last.Z != tree.Handle {
				t.Errorf("from %v to %v", first.Z, last.Z)
			}
			for i := 1; i < len(got)-1; i++ {
				if d := length(got[i-1 : i+1]); d > float64(step)+3 || d < 0.9*float64(step) && float64(tree.Height-got[i].Z) > 2e8 {
					t.Fatalf("point %d of %v is %v from the last", i, spacing, d)
				}
			}
		}
	}
}

// Where part is dressed the winding goes to and fro on it, one spacing lower each
// time, and is all but as long as its share of the whole spiral.
func TestWindPart(t *testing.T) {
	l := placement.Layout{Tree: sizing.Tree{Height: 9 * units.Foot, BareTip: units.Foot, Exposure: sizing.InCorner}}
	round := l.Tree
	round.Exposure = sizing.AllRound
	whole, err := round.SpiralLength(6 * units.Inch)
	if err != nil {
		t.Fatal(err)
	}
	slant, err := l.Tree.Slant()
	if err != nil {
		t.Fatal(err)
	}
	points := wind(t, l, placement.Winding{Spacing: 6 * units.Inch, Step: units.Inch / 4})
	if got, want := length(points), float64(whole)/2; got < want || got > want*1.03 {
		t.Errorf("%v, half of the whole is %v", units.Length(got), units.Length(want))
	}
	turns, side := 0, 0
	for _, p := range points {
		if p.Y > 1 {
			t.Fatalf("%v is at the back", p)
		}
		now := 1
		if p.X < 0 {
			now = -1
		}
		if now != side {
			turns++
			side = now
		}
	}
	if want := int(slant / (6 * units.Inch)); turns < want || turns > want+2 {
		t.Errorf("crosses %d times, %d spacings", turns, want)
	}
	if points[0].X == 0 || math.Abs(float64(points[0].Y)) > 2 {
		t.Errorf("begins at %v, not at a side", points[0])
	}
}

// A draped winding hangs below the line between tips, as deep as its sag in the
// middle of each span, and takes as much more as sizing.Drape says.
func TestWindDrape(t *testing.T) {
	l := placement.Layout{Tree: sizing.Tree{Height: 9 * units.Foot}}
	tree, err := l.Tree.Measured()
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range []sizing.Drape{{Span: 2 * units.Foot, Sag: units.Inch}, {Span: 18 * units.Inch, Sag: 5 * units.Inch}, {Span: units.Foot, Sag: units.Foot}} {
		// It ends as much above the floor as it sags.
		raised := l.Tree
		raised.BareBase = d.Sag
		straight, err := raised.SpiralLength(units.Foot)
		if err != nil {
			t.Fatal(err)
		}
		stretch, err := d.Stretch()
		if err != nil {
			t.Fatal(err)
		}
		step := units.Inch / 8
		points := wind(t, l, placement.Winding{Spacing: units.Foot, Step: step, Drape: d})
		if got, want := float64(len(points)-2)*float64(step), float64(straight)*stretch; math.Abs(want-got) > 1.5*float64(d.Span)*stretch {
			t.Errorf("%+v: %v of garland, want %v", d, units.Length(got), units.Length(want))
		}
		// How far each point is below the slope at its radius.
		deepest, spans, above := 0.0, 0, true
		for _, p := range points {
			r := math.Hypot(float64(p.X), float64(p.Y))
			line := float64(l.Tree.Height) * (1 - 2*r/float64(tree.Base))
			drop := line - float64(p.Z)
			if p.Z < -10 {
				t.Fatalf("%+v: %v is below the floor", d, p)
			}
			if drop < -10 || drop > float64(d.Sag)+10 {
				t.Fatalf("%+v: %v below the line", d, units.Length(drop))
			}
			deepest = max(deepest, drop)
			if low := drop > float64(d.Sag)*0.98; low && above {
				spans++
				above = false
			} else if drop < float64(d.Sag)/2 {
				above = true
			}
		}
		if deepest < 0.999*float64(d.Sag) {
			t.Errorf("%+v: hangs %v at the most", d, units.Length(deepest))
		}
		if want := int(straight / d.Span); spans < want || spans > want+1 {
			t.Errorf("%+v: %d spans, want %d", d, spans, want)
		}
	}
}

func TestWindErrors(t *testing.T) {
	good := placement.Winding{Spacing: units.Foot, Step: units.Inch, Drape: sizing.Drape{Span: units.Foot, Sag: units.Inch}}
	for _, tc := range []struct {
		reason string
		change func(*placement.Layout, *placement.Winding)
	}{
		{"a spacing under a quarter inch", func(_ *placement.Layout, w *placement.Winding) { w.Spacing = units.Inch/4 - 1 }},
		{"a spacing over 100 ft", func(_ *placement.Layout, w *placement.Winding) { w.Spacing = 100*units.Foot + 1 }},
		{"less than a foot", func(_ *placement.Layout, w *placement.Winding) { w.Length = units.Foot - 1 }},
		{"more than 25,400 m", func(_ *placement.Layout, w *placement.Winding) { w.Length = 25_400*units.Meter + 1 }},
		{"a step under a tenth of an inch", func(_ *placement.Layout, w *placement.Winding) { w.Step = units.Inch/10 - 1 }},
		{"a step over 100 ft", func(_ *placement.Layout, w *placement.Winding) { w.Step = 100*units.Foot + 1 }},
		{"facing", func(l *placement.Layout, _ *placement.Winding) { l.Facing = 400_000 }},
		{"a sag deeper than its span", func(_ *placement.Layout, w *placement.Winding) { w.Drape.Sag = 2 * units.Foot }},
		{"no tree", func(l *placement.Layout, _ *placement.Winding) { l.Tree.Height = 0 }},
	} {
		l, w := hall, good
		tc.change(&l, &w)
		seq, err := l.Wind(w)
		if seq != nil || err == nil || !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v", tc.reason, err)
		}
	}
	for _, w := range []placement.Winding{{Spacing: units.Inch / 4, Step: 100 * units.Foot}, {Spacing: 100 * units.Foot, Step: units.Inch / 10}} {
		if got := wind(t, hall, w); len(got) < 2 {
			t.Errorf("%+v: %d points", w, len(got))
		}
	}
	seq, err := hall.Wind(good)
	if err != nil {
		t.Fatal(err)
	}
	for range seq {
		break
	}
}

// What was bought is enough: 81 ft of a draped garland on a 9 ft tree, from the bare tip to
// the lowest branches, where its spacing alone would take more.
func TestWindLengthBought(t *testing.T) {
	const bought = 81 * units.Foot
	for _, d := range []sizing.Drape{{}, {Span: 14 * units.Inch, Sag: 2 * units.Inch}, {Span: units.Foot, Sag: 6 * units.Inch}} {
		w := placement.Winding{Spacing: 10 * units.Inch, Step: units.Inch / 4, Drape: d}
		free := wind(t, hall, w)
		loose := length(free)
		w.Length = bought
		points := wind(t, hall, w)
		if free[1].X >= 0 || points[1].X >= 0 { // from the back with the azimuth, to the left first
			t.Errorf("%+v: from %v to %v, and to %v", d, points[0], free[1], points[1])
		}
		tight := length(points)
		if loose < float64(bought)*1.02 || tight > float64(bought) || tight < float64(bought)*0.97 {
			t.Errorf("%+v: %v, and %v of %v", d, units.Length(loose), units.Length(tight), bought)
		}
		if last := points[len(points)-1]; last.Z < hall.Tree.Handle-10 || last.Z > hall.Tree.Handle+d.Sag+10 {
			t.Errorf("%+v: ends %v up", d, last.Z)
		}
		for _, p := range points {
			if p.Z < hall.Tree.Handle-units.Inch/100 {
				t.Fatalf("%+v: %v is below the branches", d, p)
			}
		}
	}
	// More than it takes changes nothing.
	w := placement.Winding{Spacing: units.Foot, Step: units.Inch}
	want := wind(t, hall, w)
	w.Length = 200 * units.Foot
	if !slices.Equal(wind(t, hall, w), want) {
		t.Error("200 ft are wound another way")
	}
}

// On any tree no draped garland is below the lowest branches or longer than what was bought.
func TestWindWithinBounds(t *testing.T) {
	wound, tried := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		tried++
		inches := func(name string, least, most int) units.Length {
			return units.Length(rapid.IntRange(least, most).Draw(t, name)) * units.Inch
		}
		height := inches("height", 36, 360)
		l := placement.Layout{Tree: sizing.Tree{
			Height: height, Base: height * units.Length(rapid.IntRange(30, 70).Draw(t, "base, %")) / 100,
			BareTip: height / 12, Handle: height / 12, BareBase: height * units.Length(rapid.IntRange(0, 5).Draw(t, "bare base, %")) / 100,
			Exposure: rapid.SampledFrom([]sizing.Exposure{sizing.AllRound, sizing.AgainstWall, sizing.InCorner}).Draw(t, "exposure"),
		}}
		span := inches("span", 6, 24)
		w := placement.Winding{
			Spacing: inches("spacing", 8, 24), Step: units.Inch,
			Drape:  sizing.Drape{Span: span, Sag: span * units.Length(rapid.IntRange(0, 50).Draw(t, "sag, %")) / 100},
			Length: inches("bought", 240, 12*120),
		}
		points, err := l.Wind(w)
		if err != nil {
			return // too little or too much to wind
		}
		wound++
		count := 0
		for p := range points {
			count++
			if p.Z < l.Tree.Handle+l.Tree.BareBase-units.Inch/100 {
				t.Fatalf("%+v of %+v: %v is below the branches", w, l, p)
			}
		}
		if used := units.Length(count-2) * w.Step; used > w.Length {
			t.Fatalf("%+v of %+v: %v of garland", w, l, used)
		}
	})
	if wound < tried/2 {
		t.Errorf("only %d of %d were wound", wound, tried)
	}
}
