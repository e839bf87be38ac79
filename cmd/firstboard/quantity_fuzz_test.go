package main

import (
	"bytes"
	"strings"
	"testing"
)

// FuzzQuantity: whatever a flag holds, there is an answer in numbers, or one line
// that names the flag.
func FuzzQuantity(f *testing.F) {
	for _, text := range []string{
		"70F", "21.5 °C", "45%", "70", "-40F", "1e3F", "7,5C", "0x10F", "..F", "+5C", "NaNF", "InfC",
		strings.Repeat("9", 39) + "F",
	} {
		f.Add(text, "45%")
		f.Add("70F", text)
	}
	f.Fuzz(func(t *testing.T, temp, rh string) {
		var out, faults bytes.Buffer
		code := run([]string{toolName, "calc", "emc", "--temp=" + temp, "--rh=" + rh}, &out, &faults)
		switch said := faults.String(); {
		case code == exitGo && (out.Len() == 0 || strings.Contains(out.String(), "NaN") || strings.Contains(out.String(), "Inf")):
			t.Errorf("answered with %q", out.String())
		case code != exitGo && (code != exitUnusable || !strings.Contains(said, "--") || out.Len() > 0):
			t.Errorf("exit code %d, %q, %q", code, said, out.String())
		}
	})
}
