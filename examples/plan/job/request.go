// Package job plans a whole job: the trees and mantels of one client, from what
// the tape measure says to what goes into the basket. It is the example that
// puts the library's packages together; the program beside it, the service and
// the notebooks all call it. Copy it and change what does not suit.
package job

import (
	"bytes"
	_ "embed" // for the station's stock
	"encoding/json"
	"errors"
	"io"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Request is what a client wants dressed. As JSON its lengths are text with a
// unit, such as "7 ft 6 in", and its colors the text that
// [palette.Rules.ParsePalette] reads.
type Request struct {
	Trees   []Tree          `json:"trees,omitempty"`
	Mantels []Mantel        `json:"mantels,omitempty"`
	Colors  palette.Palette `json:"colors,omitzero"` // empty: the colors are left open
	Stock   Stock           `json:"stock,omitzero"`  // empty: no shopping list is made
}

// A Tree is one tree and how it is to be dressed. Only Height is required.
type Tree struct {
	Room    string          `json:"room,omitempty"`
	Height  units.Length    `json:"height"`
	Width   units.Length    `json:"width,omitzero"` // base diameter; zero: the usual one for Taper
	Taper   sizing.Taper    `json:"taper"`
	Where   sizing.Exposure `json:"where"`
	Ceiling units.Length    `json:"ceiling,omitzero"` // height of the room; zero: not measured
	Accent  Accent          `json:"accent"`
	SizeBy  sizing.Way      `json:"sizeBy"`
	Kind    sizing.TreeKind `json:"kind"`
	Setting sizing.Setting  `json:"setting"`
	Label   Label           `json:"string,omitzero"` // what the label of a string of lights says; empty: not known
}

// A Label is what the label of a string of lights says.
type Label struct {
	Lamps    int          `json:"lamps"`
	Length   units.Length `json:"length"`
	Power    units.Power  `json:"power"`
	EndToEnd int          `json:"endToEnd,omitempty"` // the most that may be joined; 0: the label does not say
}

// A Mantel is one mantel and how it is to be dressed. Only Length is required.
type Mantel struct {
	Room    string       `json:"room,omitempty"`
	Length  units.Length `json:"length"`
	Look    mantel.Look  `json:"look"`
	Heavy   mantel.Side  `json:"heavySide"`                 // of an asymmetrical look
	Height  units.Length `json:"height,omitzero"`           // of the shelf above the hearth
	Depth   units.Length `json:"depth,omitzero"`            // of the shelf
	Opening Opening      `json:"opening,omitzero"`          // of the firebox; empty: none
	Swags   int          `json:"swags,omitempty"`           // 0: straight along the shelf
	Falls   bool         `json:"ribbonFalls,omitempty"`     // the ribbon hangs by its middle in place of a bow
	Sag     units.Length `json:"sag,omitzero"`              // of each swag; zero: a sixth of its width
	Weight  units.Mass   `json:"garlandWeight,omitzero"`    // of each foot of garland; zero: not weighed
	Thick   units.Length `json:"garlandThickness,omitzero"` // across its branches; zero: not measured
	Hooks   units.Mass   `json:"hookRating,omitzero"`       // what the label of one hook says; zero: not known
}

// An Opening is the opening of a firebox.
type Opening struct {
	Width  units.Length `json:"width"`
	Height units.Length `json:"height"`
	Below  units.Length `json:"below"` // from the top of the shelf to the top of the opening
}

// A Stock is what there is and what can be bought: the shop's offers, what is
// owned, the budget (none, or zero, for just what is needed at the least cost),
// and last year's boxes.
type Stock struct {
	shopping.Shop
	Box []Piece `json:"box,omitempty"`
}

// A Piece is an entry of last year's boxes: ornaments of one color.
type Piece struct {
	Name   string         `json:"name"`
	Color  palette.Color  `json:"color"`
	Finish palette.Finish `json:"finish"`
	Count  int            `json:"count"`
}

// ReadStock reads a stock from its JSON. A field that it does not know is an
// error, so that a slip of the pen is not passed over.
func ReadStock(r io.Reader) (Stock, error) {
	var s Stock
	d := json.NewDecoder(r)
	d.DisallowUnknownFields()
	if err := d.Decode(&s); err != nil {
		return Stock{}, err
	}
	if _, err := d.Token(); err != io.EOF {
		return Stock{}, errors.New("there is more after the first JSON object")
	}
	return s, nil
}

// The demo's stock. Its prices are invented.
//
//go:embed stock.json
var stationStock []byte

// Station returns the scenario that the examples play in: a small-town railway
// station with a 9 ft tree in the ticket hall, a 4 ft 6 in tree in the corner of
// the waiting room and a 64 in mantel in the tea room, with what it owns, what
// its shops offer, and its budget.
func Station() Request {
	stock, err := ReadStock(bytes.NewReader(stationStock))
	colors, err2 := palette.CommonPractice().ParsePalette("crimson,forest green=forestgreen,gold:metal,ivory")
	if err := errors.Join(err, err2); err != nil {
		panic(err) // both are part of this file, and a test reads them
	}
	return Request{
		Trees: []Tree{
			{
				Room: "ticket hall", Height: 9 * units.Foot, Ceiling: 12 * units.Foot,
				Kind: sizing.Artificial, Setting: sizing.Public,
				Label: Label{Lamps: 100, Length: 33 * units.Foot, Power: 5 * units.Watt, EndToEnd: 20},
			},
			{
				Room: "waiting room", Height: 4*units.Foot + 6*units.Inch, Where: sizing.InCorner, Accent: Picks,
				Kind: sizing.Artificial, Setting: sizing.Public,
			},
		},
		Mantels: []Mantel{{
			Room:    "tea room",
			Length:  64 * units.Inch,
			Height:  54 * units.Inch,
			Depth:   7 * units.Inch,
			Opening: Opening{Width: 36 * units.Inch, Height: 30 * units.Inch, Below: 14 * units.Inch},
			Weight:  units.Pound / 2,
			Thick:   8 * units.Inch,
			Hooks:   5 * units.Pound,
		}},
		Colors: colors,
		Stock:  stock,
	}
}
