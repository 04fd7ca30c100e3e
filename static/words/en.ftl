# The sentences of runboard, English. The core gives codes and facts; the server and the page both read this file.
# A code's spaces become hyphens: refused + "station busy" is refused-station-busy. Moments arrive as local time.

## Small words of the screens
ui-close = Close
ui-ok = OK
ui-open = Look
ui-min = min
ui-now = now
ui-ago = { $span } ago
ui-less = Less: { $what }
ui-more = More: { $what }
ui-note = Note
ui-why = Why
ui-what = What
ui-where = Where
ui-good = Good
ui-scrap = Scrap
ui-rework = Rework
ui-somebody = Somebody
ui-unknown = Don't know
ui-undo = Undo
ui-undo-what = Undo: { $what }
ui-you-are = You are
ui-tray = tray { $tray }
ui-trays = trays { $trays }
ui-trays-from-to = trays { $from } to { $to }
ui-board = board { $board }
ui-trays-count = { $count } trays
ui-machines = Machines
ui-waits = Drying, curing, in clamps
ui-trays-title = Trays
ui-trays-of = Trays, { $run }
ui-others = Something else instead
ui-runs-about = For about
ui-positions = Positions
ui-no-server = The server does not answer. What you press is saved here and sent when it is back.
ui-pair = This phone is not paired with the shop. Your presses are saved here; pair the phone, then they are sent.

## The head
head-good = { $good } of { $wanted } good
head-due = { $good } of { $pieces } for { $due }
head-all-by = all by { $by }

## What I am in the middle of, or could do
first-since = since { $since }
first-after = After it: { $what }
first-loading = Load: { $step }, { $what }
first-working = { $step }, { $what }
first-running = { $step } is running, { $what }
first-ended = { $step } has ended, { $what }
first-unloading = Unload: { $step }, { $what }
first-stopped = { $step } has stopped, { $what }
first-nothing = Nothing waits for you
first-nothing-more = What runs and what dries is below.
first-nothing-known = What comes next is known when the server answers again.
first-no-run = No run is open. A run is one batch of one product.
attendance-watched = Stay and watch
move-start = { $step }, { $what }
move-go-on = Go on: { $step }, { $what }
move-run = Start the { $station }: { $what }
move-unload = Unload the { $station }: { $what }
move-finish = Count: { $step }, { $what }
move-wipe = Now: { $step }, { $what }
move-job = { $job }
move-free = Nothing waits for you now
move-free-until = Nothing waits for you until { $at }
move-stop = Time to stop well
move-settle = Stopped early: { $step }, { $what }
move-watch = Watch the { $station }
because-put-aside = It was begun and put aside
because-machine-due = The { $station } should have ended
because-machine-waits = The { $station } waits to be unloaded
because-stopped-early = The { $station } stopped early
because-latest = Its latest end is { $at }
because-machine-earns = The { $station } runs while you work beside it
because-machine-idle = The { $station } is idle
because-then-it-waits = The sooner it is done, the sooner it { $why ->
    [dry] dries
    [cure] cures
    [cool] cools
    [clamp] is in clamps
   *[other] rests
  }
because-stands-set-up = The { $station } is set up for it
because-next-in-line = It is next in line
because-gap = It fits in between
because-session-ends = You have until { $at }
because-must-be-watched = The { $station } must be watched
because-nothing-left = Nothing is left to do
because-free-until = What comes next has to wait

go-start = Start
go-go-on = Go on
go-at-it = I am at it
go-job-done = Done
go-settle = What becomes of it
go-stop = I stop for today
go-plan = Open a run
go-wrong = Something is wrong
go-away = Called away
go-not-this = Not this, because …
go-only-done = Done, start nothing
go-count = Done, not all good
go-list = Start list: { $points ->
    [one] one point
   *[other] { $points } points
  }
go-list-then-run = Start list, then run
go-running = The { $station } is running
done-all = Done, { $good ->
    [1] 1 good
   *[other] all { $good } good
  }
