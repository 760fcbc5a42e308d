package mantel

import (
	"math"
	"strconv"

	"example.com/fircone/internal/catenary"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

const maxHooks = 101

// A Run is a garland that goes from hook to hook at any heights: up a banister, round
// a door, along brackets that are there already. [Banister.Hang] and [Frame.Hang] make
// one; for brackets, measure where they are:
//
//	                   o---.
//	          o.     .'    |
//	o.      .'  '- -'      |  Right
//	|  '- -'               |
//	|  Left
//
// With a Sag of zero the garland is fastened close along the line from hook to hook,
// as along a rail; it is then reckoned to pull no hook sideways.
type Run struct {
	// Hooks are where the hooks are, from left to right, 2 to 101 of them, an inch to
	// 50 ft apart, level, and at most 50 ft from each other in height. Any place may be
	// the one that they are measured from, up to 1000 ft away.
	Hooks []Point `json:"hooks"`

	// Sag is how far the garland hangs below the middle of the line from each hook to
	// the next, 0 to 50 ft, as in Swag.
	Sag units.Length `json:"sag"`

	Left  units.Length `json:"left"`  // what falls at the first hook, 0 to 50 ft
	Right units.Length `json:"right"` // what falls at the last hook, 0 to 50 ft
	Extra units.Length `json:"extra"` // for corners and knots, half of it at either end, 0 to 50 ft

	Cautions []units.Caution `json:"cautions"` // what to mind there; Run.Loads hands them on
}

// swag returns the swag from the i-th hook to the next.
func (r Run) swag(i int) Swag {
	return Swag{Span: r.Hooks[i+1].Along - r.Hooks[i].Along, Rise: r.Hooks[i].Below - r.Hooks[i+1].Below, Sag: r.Sag}
}

func (r Run) check(fn string) error {
	const far = 1000 * units.Foot
	if len(r.Hooks) < 2 || len(r.Hooks) > maxHooks {
		return rangeError(fn, "/hooks", strconv.Itoa(len(r.Hooks))+" hooks", "2 to "+strconv.Itoa(maxHooks)+" hooks")
	}
	for i, p := range r.Hooks {
		at := "/hooks/" + strconv.Itoa(i)
		if err := checkLength(fn, at+"/along", p.Along, -far, far, "-1000 ft to 1000 ft"); err != nil {
			return err
		}
		if err := checkLength(fn, at+"/below", p.Below, -far, far, "-1000 ft to 1000 ft"); err != nil {
			return err
		}
		if i == 0 {
			continue
		}
		if span := p.Along - r.Hooks[i-1].Along; span < minSpan || span > maxSpan {
			return fitError(fn, at+"/along", exact(p.Along), wantSpan+" to the right of the hook before")
		}
		if rise := p.Below - r.Hooks[i-1].Below; rise < -maxRise || rise > maxRise {
			return fitError(fn, at+"/below", exact(p.Below), "at most 50 ft above or below the hook before")
		}
	}
	for _, x := range [...]struct {
		field  string
		length units.Length
	}{{"/sag", r.Sag}, {"/left", r.Left}, {"/right", r.Right}, {"/extra", r.Extra}} {
		if err := checkLength(fn, x.field, x.length, 0, maxDrop, wantDrop); err != nil {
			return err
		}
	}
	return nil
}

// Garland returns the length of garland that the run takes: what falls at the ends,
// the swags, and Extra, each swag rounded to the nearest nanometer. It returns an error
// wrapping [units.ErrRange] if a field of r is out of its range, and one wrapping
// [units.ErrFit] if two hooks are not as [Run] has them.
//
// Source: as for [Swag].
func (r Run) Garland() (units.Length, error) {
	if err := r.check("Run.Garland"); err != nil {
		return 0, err
	}
	return r.garland(), nil
}

func (r Run) garland() units.Length {
	length := r.Left + r.Right + r.Extra
	for i := range len(r.Hooks) - 1 {
		length += r.swag(i).length()
	}
	return length
}

// Needs returns the garland of [Run.Garland], rounded up to a whole inch, and one pick
// for each pickSpacing of it, rounded up, with a tie each. Zero asks for no picks. Hooks
// have their need in [Loads.Need].
//
// The errors are those of [Run.Garland], and one wrapping [units.ErrRange] if
// pickSpacing is neither 0 nor from 1/2 in to 50 ft.
//
// Source: as for [Swag]; the spacing of picks, common practice for a mantel.
func (r Run) Needs(pickSpacing units.Length) ([]shopping.Need, error) {
	const fn = "Run.Needs"
	if err := r.check(fn); err != nil {
		return nil, err
	}
	if pickSpacing != 0 {
		if err := checkLength(fn, "pickSpacing", pickSpacing, units.Inch/2, MaxLength, "1/2 in to 50 ft, or 0"); err != nil {
			return nil, err
		}
	}
	length := r.garland()
	run := "close along " + plural(len(r.Hooks), "hook")
	if r.Sag > 0 {
		run = "in " + plural(len(r.Hooks)-1, "swag") + " " + show(r.Sag) + " deep"
	}
	needs := []shopping.Need{{
		Item: itemGarland, Quantity: shopping.Quantity{Length: wholeInches(length)},
		Basis:  show(length-r.Left-r.Right-r.Extra) + " " + run + ", " + show(r.Left) + " and " + show(r.Right) + " falling, " + show(r.Extra) + " for corners",
		Source: "length of a catenary",
	}}
	if pickSpacing != 0 {
		n := divideUp(length, pickSpacing)
		needs = append(needs,
			shopping.Need{
				Item: shopping.Item{Kind: shopping.Pick, Type: "garland"}, Quantity: shopping.Quantity{Pieces: n},
				Basis: "1 for each " + pickSpacing.String() + " of " + show(length), Source: commonPractice,
			},
			shopping.Need{Item: itemTies, Quantity: shopping.Quantity{Pieces: n}, Basis: "1 for each of " + plural(n, "pick"), Source: ownFigure})
	}
	return needs, nil
}

// Loads returns what the garland does to each hook, as [Mantel.Loads] does, for hooks
// at any heights: see [Swag.Pull]. Along and Below are those of Hooks. On the lower hook
// of a steep swag Down can be below zero: the garland lifts it, and needs a tie that
// holds it down.
//
// Weight is perFoot times the garland; every Down adds up to it exactly. Each is within
// a nanogram of its own share up to 1 lb, and within a part in 1e12 beyond.
//
// The errors are those of [Run.Garland] and [Hook.WorkingLoad], and one wrapping
// [units.ErrRange] if perFoot is not from 1 g to 20 lb, or Sag is above 0 and less than
// a hundredth of a span.
//
// Source: statics of the catenary; the design factor, as for [DefaultFactor].
func (r Run) Loads(perFoot units.Mass, hook Hook) (Loads, error) {
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
	last := len(r.Hooks) - 1
	l := Loads{Working: working, Hooks: make([]HookLoad, last+1), Cautions: append([]units.Caution(nil), r.Cautions...)}
	weigh := func(length float64) float64 { return float64(perFoot) * length / float64(units.Foot) }
	down := make([]float64, last+1)
	down[0] = weigh(float64(r.Left) + float64(r.Extra)/2)
	down[last] = weigh(float64(r.Right) + float64(r.Extra)/2)
	for i, p := range r.Hooks {
		l.Hooks[i].Along, l.Hooks[i].Below = p.Along, p.Below
	}
	for i := range last {
		s := r.swag(i)
		l.Spacing = max(l.Spacing, s.Span)
		if s.Sag == 0 {
			half := weigh(catenary.Sloped(float64(s.Span), float64(s.Rise), 0).Length() / 2)
			down[i] += half
			down[i+1] += half
			continue
		}
		if err := s.checkTaut(fn, "/sag"); err != nil {
			return Loads{}, err
		}
		c := s.curve()
		left, right := c.Ends()
		down[i] += weigh(left)
		down[i+1] += weigh(right)
		pull := units.Mass(math.Round(weigh(c.Pull())))
		l.Hooks[i].Right, l.Hooks[i+1].Left = pull, pull
	}
	sum := 0.0
	for i, d := range down {
		sum += d
		upTo := units.Mass(math.Round(sum))
		l.Hooks[i].Down = upTo - l.Weight
		l.Weight = upTo
	}
	l.judge(hook, perFoot)
	return l, nil
}

// AppendPath appends to dst the middle line of the garland, from the bottom of what
// falls at the left to the bottom of what falls at the right, and returns the longer
// slice. Each swag is given as that many straight pieces of equal width, 1 to 1000. The
// errors are those of [Run.Garland], and one wrapping [units.ErrRange] if pieces is out
// of its range. With an error it returns dst as it was.
//
// Source: as for [Swag].
func (r Run) AppendPath(dst []Point, pieces int) ([]Point, error) {
	const fn = "Run.AppendPath"
	if err := r.check(fn); err != nil {
		return dst, err
	}
	if err := checkCount(fn, "pieces", pieces, 1, 1000); err != nil {
		return dst, err
	}
	if first := r.Hooks[0]; r.Left > 0 {
		dst = append(dst, Point{first.Along, first.Below + r.Left})
	}
	for i := range len(r.Hooks) - 1 {
		s, p := r.swag(i), r.Hooks[i]
		c := s.curve()
		for k := range pieces {
			at := s.Span * units.Length(k) / units.Length(pieces)
			dst = append(dst, Point{p.Along + at, p.Below + nearest(c.Below(float64(at)))})
		}
	}
	last := r.Hooks[len(r.Hooks)-1]
	dst = append(dst, last)
	if r.Right > 0 {
		dst = append(dst, Point{last.Along, last.Below + r.Right})
	}
	return dst, nil
}

// A Banister is a stair rail with a newel at its left end and a post at its right one.
// The garland hangs at the newel, at every so many balusters, and at the post.
type Banister struct {
	Across    units.Length `json:"across"`    // level, from newel to post, 1 ft to 50 ft
	Rise      units.Length `json:"rise"`      // how far the rail rises to the right, -50 to 50 ft; negative if it falls
	Balusters int          `json:"balusters"` // between newel and post, at equal distances, 0 to 99
	Each      int          `json:"each"`      // balusters to a swag, 0 to 100; 0 is one swag from newel to post
	Sag       units.Length `json:"sag"`       // of each swag, 0 to 50 ft; 0 lies along the rail
	Left      units.Length `json:"left"`      // what falls at the newel, 0 to 50 ft
	Right     units.Length `json:"right"`     // what falls at the post, 0 to 50 ft
}

// Hang returns the run of garland along b: hooks at the newel, at each Each-th
// baluster, and at the post, where the last swag may be narrower. Places are measured
// from the newel and rounded down to the nanometer. For swags between points of your
// own choice make a [Run].
//
// It returns an error wrapping [units.ErrRange] if a field of b is out of its range, and
// one wrapping [units.ErrFit] if the swags would be less than an inch wide.
//
// Source: equal distances, common practice.
func (b Banister) Hang() (Run, error) {
	const fn = "Banister.Hang"
	for _, x := range [...]measured{
		{"/across", b.Across, units.Foot, maxSpan, "1 ft to 50 ft"},
		{"/rise", b.Rise, -maxRise, maxRise, wantRise},
		{"/sag", b.Sag, 0, maxSag, wantSag},
		{"/left", b.Left, 0, maxDrop, wantDrop},
		{"/right", b.Right, 0, maxDrop, wantDrop},
	} {
		if err := checkLength(fn, x.field, x.length, x.least, x.most, x.want); err != nil {
			return Run{}, err
		}
	}
	if err := checkCount(fn, "/balusters", b.Balusters, 0, maxHooks-2); err != nil {
		return Run{}, err
	}
	if err := checkCount(fn, "/each", b.Each, 0, 100); err != nil {
		return Run{}, err
	}
	gaps, each := b.Balusters+1, b.Each
	if each == 0 {
		each = gaps
	}
	if gap := b.Across / units.Length(gaps); each < gaps && gap < minSpan {
		return Run{}, fitError(fn, "/balusters", strconv.Itoa(b.Balusters), "balusters an inch or more apart")
	}
	run := Run{Sag: b.Sag, Left: b.Left, Right: b.Right, Cautions: []units.Caution{cautionStairs}}
	for i := 0; i < gaps; i += each {
		run.Hooks = append(run.Hooks, Point{b.Across * units.Length(i) / units.Length(gaps), -b.Rise * units.Length(i) / units.Length(gaps)})
	}
	run.Hooks = append(run.Hooks, Point{b.Across, -b.Rise})
	return run, nil
}

// A Frame is a door or a window with garland up one side, along the top and down the
// other:
//
//	corner ._______________. corner
//	       |      top      |
//	Height |               | Height
//	       |               |
//	          Width
type Frame struct {
	Width  units.Length `json:"width"`  // from side to side, 1 ft to 50 ft
	Height units.Length `json:"height"` // how far each side comes down, 0 to 50 ft
	Swags  int          `json:"swags"`  // along the top, 0 to 100, an inch wide or more; 0 is straight
	Sag    units.Length `json:"sag"`    // of each swag, 0 to 50 ft; 0 where there are none
	Corner units.Length `json:"corner"` // more for each corner, 0 to 25 ft; a few inches, common practice
}

// Hang returns the run of garland around f: hooks at the two corners, and between each
// two swags. The sides hang from the corner hooks, which carry all of them unless you
// tie the sides up along the frame: [Hook.Count] says with how many hooks. Places are
// measured from the left corner and rounded down to the nanometer.
//
// It returns an error wrapping [units.ErrRange] if a field of f is out of its range, and
// one wrapping [units.ErrFit] for swags under an inch wide or a sag without swags.
//
// Source: two sides, the top and a few inches for the corners, common practice.
func (f Frame) Hang() (Run, error) {
	const fn = "Frame.Hang"
	for _, x := range [...]measured{
		{"/width", f.Width, units.Foot, maxSpan, "1 ft to 50 ft"},
		{"/height", f.Height, 0, maxDrop, wantDrop},
		{"/sag", f.Sag, 0, maxSag, wantSag},
		{"/corner", f.Corner, 0, maxDrop / 2, "0 ft to 25 ft"},
	} {
		if err := checkLength(fn, x.field, x.length, x.least, x.most, x.want); err != nil {
			return Run{}, err
		}
	}
	if err := checkCount(fn, "/swags", f.Swags, 0, maxSwags); err != nil {
		return Run{}, err
	}
	if f.Swags == 0 && f.Sag != 0 {
		return Run{}, fitError(fn, "/sag", exact(f.Sag), "0 ft where there are no swags")
	}
	n := units.Length(max(1, f.Swags))
	if f.Width/n < minSpan {
		return Run{}, fitError(fn, "/swags", strconv.Itoa(f.Swags), "swags an inch or more wide")
	}
	run := Run{Sag: f.Sag, Left: f.Height, Right: f.Height, Extra: 2 * f.Corner, Cautions: []units.Caution{cautionDoor}}
	for i := range n + 1 {
		run.Hooks = append(run.Hooks, Point{Along: f.Width * i / n})
	}
	return run, nil
}
