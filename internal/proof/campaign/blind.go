package main

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"time"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A random is a splitmix64 generator: the same inputs for the same seed.
type random uint64

func (r *random) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	x := uint64(*r)
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

func (r *random) below(n int) int { return int(r.next() % uint64(n)) }

// number returns a number of any size, small ones as often as large ones.
func (r *random) number() int64 { return int64(r.next()) >> (r.next() % 64) }

// length returns one between low and high, every size of difference from low as often as another.
func (r *random) length(low, high units.Length) units.Length {
	span := uint64(high-low) + 1
	return low + units.Length((r.next()>>(r.next()%64))%span)
}

// A blind target tries one input made with r and says what is wrong, "" if nothing is. It is called blind
// because no coverage guides the inputs: they come thousands of times as fast as Go's fuzzer makes them.
type blindTarget struct {
	name string
	try  func(r *random, buf []byte) string
}

// seeds are texts that the parsers read, for edits to start from, and the letters of the edits.
var seeds = []string{
	"7 ft 6 in", `7'6"`, "7½ ft", "7-1/2 in", "2 yd 1 ft", "2.3 m", "230 cm", "-4 ft", "12 sq ft 72 sq in", "1.5 m2", "3 lb 4 oz", "1.25 kg", "4.8 W", "1.2 kW",
	"#b22222", "#0f0", "crimson", "barn red=#7c0a02:shiny", "crimson,forestgreen,gold:metal,ivory", "matte", "glittered", "wall", "corner", "200 degrees",
	"garland", "picks", "slim", "traditional", "asymmetric", "left", "3 of 6 ft", "27",
}

const letters = "0123456789 0123456789 .,/-+'\"½¼⅛′″×ftinydcmkglbozWsqe#abcdef:=()%\t\n\x00\xffµ²"

// text returns a seed with some edits.
func (r *random) text(buf []byte) string {
	buf = append(buf[:0], seeds[r.below(len(seeds))]...)
	for range r.below(5) {
		i := r.below(len(buf) + 1)
		switch c := letters[r.below(len(letters))]; r.below(5) {
		case 0, 1:
			buf = append(buf, 0)
			copy(buf[i+1:], buf[i:])
			buf[i] = c
		case 2:
			if i < len(buf) {
				buf[i] = c
			}
		case 3:
			if i < len(buf) {
				buf = append(buf[:i], buf[i+1:]...)
			}
		case 4:
			buf = append(buf, ' ')
			buf = append(buf, seeds[r.below(len(seeds))]...)
		}
	}
	return string(buf)
}

// parser makes a target of a parser: what it reads it writes and reads again as the same, and an error
// is T, names a field and stays short.
func parser[V comparable, T error](name string, parse func(string) (V, error), text func(V) string) blindTarget {
	return blindTarget{name, func(r *random, buf []byte) string {
		s := r.text(buf)
		v, err := parse(s)
		var zero V
		if err != nil {
			var e T
			switch {
			case v != zero:
				return fmt.Sprintf("%q: a value beside an error", s)
			case !errors.As(err, &e):
				return fmt.Sprintf("%q: a %T", s, err)
			case len(err.Error()) > 400 || strings.ContainsAny(err.Error(), "\n\x00"):
				return fmt.Sprintf("%q: %q", s, err)
			}
			return ""
		}
		if again, err := parse(text(v)); err != nil || again != v {
			return fmt.Sprintf("%q is %v, whose text %q is %v, %v", s, v, text(v), again, err)
		}
		return ""
	}}
}

// stringer is what most of them print themselves with.
func stringer[V fmt.Stringer](v V) string { return v.String() }

