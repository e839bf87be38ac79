package ahead_test

import (
	"testing"

	"firstboard/report/ahead"
)

func TestWordsOfWhatComesNext(t *testing.T) {
	t.Parallel()
	read := ahead.Act{Act: "read hole H3", Who: "tester", Ends: "2026-03-05 07:00"}
	dry := ahead.Act{Act: "let the slab dry, then read hole H2 again; or name a membrane", Who: "tester"}
	for _, c := range []struct {
		next ahead.Next
		most int
		want string
	}{
		{ahead.Next{Earliest: "2026-03-04"}, 3, "nothing is left to do before installing"},
		{
			ahead.Next{Earliest: "2026-03-05", Acts: []ahead.Act{read}},
			3,
			"read hole H3 (tester, earliest 2026-03-05 07:00); GO on 2026-03-05 at the earliest",
		},
		{
			ahead.Next{Acts: []ahead.Act{dry, read}},
			2,
			"let the slab dry, then read hole H2 again (tester), or name a membrane; " +
				"read hole H3 (tester, earliest 2026-03-05 07:00); when it can be GO cannot be told",
		},
		{
			ahead.Next{Acts: []ahead.Act{dry, read, read}},
			1,
			"let the slab dry, then read hole H2 again (tester), or name a membrane; and 2 more; when it can be GO cannot be told",
		},
	} {
		if got := c.next.Says(c.most); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestWordsOfWhetherItHolds(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		holds ahead.Holds
		want  string
	}{
		{ahead.Holds{Holds: true}, "yes, under every alternative that the rules offer"},
		{ahead.Holds{TurnsOn: []string{"hole H2", "simple acceptance"}}, "no, it turns on hole H2 and simple acceptance"},
	} {
		if got := c.holds.Says(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
