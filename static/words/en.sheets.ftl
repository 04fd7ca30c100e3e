# The words that Now's first drawing does without: sheets, Trays, alerts, refusals, histories. The page reads them once
# it has come to rest.

## Something is wrong
wrong-title = Something is wrong
wrong-bad = A bad piece
wrong-stopped = The machine stopped early
wrong-out = Run out of something
wrong-hold = Hold pieces
wrong-first = The first piece failed
wrong-changed = New cutter, wood, jig or focus
wrong-station = A machine is out of order
wrong-which = Which load?
wrong-no-load = Nothing has been started. Count or hold pieces on Trays.
wrong-changes = Something has changed
wrong-hurt-title = Someone is hurt, or there's a fire
emergency-call = Call { $number }
bad-title = Bad piece: { $step }
bad-which = Which tray?
bad-how-many = How many
bad-what = What happens to it?
bad-back-to = Back to
bad-why-first = Choose why first
bad-scrap = { $pieces } scrap: { $why }
bad-rework = { $pieces } to rework
bad-scrap-tray = { $pieces } scrap, tray { $tray }: { $why }
bad-rework-tray = { $pieces } to rework, tray { $tray }
bad-goes-on = The others carry on.
bad-other-tray = In another tray? Count it on Trays
scrap-tear-out = tear-out
scrap-crack = crack
scrap-broke = it broke
scrap-size = wrong size
scrap-surface = surface
scrap-engraving = engraving
scrap-burnt = burnt
scrap-knot = knot
scrap-other = other
stopped-title = Stopped early: { $load }
stopped-why = Why?
stopped-positions = How far did each piece get? Tap each one until its word is right.
stopped-record = Record the stop
stopped-say-why = Say why first
stop-power = power cut
stop-cutter = cutter
stop-slip = work slipped
stop-failed = failed
stop-other = other
settle-where = Stopped: { $why }. { $good } good, { $half } half, { $untouched } untouched{ $spoilt ->
    [0] .
   *[other] , { $spoilt } spoilt.
  } What happens to it?
settle-resume = Carry on from where it stopped
settle-again = Do it again from the start
settle-save = Save what's done
settle-scrap = Scrap the rest
save-title = Save what's done
save-words = The rest waits at this step again.
save-tray = Good in tray { $tray }
save-go = Save { $good } good
position-untouched = untouched
position-good = good
position-half = half
position-spoilt = spoilt
position-label = Position { $place }: { $state }
positions-which = Which pieces?
out-title = Run out of something: { $step }
out-of-these = Out of
out-what = Run out of what?
out-until = Until when?
out-go = Out of { $supply }
out-why = waiting for { $supply }
hold-title = Hold pieces
hold-nothing = Nothing in this tray can be held.
hold-at = At { $step }
hold-how-many = How many
hold-why = What are they waiting for?
hold-until = Until when?
hold-go = Hold { $pieces }
until-day-0 = today 18:00
until-day-1 = tomorrow 18:00
until-day-2 = in two days
until-day-7 = in a week
changed-cutter = cutter
changed-wood = wood
changed-jig = jig seat
changed-focus = focus
changed-other = setup
changed-go = Redo start list and first piece
out-of-use-go = Take it out of use
away-title = Stop it first
away-make-safe = Still running: { $stations }. Stop it, check it for smoke and glow, switch its power off.
away-is-safe = Stopped, checked, power off. I'm off
away-paused = paused when called away
away-other-watches = { $person } is watching it now
away-nobody = { $count ->
    [one] Nobody else can watch it from where they are: stop it first.
   *[other] Nobody else can watch them from where they are: stop them first.
  }
away-how-many = { $step }: how many of the { $pieces } are done?
away-go-on = Carry on with the rest
not-this-title = Skip this: { $what }
not-this-waiting = I'm waiting for something
not-this-short = Not enough time
not-this-tired = I'm too tired for it
not-this-other-person = Someone else is doing it
not-this-not-ready = It's not ready
not-this-noise = Too loud now
not-this-other = Another reason
count-title = Count: { $step }
count-left = { $pieces ->
    [one] 1 piece stays at this step.
   *[other] { $pieces } pieces stay at this step.
  }

