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
review-left-out-overlapping = The same person went to another load before this one was done
review-left-out-undone = It was entered and taken back
review-left-out-amended = It was corrected afterwards
review-left-out-assumed = Nobody entered it; it was filled in
review-left-out-paper = It was typed in from a card
review-left-out-going-on = Still going on
review-left-out-taken-off = The load was taken off before it was done
review-left-out-loaded-again = The machine stopped early and was loaded again
review-left-out-no-length = Its start was not entered
review-left-out-no-end = Nobody entered when the machine ended
review-left-out-with-setup = Setup was not entered apart from the first loading
review-left-out-with-hands = Setup was not entered apart from the work
review-left-out-all-usual = Setting up took no longer than loading without it
review-left-out-other-wood = A different wood
review-left-out-out-of-range = It took over five times the guess, or under a fifth of it

## The five lines of a review, and what they call things.

review-line-pieces = { $open ->
    [yes] So far { $good }
   *[no] { $good }
  } { $how ->
    [begun] good of { $begun } started, { $wanted } wanted.
    [more] good, { $wanted } wanted.
   *[fewer] of { $wanted } good.
  }{ $hands ->
    [none] { " " }No hands-on time was entered.
   *[other] { $piece ->
        [none] { " " }{ $hands } hands-on.
       *[other] { " " }{ $hands } hands-on, { $piece } per piece.
      }
  }
review-line-furthest = Furthest from the guess: { $operation } took { $taken }, guess { $guess }.
review-line-furthest-none = { $every ->
    [yes] Every operation
   *[no] Everything measured
  } came within 10{ "\u00A0" }% of its guess.
review-line-furthest-unknown = No time was measured, so there is nothing to compare with the guess.
review-line-lost-none = { $open ->
    [yes] Lost so far: none.
   *[no] Lost: none.
  }
review-line-lost-no-reason = Lost: { $pieces }, no place or reason noted.
review-line-lost-scattered = Lost: { $pieces }, each for a different reason.
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
    [none] { " " }(no reason noted).
   *[other] .
  }
review-line-held = Bottleneck: { $kind ->
    [service] { $one ->
        [yes] the { $what }, in use { $when }. Having only one cost { $cost }.
       *[no] the { $what }, all { $capacity } in use { $when }. That cost { $cost }.
      }
    [hands] { $what }, { $when }.
    [station] the { $what }, { $when }.
    [wait] { $what }, { $when }. It cost { $cost }.
    [room] { $what }, { $when }. Waiting for it cost { $cost }.
    [walking] { $what }, { $when }.
   *[hours] the hours. The next step waited for someone { $when }.
  }
review-line-held-none = Bottleneck: none stands out. No single addition would have ended it sooner.
review-line-held-unknown = Bottleneck: unknown. Too little of the run was entered, or its replay failed.
review-line-held-coming = Bottleneck: working it out… That takes about { $seconds } seconds, longer on a small or busy computer.
review-line-try-coming = Try first: working it out… That takes about { $seconds } seconds, longer on a small or busy computer.
review-line-again = { $line } Updating…
review-cost-days = { $about } ({ $cost })
review-line-try-none = { $tried ->
    [0] Try first: nothing found. Do you have an idea?
   *[other] { $some ->
        [yes] Try first: nothing tried helps enough to mention.
       *[no] Try first: nothing tried would have helped.
      }
  }
review-line-try-done = Try first: nothing more. What would have helped is already done.
review-line-try-earlier = Try first: { $change }. Finishes { $earlier } sooner.
review-line-try-hands = Try first: { $change }. { $more ->
    [yes] Saves { $hands } hands-on.
   *[no] { $pieces ->
        [one] One more good piece.
       *[other] { $pieces } more good pieces.
      }
  }

