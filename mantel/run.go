package mantel

import (
	"math"
	"strconv"

	"example.com/fircone/internal/catenary"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

const maxHooks = 101

// A Run is a garland that goes from hook to hook at any heights. [Mantel.Hang], [Stairs]
// and [Door] make one; for brackets, measure where they are. Between two hooks it hangs in
// a swag; a is the catenary's parameter, u = span/(2a), rise positive if the right hook is
// higher:
//
//	o---------------------o   sag    = span · (cosh u - 1)/(2u) · cosh m
//	*..........|..........*   length = √(rise² + (span · sinh u/u)²)
//	.*.........|sag......*.   m      = asinh(rise/span · u/sinh u)
//	...*.......|.......*...
//	......*..*.|.*..*......
//
// Sag is straight down from the middle of the line between the hooks. For each swag,
// lengths, sags and depths are within a nanometer of exact. Hooks that are level and
// evenly spaced to the nanometer are taken to be exactly so. A garland with stiff wire
// hangs a little differently; bend it to the sag.
//
// Source: see the package for level hooks; statics for the others.
type Run struct {
	// Hooks are 2 to 101, from left to right, each 1 in to 50 ft right of the one before and at
	// most 50 ft up or down; within 1000 ft of your zero point.
	Hooks []Point `json:"hooks"`

	// Sag is that of each swag. With zero the garland is fastened close along the line from
	// hook to hook, and pulls no hook sideways.
	Sag units.Length `json:"sag"`

	Left  units.Length `json:"left"`  // what falls at the first hook
	Right units.Length `json:"right"` // what falls at the last hook
	Lying bool         `json:"lying"` // on a shelf from the first hook to the last, without a sag
}

// swag returns the swag from the i-th hook to the next.
func (r *Run) swag(i int) swag {
	return swag{r.Hooks[i+1].Along - r.Hooks[i].Along, r.Hooks[i].Below - r.Hooks[i+1].Below, r.Sag}
}

// even returns how far it is from the first hook to the last, and whether the hooks are
// level and at equal distances.
func (r *Run) even() (across units.Length, ok bool) {
	first, n := r.Hooks[0], len(r.Hooks)-1
	across = r.Hooks[n].Along - first.Along
	for i := 1; i < n; i++ {
		if p := r.Hooks[i]; p.Below != first.Below || p.Along-first.Along != part(across, i, n) {
			return across, false
		}
	}
	return across, r.Hooks[n].Below == first.Below
}

// curve returns one swag of an even run, whose span need not be a whole number of
// nanometers.
func (r *Run) curve(across units.Length) catenary.Curve {
	return catenary.Level(float64(across)/float64(len(r.Hooks)-1), float64(r.Sag))
}

func (r *Run) check(fn string) error {
	if len(r.Hooks) < 2 || len(r.Hooks) > maxHooks {
		return rangeError(fn, "/hooks", strconv.Itoa(len(r.Hooks))+" hooks", "2 to "+strconv.Itoa(maxHooks)+" hooks")
	}
	for i, p := range r.Hooks {
		err := checkPlace(fn, p)
		if err == nil && i > 0 {
			err = checkApart(fn, r.Hooks[i-1], p, minSpan, "the hook before")
		}
		if err != nil {
			return under("/hooks/"+strconv.Itoa(i), err)
		}
	}
	if err := checkLength(fn, "/sag", r.Sag, 0, maxDrop, wantDrop); err != nil {
		return err
	}
	if err := checkLength(fn, "/left", r.Left, 0, maxDrop, wantDrop); err != nil {
		return err
	}
	if err := checkLength(fn, "/right", r.Right, 0, maxDrop, wantDrop); err != nil {
		return err
	}
	if r.Lying && r.Sag != 0 {
		return fitError(fn, "/sag", exact(r.Sag), "0 ft for a garland that lies on a shelf")
	}
	return nil
}

// checkPlace checks a point, with pointers that begin in it.
func checkPlace(fn string, p Point) error {
	const far, want = 1000 * units.Foot, "-1000 ft to 1000 ft"
	if err := checkLength(fn, "/along", p.Along, -far, far, want); err != nil {
		return err
	}
	return checkLength(fn, "/below", p.Below, -far, far, want)
}

// checkApart checks how far q is from p, which is to its left, with pointers that begin
// in q.
func checkApart(fn string, p, q Point, least units.Length, from string) error {
	if span := q.Along - p.Along; span < least || span > maxSpan {
		return fitError(fn, "/along", exact(q.Along), exact(least)+" to 50 ft to the right of "+from)
	}
	if rise := q.Below - p.Below; rise < -maxRise || rise > maxRise {
		return fitError(fn, "/below", exact(q.Below), "at most 50 ft above or below "+from)
	}
	return nil
}

// Garland returns the length of the garland, with what falls at the ends.
func (r Run) Garland() (units.Length, error) {
	if err := r.check("Run.Garland"); err != nil {
		return 0, err
	}
	return r.garland(), nil
}

func (r *Run) garland() units.Length { return r.Left + r.between() + r.Right }

// between returns the garland from the first hook to the last.
func (r *Run) between() units.Length {
	if across, ok := r.even(); ok {
		return across + nearest(float64(float64(len(r.Hooks)-1)*r.curve(across).Slack()))
	}
	length := units.Length(0)
	for i := range len(r.Hooks) - 1 {
		length += r.swag(i).length()
	}
	return length
}

// FindSag returns r with the sag, the same in each swag, that uses up a garland, to the
// nearest nanometer. The hearth is checked only by [Mantel.Hang]. FindSag returns
// [units.ErrFit] if garland does not reach from hook to hook, and [units.ErrRange] if the
// sag would be over 50 ft or r lies on a shelf.
func (r Run) FindSag(garland units.Length) (Run, error) {
	const fn = "Run.FindSag"
	r.Sag = 0
	if err := r.check(fn); err != nil {
		return Run{}, err
	}
	if r.Lying {
		return Run{}, rangeError(fn, "/lying", "true", "false: a garland that lies on a shelf has no sag")
	}
	n := len(r.Hooks) - 1
	across, even := r.even()
	least := r.Left + r.Right + across
	if !even {
		least = r.garland()
	}
	if garland < least {
		return Run{}, fitError(fn, "garland", exact(garland), "at least "+exact(least)+" to reach from hook to hook")
	}
	rest := garland - r.Left - r.Right
	if even {
		r.Sag = nearest(catenary.Sag(float64(across)/float64(n), float64(rest-across)/float64(n)))
		if r.Sag < maxSag { // nearly always, and without a look at the deepest
			return r, nil
		}
	}
	deepest := r
	deepest.Sag = maxSag
	if most := deepest.garland(); garland > most {
		return Run{}, rangeError(fn, "garland", exact(garland), "at most "+exact(most)+", which hangs 50 ft deep")
	}
	switch s := r.swag(0); {
	case even: // the deepest, or above it by rounding
	case n == 1:
		curve, ok := catenary.Fit(int64(s.span), int64(s.rise), int64(rest))
		if !ok { // rest is the rounded chord
			return r, nil
		}
		r.Sag = nearest(curve.Sag())
	default:
		// The least sag whose swags take as much, or the one below it.
		high := maxSag
		for r.Sag < high {
			mid := r.Sag + (high-r.Sag)/2
			if (&Run{Hooks: r.Hooks, Sag: mid}).between() < rest {
				r.Sag = mid + 1
			} else {
				high = mid
			}
		}
		below := Run{Hooks: r.Hooks, Sag: r.Sag - 1}
		if r.Sag > 0 && rest-below.between() < r.between()-rest {
			r.Sag--
		}
	}
	r.Sag = min(r.Sag, maxSag) // rounding
	return r, nil
}

// Below returns how far the garland is below the level that the hooks are measured from, to
// the nearest nanometer, at a place between the first hook and the last.
func (r Run) Below(along units.Length) (units.Length, error) {
	const fn = "Run.Below"
	if err := r.check(fn); err != nil {
		return 0, err
	}
	first, n := r.Hooks[0], len(r.Hooks)-1
	if along < first.Along || along > r.Hooks[n].Along {
		return 0, rangeError(fn, "along", exact(along), exact(first.Along)+" to "+exact(r.Hooks[n].Along)+", from the first hook to the last")
	}
	if across, ok := r.even(); ok {
		at := (along - first.Along) * units.Length(n) % across
		return first.Below + nearest(r.curve(across).Below(float64(at)/float64(n))), nil
	}
	i := 0
	for i < n-1 && r.Hooks[i+1].Along <= along {
		i++
	}
	return r.Hooks[i].Below + nearest(r.swag(i).curve().Below(float64(along-r.Hooks[i].Along))), nil
}

// AppendPath appends to dst the middle line of the garland from left to right, with each swag
// in 1 to 1000 straight pieces of equal width. On an error it returns dst unchanged.
func (r Run) AppendPath(dst []Point, pieces int) ([]Point, error) {
	const fn = "Run.AppendPath"
	if err := r.check(fn); err != nil {
		return dst, err
	}
	if err := checkCount(fn, "pieces", pieces, 1, 1000); err != nil {
		return dst, err
	}
	first, n := r.Hooks[0], len(r.Hooks)-1
	if r.Left > 0 {
		dst = append(dst, Point{first.Along, first.Below + r.Left})
	}
	if r.Lying {
		pieces = 1
	}
	dst = append(dst, first)
	if across, ok := r.even(); ok {
		c := r.curve(across)
		for i := 1; i < n*pieces; i++ {
			at := float64(across) / float64(n) * float64(i%pieces) / float64(pieces)
			dst = append(dst, Point{first.Along + part(across, i, n*pieces), first.Below + nearest(c.Below(at))})
		}
	} else {
		for i := range n {
			s, p := r.swag(i), r.Hooks[i]
			c := s.curve()
			for k := 1; k < pieces; k++ {
				at := s.span * units.Length(k) / units.Length(pieces)
				dst = append(dst, Point{p.Along + at, p.Below + nearest(c.Below(float64(at)))})
			}
			dst = append(dst, r.Hooks[i+1])
		}
		dst = dst[:len(dst)-1]
	}
	last := r.Hooks[n]
	dst = append(dst, last)
	if r.Right > 0 {
		dst = append(dst, Point{last.Along, last.Below + r.Right})
	}
	return dst, nil
}

// Needs returns the garland, rounded up to an inch, and one pick for each pickSpacing of it,
// rounded up, with a tie each. PickSpacing is from 1/2 in; 0 is no picks.
func (r Run) Needs(pickSpacing units.Length, style units.Style) ([]shopping.Need, error) {
	const fn = "Run.Needs"
	if err := r.check(fn); err != nil {
		return nil, err
	}
	if pickSpacing != 0 {
		if err := checkLength(fn, "pickSpacing", pickSpacing, units.Inch/2, maxLength, wantPickSpacing); err != nil {
			return nil, err
		}
	}
	needs := []shopping.Need{r.garlandNeed(style)}
	if pickSpacing != 0 {
		length := r.garland()
		n := divideUp(length, pickSpacing)
		needs = append(needs,
			shopping.Need{
				Item: shopping.Item{Kind: shopping.Pick, Type: "garland"}, Quantity: shopping.Quantity{Pieces: n},
				Basis: "1 for each " + show(pickSpacing, style) + " of " + show(length, style), Source: commonPractice,
			},
			shopping.Need{Item: itemTies, Quantity: shopping.Quantity{Pieces: n}, Basis: "1 for each of " + plural(n, "pick"), Source: ownFigure})
	}
	return needs, nil
}

// way says how the garland goes from the first hook to the last.
func (r *Run) way(style units.Style) string {
	switch {
	case r.Sag > 0:
		return plural(len(r.Hooks)-1, "swag") + " " + show(r.Sag, style) + " deep"
	case r.Lying:
		return "along the shelf"
	}
	return "close along " + plural(len(r.Hooks), "hook")
}

// String returns "3 swags 6 in deep over 5 ft 4 in" and the drops.
func (r Run) String() string {
	if len(r.Hooks) == 0 {
		return "no hooks"
	}
	across := r.Hooks[len(r.Hooks)-1].Along - r.Hooks[0].Along
	return r.way(units.InFeetInches) + " over " + show(across, units.InFeetInches) + ", falling " + show(r.Left, units.InFeetInches) + " at the left and " + show(r.Right, units.InFeetInches) + " at the right"
}

// garlandNeed returns the garland as a need, rounded up to a whole inch, for a supply is
// never short.
func (r Run) garlandNeed(style units.Style) shopping.Need {
	run, source := r.way(style), "measured"
	if r.Sag > 0 {
		run, source = "in "+run, "length of a catenary"
	}
	return shopping.Need{
		Item:     itemGarland,
		Quantity: shopping.Quantity{Length: units.Length(divideUp(r.garland(), units.Inch)) * units.Inch},
		Basis:    show(r.between(), style) + " " + run + ", " + show(r.Left, style) + " falling at the left, " + show(r.Right, style) + " at the right",
		Source:   source,
	}
}

// Lights returns the lamps of light strings laid along the garland, each with 1 to 10,000
// lamps on 1 in to 1000 ft, and the extension cord to an outlet, its Along and Below within
// 150 ft:
//
//	strings = garland/length, rounded up
//	cord    = from the nearer end, along the wall and up or down it, rounded up to a foot
//
// The plug is at the end nearer to the outlet. The basis says how many strings; package
// sizing/lights says what they draw.
func (r Run) Lights(lamps int, length units.Length, outlet Point, style units.Style) (need shopping.Need, cord units.Length, cautions []units.Caution, err error) {
	const fn = "Run.Lights"
	if err := r.check(fn); err != nil {
		return shopping.Need{}, 0, nil, err
	}
	if err := checkCount(fn, "lamps", lamps, 1, 10_000); err != nil {
		return shopping.Need{}, 0, nil, err
	}
	const far, wantFar = maxSwagLength, "-150 ft to 150 ft"
	for _, x := range [...]measured{
		{"length", length, units.Inch, 1000 * units.Foot, "1 in to 1000 ft"},
		{"/outlet/along", outlet.Along, -far, far, wantFar},
		{"/outlet/below", outlet.Below, -far, far, wantFar},
	} {
		if err := checkLength(fn, x.field, x.length, x.least, x.most, x.want); err != nil {
			return shopping.Need{}, 0, nil, err
		}
	}
	garland := r.garland()
	strings := divideUp(garland, length)
	apart := func(hook Point, drop units.Length) units.Length {
		a, b := hook.Along-outlet.Along, hook.Below+drop-outlet.Below
		return max(a, -a) + max(b, -b)
	}
	near := min(apart(r.Hooks[0], r.Left), apart(r.Hooks[len(r.Hooks)-1], r.Right))
	cord = units.Length(divideUp(near, units.Foot)) * units.Foot
	return shopping.Need{
		Item: itemLights, Quantity: shopping.Quantity{Pieces: strings * lamps},
		Basis:  plural(strings, "string") + " of " + strconv.Itoa(lamps) + " on " + show(length, style) + ", along " + show(garland, style) + " of garland",
		Source: "geometry",
	}, cord, []units.Caution{cautionCords}, nil
}

// Loads returns the load on each hook; the garland weighs perFoot a foot, dressed, 1 g to
// 20 lb. The drops hang on the end hooks. A swag hangs on its two hooks, and pulls both
// towards each other:
//
//	level       = perFoot · a
//	left, right = perFoot · (length ∓ rise · cosh u/sinh u)/2
//
// A level swag hangs half on each. The steeper it is, the more the upper hook carries: 20 in wide,
// rising 14 in, with 4 in of sag, 98 % of the weight. A very steep one lifts its lower hook, which
// needs a tie, and a caution says so. Where equal swags meet, pulls cancel once both hang.
//
// All Downs, and the part lying on a shelf, total Weight exactly. Each Down and pull is
// exact within a nanogram up to 1 lb, and a part in 1e12 beyond. It returns
// [units.ErrRange] if a nonzero sag is under a hundredth of its span: a taut garland pulls
// without limit. Cautions round loads up and working loads down.
//
// Source: statics; the design factor, as for [Hook.WorkingLoad].
func (r Run) Loads(perFoot units.Mass, hook Hook, style units.Style) (Loads, error) {
	const fn = "Run.Loads"
	if err := r.check(fn); err != nil {
		return Loads{}, err
	}
	if err := checkPerFoot(fn, perFoot); err != nil {
		return Loads{}, err
	}
	working, err := hook.workingLoad(fn, "/hook")
	if err != nil {
		return Loads{}, err
	}
	l := Loads{Working: working, Hooks: make([]HookLoad, len(r.Hooks))}
	for i, p := range r.Hooks {
		l.Hooks[i].At = p
	}
	if err := r.share(fn, &l, perFoot); err != nil {
		return Loads{}, err
	}
	l.judge(hook, perFoot, style)
	return l, nil
}

// share gives every hook its part of the weight, and its pulls.
func (r Run) share(fn string, l *Loads, perFoot units.Mass) error {
	n := len(r.Hooks) - 1
	weigh := func(length float64) float64 { return float64(perFoot) * length / float64(units.Foot) }
	across, even := r.even()
	c := r.curve(across)
	down, lying := make([]float64, n+1), 0.0
	down[0], down[n] = weigh(float64(r.Left)), weigh(float64(r.Right))
	hung := weigh(float64(r.Left + r.Right))
	for i := range n {
		span, parts := across, n
		if !even {
			s := r.swag(i)
			c, span, parts = s.curve(), s.span, 1
		}
		if r.Sag > 0 {
			if err := checkTaut(fn, r.Sag, span, parts); err != nil {
				return err
			}
			hung += weigh(c.Length()) // not the sum of the ends, which can be large and opposite
			left, right := c.Ends()
			down[i] += weigh(left)
			down[i+1] += weigh(right)
			pull := units.Mass(math.Round(weigh(c.Pull())))
			l.Hooks[i].Right, l.Hooks[i+1].Left = pull, pull
		} else if half := weigh(c.Length() / 2); r.Lying {
			lying += 2 * half
		} else {
			hung += 2 * half
			down[i] += half
			down[i+1] += half
		}
	}
	sum, before := 0.0, units.Mass(0)
	for i, d := range down {
		if sum += d; i == n {
			sum = hung
		}
		upTo := units.Mass(math.Round(sum))
		l.Hooks[i].Down = upTo - before
		before = upTo
	}
	l.Weight = units.Mass(math.Round(hung + lying))
	return nil
}

// Stairs returns the run of a garland along a stair rail, from a newel at the left to a post
// at the right, 1 ft to 50 ft away and at most 50 ft higher or lower, with 0 to 99 evenly
// spaced balusters between. It hangs at newel, post and, if each is 4, every fourth baluster
// (each: 1 to balusters+1). Set its Sag, Left and Right.
func Stairs(newel, post Point, balusters, each int) (Run, []units.Caution, error) {
	const fn = "Stairs"
	if err := checkPlace(fn, newel); err != nil {
		return Run{}, nil, under("/newel", err)
	}
	err := checkPlace(fn, post)
	if err == nil {
		err = checkApart(fn, newel, post, units.Foot, "the newel")
	}
	if err != nil {
		return Run{}, nil, under("/post", err)
	}
	if err := checkCount(fn, "balusters", balusters, 0, maxHooks-2); err != nil {
		return Run{}, nil, err
	}
	gaps := balusters + 1
	if err := checkCount(fn, "each", each, 1, gaps); err != nil {
		return Run{}, nil, err
	}
	across, rise := post.Along-newel.Along, newel.Below-post.Below
	if each < gaps && across/units.Length(gaps) < minSpan {
		return Run{}, nil, fitError(fn, "balusters", strconv.Itoa(balusters), "balusters an inch or more apart")
	}
	var run Run
	for i := 0; i < gaps; i += each {
		run.Hooks = append(run.Hooks, Point{newel.Along + part(across, i, gaps), newel.Below - rise*units.Length(i)/units.Length(gaps)})
	}
	run.Hooks = append(run.Hooks, post)
	return run, []units.Caution{cautionStairs}, nil
}

// Door returns the run of a garland up one side of a door or window, along its top, in 0 to
// 100 swags, and down the other side. Corner is the lower right, from the upper left: 1 to
// 50 ft along, 0 to 50 ft below. Set Sag, and add a few inches to Left and Right. The
// corner hooks carry any side not tied along the frame: see [Hook.Count].
//
// Source: common practice.
func Door(corner Point, swags int) (Run, []units.Caution, error) {
	const fn = "Door"
	for _, x := range [...]measured{
		{"/corner/along", corner.Along, units.Foot, maxSpan, "1 ft to 50 ft"},
		{"/corner/below", corner.Below, 0, maxDrop, wantDrop},
	} {
		if err := checkLength(fn, x.field, x.length, x.least, x.most, x.want); err != nil {
			return Run{}, nil, err
		}
	}
	if err := checkCount(fn, "swags", swags, 0, maxSwags); err != nil {
		return Run{}, nil, err
	}
	n := max(1, swags)
	if corner.Along/units.Length(n) < minSpan {
		return Run{}, nil, fitError(fn, "swags", strconv.Itoa(swags), "swags an inch or more wide")
	}
	return Run{Hooks: level(corner.Along, n), Left: corner.Below, Right: corner.Below}, []units.Caution{cautionDoor}, nil
}
