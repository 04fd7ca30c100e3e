# What is said when a run is looked through before it starts, whatever it is about.

before-level-green = OK
before-level-look = look
before-level-stop = stop
before-level-passed = seen
before-sheet-head = { $stops ->
    [0] { $looks ->
        [0] { $passed ->
            [0] Everything that is checked here is OK.
            [one] Nothing is open: one thing was looked at and let pass.
           *[other] Nothing is open: { $passed } things were looked at and let pass.
        }
        [one] One thing to look at{ before-sheet-when }.
       *[other] { $looks } things to look at{ before-sheet-when }.
    }
    [one] { $looks ->
        [0] One thing has to be mended{ before-sheet-when }.
        [one] One thing has to be mended{ before-sheet-when }, and one more is to be looked at.
       *[other] One thing has to be mended{ before-sheet-when }, and { $looks } more are to be looked at.
    }
   *[other] { $looks ->
        [0] { $stops } things have to be mended{ before-sheet-when }.
        [one] { $stops } things have to be mended{ before-sheet-when }, and one more is to be looked at.
       *[other] { $stops } things have to be mended{ before-sheet-when }, and { $looks } more are to be looked at.
    }
}
before-sheet-when = { $begun ->
    [yes] {""}
   *[no] {" "}before it starts
}
before-unchecked = Not checked, since nothing is written down: { $what }.
before-unchecked-stock = boards
before-unchecked-supplies = what is used up
before-unchecked-price = the price
before-unchecked-screw = screws
before-passed = Looked at by { $initials }, { $at }.
before-found-stations-free = Every station of its route can be used.
before-found-station-out = { $station } is out of use.
before-found-wood-fine = { $wood } is not on the shop's list of what no laser may touch. Its data sheet may say otherwise, and wins.
before-found-wood-forbidden = { $wood } may not come under what heats, at { $step }: { $by } is on the shop's list.
before-found-wood-unknown = Nobody said what the pieces are made of, and { $step } heats them. Write down the wood of this run.
before-found-wood-data-sheet = { $wood }: read its data sheet before { $step }. What binds or coats it ({ $by }) is not known.
before-found-wait-short = { $step }: the route waits { $own } h, and the label says { $label } h.
before-found-skill-nobody = { $step } asks for somebody who knows { $skill }, and nobody in the shop does.
refused-initials-missing = Write your initials: they say who looked.
refused-look-changed = Something else is found there by now. Look again.
refused-look-not-passed = Nobody went past it, or somebody took that back.
refused-look-stops = This has to be mended first: nobody can go past it.
# What is said of questions before a run, whatever kind they are. Each kind has a file of its own beside this one: what it is called
# (before-kind-…), what it is good for in one sentence (before-about-…), its presses to keep (before-keep-…) and what they kept (before-kept-…).

before-group-machines = Machines and programs
before-group-material = Material and fastenings
before-group-money = Money
before-group-other = More
before-kept-part = It is kept.

refused-no-file-chosen = Choose a file first.
refused-looked-at-file-gone = { $name } is not here any more. Choose it once more.
refused-looked-at-file-empty = There is nothing in { $name }. Choose another file.
refused-looked-at-file-too-large = { $name } has more than { $most } MB, which is too much to read. Split it, or make it of fewer lines.
refused-looked-at-file-unknown = Nothing here reads { $name }. Choose a program, or a drawing as SVG or DXF.
refused-question-busy = Too much is being worked out just now. Wait a minute, then ask again.
refused-question-failed = It could not be worked out. Ask again; if it fails again, ask with a smaller file.
refused-nothing-to-keep = The answer has no such part any more. Work it out once more.
refused-answer-outdated = Somebody changed the shop meanwhile, so nothing is kept yet. Look at the answer once more, then press again.

# A time that a file said, taken into a step of a route.
before-keep-take = Take { $span } into { $step }
before-kept-take = { $step } is planned with { $span } of machine time now, from { $file }.
before-time-changed = { $step }: the program { $file } is another since { $day } than the one its time was taken from.
refused-step-gone = The route has no such step any more. Look at the product first.
