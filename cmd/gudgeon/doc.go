// Gudgeon works on the rear suspension of bicycles and motorcycles: how the
// linkage moves, what its pins carry, whether the joints there hold.
//
//	gudgeon demo          the whole of it on a built-in design, as files
//	gudgeon examples      the built-in designs, and why one would build each
//	gudgeon report FILE…  all of it as one HTML page to read, print and pass on
//	gudgeon sweep FILE    leverage, axle path, anti-squat, wheel force, summary
//	gudgeon plot FILE     curves over the travel, SVG or PNG
//	gudgeon draw FILE     the linkage to scale at chosen positions
//	gudgeon compare A B   what changed from one design to the next
//	gudgeon explore FILE  many designs: numbers moved over ranges, results of each
//	gudgeon gather PART…  joins the parts of a long exploration
//	gudgeon sensitivity FILE  which way to move each pivot to change a figure
//	gudgeon tolerance FILE    what holes that are off leave of leverage, travel and all
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
// A report is one HTML file that needs nothing but a browser. A rule at its foot
// takes the linkage, every curve and the table of the position through the
// travel; it reads and prints as well without its script. Several designs are
// laid beside each other.
//
//	$ gudgeon report example:freshet example:freshet@lively -o freshet.html
//	wrote freshet.html
//
// Files are written whole or not at all, but for those of --resume. The same input gives the same bytes.
//
// # Comparing
//
// gudgeon compare takes two to six designs, each a FILE or FILE@VARIANT, and
// tells everything as a difference from the first: points that moved, parts
// that came, went or were renamed, summary figures, curves, the largest force
// in each pin over the load cases of one name, the safety of each joint. Curves
// are compared at the same travel where the travels are within 5 % of each
// other and at the same share of them elsewhere (--over); every design is asked
// for its own values there, nothing is interpolated. The last design is judged.
//
//	$ gudgeon compare example:freshet example:freshet@lively --columns leverage_ratio --positions 3
//	Freshet 154 → lively
//	Differences are from A: more is +; those of percentages are in points
//
//	     design                       from                    gear
//	  ─────────────────────────────────────────────────────────────
//	  A  Freshet 154                  example:freshet         32x21
//	  B  Freshet 154, variant lively  example:freshet@lively  32x21
//
//	Points that stand elsewhere
//	                        y in      B−A  B−A
//	  point        x in A      A  forward   up
//	                   mm     mm       mm   mm
//	  ────────────────────────────────────────
//	  shock-frame  108.00  98.00    +5.00    0
//
//	Summary
//	  figure                          A       B      B−A     %  unit
//	  ───────────────────────────────────────────────────────────────
//	  wheel travel               153.86  152.85    -1.00  -0.7  mm
//	  shock stroke                57.50   57.50        0     0  mm
//	  leverage at the start      2.9264  2.8762  -0.0501  -1.7  mm/mm
//	  leverage at the end        2.4991  2.5107  +0.0116  +0.5  mm/mm
//	  travel over stroke         2.6758  2.6583  -0.0174  -0.7  mm/mm
//	  lowest leverage            2.4991  2.5107  +0.0116  +0.5  mm/mm
//	  highest leverage           2.9264  2.8762  -0.0501  -1.7  mm/mm
//	  progression                 14.60   12.71    -1.89        %
//	  leverage at sag            2.7634  2.7365  -0.0269  -1.0  mm/mm
//	  sag                          48.2    47.0     -1.2  -2.4  mm
//	  sag of the travel            31.3    30.8     -0.6        %
//	  anti-squat at sag            57.4    57.6     +0.2        %
//	  anti-rise at sag             49.7    49.6     -0.1        %
//	  pedal kickback at the end    7.31    7.26    -0.05  -0.7  °
//	  chain growth at the end      8.27    8.21    -0.05  -0.7  mm
//	  axle rearward at most        1.20    1.20        0     0  mm
//	  travel where that is         32.0    32.0        0        mm
//	  wheel force at the end       2650    2638      -12  -0.5  N
//	  energy to bottom            154.8   154.8        0     0  J
//
//	Curves over travel
//	  column              at      A      B     B−A
//	                      mm
//	  ──────────────────────────────────────────────────────────
//	  leverage, mm/mm    0.0  2.926  2.876  -0.050  B most apart
//	                    76.4  2.668  2.648  -0.020
//	                   152.9  2.500  2.511  +0.011
//
//	  compared as far as all go, 152.9 mm; 153.9 mm in A, 152.9 mm in B
//	…
//
// The file is the longest part of the argument, up to an @ or to its end, that
// names something on disk: a file called frame.toml@low is so meant where there
// is one, and a folder may hold an @ as well.
//
// # Exploring
//
// gudgeon explore moves numbers of the file over ranges and gives the results of
// each candidate as a row: every combination, each number by itself
// (--one-at-a-time), or points that fill the ranges evenly (--samples, by a
// randomized Halton sequence that --seed chooses).
//
//	move  = path "=" range
//	path  = point | point "." ("x" | "y" | "z") | the path of any number in the file
//	range = ("±" | "+-") amount [":" step] [unit]
//	      | from ":" to [":" step] [unit]
//
// ± is seen from what the file has; from and to are too for a point and its
// coordinates, and are the number itself for any other path. A range without
// steps has 5 values in a grid and any in a sample; one of a count (teeth) every
// whole number. With steps a sample keeps to them as well. Gears that name a
// chainring or a cog follow it. Values are rounded to 12 digits, so that a row
// can be copied into the file and gives the same results:
//
//	$ gudgeon explore example:freshet --move rocker.x=-4:4:4 --figures travel_mm,progression_percent,joints
//	candidate,rocker.x_mm,status,travel_mm,progression_percent,joint.rocker spline.safety,meets,reason
//	1,11,ok,143.481495879,10.7107742004,1.30592838683,false,
//	2,15,ok,153.855766934,14.6007091266,1.28605401883,true,
//	3,19,ok,164.924077441,18.928125589,1.27005262405,false,
//
// The columns: candidate, its number from 1; moved, with --one-at-a-time; the
// numbers as they would stand in the file; status, ok or the code of what is
// wrong; the summary figures; pin.NAME_N, the largest force of a pin over all
// load cases; joint.NAME.safety; meets, where the design requires something or
// joints are sized: whether all of that holds; reason, empty where status is ok.
// The exit code is 1 where not one candidate meets all.
//
// JSON Lines begins with a line that tells what the rows belong to: design,
// variant, moves, seed, how many candidates, the shard and a digest of all that
// decides the rows. CSV has nothing but its header and rows, so the two that need
// that line ask for .jsonl: --shard 3/16, whose parts gudgeon gather joins to
// the bytes of one run, and --resume FILE, which writes FILE row by row and goes
// on behind its last whole row. The rows are the same for any --jobs, and memory
// does not grow with their number.
//
// With -o and a name in .svg or .png the result is a picture instead: a map of
// one figure over two numbers, with × at the design as it stands, cells that
// cannot be built hatched and a contour where a [[require]] of the figure ends;
// or the leverage curves of each value of one number.
// # Moving a pivot
//
// gudgeon sensitivity tells what a figure, a column at one travel or the force
// in a pin changes by per mm that each point is moved, the strongest first, and
// in which direction it rises; a picture has it as arrows. The changes are exact
// derivatives: half a mm has half the effect as nearly as the linkage is
// straight over that half mm.
//
//	$ gudgeon sensitivity example:rill --figure leverage_end
//	Rill 128
//	What each point changes per mm that it is moved, at full extension; x forward, y up, directions from
//	  forward to up
//
//	Leverage at the end
//	  is 2.4356 mm/mm
//
//	  point             forward            up       at most  rises
//	               mm/mm per mm  mm/mm per mm  mm/mm per mm      °
//	  ──────────────────────────────────────────────────────────────────
//	  main              +0.0056       +0.0135        0.0146     68  up
//	  shock-arm         +0.0008       -0.0065        0.0065    -83  down
//	  axle              -0.0054       -0.0016        0.0056   -163  back
//	  shock-frame       -0.0010       -0.0055        0.0055   -101  down
//
//	Required by the design
//	  figure             value  allowed       margin
//	  ───────────────────────────────────────────────────
//	  sag of the travel   30.8  25 to 33 %       2.2  met
//	  progression         8.64  at least 6 %    2.64  met
//
// # Parts that are off
//
// gudgeon tolerance takes every hole of every link, and the shock's length, to
// be off by itself within the limits of the file's [tolerance] table, and tells
// the standard deviation and the worst case of each figure and of the curves
// over the stroke, to first order and exact as such. An error of one hole is
// not a moved point: it shifts the whole linkage at full extension. A [[require]]
// is held against the spread: Cpk, and the share of bikes outside. --monte-carlo
// draws whole bikes at random, the same ones for the same --seed, and computes
// each anew.
//
// # Joints
//
// gudgeon size tells of every joint the load case that governs, its checks, the
// figures beside them that decide nothing ("figures" in JSON) and its geometry.
// --propose, or propose = true in a joint of kind spline, goes through the series
// of the standards for all splines that carry its loads in its room, and keeps
// those that no other betters in diameter, length, mass and play at once, each with
// the check that governs and with what the next shorter, slimmer and wider bored
// one fails by: in JSON the joint's "proposals", with the lines that put each into
// the file. With --propose CSV is the list of these instead of the checks. A page
// shows the lightest of each diameter, and the lines of the one to --take.
//
// --sheet FOLDER writes a data sheet of each joint besides: its inputs, checks,
// figures and dimensions as Markdown, and of a spline the teeth of shaft and hub
// drawn in mesh with their inspection table, as SVG and PNG.
//
//	$ gudgeon size example:freshet --sheet sheets -o size.csv
//	wrote sheets/rocker-spline.svg
//	wrote sheets/rocker-spline.png
//	wrote sheets/rocker-spline.md
//	wrote size.csv
//
// # Variants
//
// --variant NAME, or FILE@NAME, lays [variant.NAME] over the design. --variant all gives the
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
//	unknown-figure unknown-pin figure-without-input dead-point
//	wrong-call wrong-flag wrong-value missing-value missing-file
//	extra-argument named-twice unknown-ending several-to-stdout past-travel
//	no-such-file no-such-example no-such-load-case not-a-file cannot-read
//	no-linkage no-load-case no-drivetrain no-such-gear nothing-to-size
//	nothing-to-compare nothing-to-propose column-without-input picture-without-input
//	nothing-to-draw cannot-draw would-overwrite cannot-write
//	wrong-move wrong-range no-such-number
//	too-many not-a-result other-exploration missing-part cut-off
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
