# What the pages of templates/plan/ say.

plan-route = Route
plan-earlier = Move { $step } up
plan-press-earlier = Move up
plan-add-a-step = Add a step
plan-steps = Steps
plan-steps-hint = As in: drill 10, glue 15, clamp 2 h.
plan-after = After
plan-add = Add
plan-how-sure = How sure that is, and what holds it
plan-chart-services = What is shared, and how much of it is taken
plan-chart-as-a-list = The same as a list
plan-say-it = Say it
plan-say-it-for = for { $step }
plan-uses = Per piece: { $uses }
plan-times-are-guesses = Times here are guesses until they are measured.
plan-from-tray = Applies from tray
plan-from-tray-hint = And to every tray after it. Finished steps stay as they are.
plan-why = Why
plan-when-done = When it will be done
plan-who-does-what-and-holds = Who does what, and what holds it
plan-what-due = What is due
plan-pieces-for = { $pieces } for { $whom }
plan-evening-by-evening = Evening by evening
plan-times-planned = Times it is planned with
plan-step = Step
plan-what = What
plan-from = From
plan-when-a-guess-moves = A guess moves as soon as loads are measured; what was assumed, interrupted or corrected moves nothing.
plan-who-does-what = Who does what
plan-how-busy = How busy each station is
plan-station = Station
plan-at-work = At work
plan-hours-until-done = Of the hours until done
plan-try-before-making = Try a change before making it
plan-how-far-it-can-be = See if it could be faster
plan-new-product = New product
plan-stations-first = Its steps are done at stations. First { $link }add a station{ $end_link }, such as the bench.
plan-steps-in-one-line = Its steps, in one line
plan-steps-in-one-line-hint = A word and its minutes, with commas between: { $example }. For machines: machine minutes. By hand: minutes per tray.
plan-pieces-a-tray = Pieces a tray
plan-read-as = Read as
plan-refined-later = Everything can be refined later: stations, loads, setup, checks.
plan-make-it = Create product
plan-back-plan = Back to the plan
plan-open-run-of = Open a run of { $product }
plan-open-a-run = Open a run
plan-to-the-route = To the route
plan-what-will-take = What it will take
plan-own-text-from = From { $personal } on each piece carries its own text; the extra ones are blanks until then.
plan-used-up = Used up: { $uses }
plan-open-the-run = Open the run
plan-when = When
plan-back-without-saving = Back without saving
plan-title = Plan
plan-before-a-run = Before a run
plan-before-questions = More questions about { $product }
plan-open-runs = Open runs
plan-wanted = { $wanted } wanted
plan-no-run = A run is one batch of one product: so many pieces, for whom, due when.
plan-product-first = It needs a product first.
plan-products = Products
plan-no-product-no-station = A product is what you make, step by step. Its steps are done at stations: first { $link }add a station{ $end_link }, such as the bench.
plan-no-product = A product is what you make, step by step. One line of text is enough to begin.
plan-runs-over = Runs that are over
plan-about-product = Name, pieces a tray, wood, picture
plan-copy-or-remove = Copy or remove
plan-copy-product = Copy it: another product with this route
plan-remove = Remove { $product }
plan-runs-keep-route = Its runs keep their route.
plan-route-of = Route of { $title }
plan-changes-this-run = This changes the route of this run only. Every change says from which tray on it holds.
plan-its-log = Log
plan-copy-it = Copy
plan-orders = Orders
plan-save-orders = Save the orders
plan-due = due { $due }
plan-pieces = { $pieces } { $pieces ->
    [one] piece
   *[other] pieces
  }
plan-who-gets-what = Who gets what
plan-ready = Ready to hand over
plan-no-lines = This run has no order line.
plan-line-ready = { $ready } of { $pieces } ready
plan-line-tick = { $tick ->
    [packed] Packed
    [collected] Collected
   *[paid] Paid
  }
plan-line-ticked = { $tick ->
    [packed] Packed
    [collected] Collected
   *[paid] Paid
  }{ $some ->
    [0] {""}
   *[other] : { $some } of { $pieces },
  } { $at }{ $who ->
    [0] {""}
   *[other] , { $who }
  }
plan-line-some = Only { $ready } of { $pieces } { $ready ->
    [one] is
   *[other] are
  } ready. { $tick ->
    [packed] Pack
   *[other] Hand over
  } what is there?
