// Package dossier writes the report of one or several designs as one HTML file
// that needs nothing else: it opens from disk without a network, prints on A4,
// follows the light or dark of the reader's system, and is legible in full
// without its script. It is handed tables, drawings and numbers; it knows no
// mechanism.
//
//	+------------------------------------------------------------+
//	| title block: what it is of, its main figures               |
//	| 1  Layout      drawing                | at this position   |
//	| 2  Kinematics  curves, a cursor each  | figures            |
//	|    …           tables                                      |
//	| 9  Inputs      the design file as text                     |
//	+------------------------------------------------------------+
//	| travel |''''|''''|''''|''''|''''|  a rule, along the foot  |
//	+------------------------------------------------------------+
//
// The rule at the foot is a range input. Its script takes all drawings to the
// place on it: the pieces of each linkage, a cursor with its values in each
// panel of curves, the table of the position. Everything that it shows was
// computed for that place: a Way has stations, a column has a value for each of
// them, nothing is interpolated.
//
// # Safety
//
// Names and files come from anywhere. All text passes html/template, the
// numbers pass it as JSON; what goes in as it is are the drawings of package
// plots, which escapes its own, and the style sheet and the script of this
// package. The page forbids itself to load anything, and any script but its
// own, by a content security policy.
//
// # The same bytes
//
// No clock, no random number, no order of a map: the same input gives the same
// file.
package dossier
