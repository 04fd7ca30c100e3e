# What the forms of the book call its fields, by record and field: the label, its hint, words for what is kept as a stored
# word, what is said of whatever is wrong there, what one row is called. A field without a label is called by its own name.

ask-book-name = Name of the shop
ask-book-time-zone-hint = As in Europe/Berlin or America/New_York.
ask-book-units = Lengths are in
ask-book-units-hint = Both are read everywhere: 5 1/2 in, 12.5 mm.
ask-book-units-mm = millimetres
ask-book-units-in = inches
ask-book-emergency = Emergency number
ask-book-late-counts = When not all can be in time
ask-book-late-counts-hint = Least lateness: two order lines a little late rather than one very late. Fewest: the other way round.
ask-book-late-counts-minutes = least lateness altogether
ask-book-late-counts-lines = fewest late order lines
ask-book-rating = Pace, per cent of a usual one
ask-book-rating-hint = Leave empty for 100.
ask-book-allowance = Time allowance, per cent
ask-book-allowance-hint = For rests, interruptions, tidying. With it the review shows standard times; leave empty for none.
ask-book-allowance-of = Per cent of
ask-book-allowance-of-work = the work
ask-book-allowance-of-day = the day
ask-book-forbidden = Forbidden materials
ask-book-forbidden-hint = One a line. Their fumes poison or corrode. What is not known does not go in either: unknown means no.
ask-book-hour-rate = What an hour of work is worth
ask-book-hour-rate-hint = In your money, a number only. The Review says by it after how many runs a change has paid. Empty: it does not say.
ask-book-noise-limit-db = Level of an eight-hour day, dB(A)
ask-book-noise-limit-db-hint = For own figures.
ask-book-noise-exchange-db = Hours halve every so many dB
ask-book-noise-exchange-db-hint = For own figures.

ask-money-currency = Currency
ask-money-currency-nothing = not said
ask-money-currency-hint = No amount is converted: what is written down keeps its number. After a change, go through your prices.
ask-money-locale = Amounts are written as in
ask-money-locale-hint = A language and a country: de-DE, en-US, fr-CH. Empty: English.
ask-money-margin = Profit, %
ask-money-margin-of = It is a share of
ask-money-margin-of-price = the price: a margin
ask-money-margin-of-cost = the cost: a mark-up
ask-money-fee-share = What a market or a bank takes, per cent of the price
ask-money-fee-each = And for each piece sold
ask-money-packing-each = Packing of one piece
ask-money-packing-each-hint = Paper, tape, your way to the post. A carton that a step uses is counted there.

ask-price-product-nothing = none
ask-price-product-hint = None: only what is written below is counted.
ask-price-pieces = Good pieces wanted
ask-price-price = It sells at, today
ask-price-start = Started in all
ask-price-start-hint = Empty: as many as it takes.
ask-price-good-rate = Per cent that come good
ask-price-good-rate-hint = Empty: as counted, or as the route guesses.
ask-price-certainty = How surely they suffice, per cent
ask-price-hour-rate = What an hour of work is worth
ask-price-watched = Watched time that counts as work, per cent
ask-price-watched-hint = Somebody stays and watches. Less than 100 where other work of this run is done beside it.
ask-price-material-each = Material of each started piece
ask-price-material-each-hint = Empty: by the boards that it takes.
ask-price-packing-each = Packing of one piece
ask-price-others = Other costs
ask-price-others-one = cost
ask-price-margin = Profit, %
ask-price-margin-of = It is a share of
ask-price-margin-of-price = the price: a margin
ask-price-margin-of-cost = the cost: a mark-up
ask-price-fee-share = Fees, per cent of the price
ask-price-fee-each = And for each piece sold
ask-price-tool = A new jig or tool costs
ask-price-tool-saves-minutes = It saves work, each started piece
ask-price-tool-saves-minutes-hint = As in 40 s or 1 min 30 s.
ask-price-tool-saves-money = And money, each started piece
ask-price-tool-saves-money-hint = Empty both: it is paid by what stays of each piece.
ask-price-pieces-a-month = Pieces sold a month
ask-expense-name = What
ask-expense-each-good-piece = each good piece
ask-expense-each-started-piece = each started piece
ask-expense-each-run = once a run
ask-expense-each = For
ask-product-price = What one sells for
ask-product-price-hint = In your money, a number only.

