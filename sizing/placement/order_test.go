package placement_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// Every place is hung once, in order, from a station that reaches it: what is out of
// reach first, then the ladders from the tallest down, the floor last.
func TestStations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := placement.Order{
			Ladder: units.Length(rapid.IntRange(0, 16).Draw(t, "ladder, ft")) * units.Foot,
			Side:   units.Length(rapid.IntRange(12, 48).Draw(t, "side, in")) * units.Inch,
		}
		var given []placement.Place
		for range rapid.IntRange(0, 40).Draw(t, "places") {
			azimuth := placement.Angle(rapid.IntRange(-35, 36).Draw(t, "azimuth, 5°")) * 5 * placement.Degree
			r := units.Length(rapid.IntRange(1, 100).Draw(t, "radius, in")) * units.Inch
			sin, cos := math.Sincos(azimuth.Degrees() / 180 * math.Pi)
			given = append(given, placement.Place{
				Height:  units.Length(rapid.IntRange(0, 400).Draw(t, "height, in")) * units.Inch,
				Azimuth: azimuth,
				At:      placement.Position{X: units.Length(float64(r) * sin), Y: units.Length(-float64(r) * cos)},
				Item:    shopping.Item{Size: units.Length(len(given))},
			})
		}
		before := slices.Clone(given)
		stations, err := o.Stations(given)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(before, given) {
			t.Fatal("places have been moved about")
		}
		seen := make([]bool, len(given))
		number := 0
		for i, s := range stations {
			if s.First != number+1 || len(s.Places) == 0 || s.Ladder.Lift && s.Ladder.Size != 0 {
				t.Fatalf("%+v", s)
			}
			if i > 0 {
				q := stations[i-1]
				if s.Ladder.Lift && !q.Ladder.Lift || s.Ladder.Size > q.Ladder.Size && !q.Ladder.Lift {
					t.Fatalf("%v after %v", s, q)
				}
			}
			if (s.Ladder.Lift || s.Ladder.Size > 0) != (len(s.Ladder.Cautions) > 0) {
				t.Fatalf("%v: cautions %v", s, s.Ladder.Cautions)
			}
			side := o.Side
			if s.Ladder.Size == 0 {
				side = side * 3 / 2
			}
			wide, low, high := 0.0, 0.0, 0.0
			for j, p := range s.Places {
				number++
				was := p
				was.Left = 0
				if seen[p.Item.Size] || was != given[p.Item.Size] {
					t.Fatalf("%v: twice, or another", p)
				}
				seen[p.Item.Size] = true
				wide = max(wide, math.Hypot(float64(p.At.X), float64(p.At.Y)))
				off := math.Remainder((p.Azimuth - s.Places[0].Azimuth).Degrees(), 360)
				low, high = min(low, off), max(high, off)
				ladder := s.Ladder.Size
				switch {
				case s.Ladder.Lift:
					if p.Height <= 6*units.Foot || o.Ladder != 0 && p.Height <= o.Ladder && o.Ladder >= 4*units.Foot {
						t.Fatalf("%v can be reached", p)
					}
				case ladder == 0 && p.Height > 6*units.Foot || ladder > 0 && (p.Height > ladder+4*units.Foot || p.Height < ladder-2*units.Foot || p.Height <= 6*units.Foot):
					t.Fatalf("%v from a ladder of %v", p, ladder)
				}
				if p.Height < s.From || p.Height > s.To {
					t.Fatalf("%v is not from %v to %v", p, s.From, s.To)
				}
				if j > 0 && p.Height > s.Places[j-1].Height+units.Foot {
					t.Fatalf("%v after %v", p, s.Places[j-1])
				}
			}
			// All are within reach to the side of the middle of the group.
			if span := high - low; span < 120 && wide*math.Sin(span/2*math.Pi/180) > float64(side)*1.001+1e6 {
				t.Fatalf("%v spans %v° at %v with a reach of %v", s, span, units.Length(wide), side)
			}
		}
		if slices.Contains(seen, false) {
			t.Fatal("one is left out")
		}
	})
}

// On a tree of 9 ft and on one of 15 ft: fewer than one station for five pieces, and no two
// steps of a station read alike, their numbers apart.
func TestStationsOfTrees(t *testing.T) {
	for _, tc := range []struct {
		feet  units.Length
		types int
		most  int
	}{{9, 9, 17}, {15, 15, 44}} {
		height := tc.feet * units.Foot
		layout := placement.Layout{Tree: sizing.Tree{Height: height, BareTip: height / 12, Handle: height / 12}}
		all := places(t, layout, dressing(tc.types, tc.types))
		stations, err := placement.Order{}.Stations(all)
		if err != nil {
			t.Fatal(err)
		}
		if len(stations) > tc.most {
			t.Errorf("%v: %d stations for %d pieces", height, len(stations), len(all))
		}
		for _, s := range stations {
			read := map[string]bool{}
			for _, text := range strings.Split(s.String(), "\n")[1:] {
				_, text, _ = strings.Cut(text, ": ")
				_, text, _ = strings.Cut(text, ": ") // without what it is
				if text == "" || read[text] {
					t.Errorf("%v: twice %q", s, text)
				}
				read[text] = true
			}
		}
		if testing.Verbose() {
			for _, s := range stations {
				t.Log(s)
			}
		}
	}
}

