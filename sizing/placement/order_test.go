package placement_test

import (
	"errors"
	"slices"
	"testing"

	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// Every place is in one section, between its heights and on its face; sections
// come from the floor up and with the clock, and in each the deep come first and
// then the low.
func TestSections(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := placement.Order{
			Level: units.Length(rapid.IntRange(1, 60).Draw(t, "level, in")) * units.Inch,
			Faces: rapid.IntRange(1, 12).Draw(t, "faces"),
			Reach: units.Length(rapid.IntRange(1, 100).Draw(t, "reach, in")) * units.Inch,
		}
		var given []placement.Place
		for range rapid.IntRange(0, 40).Draw(t, "places") {
			given = append(given, placement.Place{
				Height:  units.Length(rapid.IntRange(0, 1200).Draw(t, "height, in/10")) * units.Inch / 10,
				Azimuth: placement.Angle(rapid.IntRange(-36, 36).Draw(t, "azimuth, 5°")) * 5 * placement.Degree,
				Depth:   units.Length(rapid.IntRange(0, 3).Draw(t, "depth, in")) * units.Inch,
				Item:    shopping.Item{Size: units.Length(len(given))},
			})
		}
		before := slices.Clone(given)
		sections, err := o.Sections(given)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(before, given) {
			t.Fatal("places have been moved about")
		}
		seen := make([]bool, len(given))
		level, turn := 0, 0.0
		for i, s := range sections {
			if len(s.Places) == 0 || s.To-s.From != o.Level || s.From != units.Length(s.Level-1)*o.Level {
				t.Fatalf("section %v from %v to %v of %v", s.Level, s.From, s.To, o.Level)
			}
			climb := false
			for j, p := range s.Places {
				if seen[p.Item.Size] || p != given[p.Item.Size] {
					t.Fatal("twice, or another")
				}
				seen[p.Item.Size] = true
				if p.Height < s.From || p.Height >= s.To {
					t.Fatalf("%v in %v", p, s)
				}
				climb = climb || p.Height > o.Reach
				if j > 0 {
					q := s.Places[j-1]
					if q.Depth < p.Depth || q.Depth == p.Depth && q.Height > p.Height {
						t.Fatalf("%v before %v", q, p)
					}
				}
			}
			if climb != s.Climb {
				t.Fatalf("%v: climb %v", s, s.Climb)
			}
			// Turns with the clock from 6, in faces.
			at := clockwise(s.Places[0].Azimuth)*float64(o.Faces)/360 + 0.5
			if at >= float64(o.Faces) {
				at -= float64(o.Faces)
			}
			at = float64(int(at))
			for _, p := range s.Places {
				x := clockwise(p.Azimuth)*float64(o.Faces)/360 + 0.5
				if x >= float64(o.Faces) {
					x -= float64(o.Faces)
				}
				if float64(int(x)) != at {
					t.Fatalf("%v and %v on one face of %d", s.Places[0], p, o.Faces)
				}
			}
			if i > 0 && (s.Level < level || s.Level == level && at <= turn) {
				t.Fatalf("%v comes too late", s)
			}
			level, turn = s.Level, at
		}
		if slices.Contains(seen, false) {
			t.Fatal("one is left out")
		}
	})
}

// clockwise returns how far an azimuth is from 6 o'clock with the clock, 0 to
// under 360: the left of the tree, at -90°, is a quarter of the way.
func clockwise(a placement.Angle) float64 {
	d := -a.Degrees()
	if d < 0 {
		d += 360
	}
	if d >= 360 {
		d -= 360
	}
	return d
}

// The usual order, by hand.
func TestUsualOrder(t *testing.T) {
	at := func(height units.Length, azimuth placement.Angle) placement.Place {
		return placement.Place{Height: height, Azimuth: azimuth}
	}
	for _, tc := range []struct {
		place  placement.Place
		reason string
		want   string
	}{
		{at(0, 0), "on the floor", "level 1, 0 ft to 2 ft, at 6 o'clock: 1 piece"},
		{at(2*units.Foot-1, 45_000), "on the border of 6 and 3, later is 6", "level 1, 0 ft to 2 ft, at 6 o'clock: 1 piece"},
		{at(2*units.Foot-1, 45_001), "just past it", "level 1, 0 ft to 2 ft, at 3 o'clock: 1 piece"},
		{at(2*units.Foot, -45_000), "on the border of 6 and 9, later is 9", "level 2, 2 ft to 4 ft, at 9 o'clock: 1 piece"},
		{at(2*units.Foot, -44_999), "just before it", "level 2, 2 ft to 4 ft, at 6 o'clock: 1 piece"},
		{at(6*units.Foot, 180_000), "as high as one reaches", "level 4, 6 ft to 8 ft, at 12 o'clock: 1 piece"},
		{at(6*units.Foot+1, 180_000), "and a little higher", "level 4, 6 ft to 8 ft, at 12 o'clock: 1 piece; use a ladder"},
		{at(100*units.Foot, -180_000), "the top of the tallest", "level 51, 100 ft to 102 ft, at 12 o'clock: 1 piece; use a ladder"},
	} {
		got, err := placement.Order{}.Sections([]placement.Place{tc.place})
		if err != nil || len(got) != 1 || got[0].String() != tc.want {
			t.Errorf("%s: %v, %v, want %s", tc.reason, got, err, tc.want)
		}
	}
	got, err := placement.Order{}.Sections([]placement.Place{at(0, 0), at(1, 0)})
	if err != nil || len(got) != 1 || got[0].String() != "level 1, 0 ft to 2 ft, at 6 o'clock: 2 pieces" {
		t.Errorf("%v, %v", got, err)
	}
	// Appending to the places of one section leaves the next one alone.
	two, err := placement.Order{}.Sections([]placement.Place{at(0, 0), at(3*units.Foot, 0)})
	if err != nil || cap(two[0].Places) != 1 {
		t.Errorf("%v, %v", two, err)
	}
	for _, o := range []placement.Order{
		{Level: -1},
		{Level: units.Inch - 1},
		{Level: 100*units.Foot + 1},
		{Faces: -1},
		{Faces: 13},
		{Reach: -1},
		{Reach: 100*units.Foot + 1},
	} {
		if got, err := o.Sections(nil); got != nil || !errors.Is(err, units.ErrRange) {
			t.Errorf("%+v: %v", o, err)
		}
	}
	for _, o := range []placement.Order{{Level: units.Inch, Faces: 1, Reach: 1}, {Level: 100 * units.Foot, Faces: 12, Reach: 100 * units.Foot}} {
		if _, err := o.Sections([]placement.Place{at(0, 0), at(100*units.Foot, 0)}); err != nil {
			t.Error(err)
		}
	}
	for _, h := range []units.Length{-1, 100*units.Foot + 1} {
		if got, err := (placement.Order{}).Sections([]placement.Place{at(h, 0)}); got != nil || !errors.Is(err, units.ErrRange) {
			t.Errorf("%v: %v", h, err)
		}
	}
}
