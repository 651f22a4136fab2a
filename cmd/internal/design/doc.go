// Package design reads design files: one frame's linkage and the joints to
// size, written by hand in TOML. This is the reference of the format.
//
//	name = "Moraine 150"
//
//	[points]                                  # mm, design position
//	main      = [  12,  36]
//	axle      = [-436,  12]
//	shock-arm = [-110, 214]
//	shock-top = [ 176, 262]
//
//	[links]
//	frame    = ["main", "shock-top"]          # the fixed one
//	swingarm = ["main", "axle", "shock-arm"]  # pinned to frame at main
//
//	[shock]
//	mounts = ["shock-top", "shock-arm"]
//	stroke = 55
//
//	[rear]
//	axle = "axle"
//
// [Parse] reads a file, [File.Variant] gives the design of the base or of a
// variant, [File.Locate] finds what kinematics and joints say of it in the file.
//
// # Values
//
//	file     = { key "=" value | "[" table "]" | "[[" table "]]" } .   TOML 1.0, UTF-8
//	quantity = number | '"' number unit '"' .     450    "450 lbf/in"
//	point    = "[" quantity "," quantity [ "," quantity ] "]" .        x forward, y up, z to the right
//	pair     = "[" quantity "," quantity "]" .
//	share    = '"' number "%" '"' .               "30%"
//	gear     = '"' teeth "x" teeth '"' .          "32x21", chainring x cog
//	name     = a text without control characters, not empty .
//
// A number alone is in the unit that the key's line gives; package units lists
// what else may be written, and a text without a unit, with a decimal comma or
// with a unit of another kind is refused. Whole numbers and decimals are the
// same where a number is meant; dates, true and false are none. Names and keys
// are compared letter by letter. A byte-order mark and CRLF are read over. A
// file holds at most 4 MiB and nests at most 100 levels.
//
// The origin is the crank axis, on the frame, at the design position: the
// suspension fully extended. Keys marked * must be given where their table is.
//
// # The file
//
//	name             name     of the design; default: the file's
//	[points]         any number of NAME = point, mm
//	[links]          any number of NAME = [names of points]; frame is the fixed one
//	[[slider]] [shock] [rear] [front] [drivetrain] [brake] [mass] [spring]
//	[[load_case]] [[joint]] [[require]] [variant.NAME]
//
// A file with a linkage needs [points], [links], [shock] and [rear]. A file
// may hold [[joint]] tables alone. A point that two or more links name is a pin
// between them.
//
// # [[slider]]: a point of one link runs on a straight line of another
//
//	point *          name     of a point of link
//	link *           name     of the link that slides
//	guide *          [name, name]  two points of the link on
//	on *             name     of the link that holds the guide
//
// # [shock]
//
//	mounts *         [name, name]  points of two links, pin to pin
//	stroke *         mm       shortening from the design position, less than the shock is long
//	yoke             mm       part of the pin-to-pin length that is not the shock; default 0
//
// # [rear]
//
//	axle *           name     of the point that carries the wheel
//	link             name     of its link; default: the first moving one that names the point
//	wheel_radius     mm       without it there is no ground
//
// # [front]
//
//	axle *           pair     mm, fork fully extended
//	wheel_radius *   mm
//	head_angle *     deg      steering axis from the ground line's backward direction, 0 to 90
//	fork_offset      mm       without it there is no trail
//	fork_travel      mm       default 0
//	fork_follow               share of the rear's travel that the fork follows, 0 (default) to 1
//
// # [drivetrain]
//
//	chainring *      teeth
//	cogs             [teeth]  those of the cassette; without it any cog will do
//	gear *           gear     where one is asked for
//	chain_pitch      mm       default 12.7
//	crank            name     of the point of the crank axis; default: the origin, on the frame
//	crank_link       name     of its link, where several name the point
//
// # [drivetrain.idler]: the upper run passes cog, idler, chainring
//
//	point *          name
//	link             name     of the link that carries it; default: the first moving one that names the point
//	teeth *          teeth
//	over             true (default): the chain passes over it; false: under
//
// # [brake]
//
//	carrier *        name     of the moving link that holds the caliper
//
// # [mass]
//
//	total *          kg       bike and rider
//	unsprung_rear    kg       default 0
//	centre *         pair     mm, of the total
//
// # [spring]
//
//	kind *           "coil" or "air"
//
// with kind = "coil":
//
//	rate *           N/mm
//	preload          mm       compressed at the design position; default 0
//
// with kind = "air", gauge pressures at the design position:
//
//	piston_area *       mm2
//	volume *            mm3   more than the piston sweeps
//	pressure *          MPa
//	exponent *                1 slow to 1.4 fast, for both chambers
//	negative_area       mm2   the negative chamber: all three or none
//	negative_volume     mm3
//	negative_pressure   MPa
//
// # [spring.bumper]: force·(x/length)^power over the last length of stroke
//
//	length *         mm       at most the stroke
//	force *          N        at full stroke
//	power                     default 2
//
// # [[load_case]]
//
//	name *           name     unique
//	travel *         mm, or a share of full travel: "30%"
//	force            pair     N, on the wheel at the axle; default: vertical, what balances the spring
//	chain_tension    N        in the upper run; needs [drivetrain] and [front]
//	pedal_force      N        square to the crank, in place of chain_tension; needs crank_length
//	crank_length     mm
//	gear             gear     default: that of [drivetrain]
//	brake_force      N        at the ground, backward; needs [brake] and [front]
//	lateral          N        at the ground, to the right; default 0
//	cycles                    over the life
//
// # [[require]]: bounds of a summary figure; one of the two at least
//
//	figure *         name     of a summary figure
//	min              in the unit of the figure's name
//	max
//
// # [[joint]]
//
//	name *           name     unique
//	kind *           "spline"
//	torque           N m      or from the linkage, by the next four:
//	at               name     of the point that the moment is taken about
//	link             name     of the link that the pins act on
//	through          [name]   points of that link
//	share                     of the moment that the joint carries; default 1
//
// with kind = "spline"; package spline tells the ranges and defaults:
//
//	standard *             "ISO 4156"
//	module *               mm
//	teeth *
//	pressure_angle *       deg
//	root                   "flat" or "fillet"
//	length *               mm   engaged
//	bore                   mm   of a hollow shaft; default 0, solid
//	hub_outer_diameter *   mm
//	shaft_material *       a name of package material
//	hub_material *
//	application_factor     Ka
//	distribution_factor    Km
//	misalignment           mm/mm, gives Km
//	cycles *               give Kf
//	rocking_cycles         give Kw
//	reversed               true or false (default)
//	seat                   "flexible" or "fixed"
//	piloted                true or false (default)
//	clamped                true or false (default)
//	crowned                true or false (default)
//	shaft_class            tolerance class
//	shaft_fit              fit letter
//	hub_class
//	hub_fit
//	tolerance_length       mm
//	shaft_pin              mm   measuring pin
//	hub_pin                mm
//
// # [variant.NAME]: tables laid over those of the file
//
// Tables are merged key by key, values and lists replaced, lists of tables as a
// whole. A point, link or key that the file lacks is refused; a whole optional
// table may be added.
//
// # Diagnostics
//
// Every mistake of a file is told in one go, each once, those of variants too.
// Paths are those of the file: links.rocker[1], load_case[0].force,
// variant.low.points.main. What only follows from another mistake is not told.
//
//	too-large           more than 4 MiB
//	empty-file          nothing but blanks
//	not-utf8            a byte that does not belong to UTF-8
//	too-deep            nested past 100 levels
//	syntax              not TOML
//	duplicate-key       a key or table given twice
//	unknown-key         a key that its table does not have
//	unknown-table       a table that there is not
//	missing-key         a key that its table needs
//	missing-table       a table that the linkage, a load case or a joint needs
//	missing-value       a value that another one needs
//	wrong-type          a value of another type than its key takes
//	wrong-length        a list of another length
//	bad-quantity        a text that is no number with a unit
//	wrong-unit          a unit that is not known, or of another kind
//	bad-gear            a gear that is not written as one
//	not-finite          nan, inf, or past the largest number
//	out-of-range        a number that cannot be
//	unknown-value       a word that its key does not know
//	empty-name          a name without a letter
//	control-character   a name that does not print as it is
//	duplicate-name      a name given to two things, or twice in one list
//	reserved-name       a name that stands for something else
//	not-in-base         a variant that changes what the file has not
//	no-such-variant     a variant that the file has not
//	no-such-point       a point that there is not
//	no-such-link        a link that there is not
//	no-such-gear        a gear that the sprockets do not give
//	no-such-figure      a requirement of a figure that there is not
//	missing-frame       no link is the fixed one
//	short-link          a link of fewer than two points
//	same-place          two points of one link in one place
//	loose-point         a point that no link names
//	not-listed          a link that does not name the point it should carry
//	same-link           a guide on the link that slides on it
//	slider-pinned       a sliding point that is pinned to its guide's link
//	zero-length         a shock or guide from a point to itself
//	rigid-shock         a shock within one link
//	too-long            a stroke, yoke or bumper longer than what holds it
//	axle-on-frame       a rear axle that does not move
//	axle-behind         a front axle that is not ahead of the rear one
//	fixed-carrier       a caliper on the frame
//	below-ground        a centre of mass below the ground
//	one-spring          not exactly one of coil and air
//	empty-chamber       an air chamber that the stroke would empty
//	one-drive           chain tension and pedal force at once
//	one-load            a torque and a tie at once
//	no-bound            a requirement without min and max
//	mobility            a linkage that has not one degree of freedom
//	dead-point          a linkage that cannot go on
//	failed              anything else
//
// What joints find wrong carries codes of package check.
package design
