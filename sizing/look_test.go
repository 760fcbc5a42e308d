package sizing

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestTreeCone(t *testing.T) {
	for _, row := range []struct {
		reason string
		t      Tree
		want   cone
	}{
		{"65 % of 7 ft", Tree{Height: 7 * ft}, cone{Height: 7 * ft, BaseDiameter: 4*ft + 66*in/10}},
		{"45 % of 7 ft", Tree{Height: 7 * ft, Taper: Slim}, cone{Height: 7 * ft, BaseDiameter: 3*ft + 18*in/10}},
		{"30 % of 7 ft", Tree{Height: 7 * ft, Taper: Pencil}, cone{Height: 7 * ft, BaseDiameter: 2*ft + 12*in/10}},
		{"as measured", Tree{Height: 7 * ft, Taper: Pencil, Base: 5 * ft}, cone{Height: 7 * ft, BaseDiameter: 5 * ft}},
		{"default by the whole height, shape above the handle", Tree{Height: 10 * ft, Handle: 1 * ft, BareTip: 6 * in}, cone{Height: 9 * ft, BaseDiameter: 6*ft + 6*in, BareTip: 6 * in}},
		{"half a nanometer rounds up", Tree{Height: 1*ft + 10}, cone{Height: 1*ft + 10, BaseDiameter: 198_120_007}},
		{"the longest handle", Tree{Height: 1 * ft, Handle: 6 * in, Base: 9 * in}, cone{Height: 6 * in, BaseDiameter: 9 * in}},
	} {
		got, err := row.t.cone("", "/")
		whole, err2 := row.t.Measured()
		want := row.t
		want.Base = row.want.BaseDiameter
		if got != row.want || err != nil || whole != want || err2 != nil {
			t.Errorf("%s: %+v, %v, %+v, %v; want %+v", row.reason, got, err, whole, err2, row.want)
		}
	}
	for _, row := range []struct {
		field string
		want  error
		t     Tree
	}{
		{"height", units.ErrRange, Tree{}},
		{"height", units.ErrRange, Tree{Height: 1*ft - 1}},
		{"height", units.ErrRange, Tree{Height: 100*ft + 1}},
		{"taper", units.ErrName, Tree{Height: 7 * ft, Taper: Pencil + 1}},
		{"handle", units.ErrRange, Tree{Height: 7 * ft, Handle: -1}},
		{"handle", units.ErrRange, Tree{Height: 7 * ft, Handle: 42*in + 1}},
		{"base", units.ErrRange, Tree{Height: 8 * ft, Base: 1*ft - 1}},
		{"base", units.ErrRange, Tree{Height: 8 * ft, Base: 12*ft + 1}},
		{"base", units.ErrRange, Tree{Height: 8 * ft, Base: -1}},
		{"base", units.ErrRange, Tree{Height: 10 * ft, Handle: 2 * ft, Base: 12*ft + 1}},
		{"bareTip", units.ErrRange, Tree{Height: 7 * ft, BareTip: -1}},
		{"bareTip", units.ErrRange, Tree{Height: 7 * ft, BareTip: 83*in + 1}},
	} {
		c, err := row.t.Measured()
		refused(t, err, row.want, "Tree.Measured", row.field)
		a, err := row.t.DressedArea()
		refused(t, err, row.want, "Tree.DressedArea", row.field)
		s, err := row.t.Skirt()
		refused(t, err, row.want, "Tree.Skirt", row.field)
		m, err := CommonPractice().Mix(row.t, 1)
		refused(t, err, row.want, "Rules.Mix", row.field)
		p, err := row.t.SpiralLength(10 * in)
		refused(t, err, row.want, "Tree.SpiralLength", row.field)
		e, err := row.t.Seen(90, 200*ft)
		refused(t, err, row.want, "Tree.Seen", row.field)
		cmp, err := CommonPractice().Compare(CommonLook(), row.t)
		refused(t, err, row.want, "Rules.Compare", row.field)
		if c != (Tree{}) || a != 0 || s != (lengthRange{}) || m != nil || p != 0 || e != 0 || !reflect.DeepEqual(cmp, Comparison{}) {
			t.Errorf("%+v: a result with an error: %v %v %v %v %v %v %v", row.t, c, a, s, m, p, e, cmp)
		}
	}
	if _, err := (Tree{Height: 7 * ft, Exposure: 7}).DressedArea(); !errors.Is(err, units.ErrRange) {
		t.Errorf("no exposure: %v", err)
	}
}

