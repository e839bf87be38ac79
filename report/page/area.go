package page

import (
	"fmt"
	"html/template"
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/stat"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/pictures"
)

// areaView is one area as the page shows it.
type areaView struct {
	report.Decision
	ahead.Advice
	Anchor   string
	Heading  string
	Good     bool
	Over     []evidence.Finding
	Unproven []evidence.Finding
	Met      []evidence.Finding
	Unneeded []evidence.Finding
	Facts    []pair
	Figures  []figure
	Open     bool // its pictures are unfolded: there are few areas
	Signed   []report.SignOff
}

// figure is a picture with what it shows in words.
type figure struct {
	Caption string
	Drawing template.HTML
	Notes   []string
}

// mostOpen is how many areas a page may have for their pictures to be unfolded.
const mostOpen = 12

func (p Page) area(i int, d report.Decision) areaView {
	answered := func(o evidence.Outcome) []evidence.Finding {
		return lists.Where(d.Findings, func(f evidence.Finding) bool { return f.Outcome == o })
	}
	a := areaView{
		Decision: d, Advice: p.Advice[i],
		Anchor: fmt.Sprintf("area-%d", i+1), Heading: strings.TrimSpace(d.Area.ID + " " + d.Area.Name),
		Good: d.Verdict == evidence.Go, Facts: facts(d), Open: len(p.Decisions) <= mostOpen,
		Signed: lists.Where(p.Job.SignOffs, func(s report.SignOff) bool { return evidence.Same(s.Area, d.Area.ID) }),
		Over:   answered(evidence.NotMet), Unproven: answered(evidence.NotShown),
		Met: answered(evidence.Met), Unneeded: answered(evidence.NotNeeded),
	}
	course := a.Outlook.Slab.Course
	for n, picture := range pictures.Of(d.Site) {
		a.Figures = append(a.Figures, draw(fmt.Sprintf("%s-figure-%d", a.Anchor, n+1), picture, course, apart(d)))
	}
	return a
}

// places are the names of places in words.
func places(all []evidence.Place) string { return evidence.List(report.PlaceNames(all)) }

// apart is how far the means of boards and subfloor may lie apart, in points; 0
// where nothing is asked.
func apart(d report.Decision) float64 {
	f, _ := lists.First(d.Findings, func(f evidence.Finding) bool { return f.ID == "wood-difference" })
	x, _ := strconv.ParseFloat(f.Limit, 64)
	return x
}

func facts(d report.Decision) []pair {
	target := ""
	if d.Target != nil {
		target = d.Target.Mid + " % MC, midway between " + d.Target.Low + " and " + d.Target.High
	}
	return recorded([]pair{
		{"Size", d.Area.Size.String()},
		{"Substrate", d.Area.Substrate},
		{"Flooring", d.Area.Flooring},
		{"Adhesive", d.Area.Adhesive},
		{"Membrane", d.Area.Membrane},
		{"Installation", d.Area.Installation},
		{"Install on", d.Area.InstallOn.Written},
		{"Good until", d.GoodUntil.Written},
		{"Target moisture content", target},
	})
}

// byName draws dots above names, or dots by class for moisture readings.
func byName(id string, p pictures.Picture) template.HTML {
	series, levels := drawn(p)
	var names []string
	for _, s := range series {
		for _, pt := range s.Points {
			if !slices.Contains(names, pt.Name) {
				names = append(names, pt.Name)
			}
		}
	}
	y0, y1 := reach(append(valuesOf(series), valuesOf(levels)...))
	d := newDrawing(-0.6, float64(len(names))-0.4, y0, y1)
	d.axisY(p.Y)
	var named []tick
	for i, name := range names {
		named = append(named, tick{float64(i), name})
	}
	d.axisX(p.X, thinnedTicks(named))
	for i, s := range series {
		for _, pt := range s.Points {
			d.mark(i, float64(slices.Index(names, pt.Name)), pt.Y.Exact().Float(), pt.Name+": "+pt.Y.String())
		}
	}
	d.levels(levels)
	return d.finish(id, p.Title, says(p))
}

// thinnedTicks keeps so many that they do not run into each other.
func thinnedTicks(all []tick) []tick {
	const most = 14
	if len(all) <= most {
		return all
	}
	step := (len(all) + most - 1) / most
	return lists.Each(slices.Collect(slices.Chunk(all, step)), func(some []tick) tick { return some[0] })
}

// dots draws each moisture reading as a dot, those of one kind side by side,
// with means and the target as levels.
func dots(id string, p pictures.Picture, series, levels []pictures.Series, apart float64) template.HTML {
	values := append(valuesOf(series), valuesOf(levels)...)
	var allowed []float64
	for _, s := range series {
		if under := stat.Mean(valuesOf([]pictures.Series{s}), nil); s.Role == pictures.Subfloor && apart > 0 {
			allowed = []float64{under - apart, under + apart}
		}
	}
	y0, y1 := reach(append(values, allowed...))
	d := newDrawing(-0.6, float64(len(series))-0.4, y0, y1)
	if len(allowed) > 0 {
		d.band([]float64{d.x0, d.x1}, []float64{allowed[0], allowed[0]}, []float64{allowed[1], allowed[1]})
	}
	d.axisY(p.X)
	var named []tick
	for i, s := range series {
		named = append(named, tick{float64(i), s.Name})
		mean := stat.Mean(valuesOf([]pictures.Series{s}), nil)
		d.path("average", []float64{float64(i) - 0.3, float64(i) + 0.3}, []float64{mean, mean})
		column := map[string]int{}
		for _, pt := range s.Points {
			n := column[pt.Y.Written]
			column[pt.Y.Written]++
			side := float64((n+1)/2) * lists.If(n%2 == 0, -0.045, 0.045)
			d.mark(i, float64(i)+math.Max(-0.4, math.Min(0.4, side)), pt.Y.Exact().Float(), pt.Name+": "+pt.Y.String())
		}
	}
	d.axisX("lot, subfloor or joists", named)
	d.levels(levels)
	return d.finish(id, p.Title, says(p))
}
