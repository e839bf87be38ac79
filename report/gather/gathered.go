package gather

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Gathered is what many records come to, in the order of their paths.
type Gathered struct {
	Records int // with an area in the rows
	Rows    []Row
	Due     []Due // by day
	Unread  []Unread
	Latest  Text // the day of the latest reading of all
}

// Join puts parts together, whatever their order: areas that stand in them
// twice count once.
func Join(parts []Part, unread []Unread) Gathered {
	parts = slices.SortedFunc(slices.Values(parts), func(a, b Part) int { return byPath(a.Record, b.Record) })
	parts, again := once(parts)
	g := Gathered{Unread: slices.Concat(unread, again)}
	for _, p := range parts {
		if len(p.Rows) > 0 {
			g.Records++
		}
		g.Rows, g.Due = append(g.Rows, p.Rows...), append(g.Due, p.Due...)
	}
	slices.SortStableFunc(g.Due, func(a, b Due) int {
		return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.What, b.What))
	})
	slices.SortStableFunc(g.Unread, func(a, b Unread) int { return byPath(a.Record, b.Record) })
	for _, r := range g.Rows {
		day, _, _ := strings.Cut(string(r.LastReading), " ")
		g.Latest = max(g.Latest, Text(day))
	}
	return g
}

// byPath orders paths as a person lists them.
func byPath(a, b string) int { return cmp.Or(evidence.Order(a, b), strings.Compare(a, b)) }

// Verdicts are how many areas have which verdict.
type Verdicts struct{ Areas, Go, Over, Unproven, Waived int }

func (c *Verdicts) add(r Row) {
	c.Areas++
	switch {
	case r.Verdict == Text(evidence.Go):
		c.Go++
	case r.Why == evidence.OverLimit:
		c.Over++
	default:
		c.Unproven++
	}
	if r.UnderWaiver {
		c.Waived++
	}
}

// Total counts all areas.
func (g Gathered) Total() Verdicts {
	var c Verdicts
	for _, r := range g.Rows {
		c.add(r)
	}
	return c
}

// Reason is one check that stops areas: how many, of how many it is over a
// limit, and how many of them have it waived.
type Reason struct {
	Check, Asks         string
	Areas, Over, Waived int
}

// Reasons are the checks that stop areas, the one that stops most first, then
// in the order of the catalog.
func (g Gathered) Reasons() []Reason {
	stopped, over, waived := map[Text]int{}, map[Text]int{}, map[Text]int{}
	for _, r := range g.Rows {
		tally(stopped, r.Blocking)
		tally(over, r.Over)
		tally(waived, r.Waived)
	}
	var all []Reason
	for _, rule := range report.Rules() {
		if id := Text(rule.ID); stopped[id] > 0 {
			all = append(all, Reason{rule.ID, rule.Asks, stopped[id], over[id], waived[id]})
		}
	}
	slices.SortStableFunc(all, func(a, b Reason) int { return b.Areas - a.Areas })
	return all
}

func tally(counts map[Text]int, ids []Text) {
	for _, id := range ids {
		counts[id]++
	}
}

// InstallDay counts the areas that are to be installed on a day, blank where none is
// recorded.
type InstallDay struct {
	On Text
	Verdicts
}

// Days are the days of installing in their order, the areas without one last.
func (g Gathered) Days() []InstallDay {
	counts := map[Text]*Verdicts{}
	for _, r := range g.Rows {
		if counts[r.InstallOn] == nil {
			counts[r.InstallOn] = &Verdicts{}
		}
		counts[r.InstallOn].add(r)
	}
	var all []InstallDay
	for on, c := range counts {
		all = append(all, InstallDay{on, *c})
	}
	slices.SortFunc(all, func(a, b InstallDay) int {
		if (a.On == "") != (b.On == "") {
			return strings.Compare(string(b.On), string(a.On))
		}
		return strings.Compare(string(a.On), string(b.On))
	})
	return all
}

// Falls is all of one kind that falls due on one day.
type Falls struct {
	On, What Text
	Things   int
	Areas    int    // each once
	Where    string // the first of them
}

// FallsDue is what falls due by day and kind.
func (g Gathered) FallsDue() []Falls {
	const named = 3
	var all []Falls
	seen := map[[2]Text]bool{} // areas of the last of them
	for _, d := range g.Due {
		n := len(all)
		if n == 0 || all[n-1].On != d.On || all[n-1].What != d.What {
			all = append(all, Falls{On: d.On, What: d.What})
			clear(seen)
			n++
		}
		f := &all[n-1]
		if f.Things++; f.Things <= named {
			f.Where = strings.TrimPrefix(f.Where+"; "+d.where(), "; ")
		}
		for _, area := range d.Areas {
			seen[[2]Text{d.Record, area}] = true
		}
		f.Areas = len(seen)
	}
	for i, f := range all {
		if f.Things > named {
			all[i].Where += "; and " + evidence.Count(f.Things-named, "more", "more")
		}
	}
	return all
}

// where says of what and which areas a thing is.
func (d Due) where() string {
	areas := string(d.Record) + " " + evidence.List(plain(d.Areas))
	if d.What == dueCalibration || d.What == dueProbe {
		return string(d.Of) + " (" + areas + ")"
	}
	return areas
}

// words is what was gathered in one sentence.
func (g Gathered) words() string {
	unread := fmt.Sprintf(", %d not gathered (see Not read)", len(g.Unread))
	return evidence.Count(g.Records, "record", "records") + lists.If(len(g.Unread) > 0, unread, "") +
		lists.If(g.Latest != "", "; the latest reading of all is of "+string(g.Latest), "")
}

// Says is the verdicts in one sentence.
func (g Gathered) Says() string {
	c := g.Total()
	s := fmt.Sprintf("%s, %s: %d GO, %d NO-GO", evidence.Count(g.Records, "record", "records"),
		evidence.Count(c.Areas, "area", "areas"), c.Go, c.Areas-c.Go)
	if c.Areas > c.Go {
		waived := lists.If(c.Waived > 0, fmt.Sprintf("; %d under waiver", c.Waived), "")
		s += fmt.Sprintf(" (%d over a limit, %d not proven%s)", c.Over, c.Unproven, waived)
	}
	return s
}