// The areas are pi·r·√(r²+h²), in 60 digits apart from this package.
func TestDressedArea(t *testing.T) {
	for _, row := range []struct {
		t    Tree
		want float64 // square feet
	}{
		{Tree{Height: 6 * ft}, 38.6491244168027},
		{Tree{Height: 7 * ft}, 52.6057526784260},
		{Tree{Height: 7*ft + 6*in}, 60.3892569012543},
		{Tree{Height: 9 * ft}, 86.9605299378062},
		{Tree{Height: 12 * ft}, 154.596497667211},
		{Tree{Height: 15 * ft}, 241.557027605017},
		{Tree{Height: 9 * ft, Exposure: AgainstWall}, 86.9605299378062 * 2 / 3},
		{Tree{Height: 9 * ft, Exposure: InCorner}, 86.9605299378062 / 2},
		{Tree{Height: 9 * ft, Exposure: HalfTree}, 86.9605299378062 / 2},
		{Tree{Height: 9 * ft, Exposure: 90 * Degree}, 86.9605299378062 / 4},
		{Tree{Height: 9 * ft, Exposure: 1 * Degree}, 86.9605299378062 / 360},
		{Tree{Height: 9 * ft, BareTip: 3 * ft}, 86.9605299378062 * 8 / 9},
	} {
		got, err := row.t.DressedArea()
		if err != nil || math.Abs(got.In(units.SquareFoot)-row.want) > 1e-10 {
			t.Errorf("%+v: %v sq ft, %v; want %v", row.t, got.In(units.SquareFoot), err, row.want)
		}
	}
	// Rounded up: a third of a whole number of um2 that is no multiple of 3.
	whole, _ := Tree{Height: 7 * ft}.DressedArea()
	if third, _ := (Tree{Height: 7 * ft, Exposure: 120 * Degree}).DressedArea(); third != (whole+2)/3 {
		t.Errorf("a third of %d um2 is %d", whole, third)
	}
}

