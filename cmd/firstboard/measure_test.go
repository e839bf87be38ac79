package main

// measurer is the command that is run and measured.
const measurer = "measured"