var blindTargets = []blindTarget{
	parser[units.Length, *units.Error]("units.ParseLength", units.ParseLength, stringer),
	parser[units.Area, *units.Error]("units.ParseArea", units.ParseArea, stringer),
	parser[units.Mass, *units.Error]("units.ParseMass", units.ParseMass, stringer),
	parser[units.Power, *units.Error]("units.ParsePower", units.ParsePower, stringer),
	parser[palette.Color, *units.Error]("palette.ParseColor", palette.ParseColor, stringer),
	parser[palette.Swatch, *units.Error]("palette.ParseSwatch", palette.ParseSwatch, stringer),
	parser[palette.Palette, *units.Error]("palette.Rules.ParsePalette", palette.CommonPractice().ParsePalette, stringer),
	parser[sizing.Exposure, *units.Error]("sizing.ParseExposure", sizing.ParseExposure, stringer),
	parser[sizing.Accent, *units.Error]("sizing.ParseAccent", sizing.ParseAccent, stringer),
	parser[sizing.Taper, *units.Error]("sizing.ParseTaper", sizing.ParseTaper, stringer),
	parser[mantel.Look, *units.Error]("mantel.ParseLook", mantel.ParseLook, stringer),
	parser[shopping.Quantity, *units.Error]("shopping.ParseQuantity", shopping.ParseQuantity, stringer),
	{"units.Length.Round, Ceil, Floor", func(r *random, _ []byte) string {
		l, step := units.Length(r.number()), units.Length(r.number())
		down, err1 := l.Floor(step)
		up, err2 := l.Ceil(step)
		near, err3 := l.Round(step)
		if step <= 0 {
			if err1 == nil || err2 == nil || err3 == nil {
				return fmt.Sprintf("%d to the step %d is taken", l, step)
			}
			return ""
		}
		if err1 == nil && (down%step != 0 || down > l || l-down >= step) {
			return fmt.Sprintf("Floor of %d to %d is %d", l, step, down)
		}
		if err2 == nil && (up%step != 0 || up < l || up-l >= step) {
			return fmt.Sprintf("Ceil of %d to %d is %d", l, step, up)
		}
		if err3 == nil && (near%step != 0 || err1 == nil && err2 == nil && near != down && near != up) {
			return fmt.Sprintf("Round of %d to %d is %d", l, step, near)
		}
		return ""
	}},
	{"units.Length.String", func(r *random, buf []byte) string {
		l := units.Length(r.number())
		if again, err := units.ParseLength(l.String()); err != nil || again != l {
			return fmt.Sprintf("%d prints as %q, which is %d, %v", l, l, again, err)
		}
		return ""
	}},
	{"units.FromFloat and In", func(r *random, _ []byte) string {
		v := math.Float64frombits(r.next())
		l, err := units.FromFloat(v, units.Foot)
		if err != nil {
			if math.Abs(v) < 30e6 {
				return fmt.Sprintf("%g ft: %v", v, err)
			}
			return ""
		}
		if got := l.In(units.Foot); math.Abs(got-v) > 1e-8+float64(1e-15*math.Abs(v)) {
			return fmt.Sprintf("%g ft comes back as %g", v, got)
		}
		return ""
	}},
	{"sizing.Rules, monotone in height", func(r *random, _ []byte) string {
		c := sizing.CommonPractice()
		a := r.length(sizing.MinHeight, sizing.MaxHeight)
		b := r.length(a, sizing.MaxHeight)
		ga, err1 := c.Garland(a)
		gb, err2 := c.Garland(b)
		pa, err3 := c.Picks(a)
		pb, err4 := c.Picks(b)
		ta, err5 := c.Types(a)
		tb, err6 := c.Types(b)
		if err := errors.Join(err1, err2, err3, err4, err5, err6); err != nil || ga > gb || pa > pb || ta > tb {
			return fmt.Sprintf("from %v to %v: %v %v, %d %d, %d %d, %v", a, b, ga, gb, pa, pb, ta, tb, err)
		}
		return ""
	}},
	{"sizing.Cone.SpiralLength and Spacing", func(r *random, _ []byte) string {
		h := r.length(6*units.Inch, 100*units.Foot)
		c := sizing.Cone{Height: h, BaseDiameter: h/8 + 1 + r.length(0, h)}
		spacing := r.length(sizing.MinSpacing, c.Height)
		l, err := c.SpiralLength(spacing)
		if err != nil {
			return fmt.Sprintf("%+v at %v: %v", c, spacing, err)
		}
		if slant, err := c.Slant(); err != nil || l < slant-1 {
			return fmt.Sprintf("%+v at %v: garland %v, slant %v, %v", c, spacing, l, slant, err)
		}
		if wider := spacing + 1 + r.length(0, units.Foot); wider <= sizing.MaxSpacing {
			if m, err := c.SpiralLength(wider); err != nil || m > l {
				return fmt.Sprintf("%+v: %v at %v and %v at %v, %v", c, l, spacing, m, wider, err)
			}
		}
		return ""
	}},
	{"mantel.SwagOf and Length", func(r *random, _ []byte) string {
		span := r.length(units.Inch, 50*units.Foot)
		length := r.length(span, 150*units.Foot)
		s, err := mantel.SwagOf(span, length)
		if err != nil {
			return "" // the sag is over its bound; the package's own tests say where that begins
		}
		back, err := s.Length()
		if d := back - length; err != nil || s.Sag > 0 && (d > 3 || d < -3) {
			return fmt.Sprintf("a span of %d and a length of %d: sag %d, length %d, %v", span, length, s.Sag, back, err)
		}
		return ""
	}},
	{"palette.Apportion", func(r *random, _ []byte) string {
		shares := make([]int, 1+r.below(6))
		sum := 0
		for i := range shares {
			shares[i] = r.below(100)
			sum += shares[i]
		}
		total := r.below(100_000)
		counts, err := palette.Apportion(total, shares, 0)
		if err != nil {
			if sum > 0 {
				return fmt.Sprintf("%d over %v: %v", total, shares, err)
			}
			return ""
		}
		left := total
		for i, n := range counts {
			left -= n
			if d := n*sum - total*shares[i]; d >= sum || d <= -sum {
				return fmt.Sprintf("%d over %v: %v", total, shares, counts)
			}
		}
		if left != 0 {
			return fmt.Sprintf("%d over %v: %v does not add up", total, shares, counts)
		}
		return ""
	}},
	{"palette.Color.Difference", func(r *random, _ []byte) string {
		x := r.next()
		c := palette.Color{R: uint8(x), G: uint8(x >> 8), B: uint8(x >> 16)}
		d := palette.Color{R: uint8(x >> 24), G: uint8(x >> 32), B: uint8(x >> 40)}
		ab, ba := c.Difference(d), d.Difference(c)
		if ab != ba || (ab == 0) != (c == d) || !(ab >= 0 && ab < 150) {
			return fmt.Sprintf("%v and %v: %g and %g", c, d, ab, ba)
		}
		return ""
	}},
}

// blind gives each target whose name contains match n inputs.
func blind(n int64, seed uint64, match string) error {
	for _, t := range blindTargets {
		if !strings.Contains(t.name, match) {
			continue
		}
		start := time.Now()
		r := random(seed)
		buf := make([]byte, 0, 512)
		for i := range n {
			at := r
			if wrong := t.safely(&r, buf); wrong != "" {
				return fmt.Errorf("%s: input %d (generator at %#x): %s", t.name, i, uint64(at), wrong)
			}
		}
		took := time.Since(start).Round(time.Second)
		fmt.Printf("%-38s %12d inputs in %v\n", t.name, n, took)
		if err := enter("blind, seed "+fmt.Sprint(seed), t.name, n, took); err != nil {
			return err
		}
	}
	return nil
}

// safely turns a panic into a fault with the input that made it.
func (t blindTarget) safely(r *random, buf []byte) (wrong string) {
	defer func() {
		if p := recover(); p != nil {
			wrong = fmt.Sprint("panic: ", p)
		}
	}()
	return t.try(r, buf)
}
