package formula

import (
	"strings"

	"firstboard/report/evidence"
)

// together is a step that takes any number of figures; none are zero.
func (p *Printer) together(w evidence.Working) (expr, bool) {
	if len(w.Args) == 0 {
		return expr{text: "0"}, true
	}
	parts, ok := p.parts(w.Args, w.Op == evidence.OpHighest || w.Op == evidence.OpLowest)
	function := map[evidence.Op]string{
		evidence.OpSum: "SUM", evidence.OpCount: "COUNT", evidence.OpMean: "AVERAGE",
		evidence.OpHighest: "MAX", evidence.OpLowest: "MIN",
	}[w.Op]
	return expr{text: function + "(" + strings.Join(parts, ",") + ")"}, ok
}

// parts are figures as the arguments of a function: each as it stands where
// they are few, else a row an item on the sheet of figures. Where once is
// enough, a cell stands there once.
func (p *Printer) parts(figures []evidence.Working, once bool) ([]string, bool) {
	all, ok := p.args(figures)
	if !ok {
		return nil, false
	}
	parts := grouped(all, once)
	if fits(parts) {
		return parts, true
	}
	for i, w := range figures {
		if all[i].cell == nil {
			all[i] = p.own(w, all[i])
		}
	}
	if parts = grouped(all, once); fits(parts) {
		return parts, true
	}
	for i, w := range figures {
		all[i] = p.Figures.add(what(w), Figure{all[i].text, w.Value.Float()})[0]
	}
	return grouped(all, once), true
}

func fits(parts []string) bool {
	const most = 60
	return len(parts) <= most && len(strings.Join(parts, ",")) <= longest
}

// inside counts figures between two ends, both included.
func (p *Printer) inside(w evidence.Working) (expr, bool) {
	least, ok := p.expr(w.Args[0])
	most, known := p.expr(w.Args[1])
	if !ok || !known {
		return expr{}, false
	}
	var figures []expr
	for _, a := range w.Args[2:] {
		e, ok := p.expr(a)
		if !ok {
			return expr{}, false
		}
		figures = append(figures, p.own(a, e))
	}
	from, to := p.own(w.Args[0], least).text, p.own(w.Args[1], most).text
	parts := grouped(figures, false)
	const few = 6
	if len(parts) > few {
		for i, a := range w.Args[2:] {
			figures[i] = p.Figures.add(what(a), Figure{figures[i].text, a.Value.Float()})[0]
		}
		parts = grouped(figures, false)
	}
	var terms []string
	for _, r := range parts {
		terms = append(terms, "SUMPRODUCT(ISNUMBER("+r+")*(ROUND("+r+",9)>=ROUND("+from+",9))*(ROUND("+r+",9)<=ROUND("+to+",9)))")
	}
	return expr{text: "(" + strings.Join(append(terms, "0"), "+") + ")"}, true
}

// nearest is the value with the least room to its own limit: a row an item on
// the sheet of figures, its value and its room.
func (p *Printer) nearest(w evidence.Working) (expr, bool) {
	var values []expr
	for i := 0; i < len(w.Args); i += 2 {
		value, ok := p.expr(w.Args[i])
		if !ok {
			return expr{}, false
		}
		values = append(values, value)
	}
	for i, value := range values {
		arg := w.Args[2*i]
		values[i] = p.Figures.add(what(arg), Figure{value.text, arg.Value.Float()})[0]
	}
	var rooms []expr
	for i, value := range values {
		arg := w.Args[2*i+1]
		room, ok := p.expr(arg)
		if !ok {
			return expr{}, false
		}
		rooms = append(rooms, p.Figures.beside(value, Figure{room.text, arg.Value.Float()}))
	}
	value, room := span(values[0], values[len(values)-1]), span(rooms[0], rooms[len(rooms)-1])
	return expr{text: "INDEX(" + value + ",MATCH(MIN(" + room + ")," + room + ",0))"}, true
}

func span(from, to expr) string {
	return from.text + ":" + Name(to.cell.Column, to.cell.Row)
}
