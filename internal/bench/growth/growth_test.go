// Package growth measures how the time of what takes lists grows with their length. The
// program in ../ratios fits the exponents.
//
//	go test -run '^$' -bench . ./growth
package growth

import (
	"fmt"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

const (
	ft = units.Foot
	in = units.Inch
)

func BenchmarkGrowth(b *testing.B) {
	rules := palette.CommonPractice()
	colors, err := rules.ParsePalette("crimson,forestgreen,gold:metal,ivory")
	if err != nil {
		b.Fatal(err)
	}
	box := func(n int) []palette.Piece {
		l := make([]palette.Piece, n)
		for i := range l {
			// Steps that share no factor with 256 reach every value of each channel.
			l[i].Color = palette.Color{uint8(i * 77), uint8(i * 151), uint8(i * 203)}
		}
		return l
	}
	for _, n := range []int{1, 10, 100, 1_000, 10_000, 100_000} {
		b.Run(fmt.Sprintf("trees=%d", n), func(b *testing.B) {
			c, look := sizing.CommonPractice(), sizing.CommonLook()
			for b.Loop() {
				for i := range n {
					if _, err := c.Compare(look, sizing.Tree{Height: 5*ft + units.Length(i%120)*in}); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
	for _, n := range []int{10, 100, 1_000, 10_000, 100_000} {
		pieces := box(n)
		b.Run(fmt.Sprintf("sort=%d", n), func(b *testing.B) {
			for b.Loop() {
				if _, err := rules.Sort(colors, pieces); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	for _, n := range []int{25, 50, 100, 200} {
		pieces := box(n)
		b.Run(fmt.Sprintf("best=%d", n), func(b *testing.B) {
			for b.Loop() {
				if _, err := rules.Best(pieces); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	for _, n := range []int{1, 10, 100, 1_000} {
		shares := make([]int, n)
		for i := range shares {
			shares[i] = 1 + i%7
		}
		b.Run(fmt.Sprintf("apportion=%d", n), func(b *testing.B) {
			for b.Loop() {
				if _, err := palette.Apportion(1_000_003, shares, 1); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	for _, n := range []int{1, 10, 100, 1_000} {
		m := mantel.Mantel{Length: 64 * in}
		run, err := m.Hang(mantel.Hanging{Swags: 1, Sag: 9 * in})
		if err != nil {
			b.Fatal(err)
		}
		var path []mantel.Point
		b.Run(fmt.Sprintf("path=%d", n), func(b *testing.B) {
			for b.Loop() {
				if path, err = run.AppendPath(path[:0], n); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
