# The sentences of runboard, English: those of the page's first drawing; en.sheets.ftl holds the others. The core gives
# codes and facts; the server and the page read both files.
# A code's spaces become hyphens: refused + "station busy" is refused-station-busy. Moments arrive as local time.

## Small words of the screens
ui-close = Close
ui-ok = OK
ui-min = min
ui-now = now
ui-ago = { $span } ago
ui-less = Less: { $what }
ui-more = More: { $what }
ui-somebody = Somebody
ui-undo = Undo
ui-turn-on-sound = Turn on sound
ui-undo-what = Undo: { $what }
ui-you-are = You are
# A space that does not break keeps 'tray 4' together.
ui-tray = tray { $tray }
ui-trays = trays { $trays }
ui-from-to = { $from } to { $to }
ui-board = board { $board }
ui-trays-count = { $count } trays
ui-machines = Machines
ui-runs-about = For about
ui-no-server = The server does not answer. What you press is saved here and sent when it is back.
ui-pair = This phone is not paired with the shop. Your presses are saved here; pair the phone, then they are sent.
ui-pair-go = Pair this phone
ui-storage-full = This phone is out of storage, or shuts it off for this page. Free some space.
ui-only-here = Not saved on this phone, so leave this page open until they are sent:

## The head
head-good = { $good } of { $wanted } good
head-late = late: { $who }
head-due = { $good } of { $pieces } good for { $due }
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
first-bare = Nothing is written down yet
first-no-shop = First describe the shop: rooms, stations, who works here. Then come a product and a run.
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
move-take-over = Take over watching the { $station } from { $person }
move-take-over-at = At { $at } take over watching the { $station } from { $person }
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
because-gap = Fits in the gap
because-session-ends = You have until { $at }
because-must-be-watched = The { $station } must be watched
because-another-watches = { $person } watches the { $station } until you do
because-nothing-left = All done
because-then = Then { $next }
because-free-until = What comes next has to wait
go-start = Start
go-go-on = Go on
go-at-it = I'm unloading it
go-job-done = Done
go-take-over = I watch it now
go-settle = Say what to do with it
go-stop = Finish for today
go-plan = Open a run
go-shop = Describe the shop
go-wrong = Something is wrong
go-away = Called away
go-not-this = Skip this …
go-list = Open start list: { $points ->
    [one] 1 point
   *[other] { $points } points
  }
go-list-then-run = Open start list
go-running = The { $station } is running
go-listed = Checked as before
go-listed-running = Checked as before: { $station } started
done-all = Done, { $good ->
    [1] 1 good
   *[other] all { $good } good
  }
done-some = Done, { $good } good, { $scrap } scrap
then-start = Start { $what }
then-go-on = Go on with { $what }
then-at-it = At the { $station }
then-job = Start: { $job }

## What a press did: shown beside 'Undo'
did-started = Started { $load }
did-running = { $load } is running
did-at-it = Unloading: { $load }
did-done = Done: { $load }
did-job = Started: { $job }
did-watch = { $person } watches
did-job-done = Done: { $job }
did-list = Start list ticked, { $station }
did-back = Back
did-back-in-use = { $station } back in use
did-came = You're here until { $until }
did-time = You're here until { $until }
did-undo = Undone: { $what }

## A press on this phone
press-saved-here = saved here
press-only-here = not saved on this phone; leave this page open
press-sent = sent
press-refused = Not taken: { $what }
press-read = I have read it
press-unsent = { $count } saved here
press-elsewhere = Last entry, from another phone

## Machines, states, waits
machines-idle = Idle: { $stations }
machines-out-until = until { $until }
machines-back = Back in use
machines-stay = Stay and watch
machines-watching = { $person } is watching
machines-said = may be running: go and look
state-idle = idle
state-running = running
state-needs-unloading = needs unloading
state-overdue = should have ended
state-watch-check-due = watch check due
state-watch-check-missed = watch check missed
state-nobody-near = everybody last seen elsewhere
state-stopped-early = stopped early
state-out-of-use = out of use
state-put-aside = put aside
state-at-it = { $person } { $doing }
doing-loading = is loading
doing-working = is at it
doing-unloading = is unloading

## Session
session-over = Finished for today, { $at }
session-next = Next time: { $next }
session-next-nothing = Nothing waits for you.
session-back = I am here again
session-how-long = How long have you got?
session-hours = { $hours } h
session-until = until { $until }
session-until-label = Until
session-other = Another time
session-today = Today
session-until-now = You're here until { $until }.
session-change = Change it
list-run = All ticked: { $station } started

## What an operation asks
sign-alt = ISO 7010 sign { $number }
given-you = Assigned to you
given-other = Assigned to { $person }
first-piece-open = First piece not checked yet.
first-piece-pass = First piece is good.
first-piece-fail = First piece failed.
first-piece-stopped = First piece failed: { $step } is stopped until somebody decides.

## Refusals
refused-other = This could not be taken ({ $code }).

## Away, supplies, and how an entry was made
away-since = last seen { $since }
away-h1 = You were called away
away-back = I am back
away-back-to = Back, go on with { $load }
