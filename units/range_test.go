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

// A range comes back from JSON as it was.
func TestRange(t *testing.T) {
	for _, row := range []struct {
		reason string
		r      units.Range[units.Length]
		json   string
	}{
		{"usual", units.Range[units.Length]{Min: units.Inch, Max: units.Foot}, `{"min":"1 in","max":"1 ft"}`},
		{"the zero value", units.Range[units.Length]{}, `{"min":"0 ft","max":"0 ft"}`},
		{"turned round", units.Range[units.Length]{Min: units.Foot, Max: units.Inch}, `{"min":"1 ft","max":"1 in"}`},
		{"everything", units.Range[units.Length]{Min: math.MinInt64, Max: math.MaxInt64}, ""},
	} {
		text, err := json.Marshal(row.r)
		var back units.Range[units.Length]
		if err != nil || json.Unmarshal(text, &back) != nil || back != row.r || row.json != "" && string(text) != row.json {
			t.Errorf("%s: %s comes back as %v, %v", row.reason, text, back, err)
		}
	}
}
