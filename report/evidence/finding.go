package evidence

import (
	"fmt"
	"strconv"
)

// Finding is a check's answer for one subject. Value and Limit are numbers as
// typed, in Unit; Reason is a plain sentence; Evidence lists the rows behind
// it.
type Finding struct {
	ID       string
	Asks     string
	Deciding bool
	Outcome  Outcome
	Value    string
	Limit    string
	Unit     Unit
	Reason   string
	Cite     Cite
	Whose    string // the product whose limit it is; empty where it is nobody's
	Evidence []Place

	Worked Worked // how value and outcome came about
}

// Unneeded is the finding of a check that does not apply: the reason says
// what would make it needed.
func Unneeded(format string, args ...any) Finding {
	return Finding{Outcome: NotNeeded, Reason: fmt.Sprintf(format, args...)}
}

// Unshown is the finding of a check whose evidence is missing.
func Unshown(format string, args ...any) Finding {
	return Finding{Reason: fmt.Sprintf(format, args...)}
}

// Blocks says whether the finding stops the area.
func (f Finding) Blocks() bool {
	return f.Deciding && (f.Outcome == NotMet || f.Outcome == NotShown)
}

// Against sets limit and unit, and where no end has decided yet, whose limit
// it is and its source.
func (f Finding) Against(l Limit) Finding {
	f.Limit, f.Unit = l.Figures(), l.Unit()
	if f.Cite != (Cite{}) || f.Whose != "" {
		return f
	}
	return f.by(l.nearest())
}

// Citing adds the places behind its figures to the evidence, each once.
func (f Finding) Citing(places []Place) Finding {
	known := map[string]bool{}
	for _, p := range f.Evidence {
		known[p.String()] = true
	}
	for _, p := range places {
		if p != nil && !known[p.String()] {
			known[p.String()] = true
			f.Evidence = append(f.Evidence, p)
		}
	}
	return f
}

// by sets whose limit was decisive and its source, where it has one.
func (f Finding) by(b Bound) Finding {
	f.Whose = b.Whose
	if b.Cite != (Cite{}) {
		f.Cite = b.Cite
	}
	return f
}

// Verdict is GO or NO-GO.
type Verdict string

// The verdicts and the two reasons for a NO-GO.
const (
	Go   Verdict = "GO"
	NoGo Verdict = "NO-GO"

	OverLimit = "over a limit"
	NotProven = "not proven"
)

// Fold is the verdict on findings: GO when every deciding one is met or not
// needed and at least one is met. The reason of a GO is empty.
func Fold(findings []Finding) (v Verdict, why string) {
	met := false
	for _, f := range findings {
		switch {
		case f.Deciding && f.Outcome == NotMet:
			return NoGo, OverLimit
		case f.Blocks():
			why = NotProven
		case f.Deciding && f.Outcome == Met:
			met = true
		}
	}
	if why != "" || !met {
		return NoGo, NotProven
	}
	return Go, ""
}

// Count is a number of things in words: "1 hole", "3 holes".
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Worst is the finding of a check that asks several things at once: the first
// that is not met, else the first that is not shown, else the first.
func Worst(findings ...Finding) Finding {
	worst := worstOf(findings)
	var rooms []Working
	worst.Worked.Unusable = 0
	for _, f := range findings {
		worst.Worked.Unusable += f.Worked.Unusable
		switch {
		case f.Worked.Room.Shown():
			rooms = append(rooms, f.Worked.Room)
		case f.Outcome == NotShown:
			worst.Worked.Unusable++
		}
	}
	if len(rooms) > 0 {
		worst.Worked.Room = Lowest(rooms...)
	}
	return worst
}

func worstOf(findings []Finding) Finding {
	for _, o := range []Outcome{NotMet, NotShown} {
		for _, f := range findings {
			if f.Outcome == o {
				return f
			}
		}
	}
	return findings[0]
}