ask-service-capacity = How many at once
ask-service-capacity-hint = An extractor with one hose: 1.

ask-station-kind = What it is
ask-station-kind-cnc = CNC router
ask-station-kind-hand-cutter = cutter worked by hand: router table, saw, planer
ask-station-kind-heater = oven, heater
ask-station-kind-finishing = finishing: oil, varnish
ask-station-kind-clamping = clamping, glue-up
ask-station-services = Uses
ask-station-watch-from = Else it may be watched while working at
ask-station-watch-every-minutes = Ask to look at it every
ask-station-watch-every-minutes-hint = Empty: the usual of its kind. { $usual } An answer shows that somebody answered; it is no fire watch.
ask-station-noise-db = Noise at the ear, dB(A)
ask-station-noise-db-hint = As measured there at work, or from its manual. It adds up each person's day, as information.
ask-station-eyewear-hint = For a laser: wavelength and optical density, as its manual says.
ask-station-hour-rate = What an hour of it costs
ask-station-hour-rate-hint = In your money: its price over the hours it lasts, its power, its upkeep. Empty: not counted.
ask-station-quiet = It must be quiet
ask-station-quiet-hint = Neighbours, sleep: it is not started then.
ask-station-quiet-one = hours
ask-motion-travel-x = It reaches along x
ask-motion-travel-x-hint = Of a laser: its bed. Empty: not known.
ask-motion-travel-y = It reaches along y
ask-motion-travel-z = It reaches along z
ask-motion-rapid = Rapid speed, mm/min
ask-motion-rapid-hint = Without cutting, along x and y. Small routers: 3000 to 8000.
ask-motion-rapid-z = Rapid speed up and down, mm/min
ask-motion-rapid-z-hint = Usually 800 to 3000.
ask-motion-accel-x = It gains speed along x by, mm/s²
ask-motion-accel-x-hint = Small routers: 200 to 800.
ask-motion-accel-y = Along y, mm/s²
ask-motion-accel-z = Up and down, mm/s²
ask-motion-accel-z-hint = Usually half as much.
ask-motion-corner = It rounds a corner by up to
ask-motion-corner-hint = The smaller, the slower it goes round corners. Usually 0.01 to 0.05 mm.
ask-motion-tool-change-minutes = To change the cutter
ask-motion-spindle-most = The spindle turns at most, a minute
ask-motion-spindle-most-hint = Small spindles: 18000 to 24000.
ask-motion-scan-speed = A laser sweeps at, mm/s
ask-motion-scan-speed-hint = Only of a laser. Usually 100 to 500.
ask-motion-scan-accel = A laser gains speed by, mm/s²
ask-motion-scan-accel-hint = When it sweeps. Usually 1000 to 5000.
ask-motion-line-spacing = From one line of a sweep to the next
ask-motion-line-spacing-hint = Usually 0.05 to 0.2 mm.
ask-program-station = At which machine
ask-program-station-nothing = none of the shop’s
ask-program-product = For which product
ask-program-product-nothing = none
ask-program-loads = How many loads
ask-program-loads-hint = Of a run, to say what a saving is worth in all.
ask-program-rapid = Rapid speed, mm/min
ask-program-accel = It gains speed by, mm/s²
ask-program-corner = It rounds a corner by up to
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
ask-person-skills-hint = One a line, as the operations name them: laser, finishing.
ask-person-hours = Usually here
ask-person-hours-hint = Used to plan ahead; each day people say their own hours.
ask-person-hours-one = hours
ask-person-start-up-minutes = Start-up takes
ask-person-start-up-minutes-hint = Minutes, off each session.
ask-person-tidy-up-minutes = Tidy-up takes
ask-person-tidy-up-minutes-hint = Minutes, off each session.

ask-job-minutes = It takes about
ask-job-minutes-hint = Minutes.
ask-job-room-nothing = anywhere

