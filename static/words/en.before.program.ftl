# Machine programs: what is doubtful in one (program-doubt-…), each with its line, and why one cannot be read.

program-doubt-more = From line { $line } on, { $count ->
    [one] there is one more
   *[other] there are { $count } more
  } of the same kind.

# What the language does not have, or what this reader does not follow

program-doubt-program-number = Line { $line }: O{ $number } looks like the program's number. It is skipped.
program-doubt-o-word = Line { $line }: { $text } is for subprograms or loops, which are not followed. The line is left out.
program-doubt-code-unknown = Line { $line }: { $word } is unknown, so it is left out.
program-doubt-word-unknown = From line { $line } on: the letter { $word } is unknown and skipped.
program-doubt-axis-turning = From line { $line } on: { $word } turns an axis. Only X, Y and Z are followed.
program-doubt-named-parameter = Line { $line }: named parameters are unknown. The line is left out.
program-doubt-operation-unknown = Line { $line }: { $name } is unknown. The line is left out.
program-doubt-parameter-unknown = Line { $line }: the machine stores parameter #{ $number }. Zero is assumed.
program-doubt-cutter-radius = Line { $line }: { $word } shifts the path by the cutter's radius. Drawing and time leave that out.
program-doubt-tool-length = Line { $line }: G43 takes the tool's length from the machine's table. Heights are taken as written.
program-doubt-probe = Line { $line }: G38.2 feels for the work and stops on touch. It is timed all the way.
program-doubt-coordinate-system = Line { $line }: { $word } moves the zero, by an amount set at the machine. Drawing and time assume it stayed.
program-doubt-machine-coordinates = Line { $line }: G53 moves in the machine's own coordinates, which the program doesn't give. The move is left out.
program-doubt-machine-coordinates-with = Line { $line }: G53 goes only with G0 or G1, and G90, not with { $word }. The line is left out.
program-doubt-home-unknown = Line { $line }: { $word } goes to the machine's home, which the program doesn't give. That move is left out.
program-doubt-block-delete = Line { $line }: lines starting with a slash are read, as if the machine's block delete switch were off.
program-doubt-out-by-hand = Line { $line }: G88 stops so that somebody can take the tool out by hand. It is timed as if it came up by itself.
program-doubt-centres-incremental = Line { $line }: G91.1 isn't in the language. Machines that have it read I, J and K from the arc's start, as done here anyway.

# What the program leaves open

program-doubt-units-not-named = Line { $line }: no G20 or G21 yet. Millimetres are assumed.
program-doubt-start-unknown = Line { $line }: it cuts before it has moved in { $axis }, so the cut's start is unknown. { $axis }0 is assumed.
program-doubt-no-motion-named = Line { $line }: a position without G0, G1, G2 or G3. It counts as a cut, G1.
program-doubt-feed-missing = Line { $line }: a cut without a feed, no F set. It counts as length, not as time.
program-doubt-feed-missing-g93 = Line { $line }: under G93 every cut needs its own F. This one counts as length, not as time.
program-doubt-feed-before-units = Line { $line }: F is set before the units change, so it counts in the old ones. Put G20 or G21 on a line before it.
program-doubt-feed-negative = Line { $line }: a feed can't be below zero. The last one stays.
program-doubt-dwell-long = Line { $line }: a wait of { $seconds } seconds. If your machine counts P in thousandths, it is shorter.
program-doubt-tool-not-chosen = Line { $line }: M6 without a T before it. Its tool is unknown.
program-doubt-tool-number = Line { $line }: that is not a tool number.
program-doubt-speed-negative = Line { $line }: a spindle speed can't be below zero.
program-doubt-spindle-stands = Line { $line }: { $cycle } needs a turning spindle, and there was no M3 or M4.
program-doubt-spindle-never-on = Line { $line } cuts, but the program has no M3 or M4 to start the spindle. Check whether that is done by hand.
program-doubt-no-end = Line { $line }: the program ends without M2, M30 or %.
program-doubt-after-the-end = Line { $line }: the program ended before here. The rest is not read.

# What the language calls an error, and reading goes on

program-doubt-no-axes = Line { $line }: { $word } without X, Y or Z. Nothing moves on this line.
program-doubt-word-idle = Line { $line }: nothing on the line uses { $word }.
program-doubt-word-twice = Line { $line }: { $word } is there twice. The first one counts.
program-doubt-sign-before-value = Line { $line }: a sign before # or [ isn't in the language, though many machines take it. It is read as meant.
program-doubt-comment-nested = Line { $line }: a comment within a comment. The whole outer one is skipped.
program-doubt-same-group = Line { $line }: { $one } and { $other } exclude each other. The line is left out.
program-doubt-axes-for-two = Line { $line }: { $one } and { $other } both need the line's X, Y and Z. The line is left out.
program-doubt-axes-after-g80 = Line { $line }: a position after G80, which ends all motion. The line is left out.
program-doubt-origin-without-l2 = Line { $line }: G10 works only with L2. It is left out.
program-doubt-origin-of-none = Line { $line }: G10 L2 needs a P from 1 to { $most }. It is left out.
program-doubt-dwell-without-p = Line { $line }: G4 needs a P, the seconds to wait. It is left out.
program-doubt-arc-open = Line { $line }: { $lies ->
    [short] the arc's R is { $gap } too short for its ends
    [nearer] the arc ends { $gap } nearer its centre than it starts
   *[farther] the arc ends { $gap } farther from its centre than it starts
  }. Strict machines stop here.
