package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// call runs the program and returns what it printed and its exit status.
func call(args ...string) (stdout, stderr string, status int) {
	var out, errs bytes.Buffer
	status = run(args, &out, &errs)
	return out.String(), errs.String(), status
}

// Wrong input is one line that names the flag, the value and what is accepted.
func TestWrongFlags(t *testing.T) {
	for _, row := range []struct {
		args []string
		want []string
	}{
		{[]string{"-tree", "7"}, []string{"-tree", `"7"`, "7 ft 6 in"}},
		{[]string{"-tree", "700 ft"}, []string{"-tree", `"700 ft"`, "1 ft to 100 ft"}},
		{[]string{"-tree", "7", "ft"}, []string{"-tree", `"7"`}},
		{[]string{"-mantel", "6 in"}, []string{"-mantel", `"6 in"`, "1 ft to 50 ft"}},
		{[]string{"-look", "wonky"}, []string{"-look", `"wonky"`, "traditional, asymmetrical left or asymmetrical right"}},
		{[]string{"-accent", "tinsel"}, []string{"-accent", `"tinsel"`, "garland, picks or ribbon"}},
		{[]string{"-tree", "7 ft", "-look", "traditional"}, []string{"-look", "-mantel"}},
		{[]string{"-mantel", "5 ft", "-accent", "picks"}, []string{"-accent", "-tree"}},
		{[]string{"-tree", "7 ft", "-width", "20 ft"}, []string{"-width", `"20 ft"`, "10 1/2 in to 10 ft 6 in"}},
		{[]string{"-tree", "7 ft", "-taper", "fat"}, []string{"-taper", `"fat"`, "full, slim or pencil"}},
		{[]string{"-tree", "7 ft", "-where", "attic"}, []string{"-where", `"attic"`, "corner"}},
		{[]string{"-tree", "7 ft", "-ceiling", "2 ft"}, []string{"-ceiling", `"2 ft"`, "3 ft to 150 ft"}},
		{[]string{"-tree", "7 ft", "-size-by", "guess"}, []string{"-size-by", `"guess"`, "auto, rule or shape"}},
		{[]string{"-tree", "7 ft", "-string", "100 lamps"}, []string{"-string", `"100 lamps"`, "33 ft, 5 W"}},
		{[]string{"-tree", "7 ft", "-string", "0 lamps, 33 ft, 5 W"}, []string{"-string", `"0"`, "1 to 10000"}},
		{[]string{"-tree", "7 ft", "-string", "100 lamps, 33 ft, 0 W"}, []string{"-string", `"0 W"`, "1 mW to 10 kW"}},
		{[]string{"-tree", "7 ft", "-string", "100 lamps, 0 ft, 5 W"}, []string{"-string", `"0 ft"`, "1 in to 1000 ft"}},
		{[]string{"-tree", "7 ft", "-colors", "beigeish"}, []string{"-colors", `"beigeish"`}},
		{[]string{"-tree", "7 ft", "-colors", "red,red"}, []string{"-colors", "red"}},
		{[]string{"-request", "no-such-file.json"}, []string{"no-such-file.json"}},
		{[]string{"-request", "demo/station.json", "-tree", "7 ft"}, []string{"-request", "-tree"}},
		{[]string{"-budget", "twelve"}, []string{"-budget", `"twelve"`, "120.00"}},
		{[]string{"-budget", "-1"}, []string{"-budget", `"-1"`, "0 to 1000000000"}},
		{[]string{"-units", "cubits"}, []string{"-units", `"cubits"`}},
		{[]string{"-mantel", "5 ft", "-mantel-height", "3 in"}, []string{"-mantel-height", `"3 in"`, "1 ft to 50 ft"}},
		{[]string{"-mantel", "5 ft", "-mantel-depth", "20 ft"}, []string{"-mantel-depth", `"20 ft"`, "10 ft"}},
		{[]string{"-mantel", "5 ft", "-opening", "36 in"}, []string{"-opening", `"36 in"`, "36 in x 30 in @ 14 in"}},
		{[]string{"-mantel", "5 ft", "-swags", "-3"}, []string{"-swags", `"-3"`, "0 to 100"}},
		{[]string{"-mantel", "5 ft", "-swags", "3", "-sag", "60 ft"}, []string{"-sag", `"60 ft"`, "50 ft"}},
		{[]string{"-mantel", "5 ft", "-sag", "6 in"}, []string{"-sag", "-swags"}},
		{[]string{"-mantel", "5 ft", "-hook-rating", "5 lb"}, []string{"-hook-rating", "-garland-weight"}},
		{[]string{"-mantel", "5 ft", "-hook-rating", "0 lb", "-garland-weight", "8 oz"}, []string{"-hook-rating", `"0 lb"`, "more than zero"}},
		{[]string{"-tree", "7 ft", "-width", "0 in"}, []string{"-width", `"0 ft"`, "more than zero"}},
		{[]string{"-tree", "7 ft", "-ribbon-fall", "2 ft"}, []string{"-ribbon-fall", "-mantel"}},
		{[]string{"-mantel", "7 ft", "-ribbon-fall", "2 ft"}, []string{"-ribbon-fall", "-look asymmetrical"}},
		{[]string{"-mantel", "5 ft", "-hook-rating", "-5 lb", "-garland-weight", "8 oz"}, []string{"-hook-rating", `"-5 lb"`, "1000 lb"}},
		{[]string{"-mantel", "5 ft", "-hook-rating", "5 lb", "-garland-weight", "90 lb"}, []string{"-garland-weight", `"90 lb"`, "20 lb"}},
		{[]string{"-nosuch"}, []string{"-nosuch", "-help"}},
		{[]string{"-exposure", "corner"}, []string{"-exposure", "did you mean -where?"}},
		{[]string{"-height", "7 ft"}, []string{"-height", "did you mean -mantel-height or -tree?"}},
		{[]string{"-treee", "7 ft"}, []string{"-treee", "did you mean -tree?"}},
		{[]string{"-mantel", "5 ft", "-swags", "two"}, []string{"-swags", `"two"`, "a whole number"}},
		{[]string{"-tree", "7 ft", "-quote"}, []string{"-quote", "-stand", "2026-11-28"}},
		{[]string{"-tree", "7 ft", "-stand", "tomorrow"}, []string{"-stand", `"tomorrow"`, "2026-11-28"}},
		{[]string{"-tree", "7 ft", "-stand", "2026-11-28", "-down", "2026-11-01"}, []string{"-down", `"2026-11-01"`, "2026-11-28"}},
		{[]string{"-prices", "hour"}, []string{"-prices", `"hour"`, "hour 45, visit 25"}},
		{[]string{"-prices", "hour -3"}, []string{"-prices", `"-3"`, "1000000"}},
		{[]string{"-prices", "hour 3, hour 4"}, []string{"-prices", `"hour 3, hour 4"`}},
		{[]string{"7 ft"}, []string{`"7 ft"`, "-tree"}},
		{[]string{"-tree", "7 ft", "-budget", "100"}, []string{"-budget", "-request"}},
	} {
		stdout, stderr, status := call(row.args...)
		if status != 2 || stdout != "" || strings.Count(stderr, "\n") != 1 || !strings.HasSuffix(stderr, "\n") {
			t.Errorf("%q: status %d, output %q, error %q; want 2 and one line of error", row.args, status, stdout, stderr)
		}
		for _, want := range row.want {
			if !strings.Contains(stderr, want) {
				t.Errorf("%q: error %q does not say %s", row.args, stderr, want)
			}
		}
	}
}

