// Package instruments judges what stands behind the readings of an area: the
// calibration of every instrument that was used, its checks against a standard,
// the probe of every hole, and the age of every reading.
//
// Its subject is [Readings]: slab, wood and air as their own packages judge them.
package instruments