// Counts by shape, worked from the areas above: the reference has 49 ornaments,
// 21 picks and 700 lights on 52.6057526784 sq ft, and surface grows as the square
// of height, so that 9 ft takes 81/49 of it, 12 ft 144/49, with balls of the same
// sizes; lights up to half a string of 100.
func TestMatch(t *testing.T) {
	rules, look := CommonPractice(), CommonLook()
	for _, row := range []struct {
		reason    string
		t         Tree
		ornaments int
		picks     int
		lights    int
	}{
		{"the reference", Tree{Height: 7 * ft}, 49, 21, 700},
		{"21 x 81/49 = 34.7, 700 x 81/49 = 1157.1", Tree{Height: 9 * ft}, 81, 35, 1200},
		{"21 x 144/49 = 61.7, 700 x 144/49 = 2057.1", Tree{Height: 12 * ft}, 144, 62, 2100},
		{"half of 9 ft: 40.5, up", Tree{Height: 9 * ft, Exposure: InCorner}, 41, 18, 600},
		{"two thirds", Tree{Height: 9 * ft, Exposure: AgainstWall}, 54, 24, 800},
		{"twice the size, four times as much", Tree{Height: 14 * ft}, 196, 84, 2800},
		// By hand: 4.294 sq ft of which 4.130 % are 25.54 sq in, and a disc of 1 in is 0.785.
		{"a table tree takes 1 in balls: 32.5", Tree{Height: 2 * ft}, 33, 2, 100},
		{"a pre-lit tree buys no lights", Tree{Height: 7 * ft, Kind: PreLit}, 49, 21, 0},
		{"nor does a metal one", Tree{Height: 7 * ft, Kind: Metal}, 49, 21, 0},
		{"an artificial one does", Tree{Height: 7 * ft, Kind: Artificial}, 49, 21, 700},
		// By hand: a degree of 9 ft is 0.24 sq ft, which 0.2 of the balls would cover.
		{"never fewer than the types", Tree{Height: 9 * ft, Exposure: 1 * Degree}, 9, 1, 50},
	} {
		a, err := matched(rules, look, row.t)
		if err != nil || a[shopping.Ornament].Pieces != row.ornaments || a[shopping.Pick].Pieces != row.picks || a[shopping.Light].Pieces != row.lights {
			t.Errorf("%s: %v, %v; want %d, %d, %d", row.reason, a, err, row.ornaments, row.picks, row.lights)
		}
	}
	// Length by SpiralLength, in 60 digits apart from this package: 12 ft at 10 in
	// takes 56844362161 nm, 186 ft 5.99 in. On half of it, back and forth, Simpson's rule
	// apart from this package gives 94 ft 5.08 in, and 49 ft 1.40 in at 20 in.
	ten := Look{Spacing: lengths{shopping.Garland: 10 * in, shopping.Ribbon: 20 * in}}
	a, err := matched(rules, ten, Tree{Height: 12 * ft})
	if err != nil || a[shopping.Garland].Length != 186*ft+6*in || a[shopping.Ribbon].Length == a[shopping.Garland].Length || a[shopping.Ribbon].Length < a[shopping.Garland].Length/2 || a[shopping.Ornament].Pieces+a[shopping.Pick].Pieces+a[shopping.Light].Pieces != 0 {
		t.Errorf("12 ft at 10 in: %v, %v", a, err)
	}
	if l, err := (Tree{Height: 12 * ft}).SpiralLength(10 * in); l != 56_844_362_161 || err != nil {
		t.Errorf("12 ft at 10 in: %d nm, %v", l, err)
	}
	a, err = matched(rules, ten, Tree{Height: 12 * ft, Exposure: HalfTree})
	if err != nil || a[shopping.Garland].Length != 94*ft+6*in || a[shopping.Ribbon].Length != 49*ft+2*in {
		t.Errorf("half of 12 ft at 10 in: %v, %v", a, err)
	}
	if a, err := matched(rules, Look{}, Tree{Height: 12 * ft}); a != (shopping.ByKind[shopping.Quantity]{}) || err != nil {
		t.Errorf("a bare look: %v, %v", a, err)
	}
	for _, row := range []struct {
		field string
		l     Look
	}{
		{"spacing/garland", Look{Spacing: lengths{shopping.Garland: minSpacing - 1}}},
		{"spacing/garland", Look{Spacing: lengths{shopping.Garland: maxSpacing + 1}}},
		{"spacing/garland", Look{Spacing: lengths{shopping.Garland: -1}}},
		{"spacing/picks", Look{Spacing: lengths{shopping.Pick: 10 * in}}},
		{"spacing/ribbon", Look{Spacing: lengths{shopping.Ribbon: minSpacing - 1}}},
		{"spacing/ribbon", Look{Spacing: lengths{shopping.Ribbon: maxSpacing + 1}}},
		{"each/ornaments", Look{Each: areas{shopping.Ornament: units.SquareFoot}}},
		{"each/garland", Look{Each: areas{shopping.Garland: units.SquareFoot}}},
		{"each/picks", Look{Each: areas{shopping.Pick: minEach - 1}}},
		{"each/picks", Look{Each: areas{shopping.Pick: maxEach + 1}}},
		{"each/lights", Look{Each: areas{shopping.Light: minEach - 1}}},
		{"each/lights", Look{Each: areas{shopping.Light: maxEach + 1}}},
		{"cover", Look{Cover: -1e-9}},
		{"cover", Look{Cover: 1.0000001}},
		{"cover", Look{Cover: math.NaN()}},
		{"cover", Look{Cover: math.Inf(1)}},
	} {
		c, err := rules.Compare(row.l, Tree{Height: 9 * ft})
		refused(t, err, units.ErrRange, "Rules.Compare", "/look/"+row.field)
		if !reflect.DeepEqual(c, Comparison{}) {
			t.Errorf("%+v: a result with an error", row.l)
		}
	}
	_, err = rules.Compare(Look{Cover: 1.0000001}, Tree{Height: 9 * ft})
	if want := `sizing.Rules.Compare: /look/cover "1.0000001": out of range: want 0 to 1`; err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
	edge := Look{Spacing: lengths{shopping.Garland: minSpacing, shopping.Ribbon: maxSpacing}, Each: areas{shopping.Pick: maxEach, shopping.Light: minEach}, Cover: 1}
	// 2736220387126487.858 um2 in 60 digits, over 6451600 and over 10^16; the discs of
	// 8, 6 and 4 in by 20, 30 and 50 % are pi/4 of 31.6 sq in, 16012244900 um2... by hand
	// 2736220387126487.858/(pi/4*31.6*645160000) = 170889.0.
	if a, err := matched(rules, edge, Tree{Height: 100 * ft, Base: 150 * ft, Public: true}); err != nil || a[shopping.Pick].Pieces != 1 || a[shopping.Light].Pieces != 424_115_050 {
		t.Errorf("at the edges: %v, %v", a, err)
	}
}

func TestRulesLookErrors(t *testing.T) {
	tree := Tree{Height: 9 * ft}
	for _, row := range []struct {
		field  string
		change func(*Rules)
	}{
		{"/typesPerFoot", func(r *Rules) { r.TypesPerFoot = -1 }},
		{"/perFoot/picks", func(r *Rules) { r.PerFoot[shopping.Pick].Pieces = -1 }},
		{"/perFoot/lights", func(r *Rules) { r.PerFoot[shopping.Light].Pieces = -1 }},
		{"/perFoot/garland", func(r *Rules) { r.PerFoot[shopping.Garland].Length = -1 }},
		{"/perFoot/ribbon", func(r *Rules) { r.PerFoot[shopping.Ribbon].Length = -1 }},
	} {
		r := CommonPractice()
		row.change(&r)
		var e *units.Error
		c, err := r.Compare(CommonLook(), tree)
		if !errors.As(err, &e) || e.Field != row.field || !reflect.DeepEqual(c, Comparison{}) {
			t.Errorf("%s: %v, %v", row.field, c, err)
		}
	}
	if _, err := CommonPractice().Compare(Look{}, Tree{Height: 9 * ft, Exposure: 5}); !errors.Is(err, units.ErrRange) {
		t.Error(err)
	}
}

