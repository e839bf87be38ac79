package outlook_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/outlook"
	"firstboard/report/record"
	"firstboard/slab"
	"firstboard/wood"
)

func bases(t *testing.T, folders ...string) []report.Job {
	t.Helper()
	var jobs []report.Job
	for _, folder := range folders {
		rec, err := record.Read("../../testdata/script/base/" + folder)
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, rec.Job)
	}
	return jobs
}

func copied(j report.Job) report.Job {
	j.Holes, j.Wood, j.Dishes, j.PHs = slices.Clone(j.Holes), slices.Clone(j.Wood), slices.Clone(j.Dishes), slices.Clone(j.PHs)
	j.Carbides, j.Air, j.Areas = slices.Clone(j.Carbides), slices.Clone(j.Air), slices.Clone(j.Areas)
	j.Products = slices.Clone(j.Products)
	return j
}

// part is one hole, dish, spot, piece or board, and whether a row is of it.
type part struct {
	one, many, lot, name string
	left                 bool // is left out in turn
}

func (p part) hole(h slab.Hole) bool { return p.one == "hole" && evidence.Same(h.Hole, p.name) }
func (p part) dish(d slab.Dish) bool { return p.one == "dish" && evidence.Same(d.Dish, p.name) }
func (p part) ph(r slab.PH) bool     { return p.one == "pH spot" && evidence.Same(r.Spot, p.name) }
func (p part) cm(r slab.Carbide) bool {
	return p.one == "carbide spot" && evidence.Same(r.Spot, p.name)
}

func (p part) timber(r wood.Row) bool {
	of := map[string]string{"board": wood.OfFlooring, "subfloor piece": wood.OfSubfloor}[p.one]
	return r.Of == of && evidence.Same(r.Piece, p.name) && evidence.Same(r.Lot, p.lot)
}

// parts are the things of a job of one area, each once.
func parts(j report.Job) []part {
	var all []part
	add := func(p part) {
		if !slices.Contains(all, p) {
			all = append(all, p)
		}
	}
	for _, h := range j.Holes {
		if h.Discarded == "" {
			add(part{"hole", "holes", "", h.Hole, true})
		}
	}
	for _, d := range j.Dishes {
		add(part{"dish", "dishes", "", d.Dish, true})
	}
	for _, r := range j.PHs {
		add(part{"pH spot", "pH spots", "", r.Spot, false})
	}
	for _, r := range j.Carbides {
		add(part{"carbide spot", "carbide spots", "", r.Spot, false})
	}
	for _, of := range []string{wood.OfSubfloor, wood.OfFlooring} {
		for _, r := range j.Wood {
			switch {
			case r.Of == of && of == wood.OfSubfloor:
				add(part{"subfloor piece", "subfloor pieces", "", r.Piece, true})
			case r.Of == of:
				add(part{"board", "boards", r.Lot, r.Piece, true})
			}
		}
	}
	for i, p := range all {
		alone := !slices.ContainsFunc(all, func(q part) bool { return q != p && q.one == p.one })
		all[i].left = p.left && !alone
	}
	return all
}

func (p part) without(j report.Job) report.Job {
	j = copied(j)
	j.Holes, j.Dishes = slices.DeleteFunc(j.Holes, p.hole), slices.DeleteFunc(j.Dishes, p.dish)
	j.Wood = slices.DeleteFunc(j.Wood, p.timber)
	return j
}

