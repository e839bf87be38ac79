package pictures

import (
	"fmt"
	"strings"
	"time"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
)

func airTempOf(s report.Site) Picture {
	p := Picture{Shows: AirTemperature, Title: "Temperature of the air against its range", Y: "temperature"}
	return airOf(s, p, s.Room.Temp, func(a *acclimate.Air) evidence.Reading { return a.Temp })
}

func airRHOf(s report.Site) Picture {
	p := Picture{Shows: AirHumidity, Title: "Relative humidity of the air against its range", Y: "relative humidity"}
	return airOf(s, p, s.Room.RH, func(a *acclimate.Air) evidence.Reading { return a.RH })
}

// airOf is the air log over time, thinned where it is long.
func airOf(s report.Site, p Picture, limit evidence.Limit, value func(*acclimate.Air) evidence.Reading) Picture {
	all := linesOf(s.Room.Air.Timed(), func(a *acclimate.Air) string { return a.Instrument },
		func(a *acclimate.Air) Point {
			return Point{At: a.ReadAt, Y: value(a)}
		})
	if len(all) == 0 {
		return p
	}
	unit := all[0].Points[0].Y.Unit
	p.X, p.Unit = "read at", unit
	p.Title += " (" + string(unit) + ")"
	p.Y += " (" + strings.TrimSuffix(string(unit), " RH") + ")"
	shorten(s, &p, all)
	for _, line := range told(all, mostLines, "instrument") {
		for i := range line.Points {
			line.Points[i].Y = inUnit(line.Points[i].Y, unit)
		}
		p.with(line.Name, line.Role, line.Points)
	}
	p.ends("", limit, unit)
	if from, to, known := s.Room.HeldWindow(); known {
		p.HeldFrom, p.HeldTo = from, to
		p.Notes = append(p.Notes, fmt.Sprintf("air-held asks for %s to %s", minuteOf(from), minuteOf(to)))
	}
	return p
}

// shorten thins the lines of a log, breaks them where no air was read, and
// notes what is not drawn.
func shorten(s report.Site, p *Picture, all []Series) {
	rows, drawn := 0, 0
	each := max(mostPoints*mostLines/max(len(all), mostLines), 20)
	for i, line := range all {
		kept := thinned(line.Points, each)
		rows, drawn = rows+len(line.Points), drawn+len(kept)
		all[i].Points = broken(kept, line.Points, evidence.Duration(s.Room.Gap.Exact()))
		if line.Name == "" {
			all[i].Name = "no instrument named"
		}
	}
	if drawn < rows {
		p.Notes = append(p.Notes, fmt.Sprintf("thinned to %d of %d readings, the lowest and the highest of each stretch", drawn, rows))
	}
	if unread := s.Room.Air.Len() - rows; unread > 0 {
		p.Notes = append(p.Notes, evidence.Count(unread, "row", "rows")+" without a time or a reading not drawn")
	}
}

func minuteOf(t time.Time) string { return t.Format("2006-01-02 15:04") }

// mostPoints is how many points of one line are drawn.
const mostPoints = 400

// thinned keeps about so many points: the lowest and the highest of each
// stretch of a line in order of time, its first and its last.
func thinned(line []Point, most int) []Point {
	if len(line) <= most {
		return append([]Point{}, line...)
	}
	kept := []Point{line[0]}
	inner, stretches := line[1:len(line)-1], most/2-1
	for i := range stretches {
		stretch := inner[i*len(inner)/stretches : (i+1)*len(inner)/stretches]
		low, high := 0, 0
		for k, x := range stretch {
			if x.Y.Value.LessThan(stretch[low].Y.Value) {
				low = k
			}
			if x.Y.Value.GreaterThan(stretch[high].Y.Value) {
				high = k
			}
		}
		kept = append(kept, stretch[min(low, high)])
		if low != high {
			kept = append(kept, stretch[max(low, high)])
		}
	}
	return append(kept, line[len(line)-1])
}

// broken breaks a thinned line where no reading of the whole one was taken for
// longer than that.
func broken(line, whole []Point, longest time.Duration) []Point {
	var out []Point
	at := 0
	for i, x := range line {
		gap := false
		for ; i > 0 && at+1 < len(whole) && whole[at].At.First.Before(x.At.First); at++ {
			gap = gap || whole[at+1].At.First.Sub(whole[at].At.First) > longest
		}
		if gap {
			out = append(out, Point{})
		}
		out = append(out, x)
	}
	return out
}
