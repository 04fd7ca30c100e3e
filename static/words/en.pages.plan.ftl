# What the pages of templates/plan/ say.

plan-route = Route
plan-earlier = Move { $step } up
plan-press-earlier = Move up
plan-add-a-step = Add a step
plan-steps = Steps
plan-steps-hint = For example: drill 10, glue 15, clamp 2 h.
plan-after = After which step
plan-add = Add
plan-how-sure = How sure, and where the bottleneck is
plan-chart-key = Key to the picture
plan-chart-services = What is shared, and how much of it is taken
plan-chart-as-a-list = The same as a list
plan-say-it = Set it
plan-say-it-for = for { $step }
plan-uses = Per piece: { $uses }
plan-times-are-guesses = These times are guesses until measured.
plan-from-tray = Applies from tray
plan-from-tray-hint = And to every tray after it. Finished steps stay as they are.
plan-why = Why
plan-when-done = When it will be done
plan-who-does-what-and-holds = See who does what, and the bottleneck
plan-what-due = What is due
plan-pieces-for = { $pieces } for { $whom }
plan-evening-by-evening = Evening by evening
plan-times-planned = Times used for planning
plan-step = Step
plan-what = What
plan-from = From
plan-when-a-guess-moves = A guess changes once loads are measured. What was assumed, interrupted or corrected does not count.
plan-who-does-what = Who does what
plan-how-busy = How busy each station is
plan-station = Station
plan-at-work = At work
plan-hours-until-done = Share of hours until done
plan-try-before-making = Try a change first
plan-how-far-it-can-be = See if it could be faster
plan-new-product = New product
plan-stations-first = Steps are done at stations. First { $link }add a station{ $end_link }, such as the bench.
plan-steps-in-one-line = Steps, in one line
plan-steps-in-one-line-hint = Each step and its minutes, with commas. For machines: machine minutes. By hand: minutes per tray.
plan-steps-for-example = For example: { $example }
plan-pieces-a-tray = Pieces per tray
plan-read-as = This reads as
plan-refined-later = You can refine stations, loads, setup and checks later.
plan-make-it = Create product
plan-back-plan = Back to the plan
plan-open-run-of = Open a run of { $product }
plan-open-a-run = Open a run
plan-to-the-route = Go to the route
plan-what-will-take = What it will take
plan-own-text-from = From { $personal } on, each piece carries its own text. Extras stay blank until then.
plan-used-up = Uses up: { $uses }
plan-open-the-run = Open run
plan-when = When
plan-back-without-saving = Back without saving
plan-title = Plan
plan-before-a-run = Before a run
plan-before-questions = Ask more about { $product }
plan-open-runs = Open runs
plan-wanted = { $wanted } wanted
plan-no-run = A run is one batch of one product: how many pieces, for whom, due when.
plan-product-first = First create a product.
plan-products = Products
plan-no-product-no-station = A product is what you make, step by step. Steps are done at stations: first { $link }add a station{ $end_link }, such as the bench.
plan-no-product = A product is what you make, step by step. One line of text is enough to start.
plan-runs-over = Past runs
plan-about-product = Name, pieces per tray, wood, picture
plan-copy-or-remove = Copy or remove
plan-copy-product = Copy to a new product
plan-remove = Remove { $product }
plan-runs-keep-route = Its runs keep their route.
plan-route-of = Route of { $title }
plan-changes-this-run = Only this run’s route changes, from the tray you choose.
plan-its-log = Log
plan-copy-it = Copy
plan-orders = Orders
plan-save-orders = Save orders
plan-due = due { $due }
plan-pieces = { $pieces } { $pieces ->
    [one] piece
   *[other] pieces
  }
plan-who-gets-what = Who gets what
plan-ready = Ready to hand over
plan-no-lines = This run has no order lines.
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
    [packed] Pack { $ready ->
        [one] it
       *[other] them
      } now?
   *[other] Hand { $ready ->
        [one] it
       *[other] them
      } over now?
  }
