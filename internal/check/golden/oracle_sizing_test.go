package golden

import (
	"math"
	"math/big"
	"regexp"
	"slices"
	"strings"
)

// byFoot are the rules of each house for a foot of height, from the handbook and from the table: types, spread, picks,
// garland, ribbon, lights.
var byFoot = map[string][6]int64{
	"usual": {1, 2, 3, 9 * foot, 9 * foot, 100},
	"house": {2, 1, 5, 7*foot + 6*inch, 2_000_000_000, 150},
}

// perFoot returns so much for each foot of a height, rounded up.
func perFoot(each int64, height *big.Rat) int64 {
	return up(new(big.Rat).Mul(height, big.NewRat(each, foot))).Int64()
}

// A cone, by its measures in nanometers.
type conical struct{ h, r, tip, foot float64 }

func (c conical) slope() float64 { return math.Hypot(c.h, c.r) }

// span returns the distances from the tip along the slope between which c is dressed.
func (c conical) span() (from, to float64) {
	return c.slope() * c.tip / c.h, c.slope() * (c.h - c.foot) / c.h
}

// area returns the dressed surface, in square micrometers.
func (c conical) area() float64 {
	from, to := c.span()
	return math.Pi * c.r / c.slope() * (to*to - from*from) / 1e6
}

// wound returns how long a line is that winds round, one turn each spacing, over a part of the way round.
func (c conical) wound(spacing, part float64) float64 {
	from, to := c.span()
	k := 2 * math.Pi * c.r / c.slope() / spacing * part
	// With x = t² the bend near the tip is as smooth as the rest.
	return simpson(func(t float64) float64 { return 2 * t * math.Sqrt(1+k*k*t*t*t*t) }, math.Sqrt(from), math.Sqrt(to))
}

// coneText reads the measures of a cone.
const coneText = `height (\d+) nm base (\d+) nm tip (\d+) nm foot (\d+) nm`

func cone(m []string) conical { return conical{float(m[0]), float(m[1]) / 2, float(m[2]), float(m[3])} }

// tree reads the text of a tree as the cone that it is dressed on, and the part of the way round.
func tree(text string) (conical, float64) {
	field := func(name string) float64 {
		if m := regexp.MustCompile(name + ` (\d+) nm`).FindStringSubmatch(text); m != nil {
			return float(m[1])
		}
		return 0
	}
	c := conical{h: field("height") - field("handle"), r: field("base") / 2, tip: field("tip")}
	if c.r == 0 {
		for word, share := range map[string]float64{"full": 0.65, "slim": 0.45, "pencil": 0.30} {
			if strings.Contains(text, word) {
				c.r = math.Round(field("height")*share) / 2
			}
		}
	}
	for word, degrees := range map[string]float64{"all round": 360, "wall": 240, "corner": 180, "half": 180, "200 degrees": 200, "37.5 degrees": 37.5} {
		if strings.Contains(text, word) {
			return c, degrees / 360
		}
	}
	return c, 0
}

// heightOf reads the height of a tree.
func heightOf(text string) float64 {
	return float(regexp.MustCompile(`height (\d+)`).FindStringSubmatch(text)[1])
}

// lower is as high as a full tree that is no wider than the cone, or than the tree itself.
func lower(text string, c conical) float64 { return min(heightOf(text), 2*c.r*20/13) }

// stocked are the sizes of ornament for a full tree of a height, of those that the handbook lists in section 11, and
// the mean area that one covers, in square nanometers.
func stocked(height float64, public bool) (sizes []float64, disc float64) {
	list := []float64{0.75, 1, 1.5, 2, 2.375, 2.75, 3.125, 4, 4.75, 6, 8, 10, 12}
	large := min(height/20, max(4*inch, height/48))
	limit := 6.0
	if public {
		limit = 12
	}
	large = min(large, limit*inch)
	if large >= inch {
		list = list[1:] // minis are for trees that take nothing larger
	}
	shares := []float64{0.2, 0.3, 0.5}
	if height < 5*foot-2 {
		shares = []float64{0.4, 0, 0.6}
	}
	for i, part := range []float64{1, 0.75, 0.5} {
		best := list[0]
		for _, d := range list {
			if d <= limit && math.Abs(d*inch-large*part) < math.Abs(best*inch-large*part)+2 {
				best = d
			}
		}
		sizes = append(sizes, best*inch)
		disc += shares[i] * math.Pi / 4 * best * inch * best * inch
	}
	return sizes, disc
}

