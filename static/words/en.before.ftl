# What is said when a run is looked through before it starts, whatever it is about.

before-level-green = right
before-level-look = look
before-level-stop = stop
before-sheet-head = { $stops ->
    [0] { $looks ->
        [0] Everything that is checked here is right.
        [one] One thing to look at before it starts.
       *[other] { $looks } things to look at before it starts.
    }
    [one] { $looks ->
        [0] One thing has to be mended before it starts.
        [one] One thing has to be mended before it starts, and one more is to be looked at.
       *[other] One thing has to be mended before it starts, and { $looks } more are to be looked at.
    }
   *[other] { $looks ->
        [0] { $stops } things have to be mended before it starts.
        [one] { $stops } things have to be mended before it starts, and one more is to be looked at.
       *[other] { $stops } things have to be mended before it starts, and { $looks } more are to be looked at.
    }
}
before-passed = Looked at by { $initials }, { $at }.
before-found-stations-free = Every station of its route can be used.
before-found-station-out = { $station } is out of use.
before-found-wood-fine = { $wood }: not on the list of what no laser may touch. Its data sheet wins.
before-found-wood-forbidden = { $wood } may not come under what heats, at { $step }: { $by } is on the shop's list.
before-found-wood-unknown = Nobody said what the pieces are made of, and { $step } heats them. Write down the wood of this run.
before-found-wood-data-sheet = { $wood }: read its data sheet before { $step }. What binds or coats it ({ $by }) is not known.
before-found-skill-nobody = { $step } asks for somebody who knows { $skill }, and nobody in the shop does.
refused-initials-missing = Write your initials: they say who looked.
refused-look-changed = Something else is found there by now. Look again.
refused-look-stops = This has to be mended first: nobody can go past it.
