# The sentences of runboard, English: those of the Review screen that depend on what was measured or published. The server
# alone says them.

## Whose limits for wood dust they are, and of which dust, as they published it.
dust-limit-of-hse = HSE, United Kingdom
dust-limit-of-niosh = NIOSH, recommended
dust-limit-of-acgih = ACGIH (2007)
dust-limit-of-osha = OSHA, United States
dust-limit-hardwood = hardwood, and any mixture with it
dust-limit-softwood = softwood
dust-limit-all = all wood
dust-limit-most = most woods
dust-limit-red-cedar = western red cedar
dust-limit-total = dust not regulated otherwise, total
dust-limit-respirable = dust not regulated otherwise, respirable

## Why an observation of a time study teaches nothing.
review-left-out-interrupted = The work was interrupted
review-left-out-overlapping = The same hands went to another load before this one was done
review-left-out-undone = It was pressed and taken back
review-left-out-amended = It was corrected afterwards
review-left-out-assumed = Nobody pressed it; it was filled in
review-left-out-paper = It was typed in from a card
review-left-out-going-on = It is still going on
review-left-out-taken-off = The load was taken off before it was done
review-left-out-loaded-again = It was stopped early and loaded again
review-left-out-no-length = Its start was not pressed
review-left-out-no-end = Nobody pressed when the machine ended
review-left-out-with-setup = Setup was not pressed apart from the first loading
review-left-out-with-hands = Setup was not pressed apart from the work
review-left-out-all-usual = Setting up took no longer than loading does without it
review-left-out-other-wood = It was another wood
review-left-out-out-of-range = It took over five times the guess, or under a fifth of it

## The five lines of a review, and what they call things.

review-line-pieces = { $open ->
    [yes] So far { $good }
   *[no] { $good }
  } { $how ->
    [begun] good of the { $begun } begun, { $wanted } wanted,
    [more] good where { $wanted } were wanted
   *[fewer] of { $wanted } good
  }{ $hands ->
    [none] ; nobody’s time was pressed.
   *[other] { $piece ->
        [none] { " " }in { $hands } of hands.
       *[other] { " " }in { $hands } of hands, { $piece } a piece.
      }
  }
review-line-furthest = Furthest from the guess: { $operation }, { $taken } for { $guess }.
review-line-furthest-none = { $every ->
    [yes] Every operation
   *[no] What was measured
  } came within a tenth of its guess.
review-line-furthest-unknown = Nothing to set against the guess: no time was measured.
review-line-lost-none = { $open ->
    [yes] Lost so far: none.
   *[no] Lost: none.
  }
review-line-lost-no-reason = Lost: { $pieces }, and nobody noted where or why.
review-line-lost-scattered = Lost: { $pieces }, each for another reason.
review-line-lost = { $open ->
    [yes] Lost so far
   *[no] Lost
  }: { $pieces }, { $some ->
    [all] { "" }
   *[other] { $some } of them{ " " }
  }{ $reason ->
    [none] { "" }
   *[other] { $reason }{ " " }
  }at { $step }{ $board ->
    [none] { "" }
   *[other] { $some ->
        [all] , { $count ->
            [1] from board { $board }
            [2] both from board { $board }
           *[other] all from board { $board }
          }
       *[other] { " " }({ $count ->
            [2] both from board { $board }
           *[other] all { $number } from board { $board }
          })
      }
  }{ $reason ->
    [none] { " " }(nobody noted why).
   *[other] .
  }
review-line-held = Held by: { $kind ->
    [service] the { $what }, { $one ->
        [yes] taken { $when }; having only one cost { $cost }.
       *[no] all { $capacity } taken { $when }; that cost { $cost }.
      }
    [hands] { $what }, { $when }.
    [station] the { $what }, { $when }.
    [wait] { $what }, { $when }; it cost { $cost }.
    [room] { $what }, { $when }; waiting for it cost { $cost }.
    [walking] { $what }, { $when }.
   *[hours] the hours: what was next waited for somebody { $when }.
  }
