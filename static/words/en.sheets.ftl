# The words that Now's first drawing does without: sheets, Trays, alerts, refusals, histories. The page reads them once
# it has come to rest.

## Something is wrong
wrong-title = Something is wrong
wrong-bad = A bad piece
wrong-stopped = It stopped early
wrong-out = Out of something
wrong-hold = Hold pieces
wrong-first = The first piece fails
wrong-changed = New cutter, wood, jig or focus
wrong-station = A station cannot be used
wrong-which = Which load?
wrong-no-load = Nothing has been started. Pieces that lie in their trays are counted and held there.
wrong-emergency = Fire or injury: emergency stop if it is safe, get out, call { $number }.
bad-title = A bad piece: { $step }
bad-which = Which tray?
bad-how-many = How many
bad-what = What becomes of it?
bad-back-to = Back to
bad-scrap = { $pieces } scrap: { $why }
bad-rework = { $pieces } to rework
bad-goes-on = The others go on.
scrap-tear-out = tear-out
scrap-crack = crack
scrap-size = wrong size
scrap-surface = surface
scrap-engraving = engraving
scrap-burnt = burnt
scrap-knot = knot
scrap-other = other
stopped-title = Stopped early: { $load }
stopped-why = Why?
stopped-positions = How far is each piece? Press each one until its word is right.
stopped-record = It stopped
stopped-say-why = Say why first
stop-power = power cut
stop-cutter = cutter
stop-slip = work slipped
stop-failed = failed
stop-other = other
settle-where = Stopped: { $why }. { $good } good, { $half } half, { $untouched } untouched{ $spoilt ->
    [0] .
   *[other] , { $spoilt } spoilt.
  } What becomes of it?
settle-resume = Go on from where it stopped
settle-again = Do it again from the start
settle-save = Save what is done
settle-scrap = Scrap what is left
save-title = Save what is done
save-words = What is not good waits at this step again.
save-tray = Good in tray { $tray }
save-go = { $good } good
position-untouched = untouched
position-good = good
position-half = half
position-spoilt = spoilt
position-label = Position { $place }: { $state }
positions-which = Which pieces?
out-title = Out of something: { $step }
out-of-these = Out of
out-what = Out of what?
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
changed-go = List and first piece again
out-of-use-go = It cannot be used
away-title = Stop it first
away-make-safe = Still running: { $stations }. Stop it, look at it for smoke and glow, switch its power off.
away-is-safe = Stopped, looked at, power off. Called away
away-paused = paused when called away
away-other-watches = { $person } watches it now
away-how-many = How many of the { $pieces } are done? { $step }
away-go-on = Go on with the rest
not-this-title = Not this: { $what }
not-this-waiting = I am waiting for something
not-this-short = Not enough time
not-this-tired = I am too tired for it
not-this-other-person = Somebody else does it
not-this-not-ready = It is not ready
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
trays-bulk = Several trays done to …
trays-bulk-title = Several trays done
trays-bulk-which = Which trays?
trays-bulk-to = Done to
trays-bulk-go = { $trays } done to { $step }
trays-bulk-about = The trays move on as if each press had been made. No time is learned from it.
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
trays-count-go = { $good } good, { $scrap } scrap
trays-count-nothing = Nothing of this tray was counted or can be counted yet.
trays-hold = Hold
trays-release = Release: { $step }
trays-wait-end = End the wait: { $step }
trays-wood = Wood and board
trays-wood-wood = Wood
trays-wood-board = Board
trays-card = Print its card
trays-paper = Type in its card
trays-history = History
trays-history-none = Nothing yet.
trays-history-undone = undone
trays-history-refused = The server answers, but cannot give this history now (it said { $code }). Nothing is lost; look again later.
trays-history-offline = The history comes from the server, which does not answer now.
trays-empty = empty
trays-empty-count = { $count ->
    [one] 1 tray empty
   *[other] { $count } trays empty
  }
trays-boards = Add a board, or say that one is lost
trays-of = from tray { $of }
trays-at = { $pieces } at { $step }
trays-on = { $pieces } on the { $station }
trays-good = { $good } good
trays-texts = Which text at which position
position-of = position { $place }
trays-do = Move, count, hold, history
trays-scrap = { $pieces } scrap at { $step }: { $why }

