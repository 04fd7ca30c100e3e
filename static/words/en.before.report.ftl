# What is said of a machine's program.

before-kind-program = A program’s time
before-about-program = How long it cuts, travels and stops, tool by tool, what it reaches, and every line that is doubtful.

program-head = About { $total } per load, { $does ->
    [travel] all of it travel
   *[other] { $span } of it { $does ->
        [drilling] drilling
       *[cutting] cutting
      }
  }
program-head-without-feed = { $total } per load, plus cuts without a feed, which nobody can time
program-head-nothing = Nothing in it takes time
program-caution-more = { $doubt } { $more ->
    [one] The same once more, listed below.
   *[other] The same { $more } times more, listed below.
  }
program-not-taken = This time is not fit to plan with, so it can’t go into a route yet. Fix the program first.
program-change-back = It ends with a different cutter than it starts with. From the second load on, { $tool ->
    [0] the first one
   *[other] T{ $tool }
  } goes in again first. Those { $change } are included.
program-factor = { $station } takes { $factor } times the estimate, measured { $times ->
    [1] once
    [2] twice
   *[other] { $times } times
  }. Estimate: { $reckoned }.
program-air = { $percent } % of its moving time is in the air.
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
program-usual-motion = No station is chosen, so it is timed like a usual small router.
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
program-column-in-all = Total
program-by-tool = By cutter
program-extents = How far it reaches
program-tool = { $number ->
    [0] not named
   *[other] T{ $number }
  }
program-way = { $units ->
    [in] { $number } ft
   *[mm] { $number } m
  }

# What is found of a run's programs when it is looked through.
before-found-program-fine = { $step }: its time is from the program { $program } as last checked.
before-found-program-no-time = { $step }: nobody has checked its program { $program } yet, so its time is a guess. Drop the file on the product's page.
before-found-program-measured = { $step }: nobody checked the program { $program } here for reach and cutters. Its time is known: measured { $times ->
    [one] once
   *[other] { $times } times
  }.
before-found-program-changed = { $step }: the program { $program } changed on { $day }, after its time was taken. Check it and take its time again.
before-found-program-too-far = { $step }: the program { $program } goes { $reach } along { $axis }, but the machine reaches { $travel }.

# Another order of visits: advice alone, the program stays as it is.
program-visits = It works at { $places } places, with { $visits } visits. { $proved ->
    [yes] The best order
   *[no] A better order
  } would save { $saving } of travel per load{ $loads ->
    [one] .
   *[other] , { $in_all } in { $loads } loads.
  }{ $proved ->
    [yes] {""}
   *[no] {" "}No order saves more than { $most }.
  }
program-visits-fine = It works at { $places } places in a good order: no other saves more than { $most } per load.
program-visits-best = It works at { $places } places, already in the best order.
program-order-by-place-advice = To get there, sort the work by place in your toolpath program. With each cutter, do all of one place, to full depth, then the next, in the order numbered in the drawing. Small parts can come loose sooner that way: check tabs and clamping again.
program-order-round-advice = To get there, sort the places in your toolpath program. With each cutter, go from one place to the next beside it, in the order numbered in the drawing.
program-visits-too-many = It works at { $places } places, with { $visits } visits: too many to look for a better order.
program-orders = Travel between places
program-column-order = Order
program-column-a-load = Per load
program-column-a-run = All loads
program-order-now = As the program has it
program-order-by-place = One visit per place, with each cutter
program-order-ordered = And in a better order
program-order-bound = No order beats
