# Chip load, feed and speed: what they are asked by, and what is said of them (runboard/words/before/feed.py).

before-kind-feed = Feed and speed
before-about-feed = Chip load, feed or turns from the other values, beside what worked in this shop.

ask-feed-cutter-nothing = none of the shop's: sizes below
ask-feed-cutter-hint = Sizes you enter below win over its own.
ask-feed-flutes-hint = How many edges.
ask-feed-rpm = Turns per minute
ask-feed-rpm-hint = For example 18000. Of turns, flutes, feed and chip load, leave empty the one you want.
ask-feed-surface = Or edge speed per minute
ask-feed-surface-hint = Instead of turns: 350 m, 1150 ft.
ask-feed-feed = Feed per minute
ask-feed-feed-hint = How far it moves in a minute: 1800 mm, 70 in.
ask-feed-chip = Chip load
ask-feed-chip-hint = What each edge cuts off: 0.1 mm, 0.005 in.
ask-feed-depth = Depth per pass
ask-feed-wood-hint = For example ash, white oak.
ask-feed-station-nothing = any
ask-feed-note = Notes
ask-feed-note-hint = Clean, burnt, tore out at the end grain. Saved with the values.
ask-feed-torn = Pieces that tore out
ask-feed-torn-of = Out of
ask-feed-torn-in = Where
ask-feed-torn-in-hint = Run and step, or the spot on the piece.
ask-good-feed-torn = Pieces that tore out
ask-good-feed-torn-of = Out of
ask-feed-product = Keep it with
ask-feed-product-nothing = no product
ask-feed-step-hint = The step's key, such as cut.

refused-feed-too-little-said = Enter three of these: turns per minute, flutes, feed, chip load. The fourth follows.

before-feed-chip = { $chip } per tooth.
before-feed-feed = Feed { $feed } per minute.
before-feed-kept = The shop's good value for { $wood }: feed { $feed } per minute at { $rpm } turns, { $chip } per tooth.
before-feed-seen = Seen: { $note }
before-feed-three = For other values, enter three of turns, flutes, feed and chip load.
before-feed-rpm = { $rpm } turns per minute.
before-feed-flutes = { $flutes } flutes{ $whole ->
    [yes] .
   *[no] : no cutter has that. Change another value.
  }
before-feed-all = { $rpm } turns per minute, { $flutes } { $flutes ->
    [1] flute
   *[other] flutes
  }, { $feed } per minute: { $chip } per tooth.
before-feed-speed = Its edge moves through the wood at { $speed } per minute.
before-feed-metres = { $number } m
before-feed-feet = { $number } ft
before-feed-inches = { $number } in
before-feed-good = These are good values in this shop for { $wood }.{ $note ->
    [none] { "" }
   *[other] { " " }Seen: { $note }
  }
before-feed-nearest = The nearest good value { $other ->
    [yes] is for { $wood }
   *[no] for { $wood }
  }: { $rpm } turns and { $feed } per minute, { $chip } per tooth.{ $note ->
    [none] { "" }
   *[other] { " " }Seen: { $note }
  }
before-feed-none = The shop has no good value for this cutter yet. Try it in scrap, then save it here.
before-feed-any-wood = any wood
before-feed-tables = Makers' chip load tables differ up to tenfold, so none is used here. What this shop saw counts.

before-feed-doubt-odds = The chip load you entered, { $said }, does not match the other values.
before-feed-caution-spindle = The spindle of { $station } turns at most { $most } per minute.
before-feed-caution-torn = { $where ->
    [none] { "" }
   *[other] { $where }:{ " " }
  }{ $of ->
    [0] { $torn ->
        [one] one piece
       *[other] { $torn } pieces
    }
   *[other] { $torn } of { $of }
  } tore out with these values.
before-feed-caution-tore = Values like these tore out in { $wood } before{ $torn ->
    [0] .
    [one] : { $of ->
        [0] one piece.
       *[other] 1 of { $of } pieces.
    }
   *[other] : { $of ->
        [0] { $torn } pieces.
       *[other] { $torn } of { $of } pieces.
    }
  }{ $note ->
    [none] { "" }
   *[other] { " " }Seen: { $note }
  }
before-feed-caution-cutter = Never go faster than the mark on the cutter, its maker, or the machine's manual allows.

before-keep-good = Keep as good for { $wood ->
    [any] any wood
   *[other] { $wood }
  } with the { $cutter }
before-kept-good = Saved with the shop's good values.
before-keep-torn = Mark as torn out
before-kept-torn = Saved: it tore out with these. Anyone who asks for them again is warned.
before-keep-feed-step = Use cutter, turns and feed at { $step } of { $product }
before-kept-feed-step = { $step } of { $product } now uses these.

before-found-feed-spindle = { $step }: { $rpm } turns per minute, but the spindle of { $station } does { $most } at most.
before-found-feed-torn = { $step }: { $pieces ->
    [one] one piece
   *[other] { $pieces }
  } tore out at { $at } in run { $run } with these values, { $rpm } turns and { $feed } per minute.
before-found-feed-tore = { $step }: { $rpm } turns and { $feed } per minute tore out before with { $cutter }{ $torn ->
    [0] .
   *[other] , { $of ->
        [0] { $torn ->
            [one] one piece.
           *[other] { $torn } pieces.
        }
       *[other] { $torn } of { $of } pieces.
    }
  }{ $note ->
    [none] { "" }
   *[other] { " " }Seen: { $note }
  }
before-found-feed-good = { $step }: { $rpm } turns and { $feed } per minute are good values in this shop{ $chip ->
    [none] .
   *[other] , { $chip } per tooth.
  }
before-found-feed-new = { $step }: { $rpm } turns and { $feed } per minute{ $chip ->
    [none] . Enter how many flutes { $cutter } has.
   *[other] , { $chip } per tooth. The shop has not kept them as good yet.
  }
