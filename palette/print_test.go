package palette

import (
	"fmt"
	"strings"
	"testing"
)

// What the package gives back prints by itself, the zero value too: no address, no braces around numbers that
// nobody can tell apart.
func TestResultsPrint(t *testing.T) {
	r := CommonPractice()
	p := mustPalette(t, "crimson,forestgreen")
	reading, err1 := r.Read(p, Swatch{})
	sorting, err2 := r.Sort(p, []Piece{{Color: mustColor("#c8102e"), Count: 24}})
	sharing, err3 := p.Share(7, 49)
	more, err4 := r.Suggest(p, Swatch{}, nil)
	if err1 != nil || err2 != nil || err3 != nil || err4 != nil {
		t.Fatal(err1, err2, err3, err4)
	}
	for _, test := range []struct {
		v    any
		want string
	}{
		{Reading{}, "nothing was read\n"},
		{Pair{}, "no pair"},
		{Match{}, "no match"},
		{Suggestion{}, "no suggestion"},
		{Sorting{}, "left out  0\n"},
		{Sharing(nil), "color  share  types  pieces\ntotal      0      0       0\n"},
		{Palette(nil), ""},
		{Swatch{}, ""},
		{Color{}, "#000000"},
		{reading.Pairs[0], "crimson and forestgreen: 3.0 apart at least, for deutan viewers by daylight; forestgreen=#1d751d mends it"},
		{sorting.Matches[0], "crimson, 4.9 away"},
		{sorting, "crimson      24\nforestgreen   0\nleft out      0\n"},
		{p[0], "crimson"},
		{p, "crimson,forestgreen"},
		// 7 types over 60 and 40: 4.2 and 2.8; 49 pieces: 29.4 and 19.6.
		{sharing[0], "{crimson 60 4 29}"},
		{Piece{Name: "balls", Color: Color{1, 2, 3}, Finish: Shiny, Count: 24}, "{balls #010203 shiny 24}"},
		{r, "{4 10 8}"},
	} {
		if got := fmt.Sprintf("%v", test.v); got != test.want {
			t.Errorf("%T prints as %q, want %q", test.v, got, test.want)
		}
	}
	for _, s := range more {
		if got := fmt.Sprint(s); strings.ContainsAny(got, "{[") {
			t.Errorf("%q", got)
		}
	}
}
