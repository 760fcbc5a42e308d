package job_test

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A hundred rooms are planned, trees and mantels counted together, and one more is not.
func TestAtTheLimits(t *testing.T) {
	for _, row := range []struct {
		trees, mantels int
		refused        string
	}{
		{60, 40, ""},
		{0, 100, ""},
		{61, 40, "101 trees and mantels"},
		{1, 100, "101 trees and mantels"},
	} {
		var r job.Request
		for range row.trees {
			r.Trees = append(r.Trees, job.Tree{Tree: sizing.Tree{Height: 7 * units.Foot}})
		}
		for range row.mantels {
			r.Mantels = append(r.Mantels, job.Mantel{Mantel: mantel.Mantel{Length: 5 * units.Foot}})
		}
		p, err := job.Make(r)
		if row.refused != "" {
			list := job.Faults(err)
			if len(list) != 1 || list[0].Field != "/trees" || list[0].Value != row.refused || list[0].Want != "at most 100 together" || !errors.Is(err, units.ErrRange) {
				t.Errorf("%d trees and %d mantels: %v", row.trees, row.mantels, err)
			}
			continue
		}
		if err != nil || len(p.Trees) != row.trees || len(p.Mantels) != row.mantels {
			t.Errorf("%d trees and %d mantels: %d and %d, %v", row.trees, row.mantels, len(p.Trees), len(p.Mantels), err)
		}
	}
}

// By the rule a 9 ft tree takes nine types, 7 to 11 of each: 63 to 99 in all. Nine types in the shares 40, 30, 20 and 10
// are 3, 3, 2 and 1, so 21 to 33, 14 to 22 and 7 to 11 of a color will do.
func TestHowManyWillDo(t *testing.T) {
	colors, err := palette.CommonPractice().ParsePalette("crimson,darkgreen,gold,ivory")
	if err != nil {
		t.Fatal(err)
	}
	p, err := job.Make(job.Request{Colors: colors, Trees: []job.Tree{{Tree: sizing.Tree{Height: 9 * units.Foot}}}})
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]units.Range[int]{}
	for _, n := range p.Trees[0].Shares {
		if n.Item.Kind == shopping.Ornament {
			got[n.Item.Color] = n.Open
		}
	}
	want := map[string]units.Range[int]{"crimson": {Min: 21, Max: 33}, "darkgreen": {Min: 21, Max: 33}, "gold": {Min: 14, Max: 22}, "ivory": {Min: 7, Max: 11}}
	if !maps.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// What the usual house has no rules for in a request is told all the same: a day to take down what never stands, and a loss below zero.
func TestFaultsOfTheUsualHouse(t *testing.T) {
	lost := []shopping.Lot{{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: -1}}}
	for want, r := range map[string]job.Request{"/stand": {Down: 739_990}, "/lost/0/quantity": {Stand: 739_990, Lost: lost}} {
		_, err := job.Make(r)
		if list := job.Faults(err); len(list) != 1 || list[0].Field != want {
			t.Errorf("%v, want a fault of %s", err, want)
		}
	}
}

// A name has at most 64 bytes, with what tells two of one room apart: ", mantel 1" leaves 54.
func TestNamesOfRooms(t *testing.T) {
	shelf := func(room string) job.Mantel {
		return job.Mantel{Mantel: mantel.Mantel{Length: 5 * units.Foot}, Room: room}
	}
	name := strings.Repeat("x", 64)
	for _, row := range []struct {
		rooms              []string
		field, value, want string
	}{
		{[]string{name}, "", "", ""},
		{[]string{name + "x"}, "/mantels/0/room", name + "...", "at most 64 bytes of text in one line"},
		{[]string{name[:63] + "\n"}, "/mantels/0/room", name[:63] + "\n", "at most 64 bytes of text in one line"},
		{[]string{name[:54], name[:54]}, "", "", ""},
		{[]string{name[:55], name[:55]}, "/mantels/0/room /mantels/1/room", name[:55], "at most 54 bytes where several share it"},
	} {
		var r job.Request
		for _, room := range row.rooms {
			r.Mantels = append(r.Mantels, shelf(room))
		}
		_, err := job.Make(r)
		var fields []string
		for _, f := range job.Faults(err) {
			fields = append(fields, f.Field)
			if f.Value != row.value || f.Want != row.want {
				t.Errorf("%d bytes: %v", len(row.rooms[0]), f)
			}
		}
		if strings.Join(fields, " ") != row.field {
			t.Errorf("%d bytes: faults of %q", len(row.rooms[0]), fields)
		}
	}
}

