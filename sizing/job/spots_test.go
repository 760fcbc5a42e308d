package job

import (
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
)

// The ornaments along a shelf, by hand. On a traditional mantel the most frequent color is in the middle and the two ends are alike, as
// far as the numbers are even; else the most frequent comes first. Either way a color does not follow itself if there is another, and
// what is not to be had leaves its spots out. Picks stay where they are.
func TestColoredSpots(t *testing.T) {
	for _, row := range []struct {
		look   mantel.Look
		spots  int
		pieces string // a letter a piece
		want   string
	}{
		{mantel.Traditional, 4, "AABB", "B A A B"},
		{mantel.Traditional, 6, "AAAABB", "A B A A B A"},
		{mantel.Traditional, 6, "AABBBB", "B A B B A B"},
		{mantel.Traditional, 6, "AAABBC", "A B A A B C"},
		{mantel.Traditional, 5, "AAABB", "B A A A B"},
		{mantel.AsymmetricalLeft, 4, "AABB", "A B A B"},
		{mantel.AsymmetricalLeft, 3, "ABB", "B A B"},
		{mantel.AsymmetricalLeft, 4, "AAAB", "A B A A"},
		{mantel.AsymmetricalLeft, 0, "", ""},
	} {
		pick := mantel.Spot{Item: shopping.Item{Kind: shopping.Pick}}
		spots := []mantel.Spot{pick}
		for range row.spots {
			spots = append(spots, mantel.Spot{Item: shopping.Item{Kind: shopping.Ornament}})
		}
		var pieces []shopping.Lot
		for _, color := range []string{"A", "B", "C"} {
			if n := strings.Count(row.pieces, color); n > 0 {
				pieces = append(pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Color: color, Type: "ball 1"}, Quantity: shopping.Quantity{Pieces: n}})
			}
		}
		got := colored(append(spots, pick), pieces, row.look)
		var colors []string
		for _, s := range got[1 : len(got)-1] {
			colors = append(colors, s.Item.Color+s.Item.Type)
		}
		if strings.Join(colors, " ") != row.want || !slices.Equal([]mantel.Spot{got[0], got[len(got)-1]}, []mantel.Spot{pick, pick}) {
			t.Errorf("%v, %d spots, %s: %v, want %s", row.look, row.spots, row.pieces, colors, row.want)
		}
	}
}
