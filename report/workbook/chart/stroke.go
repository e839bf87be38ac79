package chart

import (
	"cmp"

	"firstboard/report/pictures"
)

// The inks of pictures. Blues are dark and oranges light,
// or lines that differ in their dashes and marks as well.
const (
	deepBlue   = "1F4E8C"
	paleOrange = "F6B26B"
	deepOrange = "C55A11"
	darkGrey   = "404040"
	midGrey    = "7F7F7F"
	black      = "000000"
	paper      = "FFFFFF"
)

// stroke is how a line of a picture is drawn: lines differ by dash and mark
// besides their ink.
type stroke struct {
	ink   string
	fill  string  // of a mark or a bar; empty for its ink
	width float64 // in points, 0 for no line
	dash  string
	mark  string // none where empty
	size  int    // of the mark, in points
}

// strokeOf is the stroke of a line in its picture.
func strokeOf(l line, shows pictures.Shows) stroke {
	switch {
	case l.role.Bound():
		return boundStroke(l)
	case shows == pictures.HoleReadings, shows == pictures.Positions, shows == pictures.WoodMoisture:
		return markStroke(l.role)
	case shows == pictures.ServiceEMC:
		return stroke{ink: deepBlue, width: 1.5, dash: "solid", mark: "circle", size: 8}
	}
	return lineStroke(l)
}

// lineStroke tells many lines apart; one of very many points has small marks.
func lineStroke(l line) stroke {
	switch l.role {
	case pictures.Others:
		return stroke{ink: midGrey, width: 0.75, dash: "solid", mark: "circle", size: 2}
	case pictures.Expected:
		return stroke{ink: darkGrey, width: 1.5, dash: "lgDash"}
	case pictures.ExpectedEnd:
		return stroke{ink: midGrey, width: 1, dash: "sysDot"}
	}
	const crowded = 60
	s := stroke{
		ink: pick(l.nth, deepBlue, deepOrange, darkGrey), dash: pick(l.nth/3, "solid", "dash", "sysDot"),
		mark: pick(l.nth, "circle", "square", "triangle", "diamond"), width: 1.5, size: 6,
	}
	switch {
	case l.role == pictures.Discarded:
		s.ink, s.dash, s.mark, s.size = deepOrange, "sysDash", "x", 8
	case l.y.to-l.y.from > crowded:
		s.size, s.width = 2, 1
	}
	return s
}

func boundStroke(l line) stroke {
	switch l.role {
	case pictures.LotMean:
		return stroke{ink: darkGrey, width: 2, dash: pick(l.nth, "solid", "sysDot", "lgDash", "dashDot")}
	case pictures.TargetEMC:
		return stroke{ink: deepOrange, width: 2.25, dash: "dash"}
	case pictures.Lowest:
		return stroke{ink: black, width: 1.75, dash: "sysDot"}
	}
	return stroke{ink: black, width: 1.75, dash: "dash"}
}

func markStroke(r pictures.Role) stroke {
	return cmp.Or(map[pictures.Role]stroke{
		pictures.Discarded: {ink: deepOrange, mark: "x", size: 9},
		pictures.Dish:      {ink: deepOrange, mark: "square", size: 9},
		pictures.Flooring:  {ink: darkGrey, mark: "triangle", size: 7},
		pictures.Subfloor:  {ink: deepOrange, fill: paleOrange, mark: "diamond", size: 8},
		pictures.Joist:     {ink: darkGrey, mark: "plus", size: 8},
		pictures.Scan:      {ink: midGrey, mark: "circle", size: 5},
	}[r], stroke{ink: deepBlue, mark: "circle", size: 9})
}

func pick(n int, of ...string) string { return of[n%len(of)] }