review-line-held-none = Held by: nothing that stands out. No one thing more would have ended it sooner.
review-line-held-unknown = Held by: nobody can say. Too little of the run was pressed, or its replay failed.
review-line-held-coming = Held by: being worked out… That takes about { $seconds } seconds, longer on a small or busy computer.
review-line-try-coming = Try first: being worked out… That takes about { $seconds } seconds, longer on a small or busy computer.
review-line-again = { $line } Being worked out again…
review-cost-days = { $about }: { $cost }
review-line-try-none = { $tried ->
    [0] Try first: nothing was found to try. Have you an idea?
   *[other] { $some ->
        [yes] Try first: nothing that was tried helps enough to name.
       *[no] Try first: nothing that was tried would have helped.
      }
  }
review-line-try-done = Try first: nothing more. What would have helped is done already.
review-line-try-earlier = Try first: { $change }, done { $earlier } sooner.
review-line-try-hands = Try first: { $change }, { $more ->
    [yes] { $hands } less hand time.
   *[no] { $pieces ->
        [one] one more piece good.
       *[other] { $pieces } more pieces good.
      }
  }

review-done = Done { $finished }{ $how ->
    [as] , as planned at first
    [after] , { $span } after its first plan
    [before] , { $span } before its first plan
   *[unknown] { "" }
  }{ $lines ->
    [all] ; all order lines in time.
    [some] ; not all order lines in time.
   *[none] .
  }
review-promised-for = Promised for { $promised }.
# The days on which it held, and the load that the log shows kept back.
review-held-days = { $named ->
    [yes] on { $days }{ $when ->
        [evening] { " evening" }
       *[day] { "" }
      }
   *[no] on { $number } { $when ->
        [evening] evenings
       *[day] days
      }
  }
review-held-at = { $day } at { $time }{ $night ->
    [yes] { " that night" }
   *[no] { "" }
  }
review-held-pushed = It held the run up for { $open } of the shop’s hours only, { $past ->
    [yes] but that pushed { $step } of { $waiting } from { $since } to { $until }, and the end by { $cost } on the clock.
   *[no] but with the hours in which nobody was there that became { $cost } on the clock.
  }
review-held-trays = { $count ->
    [one] tray { $trays }
   *[other] trays { $trays }
  }
review-held-because = { $why ->
    [service] { $count ->
        [one] Tray { $trays } was
       *[other] Trays { $trays } were
      } ready for { $step } on { $since }, but { $one ->
        [yes] the { $what } was taken
       *[no] the { $what } were all taken
      }: begun { $till ->
        [none] on { $until }
       *[other] at { $till }
      }.
    [hands] On { $since } { $what } were at { $by } of { $others } until { $till ->
        [none] { $until }
       *[other] { $till }
      }, while { $waiting } waited{ $same ->
        [yes] { "" }
       *[no] { " " }for { $step }
      }.
    [station] On { $since } the { $what } was at { $others } until { $till ->
        [none] { $until }
       *[other] { $till }
      }, while { $waiting } waited for it.
    [wait] { $count ->
        [one] Tray { $trays }, through
       *[other] Trays { $trays }, through
      } { $step } on { $since }, could go on { $till ->
        [none] on { $until }
       *[other] at { $till }
      } at the soonest.
   *[other] { "" }
  }
review-about-days = { $count ->
    [one] a day
   *[other] { $days } days
  }
review-piece-time = { $minutes } min
review-count = { $number ->
    [1] one
    [2] two
    [3] three
    [4] four
    [5] five
    [6] six
    [7] seven
    [8] eight
    [9] nine
    [10] ten
    [11] eleven
    [12] twelve
   *[other] { $number }
  }
review-more-of = { $number ->
    [one] { $service }: one more ({ $capacity })
   *[other] { $count } more { $service }
  }
review-idea-trays = { $pieces ->
    [1] one piece a tray
   *[other] { $pieces } pieces a tray
  }
