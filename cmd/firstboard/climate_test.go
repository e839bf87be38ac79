package main

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// The invented place of the scripts: the mean dry bulb of each month, which it
// has 3 C below and above in turn, and its dew point all month, C.
const inventedClimate = "-5 -10, 0 -5, 10 5, 20 5, 20 10, 20 15, 21 15, 22.5 15, 20 10, 10 5, 0 -5, -5 -10"

// cmdWeather writes a weather file of the invented place for 2021. July is
// another one with AS "damp": 30 C with a dew point of 25 C.
func cmdWeather(ts *testscript.TestScript, neg bool, a []string) {
	args(ts, neg, a, 1, "weather FILE.epw [LINES|damp]")
	means := inventedClimate
	if len(a) > 1 && a[1] == "damp" {
		means = strings.Replace(means, "21 15", "30 25", 1)
	}
	lines := weatherFile(strings.Split(means, ", "))
	if len(a) > 1 && a[1] != "damp" {
		n, err := strconv.Atoi(a[1])
		ts.Check(err)
		lines = lines[:n]
	}
	ts.Check(os.WriteFile(ts.MkAbs(a[0]), []byte(strings.Join(lines, "\n")+"\n"), 0o644))
}

func weatherFile(means []string) []string {
	lines := []string{
		"LOCATION,Nowhere Fen,XX,YYY,invented,000000,45.0,-90.0,-6.0,200.0", "DESIGN CONDITIONS,0", "TYPICAL/EXTREME PERIODS,0",
		"GROUND TEMPERATURES,0", "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0", "COMMENTS 1,invented", "COMMENTS 2,invented",
		"DATA PERIODS,1,1,Data,Friday,1/1,12/31",
	}
	for at := time.Date(2021, 1, 1, 0, 0, 0, 0, time.UTC); at.Year() == 2021; at = at.Add(time.Hour) {
		mean, dew, _ := strings.Cut(means[at.Month()-1], " ")
		dry, _ := strconv.ParseFloat(mean, 64)
		dry += 3 - 6*float64(at.Hour()%2)
		if at.YearDay() == 40 {
			dew = "99.9"
		}
		lines = append(lines, fmt.Sprintf("2021,%d,%d,%d,60,?9,%.1f,%s,50,99000%s", at.Month(), at.Day(), at.Hour()+1, dry, dew,
			strings.Repeat(",0", 25)))
	}
	return lines
}
