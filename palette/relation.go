package palette

import (
	"math"
	"strconv"
)

// A Relation is how two colors lie to each other on the color wheel, in a designer's
// words. The wheel is that of the eye: red and green are Triadic or Square on it, and
// not Complementary as on the paint box's; see [Relate]. The zero value is Neutral.
type Relation uint8

// The relations, by the angle between the two hues.
const (
	Neutral            Relation = iota // one or both have next to no hue: chroma under 15
	Monochromatic                      // under 15°: the same hue
	Analogous                          // 15° to 75°: neighbors
	Square                             // 75° to 105°: a quarter turn
	Triadic                            // 105° to 135°: a third of a turn
	SplitComplementary                 // 135° to 165°: beside the opposite
	Complementary                      // 165° and over: opposite
)

var relationNames = [...]string{
	"neutral", "monochromatic", "analogous", "square", "triadic", "split complementary", "complementary",
}

// neutralChroma is the chroma C*ab below which a color is called neutral.
const neutralChroma = 15

// Relate returns how c and d lie to each other on the wheel of the eye, the hue angle
// of CIE LCh (of L*a*b*, D65). It is not the wheel of the paint box, and does not give
// the words that a decorator expects of that one: red and green, its opposites, are
// square (red and green of CSS) or triadic (crimson and forest green) here, and crimson
// is complementary to teal.
//
// It goes by the angle between the hues, 0° to 180°: the limits between one word and the
// next are 15°, 75°, 105°, 135° and 165°, and a limit itself belongs to the word of the
// greater angle. White, black, greys, silver and ivory are neutral.
//
// Source: CIE 15 for the hue angle; the words, and the wheel of twelve places of 30°
// whose halves the limits are, are common practice among designers; the limit of chroma 15 was chosen here, so that ivory and
// beige are neutral and pale pink is not.
func Relate(c, d Color) Relation {
	x, y := c.Lab(), d.Lab()
	if min(x.Chroma(), y.Chroma()) < neutralChroma {
		return Neutral
	}
	angle := math.Abs(x.Hue() - y.Hue())
	if angle > 180 {
		angle = 360 - angle
	}
	return relationAt(angle)
}

// relationAt returns the word for an angle from 0 to 180 degrees.
func relationAt(angle float64) Relation {
	switch {
	case angle < 15:
		return Monochromatic
	case angle < 75:
		return Analogous
	case angle < 105:
		return Square
	case angle < 135:
		return Triadic
	case angle < 165:
		return SplitComplementary
	}
	return Complementary
}

// String returns the word for r, "split complementary".
func (r Relation) String() string {
	if int(r) < len(relationNames) {
		return relationNames[r]
	}
	return "Relation(" + strconv.Itoa(int(r)) + ")"
}

// MarshalText returns r.String(), or an [units.Error] wrapping [units.ErrRange] if r is not one
// of the relations above.
func (r Relation) MarshalText() ([]byte, error) {
	if int(r) >= len(relationNames) {
		return nil, rangeError("Relation.MarshalText", "relation", int(r), "Neutral to Complementary")
	}
	return []byte(r.String()), nil
}

// UnmarshalText reads the word for a relation, as [Relation.String] has it, with upper case
// and space around it as [ParseFinish] has them. It returns an [units.Error] wrapping
// [units.ErrName] for anything else, and leaves r as it was.
func (r *Relation) UnmarshalText(text []byte) error {
	i, err := parseWord("Relation.UnmarshalText", "relation", string(text), relationNames[:])
	if err != nil {
		return err
	}
	*r = Relation(i)
	return nil
}
