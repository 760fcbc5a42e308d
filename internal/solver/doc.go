// Package solver holds the purchases of sizing/shopping against an independent exact
// solver: the integer-programming solver of the GNU Linear Programming Kit, glpsol,
// from Debian's package glpk-utils. It has only tests, and is a module of its own
// so that nobody who uses fircone downloads anything for it.
//
//	apt-get install glpk-utils
//	go test -v                  # the same optimum on 2,400 random problems
//	go test -run '^$' -bench .  # the time of both on the same problems
//	go test -run Coupled -v     # 2,000 orders of mixed boxes, assortments and shelves, and the time of both
//
// Without glpsol the tests are skipped, and say so.
package solver
