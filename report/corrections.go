package report

import (
	"cmp"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/wood"
)

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