ask-stock-length = Length
ask-stock-length-hint = Along the grain.
ask-stock-width = Width
ask-stock-thickness = Thickness
ask-stock-wood = Wood or material
ask-stock-grain = The grain
ask-stock-grain-length = runs along it
ask-stock-grain-none = none: pieces may lie either way
ask-stock-have = At hand
ask-stock-for-sale = More of it can be bought
ask-stock-price = Price of one
ask-stock-price-hint = In the shop's money. Left empty: not known.
ask-piece-length = Length
ask-piece-length-hint = Along the grain.
ask-piece-width = Width
ask-piece-thickness = Thickness
ask-piece-gap = Gap for the cutter
ask-piece-gap-hint = What the blade or the bit takes between two pieces.
ask-piece-margin = Free at the edge
ask-piece-margin-hint = What stays uncut all round the board.
ask-piece-tabs = Room for tabs
ask-piece-tabs-hint = Around each piece, at every side.
ask-piece-grain = A piece may lie
ask-piece-grain-length = along the grain only
ask-piece-grain-none = either way
ask-piece-stocks = Made from
ask-piece-stocks-hint = None chosen: whatever is large and thick enough, and of its wood.
ask-finish-name-hint = As on the tin.
ask-finish-sheet-date = Label or data sheet of
ask-finish-sheet-date-hint = Without a date the figures count as common practice, read the label.
ask-finish-recoat-minutes = Next coat after
ask-finish-recoat-minutes-hint = As in 12 h, 2 days.
ask-finish-handle-minutes = May be handled after
ask-finish-cure-minutes = Cured through after
ask-finish-cure-minutes-hint = As in 14 days. One that never cures: empty.
ask-finish-self-heats = Its rags can take fire by themselves
ask-finish-self-heats-hint = Linseed, tung and most oils that dry heat up as they do. Untick it only where the label or sheet says so.
ask-finish-solvent = It has a solvent in it
ask-finish-solvent-hint = While that is in the air: no laser, sanding, heater or charger in the room.
ask-finish-airing-minutes = The solvent is in the air for
ask-finish-airing-minutes-hint = As in 12 h.
ask-finish-ventilation-hint = As the label says: both doors open, fan outdoors.

ask-operation-attendance = While it runs
ask-operation-attendance-hands-on = hands on: somebody works at it all the time
ask-operation-attendance-watched = stay and watch: somebody keeps it in sight
ask-operation-attendance-none = nothing asked: nothing there cuts or heats
ask-operation-services = Uses
ask-operation-guess = These times are a guess
operation-guess-reckoned = But for machine time from a file, as said beside it.
operation-reckoned-program = { $pass ->
    [one] From the program { $file }.
   *[other] { $pass }: from the program { $file }.
  } Another time written here is yours again.
operation-reckoned-engraving = { $pass ->
    [one] From the drawing { $file }.
   *[other] { $pass }: from the drawing { $file }.
  } Another time written here is yours again.
ask-operation-passes-hint = One go over the pieces is enough for most. A grit or a side each is a pass of its own.
ask-operation-checklist = To tick before the machine starts
ask-operation-checklist-hint = One a line.
ask-operation-setup-sheet-hint = Program, cutter, zero, workholding, power, speed, focus.
ask-operation-setup-sheet-one = line
ask-operation-cautions = Said before the step
ask-operation-cautions-hint = One a line.
ask-operation-uses-one = supply
ask-operation-skill = Skill that it needs
ask-operation-skill-hint = As it is named with a person. Empty: anybody.
ask-operation-personal = From here each piece carries a text of its own
ask-operation-good-rate = Of 100 pieces so many come good
ask-operation-good-rate-hint = Your guess, until enough are counted.
ask-operation-good-rate-wrong = Write a number from 1 to 100.
ask-operation-finish = Finish that it brings on
ask-operation-finish-hint = Finishes are written down on the Shop page. At a finishing station without one, its rags count as ones that can take fire by themselves.
ask-operation-finish-nothing = none
ask-operation-watch-every-minutes = Ask to look at it every
ask-operation-watch-every-minutes-hint = Empty: as the station says, else as its kind does. { $usual }
ask-operation-translations-de = German
ask-operation-translations-es = Spanish
ask-operation-translations-fr = French
ask-operation-instructions = { "" }
ask-operation-instructions-hint = For somebody who never saw the job.
ask-operation-instructions-one = step

