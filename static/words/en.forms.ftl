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

ask-service-capacity = How many at once
ask-service-capacity-hint = An extractor with one hose: 1.

ask-station-kind = What it is
ask-station-kind-cnc = CNC router
ask-station-kind-hand-cutter = cutter worked by hand: router table, saw, planer
ask-station-kind-heater = oven, heater
ask-station-kind-finishing = finishing: oil, varnish
ask-station-kind-clamping = clamping, glue-up
ask-station-services = It draws on
ask-station-watch-from = Else it may be watched while working at
ask-station-watch-every-minutes = Ask to look at it every
ask-station-watch-every-minutes-hint = Empty: the usual of its kind. { $usual } An answer shows that somebody answered; it is no fire watch.
ask-station-noise-db = Noise at the ear, dB(A)
ask-station-noise-db-hint = As measured there at work, or from its manual. It adds up each person's day, as information.
ask-station-eyewear-hint = For a laser: wavelength and optical density, as its manual says.
ask-station-quiet = It must be quiet
ask-station-quiet-hint = Neighbours, sleep: it is not started then.
ask-station-quiet-one = time of the week

ask-hours-days-mon = Monday
ask-hours-days-tue = Tuesday
ask-hours-days-wed = Wednesday
ask-hours-days-thu = Thursday
ask-hours-days-fri = Friday
ask-hours-days-sat = Saturday
ask-hours-days-sun = Sunday
ask-hours-to-hint = 0:00 is the end of the day.

ask-person-access = May do
ask-person-access-lead = lead: everything
ask-person-access-crew = helper: the Now screen
ask-person-skills = Can do
ask-person-skills-hint = One a line, as the operations name them: laser, finishing.
ask-person-hours = Usually here
ask-person-hours-hint = They plan the days ahead; for today everybody says.
ask-person-hours-one = time of the week
ask-person-start-up-minutes = Start-up takes
ask-person-start-up-minutes-hint = Minutes, off each session.
ask-person-tidy-up-minutes = Tidy-up takes
ask-person-tidy-up-minutes-hint = Minutes, off each session.

ask-job-minutes = It takes about
ask-job-minutes-hint = Minutes.
ask-job-room-nothing = anywhere

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
ask-operation-services = It draws on
ask-operation-guess = These times are a guess
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
ask-use-supply-hint = Screws, oil, discs.
ask-use-each = So much a piece
ask-use-unit-hint = pieces, ml; may stay empty.

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
thing-finishes = Oil, varnish, wax: what the label says of drying, of rags and of the air. Until one is written down, every rag from a finishing station counts as one that can take fire by itself.
