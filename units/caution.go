package units

// A Caution warns of what can hurt someone, or what a result does not cover.
// Labels, local code and licensed people come before it.
type Caution struct {
	Code   string `json:"code"`             // names the caution for programs: "ladder"
	Room   string `json:"room,omitempty"`   // where it holds, "tea room"; empty: everywhere, or as the text says
	Text   string `json:"text"`             // what to do, in a sentence without its period
	Source string `json:"source,omitempty"` // where it comes from: "NFPA 1 section 10.13 (2015), quoted"
}

// String returns "room: text (source)", leaving out empty parts.
func (c Caution) String() string {
	text := c.Text
	if c.Room != "" {
		text = c.Room + ": " + text
	}
	if c.Source != "" {
		text += " (" + c.Source + ")"
	}
	return text
}
