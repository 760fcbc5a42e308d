package golden

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
)

// The usual rules: two colors are apart from a difference of 10, and a piece fits within 8.
const (
	apart = 10
	fits  = 8
)

// labOf is the recorded L*a*b* of each color, which the first oracle below holds to another library's.
var labOf = map[string][3]float64{}

// otherLab is the recorded L*a*b* of a color, or else that of the other library, within 0.02. Its greys have a
// trace of hue, which makes more of a difference, so those are recorded.
func otherLab(hex string) [3]float64 {
	if l, ok := labOf[hex]; ok {
		return l
	}
	c, err := colorful.Hex(hex)
	if err != nil {
		panic(err)
	}
	l, a, b := c.Lab()
	return [3]float64{100 * l, 100 * a, 100 * b}
}

var paletteOracles = []oracle{
	{"palette", `color #(..)(..)(..) = lab (\S+) (\S+) (\S+), name ".*"`, 30, func(m []string) string {
		part := func(s string) float64 {
			var v int
			fmt.Sscanf(s, "%x", &v)
			return float64(v) / 255
		}
		// The other library rounds the white of D65 to five digits and the matrix to seven: 0.014 at most.
		l, a, b := colorful.Color{R: part(m[0]), G: part(m[1]), B: part(m[2])}.Lab()
		return first(near(float(m[3]), 100*l, 0.02), near(float(m[4]), 100*a, 0.02), near(float(m[5]), 100*b, 0.02))
	}},
	{"palette", `seen (\S+) by daylight = (\S+) (\S+) (\S+)`, 30, func(m []string) string {
		return same([3]float64{float(m[1]), float(m[2]), float(m[3])}, labOf[m[0]])
	}},
	{"palette", `apart (#\S+) (#\S+) = (\S+)`, 400, func(m []string) string { return near(float(m[2]), ciede2000(labOf[m[0]], labOf[m[1]]), 1e-9) }},
	{"palette", `tell apart (#\S+) (#\S+) by ([\w ]+) = (\S+), (\w+)`, 80, func(m []string) string {
		if d := float(m[3]); m[2] == "daylight" {
			return first(near(d, ciede2000(labOf[m[0]], labOf[m[1]]), 1e-9), same(m[4], fmt.Sprint(d >= apart)))
		}
		return same(m[4], fmt.Sprint(float(m[3]) >= apart))
	}},
	{"palette", `match (\S+) with (.*) = (\d), (\S+) away, fits (\w+)`, 150, func(m []string) string {
		i, d := nearest(m[0], strings.Fields(m[1]))
		return first(same(m[2], fmt.Sprint(i+1)), near(float(m[3]), d, 1e-9), same(m[4], fmt.Sprint(d <= fits)))
	}},
	{"palette", `on fir (#\S+) by ([\w ]+) = (\S+), (\w+)`, 100, func(m []string) string {
		d := float(m[2])
		if m[1] == "daylight" {
			return first(near(d, ciede2000(labOf[m[0]], otherLab("#355e3b")), 0.05), same(m[3], fmt.Sprint(d >= apart)))
		}
		return same(m[3], fmt.Sprint(d >= apart))
	}},
	{"palette", `metal (#\S+) = (\d), (\S+) away, fits (\w+)`, 30, func(m []string) string {
		best, least := 0, math.Inf(1)
		for i, hex := range []string{"#d4af37", "#c0c0c0", "#b5714a", "#826644"} {
			x, y := otherLab(m[0]), otherLab(hex)
			if d := weighed2000(x, y, 2); d < least {
				best, least = i, d
			}
		}
		return first(same(m[1], fmt.Sprint(best+1)), near(float(m[2]), least, 0.05), same(m[3], fmt.Sprint(float(m[2]) <= fits)))
	}},
	{"palette", `share out (\d+) by ([\d ]+), least (\d) = ([\d ]+)`, 100, func(m []string) string {
		total, shares, least, counts := integer(m[0]), integers(m[1]), integer(m[2]), integers(m[3])
		sum, all := int64(0), int64(0)
		for _, s := range shares {
			sum += s
		}
		for i, n := range counts {
			all += n
			quota := big.NewRat(total*shares[i], sum)
			off := new(big.Rat).Sub(quota, big.NewRat(n, 1))
			if least == 0 && off.Abs(off).Cmp(big.NewRat(1, 1)) >= 0 {
				return fmt.Sprintf("%d for a quota of %v", n, quota)
			}
			if n < least && total >= least*int64(len(shares)) {
				return fmt.Sprintf("%d is under the least", n)
			}
		}
		return same(all, total)
	}},
	{"palette", `deal (\d+) types (\d+) pieces by .* over \d colors = (.*types.*)`, 25, func(m []string) string {
		types, pieces := 0, 0
		for row := range strings.SplitSeq(m[2], "), ") {
			var t, p int
			fmt.Sscanf(row, "%d types %d pieces", &t, &p)
			types, pieces = types+t, pieces+p
			each := int64(0)
			_, list, _ := strings.Cut(strings.TrimSuffix(row, ")"), "(")
			for _, n := range integers(list) {
				each += n
			}
			if t > 0 && each != int64(p) {
				return fmt.Sprintf("%d are not %d", each, p)
			}
		}
		return first(same(int64(types), integer(m[0])), same(int64(pieces), integer(m[1])))
	}},
	{"palette", `sort (.*) by (.*) = kept (.*), left (\d+)`, 40, func(m []string) string {
		return same(m[2]+" "+m[3], keep(m[0], strings.Fields(m[1])))
	}},
	{"palette", `best of (.*) = (.*): kept (.*), left (\d+)`, 40, func(m []string) string {
		chosen := strings.Fields(m[1])
		if w := same(m[2]+" "+m[3], keep(m[0], chosen)); w != "" {
			return w
		}
		// No other choice of up to four of the colors, any two of them apart, leaves fewer.
		var all []string
		for entry := range strings.SplitSeq(m[0], ", ") {
			if _, hex, _ := strings.Cut(entry, " "); !slices.Contains(all, hex) {
				all = append(all, hex)
			}
		}
		left := integer(m[3])
		for set := range 1 << len(all) {
			var some []string
			for i, hex := range all {
				if set>>i&1 == 1 {
					some = append(some, hex)
				}
			}
			if len(some) == 0 || len(some) > 4 || !distinct(some) {
				continue
			}
			l := integer(keep(m[0], some)[strings.LastIndexByte(keep(m[0], some), ' ')+1:])
			if l < left || l == left && len(some) < len(chosen) {
				return fmt.Sprintf("%v leaves %d", some, l)
			}
		}
		return same(distinct(chosen), true)
	}},
}

