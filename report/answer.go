package report

import (
	"fmt"

	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Answer is all that a judged record says, in the shape that programs read.
// Numbers that people typed or that meet a limit are strings.
type Answer struct {
	Tool   ToolAnswer   `json:"tool"`
	Record RecordAnswer `json:"record"`
	Seal   string       `json:"seal"`
	Job    JobAnswer    `json:"job"`
	Areas  []AreaAnswer `json:"areas"`
}

// ToolAnswer names the program that judged.
type ToolAnswer struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// RecordAnswer names what was judged.
type RecordAnswer struct {
	Name    string   `json:"name"`
	SHA256  string   `json:"sha256"`
	NotRead []string `json:"notRead"`
}

// JobAnswer is the job's head: its acceptance rule and the settings that
// differ from their defaults.
type JobAnswer struct {
	Name       string            `json:"name"`
	Site       string            `json:"site"`
	Acceptance string            `json:"acceptance"`
	Settings   map[string]string `json:"settings"`
}

// AreaAnswer is the decision on one area.
type AreaAnswer struct {
	ID         string          `json:"id"`
	Name       string          `json:"name"`
	Verdict    string          `json:"verdict"`
	Why        string          `json:"why"`
	Size       string          `json:"size"`
	InstallOn  string          `json:"installOn"`
	GoodUntil  string          `json:"goodUntil"`
	ReRead     []string        `json:"reRead,omitempty"`
	Target     *Target         `json:"target"`
	Blocking   []string        `json:"blocking"`
	Conditions []string        `json:"conditions"`
	Unused     []UnusedAnswer  `json:"unused"`
	Waivers    []Waiver        `json:"waivers,omitempty"`
	Discarded  []string        `json:"discarded,omitempty"`
	Corrected  []string        `json:"corrected,omitempty"`
	Advice     []string        `json:"advice,omitempty"`
	Looks      []string        `json:"worthALook,omitempty"`
	Missing    []ahead.Missing `json:"missing,omitempty"`
	Findings   []FindingAnswer `json:"findings"`
	Outlook    *ahead.Outlook  `json:"outlook,omitempty"`
	Next       *ahead.Next     `json:"next,omitempty"`
}

// UnusedAnswer is how many rows of a table were read and not judged, and why.
type UnusedAnswer struct {
	Table string `json:"table"`
	Rows  int    `json:"rows"`
	Why   string `json:"why"`
}

// FindingAnswer is one finding.
type FindingAnswer struct {
	ID       string   `json:"id"`
	Asks     string   `json:"asks"`
	Outcome  string   `json:"outcome"`
	Deciding bool     `json:"deciding"`
	Value    string   `json:"value"`
	Limit    string   `json:"limit"`
	Unit     string   `json:"unit"`
	Reason   string   `json:"reason"`
	Source   string   `json:"source"`
	Standing string   `json:"standing"`
	Evidence []string `json:"evidence"`
	Working  string   `json:"working"`
}

// Answers puts decisions into their answer's shape, each with its advice where
// any is given, and its findings with their workings. The caller adds tool, record
// and seal.
func Answers(j Job, decisions []Decision, advice []ahead.Advice) Answer {
	a := Decided(j, decisions)
	for i, d := range decisions {
		area := &a.Areas[i]
		if i < len(advice) {
			area.Missing, area.Outlook, area.Next = advice[i].Missing, &advice[i].Outlook, &advice[i].Next
		}
		for k, f := range d.Findings {
			area.Findings[k].Working = f.Worked.String()
		}
	}
	return a
}

// Decided is what was decided, without workings and advice: all that a seal
// stands for.
func Decided(j Job, decisions []Decision) Answer {
	a := Answer{
		Job:   JobAnswer{Name: j.Name, Site: j.Site, Acceptance: j.AcceptanceRule(), Settings: map[string]string{}},
		Areas: append([]AreaAnswer{}, lists.Each(decisions, Decision.answer)...),
	}
	for _, s := range j.Settings.Changed() {
		a.Job.Settings[s.Item] = s.Value.Written
	}
	return a
}

// AcceptanceRule is the rule's word: simple or guarded.
func (j Job) AcceptanceRule() string {
	return lists.If(j.Guarded, "guarded", "simple")
}

func (d Decision) answer() AreaAnswer {
	a := AreaAnswer{
		ID: d.Area.ID, Name: d.Area.Name, Verdict: string(d.Verdict), Why: d.Why,
		Size: d.Area.Size.String(), InstallOn: d.Area.InstallOn.Written, GoodUntil: d.GoodUntil.Written,
		ReRead: d.ReRead, Target: d.Target, Waivers: d.Waivers, Discarded: d.Discarded, Advice: d.Advice, Looks: d.Looks,
		Blocking: d.Blocking(), Conditions: d.Conditions, Unused: []UnusedAnswer{}, Findings: []FindingAnswer{},
	}
	for _, u := range d.Unused {
		a.Unused = append(a.Unused, UnusedAnswer(u))
	}
	for _, c := range d.Corrections {
		a.Corrected = append(a.Corrected, c.Piece+": "+c.Corrected+" % MC ("+c.How+")")
	}
	for _, f := range d.Findings {
		a.Findings = append(a.Findings, FindingAnswer{
			ID: f.ID, Asks: f.Asks, Outcome: f.Outcome.String(), Deciding: f.Deciding,
			Value: f.Value, Limit: f.Limit, Unit: string(f.Unit), Reason: f.Reason,
			Source: f.Cite.Source, Standing: string(f.Cite.Standing), Evidence: PlaceNames(f.Evidence),
		})
	}
	return a
}

// PlaceNames are places in words.
func PlaceNames(places []evidence.Place) []string {
	return append([]string{}, lists.Each(places, func(p evidence.Place) string { return fmt.Sprint(p) })...)
}
