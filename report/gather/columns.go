package gather

import (
	"cmp"

	"firstboard/report/grid"
	"firstboard/report/lists"
)

// printedOfVerdicts is how many columns of the verdicts go on paper: those a
// person acts on.
const printedOfVerdicts = 12

// verdictColumns are the columns of the table of verdicts.
func verdictColumns() []column[Row] {
	return []column[Row]{
		{"Record", 16, func(r Row) grid.Cell { return textCell(r.Record) }},
		{"Job", 17, func(r Row) grid.Cell { return textCell(r.Job) }},
		{"Area", 7, func(r Row) grid.Cell { return textCell(r.Area) }},
		{"Name", 14, func(r Row) grid.Cell { return textCell(r.Name) }},
		{"Verdict", 9, func(r Row) grid.Cell { return textCell(r.Verdict) }},
		{"Why", 11.5, func(r Row) grid.Cell { return textCell(r.Why + lists.If[Text](r.UnderWaiver, ", under waiver", "")) }},
		{"Blocking", 16, func(r Row) grid.Cell { return listCell(r.Blocking) }},
		{"Install on", 10.5, func(r Row) grid.Cell { return dayCell(r.InstallOn) }},
		{"Good until", 10.5, func(r Row) grid.Cell { return dayCell(r.GoodUntil) }},
		{"Earliest GO", 10.5, func(r Row) grid.Cell { return dayCell(r.Earliest) }},
		{"Next act", 24, func(r Row) grid.Cell { return textCell(r.NextAct) }},
		{"Whose", 10.5, func(r Row) grid.Cell { return textCell(r.NextWho) }},

		{"Reason", 44, func(r Row) grid.Cell { return textCell(r.Reason) }},
		{"When", 34, func(r Row) grid.Cell { return textCell(r.When) }},
		{"Slab ready", 10.5, func(r Row) grid.Cell { return dayCell(r.SlabReady) }},
		{"Boards ready", 10.5, func(r Row) grid.Cell { return dayCell(r.BoardsReady) }},
		{"Next act ends", 16, func(r Row) grid.Cell { return momentCell(r.NextEnds) }},
		{"To read again", 20, func(r Row) grid.Cell { return listCell(r.ReRead) }},
		{"Waived", 16, func(r Row) grid.Cell { return listCell(r.Waived) }},
		{"Waived in doubt", 16, func(r Row) grid.Cell { return listCell(r.WaivedDoubts) }},
		{"Accepted by", 18, func(r Row) grid.Cell { return listCell(r.AcceptedBy) }},
		{"Site", 24, func(r Row) grid.Cell { return textCell(r.Site) }},
		{"Size (ft2)", 10, func(r Row) grid.Cell { return figureCell(r.SizeFt2) }},
		{"Acceptance", 11, func(r Row) grid.Cell { return textCell(r.Acceptance) }},
		{"Flooring", 14, func(r Row) grid.Cell { return textCell(r.Flooring) }},
		{"Flooring kind", 16, func(r Row) grid.Cell { return textCell(r.FlooringKind) }},
		{"Data sheet", 28, func(r Row) grid.Cell { return textCell(r.DataSheet) }},
		{"Adhesive", 14, func(r Row) grid.Cell { return textCell(r.Adhesive) }},
		{"Membrane", 14, func(r Row) grid.Cell { return textCell(r.Membrane) }},
		{"Lots", 14, func(r Row) grid.Cell { return listCell(r.Lots) }},
		{"Slab RH (%)", 10, func(r Row) grid.Cell { return figureCell(r.SlabRHPct) }},
		{"Slab RH limit (%)", 10, func(r Row) grid.Cell { return figureCell(r.SlabRHLimitPct) }},
		{"MVER", 10, func(r Row) grid.Cell { return figureCell(r.MVER) }},
		{"MVER limit", 10, func(r Row) grid.Cell { return figureCell(r.MVERLimit) }},
		{"MVER in", 16, func(r Row) grid.Cell { return textCell(r.MVERUnit) }},
		{"Subfloor MC (%)", 10, func(r Row) grid.Cell { return figureCell(r.SubfloorMCPct) }},
		{"Subfloor MC limit (%)", 10, func(r Row) grid.Cell { return figureCell(r.SubfloorMCLimitPct) }},
		{"Flooring MC mean (%)", 10, func(r Row) grid.Cell { return figureCell(r.FlooringMeanPct) }},
		{"Target MC (%)", 10, func(r Row) grid.Cell { return figureCell(r.TargetPct) }},
		{"Difference (points)", 10, func(r Row) grid.Cell { return figureCell(r.WoodDifference) }},
		{"Difference limit (points)", 10, func(r Row) grid.Cell { return figureCell(r.WoodDifferenceLimit) }},
		{"Latest reading", 16, func(r Row) grid.Cell { return momentCell(r.LastReading) }},
		{"Seal", 70, func(r Row) grid.Cell { return textCell(r.Seal) }},
		{"SHA-256", 70, func(r Row) grid.Cell { return textCell(r.SHA256) }},
	}
}

