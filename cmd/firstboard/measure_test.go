package main

// measurer is the command that runs the command and measures it.
const measurer = "measured"