// By hand: 6 ft are reached from the floor, 8 ft from a 4 ft ladder and 10 ft from one of
// 6 ft (makers' labels, from memory); two pieces an arm apart are one station.
func TestUsualOrder(t *testing.T) {
	at := func(height units.Length, azimuth placement.Angle) placement.Place {
		sin, cos := math.Sincos(azimuth.Degrees() / 180 * math.Pi)
		return placement.Place{
			Item: shopping.Item{Kind: shopping.Ornament, Type: "star"}, Height: height, Azimuth: azimuth,
			At: placement.Position{X: units.Length(2 * float64(units.Foot) * sin), Y: units.Length(-2 * float64(units.Foot) * cos), Z: height},
		}
	}
	const ft, in, deg = units.Foot, units.Inch, placement.Degree
	for _, tc := range []struct {
		places []placement.Place
		reason string
		want   []string
	}{
		{[]placement.Place{at(0, 0)}, "on the floor", []string{"1 to 1: on the floor at 6 o'clock, 0 ft up"}},
		{[]placement.Place{at(6*ft, 180*deg)}, "as high as one reaches", []string{"1 to 1: on the floor at 12 o'clock, 6 ft up"}},
		{[]placement.Place{at(6*ft+1, 180*deg)}, "and a little higher", []string{"1 to 1: a 4 ft stepladder at 12 o'clock, 6 ft up"}},
		{[]placement.Place{at(20*ft+1, 0), at(9*ft, 0), at(7*ft, 20*deg), at(3*ft, 0)}, "from the top down", []string{
			"1 to 1: out of reach of the ladder at 6 o'clock, 20 ft up",
			"2 to 3: a 6 ft stepladder at 6 o'clock, 7 ft to 9 ft up",
			"4 to 4: on the floor at 6 o'clock, 3 ft up",
		}},
		{[]placement.Place{at(4*ft, 0), at(4*ft, 90*deg), at(4*ft, -90*deg), at(4*ft, 180*deg)}, "four sides of a thin tree", []string{
			"1 to 2: on the floor at 8 o'clock, 4 ft up",
			"3 to 4: on the floor at 2 o'clock, 4 ft up",
		}},
		{[]placement.Place{at(3*ft, 0), at(0, 0)}, "down to the floor", []string{"1 to 2: on the floor at 6 o'clock, 0 ft to 3 ft up"}},
		{[]placement.Place{at(9*ft, 0), at(6*ft, 0)}, "what the floor reaches is not hung from a ladder", []string{
			"1 to 1: a 6 ft stepladder at 6 o'clock, 9 ft up",
			"2 to 2: on the floor at 6 o'clock, 6 ft up",
		}},
		{[]placement.Place{at(4*ft, 180*deg), at(4*ft, 10*deg)}, "the front before the back", []string{
			"1 to 1: on the floor at 6 o'clock, 4 ft up",
			"2 to 2: on the floor at 12 o'clock, 4 ft up",
		}},
		{[]placement.Place{at(4*ft, 60*deg), at(4*ft, -60*deg)}, "a third of a turn", []string{"1 to 2: on the floor at 6 o'clock, 4 ft up"}},
		{[]placement.Place{at(4*ft, -100*deg), at(4*ft, 90*deg)}, "the right side, nearer to the front", []string{
			"1 to 1: on the floor at 3 o'clock, 4 ft up",
			"2 to 2: on the floor at 9 o'clock, 4 ft up",
		}},
		{[]placement.Place{at(4*ft, 100*deg), at(4*ft, 60*deg), at(4*ft, -10*deg), at(4*ft, -50*deg)}, "twice 40° rather than 110° and one by itself", []string{
			"1 to 2: on the floor at 7 o'clock, 4 ft up",
			"3 to 4: on the floor at 3 o'clock, 4 ft up",
		}},
	} {
		got, err := placement.Order{}.Stations(tc.places)
		var texts []string
		for _, s := range got {
			where, _, _ := strings.Cut(s.String(), ":")
			texts = append(texts, fmt.Sprintf("%d to %d: %s", s.First, s.First+len(s.Places)-1, where))
		}
		if err != nil || !slices.Equal(texts, tc.want) {
			t.Errorf("%s: %q, %v, want %q", tc.reason, texts, err, tc.want)
		}
	}
	// A ladder of 4 ft does not reach 9 ft.
	got, err := placement.Order{Ladder: 4 * ft}.Stations([]placement.Place{at(9*ft, 0), at(8*ft, 0)})
	if err != nil || len(got) != 2 || !got[0].Ladder.Lift || got[0].Ladder.Cautions[0].Code != "short ladder" || got[1].Ladder.Lift || got[1].Ladder.Size != 4*ft {
		t.Errorf("%v, %v", got, err)
	}
	// A reach of 1 ft to each side, 2 ft from the trunk, is 2·asin(1/2) = 60° from a ladder; from the floor half
	// as much again, 2·asin(3/4) = 97.2°. What hangs deep is reached from the tips, too.
	for _, tc := range []struct {
		height units.Length
		apart  placement.Angle
		want   int
	}{{9 * ft, 59 * deg, 1}, {9 * ft, 61 * deg, 2}, {3 * ft, 97 * deg, 1}, {3 * ft, 98 * deg, 2}} {
		first, second := at(tc.height, 170*deg), at(tc.height, 170*deg+tc.apart-360*deg)
		for _, p := range []*placement.Place{&first, &second} {
			p.At.X, p.At.Y, p.Depth = p.At.X/2, p.At.Y/2, ft
		}
		if got, err := (placement.Order{Side: ft}).Stations([]placement.Place{first, second}); err != nil || len(got) != tc.want {
			t.Errorf("two that are %v apart, %v up: %v, %v, want %d stations", tc.apart, tc.height, got, err, tc.want)
		}
	}
	// 2 ft from the trunk a twelfth of the way round is 2 ft · π/6 = 12.6 in, and the next lower row that has pieces goes the other way.
	got, err = placement.Order{}.Stations([]placement.Place{at(5*ft, -15*deg), at(5*ft-in, 15*deg), at(3*ft, -15*deg), at(3*ft, 15*deg)})
	if err != nil || len(got) != 1 {
		t.Fatal(got, err)
	}
	for i, want := range []string{
		"1: ornaments, star: 5 ft up at 7 o'clock, 6 1/2 in left of the middle",
		"2: ornaments, star: 4 ft 11 in up at 6 o'clock, 1 ft 1/2 in right of the last",
		"3: ornaments, star: 3 ft up at 6 o'clock, straight below the last",
		"4: ornaments, star: 3 ft up at 7 o'clock, 1 ft 1/2 in left of the last",
	} {
		if text := strings.Split(got[0].String(), "\n")[1+i]; text != want {
			t.Errorf("%q, want %q", text, want)
		}
	}
	// Less than a quarter inch off is straight below or above.
	for _, tc := range []struct {
		off, up units.Length
		want    string
	}{
		{0, 0, "straight below the last"},
		{in/4 - 1, -in, "straight below the last"},
		{1 - in/4, in, "straight above the last"},
		{in / 4, 0, "1/2 in left of the last"},
		{-in / 4, 0, "1/2 in right of the last"},
	} {
		first, second := at(5*ft, 0), at(5*ft+tc.up, 0)
		second.Left = tc.off
		want := "on the floor at 6 o'clock, 5 ft up:\n1: ornaments, star: 5 ft up at 6 o'clock, in the middle\n2: ornaments, star: " + (5*ft + tc.up).String() + " up at 6 o'clock, " + tc.want
		if text := (placement.Station{First: 1, Clock: 6, From: 5 * ft, To: 5 * ft, Places: []placement.Place{first, second}}).String(); text != want {
			t.Errorf("%q, want %q", text, want)
		}
	}
	for _, o := range []placement.Order{{Ladder: -1}, {Ladder: 16*ft + 1}, {Side: ft - 1}, {Side: 4*ft + 1}} {
		if got, err := o.Stations(nil); got != nil || !errors.Is(err, units.ErrRange) {
			t.Errorf("%+v: %v", o, err)
		}
	}
	// With the clock from 6. And 300 pieces around a thin tree, 101 to a third of a turn, are three stations.
	got, err = placement.Order{Side: ft}.Stations([]placement.Place{at(3*ft, 0), at(3*ft, 120*deg), at(3*ft, -120*deg)})
	if err != nil || len(got) != 3 || got[0].Clock != 6 || got[1].Clock != 10 || got[2].Clock != 2 {
		t.Errorf("with the clock: %v, %v", got, err)
	}
	var ring []placement.Place
	for i := range 300 {
		ring = append(ring, at(3*ft, placement.Angle(i-150)*1200))
	}
	if got, err := (placement.Order{}).Stations(ring); err != nil || len(got) != 3 || len(got[0].Places)+len(got[1].Places)+len(got[2].Places) != 300 {
		t.Errorf("a ring of 300: %d stations, %v", len(got), err)
	}
	for _, o := range []placement.Order{{Ladder: 16 * ft}, {Side: ft}, {Side: 4 * ft}} {
		if got, err := o.Stations([]placement.Place{at(0, 0), at(100*ft, 0)}); len(got) != 2 || err != nil {
			t.Errorf("%+v: %v, %v", o, got, err)
		}
	}
	for _, h := range []units.Length{-1, 100*ft + 1} {
		if got, err := (placement.Order{}).Stations([]placement.Place{at(h, 0)}); got != nil || !errors.Is(err, units.ErrRange) {
			t.Errorf("%v: %v", h, err)
		}
	}
}
