package outlook_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/limits"
	"firstboard/report/outlook"
	"firstboard/report/plan"
	"firstboard/slab"
)

// The first board is laid on 2026-03-05 in all bases, and the last entry of
// their records is of 2026-03-04 08:00: that is today.
func at(t *testing.T, j *report.Job, written string) evidence.Time {
	t.Helper()
	when, err := time.ParseInLocation("2006-01-02 15:04", written, j.Zone)
	if err != nil {
		t.Fatal(err)
	}
	return evidence.Time{Written: written, First: when, Last: when}
}

// reread is another number in the same cell.
func reread(r *evidence.Reading, number string) {
	place := r.Place
	*r = evidence.Typed(number, r.Unit)
	r.Place = place
}

// sealed is another time of sealing for every hole.
func sealed(t *testing.T, j *report.Job, written string) {
	t.Helper()
	for i := range j.Holes {
		j.Holes[i].SealedAt = at(t, j, written)
	}
}

// The earliest days of these areas are plain, counted by hand from today.
func TestEarliestDayOfPlainAreas(t *testing.T) {
	t.Parallel()
	unread := func(h *slab.Hole) {
		h.ReadAt, h.RH, h.Temp = evidence.Time{}, evidence.Reading{}, evidence.Reading{}
	}
	dry := ahead.Outlook{Slab: ahead.Slab{
		Status: evidence.Losing, Ready: "2026-04-20", From: "2026-04-12", To: "2026-05-09",
	}}
	for _, c := range []plain{
		{
			name: "all is met: a GO today, and nothing is left to do", folder: "slab-glue-down-wood",
			change: func(*report.Job) {}, earliest: "2026-03-04",
		},
		{
			name: "a hole sealed today at 07:00: read 24 h later", folder: "slab-glue-down-wood",
			change:   func(j *report.Job) { j.Holes[2].SealedAt = at(t, j, "2026-03-04 07:00"); unread(&j.Holes[2]) },
			earliest: "2026-03-05", acts: []string{"read hole H3|tester|2026-03-05 07:00"},
		},
		{
			name: "holes read 12 to 14 h after they were sealed: again at once", folder: "slab-glue-down-wood",
			change: func(j *report.Job) { sealed(t, j, "2026-03-02 20:00") }, earliest: "2026-03-04",
			acts: []string{"read holes H1 to H3 again|tester|2026-03-04 08:00"},
		},
		{
			name: "the same where 72 h were agreed on: not before these have passed", folder: "slab-glue-down-wood",
			change: func(j *report.Job) {
				sealed(t, j, "2026-03-02 20:00")
				j.Settings.ProbeWait = evidence.Typed("72", evidence.Hour)
			},
			earliest: "2026-03-05", acts: []string{"read holes H1 to H3 again|tester|2026-03-05 20:00"},
		},
		{
			name: "the same of holes that water left without a reading: it restarts no wait", folder: "slab-glue-down-wood",
			change: func(j *report.Job) {
				sealed(t, j, "2026-03-02 08:00")
				j.Settings.ProbeWait = evidence.Typed("72", evidence.Hour)
				j.Events = append(j.Events, report.Event{What: "water", At: at(t, j, "2026-03-03 12:00")})
			},
			earliest: "2026-03-05", acts: []string{"read holes H1 to H3 again|tester|2026-03-05 08:00"},
		},
		{
			name: "no air log: 48 h of it from today, then the slab and the boards again", folder: "slab-glue-down-wood",
			change: func(j *report.Job) { j.Air = nil }, earliest: "2026-03-06",
			acts: []string{
				"move the day of installing to 2026-03-06 or later|general contractor|2026-03-04 08:00",
				"read the air for 48 h|installer|2026-03-06 08:00",
				"read holes H1 to H3 again|tester|2026-03-06 08:00",
				"read boards B1 to B3 of lot L1 in one visit|installer|2026-03-06 08:00",
			},
		},
		{
			name: "dishes to set: today at 08:00 and 60 h", folder: "slab-glue-down-wood",
			change: func(j *report.Job) {
				j.Products[1].MVER = limits.Stated{Number: evidence.Typed("3", evidence.Pounds)}
			},
			earliest: "2026-03-06",
			acts: []string{
				"set dishes D1 to D3 and leave them for 60 h|tester|2026-03-06 20:00",
				"lift dishes D1 to D3 after 60 to 72 h and weigh|tester|2026-03-06 20:00",
			},
		},
		{
			name: "heat to run for 72 h, and holes sealed beside it", folder: "heated-slab",
			change: func(j *report.Job) {
				j.Areas[0].HeatOnSince, j.Holes, j.Wood = evidence.Time{}, nil, nil
			},
			earliest: "2026-03-07",
			acts: []string{
				"run the heating at its design setpoint for 72 h|general contractor|2026-03-07 08:00",
				"drill and seal 3 holes (H1 to H3) and leave them for 24 h|tester|2026-03-05 08:00",
				"read holes H1 to H3|tester|2026-03-07 08:00",
			},
		},
		{
			name: "heat that came on yesterday at 08:00: 72 h end on the third day", folder: "heated-slab",
			change:   func(j *report.Job) { j.Areas[0].HeatOnSince = at(t, j, "2026-03-03 08:00") },
			earliest: "2026-03-06", acts: []string{"read holes H1 to H3 again|tester|2026-03-06 08:00"},
		},
		{
			name: "no check of the probe: today, and the holes a day after they were read without", folder: "slab-glue-down-wood",
			change: func(j *report.Job) { j.Checks = nil }, earliest: "2026-03-04",
			acts: []string{
				"check probe RP1 against a salt|tester|2026-03-04 08:00",
				"read holes H1 to H3 again|tester|2026-03-04 10:11",
			},
		},
		{
			name: "boards never read: today", folder: "slab-glue-down-wood",
			change: func(j *report.Job) { j.Wood = nil }, earliest: "2026-03-04",
			acts: []string{"read boards B1 to B3|installer|2026-03-04 08:00"},
		},
		{
			name: "a hole over the limit, and nothing tells when it is dry", folder: "slab-glue-down-wood",
			change: func(j *report.Job) { reread(&j.Holes[1].RH, "88") },
			acts: []string{"let the slab dry, then read hole H2 again (by when cannot be told); " +
				"or name a membrane, or another adhesive, whose data sheet allows 88 % RH or more|tester|"},
		},
		{
			name: "a hole over the limit that is dry on 2026-04-20", folder: "slab-glue-down-wood", ahead: dry,
			change: func(j *report.Job) { reread(&j.Holes[1].RH, "88") }, earliest: "2026-04-20",
			acts: []string{
				"move the day of installing to 2026-04-20 or later|general contractor|2026-03-04 08:00",
				"let the slab dry until about 2026-04-20, then read hole H2 again; " +
					"or name a membrane, or another adhesive, whose data sheet allows 88 % RH or more|tester|2026-04-20 00:00",
			},
		},
		{
			// Air at 70 F and 60 % RH is at its dew point at 55.5 F: a surface must be
			// at 60.5 F, and one at 58 F is 2.5 F short. The air that is 5 F above the
			// dew point of 53 F is 70 F at 55 % RH, or a little under.
			name: "a surface too near the dew point, in air that is too damp: 24 h in range from 09:00 on", folder: "slab-glue-down-wood",
			change: func(j *report.Job) {
				reread(&j.Air[6].RH, "60")
				reread(&j.Surfaces[0].Temp, "58")
			},
			earliest: "2026-03-05",
			acts: []string{
				"warm the surface by 3 F or bring the air under 54 % RH, then read surface spot S1 again|general contractor, then installer|2026-03-04 08:01",
				"bring the air to 60 to 80 F and 30 to 55 % RH, then read the air for 24 h|installer|2026-03-05 09:00",
			},
		},
	} {
		c.check(t)
	}
}

// plain is an area, the earliest day on which it could be GO, and acts that lead
// there: each with whose it is and its end.
type plain struct {
	name, folder string
	change       func(j *report.Job)
	ahead        ahead.Outlook
	earliest     string
	acts         []string
}

func (c plain) check(t *testing.T) {
	d := one(t, c.folder, c.change)
	next := outlook.Next(plan.Of(d, c.ahead))
	if next.Earliest != c.earliest {
		t.Errorf("%s: GO on %q, want %q", c.name, next.Earliest, c.earliest)
	}
	if goes := d.Verdict == evidence.Go; goes != (len(next.Acts) == 0) {
		t.Errorf("%s: %s, and %d acts", c.name, d.Says(), len(next.Acts))
	}
	var got []string
	for _, a := range next.Acts {
		got = append(got, a.Act+"|"+a.Who+"|"+a.Ends)
	}
	for _, want := range c.acts {
		if !slices.Contains(got, want) {
			t.Errorf("%s: no act %q in\n%s", c.name, want, strings.Join(got, "\n"))
		}
	}
}
