package wood

import (
	"slices"

	"firstboard/report/evidence"
)

// Title is what a lot is called in a sentence.
func (l Lot) Title() string {
	if l.Name == "" {
		return "the lot without a name"
	}
	return "lot " + l.Name
}

// moisture is the judged value of a row against a limit.
func (f Floor) moisture(kind string, limit evidence.Limit) func(name string, r Row) evidence.Item {
	return func(name string, r Row) evidence.Item {
		m := MoistureOf(r, f.Species)
		it := evidence.Item{
			Name: kind + " " + name, Value: m.Value, Written: m.Written,
			Limit: limit, U: f.Instruments.U(r.Instrument, evidence.MC), Lack: m.Lack, Place: r.Place,
		}
		if m.How != "" {
			it.Says = kind + " " + name + " reads " + m.Written + " % MC (" + m.How + ")"
		}
		return it
	}
}

func boardName(lot Lot) string {
	if lot.Name == "" {
		return "board"
	}
	return lot.Title() + " board"
}

// Span is the mean of things of which some were read twice at one time: the
// lowest and the highest that it can be. Lack says why there is none.
type Span struct {
	Low, High evidence.Exact
	Lack      string
}

// SpanOf is the mean of things, each with its judged values.
func SpanOf(things [][]evidence.Item, none string) Span {
	if len(things) == 0 {
		return Span{Lack: none}
	}
	var lows, highs []evidence.Exact
	for _, items := range things {
		for _, it := range items {
			if it.Lack != "" {
				return Span{Lack: it.Name + ": " + it.Lack}
			}
		}
		lows, highs = append(lows, low(items)), append(highs, high(items))
	}
	return Span{Low: evidence.Mean(lows), High: evidence.Mean(highs)}
}

func low(items []evidence.Item) evidence.Exact  { return slices.MinFunc(items, byValue).Value }
func high(items []evidence.Item) evidence.Exact { return slices.MaxFunc(items, byValue).Value }

func byValue(a, b evidence.Item) int { return a.Value.Cmp(b.Value) }

// BoardItems are the judged values of a lot's boards against a limit, board
// by board.
func (f Floor) BoardItems(lot Lot, limit evidence.Limit) [][]evidence.Item {
	return f.items(lot.Boards, boardName(lot), limit)
}

// PieceItems are the judged values of subfloor pieces or joists.
func (f Floor) PieceItems(what string, limit evidence.Limit) [][]evidence.Item {
	return f.items(f.Pieces(what), what+" piece", limit)
}

func (f Floor) items(things []evidence.Judged[Row], kind string, limit evidence.Limit) [][]evidence.Item {
	var all [][]evidence.Item
	for _, thing := range things {
		all = append(all, evidence.Items([]evidence.Judged[Row]{thing}, readTime, f.moisture(kind, limit)))
	}
	return all
}

// Mean is the mean of a lot's boards.
func (f Floor) Mean(lot Lot) Span {
	none := evidence.WetSince
	if lot.SetAside > 0 {
		none = "every board read was set aside"
	}
	return SpanOf(f.BoardItems(lot, evidence.Limit{}), none)
}

// MeanItems are the means of a lot as judged values: one, or two where boards
// were read twice at one time.
func MeanItems(mean Span, say func(evidence.Exact) evidence.Item) []evidence.Item {
	if mean.Lack != "" {
		it := say(evidence.Exact{})
		it.Lack = mean.Lack
		return []evidence.Item{it}
	}
	items := []evidence.Item{say(mean.Low)}
	if mean.High.Cmp(mean.Low) != 0 {
		items = append(items, say(mean.High))
	}
	return items
}
