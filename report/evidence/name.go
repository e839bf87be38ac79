package evidence

import (
	"strconv"
	"strings"
	"unicode"
)

// Key is an identifier as it is compared: trimmed, inner spaces folded,
// without case. H1 is h1.
func Key(id string) string { return strings.ToLower(Tidy(id)) }

// Tidy trims an entry and folds its inner spaces.
func Tidy(s string) string {
	if plainlyTidy(s) {
		return s
	}
	return strings.Join(strings.Fields(s), " ")
}

// plainlyTidy says whether an entry of plain letters has no space to trim or to
// fold, as most have: a look at it costs less than parting it.
func plainlyTidy(s string) bool {
	before := byte(' ')
	for i := range len(s) {
		b := s[i]
		if b < ' ' || b > unicode.MaxASCII || b == ' ' && before == ' ' {
			return false
		}
		before = b
	}
	return s == "" || before != ' '
}

// Same says whether two identifiers name one thing.
func Same(a, b string) bool { return Key(a) == Key(b) }

// Order compares identifiers as a person lists them: H2 before H10.
func Order(a, b string) int {
	x, y := Key(a), Key(b)
	for x != "" && y != "" {
		nx, ny := digits(x), digits(y)
		if nx > 0 && ny > 0 {
			if c := compareNumbers(x[:nx], y[:ny]); c != 0 {
				return c
			}
			x, y = x[nx:], y[ny:]
			continue
		}
		if x[0] != y[0] {
			return strings.Compare(x, y)
		}
		x, y = x[1:], y[1:]
	}
	if c := len(x) - len(y); c != 0 {
		return c
	}
	return strings.Compare(Key(a), Key(b))
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

func compareNumbers(a, b string) int {
	a, b = strings.TrimLeft(a, "0"), strings.TrimLeft(b, "0")
	if len(a) != len(b) {
		return len(a) - len(b)
	}
	return strings.Compare(a, b)
}

// List joins names in plain words: "H1, H2 and H3", names that follow each
// other as "B1 to B56", and the first few of many.
func List(names []string) string {
	const most = 6
	parts := runs(names)
	switch n := len(parts); {
	case n == 0:
		return ""
	case n == 1:
		return parts[0].words
	case n > most:
		left := 0
		for _, p := range parts[most-1:] {
			left += p.names
		}
		return commas(parts[:most-1]) + " and " + Count(left, "more", "more")
	default:
		return commas(parts[:n-1]) + " and " + parts[n-1].words
	}
}

// run is one name, or several that follow each other.
type run struct {
	words string
	names int
}

// runs are the names in their order, three or more that count up as one.
func runs(names []string) []run {
	var all []run
	for i := 0; i < len(names); {
		first, n := numberedIn(names[i]), counting(names[i:])
		if n < 3 {
			all, i = append(all, run{names[i], 1}), i+1
			continue
		}
		last := numberedIn(names[i+n-1])
		all = append(all, run{first.things() + first.name() + " to " + last.name() + first.tail, n})
		i += n
	}
	return all
}

// numbered is a name that ends with a number, with what stands around it: the
// board, B1 and the lot of "board B1 of lot L1".
type numbered struct {
	head, stem, digits, tail string
}

// numberedIn takes the first word that ends with a number; digits are empty
// where there is none.
func numberedIn(name string) numbered {
	words := strings.Split(name, " ")
	for i, w := range words {
		if stem := strings.TrimRight(w, "0123456789"); len(stem) < len(w) {
			n := numbered{strings.Join(words[:i], " "), stem, w[len(stem):], strings.Join(words[i+1:], " ")}
			if n.tail != "" {
				n.tail = " " + n.tail
			}
			return n
		}
	}
	return numbered{}
}

func (n numbered) name() string { return n.stem + n.digits }

// things are the words before several names: boards.
func (n numbered) things() string {
	if n.head == "" {
		return ""
	}
	return plural(n.head) + " "
}

// counting is how many names from the first on count up by one.
func counting(names []string) int {
	first := numberedIn(names[0])
	start, err := strconv.Atoi(first.digits)
	n := 1
	for err == nil && n < len(names) {
		first.digits = strconv.Itoa(start + n)
		if numberedIn(names[n]) != first {
			break
		}
		n++
	}
	return n
}

func commas(parts []run) string {
	words := make([]string, len(parts))
	for i, p := range parts {
		words[i] = p.words
	}
	return strings.Join(words, ", ")
}

// Nearest is the choice that takes the fewest changes to reach from what was
// typed, or empty where there is no choice.
func Nearest(typed string, choices []string) string {
	best, least := "", -1
	for _, c := range choices {
		if n := Changes([]rune(Key(typed)), []rune(Key(c))); least < 0 || n < least {
			best, least = c, n
		}
	}
	return best
}

// NearMiss is the choice that was probably meant: the nearest one, where at
// most a third of its letters differ, or two.
func NearMiss(typed string, choices []string) string {
	best := Nearest(typed, choices)
	if Changes([]rune(Key(typed)), []rune(Key(best))) > max(2, len(best)/3) {
		return ""
	}
	return best
}

// Changes counts the letters to insert, drop or replace on the way from a to
// b (Levenshtein's distance).
func Changes(a, b []rune) int {
	const longest = 80
	a, b = a[:min(len(a), longest)], b[:min(len(b), longest)]
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, x := range a {
		corner := i
		row[0] = i + 1
		for j, y := range b {
			step := corner
			if x != y {
				step++
			}
			corner = row[j+1]
			row[j+1] = min(step, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
