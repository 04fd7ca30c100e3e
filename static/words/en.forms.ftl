# What the forms of the book call its fields, by record and field: the label, its hint, words for what is kept as a stored
# word, what is said of whatever is wrong there, what one row is called. A field without a label is called by its own name.

ask-book-name = Name of the shop
ask-book-time-zone-hint = For example Europe/Berlin or America/New_York.
ask-book-units = Lengths in
ask-book-units-hint = You can type either anywhere: 5 1/2 in, 12.5 mm.
ask-book-units-mm = millimetres
ask-book-units-in = inches
ask-book-emergency = Emergency number
ask-book-late-counts = If not all can be on time
ask-book-late-counts-hint = Small: two order lines a little late, rather than one very late. Fewest: the other way round.
ask-book-late-counts-minutes = keep total lateness small
ask-book-late-counts-lines = fewest late order lines
ask-book-rating = Pace, % of usual
ask-book-rating-hint = Empty: 100.
ask-book-allowance = Time allowance, %
ask-book-allowance-hint = For rests, interruptions, tidying. The Review then shows standard times. Empty: none.
ask-book-allowance-of = Share of
ask-book-allowance-of-work = the work
ask-book-allowance-of-day = the day
ask-book-forbidden = Banned materials
ask-book-forbidden-hint = One per line. Their fumes poison or corrode. Not sure what it is? Don’t cut it.
ask-book-hour-rate = An hour of work is worth
ask-book-hour-rate-hint = In your money, just the number. The Review uses it to say when a change has paid off. Empty: it does not say.
ask-book-noise-limit-db = Limit for eight hours, dB(A)
ask-book-noise-limit-db-hint = Only with your own figures.
ask-book-noise-exchange-db = Exchange rate, dB
ask-book-noise-exchange-db-hint = Hours halve for every so many dB. Only with your own figures.

ask-money-currency = Currency
ask-money-currency-nothing = not set
ask-money-currency-hint = Amounts are not converted. After a change, go through your prices.
ask-money-locale = Write amounts as in
ask-money-locale-hint = A language and a country, such as de-DE, en-US, fr-CH. Empty: English.
ask-money-margin = Profit, %
ask-money-margin-of = Share of
ask-money-margin-of-price = the price: a margin
ask-money-margin-of-cost = the cost: a mark-up
ask-money-fee-share = Market and bank fees, % of price
ask-money-fee-each = Plus fee per piece sold
ask-money-packing-each = Packing per piece
ask-money-packing-each-hint = Paper, tape, your trip to the post. Leave out a carton that a step already uses.

ask-price-product-nothing = none
ask-price-product-hint = None: only what you enter below counts.
ask-price-pieces = Good pieces wanted
ask-price-price = Price today
ask-price-start = Pieces started
ask-price-start-hint = Empty: as many as it takes.
ask-price-good-rate = Good pieces, %
ask-price-good-rate-hint = Empty: as counted, or as the route guesses.
ask-price-certainty = Certainty of enough, %
ask-price-hour-rate = An hour of work is worth
ask-price-watched = Watching counted as work, %
ask-price-watched-hint = For time that somebody stays and watches. Less than 100 if other work of this run is done beside it.
ask-price-material-each = Material per started piece
ask-price-material-each-hint = Empty: from the boards it takes.
ask-price-packing-each = Packing per piece
ask-price-others = Other costs
ask-price-others-one = cost
ask-price-margin = Profit, %
ask-price-margin-of = Share of
ask-price-margin-of-price = the price: a margin
ask-price-margin-of-cost = the cost: a mark-up
ask-price-fee-share = Fees, % of the price
ask-price-fee-each = Plus fee per piece sold
ask-price-tool = Cost of a new jig or tool
ask-price-tool-saves-minutes = Work saved per started piece
ask-price-tool-saves-minutes-hint = For example 40 s or 1 min 30 s.
ask-price-tool-saves-money = Money saved per started piece
ask-price-tool-saves-money-hint = Leave both empty to pay it from what stays of each piece.
ask-price-pieces-a-month = Pieces sold per month
ask-expense-name = What
ask-expense-each-good-piece = each good piece
ask-expense-each-started-piece = each started piece
ask-expense-each-run = once per run
ask-expense-each = For
ask-product-pieces-a-tray = Pieces per tray
ask-product-price = Selling price
ask-product-price-hint = In your money, just the number.

ask-service-capacity = How many at once
ask-service-capacity-hint = An extractor with one hose: 1.