review-done = Done { $finished }{ $how ->
    [as] , as first planned.
    [after] , { $span } later than first planned.
    [before] , { $span } earlier than first planned.
   *[unknown] .
  }{ $lines ->
    [all] { " " }All order lines on time.
    [some] { " " }Not all order lines on time.
   *[none] { "" }
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
review-held-at = { $day }, { $time }{ $night ->
    [yes] { " that night" }
   *[no] { "" }
  }
review-held-pushed = It held up the run for only { $open } with someone in the shop. { $past ->
    [yes] But that pushed { $step } of { $waiting } from { $since } to { $until }, so the run ended { $cost } later by the clock.
   *[no] With the hours nobody was there, that became { $cost } by the clock.
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
        [yes] the { $what } was in use.
       *[no] all the { $what } were in use.
      } { $count ->
        [one] It started
       *[other] They started
      } { $till ->
        [none] on { $until }.
       *[other] at { $till }.
      }
    [hands] On { $since }, { $what } went to { $by } of { $others } until { $till ->
        [none] { $until }
       *[other] { $till }
      }, while { $waiting } waited{ $same ->
        [yes] { "" }
       *[no] { " " }for { $step }
      }.
    [station] On { $since }, the { $what } was busy with { $others } until { $till ->
        [none] { $until }
       *[other] { $till }
      }, while { $waiting } waited for it.
    [wait] { $count ->
        [one] Tray { $trays }
       *[other] Trays { $trays }
      } finished { $step } on { $since } and could carry on { $till ->
        [none] on { $until }
       *[other] at { $till }
      } at the earliest.
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
    [1] one piece per tray
   *[other] { $pieces } pieces per tray
  }
