package mantel

import "example.com/fircone/units"

// Rules are the rules of thumb for a mantel, one set for each look.
//
// [CommonPractice] returns the usual ones. A shop with habits of its own changes
// a field; a field of zero asks for none. The methods check the fields they use.
//
// Everything here is a supply: it goes by the exact length of the shelf, and
// counts round up.
//
// The layers of an asymmetrical shelf lie like shingles, one part of the shelf each,
// and rise towards the heavy side, here at the right:
//
//	                                        o   o   o   layer 4, ornaments in its gaps
//	                            | | | | | | | | | |     layer 3
//	              | | | | | | | /                       layer 2, over the end of layer 1
//	| | | | | | | /                                     layer 1
//	===================================================
//	light end                                heavy end
type Rules struct {
	Traditional  LookRules `json:"traditional"`  // for the same on both sides
	Asymmetrical LookRules `json:"asymmetrical"` // for all the weight on one side
}

// LookRules are the rules of thumb for one look.
type LookRules struct {
	// Extra is the base garland beyond the length of the shelf, for what falls
	// at the ends, 0 to 50 ft.
	Extra units.Length `json:"extra"`

	// PickSpacing is the length of shelf for each pick, 1/2 in to 50 ft.
	// Zero for no picks.
	PickSpacing units.Length `json:"pickSpacing"`

	// Layers is how many equal parts an asymmetrical shelf is divided into, 1 to
	// 10. The picks of one part are a layer. They lie beside those of the part before,
	// from the light end on, and like shingles over their end: each pick over the
	// stem of the one before it. The last part, at the heavy side, is the top layer.
	// Zero is one layer, and a traditional mantel is one layer whatever this says.
	Layers int `json:"layers"`

	// OrnamentsPerGap is the ornaments that hang between two neighboring picks
	// of the top layer, 0 to 10. The other layers have none.
	OrnamentsPerGap int `json:"ornamentsPerGap"`

	// Ribbon is the length of the one piece of ribbon, for a bow or a fall, at
	// the heavy side (in the middle of a traditional mantel), 0 to 50 ft. Zero for
	// none.
	Ribbon units.Length `json:"ribbon"`

	// Bells is how many bells hang with the ribbon, 0 to 100.
	Bells int `json:"bells"`
}

// CommonPractice returns the rules of thumb that most of the trade follows:
//
//	                traditional            asymmetrical
//	base garland    the shelf and 2 ft     the shelf and 4 ft
//	picks           one for each 8 in      one for each 3 in, in 3 layers
//	ornaments       one in each gap        one in each gap of the top layer
//	ribbon          none                   1½ yd at the heavy side
//	bells           none                   3 with the ribbon
//
// Source: common practice, for which there is no published standard. How many
// layers, ornaments and bells there are is a starting figure of our own: common
// practice has picks layered and bells with the ribbon, but gives no number.
func CommonPractice() Rules {
	return Rules{
		Traditional: LookRules{
			Extra:           2 * units.Foot,
			PickSpacing:     8 * units.Inch,
			Layers:          1,
			OrnamentsPerGap: 1,
		},
		Asymmetrical: LookRules{
			Extra:           4 * units.Foot,
			PickSpacing:     3 * units.Inch,
			Layers:          3,
			OrnamentsPerGap: 1,
			Ribbon:          54 * units.Inch,
			Bells:           3,
		},
	}
}

// BaseGarland returns how long the base garland of a mantel is:
//
//	garland = length of the shelf + Extra
//
// Half of the extra falls at each end of a traditional mantel, all of it at the
// heavy end of an asymmetrical one; see [Mantel.FindDrops]. The sum is exact.
// The rule leaves nothing for swags; for those see [Mantel.Garland].
// It returns an error wrapping [units.ErrRange] if length is not from 1 ft to 50 ft
// or Extra is out of its range, and one wrapping [units.ErrName] if look is no look.
//
// Source: common practice.
func (r Rules) BaseGarland(length units.Length, look Look) (units.Length, error) {
	a, err := r.of("Rules.BaseGarland", "length", length, "look", look, checkExtra)
	return a.garland, err
}

// Picks returns how many picks (stems of berries, leaves or flowers) are tied
// into the base garland along a shelf of this length:
//
//	picks = length / PickSpacing
//
// by the exact length, rounded up. It returns an error wrapping [units.ErrRange] if
// length is not from 1 ft to 50 ft or PickSpacing is out of its range, and one
// wrapping [units.ErrName] if look is no look.
//
// Source: common practice.
func (r Rules) Picks(length units.Length, look Look) (int, error) {
	a, err := r.of("Rules.Picks", "length", length, "look", look, checkSpacing)
	return a.picks, err
}