## Lock-up, first piece, loads, being called away
load-gone = No longer there
load-gone-words = This load is done or was taken off.
load-still-runs = It runs, this long from now
load-stopped = It stopped, because …
load-ended = It has ended; I am not at it yet
load-off = Take it off
load-join = I am at it too
lockup-title = Before you go
lockup-running = Still running: { $stations }. Stay until it has ended, or stop it, look at it, power off.
lockup-wait = A machine still runs
lockup-not-all = I stop without all of it
lockup-say-first = Say what was done first
first-piece-title = First piece: { $step }
first-piece-passes = It is good
first-piece-fails = It fails
first-piece-outside = { $measured } is outside its limits.
first-piece-limits = { $nominal }, +{ $plus }, −{ $minus }

## What happened to a tray
history-to = from tray { $from } to tray { $to }, { $step }
history-pass = it is good
history-fail = it failed

## Small words of the screens
ui-open = Look
ui-note = Note
ui-why = Why
ui-unknown = Don't know
ui-what = What
ui-where = Where
ui-good = Good
ui-scrap = Scrap
ui-rework = Rework
ui-others = Something else instead
ui-positions = Positions

## What a press did: shown beside 'Undo'
did-away = Called away
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
late-line-is = { $what } is late: it was due { $due }, and { $good } of { $pieces } are good
late-line-will = { $what } will be late by the plan: due { $due }, its { $pieces } are there { $there }
late-line-few = { $what } will be late by the plan: due { $due }, and not all of its { $pieces } are made by then
wait-beside = The same coat is over on { $trays } too: what you answer of 'not dry' holds for them as well.
wait-not-dry = Not dry yet? Then look again:
wait-12-h = in 12 h
wait-tomorrow = tomorrow
did-not-dry = Not dry yet: { $trays }, until { $until }
did-kept-held = Tray { $tray } stays on hold
did-released = Tray { $tray } goes on
did-changed = New { $what }
did-out-of-use = { $station } out of use
did-first-piece-pass = First piece good: { $step }
did-first-piece-fail = First piece failed: { $step }
did-went = Stopped for today
did-not-this = Not now: { $what }
did-off = Taken off: { $load }
did-ended = { $station } has ended
did-answered = Answered: { $alert }
did-watch-checked = Looked at the machine
did-aside = Put aside: { $load }
did-asked = Said what was running
did-still = Still at it: { $load }
did-settle-shop = Settled: the shop's version
did-settle-press = Settled: the press
did-moved = { $pieces } from tray { $tray } to tray { $to }
did-counted = Tray { $tray } counted: { $good } good
did-filled = { $trays } done to { $step }
did-span = Said how long it took: { $load }
did-wait-ended = Tray { $tray } waits no longer
did-wood = Tray { $tray }: { $wood }

## Machines, states, waits
others-aside = put aside on the { $station }
others-job = about { $minutes } min
# What the plan adds. A price says what would be; it never tells anybody to hurry.
price-none = the finish stays as it is
price-late = { $pieces } of { $what } late by { $span }{ $more ->
    [yes] {" "}more
   *[other] {""}
  }
price-walks = { $walks ->
    [one] one walk more
   *[other] { $walks } walks more
  }
price-minutes = all done { $minutes } min later
price-windows = all done { $windows ->
    [one] one session later
   *[other] { $windows } sessions later
  }
why-frees = It frees the { $station } for { $next }
why-unload = The { $station } is through
why-machine-runs = Then the { $station } runs until { $at }
why-last = Nothing waits behind it
why-then-it-waits = After it there is a wait; { $next } comes { $at }
why-waited-for = { $next } waits for it
prices-older = The order here is from a plan of { $at }; a new one is being made.
unplanned-looking = Looking for a plan; meanwhile the order here goes without one.
unplanned = No plan is possible just now; the order here goes without one.
go-plan-page = Open Plan
too-late = Too late to load the { $station }: it takes { $minutes } min, and you stop in { $left } min.

## Alerts
alert-machine-end = By its estimate the { $station } has ended
alert-needs-unloading = The { $station } has ended
alert-wait-over = Tray { $tray }: the wait after { $step } is over
alert-wait-latest = Tray { $tray }: { $next } now, it is the latest end after { $step }
alert-hold-over = Tray { $tray }: its hold is over
alert-supply-due = { $supply } should be there
alert-station-back = Is the { $station } back in use?
station-not-back = Not yet. Out of use until
alert-session-end = Your time is over: tidy up
watch-things = { $kind ->
    [laser] no flame, work flat, air and exhaust on
    [cnc] no smoke, work held, extraction on, sound as usual
    [heater] no smoke, heat as set, nothing near it that burns
   *[other] no smoke, no smell, work held, sound as usual
  }
