package main

import (
	"fmt"
	"testing"
)

// lotOf are rows that make a lot of so many boards, some of them outside the
// spread about a target of 7.7 and some set aside, beside the rest of the
// crawl-space record.
func lotOf(boards, outside, aside int) []string {
	changes := []string{"wood:2:Set aside=", "-wood:7", "-wood:6", "-wood:5", "-wood:4", "-wood:3", "-wood:2"}
	for i := range boards {
		reading, culled := "7.7", ""
		if i < outside {
			reading = "10.02"
		}
		if i < aside {
			culled = "yes"
		}
		changes = append(changes, fmt.Sprintf("+wood:A1,flooring,B%d,L1,2026-03-03 08:00,pin,%s,red oak,,PM1,%s", i, reading, culled))
	}
	return changes
}

// At least 19 in 20 boards lie in the spread; no more than 1 in 10 is set
// aside.
func TestSharesOfALot(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		check                  string
		boards, outside, aside int
		want                   string
	}{
		{"flooring-spread", 19, 1, 0, "not met"},
		{"flooring-spread", 20, 1, 0, "met"},
		{"flooring-spread", 21, 1, 0, "met"},
		{"flooring-spread", 39, 2, 0, "not met"},
		{"flooring-spread", 40, 2, 0, "met"},
		{"flooring-spread", 21, 1, 1, "met"}, // the board outside is the one set aside
		{"flooring-count", 9, 0, 1, "not met"},
		{"flooring-count", 10, 0, 1, "met"},
		{"flooring-count", 11, 0, 1, "met"},
		{"flooring-count", 19, 0, 2, "not met"},
		{"flooring-count", 20, 0, 2, "met"},
	} {
		t.Run(fmt.Sprintf("%s %d %d %d", c.check, c.boards, c.outside, c.aside), func(t *testing.T) {
			expect(t, c.check, c.want, "wood-crawl", lotOf(c.boards, c.outside, c.aside)...)
		})
	}
}

// Where there are several lots each has 10 boards.
func TestBoardsOfEachLot(t *testing.T) {
	for boards, want := range map[int]string{9: "not met", 10: "met", 11: "met"} {
		changes := lotOf(10, 0, 0)
		for i := range boards {
			changes = append(changes, fmt.Sprintf("+wood:A1,flooring,C%d,L2,2026-03-03 08:00,pin,7.7,red oak,,PM1", i))
		}
		expect(t, "flooring-count", want, "wood-crawl", changes...)
	}
}

// The difference of two one-decimal means that is exactly 4 meets 4 for every
// pair, floats or not: 8.3 less 4.3 is not above 4.
func TestDifferenceIsExact(t *testing.T) {
	t.Parallel()
	tenths := func(n int) string { return fmt.Sprintf("%d.%d", n/10, n%10) }
	for low := 40; low < 80; low++ {
		for apart, want := range map[int]string{40: "met", 41: "not met"} {
			if apart == 41 && low%10 != 3 {
				continue // one wrong side in ten is enough
			}
			changes := join(list(anyWood), each("wood:%d:Method=oven-dry", 5, 6, 7, 8, 9, 10))
			changes = join(changes, each("wood:%d:Reading (%%)="+tenths(low), 5, 6, 7),
				each("wood:%d:Reading (%%)="+tenths(low+apart), 8, 9, 10))
			expect(t, "wood-difference", want, "wood-crawl", changes...)
		}
	}
}

// With a time zone, a clock time that came twice counts the unfavorable way:
// 01:30 on 2 November 2025 in Chicago was 06:30 and 07:30 UTC.
func TestTimesThatCameTwice(t *testing.T) {
	t.Parallel()
	zone := list("+job:Time zone,America/Chicago")
	for _, b := range []boundary{
		{
			"slab-wait", "slab-resilient", join(zone, list("slab-rh:2:Sealed at=2025-11-02 01:30")), list("slab-rh:2:Read at"),
			"2025-11-03 00:30 not met; 2025-11-03 01:29 not met; 2025-11-03 01:30 met",
		},
		// At least 60 h from the second, at most 72 h from the first.
		{
			"mver-time", "slab-resilient", join(zone, list("slab-mver:2:Set at=2025-11-02 01:30")), list("slab-mver:2:Retrieved at"),
			"2025-11-04 13:29 not met; 2025-11-04 13:30 met; 2025-11-05 00:30 met; 2025-11-05 00:31 not met",
		},
		// Clocks went forward on 8 March: 08:00 to 08:00 was 23 h.
		{
			"slab-wait", "slab-resilient", join(zone, list("slab-rh:2:Sealed at=2026-03-07 08:00")), list("slab-rh:2:Read at"),
			"2026-03-08 08:00 not met; 2026-03-08 08:59 not met; 2026-03-08 09:00 met",
		},
	} {
		b.test(t)
	}
}

// Laying may start on the last good day and not on the day after.
func TestGoodUntilIsTheLastDay(t *testing.T) {
	t.Parallel()
	for _, base := range []string{"slab-resilient", "slab-glue-down-wood", "wood-crawl", "heated-slab", "wood-over-slab"} {
		for day, want := range map[string]string{"2026-03-06": "GO", "2026-03-07": "NO-GO"} {
			area := judgeBase(t, base, "areas:2:Install on="+day).Areas[0]
			if area.Verdict != want {
				t.Errorf("%s installed on %s is %s, want %s; blocked by %v", base, day, area.Verdict, want, area.Blocking)
			}
		}
	}
}
