# What the pages of templates/review/ say.

review-noise-dust = Noise and dust
review-no-measurement = { $b }This is not a measurement.{ $end_b } It is worked out from entries on phones and each station's figures. Nobody wore a meter, and the air was not sampled. A low figure does not mean no harm. Wear what the machine's manual and the signs ask for, whatever this page says.
review-noise-dose = Noise dose
review-as-8-h = 8-hour average
review-at-dust = Time in dust
review-without-extraction = Without extraction
review-until-now = until now
review-not-known = not known
review-nobody-seven-days = Nobody was at a station in the last seven days. Once someone is, their day shows here.
review-how-it-is-reckoned = How it is worked out
review-what-counts = Hands at a station count at its figure all the time, loading and setting up too. So does watching its running machine in the same room. Stations used at the same time add up by energy. What others do nearby is not counted. Time is in dust where the station's kind makes dust. It is with extraction where the station or the operation uses shared equipment named dust extraction.
review-dust-limits = Published limits for wood dust
review-dust-limits-not-measured = For a day of 8 hours, in mg per cubic metre. This shop's air is not measured. Minutes in dust do not say how much is in the air.
review-whose = Set by
review-dust = Dust
review-mg-a-cubic-metre = mg/m³
review-read-at = Source
review-cautions = Cautions and their sources
review-title = Review
review-none = Once you've worked on a run, this shows where the hours went. First { $link }open a run{ $end_link }.
review-day-by-day = Noise and dust, day by day
review-title-of = Review of { $run }
review-nothing-pressed = Nothing has been entered for this run yet. Its times appear here as you work on the { $link }Now{ $end_link } screen.
review-not-measured = { $length } of this was not measured: it was assumed, typed from paper or interrupted. These times are not used for estimates.
review-hours-by-operation = Hours by operation
review-operation = Operation
review-loads = Loads
review-pieces = Pieces
review-leads = Leads
review-helpers = Helpers
review-hands-sum = Hands-on, total
review-hands-on = Hands-on
review-elapsed = Elapsed
review-machine = Machine
review-all = All
review-hands-and-elapsed = Hands-on is everyone's time added up. Elapsed is how long at least one person was at it.
review-who-helpers-are = Helpers are crew and guests.
review-the-log = Log
review-save-table-csv = Save as a table (CSV)
review-began = Started
review-load = Load
review-element = Kind of time
review-known = How known
review-measured = ✓ measured
review-to-the-plan = Open in Plan

review-over = ▲ over: { $dose }
review-dose = { $percent ->
    [0] under 1 %
   *[other] { $percent } %
  }
# Where some levels are missing the true figure is higher.
review-dose-at-least = { $percent ->
    [0] under 1 % (levels missing)
   *[other] at least { $percent } %
  }
review-level = { $level } dB(A)
review-level-at-least = at least { $level } dB(A)

review-so-long-at = { $length } at { $station }
review-no-level = Not counted, because no level is written down: { $where }. That does not mean quiet: the true figure is higher. Add levels on the { $link }Shop{ $end_link } screen.

review-noise-rule = 100 % is a day of 8 hours at { $limit } dB(A). Every { $exchange } dB more halves the time. The shop chose this on the Shop screen. NIOSH recommends 85 and 3 (publication 98-126); OSHA's limit is 90 and 5 (29 CFR 1910.95, Appendix A).

review-pages = Sources: { $pages }.

review-hours = { $b }{ $hands }{ $end_b } hands-on{ $a_piece ->
    [0] { "" }
   *[other] , { $a_piece } for each of { $good } good pieces
  }; machines { $machine }.
review-whose-hours = Leads { $leads }, helpers { $helpers }.

review-load-of = { $count ->
    [0] { $load }
    [one] tray { $trays }
   *[other] trays { $trays }
  }: { $pieces ->
    [one] { $pieces } piece
   *[other] { $pieces } pieces
  }

review-pieces-again = { $pieces }, { $again ->
    [1] one
    [2] two
    [3] three
   *[other] { $again }
  } done again

# the first screen of a run, and the pages one press down