// What by rule is too short to reach from base to tip, or too long to wind 1/4 in
// apart, leaves its spacing zero and the rest as it is.
func TestRulesThatCannotBeWound(t *testing.T) {
	for _, row := range []struct {
		reason string
		r      Rules
		t      Tree
		want   string // the first line
		cannot string // garland, ribbon or both
	}{
		// By hand: 9 ft of garland and 9.46 ft of slope.
		{"too short", Rules{PerFoot: shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: 1 * ft}, shopping.Ribbon: {Length: 9 * ft}}}, Tree{Height: 9 * ft}, "garland: 1 ft for each foot is too short to go round here; 10 1/4 in apart takes 104 ft", "garland"},
		{"ribbon too short", Rules{PerFoot: shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: 9 * ft}, shopping.Ribbon: {Length: 6 * in}}}, Tree{Height: 9 * ft}, "garland: 9 ft for each foot gives wraps 13 1/4 in apart here; 10 1/4 in apart takes 104 ft", "ribbon"},
		{"both too short", Rules{PerFoot: shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: 6 * in}, shopping.Ribbon: {Length: 6 * in}}}, Tree{Height: 9 * ft}, "garland or ribbon: 6 in for each foot is too short to go round here; 10 1/4 in apart takes 104 ft", "both"},
		// By hand: a sixth of 1.07 sq ft is 25.8 sq in, and over 9 ft 0.24 in wide. To
		// match takes the slope of 1.05 ft at least, and a little more.
		{"too long", CommonPractice(), Tree{Height: 1 * ft, Exposure: 60 * Degree}, "garland or ribbon: 9 ft for each foot is too long to wind here; 10 1/4 in apart takes 1 ft 1 in", "both"},
		{"far too long", Rules{PerFoot: shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: 100 * ft}, shopping.Pick: {Pieces: 3}}}, Tree{Height: 1 * ft, Taper: Pencil, Exposure: HalfTree}, "garland: 100 ft for each foot is too long to wind here; 10 1/4 in apart takes 1 ft 1 in", "garland"},
	} {
		l, err := looked(row.r, row.t)
		a, _ := ruled(row.r, row.t)
		if err != nil || (l.Spacing[shopping.Garland] == 0) != (row.cannot != "ribbon") || (l.Spacing[shopping.Ribbon] == 0) != (row.cannot != "garland" || a[shopping.Ribbon].Length == 0) || (l.Each[shopping.Pick] == 0) != (a[shopping.Pick].Pieces == 0) {
			t.Errorf("%s: %+v, %v", row.reason, l, err)
		}
		look := CommonLook()
		look.Cover = 0
		c, err := row.r.Compare(look, row.t)
		got, _, _ := strings.Cut(c.String(), "\n")
		if got != row.want || c.RuleLook != l || err != nil {
			t.Errorf("%s: %q, %v; want %q", row.reason, got, err, row.want)
		}
	}
	// What just reaches, and what is just far enough apart, is wound.
	tree := Tree{Height: 9 * ft}
	c, _ := tree.cone("", "/")
	s, _ := tree.surface("", "/")
	for _, p := range []units.Length{minSpacing, maxSpacing} {
		length, _ := c.SpiralLength(p)
		l := s.look(&shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: length}})
		if l.Spacing[shopping.Garland] < p-1 && p == minSpacing || l.Spacing[shopping.Garland] > p+1 || l.Spacing[shopping.Garland] == 0 {
			t.Errorf("%v of garland: %v", length, l.Spacing[shopping.Garland])
		}
		off := length/minSpacing + 1 // worth a nanometer of spacing
		if p == maxSpacing {
			off = -1
		}
		if l := s.look(&shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: length + off}}); l != (Look{}) {
			t.Errorf("%v of garland: %v", length+off, l)
		}
	}
}

