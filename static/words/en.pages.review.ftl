# What the pages of templates/review/ say.

review-noise-dust = Noise and dust
review-no-measurement = { $b }This is not a measurement.{ $end_b } It is worked out from entries on phones and each station's figures. Nobody wore a meter, and the air was not sampled. A low figure does not mean no harm. Wear what the machine's manual and the signs ask for, whatever this page says.
review-noise-dose = Noise dose
review-as-8-h = 8-hour average
review-at-dust = Time in dust
review-without-extraction = Without extraction
review-until-now = until now
review-not-known = not known
review-nobody-seven-days = Nobody was at a station in the last seven days. As soon as somebody is, their day stands here.
review-how-it-is-reckoned = How it is worked out
review-what-counts = Hands at a station count at its figure all the time, loading and setting up too, and so does watching its running machine in the same room. Stations at the same time add up by energy. What others do nearby is not in it. Time is at dust where the station's kind makes dust; it is with extraction where the station or the operation draws on a service that is dust extraction by its name.
review-dust-limits = Published limits for wood dust
review-dust-limits-not-measured = For a day of 8 hours, in mg a cubic metre. This shop's air is not measured; minutes at dust say nothing of how much is in the air.
review-whose = Whose
review-dust = Dust
review-mg-a-cubic-metre = mg/m³
review-read-at = Read at
review-cautions = Cautions and their sources
review-title = Review
review-none = Once you've worked on a run, this shows where the hours went. First { $link }open a run{ $end_link }.
review-day-by-day = Noise and dust, day by day
review-title-of = Review of { $run }
review-nothing-pressed = Nothing has been pressed in this run yet. Its times appear here as it is worked on the { $link }Now{ $end_link } screen.
review-not-measured = { $length } of this was not measured: it was assumed, typed from paper or interrupted. These times are not used for estimates.
review-hours-by-operation = Hours by operation
review-operation = Operation
review-loads = Loads
review-pieces = Pieces
review-leads = Leads
review-helpers = Helpers
review-hands-sum = Hands on, sum
review-hands-on = Hands on
review-elapsed = Elapsed
review-machine = Machine
review-all = All
review-hands-and-elapsed = Hands on is everybody's time added up; elapsed is how long at least one person was at it.
review-who-helpers-are = Helpers are crew and guests.
review-the-log = The log
review-save-table-csv = Save as a table (CSV)
review-began = Began
review-load = Load
review-element = Element
review-known = Known
review-measured = ✓ measured
review-to-the-plan = The run on the Plan screen

review-over = ▲ over: { $dose }
review-dose = { $percent ->
    [0] under 1 %
   *[other] { $percent } %
  }
# Where some levels are missing the true figure is higher.
review-dose-at-least = { $percent ->
    [0] under 1 % (some levels missing)
   *[other] at least { $percent } %
  }
review-level = { $level } dB(A)
review-level-at-least = at least { $level } dB(A)

review-so-long-at = { $length } at { $station }
review-no-level = Not counted, because no level is written down: { $where }. That does not mean quiet: the true figure is higher. Add levels on the { $link }Shop{ $end_link } screen.

review-noise-rule = 100 % is a day of 8 hours at { $limit } dB(A); every { $exchange } dB more halves the time. The shop chose this on the Shop screen. NIOSH recommends 85 and 3 (publication 98-126); OSHA's limit is 90 and 5 (29 CFR 1910.95, Appendix A).

review-pages = The pages: { $pages }.

