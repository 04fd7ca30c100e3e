# What is said of how long an engraving takes. $span and its like are spans of time in words.

before-kind-engraving = An engraving’s time
before-about-engraving = Sweeping the whole jig, row by row, each piece by itself, or tracing: minutes each, from a drawing or from sizes.
before-keep-take-engraving = Take { $span } into { $step } ({ $method ->
    [whole] the whole jig at once
    [rows] row by row
    [pieces] each piece by itself
   *[trace] tracing
  })
before-kept-take-engraving = { $step } is planned with { $span } of machine time now, from { $file }.

before-engraving-head-best = { $method }: { $span } a jig-full, { $less } less than sweeping the whole jig.
before-engraving-head-alike = { $span } a jig-full, whichever way it is swept.
before-engraving-run = In the run: { $count } jig-fulls, { $span } altogether, without loading.
before-engraving-marks = { $pieces ->
    [one] One piece is marked, { $wide } wide and { $high } high.
   *[other] { $pieces } pieces are marked, over { $wide } by { $high }.
  }
before-engraving-unsplit = Leaving out blank lines alone takes { $span }; parting the rows where the gap is wide enough, { $rows }.
before-engraving-trace = Tracing takes { $span }, but only the lines are burnt: what is filled stays bare inside.
before-engraving-trace-usual = Tracing is reckoned at { $speed } mm/s, a usual speed (common practice, no source): say your own.
before-engraving-values = Swept at { $speed } mm/s and { $accel } mm/s², lines { $spacing } apart, with { $run_up } of run-up on each side.
before-engraving-looks = Another way may look otherwise: shade changes where blocks meet, lines swept one way differ from lines swept both ways, and slower parts burn darker. Try it on a scrap of the same wood before you change.
before-engraving-method-says = Each line: its width at speed, up to speed and down again, and the step to the next. Pauses of the control and its own smoothing are not in it: time one jig-full and compare.
before-engraving-assumed = The machine’s own { $names } are not written down, so usual values are taken (common practice, no source). Write them down at the station, from its manual or a trial.
before-engraving-value-speed = sweeping speed
before-engraving-value-accel = acceleration
before-engraving-value-spacing = line spacing
before-engraving-short = The run-up is { $short } too short: the head is not yet at speed where marks begin, so their ends burn darker. The minutes are those of a run-up that is long enough.
before-engraving-too-wide = With { $run_up } of run-up on each side it does not fit on the bed.

before-engraving-hours = { $hours } h
before-engraving-table = One jig-full, method by method
before-engraving-column-method = Method
before-engraving-column-full = A jig-full
before-engraving-column-run = The run
before-engraving-column-lines = Lines
before-engraving-column-blocks = Blocks
before-engraving-column-on = Beam on
before-engraving-share = { $share } % of the way
before-engraving-method-whole = The whole jig at once
before-engraving-method-rows = Row by row
before-engraving-method-pieces = Each piece by itself
before-engraving-method-trace = Tracing the lines
before-engraving-method-whole-rows = The whole jig at once, or row by row
before-engraving-method-whole-pieces = The whole jig at once, or each piece by itself
before-engraving-method-rows-pieces = Row by row, or each piece by itself
before-engraving-method-whole-rows-pieces = The whole jig at once, row by row, or each piece by itself
before-engraving-others = The other ways, drawn
before-engraving-drawn = { $method }: { $span }
before-engraving-shown-some = { $shown } of its { $lines } lines are shown.
before-engraving-shown-all = { $shown ->
    [one] Its one line is shown.
   *[other] All { $shown } lines are shown.
  }
before-engraving-drawing = To scale: solid where the beam is on, dashed where the head travels with it off.

before-engraving-caution-watch = Stay at the laser and watch it the whole time it runs, within reach of its stop and an extinguisher. Engraving can set wood on fire.
before-engraving-caution-air = Extraction on before the first line and until the smoke is gone.
before-engraving-caution-material = Engrave only what you know: no PVC or vinyl, no unknown coating or glue. Where the machine’s manual says more, it wins.

refused-engraving-nothing-drawn = There is nothing in the drawing that would be engraved. White, hidden and left-out groups do not count.
refused-engraving-too-fine = That is { $lines } lines, more than { $most }. Widen the line spacing, or see whether the drawing’s size is right.
refused-engraving-too-much = There is too much in the drawing to go through line by line. Widen the line spacing or simplify it.
refused-engraving-pitch-too-small = The places lie { $pitch } mm apart and the marks are { $size } mm: they would overlap. Make the pitch larger.

ask-engraving-product = Product
ask-engraving-product-nothing = none
ask-engraving-step = Its step
ask-engraving-step-hint = As in engrave. The minutes can be taken into it.
ask-engraving-station = Machine
ask-engraving-station-nothing = not said
ask-engraving-columns = Places side by side
ask-engraving-columns-hint = With a drawing and one place, pieces are told apart by the gaps between them.
ask-engraving-rows = Rows of places
ask-engraving-mark-width = Width of what is engraved on one piece
ask-engraving-mark-height = Its height
ask-engraving-pitch-x = From one place to the next
ask-engraving-pitch-y = From one row to the next
ask-engraving-filled = Per cent of its lines with something on them
ask-engraving-line = Length of the line of one piece, if traced
ask-engraving-jig-fulls = Jig-fulls in the run
ask-engraving-pieces = Or pieces in the run
ask-engraving-speed = Sweeping speed, mm/s
ask-engraving-speed-hint = Empty: the machine’s.
ask-engraving-accel = Acceleration, mm/s²
ask-engraving-accel-hint = Empty: the machine’s.
ask-engraving-spacing = Line spacing
ask-engraving-spacing-hint = Empty: the machine’s.
ask-engraving-run-up = Run-up on each side
ask-engraving-run-up-hint = Empty: just as long as it takes to be at speed.
ask-engraving-trims = The head turns where the last mark of a line ends
ask-engraving-rapid = Speed with the beam off, mm/min
ask-engraving-trace-speed = Tracing speed, mm/s
ask-engraving-trace-speed-hint = Empty: 20 mm/s (common practice, no source). Without a drawing say the length of the line too.
ask-engraving-apart = Marks farther apart belong to two pieces
ask-engraving-left-out = Groups of the drawing that are not engraved
ask-engraving-left-out-hint = With commas between them.