review-idea-hours = { $person } there { $span } more when the run waits for somebody, as on { $day }
review-idea-person = one person more, there when { $like } is
review-idea-helper = a helper at { $operation } for { $span }
review-idea-times = { $kind ->
    [setup] the setup at { $operation }
    [loading] the loading at { $operation }
    [machine] the machine at { $operation }
    [unloading] the unloading at { $operation }
   *[hand] { $operation }
  } { $much ->
    [fifth] a fifth quicker{ $kind ->
        [hand] , say, { $jig ->
            [yes] by laying things ready
           *[no] with a jig
          }
       *[other] { "" }
      }
    [quarter] a quarter quicker
    [third] a third quicker
    [half] in half the time
    [tenth] a tenth quicker
    [slower] { $by } % slower
   *[other] { $by } % quicker
  }
review-what-hands = { $name }’s hands
review-what-station = { $name }
review-what-service = { $name }
review-what-room = the air in the { $name }
review-what-walking = walking between rooms
review-what-hours = nobody there for it
review-what-wait = { $why ->
    [dry] drying
    [cure] curing
    [clamp] clamping
    [cool] cooling
    [settle] settling
   *[other] waiting
  } after { $name }

review-little = { $percent ->
    [none] No time of this run was measured: what follows stands on guesses.
   *[other] Only { $percent } % of the time was measured: the rest stands on guesses.
  }
review-presses = { $count ->
    [one] Next time this press would tell the most: { $presses }.
    [2] Next time these two presses would tell the most: { $presses }.
    [3] Next time these three presses would tell the most: { $presses }.
   *[other] Next time these { $count } presses would tell the most: { $presses }.
  }
review-press = { $press } at { $step }
review-press-load-started = Start
review-press-load-done = Done
review-press-load-put-aside = Put aside
review-press-load-stopped = It stopped early
review-press-machine-started = Machine runs
review-press-machine-ended = Machine ended
review-press-unloading-started = Unload

## What is written on the charts of a review.

review-chart-operations = Hands and machine time of each operation: what it took, over what was guessed
review-chart-not-measured = not measured
review-chart-strip = { $step }, { $kind }: { $count ->
    [one] one time
   *[other] { $count } times
  } against the guess

## The times of a run.

review-times-measured = Measured { $count ->
    [2] twice
   *[other] { $count } times
  }{ $spread ->
    [none] .
   *[other] , give or take { $spread }.
  }
review-times-left-out-why = { $count ->
    [1] { $why }.
   *[other] { $why } ({ $count } times).
  }
review-times-name = { $step }, { $element }
review-times-verdict = { $moved ->
    [none] { "" }
   *[other] Moved the run by { $moved }.{ " " }
  }{ $count ->
    [1] Measured once
   *[other] Typically, from { $count } times
  }{ $way ->
    [none] .
    [same] , as guessed ({ $guess }).
    [average] , { $taken }, on average { $average }; the guess was { $guess }.
   *[other] , { $percent }{ "\u00A0" }% { $way ->
        [more] more
       *[less] less
      } than the guess of { $guess }{ $beyond ->
        [yes] : further off than we were unsure of.
       *[no] .
      }
  }
review-times-line = { $kind ->
    [none] { "" }
   *[other] { $kind }{ " " }
  }{ $moved ->
    [none] { "" }
   *[other] moved the run by { $moved };{ " " }
  }{ $way ->
    [average] typically { $taken }, on average { $average }
   *[other] { $taken }
  }, guess { $guess }{ $way ->
    [more] , { $percent }{ "\u00A0" }% more
    [less] , { $percent }{ "\u00A0" }% less
    [same] , as guessed
   *[other] { "" }
  }
review-times-line-unmeasured = { $kind ->
    [none] { "" }
   *[other] { $kind }{ " " }
  }not measured, guess { $guess }
review-times-believed = { $same ->
    [yes] Believed before the run: { $guess }, the route’s own guess.
   *[no] Believed before the run: { $guess } (the route’s own guess: { $written }).
  }
review-times-word = Since { $day } by { $who ->
    [none] somebody’s word
   *[other] { $who }’s word
  }: { $length }. “{ $why }”
review-times-saved = { $name }. Saved: { $length } from now on. You said: “{ $why }”
review-times-back = Taken back: as it was before that word.
review-times-far-off = { $length } { $kind ->
    [hand] a piece
   *[other] a load
  }? It was { $known }. Press again if it is meant so.
