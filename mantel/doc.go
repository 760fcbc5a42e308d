// Package mantel sizes and hangs the garland of a mantel.
package mantel
