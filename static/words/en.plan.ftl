# When it will be done, and what holds it. Of these Now says only what no plan can hold, and fetches the file for it.

plan-done = Done about { $at }{ $count ->
    [0] {""}
   *[other] {" "}({ $count } more { $unit ->
        [evening] { $count ->
            [one] evening
           *[other] evenings
          }
       *[day] { $count ->
            [one] working day
           *[other] working days
          }
      }, { $who })
  }
plan-done-already = All done.
plan-part = This is what can be planned; the rest waits:
plan-nothing-fits = Nothing can be planned yet.
plan-older = Made { $at }; updating with the latest entries.
plan-too-much = Too much is open to plan at once. Finish or end a run, or put more pieces on each tray and load.
plan-search-memory = The search for a better plan ran out of memory, so this plan stays. Finish or end a run, or look further again.
plan-not-yet = Working it out …
plan-finish-unclear = { $step }: which finish? Until you say, treat its rags as self-igniting and its fumes as solvent.
plan-wait-short = { $step }: the route waits { $own }, the finish’s label says { $label }. It waits { $label }.
plan-wait-missing = { $step }: the route has no wait after it, the finish’s label says { $label }. It waits { $label }.
plan-run-keeps-route = { $run } is open and keeps its own route.
plan-run-change-route = Change the route of { $run }

plan-looking = Looking for a plan: the first try found none.
plan-not-found = No plan found yet, though there may be one. The next entry starts a new search. Longer hours or a free station make it easier.
plan-no-place = No plan fits into people’s hours beside what has been started. Lengthen somebody’s hours on the Shop screen, or take off what a station still holds.
plan-range = Probably { $likely }; almost certainly { $range }.
plan-range-means = ‘Probably’: half of the simulated runs end then. ‘Almost certainly’: nine in ten.
plan-range-one = Almost certainly { $range }.
plan-itself = Planned end: { $at }.
plan-range-few = From only { $goes } simulated runs.
plan-range-not-yet = Working out how sure that is …
plan-evening = done by the end of { $day }: { $share }
plan-line-due = on time: { $share }
plan-line = { $text ->
    [0] { $pieces } for { $whom }
   *[other] { $whom ->
        [0] { $pieces } × “{ $text }”
       *[other] { $whom }: { $pieces } × “{ $text }”
      }
  }
plan-late = { $what } will be late: due { $due }, ready { $there } in the best plan so far.
plan-late-surely = No plan has it ready before { $least }.
plan-late-too-few = { $what } will be short: due { $due }, and the plan makes fewer pieces.
plan-hands = { $hands } hands-on work left
plan-sums = { $hands } hands-on, { $walks ->
    [0] no room changes
    [one] { $walks } room change
   *[other] { $walks } room changes
  }.
plan-price = { $windows ->
    [0] { $minutes ->
        [0] finish time unchanged
       *[other] all done { $minutes } min later
      }
    [1] all done one session later
   *[other] all done { $windows } sessions later
  }
plan-price-late = { $pieces } of { $what } late by { $span }{ $more ->
    [yes] {" "}more
   *[other] {""}
  }
plan-price-walks = { $walks } more room { $walks ->
    [one] change
   *[other] changes
  }
plan-hours-person = { $person }: { $presence } in the shop, { $hands } hands-on{ $watching ->
    [no] {""}
   *[other] , { $watching } watching
  }{ $walks ->
    [0] {""}
    [one] , { $walks } room change
   *[other] , { $walks } room changes
  }
plan-calmer = { $walks } room { $walks ->
    [one] change
   *[other] changes
  } in all. With { $fewer } fewer, done { $later } later.

# What most of the longest chain's hours in the shop go to.
plan-holds-hands = Bottleneck: { $person }’s time
plan-holds-station = Bottleneck: { $station }
plan-holds-wait = Bottleneck: the wait after { $step }
plan-holds-service = Bottleneck: { $service }, all in use
plan-holds-room = Bottleneck: the air in { $room }. Dust stays off wet finish there, heat off solvent.

plan-bound = No plan can be done before { $at }: { $why }
plan-rule-hands = { $people ->
    [none] hands-on work alone fills the hours until then.
   *[other] work that only { $people } may do fills the hours until then.
  }
plan-rule-station = { $station } is busy until then, one load after the other.
plan-rule-watched = hands-on work and watching { $station } fill the hours until then.
plan-rule-wait = the work before { $step }, the wait after it and what follows take until then.
plan-rule-hours = one thing after the other, in the hours people are there, takes until then.
plan-rule-evenings = the work does not fit into fewer days.
plan-rule-search = a search tried everything earlier, and nothing earlier is possible.
plan-proved = No plan is done earlier: that is proved.
plan-gap = A better plan could save at most { $minutes } min in the shop.

