package page

import (
	"html/template"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"firstboard/report/lists"
	"firstboard/report/pictures"
)

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
