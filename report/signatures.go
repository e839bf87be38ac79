package report

import "firstboard/report/evidence"

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