plan-line-some-yes = Yes
plan-line-some-no = No
plan-line-take-back = Undo
plan-line-not-taken = Not saved: no answer from runboard. Press again.
plan-line-heap = { $heap ->
    [collected] Collected: { $lines }
   *[other] Not ready yet: { $lines }
  }
plan-lines-all = All order lines
plan-lines-count = { $ready } to hand over, { $making } not ready yet, { $collected } collected.
plan-line-slip = Print packing slip
plan-line-slips = Print packing slips
plan-lines-hint = Press again to undo a tick. Pieces with a text belong to their own line; the others go to the line due first.
plan-change-route = Change this run’s route
plan-boards = Boards
plan-add-one-more-board = Add one more board
plan-lost-board = Lost board
plan-board = board { $number }: trays { $boards }
plan-this-board-lost = Mark this board lost
plan-this-board-lost-hint = Its pieces not cut yet become scrap.
plan-end-run = End the run
plan-still-in-process = { $in_process } { $in_process ->
    [one] piece is
   *[other] pieces are
  } still in work.
plan-note = Note
plan-it-is-finished = Finish run
plan-give-up = Cancel run
plan-save-as-file = Save run and log as a file
plan-how-far = Could it be faster?
plan-no-planner = Planning is off: this server was started with --no-planner. Start it without that.
plan-nothing-left = Nothing left to plan. { $link }Back to the plan{ $end_link }
plan-search-goes-on = Looking for a better plan
plan-search = Search for a better plan
plan-best-stays = The best plan so far stays.
plan-look-further = Look further
plan-how-fast = How fast it goes
plan-work-on-a-piece = Work per piece, by station
plan-on-each-piece = Per piece
plan-trays-in-work = Trays in work
plan-hands-and-machines = Hands and machines
plan-what-this-says = What this means
plan-says-best-order = A plan is the best order found so far for all open work. The bound is a time that no order can beat. It comes from rules, not from a search: hands, a station, a watched machine, a wait, people’s hours. A better plan can only end between the two.
plan-says-end-in-steps = What counts is whether an evening is saved, so the gap is in minutes with somebody in the shop.
plan-says-due-first = What is due comes first: a plan with more of it on time is better, even if all is done later.
plan-says-takt = Takt is how often a piece is needed: the hours in the shop until it is due, over the pieces still to make. A station’s pace is its remaining work over those pieces.
plan-try-title = Try a change
plan-try-no-run = No run is open, so there is nothing to try. { $link }Back to the plan{ $end_link }
plan-try-only-reckoned = { $run }. Nothing changes in the shop: this is only an estimate.
plan-try-on = Try it on { $run }
plan-try-cannot = That can’t be tried
plan-as-it-is = As it is
plan-with-the-change = With the change
plan-try-keep = Keep as a change to try
plan-try-hint = Both plans get the same effort. The Plan page searches on, so ‘as it is’ may differ a little there. No promise.
plan-try-another = Try another change
plan-try-what = What would you change?
plan-try-hours = Extra hours on one day
plan-which-day = Day
plan-to = To
plan-try-ask = Compare
plan-try-nobody = Nobody is in the shop’s book yet. Add somebody on the { $link }Shop{ $end_link } screen.
plan-try-person = One more person
plan-try-like = Same hours as
plan-try-from-day = Starting on
plan-try-from-now = Empty: from now on.
plan-can-do = Skills
plan-try-no-hours = Nobody’s usual hours are entered yet. Add them on the { $link }Shop{ $end_link } screen.
plan-try-capacity = More or less shared equipment
plan-of-what = Equipment
plan-how-many = How many at once
plan-try-nothing-shared = No shared equipment yet, such as extraction, clamps or a rack. Add some on the { $link }Shop{ $end_link } screen.
plan-try-trays = Different tray size
plan-try-trays-hint = Trays already started stay as they are.
plan-try-times = Faster or slower work
plan-which-operation = Operation
plan-which-part = Part of its time
plan-everything = All of it
plan-per-cent = New time, %
plan-per-cent-hint = 80 is a fifth less, 150 is half as much again.
plan-try-order = Swap two steps
plan-try-which-two = Steps to swap
plan-before = { $first } before { $second }
plan-try-order-hint = This is only an estimate. You know if the piece allows that order.
plan-try-no-two = No two neighbouring steps can swap: each is started, waits, has a finish, starts the texts, or cuts the boards.
plan-tries-kept = See changes kept to try
plan-open-which = Open a run of which product?
plan-no-product-yet = No product yet. One line of text is enough to start.

