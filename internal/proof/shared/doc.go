// Package shared calls every exported function from many goroutines at once on values
// that they all hold, and compares each result with that of a call made alone. Under the
// race detector it shows that no function writes to what it was given, or to anything
// that another call can see.
package shared
