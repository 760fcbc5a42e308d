package surface

import (
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// fields lists values for the fields of parameter structs, and for parameters of functions,
// where the type and the name alone would mostly give what is refused. The first ones
// go together.
var fields = map[string][]any{
	"mantel.Mantel.Length":             lengths("64 in", "5 ft", "6 ft 2 in", "8 ft", "1 ft", "12 ft"),
	"mantel.Mantel.Height":             lengths("4 ft 6 in", "0 ft", "5 ft", "1.4 m"),
	"mantel.Mantel.Depth":              lengths("8 in", "0 ft", "6 in", "11 1/2 in"),
	"mantel.Opening.Width":             lengths("3 ft", "2 ft 6 in", "1 ft"),
	"mantel.Opening.Height":            lengths("2 ft 6 in", "2 ft", "29 in"),
	"mantel.Opening.Below":             lengths("14 in", "1 ft", "10 in", "20 in"),
	"mantel.Hanging.Swags":             list(3, 2, 1, 4, 0, 7),
	"mantel.Hanging.Sag":               lengths("9 in", "6 in", "12 in", "1 nm", "4 ft", "0 ft"),
	"mantel.Hanging.Left":              lengths("1 ft", "0 ft", "18 in", "2 ft 1/8 in"),
	"mantel.Hanging.Right":             lengths("1 ft", "2 ft", "0 ft", "40 cm"),
	"mantel.Hanging.Fall":              lengths("0 ft", "2 ft", "3 ft"),
	"mantel.Hanging.Thickness":         lengths("6 in", "0 ft", "10 in"),
	"mantel.Hook.Rating":               masses("5 lb", "1 lb", "2 oz", "10 kg"),
	"mantel.Hook.Factor":               list(0, 5, 8, 20),
	"mantel.Mantel.Loads.perFoot":      masses("6 oz", "12 oz", "1 lb", "200 g"),
	"mantel.Hook.Spacing.perFoot":      masses("6 oz", "12 oz", "1 lb", "200 g", "0 g"),
	"mantel.Mantel.FindDrops.garland":  lengths("9 ft", "12 ft", "7 ft 4 in", "20 ft", "30 ft", "5 ft"),
	"mantel.Mantel.FindSag.garland":    lengths("9 ft", "12 ft", "7 ft 4 in", "20 ft", "30 ft", "5 ft"),
	"mantel.Mantel.Below.along":        lengths("1 ft", "0 ft", "2 ft 8 in", "5 ft", "9 ft"),
	"mantel.Mantel.AppendPath.pieces":  list(8, 1, 3, 20, 0),
	"mantel.Swag.Span":                 lengths("64 in", "18 in", "5 ft", "30 ft", "1 in"),
	"mantel.Swag.Sag":                  lengths("9 in", "1 nm", "4 ft", "0 ft", "49 ft", "1/8 in"),
	"mantel.Swag.Below.at":             lengths("1 ft", "0 ft", "1 in", "17 1/2 in", "4 ft", "-1 in"),
	"mantel.SwagOf.span":               lengths("64 in", "18 in", "5 ft", "20 ft", "1 in"),
	"mantel.SwagOf.length":             lengths("20 ft 1 in", "6 ft", "64 in", "30 ft", "149 ft", "21 ft", "61 in"),
	"mantel.LookRules.Extra":           lengths("2 ft", "4 ft", "0 ft", "30 in"),
	"mantel.LookRules.PickSpacing":     lengths("8 in", "3 in", "0 ft", "1 ft", "7 cm"),
	"mantel.LookRules.Layers":          list(1, 3, 0, 10),
	"mantel.LookRules.OrnamentsPerGap": list(1, 0, 2, 10),
	"mantel.LookRules.Ribbon":          lengths("4 ft 6 in", "0 ft", "3 m"),
	"mantel.LookRules.Bells":           list(3, 0, 1, 100),

	"sizing.Tree.Height":          lengths("9 ft", "7 ft", "7 ft 6 in", "4 ft 6 in", "12 ft", "2.3 m", "2 ft", "31 ft 1/8 in", "6 in"),
	"sizing.Tree.Base":            lengths("0 ft", "50 in", "4 ft 6 in", "60 in", "3 ft"),
	"sizing.Tree.BareTip":         lengths("0 ft", "6 in", "1 ft"),
	"sizing.Tree.Handle":          lengths("0 ft", "6 in", "9 in"),
	"sizing.Tree.Exposure":        list(sizing.AllRound, must(sizing.ParseExposure("wall")), must(sizing.ParseExposure("corner")), must(sizing.ParseExposure("200 degrees"))),
	"sizing.Cone.Height":          lengths("8 ft 3 in", "7 ft", "2 m", "12 ft", "1 ft", "40 ft"),
	"sizing.Cone.BaseDiameter":    lengths("5 ft", "4 ft", "6 ft", "1.4 m", "18 in"),
	"sizing.Cone.BareTip":         lengths("0 ft", "6 in", "4 in"),
	"sizing.Cone.BareBase":        lengths("0 ft", "3 in", "5 in"),
	"sizing.Cone.Spacing.length":  lengths("81 ft", "63 ft", "30 m", "200 ft", "12 ft", "8 ft 6 in", "500 ft"),
	"sizing.Tree.Spacing.garland": lengths("81 ft", "63 ft", "30 m", "200 ft", "12 ft", "27 ft", "500 ft"),
	"sizing.Room.Ceiling":         lengths("12 ft", "10 ft", "9 ft", "8 ft", "3 m", "40 ft"),
	"sizing.Room.Clearance":       lengths("0 ft", "6 in", "2 ft"),
	"sizing.Room.Topper":          lengths("10 in", "0 ft", "1 ft"),
	"sizing.Room.Stand":           lengths("0 ft", "4 in", "6 in"),
	"sizing.Size.Diameter":        lengths("4 in", "3 in", "2 3/8 in", "80 mm", "60 mm"),
	"sizing.Size.Count":           list(30, 24, 81, 0, 200),
	"sizing.LightString.Lamps":    list(100, 50, 300, 10000, 0),
	"sizing.LightString.Length":   lengths("33 ft", "20 ft", "10 m", "100 ft"),
	"sizing.LightString.Power":    powers("4.8 W", "40 W", "20.4 W", "1 kW"),
	"sizing.LightString.EndToEnd": list(0, 3, 25, 43),
	"sizing.Strings.Count":        list(9, 1, 0, 30, 400),
	"sizing.Circuit.Volts":        list(120, 230, 100, 277, 24),
	"sizing.Circuit.Amperes":      list(15, 20, 16, 100),
	"sizing.Circuit.Other":        powers("0 W", "500 W", "1.2 kW", "60 kW"),
	"sizing.Season.HoursPerDay":   list(money("6"), money("4.5"), money("24"), money("0")),
	"sizing.Season.Days":          list(40, 30, 366, 0),
	"sizing.Season.PerKWh":        list(money("0.17"), money("0.3312"), money("0"), money("1.05")),
	"sizing.Drape.Span":           lengths("10 in", "1 ft", "8 in", "25 cm"),
	"sizing.Drape.Sag":            lengths("2 in", "0 ft", "1 in", "8 in"),
	"sizing.Look.Garland":         lengths("10 in", "8 in", "1 ft", "30 cm"),
	"sizing.Look.Ribbon":          lengths("10 in", "14 in", "1 ft"),
	"sizing.Look.Ornament":        areas("1 sq ft", "120 sq in", "0.1 m2"),
	"sizing.Look.Pick":            areas("2 sq ft", "300 sq in"),
	"sizing.Look.Light":           areas("10 sq in", "12 sq in", "60 cm2"),
	"sizing.Rules.TypesPerFoot":   list(1, 2, 0), "sizing.Rules.EachSpread": list(2, 3, 0, 50),
	"sizing.Rules.PicksPerFoot": list(3, 4, 0, 1000), "sizing.Rules.LightsPerFoot": list(100, 150, 0),
	"sizing.Rules.GarlandPerFoot": lengths("9 ft", "10 ft 6 in", "0 ft"),
	"sizing.Rules.RibbonPerFoot":  lengths("9 ft", "2 m", "0 ft"),
	"sizing.Strands.Total":        lengths("67 ft 6 in", "81 ft", "0 ft", "1000 m", "63 ft"),
	"sizing.Strands.Each":         lengths("6 ft", "9 ft", "25 ft", "1 in", "2.7 m"),
	"sizing.Mix.Cover.surface":    areas("70 sq ft", "40 sq ft", "12 m2", "0 sq ft"),

	"sizing.ParseTaperGrade.s":             list("normal", "candlestick", " FLARED ", "conical"),
	"sizing.TaperGrade.UnmarshalText.text": list([]byte("normal"), []byte("Candlestick"), []byte("flared"), []byte("conical")),
	"placement.ParseAngle.s":               list("37.5°", "-90 degrees", "0 deg", "450.001°", "37.5", "1e2°"),
	"placement.Angle.UnmarshalText.text":   list([]byte("37.5°"), []byte("-90 DEG"), []byte("0.125 degrees"), []byte("north")),

	"placement.Layout.Facing": list(0, 30_000, -90_000, 180_000),
	"placement.Piece.Type":    list("ball", "star", "bell", "bow"), "placement.Piece.Size": lengths("3 in", "60 mm", "4 in", "0 ft"),
	"placement.Piece.Swatch": list("gold", "crimson", "ivory", ""), "placement.Piece.Count": list(6, 12, 9, 0, 20),
	"placement.Winding.Spacing": lengths("10 in", "8 in", "1 ft"), "placement.Winding.Step": lengths("6 in", "1 ft", "4 in"),
	"placement.Order.Level": lengths("0 ft", "2 ft", "18 in"), "placement.Order.Faces": list(0, 4, 6, 1), "placement.Order.Reach": lengths("0 ft", "6 ft", "5 ft 6 in"),
	"placement.Place.Height": lengths("4 ft", "1 ft 6 in", "6 ft 2 in", "7 ft"), "placement.Place.Azimuth": list(0, 45_500, -120_000, 180_000),
	"placement.Place.Piece":     list(0, 1, 2),
	"placement.Layout.Spiral.n": list(30, 100, 1, 0, 1000),

	"palette.Rules.Limit": list(4, 3, 6), "palette.Rules.Apart": list(10.0, 5.0, 0.0, 20.0), "palette.Rules.Fit": list(10.0, 5.0, 25.0),
	"palette.Color.R": list(178, 34, 255, 212, 0, 46, 128), "palette.Color.G": list(34, 139, 215, 20, 0, 80, 200), "palette.Color.B": list(34, 0, 240, 60, 200, 80, 255),
	"palette.Lab.L": list(50.0, 73.2, 0.0, 100.0, 22.7233), "palette.Lab.A": list(2.6772, 0.0, -34.5, 60.4, -1.1348), "palette.Lab.B": list(-79.7751, 0.0, 33.25, -0.5, 10.125),
	"palette.Swatch.Name":  list("crimson", "barn red", "gold", "ivory", "Forest", "a, b"),
	"palette.Piece.Name":   list("glass balls", "bows", "attic"),
	"palette.Piece.Count":  list(1, 12, 0, 200),
	"palette.Totals.Types": list(9, 7, 0, 4), "palette.Totals.Pieces": list(81, 64, 9, 1000),
	"palette.Totals.Shares":    list([]int(nil), []int{40, 30, 20, 10}, []int{2, 1}, []int{60, 30, 10}),
	"palette.Apportion.total":  list(81, 27, 10, 11, 0, 1_000_000_000, 3),
	"palette.Apportion.shares": list([]int{40, 30, 20, 10}, []int{6, 6, 2}, []int{1}, []int{1, 1, 1}, []int{60, 40}, []int{0, 5}, []int{}),
	"palette.Apportion.least":  list(0, 1, 2),
	"palette.DefaultShares.n":  list(1, 2, 3, 4, 5, 0),
	"palette.Rules.Palette.swatches": list([]palette.Swatch(nil), swatches("crimson", "forestgreen", "gold:metal", "ivory"), swatches("navy"),
		swatches("crimson", "gold:metal"), swatches("barn red=#7c0a02:shiny", "white", "silver:metal"), swatches("red", "crimson"), swatches("teal", "teal"),
		swatches("plum", "ivory:clear", "black"), swatches("tan", "olive", "snow", "teal", "black")),
	"palette.Rules.ParsePalette.text": list("crimson,forestgreen,gold:metal,ivory", "navy", "barn red=#7c0a02:shiny, white", "red,crimson", "", "teal,teal",
		"plum,ivory:clear,black,#0f8", "tan,olive,snow,teal,black"),

	"shopping.Need.Item": list("garland", "picks", "lights"), "shopping.Offer.Item": list("garland", "picks", "lights"), "shopping.Owned.Item": list("garland", "picks"),
	"shopping.Need.Basis": list("3 for each foot of 9 ft", "9 ft for each foot"), "shopping.Need.Source": list("common practice"),
	"shopping.Need.Quantity": list(shopping.Quantity{Pieces: 27}, shopping.Quantity{Length: 81 * units.Foot}, shopping.Quantity{Pieces: 900},
		shopping.Quantity{Pieces: 3, Length: 6 * units.Foot}),
	"shopping.Owned.Quantity": list(shopping.Quantity{Pieces: 5}, shopping.Quantity{Length: 12 * units.Foot}, shopping.Quantity{Pieces: 2, Length: 9 * units.Foot}),
	"shopping.Offer.Pack": list(shopping.Quantity{Pieces: 12}, shopping.Quantity{Length: 9 * units.Foot}, shopping.Quantity{Pieces: 100},
		shopping.Quantity{Pieces: 2, Length: 6 * units.Foot}),
	"shopping.Offer.Name":      list("box", "roll", "bag", "spool", "case", "strand"),
	"shopping.Offer.Price":     list(money("12.99"), money("3.5"), money("0"), money("24.9999")),
	"shopping.Choice.Most":     list(0, 30, 5),
	"shopping.Shop.Budget":     list(money("120"), money("0"), money("45.5")),
	"shopping.Shop.Cheapest.s": shops, "shopping.Shop.List.s": shops, "shopping.Shop.Filled.s": shops, "shopping.Shop.Fullest.s": shops,
	"shopping.Shop.Cheapest.needs": list(needs("garland", "81 ft"), needs("garland", "63 ft", "garland", "40 ft 6 in"), needs("picks", "27"),
		needs("picks", "27", "picks", "8"), needs("lights", "900"), needs("ribbon", "14 yd"), needs("bells", "3"),
		needs("garland", "81 ft", "picks", "27")),
	"shopping.Shop.List.needs": list(needs("garland", "81 ft", "picks", "27", "lights", "900"), needs("garland", "63 ft", "garland", "7 ft", "picks", "8"),
		needs("picks", "36"), needs("lights", "550", "lights", "300"), needs(), needs("bells", "3")),
	"shopping.Shop.Filled.choices":         choices,
	"shopping.Shop.Fullest.choices":        choices,
	"shopping.Quantity.UnmarshalJSON.data": raw(`"81 ft"`, `"27"`, `"27 pieces"`, `"3 of 6 ft"`, `""`, `12`, `null`, `"1e3 ft"`, `"-4"`),
	"shopping.Shelf.UnmarshalJSON.data":    raw(`3`, `0`, `null`, `-1`, `"3"`, `12000000000`, `2.5`, `{}`),
	"shopping.ParseQuantity.s":             list("81 ft", "27", "27 pieces", "3 of 6 ft", "1 piece", "2 × 9 ft", "", "-4", "7 ft 6 in", "900 pieces"),
	"shopping.Shop.Filled.percent":         list(100, 50, 0, 73, 101),
}

// shops are three shelves, of which the first has everything.
var shops = list(
	shopping.Shop{
		Offers: []shopping.Offer{
			offer("garland", "strand of 9 ft", "9 ft", "11.99"), offer("garland", "strand of 6 ft", "6 ft", "8.49"), offer("picks", "box of 12", "12", "15"),
			offer("picks", "single", "1", "1.75"), offer("lights", "string of 100", "100", "7.99"), offer("lights", "string of 300", "300", "19.5"),
			offer("ribbon", "roll of 10 yd", "10 yd", "6.25"),
		},
		Budget: money("250"),
	},
	shopping.Shop{
		Offers: []shopping.Offer{
			offer("garland", "roll of 25 ft", "25 ft", "24"), offer("picks", "bag of 5", "5", "6.4"), offer("picks", "box of 24", "24", "27.3"),
			offer("lights", "string of 50", "50", "4.9999"),
		},
		Owned: []shopping.Owned{
			{Item: "garland", Quantity: must(shopping.ParseQuantity("12 ft"))}, {Item: "picks", Quantity: must(shopping.ParseQuantity("4"))},
		},
		Overlap: map[string]units.Length{"garland": 3 * units.Inch},
		Budget:  money("90.5"),
	},
	shopping.Shop{
		Offers: []shopping.Offer{
			{Item: "picks", Name: "box of 6", Pack: must(shopping.ParseQuantity("6")), Price: money("7"), Shelf: shopping.Left(5)},
			{Item: "garland", Name: "strand", Pack: must(shopping.ParseQuantity("9 ft")), Price: money("10"), Shelf: shopping.Left(8)},
		},
		Budget: money("60"),
	},
)

var choices = list(
	[]shopping.Choice{{Need: need("picks", "27")}, {Need: need("lights", "900"), Most: 1200}},
	[]shopping.Choice{{Need: need("picks", "8"), Most: 20}},
	[]shopping.Choice{{Need: need("picks", "36")}, {Need: need("picks", "8")}},
	[]shopping.Choice{{Need: need("garland", "63 ft")}},
	[]shopping.Choice{},
)

func offer(item, name, pack, price string) shopping.Offer {
	return shopping.Offer{Item: item, Name: name, Pack: must(shopping.ParseQuantity(pack)), Price: money(price)}
}

func need(item, quantity string) shopping.Need {
	return shopping.Need{Item: item, Quantity: must(shopping.ParseQuantity(quantity)), Basis: "as asked", Source: "common practice"}
}

// needs makes needs of items and quantities in turn.
func needs(pairs ...string) []shopping.Need {
	l := []shopping.Need{}
	for i := 0; i < len(pairs); i += 2 {
		l = append(l, need(pairs[i], pairs[i+1]))
	}
	return l
}

func raw(texts ...string) []any {
	var l []any
	for _, s := range texts {
		l = append(l, []byte(s))
	}
	return l
}

// These read the texts of the lists above; a wrong one is a fault of the list.

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func each[T any](parse func(string) (T, error), texts []string) []any {
	var l []any
	for _, s := range texts {
		l = append(l, must(parse(s)))
	}
	return l
}

func lengths(texts ...string) []any { return each(units.ParseLength, texts) }
func areas(texts ...string) []any   { return each(units.ParseArea, texts) }
func masses(texts ...string) []any  { return each(units.ParseMass, texts) }
func powers(texts ...string) []any  { return each(units.ParsePower, texts) }

func swatches(texts ...string) []palette.Swatch {
	var l []palette.Swatch
	for _, s := range texts {
		l = append(l, must(palette.ParseSwatch(s)))
	}
	return l
}
