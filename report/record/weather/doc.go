// Package weather reads open weather files into the hours of a year, for the
// service climate of a building there.
package weather