// No rule within its range makes a comparison fail, and it tells rightly why
// garland cannot be wound.
func TestCompareNeverFails(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rules{PerFoot: shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: units.Length(rapid.Int64Range(1, int64(100*ft)).Draw(t, "garland"))}}}
		degrees := rapid.IntRange(1, 360).Draw(t, "degrees")
		tree := Tree{
			Height:   units.Length(rapid.Int64Range(int64(minHeight), int64(maxHeight)).Draw(t, "height")),
			Taper:    Taper(rapid.IntRange(0, int(Pencil)).Draw(t, "taper")),
			Exposure: Exposure(degrees) * Degree,
		}
		tree.BareTip = units.Length(rapid.Int64Range(0, int64(tree.Height-in)).Draw(t, "bare tip"))
		c, err := r.Compare(CommonLook(), tree)
		if err != nil {
			t.Fatal(err)
		}
		cone, _ := tree.cone("", "/")
		least, most := cone.spiralLength(maxSpacing, float64(degrees)/360), cone.spiralLength(minSpacing, float64(degrees)/360)
		short, long := c.Rule[shopping.Garland].Length < least-1000, c.Rule[shopping.Garland].Length > most+most/minSpacing+1000
		if short && !strings.Contains(c.String(), "is too short") || long && !strings.Contains(c.String(), "is too long") ||
			(c.RuleLook.Spacing[shopping.Garland] == 0) == strings.Contains(c.String(), "apart here") {
			t.Fatalf("%+v: %v of %v to %v", c, c.Rule[shopping.Garland].Length, least, most)
		}
	})
}

func drawTree(t *rapid.T) Tree {
	height := units.Length(rapid.Int64Range(int64(3*ft), int64(50*ft)).Draw(t, "height"))
	tree := Tree{
		Height:  height,
		Handle:  units.Length(rapid.Int64Range(0, int64(height/4)).Draw(t, "handle")),
		BareTip: units.Length(rapid.Int64Range(0, int64(height/4)).Draw(t, "bare tip")),
		Taper:   Taper(rapid.IntRange(0, int(Pencil)).Draw(t, "taper")),
	}
	if rapid.Bool().Draw(t, "measured") {
		tree.Base = units.Length(rapid.Int64Range(int64(height/4), int64(height)).Draw(t, "base"))
	}
	switch n := rapid.IntRange(-300, 4).Draw(t, "exposure"); {
	case n < 0:
		tree.Exposure = Exposure(-n+60) * Degree
	case n < 4:
		tree.Exposure = Exposure(n)
	}
	return tree
}

func TestLookProperties(t *testing.T) {
	r := CommonPractice()
	rapid.Check(t, func(t *rapid.T) {
		tree := drawTree(t)
		amounts := func(l Look, tree Tree) shopping.ByKind[shopping.Quantity] {
			a, err := matched(r, l, tree)
			if err != nil {
				t.Fatal(err)
			}
			return a
		}
		// The look that the rules give on a tree asks for the same there.
		own, err := looked(r, tree)
		if err != nil {
			t.Fatal(err)
		}
		if own.Spacing[shopping.Garland] == 0 || own.Cover > 1 {
			t.Skip("too close to wind, too short, or more ornaments than there is room for")
		}
		rule, err := ruled(r, tree)
		if err != nil {
			t.Fatal(err)
		}
		shape := amounts(own, tree)
		if shape[shopping.Ornament].Pieces != rule[shopping.Ornament].Pieces || shape[shopping.Pick].Pieces != rule[shopping.Pick].Pieces || shape[shopping.Light].Pieces != rule[shopping.Light].Pieces ||
			shape[shopping.Garland].Length < rule[shopping.Garland].Length-in || shape[shopping.Garland].Length >= rule[shopping.Garland].Length+in || shape[shopping.Garland].Length%in != 0 || shape[shopping.Ribbon].Length != shape[shopping.Garland].Length {
			t.Fatalf("%+v: by rule %v, by its own look %v", tree, rule, shape)
		}

		// More surface takes more of everything.
		look := CommonLook()
		a := amounts(look, tree)
		more := tree
		change := rapid.IntRange(0, 3).Draw(t, "change")
		switch change {
		case 0:
			more.Exposure = AllRound
		case 1:
			more.Handle /= 2
		case 2:
			more.BareTip /= 2
		case 3:
			c, _ := tree.cone("", "/")
			more.Base = min(maxBase(c.Height), c.BaseDiameter*11/10)
		}
		b := amounts(look, more)
		// A longer cone of the same base is steeper lower down, but never smaller.
		// A wider tree may take larger ornaments, and fewer.
		if b[shopping.Ornament].Pieces < a[shopping.Ornament].Pieces && change != 3 || b[shopping.Garland].Length < a[shopping.Garland].Length || b[shopping.Pick].Pieces < a[shopping.Pick].Pieces || b[shopping.Light].Pieces < a[shopping.Light].Pieces {
			t.Fatalf("%+v takes %v, %+v only %v", tree, a, more, b)
		}

		// A look twice as open takes half as many, but for the types.
		open := Look{Each: areas{shopping.Pick: 2 * look.Each[shopping.Pick], shopping.Light: 2 * look.Each[shopping.Light]}, Cover: look.Cover / 2}
		o := amounts(open, tree)
		half := (a[shopping.Ornament].Pieces + 1) / 2
		if n := o[shopping.Ornament].Pieces; n < half-1 || n > max(half, wholeFeet(tree.Height)) || o[shopping.Pick].Pieces != (a[shopping.Pick].Pieces+1)/2 || o[shopping.Light].Pieces != ((a[shopping.Light].Pieces+1)/2+49)/50*50 && o[shopping.Light].Pieces != (a[shopping.Light].Pieces/2+49)/50*50 || o[shopping.Garland].Length != 0 || o[shopping.Ribbon].Length != 0 {
			t.Fatalf("%+v takes %v, half as dense %v", tree, a, o)
		}

		// A comparison holds exactly these.
		c, err := r.Compare(look, tree)
		if want := (Comparison{tree, r, look, rule, a, tree != (Tree{Height: tree.Height}) || tree.Height < 4*ft || tree.Height > 15*ft, own}); err != nil || !reflect.DeepEqual(c, want) {
			t.Fatalf("%v\n%v, %v", c, want, err)
		}
	})
}