done-some = Done, { $good } good, { $scrap } scrap
then-start = Start { $what }
then-go-on = Go on with { $what }
then-at-it = At the { $station }
then-job = Start: { $job }

## Late entries
late-start = Started earlier, or done already
late-running = Running for a while
late-finish = Not all good, or done earlier
late-finished = Finished
late-started-ago = Started { $minutes } min ago
late-running-ago = For { $minutes } min
late-done-ago = { $minutes } min ago
late-done-at = Done at
late-done = Done

## What a press did: shown beside 'Undo'
did-started = Started { $load }
did-running = { $load } is running
did-at-it = At it: { $load }
did-done = Done: { $load }
did-job = Started: { $job }
did-job-done = Done: { $job }
did-list = Start list ticked, { $station }
did-away = Called away
did-back = Back
did-watch = { $person } watches
did-scrap = { $pieces } scrap in tray { $tray }, { $step }
did-rework = { $pieces } from tray { $tray } to rework, tray { $to }
did-stopped = Stopped early: { $load }
did-settled-resume = Resumed: { $load }
did-settled-again = To do again: { $load }
did-settled-save = Saved what is done: { $load }
did-settled-scrap = Scrapped what was left: { $load }
did-out = Out of { $supply }
did-in = { $supply } is there again
did-held = { $pieces } held in tray { $tray }
did-released = Tray { $tray } goes on
did-changed = New { $what }
did-out-of-use = { $station } out of use
did-back-in-use = { $station } back in use
did-first-piece-pass = First piece good: { $step }
did-first-piece-fail = First piece failed: { $step }
did-decided-go-on = { $step } goes on
did-decided-check-again = { $step }: check again
did-came = You have until { $until }
did-time = You have until { $until }
did-went = Stopped for today
did-not-this = Not now: { $what }
did-off = Taken off: { $load }
did-ended = { $station } has ended
did-answered = Answered: { $alert }
did-watch-checked = Looked: all is well
did-asked = Said what was running
did-still = Still at it: { $load }
did-settle-shop = Settled: the shop's version
did-settle-press = Settled: the press
did-undo = Undone: { $what }
did-moved = { $pieces } from tray { $tray } to tray { $to }
did-counted = Tray { $tray } counted: { $good } good
did-filled = { $trays } done to { $step }
did-wait-ended = Tray { $tray } waits no longer
did-wood = Tray { $tray }: { $wood }

## A press on this phone
press-saved-here = saved here
press-sent = sent
press-refused = Not taken: { $what }
press-read = I have read it
press-unsent = { $count } saved here
press-elsewhere = Your last press, made elsewhere

## Machines, states, waits
machines-idle = Idle: { $stations }
machines-out-until = until { $until }
machines-back = Back in use
machines-stay = Stay and watch
state-idle = idle
state-running = running
state-needs-unloading = needs unloading
state-overdue = should have ended
state-watch-check-due = watch check due
state-stopped-early = stopped early
state-out-of-use = out of use
state-put-aside = put aside
state-at-it = { $person } { $doing }
doing-loading = is loading
doing-working = is at it
doing-unloading = is unloading
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
wait-from = from { $from }
wait-by = by { $by }
wait-between = { $from } to { $by }
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
others-aside = put aside on the { $station }
others-job = about { $minutes } min

## Alerts
alert-machine-end = The { $station } has ended
alert-needs-unloading = The { $station } has ended
alert-wait-over = Tray { $tray }: the wait after { $step } is over
alert-wait-latest = Tray { $tray }: { $next } now, it is the latest end after { $step }
alert-hold-over = Tray { $tray }: its hold is over
alert-supply-due = { $supply } should be there
alert-session-end = Your time is over: tidy up
alert-watch-check = The { $station }: stay and watch. No flame, work flat, air and exhaust on?
alert-soft = Finish the pass, switch off, then go.
alert-late = This comes late: the server was away.
alert-watch-go = No flame, work flat, air and exhaust on
alert-not-ended = It has not ended, or not well
alert-still-running = Still running. Ask again in
alert-again-in = { $minutes } min
alert-stopped = Stopped, because …
alert-seen = Seen
alert-release = It goes on
alert-tomorrow = Ask again tomorrow
alert-more-time = { $minutes } min more
alert-turn-on-sound = Turn on sound