// Every wrong flag is told at once, and none in the words of a programmer.
func TestAllWrongFlags(t *testing.T) {
	stdout, stderr, status := call("-tree", "7", "-taper", "fat", "-exposure", "corner", "-colors", "beigeish", "-budget", "x", "-mantel", "6 in", "-ceiling", "0 ft")
	if status != 2 || stdout != "" || strings.Count(stderr, "\n") != 7 || strings.Contains(stderr, "units.") || strings.Contains(stderr, "palette.") {
		t.Fatalf("status %d, %q\n%s", status, stdout, stderr)
	}
	for _, want := range []string{"-tree", "-taper", "-where", "-colors", "-budget", "-mantel", "-ceiling"} {
		if !strings.Contains(stderr, want) {
			t.Errorf("nothing of %s in\n%s", want, stderr)
		}
	}
}

// The figures are common practice, worked by hand for these sizes.
func TestJSON(t *testing.T) {
	for _, row := range []struct {
		args []string
		want map[string]any
	}{
		{
			[]string{"-json", "-tree", "7 ft 6 in", "-mantel", "5 ft"},
			map[string]any{
				"trees/0/height": "7 ft 6 in", "trees/0/types": 7.0, "trees/0/each/min": 5.0, "trees/0/each/max": 9.0,
				"trees/0/rule/picks": 23.0, "trees/0/planned/garland": "67 ft 6 in", "trees/0/planned/ornaments": 49.0,
				"mantels/0/length": "5 ft", "mantels/0/hanging/look": "traditional",
				"mantels/0/shares/0/quantity": "7 ft", "mantels/0/shares/1/quantity": 8.0,
			},
		},
		{
			[]string{"-json", "-tree", "12 ft", "-mantel", "60 in", "-look", "asymmetrical", "-accent", "picks"},
			map[string]any{
				"trees/0/types": 12.0, "trees/0/planned/picks": 36.0, "trees/0/rule/garland": "108 ft", "trees/0/planned/garland": nil,
				"mantels/0/hanging/look": "asymmetrical left", "mantels/0/shares/0/quantity": "9 ft", "mantels/0/shares/1/quantity": 20.0,
			},
		},
		{
			[]string{"-json"},
			map[string]any{"trees/0/room": "ticket hall", "trees/1/height": "4 ft 6 in", "mantels/0/length": "5 ft 4 in"},
		},
	} {
		stdout, stderr, status := call(row.args...)
		var got any
		if err := json.Unmarshal([]byte(stdout), &got); err != nil || status != 0 || stderr != "" {
			t.Fatalf("%q: status %d, error %q, %v", row.args, status, stderr, err)
		}
		for path, want := range row.want {
			if v := at(got, path); v != want {
				t.Errorf("%q: %s is %v, want %v", row.args, path, v, want)
			}
		}
		shares, _ := at(got, "trees/0/shares").([]any)
		if len(shares) == 0 {
			t.Errorf("%q: no shares", row.args)
		}
		for _, n := range shares {
			for _, key := range []string{"item", "quantity", "basis", "source"} {
				if v := at(n, key); v == nil || v == "" {
					t.Errorf("%q: a need has no %s: %v", row.args, key, n)
				}
			}
		}
	}
}

