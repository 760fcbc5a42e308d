package hostile

import (
	"github.com/shopspring/decimal"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// packageFunctions are the functions that are no methods. A test compares the list with the source.
var packageFunctions = []any{
	mantel.CommonPractice, mantel.Door, mantel.Stairs, mantel.StandOut, mantel.Steps,
	palette.Apportion, palette.CommonPractice, palette.ParseColor, palette.ParseSwatch,
	sizing.CommonLook, sizing.CommonPractice, sizing.Cover, sizing.Format[sizing.Look], sizing.LadderFor, sizing.Topper, sizing.TradeHeight,
	job.CommonPractice,
	labor.NextStock, labor.ParseDate, labor.StartingRates,
	shopping.ParseItem, shopping.ParseQuantity,
	units.AreaOf, units.Ceil[units.Length], units.Decimal[units.Length], units.Floor[units.Length], units.FromDecimal[units.Length], units.FromFloat[units.Mass],
	units.ParseArea, units.ParseLength, units.ParseMass, units.ParsePower, units.Round[units.Length],
}

// samples are ordinary values of the types that parameters and receivers have. Other types come from what functions return.
var samples = []any{
	7 * units.Foot, 12 * units.SquareFoot, 5 * units.Pound, 40 * units.Watt, units.InMetric,
	units.Range[int]{Min: 1, Max: 3},
	units.Caution{},
	decimal.NewFromInt(3), 3, 1.5, []byte("7 ft"),
	[]int{3, 2, 1},
	units.Error{Func: "f", Field: "x", Value: "1", Want: "2", Err: units.ErrRange},
	red, palette.Daylight,
	[]palette.Piece{{Name: "attic", Color: red, Count: 3}, {Color: units.Must(palette.ParseColor("gold"))}},
	[]palette.Swatch{{Name: "red", Color: red}, {Name: "gold", Color: units.Must(palette.ParseColor("gold"))}},
	palette.Piece{Color: red, Count: 3},
	palette.Row{Types: 3, Pieces: 14},
	palette.Match{},
	palette.Pair{},
	palette.Sharing{},
	palette.Matte,
	tree,
	job.TreePlan{Fit: &sizing.Fit{}},
	job.MantelPlan{},
	job.Plan{Colors: &palette.Reading{}, Box: &palette.Sorting{}, Basket: &shopping.List{}},
	sizing.Drape{Span: units.Foot, Sag: 3 * units.Inch},
	sizing.Room{Ceiling: 10 * units.Foot, Clearance: units.Foot, Topper: 8 * units.Inch, Stand: 2 * units.Inch},
	lights.Circuit{Volts: 120, Amperes: 15, Other: 60 * units.Watt},
	lights.Label{Lamps: 100, Length: 25 * units.Foot, Power: 5 * units.Watt, EndToEnd: 3},
	sizing.Full, sizing.Artificial,
	true,
	[]shopping.Lot{{Item: pick, Quantity: shopping.Quantity{Pieces: 2}}},
	work,
	[]labor.Task{{Room: "ticket hall", Kind: shopping.Pick, Quantity: shopping.Quantity{Pieces: 7}, Height: 7 * units.Foot, Minutes: 12, People: 2}, {Minutes: 3, People: 1}},
	[]labor.Thing{{Lot: shopping.Lot{Item: ball, Quantity: shopping.Quantity{Pieces: 30}}, Room: "ticket hall", Weight: units.Ounce, Fragile: true}, {Lot: shopping.Lot{Item: pick, Quantity: shopping.Quantity{Pieces: 7}}}},
	[]labor.Box{{Name: "small", Cells: 12, Cell: 4 * units.Inch, Limit: 30 * units.Pound}, {Name: "open", Cells: 60}},
	[]labor.Carton{{Things: []labor.Thing{{Lot: shopping.Lot{Item: ball, Quantity: shopping.Quantity{Pieces: 1}}, Weight: 50 * units.Pound, Fragile: true}}}},
	labor.Date(739_948),
	labor.Option{Lines: []labor.Line{{Text: "picks", Price: decimal.NewFromInt(3)}}},
	placement.Layout{Tree: tree, Facing: 30 * placement.Degree},
	placement.Winding{Spacing: 10 * units.Inch, Step: 6 * units.Inch},
	placement.Order{Ladder: 8 * units.Foot, Side: 2 * units.Foot},
	[]placement.Place{{Item: ball, Height: 3 * units.Foot}, {Item: ball, Height: 4 * units.Foot, Azimuth: 90 * placement.Degree}},
	placement.Degree,
	placement.Place{},
	placement.Station{Places: []placement.Place{{}}},
	shopping.Item{Kind: shopping.Pick, Color: "red", Size: units.Inch},
	shopping.Pick,
	shopping.Quantity{Pieces: 4, Length: 54 * units.Inch},
	shopping.Shelf(3), shop, needs, shop.Offers[0],
	shopping.Deal{Packs: 3, Price: decimal.NewFromInt(2)},
	shopping.Share{Need: needs[0], Gets: shopping.Quantity{Pieces: 20}},
	needs[0],
	shopping.Purchase{Shares: []shopping.Share{{Need: needs[0], Gets: shopping.Quantity{Pieces: 20}}}, Buys: []shopping.Buy{{Offer: shop.Offers[0], Packs: 2}}, Cost: decimal.NewFromInt(18)},
	shopping.Cut{},
	[]shopping.Kind{shopping.Pick},
	shopping.ByKind[int]{1: 2},
	mantel.Mantel{
		Length: 64 * units.Inch, Height: 54 * units.Inch, Depth: 8 * units.Inch,
		Opening: mantel.Rectangle{Width: 36 * units.Inch, Height: 28 * units.Inch, Gap: 18 * units.Inch},
	},
	mantel.Hanging{Swags: 3, Sag: 6 * units.Inch, Left: units.Foot, Right: units.Foot, Fall: units.Foot, Thickness: 4 * units.Inch},
	mantel.Hook{Rating: 5 * units.Pound, Factor: 5},
	mantel.Traditional,
	mantel.Point{Along: 4 * units.Foot, Below: 3 * units.Foot},
	[]mantel.Point(nil),
	mantel.Clearance{},
	mantel.HookLoad{},
	mantel.Stockings{Count: 4, Spacing: 9 * units.Inch, Length: 18 * units.Inch, Thickness: 8 * units.Inch, Weight: units.Pound},
	mantel.Run{Hooks: []mantel.Point{{}, {Along: 2 * units.Foot, Below: -units.Foot}}, Sag: 6 * units.Inch},
}

var (
	red  = units.Must(palette.ParseColor("crimson"))
	tree = sizing.Tree{Height: 7 * units.Foot, Base: 4 * units.Foot, BareTip: 6 * units.Inch, Handle: 3 * units.Inch}
	ball = shopping.Item{Kind: shopping.Ornament, Type: "ball", Color: "red", Size: 3 * units.Inch}
	pick = shopping.Item{Kind: shopping.Pick}
	work = []labor.Work{
		{Room: "ticket hall", Place: "artificial tree", Height: 9 * units.Foot, Needs: []shopping.Need{{Item: pick, Quantity: shopping.Quantity{Pieces: 27}}, {Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: 81 * units.Foot}}}},
		{Room: "tea room", Height: 54 * units.Inch, From: 4 * units.Foot, Place: "mantel"},
	}
	shop = shopping.Shop{
		Offers: []shopping.Offer{
			{Item: pick, Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: decimal.NewFromInt(9), Shelf: 8},
			{Item: pick, Name: "box of 6", Pack: shopping.Quantity{Pieces: 6}, Price: decimal.NewFromInt(5)},
		},
		Owned:  []shopping.Lot{{Item: pick, Quantity: shopping.Quantity{Pieces: 2}}},
		Joins:  map[shopping.Item]shopping.Join{pick: {Overlap: units.Inch}},
		Budget: decimal.NewFromInt(100),
	}
	needs = []shopping.Need{
		{Item: pick, Room: "ticket hall", Quantity: shopping.Quantity{Pieces: 27}, Basis: "3 for each foot of 9 ft", Source: "common practice"},
	}
)