review-times-standard = Standard time, with the shop’s allowance: { $time }.
review-times-quicker = It went quicker with practice: the first took { $first }, and each doubling of the number takes { $percent } % of that (unit-cost learning curve).
review-times-slower = It went slower towards the end: the first took { $first }, and each doubling of the number takes { $percent } % of that (unit-cost learning curve).
review-times-needed = Measure { $count } more to be sure within 10 %.
review-times-scattered = The times are too scattered to pin down.
review-source-guess = That is the guess: nothing was measured yet.
review-source-program = That is what the program { $file } says: nothing was measured yet.
review-source-engraving = That is what the drawing { $file } says: nothing was measured yet.
review-source-measured = That is { $guess ->
    [none] the guess
    [file] what { $file } says
   *[said] what { $who ->
        [none] somebody
       *[other] { $who }
      } said on { $day }
  }, moved by { $count ->
    [one] one time that was measured
   *[other] { $count } times that were measured
  }{ $guess ->
    [none] .
    [file] .
   *[said] {" "}since then.
  }
review-source-said = As { $who ->
    [none] somebody
   *[other] { $who }
  } said on { $day }: { $why }

review-reason-surface = surface spoilt
review-reason-engraving = engraving spoilt
review-reason-crack = cracked
review-reason-tear-out = torn out
review-reason-knot = a knot
review-reason-something-else = another reason

review-trays = the trays
review-helper = helper
review-lost-at = { $reason ->
    [none] at { $step }, nobody noted why
   *[other] { $reason } at { $step }
  }

review-chart-day = Who and what was busy on { $day } from { $from } to { $to }, and beside it as it was planned
review-chart-sitting = { $day }, { $from } to { $to }
review-chart-hands = Hands by operation, the most first
review-chart-lost = Pieces lost, the most first
review-chart-waited-person = What people waited for, the most first
review-chart-waited-station = What machines waited for, the most first
review-chart-waited-tray = What trays waited for, the most first

## What happened, section by section in one line.

review-answer-hands = { $operation } took most: { $taken } of { $all }.
review-answer-hands-none = Nobody’s time was pressed.
review-answer-days = { $count ->
    [0] Nobody’s day is known.
    [one] One sitting, as it was and as it was planned.
   *[other] { $count } sittings, as they were and as they were planned.
  }
review-answer-lost = { $lost } of the { $begun } begun{ $why ->
    [none] .
   *[other] { $most ->
        [all] , { $why }.
        [1] .
       *[other] , { $most } of them { $why }.
      }
  }
review-answer-lost-none = No piece was lost.
review-answer-waiting = { $row ->
    [tray] Trays { $all }, all trays added up
    [person] People { $all } in all
   *[station] Machines { $all } in all
  }; most of it: { $why }, { $most }.
review-answer-waiting-none = Nothing waited that anybody knows of.
review-answer-process = Trays waited longest before { $step }: { $waited } on average.
review-answer-process-none = { $steps ->
    [one] One step.
   *[other] { $steps } steps.
  }
review-answer-orders = { $some } of { $count } { $count ->
    [one] order line was
   *[other] order lines were
  } done in time{ $late ->
    [0] { "" }
   *[other] , { $late } late
  }{ $undone ->
    [0] { "" }
    [one] ; one is not done
   *[other] ; { $undone } are not done
  }.

## Why somebody, a machine or a tray waited.

review-waits-no-load = No pieces there yet
review-waits-machine = A machine still ran
review-waits-other-trays = Other trays of the load
review-waits-station-taken = The station was taken
review-waits-service-taken = Something shared was taken
review-waits-none-free = No { $service } free
review-waits-drying = Drying
review-waits-resting = In clamps, cooling or settling
review-waits-air = Dust or solvent in the air
review-waits-supply = A supply was out
review-waits-held = Held
review-waits-first-piece = The first piece was not passed
review-waits-out-of-use = Out of use
review-waits-quiet-hours = Quiet hours
review-waits-stopped = Stopped early
review-waits-put-aside = Put aside
review-waits-needs-unloading = Done, not unloaded
review-waits-no-person = All hands elsewhere
review-waits-nobody-there = Nobody in the shop
review-waits-other-room = Hands in another room
review-waits-start-up = Starting up
review-waits-tidy-up = Tidying up
review-waits-not-said = Nobody said why
review-waits-not-known = Not known

