package pictures_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/pictures"
	"firstboard/report/record"
	"firstboard/report/record/sheet"
	"firstboard/slab"
)

// installed is the day of installing, 12 March 2026.
const installed = evidence.Day(20524)

// spot is where a reading was typed.
type spot string

func (s spot) String() string { return string(s) }

// since is a time so many hours from the beginning of the day of installing.
func since(hours float64) evidence.Time {
	at := installed.Begins(time.UTC).Add(time.Duration(hours * float64(time.Hour)))
	return evidence.Time{Written: at.Format("2006-01-02 15:04"), First: at, Last: at}
}

func num(x float64, u evidence.Unit) evidence.Reading {
	return evidence.Typed(strconv.FormatFloat(x, 'f', -1, 64), u)
}

// slabJob is one area on a slab, with what is put into it.
func slabJob() report.Job {
	return report.Job{
		Zone: time.UTC, Settings: report.DefaultSettings(), Instruments: evidence.Instruments{},
		Areas: []report.Area{{
			ID: "A1", Substrate: "slab", InstallOn: evidence.Date{Written: installed.String(), Day: installed},
			Size: num(500, evidence.SquareFoot),
		}},
	}
}

func holeAt(name string, hours, rh float64, discarded string) slab.Hole {
	h := slab.Hole{Area: "A1", Hole: name, ReadAt: since(hours), RH: num(rh, evidence.RH), Discarded: discarded}
	h.Place = spot(fmt.Sprint(name, hours))
	return h
}

// picturesOf are the pictures of one area of a job.
func picturesOf(j report.Job, a report.Area) []pictures.Picture {
	for _, d := range report.Judge(j) {
		if d.Area.ID == a.ID {
			return pictures.Of(d.Site)
		}
	}
	return nil
}

// picture is the one of a kind; ok is false where there is none.
func picture(j report.Job, shows pictures.Shows) (p pictures.Picture, ok bool) {
	all := picturesOf(j, j.Areas[0])
	i := slices.IndexFunc(all, func(p pictures.Picture) bool { return p.Shows == shows })
	if i < 0 {
		return p, false
	}
	return all[i], true
}

func drawn(p pictures.Picture) string {
	var all []string
	for _, s := range p.Series {
		line := s.Name + ":"
		for _, x := range s.Points {
			line += " " + strings.TrimSpace(x.Name+" "+x.Y.Written)
		}
		all = append(all, line)
	}
	return strings.Join(all, "; ")
}

func TestNoPictureIsDrawnOfNothing(t *testing.T) {
	if got := picturesOf(slabJob(), slabJob().Areas[0]); len(got) != 0 {
		t.Errorf("an area without a reading has the pictures %+v", got)
	}
}

func TestHolesAreDrawnByWhatCounts(t *testing.T) {
	j := slabJob()
	unread := holeAt("H10", -20, 1, "")
	unread.RH = evidence.Reading{}
	j.Holes = []slab.Hole{holeAt("H2", -20, 71.5, ""), holeAt("H2", -90, 80, ""), holeAt("H3", -20, 92, "crack"), unread}
	p, _ := picture(j, pictures.HoleReadings)
	if got, want := drawn(p), "judged: H2 71.5; discarded: H3 92; limit: 75"; got != want {
		t.Errorf("the holes are drawn as %q, want %q", got, want)
	}
	if got := fmt.Sprint(p.Notes); !strings.Contains(got, "H10 (no reading)") {
		t.Errorf("the notes are %s: they lack the hole that is not drawn", got)
	}
}

func TestDryingIsDrawnWhereAHoleWasReadTwice(t *testing.T) {
	j := slabJob()
	j.Holes = []slab.Hole{holeAt("H1", -20, 71, ""), holeAt("H2", -20, 74, "")}
	if p, ok := picture(j, pictures.DryingHistory); ok {
		t.Errorf("holes read once have a history: %s", drawn(p))
	}
	j.Holes = append(j.Holes, holeAt("H1", -90, 79, ""))
	p, _ := picture(j, pictures.DryingHistory)
	if got, want := drawn(p), "H1: 79 71; H2: 74; limit: 75"; got != want {
		t.Errorf("the history is %q, want %q", got, want)
	}
}

func TestLinesTooManyToBeToldApartAreJoined(t *testing.T) {
	j := slabJob()
	for i := range 30 {
		name := fmt.Sprint("H", i+1)
		j.Holes = append(j.Holes, holeAt(name, -90, 90, ""), holeAt(name, -20, 60+float64(i), ""))
	}
	p, _ := picture(j, pictures.DryingHistory)
	points := 0
	for _, s := range p.Series {
		for _, x := range s.Points {
			if !s.Role.Bound() && x.Y.Shown() {
				points++
			}
		}
	}
	if len(p.Series) != 11 || points != 60 || p.Series[0].Name != "H22" || p.Series[9].Name != "21 other holes" {
		t.Errorf("%d lines and %d points: %s", len(p.Series), points, drawn(p))
	}
}