alert-watch-check = The { $station }: stay and watch. Confirm: { watch-things }
alert-watch-missed = The { $station } runs, and nobody answered. Go and look at it now
alert-nobody-near = Everybody was last seen elsewhere. The { $station } runs: somebody goes to it now
alert-call = { $person } at tray { $tray } calls the lead: { $why }
alert-hurt = Somebody is hurt. { $person } calls from tray { $tray }
alert-looks-ended = The { $station } looks ended
alert-looks-ended-about = Its power has been low since { $at }. A paused machine looks like that too: go and look. Has it ended?
alert-looks-ended-left = It has ended, nobody is at it
alert-soft = Finish the pass, switch off, then go.
alert-late = This comes late: the server was away.
alert-watch-go = I looked: { watch-things }
alert-near-go = I am at it: { watch-things }
alert-not-ended = It has not ended, or not well
alert-still-running = Still running. Ask again in
alert-again-in = { $minutes } min
alert-said-running = The { $station } may be running: a press that did not fit says so. Somebody goes and looks
alert-stopped = Stopped, because …
said-runs = { $person } pressed at { $at } that the { $station } runs: { $load }. That did not fit, and may be true all the same. Somebody goes and looks
watch-aside = Your hands are at { $load }: nobody watches from there. Your answer puts it aside.
said-watch = I looked: it runs, and I stay with it
said-not-running = It is not running
said-over = Nobody says any more that it runs.
alert-seen = Seen
alert-release = It goes on
alert-tomorrow = Keep holding, ask tomorrow
held-why = { $pieces } held, { $why }
alert-more-time = { $minutes } min more

## Questions
asks-what-was-running = What was running?
asks-since = The server was away. Its last entry is from { $last }.
asks-still = Still running
asks-at-it = Still at it
asks-ended = Ended
asks-aside = Put aside
asks-stopped = Stopped, because …
asks-that-is-all = That is all
asks-nothing = Nothing was running
clock-wrong = This phone's clock is wrong. Runboard goes by the shop's own: your presses are dated right. Set the phone's clock for everything else on it.
ahead-title = Dated after now
ahead-words = { $count ->
    [one] One entry is
   *[other] { $count } entries are
  } dated after now, the last { $last } in { $year }. By this server it is { $now }, in { $this_year }.
ahead-clock = If that is wrong, set the server's clock and press nothing here.
ahead-go = Date them when they arrived
settle-title = To settle
settle-about = These were pressed while the phone did not know the latest. Which is right?
settle-more = And { $count } more, which are shown once these are settled.
settle-press = { $person } pressed at { $at }: { $what } { $subject }
settle-keep-shop = Keep the shop's
settle-keep-press = The press is right

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
kind-order-ticked = ticked an order line
kind-route-revised = revised the route
kind-board-added = added a board
kind-board-lost = lost a board
kind-supply-out = out of a supply
kind-supply-in = supply is there
kind-supply-counted = a supply counted
kind-supply-bought = a supply bought
kind-first-piece-checked = checked the first piece
kind-first-piece-decided = decided after a first piece
kind-operation-given = gave the operation to somebody
kind-look-given = looked at a first piece
kind-look-passed = looked it through before it started
kind-note-written = wrote a note
kind-lead-called = called the lead
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
kind-time-overruled = set a time by hand
kind-change-adopted = adopted a change
kind-change-judged = judged a change
kind-event-undone = undid a press
kind-event-amended = corrected a press
kind-entry-settled = settled an entry

## Refusals
refused-bad-form = The server could not read this press.
refused-form = This press is not in the form it should be: { $where } { $what }.
refused-kind-unknown = The server does not know the kind '{ $kind }'. Load the page again.
refused-run-unknown = There is no run '{ $run }'.
refused-run-known = The run '{ $run }' is open already.
refused-run-closed = The run '{ $run }' is { $state }.
refused-change-adopted = That change is adopted already: the next run goes by it.
refused-change-unknown = That change was not adopted, or somebody took it back. Load the page again.
refused-change-judged = It is said already that this change was { $verdict ->
    [kept] kept
   *[dropped] dropped
}.
refused-station-unknown = There is no station '{ $station }' in the book.
refused-person-unknown = There is nobody called '{ $person }' in the book.
refused-tray-unknown = There is no tray { $tray } in this run.
refused-tray-known = Tray { $tray } is in this run already.
refused-none-ready = { $ready ->
    [0] Nothing of it is ready
   *[other] No more of it is ready: { $ready } of { $pieces }
  }. Nothing was ticked.