ask-station-kind = What it is
ask-station-kind-cnc = CNC router
ask-station-kind-hand-cutter = hand-fed cutter: router table, saw, planer
ask-station-kind-heater = oven, heater
ask-station-kind-finishing = finishing: oil, varnish
ask-station-kind-clamping = clamping, glue-up
ask-station-services = Uses
ask-station-watch-from = Or watch it while working at
ask-station-watch-every-minutes = Watch check every
ask-station-watch-every-minutes-hint = Empty: usual for its kind. { $usual } An answer is not a fire watch.
ask-station-noise-db = Noise at the ear, dB(A)
ask-station-noise-db-hint = Measured there at work, or from its manual. Adds up each person's day, as information.
ask-station-eyewear-hint = For a laser: wavelength and optical density, from its manual.
ask-station-hour-rate = Cost per hour
ask-station-hour-rate-hint = In your money: its price over its hours, power, upkeep. Empty: not counted.
ask-station-quiet = Quiet hours
ask-station-quiet-hint = It is not started then: neighbours, sleep.
ask-station-quiet-one = hours
ask-motion-travel-x = Travel along x
ask-motion-travel-x-hint = For a laser: its bed. Empty: not known.
ask-motion-travel-y = Travel along y
ask-motion-travel-z = Travel along z
ask-motion-rapid = Rapid speed, mm/min
ask-motion-rapid-hint = Without cutting, along x and y. Small routers: 3000 to 8000.
ask-motion-rapid-z = Rapid up and down, mm/min
ask-motion-rapid-z-hint = Usually 800 to 3000.
ask-motion-accel-x = Acceleration along x, mm/s²
ask-motion-accel-x-hint = Small routers: 200 to 800.
ask-motion-accel-y = Along y, mm/s²
ask-motion-accel-z = Up and down, mm/s²
ask-motion-accel-z-hint = Usually half as much.
ask-motion-corner = Rounds corners by up to
ask-motion-corner-hint = The smaller, the slower round corners. Usually 0.01 to 0.05 mm.
ask-motion-tool-change-minutes = Cutter change
ask-motion-spindle-most = Top spindle speed, turns/min
ask-motion-spindle-most-hint = Small spindles: 18000 to 24000.
ask-motion-scan-speed = Laser sweep speed, mm/s
ask-motion-scan-speed-hint = Lasers only. Usually 100 to 500.
ask-motion-scan-accel = Laser acceleration, mm/s²
ask-motion-scan-accel-hint = While it sweeps. Usually 1000 to 5000.
ask-motion-line-spacing = Line spacing
ask-motion-line-spacing-hint = From one line of a sweep to the next. Usually 0.05 to 0.2 mm.
ask-program-station = Machine
ask-program-station-nothing = none of the shop’s
ask-program-product = Product
ask-program-product-nothing = none
ask-program-loads = Number of loads
ask-program-loads-hint = In the run, to work out the saving in all.
ask-program-rapid = Rapid speed, mm/min
ask-program-accel = Acceleration, mm/s²
ask-program-corner = Rounds corners by up to
ask-program-stock-length = Length, along x
ask-program-stock-width = Width, along y
ask-program-stock-thickness = Thickness

ask-hours-days-mon = Monday
ask-hours-days-tue = Tuesday
ask-hours-days-wed = Wednesday
ask-hours-days-thu = Thursday
ask-hours-days-fri = Friday
ask-hours-days-sat = Saturday
ask-hours-days-sun = Sunday
ask-hours-to-hint = 0:00 is the end of the day.

ask-person-access = Access
ask-person-access-lead = lead: everything
ask-person-access-crew = helper: the Now screen
ask-person-skills = Skills
ask-person-skills-hint = One per line, as the operations name them: laser, finishing.
ask-person-hours = Usually here
ask-person-hours-hint = Used to plan ahead; each day people say their own hours.
ask-person-hours-one = hours
ask-person-start-up-minutes = Start-up
ask-person-start-up-minutes-hint = Minutes at the start of each session.
ask-person-tidy-up-minutes = Tidy-up
ask-person-tidy-up-minutes-hint = Minutes at the end of each session.

ask-job-minutes = Takes about
ask-job-minutes-hint = Minutes.
ask-job-room-nothing = anywhere

