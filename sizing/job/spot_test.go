package job_test

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/job"
	"example.com/fircone/units"
)

// A caution that is not of all rooms names its own; a run without a fireplace has no steps at one.
func TestCautionsNameRooms(t *testing.T) {
	request, err := job.ParseRequest([]byte(`{"mantels": [
		{"room": "tea room", "length": "60 in", "leftWall": true},
		{"room": "stairs", "run": {"to": {"along": "8 ft", "below": "-4 ft"}, "balusters": 3, "swags": 2}, "perFoot": "4 oz", "hook": {"rating": "20 lb"}}
	]}`))
	if err != nil {
		t.Fatal(err)
	}
	plan, err := job.Make(request)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"wall left": "tea room", "opening not given": "tea room", "half hung": "stairs", "stairs": "", "hook label": ""}
	for _, c := range plan.Cautions {
		if room, is := want[c.Code]; is && c.Room == room {
			delete(want, c.Code)
		}
	}
	if len(want) > 0 {
		t.Errorf("%v are missing in %v", want, plan.Cautions)
	}
	for i, fire := range []bool{true, false} {
		text := fmt.Sprint(plan.Mantels[i].Steps)
		if strings.Contains(text, "hearth") != fire {
			t.Errorf("%v", text)
		}
	}
}

// Where fewer picks or ornaments hang than planned they are spread over the shelf: the places in inches, by hand.
func TestSpotsOfWhatHangs(t *testing.T) {
	for _, test := range []struct {
		reason           string
		shelf            string
		picks, ornaments int // on the shelves
		want             string
	}{
		{"as planned: 6 picks 8 in apart, 5 gaps", `"length": "4 ft"`, 6, 5, "p4 o8 p12 o16 p20 o24 p28 o32 p36 o40 p44"},
		{"2 ornaments in 5 gaps, alike at both ends", `"length": "4 ft"`, 6, 2, "p4 p12 o16 p20 p28 o32 p36 p44"},
		{"3 ornaments in 5 gaps", `"length": "4 ft"`, 6, 3, "p4 o8 p12 p20 o24 p28 p36 o40 p44"},
		{"3 picks: a third of 48 in for each, 4 ornaments in 2 gaps", `"length": "4 ft"`, 3, 4, "p8 o13.33 o18.67 p24 o29.33 o34.67 p40"},
		{"2 picks: a half for each, 5 ornaments in the one gap", `"length": "4 ft"`, 2, 5, "p12 o16 o20 o24 o28 o32 p36"},
		{"1 pick: no gap, the ornaments as planned", `"length": "4 ft"`, 1, 2, "o16 p24 o32"},
		{"no picks", `"length": "4 ft"`, 0, 1, "o24"},
		{"no ornaments", `"length": "4 ft"`, 2, 0, "p12 p36"},
		{"4 picks of 24, 2 layers of 2", `"length": "72 in", "hanging": {"look": "asymmetrical left"}`, 4, 3, "p0 o4.5 o9 o13.5 p18 p36 p54"},
		{"the same at the right", `"length": "72 in", "hanging": {"look": "asymmetrical right"}`, 4, 3, "p18 p36 p54 o58.5 o63 o67.5 p72"},
		// 144 in: 48 picks, 16 of them in the top layer, planned with 15 ornaments from 1 1/2 in, 3 in apart; a gap has 10 at most. Of these 15 places 4 stay free: the 2nd, 6th, 10th and 14th.
		{"2 picks of 48 leave one gap, for 11 no room in it", `"length": "12 ft", "hanging": {"look": "asymmetrical left"}`, 2, 11, "p0 o1.5 o7.5 o10.5 o13.5 o19.5 o22.5 o25.5 o31.5 o34.5 o37.5 o43.5 p72"},
	} {
		offers := []string{`{"name": "garland", "item": "base garland", "pack": "20 ft", "price": "1"}`}
		if test.picks > 0 {
			offers = append(offers, fmt.Sprintf(`{"name": "pick", "item": "picks, mantel", "pack": 1, "price": "1", "shelf": %d}`, test.picks))
		}
		if test.ornaments > 0 {
			offers = append(offers, fmt.Sprintf(`{"name": "ball", "item": "ornaments", "pack": 1, "price": "1", "shelf": %d}`, test.ornaments))
		}
		request, err := job.ParseRequest([]byte(`{"mantels": [{` + test.shelf + `}], "shop": {"offers": [` + strings.Join(offers, ", ") + `]}}`))
		if err != nil {
			t.Fatal(err)
		}
		plan, err := job.Make(request)
		if err != nil {
			t.Fatal(err)
		}
		spots := plan.Mantels[0].Spots
		slices.SortStableFunc(spots, func(a, b mantel.Spot) int { return cmp.Compare(a.Along, b.Along) })
		var got []string
		for _, s := range spots {
			inches := strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", float64(s.Along)/float64(units.Inch)), "0"), ".")
			got = append(got, s.Item.Kind.String()[:1]+inches)
		}
		if text := strings.Join(got, " "); text != test.want {
			t.Errorf("%s: %s, want %s", test.reason, text, test.want)
		}
	}
}
