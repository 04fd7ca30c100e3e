# What is said of a machine's program.

before-kind-program = A program’s time
before-about-program = How long it cuts, travels and stops, tool by tool, what it reaches, and every line that is doubtful.

program-head = About { $total } a load, { $does ->
    [travel] all of it on the way
   *[other] of which { $span } { $does ->
        [drilling] drilling
       *[cutting] cutting
      }
  }
program-head-without-feed = { $total } a load, and what it cuts without a feed on top, which nobody can know
program-head-nothing = Nothing in it takes time
program-caution-more = { $doubt } { $more ->
    [one] The same once more, named below.
   *[other] The same { $more } times more, named below.
  }
program-not-taken = This time isn't one to plan with, so it can't be taken into a route yet. Mend the program first.
program-change-back = It ends with another cutter than it begins with. From the second load on { $tool ->
    [0] the first one
   *[other] T{ $tool }
  } goes in again first; those { $change } are counted in.
program-factor = { $station } takes { $factor } times what is reckoned, measured { $times ->
    [1] once
    [2] twice
   *[other] { $times } times
  }. Reckoned: { $reckoned }.
program-air = { $percent } % of the time that it moves, it is in the air.
program-stops = It stops for a person in { $count ->
    [one] line { $lines }
   *[other] { $more ->
        [0] lines { $lines }
       *[other] lines { $lines } and { $more } more
      }
  }.
program-read = { $lines ->
    [one] 1 line
   *[other] { $lines } lines
  } read, written in { $units ->
    [in] inches
   *[mm] millimetres
  }.
program-usual-motion = No station is named, so it is timed as a usual small router moves.
program-part-cutting = Cutting
program-part-rapid = Travel
program-part-plunge = Plunging
program-part-dwell = Waiting
program-part-tool-change = Changing cutters
program-column-part = What
program-column-time = Time
program-column-length = Length
program-column-tool = Cutter
program-column-cutting = Cutting
program-column-lowest = Deepest
program-column-axis = Axis
program-column-from = From
program-column-to = To
program-column-in-all = In all
program-by-tool = By cutter
program-extents = How far it goes
program-tool = { $number ->
    [0] not named
   *[other] T{ $number }
  }
program-way = { $units ->
    [in] { $number } ft
   *[mm] { $number } m
  }

# What is found of a run's programs when it is looked through.
before-found-program-fine = { $step }: its time is from the program { $program } as it was looked at last.
before-found-program-no-time = { $step }: nobody has looked at its program { $program } yet, so its time is a guess. Drop the file on the product's page.
before-found-program-measured = { $step }: nobody looked at the program { $program } here for reach and cutters. Its time is known: measured { $times ->
    [one] once
   *[other] { $times } times
  }.
before-found-program-changed = { $step }: the program { $program } is another since { $day } than the one its time was taken from. Look at it and take its time again.
before-found-program-too-far = { $step }: the program { $program } goes { $reach } along { $axis }, and the machine reaches { $travel }.

# Another order of visits: advice alone, the program stays as it is.
program-visits = It works at { $places } places and comes to them { $visits } times. { $proved ->
    [yes] The best order
   *[no] A better order
  } would save { $saving } of travel a load{ $loads ->
    [one] .
   *[other] , { $in_all } in { $loads } loads.
  }{ $proved ->
    [yes] {""}
   *[no] {" "}No order saves more than { $most }.
  }
program-visits-fine = It works at { $places } places in a good order: no other saves more than { $most } a load.
program-visits-best = It works at { $places } places, and its order is already the best.
program-order-by-place-advice = To get there, sort the work by place in the program that makes your toolpaths: with each cutter, first all that it does at one place, down to the full depth, then all at the next one beside it, in the order that is numbered in the drawing. Small parts can come loose sooner that way, so look at tabs and clamping again.
program-order-round-advice = To get there, sort the places in the program that makes your toolpaths: with each cutter from one place to the next one beside it, in the order that is numbered in the drawing.
program-visits-too-many = It works at { $places } places and comes to them { $visits } times: too many to look for a better order.
program-orders = Travel between places
program-column-order = Order
program-column-a-load = A load
program-column-a-run = All loads
program-order-now = As the program has it
program-order-by-place = One visit a place, with each cutter
program-order-ordered = In a better order too
program-order-bound = No order beats