ask-wait-why = Afterwards the pieces
ask-wait-why-clamp = stay in clamps
ask-wait-why-nothing = no wait
ask-wait-least-minutes = At least
ask-wait-least-minutes-hint = Minutes, or 12 h, 3 days, overnight.
ask-wait-latest-minutes = At most, from the first piece
ask-wait-latest-minutes-hint = Where it must be wiped off before it turns tacky. Else leave it empty.
ask-wait-holds = It holds so many of

ask-pass-name-hint = The grit or the side: 120, side A.
ask-pass-size = A load is
ask-pass-size-tray = a tray
ask-pass-size-piece = one piece
ask-pass-size-jig = a jig-full
ask-pass-size-board = a board
ask-pass-size-run = the whole run
ask-pass-pieces = Pieces on it
ask-pass-pieces-hint = On a board, in a jig.
ask-pass-setup-minutes-hint = Minutes, once while the station stays on this.
ask-pass-loading-minutes-hint = Minutes a load.
ask-pass-machine-minutes = Machine time
ask-pass-machine-minutes-hint = Minutes a load.
ask-pass-unloading-minutes-hint = Minutes a load.
ask-pass-hand-minutes = Hand time
ask-pass-hand-minutes-hint = Minutes a piece: 3, 90 s.

ask-check-text = What to look at
ask-check-per = How often
ask-check-per-setup = after each setup, and each day
ask-check-per-load = with each load
ask-check-per-run = once a run
ask-check-nominal = Measure
ask-check-nominal-hint = 5 1/2 in, 12.5 mm; empty for 'matches the sample piece'.
ask-check-plus = May be more by
ask-check-minus = May be less by

ask-use-supply = What
ask-use-supply-hint = Screws, oil, discs: as it is called on the Shop page.
ask-use-each = So much a piece
ask-use-unit-hint = pieces, ml; may stay empty.

ask-operation-rpm = Turns a minute
ask-operation-feed = Feed, a minute
ask-operation-feed-hint = How far it goes in a minute: 1800 mm, 70 in.
ask-operation-fastenings-hint = Before a run it is looked whether each point stays inside.
ask-operation-fastenings-one = screw

ask-fastening-through = What is fastened
ask-fastening-through-hint = How thick; 0 for a hook or a bracket.
ask-fastening-into = What it goes into
ask-fastening-into-hint = How thick where it sits. Empty: 10 mm.
ask-fastening-margin = Keep before the far face
ask-fastening-margin-hint = Empty: 3 mm, common practice.
ask-fastening-washer = Washer or bracket
ask-fastening-washer-hint = How thick; empty for none.
ask-fastening-sunk = Head below the surface
ask-fastening-sunk-hint = Under a plug; empty where it is flush.

ask-screw-name-hint = As on its packet: hook screw, #6 × 5/8.
ask-screw-length-hint = From what lies on the surface to the point.
ask-screw-gauge-hint = Its number: 4, 6, 8. Empty for a metric one.
ask-screw-diameter-hint = Outside the thread. Empty: as the gauge says.
ask-screw-head-countersunk = countersunk
ask-screw-head-round = round, or a screw hook's plate
ask-screw-root = Root
ask-screw-root-hint = At the bottom of the thread. Empty: 70 % of the diameter.
ask-screw-thread = Thread, from the point
ask-screw-thread-hint = Empty: two thirds of the length.
ask-screw-head-height = Countersunk head's height
ask-screw-head-height-hint = What goes into the wood. Empty: half the diameter.
ask-screw-pilot-hard = Pilot in hardwood
ask-screw-pilot-hard-hint = What you found good. Empty: as wide as the root.
ask-screw-pilot-soft = Pilot in softwood
ask-screw-pilot-soft-hint = Empty: 15 % less than the root.
ask-screw-source = Whose figures
ask-screw-source-hint = The packet, a maker's sheet, your own trial.

ask-insert-name-hint = As on its packet: M4 insert, disc magnet 10 × 3.
ask-insert-what = What it is
ask-insert-what-insert = threaded insert
ask-insert-what-magnet = magnet, or another smooth part
ask-insert-diameter-hint = Outside, measured.
ask-insert-length = How deep it is
ask-insert-hole-hint = How wide. Empty: by the fit that is asked for.
ask-insert-depth = Depth of the hole
ask-insert-depth-hint = Empty: a little deeper than the part.
ask-insert-source = Whose figures
ask-insert-source-hint = The packet, a maker's sheet, your own trial.

