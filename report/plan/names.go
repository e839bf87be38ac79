package plan

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// naming gives names to things still to be made. No name is given twice, and
// none that anything of the area or any instrument has: a probe, a spot and a
// piece are never called the same.
type naming struct {
	taken map[string]bool
	last  map[string]int // by head: the number that was given last
}

// takenNames are the names in use in the area, in those that share its slab
// tests, and of the instruments.
func (p *planner) takenNames() naming {
	all := naming{map[string]bool{}, map[string]int{}}
	for key := range p.Job.Instruments {
		all.taken[key] = true
	}
	for _, name := range slices.Concat(
		lists.Each(p.Slab.Holes, func(r slab.Hole) string { return r.Hole }),
		lists.Each(p.Slab.Dishes, func(r slab.Dish) string { return r.Dish }),
		lists.Each(p.Slab.PHs, func(r slab.PH) string { return r.Spot }),
		lists.Each(p.Slab.Carbides, func(r slab.Carbide) string { return r.Spot }),
		lists.Each(p.Room.Surfaces, func(r acclimate.Surface) string { return r.Spot }),
		lists.Each(p.Wood.Rows, func(r wood.Row) string { return r.Piece }),
		lists.Each(p.Wood.Rows, func(r wood.Row) string { return r.Lot }),
	) {
		all.taken[evidence.Key(name)] = true
	}
	return all
}

// more are names for so many new things, numbered on after the head.
func (n naming) more(head string, count int) []string {
	var all []string
	for len(all) < count {
		n.last[head]++
		if name := fmt.Sprint(head, n.last[head]); !n.taken[evidence.Key(name)] {
			all = append(all, name)
		}
	}
	return all
}

// span writes names in few words and leaves none out: "H1, H2 and B1 to B9".
func span(names []string) string {
	var parts []string
	for i := 0; i < len(names); {
		n := counting(names[i:])
		if n < 3 {
			n = 1
			parts = append(parts, names[i])
		} else {
			parts = append(parts, names[i]+" to "+names[i+n-1])
		}
		i += n
	}
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " and " + parts[len(parts)-1]
}

// counting is how many names from the first on count up by one.
func counting(names []string) int {
	head := strings.TrimRight(names[0], "0123456789")
	first, err := strconv.Atoi(names[0][len(head):])
	n := 1
	for err == nil && n < len(names) && names[n] == head+strconv.Itoa(first+n) {
		n++
	}
	return n
}
