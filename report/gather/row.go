package gather

import (
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Row is the verdict on one area, flat: what a table shows a person and a line
// of JSON gives a program.
type Row struct {
	Record Text `json:"record"` // its path below the folder that was searched
	SHA256 Text `json:"sha256"`
	Seal   Text `json:"seal"`
	Job    Text `json:"job"`
	Site   Text `json:"site"`
	Area   Text `json:"area"`
	Name   Text `json:"name"`

	SizeFt2      Figure `json:"sizeFt2"`
	Acceptance   Text   `json:"acceptance"`
	Verdict      Text   `json:"verdict"`
	Why          Text   `json:"why"`
	UnderWaiver  bool   `json:"underWaiver"` // every check that stops the area is waived
	Blocking     []Text `json:"blocking"`
	Over         []Text `json:"overLimit"` // those of blocking that are over a limit
	Reason       Text   `json:"reason"`
	Waived       []Text `json:"waived"`
	WaivedDoubts []Text `json:"waivedInDoubt"` // those of waived whose every signature has something against it
	AcceptedBy   []Text `json:"acceptedBy"`    // roles

	InstallOn   Text   `json:"installOn"`
	GoodUntil   Text   `json:"goodUntil"`
	ReRead      []Text `json:"reRead"`
	Earliest    Text   `json:"earliest"`
	SlabStatus  Text   `json:"slabStatus"`
	SlabReady   Text   `json:"slabReady"`
	BoardsReady Text   `json:"boardsReady"`
	When        Text   `json:"outlook"`
	NextAct     Text   `json:"nextAct"`
	NextWho     Text   `json:"nextWho"`
	NextEnds    Moment `json:"nextEnds"`
	LastReading Moment `json:"lastReading"`

	Flooring     Text   `json:"flooring"`
	FlooringKind Text   `json:"flooringKind"`
	DataSheet    Text   `json:"dataSheet"`
	Adhesive     Text   `json:"adhesive"`
	Membrane     Text   `json:"membrane"`
	Lots         []Text `json:"lots"`

	SlabRHPct           Figure `json:"slabRhPct"` // of the worst hole
	SlabRHLimitPct      Figure `json:"slabRhLimitPct"`
	MVER                Figure `json:"mver"` // of the worst dish
	MVERLimit           Figure `json:"mverLimit"`
	MVERUnit            Text   `json:"mverUnit"`
	SubfloorMCPct       Figure `json:"subfloorMcPct"` // of the worst piece
	SubfloorMCLimitPct  Figure `json:"subfloorMcLimitPct"`
	FlooringMeanPct     Figure `json:"flooringMeanPct"` // of the lot furthest from the target
	TargetPct           Figure `json:"targetPct"`
	WoodDifference      Figure `json:"woodDifferencePoints"`
	WoodDifferenceLimit Figure `json:"woodDifferenceLimitPoints"`

	signed int // signatures under the area's decision
}

// rowOf is the row of one decision.
func rowOf(j report.Job, d report.Decision, a ahead.Advice) Row {
	r := Row{
		Job: kept(j.Name), Site: kept(j.Site), Area: kept(d.Area.ID), Name: kept(d.Area.Name),
		Acceptance: Text(j.AcceptanceRule()), Verdict: Text(d.Verdict), Why: kept(d.Why), UnderWaiver: d.UnderWaiver(),
		Blocking: texts(d.Blocking()), Over: texts(d.Over()), Reason: reason(d),
		InstallOn: dayOf(d.Area.InstallOn), GoodUntil: dayOf(d.GoodUntil), ReRead: texts(d.ReRead),
		Lots: []Text{}, signed: len(d.Signatures),
	}
	if size := d.Area.Size; size.Shown() {
		r.SizeFt2 = figure(size.WrittenIn(evidence.SquareFoot))
	}
	r.signatures(d)
	r.products(j, d)
	r.outlook(d, a)
	r.figures(d)
	return r
}

// reason is why an area stops, in the words of the first finding that is over a
// limit, else of the first that is not shown.
func reason(d report.Decision) Text {
	var first Text
	for _, f := range d.Findings {
		switch {
		case !f.Blocks():
		case f.Outcome == evidence.NotMet:
			return kept(f.Reason)
		case first == "":
			first = kept(f.Reason)
		}
	}
	return first
}

// signatures are the checks that were signed away and the roles that accepted.
func (r *Row) signatures(d report.Decision) {
	r.Waived, r.WaivedDoubts, r.AcceptedBy = []Text{}, []Text{}, []Text{}
	sound := map[string]bool{}
	for _, w := range d.Waivers {
		sound[w.Check] = sound[w.Check] || len(w.Doubts) == 0
	}
	for _, id := range d.Blocking() {
		free, waived := sound[id]
		if waived {
			r.Waived = append(r.Waived, Text(id))
		}
		if waived && !free {
			r.WaivedDoubts = append(r.WaivedDoubts, Text(id))
		}
	}
	for _, s := range d.Signatures {
		if role := kept(s.Role); s.Decision == "accept" && !slices.Contains(r.AcceptedBy, role) {
			r.AcceptedBy = append(r.AcceptedBy, role)
		}
	}
}

// products are the flooring system and the lots that were judged.
func (r *Row) products(j report.Job, d report.Decision) {
	r.Flooring, r.Adhesive, r.Membrane = kept(d.Area.Flooring), kept(d.Area.Adhesive), kept(d.Area.Membrane)
	for _, p := range j.Products {
		if evidence.Same(p.ID, d.Area.Flooring) {
			r.Flooring, r.FlooringKind, r.DataSheet = kept(p.ID), kept(p.Kind), kept(p.DataSheet)
		}
	}
	if d.Site.Wood.NoFlooring != "" {
		return
	}
	for _, lot := range d.Site.Wood.Lots() {
		if lot.Name != "" {
			r.Lots = append(r.Lots, kept(lot.Name))
		}
	}
}

// outlook is when, and what comes next.
func (r *Row) outlook(d report.Decision, a ahead.Advice) {
	o := a.Outlook
	r.When = kept(o.Brief())
	if d.Verdict != evidence.Go {
		r.Earliest = kept(a.Next.Earliest)
	}
	r.SlabStatus, r.SlabReady = Text(o.Slab.Status), kept(o.Slab.Ready)
	for _, b := range o.Boards {
		r.BoardsReady = max(r.BoardsReady, kept(b.Ready))
	}
	if last := d.Site.Latest(); !last.IsZero() {
		r.LastReading = Moment(evidence.ClockText(last))
	}
	if len(a.Next.Acts) == 0 {
		return
	}
	next := a.Next.Acts[0]
	act, _, _ := strings.Cut(next.Act, "; or ")
	act, _, _ = strings.Cut(act, " (")
	r.NextAct, r.NextWho, r.NextEnds = kept(act), kept(next.Who), Moment(strings.Clone(next.Ends))
}

// figures are the worst values behind the findings that an open question is most
// often about, and their limits.
func (r *Row) figures(d report.Decision) {
	if d.Target != nil {
		r.TargetPct = figure(d.Target.Mid)
	}
	for _, f := range d.Findings {
		value, limit := figure(f.Value), figure(f.Limit)
		switch f.ID {
		case "slab-rh":
			r.SlabRHPct, r.SlabRHLimitPct = value, limit
		case "mver-rate":
			r.MVER, r.MVERLimit, r.MVERUnit = value, limit, kept(string(f.Unit))
		case "subfloor-mc":
			r.SubfloorMCPct, r.SubfloorMCLimitPct = value, limit
		case "wood-difference":
			r.WoodDifference, r.WoodDifferenceLimit = value, limit
		case "flooring-target":
			r.FlooringMeanPct = value
		}
	}
}

// dayOf is a day as JSON takes it, or blank.
func dayOf(d evidence.Date) Text {
	return Text(lists.If(d.Shown(), d.Day.String(), ""))
}

// texts are texts of their own; none is an empty list.
func texts(from []string) []Text {
	return append([]Text{}, lists.Each(from, kept)...)
}
