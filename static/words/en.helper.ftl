# What a helper reads who came by a tray's card: short, calm, whole. The server alone says them, in the phone's language.

## Coming in
helper-card-tray = Tray { $tray } of { $run }
helper-card-step = Your step: { $step }
helper-card-through = This tray is finished.
helper-card-name = Your first name
helper-card-go = Start helping
helper-card-small = This phone then shows this tray's steps and nothing else of the shop.
helper-card-shop = The shop's own phone? Open runboard
helper-card-code-title = Type the code from the tray's card
helper-card-code = Code
helper-card-code-go = Open tray
helper-card-code-hint = Eight characters, such as 7KQM-2WXR. They are beside the QR code.
helper-no-script = This page needs JavaScript.
helper-languages = Language

## The tray
helper-tray = Tray { $tray }
helper-step-of = Step { $number } of { $total }
helper-pieces = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
}
helper-until = { $name }, you're helping until { $at }
helper-what-to-do = What to do
helper-no-instructions = No instructions for this step. Ask the lead to show you.
helper-watch-for = What to watch for
helper-setup = Machine setup
helper-texts = Text at each position
helper-position = position { $place }
helper-after-dry = Then it dries for at least { $span }.
helper-after-cure = Then it cures for at least { $span }.
helper-after-clamp = Then it stays in clamps for at least { $span }.
helper-after-cool = Then it cools for at least { $span }.
helper-after-settle = Then it settles for at least { $span }.
helper-after-latest = Carry on within { $span } of the first piece.
helper-resting-dry = Drying until { $at }. Leave it where it is.
helper-resting-cure = Curing until { $at }. Leave it where it is.
helper-resting-clamp = In clamps until { $at }. Leave it where it is.
helper-resting-cool = Cooling until { $at }. Leave it where it is.
helper-resting-settle = Settling until { $at }. Leave it where it is.
helper-resting-latest = Carry on by { $at } at the latest.
helper-held = These pieces are on hold: { $why }. Call the lead.
helper-finished = { $step } is done: { $good } good.
helper-moved = { $step } is done: { $good } good. Take the tray to: { $place }
helper-lead-takes = Take the tray to: { $place }. The lead takes over there.
helper-through = This tray is finished: { $good } good. Give it to the lead. Thank you!

## How it stands
helper-state-none = Ready to start
helper-state-loading = Load it
helper-state-working = In progress
helper-state-running = Running
helper-state-ended = Finished
helper-state-unloading = Unload it
helper-state-stopped = Stopped
helper-state-done = Done
helper-running-until = Runs until { $at }.
helper-running-stay = Stay and watch.
helper-running-overdue = It should be finished. Look, and stay until it is.
helper-stopped-wait = Leave everything as it is. The lead decides what comes next.
helper-done-wait = The next step appears here once this is sent.
helper-watched-by = { $person } is watching it.

## Presses
helper-go-start = Start
helper-go-on = Carry on
helper-go-running = It's running now
helper-go-list = Open start list
helper-go-at-it = Finished: I'm unloading it
helper-go-done = { $good ->
    [1] Done: 1 good
   *[other] Done: all { $good } good
  }
helper-go-count = Some are bad
helper-go-aside = Put it aside for now
helper-go-wrong = Something is wrong
helper-go-call = Call the lead
helper-go-show-me = Call the lead to show me
helper-go-look = Show the first piece
helper-go-watch = { $kind ->
    [laser] No flame, work flat, air assist and exhaust on
    [cnc] No smoke, work still held, extraction on, sound normal
    [heater] No smoke, heat as set, nothing near it that burns
   *[other] No smoke, no smell, work still held, sound normal
  }
