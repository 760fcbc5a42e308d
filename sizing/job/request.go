package job

import (
	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A House is the rules that a shop plans by. [CommonPractice] returns the usual
// ones; a shop with habits of its own changes a field.
type House struct {
	Trees   sizing.Rules   `json:"trees"`   // the rules of thumb for a tree
	Look    sizing.Look    `json:"look"`    // what a tree that is sized by shape is to look like
	Mantels mantel.Rules   `json:"mantels"` // the rules of thumb for a mantel
	Colors  palette.Rules  `json:"colors"`  // how far apart colors are, and what fits one
	Circuit lights.Circuit `json:"circuit"` // what the lights of one tree are plugged into
	Units   units.Style    `json:"units"`   // in which units a plan says its reasons and cautions
	Rates   labor.Rates    `json:"rates"`   // how long the work takes, what it costs, and how money is rounded
	Boxes   []labor.Box    `json:"boxes"`   // the cartons that there are
}

// CommonPractice returns the usual rules of every package, and
//
//	circuit    120 V and 15 A, with nothing else on it
//	rates      labor.StartingRates
//	boxes      24 cells for balls of up to 2 1/2 in, 12 for 4 in, 4 for 8 in, and an open box of 24 pieces
//
// Source: each package has its own; the circuit and the rates are from memory, the boxes a choice of this package.
func CommonPractice() House {
	return House{
		Trees: sizing.CommonPractice(), Look: sizing.CommonLook(), Mantels: mantel.CommonPractice(), Colors: palette.CommonPractice(),
		Circuit: lights.Circuit{Volts: 120, Amperes: 15}, Rates: labor.StartingRates(), Boxes: commonBoxes(),
	}
}

// A Request is what a client wants dressed, by whose rules, and what it may be
// bought from. Its JSON is read by [ParseRequest] and written by encoding/json.
type Request struct {
	House   House           `json:"house,omitzero"`    // the zero value is CommonPractice
	Trees   []Tree          `json:"trees,omitempty"`   // up to 100 with the mantels
	Mantels []Mantel        `json:"mantels,omitempty"` // up to 100 with the trees
	Colors  palette.Palette `json:"colors,omitzero"`   // empty: the colors are left open
	On      palette.Swatch  `json:"on,omitzero"`       // what they hang on, such as fir; empty: not checked
	Shop    shopping.Shop   `json:"shop,omitzero"`     // without offers and owned stock there is no basket; a budget of zero is none
	Box     []palette.Piece `json:"box,omitempty"`     // last year's ornaments, which are sorted by color; what fits is owned
	Stand   labor.Date      `json:"stand,omitzero"`    // the day on which it must stand; the zero value plans no work
	Down    labor.Date      `json:"down,omitzero"`     // the day on which the house takes it down; the zero value: it does not
	Lost    []shopping.Lot  `json:"lost,omitempty"`    // what broke, for next year's stock
}

// A Tree is one tree: what the tape measure says of it, where it stands, and how
// it is to be dressed. Only Height is required.
type Tree struct {
	sizing.Tree
	Room    string          `json:"room,omitempty"`   // what the room is called, "ticket hall"
	Space   sizing.Room     `json:"space,omitzero"`   // the room; without a ceiling its fit is not checked
	SizeBy  string          `json:"sizeBy,omitempty"` // "rule" or "shape"; empty or "auto" is what sizing.Rules.Compare says
	Accents []shopping.Kind `json:"accents,omitzero"` // what goes through the branches: garland, ribbon or picks; nil is garland, an empty list is none
	Lights  lights.Label    `json:"lights,omitzero"`  // what the label of one string says; empty: strings are not counted
}

// A Mantel is one mantel, or a run of garland in place of one: what the tape measure says of
// it, and what hangs there. Length is required, or Run.
type Mantel struct {
	mantel.Mantel
	Run       Run              `json:"run,omitzero"`       // in place of a shelf, which then has no length
	Room      string           `json:"room,omitempty"`     // what the room is called, "tea room"
	Hanging   mantel.Hanging   `json:"hanging,omitzero"`   // if both ends fall by zero, the rule says how far they fall
	PerFoot   units.Mass       `json:"perFoot,omitzero"`   // the weight of a foot of garland; zero: not weighed
	Hook      mantel.Hook      `json:"hook,omitzero"`      // what holds it, and each stocking; empty: not checked
	Stockings mantel.Stockings `json:"stockings,omitzero"` // below the shelf; empty: none
	Lights    lights.Label     `json:"lights,omitzero"`    // the label of one string in the garland; empty: none
	Outlet    mantel.Point     `json:"outlet,omitzero"`    // where it is plugged in; empty: no cord is counted
}

// A Run is where a garland goes along stairs, round a door or a window, or over hooks that are
// there. If it is in swags, a Sag of zero is a sixth of their width; Left and Right are what falls at
// the ends, beyond the sides of a door.
type Run struct {
	mantel.Run
	To        mantel.Point `json:"to,omitzero"`         // in place of hooks: the post of the stairs from the newel, or the lower right corner of the door from the upper left one
	Balusters int          `json:"balusters,omitempty"` // of stairs, between newel and post; 0 for a door
	Swags     int          `json:"swags,omitempty"`     // along the stairs, as whole balusters allow, or over the door; 0 is straight
}