// Two accents on a tree are told to look overfull, and one is not.
func TestOverfull(t *testing.T) {
	for _, row := range []struct {
		accents []shopping.Kind
		told    bool
	}{
		{nil, false},
		{[]shopping.Kind{}, false},
		{[]shopping.Kind{shopping.Pick}, false},
		{[]shopping.Kind{shopping.Pick, shopping.Ribbon}, true},
	} {
		p, err := job.Make(job.Request{Trees: []job.Tree{{Tree: sizing.Tree{Height: 7 * units.Foot}, Accents: row.accents}}})
		if told := slices.ContainsFunc(p.Cautions, func(c units.Caution) bool { return c.Code == "overfull" }); err != nil || told != row.told {
			t.Errorf("%v: %t, %v", row.accents, told, err)
		}
	}
}

// A handle is 6 in and a bare tip 4 in, of a low tree a twelfth of its height each. By shape each type has as many pieces as
// they come to, to the nearest, more or less two.
func TestUsualTree(t *testing.T) {
	for _, row := range []struct{ height, handle, tip units.Length }{
		{36 * units.Inch, 3 * units.Inch, 3 * units.Inch}, {60 * units.Inch, 5 * units.Inch, 4 * units.Inch}, {108 * units.Inch, 6 * units.Inch, 4 * units.Inch},
	} {
		p, err := job.Make(job.Request{Trees: []job.Tree{{Tree: sizing.Tree{Height: row.height}, SizeBy: "shape"}}})
		if err != nil {
			t.Fatal(err)
		}
		tree := p.Trees[0]
		if tree.Handle != row.handle || tree.BareTip != row.tip {
			t.Errorf("%v: handle %v, tip %v", row.height, tree.Handle, tree.BareTip)
		}
		each, total := tree.Each.Max-2, tree.Planned[shopping.Ornament].Pieces
		if off := 2 * (total - each*tree.Types); off > tree.Types || off < -tree.Types || tree.Each.Min != max(1, each-2) {
			t.Errorf("%v: %v of each of %d types, %d in all", row.height, tree.Each, tree.Types, total)
		}
	}
}