func TestNeedsByShape(t *testing.T) {
	const source = "geometry; common practice for the look"
	over := " over 87 sq ft"
	ornaments := shopping.Need{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: 81}, Basis: "4.1 % of 87 sq ft covered, by sizes of 4 in, 3 1/8 in and 2 in", Source: source}
	garland := shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: 103*ft + 8*in}, Basis: "wraps 10 1/4 in apart" + over, Source: source}
	ribbon := garland
	ribbon.Item = shopping.Item{Kind: shopping.Ribbon}
	picks := shopping.Need{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 35}, Basis: "0.399 to the square foot" + over, Source: source}
	lights := shopping.Need{Item: shopping.Item{Kind: shopping.Light}, Quantity: shopping.Quantity{Pieces: 1200}, Basis: "13.3 to the square foot" + over + ", in steps of 50", Source: source}
	c, err := CommonPractice().Compare(CommonLook(), Tree{Height: 9 * ft})
	if err != nil {
		t.Fatal(err)
	}
	c.ByShape = true
	for _, row := range []struct {
		accents []shopping.Kind
		want    []shopping.Need
	}{
		{nil, []shopping.Need{ornaments, lights}},
		{[]shopping.Kind{shopping.Garland}, []shopping.Need{ornaments, garland, lights}},
		{[]shopping.Kind{shopping.Pick}, []shopping.Need{ornaments, picks, lights}},
		{[]shopping.Kind{shopping.Ribbon}, []shopping.Need{ornaments, ribbon, lights}},
		{[]shopping.Kind{shopping.Pick, shopping.Garland, shopping.Pick}, []shopping.Need{ornaments, garland, picks, lights}},
	} {
		got, err := c.Needs(units.InFeetInches, row.accents...)
		if diff := cmp.Diff(row.want, got); diff != "" || err != nil {
			t.Errorf("%v: %v -want +got\n%s", row.accents, err, diff)
		}
	}
	got, err := c.Needs(units.InFeetInches, shopping.Garland, shopping.Light)
	refused(t, err, units.ErrName, "Comparison.Needs", "accents")
	if got != nil {
		t.Errorf("%v with an error", got)
	}
	c, err = CommonPractice().Compare(Look{}, Tree{Height: 9 * ft})
	c.ByShape = true
	if none, err2 := c.Needs(units.InFeetInches, shopping.Garland, shopping.Pick); err != nil || err2 != nil || len(none) != 0 {
		t.Errorf("a bare look asks for %v, %v, %v", none, err, err2)
	}
}

func TestLookText(t *testing.T) {
	for _, row := range []struct {
		got  interface{ String() string }
		want string
	}{
		{Look{}, "nothing"},
		{Look{Spacing: lengths{shopping.Garland: 10 * in}}, "garland 10 in apart"},
		{Look{Spacing: lengths{shopping.Ribbon: 3*in + in/4}, Each: areas{shopping.Pick: units.SquareFoot}}, "ribbon 3 1/4 in apart; to the square foot 1 picks"},
		{Look{Each: areas{shopping.Light: units.SquareFoot / 10}}, "to the square foot 10 lights"},
		{Look{Each: areas{shopping.Light: units.SquareFoot/10 + 60_000_000}}, "to the square foot 9.94 lights"},
		{Look{Cover: 0.0413}, "4.1 % covered by ornaments"},
		{Look{Cover: 0.0415, Spacing: lengths{shopping.Garland: 4 * in}}, "garland 4 in apart; 4.2 % covered by ornaments"},
		// A crew that winds by what is printed does not run out.
		{Look{Spacing: lengths{shopping.Garland: 4*in + 1}}, "garland 4 1/4 in apart"},
		{Look{Spacing: lengths{shopping.Garland: 24 * in}}, "garland 24 in apart"},
		{Look{Spacing: lengths{shopping.Garland: 24*in + 1}}, "garland 25 in apart"},
		{Comparison{}, "nothing"},
	} {
		if got := row.got.String(); got != row.want {
			t.Errorf("%#v prints %q, want %q", row.got, got, row.want)
		}
	}
}