ask-good-feed-cutter-hint = Cutters are written down on the Shop page.
ask-good-feed-rpm = Turns a minute
ask-good-feed-feed = Feed, a minute
ask-good-feed-feed-hint = 1800 mm, 70 in.
ask-good-feed-wood-hint = As in ash. Empty: any.
ask-good-feed-station-nothing = any
ask-good-feed-depth = Depth of a pass
ask-good-feed-note = What was seen
ask-good-feed-note-hint = Clean, burnt, tore out at the end grain.
ask-good-feed-tore-out = The wood tore out with these
ask-operation-cutter = Cutter that is clamped in
ask-operation-cutter-hint = Cutters are written down on the Shop page. What it does is counted until it is worn.
ask-operation-cutter-nothing = none

ask-supply-name-hint = As the steps name it: hard oil, brass hooks.
ask-supply-unit = Counted in
ask-supply-unit-hint = ml, g, m; empty for pieces.
ask-supply-pack = One packet holds
ask-supply-price = One packet costs
ask-supply-low = Always keep
ask-supply-low-hint = Below this it is to be bought. How much there is now is counted under Plan, What to buy.

ask-cutter-name-hint = As in 6 mm upcut, disc 120.
ask-cutter-what = What it is
ask-cutter-what-cutter = cutter, bit
ask-cutter-what-blade = blade
ask-cutter-what-disc = disc
ask-cutter-what-belt = belt
ask-cutter-life = Worn after
ask-cutter-life-hint = A guess will do. What it really lasts is shown beside it.
ask-cutter-life-in = Counted in
ask-cutter-life-in-pieces = pieces
ask-cutter-life-in-minutes = minutes of cutting
ask-cutter-price = A new one costs
ask-cutter-supply = A new one is taken from
ask-cutter-supply-hint = Where new ones lie in a packet that is counted among what is used up.
ask-cutter-supply-nothing = bought one by one

ask-instruction-text = What to do
ask-instruction-text-hint = One short sentence. Several lines become several steps.

ask-translation-checklist = Start list
ask-translation-checks = First-piece checks

# What an empty list of the shop's things says.

thing-rooms = Rooms come first: where do you work? Add the first, such as 'Shop'.
thing-services = A service is what several stations or waits share: dust extraction, clamps, places on the rack.
thing-stations = A station is a machine or a bench where one load at a time is done. Add the bench first.
thing-people = Who works here? Add yourself first.
thing-jobs = What fills a gap of five minutes: empty the bin, cut cartons. They are offered while something dries.
thing-stocks = Boards and sheets to make things of, at hand or for sale: size, wood, price. With them the tool counts how many a run takes.
thing-supplies = Screws, oil, discs, cartons: what one packet holds, and what is always kept. How much there is is counted under Plan, What to buy.
thing-cutters = What is clamped in and wears. What each does is counted from one change to the next.
thing-finishes = Oil, varnish, wax: what the label says of drying, of rags and of the air. Until one is written down, every rag from a finishing station counts as one that can take fire by itself.
thing-screws = Screws of the shop, with what their packets say. Before a run it is looked whether their points stay inside.
thing-inserts = Threaded inserts and magnets, with the holes that their makers ask for.
thing-feeds = Turns and feed that you found good, by wood and cutter, and those that tore out. Cutters come first.
thing-feed = { $wood ->
    [any] any wood
   *[other] { $wood }
  }, { $cutter }{ $torn ->
    [yes] : tore out
   *[no] { "" }
  }

# What stands beside a thing in its list, and what was saved last.

shop-row-stocks = { $size }, { $have } there
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
   *[other] { $there } there
  }
shop-row-feeds = { $rpm } turns, { $feed } a minute
shop-row-jigs = { $columns } × { $rows } places
shop-kept = { $name } is saved, under { $title }.
shop-kept-removed = It is taken out of { $title }.
shop-kept-sheet = { $title }: saved.
shop-at-once = { $capacity } at once
shop-lead-helper = { $access ->
    [lead] lead
   *[other] helper
  }
shop-about-min = about { $minutes } min

forms-write-length = { $what ->
    [none] Write a length here.
   *[other] Write the { $what }.
  }
