# Chip load, feed and speed: what they are asked by, and what is said of them (runboard/words/before/feed.py).

before-kind-feed = Feed and speed
before-about-feed = Chip load, feed or turns, one from the others, beside what the shop itself found good.

ask-feed-cutter-nothing = none of the shop's: sizes below
ask-feed-cutter-hint = What you type below wins over its own sizes.
ask-feed-flutes-hint = How many edges it has.
ask-feed-rpm = Turns a minute
ask-feed-rpm-hint = As in 18000. Leave empty the one of the four that you look for: turns, flutes, feed or chip load.
ask-feed-surface = Or speed of its edge, a minute
ask-feed-surface-hint = In place of the turns: 350 m, 1150 ft.
ask-feed-feed = Feed, a minute
ask-feed-feed-hint = How far it goes in a minute: 1800 mm, 70 in.
ask-feed-chip = Chip load
ask-feed-chip-hint = What each edge takes: 0.1 mm, 0.005 in.
ask-feed-depth = Depth of a pass
ask-feed-wood-hint = As in ash, white oak.
ask-feed-station-nothing = any
ask-feed-note = What was seen
ask-feed-note-hint = Clean, burnt, tore out at the end grain. It is kept with the values.
ask-feed-torn = Pieces that tore out with these
ask-feed-torn-of = Of how many
ask-feed-torn-in = Where
ask-feed-torn-in-hint = Run and step, or at which place of the piece.
ask-good-feed-torn = Pieces that tore out
ask-good-feed-torn-of = Of how many
ask-feed-product = Keep it with
ask-feed-product-nothing = no product
ask-feed-step-hint = The key of its step, such as cut.

refused-feed-too-little-said = Write three of these: turns a minute, flutes, feed, chip load. The fourth follows.

before-feed-chip = { $chip } a tooth.
before-feed-feed = Feed it { $feed } a minute.
before-feed-kept = The shop's own good value for { $wood }: feed it { $feed } a minute at { $rpm } turns, { $chip } a tooth.
before-feed-seen = Seen: { $note }
before-feed-three = To reckon with other values, write three of turns, flutes, feed and chip load.
before-feed-rpm = { $rpm } turns a minute.
before-feed-flutes = { $flutes } flutes{ $whole ->
    [yes] .
   *[no] : no cutter has that. Change another of the values.
  }
before-feed-all = { $rpm } turns a minute, { $flutes } { $flutes ->
    [1] flute
   *[other] flutes
  }, { $feed } a minute: { $chip } a tooth.
before-feed-speed = Its edge goes through the wood at { $speed } a minute.
before-feed-metres = { $number } m
before-feed-feet = { $number } ft
before-feed-inches = { $number } in
before-feed-good = These are good values of the shop's for { $wood }.{ $note ->
    [none] { "" }
   *[other] { " " }Seen: { $note }
  }
before-feed-nearest = The nearest good value { $other ->
    [yes] is one for { $wood }
   *[no] for { $wood }
  }: { $rpm } turns and { $feed } a minute, { $chip } a tooth.{ $note ->
    [none] { "" }
   *[other] { " " }Seen: { $note }
  }
before-feed-none = The shop has no good value for this cutter yet. Try it in scrap, then keep it here.
before-feed-any-wood = any wood
before-feed-tables = Makers' tables of chip loads disagree up to tenfold, so none is taken for true here: what the shop saw counts.

before-feed-doubt-odds = The chip load that was said, { $said }, does not follow from the others.
before-feed-caution-spindle = The spindle of { $station } turns { $most } a minute at most.
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
before-feed-caution-cutter = Never faster than what is written on the cutter, or than its maker and the machine's manual say.

before-keep-good = Keep as a good value for { $wood ->
    [any] any wood
   *[other] { $wood }
  } with the { $cutter }
before-kept-good = Kept among the shop's good values.
before-keep-torn = It tore out with these
before-kept-torn = Kept: it tore out with these. Whoever asks for them again is warned.
before-keep-feed-step = Take cutter, turns and feed into { $step } of { $product }
before-kept-feed-step = { $step } of { $product } is cut with these.

before-found-feed-spindle = { $step }: { $rpm } turns a minute, and the spindle of { $station } makes { $most } at most.
before-found-feed-torn = { $step }: { $pieces ->
    [one] one piece
   *[other] { $pieces }
  } tore out at { $at } in run { $run } with these values, { $rpm } turns and { $feed } a minute.
before-found-feed-tore = { $step }: { $rpm } turns and { $feed } a minute tore out before with { $cutter }{ $torn ->
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
before-found-feed-good = { $step }: { $rpm } turns and { $feed } a minute are good values of the shop's{ $chip ->
    [none] .
   *[other] , { $chip } a tooth.
  }
before-found-feed-new = { $step }: { $rpm } turns and { $feed } a minute{ $chip ->
    [none] ; how many flutes { $cutter } has is not written down.
   *[other] , { $chip } a tooth. The shop has not kept them as good yet.
  }