review-did-work = { $from }–{ $to } { $who }: { $step }{ $kind ->
    [none] { "" }
   *[other] , { $kind }
  }
review-did-watching = { $from }–{ $to } { $who } stays and watches: { $step }
review-did-walking = { $from }–{ $to } { $who } walks
review-did-waiting = { $from }–{ $to } { $who } waits { $span }{ $why ->
    [none] { "" }
   *[other] : { $why }
  }

## The signs of the process chart (ASME Standard 101).
review-symbol-operation = operation
review-symbol-transport = transport
review-symbol-inspection = inspection
review-symbol-delay = delay
review-symbol-storage = storage
review-chart-held = What held the run, over the hours in which somebody was in the shop
review-chart-values = How much sooner, in the shop’s own hours, it would have been done for an hour less of each
review-worth-nothing = nothing
review-worth-all = { $what }, all { $of }
review-worth-more = { $what }, { $of } more
review-worth-there = Somebody there, an hour more

## Changes tried on what was measured.

review-change-earlier = Done sooner by
review-change-later = Done later by
review-change-hands = Less hand time
review-change-more-hands = More hand time
review-change-no-earlier = Done no sooner
review-change-no-hands = No hand time saved
review-change-pieces = More pieces good
review-change-cost = Cost
review-change-payback = Paid back after
review-change-payback-after = { $runs ->
    [1] one run
   *[other] { $runs } runs
  }{ $months ->
    [none] { "" }
    [1] , about a month
   *[other] , about { $months } months
  }
review-change-range = { $mid } ({ $low } to { $high })
review-change-range-in-ten = { $mid } ({ $low } to { $high }, in { $goes } goes of 10)
review-change-friend = { $friend ->
    [none] A friend’s idea
   *[other] { $friend }’s idea
  }: { $minutes ->
    [none] { $do ->
        [eliminate] leave it out
        [combine] do two in one
        [rearrange] another order
       *[simplify] make it simpler
      }
   *[other] { $minutes } min less a piece
  }.{ $why ->
    [none] { "" }
   *[other] { " " }{ $why }
  }
review-change-no-more = Saves no more than { $other }.

## What adopting a change makes of the shop, and from when on.
review-moved = { $what ->
    [capacity] { $name }: from { $before } to { $after }
    [trays] Pieces a tray: from { $before } to { $after }
    [wood] Wood: { $after }
    [wait] Rest after { $name }: from { $before } to { $after }
    [load] { $name }, pieces a load: { $before ->
        [none] { $after }
       *[other] from { $before } to { $after }
      }
    [rate] { $name }, good of a hundred: { $before ->
        [none] { $after }
       *[other] from { $before } to { $after }
      }
    [instruction] { $name }, a line more of instructions: { $after }
    [order] The order: from { $before } to { $after }
    [visit] { $before }: in one visit from now on
   *[time] { $name }, { $kind ->
        [setup] setup
        [loading] loading
        [machine] the machine
        [unloading] unloading
       *[hand] by hand
      }: from { $before } to { $after }{ $kind ->
        [hand] { " a piece" }
       *[other] { "" }
      }{ $measured ->
        [none] { "" }
       *[other] { " " }in plans; the run took { $measured }
      }
  }
review-from-next = From the next run on.
review-from-now = From now on: { $count ->
    [one] { $runs }, which is open, has it at once.
   *[other] { $runs }, which are open, have it at once.
  }
review-from-keeps = { $count ->
    [one] { $runs }, which is open, keeps the route that it has
   *[other] { $runs }, which are open, keep the route that they have
  }{ $times ->
    [yes] ; where that time was measured, what is left is planned with the new one.
   *[no] .
  }