## Trays screen
trays-h1 = Trays
trays-none = No run is open. Trays appear when a run opens.
trays-run = Run
trays-bulk = Mark several trays done
trays-bulk-title = Mark several trays done
trays-bulk-which = Which trays?
trays-bulk-to = Done up to
trays-bulk-go = Mark { $trays } done up to { $step }
trays-bulk-about = Moves them on without recording times.
trays-move = Split, merge, move
trays-move-title = Move pieces from tray { $tray }
trays-move-from = From
trays-move-to = To
trays-move-new = a new tray, { $tray }
trays-move-step = At { $step }
trays-move-why = Why
trays-move-go = Move { $pieces } to tray { $to }
trays-move-nothing = Nothing in this tray can be moved now.
trays-why-split = split
trays-why-merge = merge
trays-why-borrow = borrow
trays-why-fill = fill a jig
trays-why-rework = rework
trays-why-other = other
trays-count = Correct a count
trays-count-title = Count of tray { $tray }
trays-count-go = Save { $good } good, { $scrap } scrap
trays-count-nothing = Nothing to count in this tray yet.
trays-hold = Hold
trays-release = Release: { $step }
trays-wait-end = End the wait: { $step }
trays-wood = Wood and board
trays-wood-wood = Wood
trays-wood-board = Board
trays-card = Print card
trays-code-short = Code
trays-code = Show tray { $tray }'s code
trays-paper = Enter its paper card
trays-history = History
trays-history-none = Nothing yet.
trays-history-undone = undone
trays-history-refused = The server can't show this history now ({ $code }). Nothing is lost. Look again later.
trays-history-offline = No answer from the server. Look again when it's back.
trays-empty = empty
trays-empty-count = { $count ->
    [one] 1 tray empty
   *[other] { $count } trays empty
  }
trays-boards = Add a board, or mark one lost
trays-of = from tray { $of }
trays-at = { $pieces } at { $step }
trays-on = { $pieces } on the { $station }
trays-good = { $good } good
trays-texts = Text at each position
position-of = position { $place }
trays-do = Assign, move, count, hold, history
trays-scrap = { $pieces } scrap at { $step }: { $why }

## Lock-up, first piece, loads, being called away
load-gone = Not there any more
load-gone-words = This load is done or was taken off.
load-still-runs = Still running, this much longer
load-stopped = Stopped, because …
load-still-left = Still { $minutes } min on the clock. Has it stopped?
load-ended = Finished, nobody there
load-off = Take it off
load-join = I'm working on it too
lockup-title = Before you go
lockup-running = Still running: { $stations }. Stay until it has finished, or stop it, look at it, power off.
lockup-wait = A machine is still running
lockup-not-all = Finish anyway, not all done
lockup-say-first = Say what was done first
first-piece-title = First piece: { $step }
first-piece-passes = It's good
first-piece-fails = It failed
first-piece-outside = { $measured } is outside the limits.
first-piece-limits = { $nominal }, +{ $plus }, −{ $minus }

## What happened to a tray
history-to = from tray { $from } to tray { $to }, { $step }
history-pass = good
history-fail = failed

## Small words of the screens
ui-open = Open
ui-yes = Yes
ui-no = No
ui-note = Note
ui-why = Why
ui-unknown = Don't know
ui-what = What
ui-where = Where
ui-good = Good
ui-scrap = Scrap
ui-rework = Rework
ui-others = Do something else
ui-others-watching = Do something else while watching
ui-positions = Positions

## What a press did: shown beside 'Undo'
did-away = Called away
did-scrap = { $pieces } scrap in tray { $tray }, { $step }
did-rework = { $pieces } from tray { $tray } to rework, tray { $to }
did-stopped = Stopped early: { $load }
did-settled-resume = Resumed: { $load }
did-settled-again = To do again: { $load }
did-settled-save = Saved what's done: { $load }
did-settled-scrap = Scrapped the rest: { $load }
did-out = Run out of { $supply }
did-in = { $supply } is back
did-held = { $pieces } held in tray { $tray }
late-line-is = { $what } is late: due { $due }, { $good } of { $pieces } good so far
late-line-will = { $what } will be late: due { $due }, ready { $there } ({ $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  })
late-line-few = { $what } will be late: due { $due }, not all { $pieces } made by then
wait-beside = The same coat is on { $trays }. 'Not dry' counts for them too.
wait-not-dry = Not dry yet? Check again:
wait-12-h = in 12 h
wait-tomorrow = tomorrow
did-not-dry = Not dry yet: { $trays }, until { $until }
did-kept-held = Tray { $tray } stays on hold
did-released = Tray { $tray } released
did-changed = New { $what }
did-out-of-use = { $station } out of use
did-first-piece-pass = First piece good: { $step }
did-first-piece-fail = First piece failed: { $step }
did-went = Finished for today
did-not-this = Skipped: { $what }
did-off = Taken off: { $load }
did-ended = { $station } finished
did-answered = Answered: { $alert }
did-watch-checked = Checked the machine
did-aside = Put aside: { $load }
did-asked = Said what was running
did-still = Still working on: { $load }
did-settle-shop = Kept the shop's entry
did-settle-press = Kept the phone's entry
did-moved = { $pieces } from tray { $tray } to tray { $to }
did-counted = Tray { $tray } counted: { $good } good
did-filled = { $trays } done up to { $step }
did-span = Time corrected: { $load }
did-wait-ended = Wait ended: tray { $tray }
did-wood = Tray { $tray }: { $wood }

