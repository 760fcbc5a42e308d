package mantel

import "example.com/fircone/units"

// Rules are the rules of thumb, one set for each look. A shop with habits of its own changes
// a field of [CommonPractice]; zero asks for none.
type Rules struct {
	Traditional  LookRules `json:"traditional"`  // the same on both sides
	Asymmetrical LookRules `json:"asymmetrical"` // all the weight on one side
}

// LookRules are the rules of thumb for one look.
type LookRules struct {
	Extra           units.Length `json:"extra"`           // of garland beyond the length of the shelf, for what falls
	PickSpacing     units.Length `json:"pickSpacing"`     // of shelf for each pick, from 1/2 in
	Layers          int          `json:"layers"`          // equal parts of an asymmetrical shelf, 0 to 10; 0 is 1
	OrnamentsPerGap int          `json:"ornamentsPerGap"` // between two picks of the top layer, at the heavy end, 0 to 10
	Ribbon          units.Length `json:"ribbon"`          // one piece, for a bow or a fall
	Bells           int          `json:"bells"`           // with the ribbon, 0 to 100
}

// CommonPractice returns the rules of the package documentation.
//
// Source: see the package.
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

// What the rules of a look come to on one shelf.
type amounts struct {
	rules            LookRules
	garland          units.Length
	picks, ornaments int
	ribbon           units.Length
	bells            int
}

const wantPickSpacing = "1/2 in to 50 ft, or 0"

// of returns what the rules of a look come to, once they, length and look are known to
// be good.
func (r Rules) of(fn, lengthField string, length units.Length, lookField string, look Look) (amounts, error) {
	if err := checkLength(fn, lengthField, length, minLength, maxLength, wantShelf); err != nil {
		return amounts{}, err
	}
	if err := look.check(fn, lookField); err != nil {
		return amounts{}, err
	}
	rules, at := r.Traditional, "/traditional"
	if look != Traditional {
		rules, at = r.Asymmetrical, "/asymmetrical"
	}
	if err := rules.check(fn); err != nil {
		return amounts{}, under(at, err)
	}
	a := amounts{rules: rules, garland: length + rules.Extra, ribbon: rules.Ribbon, bells: rules.Bells}
	if rules.PickSpacing != 0 {
		a.picks = divideUp(length, rules.PickSpacing)
		top := a.picks
		if look != Traditional {
			top = divideUp(length, units.Length(max(1, rules.Layers))*rules.PickSpacing)
		}
		a.ornaments = rules.OrnamentsPerGap * max(0, top-1)
	}
	return a, nil
}

// check checks r, with pointers that begin in it.
func (r LookRules) check(fn string) error {
	if err := checkLength(fn, "/extra", r.Extra, 0, maxLength, "0 ft to 50 ft"); err != nil {
		return err
	}
	if r.PickSpacing != 0 {
		if err := checkLength(fn, "/pickSpacing", r.PickSpacing, units.Inch/2, maxLength, wantPickSpacing); err != nil {
			return err
		}
	}
	if err := checkCount(fn, "/layers", r.Layers, 0, 10); err != nil {
		return err
	}
	if err := checkCount(fn, "/ornamentsPerGap", r.OrnamentsPerGap, 0, 10); err != nil {
		return err
	}
	if err := checkLength(fn, "/ribbon", r.Ribbon, 0, maxLength, "0 ft to 50 ft"); err != nil {
		return err
	}
	return checkCount(fn, "/bells", r.Bells, 0, 100)
}

// divideUp returns a/b rounded up, for a at or above 0 and b above 0.
func divideUp(a, b units.Length) int { return int((a + b - 1) / b) }
