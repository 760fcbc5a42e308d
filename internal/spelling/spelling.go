// Package spelling tells how like two words are written.
package spelling

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
