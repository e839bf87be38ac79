package drying

import (
	"errors"
	"fmt"
	"math"

	"firstboard/report/evidence"
)

// Hole is a probe hole with what was read in it, and the slab around it.
type Hole struct {
	ThicknessMM float64 // of the slab at the hole
	DepthMM     float64 // of the hole
	Faces       int     // faces the slab dries through: 1 or 2
	StartDay    float64 // on which it began to dry; NaN where nobody knows
	Samples     []Sample
	Air         []evidence.AirState // the log, in any order; its mean goes on before and after it
	LimitPct    float64             // RH
}

// ErrNoAir is returned where the log of the air is empty and the hole is not at
// its limit.
var ErrNoAir = errors.New("no air was recorded that the slab dries in")

func (h Hole) check() error {
	switch {
	case !(h.ThicknessMM > 0 && h.ThicknessMM < math.Inf(1)) || (h.Faces != 1 && h.Faces != 2):
		return fmt.Errorf("no slab is %.6g mm thick with %d drying faces", h.ThicknessMM, h.Faces)
	case !(h.DepthMM > 0 && h.DepthMM <= h.ThicknessMM):
		return fmt.Errorf("no hole is %.6g mm deep in a slab of %.6g mm", h.DepthMM, h.ThicknessMM)
	case !(h.LimitPct > 0 && h.LimitPct <= 100):
		return fmt.Errorf("a limit of %.6g %% RH is not above 0 and at most 100", h.LimitPct)
	case math.IsInf(h.StartDay, 0):
		return fmt.Errorf("drying began on no day: %v", h.StartDay)
	}
	for _, s := range h.Samples {
		if !(s.RHPct >= 0 && s.RHPct <= 100 && s.SDPct > 0 && math.Abs(s.Day) < math.Inf(1)) {
			return fmt.Errorf("no sample is %.6g %% RH with a deviation of %.6g on day %v", s.RHPct, s.SDPct, s.Day)
		}
	}
	for _, a := range h.Air {
		if !(a.RHPct >= 0 && a.RHPct <= 100 && a.TempC > -60 && a.TempC < 100 && math.Abs(a.Day) < math.Inf(1)) {
			return fmt.Errorf("no air is at %.6g %% RH and %.6g C on day %v", a.RHPct, a.TempC, a.Day)
		}
	}
	return nil
}

// layerMM is the thickness that dries through one face, and the depth of the
// hole in it from that face, 0 to 1.
func (h Hole) layerMM() (thickness, depth float64) {
	if h.Faces == 2 {
		return h.ThicknessMM / 2, min(h.DepthMM, h.ThicknessMM-h.DepthMM) / (h.ThicknessMM / 2)
	}
	return h.ThicknessMM, h.DepthMM / h.ThicknessMM
}

// ages are the lived days that may have passed before the course began: none
// where it is known when the slab began to dry.
func (h Hole) ages() []float64 {
	if !math.IsNaN(h.StartDay) {
		return []float64{0}
	}
	var ages []float64
	for age := 1.0; age < 1000; age *= 2.5 {
		ages = append(ages, age)
	}
	return ages
}
