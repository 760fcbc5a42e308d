// Package even holds package placement to its bars over all of 72 dressed trees, some 250 shapes and counts, and all
// mixes of types and colors. Its own tests take some of them, so that go test ./... is quick.
//
//	cd internal/check && go test -count=1 ./even
package even