ask-stock-length = Length
ask-stock-length-hint = Along the grain.
ask-stock-width = Width
ask-stock-thickness = Thickness
ask-stock-wood = Wood or material
ask-stock-grain = Grain
ask-stock-grain-length = along the length
ask-stock-grain-none = none: pieces may lie either way
ask-stock-have = In stock
ask-stock-for-sale = More can be bought
ask-stock-price = Price each
ask-stock-price-hint = In the shop's money. Empty: not known.
ask-piece-length = Length
ask-piece-length-hint = Along the grain.
ask-piece-width = Width
ask-piece-thickness = Thickness
ask-piece-gap = Gap for the cutter
ask-piece-gap-hint = What the blade or bit takes between two pieces.
ask-piece-margin = Edge margin
ask-piece-margin-hint = Left uncut all round the board.
ask-piece-tabs = Room for tabs
ask-piece-tabs-hint = Around each piece, on every side.
ask-piece-grain = Pieces may lie
ask-piece-grain-length = along the grain only
ask-piece-grain-none = either way
ask-piece-stocks = Made from
ask-piece-stocks-hint = None ticked: any board big and thick enough, in its wood.
ask-finish-name-hint = As on the tin.
ask-finish-sheet-date = Date of label or data sheet
ask-finish-sheet-date-hint = Without a date, the figures count as common practice, read the label.
ask-finish-recoat-minutes = Next coat after
ask-finish-recoat-minutes-hint = For example 12 h, 2 days.
ask-finish-handle-minutes = Handle after
ask-finish-cure-minutes = Fully cured after
ask-finish-cure-minutes-hint = For example 14 days. Empty: it never cures.
ask-finish-self-heats = Rags can catch fire by themselves
ask-finish-self-heats-hint = Linseed, tung and most drying oils heat up by themselves. Untick only if the label or sheet says so.
ask-finish-solvent = Contains solvent
ask-finish-solvent-hint = While it is in the air: no laser, sanding, heater or charger in the room.
ask-finish-airing-minutes = Solvent in the air for
ask-finish-airing-minutes-hint = For example 12 h.
ask-finish-ventilation-hint = As on the label: both doors open, fan blowing outdoors.

ask-operation-attendance = While it runs
ask-operation-attendance-hands-on = hands-on: someone works at it
ask-operation-attendance-watched = stay and watch: kept in sight
ask-operation-attendance-none = nothing: no cutting, no heat
ask-operation-services = Uses
ask-operation-guess = These times are a guess
operation-guess-reckoned = Except machine time from a file, marked beside it.
operation-reckoned-program = { $pass ->
    [one] From the program { $file }.
   *[other] { $pass }: from the program { $file }.
  } Enter another time to make it your own.
operation-reckoned-engraving = { $pass ->
    [one] From the drawing { $file }.
   *[other] { $pass }: from the drawing { $file }.
  } Enter another time to make it your own.
ask-operation-passes-hint = One pass over the pieces is usually enough. Each grit or side is its own pass.
ask-operation-checklist = Tick before the machine starts
ask-operation-checklist-hint = One per line.
ask-operation-setup-sheet-hint = Program, cutter, zero, workholding, power, speed, focus.
ask-operation-setup-sheet-one = line
ask-operation-cautions = Say before the step
ask-operation-cautions-hint = One per line.
ask-operation-uses-one = supply
ask-operation-skill = Skill needed
ask-operation-skill-hint = As entered with a person. Empty: anyone.
ask-operation-personal = From here on, each piece has its own text
ask-operation-good-rate = Good out of 100 pieces
ask-operation-good-rate-hint = Your guess, until enough are counted.
ask-operation-good-rate-wrong = Enter a number from 1 to 100.
ask-operation-finish = Finish applied
ask-operation-finish-hint = Add finishes on the Shop page. Without one, treat rags from a finishing station as self-igniting.
ask-operation-finish-nothing = none
ask-operation-watch-every-minutes = Watch check every
ask-operation-watch-every-minutes-hint = Empty: as set at the station, or usual for its kind. { $usual }
ask-operation-translations-de = German
ask-operation-translations-es = Spanish
ask-operation-translations-fr = French
ask-operation-instructions = { "" }
ask-operation-instructions-hint = For somebody new to the job.
ask-operation-instructions-one = step

ask-wait-why = Then the pieces
ask-wait-why-clamp = stay in clamps
ask-wait-why-nothing = no wait
ask-wait-least-minutes = At least
ask-wait-least-minutes-hint = Minutes, or 12 h, 3 days, overnight.
ask-wait-latest-minutes = At most, from the first piece
ask-wait-latest-minutes-hint = If it must be wiped off before it turns tacky. Otherwise leave empty.
ask-wait-holds = Takes up

