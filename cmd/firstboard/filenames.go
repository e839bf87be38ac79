package main

import (
	_ "image/png"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"firstboard/report"
	"firstboard/report/lists"
)

// fileNames are the areas' ids with what no file name holds turned to a dash,
// cut to a length that every file system takes, and a number behind those that
// one or another would take for the same.
func fileNames(decisions []report.Decision) []string {
	var names []string
	taken := map[string]bool{}
	for _, d := range decisions {
		id := fileName(d.Area.ID)
		name := id
		for n := 2; taken[fileKey(name)]; n++ {
			name = id + "-" + strconv.Itoa(n)
		}
		taken[fileKey(name)] = true
		names = append(names, name)
	}
	return names
}

// fileName is an id as the name of a file without its kind.
func fileName(id string) string {
	const most = 60
	name := []rune(strings.Map(func(r rune) rune {
		return lists.If(strings.ContainsRune(`/\:*?"<>|.`, r) || !unicode.IsPrint(r), '-', r)
	}, id))
	short := strings.TrimRight(string(name[:min(len(name), most)]), " ")
	if short == "" || slices.Contains(deviceNames(), strings.ToLower(short)) {
		short += "-"
	}
	return short
}

// fileKey is what two names share that some file system takes for the same.
func fileKey(name string) string { return norm.NFC.String(strings.ToLower(norm.NFC.String(name))) }

// deviceNames are names that Windows takes for devices, with any ending.
func deviceNames() []string {
	all := []string{"con", "prn", "aux", "nul"}
	for n := range 10 {
		all = append(all, "com"+strconv.Itoa(n), "lpt"+strconv.Itoa(n))
	}
	return all
}