func distinct(hexes []string) bool {
	for i, a := range hexes {
		for _, b := range hexes[i+1:] {
			if ciede2000(labOf[a], labOf[b]) < apart {
				return false
			}
		}
	}
	return true
}

// nearest returns which of the colors is nearest to one, and how far it is.
func nearest(hex string, palette []string) (int, float64) {
	best, least := 0, math.Inf(1)
	for i, p := range palette {
		if d := ciede2000(labOf[hex], labOf[p]); d < least {
			best, least = i, d
		}
	}
	return best, least
}

// keep sorts a box, "3 #dc143c, ...", by a palette, and returns how many each color keeps, and how many are left.
func keep(box string, palette []string) string {
	var kept [8]int
	left := 0
	for entry := range strings.SplitSeq(box, ", ") {
		var n int
		var hex string
		fmt.Sscanf(entry, "%d %s", &n, &hex)
		if i, d := nearest(hex, palette); d <= fits {
			kept[i] += n
		} else {
			left += n
		}
	}
	return count(kept[:6]) + " " + fmt.Sprint(left)
}

// The formula below gives the differences published with it, to their four decimals.
//
// Source: as for ciede2000, table 1, pairs 1, 9, 17 and 31.
func TestFormulaOfDifference(t *testing.T) {
	for _, pair := range []struct {
		x, y [3]float64
		want float64
	}{
		{[3]float64{50, 2.6772, -79.7751}, [3]float64{50, 0, -82.7485}, 2.0425},
		{[3]float64{50, 2.49, -0.001}, [3]float64{50, -2.49, 0.0009}, 7.1792},
		{[3]float64{50, 2.5, 0}, [3]float64{73, 25, -18}, 27.1492},
		{[3]float64{90.8027, -2.0831, 1.441}, [3]float64{91.1528, -1.6435, 0.0447}, 1.4441},
	} {
		for _, got := range []float64{ciede2000(pair.x, pair.y), ciede2000(pair.y, pair.x)} {
			if math.Abs(got-pair.want) > 5e-5 {
				t.Errorf("%v and %v: %v, want %v", pair.x, pair.y, got, pair.want)
			}
		}
	}
}

// ciede2000 is the formula as printed, in degrees and with package math.
//
// Source: G. Sharma, W. Wu and E. N. Dalal, "The CIEDE2000 color-difference formula", 2005, equations 2 to 22.
func ciede2000(x, y [3]float64) float64 { return weighed2000(x, y, 1) }

// weighed2000 is the same with another kL.
func weighed2000(x, y [3]float64, kL float64) float64 {
	deg := math.Pi / 180
	pow7 := func(v float64) float64 { return math.Sqrt(math.Pow(v, 7) / (math.Pow(v, 7) + math.Pow(25, 7))) }
	g := 0.5 * (1 - pow7((math.Hypot(x[1], x[2])+math.Hypot(y[1], y[2]))/2))
	a1, a2 := (1+g)*x[1], (1+g)*y[1]
	c1, c2 := math.Hypot(a1, x[2]), math.Hypot(a2, y[2])
	hue := func(b, a float64) float64 {
		if a == 0 && b == 0 {
			return 0
		}
		h := math.Atan2(b, a) / deg
		if h < 0 {
			h += 360
		}
		return h
	}
	h1, h2 := hue(x[2], a1), hue(y[2], a2)
	dh, hm := 0.0, h1+h2
	if c1*c2 != 0 {
		dh = h2 - h1
		hm = (h1 + h2) / 2
		switch {
		case dh > 180:
			dh -= 360
		case dh < -180:
			dh += 360
		}
		if math.Abs(h1-h2) > 180 {
			if h1+h2 < 360 {
				hm += 180
			} else {
				hm -= 180
			}
		}
	}
	dH := 2 * math.Sqrt(c1*c2) * math.Sin(dh/2*deg)
	lm, cm := (x[0]+y[0])/2, (c1+c2)/2
	t := 1 - 0.17*math.Cos((hm-30)*deg) + 0.24*math.Cos(2*hm*deg) + 0.32*math.Cos((3*hm+6)*deg) - 0.20*math.Cos((4*hm-63)*deg)
	turn := 30 * math.Exp(-math.Pow((hm-275)/25, 2))
	sl := 1 + 0.015*math.Pow(lm-50, 2)/math.Sqrt(20+math.Pow(lm-50, 2))
	sc, sh := 1+0.045*cm, 1+0.015*cm*t
	rt := -2 * pow7(cm) * math.Sin(2*turn*deg)
	l, c, h := (y[0]-x[0])/(kL*sl), (c2-c1)/sc, dH/sh
	return math.Sqrt(l*l + c*c + h*h + rt*c*h)
}