// Ornaments returns how many ornaments hang along a shelf of this length: so
// many in each gap between two neighboring picks of the top layer,
//
//	ornaments = OrnamentsPerGap · (picks of the top layer - 1)
//	picks of the top layer = length / (Layers · PickSpacing), rounded up
//
// With one layer, as a traditional mantel has, that is every pick. Without picks
// there are none. It returns an error
// [units.Error] wrapping [units.ErrRange] if length is not from 1 ft to 50 ft or a field is
// out of its range, and one wrapping [units.ErrName] if look is no look.
//
// Source: a starting figure of our own.
func (r Rules) Ornaments(length units.Length, look Look) (int, error) {
	a, err := r.of("Rules.Ornaments", "length", length, "look", look, checkSpacing|checkLayers)
	return a.ornaments, err
}

// Ribbon returns how long the one piece of ribbon is that a look takes, 0 if it
// takes none. A bow takes all of it, tails included; a fall that is hung by its
// middle hangs half of it down. It returns an error wrapping [units.ErrRange] if the
// field Ribbon is out of its range, and one wrapping [units.ErrName] if look is no look.
//
// Source: common practice.
func (r Rules) Ribbon(look Look) (units.Length, error) {
	a, err := r.of("Rules.Ribbon", "", MinLength, "look", look, checkRibbon)
	return a.ribbon, err
}

// Bells returns how many bells hang with the ribbon. It returns an error
// wrapping [units.ErrRange] if the field Bells is out of its range, and one wrapping
// [units.ErrName] if look is no look.
//
// Source: bells with the ribbon, common practice; how many, a starting figure of
// our own.
func (r Rules) Bells(look Look) (int, error) {
	a, err := r.of("Rules.Bells", "", MinLength, "look", look, checkBells)
	return a.bells, err
}

// What the rules of a look come to on one shelf.
type amounts struct {
	rules            LookRules
	garland          units.Length
	picks, ornaments int
	ribbon           units.Length
	bells            int
}

// Which fields of the rules a caller goes by: only those are checked.
const (
	checkExtra = 1 << iota
	checkSpacing
	checkLayers
	checkRibbon
	checkBells
	checkAll = checkExtra | checkSpacing | checkLayers | checkRibbon | checkBells
)

// of returns what the rules of a look come to, once length, look and the fields that
// matter are known to be good.
func (r Rules) of(fn, lengthField string, length units.Length, lookField string, look Look, which int) (amounts, error) {
	if err := checkLength(fn, lengthField, length, MinLength, MaxLength, wantShelf); err != nil {
		return amounts{}, err
	}
	if err := look.check(fn, lookField); err != nil {
		return amounts{}, err
	}
	rules, at := r.Traditional, "/traditional"
	if look == Asymmetrical {
		rules, at = r.Asymmetrical, "/asymmetrical"
	}
	if which&checkExtra != 0 {
		if err := checkLength(fn, at+"/extra", rules.Extra, 0, MaxLength, "0 ft to 50 ft"); err != nil {
			return amounts{}, err
		}
	}
	if which&checkSpacing != 0 && rules.PickSpacing != 0 {
		if err := checkLength(fn, at+"/pickSpacing", rules.PickSpacing, units.Inch/2, MaxLength, "1/2 in to 50 ft, or 0"); err != nil {
			return amounts{}, err
		}
	}
	if which&checkLayers != 0 {
		if err := checkCount(fn, at+"/layers", rules.Layers, 0, 10); err != nil {
			return amounts{}, err
		}
		if err := checkCount(fn, at+"/ornamentsPerGap", rules.OrnamentsPerGap, 0, 10); err != nil {
			return amounts{}, err
		}
	}
	if which&checkRibbon != 0 {
		if err := checkLength(fn, at+"/ribbon", rules.Ribbon, 0, MaxLength, "0 ft to 50 ft"); err != nil {
			return amounts{}, err
		}
	}
	if which&checkBells != 0 {
		if err := checkCount(fn, at+"/bells", rules.Bells, 0, 100); err != nil {
			return amounts{}, err
		}
	}
	a := amounts{rules: rules, garland: length + rules.Extra, ribbon: rules.Ribbon, bells: rules.Bells}
	if which&checkSpacing != 0 && rules.PickSpacing != 0 {
		a.picks = divideUp(length, rules.PickSpacing)
		top := a.picks
		if look == Asymmetrical && which&checkLayers != 0 && rules.Layers > 0 {
			top = divideUp(length, units.Length(rules.Layers)*rules.PickSpacing)
		}
		a.ornaments = rules.OrnamentsPerGap * max(0, top-1)
	}
	return a, nil
}

// divideUp returns a/b rounded up, for a at or above 0 and b above 0.
func divideUp(a, b units.Length) int { return int((a + b - 1) / b) }