plan-takes = { $b }{ $hands }{ $end_b } hands-on, without room changes and waiting{ $machines ->
    [0] { "" }
   *[other] ; machines: { $machines }
  }

plan-back = Back
plan-back-to-run = Back to the run

plan-run-counts = { $good } of { $wanted } good, { $in_process } in work{ $scrap ->
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
   *[hand] Hand work
  }
plan-before-it-starts = Before { $run } starts
plan-look-into-it = Look into it
plan-initials = Your initials
plan-looked-go-on = Let it pass
plan-look-taken-back = Undo ‘seen’
plan-check-what-remains = Check { $run }
plan-checks-right = { $checks ->
    [one] One check is OK
   *[other] { $checks } checks are OK
  }
plan-run-sheet-hint = These checks only know what is entered here. The machine's manual, the labels and your own eyes come first.
plan-to-now = Go to Now
plan-run-sheet = { $begun ->
    [yes] Check what remains
   *[no] Check before it starts
  }{ $open ->
    [0] {""}
    [one] {": "}{ $open } thing to look at
   *[other] {": "}{ $open } things to look at
  }
plan-shopping = What to buy
plan-shopping-for = For what remains of { $runs }.
plan-shopping-no-run = No run is open: nothing is needed.
plan-shopping-saved = { $what ->
    [bought] Saved: it is there.
    [changed] Saved: its wear starts at 0. Next time, the full list and the first-piece check.
    [back] Undone.
    [learned] Saved in the route, from the next run on.
   *[counted] Counted.
  }
plan-shopping-buy = To buy
plan-shopping-nothing = Nothing counted is missing.
plan-shopping-boards-there = Enter how many there are
plan-shopping-cost = { $cost } in all
plan-shopping-uncounted = Not counted
plan-shopping-cutters = Cutters
plan-shopping-where = At
plan-shopping-changed = { $station ->
    [0] I fitted a new one
   *[other] I fitted a new one at the { $station }
  }
plan-shopping-changed-off = It is off: I fitted a new one at the { $station }
plan-shopping-take-back = Undo
plan-shopping-changed-hint = Before changing a cutter, switch the machine off and make sure it cannot start: see its manual.
plan-shopping-enough = Enough of these
plan-shopping-count = Count what is there
plan-shopping-count-hint = Enter what is there now. Leave a field empty to keep its count.
plan-shopping-how-much = { $unit ->
    [0] { $supply }
   *[other] { $supply }, { $unit }
  }
plan-shopping-amount = { $unit ->
    [0] How many
   *[other] How much, { $unit }
  }
plan-shopping-bought = I bought this
plan-shopping-should-be = Should be { $there }.
plan-shopping-save-counts = Save counts
plan-shopping-none = Nothing is used up yet. { $link }Add a supply{ $end_link }, or name one in a step.
plan-shopping-learned = Real use per piece
plan-shopping-take = Use this in the route
plan-shopping-runs-out = Running out
plan-shopping-and-more = { $count ->
    [one] One more is running out.
   *[other] { $count } more are running out.
  }

plan-board-of-hint = Or say it in the steps. ‘board of 10’: one board makes 10 pieces, and the minutes are for that board.
plan-loads-unclear = How many pieces go on at once?
plan-load-of = { $step }, at the { $station }
plan-load-hint = A tray is { $pieces }. Count what you put on the machine for one start.