## Machines, states, waits
others-aside = put aside on the { $station }
others-job = about { $minutes } min
# What the plan adds. A price says what would be; it never tells anybody to hurry.
price-none = finish time unchanged
price-late = { $pieces } of { $what } late by { $span }{ $more ->
    [yes] {" "}more
   *[other] {""}
  }
price-walks = { $walks ->
    [one] 1 more walk
   *[other] { $walks } more walks
  }
price-minutes = all done { $minutes } min later
price-windows = all done { $windows ->
    [one] 1 session later
   *[other] { $windows } sessions later
  }
why-frees = Frees the { $station } for { $next }
why-unload = The { $station } has finished
why-machine-runs = Then the { $station } runs until { $at }
why-last = Nothing depends on it
why-then-it-waits = It has to rest after this; then { $next }, { $at }
why-waited-for = { $next } is waiting for it
prices-older = This order is from the plan of { $at }. Updating …
unplanned-looking = Looking for a plan. Until then this order is a rough guess.
unplanned = Can't plan right now. This order is a rough guess.
go-plan-page = Open Plan
too-late = Too late to load the { $station }: it needs { $minutes } min, you leave in { $left } min.

## Cautions while it is under way
cautions-more = { $count ->
    [one] 1 more caution
   *[other] { $count } more cautions
  }

## Alerts: titles and answers take two lines of a phone at most
alert-machine-end = { $station } should be finished. Go and check
alert-needs-unloading = { $station } has finished
alert-wait-over = Tray { $tray }: wait after { $step } is over
alert-wait-latest = Tray { $tray }: { $next } now, it can't wait any longer
alert-hold-over = Tray { $tray } was on hold: { $why }. Is it sorted?
alert-supply-due = { $supply } should have arrived
alert-station-back = Is the { $station } back in use?
station-not-back = Not yet. Out of use until
alert-session-end = Your time is up. Tidy up now
alert-watch-check = Look at the { $station }. Stay and watch
alert-watch-missed = { $station } running, check missed. Go and look now
alert-nobody-near = { $station } running with nobody near. Someone go to it now
alert-call = { $person } calls from tray { $tray }: { $why }
alert-hurt = Someone is hurt. { $person } calls from tray { $tray }
alert-looks-ended = { $station } seems to have finished
alert-looks-ended-about = Low power since { $at }. A paused machine looks like that too: go and look.
alert-looks-ended-left = Finished, nobody there
alert-soft = Finish the pass, switch off, then go.
alert-due = due { $at }
alert-since = since { $at }
alert-late = This comes late: the server was away.
alert-watch-go = { $kind ->
    [laser] No flame, work flat, air assist and exhaust on
    [cnc] No smoke, work still held, extraction on, sound normal
    [hand-cutter] No smoke, work still held, extraction on, sound normal
    [heater] No smoke, heat as set, nothing near it that burns
   *[other] No smoke, no smell, work held, sound normal
  }
alert-not-ended = Not finished, or something's wrong
alert-still-running = Still running. Ask again in
alert-again-in = { $minutes } min
alert-said-running = { $station } may be running. Go and look
alert-stopped = Stopped, because …
said-runs = At { $at } { $person } entered that the { $station } is running: { $load }. That doesn't fit, but may be true. Someone go and look
watch-aside = You can't watch while working on { $load }. Your answer puts it aside.
said-watch = I looked: it's running, and I'm staying with it
said-not-running = It's not running
said-over = Nobody says it's running any more.
alert-seen = Seen
alert-release = Yes, release it
alert-tomorrow = No, keep holding
alert-more-time = { $minutes } min more

