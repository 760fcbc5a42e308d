// Package job answers the whole question in one call: from what a client wants dressed to what
// to buy, what goes where and what to mind.
//
//	request, err := job.ParseRequest(data) // or fill in the struct
//	plan, err := job.Make(request)
//
// # One assortment
//
// Ornaments are shared out once: types over the colors, each type of one size, in equal
// numbers; five colors or six have equal shares. The needs ask for these pieces and the basket
// gets them. TreePlan.Pieces says what hangs, MantelPlan.Spots where on a mantel. Where on a tree
// is for placement.Layout.Places: give it TreePlan.Tree.Tree and Pieces.
//
// # The work
//
// A request with a Stand date also gets tasks for the crew, dates, a quote, cartons for January and
// next year's stock, by House.Rates; see package labor. A label gives a size only if an offer or a lot
// does; cells fit the sizes that hang.
//
// For next year change three things, as the example of Make for next year does: set Shop.Owned to Plan.Stock
// (owned, bought, and what fitted of Box), empty Lost, and leave in Box only what fitted no color. For
// other colors, move the ornaments of Stock to Box.
//
// # House rules
//
// A shop changes in [House] what it does differently:
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
// Sources: see packages sizing, mantel, palette, shopping and labor.
package job
