package main

import (
	"archive/zip"
	"bytes"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// oldWords are the words of the first edition and those that no American trade
// uses. They are written in pieces here, so that the search does not find
// itself.
func oldWords() []string {
	return []string{
		"nou" + "ght", "spo" + "ilt", "sho" + "rn", "stands? in the " + "way", "in the " + "way", "as firstboard " + "judged",
		"nobody " + "looked", "(?-i:La" + "y on)", "lev" + "eller", "resid" + "ual-current", "mains " + "leads", "plant takes " + "over",
		"col" + "our", "gr" + "ey", "met" + "re", "neigh" + "bour(ing|s)?", "judge" + "ment", "whi" + "lst", "air plant " + "off",
		"roof " + "open", "cover" + "ing maker", "adhesive " + "maker", "membrane " + "maker",
	}
}

// printedWords are old words that may still name a thing of the code, but are
// not printed.
func printedWords() []string {
	return append(oldWords(), "sta"+"ck", "text"+"ile", "cover"+"ing", "fix"+"ing", "the ba"+"se", "Emission "+"max",
		"men"+"d(ed|s)?", "ane"+"w", "rec"+"kon(ed|s)?", "hee"+"d")
}

func anyOf(words []string) *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(` + strings.Join(words, "|") + `)\b`)
}

// Code, docs, scripts and records are in the trade's words. The names of the
// first edition stand where an old record is refused with the new ones.
func TestFilesHoldNoOldWords(t *testing.T) {
	t.Parallel()
	old := anyOf(oldWords())
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir():
			if d.Name() == ".git" || d.Name() == "published" {
				return filepath.SkipDir
			}
			return nil
		case strings.Contains(path, "renamed") || strings.Contains(path, "refused"):
			return nil
		}
		switch filepath.Ext(path) {
		case ".go", ".md", ".txtar", ".csv", ".txt", ".json", ".yml", ".py", ".mjs", "":
			data, err := os.ReadFile(path)
			tellOldWords(t, path, string(data), old)
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func tellOldWords(t *testing.T, where, text string, old *regexp.Regexp) {
	t.Helper()
	for i, line := range strings.Split(text, "\n") {
		if word := old.FindString(line); word != "" {
			t.Errorf("%s line %d says %q: %.150s", where, i+1, word, strings.TrimSpace(line))
		}
	}
}

// What people read is too: the help of every command, what they print of the
// demonstration and of an empty record, and the workbooks.
func TestOutputsHoldNoOldWords(t *testing.T) {
	t.Parallel()
	old := anyOf(printedWords())
	dir := t.TempDir()
	demo, book, empty := "../../testdata/jobs/millrace", filepath.Join(dir, "decision.xlsx"), filepath.Join(dir, "empty.xlsx")
	calls := [][]string{{"rules"}, {"plan", demo}, {"check", demo, "-o", book}, {"check", demo, "--json", "-"}, {"blank", empty}}
	for _, words := range commandWords(newApp(nil, nil).Commands, nil) {
		calls = append(calls, append(words, "--help"))
	}
	for _, words := range calls {
		var out bytes.Buffer
		if code := run(append([]string{toolName}, words...), &out, &out); code > exitNoGo {
			t.Fatalf("%v: exit code %d: %s", words, code, out.String())
		}
		tellOldWords(t, strings.Join(words, " "), out.String(), old)
	}
	tag := regexp.MustCompile(`<[^>]*>`)
	for _, file := range []string{book, empty} {
		r, err := zip.OpenReader(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range r.File {
			in, err := part.Open()
			if err != nil {
				t.Fatal(err)
			}
			data, err := io.ReadAll(in)
			if err != nil {
				t.Fatal(err)
			}
			if strings.HasPrefix(part.Name, "xl/worksheets/sheet") || part.Name == "xl/sharedStrings.xml" {
				tellOldWords(t, filepath.Base(file)+" "+part.Name, tag.ReplaceAllString(string(data), "\n"), old)
			}
		}
		r.Close()
	}
}
