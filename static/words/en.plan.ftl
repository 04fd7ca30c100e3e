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
plan-done-already = All of it is done.
plan-part = That is what can be planned; the rest waits:
plan-nothing-fits = Nothing of it can be planned yet.
plan-older = Made { $at }; updating with the latest entries.
plan-too-much = More is open than can be planned at once. Finish or end a run, or put more pieces on a tray and on a load.
plan-search-memory = The search for a better plan needed more memory than it may use, so the plan at hand stays. Finish or end a run, or look further once more.
plan-not-yet = Working it out …
plan-finish-unclear = { $step }: which finish is it? Until you say, its rags count as ones that can take fire by themselves, and its air as full of solvent.
plan-wait-short = { $step }: the route waits { $own }, and the finish's label says { $label }. It waits { $label }.
plan-wait-missing = { $step }: the route waits for nothing after it, and the finish's label says { $label }. It waits { $label }.
plan-run-keeps-route = { $run } is open and keeps the route that it had.
plan-run-change-route = Change the route of { $run }

plan-looking = Looking for a plan: none was found at once.
plan-not-found = No plan was found yet, though there may be one. It is looked for again when somebody presses something. Longer hours for somebody, or a station with nothing on it, make one easier to find.
plan-no-place = No plan fits into people’s hours beside what is begun. Lengthen somebody’s hours on the Shop screen, or take off what stands on a station.
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
plan-sums = { $hands } of hands, { $walks ->
    [0] no walk between rooms
    [1] one walk between rooms
   *[other] { $walks } walks between rooms
  }.
plan-price = { $windows ->
    [0] { $minutes ->
        [0] the finish stays as it is
       *[other] all done { $minutes } min later
      }
    [1] all done one session later
   *[other] all done { $windows } sessions later
  }
plan-price-late = { $pieces } of { $what } late by { $span }{ $more ->
    [yes] {" "}more
   *[other] {""}
  }
plan-price-walks = { $walks ->
    [1] one walk more
   *[other] { $walks } walks more
  }
plan-hours-person = { $person }: { $presence } in the shop, { $hands } hands-on{ $watching ->
    [no] {""}
   *[other] , { $watching } watching
  }{ $walks ->
    [0] {""}
    [one] , { $walks } room change
   *[other] , { $walks } room changes
  }
plan-calmer = { $walks } walks in all. With { $fewer ->
    [1] one
   *[other] { $fewer }
  } fewer it would be done { $later } later.

# What most of the longest chain's hours in the shop go to.
plan-holds-hands = Bottleneck: { $person }’s time
plan-holds-station = Bottleneck: { $station }
plan-holds-wait = Bottleneck: the wait after { $step }
plan-holds-service = Bottleneck: { $service }, all in use
plan-holds-room = Bottleneck: the air in { $room }. Dust stays off wet finish there, heat off solvent.

plan-bound = No plan can be done before { $at }: { $why }
plan-rule-hands = { $people ->
    [none] the hands-on work alone fills the hours until then.
   *[other] what only { $people } may do fills the hours until then.
  }
plan-rule-station = { $station } has work until then, one load after the other.
plan-rule-watched = hands, and staying at { $station } while it runs, fill the hours until then.
plan-rule-wait = the work before { $step }, the wait after it and what follows take until then.
plan-rule-hours = one thing after the other, in the hours that people are there, takes until then.
plan-rule-evenings = the work does not fit into fewer days.
plan-rule-search = a search tried everything earlier, and nothing earlier is possible.
plan-proved = No plan is done earlier: that is proved.
plan-gap = A better plan could save at most { $minutes } min in the shop.

plan-gap-dues = Between that and the plan lie { $minutes } min in which somebody is there. So much, or less, is { $lines ->
    [none] the price of what is due being no later than it is: no plan that is no later for it, all together, is done earlier. That is proved.
   *[other] the price of having in time { $lines }: no plan that does is done earlier. That is proved.
  }
plan-bound-dues = { $lines ->
    [none] With what is due no later than it is, all together,
   *[other] With { $lines } on time
  } no plan can be done before { $at }.

# How fast it goes: one press further down.
plan-pace-needed = One piece is needed every { $takt } to be ready { $at }. The { $station } makes one every { $each }.
plan-pace-late = Pieces due { $at } are not ready yet. The { $station } makes one every { $each }.
plan-pace-undated = No order line has a due date. The { $station } is the slowest: it makes one every { $each }.
plan-pace-too-slow = That is too slow. More hours, or less work on each piece there, would change it.
plan-pace-not-enough = That is not enough. More hours, or somebody more, would change it.
plan-pace-later = The plan has them ready { $at }, which is later: waits and other work count too.
plan-pace-people = { $watched ->
    [none] Hands take { $each } for each piece
   *[other] Hands, and staying at { $watched }, take { $each } for each piece
  }; there are { $takt } of somebody’s time for it.
