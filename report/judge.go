package report

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// Judge decides every area of a job, each by itself.
func Judge(j Job) []Decision {
	var decisions []Decision
	for _, a := range j.Areas {
		decisions = append(decisions, j.site(a).decide())
	}
	return decisions
}

func (s Site) decide() Decision {
	d := Decision{Area: s.Area, Conditions: s.conditions(), Target: s.target()}
	for _, c := range Catalogue() {
		d.Findings = append(d.Findings, c.Find(s))
	}
	d.Verdict, d.Why = evidence.Fold(d.Findings)
	if d.Verdict == evidence.Go {
		d.GoodUntil, d.ReRead = s.goodUntil()
	}
	d.Holes = s.holeCount()
	if s.Wood.NoFlooring == "" {
		for _, lot := range s.Wood.Lots() {
			d.SetAside += lot.SetAside
		}
	}
	d.Waivers, d.Signatures = s.waivers(d), s.signatures()
	d.Discarded, d.Corrections = s.discarded(), s.corrections()
	d.Advice, d.Looks, d.Items = s.meterAdvice(d), s.worthALook(), s.items(d)
	d.Missing = s.missing(d)
	return d
}

// target is nil for a covering that is not wood, and for a service climate
// that does not say enough.
func (s Site) target() *Target {
	t := acclimate.TargetOf(s.Room.Service)
	if !s.stack.isWood() || t.Lack != "" {
		return nil
	}
	return &Target{Low: t.Low.StringFixed(1), High: t.High.StringFixed(1), Mid: evidence.Of(t.Mid).Text()}
}

func (s Site) holeCount() HoleCount {
	n := HoleCount{Discarded: len(s.Slab.DiscardedHoles())}
	if s.Slab.NoHoles == "" {
		n.Asked, _ = s.Slab.HolesAsked()
		n.Judged = len(s.Slab.JudgedHoles())
	}
	return n
}
