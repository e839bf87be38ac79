// Package untrusted reads files that anyone may have made: whole, unchanged
// while they are read, and within bounds of size, so that no file costs more
// time or memory than a person's record would.
//
// Files are regular ones or refused. Archives unpack to so many bytes at most,
// and XML is bounded in the length of a text and in how deep its elements nest.
package untrusted