// The words of the comparison, with the figures worked by hand: 108 ft on
// 154.6 sq ft is 1.43 ft apart; 12 ft at 10 in takes 186 ft 6 in.
func TestComparisonText(t *testing.T) {
	look := CommonLook()
	look.Spacing[shopping.Garland] = 10 * in
	look.Spacing[shopping.Ribbon] = 0
	c, err := CommonPractice().Compare(look, Tree{Height: 12 * ft})
	if err != nil {
		t.Fatal(err)
	}
	want := `ornaments: 144 of 4 in, 3 1/8 in and 2 in cover 4.1 % here; 4.1 % takes 144
garland: 9 ft for each foot gives wraps 17 1/2 in apart here; 10 in apart takes 187 ft
picks: 3 for each foot gives 0.233 to the square foot here; 0.399 takes 62
lights: 100 for each foot gives 7.76 to the square foot here; 13.3 takes 2100`
	if got := c.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	// By hand: 17.43 in are 44.28 cm, 10 in 25.4 cm, 186.5 ft 56.84 m; 3 and 100 for each
	// foot are 9.84 and 328 for each meter; 0.23 to a square foot is 2.51 to a square meter.
	want = `ornaments: 144 of 10.2 cm, 7.9 cm and 5.1 cm cover 4.1 % here; 4.1 % takes 144
garland: 9 m for each meter gives wraps 44.5 cm apart here; 25.5 cm apart takes 56.9 m
picks: 9.84 for each meter gives 2.51 to the square meter here; 4.3 takes 62
lights: 328 for each meter gives 83.6 to the square meter here; 143 takes 2100`
	if got := Format(c, units.InMetric); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	c.ByShape = true // 154.6 sq ft are 14.36 m²
	needs, err := c.Needs(units.InMetric)
	if want := "4.1 % of 14.4 m² covered, by sizes of 10.2 cm, 7.9 cm and 5.1 cm"; err != nil || needs[0].Basis != want {
		t.Errorf("%v, %v, want %s", needs, err, want)
	}
	r := CommonPractice()
	r.PerFoot[shopping.Ribbon].Length = 18 * ft
	c, err = r.Compare(CommonLook(), Tree{Height: 12 * ft})
	if err != nil || !strings.Contains(c.String(), "\nribbon: 18 ft for each foot gives wraps 8 3/4 in apart here; 10 1/4 in apart takes 184 ft\n") {
		t.Errorf("%v, %v", c, err)
	}
	c, err = Rules{}.Compare(look, Tree{Height: 12 * ft})
	if err != nil || c.String() != "nothing" {
		t.Errorf("rules of zero: %v, %v", c, err)
	}
}