review-from-noted = No book can say that, so nothing is altered: it is noted for the next run, and asked after when that is over.
review-done-shared = { $day ->
    [none] Done already: { $has } now.
   *[other] Done already: { $has } since { $day }.
  }
review-done-count = { $name }, { $now }
review-done-route = { $day ->
    [none] Done already: the route says so.
   *[other] Done already: the route says so since { $day }.
  }
review-done-noted = Noted on { $day }.
review-change-together = { $one }, and { $other }: { $earlier ->
    [none] done no sooner
   *[other] done sooner by { $earlier }
  }, { $hands ->
    [none] no hand time saved
   *[other] less hand time by { $hands }
  }.

## What 'runboard review --json' calls all trays together.
review-the-trays = the trays

## What becomes of a review that takes long.
refused-review-failed = What held the run could not be reckoned. Ask again; if it fails again, the other pages of the review still say what happened.
## What a change cannot be.
refused-run-open = The run '{ $run }' is still open: what a change promises is known once it is over. Finish it first.
refused-idea-not-tried = That idea could not be tried on this run, so it promises nothing.
refused-try-hours-then = In those hours nothing of this run was to be done, or that person was there already. Write a day of the run.
refused-change-done = The shop does that already, or more of it, so nothing was changed. Load the page again to see how it is now.
refused-change-not-as-made = The book says something else since, so nothing was taken back. Put back by hand what this change made of it.
refused-change-not-tried = Only a finished run of the same product that was opened after the change was adopted can say whether it worked.
refused-try-not-replayed = This run cannot be gone through again: nothing of it was worked, or not all of it finds a place.
review-at-a-glance = { $more ->
    [yes] { $good } good where { $wanted } were wanted
   *[no] { $good } of { $wanted } good
  }{ $piece ->
    [none] { "" }
   *[other] , { $piece } of hands a piece
  }

## What 'runboard review' prints below the five lines.
review-printed-operation = Operation
review-printed-guess = guess
review-printed-took = took
review-printed-values = With an hour less of it, in hours with somebody in the shop:
review-printed-value = { $what }: done { $earlier } sooner
review-printed-changes = What would have saved the most:
review-printed-change = { $change }: { $earlier ->
    [none] done no sooner
   *[other] done { $earlier } sooner{ $spread ->
        [none] { "" }
        [later] { " " }(from { $low } later to { $high } sooner)
       *[sooner] { " " }({ $low } to { $high })
      }
  }{ $hands ->
    [none] { "" }
   *[other] { ", " }{ $hands } less hand time
  }

## Why a change is offered: what in the run speaks for it.
offered-service-holds = { $service } held the run; that cost { $held }.
offered-service-taken = Stations waited { $waited } because { $service } was taken.
offered-hands-hold = { $person }’s hands held the run, and { $step } took most of them: { $hands }.
offered-scrap-gathers = At { $step }, { $lost } of { $of } were lost { $by ->
    [board] of board { $which }
    [wood] in { $which }
    [cutter] with cutter number { $which }
   *[hour] between { $which } and the next full hour
  }, and { $others_lost } of the other { $others }. Chance alone gathers as many { $in_a_hundred ->
    [1] once
   *[other] { $in_a_hundred } times
  } in a hundred: look at it.
offered-machine-long = { $step }: the machine took { $median } where { $guess } was guessed.
offered-wait-long = The route lets it rest { $least } after { $step }; its label asks for { $label }.
offered-furthest = Furthest beyond its guess: { $step }, { $kind ->
    [setup] setup,
    [loading] loading,
    [machine] the machine,
    [unloading] unloading,
   *[hand] by hand,
  } { $taken } for { $guess }. { $jig ->
    [yes] Laying things ready may take a fifth off.
   *[no] A jig may take a fifth off.
  }
offered-wide = { $step }, { $kind ->
    [setup] setup
    [loading] loading
    [machine] the machine
    [unloading] unloading
   *[hand] by hand
  }: from { $low } to { $high }, half of the times. One method for all of it may be as quick as the best quarter.
