package sizing

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// anyTree draws a tree from the whole allowed range, its corners included often.
func anyTree(r *rand.Rand) Tree {
	for {
		c := anyCone(r)
		t := Tree{Height: c.Height + c.BareBase, Base: c.BaseDiameter, BareTip: c.BareTip, Handle: c.BareBase}
		if minHeight <= t.Height && t.Height <= maxHeight && 2*t.Handle <= t.Height {
			t.Exposure = [...]Exposure{AllRound, AgainstWall, InCorner, HalfTree, minArc, maxArc - 1, minArc + Exposure(r.IntN(359_000))}[r.IntN(7)]
			return t
		}
	}
}

// TestTreeSpacingAccuracy holds Spacing to its doc against the textbook formula in 400 binary digits: the
// garland suffices, the spacing comes to its length within 1 nm, and is less than 1.01 nm over the exact one
// where the wraps come to one whole round.
func TestTreeSpacingAccuracy(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	checked := 0
	for range trials(1000) {
		tree, p := anyTree(r), anySpacing(r)
		s, err := tree.surface("", "/")
		if err != nil {
			t.Fatal(err)
		}
		length := s.cone.spiralLength(p, s.turn())
		got, err := tree.Spacing(length)
		if err != nil {
			t.Fatalf("%+v, %v of garland: %v", tree, length, err)
		}
		if back := s.cone.spiralLength(got, s.turn()); back > length && got < maxSpacing {
			t.Errorf("%+v at %v: takes %v, not %v", tree, got, back, length)
		}
		turn := bigQuo(bigOf(float64(s.arc)), bigOf(360_000))
		l := bigWound(s.cone, bigLength(got), turn)
		if off, _ := bigSub(l, bigLength(length)).Float64(); got < maxSpacing && off > 1 || got > minSpacing && off < -1-float64(length)/float64(got) {
			t.Errorf("%+v at %v: a garland of %v would be %.3f nm off", tree, got, length, off)
		}
		if float64(p) > s.cone.slant()*s.turn() || got == maxSpacing {
			continue
		}
		checked++
		// One step of Newton's rule from the result, in 400 digits.
		h := bigOf(1e-9)
		slope := bigQuo(bigSub(bigWound(s.cone, bigAdd(bigLength(got), h), turn), l), h)
		if over, _ := bigQuo(bigSub(l, bigLength(length)), slope).Float64(); !(over > -0.01 && over < 1.01) {
			t.Errorf("%+v, %v of garland: spacing %d nm is %.3f nm over", tree, length, got, over)
		}
	}
	if checked < trials(1000)/3 {
		t.Errorf("only %d compared", checked)
	}
}

func TestTreeSpacingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := units.Length(rapid.Int64Range(int64(3*ft), int64(50*ft)).Draw(t, "height"))
		tree := Tree{
			Height:   height,
			Taper:    Taper(rapid.IntRange(0, 2).Draw(t, "taper")),
			Handle:   units.Length(rapid.Int64Range(0, int64(height/4)).Draw(t, "handle")),
			BareTip:  units.Length(rapid.Int64Range(0, int64(height/4)).Draw(t, "bare tip")),
			Exposure: Exposure(rapid.Int32Range(int32(30*Degree), int32(maxArc)).Draw(t, "arc")),
		}
		spacing := func(tree Tree, garland units.Length) units.Length {
			p, err := tree.Spacing(garland)
			if err != nil {
				t.Fatal(err)
			}
			return p
		}
		wound := func(tree Tree, p units.Length) units.Length {
			a, err := matched(CommonPractice(), Look{Spacing: lengths{shopping.Garland: p}}, tree)
			exact, err2 := tree.SpiralLength(p)
			if err != nil || err2 != nil || a[shopping.Garland].Length != up(exact, in) {
				t.Fatal(a, exact, err, err2)
			}
			return a[shopping.Garland].Length
		}
		p := units.Length(rapid.Int64Range(int64(2*in), int64(tree.Height/4)).Draw(t, "spacing"))
		garland := wound(tree, p)

		// The inverse of what Compare finds by shape: its garland, rounded up to an inch, comes no farther
		// apart than it was sized for, and that spacing takes the same garland.
		got := spacing(tree, garland)
		if got > p || wound(tree, got) != garland {
			t.Fatalf("%+v at %v takes %v, which comes %v apart and takes %v", tree, p, garland, got, wound(tree, got))
		}

		// All round it is the spacing on the cone.
		round := tree
		round.Exposure = AllRound
		cone, _ := tree.cone("", "/")
		longer := garland + units.Length(rapid.Int64Range(0, int64(10*ft)).Draw(t, "longer"))
		around := wound(round, p)
		if want, err := cone.Spacing(around); err != nil || spacing(round, around) != want {
			t.Fatalf("%+v: %v apart all round, %v on its cone, %v", round, spacing(round, around), want, err)
		}

		// A longer garland comes closer, and any garland does on less of the tree.
		if closer, err := tree.Spacing(longer); err == nil && closer > got {
			t.Fatalf("%+v: %v comes %v apart, %v only %v", tree, longer, closer, garland, got)
		}
		less := tree
		less.Exposure = Exposure(rapid.Int32Range(int32(minArc), int32(tree.Exposure)).Draw(t, "less"))
		if closer, err := less.Spacing(garland); err == nil && closer > got {
			t.Fatalf("%+v: %v comes %v apart, on more of it %v", less, garland, closer, got)
		}

		// Twice the size and twice the garland: twice as far apart, within the rounding.
		double := Tree{Height: 2 * tree.Height, Taper: tree.Taper, BareTip: 2 * tree.BareTip, Handle: 2 * tree.Handle, Exposure: tree.Exposure}
		measured, _ := tree.Measured()
		double.Base = 2 * measured.Base
		if twice := spacing(double, 2*garland); twice < 2*got-3 || twice > 2*got+3 {
			t.Fatalf("%+v: %v apart, at twice the size %v", tree, got, twice)
		}
	})
}

