package seal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
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

func shown(s string) string { return cmp.Or(s, "none") }

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
		if !slices.ContainsFunc(s.Cells, func(c Cell) bool { return c.Value == d.Says() }) {
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
	for _, c := range s.Cells {
		if c.At.Column != 1 {
			continue
		}
		if c.Value == id {
			return s.cell(Address{c.At.Row, c.At.Column + 1}).Value
		}
		if ids, _, folded := strings.Cut(c.Value, ": "); folded && slices.Contains(strings.Split(ids, ", "), id) {
			return evidence.NotNeeded.String()
		}
	}
	return ""
}

// only are the sheets of which a test holds.
func (c Content) only(holds func(string) bool) Content {
	return Content{Sheets: lists.Where(c.Sheets, func(s Sheet) bool { return holds(s.Name) })}
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
	v.tell(unpaired("the file", "", v.Again.Ways, v.Given.Ways))
	if about := v.Given.About; about != "" && about != v.Again.About {
		v.tell([]Change{{Sheet: "the file's properties", From: v.Again.About, To: about}})
	}
}