refused-some-ready = Only { $ready } of { $pieces } { $ready ->
    [one] is
   *[other] are
  } ready.
refused-line-unknown = { $run } has no order line '{ $line }' any more.
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
refused-watch-first = You watch the { $station }. Stay with it. Before you go: stop it, look at it, power off.
refused-ahead = It is dated { $at }, after now, { $now }: say a moment that has been.
refused-before-run = { $run } was opened at { $opened_at }: say a moment after that.
refused-machine-runs = A machine is still running on tray { $trays }. Stay until it has ended, or stop it first.
refused-load-in-hands = Somebody's hands are still at the { $station }, tray { $trays }. Finish that or put it aside first.
refused-care-open = First say what became of the rags, the dust or what burnt: Now asks about it.
refused-wait-open = Tray { $tray } still waits after { $step }, and must not wait too long. See to it, and say that the wait is over, first.
refused-pieces-not-there = Tray { $tray } has { $there } free for { $step }, and { $wanted } were wanted.
refused-counts-do-not-fit = Tray { $tray } has { $there } at { $step }, and { $counted } were counted.
refused-counts-gone-on = Pieces of tray { $tray } have gone on from { $step } already: { $before } were good, now { $counted } are said.
refused-nothing-to-move = There is nothing to move in tray { $tray }.
refused-nothing-to-settle = This is settled already.
refused-moves-only-back = Pieces move back or stay at their step; they go on from { $step } by being counted.
refused-same-tray = Choose another tray or an earlier step than tray { $tray }.
refused-would-strand = Tray { $tray } is at { $step }, and the new route lacks it.
refused-would-repeat = Tray { $tray } has done { $step }, and by the new route it would do it again. Let the change begin with a later tray.
refused-later-press = It is needed by a later press. Undo that one first.
refused-transition = { $step } of tray { $trays } is { $state ->
    [loading] being loaded
    [working] begun
    [running] on the machine
    [ended] ready to be unloaded
    [unloading] being unloaded
    [stopped] stopped early
    [done] done
    [closed] not there any more
   *[other] not begun
  }: this press does not fit it.
refused-does-not-fit = This does not fit what the shop knows now.
refused-certainty-out-of-range = The certainty has to lie between 0 and 1.
refused-good-rate-out-of-range = The good rate has to lie between 0 and 1.
refused-pieces-out-of-range = The number of pieces is out of range.

## Batches and files that cannot be read
refused-batch-form = What was sent cannot be read: { $what }.
refused-too-fast = These are more presses than the shop takes at once. Your phone keeps them and sends them again in { $seconds } s.
refused-press-too-large = That is more than a press can say. Say it in fewer words.
refused-file-no-run = The file holds no run: 'runboard_run', 'run' and 'events' with a 'run opened' are wanted.
refused-file-event-wrong = Event { $number } of the file: { $where } { $what }.
refused-file-other-run = Event { $number } of the file is about another run than its own ({ $run }), so nothing of it is taken. Save the run anew where it was worked.
refused-file-outside = Nothing of the file is taken: it was worked at the same time as work here, and would change { $what ->
    [run] the run { $name }
    [station] who is at the { $name }
    [person] what { $name } is at
    [press] what is to be settled
    [due] what falls due here
   *[other] what is asked here
  }. To look at it, read it into a data folder of its own.
refused-file-does-not-fit = Nothing of the file is taken: what happened at { $at } does not fit what was done here then.
refused-run-too-large = That makes { $found } { $what ->
    [pieces] pieces
    [trays] trays
    [boards] boards
    [loads] loads
    [steps] steps
   *[letters] letters in its route
  }, and a run has { $most } at most. Open two runs{ $what ->
    [loads] , or put more pieces on a tray
   *[other] {""}
  }.
refused-too-much-to-plan = That makes more loads than can be planned at once ({ $most }). Choose fewer.
refused-file-empty = There is nothing in it. Choose a file first.
refused-file-nothing = The file is neither a shop's book nor a run: save one here to see what it looks like.
refused-file-too-long = The file is too long: { $most } million bytes at most, its pictures apart. Nothing is changed.
refused-file-gone = The file is not kept here any more. Choose it again.
refused-file-zone = The run was worked in the time zone { $there }, and this shop's is { $here }. Import the shop's book first.
refused-file-unknown-names = The shop's book does not have { $names }. Import the shop's book first.

