package job_test

import (
	"errors"
	"maps"
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
