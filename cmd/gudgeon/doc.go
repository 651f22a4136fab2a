// Gudgeon works on the rear suspension of bicycles and motorcycles: how the
// linkage moves, what its pins carry, whether the joints there hold.
//
//	gudgeon demo          the whole of it on a built-in design, as files
//	gudgeon examples      the built-in designs, and why one would build each
//	gudgeon sweep FILE    leverage, axle path, anti-squat, wheel force, summary
//	gudgeon plot FILE     curves over the travel, SVG or PNG
//	gudgeon draw FILE     the linkage to scale at chosen positions
//	gudgeon compare A B   what changed from one design to the next
//	gudgeon loads FILE    the force in every pin, for each load case
//	gudgeon size FILE     geometry and strength of every joint
//	gudgeon check FILE    whether the design and every variant hold what they must
//
// FILE is a design file, - for standard input, or example:NAME for a built-in
// design. The format of the file is the documentation of package
// cmd/internal/design.
//
// # Results
//
// A table, and the same as Markdown, is for reading: it shows the rows that
// tell the story.
//
//	$ gudgeon sweep example:freshet --columns travel_mm,leverage_ratio
//	Freshet 154
//	The linkage over its travel: x forward, y up from the crank axis, 0 at full extension; gear 32x21
//
//	  at                       travel  leverage
//	                               mm     mm/mm
//	  ─────────────────────────────────────────
//	  start, highest leverage     0.0     2.926
//	  25 %                       38.5     2.798
//	  sag                        48.2     2.763
//	  50 %                       76.9     2.667
//	  75 %                      115.4     2.559
//	  end, lowest leverage      153.9     2.499
//
//	Summary
//	  figure                      value  unit
//	  ────────────────────────────────────────
//	  wheel travel               153.86  mm
//	  shock stroke                57.50  mm
//	  leverage at the start      2.9264  mm/mm
//	  leverage at the end        2.4991  mm/mm
//	  travel over stroke         2.6758  mm/mm
//	  lowest leverage            2.4991  mm/mm
//	  highest leverage           2.9264  mm/mm
//	  progression                 14.60  %
//	  leverage at sag            2.7634  mm/mm
//	  sag                          48.2  mm
//	  sag of the travel            31.3  %
//	  anti-squat at sag            57.4  %
//	  anti-rise at sag             49.7  %
//	  pedal kickback at the end    7.31  °
//	  chain growth at the end      8.27  mm
//	  axle rearward at most        1.20  mm
//	  travel where that is         32.0  mm
//	  wheel force at the end       2650  N
//	  energy to bottom            154.8  J
//
//	Required by the design
//	  figure              value  allowed        margin
//	  ─────────────────────────────────────────────────────
//	  sag of the travel    31.3  25 to 33 %        1.7  met
//	  progression         14.60  10 to 20 %       4.60  met
//	  wheel travel       153.86  150 to 156 mm    2.14  met
//
// CSV and JSON are for programs: they hold everything, with 12 significant
// digits, under names that carry their units and stay as they are. A value that
// does not exist is empty in CSV and null in JSON. The ending of -o decides the
// format where --format does not.
//
//	$ gudgeon sweep example:freshet --format csv --positions 3 --columns travel_mm,stroke_mm,leverage_ratio
//	travel_mm,stroke_mm,leverage_ratio
//	0,0,2.92636698346
//	76.9278834671,27.5203730428,2.66683614043
//	153.855766934,57.5,2.49909665223
//
// Files are written whole or not at all. The same input gives the same bytes.
//
// # Variants
//
// --variant NAME lays [variant.NAME] over the design. --variant all gives the
// design as it stands and every variant: a page each, in CSV behind a leading
// column, in JSON as a list in place of the members that differ; curves lie
// over each other. gudgeon check does that by itself:
//
//	$ gudgeon sweep example:freshet --variant all --format csv --positions 2 --columns travel_mm,leverage_ratio
//	variant,travel_mm,leverage_ratio
//	,0,2.92636698346
//	,153.855766934,2.49909665223
//	lively,0,2.87622558147
//	lively,152.852668494,2.51066679247
//
// # Mistakes
//
// All mistakes of a file are told in one run on standard error, each with its
// line, what is there and what to write; nothing is computed or written then.
// With --format json they are JSON:
//
//	$ gudgeon sweep example:freshet --format json --positions one
//	{
//	  "schema": "gudgeon/diagnostics/1",
//	  "errors": [
//	    {
//	      "severity": "error",
//	      "code": "wrong-value",
//	      "path": "",
//	      "message": "--positions takes a whole number from 2 to 100000",
//	      "found": "this is one",
//	      "hint": "",
//	      "file": "",
//	      "line": 0,
//	      "column": 0,
//	      "end_line": 0,
//	      "end_column": 0
//	    }
//	  ]
//	}
//
// The codes of mistakes in the call are
//
//	unknown-command unknown-flag unknown-column unknown-picture
//	wrong-call wrong-flag wrong-value missing-value missing-file
//	extra-argument named-twice unknown-ending several-to-stdout past-travel
//	no-such-file no-such-example no-such-load-case not-a-file cannot-read
//	no-linkage no-load-case no-drivetrain no-such-gear nothing-to-size
//	nothing-to-compare column-without-input picture-without-input
//	nothing-to-draw cannot-draw would-overwrite cannot-write
//
// and of what is told after a result
//
//	no-sag case-remark letters-missing not-met
//
// those of mistakes in the file are listed in package cmd/internal/design.
//
// # Exit codes
//
//	  0  done
//	  1  done, and a [[require]] or a joint check is not met
//	  2  the input or the call is wrong
//	  3  an output could not be written
//	130  stopped by Ctrl-C; nothing was written
//
// A requirement or check that is not met is told after the result, with its
// value, its limit and what would move it.
package main
