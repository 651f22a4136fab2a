// Package diag is what a user sees when something is wrong: a [Diagnostic]
// says what must hold, what is there and what to write instead, a [List] of
// them is written for people or as JSON.
//
//	tarn.toml:14:10: error: module must be greater than 0
//	   14 | module = -1.25
//	      |          ^^^^^ this is -1.25
//	      hint: give the module in mm, for example 1.25
//	tarn.toml: 1 error
//
// Lines and columns count from 1, columns in characters. The marks under the
// line stand by display width: a tab takes four cells, a wide letter two, a
// combining mark none. What could move the cursor or turn the writing
// direction is printed as an escape, so that no input reaches the terminal as
// anything but text.
package diag
