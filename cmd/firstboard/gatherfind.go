package main

import (
	"cmp"
	"errors"
	_ "image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record"
)

// candidate is what may be a record: where it stands, and what outputs call it,
// a path below the one folder that holds all that was searched.
type candidate struct {
	path, shown string
	named       bool // by an argument, and not found by a search
}

// candidates are what may be a record under some paths, each once, whatever
// their order, in that of the names that are shown.
func candidates(args []string) ([]candidate, error) {
	known := map[string]candidate{} // by their own paths
	var roots []string
	for _, arg := range args {
		if arg == "" {
			return nil, errors.New("gather: the name of a record is empty; name a folder or a workbook")
		}
		path, err := filepath.Abs(arg)
		if err != nil {
			return nil, err
		}
		found := record.Search(path)
		roots = append(roots, lists.If(slices.Contains(found, path), filepath.Dir(path), path))
		for _, f := range found {
			own, err := filepath.EvalSymlinks(f)
			if err != nil {
				own = f
			}
			was, twice := known[own]
			if !twice || f < was.path {
				was.path = f
			}
			was.named = was.named || f == path
			known[own] = was
		}
	}
	base := above(roots)
	var all []candidate
	for _, f := range known {
		f.shown = below(base, f.path)
		all = append(all, f)
	}
	slices.SortFunc(all, func(a, b candidate) int {
		return cmp.Or(evidence.Order(a.shown, b.shown), strings.Compare(a.shown, b.shown))
	})
	return all, nil
}

// above is the folder that holds all of some folders.
func above(folders []string) string {
	base := folders[0]
	for _, f := range folders[1:] {
		for !within(base, f) && filepath.Dir(base) != base {
			base = filepath.Dir(base)
		}
	}
	return base
}

func within(folder, path string) bool {
	const between = string(os.PathSeparator)
	return path == folder || strings.HasPrefix(path, strings.TrimSuffix(folder, between)+between)
}

// below is a path as seen from a folder, with slashes and without letters that
// would do something to a terminal.
func below(folder, path string) string {
	if rel, err := filepath.Rel(folder, path); err == nil {
		path = rel
	}
	return strings.Map(func(r rune) rune { return lists.If(unicode.IsPrint(r), r, '?') }, filepath.ToSlash(path))
}
