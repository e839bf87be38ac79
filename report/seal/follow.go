package seal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// record tells which cells of the record were changed, and what follows.
func (v *verifier) record() {
	mine := v.ofRecord()
	changes, strange := Differences(v.Again.only(mine), v.Given.only(mine), true)
	for _, name := range strange {
		changes = append(changes, Change{Sheet: name, To: "a table that the record did not have"})
	}
	isBeside := func(c Change) bool { return c.Beside }
	beside, cells := lists.Where(changes, isBeside), slices.DeleteFunc(changes, isBeside)
	v.edited = len(cells) > 0
	v.tell(cells)
	switch {
	case v.edited:
		v.follows()
	case v.NowFault != nil:
		v.broken("its tables cannot be judged as they stand: %s", firstLine(v.NowFault))
	}
	v.tell(beside)
}

func firstLine(err error) string {
	first, _, _ := strings.Cut(err.Error(), "\n")
	return first
}

// follows says in one line what changed record cells change.
func (v *verifier) follows() {
	if v.NowFault != nil {
		v.broken("as the tables stand now they cannot be judged: %s", firstLine(v.NowFault))
		return
	}
	findings := 0
	var verdicts, says []string
	for _, d := range v.Was {
		now, there := lists.First(v.Now, func(n report.Decision) bool { return evidence.Same(n.Area.ID, d.Area.ID) })
		if !there {
			verdicts = append(verdicts, d.Area.ID+" is gone")
			continue
		}
		if d.Says() != now.Says() {
			verdicts = append(verdicts, fmt.Sprintf("%s from %s to %s", d.Area.ID, d.Says(), now.Says()))
		}
		findings += changedFindings(d, now)
	}
	if findings > 0 {
		says = append(says, evidence.Count(findings, "finding changes", "findings change"))
	}
	if len(verdicts) > 0 {
		says = append(says, "verdicts change: "+strings.Join(verdicts, "; "))
	}
	if says == nil {
		says = []string{"every finding and every verdict stays"}
	}
	v.broken("as the tables stand now %s", strings.Join(says, ", and "))
}

func changedFindings(was, now report.Decision) int {
	n := 0
	for i, f := range was.Findings {
		if i >= len(now.Findings) || f.Outcome != now.Findings[i].Outcome || f.Value != now.Findings[i].Value {
			n++
		}
	}
	return n
}

// signatures tells those that were added, and breaks where one that was there
// is changed or gone, or where the sheet shows them otherwise.
func (v *verifier) signatures() {
	sheet, _ := v.Again.sheet(v.SignOff)
	if given, there := v.Given.sheet(v.SignOff); there {
		v.tell(sheet.around(given))
	}
	was, now := v.Again.rows(v.SignOff), v.Given.rows(v.SignOff)
	for _, line := range was {
		if at := slices.Index(now, line); at >= 0 {
			now = slices.Delete(now, at, at+1)
			continue
		}
		v.broken("%s: was changed or taken out: %s", v.SignOff, line)
	}
	for _, line := range now {
		v.note("signed since: %s", line)
	}
}

// rows are the rows of a sheet in words, without those that hold nothing.
func (c Content) rows(name string) []string {
	s, _ := c.sheet(name)
	var all []string
	last := int32(0)
	for _, cell := range s.Cells {
		said := cell.asRead()
		if cell.At.Row != last {
			all, last = append(all, said), cell.At.Row
			continue
		}
		all[len(all)-1] += ", " + said
	}
	return all
}

// asRead is what a cell holds, a number to the 12 figures that every program
// keeps, and how it is shown where that says something else.
func (c Cell) asRead() string {
	said := c.says()
	if x, err := strconv.ParseFloat(c.Value, 64); err == nil && c.Kind == "n" && c.Formula == "" {
		said = strconv.FormatFloat(x, 'g', 12, 64)
	}
	if c.Kind == "s" && c.Format != "" && c.Format != "@" {
		said += " (" + quote(c.Format) + ")"
	}
	return said
}
