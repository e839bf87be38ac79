package seal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
)

// Workbook is a decision workbook to be verified, beside what firstboard makes
// of it.
type Workbook struct {
	Name     string
	Tables   []string          // names of the sheets that are tables of the record
	SignOff  string            // the name of the sheet of signatures
	Given    Content           // as the file stands
	Again    Content           // as firstboard writes it of the record that was judged
	Was      []report.Decision // on the record that was judged
	Now      []report.Decision // on the tables as they stand
	NowFault error             // why those cannot be judged
	Seal     string            // of the record that was judged and what was decided
	Known    string            // a seal known from elsewhere, where one is given
	Tool     string            // the program that verifies, with its version
	By       string            // the program that wrote the workbook
	Shown    string            // the seal that the workbook shows
}

// Verification says what no longer holds of a workbook, and what is worth
// knowing of it.
type Verification struct {
	Broken []string
	Notes  []string
}

// mostTold is how many changes of one kind are told.
const mostTold = 20

// Verify holds a workbook against what firstboard would write: record cells
// that changed first, then what they change, then the pages. Signatures that
// were added later are told and break nothing.
func Verify(w Workbook) Verification {
	v := verifier{Workbook: w}
	v.seals()
	if w.By != w.Tool && w.Shown != w.Seal {
		v.otherVersion()
		return v.Verification
	}
	v.record()
	v.signatures()
	v.pages()
	v.file()
	v.note("seal: %s", w.Shown)
	return v.Verification
}

type verifier struct {
	Workbook
	Verification
	edited bool // a record cell is changed
}

func (v *verifier) broken(format string, args ...any) {
	v.Broken = append(v.Broken, fmt.Sprintf(format, args...))
}

func (v *verifier) note(format string, args ...any) {
	v.Notes = append(v.Notes, fmt.Sprintf(format, args...))
}

func (v *verifier) tell(changes []Change) {
	v.Broken = append(v.Broken, Tell(changes, mostTold)...)
}

// seals holds the seal that the workbook shows against the one that record and
// decisions make, and against one known from elsewhere.
func (v *verifier) seals() {
	if v.Shown != v.Seal && v.By == v.Tool {
		v.broken("the seal: the workbook shows %s, and its record makes %s", shown(v.Shown), v.Seal)
	}
	if v.Known != "" && v.Known != v.Shown {
		v.broken("another seal: the workbook shows %s, and %s was given", shown(v.Shown), v.Known)
	}
}

