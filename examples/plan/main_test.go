package main

import (
	"bytes"
	"encoding/json"
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
		{[]string{"-look", "wonky"}, []string{"-look", `"wonky"`, "traditional or asymmetrical"}},
		{[]string{"-accent", "tinsel"}, []string{"-accent", `"tinsel"`, "garland, picks, ribbon or both"}},
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
		{[]string{"-tree", "7 ft", "-stock", "no-such-file.json"}, []string{"-stock", "no-such-file.json"}},
		{[]string{"-mantel", "5 ft", "-mantel-height", "3 in"}, []string{"-mantel-height", `"3 in"`, "1 ft to 50 ft"}},
		{[]string{"-mantel", "5 ft", "-mantel-depth", "20 ft"}, []string{"-mantel-depth", `"20 ft"`, "10 ft"}},
		{[]string{"-mantel", "5 ft", "-opening", "36 in"}, []string{"-opening", `"36 in"`, "36 in x 30 in @ 14 in"}},
		{[]string{"-mantel", "5 ft", "-swags", "-3"}, []string{"-swags", `"-3"`, "0 to 100"}},
		{[]string{"-mantel", "5 ft", "-swags", "3", "-sag", "60 ft"}, []string{"-sag", `"60 ft"`, "50 ft"}},
		{[]string{"-mantel", "5 ft", "-sag", "6 in"}, []string{"-sag", "-swags"}},
		{[]string{"-mantel", "5 ft", "-hook-rating", "5 lb"}, []string{"-hook-rating", "-garland-weight"}},
		{[]string{"-mantel", "5 ft", "-hook-rating", "0 lb", "-garland-weight", "8 oz"}, []string{"-hook-rating", `"0 lb"`, "more than zero"}},
		{[]string{"-tree", "7 ft", "-width", "0 in"}, []string{"-width", `"0 ft"`, "more than zero"}},
		{[]string{"-tree", "7 ft", "-ribbon-falls"}, []string{"-ribbon-falls", "-mantel"}},
		{[]string{"-mantel", "5 ft", "-hook-rating", "-5 lb", "-garland-weight", "8 oz"}, []string{"-hook-rating", `"-5 lb"`, "1000 lb"}},
		{[]string{"-mantel", "5 ft", "-hook-rating", "5 lb", "-garland-weight", "90 lb"}, []string{"-garland-weight", `"90 lb"`, "20 lb"}},
		{[]string{"-nosuch"}, []string{"-nosuch"}},
		{[]string{"7 ft"}, []string{`"7 ft"`, "-tree"}},
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

// The figures are common practice, worked by hand for these sizes.
func TestJSON(t *testing.T) {
	for _, row := range []struct {
		args []string
		want map[string]any
	}{
		{
			[]string{"-json", "-tree", "7 ft 6 in", "-mantel", "5 ft"},
			map[string]any{
				"tree.height": "7 ft 6 in", "tree.ornamentTypes": 7.0,
				"tree.ornamentsPerType.min": 5.0, "tree.ornamentsPerType.max": 9.0,
				"tree.ornaments.min": 35.0, "tree.ornaments.max": 63.0,
				"tree.picks": 23.0, "tree.garland": "67 ft 6 in",
				"mantel.length": "5 ft", "mantel.look": "traditional",
				"mantel.baseGarland": "7 ft", "mantel.picks": 8.0, "mantel.ribbon": "0 ft",
			},
		},
		{
			[]string{"-json", "-tree", "12 ft", "-mantel", "60 in", "-look", "asymmetrical", "-accent", "picks"},
			map[string]any{
				"tree.height": "12 ft", "tree.ornamentTypes": 12.0,
				"tree.ornamentsPerType.min": 10.0, "tree.ornamentsPerType.max": 14.0,
				"tree.picks": 36.0, "tree.garland": "108 ft",
				"mantel.length": "5 ft", "mantel.look": "asymmetrical",
				"mantel.baseGarland": "9 ft", "mantel.picks": 20.0, "mantel.ribbon": "4 ft 6 in",
			},
		},
		{
			[]string{"-json"},
			map[string]any{"tree.room": "ticket hall", "tree.height": "9 ft", "mantel.length": "5 ft 4 in"},
		},
	} {
		stdout, stderr, status := call(row.args...)
		var got map[string]any
		if err := json.Unmarshal([]byte(stdout), &got); err != nil || status != 0 || stderr != "" {
			t.Fatalf("%q: status %d, error %q, %v", row.args, status, stderr, err)
		}
		for path, want := range row.want {
			if v := at(got, path); v != want {
				t.Errorf("%q: %s is %v, want %v", row.args, path, v, want)
			}
		}
		needs, _ := got["needs"].([]any)
		if len(needs) == 0 {
			t.Errorf("%q: no needs", row.args)
		}
		for _, n := range needs {
			for _, key := range []string{"item", "quantity", "basis", "source"} {
				if v := at(n.(map[string]any), key); v == nil || v == "" {
					t.Errorf("%q: a need has no %s: %v", row.args, key, n)
				}
			}
		}
	}
}

// at returns the value at a path such as tree.ornaments.min.
func at(object map[string]any, path string) any {
	key, rest, more := strings.Cut(path, ".")
	if !more {
		return object[key]
	}
	inner, _ := object[key].(map[string]any)
	return at(inner, rest)
}

// The accent is one thing unless both are asked for.
func TestAccent(t *testing.T) {
	for accent, want := range map[string][2]bool{"garland": {true, false}, "picks": {false, true}, "both": {true, true}, "": {true, false}} {
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

// The sheet keeps to its width, and says what the station needs and why.
func TestSheet(t *testing.T) {
	stdout, stderr, status := call()
	if status != 0 || stderr != "" {
		t.Fatalf("status %d, error %q", status, stderr)
	}
	for _, want := range []string{"TICKET HALL", "WAITING ROOM", "TEA ROOM", "81 ft", "9 ft for each foot of 9 ft", "common practice", "7 to 11", "TAKE CARE", "Ladder", "one man in twelve", "#1d751d", "before a fire is lit"} {
		if !strings.Contains(strings.Join(strings.Fields(stdout), " "), want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	for line := range strings.Lines(stdout) {
		if n := len([]rune(strings.TrimRight(line, "\n"))); n > 76 {
			t.Errorf("a line of %d: %q", n, line)
		}
	}
	if help, _, status := call("-help"); status != 0 || !strings.Contains(help, "-mantel") {
		t.Errorf("help: status %d, %q", status, help)
	}
}
