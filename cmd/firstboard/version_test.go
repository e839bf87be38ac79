package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strings"
	"testing"
)

// The catalog that --version names is what rules writes, so that anybody can
// compare the two.
func TestVersionNamesTheCatalog(t *testing.T) {
	var rules, said, faults bytes.Buffer
	oneRun.Lock()
	defer oneRun.Unlock()
	if run([]string{toolName, "rules"}, &rules, &faults) != exitGo || run([]string{toolName, "--version"}, &said, &faults) != exitGo {
		t.Fatal(faults.String())
	}
	want := fmt.Sprintf("rules writes: %x\n", sha256.Sum256(rules.Bytes()))
	if !strings.HasPrefix(said.String(), toolName+" version "+version+"\nbuilt from ") || !strings.HasSuffix(said.String(), want) {
		t.Errorf("got %s", said.String())
	}
}