## Questions
asks-what-was-running = What was running?
asks-since = The server was down. Its last entry is from { $last }.
asks-still = Still running
asks-at-it = Still working on it
asks-ended = Finished
asks-aside = Put aside
asks-stopped = Stopped, because …
asks-that-is-all = That's all
asks-nothing = Nothing was running
clock-wrong = This phone's clock is wrong. Your entries still get the right time, from the shop's clock. Set the phone's clock for everything else.
ahead-title = Dated in the future
ahead-words = { $count ->
    [one] 1 entry is
   *[other] { $count } entries are
  } dated in the future, the last { $last } in { $year }. This server says { $now }, { $this_year }.
ahead-clock = If that's wrong, set the server's clock and press nothing here.
ahead-go = Date them when they arrived
ui-how = How this works
settle-title = Conflicting entries
settle-about = These were entered offline and don't match. Which is right?
settle-more = { $count } more show once these are sorted.
settle-press = { $person } entered at { $at }: { $what } { $subject }
settle-keep-shop = Keep the shop's entry
settle-keep-press = Keep the phone's entry

## Kinds of events, in a history
kind-person-came = came
kind-person-went = stopped for the day
kind-person-called-away = called away
kind-person-came-back = came back
kind-room-changed = changed room
kind-time-said = said how long
kind-job-started = started a shop job
kind-job-done = did a shop job
kind-move-declined = skipped a job
kind-span-answered = said how long it took
kind-station-out-of-use = station out of use
kind-station-back-in-use = station back in use
kind-setup-changed = changed the setup
kind-checklist-ticked = ticked the start list
kind-signal-received = sensor
kind-alert-claimed = on the way to an alert
kind-alert-answered = answered an alert
kind-watch-checked = checked the machine
kind-watch-taken = took over watching
kind-reminder-answered = answered a reminder
kind-server-restarted = server restarted
kind-restart-answered = said what was running
kind-run-opened = opened the run
kind-run-finished = finished the run
kind-run-abandoned = cancelled the run
kind-orders-changed = changed the orders
kind-order-ticked = ticked an order line
kind-route-revised = revised the route
kind-board-added = added a board
kind-board-lost = lost a board
kind-supply-out = ran out of a supply
kind-supply-in = supply is back
kind-supply-counted = a supply counted
kind-supply-bought = a supply bought
kind-first-piece-checked = checked the first piece
kind-first-piece-decided = decided after a first piece
kind-operation-given = assigned the operation
kind-look-given = looked at the first piece
kind-look-passed = checked it before it started
kind-note-written = wrote a note
kind-lead-called = called the lead
kind-load-started = started
kind-machine-started = started the machine
kind-machine-ended = machine finished
kind-unloading-started = unloading
kind-load-done = finished
kind-load-stopped = stopped early
kind-stop-settled = decided about a stop
kind-load-put-aside = put aside
kind-load-taken-off = taken off
kind-pieces-counted = counted
kind-pieces-moved = moved pieces
kind-pieces-held = held
kind-pieces-released = released
kind-wait-ended = ended the wait
kind-wood-noted = noted the wood
kind-texts-placed = placed texts
kind-card-printed = printed a traveller
kind-shown-how = trained on a machine
kind-time-overruled = set a time by hand
kind-change-adopted = adopted a change
kind-change-judged = judged a change
kind-event-undone = undid an entry
kind-event-amended = corrected an entry
kind-entry-settled = resolved a conflicting entry

## Refusals
refused-bad-form = The server could not read this entry. Load the page again.
refused-form = This entry can't be read: { $where } { $what }. Load the page again.
refused-kind-unknown = The server does not know '{ $kind }'. Load the page again.
refused-run-unknown = There is no run '{ $run }'. Load the page again.
refused-run-known = The run '{ $run }' is already open. Look for it on Now.
refused-run-closed = The run '{ $run }' is { $state }. Nothing more can be entered.
refused-change-adopted = This change is already adopted. The next run uses it.
refused-change-unknown = This change was not adopted, or someone took it back. Load the page again.
refused-change-judged = This change was already { $verdict ->
    [kept] kept
   *[dropped] dropped
  }. Load the page again.
