package labor_test

import (
	"strings"
	"testing"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A caution is for what is past a limit: at the reach of 6 ft, on the highest stepladder (20 ft), alone, and with 40 lb to lift none is said.
func TestCautionsAtTheLimits(t *testing.T) {
	carton := func(weight units.Mass) []labor.Carton {
		return []labor.Carton{{Things: []labor.Thing{{Lot: shopping.Lot{Quantity: shopping.Quantity{Pieces: 1}}, Weight: weight}}}}
	}
	for _, row := range []struct {
		task    labor.Task
		cartons []labor.Carton
		want    string
	}{
		{labor.Task{Height: 6 * units.Foot, People: 1}, nil, ""},
		{labor.Task{Height: 6*units.Foot + 1, People: 1}, nil, "work ladder"},
		{labor.Task{Height: 20 * units.Foot, People: 1}, nil, "work ladder"},
		{labor.Task{Height: 20*units.Foot + 1, People: 1}, nil, "work ladder, platform"},
		{labor.Task{People: 2}, nil, "two people"},
		{labor.Task{People: 1}, carton(40 * units.Pound), "lifting"},
		{labor.Task{People: 1}, carton(40*units.Pound + 1), "two people, lifting"},
	} {
		var codes []string
		for _, c := range labor.StartingRates().Cautions([]labor.Task{row.task}, row.cartons) {
			codes = append(codes, c.Code)
		}
		if got := strings.Join(codes, ", "); got != row.want {
			t.Errorf("%+v: %s, want %s", row.task, got, row.want)
		}
	}
}
