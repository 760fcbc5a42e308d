package sqltext

import (
	"errors"
	"testing"

	"example.com/fircone/units"
)

func TestRoundTrip(t *testing.T) {
	v, err := Value(7 * units.Foot)
	if v != "7 ft" || err != nil {
		t.Fatalf("%v, %v", v, err)
	}
	for _, src := range []any{v, []byte("7 ft")} {
		var l units.Length
		if err := Scan("x.Scan", src, &l); err != nil || l != 7*units.Foot {
			t.Errorf("%v: %v, %v", src, l, err)
		}
	}
	for _, src := range []any{nil, 7, 7.5} {
		l := units.Foot
		var e *units.Error
		if err := Scan("x.Scan", src, &l); !errors.As(err, &e) || e.Func != "x.Scan" || !errors.Is(err, units.ErrSyntax) || l != units.Foot {
			t.Errorf("%v: %v, %v", src, l, err)
		}
	}
	if v, err := Value(units.Style(200)); v != nil || err == nil {
		t.Errorf("no style: %v, %v", v, err)
	}
}
