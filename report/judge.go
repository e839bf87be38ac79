package report

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/hints"
	"firstboard/report/lists"
	"firstboard/slab"
)

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
