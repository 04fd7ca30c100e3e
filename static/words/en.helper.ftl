# What a helper reads who came by a tray's card: short, calm, whole. The server alone says them, in the phone's language.

## Coming in
helper-card-tray = Tray { $tray } of { $run }
helper-card-step = Your step: { $step }
helper-card-through = This tray is through all its steps.
helper-card-name = Your first name
helper-card-go = Start helping
helper-card-small = This phone then shows this tray's steps, and nothing else of the shop.
helper-card-shop = This phone is the shop's own: open it there
helper-card-code-title = Type the code on the tray's card
helper-card-code = Code
helper-card-code-go = Open the tray
helper-card-code-hint = Eight characters, such as 7KQM-2WXR. They are beside the QR code.
helper-no-script = This page is drawn in the browser: it needs JavaScript.
helper-languages = Language

## The tray
helper-tray = Tray { $tray }
helper-step-of = Step { $number } of { $total }
helper-pieces = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
}
helper-until = { $name }, you help until { $at }
helper-what-to-do = What to do
helper-no-instructions = No instructions for this step. Ask the lead to show you.
helper-watch-for = What to watch for
helper-setup = How the machine is set up
helper-texts = Which text at which position
helper-position = position { $place }
helper-after-dry = After it: it dries for { $span } at least.
helper-after-cure = After it: it cures for { $span } at least.
helper-after-clamp = After it: it stays in clamps for { $span } at least.
helper-after-cool = After it: it cools for { $span } at least.
helper-after-settle = After it: it settles for { $span } at least.
helper-after-latest = Go on within { $span } of the first piece.
helper-resting-dry = It dries until { $at }. Leave it where it is.
helper-resting-cure = It cures until { $at }. Leave it where it is.
helper-resting-clamp = It stays in clamps until { $at }. Leave it where it is.
helper-resting-cool = It cools until { $at }. Leave it where it is.
helper-resting-settle = It settles until { $at }. Leave it where it is.
helper-resting-latest = Go on by { $at } at the latest.
helper-held = These pieces wait: { $why }. Call the lead.
helper-finished = { $step } is done: { $good } good.
helper-moved = { $step } is done: { $good } good. Take the tray here: { $place }
helper-lead-takes = Take the tray here: { $place }. The lead takes it from there.
helper-through = This tray is through: { $good } good. Give it to the lead. Thank you!

## How it stands
helper-state-none = Ready to start
helper-state-loading = Load it
helper-state-working = At work
helper-state-running = It runs
helper-state-ended = It has ended
helper-state-unloading = Unload it
helper-state-stopped = It has stopped
helper-state-done = Done
helper-running-until = It runs until { $at }.
helper-running-stay = Stay and watch.
helper-running-overdue = It should have ended. Look, and stay until it has.
helper-stopped-wait = Leave everything as it is. The lead decides what comes next.
helper-done-wait = The next step appears here once this is sent.
helper-watched-by = { $person } watches it.

## Presses
helper-go-start = Start
helper-go-on = Go on
helper-go-running = It runs now
helper-go-list = Before you start: the list
helper-go-at-it = Finished: I'm unloading it
helper-go-done = Done: all { $good } good
helper-go-count = Not all are good
helper-go-aside = Put it aside for now
helper-go-wrong = Something is wrong
helper-go-call = Call the lead
helper-go-show-me = Call the lead to show me
helper-go-look = Show the first piece
helper-go-watch = I looked: { $kind ->
    [laser] no flame, work flat, air assist and exhaust on
    [cnc] no smoke, work still held, extraction on, sound normal
    [heater] no smoke, heat as set, nothing near it that burns
   *[other] no smoke, no smell, work still held, sound normal
  }
helper-did-start = Started
helper-did-running = It runs
helper-did-at-it = Unloading
helper-did-done = Done
helper-did-aside = Put aside
helper-did-watch = Looked
helper-did-call = Lead called
helper-did-stopped = Stopped
helper-did-first-piece = First piece checked
helper-did-undo = Undone
helper-minutes = It runs for about
helper-min = min
helper-less = Less
helper-more = More
helper-list-title = Tick each one, then start
helper-list-left = { $left } still to tick
helper-list-run = All ticked: it runs now
helper-count-title = How many are good?
helper-good = Good
helper-scrap = Bad
helper-count-why = What is wrong with them?
helper-count-go = Done: { $good } good, { $scrap } bad
helper-back = Back
helper-ok = OK
helper-undo = Undo

## Something is wrong
helper-wrong-title = What is wrong?
helper-wrong-hurt = Someone is hurt, or there's a fire
helper-wrong-bad = A bad piece
helper-wrong-stopped = It stopped
helper-hurt-phone = Phone { $number }
helper-hurt-call = Call the lead too
helper-bad-title = Lay the bad piece aside and mark what is wrong
helper-bad-count = Put it aside: it counts as bad when you are done. Two alike: stop, and wait for the lead.
helper-stop-title = Stop the machine first: emergency stop, if it is safe
helper-stop-hand-title = Why did you stop?
helper-scrap-tear-out = torn out
helper-scrap-crack = crack
helper-scrap-size = wrong size
helper-scrap-surface = surface
helper-scrap-engraving = engraving
helper-scrap-burnt = burnt
helper-scrap-knot = knot
helper-scrap-other = something else
helper-stop-power = power cut
helper-stop-cutter = cutter
helper-stop-slip = work slipped
helper-stop-failed = it failed
helper-stop-other = something else