// usual are ordinary arguments for parameters of a name, or for one parameter of one function, where a sample of the type would not do.
var usual = map[string]any{
	"spacing": 10 * units.Inch, "garland": 30 * units.Foot, "length": 30 * units.Foot, "perFoot": 12 * units.Ounce, "at": 6 * units.Inch, "along": 20 * units.Inch,
	"span": 3 * units.Foot, "degrees": 200.0, "step": units.Inch, "unit": units.Inch, "places": 2, "src": int64(5), "total": 49, "percent": 50, "pieces": 8,
	"palette.Color.Scan": "#dc143c", "palette.View.Scan": "protan", "palette.Finish.Scan": "matte", "palette.Swatch.Scan": "crimson", "palette.Palette.Scan": "crimson,gold", "palette.Palette.Share.shares": []int{3, 2}, "shopping.Item.Scan": "picks", "shopping.Kind.Scan": "picks",
	"labor.ParseDate": "2026-11-28", "labor.Date.UnmarshalText": []byte("2026-11-28"), "labor.Rates.Dates.elapsed": 282, "labor.Date.Scan": "2026-11-28",
	"mantel.Look.Scan": "traditional", "mantel.Run.Below.along": units.Foot, "mantel.Stairs.newel": mantel.Point{}, "mantel.Stairs.balusters": 15, "mantel.Stairs.each": 4, "mantel.Door.swags": 2,
	"palette.ParseColor":            "crimson",
	"palette.ParseSwatch":           "barn red=#7c0a02:shiny",
	"sizing.TreeKind.UnmarshalText": []byte("metal"), "shopping.ParseItem": "picks", "units.Style.Scan": "metric", "units.Style.UnmarshalText": []byte("metric"), "mantel.Mantel.FindDrops.garland": 14 * units.Foot,
	"shopping.ParseQuantity": "4 of 54 in", "palette.Rules.ParsePalette": "crimson,forestgreen",
	"units.ParseArea": "12 sq ft", "units.ParseLength": "7 ft", "units.ParseMass": "3 lb", "units.ParsePower": "4.8 W",
	"units.Area.UnmarshalText": []byte("12 sq ft"), "units.Mass.UnmarshalText": []byte("3 lb"), "units.Power.UnmarshalText": []byte("5 W"),
	"palette.Color.UnmarshalText": []byte("#dc143c"), "palette.Finish.UnmarshalText": []byte("matte"), "palette.View.UnmarshalText": []byte("protan"),
	"palette.Palette.UnmarshalText": []byte("crimson,gold"),
	"sizing.Exposure.UnmarshalText": []byte("wall"), "sizing.Taper.UnmarshalText": []byte("slim"),
	"sizing.Exposure.Scan": "wall", "sizing.Taper.Scan": "slim", "sizing.TreeKind.Scan": "metal", "sizing.Rules.Supply.kind": shopping.Garland,
	"placement.Layout.Places.pieces": []shopping.Lot{{Item: ball, Quantity: shopping.Quantity{Pieces: 7}}, {Item: shopping.Item{Kind: shopping.Ornament, Type: "star"}, Quantity: shopping.Quantity{Pieces: 3}}},
	"sizing.Cover.ornaments":         []shopping.Lot{{Item: ball, Quantity: shopping.Quantity{Pieces: 30}}}, "lights.Label.For.quantity": shopping.Quantity{Pieces: 700},
	"mantel.Look.UnmarshalText":     []byte("traditional"),
	"placement.Angle.UnmarshalText": []byte("90°"), "placement.Angle.Scan": "90°", "shopping.Item.UnmarshalText": []byte("picks"), "shopping.Kind.UnmarshalText": []byte("picks"),
	"shopping.Quantity.UnmarshalJSON": []byte(`"81 ft"`), "shopping.Shelf.UnmarshalJSON": []byte("3"), "shopping.ByKind.UnmarshalJSON": []byte("{}"),
}

// refuse lists functions that are right to refuse the ordinary call, panics those that are documented to panic on a programmer's
// fault, as division by zero is, and infinite those that are documented to give an infinity past the largest float.
var (
	refuse   = map[string]bool{"units.Error.Unwrap": true}
	panics   = map[string]bool{"units.Length.In": true, "units.Area.In": true, "units.Mass.In": true, "units.Power.In": true, "units.Error.Error": true}
	infinite = map[string]bool{}
)