plan-line-some-yes = Yes
plan-line-some-no = No
plan-line-take-back = Take it back
plan-line-not-taken = Not taken: runboard gave no answer. Press again.
plan-line-heap = { $heap ->
    [collected] Collected: { $lines }
   *[other] Not ready yet: { $lines }
  }
plan-lines-all = All order lines
plan-lines-count = { $ready } to hand over, { $making } not ready yet, { $collected } collected.
plan-line-slip = Print its packing slip
plan-line-slips = Print packing slips
plan-lines-hint = Pressed again, a tick is taken back. Pieces that carry a text are their line's own; the others go to whoever is due first.
plan-change-route = Change the route on the way
plan-boards = Boards
plan-add-one-more-board = Add one more board
plan-lost-board = Lost board
plan-board = board { $number }: trays { $boards }
plan-this-board-lost = This board is lost
plan-this-board-lost-hint = Its pieces that are not cut yet become scrap.
plan-end-run = End the run
plan-still-in-process = { $in_process } { $in_process ->
    [one] piece is
   *[other] pieces are
  } still in process.
plan-note = Note
plan-it-is-finished = It is finished
plan-give-up = Cancel run
plan-save-as-file = Save it as a file, with its log
plan-how-far = Could it be faster?
plan-no-planner = This server makes no plan: it was started with --no-planner. Start it without that to see one.
plan-nothing-left = Nothing is left to plan. { $link }Back to the plan{ $end_link }
plan-search-goes-on = Looking for a better plan
plan-search = Search for a better plan
plan-best-stays = The best plan so far stays.
plan-look-further = Look further
plan-how-fast = How fast it goes
plan-work-on-a-piece = Each station’s work on a piece
plan-on-each-piece = On each piece
plan-trays-in-work = Trays in work
plan-hands-and-machines = Hands and machines
plan-what-this-says = What this says
plan-says-best-order = A plan is the best order found so far for all that is to be done. The bound is a moment that no order can beat; it comes from rules (hands, a station, a watched machine, a wait, people’s hours), not from a search. Between the two lies what might still be won.
plan-says-end-in-steps = The end moves in steps: what matters is whether an evening is won. So the gap is counted in minutes in which somebody is there.
plan-says-due-first = What is due comes first: a plan that has more of it in time is the better one, though all of it is done later.
plan-says-takt = How often a piece is needed, its takt, is the hours in the shop until it is due over the pieces still to make. How often a station gives one is what it has still to do over those pieces.
plan-try-title = Try a change
plan-try-no-run = No run is open, so there is nothing to try a change on. { $link }Back to the plan{ $end_link }
plan-try-only-reckoned = { $run }. Nothing changes in the shop: this is only an estimate.
plan-try-on = Try it on { $run }
plan-try-cannot = That cannot be tried
plan-as-it-is = As it is
plan-with-the-change = With the change
plan-try-keep = Keep it as a change to try
plan-try-hint = Both are plans made at once, with the same effort and the same luck, so ‘as it is’ may differ a little from the Plan page, where a search goes on. No promise: it rests on the times in the route.
plan-try-another = Another change
plan-try-what = What would you change?
plan-try-hours = Hours added on one day
plan-which-day = On which day
plan-to = To
plan-try-ask = Compare
plan-try-nobody = Nobody is in the shop’s book yet. Add somebody on the { $link }Shop{ $end_link } screen.
plan-try-person = One more person
plan-try-like = Comes when this one does
plan-try-from-day = From which day on
plan-try-from-now = Empty: from now on.
plan-can-do = Can do
plan-try-no-hours = Nobody’s usual hours are written down yet. Add them on the { $link }Shop{ $end_link } screen.
plan-try-capacity = { $services ->
    [none] More or less shared equipment
   *[other] More or less: { $services }
  }