helper-did-start = Started
helper-did-running = Running
helper-did-at-it = Unloading
helper-did-done = Done
helper-did-aside = Put aside
helper-did-watch = Checked
helper-did-call = Lead called
helper-did-stopped = Stopped
helper-did-first-piece = First piece checked
helper-did-undo = Undone
helper-minutes = Runs for about
helper-min = min
helper-less = Less
helper-more = More
helper-list-title = Tick each one, then start
helper-list-left = { $left } left to tick
helper-list-run = All ticked: it's running now
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
helper-wrong-stopped = The machine stopped
helper-hurt-phone = Call { $number }
helper-hurt-call = Call the lead too
helper-bad-title = Set it aside and mark the fault
helper-bad-count = Put it aside: it counts as bad when you are done. Same fault twice: stop, and wait for the lead.
helper-stop-title = Emergency stop, if it is safe
helper-stop-hand-title = Why did you stop?
helper-scrap-tear-out = torn out
helper-scrap-crack = crack
helper-scrap-broke = it broke
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
helper-first-piece = First piece: check it before the rest
helper-first-piece-limits = { $nominal }, from { $least } to { $most }
helper-first-piece-measured = Measured
helper-first-piece-pass = It's right
helper-first-piece-fail = It's not right
helper-look-first = The lead wants to see the first piece. Make one and show it.
helper-look-waits = You can press Done once the lead has looked.
helper-look-pass = The lead has looked: carry on.
helper-look-fail = Not right yet, says the lead. Make another one and show it.
helper-called = Lead called at { $at } ({ $why ->
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
helper-refused = not accepted
helper-offline = No answer from the server. Your entries are saved here and sent when it's back.
helper-clock-wrong = This phone's clock is wrong. Your entries still get the right time, from the shop's clock.
helper-kept = Entries not sent yet stay on this phone.

## The end
helper-over-revoked = Your help at this tray has ended. Ask the lead.
helper-over-hours-over = Your hours at this tray are over. Ask the lead to let you in again.
helper-over-run-over = This run is over. Thank you for your help!
helper-shut = This phone is only for tray { $tray }. Everything else belongs to the shop.
helper-shut-go = Go to the tray
helper-leave = Stop helping
helper-leave-sure = Only the lead can let this phone in again.
helper-leave-go = Stop helping now
helper-left = You have stopped helping. Thank you!

## What is not taken, and what to do
helper-refused-other = That was not accepted. Call the lead.
helper-refused-card-unknown = This card is not valid. Ask the lead for a new one.
helper-refused-card-too-often = Too many wrong codes. Wait { $minutes } min, then check each character.
helper-refused-card-over = The run of this card is over. Ask the lead for another card.
helper-refused-guest-nameless = Write your first name.
helper-refused-guest-revoked = This phone was shut out. Ask the lead.
helper-refused-guest-hours-over = Your hours are over. Ask the lead to let you in again.
helper-refused-guest-too-many = Too many phones on this tray. Ask the lead.
helper-refused-too-fast = Too many entries at once. Your phone keeps them and sends them again in { $seconds } s.
helper-refused-press-too-large = That is too long. Say it in fewer words.
helper-refused-access = Only the lead can do that. Call the lead.
helper-refused-not-yourself = Press only for yourself.
helper-refused-not-your-tray = This phone is only for tray { $tray }.
helper-refused-not-your-press = Someone else entered that. Ask the lead.
helper-refused-not-this-step = The tray is at another step now: { $step }. Look at the page again.
helper-refused-tray-through = This tray has finished all its steps. Give it to the lead.
helper-refused-shared-load = Other trays are on it too. Call the lead.
helper-refused-not-begun = { $step } has not been started yet. Start it first.
helper-refused-given-to-another = Assigned to { $person ->
    [0] someone else
   *[other] { $person }
  }. Ask { $lead ->
    [0] the lead
   *[other] { $lead }
  }.
helper-refused-not-early = It has to wait. Only the lead can let it carry on earlier.
helper-refused-texts-changed = The texts for this tray have changed. Look at them again, then start.
helper-refused-list-first = Tick the start list first.
helper-refused-not-shown = Ask the lead to show you: { $station }
helper-refused-look-first = Show the first piece to the lead first.
helper-refused-watch-first = You're watching a machine: { $station }. Stay with it.
helper-refused-hands-elsewhere = You can't watch this machine from here. Call the lead.
helper-refused-station-busy = The { $station } is busy. Wait, or call the lead.
helper-refused-station-out = The { $station } is out of use. Call the lead.
helper-refused-first-piece-failed = The first piece was not right. Wait for the lead.
helper-refused-still-waiting = It has to wait until { $ready_at }. Leave it where it is.
helper-refused-supply-out = Out of { $supply }. Call the lead.
helper-refused-skill = This needs someone who has learned it. Call the lead.
helper-refused-air-not-clear = There are still fumes in this room until { $until }. Wait.
helper-refused-solvent-beside-heat = A hot machine is running in this room: { $station }. Wait for the lead.
helper-refused-material-unknown = Material not recorded. Call the lead before the machine starts.
helper-refused-material-look = Check its data sheet first: { $material }. Call the lead.
helper-refused-material-forbidden = Banned from this machine: { $material }. Call the lead.
helper-refused-ahead = { $at } is still to come. Choose an earlier time.
helper-refused-before-run = The run was only opened at { $opened_at }. Choose a later time.
helper-refused-station-runs = { $station } is running, so it can't be changed now. Stay with it.
helper-refused-machine-runs = A machine is still running. Stay with it.
helper-refused-load-in-hands = Someone is still working at the { $station }. Tell the lead.
helper-refused-care-open = Rags, dust or scorched cuts are not dealt with yet. Call the lead.
helper-refused-wait-open = Tray { $tray } is still waiting, and must not wait too long. Tell the lead.
helper-refused-rags-first = Rags first: lay them in a single layer outdoors, or put them in water in the lidded metal can. Then tell the lead.
helper-refused-transition = The tray has moved on meanwhile. Look at the page again.
helper-refused-pieces-not-there = There are not that many pieces here. Count again, or call the lead.
helper-refused-counts-do-not-fit = There are { $there } here, but { $counted } were counted. Count again.
helper-refused-counts-gone-on = Some of these have moved on already. Call the lead.
helper-refused-later-press = Something was entered after it. Call the lead.
helper-refused-does-not-fit = That does not fit how things are now. Call the lead.
helper-refused-run-closed = This run is over.
helper-refused-form = This page is out of date. Load it again.
helper-refused-unknown = The shop no longer knows that. Load the page again.