// at returns the value at a path such as trees/0/rule/picks.
func at(v any, path string) any {
	for name := range strings.SplitSeq(path, "/") {
		switch o := v.(type) {
		case map[string]any:
			v = o[name]
		case []any:
			i, err := strconv.Atoi(name)
			if err != nil || i >= len(o) {
				return nil
			}
			v = o[i]
		}
	}
	return v
}

// A file with several mistakes is told all of them, a line each.
func TestAllMistakes(t *testing.T) {
	file := filepath.Join(t.TempDir(), "job.json")
	text := `{"trees":[{"height":"7"},{"height":"7 ft","taper":"wide","base":"90 ft"}],"mantels":[{"length":"6 in"}],"shop":{"offers":[{"item":"pciks","name":"a","pack":1,"price":"x"}]}}`
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	stdout, stderr, status := call("-request", file)
	if status != 2 || stdout != "" || strings.Count(stderr, "\n") != 6 {
		t.Fatalf("status %d, %q, %s", status, stdout, stderr)
	}
	for _, pointer := range []string{"/trees/0/height", "/trees/1/taper", "/trees/1/base", "/mantels/0/length", "/shop/offers/0/item", "/shop/offers/0/price"} {
		if !strings.Contains(stderr, "plan: "+pointer+" ") {
			t.Errorf("nothing of %s in\n%s", pointer, stderr)
		}
	}
}