refused-station-unknown = The shop has no station '{ $station }'. Look at Shop.
refused-person-unknown = The shop has nobody called '{ $person }'. Look at Shop.
refused-tray-unknown = This run has no tray { $tray }. Look at Trays.
refused-tray-known = Tray { $tray } is already in this run. Choose another number.
refused-none-ready = { $ready ->
    [0] Nothing of it is ready
   *[other] No more of it is ready: { $ready } of { $pieces }
  }. Nothing was ticked.
refused-some-ready = Only { $ready } of { $pieces } { $ready ->
    [one] is
   *[other] are
  } ready.
refused-line-unknown = { $run } no longer has order line '{ $line }'. Load the page again.
refused-step-unknown = The route has no operation '{ $step }'. Load the page again.
refused-load-unknown = There is no load '{ $load }' any more. Load the page again.
refused-board-unknown = This run has no board '{ $board }'. Look at Trays.
refused-event-unknown = That entry is not in the log. Load the page again.
refused-station-busy = The { $station } is busy: { $step }, { $trays }. Finish that or take it off first.
refused-station-out = The { $station } is out of use: { $why }. If it works again, say so on Now.
refused-first-piece-failed = { $step } is stopped: its first piece failed. Decide about that first.
refused-still-waiting = Tray { $tray } isn't ready for { $step } yet. It has to wait until { $ready_at }.
refused-supply-out = No { $supply } for { $step }. If it's back, say so on Now.
refused-skill = { $step } needs someone who can '{ $skill }'. { $person } has not learned it yet.
refused-watch-first = You're watching the { $station }. Stay with it. Before you go: stop it, look at it, power off.
refused-ahead = { $at } is still to come; it's { $now } now. Choose an earlier time.
refused-before-run = { $run } was opened at { $opened_at }: nothing can be entered before. Press Start, or choose a later time.
refused-machine-runs = A machine is still running with { $trays }. Stay until it has finished, or stop it first.
refused-load-in-hands = Someone is still working at the { $station }: { $trays }. Finish that or put it aside first.
refused-care-open = Rags, dust or scorched cuts are not dealt with yet. Answer that on Now first.
refused-wait-open = Tray { $tray } is still waiting after { $step }, and must not wait too long. See to it, then end its wait.
refused-pieces-not-there = Tray { $tray } has { $there } free for { $step }, not { $wanted }. Choose fewer.
refused-counts-do-not-fit = Tray { $tray } has { $there } at { $step }, but { $counted } were counted. Count again.
refused-counts-gone-on = Pieces of tray { $tray } have already left { $step }: { $before } were good, now you say { $counted }. Correct the later step first.
refused-nothing-to-move = There is nothing to move in tray { $tray }. Choose another.
refused-nothing-to-settle = That is already sorted. Load the page again.
refused-moves-only-back = Pieces can only move back or stay at their step. To get them past { $step }, count them.
refused-same-tray = Those pieces are already there, in tray { $tray }. Choose another tray or an earlier step.
refused-would-strand = Tray { $tray } is at { $step }, which the new route leaves out. Apply the change from a later tray.
refused-would-repeat = Tray { $tray } has done { $step }, and the new route would repeat it. Apply the change from a later tray.
refused-later-press = A later entry builds on this one. Undo that one first.
refused-transition = { $step }, { $trays }: { $state ->
    [loading] being loaded
    [working] already started
    [running] on the machine
    [ended] ready to unload
    [unloading] being unloaded
    [stopped] stopped early
    [done] done
    [closed] not there any more
   *[other] not started
  }. That entry doesn't fit; look at it again.
refused-does-not-fit = That doesn't fit how things are now. Look again, then enter it again.
refused-certainty-out-of-range = The certainty must be between 0 and 1.
refused-good-rate-out-of-range = The good rate must be between 0 and 1.
refused-pieces-out-of-range = That number of pieces is out of range. Choose another.

## Batches and files that cannot be read
refused-batch-form = What was sent cannot be read: { $what }.
refused-too-fast = Too many entries at once. Your phone keeps them and sends them again in { $seconds } s.
refused-press-too-large = That is too long. Say it in fewer words.
refused-file-no-run = This file holds no run. It needs 'runboard_run', 'run' and 'events' with a 'run opened'.
refused-file-event-wrong = Event { $number } of the file: { $where } { $what }.
refused-file-other-run = Event { $number } of the file belongs to another run ({ $run }), so nothing was imported. Save the run again where it was worked.
refused-file-outside = Nothing was imported: this run overlaps with work here, and would change { $what ->
    [run] the run { $name }
    [station] who is at the { $name }
    [person] what { $name } is working on
    [press] conflicting entries
    [due] what falls due here
   *[other] what is asked here
  }. To look at it, import it into a separate data folder.
