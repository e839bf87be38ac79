package wood

// Synonym is a name that the trade gives a species, and the name it is compared
// by.
type Synonym struct{ Name, Means string }

// Synonyms are the trade's names that count as one species when a meter's
// scale is compared with the wood. From memory of common usage; a name that
// means several species, such as oak or soft maple, is not among them.
func Synonyms() []Synonym {
	return []Synonym{
		{"american ash", "white ash"},
		{"american black walnut", "black walnut"},
		{"american cherry", "black cherry"},
		{"american walnut", "black walnut"},
		{"ash", "white ash"},
		{"beech", "american beech"},
		{"birch", "yellow birch"},
		{"brazilian cherry", "jatoba"},
		{"brazilian teak", "cumaru"},
		{"brazilian walnut", "ipe"},
		{"cherry", "black cherry"},
		{"commercial red oak", "northern red oak"},
		{"commercial white oak", "white oak"},
		{"coast douglas fir", "douglas fir"},
		{"cypress", "baldcypress"},
		{"doug fir", "douglas fir"},
		{"hard maple", "sugar maple"},
		{"heart pine", "longleaf pine"},
		{"hickory", "true hickory"},
		{"maple", "sugar maple"},
		{"northern hard maple", "sugar maple"},
		{"pecan", "pecan hickory"},
		{"poplar", "yellow poplar"},
		{"red oak", "northern red oak"},
		{"rock maple", "sugar maple"},
		{"southern pine", "southern yellow pine"},
		{"tulip poplar", "yellow poplar"},
		{"walnut", "black walnut"},
	}
}
