package job_test

import (
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Common practice, by hand: a 9 ft tree takes 9 types of 9, 81 ft of garland and 900 lights.
func ExampleMake() {
	tree := job.Tree{Tree: sizing.Tree{Height: 9 * units.Foot}, Room: "ticket hall", Space: sizing.Room{Ceiling: 12 * units.Foot}}
	plan, err := job.Make(job.Request{Trees: []job.Tree{tree}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range plan.Trees[0].Shares {
		fmt.Printf("%s, %s: %v - %s\n", n.Room, n.Item, n.Quantity, n.Basis)
	}
	fmt.Println(plan.Trees[0].Fit.Verdict)
	// Output:
	// ticket hall, ornaments: 81 - 9 types, 1 for each whole foot of 9 ft; 9 of each, and 7 to 11 will do
	// ticket hall, garland: 81 ft - 9 ft for each foot of 9 ft
	// ticket hall, lights: 900 - 100 for each foot of 9 ft
	// fits
}

// January leads into next year: what there is then is owned, what was lost is bought again, and the turquoise birds, which fit no
// color, stay in the box. By hand: a 4 ft tree has 4 types of 4; ten of the 16 are bought, and next year the two that broke.
func ExampleMake_nextYear() {
	r, err := job.ParseRequest([]byte(`{
		"trees": [{"height": "4 ft", "room": "waiting room", "accents": []}], "colors": "crimson",
		"shop": {"offers": [{"item": "crimson ornaments", "name": "ball", "pack": 1, "price": "2.00"}]},
		"box": [{"name": "red glass", "color": "crimson", "count": 6}, {"name": "turquoise birds", "color": "turquoise", "count": 4}],
		"stand": "2026-11-28", "lost": [{"item": "crimson ornaments", "quantity": 2}]
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	plan, err := job.Make(r)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(plan.Basket.Total, plan.Stock)

	next := r
	next.Stand += 364
	next.Shop.Owned, next.Lost, next.Box = plan.Stock, nil, nil
	for i, m := range plan.Box.Matches { // if there was a box
		if !m.Fits {
			next.Box = append(next.Box, r.Box[i])
		}
	}
	plan, err = job.Make(next)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(plan.Basket.Total, plan.Stock, plan.Box.Left)
	// Output:
	// 20 [crimson ornaments: 14]
	// 4 [crimson ornaments: 16] 4
}

// Common practice, by hand: 21 picks for 7 ft.
func ExampleParseRequest() {
	request, err := job.ParseRequest([]byte(`{"trees": [{"height": "7 ft", "accents": ["picks"]}]}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	plan, err := job.Make(request)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(plan.Trees[0].Planned)
	// Output:
	// ornaments 49, picks 21, lights 700
}

// Three mistakes, and all of them are told.
func ExampleFaults() {
	_, err := job.ParseRequest([]byte(`{"trees": [{"height": "7"}, {"height": "200 ft"}], "colors": "crimson,beigeish"}`))
	for _, f := range job.Faults(err) {
		fmt.Printf("%s %q: want %s\n", f.Field, f.Value, f.Want)
	}
	// Output:
	// /trees/0/height "7": want a number and a unit, such as 7 ft 6 in
	// /colors "crimson,beigeish": want #rrggbb, #rgb or a color name
	// /trees/1/height "200 ft": want 1 ft to 100 ft
}

// A house that uses four picks a foot; by hand 28 for 7 ft.
func ExampleCommonPractice() {
	house := job.CommonPractice()
	house.Trees.PerFoot[shopping.Pick].Pieces = 4
	tree := job.Tree{Tree: sizing.Tree{Height: 7 * units.Foot}, Accents: []shopping.Kind{shopping.Pick}}
	plan, err := job.Make(job.Request{House: house, Trees: []job.Tree{tree}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(plan.Trees[0].Planned)
	// Output:
	// ornaments 49, picks 28, lights 700
}