refused-file-does-not-fit = Nothing was imported: what happened at { $at } doesn't fit what was done here then.
refused-run-too-large = That makes { $found } { $what ->
    [pieces] pieces
    [trays] trays
    [boards] boards
    [loads] loads
    [steps] steps
   *[letters] letters in its route
  }, but a run holds { $most } at most. Open two runs{ $what ->
    [loads] , or put more pieces on a tray
   *[other] {""}
  }.
refused-too-much-to-plan = That makes more loads than can be planned at once ({ $most }). Choose fewer.
refused-file-empty = That file is empty. Choose a file first.
refused-file-nothing = This file holds neither shop data nor a run. Save one here to see what it looks like.
refused-file-too-long = This file is too large: { $most } million bytes at most, without its pictures. Nothing was changed.
refused-file-gone = This file is no longer kept here. Choose it again.
refused-file-zone = The run was worked in the time zone { $there }, this shop is in { $here }. Import the shop data first.
refused-file-unknown-names = This shop has no { $names }. Import the shop data first.

## The book, products and runs, on the Plan and Shop screens
refused-book-outdated = Someone else saved this meanwhile. Nothing you typed is lost: press Save again to keep yours. Saved now:
refused-station-runs = { $station } is running. Change how it is watched once it has finished.
refused-station-in-use = { $station } can't be removed yet: the open run { $run } uses it. Finish that run first.
refused-person-at-work = { $person } is at work now. Let them finish first.
refused-nothing-wanted = No pieces are wanted yet. Write a number in at least one order line.
refused-too-many-trays = That makes { $trays } trays, but a run holds { $most } at most. Put more pieces on a tray, or open two runs.
refused-why-missing = The reason is missing. Say why in a few words.
refused-time-not-on-route = The route has no such time for { $step }. Write one there first.
refused-product-unknown = There is no product '{ $product }'. Choose another.
refused-route-empty = { $product } has no operation yet. Add its steps first.
refused-product-wrong = This route cannot be used: { $problems }
refused-operation-unknown = This route has no operation '{ $operation }'. Load the page again.
refused-last-operation = A route needs at least one operation. Add another one first.

## Away, supplies, and how an entry was made
out-of = Run out of { $supply }
out-of-until = Run out of { $supply } until { $until }
out-is-there = It's here
basis-assumed = assumed
basis-paper = from paper
basis-sensor = from a sensor

## Going on before a wait is over
early-title = It needs to wait until { $until }
early-dry = Dry to the touch is not cured. Read the label before you carry on, and keep heat, sparks and flame away.
early-cure = What has not cured marks, sticks and can give off fumes. Read the label before you carry on.
early-clamp = A joint taken out of its clamps too soon can open. Read the label of the glue before you carry on.
early-cool = It may still be hot enough to burn you, or to spoil what touches it.
early-settle = It may still move, and what is cut now may not fit later.
early-go = Start early anyway: { $load }
early-nothing = None of these pieces is free: they are on hold, or someone is working on them.

## A span over twice its estimate
span-ask = { $load } took { $span }. Were you working the whole time?
span-all = The whole time
span-about = About …
span-about-title = How long? { $load }
span-about-minutes = About
span-about-go = About { $minutes } min

## Folded below the first thing: late entries, list, setup, first piece
go-only-done = Done, nothing next
go-count = Done, some bad
late-start = Started earlier, or already done
late-running = Already running
late-finish = Some bad, or finished earlier
late-finished = Finished
late-started-ago = Started { $minutes } min ago
late-running-ago = For { $minutes } min
late-done-ago = { $minutes } min ago
late-done-at = Done at
late-done = Done
did-decided-go-on = { $step } carries on
did-decided-check-again = { $step }: check again
details-title = List, setup, first piece: { $step }
details-list = Start list
details-tick = Tick the full list
details-sheet = Setup sheet
details-first-piece = First piece
details-check = Check first piece
decide-again = Check again
decide-go-on = Carry on as it is