review-hours = { $b }{ $hands }{ $end_b } hands on{ $a_piece ->
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
review-key-hands = hands
review-key-machines = machines
review-key-guess-of-both = guess
review-key-unknown = not measured
review-as-a-table = The same as a table
review-guess = Guess
review-took = Took
review-unmeasured = not measured
review-more = More of this run
review-times = Times learned
review-happened = What happened
review-held = What held it
review-changes = Changes to try
review-log-of = The log of { $run }
review-every-element = Every element

# times

review-times-of = Times of { $run }
review-measured-share = { $percent ->
    [none] No work is over yet.
    [100] All of the hands’ and machines’ time was measured.
   *[other] { $percent } % of the hands’ and machines’ time was measured.
  } Only what was pressed from its beginning to its end teaches a time.
review-key-one-time = one time
review-key-median = typically
review-key-middle = the middle half
review-key-left-out = left out
review-believed-now = A plan made today would take { $estimate }
review-not-counted = Not counted
review-times-others = { $first ->
    [0] Every operation
   *[other] The others
  }
review-times-unit = { $kind ->
    [hand] a piece
   *[other] a load
  }
review-believed = Next plan
review-times-count = Times

# what happened

review-happened-in = What happened in { $run }
review-everybodys-day = Everybody’s day
review-key-work = work
review-key-setup = setting up
review-key-watch = stays and watches
review-key-idle = waits
review-key-walk = a walk
review-key-planned = as planned, the narrow rows
review-as-a-list = The same as a list
review-no-days = Nobody’s day is known: nothing was pressed.
review-hands-by-operation = Hands by operation
review-an-hour = { $pieces } good pieces an hour of hands.
review-not-in-the-chart = Not measured, so not in it: { $operations }.
review-waiting = Waiting
review-waiting-of-person = People waited
review-waiting-of-station = Machines waited
review-waiting-of-tray = Trays waited, all trays added up
review-who = Who
review-why = Why
review-how-long = How long
review-no-waiting = Nothing waited that anybody knows of.
review-lost = Lost, and what came good
review-wood = Wood
review-board = Board
review-first-go = { $some } of { $count } came through every step at the first go.
review-step-by-step = Step by step
review-counts-once = A piece that was done again counts once.
review-rolled = One step after another the shares at the first go come to { $percent } %: of what came to each step, not of what was begun (rolled throughput yield).
review-step-in = In
review-step-first = Good at first
review-step-good = Good in the end
review-process-chart = Process chart
review-symbol = Sign
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
review-in-time = in time
review-not-done = not done
review-promised = The plan at the opening promised { $promised }.
review-no-promise = No plan promised a finish at the opening.

# what held it

review-held-of = What held { $run }
review-replayed = { $off ->
    [0] Reckoned by replaying the run with the times that were measured. The replay ends when the run did.
   *[other] Reckoned by replaying the run with the times that were measured. The replay ends { $off } { $later ->
        [yes] later
       *[no] earlier
      } than the run did, so its moments are about right, not to the minute.
  }

review-held-when = What the run waited for, hour by hour
review-held-what = What
review-held-when-about = As the replay has it, in the hours with somebody in the shop.{ $most ->
    [longest] { "" }
   *[short] { " " }The longest is not what cost most, since most of it had to be done or waited for anyway. What cost most is marked.
  }
review-held-key = what cost most
review-held-key-other = what else it waited for
review-held-key-away = nobody there, drawn short
review-held-from = From, in the replay
review-held-to = To, in the replay
review-held-open = With somebody there
review-held-nothing = Nothing held it that the replay can name.
review-worth = What an hour would have been worth
review-worth-about = Take an hour off one of these, spread over all that it did in the run, and the run would have been done so much sooner. Taken off one operation near the end, it may do more. Only hours with somebody in the shop count here{ $cost ->
    [none] .
   *[other] ; the { $cost } that it cost are by the clock, nights and all.
  }
review-worth-earlier = Sooner by
review-held-coming-about = Meanwhile, what the trays waited for, all of them added up:
review-worth-unknown = Too little was measured to say.

# changes to try, and the ledger of those that were adopted

review-changes-of = Changes to try after { $run }
review-wishes = Your ideas, if they come true
review-best-two = The best two at once
review-order-to-buy = In this order
review-tried-how = Each was tried on this run, replayed many times with the times that were measured, with and without the change, and nothing else changed. In brackets: 9 times out of 10 it falls in this range.
review-kept-before = Kept to try
review-take-off-list = Take it off the list
review-own-idea = Another idea
review-try-it = Try it on this run
review-ledger-of-changes = Changes that were made, and whether they worked
review-over-runs = Over all runs

review-estimate-history = How the estimate went
review-control-chart = Every time that was measured, over all runs
review-control-about = Between the dashed lines it goes as far as chance alone goes; an open square lies outside.
review-control-how = How that is reckoned
review-control-method = Their average, and three standard deviations to each side, reckoned from how much each time differs from the one before it (control chart for individuals).
review-overrule = { $kind ->
    [hand] I know better: by hand, each piece takes
   *[other] I know better: each load takes
  }
review-overrule-hint = Such as 2 min 30 s, or 2:30 as a stopwatch shows it. What is measured later moves it.
review-overrule-back = Take it back
review-overrule-press = Take this for the next plan
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
review-cost-hint = Once, for all of it; empty where it costs nothing.
review-keep-cost = Reckon with that

review-ledger-title = Changes that were made
review-ledger-empty = Here stands every change that was made after a review, what it promised, and whether it worked. The { $link }review of a run{ $end_link } offers some.
review-ledger-after = { $day }, after { $run }
review-ledger-not-yet = The first run opened after it says whether it worked, once it is finished.
review-ledger-against = { $link_after }{ $after }{ $end_link }, set against { $link_before }{ $before }{ $end_link }.
review-ledger-keep = Keep it
review-ledger-drop = Drop it
review-ledger-take-back = Take it back
review-ledger-by-hand = The book says something else since, so it can only be put back by hand.
review-ledger-made = Done.
review-ledger-did = { $did ->
    [route] Set for the next run, in the steps of { $product }.
    [book] Set in the shop’s settings.
   *[noted] It is noted; nobody but you can do it.
  }

# over all runs

over-runs-none = No run is finished yet. As soon as one is, it stands here beside the others; what is known of one that is open stands on the { $link }Review{ $end_link } screen.
over-runs-run = Run
over-runs-a-piece = Hands for each good piece
over-runs-took = From opening to done
over-runs-good = Good
over-runs-an-hour = Pieces an hour of hands
over-runs-good-share = Good share
over-runs-promised = Promised
over-runs-done = Done
over-runs-later-head = Against its promise
over-runs-not-whole = { $run }: the times of { $timed } of { $loads } loads are known. Hands took more than stands here, so an hour gave less.
over-runs-older = { $count ->
    [one] One older run is
   *[other] { $count } older runs are
  } not shown; the tables to save have every run.
over-runs-one-element = One time over all runs
over-runs-which = Which time
over-runs-show = Show it
over-runs-from = { $run ->
    [0] From the next run on: { $change }
   *[other] From { $run } on: { $change }
  }
over-runs-from-here = from here on: { $change }
over-runs-limits = How the limits are reckoned
over-runs-limits-how = Three standard deviations to each side of the average. How large one is, is reckoned from how much each time differs from the one before it, so that a slow drift does not widen the limits (control chart for individuals).
over-runs-estimate-went = How the estimate went
over-runs-after-run = After
over-runs-written = As the route says
over-runs-tables = Tables of everything
over-runs-tables-about = All runs, times, order lines, losses, changes and estimates, for a spreadsheet or a database. What each column says stands in the guide beside the program.
over-runs-save-csv = Save as tables (CSV, in one ZIP)
over-runs-save-json = Save as JSON

review-since-changes = Lost by the age of the cutter
review-since = Since
review-machine-hour = Hour of the machine
review-of-them-lost = Lost
