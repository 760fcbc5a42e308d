package placement_test

import (
	"fmt"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/units"
)

func TestSmoke(t *testing.T) {
	l := placement.Layout{Tree: sizing.Tree{Height: 9 * units.Foot, Handle: 12 * units.Inch, BareTip: 8 * units.Inch}}
	var ps []placement.Piece
	for i := range 9 {
		ps = append(ps, placement.Piece{Type: fmt.Sprint("t", i), Size: units.Length(2+i/3) * units.Inch, Swatch: fmt.Sprint("c", i%4), Count: 9})
	}
	places, err := l.AppendPlaces(nil, ps)
	t.Log(len(places), err)
	for _, p := range places[:5] {
		t.Log(p, p.At)
	}
	secs, err := placement.Order{}.Sections(places)
	for _, s := range secs {
		t.Log(s)
	}
	ps[0].Count = 20000
	_, err = l.AppendPlaces(nil, ps)
	t.Log(err)
	n := 0
	w, err := l.Wind(placement.Winding{Spacing: 12 * units.Inch, Step: units.Inch, Drape: sizing.Drape{Span: 2 * units.Foot, Sag: 3 * units.Inch}})
	for p := range w {
		if n%200 == 0 {
			t.Log(p)
		}
		n++
	}
	t.Log(n, err)
}

func BenchmarkPlaces(b *testing.B) {
	l := placement.Layout{Tree: sizing.Tree{Height: 9 * units.Foot, Handle: 12 * units.Inch, BareTip: 8 * units.Inch}}
	var ps []placement.Piece
	for i := range 9 {
		ps = append(ps, placement.Piece{Type: fmt.Sprint("t", i), Swatch: fmt.Sprint("c", i%4), Count: 1111})
	}
	for b.Loop() {
		l.AppendPlaces(nil, ps)
	}
}
