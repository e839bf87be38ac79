package evidence

// Standing says how far a rule or a limit can be trusted.
type Standing string

// The standings, always shown beside what they stand for.
const (
	Published    Standing = "published"    // read in the source or in a text quoting it
	Recalled     Standing = "recalled"     // a published rule quoted from memory
	Practice     Standing = "practice"     // common practice, no source
	Derived      Standing = "derived"      // computed here
	Manufacturer Standing = "manufacturer" // the record's entry, its data sheet named
	ByHand       Standing = "typed"        // the record's entry, no data sheet named
)

// Cite names a source and its standing.
type Cite struct {
	Source   string
	Standing Standing
}

// String is the source with its standing.
func (c Cite) String() string { return c.Source + " (" + string(c.Standing) + ")" }
