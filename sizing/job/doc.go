// Package job answers the whole question: from what a client wants dressed to what
// to buy, what goes where and what to mind, in one call.
//
//	request, err := job.ParseRequest(data) // or fill in the struct
//	plan, err := job.Make(request)
//
// A [Request] has the trees and mantels, the colors, and what there is to buy and
// to spend. A [Plan] has the figures of each, what they come to as needs, and a
// basket that can be carried out. It is a value like any other: laying it out as
// text is yours, and encoding/json writes it.
//
// # One assortment
//
// Ornaments are shared out once: types over the colors, each type of one size, and
// as many of each type. These pieces are what [Plan] has everywhere: the needs ask
// for them, the basket gets them, and TreePlan.Pieces and MantelPlan.Spots say what
// hangs where. Where the shelves are short, or the budget, less hangs than is needed,
// and the shares of the basket say how much less, room by room.
//
// # House rules
//
// A [House] holds every rule that a plan goes by. [CommonPractice] has the usual ones.
// A shop changes what it does otherwise:
//
//	house := job.CommonPractice()
//	house.Trees.PerFoot[shopping.Pick].Pieces = 4
//	house.Units = units.InMetric
//
// # When it fails
//
// Rules of thumb are no more than that here as elsewhere: see the packages that
// each figure comes from. The job adds none of its own, but that a tree without a handle
// and a bare tip has 6 in and 4 in when its pieces are placed, so that none lies on the floor
// or under the topper: a twelfth of its height at most. A plan for a room that the public uses is no
// permission: the fire marshal decides. Plan.Cautions has what to mind.
//
// # Bounds
//
// A request has up to 100 trees and mantels; the shop, the box and the colors have the
// bounds of packages shopping and palette. All errors are *units.Error, joined;
// [Faults] lists them.
//
// Sources: see packages sizing, mantel, palette, shopping and placement.
package job
