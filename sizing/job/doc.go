// Package job answers the whole question in one call: from what a client wants dressed to what
// to buy, what goes where and what to mind.
//
//	request, err := job.ParseRequest(data) // or fill in the struct
//	plan, err := job.Make(request)
//
// # One assortment
//
// Ornaments are shared out once: types over the colors, each type of one size, in equal
// numbers. The needs ask for these pieces, the basket gets them, and TreePlan.Pieces and
// MantelPlan.Spots say what hangs where.
//
// # The work
//
// A request with a Stand date also gets tasks for the crew, dates, a quote, cartons for January and
// next year's stock, by House.Rates; see package labor. A carton's label tells a size only where an offer or a
// lot states one; its cells are chosen by the sizes to hang.
//
// Next year, keep the request but for three things, as the example of Make for next year does. Shop.Owned is Plan.Stock,
// which has what was owned, what fitted of Box, and what was bought. Lost is empty. Box has
// what fitted no color: it is in no stock and no carton. Stock goes by the names of colors: for
// others, put its ornaments into Box.
//
// # House rules
//
// A shop changes in [House] what it does otherwise:
//
//	house := job.CommonPractice()
//	house.Trees.PerFoot[shopping.Pick].Pieces = 4
//	house.Units = units.InMetric
//
// # When it fails
//
// Rules of thumb are no more than that. For placing, a missing handle counts as 6 in, a
// missing bare tip as 4 in, each a twelfth of the height at most. A plan for a room that
// the public uses is no permission: the fire marshal decides. Plan.Cautions has what to
// mind.
//
// # Bounds
//
// A request has up to 100 trees and mantels; the rest has the bounds of its packages. Errors are
// *units.Error, joined: [Faults] lists them.
//
// Sources: see packages sizing, mantel, palette, shopping, placement and labor.
package job