## Questions
asks-what-was-running = What was running?
asks-since = The server was away. Its last entry is from { $last }.
asks-still = Still running
asks-ended = Ended
asks-aside = Put aside
asks-stopped = Stopped, because …
asks-that-is-all = That is all
asks-nothing = Nothing was running
settle-title = To settle
settle-about = These were pressed while the phone did not know the latest. Which is right?
settle-press = { $person } pressed at { $at }: { $what } { $subject }
settle-keep-shop = Keep the shop's
settle-keep-press = The press is right

## Session
session-how-long = How long have you got?
session-hours = { $hours } h
session-until = until { $until }
session-until-label = Until
session-other = Another time
session-today = Today
session-until-now = You have until { $until }.
session-change = Change it
list-title = Start list: { $step }
list-left = { $left } to tick
list-done = All ticked: { $station }

## What an operation asks
details-title = List, setup, first piece: { $step }
details-list = Start list
details-tick = Tick the full list
details-sheet = Setup sheet
details-first-piece = First piece
details-check = Check first piece
first-piece-open = First piece not checked yet.
first-piece-pass = First piece is good.
first-piece-fail = First piece failed.
first-piece-stopped = First piece failed: { $step } is stopped until somebody decides.
decide-again = Check again
decide-go-on = Go on as it is

## Kinds of events, in a history
kind-person-came = came
kind-person-went = stopped for the day
kind-person-called-away = called away
kind-person-came-back = came back
kind-room-changed = changed room
kind-time-said = said how long
kind-job-started = started a shop job
kind-job-done = did a shop job
kind-move-declined = declined a move
kind-span-answered = answered how long
kind-station-out-of-use = station out of use
kind-station-back-in-use = station back in use
kind-setup-changed = changed the setup
kind-checklist-ticked = ticked the start list
kind-signal-received = sensor
kind-alert-claimed = on the way to an alert
kind-alert-answered = answered an alert
kind-watch-checked = looked at the machine
kind-watch-taken = took over the watch
kind-reminder-answered = answered a reminder
kind-server-restarted = server restarted
kind-restart-answered = said what was running
kind-run-opened = opened the run
kind-run-finished = finished the run
kind-run-abandoned = gave up the run
kind-orders-changed = changed the orders
kind-route-revised = revised the route
kind-board-added = added a board
kind-board-lost = lost a board
kind-supply-out = out of a supply
kind-supply-in = supply is there
kind-first-piece-checked = checked the first piece
kind-first-piece-decided = decided after a first piece
kind-operation-given = gave the operation to somebody
kind-look-given = looked at a first piece
kind-note-written = wrote a note
kind-load-started = started
kind-machine-started = machine running
kind-machine-ended = machine ended
kind-unloading-started = at it
kind-load-done = done
kind-load-stopped = stopped early
kind-stop-settled = settled a stop
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
kind-shown-how = showed how
kind-event-undone = undid a press
kind-event-amended = corrected a press
kind-entry-settled = settled an entry

