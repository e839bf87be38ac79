package report

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
)

// waivers are the blocking checks of a decision that somebody signed away,
// with what speaks against each signature. A waiver changes no verdict.
func (s Site) waivers(d Decision) []Waiver {
	var waivers []Waiver
	for _, sign := range s.record.signOffs[evidence.Key(s.Area.ID)] {
		if sign.Decision != "waive" {
			continue
		}
		for _, f := range d.Findings {
			if f.Blocks() && slices.Contains(sign.Waives, f.ID) {
				w := Waiver{Check: f.ID, Role: sign.Role, Name: sign.Name, Place: sign.Place}
				w.Owner, w.Doubts = s.owned(f), s.doubts(sign, f)
				waivers = append(waivers, w)
			}
		}
	}
	return waivers
}

// owned says in words whose limit a finding broke.
func (s Site) owned(f evidence.Finding) string {
	return lists.If(s.ownerOf(f.Whose) == "", "the limit is no product's: "+f.Cite.Source, "the limit is that of "+f.Whose)
}

func (s Site) doubts(sign SignOff, f evidence.Finding) []string {
	doubts := []string{}
	if owner := s.ownerOf(f.Whose); owner != "" && owner != sign.Role {
		doubts = append(doubts, "not signed by the "+owner+", who alone can waive it")
	}
	if last := s.lastReading(); !sign.At.Shown() || last.After(sign.At) {
		doubts = append(doubts, "not signed after the last judged reading, "+last.Written)
	}
	return doubts
}

// ownerOf is the role whose limit a product's limit is.
func (s Site) ownerOf(product string) string {
	switch {
	case product == "":
		return ""
	case evidence.Same(product, s.Area.Flooring):
		return "flooring manufacturer"
	case evidence.Same(product, s.Area.Adhesive):
		return "adhesive manufacturer"
	}
	return "membrane manufacturer"
}

// lastReading is the time of the last judged reading of the area.
func (s Site) lastReading() evidence.Time {
	return evidence.Last(s.Rows, func(e instruments.Row) evidence.Time { return e.At })
}

// UnderWaiver says whether every blocking check of the decision is waived.
func (d Decision) UnderWaiver() bool {
	blocking, waived := d.Blocking(), lists.Each(d.Waivers, func(w Waiver) string { return w.Check })
	return len(blocking) > 0 && len(lists.Among(blocking, waived)) == len(blocking)
}

// Says is the verdict with its reason in words.
func (d Decision) Says() string {
	switch {
	case d.Verdict == evidence.Go:
		return string(d.Verdict)
	case d.UnderWaiver():
		return string(d.Verdict) + ", installed under waiver"
	}
	return string(d.Verdict) + ", " + d.Why
}

// Tally is how many of the decisions are GO, in words.
func Tally(all []Decision) string {
	good := lists.Where(all, func(d Decision) bool { return d.Verdict == evidence.Go })
	return fmt.Sprintf("%d of %s GO", len(good), evidence.Count(len(all), "area", "areas"))
}

// Signature is a sign-off under an area's decision, with what speaks against
// it. It never changes a verdict.
type Signature struct {
	SignOff
	Doubts []string
}

// signatures are the sign-offs of an area.
func (s Site) signatures() []Signature {
	last := s.lastReading()
	var all []Signature
	for _, o := range s.record.signOffs[evidence.Key(s.Area.ID)] {
		sign := Signature{SignOff: o}
		switch {
		case !o.At.Shown():
			sign.Doubts = append(sign.Doubts, "without a time")
		case last.After(o.At):
			sign.Doubts = append(sign.Doubts, "signed before the last judged reading, "+last.Written)
		}
		all = append(all, sign)
	}
	return all
}