plan-gap-dues = Up to { $minutes } min in the shop { $lines ->
    [none] is the price of no more lateness. A plan with no more lateness in all is never done earlier: that is proved.
   *[other] is the price of having { $lines } on time. A plan that has them on time is never done earlier: that is proved.
  }
plan-bound-dues = { $lines ->
    [none] With no more lateness in all,
   *[other] With { $lines } on time,
  } no plan can be done before { $at }.

# How fast it goes: one press further down.
plan-pace-needed = One piece is needed every { $takt } to be ready by { $at }. The { $station } makes one every { $each }.
plan-pace-late = Pieces due { $at } are not ready yet. The { $station } makes one every { $each }.
plan-pace-undated = No order line has a due date. The { $station } is the slowest: it makes one every { $each }.
plan-pace-too-slow = That is too slow. More hours, or less work per piece there, would help.
plan-pace-not-enough = That is not enough. More hours, or one more person, would help.
plan-pace-later = The plan has them ready at { $at }, which is later: waits and other work count too.
plan-pace-people = { $watched ->
    [none] Each piece takes { $each } of hands-on work
   *[other] Each piece takes { $each } of hands-on work and watching { $watched }
  }; { $takt } of somebody’s time is there for it.
plan-pace-held-by-station = { $station } sets the pace: time saved anywhere else makes no more pieces an hour.
plan-pace-held-by-people = People’s time sets the pace: a faster machine that nobody stays at makes no more pieces an hour.
plan-pace-balance = At one piece every { $each }, the stations work { $share } % of their time, all together.
plan-pace-serves = { $station }: { $hands } hands-on, then it runs { $machine }. Hands alone would do for { $count ->
    [1] one such machine
   *[other] { $count } such machines
  }. That leaves out who must stay with it or be near, and those rules come first.
plan-pace-in-work = On average { $average } trays are in work. One is done every { $every } and takes { $through } from first step to last, in hours that somebody is there.

# What no plan can hold, by why: the clash, and what to do.
left-out-no-station = { $step }: its station is not in the shop’s book any more. Choose another in the route.
left-out-station-due = { $step }: { $station } was due back by { $until }, and nobody said it is. Say so on Now.
left-out-station-out = { $step }: { $station } is out of order, with no date. Put it back in use, or say until when it is out.
left-out-supply-out = { $step }: { $supply } has run out. Say when it is there again.
left-out-material-forbidden = { $step }: { $material } never goes on the { $station }. Correct the material on its trays, or change the route.
left-out-first-piece-failed = { $step }: stopped because its first piece failed. Decide on Now.
left-out-pieces-held = { $step }: pieces are on hold ({ $why }). Release them, or say until when.
left-out-service-too-small = { $step }: it needs { $wanted } of { $service } at once, and the shop has fewer. Change the step, or how many there are on the Shop screen.
left-out-skill-nobody-has = { $step }: { $skill ->
    [none] it is assigned to somebody who is not in the shop any more. Assign it to somebody else.
   *[other] it needs the skill ‘{ $skill }’, and nobody has it. Give somebody the skill on the Shop screen, or change the step.
  }
left-out-nobody-in-the-book = { $step }: nobody who works here is in the shop’s book. Add them on the Shop screen.
left-out-nobody-has-hours = { $step }: nobody who may do it has hours. Enter their usual hours on the Shop screen, or say on Now how long you have.
left-out-no-window-long-enough = { $step }: it takes { $minutes } without a break, and nobody who may do it has more than { $longest } at a time. Lengthen somebody’s hours, or make the load smaller.
left-out-quiet-too-long = { $step }: { $station } runs { $minutes } without a break, and its quiet hours leave { $longest } at a time. Shorten its quiet hours on the Shop screen, or make the load smaller.
left-out-latest-too-soon = { $step }: it must start within { $longest } of the first piece before it, and that work with its wait takes { $minutes }. Make the load smaller, or allow more time in the route.
left-out-never-together = { $step }: when { $station } may run, nobody who may do it is there long enough. Change its quiet hours, or somebody’s hours, on the Shop screen.
left-out-no-place-left = { $step }: people’s hours have no room left for it, beside what has been started and what waits.
left-out-nothing = { $step } cannot be planned.

# In the table of runboard plan, after who is at a load.
plan-takes-over = { $who } takes over watching at { $at }

