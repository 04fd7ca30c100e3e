# Trying a change before making it. The server alone says these.

try-change-hours = Extra hours: { $person }, { $day }, { $from }–{ $to }
try-change-person = One more person, with { $like }’s hours, { $day ->
    [now] from now on
   *[other] from { $day } on
  }, { $skills ->
    [none] for steps that need no skill
   *[other] also with: { $skills }
  }
try-change-capacity = { $service }: { $capacity } at once
try-change-trays = { $pieces ->
    [1] One piece per tray
   *[other] { $pieces } pieces per tray
  }, in trays not started yet
try-change-times = { $operation }: { $kind ->
    [setup] setup takes
    [loading] loading takes
    [machine] the machine takes
    [unloading] unloading takes
    [hand] hand work takes
   *[all] everything takes
  } { $percent } % of its time
try-change-order = { $then } before { $first }
try-change-helper = A helper at { $operation } only, for { $span }, with { $like }’s hours, { $day ->
    [now] from now on
   *[other] from { $day } on
  }
try-change-load = { $step }: up to { $pieces ->
    [1] one piece
   *[other] { $pieces } pieces
  } per load
try-change-instead = { $operation }: { $means ->
    [wood] { $thing ->
        [none] other wood
       *[other] { $thing } as the wood
      }
    [abrasive] { $thing ->
        [none] another abrasive
       *[other] { $thing } as the abrasive
      }
    [board] another board
    [hour] at another hour of the day
   *[tool] { $thing ->
        [none] another tool
       *[other] { $thing } as the tool
      }
  }, { $percent ->
    [100] in the same time
   *[other] in { $percent } % of the time
  }{ $rate ->
    [same] {""}
   *[other] , { $rate } of 100 good
  }
try-change-wait = { $operation }: { $span } wait after it
try-change-visit = { $then } right after { $first }, in one visit
try-change-several = Together: { $changes }

try-moves = The finish { $finish ->
    [same] does not move
    [less] moves { $by } earlier
   *[more] moves { $by } later
  }; hands-on work { $hands ->
    [same] stays the same.
    [less] is { $hours } less.
   *[more] is { $hours } more.
  }
try-in-time = { $lines ->
    [1] The one order line with a due date is { $way ->
        [more] on time; as things are it is late.
        [less] late; as things are it is on time.
       *[same] { $then ->
            [0] late with the change too.
           *[other] on time both ways.
          }
      }
   *[other] Of { $lines } order lines with a due date, { $then } { $then ->
        [1] is
       *[other] are
      } on time{ $way ->
        [same] , with the change and without.
       *[other] ; as things are { $now }.
      }
  }
try-presence = { $way ->
    [same] Time in the shop stays the same
    [less] { $by } less in the shop
   *[more] { $by } more in the shop
  }{ $people ->
    [1] {""}
   *[other] , everybody together
  }{ $walking ->
    [same] .
   *[other] , with { $walks } { $walking ->
        [less] fewer
       *[more] more
      } room { $walks ->
        [1] change
       *[other] changes
      }.
  }
try-why-slack = { $operation } has slack: it is not on the longest chain of work.
try-why-lost = { $operation } is on the longest chain of work, but before { $step }, which waits for the next hours, { $at }. Time saved at { $operation } is lost in that wait.
try-holds-hours = Bottleneck: { $step } waits for the next hours, { $at }, and what follows takes until the end.
try-sure = No plan with the change is done earlier: that is proved.
try-not-sure = This is not proved: both plans were made at once, and a longer search might find an earlier one.
try-worse = The change makes it worse: no plan with it is done as early.
try-worse-found = The plan found with the change is worse. Neither is proved the best: both were made at once, and a longer search might find a better one.
try-worse-hands = The change makes it worse: more hands-on work, and nothing is gained.
try-more-hands = It is done earlier, with more hands-on work.
try-let-in = With the change, this gets done too, which fits no plan as things are: { $steps }. The two plans do not hold the same work.
try-only-then = As things are, no plan fits. With the change one does, done { $at }.
try-part = Some of the run fits no plan, with the change or without, and is left out of both. The Plan page says what.
try-nothing-fits = Nothing of this run can be planned, as things are or with the change. The Plan page says why.
try-done = This run has nothing left to do, so nothing can move.
try-left-out = With the change, some work fits no plan:
try-no-plan-now = Nothing to compare: as things are, no plan fits into people’s hours. Lengthen somebody’s hours on the Shop screen, or take off what a station still holds.
try-no-plan-then = With the change, no plan fits people’s hours and the shared equipment, beside what has been started. Try something else.

try-row-finish = Done
try-row-likely = Probably
try-row-late = By, 19 times in 20
try-row-hands = Hands-on
try-row-in-time = Order lines on time
try-row-in-time-of = { $some } of { $lines }
try-row-presence = In the shop
try-row-walks = Room changes

refused-try-no-operation = The route has no such operation any more. Choose one it has.
refused-try-good-rate = Enter how many of a hundred turn out good: 1 to 100.
refused-try-minutes = Enter how many minutes the helper comes for: 1 to { $most }.
refused-try-no-wait = Choose a wait whose finish has its label’s times on the Shop screen.
refused-try-label = The label asks for at least { $least } minutes.
refused-try-load-size = Only loads by the jig, the tray or the run can change. A board or a piece stays what it is.
refused-try-load-trays = That is more than one tray, and here each tray has its own texts. Try larger trays.
refused-try-load-hands = Hand work takes one tray after another here. Try larger trays.
refused-try-visit = These two cannot be one visit: a wait or a finish lies between, one has started, or the second needs its own machine, station or skill.
refused-change-not-route = That change is not about a route, so it cannot go into one.
refused-change-wrong = The shop cannot read that change: '{ $where }' is wrong.
refused-try-unknown = Choose one of the changes on this page.
refused-try-run-over = That run is not open, so you cannot try anything in it. Go back to the plan.
refused-try-number = Enter a whole number, such as 5.
refused-try-day = Choose a day, or leave it empty for now.
refused-try-nobody = Choose somebody in the shop.
refused-try-hours = Choose a day and hours still to come, within four months, such as 9:00 to 13:00: longer than start-up and tidy-up take.
refused-try-hours-usual = { $person } is in the shop then already. Enter other hours.
refused-try-hours-of-nobody = Choose somebody with usual hours on the Shop screen: the new person keeps the same.
refused-try-service-unknown = Choose shared equipment, such as dust extraction.
refused-try-capacity = Enter how many at once: 1 to { $most }.
refused-try-pieces = Enter how many pieces a tray holds: 1 to { $most }.
refused-try-trays-begun = No tray can change any more: each is started, assigned or marked. Try it when you open the next run.
refused-try-per-cent = Enter its new time in per cent: { $least } to { $most }. 80 is a fifth less.
refused-try-no-such-time = That operation has no such time. Choose another part.
refused-try-order = These two cannot swap: one is started, has a wait after it, has a finish, starts the texts, or cuts the boards.
refused-try-busy = Too much is being worked out right now. Wait a minute, then ask again.
refused-try-failed = That failed. Ask again; if it fails again, try a smaller change.
refused-try-the-same = It is like that already. Try another number.
refused-try-fits-nowhere = With that change, some work fits no plan, so it is not kept. Try a smaller change.
refused-file-change-wrong = { $number ->
    [0] The file’s changes to try are not a list of at most a hundred.
   *[other] Change to try { $number } in the file is not one: it needs 'id', 'at', 'person', 'change' and 'answer'.
  }
refused-try-kept-many = { $most } changes to try are kept already. Remove one on the run’s Review first.
