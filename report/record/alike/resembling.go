package alike

import (
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"firstboard/report/evidence"
	"firstboard/report/record/sheet"
)

// Resembles says whether a name is a table's with something added or misspelt.
func Resembles(name, table string) bool {
	typed, known := Joined(name), Joined(table)
	if typed == "" {
		return false
	}
	const short, long = 4, 7 // letters in which one is misspelt, and two
	allowed := 0
	switch n := len(known); {
	case n >= long:
		allowed = 2
	case n >= short:
		allowed = 1
	}
	if evidence.Changes([]rune(typed), []rune(known)) <= allowed || typed == known+"s" {
		return true
	}
	words, of := wordsIn(name), wordsIn(table)
	if len(words) < len(of) {
		return false
	}
	before := len(words) - len(of)
	ends := slices.Equal(words[before:], of) && (len(of) > 1 || !slices.ContainsFunc(words[:before], tellsMore))
	return slices.Equal(words[:len(of)], of) || ends
}

// tellsMore says whether a word before a table's name makes it another thing:
// a copy of it is none.
func tellsMore(word string) bool {
	return !slices.Contains([]string{"copy", "of", "old", "new", "my"}, word) && !evidence.Digits(word)
}

// Joined is a name by its letters and digits alone, without case.
func Joined(name string) string { return strings.Join(wordsIn(name), "") }

// wordsIn are the words of a name and its numbers, without case.
func wordsIn(name string) []string {
	var words []string
	var last rune
	for _, r := range strings.ToLower(name) {
		switch letter, digit := unicode.IsLetter(r), unicode.IsDigit(r); {
		case !letter && !digit:
		case len(words) == 0, letter != unicode.IsLetter(last), !unicode.IsLetter(last) && !unicode.IsDigit(last):
			words = append(words, string(r))
		default:
			words[len(words)-1] += string(r)
		}
		last = r
	}
	return words
}

// Base is a file's name without what says of which kind it is.
func Base(file string) string {
	for {
		ext := filepath.Ext(file)
		if !sheet.IsText(ext) && !slices.Contains([]string{".bak", ".old"}, strings.ToLower(ext)) {
			return file
		}
		file = strings.TrimSuffix(file, ext)
	}
}