# The chart, and the same as a list.
plan-does-setup = { $who }: set up for { $step }, { $trays }
plan-does-loading = { $who }: { $step }, load { $trays }
plan-does-unloading = { $who }: { $step }, unload { $trays }
plan-does-hand = { $who }: { $step }, { $trays }
plan-does-watching = { $who } stays and watches: { $step }, { $trays }
plan-does-taking-over = { $who } takes over watching: { $step }, { $trays }
plan-does-walk = { $who } goes to { $room }
plan-does-wait = { $step } of { $trays }: waits until { $until }
plan-does-held = { $step }, { $trays }: finished, waiting to be unloaded until { $until }
plan-does-runs = { $station } runs: { $step }, { $trays }
plan-sitting = { $day } { $from }–{ $to }
plan-now = now
plan-chart-done = done
plan-chart-after = Show the rest, from { $day } on: { $count ->
    [one] { $count } stretch of work
   *[other] { $count } stretches of work
}
plan-chart-before = Show from the beginning
plan-chart-label = { plan-sitting }: who does what, and what is busy. The list below says the same.
plan-chart-services-label = { plan-sitting }: how much is taken of what is shared
plan-break = { $count ->
    [0] { $span } break
   *[other] { $span } break; { $trays } drying or resting
  }

# A time element of the route, and where its time comes from.
plan-element = { $kind ->
    [setup] setup
    [loading] loading
    [machine] machine time
    [unloading] unloading
   *[hand] by hand
  }{ $kind ->
    [setup] {""}
   *[other] {" "}per { $size ->
        [piece] piece
        [jig] jig
        [board] board
        [tray] tray
       *[run] run
      }
  }
plan-source = { $times ->
    [0] { $source ->
        [said] set by hand
        [program] from the program { $file }
        [engraving] from the drawing { $file }
       *[guess] a guess
    }
    [1] measured once
    [2] measured twice
   *[other] measured { $times } times
  }

# A route, an operation a line.
route-attendance-hands-on = hands-on
route-attendance-watched = stay and watch
route-attendance-none = nothing asked
route-machine = { $span } machine time per { $size ->
    [piece] piece
    [jig] jig ({ $pieces } { $pieces ->
        [one] piece
       *[other] pieces
      })
    [board] board ({ $pieces } { $pieces ->
        [one] piece
       *[other] pieces
      })
    [tray] tray
   *[run] run
  }
route-hand = { $span } by hand per piece
route-use = { $unit ->
    [none] { $supply } ({ $each })
   *[other] { $supply } ({ $each } { $unit })
  }
route-reckoned-program = from the program { $file }
route-reckoned-engraving = from the drawing { $file }
route-loading = loading { $span }
route-unloading = unloading { $span }
route-setup = setup { $span }
route-no-time = no time entered yet
route-wait = then { $why ->
    [dry] drying
    [cure] curing
    [clamp] in clamps
    [cool] cooling
   *[settle] settling
  } { $least }{ $latest ->
    [none] {""}
   *[other] , { $latest } at most
  }

# A day as it is called, and how much of something.
day-yesterday = yesterday
day-today = today
day-tomorrow = tomorrow
share-some = { $some } of { $whole }
share-all = all
share-nearly = more than 999 of 1000
share-hardly = fewer than 1 of 1000
chance-some = { $some } times in { $whole }
chance-all = almost certain
chance-nearly = almost certain
chance-hardly = very unlikely

# What a run would take, before it is opened.
opening-start = Start { $count }: { $wanted } wanted, { $more ->
    [0] no extras
   *[other] { $fewer ->
        [0] no extras
       *[other] { $more } extra
      }
  }
opening-good = { $share } turn out good ({ $source ->
    [guess] a guess
   *[measured] counted on at least { $pieces } pieces
  })
opening-enough = Enough good ones: { $chance }
opening-trays = { $trays ->
    [one] 1 tray
   *[other] { $trays } trays
  }{ $boards ->
    [0] {""}
    [one] , 1 board
   *[other] , { $boards } boards
  }
opening-whole-pieces = Enter a whole number of pieces, 1 or more.
plan-nameless = Enter a name.

# Time elements in the Review; the others are called as they are kept.
element-machine = machine time
element-hand = hand time
element-job = odd job

order-called = { $whom ->
    [0] { $text ->
        [0] Order { $line }
       *[other] “{ $text }”
      }
   *[other] { $text ->
        [0] { $whom }
       *[other] { $whom }: “{ $text }”
      }
  }

plan-chart-key-work = work
plan-chart-key-watch = stays and watches
plan-chart-key-idle = free
plan-chart-key-setup = setting up
plan-chart-key-held = waits to be unloaded
plan-chart-key-walk = a walk
plan-chart-key-wait = pieces dry or rest
plan-chart-key-goes-on = continues later
plan-load-unsaid = Type how many pieces go on at once.