// A whole tree, with the comparison, the lights and the ceiling.
func TestWholeTreeDoesNotAllocate(t *testing.T) {
	r, look := CommonPractice(), CommonLook()
	strings := lights.Label{Lamps: 100, Length: 25 * ft, Power: 4800 * units.Milliwatt, EndToEnd: 8}
	if n := testing.AllocsPerRun(100, func() {
		c, err1 := r.Compare(look, Tree{Height: 9 * ft})
		area, err2 := c.Tree.DressedArea()
		garland, err3 := c.Tree.SpiralLength(c.Look.Spacing[shopping.Garland])
		s, err4 := strings.For(c.Shape[shopping.Light])
		load, err5 := s.Load(lights.Circuit{Volts: 120, Amperes: 15})
		fit, err6 := Room{Ceiling: 10 * ft}.Fit(c.Tree)
		if err1 != nil || err2 != nil || err3 != nil || err4 != nil || err5 != nil || err6 != nil ||
			area == 0 || garland == 0 || load.Power > load.Limit || fit.Verdict != "fits" {
			t.Error("not sized")
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
	// The lists of sizes and of cautions.
	if n := testing.AllocsPerRun(100, func() {
		mix, err1 := r.Mix(Tree{Height: 9 * ft}, 81)
		cover, err2 := Cover(mix, 87*units.SquareFoot)
		ladder, err3 := Room{Topper: ft}.Ladder(Tree{Height: 9 * ft})
		if err1 != nil || err2 != nil || err3 != nil || cover == 0 || len(ladder.Cautions) != 1 {
			t.Error("not dressed")
		}
	}); n > 2 {
		t.Errorf("%v allocations", n)
	}
}

// On any part of the way round, the garland that goes back and forth is the integral of
// √(1 + (arc·sin α·s/p)²) over the distances s from the tip, which Simpson's rule
// takes apart from the closed form; and the spacing that it gives is the one it had.
func TestGarlandOnPart(t *testing.T) {
	for _, tree := range []Tree{{Height: 9 * ft}, {Height: 78 * in, Taper: Slim, BareTip: 8 * in, Handle: 6 * in}, {Height: 14 * ft, Taper: Pencil}} {
		for _, arc := range []Exposure{10 * Degree, 90 * Degree, InCorner, AgainstWall, 359_999, AllRound} {
			for _, p := range []units.Length{3 * in, 10 * in, 4 * ft} {
				tree.Exposure = arc
				s, err := tree.surface("", "/")
				if err != nil {
					t.Fatal(err)
				}
				degrees, _ := arc.Degrees()
				slant := math.Hypot(float64(s.cone.BaseDiameter)/2, float64(s.cone.Height))
				k := degrees * math.Pi / 180 * float64(s.cone.BaseDiameter) / 2 / slant / float64(p)
				from := slant * float64(s.cone.BareTip) / float64(s.cone.Height)
				to := slant * (1 - float64(s.cone.BareBase)/float64(s.cone.Height))
				f := func(x float64) float64 { return math.Sqrt(1 + k*x*k*x) }
				const n = 2000
				w, sum := (to-from)/n, f(from)+f(to)
				for i := 1; i < n; i++ {
					sum += f(from+float64(i)*w) * float64(2+i%2*2)
				}
				got := s.cone.spiralLength(p, s.turn())
				if diff := math.Abs(float64(got) - sum*w/3); diff > 1000 { // a micrometer, far over Simpson's error here
					t.Errorf("%v, %v, wraps %v: %v, by quadrature %.0f nm", tree, arc, p, got, sum*w/3)
				}
				if turns := degrees / 360 * (to - from) / float64(p); turns < 1 {
					continue
				}
				if back := s.cone.spacing(got, s.turn()); back < p-2 || back > p+2 {
					t.Errorf("%v, %v: %v of garland gives %v, not %v", tree, arc, got, back, p)
				}
			}
		}
	}
}

// Whoever works out a basis with the figures that it prints comes to the number beside it: pieces to the square foot or meter
// times the surface, or so many for each foot of height, rounded up, and where it says so up to 50.
func TestBasisGivesTheNumber(t *testing.T) {
	check := func(t interface{ Fatalf(string, ...any) }, tree Tree, style units.Style) {
		c, err := CommonPractice().Compare(CommonLook(), tree)
		if err != nil {
			t.Fatalf("%+v: %v", tree, err)
		}
		c.ByShape = true
		needs, err := c.Needs(style, shopping.Pick)
		if err != nil {
			t.Fatalf("%+v: %v", tree, err)
		}
		for _, n := range needs[1:] { // picks, lights
			var each, area float64
			var foot, unit string
			if _, err := fmt.Sscanf(n.Basis, "%g to the square %s over %g %s", &each, &foot, &area, &unit); err != nil {
				t.Fatalf("%q: %v", n.Basis, err)
			}
			if strings.HasPrefix(unit, "cm²") {
				area /= 10_000
			}
			got := int(math.Ceil(each*area - 1e-9))
			if strings.HasSuffix(n.Basis, ", in steps of 50") {
				got = (got + 49) / 50 * 50
			}
			if got != n.Quantity.Pieces {
				t.Fatalf("%+v takes %v, %q gives %d", tree, n.Quantity, n.Basis, got)
			}
		}
	}
	for _, tree := range []Tree{
		{Height: 7*ft + 6*in, Exposure: InCorner}, {Height: 11 * ft, Exposure: AgainstWall}, {Height: 18 * in}, {Height: 9 * ft}, {Height: 7 * ft}, {Height: 100 * ft},
	} {
		check(t, tree, units.InFeetInches)
		check(t, tree, units.InMetric)
	}
	rapid.Check(t, func(t *rapid.T) {
		tree := Tree{
			Height: units.Length(rapid.Int64Range(int64(minHeight), int64(30*ft)).Draw(t, "height")), Taper: Taper(rapid.IntRange(0, 2).Draw(t, "taper")),
			Exposure: rapid.SampledFrom([]Exposure{AllRound, AgainstWall, InCorner, 200 * Degree}).Draw(t, "exposure"),
		}
		check(t, tree, rapid.SampledFrom([]units.Style{units.InFeetInches, units.InMetric, units.InYards}).Draw(t, "style"))
	})
	c, err := CommonPractice().Compare(CommonLook(), Tree{Height: 7*ft + 3*in})
	if err != nil {
		t.Fatal(err)
	}
	needs, err := c.Needs(units.InFeetInches)
	if want := "100 for each foot of 7 ft 3 in, in steps of 50"; err != nil || needs[1].Basis != want || needs[1].Quantity.Pieces != 750 {
		t.Errorf("%v, %v; want 750, %s", needs, err, want)
	}
}