offered-station-holds = { $station } held the run, and { $step } took most of its time.
offered-setups = { $station } was set up { $setups } times where { $least } would do; that took { $length }.
offered-walks = { $walks ->
    [1] One walk between rooms
   *[other] { $walks } walks between rooms
  }, { $length } in all, most of it to { $step }.
offered-nobody-there = The run waited { $length } with nobody there. { $person } could come two hours sooner.

## Whether an adopted change worked.
change-range-of = { $low } to { $high }
change-range-less = { $span } more
verdict-saved = Saved { $range } { $of ->
    [machine] of the machine
   *[hands] of hands
  }, for { $pieces ->
    [1] one piece
   *[other] { $pieces } pieces
  }; promised { $promised }.
verdict-no-difference = No difference that is more than chance: from { $low } to { $high } { $of ->
    [machine] of the machine
   *[hands] of hands
  } saved, for { $pieces ->
    [1] one piece
   *[other] { $pieces } pieces
  }; promised { $promised }.
verdict-worse = It made things worse: { $range } more { $of ->
    [machine] of the machine
   *[hands] of hands
  }, for { $pieces ->
    [1] one piece
   *[other] { $pieces } pieces
  }; promised { $promised } less.
verdict-waiting = { $code ->
    [saved] { $took ->
        [earlier] Worked: done in { $after } instead of { $before }; trays waited { $by } less{ $services ->
            [none] { "" }
           *[other] { " " }for { $services }
          }.
        [no] Trays waited { $by } less{ $services ->
            [none] { "" }
           *[other] { " " }for { $services }
          }, but the run was done no sooner: it took { $after }, { $before } before.
       *[none] Worked: trays waited { $by } less{ $services ->
            [none] { "" }
           *[other] { " " }for { $services }
          }, for as many pieces.
      }
    [worse] It made things worse: trays waited { $by } more{ $services ->
        [none] { "" }
       *[other] { " " }for { $services }
      }, for as many pieces.
   *[no-difference] No difference: trays waited as long{ $services ->
        [none] { "" }
       *[other] { " " }for { $services }
      }, for as many pieces.
  }
verdict-hands = { $less ->
    [yes] Hands: { $after } a good piece, { $before } before.
   *[no] Hands: no saving seen ({ $after } a good piece, { $before } before).
  }
verdict-too-little = { $of ->
    [nothing] What this change moves is in no time that is measured, so only you can say whether it worked.
   *[other] Too few times were measured, before or after, to say whether it worked.
  } It promised { $promised }.

## What becomes of what a dropped change had altered.
way-back-taken-back = Taken back: what it altered is as it was before.
way-back-undone = What it altered is as it was before.
way-back-nothing = It had altered nothing in the book.
way-back-by-hand = { $what ->
    [route] The route is another since, so nothing was undone. Put back by hand what this change made of it.
   *[book] What is shared is another since, so nothing was undone. Put back by hand how many there were.
  }
## How an estimate went.

review-estimate-was = { $day }: { $length }, after { $count ->
    [one] one measured time
   *[other] { $count } measured times
  }
review-estimate-said = { $day }: { $length }, as { $who ->
    [none] somebody
   *[other] { $who }
  } said: { $why }
refused-time-taken-back = That was taken back already. Load the page again to see what holds now.
refused-time-wrong = Write how long it takes, such as '2 min 30 s' or '2.5' for minutes.

refused-cost-wrong = Write the cost as a number from 0 to { $most }, such as 45 or 12.50.
review-ledger-promise = Promised: { $earlier ->
    [none] done no sooner
   *[other] done sooner by { $earlier }
  }, { $hands ->
    [none] no hand time saved
   *[other] less hand time by { $hands }
  }.
review-ledger-unreadable = A change that cannot be read any more

## All runs beside one another.

over-runs-later = Done, against its promise
over-runs-percent = { NUMBER($percent, maximumFractionDigits: 0) } %
over-runs-after = { $span } after
over-runs-before = { $span } before
over-runs-dropped = { $change } (dropped since)
over-runs-element = { $step }, { $kind }
over-runs-element-of = { $element } ({ $product })
over-runs-said = somebody's word
over-runs-said-took = { $run } was done { $last } after it was opened{ $count ->
    [one] .
   *[other] ; { $mean } on average over { $count } runs.
  }
