package gather

import (
	"fmt"

	"firstboard/report/evidence"
)

// words is what was gathered in one sentence.
func (g Gathered) words() string {
	s := evidence.Count(g.Records, "record", "records")
	if n := len(g.Unread); n > 0 {
		s += fmt.Sprintf(", %d not gathered (see Not read)", n)
	}
	if g.Latest != "" {
		s += "; the latest reading of all is of " + string(g.Latest)
	}
	return s
}

// Says is the verdicts in one sentence.
func (g Gathered) Says() string {
	c := g.Total()
	s := fmt.Sprintf("%s, %s: %d GO, %d NO-GO", evidence.Count(g.Records, "record", "records"),
		evidence.Count(c.Areas, "area", "areas"), c.Go, c.Areas-c.Go)
	if c.Areas > c.Go {
		s += fmt.Sprintf(" (%d over a limit, %d not proven", c.Over, c.Unproven)
		if c.Waived > 0 {
			s += fmt.Sprintf("; %d under waiver", c.Waived)
		}
		s += ")"
	}
	return s
}