// looks are the spacing, the cover, and the surface to each pick and light of the reference tree: 7 ft, full, all round.
func looks() (spacing, cover, pick, light float64) {
	c := conical{h: 7 * foot, r: 7 * foot * 0.65 / 2}
	spacing = bisect(func(p float64) float64 { return 63*foot - c.wound(p, 1) }, inch, 30*inch)
	_, disc := stocked(7*foot, false)
	return spacing, 49 * disc / c.area() / 1e6, c.area() / 21, c.area() / 700
}

var sizingOracles = []oracle{
	{"sizing", `rule (\w+) (.+) (types|picks|garland|ribbon|lights) = (\d+).*`, 200, func(m []string) string {
		h, _ := readLength(m[1])
		r, got := byFoot[m[0]], integer(m[3])
		switch m[2] {
		case "types":
			return same(got, r[0]*down(h.Quo(h, big.NewRat(foot, 1))).Int64())
		case "picks":
			return same(got, perFoot(r[2], h))
		case "garland":
			return same(got, perFoot(r[3], h))
		case "ribbon":
			return same(got, perFoot(r[4], h))
		}
		return same(got, perFoot(r[5], h))
	}},
	{"sizing", `rule (\w+) (.+) (each|ornaments) = (\d+) to (\d+)`, 80, func(m []string) string {
		h, _ := readLength(m[1])
		r, feet := byFoot[m[0]], down(h.Quo(h, big.NewRat(foot, 1))).Int64()
		least, most := max(feet-r[1], 1), feet+r[1]
		if m[2] == "ornaments" {
			least, most = least*r[0]*feet, most*r[0]*feet
		}
		return first(same(integer(m[3]), least), same(integer(m[4]), most))
	}},
	{"sizing", `base (.+) (full|slim|pencil) = (\d+) nm.*`, 60, func(m []string) string {
		h, _ := readLength(m[0])
		return same(m[2], away(h.Mul(h, map[string]*big.Rat{"full": big.NewRat(65, 100), "slim": big.NewRat(45, 100), "pencil": big.NewRat(30, 100)}[m[1]])).String())
	}},
	{"sizing", `topper (.+) = (\d+) nm to (\d+) nm`, 20, func(m []string) string {
		h, _ := readLength(m[0])
		return first(same(m[1], away(new(big.Rat).Quo(h, big.NewRat(10, 1))).String()), same(m[2], away(h.Quo(h, big.NewRat(8, 1))).String()))
	}},
	{"sizing", `sizes (home|public) (.+) of (\d+) = (.*)cover (\S+)`, 240, func(m []string) string {
		h, _ := readLength(m[1])
		height, _ := h.Float64()
		list, _ := stocked(height, m[0] == "public")
		cover, count := 0.0, int64(0)
		for _, part := range regexp.MustCompile(`(\d+) of (\d+) nm, `).FindAllStringSubmatch(m[3], -1) {
			d := float(part[2])
			if !slices.Contains(list, d) {
				return "a size of " + part[2] + " nm"
			}
			cover += float(part[1]) * math.Pi / 4 * d * d / foot / foot / 50
			count += integer(part[1])
		}
		return first(same(count, integer(m[2])), near(float(m[4]), cover, 1e-14*cover))
	}},
	{"sizing", `exposure (.+) = (\S+) degrees, "(.+)"`, 6, func(m []string) string {
		want := map[string]string{"all round": "360", "wall": "240", "corner": "180", "half": "180"}[m[0]]
		if want == "" {
			want = strings.TrimSuffix(m[0], " degrees")
		}
		return first(same(m[1], want), same(m[2], m[0]))
	}},
	{"sizing", `room ceiling (\d+) nm clear (\d+) nm topper (\d+) nm stand (\d+) nm tree (\d+) nm = (.+), tallest (\d+) nm, spare (-?\d+) nm`, 120, func(m []string) string {
		clear, topper, stand, height := integer(m[1]), integer(m[2]), integer(m[3]), integer(m[4])
		if clear == 0 {
			clear = foot
		}
		if topper > 0 {
			clear = max(clear, topper+2*inch)
		}
		tallest, spare := integer(m[0])-stand-clear, integer(m[0])-stand-height-topper
		verdict := "tight"
		if height <= tallest {
			verdict = "fits"
		} else if spare < 0 {
			verdict = "does not fit"
		}
		return first(same(m[5], verdict), same(integer(m[6]), tallest), same(integer(m[7]), spare))
	}},
	{"sizing", `ladder ceiling (\d+) nm clear \d+ nm topper (\d+) nm stand (\d+) nm tree (\d+) nm = size (\d+) nm, lift (\w+), in (\d+) nm`, 120, func(m []string) string {
		ceiling, topper, height := integer(m[0]), integer(m[1]), integer(m[3])
		base := integer(m[2]) + height
		if topper == 0 { // an eighth, as far as there is room but for two inches
			topper = min(away(big.NewRat(height, 8)).Int64(), 10*foot, max(0, ceiling-foot/6-base))
		}
		top := min(ceiling, base+topper)
		size := int64(0)
		if top > 6*foot {
			size = max(4*foot, (top-4*foot+2*foot-1)/(2*foot)*(2*foot))
		}
		in := near(float(m[6]), 0.65*float64(height)/2, 1)
		if top > 20*foot {
			return first(same(m[4], "0"), same(m[5], "true"), in)
		}
		return first(same(integer(m[4]), size), same(m[5], "false"), in)
	}},
	{"sizing", `cone ` + coneText + ` slant = (\d+) nm.*`, 9, func(m []string) string {
		from, to := cone(m).span()
		return near(float(m[4]), to-from, 1+1e-15*to)
	}},
	{"sizing", `cone ` + coneText + ` surface = (\d+) um2`, 9, func(m []string) string {
		return near(float(m[4]), cone(m).area(), 2+1e-14*cone(m).area())
	}},
	{"sizing", `cone ` + coneText + ` grade = (\w+)`, 9, func(m []string) string {
		part := 2 * cone(m).r / cone(m).h
		switch {
		case part < 0.4:
			return same(m[4], "candlestick")
		case part <= 0.9:
			return same(m[4], "normal")
		}
		return same(m[4], "flared")
	}},
	{"sizing", `cone ` + coneText + ` every (\d+) nm spiral = (\d+) nm.*`, 100, func(m []string) string {
		want := cone(m).wound(float(m[4]), 1)
		return near(float(m[5]), want, 2+1e-9*want)
	}},
	{"sizing", `cone ` + coneText + ` garland (\d+) nm spacing = (\d+) nm.*`, 40, func(m []string) string {
		want := cone(m).wound(float(m[5]), 1)
		return near(float(m[4]), want, 2+1e-9*want+want/float(m[5]))
	}},
	{"sizing", `drape (\d+) nm sag (\d+) nm = (\S+), a run of (\d+) nm takes (\d+) nm.*`, 20, func(m []string) string {
		want, sag := 1.0, float(m[1])/float(m[0])
		if sag > 1e-6 {
			x := bisect(func(x float64) float64 { s := math.Sinh(x / 2); return s*s/x - sag }, 1e-9, 50)
			want = math.Sinh(x) / x
		}
		return first(near(float(m[2]), want, 1e-11), near(float(m[4]), float(m[3])*float(m[2]), 1))
	}},
	{"sizing", `surface of (.+) = (\d+) um2`, 80, func(m []string) string {
		c, part := tree(m[0])
		return near(float(m[1]), c.area()*part, 2+1e-14*c.area())
	}},
	{"sizing", `skirt of (.+) = (\d+) nm to (\d+) nm`, 80, func(m []string) string {
		c, _ := tree(m[0])
		return first(near(float(m[1]), max(2*c.r-foot, c.r), 1), same(float(m[2]), 2*c.r+foot))
	}},
	{"sizing", `by rule height (\d+) nm .* = ornaments (\d+), garland (\d+) nm, ribbon (\d+) nm, picks (\d+), lights (\d+)`, 80, func(m []string) string {
		h := ratio(m[0])
		feet := integer(m[0]) / foot
		garland := (perFoot(9*foot, h) + inch - 1) / inch * inch // a whole inch
		lights := (perFoot(100, h) + 49) / 50 * 50               // half a string
		return first(same(integer(m[1]), feet*feet), same(integer(m[2]), garland), same(m[3], m[2]), same(integer(m[4]), perFoot(3, h)), same(integer(m[5]), lights))
	}},
	{"sizing", `to match (.+) = ornaments (\d+), garland (\d+) nm, ribbon (\d+) nm, picks (\d+), lights (\d+)`, 80, func(m []string) string {
		c, part := tree(m[0])
		spacing, cover, pick, light := looks()
		area := c.area() * part
		_, disc := stocked(lower(m[0], c), false)
		ornaments := max(area*1e6*cover/disc, math.Floor(heightOf(m[0])/foot))
		// A garland goes up to a whole inch, a count to the next whole or to the nearest, lights to half a string.
		return first(near(float(m[2]), c.wound(spacing, part)+inch/2, inch/2+1e-6*c.h), same(m[3], m[2]), near(float(m[1]), ornaments, 0.5+1e-6), near(float(m[4]), area/pick+0.5, 0.5+1e-9*area/pick),
			near(float(m[5]), area/light+25, 25+1e-9*area/light))
	}},
	{"sizing", `look of (.+) = garland every (\d+) nm, ribbon every (\d+) nm, cover (\S+), surface to a pick (\d+) um2, a light (\d+) um2`, 80, func(m []string) string {
		c, part := tree(m[0])
		h := int64(heightOf(m[0]))
		area, feet := c.area()*part, h/foot
		_, disc := stocked(lower(m[0], c), false)
		cover := float64(feet*feet) * disc / area / 1e6
		lights := (perFoot(100, big.NewRat(h, 1)) + 49) / 50 * 50
		wrong := first(near(float(m[3]), cover, 1e-9*cover), near(float(m[4]), area/float64(perFoot(3, big.NewRat(h, 1))), 2+1e-9*area), near(float(m[5]), area/float64(lights), 2+1e-9*area))
		if m[1] == "0" {
			return wrong
		}
		want := c.wound(float(m[1]), part)
		garland := (perFoot(9*foot, big.NewRat(h, 1)) + inch - 1) / inch * inch
		return first(wrong, same(m[1], m[2]), near(float64(garland), want, 2+1e-9*want+want/float(m[1])))
	}},
	{"sizing", `spacing of (\d+) nm on (.+) = (\d+) nm.*`, 250, func(m []string) string {
		c, part := tree(m[1])
		want := c.wound(float(m[2]), part)
		return near(float(m[0]), want, 2+1e-9*want+want/float(m[2]))
	}},
}

var placementOracles = []oracle{
	{"placement", `clock of (-?\d+) = (\d+)`, 25, func(m []string) string {
		// 6 faces the viewer, and the clock runs from there to the left: 9, 12, 3; halves go to the later hour.
		a := integer(m[0])
		hour := (6*30 - a + 15 + 720) / 30 % 12
		if hour == 0 {
			hour = 12
		}
		return same(integer(m[1]), hour)
	}},
	{"placement", `places of (.*) on .* facing .* = (\d+), digest .*`, 40, func(m []string) string {
		all := int64(0)
		for _, n := range regexp.MustCompile(`\[(\d+) `).FindAllStringSubmatch(m[0], -1) {
			all += integer(n[1])
		}
		return same(integer(m[1]), all)
	}},
}