over-runs-said-a-piece = { $last } of hands for each good piece in { $run }{ $count ->
    [one] .
   *[other] ; { $mean } on average over { $count } runs.
  }{ $is_whole ->
    [no] { " " }Not every load has its time: a piece took more than that.
   *[yes] { "" }
  }
over-runs-said-an-hour = { $last } good pieces an hour of hands in { $run }{ $count ->
    [one] .
   *[other] ; { $mean } on average over { $count } runs.
  }{ $is_whole ->
    [no] { " " }Not every load has its time: an hour gave less than that.
   *[yes] { "" }
  }
over-runs-said-good-share = { $good } of { $begun } begun came good in { $run }, { $last }{ $count ->
    [one] .
   *[other] ; { $mean } of all pieces of { $count } runs.
  }
over-runs-said-later = { $run } was done { $last } what the plan at its opening promised{ $count ->
    [one] .
   *[other] ; { $mean } on average over { $count } runs.
  } The promise is the plan at its opening, with everybody there in their usual hours.
over-runs-said-too-few = It was measured once. From the second time on a chart stands here.
over-runs-said-element = { $centre } on average of { $count } times. { $out ->
    [0] All lie between { $lower } and { $upper }, as far as chance alone takes them.
    [one] One lies outside of { $lower } to { $upper }, which chance alone hardly does: ask what was different that day.
   *[other] { $out } lie outside of { $lower } to { $upper }, which chance alone hardly does: ask what was different on those days.
  }
over-runs-said-furthest = Of all these times it moves the newest run most: by { $span } { $way ->
    [more] more
   *[less] less
  } than the route says.
over-runs-unknown-took = { $count ->
    [one] Of one run nobody knows when it was done; it is not in the chart.
   *[other] Of { $count } runs nobody knows when they were done; they are not in the chart.
  }
over-runs-unknown-a-piece = { $count ->
    [one] Of one run no time of hands is known, or nothing came good; it is not in the chart.
   *[other] Of { $count } runs no time of hands is known, or nothing came good; they are not in the chart.
  }
over-runs-unknown-an-hour = { $count ->
    [one] Of one run no time of hands is known; it is not in the chart.
   *[other] Of { $count } runs no time of hands is known; they are not in the chart.
  }
over-runs-unknown-good-share = { $count ->
    [one] Of one run nothing was counted; it is not in the chart.
   *[other] Of { $count } runs nothing was counted; they are not in the chart.
  }
over-runs-unknown-later = { $count ->
    [one] For one run no plan could be made at its opening; it is not in the chart.
   *[other] For { $count } runs no plan could be made at their opening; they are not in the chart.
  }
over-runs-chart-took = { $product }: from opening to done, run by run, { $count } runs
over-runs-chart-a-piece = { $product }: hands for each good piece, run by run, { $count } runs
over-runs-chart-an-hour = { $product }: good pieces an hour of hands, run by run, { $count } runs
over-runs-chart-good-share = { $product }: share that came good, run by run, { $count } runs
over-runs-chart-later = { $product }: how long after its promise it was done, run by run, { $count } runs
over-runs-chart-element = { $name }: control chart of { $count } times

## What was lost since something was changed at a machine.

review-since-at = { $station }: { $what }
review-since-none = from the beginning
review-since-cutter = new cutter
review-since-wood = other wood
review-since-jig = other jig
review-since-focus = focus set anew
review-since-other = something else changed

## What the ledger of changes and other lists say by a code.
review-ledger-nobody-said = Nobody said yet
review-ledger-worked-kept = Worked, kept
review-ledger-worked-dropped = Worked, dropped all the same
review-ledger-unseen-kept = No difference seen, kept
review-ledger-unseen-dropped = No difference seen, dropped
review-ledger-worse-kept = Did not work, kept all the same
review-ledger-worse-dropped = Did not work, dropped
review-ledger-unknown-kept = Too little measured to say, kept
review-ledger-unknown-dropped = Too little measured to say, dropped
review-ledger-saved = Saved { $saved }.
