package instruments

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Comparison is one comparison of an instrument with a standard.
type Comparison struct {
	Instrument     string
	CheckedAt      evidence.Time
	Standard       string
	Expected, Read evidence.Reading
	By             string
	Place          evidence.Place
}

// Comparisons are those of one instrument, as the record has them and in the order
// of their times, those without a time first.
type Comparisons struct {
	typed   []Comparison
	timed   []Comparison
	rank    []int           // where each of timed stands in typed
	ofProbe []evidence.Item // what each of timed weighs as the check of a probe
	off     []int           // how many before each, and of all, break its tolerance
	onBlock []Comparison    // those of timed that agree as a moisture meter's on its block
}

// ComparisonsOf are comparisons by the key of their instrument.
func ComparisonsOf(all []Comparison) map[string]Comparisons {
	groups := map[string]Comparisons{}
	for key, some := range evidence.ByKey(all, func(c Comparison) string { return c.Instrument }) {
		groups[key] = comparisons(some)
	}
	return groups
}

func comparisons(typed []Comparison) Comparisons {
	cs := Comparisons{typed: typed, off: []int{0}}
	for i := range typed {
		cs.rank = append(cs.rank, i)
	}
	slices.SortStableFunc(cs.rank, func(i, j int) int {
		return typed[i].CheckedAt.First.Compare(typed[j].CheckedAt.First)
	})
	block := tolerance{most: evidence.Bound{Number: woodOff()}}
	for i, rank := range cs.rank {
		c := typed[rank]
		it, off := c.ofProbe(), cs.off[i]
		if it.Breaks(evidence.Acceptance{}) {
			off++
		}
		cs.timed, cs.ofProbe, cs.off = append(cs.timed, c), append(cs.ofProbe, it), append(cs.off, off)
		if c.CheckedAt.Shown() && c.whole() && c.off(block).Meets(evidence.Acceptance{}) {
			cs.onBlock = append(cs.onBlock, c)
		}
	}
	return cs
}

// before is how many comparisons come before a time, those without one included.
func before(cs []Comparison, t time.Time) int {
	n, _ := slices.BinarySearchFunc(cs, t, func(c Comparison, t time.Time) int { return c.CheckedAt.First.Compare(t) })
	return n
}

// untimed is how many of them have no time.
func (cs Comparisons) untimed() int { return before(cs.timed, time.Time{}.Add(1)) }

// lastBefore is the time of the last one before a time; blank where there is none.
func (cs Comparisons) lastBefore(t time.Time) evidence.Time {
	n := before(cs.timed, t)
	if n == 0 {
		return evidence.Time{}
	}
	last := cs.timed[n-1].CheckedAt
	return cs.timed[before(cs.timed, last.First)].CheckedAt // the first of those at one time
}

// Last is the time of the latest; blank where none has one.
func (cs Comparisons) Last() evidence.Time {
	if len(cs.timed) == 0 {
		return evidence.Time{}
	}
	return cs.lastBefore(cs.timed[len(cs.timed)-1].CheckedAt.First.Add(1))
}

// Begun says whether a row stands ready for one: without a time, and without what
// was read.
func (cs Comparisons) Begun() bool {
	return slices.ContainsFunc(cs.timed[:cs.untimed()], func(c Comparison) bool { return !c.Read.Shown() })
}

// whole says whether a comparison has both its values.
func (c Comparison) whole() bool { return c.Expected.Shown() && c.Read.Shown() }

// title is what a check is called in a sentence.
func (c Comparison) title() string {
	return "check of " + c.Instrument + " at " + c.CheckedAt.Written
}

func (c Comparison) lacks(what string) evidence.Item {
	name := lists.If(c.CheckedAt.Shown(), c.title(), "a check of "+c.Instrument)
	return evidence.Item{Name: name, Lack: what, Limit: noDaysLess(), Place: c.Place}
}
