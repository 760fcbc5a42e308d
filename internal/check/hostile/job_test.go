package hostile

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"example.com/fircone/sizing/job"
	"example.com/fircone/units"
)

// everything is a request with something in every part, small enough to be planned some thousand times.
const everything = `{
	"trees": [{"room": "nave", "height": "7 ft", "base": "4 ft", "bareTip": "4 in", "bareBase": "3 in", "handle": "6 in", "public": true, "sizeBy": "shape", "accents": ["picks"],
		"space": {"ceiling": "12 ft", "fall": "1 in", "clearance": "1 ft", "topper": "8 in", "topperWidth": "6 in", "stand": "2 in"}, "lights": {"lamps": 100, "length": "33 ft", "power": "5 W", "endToEnd": 20}}],
	"mantels": [{"room": "parlor", "length": "5 ft", "height": "54 in", "depth": "8 in", "opening": {"width": "30 in", "height": "28 in", "gap": "16 in", "offset": "-6 in"}, "above": {"width": "40 in", "height": "24 in", "gap": "8 in"},
			"hanging": {"swags": 2, "sag": "5 in", "left": "1 ft", "fall": "2 ft", "thickness": "8 in"}, "perFoot": "6 oz", "hook": {"rating": "10 lb"}, "stockings": {"count": 4, "length": "18 in", "thickness": "6 in", "weight": "1 lb"},
			"lights": {"lamps": 100, "length": "16 ft", "power": "5 W"}, "outlet": {"along": "-2 ft", "below": "50 in"}},
		{"room": "stairs", "run": {"to": {"along": "10 ft", "below": "-7 ft"}, "balusters": 14, "swags": 5}, "perFoot": "8 oz", "hook": {"rating": "20 lb"}},
		{"room": "arch", "run": {"hooks": [{"along": "0 ft", "below": "0 ft"}, {"along": "3 ft", "below": "1 ft"}], "sag": "3 in", "left": "1 in"}}],
	"colors": "crimson,gold:metal", "on": {"name": "fir", "color": "#2f4f2f"},
	"box": [{"name": "red glass", "color": "#d81840", "finish": "shiny", "count": 9}],
	"shop": {"offers": [{"item": "crimson ornaments, 3 in", "name": "box of 12", "pack": 12, "price": "14.00", "shelf": 9}, {"item": "base garland", "name": "9 ft cedar", "pack": "9 ft", "price": "21.00"}], "owned": [{"item": "picks", "quantity": 50}], "budget": "300.00"},
	"stand": "2026-11-28", "down": "2027-01-06", "lost": [{"item": "picks", "quantity": 2}]}`

// Whatever value of a request is out of range, Make tells it, or plans: it does not panic, changes nothing of the request, and each of
// its faults leads to a place in the request.
func TestWholeJobs(t *testing.T) {
	if testing.Short() {
		t.Skip("plans some thousand jobs")
	}
	r, err := job.ParseRequest([]byte(everything))
	if err != nil {
		t.Fatal(err)
	}
	if p, err := job.Make(r); err != nil || len(p.Mantels[0].Loads) != 2 || len(p.Cartons) == 0 {
		t.Fatalf("%v, %v", p.Mantels, err)
	}
	calls, refused, exact, told := 0, 0, 0, 0
	for _, e := range extremes(reflect.ValueOf(r), true) {
		calls++
		spoilt := e.value.Interface().(job.Request)
		before := fmt.Sprintf("%#v", spoilt)
		p, err, panicked := attempt(spoilt)
		wrong := ""
		switch {
		case panicked != nil:
			wrong = fmt.Sprintf("panic: %v", panicked)
		case fmt.Sprintf("%#v", spoilt) != before:
			wrong = "the request is changed"
		case err == nil:
			if hasNaN(reflect.ValueOf(p)) {
				wrong = "a figure is no number"
			}
		case !reflect.ValueOf(p).IsZero():
			wrong = "a plan beside an error"
		default:
			refused++
			faults := job.Faults(err)
			if len(faults) == 0 {
				wrong = err.Error() + " is no list of faults"
			}
			hit := false
			for _, f := range faults {
				if f.Func != "job.Make" || f.Err == nil || f.Want == "" && !errors.Is(f, units.ErrSyntax) || !resolves(e.value, f.Field) {
					wrong = fmt.Sprintf("%#v", f)
				}
				hit = hit || f.Field == e.pointer || strings.HasPrefix(f.Field, e.pointer+"/") || strings.HasPrefix(e.pointer, f.Field+"/")
			}
			if hit {
				exact++
			} else {
				t.Logf("at %s: %v", e.pointer, err)
			}
		}
		if wrong != "" {
			if told++; told <= 10 {
				t.Errorf("%s at %s: %s", shorten(e.value), e.pointer, wrong)
			}
		}
	}
	t.Logf("%d requests, of which %d were refused; %d errors name the very value", calls, refused, exact)
	if calls < 1_000 || refused < calls/10 || exact < refused*8/10 {
		t.Errorf("%d requests, %d refused, %d with the place that is to blame", calls, refused, exact)
	}
}

// attempt calls Make.
func attempt(r job.Request) (p job.Plan, err error, panicked any) {
	defer func() { panicked = recover() }()
	p, err = job.Make(r)
	return
}