## Try the sound
hearing-try = Test the sound
hearing-title = Did you hear it?
hearing-never = Sound not tested on this phone
hearing-last = Sound last heard { $at }
hearing-yes = I heard it
hearing-again = Play it again
hearing-if-not = If not: turn the volume up, take the phone off silent, and stop other sound.

## Every step of a run, on Trays
trays-steps = Steps, lists and setup sheets
trays-steps-from = From tray { $tray } on
trays-step = { $number } of { $all }, { $step } · { $station }
trays-step-bare = No instructions for this step yet.

## Care: reminders, the start list, finishes
reminder-ready-can = The lidded metal can with water is ready
reminder-ready-outdoors = A place outdoors in the shade is ready
reminder-done-no-glow = Bin emptied outdoors, nothing glows, and I looked again
reminder-else = Something else …
reminder-what = What was done?
reminder-did-it = Save what was done
did-reminder = Noted: { $done }
list-title = Start list: { $step }
list-left = { $left } left to tick
list-done = All ticked: { $station }
list-eyewear-unknown = Eyewear not recorded. Check the wavelength on the laser's label.
list-material-unknown = Material not recorded. Not sure what it is? Don't start.
list-material-look = { $material }: the name does not say what it is bound or coated with. Check its data sheet first. Not sure? Don't start.
list-material-forbidden = { $material } is on the shop's banned list.
list-material-which = What is it made of? { $trays }
list-material-note = Note it
list-never = Never: { $forbidden }.
list-never-empty = Never laser PVC or anything containing chlorine. The shop's banned list is empty.
finish-unknown = No finish recorded for this step. Read its label: ventilation, solvent, rags, drying.
finish-label-of = label of { $date }
finish-ventilation = Ventilation: { $ventilation }
finish-solvent = Contains solvent: no laser, sanding, heater or charger in this room for { $span } after the coat
finish-solvent-unknown = Contains solvent: no laser, sanding, heater or charger in this room until it is aired out
finish-recoat = recoat from { $at }
finish-handle = handle from { $at }
finish-cure = full cure { $at }
wait-end-title = End the wait: { $step }
wait-end-go = End it early: tray { $tray }

## Calls, handing over, a look at the first piece
call-why-look = check my first piece
call-why-help = help needed
call-why-bad-piece = a bad piece
call-why-stopped = it stopped
call-why-hurt = someone is hurt
call-going = I'm going
call-done = Done
call-times = Called { $times ->
    [one] once
   *[other] { $times } times
  } so far.
call-on-the-way = { $who } is on the way to { $person } at tray { $tray }: { $why }
call-own = You called the lead to tray { $tray }: { $why }
call-no-longer = No longer needed
wrong-call = Call the lead
wrong-hurt = Someone is hurt: call the lead
did-call = Called the lead to tray { $tray }: { $why }
did-call-going = Going to tray { $tray }
did-call-done = Done: tray { $tray }, { $why }
look-show = Show the first piece
look-called = The lead has been called to look. Wait for them.
look-failed = Not yet, says the lead. Fix it, then show it again.
look-good = Good, carry on
look-not-yet = Not yet
did-show-first = Called the lead to look: { $step }
did-look-pass = First piece good, tray { $tray }
did-look-fail = First piece not yet, tray { $tray }
given-title = Assigned
given-row = { $person }: { $step }, { $trays }
given-row-you = You: { $step }, { $trays }
given-look = The lead looks at the first piece
give-open = Assign to …
give-title = Assign to …
give-which = Which trays?
give-operation = Which operation?
give-to = Who?
give-nobody = Anyone
give-look = Show me the first piece
give-go = Assign { $step }, { $trays }, to { $person }
give-back = Unassign { $step }, { $trays }
give-trays-first = Choose trays first
give-who-first = Choose who first
give-nothing = Nothing to assign right now.
did-give = Assigned to { $person }: { $step }, { $trays }
did-give-back = Unassigned: { $step }, { $trays }
shown-title = Machine training
shown-open = Add training …
shown-sheet = Training: { $person }
shown-about = The machine's own manual comes first. Stay beside the first load.
shown-nothing = Not trained on any machine yet
shown-known = Trained on: { $stations }
shown-all = Trained on every machine of the shop.
shown-go = I trained { $person } on the { $station }
did-shown = { $person } trained on the { $station }

