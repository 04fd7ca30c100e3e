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
ui-somebody = Someone
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
ui-runs-about = Runs for about
ui-no-server = No answer from the server. Your entries are saved here and sent when it's back.
ui-pair = This phone is not paired with the shop. Your entries are saved here; pair it to send them.
ui-pair-go = Pair this phone
ui-storage-full = This phone is out of storage, or blocks it for this page. Free some space.
ui-only-here = Not saved on this phone. Leave this page open until these are sent:

## The head
head-good = { $good } of { $wanted } good
head-late = late: { $who }
head-due = { $good } of { $pieces } good for { $due }
head-done = done about { $at }
head-all-by = all done by { $by }

## What I am in the middle of, or could do
first-since = since { $since }
first-after = Next: { $what }
first-loading = Load: { $step }, { $what }
first-working = { $step }, { $what }
first-running = Running: { $step }, { $what }
first-ended = Finished: { $step }, { $what }
first-unloading = Unload: { $step }, { $what }
first-stopped = Stopped: { $step }, { $what }
first-nothing = Nothing for you right now
first-nothing-more = What is running and drying is below.
first-nothing-known = The next job shows when the server answers again.
first-bare = This shop is still empty
first-no-shop = Describe the shop first: rooms, stations, who works here. Then add a product and open a run.
first-no-run = No run is open. A run is one batch of one product.
move-start = { $step }, { $what }
move-go-on = Carry on: { $step }, { $what }
move-run = Start the { $station }: { $what }
move-unload = Unload the { $station }: { $what }
move-finish = Count: { $step }, { $what }
move-wipe = Now: { $step }, { $what }
move-job = { $job }
move-free = Nothing for you right now
move-free-until = Nothing for you until { $at }
move-stop = Time to wrap up
move-settle = Stopped: { $step }, { $what }
move-watch = Watch the { $station }
move-take-over = Take over the { $station } from { $person }
move-take-over-at = Watch the { $station } from { $at }
because-put-aside = Started and put aside
because-machine-due = The { $station } should be finished
because-machine-waits = The { $station } needs unloading
because-stopped-early = The { $station } stopped early
because-latest = By { $at } at the latest
because-machine-earns = The { $station } runs while you do other work
because-machine-idle = The { $station } is idle
because-then-it-waits = The sooner it's done, the sooner it { $why ->
    [dry] dries
    [cure] cures
    [cool] cools
    [clamp] is in clamps
   *[other] rests
  }
because-stands-set-up = The { $station } is set up for it
because-next-in-line = Next in line
because-gap = Fits in the gap
because-session-ends = You're here until { $at }
because-must-be-watched = The { $station } must be watched
because-another-watches = { $person } is watching the { $station } until you take over
because-nothing-left = All done
because-then = Then { $next }
because-free-until = The next job isn't ready yet
go-start = Start
go-go-on = Carry on
go-at-it = I'm unloading it
go-job-done = Done
go-take-over = I'm watching it now
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
go-see-list = See the list
go-running = The { $station } is running
go-listed = Checked as before
go-listed-running = Checked as before: { $station } started
done-all = Done, { $good ->
    [1] 1 good
   *[other] all { $good } good
  }
done-some = Done, { $good } good, { $scrap } scrap
then-start = Start { $what }
then-go-on = Back to { $what }
then-at-it = Unload the { $station }
then-job = Start: { $job }

## What a press did: shown beside 'Undo'
did-started = Started { $load }
did-running = Running: { $load }
did-at-it = Unloading: { $load }
did-done = Done: { $load }
did-job = Started: { $job }
did-watch = { $person } is watching
did-job-done = Done: { $job }
did-list = Start list done: { $station }
did-back = Back at work
did-back-in-use = { $station } back in use
did-came = You're here until { $until }
did-time = You're here until { $until }
did-undo = Undone: { $what }

## A press on this phone
press-saved-here = saved here
press-only-here = not saved on this phone; leave this page open
press-sent = sent
press-refused = Not accepted: { $what }
press-read = OK, got it
press-unsent = { $count } saved here
press-elsewhere = Last entry, from another phone

## Machines, states, waits
machines-idle = Idle: { $stations }
machines-out-until = until { $until }
machines-back = Back in use
machines-stay = Stay and watch
machines-you-watch = You are watching. Stay
machines-watching = { $person } is watching
machines-said = may be running: go and look
state-idle = idle
state-running = running
state-needs-unloading = needs unloading
state-overdue = should be finished
state-watch-check-due = look at it now
state-watch-check-missed = watch check missed
state-nobody-near = nobody near
state-stopped-early = stopped early
state-out-of-use = out of use
state-put-aside = put aside
state-at-it = { $person } { $doing }
doing-loading = is loading
doing-working = is working on it
doing-unloading = is unloading

## Session
session-over = Finished for today, { $at }
session-next = Next time: { $next }
session-next-nothing = Nothing planned for you.
session-back = I'm back
session-how-long = How long have you got?
session-hours = { $hours } h
session-until = until { $until }
session-usual = Until { $until }, as usual
session-until-label = Until
session-other = Another time
session-today = Today
session-until-now = You're here until { $until }.
session-change = Change
list-run = All ticked: { $station } started

## What an operation asks
sign-alt = ISO 7010 sign { $number }
given-you = Assigned to you
given-other = Assigned to { $person }
first-piece-open = First piece not checked yet.
first-piece-pass = First piece is good.
first-piece-fail = First piece failed.
first-piece-stopped = First piece failed. { $step } is stopped: decide what to do.

## Refusals
refused-other = That was not accepted ({ $code }). Load the page and try again.

## Away, supplies, and how an entry was made
away-since = last seen { $since }
away-h1 = You were called away
away-back = I'm back
away-back-to = I'm back, carry on with { $load }
