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
	nine := Cone{Height: 9 * ft, BaseDiameter: 70 * in}
	for _, test := range []struct {
		what      string
		err, good error
		want      string
	}{
		{
			"a bare tip: an inch must remain", second(Cone{nine.Height, nine.BaseDiameter, 9 * ft, 0}.Slant()), second(Cone{nine.Height, nine.BaseDiameter, 8*ft + 11*in, 0}.Slant()),
			"0 ft to 8 ft 11 in",
		},
		{
			"a bare base: an inch must remain below the bare tip", second(Cone{nine.Height, nine.BaseDiameter, ft, 8 * ft}.Slant()), second(Cone{nine.Height, nine.BaseDiameter, ft, 7*ft + 11*in}.Slant()),
			"0 ft to 7 ft 11 in",
		},
		{
			"a handle: half the tree", second(Tree{Height: 9 * ft, Handle: 5 * ft}.Cone()), second(Tree{Height: 9 * ft, Handle: 4*ft + 6*in}.Cone()),
			"0 ft to 4 ft 6 in",
		},
		{
			"a base: an eighth of the height", second(Tree{Height: 8 * ft, Base: ft - 1}.Cone()), second(Tree{Height: 8 * ft, Base: ft}.Cone()),
			"1 ft to 12 ft",
		},
		{
			"a base: one and a half times the height", second(Tree{Height: 8 * ft, Base: 12*ft + 1}.Cone()), second(Tree{Height: 8 * ft, Base: 12 * ft}.Cone()),
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
	// The value stands in the error as it was given.
	if _, err := ArcDegrees(400.0625); err == nil || !strings.Contains(err.Error(), `"400.0625"`) {
		t.Errorf("ArcDegrees(400.0625): %v", err)
	}
}

func second[T any](_ T, err error) error { return err }

// A text of 64 bytes is read, space and all, and a longer one is not, and is shown cut.
func TestLongTexts(t *testing.T) {
	pad := func(s string, n int) string { return strings.Repeat(" ", n-len(s)) + s }
	if a, err := ParseTaper(pad("slim", maxText)); err != nil || a != Slim {
		t.Errorf("%v, %v", a, err)
	}
	if _, err := ParseTaper(pad("slim", maxText+1)); !errors.Is(err, units.ErrName) || !strings.Contains(err.Error(), `slim..."`) && !strings.Contains(err.Error(), `sli..."`) {
		t.Errorf("one byte too many: %v", err)
	}
	if e, err := ParseExposure(pad("200 degrees", maxText)); err != nil || e != 200*degree {
		t.Errorf("%v, %v", e, err)
	}
	if _, err := ParseExposure(pad("200 degrees", maxText+1)); err == nil {
		t.Error("an arc of 65 bytes was read")
	}
	if got := clip(strings.Repeat("a", maxText)); got != strings.Repeat("a", maxText) {
		t.Errorf("64 bytes are cut: %q", got)
	}
	if got := clip(strings.Repeat("a", maxText+1)); got != strings.Repeat("a", maxText)+"..." {
		t.Errorf("65 bytes are not cut: %q", got)
	}
}

// No garland is no garland, however it hangs.
func TestDrapeOfNothing(t *testing.T) {
	d := Drape{Span: units.Foot, Sag: 2 * units.Inch}
	if l, err := d.Length(0); l != 0 || err != nil {
		t.Errorf("Length(0) = %v, %v", l, err)
	}
}

// The closest and the widest wraps that can be wound are a look, not "too long to wind"; and a surface that is shared
// out evenly leaves nothing over.
func TestLookLimits(t *testing.T) {
	s, err := Tree{Height: 6 * units.Foot}.surface("", "/")
	if err != nil {
		t.Fatal(err)
	}
	if got := s.look(Amounts{shopping.Garland: {Length: s.cone.spiralLength(MinSpacing, 1)}}).Spacing[shopping.Garland]; got != MinSpacing {
		t.Errorf("spacing %v, want %v", got, MinSpacing)
	}
	wide, err := Tree{Height: 100 * units.Foot, Base: 150 * units.Foot}.surface("", "/")
	if err != nil {
		t.Fatal(err)
	}
	if got := wide.look(Amounts{shopping.Garland: {Length: wide.cone.spiralLength(MaxSpacing, 1)}}).Spacing[shopping.Garland]; got != MaxSpacing {
		t.Errorf("spacing %v, want %v", got, MaxSpacing)
	}
	s.area = 12 * units.SquareFoot
	if got := s.look(Amounts{shopping.Pick: {Pieces: 6}}).Each[shopping.Pick]; got != 2*units.SquareFoot {
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
	c, err := CommonPractice().Compare(CommonLook(), Tree{Height: 7 * units.Foot}, Auto)
	if err != nil {
		t.Fatal(err)
	}
	if c.Shape[shopping.Garland].Length != 63*units.Foot || !strings.Contains(c.String(), "takes 63 ft") {
		t.Errorf("%v: %s", c.Shape[shopping.Garland].Length, c)
	}
}
