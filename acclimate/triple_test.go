package acclimate

import (
	"math"
	"testing"
)

// The constant that parts frost from dew is the equation's own value.
func TestLogAtTriple(t *testing.T) {
	if got := logSaturation(triplePoint); math.Abs(got-logAtTriple) > 1e-7 {
		t.Errorf("logAtTriple is %v, the equation gives %.9f", logAtTriple, got)
	}
}