ask-pass-name-hint = The grit or side: 120, side A.
ask-pass-size = One load is
ask-pass-size-tray = a tray
ask-pass-size-piece = one piece
ask-pass-size-jig = a full jig
ask-pass-size-board = a board
ask-pass-size-run = all pieces
ask-pass-pieces = Pieces per load
ask-pass-pieces-hint = On one board, or in one jig.
ask-pass-setup-minutes-hint = Minutes per changeover.
ask-pass-loading-minutes-hint = Minutes per load.
ask-pass-machine-minutes = Machine time
ask-pass-machine-minutes-hint = Minutes per load.
ask-pass-unloading-minutes-hint = Minutes per load.
ask-pass-hand-minutes = Hand time
ask-pass-hand-minutes-hint = Minutes per piece: 3, 90 s.

ask-check-text = What to check
ask-check-per = How often
ask-check-per-setup = after each setup, and each day
ask-check-per-load = every load
ask-check-per-run = once per run
ask-check-nominal = Measurement
ask-check-nominal-hint = 5 1/2 in, 12.5 mm. Empty: 'matches the sample piece'.
ask-check-plus = Tolerance, plus
ask-check-minus = Tolerance, minus

ask-use-supply = What
ask-use-supply-hint = Screws, oil, discs: named as on the Shop page.
ask-use-each = Amount per piece
ask-use-unit-hint = pieces, ml; can stay empty.

ask-operation-rpm = Turns per minute
ask-operation-feed = Feed per minute
ask-operation-feed-hint = How far it moves in a minute: 1800 mm, 70 in.
ask-operation-fastenings-hint = Before a run, each point is checked to stay inside.
ask-operation-fastenings-one = screw

ask-fastening-through = What is fastened
ask-fastening-through-hint = How thick; 0 for a hook or a bracket.
ask-fastening-into = What it goes into
ask-fastening-into-hint = How thick it is there. Empty: 10 mm.
ask-fastening-margin = Margin to the far face
ask-fastening-margin-hint = Empty: 3 mm, common practice.
ask-fastening-washer = Washer or bracket
ask-fastening-washer-hint = How thick. Empty: none.
ask-fastening-sunk = Head below the surface
ask-fastening-sunk-hint = Under a plug. Empty: flush.

ask-screw-name-hint = As on its packet: hook screw, #6 × 5/8.
ask-screw-length-hint = From the surface it sits on to the point.
ask-screw-gauge-hint = Its number: 4, 6, 8. Empty: metric.
ask-screw-diameter-hint = Outside the thread. Empty: from the gauge.
ask-screw-head-countersunk = countersunk
ask-screw-head-round = round, or a screw hook's plate
ask-screw-root = Root
ask-screw-root-hint = At the bottom of the thread. Empty: 70 % of the diameter.
ask-screw-thread = Thread length from the point
ask-screw-thread-hint = Empty: two thirds of the length.
ask-screw-head-height = Countersunk head height
ask-screw-head-height-hint = The part that goes into the wood. Empty: half the diameter.
ask-screw-pilot-hard = Pilot in hardwood
ask-screw-pilot-hard-hint = What works for you. Empty: as wide as the root.
ask-screw-pilot-soft = Pilot in softwood
ask-screw-pilot-soft-hint = Empty: 15 % less than the root.
ask-screw-source = Source of the figures
ask-screw-source-hint = The packet, a maker's sheet, your own trial.

ask-insert-name-hint = As on its packet: M4 insert, disc magnet 10 × 3.
ask-insert-what = What it is
ask-insert-what-insert = threaded insert
ask-insert-what-magnet = magnet or smooth part
ask-insert-diameter-hint = Outside, measured.
ask-insert-length = Its depth
ask-insert-hole-hint = How wide. Empty: from the fit you ask for.
ask-insert-depth = Depth of the hole
ask-insert-depth-hint = Empty: a little deeper than the part.
ask-insert-source = Source of the figures
ask-insert-source-hint = The packet, a maker's sheet, your own trial.

ask-good-feed-cutter-hint = Add cutters on the Shop page.
ask-good-feed-rpm = Turns per minute
ask-good-feed-feed = Feed per minute
ask-good-feed-feed-hint = 1800 mm, 70 in.
ask-good-feed-wood-hint = For example ash. Empty: any.
ask-good-feed-station-nothing = any
ask-good-feed-depth = Depth per pass
ask-good-feed-note = What you saw
ask-good-feed-note-hint = Clean, burnt, tore out at the end grain.
ask-good-feed-tore-out = The wood tore out with these
ask-operation-cutter = Cutter fitted
ask-operation-cutter-hint = Add cutters on the Shop page. Its work is counted until it is worn.
ask-operation-cutter-nothing = none

