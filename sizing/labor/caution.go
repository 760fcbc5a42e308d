package labor

import (
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// stepladders returns how high one works from a stepladder.
func stepladders() units.Length { return sizing.Ladder{Lift: true}.Reach().Min }

// Cautions returns those that apply to tasks and cartons, each once, with the codes "work ladder" for a task
// above Reach, "platform" above any stepladder, "two people", "work cords", "glass" and "lifting".
func (r Rates) Cautions(tasks []Task, cartons []Carton) []units.Caution {
	var ladder, platform, pair, cords, glass, lifting bool
	for _, t := range tasks {
		ladder = ladder || t.Height > r.Reach
		platform = platform || t.Height > stepladders()
		pair = pair || t.People > 1
		cords = cords || t.Kind == shopping.Light
	}
	for _, c := range cartons {
		lifting = true
		pair = pair || c.weight() > r.Lift
		for _, t := range c.Things {
			glass = glass || t.Fragile
		}
	}
	var all []units.Caution
	say := func(applies bool, code, text string) {
		if applies {
			all = append(all, units.Caution{Code: code, Text: text, Source: "common practice, from memory"})
		}
	}
	say(ladder, "work ladder", "use a ladder made for the height, open and locked on level ground, with nobody working below; face it, do not lean out, come down and move it; its label says how high to stand and what it bears")
	say(platform, "platform", "no stepladder reaches over "+r.say(stepladders())+": that is work for trained people with a platform or a lift")
	say(pair, "two people", "do not begin a task for two until both are there: one works, the other holds the ladder and hands things up, or takes the other side of the carton")
	say(cords, "work cords", "unplug before stringing and unstringing; leave out a string with a bare wire or a broken lamp holder; keep cords off walkways and from under ladders; the label says how many strings may be joined")
	say(glass, "glass", "wear gloves and shoes to sweep up broken glass, count what is lost, and keep children and pets away until it is done")
	say(lifting, "lifting", "lift with bent knees and a straight back, one carton at a time, and see where you step; heavy is what the person who lifts it calls heavy")
	return all
}
