package main

import (
	"bytes"
	"flag"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestDemonstration holds what the demonstration record prints, as folder and
// as workbook, to what a person reviewed. After a change that is right, write
// it anew with: go test ./cmd/firstboard -run Demonstration -args review
func TestDemonstration(t *testing.T) {
	const jobs, golden = "../../testdata/jobs/", "../../testdata/golden/"
	for _, c := range []struct {
		golden string
		args   []string
	}{
		{"millrace.txt", []string{"check", jobs + "millrace"}},
		{"millrace.txt", []string{"check", jobs + "millrace.xlsx"}},
		{"millrace.json", []string{"check", jobs + "millrace", "--json", "-"}},
	} {
		t.Run(c.args[1]+" "+c.golden, func(t *testing.T) {
			var out, faults bytes.Buffer
			if code := run(append([]string{toolName}, c.args...), &out, &faults); code != exitNoGo {
				t.Fatalf("exit code %d, want %d: %s", code, exitNoGo, faults.String())
			}
			if flag.Arg(0) == "review" {
				if err := os.WriteFile(golden+c.golden, out.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden + c.golden)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(string(want), out.String()); d != "" {
				t.Errorf("the output changed (- reviewed, + now):\n%s", d)
			}
		})
	}
}
