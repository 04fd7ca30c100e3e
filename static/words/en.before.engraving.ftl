# What is said of how long an engraving takes. $span and its like are spans of time in words.

before-kind-engraving = Engraving time
before-about-engraving = Whole jig, row by row, piece by piece, or tracing: minutes for each, from a drawing or sizes.
before-keep-take-engraving = Use { $span } for { $step } ({ $method ->
    [whole] whole jig at once
    [rows] row by row
    [pieces] piece by piece
   *[trace] tracing
  })
before-kept-take-engraving = { $step } now plans with { $span } machine time, from { $file }.

before-engraving-head-best = { $method }: { $span } per full jig, { $less } less than sweeping the whole jig.
before-engraving-head-alike = { $span } per full jig, whichever way it is swept.
before-engraving-run = In the run: { $count } full jigs, { $span } altogether, without loading.
before-engraving-marks = { $pieces ->
    [one] One piece is marked, { $wide } wide and { $high } high.
   *[other] { $pieces } pieces are marked, over { $wide } by { $high }.
  }
before-engraving-unsplit = Skipping only blank lines takes { $span }; also splitting rows at wide gaps, { $rows }.
before-engraving-trace = Tracing takes { $span }, but burns only the lines: filled shapes stay bare inside.
before-engraving-trace-usual = Tracing speed is { $speed } mm/s, a usual speed (common practice, no source). Enter your own.
before-engraving-values = Sweep: { $speed } mm/s and { $accel } mm/s², lines { $spacing } apart, { $run_up } run-up on each side.
before-engraving-looks = Another way may look different. Shade changes where blocks meet, one-way lines differ from two-way lines, and slower parts burn darker. Try it on a scrap of the same wood first.
before-engraving-method-says = Each line counts its width at speed, speeding up and slowing down, and the step to the next. The control’s pauses and smoothing are left out: time one full jig and compare.
before-engraving-assumed = The machine’s own { $names } are missing, so usual values are used (common practice, no source). Enter them at the station, from its manual or a trial.
before-engraving-value-speed = sweeping speed
before-engraving-value-accel = acceleration
before-engraving-value-spacing = line spacing
before-engraving-short = The run-up is { $short } too short: marks start before the head is at speed, so their ends burn darker. The minutes assume a run-up that is long enough.
before-engraving-too-wide = With { $run_up } run-up on each side, it does not fit the bed.

before-engraving-hours = { $hours } h
before-engraving-table = One full jig, by method
before-engraving-column-method = Method
before-engraving-column-full = Full jig
before-engraving-column-run = The run
before-engraving-column-lines = Lines
before-engraving-column-blocks = Blocks
before-engraving-column-on = Beam on
before-engraving-share = { $share } % of the way
before-engraving-method-whole = The whole jig at once
before-engraving-method-rows = Row by row
before-engraving-method-pieces = Piece by piece
before-engraving-method-trace = Tracing the lines
before-engraving-method-whole-rows = The whole jig at once, or row by row
before-engraving-method-whole-pieces = The whole jig at once, or piece by piece
before-engraving-method-rows-pieces = Row by row, or piece by piece
before-engraving-method-whole-rows-pieces = The whole jig at once, row by row, or piece by piece
before-engraving-others = Other ways, drawn
before-engraving-drawn = { $method }: { $span }
before-engraving-shown-some = { $shown } of { $lines } lines are shown.
before-engraving-shown-all = { $shown ->
    [one] Its one line is shown.
   *[other] All { $shown } lines are shown.
  }
before-engraving-drawing = To scale: solid with the beam on, dashed with the beam off.

before-engraving-caution-watch = Engraving can set wood on fire. Stay at the laser and watch it the whole time it runs, with its stop and an extinguisher in reach.
before-engraving-caution-air = Extraction on before the first line, and until the smoke is gone.
before-engraving-caution-material = Engrave only what you know: no PVC or vinyl, no unknown coating or glue. If the machine’s manual says more, it wins.

refused-engraving-nothing-drawn = The drawing has nothing to engrave. White, hidden and left-out groups do not count.
refused-engraving-too-fine = That is { $lines } lines, over the limit of { $most }. Widen the line spacing, or check the drawing’s size.
refused-engraving-too-much = The drawing has too much to go through line by line. Widen the line spacing or simplify it.
refused-engraving-pitch-too-small = Places are { $pitch } mm apart and marks are { $size } mm: they would overlap. Make the pitch larger.

ask-engraving-product = Product
ask-engraving-product-nothing = none
ask-engraving-step = Step
ask-engraving-step-hint = For example engrave. Its minutes can go into the route.
ask-engraving-station = Machine
ask-engraving-station-nothing = not set
ask-engraving-columns = Places side by side
ask-engraving-columns-hint = With a drawing and one place, gaps tell the pieces apart.
ask-engraving-rows = Rows of places
ask-engraving-mark-width = Mark width on one piece
ask-engraving-mark-height = Mark height
ask-engraving-pitch-x = From place to place
ask-engraving-pitch-y = From row to row
ask-engraving-filled = Lines with marks, %
ask-engraving-line = Line length per piece, traced
ask-engraving-jig-fulls = Full jigs in the run
ask-engraving-pieces = Or pieces in the run
ask-engraving-speed = Sweeping speed, mm/s
ask-engraving-speed-hint = Empty: the machine’s.
ask-engraving-accel = Acceleration, mm/s²
ask-engraving-accel-hint = Empty: the machine’s.
ask-engraving-spacing = Line spacing
ask-engraving-spacing-hint = Empty: the machine’s.
ask-engraving-run-up = Run-up on each side
ask-engraving-run-up-hint = Empty: just long enough to get up to speed.
ask-engraving-trims = Head turns at each line’s last mark
ask-engraving-rapid = Speed, beam off, mm/min
ask-engraving-trace-speed = Tracing speed, mm/s
ask-engraving-trace-speed-hint = Empty: 20 mm/s (common practice, no source). Without a drawing, enter the line length too.
ask-engraving-apart = Gap that separates pieces
ask-engraving-left-out = Groups not engraved
ask-engraving-left-out-hint = Names in the drawing, with commas between.
