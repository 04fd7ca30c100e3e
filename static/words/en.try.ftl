# Trying a change before making it. The server alone says these.

try-change-hours = Hours added: { $person }, { $day }, { $from } to { $to }
try-change-person = One more person, with the hours of { $like }, { $day ->
    [now] from now on
   *[other] from { $day } on
  }, { $skills ->
    [none] who can do what asks for no skill
   *[other] who also can: { $skills }
  }
try-change-capacity = { $service }: { $capacity } at once
try-change-trays = { $pieces ->
    [1] One piece a tray
   *[other] { $pieces } pieces a tray
  }, in the trays that are not begun
try-change-times = { $operation }: { $kind ->
    [setup] setup takes
    [loading] loading takes
    [machine] the machine takes
    [unloading] unloading takes
    [hand] the work by hand takes
   *[all] everything takes
  } { $percent } % of its time
try-change-order = { $then } before { $first }
try-change-helper = A helper at { $operation } alone for { $span }, with the hours of { $like }, { $day ->
    [now] from now on
   *[other] from { $day } on
  }
try-change-load = { $step }: up to { $pieces ->
    [1] one piece
   *[other] { $pieces } pieces
  } on a load
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
try-change-wait = { $operation }: { $span } of rest after it
try-change-visit = { $then } right after { $first }, in one visit
try-change-several = Together: { $changes }

try-moves = The finish { $finish ->
    [same] does not move
    [less] moves { $by } earlier
   *[more] moves { $by } later
  }; hands-on work { $hands ->
    [same] stays as it is.
    [less] is { $hours } less.
   *[more] is { $hours } more.
  }
try-in-time = { $lines ->
    [1] The one order line that is due is { $way ->
        [more] in time; as things are it is late.
        [less] late; as things are it is in time.
       *[same] { $then ->
            [0] late with the change too.
           *[other] in time both ways.
          }
      }
   *[other] Of { $lines } order lines that are due { $then } { $then ->
        [1] is
       *[other] are
      } in time{ $way ->
        [same] , with the change and as things are.
       *[other] ; as things are { $now }.
      }
  }
try-presence = { $way ->
    [same] Time in the shop stays as it is
   *[other] { $by } { $way } in the shop
  }{ $people ->
    [1] {""}
   *[other] , everybody together
  }{ $walking ->
    [same] .
   *[other] , with { $walks ->
        [1] one walk
       *[other] { $walks } walks
      } { $walking ->
        [less] fewer.
       *[more] more.
      }
  }
try-why-slack = { $operation } has slack: the chain of work that ends last does not go through it.
try-why-lost = { $operation } is in the chain of work that ends last, but before { $step }, and that waits for the next hours, { $at }. What is won at { $operation } is lost in that wait.
try-holds-hours = Bottleneck: { $step } waits for the next hours, { $at }, and what follows takes until the end.
try-sure = No plan with the change is done earlier: that is proved.
try-not-sure = That no plan with the change is done earlier is not proved: both were made at once, and a longer search might find one.
try-worse = So the change makes it worse: no plan with it is done as early.
try-worse-found = So the plan found with the change is worse. Neither is proved the best: both were made at once, and a longer search might find a better one.
try-worse-hands = So the change makes it worse: it asks more of hands and wins nothing.
try-more-hands = It is done earlier, and asks more of hands.
try-let-in = With the change, this is done too, which fits into no plan as things are: { $steps }. So the two plans do not hold the same work.
try-only-then = As things are, no plan fits. With the change one does, done { $at }.
try-part = Some of the run fits into no plan, with the change or without, and is left out of both. The Plan page says what.
try-nothing-fits = Nothing of this run can be planned as things are, nor with the change. The Plan page says why.
try-done = Nothing is left to do in this run, so nothing can move.
try-left-out = With the change, some of the work fits into no plan:
try-no-plan-now = Nothing can be compared: as things are no plan fits into people’s hours. Lengthen somebody’s hours on the Shop screen, or take off what stands on a station.
try-no-plan-then = With the change no plan fits into people’s hours and into what is shared, beside what is begun. Try something else.

try-row-finish = Done
try-row-likely = As likely as not
try-row-late = Nineteen times in twenty by
try-row-hands = Hands on
try-row-in-time = Order lines in time
try-row-in-time-of = { $some } of { $lines }
try-row-presence = In the shop
try-row-walks = Walks

refused-try-no-operation = The route has no such operation any more. Choose one of those that it has.
refused-try-good-rate = Write how many of a hundred come good: from 1 to 100.
refused-try-minutes = Write for how many minutes the helper comes: from 1 to { $most }.
refused-try-no-wait = Only a wait whose finish has its label’s times on the Shop screen can be another.
refused-try-label = The label asks for { $least } minutes at least.
refused-try-load-size = Only what goes on by the jig, the tray or the run can be another load: a board is what it is, and a piece is one.
refused-try-load-trays = So many pieces are more than a tray, and here each tray has texts of its own. Try larger trays.
refused-try-load-hands = Hands take one tray after another here, however many are ready. Try larger trays.
refused-try-visit = These two cannot be one visit: a wait or a finish lies between them, one of them is begun, or the second needs a machine, a station or a skill of its own.
refused-change-not-route = That is no change of a route, so it cannot be written into one.
refused-change-wrong = That is no change that the shop can read: '{ $where }' is wrong.
refused-try-unknown = Choose one of the changes on this page.
refused-try-run-over = That run is not open, so nothing in it can be tried. Go back to the plan.
refused-try-number = Write a whole number, such as 5.
refused-try-day = Write a day, such as 2026-06-12, or leave it empty for now.
refused-try-nobody = Choose somebody who is in the shop.
refused-try-hours = Write a day and hours that are still to come, such as 2026-06-12, 9:00 to 13:00: longer than getting ready and tidying up take, and within the next four months.
refused-try-hours-usual = { $person } is in the shop then as it is, so nothing would change. Write other hours.
refused-try-hours-of-nobody = Choose somebody whose usual hours stand on the Shop screen: the one more keeps the same.
refused-try-service-unknown = Choose something that stations share, such as dust extraction.
refused-try-capacity = Write how many at once: from 1 to { $most }.
refused-try-pieces = Write how many pieces a tray holds: from 1 to { $most }.
refused-try-trays-begun = No tray can be changed any more: something was begun, given or marked on each. Try it when the next run is opened.
refused-try-per-cent = Write how much of its time it takes, in per cent: from { $least } to { $most }. 80 is a fifth less.
refused-try-no-such-time = That operation has no such time. Choose another part of it.
refused-try-order = These two cannot change places: one of them is begun, is followed by a wait, has a finish, begins with texts, or cuts the boards.
refused-try-busy = Too much is being reckoned just now. Wait a minute, then ask again.
refused-try-failed = It could not be reckoned. Ask again; if it fails again, try less of it.
refused-try-the-same = That is how it is now, so nothing would change. Try another number.
refused-try-fits-nowhere = With that change some of the work fits into no plan, so it is not kept. Try less of it.
refused-file-change-wrong = { $number ->
    [0] The changes to try in the file are no list of at most a hundred.
   *[other] Change to try { $number } of the file is none: 'id', 'at', 'person', 'change' and 'answer' are wanted.
  }
refused-try-kept-many = { $most } changes to try are kept already. Take one off the run’s Review first.
