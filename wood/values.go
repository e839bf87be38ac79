package wood

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
)

// moistureItem is the judged value of a row against a limit, of a kind of thing
// and, of a board, in its lot.
func (f Floor) moistureItem(kind, lot string, limit evidence.Limit) func(name string, r Row) evidence.Item {
	return func(name string, r Row) evidence.Item {
		m := r.Moisture()
		name = kind + " " + name + lot
		it := evidence.Item{
			Name: name, Value: m.Value(), Written: m.Written, Work: m.Work.Called(name),
			Limit: limit, U: f.uncertainty(r), Lack: m.Lack, Place: r.Place,
		}
		if m.How != "" {
			it.Says = name + ", " + m.Written + " % MC (" + m.How + ")"
		}
		return it
	}
}

// uncertainty is that of a reading, in points, as its method took it.
func (f Floor) uncertainty(r Row) *evidence.Uncertainty {
	return f.Instruments.UAs(r.Instrument, evidence.MC, r.MeterKind())
}

// MeterKind is the kind of instrument that a row's method takes; empty without a
// method.
func (r Row) MeterKind() string {
	return map[string]string{Pin: evidence.PinMeter, Pinless: evidence.Pinless, OvenDry: evidence.OvenMeter}[r.Method]
}

// Span is the mean of things of which some were read twice at one time: the
// lowest and the highest that it can be. Lack says why there is none.
type Span struct {
	Low, High evidence.Working
	Lack      string
}

// Each is the mean, or both where the lowest and the highest differ.
func (s Span) Each() []evidence.Working {
	if s.Lack != "" {
		return nil
	}
	if s.Low.Value.Equal(s.High.Value) {
		return []evidence.Working{s.Low}
	}
	return []evidence.Working{s.Low, s.High}
}

// spanOf is the mean of things, each with its judged values.
func spanOf(things [][]evidence.Item, called, none string) Span {
	if len(things) == 0 {
		return Span{Lack: none}
	}
	var lows, highs []evidence.Working
	for _, items := range things {
		for _, it := range items {
			if it.Lack != "" {
				return Span{Lack: it.Name + ": " + it.Lack}
			}
		}
		lows, highs = append(lows, lowest(items)), append(highs, highest(items))
	}
	return Span{Low: evidence.MeanOf(lows...).Called(called), High: evidence.MeanOf(highs...).Called(called)}
}

func lowest(items []evidence.Item) evidence.Working  { return slices.MinFunc(items, byValue).Work }
func highest(items []evidence.Item) evidence.Working { return slices.MaxFunc(items, byValue).Work }

func byValue(a, b evidence.Item) int { return a.Value.Cmp(b.Value) }

// BoardItems are the judged values of a lot's boards against a limit, board
// by board.
func (f Floor) BoardItems(lot Lot, limit evidence.Limit) [][]evidence.Item {
	return f.items(lot.Boards, "board", lot.ofLot(), limit)
}

// PieceItems are the judged values of subfloor pieces or joists.
func (f Floor) PieceItems(what string, limit evidence.Limit) [][]evidence.Item {
	return f.items(f.Pieces(what), what+" piece", "", limit)
}

func (f Floor) items(things []evidence.Judged[Row], kind, lot string, limit evidence.Limit) [][]evidence.Item {
	var all [][]evidence.Item
	for _, thing := range things {
		all = append(all, evidence.Items([]evidence.Judged[Row]{thing}, readTime, f.moistureItem(kind, lot, limit)))
	}
	return all
}

// Mean is the mean of a lot's boards.
func (f Floor) Mean(lot Lot) Span {
	return spanOf(f.BoardItems(lot, evidence.Limit{}), "mean of "+lot.Title(), evidence.WetSince)
}

// MeanBefore is the mean of the nearest visit to a lot that ended 72 h or more
// before the first row of its last visit.
func (f Floor) MeanBefore(lot Lot) Span {
	items := f.items(lot.earlier, "board", lot.ofLot(), evidence.Limit{})
	return spanOf(items, "mean of "+lot.Title()+" at the visit before",
		fmt.Sprintf("no visit that ended %s h or more before the last one", evidence.Hours(Visit).Text()))
}

// MeanOfSubfloor is the mean of the subfloor's pieces.
func (f Floor) MeanOfSubfloor() Span {
	return spanOf(f.PieceItems(OfSubfloor, evidence.Limit{}), "mean of the subfloor", noSubfloor)
}
