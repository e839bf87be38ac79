package report

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/hints"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
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

// Judge decides every area of a job, each by itself.
func Judge(j Job) []Decision {
	record := j.byArea()
	return lists.Each(j.Areas, func(a Area) Decision { return j.siteOf(a, record).decide() })
}

func (s Site) decide() Decision {
	d := Decision{Area: s.Area, Site: s, Conditions: s.conditions(), Target: s.target()}
	d.Findings = lists.Each(Catalog(), func(c evidence.Check[Site]) evidence.Finding { return c.Find(s) })
	d.Verdict, d.Why = evidence.Fold(d.Findings)
	if d.Verdict == evidence.Go {
		d.GoodUntil, d.ReRead = s.GoodUntil()
	}
	d.Holes = s.holeCount()
	if s.Wood.NoFlooring == "" {
		for _, lot := range s.Wood.Lots() {
			d.SetAside += lot.SetAside
		}
	}
	d.Waivers, d.Signatures = s.waivers(d), s.signatures()
	d.Discarded, d.Corrections = s.discarded(), s.corrections()
	hint := hints.Area{
		ID: s.Area.ID, Size: s.Area.Size, Readings: s.Readings, Air: s.Job.Air, Points: s.record.points, Outcome: d.Outcome,
	}
	d.Questions, d.Advice, d.Items = hint.Questions(), hint.Meters(), s.items(d)
	d.Looks = append(slices.Clone(d.Questions), hint.Looks()...)
	d.Unused = slices.Concat(s.Slab.Unused(), s.Room.Unused(), s.Wood.Unused())
	return d
}

// target is nil for a flooring that is not wood, and for a service climate
// that does not say enough.
func (s Site) target() *Target {
	t := acclimate.TargetOf(s.Room.Service)
	if !s.System.WoodFlooring() || t.Lack != "" {
		return nil
	}
	return &Target{Low: t.Low.Value.Fixed(1), High: t.High.Value.Fixed(1), Mid: t.Written()}
}

func (s Site) holeCount() HoleCount {
	n := HoleCount{Discarded: len(s.Slab.DiscardedHoles())}
	if s.Slab.NoHoles == "" {
		n.Asked = slab.HolesNeeded(s.Slab.Sizes...).Value.Ceil()
		n.Judged = len(s.Slab.JudgedHoles())
	}
	return n
}

// Correction is one judged meter reading beside its corrected value.
type Correction struct {
	Piece          string
	Raw, Corrected string // % MC
	How            string
	Cite           evidence.Cite
	Place          evidence.Place
}

// corrections are the judged readings of wood that were corrected.
func (s Site) corrections() []Correction {
	var all []Correction
	add := func(what string, things []evidence.Judged[wood.Row]) {
		for _, thing := range things {
			for _, r := range thing.Rows {
				if m := r.Moisture(); m.How != "" {
					all = append(all, Correction{
						what + " " + thing.Name, r.Reading.Written, m.Written, m.How, m.Cite,
						r.Place,
					})
				}
			}
		}
	}
	if s.Wood.NoFlooring == "" {
		for _, lot := range s.Wood.Lots() {
			add("board", lot.Boards)
		}
	}
	if s.Wood.NoSubfloor == "" {
		add("subfloor piece", s.Wood.Pieces(wood.OfSubfloor))
	}
	if s.Wood.NoBelow == "" {
		add("joist", s.Wood.Pieces(wood.OfJoist))
	}
	return all
}

// discarded are the holes out of use, each with its words and its highest
// reading.
func (s Site) discarded() []string {
	var all []string
	for _, hole := range s.Slab.Discards() {
		var reads []string
		for _, h := range hole.Highest {
			if h.RH.Shown() {
				reads = append(reads, ", read "+h.RH.String()+" at "+cmp.Or(h.ReadAt.Written, "an unknown time"))
			}
		}
		slices.Sort(reads)
		all = append(all, "hole "+hole.Name+" ("+strings.Join(hole.Words, ", ")+")"+strings.Join(reads, ""))
	}
	return all
}

// Change is what is different where an area is judged again. Each part may be
// nil; a row of which false is said is left out.
type Change struct {
	Job  func(*Job)
	Hole func(slab.Hole) (slab.Hole, bool)
	Dish func(slab.Dish) (slab.Dish, bool)
	PH   func(slab.PH) (slab.PH, bool)
	CM   func(slab.Carbide) (slab.Carbide, bool)
	Wood func(wood.Row) (wood.Row, bool)
}

// Again is the same area with other rows or under other rules. The site itself
// stays as it is.
func (s Site) Again(c Change) Site {
	job, record := s.Job, *s.record
	keys := lists.Each(record.zone(s.Area), func(part Area) string { return evidence.Key(part.ID) })
	if c.Hole != nil {
		record.probes = changed(record.probes, probesOf(record.holes, keys), c.Hole)
		record.used = instruments.UsedIn(record.probes, job.Instruments)
		record.holes = changed(record.holes, keys, c.Hole)
	}
	record.dishes, record.phs = changed(record.dishes, keys, c.Dish), changed(record.phs, keys, c.PH)
	record.carbides, record.wood = changed(record.carbides, keys, c.CM), changed(record.wood, keys[:1], c.Wood)
	if c.Job != nil {
		c.Job(&job)
	}
	return job.siteOf(s.Area, &record)
}

// probesOf are the keys of the instruments in the holes of some areas.
func probesOf(holes map[string][]slab.Hole, areas []string) []string {
	used := map[string]bool{}
	for _, key := range areas {
		for _, h := range holes[key] {
			used[evidence.Key(h.Instrument)] = true
		}
	}
	return slices.Collect(maps.Keys(used))
}

// changed are the rows under some keys after a change; those under others are
// not looked at again.
func changed[T any](groups map[string][]T, keys []string, change func(T) (T, bool)) map[string][]T {
	if change == nil {
		return groups
	}
	all := map[string][]T{}
	for _, key := range keys {
		rows := make([]T, 0, len(groups[key]))
		for _, r := range groups[key] {
			if r, stays := change(r); stays {
				rows = append(rows, r)
			}
		}
		all[key] = rows
	}
	return all
}

// Find is the answers to some checks, in the order of the catalog.
func (s Site) Find(ids []string) []evidence.Finding {
	asked := lists.Where(Catalog(), func(c evidence.Check[Site]) bool { return slices.Contains(ids, c.ID) })
	return lists.Each(asked, func(c evidence.Check[Site]) evidence.Finding { return c.Find(s) })
}

// Whole is the verdict of the whole catalog. Nothing is asked beyond the first
// check that stops the area.
func (s Site) Whole() evidence.Verdict {
	var all []evidence.Finding
	for _, c := range Catalog() {
		f := c.Find(s)
		if f.Blocks() {
			return evidence.NoGo
		}
		all = append(all, f)
	}
	v, _ := evidence.Fold(all)
	return v
}

// As is the decision on the same area, described otherwise.
func (d Decision) As(a Area) Decision {
	return d.Site.Job.siteOf(a, d.Site.record).decide()
}