func shown(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

// otherVersion compares verdicts, findings and the seal alone: pages of another
// version may look otherwise.
func (v *verifier) otherVersion() {
	v.note("it was written by %s, and this is %s: verdicts, findings and the seal are compared, pages are not",
		shown(v.By), v.Tool)
	changes, _ := Differences(v.Again.only(v.ofRecord()), v.Given.only(v.ofRecord()), false)
	v.edited = len(changes) > 0
	v.tell(changes)
	for _, d := range v.Was {
		v.verdictShown(d)
	}
	if len(v.Broken) == 0 && v.Shown != v.Seal {
		v.note("this version makes another seal of the same record")
	}
	v.note("seal: %s", v.Shown)
}

// ofRecord says which sheets are the record's.
func (v *verifier) ofRecord() func(string) bool {
	return func(name string) bool { return slices.Contains(v.Tables, name) && name != v.SignOff }
}

// verdictShown asks whether the area's own sheet shows its verdict and outcomes.
func (v *verifier) verdictShown(d report.Decision) {
	for _, s := range v.Given.Sheets {
		if !strings.HasSuffix(s.Name, " "+d.Area.ID) || !strings.HasPrefix(s.Name, "Area ") {
			continue
		}
		if !s.says(d.Says()) {
			v.broken("%s: does not show the verdict %s", s.Name, d.Says())
		}
		for _, f := range d.Findings {
			switch shown := s.outcome(f.ID); shown {
			case f.Outcome.String():
			case "":
				v.broken("%s: does not show %s", s.Name, f.ID)
			default:
				v.broken("%s: %s is shown as %q, and it is %s", s.Name, f.ID, shown, f.Outcome)
			}
		}
		return
	}
	v.broken("area %s: its sheet is gone", d.Area.ID)
}

// outcome is what a sheet shows of a check: the cell beside its name, or the line
// into which those that are not needed are folded; empty where it is not there.
func (s Sheet) outcome(id string) string {
	for at, c := range s.Cells {
		row, column := position(at)
		if column != 1 {
			continue
		}
		if c.Value == id {
			return s.Cells["B"+strconv.Itoa(row)].Value
		}
		if ids, _, folded := strings.Cut(c.Value, ": "); folded && slices.Contains(strings.Split(ids, ", "), id) {
			return evidence.NotNeeded.String()
		}
	}
	return ""
}

func (s Sheet) says(text string) bool {
	for _, c := range s.Cells {
		if c.Value == text {
			return true
		}
	}
	return false
}

// only are the sheets of which a test holds.
func (c Content) only(holds func(string) bool) Content {
	var some Content
	for _, s := range c.Sheets {
		if holds(s.Name) {
			some.Sheets = append(some.Sheets, s)
		}
	}
	return some
}

// record tells which cells of the record were changed, and what follows.
func (v *verifier) record() {
	mine := v.ofRecord()
	changes, strange := Differences(v.Again.only(mine), v.Given.only(mine), true)
	for _, name := range strange {
		changes = append(changes, Change{Sheet: name, To: "a table that the record did not have"})
	}
	v.edited = len(changes) > 0
	v.tell(changes)
	switch {
	case v.edited:
		v.follows()
	case v.NowFault != nil:
		v.broken("its tables cannot be judged as they stand: %s", firstLine(v.NowFault))
	}
}

func firstLine(err error) string {
	first, _, _ := strings.Cut(err.Error(), "\n")
	return first
}

// follows says in one line what changed record cells change.
func (v *verifier) follows() {
	if v.NowFault != nil {
		v.note("as the tables stand now they cannot be judged: %s", firstLine(v.NowFault))
		return
	}
	findings := 0
	var verdicts, says []string
	for i, d := range v.Was {
		at := slices.IndexFunc(v.Now, func(n report.Decision) bool { return evidence.Same(n.Area.ID, d.Area.ID) })
		if at < 0 {
			verdicts = append(verdicts, d.Area.ID+" is gone")
			continue
		}
		now := v.Now[at]
		if d.Says() != now.Says() {
			verdicts = append(verdicts, fmt.Sprintf("%s from %s to %s", v.Was[i].Area.ID, d.Says(), now.Says()))
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
	v.note("as the tables stand now %s", strings.Join(says, ", and "))
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
	byRow := map[int][]string{}
	last := 0
	for _, place := range s.places(s) {
		row, _ := position(place)
		byRow[row] = append(byRow[row], s.Cells[place].asRead())
		last = max(last, row)
	}
	var all []string
	for row := 1; row <= last; row++ {
		if cells := byRow[row]; len(cells) > 0 {
			all = append(all, strings.Join(cells, ", "))
		}
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

// pages tells what was changed beside the record: values, formulas, what is
// hidden, drawn or written in the margins. Stored results are compared while
// the record is unchanged, for they follow it.
func (v *verifier) pages() {
	ours := func(name string) bool { return !v.ofRecord()(name) && name != v.SignOff }
	given := v.Given
	if !given.Stored() {
		given = given.filled(v.Again)
		v.note("the results of formulas are not stored in this file: open and save it with a spreadsheet program to have them compared")
	}
	changes, strange := Differences(v.Again.only(ours), given.only(ours), !v.edited)
	for _, name := range strange {
		v.broken("%s: the sheet is not of this workbook: somebody added it", name)
	}
	if c, moved := order(v.Again, v.Given); moved {
		v.tell([]Change{c})
	}
	v.tell(changes)
	v.tell(names(v.Again, v.Given))
}

// file tells what was changed of the file as a whole: how it counts, programs
// and data from outside, and what its properties say.
func (v *verifier) file() {
	v.tell(lists("the file", "", v.Again.Ways, v.Given.Ways))
	if about := v.Given.About; about != "" && about != v.Again.About {
		v.tell([]Change{{Sheet: "the file's properties", From: v.Again.About, To: about}})
	}
}