review-idea-hours = { $person } there { $span } longer when the run waits for someone, as on { $day }
review-idea-person = one more person, there when { $like } is
review-idea-helper = a helper at { $operation } for { $span }
review-idea-times = { $kind ->
    [setup] the setup at { $operation }
    [loading] the loading at { $operation }
    [machine] the machine at { $operation }
    [unloading] the unloading at { $operation }
   *[hand] { $operation }
  } { $much ->
    [fifth] a fifth quicker{ $kind ->
        [hand] , for example { $jig ->
            [yes] by laying things out ready
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
review-what-hands = { $name }’s time
review-what-station = { $name }
review-what-service = { $name }
review-what-room = the air in the { $name }
review-what-walking = walking between rooms
review-what-hours = nobody there
review-what-wait = { $why ->
    [dry] drying
    [cure] curing
    [clamp] clamping
    [cool] cooling
    [settle] settling
   *[other] waiting
  } after { $name }

review-little = { $percent ->
    [none] No time of this run was measured. What follows is based on guesses.
   *[other] Only { $percent } % of the time was measured. The rest is based on guesses.
  }
review-presses = { $count ->
    [one] Next time, this press would help most: { $presses }.
    [2] Next time, these two presses would help most: { $presses }.
    [3] Next time, these three presses would help most: { $presses }.
   *[other] Next time, these { $count } presses would help most: { $presses }.
  }
review-press = { $press } at { $step }
review-press-load-started = Start
review-press-load-done = Done
review-press-load-put-aside = Put aside
review-press-load-stopped = The machine stopped early
review-press-machine-started = Machine runs
review-press-machine-ended = Machine ended
review-press-unloading-started = Unload

## What is written on the charts of a review.

review-chart-operations = Hands-on and machine time of each operation: what it took, above the guess
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
   *[other] Changed the run by { $moved }.{ " " }
  }{ $count ->
    [1] Measured once
   *[other] Typical of { $count } measured times
  }{ $way ->
    [none] .
    [same] : as guessed ({ $guess }).
    [average] : { $taken }, average { $average }; the guess was { $guess }.
   *[other] : { $percent }{ "\u00A0" }% { $way ->
        [more] more
       *[less] less
      } than the guess of { $guess }{ $beyond ->
        [yes] , further off than expected.
       *[no] .
      }
  }
review-times-line = { $kind ->
    [none] { "" }
   *[other] { $kind }{ " " }
  }{ $moved ->
    [none] { "" }
   *[other] changed the run by { $moved };{ " " }
  }{ $way ->
    [average] typically { $taken }, average { $average }
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
    [yes] Estimate before the run: { $guess }, as the route says.
   *[no] Estimate before the run: { $guess } (the route says { $written }).
  }
review-times-word = { $who ->
    [none] Set to { $length } on { $day }
   *[other] { $who } set it to { $length } on { $day }
  }: “{ $why }”
review-times-saved = { $name }. Saved: { $length } from now on. You said: “{ $why }”
review-times-back = Taken back: as it was before.
review-times-far-off = { $length } { $kind ->
    [hand] per piece
   *[other] per load
  }? It was { $known }. Press again if you mean it.
review-times-standard = Standard time, with the shop’s allowance: { $time }.
review-times-quicker = It got quicker with practice. The first took { $first }; each time the count doubles, one takes { $percent } % as long (unit-cost learning curve).
review-times-slower = It got slower towards the end. The first took { $first }; each time the count doubles, one takes { $percent } % as long (unit-cost learning curve).
review-times-needed = Measure { $count } more to be sure within 10 %.
review-times-scattered = The times vary too much to pin down.
review-source-guess = This is the guess: nothing measured yet.
review-source-program = This is what the program { $file } says: nothing measured yet.
review-source-engraving = This is what the drawing { $file } says: nothing measured yet.
review-source-measured = This is { $guess ->
    [none] the guess
    [file] what { $file } says
   *[said] what { $who ->
        [none] someone
       *[other] { $who }
      } said on { $day }
  }, adjusted by { $count ->
    [one] one measured time
   *[other] { $count } measured times
  }{ $guess ->
    [none] .
    [file] .
   *[said] {" "}since then.
  }
review-source-said = As { $who ->
    [none] someone
   *[other] { $who }
  } said on { $day }: { $why }

review-reason-surface = surface spoilt
review-reason-engraving = engraving spoilt
review-reason-crack = cracked
review-reason-it-broke = broken
review-reason-tear-out = torn out
review-reason-knot = a knot
review-reason-something-else = another reason

review-trays = the trays
review-helper = helper
review-lost-at = { $reason ->
    [none] at { $step }, no reason noted
   *[other] { $reason } at { $step }
  }

review-chart-day = Who and what was busy on { $day } from { $from } to { $to }, with the plan beside it
review-chart-sitting = { $day }, { $from } to { $to }
review-chart-hands = Hands-on time by operation, most first
review-chart-lost = Pieces lost, most first
review-chart-waited-person = What people waited for, longest first
review-chart-waited-station = What machines waited for, longest first
review-chart-waited-tray = What trays waited for, longest first

## What happened, section by section in one line.

review-answer-hands = { $operation } took the most: { $taken } of { $all }.
review-answer-hands-none = No hands-on time was entered.
review-answer-days = { $count ->
    [0] No days known.
    [one] One stretch of work, as it was and as planned.
   *[other] { $count } stretches of work, as they were and as planned.
  }
review-answer-lost = { $lost } of { $begun } started{ $why ->
    [none] .
   *[other] { $most ->
        [all] , { $why }.
        [1] .
       *[other] , { $most } of them { $why }.
      }
  }
review-answer-lost-none = No piece was lost.
review-answer-waiting = { $row ->
    [tray] Trays waited { $all } (all added up).
    [person] People waited { $all } in all.
   *[station] Machines waited { $all } in all.
  } Most of it: { $why }, { $most }.
review-answer-waiting-none = No waiting known.
review-answer-process = Trays waited longest before { $step }: { $waited } on average.
review-answer-process-none = { $steps ->
    [one] One step.
   *[other] { $steps } steps.
  }
review-answer-orders = { $some } of { $count } { $count ->
    [one] order line
   *[other] order lines
  } on time{ $late ->
    [0] { "" }
   *[other] , { $late } late
  }{ $undone ->
    [0] { "" }
   *[other] , { $undone } not done
  }.

## Why somebody, a machine or a tray waited.

review-waits-no-load = No pieces yet
review-waits-machine = A machine was still running
review-waits-other-trays = Other trays of the load
review-waits-station-taken = Station in use
review-waits-service-taken = Shared equipment in use
review-waits-none-free = No { $service } free
review-waits-drying = Drying
review-waits-resting = In clamps, cooling or settling
review-waits-air = Dust or solvent in the air
review-waits-supply = A supply had run out
review-waits-held = On hold
review-waits-first-piece = First piece not passed yet
review-waits-out-of-use = Out of order
review-waits-quiet-hours = Quiet hours
review-waits-stopped = Stopped early
review-waits-put-aside = Put aside
review-waits-needs-unloading = Done, not unloaded
review-waits-no-person = Everyone busy elsewhere
review-waits-nobody-there = Nobody in the shop
review-waits-other-room = Hands in another room
review-waits-start-up = Starting up
review-waits-tidy-up = Tidying up
review-waits-not-said = No reason given
review-waits-not-known = Not known

review-did-work = { $from }–{ $to } { $who }: { $step }{ $kind ->
    [none] { "" }
   *[other] , { $kind }
  }
review-did-watching = { $from }–{ $to } { $who } watches: { $step }
review-did-walking = { $from }–{ $to } { $who } walks
review-did-waiting = { $from }–{ $to } { $who } waits { $span }{ $why ->
    [none] { "" }
   *[other] : { $why }
  }

## The signs of the process chart (ASME Standard 101).
review-symbol-operation = operation (work)
review-symbol-transport = transport (moving)
review-symbol-inspection = inspection (checking)
review-symbol-delay = delay (waiting)
review-symbol-storage = storage (put away)
review-chart-held = What the run waited for, over the hours with someone in the shop
review-chart-values = How much sooner the run would have been done with an hour less of each, in hours with someone in the shop
review-worth-nothing = nothing
review-worth-all = { $what }, all { $of }
review-worth-more = { $what }, { $of } more
review-worth-there = One more hour with someone there

## Changes tried on what was measured.

review-change-earlier = Done sooner by
review-change-later = Done later by
review-change-hands = Less hands-on time
review-change-more-hands = More hands-on time
review-change-no-earlier = Done no sooner
review-change-no-hands = No hands-on time saved
review-change-pieces = More good pieces
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
review-change-range-in-ten = { $mid } ({ $low } to { $high }, in { $goes } tries of 10)
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
   *[other] { $minutes } min less per piece
  }.{ $why ->
    [none] { "" }
   *[other] { " " }{ $why }
  }
review-change-no-more = Saves no more than { $other }.

## What adopting a change makes of the shop, and from when on.
review-moved = { $what ->
    [capacity] { $name }: from { $before } to { $after }
    [trays] Pieces per tray: from { $before } to { $after }
    [wood] Wood: { $after }
    [wait] Rest after { $name }: from { $before } to { $after }
    [load] { $name }, pieces per load: { $before ->
        [none] { $after }
       *[other] from { $before } to { $after }
      }
    [rate] { $name }, good per hundred: { $before ->
        [none] { $after }
       *[other] from { $before } to { $after }
      }
    [instruction] { $name }, one more line of instructions: { $after }
    [order] The order: from { $before } to { $after }
    [visit] { $before }: in one visit from now on
   *[time] { $name }, { $kind ->
        [setup] setup
        [loading] loading
        [machine] machine time
        [unloading] unloading
       *[hand] hand time
      }: from { $before } to { $after }{ $kind ->
        [hand] { " per piece" }
       *[other] { "" }
      }{ $measured ->
        [none] { "" }
       *[other] { " " }in plans; the run took { $measured }
      }
  }
review-from-next = From the next run on.
review-from-now = { $count ->
    [one] From now on. { $runs } is open and gets it at once.
   *[other] From now on. { $runs } are open and get it at once.
  }
review-from-keeps = { $count ->
    [one] { $runs } is open and keeps its route.
   *[other] { $runs } are open and keep their routes.
  }{ $times ->
    [yes] { " " }Where that time was measured, what is left is planned with the new one.
   *[no] { "" }
  }
review-from-noted = No setting can say that, so nothing is changed. It is noted for the next run, and you are asked about it after that run.
review-done-shared = { $day ->
    [none] Already done: { $has } now.
   *[other] Already done: { $has } since { $day }.
  }
review-done-count = { $name }, { $now }
review-done-route = { $day ->
    [none] Already done: the route says so.
   *[other] Already done: the route says so since { $day }.
  }
review-done-noted = Noted on { $day }.
review-change-together = { $one } and { $other }: { $earlier ->
    [none] done no sooner
   *[other] done sooner by { $earlier }
  }, { $hands ->
    [none] no hands-on time saved
   *[other] less hands-on time by { $hands }
  }.

## What 'runboard review --json' calls all trays together.
review-the-trays = the trays

## What becomes of a review that takes long.
refused-review-failed = The bottleneck could not be worked out. Ask again. If it fails again, the other pages of the review still say what happened.
## What a change cannot be.
refused-run-open = ‘{ $run }’ is still open. What a change promises is known once the run is over: finish it first.
refused-idea-not-tried = That idea could not be tried on this run, so it promises nothing.
refused-try-hours-then = This run had nothing to do in those hours, or that person was already there. Choose a day of the run.
refused-change-done = The shop already does that, or more of it, so nothing was changed. Load the page again to see how it is now.
refused-change-not-as-made = The shop data has changed since, so nothing was taken back. Put it back by hand.
refused-change-not-tried = Only a finished run of the same product can say whether it worked, one opened after the change was adopted.
refused-try-not-replayed = This run cannot be replayed: no work was done, or not all of it finds a place.
review-at-a-glance = { $more ->
    [yes] { $good } good, { $wanted } wanted
   *[no] { $good } of { $wanted } good
  }{ $piece ->
    [none] { "" }
   *[other] , { $piece } hands-on per piece
  }

## What 'runboard review' prints below the five lines.
review-printed-operation = Operation
review-printed-guess = guess
review-printed-took = took
review-printed-values = With an hour less of it, in hours with someone in the shop:
review-printed-value = { $what }: done { $earlier } sooner
review-printed-changes = What would have saved most:
review-printed-change = { $change }: { $earlier ->
    [none] done no sooner
   *[other] done { $earlier } sooner{ $spread ->
        [none] { "" }
        [later] { " " }(from { $low } later to { $high } sooner)
       *[sooner] { " " }({ $low } to { $high })
      }
  }{ $hands ->
    [none] { "" }
   *[other] { ", " }{ $hands } less hands-on time
  }

## Why a change is offered: what in the run speaks for it.
offered-service-holds = Bottleneck: { $service }. That cost { $held }.
offered-service-taken = Stations waited { $waited } for { $service }.
offered-hands-hold = Bottleneck: { $person }’s time. { $step } took most of it: { $hands }.
offered-scrap-gathers = At { $step }, { $lost } of { $of } were lost { $by ->
    [board] from board { $which }
    [wood] in { $which }
    [cutter] with cutter number { $which }
   *[hour] between { $which } and the next full hour
  }, and { $others_lost } of the other { $others }. Chance alone gathers that many { $in_a_hundred ->
    [1] once
   *[other] { $in_a_hundred } times
  } in a hundred. Take a look.
offered-machine-long = { $step }: the machine took { $median }, the guess was { $guess }.
offered-wait-long = The route lets it rest { $least } after { $step }. Its label asks for { $label }.
offered-furthest = Furthest over its guess: { $step }, { $kind ->
    [setup] setup
    [loading] loading
    [machine] machine time
    [unloading] unloading
   *[hand] hand time
  } { $taken }, guess { $guess }. { $jig ->
    [yes] Laying things out ready may save a fifth.
   *[no] A jig may save a fifth.
  }
offered-wide = { $step }, { $kind ->
    [setup] setup
    [loading] loading
    [machine] machine time
    [unloading] unloading
   *[hand] hand time
  }: half of the times fall between { $low } and { $high }. One method every time may be as quick as the best quarter.
offered-station-holds = Bottleneck: the { $station }. { $step } took most of its time.
offered-setups = The { $station } was set up { $setups } times; { $least } would do. That took { $length }.
offered-walks = { $walks ->
    [1] One walk between rooms
   *[other] { $walks } walks between rooms
  }, { $length } in all, most of it to { $step }.
offered-nobody-there = The run waited { $length } with nobody there. { $person } could come two hours earlier.

## Whether an adopted change worked.
change-range-of = { $low } to { $high }
change-range-less = { $span } more
verdict-saved = Saved { $range } { $of ->
    [machine] of machine time
   *[hands] of hands-on time
  } for { $pieces ->
    [1] one piece
   *[other] { $pieces } pieces
  }; promised { $promised }.
verdict-no-difference = No difference beyond chance: { $low } to { $high } { $of ->
    [machine] of machine time
   *[hands] of hands-on time
  } saved for { $pieces ->
    [1] one piece
   *[other] { $pieces } pieces
  }; promised { $promised }.
verdict-worse = It made things worse: { $range } more { $of ->
    [machine] machine time
   *[hands] hands-on time
  } for { $pieces ->
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
    [yes] Hands-on: { $after } per good piece, { $before } before.
   *[no] Hands-on: no saving seen ({ $after } per good piece, { $before } before).
  }
verdict-too-little = { $of ->
    [nothing] No measured time shows this change, so only you can say whether it worked.
   *[other] Too few times were measured, before or after, to say whether it worked.
  } It promised { $promised }.

## What becomes of what a dropped change had altered.
way-back-taken-back = Taken back: what it changed is as it was before.
way-back-undone = What it changed is as it was before.
way-back-nothing = It had changed nothing in the shop data.
way-back-by-hand = { $what ->
    [route] The route has changed since, so nothing was undone. Put it back by hand.
   *[book] The shared equipment has changed since, so nothing was undone. Put back by hand how many there were.
  }
## How an estimate went.

review-estimate-was = { $day }: { $length }, after { $count ->
    [one] one measured time
   *[other] { $count } measured times
  }
review-estimate-said = { $day }: { $length }, as { $who ->
    [none] someone
   *[other] { $who }
  } said: { $why }
refused-time-taken-back = That was already taken back. Load the page again to see what applies now.
refused-time-wrong = Write how long it takes: ‘2 min 30 s’, or ‘2.5’ for minutes.

refused-cost-wrong = Write the cost as a number from 0 to { $most }: 45 or 12.50.
review-ledger-promise = Promised: { $earlier ->
    [none] done no sooner
   *[other] done sooner by { $earlier }
  }, { $hands ->
    [none] no hands-on time saved
   *[other] less hands-on time by { $hands }
  }.
review-ledger-unreadable = A change that can no longer be read

## All runs beside one another.

over-runs-later = Finish against promise
over-runs-percent = { NUMBER($percent, maximumFractionDigits: 0) } %
over-runs-after = { $span } later
over-runs-before = { $span } earlier
over-runs-dropped = { $change } (dropped since)
over-runs-element = { $step }, { $kind }
over-runs-element-of = { $element } ({ $product })
over-runs-said = set by hand
over-runs-said-took = { $run } took { $last } from opening to done{ $count ->
    [one] .
   *[other] ; { $mean } on average over { $count } runs.
  }
over-runs-said-a-piece = { $last } hands-on per good piece in { $run }{ $count ->
    [one] .
   *[other] ; { $mean } on average over { $count } runs.
  }{ $is_whole ->
    [no] { " " }Some loads have no time: a piece took more than that.
   *[yes] { "" }
  }
over-runs-said-an-hour = { $last } good pieces per hands-on hour in { $run }{ $count ->
    [one] .
   *[other] ; { $mean } on average over { $count } runs.
  }{ $is_whole ->
    [no] { " " }Some loads have no time: an hour gave less than that.
   *[yes] { "" }
  }
over-runs-said-good-share = { $good } of { $begun } started came good in { $run }, { $last }{ $count ->
    [one] .
   *[other] ; { $mean } of all pieces over { $count } runs.
  }
over-runs-said-later = { $run } was done { $last } than the plan at its opening promised{ $count ->
    [one] .
   *[other] ; { $mean } on average over { $count } runs.
  } That plan had everyone there in their usual hours.
over-runs-said-too-few = Measured once. From the second time on, a chart shows here.
over-runs-said-element = { $centre } on average over { $count } times. { $out ->
    [0] All are between { $lower } and { $upper }, where chance alone takes them.
    [one] One is outside { $lower } to { $upper }. Chance alone hardly does that: ask what was different that day.
   *[other] { $out } are outside { $lower } to { $upper }. Chance alone hardly does that: ask what was different on those days.
  }
over-runs-said-furthest = Of all these times, this one changes the newest run most: { $span } { $way ->
    [more] more
   *[less] less
  } than the route says.
over-runs-unknown-took = { $count ->
    [one] One run has no known end. It is not in the chart.
   *[other] { $count } runs have no known end. They are not in the chart.
  }
over-runs-unknown-a-piece = { $count ->
    [one] One run has no hands-on time, or no good pieces. It is not in the chart.
   *[other] { $count } runs have no hands-on time, or no good pieces. They are not in the chart.
  }
over-runs-unknown-an-hour = { $count ->
    [one] One run has no hands-on time. It is not in the chart.
   *[other] { $count } runs have no hands-on time. They are not in the chart.
  }
over-runs-unknown-good-share = { $count ->
    [one] In one run nothing was counted. It is not in the chart.
   *[other] In { $count } runs nothing was counted. They are not in the chart.
  }
over-runs-unknown-later = { $count ->
    [one] One run could not be planned when it was opened. It is not in the chart.
   *[other] { $count } runs could not be planned when they were opened. They are not in the chart.
  }
over-runs-chart-took = { $product }: from opening to done, run by run, { $count } runs
over-runs-chart-a-piece = { $product }: hands-on time per good piece, run by run, { $count } runs
over-runs-chart-an-hour = { $product }: good pieces per hands-on hour, run by run, { $count } runs
over-runs-chart-good-share = { $product }: share of good pieces, run by run, { $count } runs
over-runs-chart-later = { $product }: finish against promise, run by run, { $count } runs
over-runs-chart-element = { $name }: control chart of { $count } times

## What was lost since something was changed at a machine.

review-since-at = { $station }: { $what }
review-since-none = from the start
review-since-cutter = new cutter
review-since-wood = different wood
review-since-jig = different jig
review-since-focus = focus reset
review-since-other = something else changed

## What the ledger of changes and other lists say by a code.
review-ledger-nobody-said = Not judged yet
review-ledger-worked-kept = Worked, kept
review-ledger-worked-dropped = Worked, dropped anyway
review-ledger-unseen-kept = No difference seen, kept
review-ledger-unseen-dropped = No difference seen, dropped
review-ledger-worse-kept = Did not work, kept anyway
review-ledger-worse-dropped = Did not work, dropped
review-ledger-unknown-kept = Too little measured to say, kept
review-ledger-unknown-dropped = Too little measured to say, dropped
review-ledger-saved = Saved { $saved }.