## The book, products and runs, on the Plan and Shop screens
refused-book-outdated = Somebody saved this meanwhile. Nothing you typed is lost: press Save again to keep yours. In the book now:
refused-station-runs = { $station } is running. How it is watched can be changed once it has ended.
refused-station-in-use = { $station } cannot be removed: the open run { $run } is made there.
refused-person-at-work = { $person } is at work now. Let them finish first.
refused-nothing-wanted = Say how many good pieces are wanted, in at least one order line.
refused-too-many-trays = That makes { $trays } trays, and a run has { $most } at most. Put more pieces on a tray, or open two runs.
refused-why-missing = Say in a few words why.
refused-time-not-on-route = The route has no such time for { $step }. Write one there first.
refused-product-unknown = There is no product '{ $product }' in the book.
refused-route-empty = { $product } has no operation yet. Write its steps first.
refused-product-wrong = This route cannot be used: { $problems }
refused-operation-unknown = There is no operation '{ $operation }' in this route.
refused-last-operation = A route needs at least one operation.

## Away, supplies, and how an entry was made
out-of = Out of { $supply }
out-of-until = Out of { $supply } until { $until }
out-is-there = It is there
basis-assumed = assumed
basis-paper = from paper
basis-sensor = from a sensor

## Going on before a wait is over
early-title = The wait lasts until { $until }
early-dry = Dry to the touch is not cured. Read the label before you go on, and keep heat, sparks and flame away.
early-cure = What has not cured marks, sticks and can give off fumes. Read the label before you go on.
early-clamp = A joint taken out of its clamps too soon can open. Read the label of the glue before you go on.
early-cool = It may still be hot enough to burn you, or to spoil what touches it.
early-settle = It may still move, and what is cut now may not fit later.
early-go = Go on early: { $load }
early-nothing = None of these pieces is free: they are held, or somebody is at them.

## A span over twice its estimate
span-ask = { $load }: you were at it { $span }. All the time?
span-all = All the time
span-about = About …
span-about-title = How long were you at it? { $load }
span-about-minutes = About
span-about-go = About { $minutes } min

## Folded below the first thing: late entries, list, setup, first piece
go-only-done = Done, start nothing
go-count = Done, not all good
late-start = Started earlier, or done already
late-running = Running for a while
late-finish = Not all good, or done earlier
late-finished = Finished
late-started-ago = Started { $minutes } min ago
late-running-ago = For { $minutes } min
late-done-ago = { $minutes } min ago
late-done-at = Done at
late-done = Done
did-decided-go-on = { $step } goes on
did-decided-check-again = { $step }: check again
details-title = List, setup, first piece: { $step }
details-list = Start list
details-tick = Tick the full list
details-sheet = Setup sheet
details-first-piece = First piece
details-check = Check first piece
decide-again = Check again
decide-go-on = Go on as it is

## Try the sound
hearing-try = Try the sound
hearing-title = Did you hear it?
hearing-never = Not heard on this phone yet
hearing-last = Sound last heard { $at }
hearing-yes = I heard it
hearing-again = Once more
hearing-if-not = If not: turn the volume up, take the phone off silent, and look whether other sound plays.

## Every step of a run, on Trays
trays-steps = Steps, lists and setup sheets
trays-steps-from = From tray { $tray } on
trays-step = { $number } of { $all }, { $step } · { $station }
trays-step-bare = Nothing is written down for this step yet.

## Care: reminders, the start list, finishes
reminder-ready-can = The lidded metal can with water stands ready
reminder-ready-outdoors = A place outdoors in the shade is ready
reminder-done-no-glow = The bin is emptied outdoors, nothing glows, and I looked again
reminder-else = Something else …
reminder-what = What was done?
reminder-did-it = That was done
did-reminder = Said: { $done }
list-title = Start list: { $step }
list-left = { $left } to tick
list-done = All ticked: { $station }
list-eyewear-unknown = Nobody wrote down which eyewear. Its wavelength stands on the laser.
list-material-unknown = Nobody noted what this is. Unknown means no.
list-material-look = { $material }: its name does not tell what it is bound or coated with. Look at its data sheet first. Unknown means no.
list-material-forbidden = { $material } is on the shop's forbidden list.
list-material-which = What is it made of? { $trays }
list-material-note = Note it
list-never = Never: { $forbidden }.
list-never-empty = The shop's forbidden list is empty. PVC and whatever holds chlorine never comes into a laser.
finish-unknown = No finish is written down for this step. Read its label: ventilation, solvent, rags, drying.
finish-label-of = label of { $date }
finish-ventilation = Ventilation: { $ventilation }
finish-solvent = Solvent in it: no laser, sanding, heater or charger in this room for { $span } after the coat
finish-solvent-unknown = Solvent in it: no laser, sanding, heater or charger in this room until it is aired out
finish-recoat = coat again from { $at }
finish-handle = handle from { $at }
finish-cure = full cure { $at }
wait-end-title = End the wait: { $step }
wait-end-go = It goes on early: tray { $tray }

