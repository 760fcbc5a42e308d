package golden

import (
	"errors"
	"flag"
	"fmt"
	"math/big"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/fircone/units"
)

var update = flag.Bool("update", false, "write the lines anew")

// pages are the files under testdata, each with what fills it, and the fewest lines that it may have.
var pages = []struct {
	name  string
	fill  func(*page)
	least int
}{
	{"units", unitsPage, 900},
	{"palette", palettePage, 1000},
	{"sizing", sizingPage, 1200},
	{"lights", lightsPage, 200},
	{"shopping", shoppingPage, 500},
	{"placement", placementPage, 100},
	{"labor", laborPage, 600},
	{"mantel", mantelPage, 600},
	{"elem", elemPage, 400},
}

// A page is the lines of one file.
type page struct{ lines []string }

// add appends a line.
func (p *page) add(format string, args ...any) {
	p.lines = append(p.lines, fmt.Sprintf(format, args...))
}

// The library gives what is recorded, to the bit, on every architecture.
func TestGolden(t *testing.T) {
	total := 0
	for _, f := range pages {
		t.Run(f.name, func(t *testing.T) {
			var p page
			f.fill(&p)
			total += len(p.lines)
			if len(p.lines) < f.least {
				t.Errorf("%d lines, want at least %d", len(p.lines), f.least)
			}
			path := filepath.Join("testdata", f.name+".txt")
			if *update {
				if err := os.WriteFile(path, []byte(strings.Join(p.lines, "\n")+"\n"), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			was := recorded(t, f.name)
			shown := 0
			for i := range max(len(was), len(p.lines)) {
				before, now := "nothing", "nothing"
				if i < len(was) {
					before = was[i]
				}
				if i < len(p.lines) {
					now = p.lines[i]
				}
				if before == now {
					continue
				}
				if shown++; shown <= 5 {
					t.Errorf("line %d\nwas %s\nis  %s", i+1, before, now)
				}
			}
			if shown > 5 {
				t.Errorf("%d lines differ in all", shown)
			}
		})
	}
	t.Logf("%d lines", total)
}

// recorded returns the lines of a file.
func recorded(t *testing.T, name string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", name+".txt"))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
}

// refusal returns one word for why a call was refused.
func refusal(err error) string {
	for _, s := range []struct {
		err  error
		word string
	}{
		{units.ErrRange, "range"}, {units.ErrFit, "fit"}, {errShort, "short"}, {errBudget, "budget"}, {units.ErrLimit, "limit"},
	} {
		if errors.Is(err, s.err) {
			return s.word
		}
	}
	return "refused"
}

// or returns what show makes of v, or the word for err.
func or[T any](show func(T) string) func(T, error) string {
	return func(v T, err error) string {
		if err != nil {
			return refusal(err)
		}
		return show(v)
	}
}

// nm writes a length exactly; um2, ng and mW are the same for the others.
func nm(l units.Length) string { return fmt.Sprintf("%d nm", int64(l)) }
func um2(a units.Area) string  { return fmt.Sprintf("%d um2", int64(a)) }
func ng(m units.Mass) string   { return fmt.Sprintf("%d ng", int64(m)) }
func mW(p units.Power) string  { return fmt.Sprintf("%d mW", int64(p)) }

// feet writes a length exactly, and beside it in feet and inches to the nearest sixteenth, for who reads.
func feet(l units.Length) string {
	n := (int64(l) + int64(units.Inch)/32) / (int64(units.Inch) / 16)
	if l < 0 {
		return nm(l)
	}
	s := fmt.Sprintf("%d ft %d", n/192, n/16%12)
	if n%16 != 0 {
		s += " " + big.NewRat(n%16, 16).RatString()
	}
	return nm(l) + " (" + s + " in)"
}

// num writes a float so that it reads back as the same bits.
func num(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// whole writes a count.
func whole(n int) string { return strconv.Itoa(n) }

// dec writes a decimal without closing zeros.
func dec(d decimal.Decimal) string {
	s := d.String()
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// len reads a length of the tables below, as "7 ft 6 1/2 in", "2.3 m" or "5 nm": by itself, so that
// a fault in reading does not hide one in computing.
func length(text string) units.Length {
	r, ok := readLength(text)
	if !ok || !r.IsInt() || !r.Num().IsInt64() {
		panic("golden: not a length: " + text)
	}
	return units.Length(r.Num().Int64())
}

// readLength reads a text of feet, inches, yards and metric units, each a whole number, a decimal or one with a
// fraction, into nanometers.
func readLength(text string) (*big.Rat, bool) {
	each := map[string]int64{"yd": 914_400_000, "ft": 304_800_000, "in": 25_400_000, "m": 1_000_000_000, "cm": 10_000_000, "mm": 1_000_000, "nm": 1}
	sum, part, any := new(big.Rat), new(big.Rat), false
	text, negative := strings.CutPrefix(text, "-")
	for _, word := range strings.Fields(text) {
		if unit, ok := each[word]; ok {
			sum.Add(sum, part.Mul(part, big.NewRat(unit, 1)))
			part, any = new(big.Rat), true
			continue
		}
		n, ok := new(big.Rat).SetString(word)
		if !ok {
			return nil, false
		}
		part.Add(part, n)
	}
	if negative {
		sum.Neg(sum)
	}
	return sum, any && part.Sign() == 0
}

// A draw is a sequence of numbers that is the same everywhere and always.
type draw uint64

// upTo returns the next number, 0 to n-1.
//
// Source: D. E. Knuth, The Art of Computer Programming, volume 2, 3.3.4, the multiplier of MMIX (from memory).
func (d *draw) upTo(n int) int {
	*d = *d*6364136223846793005 + 1442695040888963407
	return int(uint64(*d) >> 33 % uint64(n))
}