review-key-guess = guess
review-key-hands = hands-on
review-key-machines = machines
review-key-guess-of-both = guess
review-key-unknown = not measured
review-as-a-table = Show as a table
review-guess = Guess
review-took = Took
review-unmeasured = not measured
review-more = More of this run
review-times = Times learned
review-happened = What happened
review-held = Bottleneck
review-changes = Changes to try
review-log-of = Log of { $run }
review-every-element = Every time, one by one

# times

review-times-of = Times of { $run }
review-measured-share = { $percent ->
    [none] No work is finished yet.
    [100] All hands-on and machine time was measured.
   *[other] { $percent } % of hands-on and machine time was measured.
  } Estimates use only what was entered from start to end.
review-key-one-time = one measured time
review-key-median = typical
review-key-middle = the middle half
review-key-left-out = left out
review-believed-now = A plan made today uses { $estimate }
review-not-counted = Not counted
review-times-others = { $first ->
    [0] Every operation
   *[other] The others
  }
review-times-unit = { $kind ->
    [hand] per piece
   *[other] per load
  }
review-believed = Next plan
review-times-count = Times

# what happened

review-happened-in = What happened in { $run }
review-everybodys-day = Everyone’s day
review-key-work = work
review-key-setup = setting up
review-key-watch = watching
review-key-idle = waiting
review-key-walk = walking
review-key-planned = narrow rows: as planned
review-as-a-list = Show as a list
review-no-days = No days known: nothing was entered.
review-hands-by-operation = Hands-on time by operation
review-an-hour = { $pieces } good pieces per hands-on hour.
review-not-in-the-chart = Not measured, so not in the chart: { $operations }.
review-waiting = Waiting
review-waiting-of-person = People waited
review-waiting-of-station = Machines waited
review-waiting-of-tray = Trays waited (all added up)
review-who = Who
review-why = Why
review-how-long = How long
review-no-waiting = No waiting known.
review-lost = Lost, and what came good
review-wood = Wood
review-board = Board
review-first-go = { $some } of { $count } passed every step first time.
review-step-by-step = Step by step
review-counts-once = A piece that was done again counts once.
review-rolled = Step by step, the first-time shares multiply to { $percent } %. They are shares of what reached each step, not of what was started (rolled throughput yield).
review-step-in = In
review-step-first = Good first time
review-step-good = Good in the end
review-process-chart = Process chart
review-symbol = Symbol
review-waited-before = Trays waited before
review-walks = { $count ->
    [one] one walk
   *[other] { $count } walks
  }
review-orders = Order lines
review-whom = For
review-due = Due
review-order-done = Done
review-so-late = { $span } late
review-in-time = on time
review-not-done = not done
review-promised = The plan at its opening promised { $promised }.
review-no-promise = The plan at its opening promised no finish.

# what held it

review-held-of = Bottleneck of { $run }
review-replayed = { $off ->
    [0] Worked out by replaying the run with the measured times. The replay ends when the run did.
   *[other] Worked out by replaying the run with the measured times. The replay ends { $off } { $later ->
        [yes] later
       *[no] earlier
      } than the run did, so its times are about right, not to the minute.
  }

review-held-when = What the run waited for, hour by hour
review-held-what = What
review-held-when-about = From the replay, in the hours with someone in the shop.{ $most ->
    [longest] { "" }
   *[short] { " " }The longest wait is not what cost most: most of it had to be done or waited for anyway. What cost most is marked.
  }
review-held-key = what cost most
review-held-key-other = what else it waited for
review-held-key-away = nobody there (drawn short)
review-held-from = From, in the replay
review-held-to = To, in the replay
review-held-open = With someone there
review-held-nothing = The replay shows no bottleneck.
review-worth = What an hour less would have been worth
review-worth-about = Take an hour off one of these, spread over all it did in the run: the run would have been done this much sooner. An hour off one operation near the end may do more. Only hours with someone in the shop count here{ $cost ->
    [none] .
   *[other] ; the { $cost } that it cost are by the clock, nights included.
  }
review-worth-earlier = Sooner by
review-held-coming-about = Meanwhile, what the trays waited for (all added up):
review-worth-unknown = Too little was measured to say.

# changes to try, and the ledger of those that were adopted

