package labor_test

import (
	"encoding/json"
	"errors"
	"testing"
	"time"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// The days of ten thousand years, against package time: all from 1890 to 2110, and else every seventh.
func TestDateAgainstTime(t *testing.T) {
	day := time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC)
	last := labor.Date(0)
	for d := labor.Date(1); day.Year() < 10_000; {
		text := day.Format(time.DateOnly)
		got, err := labor.ParseDate(text)
		if err != nil || got != d || d.String() != text {
			t.Fatalf("day %d: %s, %d %v, want %s", d, d, got, err, text)
		}
		last = d
		step := 1
		if y := day.Year(); y < 1890 || 2110 < y && y < 9999 {
			step = 7
		}
		day = day.AddDate(0, 0, step)
		d += labor.Date(step)
	}
	if last.String() != "9999-12-31" || (last+1).String() != "no date" || labor.Date(0).String() != "no date" || labor.Date(-5).String() != "no date" {
		t.Errorf("the last is %s, then %s", last, last+1)
	}
}

// The Rata Die of some days, from Reingold and Dershowitz, and ISO 8601's own restrictions.
func TestDateTable(t *testing.T) {
	for _, row := range []struct {
		text, reason string
		want         labor.Date
	}{
		{"0001-01-01", "the first", 1},
		{"1970-01-01", "the first day of Unix time is 719,163", 719163},
		{"2000-02-29", "a leap year, since 400 divides it", 730179},
		{"1900-02-29", "not a leap year", 0},
		{"2026-02-30", "no month has it", 0},
		{"2026-13-01", "no month", 0},
		{"2026-00-01", "no month", 0},
		{"2026-01-00", "no day", 0},
		{"0000-01-01", "no year 0", 0},
		{"2026-1-01", "two digits", 0},
		{"20261128", "the basic form is not read", 0},
		{"2026-11-28T00:00", "a day, no time", 0},
		{"+026-11-28", "digits alone", 0},
		{"2026-+1-28", "digits alone", 0},
		{"", "nothing", 0},
		{"2026/11/28", "hyphens", 0},
		{"２026-1-1", "ten bytes, but no ASCII digits", 0},
	} {
		got, err := labor.ParseDate(row.text)
		if got != row.want || (err == nil) != (row.want != 0) || err != nil && !errors.Is(err, units.ErrSyntax) {
			t.Errorf("%s (%s): %d, %v", row.text, row.reason, got, err)
		}
	}
}

func TestDateJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := labor.Date(rapid.Int32Range(1, 3_652_059).Draw(t, "day"))
		data, err := json.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		var back labor.Date
		if err := json.Unmarshal(data, &back); err != nil || back != d {
			t.Fatalf("%s reads back as %s: %v", data, back, err)
		}
	})
	if _, err := json.Marshal(labor.Date(0)); !errors.Is(err, units.ErrRange) {
		t.Errorf("no date: %v", err)
	}
	d := labor.Date(7)
	if err := json.Unmarshal([]byte(`"soon"`), &d); err == nil || d != 7 {
		t.Errorf("soon: %v, %v", d, err)
	}
}

func FuzzParseDate(f *testing.F) {
	for _, s := range []string{"2026-11-28", "2024-02-29", "0001-01-01", "9999-12-31", "2026-02-29", "", "----------"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d, err := labor.ParseDate(s)
		slow, slowErr := time.Parse(time.DateOnly, s)
		ok := slowErr == nil && slow.Year() >= 1
		if (err == nil) != ok || err == nil && d.String() != s || err != nil && d != 0 {
			t.Errorf("%q: %d, %v; package time: %v, %v", s, d, err, slow, slowErr)
		}
	})
}

// A column holds a date, NULL none, and nothing else; what is read is as it was on an error.
func TestDateSQL(t *testing.T) {
	d := labor.Date(7)
	for _, src := range []any{int64(739_948), 2.5, true, "2026-02-30", []byte("soon")} {
		if err := d.Scan(src); !errors.Is(err, units.ErrSyntax) || d != 7 {
			t.Errorf("%v: %v, %v", src, err, d)
		}
	}
	if err := d.Scan("2026-11-28"); err != nil || d != 739_948 {
		t.Errorf("%v, %v", d, err)
	}
	if err := d.Scan(nil); err != nil || d != 0 {
		t.Errorf("%v, %v", d, err)
	}
	if _, err := labor.Date(-1).Value(); !errors.Is(err, units.ErrRange) {
		t.Error(err)
	}
}
