package gather

import (
	"strings"

	"firstboard/report"
	"firstboard/report/ahead"
)

// From is where a part comes from: the path of a record, its SHA-256, its
// seal, and, of a decision workbook, the SHA-256 of the record it was judged by.
type From struct{ Record, SHA256, Seal, Origin string }

// Part is what one record comes to.
type Part struct {
	From
	Rows []Row
	Due  []Due
}

// Of reduces the decisions on a record, and what is advised under each, to their
// rows. Nothing of the record is held by them.
func Of(from From, j report.Job, decisions []report.Decision, advice []ahead.Advice) Part {
	p := Part{From: From{
		Record: from.Record, SHA256: strings.Clone(from.SHA256),
		Seal: strings.Clone(from.Seal), Origin: strings.Clone(from.Origin),
	}}
	for i, d := range decisions {
		r := rowOf(j, d, advice[i])
		r.Record, r.SHA256, r.Seal = Text(p.Record), Text(p.SHA256), Text(p.Seal)
		p.Rows, p.Due = append(p.Rows, r), append(p.Due, r.areaDue()...)
	}
	p.Due = append(p.Due, meterDue(j, decisions)...)
	for i := range p.Due {
		p.Due[i].Record = Text(p.Record)
	}
	return p
}

// Unread is something that was not gathered, and why.
type Unread struct {
	Record string
	What   Kind
	Why    string // the first fault
	More   int    // faults

	in    string   // the record in which its areas stand already
	areas []string // those areas
}

// Kind says what became of something that was not gathered.
type Kind string

// The kinds: only the first is anything to mend.
const (
	Faulty  Kind = "cannot be read"
	Another Kind = "no record"
	Again   Kind = "gathered already"
)
