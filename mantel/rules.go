package mantel

import "example.com/fircone/units"

// Rules are the rules of thumb for a mantel, one set for each look.
//
// [CommonPractice] returns the usual ones. A shop with habits of its own changes
// a field; a field of zero asks for none. The methods check the fields they use.
//
// Everything here is a supply: it goes by the exact length of the shelf, and
// counts round up.
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
// It returns an [units.Error] wrapping [units.ErrRange] if length is not from 1 ft to 50 ft
// or Extra is out of its range, and one wrapping [units.ErrName] if look is no look.
//
// Source: common practice.
func (r Rules) BaseGarland(length units.Length, look Look) (units.Length, error) {
	const fn = "Rules.BaseGarland"
	rules, err := r.of(fn, length, look)
	if err != nil {
		return 0, err
	}
	if err := checkLength(fn, "Extra", rules.Extra, 0, MaxLength, "0 ft to 50 ft"); err != nil {
		return 0, err
	}
	return length + rules.Extra, nil
}

// Picks returns how many picks (stems of berries, leaves or flowers) are tied
// into the base garland along a shelf of this length:
//
//	picks = length / PickSpacing
//
// by the exact length, rounded up. It returns an [units.Error] wrapping [units.ErrRange] if
// length is not from 1 ft to 50 ft or PickSpacing is out of its range, and one
// wrapping [units.ErrName] if look is no look.
//
// Source: common practice.
func (r Rules) Picks(length units.Length, look Look) (int, error) {
	const fn = "Rules.Picks"
	rules, err := r.of(fn, length, look)
	if err != nil {
		return 0, err
	}
	return rules.picks(fn, length)
}

// Ornaments returns how many ornaments hang along a shelf of this length: so
// many in each gap between two neighboring picks of the top layer,
//
//	ornaments = OrnamentsPerGap · (picks of the top layer - 1)
//	picks of the top layer = length / (Layers · PickSpacing), rounded up
//
// With one layer, as a traditional mantel has, that is every pick. Without picks
// there are none. It returns an
// [units.Error] wrapping [units.ErrRange] if length is not from 1 ft to 50 ft or a field is
// out of its range, and one wrapping [units.ErrName] if look is no look.
//
// Source: a starting figure of our own.
func (r Rules) Ornaments(length units.Length, look Look) (int, error) {
	const fn = "Rules.Ornaments"
	rules, err := r.of(fn, length, look)
	if err != nil {
		return 0, err
	}
	top, err := rules.topPicks(fn, length, look)
	if err != nil {
		return 0, err
	}
	return rules.OrnamentsPerGap * max(0, top-1), nil
}

// Ribbon returns how long the one piece of ribbon is that a look takes, 0 if it
// takes none. A bow takes all of it, tails included; a fall that is hung by its
// middle hangs half of it down. It returns an [units.Error] wrapping [units.ErrRange] if the
// field Ribbon is out of its range, and one wrapping [units.ErrName] if look is no look.
//
// Source: common practice.
func (r Rules) Ribbon(look Look) (units.Length, error) {
	const fn = "Rules.Ribbon"
	rules, err := r.look(fn, look)
	if err != nil {
		return 0, err
	}
	if err := checkLength(fn, "Ribbon", rules.Ribbon, 0, MaxLength, "0 ft to 50 ft"); err != nil {
		return 0, err
	}
	return rules.Ribbon, nil
}

// Bells returns how many bells hang with the ribbon. It returns an [units.Error]
// wrapping [units.ErrRange] if the field Bells is out of its range, and one wrapping
// [units.ErrName] if look is no look.
//
// Source: bells with the ribbon, common practice; how many, a starting figure of
// our own.
func (r Rules) Bells(look Look) (int, error) {
	const fn = "Rules.Bells"
	rules, err := r.look(fn, look)
	if err != nil {
		return 0, err
	}
	if err := checkCount(fn, "Bells", rules.Bells, 0, 100); err != nil {
		return 0, err
	}
	return rules.Bells, nil
}

// of returns the rules of a look, once length and look are known to be good.
func (r Rules) of(fn string, length units.Length, look Look) (LookRules, error) {
	if err := checkLength(fn, "length", length, MinLength, MaxLength, wantShelf); err != nil {
		return LookRules{}, err
	}
	return r.look(fn, look)
}

func (r Rules) look(fn string, look Look) (LookRules, error) {
	switch look {
	case Traditional:
		return r.Traditional, nil
	case Asymmetrical:
		return r.Asymmetrical, nil
	}
	return LookRules{}, look.check(fn)
}

// picks returns the picks along a shelf whose length is known to be good.
func (l LookRules) picks(fn string, length units.Length) (int, error) {
	if l.PickSpacing == 0 {
		return 0, nil
	}
	if err := checkLength(fn, "PickSpacing", l.PickSpacing, units.Inch/2, MaxLength, "1/2 in to 50 ft, or 0"); err != nil {
		return 0, err
	}
	return divideUp(length, l.PickSpacing), nil
}

// topPicks returns the picks of the top layer, and checks all that ornaments go by.
func (l LookRules) topPicks(fn string, length units.Length, look Look) (int, error) {
	n, err := l.picks(fn, length)
	if err != nil {
		return 0, err
	}
	if err := checkCount(fn, "Layers", l.Layers, 0, 10); err != nil {
		return 0, err
	}
	if err := checkCount(fn, "OrnamentsPerGap", l.OrnamentsPerGap, 0, 10); err != nil {
		return 0, err
	}
	if n == 0 || look == Traditional || l.Layers == 0 {
		return n, nil
	}
	return divideUp(length, units.Length(l.Layers)*l.PickSpacing), nil
}

// divideUp returns a/b rounded up, for a at or above 0 and b above 0.
func divideUp(a, b units.Length) int { return int((a + b - 1) / b) }