## Refusals
refused-other = This could not be taken ({ $code }).
refused-bad-form = The server could not read this press.
refused-form = This press is not in the form it should be: { $where } { $what }.
refused-kind-unknown = The server does not know the kind '{ $kind }'. Load the page again.
refused-run-unknown = There is no run '{ $run }'.
refused-run-known = The run '{ $run }' is open already.
refused-run-closed = The run '{ $run }' is { $state }.
refused-station-unknown = There is no station '{ $station }' in the book.
refused-person-unknown = There is nobody called '{ $person }' in the book.
refused-tray-unknown = There is no tray { $tray } in this run.
refused-tray-known = Tray { $tray } is in this run already.
refused-step-unknown = The route has no operation '{ $step }'.
refused-load-unknown = There is no load '{ $load }'.
refused-board-unknown = There is no board '{ $board }' in this run.
refused-event-unknown = That press is not in the log.
refused-station-busy = The { $station } is taken: { $step }, tray { $trays } is still on it. Finish it or take it off first.
refused-station-out = The { $station } cannot be used: { $why }.
refused-first-piece-failed = { $step } is stopped: its first piece failed. Decide about it first.
refused-still-waiting = Tray { $tray } has to wait until { $ready_at } before { $step }.
refused-supply-out = { $step } waits for { $supply }.
refused-skill = { $step } needs somebody who can '{ $skill }'. { $person } has not been shown it yet.
refused-watch-first = You watch the { $station }. Stay with it, or pause it and make it safe first.
refused-machine-runs = A machine is still running on tray { $trays }. Let it end or stop it first.
refused-pieces-not-there = Tray { $tray }: { $wanted } wanted, only { $there } free. { $step }
refused-counts-do-not-fit = Tray { $tray } has { $there } at { $step }, and { $counted } were counted.
refused-counts-gone-on = Pieces of tray { $tray } have gone on from { $step } already: { $before } were good, now { $counted } are said.
refused-nothing-to-move = There is nothing to move in tray { $tray }.
refused-nothing-to-settle = This is settled already.
refused-moves-only-back = Pieces move back or stay at their step; they go on from { $step } by being counted.
refused-same-tray = Choose another tray or an earlier step than tray { $tray }.
refused-would-strand = Pieces of this run are at an operation that the new route lacks.
refused-later-press = It is needed by a later press. Undo that one first.
refused-transition = This does not fit: it is { $state } now.
refused-does-not-fit = This does not fit what the shop knows now.
refused-certainty-out-of-range = The certainty has to lie between 0 and 1.
refused-good-rate-out-of-range = The good rate has to lie between 0 and 1.
refused-pieces-out-of-range = The number of pieces is out of range.

## Batches and files that cannot be read
refused-batch-form = What was sent cannot be read: { $what }.
refused-file-no-run = The file holds no run: 'runboard_run', 'run' and 'events' with a 'run opened' are wanted.
refused-file-event-wrong = Event { $number } of the file: { $where } { $what }.
refused-file-zone = The run was worked in the time zone { $there }, and this shop's is { $here }. Import the shop's book first.
refused-file-unknown-names = The shop's book does not have { $names }. Import the shop's book first.

## The book, products and runs, on the Plan and Shop screens
refused-book-outdated = Somebody saved this meanwhile. Nothing you typed is lost: press Save again to keep yours. In the book now:
refused-station-in-use = { $station } cannot be removed: the open run { $run } is made there.
refused-person-at-work = { $person } is at work now. Let them finish first.
refused-nothing-wanted = Say how many good pieces are wanted, in at least one order line.
refused-too-many-trays = That makes { $trays } trays, and a run has { $most } at most. Put more pieces on a tray, or open two runs.
refused-product-unknown = There is no product '{ $product }' in the book.
refused-route-empty = { $product } has no operation yet. Write its steps first.
refused-product-wrong = This route cannot be used: { $problems }
refused-operation-unknown = There is no operation '{ $operation }' in this route.
refused-last-operation = A route needs at least one operation.

## Away, supplies, and how an entry was made
out-of = Out of { $supply }
out-of-until = Out of { $supply } until { $until }
out-is-there = It is there
away-since = last seen { $since }
away-h1 = You were called away
away-back = I am back
away-back-to = Back, go on with { $load }
basis-assumed = assumed
basis-paper = from paper
basis-sensor = from a sensor
