package sizing

import (
	"example.com/fircone/units"
)

// A TreeKind is what a tree is made of.
type TreeKind uint8

// The kinds of tree.
const (
	Cut        TreeKind = iota // cut, and watered
	Artificial                 // artificial, without lights of its own
	PreLit                     // artificial, with lights of its own: it takes no others
	Metal                      // of metal or foil: it takes no electric lights
	numKinds
)

var kindNames = [numKinds]string{"cut", "artificial", "pre-lit", "metal"}

// String returns cut, artificial, pre-lit or metal.
func (k TreeKind) String() string { return nameOf("TreeKind", int(k), kindNames[:]) }

// MarshalText returns [TreeKind.String]. A value that is no kind is an error wrapping
// [units.ErrName].
func (k TreeKind) MarshalText() ([]byte, error) {
	return marshalName("TreeKind.MarshalText", "kind", int(k), k.String(), kindNames[:])
}

// UnmarshalText sets k to the kind of a name that [TreeKind.String] returns, in upper
// or lower case. Any other text is an error wrapping [units.ErrName] that leaves k as
// it was.
func (k *TreeKind) UnmarshalText(text []byte) error {
	i, err := parseName("TreeKind.UnmarshalText", "text", string(text), kindNames[:])
	if err == nil {
		*k = TreeKind(i)
	}
	return err
}

// lit reports whether the trees of a kind are given lights.
func (k TreeKind) lit() bool { return k == Cut || k == Artificial }

// A Setting is who uses the room where a tree stands.
type Setting uint8

// The settings.
const (
	Home   Setting = iota // a home
	Public                // a room that the public uses: a lobby, a shop, a hall, a church
	numSettings
)

var settingNames = [numSettings]string{"home", "public"}

// String returns home or public.
func (s Setting) String() string { return nameOf("Setting", int(s), settingNames[:]) }

// MarshalText returns [Setting.String]. A value that is no setting is an error
// wrapping [units.ErrName].
func (s Setting) MarshalText() ([]byte, error) {
	return marshalName("Setting.MarshalText", "setting", int(s), s.String(), settingNames[:])
}

// UnmarshalText sets s to the setting of a name that [Setting.String] returns, in
// upper or lower case. Any other text is an error wrapping [units.ErrName] that leaves
// s as it was.
func (s *Setting) UnmarshalText(text []byte) error {
	i, err := parseName("Setting.UnmarshalText", "text", string(text), settingNames[:])
	if err == nil {
		*s = Setting(i)
	}
	return err
}

// A Way is how a tree is sized.
type Way uint8

// The ways.
const (
	Auto    Way = iota // by rule if all that is known is the height, by shape otherwise
	ByRule             // by height, as the rules of thumb have it
	ByShape            // by the surface that is dressed, to match a look
	numWays
)

var wayNames = [numWays]string{"auto", "rule", "shape"}

// String returns auto, rule or shape.
func (w Way) String() string { return nameOf("Way", int(w), wayNames[:]) }

// MarshalText returns [Way.String]. A value that is no way is an error wrapping
// [units.ErrName].
func (w Way) MarshalText() ([]byte, error) {
	return marshalName("Way.MarshalText", "way", int(w), w.String(), wayNames[:])
}

// UnmarshalText sets w to the way of a name that [Way.String] returns, in upper or
// lower case. Any other text is an error wrapping [units.ErrName] that leaves w as it
// was.
func (w *Way) UnmarshalText(text []byte) error {
	i, err := parseName("Way.UnmarshalText", "text", string(text), wayNames[:])
	if err == nil {
		*w = Way(i)
	}
	return err
}

// of returns w, or for Auto the way for a tree: by shape once a width, a taper, a
// place or a bare part is given.
func (w Way) of(t Tree) Way {
	switch {
	case w != Auto:
		return w
	case t.Base != 0 || t.Taper != Full || t.Exposure != AllRound || t.BareTip != 0 || t.Handle != 0:
		return ByShape
	}
	return ByRule
}

// Cautions returns what to see to with a tree of this kind, height and setting, most
// important first: fire, heat and water, lights, exits, and tying it off. Lengths are
// in a style. Rooms that the public uses have rules of their own, which the fire
// marshal applies; editions and local amendments differ.
//
//	code        when
//	cut         cut, public: not allowed in many rooms
//	exits       public: keep exits clear
//	label       not cut, public: flame-resistant label
//	heat        always: how far from heat
//	trunk       cut: the fresh cut and the stand
//	water       cut
//	metal       metal: no electric lights
//	prelit      pre-lit: its own lights
//	tie         8 ft and taller: tie it off
//	marshal     public: ask the fire marshal
//
// Its errors are those of the height, the kind and the setting.
//
// Source: each caution has its own and says how sure it is.
func (t Tree) Cautions(style units.Style) ([]units.Caution, error) {
	const fn = "Tree.Cautions"
	if err := checkHeight(fn, "/height", t.Height); err != nil {
		return nil, err
	}
	if t.Kind >= numKinds {
		return nil, nameError(fn, "/kind", t.Kind.String(), kindNames[:])
	}
	if t.Setting >= numSettings {
		return nil, nameError(fn, "/setting", t.Setting.String(), settingNames[:])
	}
	const (
		ifc    = "International Fire Code section 806, quoted"
		nfpa1  = "NFPA 1 section 10.13 (2015), quoted"
		tips   = "NFPA and ESFI holiday safety tips, quoted"
		wsu    = "Washington State University, Chastagner, 2012, read"
		memory = "common practice, from memory"
	)
	say := func(inches, metric string) string {
		if style == units.InMetric {
			return metric
		}
		return inches
	}
	var list []units.Caution
	add := func(when bool, code, text, source string) {
		if when {
			list = append(list, units.Caution{Code: code, Text: text, Source: source})
		}
	}
	cut, public := t.Kind == Cut, t.Setting == Public
	add(cut && public, "cut", "a cut tree is not allowed in rooms for assembly, shops and the like unless the building is sprinklered throughout, nor in an exit, corridor, lobby or vestibule", ifc)
	add(public, "exits", "keep exits, the ways to them and their signs clear of the tree and its cords", nfpa1)
	add(!cut && public, "label", "the label of the tree and of its decorations must say flame resistant", nfpa1)
	add(cut && public, "heat", "keep the tree at least "+tape(t.Height, style)+", its own height, from any source of heat", ifc)
	add(!(cut && public), "heat", "keep the tree at least "+say("3 ft", "1 m")+" from fire, candles, radiators and vents", tips)
	add(cut, "trunk", "cut at least "+say("1/2 in", "13 mm")+" off the trunk before it goes into its stand, which should hold "+say("2 gallons", "8 liters")+" or more", "commentary on International Fire Code section 806.1, read")
	add(cut, "water", "water the tree every day, about "+say("a quart for each inch", "a liter for each 27 mm")+" of the trunk's diameter and "+say("a gallon", "4 liters")+" or more on the first day; a dry tree goes out", wsu)
	add(t.Kind == Metal, "metal", "hang no electric lights on a metal tree", nfpa1)
	add(t.Kind == PreLit, "prelit", "use only the tree's own lights, as its label says", "common practice")
	add(t.Height >= 8*units.Foot, "tie", "tie the tree off to the wall or the ceiling", memory)
	add(public, "marshal", "ask the fire marshal before the tree is set up; editions and local rules differ", "common practice")
	return list, nil
}