// moved takes the readings of a thing to an end of their uncertainty.
func (p part) moved(j report.Job, by int) report.Job {
	j = copied(j)
	to := func(hit bool, r *evidence.Reading, u *evidence.Uncertainty) {
		if hit && r.Shown() && u.Known {
			place := r.Place
			*r = evidence.Computed(r.Value.Add(u.Value.Decimal().Mul(decimal.NewFromInt(int64(by)))), r.Unit)
			r.Place = place
		}
	}
	for i := range j.Holes {
		to(p.hole(j.Holes[i]), &j.Holes[i].RH, j.Instruments.U(j.Holes[i].Instrument, evidence.RH))
	}
	for i := range j.Dishes {
		to(p.dish(j.Dishes[i]), &j.Dishes[i].End, j.Instruments.U(j.Dishes[i].Instrument, evidence.Gram))
	}
	for i := range j.PHs {
		to(p.ph(j.PHs[i]), &j.PHs[i].PH, j.Instruments.U(j.PHs[i].Instrument, evidence.PH))
	}
	for i := range j.Carbides {
		to(p.cm(j.Carbides[i]), &j.Carbides[i].CM, j.Instruments.U(j.Carbides[i].Instrument, evidence.CM))
	}
	for i := range j.Wood {
		to(p.timber(j.Wood[i]), &j.Wood[i].Reading, j.Instruments.UAs(j.Wood[i].Instrument, evidence.MC, j.Wood[i].MeterKind()))
	}
	return j
}

// counts are the checks that stay as they are where a reading is left out; sums
// are those in which a reading that moves does not count by itself.
func counts() []string {
	return []string{"slab-holes", "slab-edge", "mver-dishes", "subfloor-count", "flooring-count"}
}

func sums() []string { return []string{"flooring-target", "flooring-spread", "wood-difference"} }

// judgedWith is the verdict on the first area of a job with the findings of some
// checks as they were.
func judgedWith(j report.Job, was report.Decision, stay []string) (evidence.Verdict, []evidence.Finding) {
	found := slices.Clone(report.Judge(j)[0].Findings)
	for i, f := range found {
		if slices.Contains(stay, f.ID) {
			found[i] = was.Findings[i]
		}
	}
	v, _ := evidence.Fold(found)
	return v, found
}

// byForce is what a verdict turns on, found by judging the whole job anew under
// every alternative.
func byForce(j report.Job, d report.Decision) []string {
	type group struct{ one, many, lot string }
	var order []group
	named := map[group][]string{}
	for _, p := range parts(j) {
		turns := false
		if p.left {
			v, _ := judgedWith(p.without(j), d, counts())
			turns = v != d.Verdict
		}
		for _, by := range []int{-1, 1} {
			if j.Guarded {
				break
			}
			v, found := judgedWith(p.moved(j, by), d, append(counts(), sums()...))
			over := slices.ContainsFunc(found, func(f evidence.Finding) bool { return f.Blocks() && f.Outcome == evidence.NotMet })
			turns = turns || d.Verdict == evidence.Go && over || d.Verdict == evidence.NoGo && v == evidence.Go
		}
		if g := (group{p.one, p.many, p.lot}); turns {
			if named[g] == nil {
				order = append(order, g)
			}
			named[g] = append(named[g], p.name)
		}
	}
	on := []string{}
	for _, g := range order {
		names, called := named[g], g.one
		slices.SortFunc(names, evidence.Order)
		if len(names) > 1 {
			called = g.many
		}
		called += " " + evidence.List(names)
		if g.lot != "" {
			called += " of lot " + g.lot
		}
		on = append(on, called)
	}
	other := copied(j)
	other.Guarded = !j.Guarded
	if report.Judge(other)[0].Verdict != d.Verdict {
		on = append(on, map[bool]string{false: "simple acceptance", true: "guarded acceptance"}[j.Guarded])
	}
	other = copied(j)
	other.Settings.ProbeWait = evidence.Typed("72", evidence.Hour)
	if len(j.Holes) > 0 && report.Judge(other)[0].Verdict != d.Verdict {
		on = append(on, "24 h probe wait")
	}
	return on
}