## First pieces and the lead's look
helper-first-piece = First piece: check it before the rest follow
helper-first-piece-limits = { $nominal }, from { $least } to { $most }
helper-first-piece-measured = Measured
helper-first-piece-pass = It is right
helper-first-piece-fail = It is not right
helper-look-first = The lead wants to see the first piece. Make one, and show it.
helper-look-waits = Done is possible once the lead has looked.
helper-look-pass = The lead has looked: go on.
helper-look-fail = The lead has looked: it is not right yet. Make another one, and show it.
helper-called = The lead is called since { $at } ({ $why ->
    [look] first piece
    [bad-piece] bad piece
    [stopped] it stopped
    [hurt] hurt or fire
   *[help] help
}).
helper-coming = The lead is coming.

## What was pressed
helper-saved = saved here, sent later
helper-only-here = only on this page: leave it open
helper-sent = sent
helper-refused = not taken
helper-offline = The server does not answer. What you press is saved here, and sent when it is back.
helper-clock-wrong = This phone's clock is wrong. What you press is dated by the shop's clock, so it is right all the same.
helper-kept = What you pressed and was not sent stays on this phone.

## The end
helper-over-revoked = Your help at this tray has ended. Ask the lead.
helper-over-hours-over = Your hours at this tray are over. Ask the lead to let you in again.
helper-over-run-over = This run is over. Thank you for your help!
helper-shut = This phone opens tray { $tray } only. Everything else belongs to the shop.
helper-shut-go = To the tray
helper-leave = Stop helping
helper-leave-sure = Only the lead lets this phone in again.
helper-leave-go = Stop helping now
helper-left = You have stopped helping. Thank you!

## What is not taken, and what to do
helper-refused-other = This was not taken. Call the lead.
helper-refused-card-unknown = This card opens nothing. Ask the lead for a fresh one.
helper-refused-card-too-often = Too many wrong codes. Wait { $minutes } min, then look at each sign.
helper-refused-card-over = The run of this card is over.
helper-refused-guest-nameless = Write your first name.
helper-refused-guest-revoked = This phone was shut out. Ask the lead.
helper-refused-guest-hours-over = Your hours are over. Ask the lead to let you in again.
helper-refused-guest-too-many = Enough phones came to this tray. Ask the lead.
helper-refused-too-fast = These are many presses at once. Your phone keeps them and sends them again in { $seconds } s.
helper-refused-press-too-large = That is too long. Say it in fewer words.
helper-refused-access = That is for the lead to do. Call the lead.
helper-refused-not-yourself = Press only for yourself.
helper-refused-not-your-tray = This phone works tray { $tray } only.
helper-refused-not-your-press = That was somebody else's press.
helper-refused-not-this-step = The tray is at another step now: { $step }.
helper-refused-tray-through = This tray is through all its steps. Give it to the lead.
helper-refused-shared-load = Other trays are on it too. Call the lead.
helper-refused-not-begun = { $step } was not started yet.
helper-refused-given-to-another = This step is given to somebody else. Ask the lead.
helper-refused-not-early = It has to wait. Only the lead may go on earlier.
helper-refused-texts-changed = The texts for this tray have changed. Look at them again, then start.
helper-refused-list-first = Tick the start list first.
helper-refused-not-shown = Ask the lead to show you: { $station }
helper-refused-look-first = Show the first piece to the lead first.
helper-refused-watch-first = You watch a machine: { $station }. Stay with it.
helper-refused-hands-elsewhere = You can't watch this machine from here.
helper-refused-station-busy = Other work is on it: { $station }. Wait, or call the lead.
helper-refused-station-out = It cannot be used now: { $station }. Call the lead.
helper-refused-first-piece-failed = The first piece was not right. Wait for the lead.
helper-refused-still-waiting = It has to wait until { $ready_at }. Leave it where it is.
helper-refused-supply-out = Something has run out: { $supply }. Call the lead.
helper-refused-skill = This needs somebody who has learned it. Call the lead.
helper-refused-air-not-clear = There are still fumes in this room until { $until }. Wait.
helper-refused-solvent-beside-heat = A hot machine runs in this room: { $station }. Wait for the lead.
helper-refused-material-unknown = Nobody said what this is made of. Call the lead before the machine starts.
helper-refused-material-look = Its data sheet is looked at first: { $material }. Call the lead.
helper-refused-material-forbidden = This material must not go in there: { $material }. Call the lead.
helper-refused-ahead = That moment, { $at }, has not come yet. Say an earlier one.
helper-refused-before-run = The run was opened at { $opened_at }. Say a moment after that.
helper-refused-station-runs = { $station } is running. Stay with it; nothing about it can be changed now.
helper-refused-machine-runs = A machine is still running. Stay with it.
helper-refused-load-in-hands = Somebody's hands are still at the { $station }. Tell the lead.
helper-refused-care-open = The rags, the dust or what burnt first: say what became of it. Call the lead.
helper-refused-wait-open = Tray { $tray } still waits, and must not wait too long. Tell the lead.
helper-refused-rags-first = The rags first: outdoors in a single layer, or in water in the lidded metal can. Then tell the lead.
helper-refused-transition = That does not fit how the tray stands now. Look at the page again.
helper-refused-pieces-not-there = Not so many pieces are here. Count again, or call the lead.
helper-refused-counts-do-not-fit = There are { $there } here, and { $counted } were counted. Count again.
helper-refused-counts-gone-on = Some of these have gone on already. Call the lead.
helper-refused-later-press = Something was pressed after it. Call the lead.
helper-refused-does-not-fit = That does not fit how the tray stands now. Call the lead.
helper-refused-run-closed = This run is over.
helper-refused-form = This page is old. Load it again.
helper-refused-unknown = The shop does not know that any more. Load the page again.
