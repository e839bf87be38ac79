//go:build !linux

package main

// inMemory is empty: where else memory can be had as a folder is not known.
func inMemory() string { return "" }
