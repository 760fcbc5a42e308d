package palette

// everyday are the names of colors that CSS has not, in the order of their folded names. Those with
// a dictionary are by Kelly and Judd, who say which of their 267 blocks of colors each
// name of the old dictionaries falls into, and where the middle of the block lies; where a
// name falls into several blocks, one was chosen here. Those without are estimates: the block
// was chosen here. It is only read.
//
// Source: K. L. Kelly and D. B. Judd, "Color: Universal Language and Dictionary of Names", NBS
// Special Publication 440, 1976; the centroids in sRGB as public programs carry them. The dictionaries: TC,
// Standard Color Card of America; M, Maerz and Paul; P, Plochere; R, Ridgway.
var everyday = [...]struct {
	name       string // without spaces
	color      Color
	block      int    // of the 267; 0 for none
	dictionary string // "" for an estimate
}{
	{"amber", Color{0xea, 0xa2, 0x21}, 68, ""},
	{"amethyst", Color{0x86, 0x60, 0x8e}, 223, "TC"},
	{"apricot", Color{0xd9, 0x90, 0x58}, 53, "TC"},
	{"aubergine", Color{0x29, 0x1e, 0x29}, 230, "M"},
	{"bare", Color{0x63, 0x51, 0x47}, 61, ""},
	{"berry", Color{0xa8, 0x51, 0x6e}, 258, ""},
	{"bluespruce", Color{0x3b, 0x78, 0x61}, 145, "TC"},
	{"blush", Color{0xd9, 0xa6, 0xa9}, 29, "M"},
	{"bordeaux", Color{0x67, 0x31, 0x47}, 259, "R"},
	{"bottlegreen", Color{0x1b, 0x4d, 0x3e}, 146, "TC"},
	{"brass", Color{0xc9, 0xae, 0x5d}, 87, "M"},
	{"brickred", Color{0x79, 0x44, 0x3b}, 43, "R"},
	{"bronze", Color{0x82, 0x66, 0x44}, 77, "M"},
	{"buff", Color{0xc1, 0x9a, 0x6b}, 76, "TC"},
	{"burgundy", Color{0x67, 0x31, 0x47}, 259, "TC"},
	{"burlap", Color{0xae, 0x9b, 0x82}, 79, ""},
	{"cardinal", Color{0x84, 0x1b, 0x2d}, 13, "TC"},
	{"champagne", Color{0xfa, 0xd6, 0xa5}, 73, "TC"},
	{"charcoal", Color{0x55, 0x55, 0x55}, 266, ""},
	{"cherryred", Color{0xbe, 0x00, 0x32}, 11, "P"},
	{"cinnamon", Color{0xa6, 0x7b, 0x5b}, 57, "M"},
	{"claret", Color{0x67, 0x31, 0x47}, 259, "TC"},
	{"cocoa", Color{0x6f, 0x4e, 0x37}, 58, "M"},
	{"copper", Color{0xb4, 0x74, 0x5e}, 39, "M"},
	{"cranberry", Color{0x84, 0x1b, 0x2d}, 13, ""},
	{"cream", Color{0xf0, 0xea, 0xd6}, 92, "TC"},
	{"dovegray", Color{0xbf, 0xb9, 0xbd}, 232, "P"},
	{"driedorange", Color{0xae, 0x69, 0x38}, 54, ""},
	{"dustypink", Color{0xd9, 0xa6, 0xa9}, 29, "TC"},
	{"dustyrose", Color{0xc0, 0x80, 0x81}, 6, ""},
	{"ecru", Color{0xc2, 0xb2, 0x80}, 90, "M"},
	{"eggplant", Color{0x29, 0x1e, 0x29}, 230, "TC"},
	{"emerald", Color{0x44, 0x94, 0x4a}, 131, "TC"},
	{"evergreen", Color{0x35, 0x5e, 0x3b}, 137, "TC"},
	{"fawn", Color{0x7e, 0x6d, 0x5a}, 80, "TC"},
	{"fir", Color{0x35, 0x5e, 0x3b}, 137, ""},
	{"flax", Color{0xc2, 0xb2, 0x80}, 90, "TC"},
	{"flocked", Color{0xdf, 0xed, 0xe8}, 153, ""},
	{"garnet", Color{0x72, 0x2f, 0x37}, 16, "TC"},
	{"geranium", Color{0xbe, 0x00, 0x32}, 11, "TC"},
	{"gunmetal", Color{0x55, 0x55, 0x55}, 266, "M"},
	{"hollyberry", Color{0xbc, 0x3f, 0x4a}, 12, "M"},
	{"hollygreen", Color{0x00, 0x62, 0x2d}, 132, "M"},
	{"hunter", Color{0x35, 0x5e, 0x3b}, 137, "TC"},
	{"huntergreen", Color{0x35, 0x5e, 0x3b}, 137, "TC"},
	{"iceblue", Color{0xbc, 0xd4, 0xe6}, 184, ""},
	{"jade", Color{0x67, 0x92, 0x67}, 136, "TC"},
	{"jadegreen", Color{0x67, 0x92, 0x67}, 136, "TC"},
	{"juniper", Color{0x3a, 0x4b, 0x47}, 151, "M"},
	{"lilac", Color{0xb6, 0x95, 0xc0}, 222, "R"},
	{"mahogany", Color{0x79, 0x44, 0x3b}, 43, "TC"},
	{"mauve", Color{0x87, 0x56, 0x92}, 218, "TC"},
	{"mint", Color{0x8e, 0xd1, 0xb2}, 143, ""},
	{"moss", Color{0x4a, 0x5d, 0x23}, 125, ""},
	{"mustard", Color{0xaf, 0x8d, 0x13}, 85, ""},
	{"natural", Color{0xbf, 0xb8, 0xa5}, 93, "TC"},
	{"nickel", Color{0x84, 0x84, 0x82}, 265, "TC"},
	{"oldgold", Color{0xab, 0x91, 0x44}, 88, "TC"},
	{"oldrose", Color{0xc0, 0x80, 0x81}, 6, "TC"},
	{"oxblood", Color{0x56, 0x07, 0x0c}, 41, ""},
	{"peach", Color{0xf4, 0xc2, 0xc2}, 28, "M"},
	{"peacock", Color{0x36, 0x75, 0x88}, 173, "TC"},
	{"periwinkle", Color{0x8c, 0x92, 0xac}, 203, "M"},
	{"pewter", Color{0x55, 0x55, 0x55}, 266, "M"},
	{"pinecone", Color{0x63, 0x51, 0x47}, 61, "M"},
	{"pinegreen", Color{0x17, 0x36, 0x20}, 138, ""},
	{"platinum", Color{0x84, 0x84, 0x82}, 265, "M"},
	{"pumpkin", Color{0xed, 0x87, 0x2d}, 50, "M"},
	{"raspberry", Color{0xa8, 0x51, 0x6e}, 258, "TC"},
	{"rosegold", Color{0xb7, 0x6e, 0x79}, 0, ""},
	{"rosewood", Color{0x79, 0x44, 0x3b}, 43, "M"},
	{"ruby", Color{0x78, 0x18, 0x4a}, 256, "TC"},
	{"russet", Color{0x6f, 0x4e, 0x37}, 58, "R"},
	{"rust", Color{0x80, 0x46, 0x1b}, 55, "M"},
	{"sage", Color{0x8a, 0x9a, 0x5b}, 120, "P"},
	{"sagegreen", Color{0x8d, 0xa3, 0x99}, 149, "R"},
	{"sand", Color{0xbf, 0xb8, 0xa5}, 93, "TC"},
	{"sapphire", Color{0x27, 0x24, 0x58}, 197, "TC"},
	{"sapphireblue", Color{0x27, 0x24, 0x58}, 197, "TC"},
	{"scarlet", Color{0xbe, 0x00, 0x32}, 11, "TC"},
	{"seafoam", Color{0x6a, 0xab, 0x8e}, 144, "M"},
	{"shellpink", Color{0xec, 0xd5, 0xc5}, 31, "R"},
	{"spruce", Color{0x3a, 0x4b, 0x47}, 151, "M"},
	{"tangerine", Color{0xd9, 0x60, 0x3b}, 35, "TC"},
	{"taupe", Color{0x5b, 0x50, 0x4f}, 64, "TC"},
	{"terracotta", Color{0x9e, 0x47, 0x32}, 38, "TC"},
	{"vanilla", Color{0xf3, 0xe5, 0xab}, 89, "M"},
	{"walnut", Color{0xa6, 0x7b, 0x5b}, 57, "P"},
	{"wine", Color{0x72, 0x2f, 0x37}, 16, ""},
	{"winterwhite", Color{0xf0, 0xea, 0xd6}, 92, ""},
	{"wood", Color{0xa6, 0x7b, 0x5b}, 57, ""},
}

// metals are what metal of these names looks like at arm's length, in the order of their names. It is only read.
//
// Source: old gold, brass, bronze, champagne, nickel and pewter as above (champagne by M; it is another block than the paint's);
// silver: CSS; gold: an estimate, the middle of SP 440's block 84, which Plochere has as old gold;
// copper and rose gold: estimates.
var metals = [...]struct {
	name  string // without spaces
	color Color
}{
	{"brass", Color{0xc9, 0xae, 0x5d}},
	{"bronze", Color{0x82, 0x66, 0x44}},
	{"champagne", Color{0xc2, 0xb2, 0x80}},
	{"copper", Color{0xb5, 0x71, 0x4a}},
	{"gold", Color{0xd4, 0xaf, 0x37}},
	{"nickel", Color{0x84, 0x84, 0x82}},
	{"oldgold", Color{0xab, 0x91, 0x44}},
	{"pewter", Color{0x55, 0x55, 0x55}},
	{"rosegold", Color{0xb7, 0x6e, 0x79}},
	{"silver", Color{0xc0, 0xc0, 0xc0}},
}
