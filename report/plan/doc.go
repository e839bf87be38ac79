// Package plan says what is still to be done before an area can be judged GO:
// the acts, whose each is, how long it takes, when it is planned for and when
// it can end at the earliest.
//
// Every act is told once. The plan of a job, what is missing under a verdict
// and what comes next are the same acts in three lengths.
package plan
