// Package spelling tells how like two words are written.
package spelling

import "strings"

// Distance returns how many letters, as bytes, must be put in, taken out or changed to make b of a: the
// distance of Levenshtein.
func Distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		corner := row[0]
		row[0] = i + 1
		for j := range len(b) {
			d := corner
			if a[i] != b[j] {
				d = 1 + min(corner, row[j], row[j+1])
			}
			corner, row[j+1] = row[j+1], d
		}
	}
	return row[len(b)]
}

// maxWord is the longest word in bytes for which a like one is looked for.
const maxWord = 64

// DidYouMean returns "; did you mean picks?" with the name that a word, in upper or lower case, is spelled most
// like, the first of several, or "" if more than a third of its letters would have to change.
func DidYouMean(word string, names ...string) string {
	if len(word) > maxWord {
		return ""
	}
	best, least := "", maxWord
	for _, name := range names {
		if d := Distance(strings.ToLower(word), name); 3*d <= len(name) && d < least {
			best, least = name, d
		}
	}
	if best == "" {
		return ""
	}
	return "; did you mean " + best + "?"
}
