package job_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Common practice, by hand: 7 ft takes 49 balls, 63 ft of garland and 700 lights; the shop has
// 36 balls, and no lights.
func ExampleTreePlan_String() {
	plan, err := job.Make(job.Request{
		Trees: []job.Tree{{Tree: sizing.Tree{Height: 7 * units.Foot}, Room: "ticket hall"}},
		Shop: shopping.Shop{Offers: []shopping.Offer{
			{Item: shopping.Item{Kind: shopping.Ornament}, Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: decimal.NewFromInt(14), Shelf: 3},
			{Item: shopping.Item{Kind: shopping.Garland}, Name: "9 ft strand", Pack: shopping.Quantity{Length: 9 * units.Foot}, Price: decimal.NewFromInt(7)},
		}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(plan.Trees[0])
	// Output:
	// ticket hall, 7 ft tree:
	//     ornaments: 36, 49 planned
	//     garland: 63 ft
	//     lights: 0, 700 planned
}

// Common practice, by hand: the shelf of 64 in and 2 ft, a pick each 8 in, an ornament in each gap.
func ExampleMantelPlan_String() {
	plan, err := job.Make(job.Request{Mantels: []job.Mantel{{Mantel: mantel.Mantel{Length: 64 * units.Inch}, Room: "tea room"}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(plan.Mantels[0])
	// Output:
	// tea room, 5 ft 4 in mantel:
	//     base garland: 7 ft 4 in
	//     picks, mantel: 8
	//     ornaments: 7
	//     wire ties: 15
}

// Common practice, by hand: a metal tree of 2 ft takes 2 types of 2 and 6 picks, and no lights.
func ExamplePlan_String() {
	plan, err := job.Make(job.Request{Trees: []job.Tree{{
		Tree:    sizing.Tree{Height: 2 * units.Foot, Kind: sizing.Metal},
		Accents: []shopping.Kind{shopping.Pick}, Space: sizing.Room{NoTopper: true},
	}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(plan)
	// Output:
	// 2 ft tree:
	//     ornaments: 33
	//     picks: 2
	// take care:
	//     keep the tree at least 3 ft from fire, candles, radiators and vents (NFPA and ESFI holiday safety tips, quoted)
	//     hang no electric lights on a metal tree (NFPA 1 section 10.13 (2015), quoted)
	//     no ladder needed: do not stand on chairs (common practice)
}

// What is printed of a whole job, and of nothing.
func TestPlanText(t *testing.T) {
	plan, err := job.Make(job.Request{
		Trees:   []job.Tree{{Tree: sizing.Tree{Height: 7 * ft}}},
		Mantels: []job.Mantel{{Run: job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: 9 * ft}}}}}},
		Shop: shopping.Shop{Offers: []shopping.Offer{
			{Item: shopping.Item{Kind: shopping.Garland}, Name: "9 ft strand", Pack: shopping.Quantity{Length: 9 * ft}, Price: decimal.NewFromInt(7)},
		}},
	})
	if err != nil {
		t.Fatal(err)
	}
	text := plan.String()
	for _, part := range []string{plan.Trees[0].String(), plan.Mantels[0].String(), "basket:\n" + plan.Basket.String(), "take care:\n", plan.Cautions[0].String()} {
		if part == "" || !strings.Contains(text, part) {
			t.Errorf("no %q in\n%s", part, text)
		}
	}
	if got := plan.Mantels[0].String(); !strings.HasPrefix(got, "garland:\n    ") {
		t.Errorf("a run prints %q", got)
	}
	for _, got := range []string{job.Plan{}.String(), job.TreePlan{}.String(), job.MantelPlan{}.String()} {
		if got != "nothing was planned" {
			t.Errorf("zero prints %q", got)
		}
	}
}

// What stands in one room, or in none that is named, is told apart, so that each gets its own garland.
func TestRoomsToldApart(t *testing.T) {
	tree := func(room string) job.Tree { return job.Tree{Tree: sizing.Tree{Height: 7 * ft}, Room: room} }
	shelf := func(room string) job.Mantel { return job.Mantel{Mantel: mantel.Mantel{Length: 5 * ft}, Room: room} }
	run := func(room string) job.Mantel {
		return job.Mantel{Run: job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: 9 * ft}}}}, Room: room}
	}
	for _, test := range []struct {
		trees   []job.Tree
		mantels []job.Mantel
		want    []string
	}{
		{[]job.Tree{tree("")}, nil, []string{""}},
		{[]job.Tree{tree("a"), tree("b")}, []job.Mantel{shelf("c")}, []string{"a", "b", "c"}},
		{[]job.Tree{tree(""), tree("")}, []job.Mantel{shelf("")}, []string{"tree 1", "tree 2", "mantel"}},
		{[]job.Tree{tree("hall"), tree("tea room"), tree("hall")}, []job.Mantel{shelf("tea room"), run("hall"), run("stairs")}, []string{"hall, tree 1", "tea room, tree", "hall, tree 2", "tea room, mantel", "hall, garland", "stairs"}},
		// Two names that are given already are left to those who have them.
		{[]job.Tree{tree("hall"), tree("hall, tree 1"), tree("hall")}, []job.Mantel{shelf("hall, garland"), run("hall")}, []string{"hall, tree 2", "hall, tree 1", "hall, tree 3", "hall, garland", "hall, garland 1"}},
	} {
		plan, err := job.Make(job.Request{Trees: test.trees, Mantels: test.mantels})
		if err != nil {
			t.Error(err)
			continue
		}
		var got []string
		for _, p := range plan.Trees {
			got = append(got, p.Room)
			if p.Shares[0].Room != p.Room {
				t.Errorf("a tree in %q needs for %q", p.Room, p.Shares[0].Room)
			}
		}
		for _, p := range plan.Mantels {
			got = append(got, p.Room)
			if p.Shares[0].Room != p.Room {
				t.Errorf("a mantel in %q needs for %q", p.Room, p.Shares[0].Room)
			}
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("rooms %q, want %q", got, test.want)
		}
	}
	long := strings.Repeat("x", 56)
	if _, err := job.Make(job.Request{Trees: []job.Tree{tree(long), tree(long)}}); err != nil {
		t.Error(err)
	}
	for _, r := range []job.Request{
		{Trees: []job.Tree{tree(long + "xx"), tree(long + "xx")}},
		{Mantels: []job.Mantel{shelf(long), shelf(long)}},
	} {
		if _, err := job.Make(r); err == nil || !strings.Contains(err.Error(), "where several share it") {
			t.Errorf("a long name for two: %v", err)
		}
	}
}
