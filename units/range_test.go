package units_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"example.com/fircone/units"
)

func ExampleRange_String() {
	fmt.Println(units.Range[int]{Min: 7, Max: 11})
	fmt.Println(units.Range[units.Length]{Min: 5 * units.Foot, Max: 6 * units.Foot})
	fmt.Println(units.Range[int]{Min: 7, Max: 7})
	// Output:
	// 7 to 11
	// 5 ft to 6 ft
	// 7
}

func ExampleRange_Contains() {
	each := units.Range[int]{Min: 5, Max: 9}
	fmt.Println(each.Contains(9), each.Contains(10))
	// Output: true false
}

// Both ends belong to a range, one that is turned round is empty, and a range comes
// back from JSON as it was.
func TestRange(t *testing.T) {
	for _, row := range []struct {
		reason string
		r      units.Range[units.Length]
		v      units.Length
		in     bool
		json   string
	}{
		{"below", units.Range[units.Length]{Min: units.Inch, Max: units.Foot}, units.Inch - 1, false, `{"min":"1 in","max":"1 ft"}`},
		{"the lower end", units.Range[units.Length]{Min: units.Inch, Max: units.Foot}, units.Inch, true, `{"min":"1 in","max":"1 ft"}`},
		{"the upper end", units.Range[units.Length]{Min: units.Inch, Max: units.Foot}, units.Foot, true, `{"min":"1 in","max":"1 ft"}`},
		{"above", units.Range[units.Length]{Min: units.Inch, Max: units.Foot}, units.Foot + 1, false, `{"min":"1 in","max":"1 ft"}`},
		{"the zero value", units.Range[units.Length]{}, 0, true, `{"min":"0 ft","max":"0 ft"}`},
		{"turned round", units.Range[units.Length]{Min: units.Foot, Max: units.Inch}, units.Inch, false, `{"min":"1 ft","max":"1 in"}`},
		{"everything", units.Range[units.Length]{Min: math.MinInt64, Max: math.MaxInt64}, 0, true, ""},
	} {
		if got := row.r.Contains(row.v); got != row.in {
			t.Errorf("%s: %v contains %v: %v", row.reason, row.r, row.v, got)
		}
		text, err := json.Marshal(row.r)
		var back units.Range[units.Length]
		if err != nil || json.Unmarshal(text, &back) != nil || back != row.r || row.json != "" && string(text) != row.json {
			t.Errorf("%s: %s comes back as %v, %v", row.reason, text, back, err)
		}
	}
}