## Refusals of care and of handing over
refused-rags-first = Today's rags, oily dust and bins come first. Say what was done with them in the closing checklist.
refused-air-not-clear = Solvent fumes in { $room } until { $until }. Keep the { $station } off until then.
refused-solvent-beside-heat = { $step } puts solvent into the air of { $room }, where the { $station } is at work. Wait until it has finished.
refused-material-unknown = Material of tray { $tray } not recorded. Note it on the start list or on Trays before the { $station } starts. Not sure? Don't start.
refused-material-look = { $material }: check its data sheet first, and what it is bound or coated with. The start list of the { $station } asks for it.
refused-material-forbidden = { $material } never goes on the { $station }. '{ $forbidden }' is on the shop's banned list.
refused-not-shown = { $person } is not trained on the { $station } yet. Ask the lead to show it first.
refused-look-first = The lead wants to see the first piece of { $step }, tray { $tray }. Show it first.
refused-hands-elsewhere = You can't watch the { $station } from the { $at }. Finish there first, or stop the { $station }, look at it, power off.
refused-elses-hands-elsewhere = { $person } can't watch the { $station } from the { $at }. They finish there first, or you stop the { $station }, look at it, power off.

## Waits and trays, below the fold of Now
ui-waits = Drying, curing, in clamps
ui-trays-title = Trays
ui-trays-of = Trays, { $run }
wait-dry = { $count ->
    [one] Tray { $trays }
   *[other] Trays { $trays }
  }, { $step }: drying
wait-cure = { $count ->
    [one] Tray { $trays }
   *[other] Trays { $trays }
  }, { $step }: curing
wait-clamp = { $count ->
    [one] Tray { $trays }
   *[other] Trays { $trays }
  }, { $step }: in clamps
wait-cool = { $count ->
    [one] Tray { $trays }
   *[other] Trays { $trays }
  }, { $step }: cooling
wait-settle = { $count ->
    [one] Tray { $trays }
   *[other] Trays { $trays }
  }, { $step }: settling
wait-then = then { $next }
wait-from = until { $from }
wait-ready = ready
wait-by = by { $by }
wait-between = { $from } to { $by }
trays-done = { $count ->
    [one] 1 tray done
   *[other] { $count } trays done
  }
calendar-put = Add to my calendar
early-open-dry = Carry on now, before it's dry
early-open-cure = Carry on now, before it's cured
early-open-clamp = Carry on now, take the clamps off early
early-open-cool = Carry on now, before it's cool
early-open-settle = Carry on now, before it has settled
tray-held = held: { $why }
tray-held-until = held: { $why }, until { $until }
tray-done = done
tray-next = next { $next }
tray-started = { $step } started
tray-at-it = { $step }, { $person }
tray-put-aside = { $step }, put aside
tray-on-machine-running = on the { $station } until { $until }
tray-on-machine-ended = on the { $station }, to unload
tray-on-machine-stopped = on the { $station }, stopped early
tray-resting-dry = drying until { $until }, then { $next }
tray-resting-cure = curing until { $until }, then { $next }
tray-resting-clamp = in clamps until { $until }, then { $next }
tray-resting-cool = cooling until { $until }, then { $next }
tray-resting-settle = settling until { $until }, then { $next }
count-pieces = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }
count-good = { $good } good
count-scrap = { $scrap } scrap
strip-label = { $done } of { $steps } steps done

## The last entry, where it came from another phone
press-elsewhere-what = On another phone: { $what } { $of }

# A button at a station, and what is said aloud

button-done = { $station }: done, for { $person }.
button-started = { $station }: started, for { $person }.
button-taken-back = { $station }: taken back, for { $person }.
refused-button-nobody = No one is working at the { $station }. Press on the phone.
refused-button-two-people = Two people are at the { $station }. Press on your own phone.
refused-button-list = { $station }: do the start list first, on the phone.
refused-button-look = { $station }: show the lead the first piece first.
refused-button-nothing = Nothing to press at the { $station } now. Look at Now.

spoken-what = Next step and alarms, said aloud
spoken-no-voice = This phone can't read English aloud by itself.
spoken-on = Say aloud
spoken-off = Stop saying aloud
spoken-hello = I say what comes next, and each alarm.

refused-first-nameless = Your name is missing. Type it at the top.
refused-first-stationless = No station is ticked. Tick at least one.
refused-first-hourless = No hours are ticked. Tick when you are usually there.
refused-shop-described = Someone described the shop meanwhile. Look at Shop.
