package ahead

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// When is when the slab and each lot of boards will be ready, a sentence each
// without its end. What is not needed is left out.
func (o Outlook) When() []string {
	var all []string
	if s := o.Slab; s.Status != "" && s.Status != evidence.Unasked {
		what := "slab"
		if s.Hole != "" {
			what += ", hole " + s.Hole
		}
		line := expected(what, s.Status, s.Ready, s.From, s.To, s.Why)
		if s.CoveredPct != "" {
			line += "; covered today it settles to " + s.CoveredPct + " % RH"
		}
		all = append(all, line)
	}
	return append(all, lists.Each(o.Boards, func(b Boards) string {
		return expected("boards"+ofLot(b.Lot), b.Status, b.Ready, b.From, b.To, b.Why)
	})...)
}

func expected(what string, status evidence.Prospect, ready, from, to, why string) string {
	if ready == "" {
		return what + ": " + string(status) + "; " + why
	}
	return fmt.Sprintf("%s: %s until about %s (nine times in ten %s to %s); %s", what, status, ready, from, to, why)
}

func ofLot(name string) string {
	return lists.If(name == "", "", " of lot "+name)
}

// Brief is When in short, of what dries or cannot in this air: empty where there
// is no such thing.
func (o Outlook) Brief() string {
	var all []string
	add := func(what string, status evidence.Prospect, ready, from, to string) {
		switch {
		case ready != "":
			all = append(all, fmt.Sprintf("%s about %s (%s to %s)", what, ready, from, to))
		case status == evidence.Stalled:
			all = append(all, what+": "+string(status))
		}
	}
	add("slab", o.Slab.Status, o.Slab.Ready, o.Slab.From, o.Slab.To)
	for _, b := range o.Boards {
		add("boards"+ofLot(b.Lot), b.Status, b.Ready, b.From, b.To)
	}
	return strings.Join(all, "; ")
}

// IfInstalled is what the air has to do for the boards, how they would move,
// and what the conditions that are over a limit are known to damage.
func (o Outlook) IfInstalled() []string {
	var all []string
	if a := o.Air; a != nil {
		line := fmt.Sprintf("air of %s to %s %% RH at %s F brings the boards to the target", a.RHLowPct, a.RHHighPct,
			a.TempF)
		switch {
		case strings.HasPrefix(a.WaterLb, "-"):
			line += fmt.Sprintf("; on the way wood gives up %s lb (%s kg) of water", a.WaterLb[1:],
				strings.TrimPrefix(a.WaterKG, "-"))
		case a.WaterLb != "":
			line += fmt.Sprintf("; on the way wood takes in %s lb (%s kg) of water", a.WaterLb, a.WaterKG)
		}
		all = append(all, line)
	}
	return slices.Concat(all, lists.Each(o.Movement, Movement.says), o.Damage)
}

// says is the movement of a lot in words: free movement, without a discount.
func (m Movement) says() string {
	line := fmt.Sprintf("installed now at %s %% MC, a board of %s in%s %s at %s %% and %s at %s %%",
		m.NowPct, m.BoardIn, ofLot(m.Lot), moves(m.ShrinkIn, "shrinks", "grows"), m.LowPct,
		moves(m.GrowIn, "grows", "shrinks"), m.HighPct)
	if m.AcrossShrinkIn != "" {
		line += fmt.Sprintf("; across the room the floor %s and %s",
			moves(m.AcrossShrinkIn, "shrinks", "grows"), moves(m.AcrossGrowIn, "grows", "shrinks"))
	}
	return line + " (Wood Handbook eq. 13-2, coefficient " + m.Coefficient + ", free movement)"
}

func moves(in, way, other string) string {
	by, back := strings.CutPrefix(in, "-")
	return lists.If(back, other, way) + " by " + by + " in"
}

// Says is whether the verdict holds, in words.
func (h Holds) Says() string {
	return lists.If(h.Holds, "yes, under every alternative that the rules offer",
		"no, it turns on "+evidence.List(h.TurnsOn))
}

// Says is what comes next in words: the first so many acts, and the earliest day.
func (n Next) Says(most int) string {
	if len(n.Acts) == 0 {
		return "nothing is left to do before installing"
	}
	clauses := lists.Each(n.Acts[:min(most, len(n.Acts))], Act.Says)
	if left := len(n.Acts) - len(clauses); left > 0 {
		clauses = append(clauses, fmt.Sprintf("and %d more", left))
	}
	return strings.Join(append(clauses, n.SaysWhen()), "; ")
}

// Short is the first act in words without its details and its hour, how many
// follow, and the earliest day.
func (n Next) Short() string {
	first := n.Acts[0]
	first.Act, _, _ = strings.Cut(first.Act, "; or ")
	first.Act, _, _ = strings.Cut(first.Act, " (")
	first.Ends, _, _ = strings.Cut(first.Ends, " ")
	clauses := []string{first.Says()}
	if left := len(n.Acts) - 1; left > 0 {
		clauses = append(clauses, fmt.Sprintf("%d more", left))
	}
	when := lists.If(n.Earliest == "", n.SaysWhen(), "earliest GO "+n.Earliest)
	return strings.Join(append(clauses, when), "; ")
}

// SaysWhen is the earliest day in words.
func (n Next) SaysWhen() string {
	return lists.If(n.Earliest == "", "when it can be GO cannot be told", "GO on "+n.Earliest+" at the earliest")
}

// Says is the act in words: what, whose it is, and when it can end at the earliest.
func (a Act) Says() string {
	who := a.Who
	if a.Ends != "" {
		who += ", earliest " + strings.TrimSuffix(a.Ends, " 00:00")
	}
	act, or, alternative := strings.Cut(a.Act, "; or ")
	act += " (" + who + ")"
	if alternative {
		act += ", or " + or
	}
	return act
}