review-changes-of = Changes to try after { $run }
review-wishes = Your ideas, if they work out
review-best-two = Best two together
review-order-to-buy = Best order
review-tried-how = Each change was tried by replaying this run many times with the measured times, with and without it. Nothing else changed. In brackets: 9 times out of 10 it falls in this range.
review-kept-before = Kept to try
review-take-off-list = Remove from the list
review-own-idea = Your own idea
review-try-it = Try it on this run
review-ledger-of-changes = Changes made, and whether they worked
review-over-runs = All runs compared

review-estimate-history = How the estimate changed
review-control-chart = Every measured time, over all runs
review-control-about = Chance alone stays between the dashed lines. An open square is outside.
review-control-how = How the lines are worked out
review-control-method = Their average, and three standard deviations to each side, worked out from how much each time differs from the one before it (control chart for individuals).
review-overrule = { $kind ->
    [hand] I know better: hand time per piece
   *[other] I know better: time per load
  }
review-overrule-hint = 2 min 30 s, or 2:30 as on a stopwatch. Later measurements adjust it.
review-overrule-back = Take it back
review-overrule-press = Use this in the next plan
review-adopt = Do it next time
review-adopt-yes = Yes, do it
review-adopt-no = No
review-note = Note it for the next run
review-note-yes = Yes, note it
review-done-already = Done already
review-saves-nothing = { $count ->
    [one] One more idea would have saved nothing
   *[other] { $count } more ideas would have saved nothing
  }
review-what-it-costs = What it costs
review-cost = Cost, in the shop’s money
review-cost-hint = Once, for all of it. Leave empty if it costs nothing.
review-keep-cost = Use this cost

review-ledger-title = Changes made
review-ledger-empty = Every change made after a review shows here: what it promised, and whether it worked. The { $link }review of a run{ $end_link } offers some.
review-ledger-after = { $day }, after { $run }
review-ledger-not-yet = Once the first run opened after it is finished, it says whether it worked.
review-ledger-against = { $link_after }{ $after }{ $end_link }, compared with { $link_before }{ $before }{ $end_link }.
review-ledger-keep = Keep it
review-ledger-drop = Drop it
review-ledger-take-back = Take it back
review-ledger-by-hand = The shop data has changed since, so this can only be put back by hand.
review-ledger-made = Done.
review-ledger-did = { $did ->
    [route] Set for the next run, in the steps of { $product }.
    [book] Set in the shop’s settings.
   *[noted] Noted. Only you can do it.
  }

# over all runs

over-runs-none = No run is finished yet. Finished runs are compared here. An open run is on the { $link }Review{ $end_link } screen.
over-runs-run = Run
over-runs-a-piece = Hands-on per good piece
over-runs-took = From opening to done
over-runs-good = Good
over-runs-an-hour = Good pieces per hands-on hour
over-runs-good-share = Good share
over-runs-promised = Promised
over-runs-done = Done
over-runs-later-head = Against promise
over-runs-not-whole = { $run }: { $timed } of { $loads } loads have their time. Hands-on time was more than shown here, so an hour gave less.
over-runs-older = { $count ->
    [one] One older run is
   *[other] { $count } older runs are
  } not shown. The saved tables have every run.
over-runs-one-element = One time over all runs
over-runs-which = Which time
over-runs-show = Show it
over-runs-from = { $run ->
    [0] From the next run: { $change }
   *[other] From { $run }: { $change }
  }
over-runs-from-here = from here: { $change }
over-runs-limits = How the limits are worked out
over-runs-limits-how = Three standard deviations to each side of the average. One is worked out from how much each time differs from the one before it, so that a slow drift does not widen the limits (control chart for individuals).
over-runs-estimate-went = How the estimate changed
over-runs-after-run = After
over-runs-written = As the route says
over-runs-tables = All of it as tables
over-runs-tables-about = All runs, times, order lines, losses, changes and estimates, for a spreadsheet or a database. The guide beside the program says what each column means.
over-runs-save-csv = Save as tables (CSV, in one ZIP)
over-runs-save-json = Save as JSON

review-since-changes = Losses since each change at a machine
review-since = Since
review-machine-hour = Machine hour
review-of-them-lost = Lost
