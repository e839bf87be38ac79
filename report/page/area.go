package page

import (
	"fmt"
	"html/template"
	"strconv"
	"strings"

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
