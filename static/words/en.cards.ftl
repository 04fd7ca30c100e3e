# What stands on cards: travellers, labels, the run's summary. Cautions on them are in the care catalogue.
card-good = good
card-scrap = scrap
card-initials = initials
card-time = time
card-notes = notes
card-measured = measured
card-continued = continued
card-trays = Trays
card-orders = Orders
card-supplies = Total materials
card-steps = Steps
card-places = Places of the jig
card-position = position { $place }
card-start-list = Start list
card-on-the-jig-label = on the label at the machine
card-pieces = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
}
card-tray-of = { $trays ->
    [one] the only tray
   *[other] tray { $tray } of { $trays }
}
card-card = card
card-due = due { $at }
card-run-due = run due { $at }
card-run-due-over = run due { $first } to { $last }
card-order-dated = { $pieces } for { $at }
card-order-undated = { $pieces } with no date
card-board = board { $board }

## First pieces
card-first-piece-run = First piece of the run
card-first-piece-setup = First piece after setting up
card-first-piece-load = First piece of each load
card-measure = { $nominal } +{ $plus } −{ $minus }
card-limits = { $least } to { $most }

## Waits
card-wait-dry = Let dry: at least { $span }
card-wait-cure = Let cure: at least { $span }
card-wait-clamp = In clamps: at least { $span }
card-wait-cool = Let cool: at least { $span }
card-wait-settle = Let settle: at least { $span }
card-finish = After { $finish }
card-finish-unknown = After the finish
card-go-on-from = carry on from
card-latest = at latest ({ $span })
card-recoat = recoat from ({ $span })
card-handle = handle from ({ $span })
card-cure = full cure ({ $span })
card-label-of = Times: label, sheet of { $date }.
card-read-the-label = Typical times: read the label.
card-do-not-move = Do not move before
card-not-before = not before { $at }

## The foot
card-the-lead = the lead
card-bad-piece = Bad piece: set it aside, mark it, count it as scrap, tell { $lead }. Same fault twice: stop and call.
card-print = { $run } · route revision { $revision } · print { $number } · { $at }

## The run's summary
card-wanted = { $wanted } wanted, { $started } started, { $good } good
card-opened = started { $at }
card-next = next: { $step }
card-all-done = all done

## Packing slips
card-slip = Packing slip
card-slip-text = Text on it
card-slip-due = due
card-slip-packed-on = packed on
card-slip-part = { $left ->
    [0] { $parcel } of { $pieces }
   *[other] { $parcel } of { $pieces }, { $left } to follow
  }
card-slip-packed-by = packed by
card-slip-order = Order { $line }

## One card a tray: what is long stands on the station's sheet
card-cautions-on-sheet = Cautions: on the station's sheet. Read it first.
card-bad-piece-short = Bad piece: set it aside, mark it, count it as scrap, tell { $lead }.
card-scrap-box = scrap
card-side = side
card-turn-over = turn over
card-on-more-cards = Too long for one card: further cards go with this tray.
card-texts = Texts by position

## The station's sheet
card-station-sheet = Station sheet
card-at-step = { $last ->
    [0] step { $first } of { $steps }
   *[other] steps { $first } to { $last } of { $steps }
  }
card-at-this-station = At this station
card-before-starting = Before it starts
card-setting-up = Setting up
card-supplies-each = Used for each piece: { $supplies }
card-on-a-phone = The code on a tray's card shows each step on a phone, with its pictures.

## A caution in two words beside its sign; in full it is care-…
card-sign-stay-and-watch = stay and watch
card-sign-laser-beam = laser eyewear, lid shut
card-sign-fire = extinguisher in reach
card-sign-exhaust-and-air = exhaust, air on
card-sign-hot = hot, let it cool
card-sign-no-gloves = no gloves
card-sign-loose = sleeves tight, hair tied
card-sign-hands-clear = push pad, hands clear
card-sign-kickback = kickback, stand aside
card-sign-disconnect = unplug to change
card-sign-eye-protection = eyes
card-sign-hearing-protection = ears
card-sign-dust-mask = mask on
card-sign-extraction = extraction on
card-sign-blown-dust = no compressed air
card-sign-manual = read the manual
card-sign-crushing = fingers clear
card-sign-sharp-edge = sharp edges
card-sign-electricity = unplug to open
card-sign-respirator = respirator on
card-sign-spraying = respirator, no sparks
card-sign-rags = rags outdoors or in water
card-sign-solvent-air = solvent, no flame
card-sign-no-smoking = no smoking
card-sign-gloves = gloves on
card-sign-air-the-room = air the room
card-sign-dry-not-cured = dry is not cured
card-sign-climate = not cold, not damp
card-sign-oiled-dust = oily dust outdoors, into water
card-sign-lifting = lift with two
card-sign-batteries = stay while it charges
card-sign-alone = not alone
