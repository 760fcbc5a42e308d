package units

// A Caution is something that can hurt someone, or that a result does not cover.
// Labels, local code and licensed people
// come before it.
type Caution struct {
	Code   string `json:"code"`             // names the caution for programs: "ladder"
	Text   string `json:"text"`             // what to do, in a sentence without its period
	Source string `json:"source,omitempty"` // where it comes from: "NFPA 1 section 10.13 (2015), quoted"
}

// String returns the text, and the source in parentheses if there is one.
func (c Caution) String() string {
	if c.Source == "" {
		return c.Text
	}
	return c.Text + " (" + c.Source + ")"
}