## Calls, handing over, a look at the first piece
call-why-look = look at my first piece
call-why-help = help me
call-why-bad-piece = a bad piece
call-why-stopped = it stopped
call-why-hurt = somebody is hurt
call-going = I am going
call-done = Done
call-times = Called { $times } times by now.
call-on-the-way = { $who } goes to { $person } at tray { $tray }: { $why }
call-own = You called the lead to tray { $tray }: { $why }
call-no-longer = No longer needed
wrong-call = Call the lead
wrong-hurt = Somebody is hurt: call the lead
did-call = Called the lead to tray { $tray }: { $why }
did-call-going = Going to tray { $tray }
did-call-done = Done: tray { $tray }, { $why }
look-show = Show the first piece
look-called = The lead is called to look. Wait for the word.
look-failed = The lead says: not yet. Put it right, then show it again.
look-good = Good, go on
look-not-yet = Not yet
did-show-first = Called the lead to look: { $step }
did-look-pass = First piece good, tray { $tray }
did-look-fail = First piece not yet, tray { $tray }
given-title = Given to somebody
given-row = { $person } has { $step } on { $trays }
given-row-you = You have { $step } on { $trays }
given-look = the lead looks at the first piece
give-open = Give to …
give-title = Give to somebody
give-which = Which trays?
give-operation = Which operation?
give-to = To whom?
give-nobody = anybody again
give-look = I want to look at the first piece
give-go = { $person } has { $step } on { $trays }
give-back = { $step } on { $trays } is anybody's again
give-nothing = Nothing waits at an operation now.
did-give = { $person } has { $step } on { $trays }
did-give-back = { $step } on { $trays } is anybody's again
shown-title = Who was shown which machine
shown-open = Shown …
shown-sheet = Shown how: { $person }
shown-about = The machine's own manual comes first. Stay beside the first load.
shown-nothing = shown no machine yet
shown-known = shown: { $stations }
shown-all = Shown every machine of the shop.
shown-go = I showed { $person } the { $station }
did-shown = { $person } was shown the { $station }

## Refusals of care and of handing over
refused-rags-first = Say first what was done with today's rags, oily dust and bins. It is asked in the list before you go.
refused-air-not-clear = A finish is wet or a solvent in the air of { $room } until { $until }. The { $station } waits for that.
refused-solvent-beside-heat = { $step } brings solvent into { $room }, and the { $station } is at work there. Wait until it has ended.
refused-material-unknown = Nobody said what tray { $tray } is made of. Say it on the start list or on Trays before the { $station } starts. Unknown means no.
refused-material-look = { $material }: look at its data sheet first, and at what it is bound or coated with. The start list of the { $station } asks for it.
refused-material-forbidden = { $material } never goes on the { $station }: '{ $forbidden }' is on the shop's forbidden list.
refused-not-shown = { $person } has not been shown the { $station } yet. The lead shows it first.
refused-look-first = The lead looks at the first piece of { $step }, tray { $tray }, before it goes on. Show it first.
refused-hands-elsewhere = Nobody can watch the { $station } with hands at the { $at }. Finish there first, or stop the { $station }, look at it, power off.

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
wait-from = from { $from }
wait-by = by { $by }
wait-between = { $from } to { $by }
trays-done = { $count ->
    [one] 1 tray done
   *[other] { $count } trays done
  }
calendar-put = Put it in my phone's calendar
early-open-dry = Go on now, before it is dry
early-open-cure = Go on now, before it is cured
early-open-clamp = Go on now, take the clamps off early
early-open-cool = Go on now, before it is cool
early-open-settle = Go on now, before it has settled
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
spoken-no-voice = This phone has no voice of its own for English
spoken-on = Say aloud
spoken-off = Stop saying aloud
spoken-hello = I say what comes next, and each alarm.
