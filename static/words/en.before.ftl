# What is said when a run is looked through before it starts, whatever it is about.

before-level-green = OK
before-level-look = look
before-level-stop = stop
before-level-passed = seen
before-sheet-head = { $stops ->
    [0] { $looks ->
        [0] { $passed ->
            [0] All checks are OK.
            [one] Nothing open: one thing was looked at and let pass.
           *[other] Nothing open: { $passed } things were looked at and let pass.
        }
        [one] Look at one thing{ before-sheet-when }.
       *[other] Look at { $looks } things{ before-sheet-when }.
    }
    [one] { $looks ->
        [0] Fix one thing{ before-sheet-when }.
        [one] Fix one thing{ before-sheet-when }, and look at one more.
       *[other] Fix one thing{ before-sheet-when }, and look at { $looks } more.
    }
   *[other] { $looks ->
        [0] Fix { $stops } things{ before-sheet-when }.
        [one] Fix { $stops } things{ before-sheet-when }, and look at one more.
       *[other] Fix { $stops } things{ before-sheet-when }, and look at { $looks } more.
    }
}
before-sheet-when = { $begun ->
    [yes] {""}
   *[no] {" "}before it starts
}
before-unchecked = Not checked, because nothing is entered: { $what }.
before-unchecked-stock = boards
before-unchecked-supplies = supplies
before-unchecked-price = the price
before-unchecked-screw = screws
before-passed = Looked at by { $initials }, { $at }.
before-found-stations-free = Every station on its route is working.
before-found-station-out = { $station } is out of order.
before-found-wood-fine = { $wood } is not on the shop's list of materials banned from lasers. Its data sheet may say otherwise, and wins.
before-found-wood-forbidden = Don’t heat { $wood } at { $step }: { $by } is on the shop's list.
before-found-wood-unknown = { $step } heats the pieces, and nobody said what they are made of. Enter this run’s wood.
before-found-wood-data-sheet = { $wood }: read its data sheet before { $step }. Its binder or coating ({ $by }) is not known.
before-found-wait-short = { $step }: the route waits { $own } h, the label says { $label } h.
before-found-skill-nobody = { $step } needs the skill { $skill }, and nobody in the shop has it.
refused-initials-missing = Enter your initials, to show who looked.
refused-look-changed = It shows something else by now. Look again.
refused-look-not-passed = Nobody let it pass, or somebody undid that.
refused-look-stops = Fix this first: nobody can let it pass.
# What is said of questions before a run, whatever kind they are. Each kind has a file of its own beside this one: what it is called
# (before-kind-…), what it is good for in one sentence (before-about-…), its presses to keep (before-keep-…) and what they kept (before-kept-…).

before-group-machines = Machines and programs
before-group-material = Material and fastenings
before-group-money = Money
before-group-other = Other
before-kept-part = Saved.

refused-no-file-chosen = Choose a file first.
refused-looked-at-file-gone = { $name } is not here any more. Choose it again.
refused-looked-at-file-empty = { $name } is empty. Choose another file.
refused-looked-at-file-too-large = { $name } is over { $most } MB, too much to read. Split it, or make it shorter.
refused-looked-at-file-unknown = { $name } can’t be read here. Choose a program, or a drawing as SVG or DXF.
refused-question-busy = Too much is being worked out right now. Wait a minute, then ask again.
refused-question-failed = That failed. Ask again; if it fails again, use a smaller file.
refused-nothing-to-keep = That part of the answer is gone. Work it out again.
refused-answer-outdated = Somebody changed the shop meanwhile, so nothing is saved yet. Check the answer again, then press again.

# A time that a file said, taken into a step of a route.
before-keep-take = Use { $span } for { $step }
before-kept-take = { $step } now plans with { $span } machine time, from { $file }.
before-time-changed = { $step }: the program { $file } changed on { $day }, after its time was taken.
refused-step-gone = The route has no such step any more. Open the product first.
