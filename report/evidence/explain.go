package evidence

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
)

// Explain tells how a finding came about, line by line: what was asked, its
// source, the cells and steps, the comparison, and the outcome.
func (f Finding) Explain() []string {
	lines := []string{f.ID + ": " + f.Asks, "source: " + f.Cite.String()}
	w, told := f.Worked, teller{}
	for _, part := range []struct {
		what string
		tree Working
	}{{"value", w.Value}, {"lowest allowed", w.Least}, {"highest allowed", w.Most}, {"room to the limit", w.Room}} {
		if part.tree.Shown() {
			lines = append(lines, told.tell(part.what+" = ", part.tree, 0)...)
		}
	}
	switch {
	case !w.Room.Shown():
		lines = append(lines, f.unworked()...)
	case w.Room.Value.Sign() < 0:
		lines = append(lines, "the room is under 0: the limit is broken")
	default:
		lines = append(lines, "the room is 0 or more: the limit is met")
	}
	if w.Unusable > 0 {
		lines = append(lines, Count(w.Unusable, "value", "values")+" cannot be used")
	}
	return append(lines, "outcome: "+f.Outcome.String(), f.Reason)
}

// mostSteps is how many figures of one step are told, and how many in a line.
const (
	mostSteps  = 60
	mostInLine = 6
)

// unworked are the figures and cells of a finding without a tree: of the windows of the air
// log, and where nothing is counted.
func (f Finding) unworked() []string {
	var lines []string
	for _, figure := range [][2]string{{"value", f.Value}, {"limit", f.Limit}} {
		if what, x := figure[0], figure[1]; x != "" {
			lines = append(lines, what+" = "+join(x, f.Unit))
		}
	}
	if f.Evidence != nil {
		lines = append(lines, "cells: "+strings.Join(placeNames(f.Evidence), ", "))
	}
	if f.Value == "" || f.Limit == "" {
		lines = append(lines, "nothing to compare")
	}
	return lines
}

// placeNames are the names of the first places, and how many more there are.
func placeNames(places []Place) []string {
	var names []string
	for i, p := range places {
		if i == mostSteps {
			return append(names, Count(len(places)-i, "more", "more"))
		}
		names = append(names, p.String())
	}
	return names
}

// teller tells trees, each step once: it keeps what it has told.
type teller map[string]bool

// tell are the lines of a tree behind a head: a step that was told before says so, and the
// highest or lowest of such steps is not taken apart again.
func (t teller) tell(head string, w Working, depth int) []string {
	line := strings.Repeat("  ", depth) + head + w.figure() + w.from()
	if len(w.Args) == 0 {
		return []string{line}
	}
	key := w.whole()
	if t[key] {
		return []string{line + ", as above"}
	}
	t[key] = true
	if w.Op == OpHighest || w.Op == OpLowest {
		unsaid := func(a Working) bool { return len(a.Args) == 0 || !t[a.whole()] }
		if !slices.ContainsFunc(w.Args, unsaid) {
			return []string{line + " of those above"}
		}
	}
	return append([]string{line}, t.steps(w, depth+1)...)
}

// whole is a tree with all that it says, by which it is known again.
func (w Working) whole() string {
	s := w.line()
	for _, a := range w.Args {
		s += "\n" + a.whole()
	}
	return s + "\n"
}

// steps are the lines of what a step works on, each deeper by one.
func (t teller) steps(w Working, depth int) []string {
	var lines []string
	for i, a := range w.Args {
		if i == mostSteps {
			return append(lines, strings.Repeat("  ", depth)+Count(len(w.Args)-i, "more", "more"))
		}
		lines = append(lines, t.tell(a.head(), a, depth)...)
	}
	return lines
}

// head leads a figure by its name, where it has one.
func (w Working) head() string {
	if w.Label == "" {
		return ""
	}
	return w.Label + ": "
}

// line is one figure with its name and where it is from.
func (w Working) line() string { return w.head() + w.figure() + w.from() }

// from is the cell that a figure was typed in, or the step that gives it.
func (w Working) from() string {
	if w.Place != nil {
		return ", " + w.Place.String()
	}
	if w.Op == OpStated || w.Op == OpTyped || w.Op == OpMoment {
		return ""
	}
	return ", " + w.step()
}

// figure is the value with its unit; of a moment its day and hour.
func (w Working) figure() string {
	if w.Op == OpMoment {
		return clock(w.Value)
	}
	const exact = 4 // places of a figure that is told whole
	switch {
	case w.Value.Round(exact).Equal(w.Value):
		return join(w.Value.Text(), w.Unit)
	case w.Op == OpStated: // what others are worked out with
		return join(trim(w.Value.Fixed(shownPlaces)), w.Unit)
	}
	return join(w.Value.Short(), w.Unit)
}

func clock(hours Exact) string {
	at := time.Unix(int64(hours.Mul(Whole(3600)).Float()), 0).UTC()
	if at.Hour() == 0 && at.Minute() == 0 && at.Second() == 0 {
		return at.Format(time.DateOnly)
	}
	return strings.TrimSuffix(at.Format(time.DateTime), ":00")
}

// step says what a step does with the figures below it.
func (w Working) step() string {
	switch w.Op {
	case OpSum:
		return "the sum"
	case OpLess:
		return "the first less the second"
	case OpTimes:
		return "the first times the second"
	case OpOver:
		return "the first over the second"
	case OpUnsigned:
		return "without its sign"
	case OpRound:
		return "rounded to " + Count(w.Places, "place", "places") + ", half to even"
	case OpUp:
		return "up to the next whole number"
	case OpCount:
		return "how many there are"
	case OpInside:
		return "how many from the third on lie from the first to the second"
	case OpNearest:
		return "of the values, each with its room, the one with the least"
	case OpHours:
		return "hours from the first to the second"
	case OpDays:
		return "days of the calendar from the first to the second"
	case OpConvert:
		return "in " + string(w.Unit)
	case OpEMC, OpDewPoint:
		return "the " + string(w.Op) + " by " + w.Op.Cite().String()
	}
	return "the " + string(w.Op)
}

// String is the working of a finding in one line, empty where there is none.
func (w Worked) String() string {
	if !w.Value.Shown() {
		return ""
	}
	s := w.Value.words()
	for _, end := range []struct {
		word string
		tree Working
	}{{"at least", w.Least}, {"at most", w.Most}} {
		if end.tree.Shown() {
			s += "; " + end.word + " " + end.tree.words()
		}
	}
	if w.Unusable > 0 {
		s += "; " + Count(w.Unusable, "value", "values") + " unusable"
	}
	return s
}

// words are a tree in one line, with the first few figures of a long step.
func (w Working) words() string {
	if len(w.Args) == 0 {
		s := strings.TrimSpace(w.Label + " " + w.figure())
		if w.Place != nil {
			s += " [" + w.Place.String() + "]"
		}
		return s
	}
	var args []string
	for i, a := range w.Args {
		if i == mostInLine {
			args = append(args, strconv.Itoa(len(w.Args)-i)+" more")
			break
		}
		args = append(args, a.words())
	}
	return fmt.Sprintf("%s(%s) = %s", w.Op, strings.Join(args, "; "), w.figure())
}
