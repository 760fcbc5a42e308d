// Package page holds the files of the page to try the service.
package page

import "embed"

// Files are the page: index.html and what it loads.
//
//go:embed index.html page.js page.css icon.svg
var Files embed.FS
