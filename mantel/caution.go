package mantel

import "example.com/fircone/units"

const (
	tips   = "NFPA and ESFI holiday safety tips"
	memory = "from memory, no published source"

	trim     = "IRC R1001.11 exception 4, 2018, quoted: it is about trim"
	geometry = "geometry: what was measured"
)

// The codes of the cautions of hooks that may not carry what hangs on them.
const (
	overloaded          = "hook overload"
	overloadedStockings = "stocking overload"
)

// candles and weigh return the cautions that have figures, in a style.
func candles(style units.Style) units.Caution {
	return units.Caution{Code: "candles", Text: "use battery candles only on a dressed shelf: an open flame stays " + showUp(fromFlame, style) + " from what can burn", Source: tips}
}

func weigh(style units.Style) units.Caution {
	c := units.Caution{Code: "weigh yours", Text: "weigh your garland, dressed, and wet if fresh: thin artificial garland is 2 to 4 oz a foot, full 6 to 10, fresh 8 to 16", Source: memory}
	if style == units.InMetric { // 1 oz a foot is 93.01 g a meter
		c.Text = "weigh your garland, dressed, and wet if fresh: thin artificial garland is 190 to 370 g a meter, full 560 to 930, fresh 740 to 1490"
	}
	return c
}

// The other cautions of this package. Their texts carry no figure of the job, except where
// one is added.
var (
	cautionTakeDown = units.Caution{Code: "take down before a fire", Text: "take the garland and the stockings down before a fire is lit", Source: tips}
	cautionNotTrim  = units.Caution{Code: "not trim", Text: "a hanging garland is not trim: meeting the figures of a code does not make it safe", Source: trim}
	cautionLocal    = units.Caution{Code: "local code", Text: "local code and the maker of the fireplace decide", Source: commonPractice}
	cautionDry      = units.Caution{Code: "dry greens", Text: "fresh greens dry out in days over a hearth: mist them, and throw them out when needles fall", Source: commonPractice}
	cautionBerries  = units.Caution{Code: "berries", Text: "holly, mistletoe and yew are poisonous: keep their berries from children and pets, or use artificial ones", Source: memory}
	cautionPeople   = units.Caution{Code: "reach", Text: "keep ends, ribbon, bells and cords out of the way of feet, children and pets", Source: commonPractice}
	cautionCords    = units.Caution{Code: "cords", Text: "run no cord through the opening, over the hearth or under a rug; use strings listed for the purpose, and switch them off when you leave or go to bed", Source: tips}
	cautionHangers  = units.Caution{Code: "not measured", Text: "picks, ornaments, bells and bows come nearer than these figures, unless the thickness counts them in", Source: geometry}

	cautionNoHeight  = units.Caution{Code: "height not given", Text: "the height of the shelf was not given, so nothing was checked against the hearth", Source: geometry}
	cautionNoDepth   = units.Caution{Code: "depth not given", Text: "the depth of the shelf was not given, so how far the garland stands out was not checked", Source: geometry}
	cautionNoWidth   = units.Caution{Code: "thickness not given", Text: "the thickness of the garland was not given, so distances are from its middle line: it comes nearer than they say", Source: geometry}
	cautionThin      = units.Caution{Code: "stocking thickness not given", Text: "the thickness of the stockings was not given, so distances are from their middle: they come nearer than those say", Source: geometry}
	cautionNoOpening = units.Caution{Code: "opening not given", Text: "no opening was given, so nothing was checked against a fire", Source: geometry}

	cautionAbove = units.Caution{Code: "above", Text: "heat and smoke from a fire rise to what is above the shelf: a screen may get no warmer than its maker's manual says, so measure there with the fire lit before the shelf is dressed, and keep its vents clear; a mirror or picture needs fixings that heat does not loosen; hang nothing from its frame", Source: memory}
	cautionCover = units.Caution{Code: "covered", Text: "the garland stands higher than the bottom of what is above the shelf: it covers its edge or touches it", Source: geometry}

	cautionHookLabel = units.Caution{Code: "hook label", Text: "follow the label of the hook for the surface, the weight and the waiting time; a rating is for a clean, sound surface", Source: memory}
	cautionHookHeat  = units.Caution{Code: "hook heat", Text: "heat and dust weaken adhesive: do not trust an adhesive hook over a fireplace that is used", Source: memory}
	cautionHookShare = units.Caution{Code: "hooks side by side", Text: "hooks side by side share a load only as far as they are pulled alike: use a stronger hook, not more of the same", Source: "statics"}
	cautionLifted    = units.Caution{Code: "lifted", Text: "a steep garland lifts its lower hook: tie it down there, or it comes off", Source: "statics"}
	cautionHalfHung  = units.Caution{Code: "half hung", Text: "while the garland goes up, a hook with a swag on one side carries the whole level pull of that side", Source: "statics"}

	cautionLowShelf = units.Caution{Code: "low shelf", Text: "the shelf is too low for the ends that the rule asks for", Source: ownFigure}
	cautionWall     = units.Caution{Code: "wall", Text: "nothing falls at an end that stands at a wall: the rule's garland is shorter by it", Source: ownFigure}

	// Those of the steps.
	cautionWire      = units.Caution{Code: "wire ends", Text: "wire ends are sharp", Source: commonPractice}
	cautionStrings   = units.Caution{Code: "strings", Text: "look each string over for bare wire and broken sockets; run no cord over the hearth", Source: tips}
	cautionBreakable = units.Caution{Code: "breakable", Text: "breakable ones stay out of reach of children and pets", Source: commonPractice}
	cautionStand     = units.Caution{Code: "step stool", Text: "the fireplace must be cold; stand on a step stool or ladder that is made for it, not on the hearth or a chair", Source: commonPractice}
	cautionTwo       = units.Caution{Code: "two to lift", Text: "two people lift a dressed garland, one at each end", Source: commonPractice}
	cautionCold      = units.Caution{Code: "cold fireplace", Text: "the fireplace stays cold while they hang", Source: tips}
	cautionDown      = units.Caution{Code: "down before a fire", Text: "the garland comes down before a fire is lit", Source: tips}

	cautionStairs = units.Caution{Code: "stairs", Text: "keep the handrail clear for hands, and the garland off the treads", Source: memory}
	cautionDoor   = units.Caution{Code: "door", Text: "keep a door free to open and close, and an exit clear and its sign in view; local code decides", Source: memory}
)
