// Package gonbui stands in for the display package of the Go kernel, so that a
// notebook which imports that one runs under package notebook unchanged. It has
// the functions that the notebooks here use and no others.
//
// Each writes one record to standard output: a record separator, a JSON object
// of contents by media type, a newline (RFC 7464).
package gonbui

import (
	"encoding/json"
	"os"
)

// DisplayHTML shows a piece of HTML below the cell. A picture in SVG is shown
// this way too.
func DisplayHTML(html string) { display("text/html", html) }

// DisplayMarkdown shows a piece of Markdown below the cell.
func DisplayMarkdown(markdown string) { display("text/markdown", markdown) }

func display(media, text string) {
	record, err := json.Marshal(map[string]string{media: text})
	if err == nil {
		_, err = os.Stdout.Write(append(append([]byte{'\x1e'}, record...), '\n'))
	}
	if err != nil {
		os.Stderr.WriteString("gonbui: " + err.Error() + "\n")
		os.Exit(1)
	}
}

// Sync waits until what was displayed is there. Here it is at once.
func Sync() {}
