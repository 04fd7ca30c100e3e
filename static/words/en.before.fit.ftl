# Inserts and magnets in their holes, and a board that moves with moisture: what they are asked by, and what is said of them
# (runboard/words/before/fit.py and movement.py).

before-kind-fit = An insert or magnet
before-about-fit = Hole size by fit, its depth, and whether the wood around it is thick enough.

ask-seat-insert = Insert or magnet
ask-seat-insert-nothing = none of the shop's: sizes below
ask-seat-insert-hint = Sizes you enter below win over its own.
ask-seat-what = What it is
ask-seat-what-hint = For sizes entered below only.
ask-seat-what-magnet = magnet or smooth part
ask-seat-what-insert = threaded insert
ask-seat-diameter-hint = Outside, measured: makers round their sizes.
ask-seat-length = Its depth
ask-seat-hole = Maker’s hole
ask-seat-hole-hint = It wins over the fit. Empty if the maker gives none.
ask-seat-depth = Maker’s depth
ask-seat-depth-hint = Empty if the maker gives none.
ask-seat-fit-press = press: it stays by itself
ask-seat-fit-snug = snug: it goes in by hand
ask-seat-fit-loose = loose: it drops in
ask-seat-glue-none = no glue
ask-seat-glue-thin = thin glue
ask-seat-glue-thick = thick glue, epoxy
ask-seat-sunk = Face below the surface
ask-seat-sunk-hint = 0: flush.
ask-seat-thickness = Wood thickness
ask-seat-thickness-hint = Where the part sits.
ask-seat-margin = Wood to keep underneath
ask-seat-margin-hint = 3 mm or 1/8 in is common practice, no source.
ask-seat-edge = To the nearest edge
ask-seat-edge-hint = From the hole’s middle. Empty if far away.
ask-seat-wall = Wood to keep beside it
ask-seat-wall-hint = 3 mm or 1/8 in is common practice, no source.

refused-insert-size-needed = Choose an insert or magnet, or enter its diameter and depth.
refused-insert-hole-too-wide = A { $hole } hole is no narrower than the insert, { $diameter }: its thread would hold nothing. Enter the maker’s hole.

before-fit-fits = Hole { $hole }, { $depth } deep: { $beneath } left underneath.
before-fit-thin = Hole { $hole }, { $depth } deep: only { $beneath } left underneath, and you want { $margin }.
before-fit-out = { $depth } deep comes out at the back: the wood is { $thickness }.
before-fit-hole = { $by ->
    [maker] The hole is the maker’s, or the shop’s own.
    [insert] The maker’s hole is missing: this is 90 % of its outside, common practice, no source.
   *[rule] { $clearance } { $more ->
        [yes] wider
       *[no] narrower
    } than the part, common practice, no source.
  }
before-fit-drill = Drill: { $drill }.
before-fit-drills = { $fit ->
    [thread] No drill is exactly that: { $drill } is the next one down, { $next } the next one up. The smaller holds better in softwood, the larger won’t split hardwood. A router can cut the exact width.
   *[other] { $drill } is the next drill down: { $fit ->
        [tight] too tight for it
        [press] a press fit
        [snug] a snug fit
       *[loose] a loose fit
    }. The next one up, { $next }: { $sits ->
        [tight] too tight as well
        [press] a press fit
        [snug] a snug fit
        [loose] a loose fit
       *[slack] too wide
    }. A router can cut the exact width.
  }
before-fit-depth = { $by ->
    [maker] The depth is the maker’s, or the shop’s own.
   *[rule] { $more } deeper than the part, for { $what ->
        [magnet] glue and dust.
       *[insert] the bolt's end and dust.
    }
  }
before-fit-beside = { $beside } left between hole and edge.
before-fit-source = Figures: { $source }
before-fit-doubt-scrap = Try it in scrap of the same wood: drills cut wider or narrower than their name.
before-fit-caution-wall = Only { $beside } left beside the hole, and you want { $wall }: it may break out.
before-fit-caution-edge = The hole comes out at the edge.
before-fit-doubt-press = Without glue, a pressed part may come loose when the wood dries. A drop of glue is safer.
before-fit-caution-slack = The hole is { $more } wider than the part: it would sit loose.
before-fit-caution-magnets = Glue small magnets in: they must never come loose. A child who swallows two can die.
before-fit-caution-pole = Mark which side faces out before you glue.

# Beside the drawing, where there is room for some twenty letters.

before-fit-drawing-hole = hole { $length } deep
before-fit-drawing-margin = margin { $length }
before-fit-drawing-beneath = { $length } beneath

before-keep-hole = Keep this hole with { $part }
before-kept-hole = Hole saved with { $part }.

before-kind-movement = Wood that moves
before-about-movement = How much a board swells or shrinks with moisture: for slots, frames, lids, magnets near an edge.

ask-swell-wood = Wood
ask-swell-wood-hint = For example ash, white oak.
ask-swell-width = Width across the grain
ask-swell-width-hint = Wood moves across the grain, hardly along it.
ask-swell-sawn = Board cut
ask-swell-sawn-flat = flat-sawn, or not known
ask-swell-sawn-quarter = quarter-sawn: rings upright
ask-swell-before = Moisture when made, %
ask-swell-before-hint = From a meter. 8 is usual in a heated room.
ask-swell-after = Moisture later, %
ask-swell-after-hint = 12 is usual under a roof without heating.
ask-swell-humidity-before = Or air humidity when made, %
ask-swell-humidity-before-hint = It wins over the moisture above: wood follows the air within weeks.
ask-swell-humidity-after = Or air humidity later, %
ask-swell-celsius = Air temperature, °C
ask-swell-celsius-hint = 20 °C is 68 °F. It matters little.
ask-swell-coefficient = Coefficient
ask-swell-coefficient-hint = For a wood not in the Wood Handbook: share of the width per 1 % moisture, such as 0.0027.
ask-swell-room = Play
ask-swell-room-hint = In its slot or frame, in all. Empty if nothing holds it.

refused-wood-unknown = { $wood ->
    [none] Enter the wood, or its coefficient.
   *[other] { $wood } is not known here. Enter its coefficient, or the wood it is most like.
  }
refused-moisture-needed = Enter the moisture or air humidity, for when it is made and for later.

before-movement-wider = { $wood }, { $width } wide, from { $before } to { $after } % moisture: { $by } wider.
before-movement-narrower = { $wood }, { $width } wide, from { $before } to { $after } % moisture: { $by } narrower.
before-movement-still = { $wood }, { $width } wide, from { $before } to { $after } % moisture: no change in width.
before-movement-a-board = The board
before-movement-room = { $room } of play is enough.
before-movement-jams = { $room } of play is { $lacks } too little: it would jam, or split its frame.
before-movement-gap = The gap grows by { $by }: it may show, or rattle.
before-movement-air = Air at { $humidity } % and { $celsius } °C brings wood to { $moisture } % moisture within weeks.
before-movement-fix = Glue or screw only the middle, so both sides can move.
before-movement-source = Coefficient { $coefficient } per 1 % moisture{ $wood ->
    [none] , as entered.
   *[other] : { $wood }, { $source }.
  }
before-movement-doubt-range = The coefficient holds from 6 to 14 % moisture; beyond that it is rougher.
before-movement-doubt-air = The equation's table ends at 5 and 95 % humidity.
before-movement-doubt-like = Figures for { $wood }: another wood of that name is close, not the same.
before-movement-doubt-sawn = Flat-sawn moves most, so this is the careful figure if you don’t know.