// dueColumns are the columns of what falls due.
func dueColumns() []column[Due] {
	return []column[Due]{
		{"On", 11, func(d Due) grid.Cell { return dayCell(d.On) }},
		{"What falls due", 24, func(d Due) grid.Cell { return textCell(d.What) }},
		{"Of", 46, func(d Due) grid.Cell { return textCell(d.Of) }},
		{"Record", 22, func(d Due) grid.Cell { return textCell(d.Record) }},
		{"Job", 30, func(d Due) grid.Cell { return textCell(d.Job) }},
		{"Areas", 16, func(d Due) grid.Cell { return listCell(d.Areas) }},
		{"Whose", 14, func(d Due) grid.Cell { return textCell(d.Whose) }},
	}
}

// unreadColumns are the columns of what was not gathered.
func unreadColumns() []column[Unread] {
	return []column[Unread]{
		{"Record", 36, func(u Unread) grid.Cell { return textCell(kept(u.Record)) }},
		{"What", 16, func(u Unread) grid.Cell { return textCell(Text(u.What)) }},
		{"Why", 90, func(u Unread) grid.Cell { return textCell(kept(u.Why)) }},
		{"Further faults", 14, func(u Unread) grid.Cell { return lists.If(u.More == 0, grid.Cell{}, countCell(u.More)) }},
	}
}

// summaryLine is one line of the summary.
type summaryLine struct {
	by, what Text
	day      bool // what is a day
	Verdicts
	words string
}

// The groups of the summary.
const (
	byAll    = "all areas"
	byReason = "reason"
	byDay    = "install on"
	byDue    = "falls due"
	byPast   = "fell due"
	byTwin   = "stands twice"
)

// summary counts by verdict, by reason, by the day of installing, and by what
// falls due, that of days before the latest reading of all apart.
func (g Gathered) summary() []summaryLine {
	all := []summaryLine{{by: byAll, what: byAll, Verdicts: g.Total(), words: g.words()}}
	for _, r := range g.Reasons() {
		c := Verdicts{Areas: r.Areas, Over: r.Over, Unproven: r.Areas - r.Over, Waived: r.Waived}
		all = append(all, summaryLine{by: byReason, what: Text(r.Check), Verdicts: c, words: r.Asks})
	}
	for _, t := range g.Twins() {
		words := "in several records, each counted; keep the one that holds: " + t.Says()
		all = append(all, summaryLine{by: byTwin, what: t.Area, Verdicts: Verdicts{Areas: len(t.Records)}, words: words})
	}
	for _, d := range g.Days() {
		what := cmp.Or(d.On, "no day is recorded")
		all = append(all, summaryLine{by: byDay, what: what, day: d.On != "", Verdicts: d.Verdicts})
	}
	for _, f := range g.FallsDue() {
		by := lists.If[Text](f.On < g.Latest, byPast, byDue)
		words := string(f.What) + ": " + f.Where
		all = append(all, summaryLine{by: by, what: f.On, day: true, Verdicts: Verdicts{Areas: f.Areas}, words: words})
	}
	return all
}

func summaryColumns() []column[summaryLine] {
	count := func(name string, of func(summaryLine) int) column[summaryLine] {
		return column[summaryLine]{name, 10.5, func(l summaryLine) grid.Cell {
			none := l.by == byDue || l.by == byPast || l.by == byTwin || l.by == byReason && name == "GO"
			return lists.If(none, grid.Cell{}, countCell(of(l)))
		}}
	}
	return []column[summaryLine]{
		{"By", 12, func(l summaryLine) grid.Cell { return textCell(l.by) }},
		{"What", 18, func(l summaryLine) grid.Cell { return lists.If(l.day, dayCell(l.what), textCell(l.what)) }},
		{"Areas", 9, func(l summaryLine) grid.Cell { return countCell(l.Areas) }},
		count("GO", func(l summaryLine) int { return l.Go }),
		count("Over a limit", func(l summaryLine) int { return l.Over }),
		count("Not proven", func(l summaryLine) int { return l.Unproven }),
		count("Under waiver", func(l summaryLine) int { return l.Waived }),
		{"In words", 80, func(l summaryLine) grid.Cell { return cellOf(grid.TextCell, l.words) }},
	}
}
