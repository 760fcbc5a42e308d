// Package job answers the whole question in one call: from a client's wishes to what to buy,
// where it goes and what to watch for.
//
//	request, err := job.ParseRequest(data) // or fill in the struct
//	plan, err := job.Make(request)
//
// # One assortment
//
// Ornaments are shared out once: types among the colors, each type in one size and nearly equal
// number; five or six colors share equally. The needs ask for these pieces and the basket gets
// them. TreePlan.Pieces says what hangs, MantelPlan.Spots where on a mantel. For places on a
// tree give TreePlan.Tree.Tree and TreePlan.Pieces to placement.Layout.Places.
//
// # The work
//
// A request with a Stand date also gets tasks for the crew, dates, a quote, cartons for January and
// next year's stock, by House.Rates; see package labor. Carton labels state sizes only where offers
// or lots do; cells fit the sizes that hang.
//
// For next year change three things, as Make's NextYear example does: set Shop.Owned to
// Plan.Stock (owned, bought and fitted, less Lost), empty Lost, and leave in Box only what fitted
// no color. For other colors, move the ornaments of Stock to Box.
//
// # House rules
//
// A shop puts its own habits in [House]:
//
//	house := job.CommonPractice()
//	house.Trees.PerFoot[shopping.Pick].Pieces = 4
//	house.Units = units.InMetric
//
// # When it fails
//
// Rules of thumb are no more than that. For placing, a missing handle counts as 6 in, a
// missing bare tip as 4 in, each at most a twelfth of the height. A plan for a room that
// the public uses is no permission: the fire marshal decides. Read Plan.Cautions.
//
// # Bounds
//
// A request has up to 100 trees and mantels; the rest has the bounds of its packages. Errors are
// *units.Error, joined: [Faults] lists them.
//
// Sources: see packages sizing, mantel, palette, shopping and labor.
package job