// The station is at most 90 lines, a hotel of three trees and two mantels at most 150, and no
// line of them is wider than a page.
func TestLineCounts(t *testing.T) {
	for _, row := range []struct {
		args []string
		most int
	}{
		{nil, 90},
		{[]string{"-request", "demo/station.json"}, 90},
		{[]string{"-request", "testdata/hotel.json"}, 150},
		{[]string{"-units", "metric"}, 90},
	} {
		stdout, stderr, status := call(row.args...)
		if n := strings.Count(stdout, "\n"); status != 0 || n > row.most || n < 20 {
			t.Errorf("%q: status %d, %d lines, want at most %d; %s", row.args, status, n, row.most, stderr)
		}
		for line := range strings.Lines(stdout) {
			if n := len([]rune(strings.TrimRight(line, "\n"))); n > 79 {
				t.Errorf("%q: a line of %d: %q", row.args, n, line)
			}
		}
	}
}

// The sheet says what to buy first, then each room, then what to mind; why, only if asked.
func TestSheet(t *testing.T) {
	stdout, stderr, status := call()
	if status != 0 || stderr != "" {
		t.Fatalf("status %d, error %q", status, stderr)
	}
	text := strings.Join(strings.Fields(stdout), " ")
	last := -1
	for _, want := range []string{"TO BUY", "total", "back into the box", "TICKET HALL", "81 ft", "7 to 11 of each", "WAITING ROOM", "TEA ROOM", "COLORS", "#1d751d", "TAKE CARE", "before a fire is lit"} {
		i := strings.Index(text, want)
		if i <= last {
			t.Errorf("the sheet does not say %q, or not there", want)
		}
		last = i
	}
	for _, want := range []string{"900: 9 strings of 100, 1 plug, 45 W, limit 1440 W, 80 % of 15 A", "planned 27, budget allows 29: 20 of 2 in (2 types), 9 of 3 1/8 in"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	why, _, _ := call("-why")
	for _, want := range []string{"9 ft for each foot of 9 ft", "(common practice)"} {
		if strings.Contains(stdout, want) || !strings.Contains(why, want) {
			t.Errorf("%q is to be said with -why only", want)
		}
	}
	if help, _, status := call("-help"); status != 0 || !strings.Contains(help, "-swags N") || !strings.Contains(help, "-tree LENGTH") || !strings.Contains(help, "-where PLACE") {
		t.Errorf("help: status %d, %q", status, help)
	}
}

// What the usual accents are, and what is asked for.
func TestAccent(t *testing.T) {
	for accent, want := range map[string][2]bool{"garland": {true, false}, "picks": {false, true}, "garland,picks": {true, true}, "": {true, false}} {
		args := []string{"-tree", "7 ft"}
		if accent != "" {
			args = append(args, "-accent", accent)
		}
		stdout, stderr, _ := call(args...)
		got := [2]bool{strings.Contains(stdout, "\n  garland  "), strings.Contains(stdout, "\n  picks  ")}
		if got != want {
			t.Errorf("accent %q: garland and picks %v, want %v\n%s%s", accent, got, want, stdout, stderr)
		}
	}
}

// The sheets of the work: what a client, a helper and whoever packs is told, in lines of at most 79 characters, and no cost
// of the house on the client's.
func TestWorkSheets(t *testing.T) {
	for _, row := range []struct {
		args      []string
		want, not []string
	}{
		{
			[]string{"-quote"},
			[]string{"QUOTE: to stand on 2026-11-28\n", "consultation", "done for you", "goods only", "  ticket hall, putting up ", "balance"},
			[]string{"an hour", "cost ", "TO BUY", "Taking down is not in it", "NO PRICE", "Goods are not"},
		},
		{[]string{"-quote", "-why"}, []string{"QUOTE: for the house", "at 45.00 an hour", "cost 33.50, and 50 %"}, nil},
		{[]string{"-quote", "-prices", "hour 90, visit 0"}, []string{"3 visits                                                              0.00"}, nil},
		{
			[]string{"-work"},
			[]string{"DATES\n", "2026-11-27  begin to put up", "PUTTING UP: 2 people, ", "[ ] 0:00-0:0", "1+2", "TAKING DOWN: on 2026-12-25, 1 h 9 min", "TAKING DOWN: on 2027-01-06, 36 min", "Use a ladder made for the height", "time your own work"},
			[]string{"QUOTE", "NEXT YEAR", " min for each"},
		},
		{[]string{"-work", "-why"}, []string{" min for each"}, nil},
		{[]string{"-pack"}, []string{"TO PACK: ", "[ ] 1 of ", "fragile (24-cell box", "NEXT YEAR", "Lift with bent knees"}, []string{"PUTTING UP"}},
		{[]string{"-quote", "-work", "-pack"}, []string{"QUOTE", "PUTTING UP", "TO PACK"}, nil},
		{
			[]string{"-tree", "7 ft", "-quote", "-work", "-pack", "-stand", "2026-11-28"},
			[]string{"Taking down is not in it.", "your tree", "NO PRICE is given of hour, visit and consultation", "Goods are not in it"},
			[]string{"TAKING DOWN", "take down and pack"},
		},
	} {
		stdout, stderr, status := call(row.args...)
		if status != 0 || stderr != "" {
			t.Errorf("%q: status %d, error %q", row.args, status, stderr)
		}
		for _, want := range row.want {
			if !strings.Contains(stdout, want) {
				t.Errorf("%q does not say %q:\n%s", row.args, want, stdout)
			}
		}
		for _, not := range row.not {
			if strings.Contains(stdout, not) {
				t.Errorf("%q says %q:\n%s", row.args, not, stdout)
			}
		}
		for line := range strings.Lines(stdout) {
			if n := len([]rune(strings.TrimSuffix(line, "\n"))); n > 79 {
				t.Errorf("%q: %d characters: %s", row.args, n, line)
			}
		}
	}
}

// Odd jobs read as a helper would carry them out. The figures are worked by hand: 7 ft with a stand of 4 in and a topper of 14 in is 6 in more
// than 8 ft; the third crimson box and the second hold 12 each, in place of what the rule asks for.
func TestOddJobs(t *testing.T) {
	for _, row := range []struct {
		args      []string
		says, not []string
	}{
		{[]string{"-request", "testdata/soldout.json"}, []string{
			"SHORT, the shelves have too few of one sort: ", "SHORT, on no shelf here: 9 ivory ornaments", "54 in all, too few", "crimson, 2 in planned 18, 16 others in their place",
			"crimson, others 24: 12 of 3 in, 12 of 4 in",
		}, nil},
		{[]string{"-request", "testdata/ceiling.json"}, []string{
			"does not fit: 6 in past the ceiling, 6 ft 4 in is the tallest with a topper of 1 ft 2 in and a stand of 4 in", "7 ft is the tallest with a topper of 10 in;",
		}, nil},
		{[]string{"-tree", "7 ft 6 in", "-ceiling", "8 ft"}, []string{"tight: 6 in to spare, 7 ft is the tallest; room for a topper of 4 in at most;"}, nil},
		{[]string{"-tree", "8 ft", "-ceiling", "8 ft"}, []string{"7 ft is the tallest; no room for a topper; tip from a stepladder of 4 ft"}, []string{"topper from"}},
		{[]string{"-tree", "15 ft", "-ceiling", "14 ft"}, []string{"13 ft is the tallest; no room for a topper."}, []string{"topper from", "tip from"}},
		{[]string{"-tree", "9 ft", "-ceiling", "9 ft 6 in"}, []string{"a topper of 4 in at most; topper from a stepladder of 6 ft"}, nil},
		{[]string{"-request", "testdata/stairs.json"}, []string{
			"no mantel lights (planned 100), 4 ft of extension cord", "6 hooks; at the newel, at every 3rd baluster and at the post 6 Hang the garland from hook to hook", "19 mantel picks; 4 in from its left end, then every 8 in", "Get too: 4 ft of extension cord (stairs)", "Fasten the garland along the top",
		}, nil},
		{[]string{"-mantel", "6 ft", "-swags", "3"}, []string{"; 3 swags hang from 4 hooks.", "1 ft 4 1/4 in from its left end, then every 8 5/8 in"}, nil},
		{[]string{"-tree", "14 ft", "-ceiling", "13 ft", "-stand", "2026-11-28", "-work"}, []string{"YOUR TREE does not fit: 1 ft past the ceiling, 12 ft is the tallest. PUTTING UP", "The tip stands farther in than a safe reach"}, nil},
		{[]string{"-work"}, []string{"Take the garland and the stockings down before a fire is lit"}, []string{"does not fit"}},
		{[]string{"-tree", "7 ft", "-colors", "navy,white", "-why"}, []string{"(tritan) color blindness: under 10 two look alike."}, nil},
		{[]string{"-tree", "12 ft"}, []string{"by rule; topper farther in than a stepladder reaches."}, []string{"topper from"}},
		{[]string{"-tree", "7 ft", "-tree-kind", "artificial"}, []string{"topper from a stepladder of 4 ft"}, []string{"Water the tree"}},
		{[]string{"-tree", "7 ft", "-string", "150 lamps, 33 ft, 5 W"}, []string{"700: 5 strings of 150, 750 in all, 2 plugs, 25 W"}, nil},
		{[]string{"-request", "testdata/stockings.json"}, []string{"hangs on them: 7 hooks; of the garland 0 ft from the left, then every 2 ft 8 in; of the stockings 1 ft 6 1/2 in from the left, then every 9 in 6 Hang the garland", "0 ft from the opening (stocking 1), want 3 ft. Worst as trim: distance from the opening 0 ft, at least 6 in", "Hang the stockings on their holders: 4 stockings"}, nil},
		{[]string{"-request", "testdata/ownstockings.json"}, []string{"[ ] hooks: 3 x pair at 6.50 19.50", "SHORT, on no shelf here: 4 stockings (tea room 4): bring your own, for which the list has hooks"}, nil},
		{[]string{"-request", "testdata/stairs.json", "-work"}, []string{"PUTTING UP: 2 people, 3 h, the least"}, []string{"0 min"}},
		{[]string{"-request", "testdata/overloaded.json", "-work"}, []string{
			"dress the mantel; call a second person to lift the garland", "tea room: more than a hook may carry at 2 places", "tea room: more than a hook may carry at 6 places", "Unplug before stringing",
		}, nil},
		{[]string{"-request", "testdata/shortgarland.json", "-work"}, []string{"it does not reach from end to end: do not hang it"}, []string{"dress the mantel"}},
		{[]string{"-request", "testdata/shortgarland.json"}, []string{"4 Do not hang the garland", "no mantel picks (planned 8) 3 Wire"}, []string{"along it"}},
		{[]string{"-quote", "-pack", "-stand", "2026-11-28"}, []string{"picks and mantel picks, 1 x bunch of 6", "8 mantel picks; ", "7 x 9 ft of garland"}, []string{"picks, mantel"}},
		{[]string{"-request", "testdata/metric.json"}, []string{
			"garland of 490 g a meter or less", "no more than 15 cm falling", "distance from the opening 0 m, at least 15.5 cm", "one may carry 400 g", "hooks with a breaking load of 5.32 kg or more", "190 to 370 g a meter", "an open flame stays 91.5 cm", "5 mantel picks (lounge 2, library 3)",
		}, []string{" oz", " ft", " lb", "inch", " foot"}},
		{[]string{"-request", "testdata/poor.json"}, []string{"NO GARLAND IS TO BE HAD FOR IT: it cannot be dressed", "7 ft 4 in of base garland (tea room 7 ft 4 in)", "1 Lay the garland on a table and fluff it: 6 ft", "no hooks are planned, and what holds it was not checked (parcel office)", "no ornaments (planned 5) 4 Hang"}, []string{"NO FIRE"}},
		{[]string{"-request", "testdata/typed.json"}, []string{"crimson, 2 in 18: 11 (ball), 7 (star) crimson 9 forest", "ivory, 3 1/8 in 6 (ball) ivory 3"}, nil},
		{[]string{"-request", "testdata/stores.json"}, []string{
			"5 x mixed box at 16.00 (14.50 each from 5 on; depot): 6 crimson, 6 forest green, 4 gold, 2 ivory ornaments in each 72.50",
			"9 x 9 ft strand at 6.90 (3 for 13.80; depot) 41.40", "tax, depot 12.59", "From stock: 9 crimson, 5 forest green, 6 gold, 3 ivory ornaments. Left",
		}, nil},
		{[]string{"-request", "testdata/owned.json"}, []string{
			"nothing total 0.00", "43 of 209 crimson,", "10 of 20 x 9 ft of garland", "10 of 12 x 100 lights, 1 of 3 x 50 lights", "1 ft 6 in off your own 9 ft strand",
		}, []string{"a your own"}},
		{[]string{"-budget", "90.00"}, []string{
			"planned 900, only 450: 4 strings of 100, 1 of 50; the label given is of a string of 100, and 5 of them draw 25 W from 1 plug: go by the labels of yours; limit 1440 W",
			"planned 150, only 100: 1 string of 100",
		}, nil},
		{nil, []string{
			"TO BUY IN THE SIZES BELOW: the fullest trees", "8 mantel picks; 1 ft 4 in from its left end, then every 8 in 3 Wire", "8 wire ties", "7 wire ties", "gaps from the left: 1, 3, 5 crimson; 2, 6 forest green; 4 gold; 7 ivory", "2 hooks; 0 ft and 5 ft 4 in from the left",
			"falling 1 ft at each end", "150: 1 string of 100, 1 of 50",
		}, nil},
		{[]string{"-mantel", "60 in", "-look", "asymmetrical left"}, []string{
			"20 mantel picks; 4 ft from its left end, then every 3 in; begin at the light end, the right; layer 1 from 7 ft 6 in to 8 ft 9 in; layer 2 from 5 ft 9 in to 7 ft 3 in; layer 3 from 4 ft to 5 ft 6 in",
		}, nil},
		{[]string{"-request", "testdata/uncut.json"}, []string{"85 ft 6 in (planned 81 ft), lapped 2 in: 1 x your own 6 ft, 9 x 9 ft strand"}, nil},
		// By hand, 3 holders 10 in apart in the middle of 6 ft: 26 in from its left end.
		{[]string{"-request", "testdata/odds.json"}, []string{
			"3 hooks; 2 ft 2 in from the left, then every 10 in", "let it fall, and hang the bells with it: 4 ft 6 in of mantel ribbon", "3 bells, 1 wire tie; it falls 2 ft",
			"Tie the garland to the rail at each place, from the lower end up; at the newel and at the post", "COLORS: crimson, gold (metal) they hold apart", "checked against a fire (parcels, office).",
			"OVERLOADED while it goes up, at up to 1 lb 11.6 oz", "one may carry 1 lb 9 oz. OVERLOADED while", "1 ft at the left (parcels).", "more than it may carry: hold each swag until the next one hangs (lamp room)",
			"one may carry 3.2 oz", "3 hooks; at the newel, at every baluster and at the post",
		}, nil},
		// By hand, a foot that falls at 8 oz on a fifth of a pound: 8 oz · 5 is a breaking load of 2 lb 8 oz. It is said once, on the page of its room.
		{[]string{"-mantel", "64 in", "-hook-rating", "1 lb", "-garland-weight", "8 oz"}, []string{
			"at most 8 oz on one; one may carry 3.2 oz. OVERLOADED: more than a hook may carry at 2 places: use hooks with a breaking load of 2 lb 8 oz or more;",
		}, []string{". More than a hook may carry"}},
		{[]string{"-tree", "7 ft", "-accent", "garland,picks"}, []string{"Two accents on one tree look overfull"}, nil},
		{[]string{"-units", "feet"}, []string{"20 of 2 in (2 types)"}, []string{"0.1"}},
	} {
		stdout, stderr, status := call(row.args...)
		text := strings.Join(strings.Fields(stdout), " ")
		if status != 0 {
			t.Errorf("%q: status %d, %s", row.args, status, stderr)
		}
		said := map[string]bool{}
		_, care, _ := strings.Cut(text, "TAKE CARE")
		for sentence := range strings.SplitSeq(care, ". ") {
			if said[sentence] {
				t.Errorf("%q says twice %q", row.args, sentence)
			}
			said[sentence] = true
		}
		for _, want := range row.says {
			if !strings.Contains(text, want) {
				t.Errorf("%q does not say %q", row.args, want)
			}
		}
		for _, not := range row.not {
			if strings.Contains(text, not) {
				t.Errorf("%q says %q", row.args, not)
			}
		}
	}
}