program-doubt-arc-without-end = Line { $line }: an arc without an end point. It counts as a full circle.
program-doubt-arc-without-centre = Line { $line }: an arc needs { $one } or { $other }, or R. The line is left out.
program-doubt-arc-without-radius = Line { $line }: the arc starts at its own centre. The line is left out.
program-doubt-arc-both-ways = Line { $line }: an arc has either a radius or a centre, not both. The line is left out.
program-doubt-arc-by-radius-closed = Line { $line }: an arc by R needs a radius, and an end away from its start. The line is left out.
program-doubt-cycle-without = Line { $line }: { $cycle } needs { $word }, and it is missing or too small. The line is left out.
program-doubt-cycle-returns = Line { $line }: after G99 in the same series, G98 goes back up to { $z } here, the height at which this line's hole started (NISTIR 6556, 3.5.16). Some machines go to { $by }, where the series started.
program-doubt-cycle-in-g93 = Line { $line }: canned cycles don't work under G93. The line is left out.
program-doubt-cycle-upside-down = Line { $line }: R is below { $word }. The line is left out.
program-doubt-cycle-repeats = Line { $line }: L must be a whole number, 1 or more. The line is left out.

# What may not be meant: too fast, too deep, too far

program-doubt-fast-across = Line { $line } moves fast across at Z { $z }, below the top of the stock.
program-doubt-fast-down = Line { $line } goes fast down to Z { $z }, deeper than it has cut there.
program-doubt-feed-fast = From line { $line } on: a feed of { $feed }, but the machine does { $most } at most. That is used.
program-doubt-feed-slow = From line { $line } on: a feed of only { $feed }. Check whether it was meant in other units.
program-doubt-feed-of-the-plunge = { $more ->
    [0] Line { $line } cuts
    [one] Line { $line } and one more cut
   *[other] Line { $line } and { $more } more cut
  } across at the plunge's { $feed }; elsewhere this cutter does { $most }. Is an F missing there? It costs { $lost } per load.
program-doubt-feed-nought = Line { $line }: a cut with zero feed. It counts as length, not as time.
program-doubt-nothing-below-top = From line { $line } on: no cut is deeper than Z { $z }, so Z0 can't be the top of the stock. Cuts in the air can't be found.
program-doubt-nothing-above-top = From line { $line } on: it never rises above Z { $z }, so Z0 can't be the top of the stock. Moves too fast inside it can't be found.
program-doubt-beyond-travel = Line { $line }: the program reaches { $reach } along { $axis }, but the machine's travel is { $travel }.
program-doubt-beyond-stock = Line { $line }: the cuts reach { $reach } along { $axis }, but the stock is { $size }.
program-doubt-through-stock = Line { $line }: it cuts down to Z { $z }, { $by } deeper than the stock is thick ({ $size }). Check what is underneath.

program-feed-mm = { $feed } mm/min
program-feed-inches = { $feed } in/min

# The drawing of a program's path

program-drawing-path = The path from above, to scale
program-drawing-lines = Solid lines are cuts, dots are holes, dashed lines are travel.
program-drawing-places = The numbers show the order in which it first reaches its { $count } places.
program-drawing-every = One place in { $every } is numbered, to keep the path visible.
program-drawing-stock = The thin box is the stock.
program-drawing-not-whole = There is too much to draw: some lines are left out.
program-drawing-after = Travel between its places in a better order
program-drawing-order = Dashed lines are travel from place to place, numbered in this order. Solid lines are the cuts, unchanged.

# Why a program cannot be read

refused-program-empty = This file is empty.
refused-program-binary = Line { $line }: this is not text, so it is not a machine program. Choose the file that goes to the machine.
refused-program-no-text = This is not text, so it is not a machine program. Choose the file that goes to the machine.
refused-program-none = This is not a machine program: line { $line } has none of its words. Choose the file that goes to the machine.
refused-program-large = The file is too large: { $megabytes } MB at most.
refused-program-lines = The program is too long: { $most } lines at most.
refused-program-blocks = Line { $line }: the program makes too many moves, more than { $most }.
refused-program-line-long = Line { $line } is too long: { $most } characters at most. Machine programs have many short lines.
refused-program-comment = Line { $line }: the comment has no closing parenthesis. The machine would stop there.
refused-program-character = Line { $line }: '{ $sign }' means nothing there. The machine would stop.
refused-program-number = Line { $line }: a number is missing in '{ $near }'. The machine would stop there.
refused-program-expected = Line { $line }: '{ $sign }' is missing in '{ $near }'. The machine would stop there.
refused-program-bracket = Line { $line }: a bracket isn't closed, or something is missing in '{ $near }'. The machine would stop there.
refused-program-nested = Line { $line }: more than { $most } nested brackets.
refused-program-arithmetic = Line { $line }: this can't be calculated: it divides by zero or gets too large. The machine would stop there.
refused-program-parameter = Line { $line }: parameters are whole numbers from 1 to { $most }. The machine would stop there.
refused-program-huge = Line { $line }: { $word } is far beyond any machine.
refused-program-code = Line { $line }: { $word } is not a code. The machine would stop there.
refused-program-arc = Line { $line }: the arc does not close: { $lies ->
    [short] its R is { $gap } too short for its ends
    [nearer] its end is { $gap } nearer its centre than its start
   *[farther] its end is { $gap } farther from its centre than its start
  }. The machine would stop there.
refused-program-repeats = Line { $line }: L repeats the hole too often, more than { $most } times.
