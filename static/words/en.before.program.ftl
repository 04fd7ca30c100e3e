# Machine programs: what is doubtful in one (program-doubt-…), each with its line, and why one cannot be read.

program-doubt-more = From line { $line } on { $count ->
    [one] there is one more
   *[other] there are { $count } more
  } of the same kind as those named before.

# What the language does not have, or what this reader does not follow

program-doubt-program-number = Line { $line }: O{ $number } looks like the program's number. It is passed over.
program-doubt-o-word = Line { $line }: { $text } is for subprograms or loops, which are not followed. The line is left out.
program-doubt-code-unknown = Line { $line }: { $word } is not known here, so what it does is left out.
program-doubt-word-unknown = From line { $line } on: the letter { $word } is not known here and is passed over.
program-doubt-axis-turning = From line { $line } on: { $word } turns an axis. Only X, Y and Z are followed.
program-doubt-named-parameter = Line { $line }: parameters with names are not known here. The line is left out.
program-doubt-operation-unknown = Line { $line }: nothing is known here by the name { $name }. The line is left out.
program-doubt-parameter-unknown = Line { $line }: parameter #{ $number } is whatever the machine has stored. Nought is taken.
program-doubt-cutter-radius = Line { $line }: { $word } shifts the path by the cutter's radius; here it is drawn and timed without that.
program-doubt-tool-length = Line { $line }: G43 takes the tool's length from the machine's table. Heights are taken as the program writes them.
program-doubt-probe = Line { $line }: G38.2 feels for the work and stops where it touches. It is timed as if it went all the way.
program-doubt-coordinate-system = Line { $line }: { $word } changes where the zero is, and how far is set at the machine. All is drawn and timed as if the zero had stayed.
program-doubt-machine-coordinates = Line { $line }: G53 moves in the machine's own coordinates, and the program doesn't say where that is. The move is left out.
program-doubt-machine-coordinates-with = Line { $line }: G53 goes with G0 or G1 and with G90 only, not with { $word }. The line is left out.
program-doubt-home-unknown = Line { $line }: { $word } goes to the machine's home, and the program doesn't say where that is. The way there is left out.
program-doubt-block-delete = Line { $line }: lines that begin with a slash are read as if the machine's block delete switch were off.
program-doubt-out-by-hand = Line { $line }: G88 stops so that somebody can take the tool out by hand. It is timed as if it came up by itself.
program-doubt-centres-incremental = Line { $line }: G91.1 isn't in the language. On machines that have it, it says what is taken here anyway: I, J and K count from where an arc begins.

# What the program leaves open

program-doubt-units-not-named = Line { $line }: the program hasn't said G20 or G21 yet. Millimetres are taken.
program-doubt-start-unknown = Line { $line }: it cuts before it has travelled anywhere in { $axis }, so where the cut begins is not known. { $axis }0 is taken.
program-doubt-no-motion-named = Line { $line }: a place without G0, G1, G2 or G3. It is taken as a cut, G1.
program-doubt-feed-missing = Line { $line }: a cut without a feed; no F was set. It counts as length, not as time.
program-doubt-feed-missing-g93 = Line { $line }: under G93 every cut needs an F of its own. This one counts as length, not as time.
program-doubt-feed-before-units = Line { $line }: F is set before the units change, so it is taken in the old ones. Put G20 or G21 on a line before it.
program-doubt-feed-negative = Line { $line }: a feed can't be less than nothing. The one before stays.
program-doubt-dwell-long = Line { $line }: a wait of { $seconds } seconds. If your machine counts P in thousandths, it is shorter.
program-doubt-tool-not-chosen = Line { $line }: M6 without a T before it; which tool it is, nobody knows.
program-doubt-tool-number = Line { $line }: that is no tool's number.
program-doubt-speed-negative = Line { $line }: a spindle speed can't be less than nothing.
program-doubt-spindle-stands = Line { $line }: { $cycle } wants the spindle to turn, and no M3 or M4 was there.
program-doubt-spindle-never-on = Line { $line } cuts, and the program never starts the spindle: there is no M3 or M4 in it. See whether that is done by hand.
program-doubt-no-end = Line { $line }: the program ends without M2, M30 or %.
program-doubt-after-the-end = Line { $line }: the program has ended before here. What follows is not read.

# What the language calls an error, and reading goes on

program-doubt-no-axes = Line { $line }: { $word } without X, Y or Z. Nothing moves on this line.
program-doubt-word-idle = Line { $line }: nothing on the line uses { $word }.
program-doubt-word-twice = Line { $line }: { $word } stands there twice. The first is taken.
program-doubt-sign-before-value = Line { $line }: a sign before # or [ isn't in the language, though many machines take it. It is taken as meant.
program-doubt-comment-nested = Line { $line }: a comment within a comment. The outer one is passed over whole.
program-doubt-same-group = Line { $line }: { $one } and { $other } exclude each other. The line is left out.
program-doubt-axes-for-two = Line { $line }: { $one } and { $other } both want the line's X, Y and Z. The line is left out.
program-doubt-axes-after-g80 = Line { $line }: a place, though G80 has ended all motion. The line is left out.
program-doubt-origin-without-l2 = Line { $line }: G10 is known with L2 only. It is left out.
program-doubt-origin-of-none = Line { $line }: G10 L2 needs a P from 1 to { $most }. It is left out.
program-doubt-dwell-without-p = Line { $line }: G4 needs a P, the seconds to wait. It is left out.
program-doubt-arc-open = Line { $line }: { $lies ->
    [short] the arc's R is { $gap } too short for its ends
    [nearer] the arc ends { $gap } nearer to its centre than it begins
   *[farther] the arc ends { $gap } farther from its centre than it begins
  }. Machines that are strict stop here.
