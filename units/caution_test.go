package units_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"example.com/fircone/units"
)

func ExampleCaution_String() {
	fmt.Println(units.Caution{Code: "metal", Text: "hang no electric lights on a metal tree", Source: "NFPA 1 section 10.13 (2015), quoted"})
	// Output: hang no electric lights on a metal tree (NFPA 1 section 10.13 (2015), quoted)
}

// A caution without a source is its text alone, and has no source in JSON.
func TestCaution(t *testing.T) {
	for _, row := range []struct {
		c          units.Caution
		text, json string
	}{
		{units.Caution{Code: "label", Text: "follow the label"}, "follow the label", `{"code":"label","text":"follow the label"}`},
		{units.Caution{Code: "label", Text: "follow the label", Source: "common practice"}, "follow the label (common practice)", `{"code":"label","text":"follow the label","source":"common practice"}`},
		{units.Caution{Code: "wall left", Room: "tea room", Text: "nothing falls at the left end"}, "tea room: nothing falls at the left end", `{"code":"wall left","room":"tea room","text":"nothing falls at the left end"}`},
		{units.Caution{}, "", `{"code":"","text":""}`},
	} {
		if got := row.c.String(); got != row.text {
			t.Errorf("%+v reads %q, want %q", row.c, got, row.text)
		}
		text, err := json.Marshal(row.c)
		var back units.Caution
		if err != nil || string(text) != row.json || json.Unmarshal(text, &back) != nil || back != row.c {
			t.Errorf("%+v is %s, %v; want %s", row.c, text, err, row.json)
		}
	}
}