plan-pace-held-by-station = { $station } sets the pace: time saved anywhere else gives no more pieces an hour.
plan-pace-held-by-people = People’s time sets the pace: a faster machine that nobody stays at gives no more pieces an hour.
plan-pace-balance = At a piece every { $each } the stations are at work { $share } % of their time, all together.
plan-pace-serves = { $station }: { $hands } of hands, then it runs { $machine }. Hands alone would do for { $count ->
    [1] one such machine
   *[other] { $count } such machines
  }; that counts no rule about who must stay with it or be near, and those rules come first.
plan-pace-in-work = { $average } trays are begun and not done, on average. One comes off every { $every } and takes { $through } from its first step to its last, in hours that somebody is there.

# What no plan can hold, by why: the clash, and what to do.
left-out-no-station = { $step }: its station is not in the shop’s book any more. Give it another station in the route.
left-out-station-due = { $step }: { $station } was to be back in use by { $until }, and nobody said that it is. Say so on Now.
left-out-station-out = { $step }: { $station } is out of use, and nobody knows until when. Put it back in use, or say until when.
left-out-supply-out = { $step }: { $supply } ran out. Say when it is there again.
left-out-material-forbidden = { $step }: { $material } never goes on the { $station }. Note the right material at its trays, or change the route.
left-out-first-piece-failed = { $step }: it is stopped, since its first piece failed. Decide about it on Now.
left-out-pieces-held = { $step }: pieces are held ({ $why }). Release them, or say until when they wait.
left-out-service-too-small = { $step }: it draws { $wanted } of { $service } at once, and the shop has fewer. Change the step, or the service’s capacity on the Shop screen.
left-out-skill-nobody-has = { $step }: { $skill ->
    [none] it was given to somebody who is not in the shop any more. Give it to somebody else.
   *[other] it asks for the skill ‘{ $skill }’, and nobody has it. Give somebody the skill on the Shop screen, or change the step.
  }
left-out-nobody-in-the-book = { $step }: nobody who works here is in the shop’s book. Write down on the Shop screen who does.
left-out-nobody-has-hours = { $step }: nobody who may do it has hours. Write down on the Shop screen when they usually work, or say on Now how long you have.
left-out-no-window-long-enough = { $step }: it takes { $minutes } without a break, and nobody who may do it has more than { $longest } at a time. Lengthen somebody’s hours, or make the load smaller.
left-out-quiet-too-long = { $step }: { $station } is at it for { $minutes } without a break, and its quiet hours leave { $longest } at a time. Shorten its quiet hours on the Shop screen, or make the load smaller.
left-out-latest-too-soon = { $step }: it must begin no later than { $longest } after the first piece of what is before it, and that work with its wait takes { $minutes }. Make the load smaller, or let the wait end later in the route.
left-out-never-together = { $step }: while { $station } may run, nobody who may do it is there for as long as it takes. Change its quiet hours, or somebody’s hours, on the Shop screen.
left-out-no-place-left = { $step }: it has no place left in people’s hours, beside what is begun and what waits.
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
plan-does-walk = { $who } goes to: { $room }
plan-does-wait = { $step } of { $trays }: waits until { $until }
plan-does-held = { $step }, { $trays }: waits to be unloaded until { $until }
plan-does-runs = { $station } runs: { $step }, { $trays }
plan-sitting = { $day } { $from } to { $to }
plan-now = now
plan-chart-after = The rest, from { $day } on: { $count ->
    [one] one stretch of work
   *[other] { $count } stretches of work
}
plan-chart-before = From the beginning
plan-chart-label = { plan-sitting }: who does what, and what is busy. The same stands below as a list.
plan-chart-key-work = work
plan-chart-key-watch = stays and watches
plan-chart-key-idle = free
plan-chart-key-setup = setting up
plan-chart-key-held = waits to be unloaded
plan-chart-key-walk = a walk
plan-chart-key-wait = pieces dry or rest
plan-chart-key-goes-on = goes on beyond this stretch
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
   *[other] , { $size ->
        [piece] a piece
        [jig] a jig-full
        [board] a board
        [tray] a tray
       *[run] the whole run
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
route-attendance-hands-on = hands on
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
route-no-time = no time said yet
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
    [0] none extra
   *[other] { $fewer ->
        [0] none extra
       *[other] { $more } extra
      }
  }
opening-good = { $share } come good ({ $source ->
    [guess] a guess
   *[measured] counted on { $pieces } pieces or more
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
opening-whole-pieces = Write a whole number of pieces, 1 or more.
plan-nameless = Write something here.

# Time elements in the Review; the others are called as they are kept.
element-machine = machine time
element-hand = hand time
element-job = small job

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
