# Inserts and magnets in their holes, and a board that moves with moisture: what they are asked by, and what is said of them
# (runboard/words/before/fit.py and movement.py).

before-kind-fit = An insert or a magnet
before-about-fit = Its hole by size and fit, how deep, and whether the wood beneath and beside it is thick enough.

ask-seat-insert = Insert or magnet
ask-seat-insert-nothing = none of the shop's: sizes below
ask-seat-insert-hint = What you type below wins over its own sizes.
ask-seat-what = What it is
ask-seat-what-hint = Of sizes typed below: a part of the shop's keeps its own.
ask-seat-what-magnet = magnet, or another smooth part
ask-seat-what-insert = threaded insert
ask-seat-diameter-hint = Outside, measured: makers' sizes are rounded.
ask-seat-length = How deep it is
ask-seat-hole = Its maker's hole
ask-seat-hole-hint = It wins over the fit. Empty where the maker says nothing.
ask-seat-depth = Its maker's depth
ask-seat-depth-hint = Empty where the maker says nothing.
ask-seat-fit-press = press: it stays by itself
ask-seat-fit-snug = snug: it goes in by hand
ask-seat-fit-loose = loose: it drops in
ask-seat-glue-none = no glue
ask-seat-glue-thin = thin glue
ask-seat-glue-thick = thick glue, epoxy
ask-seat-sunk = Face below the surface
ask-seat-sunk-hint = 0 where it is flush.
ask-seat-thickness = The wood is
ask-seat-thickness-hint = How thick it is where the part sits.
ask-seat-margin = Keep this much beneath
ask-seat-margin-hint = 3 mm or 1/8 in is common practice, no source.
ask-seat-edge = To the nearest edge
ask-seat-edge-hint = From the middle of the hole. Empty where it is far away.
ask-seat-wall = Keep this much beside it
ask-seat-wall-hint = 3 mm or 1/8 in is common practice, no source.

refused-insert-size-needed = Choose an insert or a magnet, or write its diameter and how deep it is.
refused-insert-hole-too-wide = A hole of { $hole } is no narrower than the insert, { $diameter }: its thread would hold nothing. Write the hole that its maker asks for.

before-fit-fits = A hole of { $hole }, { $depth } deep: { $beneath } stay beneath it.
before-fit-thin = A hole of { $hole }, { $depth } deep, and only { $beneath } stay beneath it: { $margin } are wanted.
before-fit-out = { $depth } deep comes out at the back: the wood is { $thickness }.
before-fit-hole = { $by ->
    [maker] The hole is the one that its maker asks for, or that the shop keeps.
    [insert] Nobody said its maker's hole: 90 % of its outside, common practice, no source.
   *[rule] { $clearance } { $more ->
        [yes] wider
       *[no] narrower
    } than the part, common practice, no source.
  }
before-fit-drill = Drill: { $drill }.
before-fit-drills = { $fit ->
    [thread] No drill is just that: { $drill } is the next one down, { $next } the next one up. The thinner holds better in softwood, the wider splits no hardwood. A router cuts it as wide as it is told.
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
    }. A router cuts it as wide as it is told.
  }
before-fit-depth = { $by ->
    [maker] The depth is the one that its maker asks for, or that the shop keeps.
   *[rule] Deeper than the part by { $more }, for { $what ->
        [magnet] glue and dust.
       *[insert] the bolt's end and dust.
    }
  }
before-fit-beside = { $beside } stay between the hole and the edge.
before-fit-source = Figures: { $source }
before-fit-doubt-scrap = Try it in scrap of the same wood: drills cut wider or narrower than they are called.
before-fit-caution-wall = { $beside } beside the hole are less than the { $wall } that are wanted: it may break out.
before-fit-caution-edge = The hole comes out at the edge.
before-fit-doubt-press = Pressed without glue, a part may come loose when the wood dries. A drop of glue is safer.
before-fit-caution-slack = The hole is { $more } wider than the part: it would lie loose in it.
before-fit-caution-magnets = Small magnets must never come loose: a child that swallows two is in danger of its life. Glue them in.
before-fit-caution-pole = Mark which side faces out before the glue goes on.

# Beside the drawing, where there is room for some twenty letters.

before-fit-drawing-hole = hole { $length } deep
before-fit-drawing-margin = margin { $length }
before-fit-drawing-beneath = { $length } beneath

before-keep-hole = Keep this hole with { $part }
before-kept-hole = The hole is kept with { $part }.

before-kind-movement = Wood that moves
before-about-movement = How much wider or narrower a board becomes with moisture: for slots, frames, lids, magnets near an edge.

ask-swell-wood = Kind of wood
ask-swell-wood-hint = As in ash, white oak.
ask-swell-width = Across the grain
ask-swell-width-hint = Only across the grain it moves: along the grain hardly at all.
ask-swell-sawn = The board is
ask-swell-sawn-flat = flat-sawn, or nobody knows
ask-swell-sawn-quarter = quarter-sawn: the rings stand upright
ask-swell-before = Moisture when it is made, per cent
ask-swell-before-hint = As a meter says. 8 is usual in a heated room.
ask-swell-after = Moisture later, per cent
ask-swell-after-hint = 12 is usual under a roof without heating.
ask-swell-humidity-before = Or humidity of the air when it is made, per cent
ask-swell-humidity-before-hint = It wins over the moisture above: wood comes to it in some weeks.
ask-swell-humidity-after = Or humidity of the air later, per cent
ask-swell-celsius = Temperature of the air, °C
ask-swell-celsius-hint = 20 °C is 68 °F. It matters little.
ask-swell-coefficient = Coefficient
ask-swell-coefficient-hint = For a wood that is not in the Wood Handbook: share of the width for one per cent, as in 0.0027.
ask-swell-room = The play it has
ask-swell-room-hint = In its slot or frame, in all. Empty where nothing holds it.

refused-wood-unknown = { $wood ->
    [none] Write which wood it is, or its coefficient.
   *[other] Nothing is known here of { $wood }. Write its coefficient, or the wood that it is most like.
  }
refused-moisture-needed = Write the moisture, or the humidity of the air, for when it is made and for later.

before-movement-wider = { $wood }, { $width } wide, from { $before } to { $after } % moisture: { $by } wider.
before-movement-narrower = { $wood }, { $width } wide, from { $before } to { $after } % moisture: { $by } narrower.
before-movement-still = { $wood }, { $width } wide, from { $before } to { $after } % moisture: as wide as before.
before-movement-a-board = The board
before-movement-room = The play of { $room } is enough.
before-movement-jams = The play of { $room } is too small by { $lacks }: it would jam, or split its frame.
before-movement-gap = The gap grows by { $by }: it may show, or rattle.
before-movement-air = Air of { $humidity } % at { $celsius } °C brings wood to { $moisture } % moisture, in some weeks.
before-movement-fix = Glue or screw it in the middle only, so that both sides can move.
before-movement-source = Coefficient { $coefficient } for one per cent{ $wood ->
    [none] , as it was said.
   *[other] : { $wood }, { $source }.
  }
before-movement-doubt-range = The coefficient holds from 6 to 14 % moisture; beyond that it is rougher.
before-movement-doubt-air = The equation's table ends at 5 and 95 % humidity.
before-movement-doubt-like = Figures of { $wood }: another wood of that name is near it, not the same.
before-movement-doubt-sawn = Flat-sawn moves most, so this is the careful figure where nobody knows.