ask-supply-name-hint = As the steps name it: hard oil, brass hooks.
ask-supply-unit = Counted in
ask-supply-unit-hint = ml, g, m. Empty: pieces.
ask-supply-pack = Packet holds
ask-supply-price = Packet costs
ask-supply-low = Always keep
ask-supply-low-hint = Buy more below this. Count what you have under Plan, What to buy.

ask-cutter-name-hint = For example 6 mm upcut, disc 120.
ask-cutter-what = What it is
ask-cutter-what-cutter = cutter, bit
ask-cutter-what-blade = blade
ask-cutter-what-disc = disc
ask-cutter-what-belt = belt
ask-cutter-life = Worn after
ask-cutter-life-hint = A guess will do. Its real life shows beside it.
ask-cutter-life-in = Counted in
ask-cutter-life-in-pieces = pieces
ask-cutter-life-in-minutes = minutes of cutting
ask-cutter-price = New one costs
ask-cutter-supply = Taken from supply
ask-cutter-supply-hint = For new ones kept in a packet that is counted as a supply.
ask-cutter-supply-nothing = bought one at a time

ask-instruction-text = What to do
ask-instruction-text-hint = One short sentence. Several lines become several steps.

ask-translation-checklist = Start list
ask-translation-checks = First-piece checks

# What an empty list of the shop's things says.

thing-rooms = Rooms come first: where do you work? Add the first, such as 'Shop'.
thing-services = What several stations or waits share: dust extraction, clamps, places on the rack.
thing-stations = A station is a machine or bench that does one load at a time. Add the bench first.
thing-people = Who works here? Add yourself first.
thing-jobs = Jobs for a five-minute gap: empty the bin, cut cartons. They come up while something dries.
thing-stocks = Boards and sheets you have or can buy: size, wood, price. With them, runboard counts how many a run takes.
thing-supplies = Screws, oil, discs, cartons: what a packet holds, and how much to always keep. Count what you have under Plan, What to buy.
thing-cutters = Cutters, blades and discs that wear. Each one’s work is counted from change to change.
thing-finishes = Oil, varnish, wax: what the label says about drying, rags and air. Until you add one, treat every rag from a finishing station as one that self-ignites.
thing-screws = The shop’s screws, with figures from their packets. Before a run, their points are checked to stay inside.
thing-inserts = Threaded inserts and magnets, with the holes their makers ask for.
thing-feeds = Turns and feeds that worked well, by wood and cutter, and those that tore out. Add cutters first.
thing-feed = { $wood ->
    [any] any wood
   *[other] { $wood }
  }, { $cutter }{ $torn ->
    [yes] : tore out
   *[no] { "" }
  }

# What stands beside a thing in its list, and what was saved last.

shop-row-stocks = { $size }, { $have } in stock
shop-row-screws = { $size ->
    [none] { "" }
   *[other] { $size }
  }
shop-row-inserts = { $size }
shop-row-cutters = { $size ->
    [none] { "" }
   *[other] { $size }
  }{ $flutes ->
    [0] { "" }
    [one] , one flute
   *[other] , { $flutes } flutes
  }
shop-row-supplies = { $there ->
    [unknown] not counted
   *[other] { $there } in stock
  }
shop-row-feeds = { $rpm } turns, { $feed } per minute
shop-row-jigs = { $columns } × { $rows } places
shop-kept = { $name } saved under { $title }.
shop-kept-removed = Removed from { $title }.
shop-kept-sheet = { $title }: saved.
shop-at-once = { $capacity } at once
shop-lead-helper = { $access ->
    [lead] lead
   *[other] helper
  }
shop-about-min = about { $minutes } min

forms-write-length = { $what ->
    [none] Enter a length.
   *[other] Enter the { $what }.
  }

# The first evening: what its page ticks

shop-first-near-usual = Shop
shop-first-far-usual = House
shop-first-cnc = CNC
shop-first-table = Router table
shop-first-sander = Sander
shop-first-laser = Laser
shop-first-finishing = Finishing corner
shop-first-bench = Bench
shop-first-hours-evenings = Weekday evenings, 18:00–22:00
shop-first-hours-weekends = Weekends, 9:00–17:00
shop-first-hours-days = Weekdays, 8:00–17:00
