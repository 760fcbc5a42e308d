package sizing

import (
	"errors"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// What an error says is accepted is what is accepted: the limit itself, and nothing past it.
func TestErrorsTellTheLimits(t *testing.T) {
	const ft, in = units.Foot, units.Inch
	for _, test := range []struct {
		what      string
		err, good error
		want      string
	}{
		{
			"a bare tip: an inch must remain", second(Tree{Height: 9 * ft, Base: 70 * in, BareTip: 9 * ft, BareBase: 0}.Slant()), second(Tree{Height: 9 * ft, Base: 70 * in, BareTip: 8*ft + 11*in, BareBase: 0}.Slant()),
			"0 ft to 8 ft 11 in",
		},
		{
			"a bare base: an inch must remain below the bare tip", second(Tree{Height: 9 * ft, Base: 70 * in, BareTip: ft, BareBase: 8 * ft}.Slant()), second(Tree{Height: 9 * ft, Base: 70 * in, BareTip: ft, BareBase: 7*ft + 11*in}.Slant()),
			"0 ft to 7 ft 11 in",
		},
		{
			"a handle: half the tree", second(Tree{Height: 9 * ft, Handle: 5 * ft}.Measured()), second(Tree{Height: 9 * ft, Handle: 4*ft + 6*in}.Measured()),
			"0 ft to 4 ft 6 in",
		},
		{
			"a base: an eighth of the height", second(Tree{Height: 8 * ft, Base: ft - 1}.Measured()), second(Tree{Height: 8 * ft, Base: ft}.Measured()),
			"1 ft to 12 ft",
		},
		{
			"a base: one and a half times the height", second(Tree{Height: 8 * ft, Base: 12*ft + 1}.Measured()), second(Tree{Height: 8 * ft, Base: 12 * ft}.Measured()),
			"1 ft to 12 ft",
		},
		{
			"a ceiling: stand, clearance and the lowest tree", second(Room{Ceiling: 3 * ft, Stand: 2 * ft}.Fit(Tree{Height: ft})), second(Room{Ceiling: 4 * ft, Stand: 2 * ft}.Fit(Tree{Height: ft})),
			"4 ft at least, for this stand, topper and clearance",
		},
	} {
		var e *units.Error
		if !errors.As(test.err, &e) || e.Want != test.want {
			t.Errorf("%s: %v, want %q", test.what, test.err, test.want)
		}
		if test.good != nil {
			t.Errorf("%s: the limit itself is refused: %v", test.what, test.good)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// A text of 64 bytes is read, space and all, and a longer one is not, and is shown cut.
func TestLongTexts(t *testing.T) {
	pad := func(s string, n int) string { return strings.Repeat(" ", n-len(s)) + s }
	var a Taper
	if err := a.UnmarshalText([]byte(pad("slim", maxText))); err != nil || a != Slim {
		t.Errorf("%v, %v", a, err)
	}
	if err := a.UnmarshalText([]byte(pad("slim", maxText+1))); !errors.Is(err, units.ErrName) || !strings.Contains(err.Error(), `slim..."`) && !strings.Contains(err.Error(), `sli..."`) {
		t.Errorf("one byte too many: %v", err)
	}
	var e Exposure
	if err := e.UnmarshalText([]byte(pad("200 degrees", maxText))); err != nil || e != 200*Degree {
		t.Errorf("%v, %v", e, err)
	}
	if err := e.UnmarshalText([]byte(pad("200 degrees", maxText+1))); err == nil {
		t.Error("an arc of 65 bytes was read")
	}
	if got := clip(strings.Repeat("a", maxText)); got != strings.Repeat("a", maxText) {
		t.Errorf("64 bytes are cut: %q", got)
	}
	if got := clip(strings.Repeat("a", maxText+1)); got != strings.Repeat("a", maxText)+"..." {
		t.Errorf("65 bytes are not cut: %q", got)
	}
}

// The closest and the widest wraps that can be wound are a look, not "too long to wind"; and a surface that is shared
// out evenly leaves nothing over.
func TestLookLimits(t *testing.T) {
	s, err := (&Tree{Height: 6 * units.Foot}).surface("", "/")
	if err != nil {
		t.Fatal(err)
	}
	if got := s.look(&shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: s.cone.spiralLength(minSpacing, 1)}}).Spacing[shopping.Garland]; got != minSpacing {
		t.Errorf("spacing %v, want %v", got, minSpacing)
	}
	wide, err := (&Tree{Height: 100 * units.Foot, Base: 150 * units.Foot}).surface("", "/")
	if err != nil {
		t.Fatal(err)
	}
	if got := wide.look(&shopping.ByKind[shopping.Quantity]{shopping.Garland: {Length: wide.cone.spiralLength(maxSpacing, 1)}}).Spacing[shopping.Garland]; got != maxSpacing {
		t.Errorf("spacing %v, want %v", got, maxSpacing)
	}
	s.area = 12 * units.SquareFoot
	if got := s.look(&shopping.ByKind[shopping.Quantity]{shopping.Pick: {Pieces: 6}}).Each[shopping.Pick]; got != 2*units.SquareFoot {
		t.Errorf("12 sq ft to 6 pieces is %v each", got)
	}
}

// Texts are rounded as their docs say: a spacing up to the quarter inch; and no foot is added to a
// length of whole feet.
func TestRoundedTexts(t *testing.T) {
	for spacing, want := range map[units.Length]string{
		4*units.Inch - 1: "4 in", 4 * units.Inch: "4 in", 3*units.Inch + units.Inch/2: "3 1/2 in", 4*units.Inch + units.Inch/4: "4 1/4 in", 4*units.Inch + units.Inch/4 + 1: "4 1/2 in",
	} {
		if got := apart(spacing, units.InFeetInches); got != want {
			t.Errorf("%d nm: %s, want %s", spacing, got, want)
		}
	}
	c, err := CommonPractice().Compare(CommonLook(), Tree{Height: 7 * units.Foot})
	if err != nil {
		t.Fatal(err)
	}
	if c.Shape[shopping.Garland].Length != 63*units.Foot || !strings.Contains(c.String(), "takes 63 ft") {
		t.Errorf("%v: %s", c.Shape[shopping.Garland].Length, c)
	}
}
