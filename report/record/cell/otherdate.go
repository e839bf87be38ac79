package cell

import (
	"slices"
	"strings"
	"time"
)

// meantClock is what a date or a time that is written another way may mean, as a
// record writes it, with or without its time of day: two answers where month and
// day may stand either way round, none where nobody can tell.
func meantClock(text string, withTime bool) string {
	text = strings.Join(strings.Fields(strings.NewReplacer(",", " ", "T", " ").Replace(text)), " ")
	var all []string
	for _, order := range []string{
		"January 2 2006", "Jan 2 2006", "2 January 2006", "2 Jan 2006", "2-Jan-2006", "2006/1/2", "2006.1.2",
		"2006-1-2",
		"1/2/2006", "2/1/2006", "1/2/06", "2/1/06", "1-2-2006", "2-1-2006", "2.1.2006", "2.1.06",
	} {
		if written := inOrder(text, order, withTime); written != "" && (len(all) == 0 || all[len(all)-1] != written) {
			all = append(all, written)
		}
	}
	return strings.Join(all, " or ")
}

// inOrder reads a text whose date has that order, empty where it has not.
func inOrder(text, order string, withTime bool) string {
	clocks, written := []string{""}, time.DateOnly
	if withTime {
		clocks, written = []string{" 15:04", " 15:04:05", " 3:04 PM", " 3:04:05 PM", " 3:04PM"}, Minute
	}
	if part := strings.IndexAny(order, " -/."); !strings.Contains(text, order[part:part+1]) {
		return ""
	}
	upper := strings.ToUpper(text)
	for _, clock := range clocks {
		if strings.HasSuffix(clock, "M") != strings.HasSuffix(upper, "M") {
			continue
		}
		for _, text := range slices.Compact([]string{upper, text}) {
			if t, err := time.Parse(order+clock, text); err == nil && t.Year() <= lastYear {
				return t.Format(written)
			}
		}
	}
	return ""
}