// airOf is a log, a reading every so many hours up to the day of installing.
func airOf(n int, apart float64, rh func(i int) float64) []acclimate.Air {
	var all []acclimate.Air
	for i := range n {
		all = append(all, acclimate.Air{
			ReadAt: since(float64(i-n) * apart), Instrument: "AL1", Temp: num(70, evidence.Fahrenheit), RH: num(rh(i), evidence.RH),
		})
	}
	return all
}

func TestALongLogKeepsTheExtremesOfEachStretch(t *testing.T) {
	j := slabJob()
	j.Air = airOf(20_000, 0.05, func(i int) float64 {
		switch i {
		case 7_777:
			return 91.3
		case 12_345:
			return 3.2
		}
		return 40 + float64(i%7)/10
	})
	p, _ := picture(j, pictures.AirHumidity)
	points := p.Series[0].Points
	if n := len(points); n < 300 || n > 402 {
		t.Errorf("%d points are drawn, want about 400", n)
	}
	for _, want := range []string{"91.3", "3.2"} {
		if !slices.ContainsFunc(points, func(x pictures.Point) bool { return x.Y.Written == want }) {
			t.Errorf("the reading %s is lost", want)
		}
	}
	if !slices.IsSortedFunc(points, func(a, b pictures.Point) int { return a.At.First.Compare(b.At.First) }) {
		t.Error("the points are out of order")
	}
	if points[0].At != j.Air[0].ReadAt || points[len(points)-1].At != j.Air[19_999].ReadAt {
		t.Error("the log does not begin and end where it did")
	}
	if got := fmt.Sprint(p.Notes); !strings.Contains(got, "of 20000 readings") {
		t.Errorf("the notes are %s: they do not say that the log is thinned", got)
	}
}

func TestALineBreaksWhereNoAirWasRead(t *testing.T) {
	for _, c := range []struct {
		apart  float64
		breaks int
	}{{26, 0}, {26.5, 4}} {
		j := slabJob()
		j.Air = airOf(5, c.apart, func(int) float64 { return 40 })
		p, _ := picture(j, pictures.AirHumidity)
		breaks := 0
		for _, x := range p.Series[0].Points {
			if !x.Y.Shown() {
				breaks++
			}
		}
		if breaks != c.breaks {
			t.Errorf("readings %v h apart break the line %d times, want %d", c.apart, breaks, c.breaks)
		}
	}
}

// Rows in another order give the same pictures.
func TestTheOrderOfRowsChangesNoPicture(t *testing.T) {
	rec, err := record.Read("../../testdata/jobs/millrace")
	if err != nil {
		t.Fatal(err)
	}
	turned := rec.Job
	turned.Holes, turned.Air, turned.Wood, turned.Scans = backwards(turned.Holes), backwards(turned.Air), backwards(turned.Wood),
		backwards(turned.Scans)
	for _, a := range rec.Job.Areas {
		if diff := cmp.Diff(picturesOf(rec.Job, a), picturesOf(turned, a),
			cmp.Comparer(func(a, b decimal.Decimal) bool { return a.Equal(b) })); diff != "" {
			t.Errorf("area %s in the record's order (-) and backwards (+):\n%s", a.ID, diff)
		}
	}
}

func backwards[T any](rows []T) []T {
	rows = slices.Clone(rows)
	slices.Reverse(rows)
	return rows
}

// Every point that was typed tells its cell, and the demonstration has all
// kinds of pictures.
func TestPicturesOfTheDemonstration(t *testing.T) {
	rec, err := record.Read("../../testdata/jobs/millrace")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[pictures.Shows]bool{}
	for _, a := range rec.Job.Areas {
		for _, p := range picturesOf(rec.Job, a) {
			seen[p.Shows] = true
			for _, s := range p.Series {
				for _, x := range s.Points {
					if at, ok := x.Y.Place.(*sheet.Place); !s.Role.Bound() && (!ok || at.Column == 0) {
						t.Errorf("area %s, %s, %s %s: no cell", a.ID, p.Title, s.Name, x.Name)
					}
				}
			}
		}
	}
	for s := pictures.HoleReadings; s <= pictures.Positions; s++ {
		if !seen[s] {
			t.Errorf("no area has a picture of kind %d", s)
		}
	}
}
