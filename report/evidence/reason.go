package evidence

import (
	"fmt"
	"strings"
	"unicode"
)

// reason tells the worst of the usable items, the value first: "highest of 5
// holes: H4, 87.9 % RH (limit 85 %, GLUE-W)".
func (w Item) reason(usable []Item, acc Acceptance) string {
	s := w.among(usable) + w.inWords(usable) + " (" + w.Limit.clause() + ")"
	if w.U == nil || !w.U.Known {
		return s
	}
	if acc.Guarded {
		return s + fmt.Sprintf(", its uncertainty of %s counted against it", join(w.U.Value.Short(), w.Limit.Unit()))
	}
	if room, _, bounded := w.margin(acc); bounded && room.Sign() >= 0 && room.Cmp(w.U.Value) < 0 {
		s += fmt.Sprintf("; close: within its uncertainty of %s, %s", join(w.U.Value.Short(), w.Limit.Unit()),
			acc.agreed())
	}
	return s
}

// inWords is the value by the name of what was read, or the clause that tells
// it.
func (w Item) inWords(usable []Item) string {
	name := w.Name
	if len(usable) > 1 {
		name = strings.TrimPrefix(strings.TrimPrefix(name, noun(usable)), " ")
	}
	if w.Says != "" {
		return w.Says
	}
	return name + ", " + w.Amount()
}

// among says which of the usable items this one is: nothing where it is alone.
func (w Item) among(usable []Item) string {
	names := map[string]bool{}
	for _, it := range usable {
		names[it.Name] = true
	}
	if len(names) < 2 {
		return ""
	}
	which := w.extreme(usable)
	things := noun(usable)
	if things == "" {
		return fmt.Sprintf("%s of %d values: ", which, len(usable))
	}
	return fmt.Sprintf("%s of %d %s: ", which, len(names), plural(things))
}

// extreme says which end of all values the item is, where all are held against
// one limit.
func (w Item) extreme(usable []Item) string {
	room, end, bounded := w.margin(Acceptance{})
	for _, it := range usable {
		if !bounded || it.Limit.Text() != w.Limit.Text() || it.Limit.Unit() != w.Limit.Unit() {
			return map[bool]string{true: "worst", false: "closest"}[bounded && room.Sign() < 0]
		}
	}
	if w.Limit.Most.Shown() && end.Number.Exact().Equal(w.Limit.Most.Number.Exact()) {
		return "highest"
	}
	return "lowest"
}

// noun is what all names begin with, as "hole" of "hole H1" and "hole H2".
func noun(items []Item) string {
	words := strings.Fields(items[0].Name)
	words = words[:max(0, len(words)-1)]
	for _, it := range items[1:] {
		n := 0
		for other := strings.Fields(it.Name); n < len(words) && n < len(other)-1 && words[n] == other[n]; {
			n++
		}
		words = words[:n]
	}
	for len(words) > 0 && named(words[len(words)-1]) {
		words = words[:len(words)-1]
	}
	return strings.Join(words, " ")
}

// named says whether a word is a name and no noun.
func named(word string) bool {
	return strings.IndexFunc(word, unicode.IsUpper) == 0 || strings.ContainsFunc(word, unicode.IsDigit)
}

func plural(things string) string {
	if strings.HasSuffix(things, "sh") {
		return things + "es"
	}
	return things + "s"
}

// clause is the limit and whose it is: "limit 85 %, GLUE-W".
func (l Limit) clause() string {
	if l.Text() == "" {
		return "no limit is known"
	}
	s := "limit " + join(l.Text(), l.Unit().short())
	low, high := l.Least.Whose, l.Most.Whose
	switch {
	case low != "" && high != "" && !Same(low, high):
		return s + ", " + low + " and " + high
	case high != "":
		return s + ", " + high
	case low != "":
		return s + ", " + low
	}
	return s
}

// short is the unit where what it measures has just been said.
func (u Unit) short() Unit {
	switch u {
	case RH, MC, CM:
		return Percent
	}
	return u
}

func (a Acceptance) agreed() string {
	if a.Agreed == "" {
		return "accepted as read, and nobody is named who agreed to that"
	}
	return "accepted as read, as agreed by " + a.Agreed
}

// lackFinding tells why values cannot be used, each reason once with the names
// it concerns.
func lackFinding(lacking []Item, acc Acceptance) Finding {
	var reasons []string
	names := map[string][]string{}
	for _, it := range lacking {
		why := it.lack(acc)
		if names[why] == nil {
			reasons = append(reasons, why)
		}
		if all := names[why]; len(all) == 0 || all[len(all)-1] != it.Name {
			names[why] = append(all, it.Name)
		}
	}
	for i, why := range reasons {
		reasons[i] = List(names[why]) + ": " + why
	}
	const most = 4
	if n := len(reasons); n > most {
		reasons = append(reasons[:most], Count(n-most, "more reason", "more reasons"))
	}
	return Finding{Reason: strings.Join(reasons, "; "), Evidence: Places(lacking)}.Against(lacking[0].Limit)
}

// others are the names of items beside the first, without the noun that all
// begin with.
func others(w Item, items []Item, things string) string {
	var names []string
	seen := map[string]bool{w.Name: true}
	for _, it := range items {
		if !seen[it.Name] {
			seen[it.Name] = true
			names = append(names, strings.TrimPrefix(strings.TrimPrefix(it.Name, things), " "))
		}
	}
	return List(names)
}

// beyond is where a value that breaks the limit lies.
func (l Limit) beyond() string {
	switch {
	case !l.Least.Shown():
		return "over"
	case !l.Most.Shown():
		return "under"
	}
	return "outside"
}