plan-of-what = Of what
plan-how-many = How many at once
plan-try-nothing-shared = Nothing is shared by stations in this shop: no extraction, clamps or rack. Add some on the { $link }Shop{ $end_link } screen.
plan-try-trays = Different tray size
plan-try-trays-hint = Trays that are begun stay as they are.
plan-try-times = Quicker or slower work
plan-which-operation = At which operation
plan-which-part = Which part of it
plan-everything = Everything
plan-per-cent = New time, in per cent of the time now
plan-per-cent-hint = 80 is a fifth less, 150 is half as much again.
plan-try-order = Swap two steps
plan-try-which-two = Which two change places
plan-before = { $first } before { $second }
plan-try-order-hint = This is only an estimate. You know if the piece allows that order.
plan-try-no-two = No two neighbours of this route can change places: each is begun, waits, has a finish, begins with texts, or cuts the boards.
plan-tries-kept = Changes to try, kept so far
plan-open-which = Open a run of which product?
plan-no-product-yet = There is no product yet. One line of text is enough to begin.

plan-takes = { $b }{ $hands }{ $end_b } hands on, walking and waiting not counted{ $machines ->
    [0] { "" }
   *[other] ; machines: { $machines }
  }

plan-back = Back
plan-back-to-run = Back to the run

plan-run-counts = { $good } of { $wanted } good, { $in_process } in process{ $scrap ->
    [0] { "" }
   *[other] , { $scrap } scrap
  }. Started { $started }{ $wood ->
    [0] { "" }
   *[other] , { $wood }
  }.

plan-run-opened = Opened { $opened_at }{ $closed_at ->
    [0] { "" }
   *[other] ; { $state } { $closed_at }
  }

plan-revision = Revision { $number }, from tray { $tray } on.

plan-too-slow = { $each }, too slow

plan-so-many-of = { $capacity } of { $service }
plan-shared-now = Now: { $shared }.

plan-part-of-time = { $kind ->
    [setup] Setup
    [loading] Loading
    [machine] Machine time
    [unloading] Unloading
   *[hand] Work by hand
  }
plan-before-it-starts = Before { $run } starts
plan-look-into-it = Look into it
plan-initials = Initials
plan-looked-go-on = Let it pass
plan-look-taken-back = Not seen, after all
plan-check-what-remains = What is checked of { $run }
plan-checks-right = { $checks ->
    [one] One check is OK
   *[other] { $checks } checks are OK
  }
plan-run-sheet-hint = These checks know only what is written down here. The machine's manual, the labels and your own eyes come first.
plan-to-now = To Now
plan-run-sheet = { $begun ->
    [yes] What is checked
   *[no] Before it starts
  }{ $open ->
    [0] {""}
    [one] {": "}one thing to look at
   *[other] {": "}{ $open } things to look at
  }
plan-shopping = What to buy
plan-shopping-for = For what remains of { $runs }.
plan-shopping-no-run = No run is open: nothing is needed.
plan-shopping-saved = { $what ->
    [bought] Written down: it is there.
    [changed] Written down: its wear starts at 0. The full list and the first-piece check come next time.
    [back] Taken back.
    [learned] The route says so from the next run on.
   *[counted] Counted.
  }
plan-shopping-buy = To buy
plan-shopping-nothing = Nothing is missing of what was counted.
plan-shopping-boards-there = Write down how many are there
plan-shopping-cost = { $cost } in all
plan-shopping-uncounted = Nobody counted
plan-shopping-cutters = Cutters
plan-shopping-where = At
plan-shopping-changed = { $station ->
    [0] I put in a new one
   *[other] I put in a new one at the { $station }
  }
plan-shopping-changed-off = It is off: I put in a new one at the { $station }
plan-shopping-take-back = Take it back
plan-shopping-changed-hint = Before a cutter is changed the machine is off and cannot start: see its manual.
plan-shopping-enough = Enough of
plan-shopping-count = Count what is there
plan-shopping-count-hint = Write what lies there now. What you leave empty stays as it is.
plan-shopping-how-much = { $unit ->
    [0] { $supply }
   *[other] { $supply }, { $unit }
  }
plan-shopping-amount = { $unit ->
    [0] How many
   *[other] How much, { $unit }
  }
plan-shopping-bought = I bought this
plan-shopping-should-be = There should be { $there }.
plan-shopping-save-counts = Save the counts
plan-shopping-none = Nothing is used up yet. { $link }Add a supply{ $end_link }, or name one in a step.
plan-shopping-learned = What a piece really uses
plan-shopping-take = Take it into the route
plan-shopping-runs-out = What runs out
plan-shopping-and-more = { $count ->
    [one] One more runs out.
   *[other] { $count } more run out.
  }