// The boxes of the usual house, as CommonPractice says.
func TestUsualBoxes(t *testing.T) {
	var got []string
	for _, b := range job.CommonPractice().Boxes {
		got = append(got, fmt.Sprint(b.Cells, " of ", b.Cell.Format(units.InInches, units.Inch/2)))
	}
	if want := []string{"24 of 2 1/2 in", "12 of 4 in", "4 of 8 in", "24 of 0 in"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// How a share comes about: of 9 types 40 % are three, and of the ornaments of a mantel 40 % are so many without types. Balls without a type
// are numbered, so that they can be told apart.
func TestReasonOfAShare(t *testing.T) {
	colors, err := palette.CommonPractice().ParsePalette("crimson,darkgreen,gold,ivory")
	if err != nil {
		t.Fatal(err)
	}
	p, err := job.Make(job.Request{Colors: colors, Trees: []job.Tree{{Tree: sizing.Tree{Height: 9 * units.Foot}}}, Mantels: []job.Mantel{{Mantel: mantel.Mantel{Length: 5 * units.Foot}}}})
	if err != nil {
		t.Fatal(err)
	}
	basis := func(shares []shopping.Share) string {
		for _, s := range shares {
			if s.Item.Color == "crimson" {
				return s.Basis
			}
		}
		return "none"
	}
	if got := basis(p.Trees[0].Shares); got != "3 of 9 types, a share of 40 %" {
		t.Errorf("tree: %q", got)
	}
	if got := basis(p.Mantels[0].Shares); got != "1 in each of 7 gaps between picks; a share of 40 %" {
		t.Errorf("mantel: %q", got)
	}
	// The step of the ornaments uses all shares of them, and ties besides.
	var uses []shopping.Lot
	for _, step := range p.Mantels[0].Steps {
		if len(step.Uses) > 0 && step.Uses[0].Item.Kind == shopping.Ornament {
			uses = step.Uses
		}
	}
	var wanted []shopping.Lot
	for _, s := range p.Mantels[0].Shares {
		if s.Item.Kind == shopping.Ornament {
			wanted = append(wanted, shopping.Lot{Item: s.Item, Quantity: s.Quantity})
			if s.Quantity.Pieces == 0 {
				t.Errorf("a share of none: %v", s)
			}
		}
	}
	if uses = slices.DeleteFunc(slices.Clone(uses), func(l shopping.Lot) bool { return l.Item.Kind == shopping.Tie }); len(uses) == 0 || !slices.Equal(uses, wanted) {
		t.Errorf("the step uses %v of %v", uses, wanted)
	}
	for i, piece := range p.Trees[0].Pieces {
		if want := fmt.Sprint("ball ", i+1); piece.Item.Kind == shopping.Ornament && piece.Item.Type != want {
			t.Errorf("%v, want %s", piece.Item, want)
		}
	}
}

// A fault inside a table of the house, or of the shop, does not hide the next one.
func TestFaultsInTables(t *testing.T) {
	r := job.Request{House: job.CommonPractice(), Trees: []job.Tree{{Tree: sizing.Tree{Height: 200 * units.Foot}}}}
	r.House.Trees.PerFoot[shopping.Pick].Pieces = -1
	r.Shop.Joins = map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: -1}}
	_, err := job.Make(r)
	fields := map[string]bool{}
	for _, f := range job.Faults(err) {
		fields[f.Field] = true
	}
	want := map[string]bool{"/house/trees/perFoot/picks": true, "/shop/joins/garland/overlap": true, "/trees/0/height": true}
	if !maps.Equal(fields, want) {
		t.Errorf("%v, want %v", fields, want)
	}
}

// A House of which hardly anything is filled in gets one fault, which says where to begin, and the rest of the request its own.
func TestHouseThatDoesNotBegin(t *testing.T) {
	_, err := job.Make(job.Request{House: job.House{Units: units.InMetric}, Trees: []job.Tree{{Tree: sizing.Tree{Height: 200 * units.Foot}}}})
	list := job.Faults(err)
	if len(list) != 2 || list[0].Field != "/house" || list[0].Want != "a House that begins with CommonPractice" || list[1].Field != "/trees/0/height" {
		t.Errorf("%v", err)
	}
}

// Colors that cannot be read are no fault of the box that is sorted by them.
func TestBoxWithoutColors(t *testing.T) {
	for text, want := range map[string]string{
		`{"trees":[{"height":"7 ft"}],"colors":"crimsom,gold","box":[{"name":"a","color":"#f00","count":1}]}`: "/colors",
		`{"trees":[{"height":"7 ft"}],"box":[{"name":"a","color":"#f00","count":1}]}`:                         "/box",
	} {
		_, err := job.ParseRequest([]byte(text))
		if list := job.Faults(err); len(list) != 1 || list[0].Field != want {
			t.Errorf("%s: %v, want a fault of %s alone", text, err, want)
		}
	}
}

// A house may hang no ornaments: by rule none of no type, and by shape none that cover nothing. Then no color has a share.
func TestNoOrnaments(t *testing.T) {
	colors, err := palette.CommonPractice().ParsePalette("crimson,darkgreen,gold,ivory")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []palette.Palette{nil, colors} {
		for _, by := range []string{"rule", "shape"} {
			r := job.Request{House: job.CommonPractice(), Colors: c, Trees: []job.Tree{{Tree: sizing.Tree{Height: 7 * units.Foot}, SizeBy: by}}}
			r.House.Trees.TypesPerFoot, r.House.Look.Cover = 0, 0
			p, err := job.Make(r)
			if err != nil {
				t.Fatal(err)
			}
			if tree := p.Trees[0]; len(tree.Pieces) > 0 || slices.ContainsFunc(tree.Shares, func(s shopping.Share) bool { return s.Item.Kind == shopping.Ornament }) {
				t.Errorf("by %s in %d colors: %v", by, len(c), tree.Shares)
			}
		}
	}
}
