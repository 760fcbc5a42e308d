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

// A House is the rules that a shop plans by.
type House struct {
	Trees   sizing.Rules   `json:"trees"`   // for a tree
	Look    sizing.Look    `json:"look"`    // of a tree that is sized by shape
	Mantels mantel.Rules   `json:"mantels"` // for a mantel
	Colors  palette.Rules  `json:"colors"`  // how far apart colors are, and what fits one
	Circuit lights.Circuit `json:"circuit"` // for the lights of one tree
	Units   units.Style    `json:"units"`   // of reasons and cautions; garland is rounded up to a centimeter if metric, otherwise to an inch
	Rates   labor.Rates    `json:"rates"`   // of the work
	Boxes   []labor.Box    `json:"boxes"`   // the cartons that there are
}

// CommonPractice returns the usual rules of every package, and
//
//	circuit    120 V and 15 A, with nothing else on it
//	rates      labor.StartingRates
//	boxes      24 cells for balls of up to 2 1/2 in, 12 for 4 in, 4 for 8 in, and an open box of 24 pieces; larger pieces are listed without a box
//
// Source: each package has its own; the circuit and the rates are from memory, the boxes a choice of this package.
func CommonPractice() House {
	h := withoutWork()
	h.Rates, h.Boxes = labor.StartingRates(), commonBoxes()
	return h
}

// withoutWork returns CommonPractice but for what the work is planned by, which is most of what there is to make.
func withoutWork() House {
	return House{
		Trees: sizing.CommonPractice(), Look: sizing.CommonLook(), Mantels: mantel.CommonPractice(), Colors: palette.CommonPractice(),
		Circuit: lights.Circuit{Volts: 120, Amperes: 15},
	}
}

// A Request is what a client wants dressed, by whose rules, and what there is to buy.
type Request struct {
	House   House           `json:"house,omitzero"`    // begin with CommonPractice; all zero means the same
	Trees   []Tree          `json:"trees,omitempty"`   // up to 100 with the mantels
	Mantels []Mantel        `json:"mantels,omitempty"` // up to 100 with the trees
	Colors  palette.Palette `json:"colors,omitzero"`   // empty: left open
	On      palette.Swatch  `json:"on,omitzero"`       // what they hang on; empty: not checked
	Shop    shopping.Shop   `json:"shop,omitzero"`     // empty: no basket; budget zero: no limit, unlike Shop.Fullest
	Box     []palette.Piece `json:"box,omitempty"`     // last year's ornaments; those that fit the colors are owned
	Stand   labor.Date      `json:"stand,omitzero"`    // when it must stand; zero: no work is planned; omit Down and Lost
	Down    labor.Date      `json:"down,omitzero"`     // when the house takes it down; zero: it does not
	Lost    []shopping.Lot  `json:"lost,omitempty"`    // what broke, for next year's stock
}

// A Tree is one tree, and how it is dressed. Only Height is required.
type Tree struct {
	sizing.Tree
	Room    string          `json:"room,omitempty"`   // "ticket hall"; if two share it, the plan says "ticket hall, tree 1"
	Space   sizing.Room     `json:"space,omitzero"`   // without a ceiling its fit is not checked
	SizeBy  string          `json:"sizeBy,omitempty"` // "rule", "shape" or "auto", as sizing.Rules.Compare says; empty is auto
	Accents []shopping.Kind `json:"accents,omitzero"` // of garland, ribbon and picks; nil is garland
	Lights  lights.Label    `json:"lights,omitzero"`  // the label of one string; empty: strings are not counted
}

// A Mantel is one mantel, or a run of garland in place of one. Length or Run is required.
type Mantel struct {
	mantel.Mantel
	Run       Run              `json:"run,omitzero"`       // in place of a shelf
	Room      string           `json:"room,omitempty"`     // "tea room"; if two share it, the plan says "tea room, mantel 1"
	Hanging   mantel.Hanging   `json:"hanging,omitzero"`   // if both drops are zero, the rule sets them
	PerFoot   units.Mass       `json:"perFoot,omitzero"`   // weight of the garland; zero: not weighed
	Hook      mantel.Hook      `json:"hook,omitzero"`      // for garland and stockings; empty: not checked
	Stockings mantel.Stockings `json:"stockings,omitzero"` // empty: none
	Lights    lights.Label     `json:"lights,omitzero"`    // in the garland, the label of one string; empty: none
	Outlet    mantel.Point     `json:"outlet,omitzero"`    // for the plug; empty: no cord is counted
}

// A Run is a garland along stairs, round a door or a window, or over hooks that are there. If zero,
// Sag is a sixth of each swag's width, rounded down to half inches. Left and Right add to the sides
// of a door.
type Run struct {
	mantel.Run
	To        mantel.Point `json:"to,omitzero"`         // in place of hooks: from the newel to the post, or from the upper left corner of a door to the lower right
	Balusters int          `json:"balusters,omitempty"` // of stairs; 0 for a door
	Swags     int          `json:"swags,omitempty"`     // of whole balusters, or over the door; 0 is straight
}