// What a verdict turns on is what judging everything anew finds. One record in
// three is judged, for each is judged a hundred times.
func TestHoldsIsWhatJudgingAnewFinds(t *testing.T) {
	t.Parallel()
	from := bases(t, "heated-slab", "slab-glue-down-wood", "slab-resilient", "wood-crawl", "wood-over-slab")
	turned := map[evidence.Verdict]int{}
	rapid.Check(t, func(t *rapid.T) {
		if rapid.IntRange(0, 2).Draw(t, "judged") > 0 {
			return
		}
		j := shaken(t, from)
		d := report.Judge(j)[0]
		got, want := outlook.Holds(d), byForce(j, d)
		if !slices.Equal(got.TurnsOn, want) || got.Holds != (len(want) == 0) {
			for _, f := range d.Findings {
				if f.Blocks() {
					t.Logf("%s %s: %s", f.ID, f.Outcome, f.Reason)
				}
			}
			t.Fatalf("%s: turns on %q, judged anew on %q", d.Says(), got.TurnsOn, want)
		}
		if !got.Holds {
			turned[d.Verdict]++
		}
	})
	if both := turned[evidence.Go] > 0 && turned[evidence.NoGo] > 0; !both && !testing.Short() {
		t.Errorf("verdicts that turned: %v", turned)
	}
}

// one is the first area of a base, judged after a change.
func one(t *testing.T, folder string, change func(j *report.Job)) report.Decision {
	t.Helper()
	j := copied(bases(t, folder)[0])
	change(&j)
	return report.Judge(j)[0]
}

// What these areas hang on is plain.
func TestWhatAreasHangOn(t *testing.T) {
	t.Parallel()
	rh := func(j *report.Job, of ...string) {
		for i, text := range of {
			place := j.Holes[i].RH.Place
			j.Holes[i].RH = evidence.Typed(text, evidence.RH)
			j.Holes[i].RH.Place = place
		}
	}
	limit := func(j *report.Job, of string) {
		for i := range j.Products {
			if j.Products[i].SlabRH.Number.Shown() {
				j.Products[i].SlabRH.Number = evidence.Typed(of, evidence.RH)
			}
		}
	}
	for _, c := range []struct {
		name    string
		verdict evidence.Verdict
		change  func(j *report.Job)
		on      []string // of holes and rules of their reading
	}{
		{"no hole is within 2 % of the limit", evidence.Go, func(j *report.Job) { limit(j, "85"); rh(j, "70", "71", "72") }, nil},
		{
			"one hole is within 2 % of the limit", evidence.Go, func(j *report.Job) { limit(j, "85"); rh(j, "70", "84", "72") },
			[]string{"hole H2"},
		},
		{"one hole is just 2 % under the limit", evidence.Go, func(j *report.Job) { limit(j, "85"); rh(j, "70", "83", "72") }, nil},
		{"one hole is over the limit", evidence.NoGo, func(j *report.Job) { limit(j, "85"); rh(j, "70", "95", "72") }, []string{"hole H2"}},
		{"two holes are over the limit", evidence.NoGo, func(j *report.Job) { limit(j, "85"); rh(j, "70", "95", "95") }, nil},
		{"one hole is over it, and there is no air log", evidence.NoGo, func(j *report.Job) {
			limit(j, "85")
			rh(j, "70", "95", "72")
			j.Air = nil
		}, nil},
	} {
		d := one(t, "slab-glue-down-wood", c.change)
		if d.Verdict != c.verdict {
			t.Errorf("%s: %s: %v", c.name, d.Says(), d.Blocking())
		}
		var on []string
		for _, x := range outlook.Holds(d).TurnsOn {
			if strings.HasPrefix(x, "hole") {
				on = append(on, x)
			}
		}
		if !slices.Equal(on, c.on) {
			t.Errorf("%s: %q, want %q", c.name, on, c.on)
		}
	}
}

// A reading 2 days after sealing passes after 24 h and not after 72 h, and its
// GO turns on the edition that asks for 24 h.
func TestTheWaitThatAnAreaHangsOn(t *testing.T) {
	t.Parallel()
	for hours, on := range map[int]bool{48: true, 71: true, 72: false, 96: false} {
		d := one(t, "slab-glue-down-wood", func(j *report.Job) {
			for i := range j.Holes {
				j.Holes[i].SealedAt = j.Holes[i].ReadAt
				later(&j.Holes[i].SealedAt, -time.Duration(hours)*time.Hour)
			}
		})
		if got := slices.Contains(outlook.Holds(d).TurnsOn, "24 h probe wait"); got != on || d.Verdict != evidence.Go {
			t.Errorf("read after %d h: %s, turns on the wait: %t", hours, d.Says(), got)
		}
	}
}
