package report

import (
	"cmp"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Decision is what firstboard says of one area.
type Decision struct {
	Area       Area
	Site       Site // the subjects that were judged
	Verdict    evidence.Verdict
	Why        string // empty for a GO
	Findings   []evidence.Finding
	Conditions []string
	GoodUntil  evidence.Date // for a GO only
	ReRead     []string      // what ends it, and has to be read again to extend it
	Target     *Target       // nil for floorings that are not wood

	Holes    HoleCount
	SetAside int // boards of the judged visits that were set aside
	Waivers  []Waiver

	Signatures  []Signature
	Unused      []evidence.Unused // rows that were read and not judged
	Discarded   []string          // holes out of use, with their words
	Corrections []Correction
	Advice      []string     // what the meters say together
	Questions   []string     // whether one slip stands behind what is not met
	Looks       []string     // what is worth a second look, the questions first
	Items       []ReportItem // what a moisture report should hold
}

// Target is the service climate's equilibrium moisture content: lowest,
// highest and the midpoint, in % MC as printed.
type Target struct {
	Low  string `json:"lowPct"`
	High string `json:"highPct"`
	Mid  string `json:"targetPct"`
}

// HoleCount is how many holes were asked for (0 where none), judged and
// discarded.
type HoleCount struct{ Asked, Judged, Discarded int }

// Waiver is one blocking check that somebody signed away, whose limit it is
// in words, and what is wrong with that: it is not theirs, or it was signed too
// early.
type Waiver struct {
	Check  string         `json:"check"`
	Owner  string         `json:"owner"`
	Role   string         `json:"role"`
	Name   string         `json:"name"`
	Doubts []string       `json:"doubts"`
	Place  evidence.Place `json:"-"`
}

// Says is the waiver in words.
func (w Waiver) Says() string {
	who := w.Check + " is waived by " + cmp.Or(w.Name, "nobody named") + " (" + w.Role + "); " + w.Owner
	return strings.Join(append([]string{who}, w.Doubts...), "; ")
}

// Outcome is the answer to one check.
func (d Decision) Outcome(id string) evidence.Outcome {
	f, _ := lists.First(d.Findings, func(f evidence.Finding) bool { return f.ID == id })
	return f.Outcome
}

// Blocking are the ids of the findings that stop the area.
func (d Decision) Blocking() []string {
	return append([]string{}, d.ids(evidence.Finding.Blocks)...)
}

// Over are the ids of the deciding findings that are not met.
func (d Decision) Over() []string {
	return d.ids(func(f evidence.Finding) bool { return f.Deciding && f.Outcome == evidence.NotMet })
}

func (d Decision) ids(of func(evidence.Finding) bool) []string {
	return lists.Each(lists.Where(d.Findings, of), func(f evidence.Finding) string { return f.ID })
}
