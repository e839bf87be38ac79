package plan

import (
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Act is one thing to do.
type Act struct {
	Short  string // what to do, as an order: "read holes H1 to H3"
	How    string // the rest of the order: with what, where, until when
	Or     string // what would do instead, empty where nothing would
	Untold string // why it cannot be told when it ends, where more than its order says is known
	Who    string // whose it is, a role of the table Sign-off
	Checks []string
	Things int // how many things of the record it concerns
	Rows   []PlannedRow
	Fills  []Fill
	Day    int       // when it is planned for, counted from the day of installing
	Begins time.Time // at the earliest; zero where no reading tells what day it is
	Ends   time.Time // at the earliest; zero where that cannot be told

	mends   bool // something over a limit is put right first: that begins today
	stage   stage
	later   []PlannedRow // rows that another act asks for and this one fills in
	takes   time.Duration
	from    time.Time // it cannot begin before
	open    bool      // nothing tells when it can end
	ongoing bool      // it ends with the last reading, and not before
	until   time.Time // this
}

// Fill are blank cells of a row on record to be filled in: the columns of the
// row of a thing, none of them named where its reading is what is missing.
type Fill struct {
	Table, Area, Name string
	Columns           []string
}

// Doing is the order with the wait that follows before its end.
func (a Act) Doing() string {
	if a.stage == sealing || a.stage == setting {
		it := lists.If(a.Things == 1, "it", "them")
		return a.Short + " and leave " + it + " for " + evidence.Hours(a.takes).Text() + " h"
	}
	return a.Short
}

// Order is the whole order.
func (a Act) Order() string {
	return sentence(a.Short, a.How) + lists.If(a.Or != "", "; or "+a.Or, "")
}

// The people of a job, by the roles of the table Sign-off.
const (
	tester     = "tester"
	installer  = "installer"
	contractor = "general contractor"
	designer   = "designer"
	maker      = "flooring manufacturer"
)

// stage is where in the order of work an act stands.
type stage int

// The stages. Each act waits for those of the stages that its own comes after.
const (
	onPaper stage = iota
	ofMeters
	probing
	ofHeat
	ofAir
	sealing
	setting
	lifting
	ofSlab
	ofSubfloor
	ofJoists
	ofBoards
	ofSurfaces
	latestAir
	lastStage
)

// after are the stages that must have ended before one begins.
func (s stage) after() []stage {
	return map[stage][]stage{
		setting:    {ofMeters, ofHeat, ofAir},
		lifting:    {setting},
		ofSlab:     {ofMeters, probing, ofHeat, ofAir, sealing},
		ofBoards:   {ofMeters, ofHeat, ofAir},
		ofSubfloor: {ofMeters, ofHeat},
		ofJoists:   {ofMeters},
		ofSurfaces: {ofMeters},
		latestAir:  {ofAir},
	}[s]
}

// sentence joins clauses that are not empty.
func sentence(clauses ...string) string {
	var all strings.Builder
	for _, c := range clauses {
		switch {
		case all.Len() == 0 || c == "":
		case strings.HasPrefix(c, "("):
			all.WriteString(" ")
		default:
			all.WriteString(", ")
		}
		all.WriteString(c)
	}
	return all.String()
}
