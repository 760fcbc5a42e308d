package placement_test

import (
	"encoding/json"
	"errors"
	"math"
	"math/big"
	"strings"
	"testing"

	"example.com/fircone/sizing/placement"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// readAngle reads an angle as JSON and forms do.
func readAngle(text string) (a placement.Angle, err error) {
	err = a.UnmarshalText([]byte(text))
	return a, err
}

func TestReadAngle(t *testing.T) {
	for _, row := range []struct {
		text   string
		want   placement.Angle
		reason string
	}{
		{"37.5°", 37_500, "as it prints"},
		{"-90°", -90_000, "to the left"},
		{"−90°", -90_000, "a minus sign"},
		{"+90°", 90_000, "a plus sign"},
		{"0°", 0, "toward the viewer"},
		{"-0°", 0, "a zero has no sign"},
		{" 200 DEG ", 200_000, "space and upper case"},
		{"1 degree", 1_000, "one"},
		{"37.050 degrees", 37_050, "zeros at the end"},
		{"0.001°", 1, "the least"},
		{"0000450 deg", 450_000, "more than a turn"},
		{"2147483.647°", math.MaxInt32, "the most"},
		{"-2147483.648°", math.MinInt32, "the most to the left"},
	} {
		got, err := readAngle(row.text)
		if got != row.want || err != nil {
			t.Errorf("%q, %s: %d, %v, want %d", row.text, row.reason, got, err, row.want)
		}
	}
	for _, row := range []struct {
		text   string
		want   error
		reason string
	}{
		{"", units.ErrSyntax, "nothing"},
		{"37.5", units.ErrSyntax, "no unit, so it may be a clock or a radian"},
		{"deg", units.ErrSyntax, "no number"},
		{".5°", units.ErrSyntax, "no digit before the point"},
		{"5.°", units.ErrSyntax, "no digit after it"},
		{"5.0000°", units.ErrSyntax, "four places"},
		{"5.5.5°", units.ErrSyntax, "two points"},
		{"1e2°", units.ErrSyntax, "an exponent"},
		{"--5°", units.ErrSyntax, "two signs"},
		{"+-5°", units.ErrSyntax, "two signs"},
		{"- 5°", units.ErrSyntax, "a sign by itself"},
		{"1:5°", units.ErrSyntax, "next to the digits"},
		{"1/5°", units.ErrSyntax, "next to the digits"},
		{"5 °C", units.ErrSyntax, "another unit"},
		{"NaN°", units.ErrSyntax, "no number"},
		{strings.Repeat("0", 63) + "°", units.ErrSyntax, "too long"},
		{"2147483.648°", units.ErrRange, "past the most"},
		{"-2147483.649°", units.ErrRange, "past the most to the left"},
		{strings.Repeat("9", 60) + "°", units.ErrRange, "far past"},
	} {
		got, err := readAngle(row.text)
		var e *units.Error
		if got != 0 || !errors.Is(err, row.want) || !errors.As(err, &e) || e.Func != "placement.Angle.UnmarshalText" || e.Field != "text" || len(e.Value) > 67 {
			t.Errorf("%q, %s: %d, %v, want %v", row.text, row.reason, got, err, row.want)
		}
	}
	a := 5 * placement.Degree
	if err := a.UnmarshalText([]byte("x")); err == nil || a != 5*placement.Degree {
		t.Errorf("a failed read left %v, %v", a, err)
	}
}

// What an angle prints is what is read back, alone and in the JSON of a layout.
func TestAngleRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := placement.Angle(rapid.Int32().Draw(t, "angle"))
		if back, err := readAngle(a.String()); back != a || err != nil {
			t.Fatalf("%d prints %v, read as %d, %v", a, a, back, err)
		}
		l := placement.Layout{Facing: a, Mirror: true}
		text, err := json.Marshal(l)
		var back placement.Layout
		if err != nil || json.Unmarshal(text, &back) != nil || back != l {
			t.Fatalf("%+v: %s, %v, comes back as %+v", l, text, err, back)
		}
	})
}

func FuzzReadAngle(f *testing.F) {
	for _, s := range []string{"37.5°", "-90 degrees", "−1 deg", "450.001°", "37.5", "2147483.648°", "1e2°", "5.0000°", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := readAngle(s)
		if err != nil {
			if a != 0 {
				t.Errorf("%q: %v with %v", s, a, err)
			}
			return
		}
		if back, err := readAngle(a.String()); back != a || err != nil {
			t.Errorf("%q: %d prints %v, read as %d, %v", s, a, a, back, err)
		}
		// The number by itself, as math/big has it.
		number := strings.TrimSpace(strings.TrimRight(strings.ToLower(strings.TrimSpace(s)), "degrs°"))
		r, ok := new(big.Rat).SetString(strings.Replace(number, "−", "-", 1))
		if !ok || r.Cmp(big.NewRat(int64(a), 1000)) != 0 {
			t.Errorf("%q is read as %d thousandths of a degree, want %v degrees", s, a, r)
		}
	})
}

// A column of text, as string or bytes, and one of whole thousandths of a degree are read;
// anything else, and what is out of range, leaves the angle as it was.
func TestAngleScan(t *testing.T) {
	for _, tc := range []struct {
		src  any
		want placement.Angle
		err  error
	}{
		{"37.5°", 37_500, nil},
		{[]byte("-90 deg"), -90_000, nil},
		{int64(math.MaxInt32), math.MaxInt32, nil},
		{int64(math.MinInt32), math.MinInt32, nil},
		{int64(math.MaxInt32) + 1, 7, units.ErrRange},
		{int64(math.MinInt32) - 1, 7, units.ErrRange},
		{"37.5", 7, units.ErrSyntax},
		{[]byte("x"), 7, units.ErrSyntax},
		{37.5, 7, units.ErrSyntax},
		{nil, 7, units.ErrSyntax},
	} {
		a := placement.Angle(7)
		if err := a.Scan(tc.src); a != tc.want || !errors.Is(err, tc.err) || tc.err == nil && err != nil {
			t.Errorf("%v: %v, %v", tc.src, a, err)
		}
	}
}