program-doubt-arc-without-end = Line { $line }: an arc without a place to end at. It is taken as a full circle.
program-doubt-arc-without-centre = Line { $line }: an arc needs { $one } or { $other }, or R. The line is left out.
program-doubt-arc-without-radius = Line { $line }: the arc begins at its own centre. The line is left out.
program-doubt-arc-both-ways = Line { $line }: an arc has either a radius or a centre, not both. The line is left out.
program-doubt-arc-by-radius-closed = Line { $line }: an arc by R has to have a radius and end elsewhere than it begins. The line is left out.
program-doubt-cycle-without = Line { $line }: { $cycle } needs { $word }, and it isn't there, or is less than it can be. The line is left out.
program-doubt-cycle-returns = Line { $line }: after G99 in the same series, G98 goes back up to { $z } here, the height at which this line's hole was begun (NISTIR 6556, 3.5.16). Some machines go to { $by }, where the series began.
program-doubt-cycle-in-g93 = Line { $line }: canned cycles can't be had under G93. The line is left out.
program-doubt-cycle-upside-down = Line { $line }: R lies below { $word }. The line is left out.
program-doubt-cycle-repeats = Line { $line }: L has to be a whole number, one or more. The line is left out.

# What may not be meant: too fast, too deep, too far

program-doubt-fast-across = Line { $line } moves fast across while at Z { $z }, which is below the top of the stock.
program-doubt-fast-down = Line { $line } goes fast down to Z { $z }, deeper than it has cut there.
program-doubt-feed-fast = From line { $line } on: a feed of { $feed }, and the machine goes { $most } at most. The machine's is taken.
program-doubt-feed-slow = From line { $line } on: a feed of only { $feed }. See whether it was meant in other units.
program-doubt-feed-of-the-plunge = { $more ->
    [0] Line { $line } cuts
    [one] Line { $line } and one more cut
   *[other] Line { $line } and { $more } more cut
  } across at the plunge's { $feed }, and the same cutter goes { $most } elsewhere. Was an F forgotten there? That costs { $lost } a load.
program-doubt-feed-nought = Line { $line }: a cut with a feed of nought. It counts as length, not as time.
program-doubt-nothing-below-top = From line { $line } on: nothing is cut deeper than Z { $z }, so Z0 can't be the top of the stock. What it cuts in the air can't be told from this.
program-doubt-nothing-above-top = From line { $line } on: it never rises above Z { $z }, so Z0 can't be the top of the stock. Moves that are too fast within it can't be told from this.
program-doubt-beyond-travel = Line { $line }: the program reaches { $reach } along { $axis }, and the machine's travel is { $travel }.
program-doubt-beyond-stock = Line { $line }: the cuts reach { $reach } along { $axis }, and the stock is { $size }.
program-doubt-through-stock = Line { $line }: it cuts down to Z { $z }, { $by } deeper than the stock is thick ({ $size }). See what lies beneath.

program-feed-mm = { $feed } mm/min
program-feed-inches = { $feed } in/min

# The drawing of a program's path

program-drawing-path = The path from above, to scale
program-drawing-lines = Solid lines are cuts, dots are holes, dashed lines are travel.
program-drawing-places = The numbers tell in which order it first comes to its { $count } places.
program-drawing-every = Only every { $every }{ $every ->
    [2] nd
   *[other] th
  } has its number, so that the path can be seen.
program-drawing-stock = The thin box is the stock.
program-drawing-not-whole = There is too much of it to draw: some of its lines are left out.
program-drawing-after = The way between its places in a better order
program-drawing-order = Dashed lines are the way from place to place, numbered in this order; solid lines are the cuts, which stay as they are.

# Why a program cannot be read

refused-program-empty = There is nothing in this file.
refused-program-binary = Line { $line }: this is no text, so it's no machine program. Choose the file that goes to the machine.
refused-program-no-text = Nothing in it can be read: this is no text, so it's no machine program. Choose the file that goes to the machine.
refused-program-none = This is no machine program: line { $line } has none of its words. Choose the file that goes to the machine.
refused-program-large = The file is too large: { $megabytes } MB at most.
refused-program-lines = The program is too long: { $most } lines at most.
refused-program-blocks = Line { $line }: the program makes too many moves, more than { $most }.
refused-program-line-long = Line { $line } is too long: { $most } characters at most. A machine program has many short lines.
refused-program-comment = Line { $line }: the comment has no closing parenthesis. The machine would stop there.
refused-program-character = Line { $line }: '{ $sign }' means nothing there. The machine would stop.
refused-program-number = Line { $line }: a number is missing in '{ $near }'. The machine would stop there.
refused-program-expected = Line { $line }: '{ $sign }' is missing in '{ $near }'. The machine would stop there.
refused-program-bracket = Line { $line }: a bracket isn't closed, or something is missing in '{ $near }'. The machine would stop there.
refused-program-nested = Line { $line }: more than { $most } brackets within one another.
refused-program-arithmetic = Line { $line }: this can't be reckoned; it divides by nothing, or comes to more than any number. The machine would stop there.
refused-program-parameter = Line { $line }: parameters have whole numbers from 1 to { $most }. The machine would stop there.
refused-program-huge = Line { $line }: { $word } is far larger than any machine.
refused-program-code = Line { $line }: { $word } is no code. The machine would stop there.
refused-program-arc = Line { $line }: the arc does not close; { $lies ->
    [short] its R is { $gap } too short for its ends
    [nearer] its end lies { $gap } nearer to its centre than its start
   *[farther] its end lies { $gap } farther from its centre than its start
  }. The machine would stop there.
refused-program-repeats = Line { $line }: L repeats the hole too often, more than { $most } times.
