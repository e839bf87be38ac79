// Package said puts into words what was decided on an area: what stops it, its
// worst reading, what was tested, who signed, and the advice below its checks.
package said