// By rule 9 ft for each foot, whose spacing Rules.Look has by its own way.
func TestTreeSpacingIsThatOfTheRulesLook(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	same := 0
	for range trials(500) {
		tree := anyTree(r)
		garland, err1 := lengthOf(CommonPractice(), shopping.Garland, tree.Height)
		look, err2 := looked(CommonPractice(), tree)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		got, err := tree.Spacing(up(garland, in)) // as the list has it
		switch {
		case look.Spacing[shopping.Garland] != 0 && got == look.Spacing[shopping.Garland] && err == nil:
			same++
		case look.Spacing[shopping.Garland] == 0 && err != nil:
			refused(t, err, units.ErrRange, "Tree.Spacing", "garland")
		case look.Spacing[shopping.Garland] == 0 && (got == minSpacing || got == maxSpacing): // within its rounding of the end
		default:
			t.Errorf("%+v: %v apart, %v; the look has %v", tree, got, err, look.Spacing[shopping.Garland])
		}
	}
	if same < trials(500)/2 {
		t.Errorf("only %d compared", same)
	}
}

func TestTreeSpacingRefuses(t *testing.T) {
	corner := Tree{Height: 7 * ft, Exposure: InCorner}
	s, err := corner.surface("", "/")
	if err != nil {
		t.Fatal(err)
	}
	least, most := s.cone.spiralLength(maxSpacing, 0.5), s.cone.spiralLength(minSpacing, 0.5)
	for _, l := range []units.Length{math.MinInt64, -1, 0, least - 1, most + 1, math.MaxInt64} {
		p, err := corner.Spacing(l)
		refused(t, err, units.ErrRange, "Tree.Spacing", "garland")
		if want := least.String() + " to " + most.String(); p != 0 || err.(*units.Error).Want != want {
			t.Errorf("%v of garland: %v, %v; want %s", l, p, err, want)
		}
	}
	for l, want := range map[units.Length]units.Length{least: maxSpacing, most: minSpacing} {
		// The longest garland is worth less than a nanometer of spacing; the shortest may be any of many.
		if p, err := corner.Spacing(l); err != nil || p > maxSpacing || l == most && (p < want || p > want+1) {
			t.Errorf("%v of garland: %v, %v; want %v", l, p, err, want)
		}
	}
	// On a narrow arc many spacings come to one length, and the longest garland, rounded, to less than the least.
	for i := range units.Length(50) {
		narrow := Tree{Height: ft + i, Taper: Pencil, BareTip: 11 * in, Exposure: minArc}
		s, _ := narrow.surface("", "/")
		if p, err := narrow.Spacing(s.cone.spiralLength(minSpacing, s.turn())); err != nil || p < minSpacing {
			t.Errorf("%+v: %d nm apart, %v", narrow, p, err)
		}
	}
	// The upper end goes by the part that is dressed.
	if _, err := corner.Spacing(most * 2); err == nil {
		t.Error("a corner takes as much as the whole tree")
	}
	for _, row := range []struct {
		field string
		want  error
		t     Tree
	}{
		{"height", units.ErrRange, Tree{}},
		{"taper", units.ErrName, Tree{Height: 7 * ft, Taper: Pencil + 1}},
		{"handle", units.ErrRange, Tree{Height: 7 * ft, Handle: -1}},
		{"base", units.ErrRange, Tree{Height: 8 * ft, Base: 1*ft - 1}},
		{"bareTip", units.ErrRange, Tree{Height: 7 * ft, BareTip: 83*in + 1}},
		{"exposure", units.ErrRange, Tree{Height: 7 * ft, Exposure: 7}},
	} {
		p, err := row.t.Spacing(50 * ft)
		refused(t, err, row.want, "Tree.Spacing", row.field)
		if p != 0 {
			t.Errorf("%+v: %v with an error", row.t, p)
		}
	}
}
