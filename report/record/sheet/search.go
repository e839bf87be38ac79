package sheet

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"firstboard/report/evidence"
)

// Search finds what may be a record under a path: the path itself where it is
// a file or a folder with a table of a record in it, else every such folder and
// every workbook below it. A folder with files that like says are meant for a
// table is found too, for its faults. Hidden names are passed over, and a link
// to a folder is followed once, after all that stands there itself.
func Search(path string, known []string, like func(Other) bool) []string {
	s := search{known: known, like: like, seen: map[string]bool{}}
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() {
		return []string{path}
	}
	s.folder(path)
	for len(s.links) > 0 {
		next := s.links[0]
		s.links = s.links[1:]
		s.folder(next)
	}
	return s.found
}

// search is a search under way.
type search struct {
	known []string
	like  func(Other) bool
	seen  map[string]bool // folders, by their own paths
	links []string        // to folders, still to be followed
	found []string
}

// folder searches a folder, unless it was searched before.
func (s *search) folder(path string) {
	own, err := filepath.EvalSymlinks(path)
	if err != nil || s.seen[own] {
		return
	}
	s.seen[own] = true
	entries, err := os.ReadDir(path)
	if err != nil || s.record(entries) {
		s.found = append(s.found, path) // who reads it says what is wrong
		return
	}
	slices.SortFunc(entries, func(a, b os.DirEntry) int {
		return cmp.Or(evidence.Order(a.Name(), b.Name()), strings.Compare(a.Name(), b.Name()))
	})
	if s.meant(entries) {
		s.found = append(s.found, path)
	}
	for _, e := range entries {
		s.entry(filepath.Join(path, e.Name()), e)
	}
}

// entry takes in one entry of a folder that is no record.
func (s *search) entry(path string, e os.DirEntry) {
	linked := e.Type()&os.ModeSymlink != 0
	folder := e.IsDir()
	if linked {
		info, err := os.Stat(path)
		folder = err == nil && info.IsDir()
	}
	switch {
	case hidden(e.Name()):
	case folder && linked:
		s.links = append(s.links, path)
	case folder:
		s.folder(path)
	case isWorkbook(e.Name()):
		s.found = append(s.found, path)
	}
}

// record says whether a folder's entries hold a table of a record.
func (s *search) record(entries []os.DirEntry) bool {
	from := Source{known: s.known}
	return slices.ContainsFunc(entries, func(e os.DirEntry) bool { return !e.IsDir() && from.ofFile(e.Name()) != "" })
}

// meant says whether a file of a folder is meant for a table, by its name.
func (s *search) meant(entries []os.DirEntry) bool {
	return slices.ContainsFunc(entries, func(e os.DirEntry) bool {
		return !e.IsDir() && !hidden(e.Name()) && s.like(Other{Name: e.Name()})
	})
}

// hidden says whether a name is one that nobody sees, or that a spreadsheet
// program gives what it has open.
func hidden(name string) bool { return strings.HasPrefix(name, ".") || strings.HasPrefix(name, "~$") }

// isWorkbook says whether a file's name ends as a workbook's does.
func isWorkbook(name string) bool {
	return slices.Contains([]string{".xlsx", ".xlsm"}, strings.ToLower(filepath.Ext(name)))
}
