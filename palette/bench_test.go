package palette

import (
	"slices"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
)

// The same 10,000 pieces into the same four colors.
func benchmarkBox(b *testing.B) (Rules, Palette, []Piece) {
	box := randomBox(10_000, 7)
	for i := range box {
		box[i].Finish = Matte // the library knows no metals
	}
	return CommonPractice(), mustPalette(b, "crimson,forestgreen,gold:metal,ivory"), box
}

func BenchmarkSort(b *testing.B) {
	r, p, box := benchmarkBox(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Sort(p, box); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSortAndRead is the box sorted, and the palette read on a fir in all views.
func BenchmarkSortAndRead(b *testing.B) {
	r, p, box := benchmarkBox(b)
	fir := swatches("fir")[0]
	for b.Loop() {
		if _, err := r.Sort(p, box); err != nil {
			b.Fatal(err)
		}
		if _, err := r.Read(p, fir); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSortLibrary calls the color library's distance for every piece and swatch.
func BenchmarkSortLibrary(b *testing.B) {
	r, p, box := benchmarkBox(b)
	swatches := p
	var kept [maxSwatches]int
	b.ReportAllocs()
	for b.Loop() {
		kept = [maxSwatches]int{}
		for i := range box {
			best, at := 1e9, 0
			for k := range swatches {
				if d := 100 * rival(box[i].Color).DistanceCIEDE2000(rival(swatches[k].Color)); d < best {
					best, at = d, k
				}
			}
			if best <= r.Fit {
				kept[at] += box[i].Count
			}
		}
	}
	want, err := r.Sort(p, box)
	if err != nil || !slices.Equal(kept[:len(p)], want.Kept) {
		b.Fatalf("the library keeps %v, Sort %v, %v", kept, want.Kept, err)
	}
}

// BenchmarkSortLibraryOnce is the library with each color brought to its form once.
func BenchmarkSortLibraryOnce(b *testing.B) {
	r, p, box := benchmarkBox(b)
	var swatches []colorful.Color
	for _, s := range p {
		swatches = append(swatches, rival(s.Color))
	}
	var kept [maxSwatches]int
	for b.Loop() {
		kept = [maxSwatches]int{}
		for i := range box {
			c := rival(box[i].Color)
			best, at := 1e9, 0
			for k := range swatches {
				if d := 100 * c.DistanceCIEDE2000(swatches[k]); d < best {
					best, at = d, k
				}
			}
			if best <= r.Fit {
				kept[at] += box[i].Count
			}
		}
	}
}

func BenchmarkDifference(b *testing.B) {
	p, q := pointOf(mustColor("crimson").lab()), pointOf(mustColor("navy").lab())
	for b.Loop() {
		difference(p, q, anyFar)
	}
}

func BenchmarkDifferenceLibrary(b *testing.B) {
	c, d := rival(mustColor("crimson")), rival(mustColor("navy"))
	for b.Loop() {
		c.DistanceCIEDE2000(d)
	}
}

func BenchmarkLab(b *testing.B) {
	c := mustColor("crimson")
	for b.Loop() {
		c.lab()
	}
}

func BenchmarkRead(b *testing.B) {
	r, fir := CommonPractice(), swatches("fir")[0]
	p := mustPalette(b, "crimson,forestgreen,gold:metal,ivory")
	for b.Loop() {
		if _, err := r.Read(p, fir); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSuggest(b *testing.B) {
	r, fir, shelf := CommonPractice(), swatches("fir")[0], swatches("navy", "plum", "teal", "white")
	p := mustPalette(b, "crimson,forestgreen,gold:metal")
	for b.Loop() {
		if _, err := r.Suggest(p, fir, shelf); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBest is 200 pieces: of all colors, as a box may be, and crowded together in a
// corner of the colors, so that they overlap in every way, with a wide tolerance: the
// hardest that was found.
func BenchmarkBest(b *testing.B) {
	all := randomBox(maxBestPieces, 3)
	crowded := randomBox(maxBestPieces, 5)
	for i, piece := range crowded {
		c := piece.Color
		crowded[i].Color = Color{128 + c[0]/4, 128 + c[1]/4, 128 + c[2]/4}
		crowded[i].Count = 1
	}
	wide := CommonPractice()
	wide.Fit = 15
	for _, bench := range []struct {
		name  string
		rules Rules
		box   []Piece
	}{{"all", CommonPractice(), all}, {"crowded", wide, crowded}} {
		b.Run(bench.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := bench.rules.Best(bench.box); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
