# What the pages of templates/trays/ say.

trays-cards = Cards
trays-type-in-a-card = Enter a paper card
trays-cards-of = Cards of { $run }
trays-over-no-cards = This run is over. Only packing slips can be printed.
trays-only-some-lines = Which order lines get a slip
trays-which-lines = Which order lines
trays-every-line = Also lines with nothing ready
trays-every-line-hint = every line not collected yet, if none is ticked below
trays-no-line-ticked = None ticked: every line with something to hand over.
trays-lead-prints = Only a lead's phone can print cards.
trays-what-to-print = What to print
trays-full = Full cards
trays-full-hint = everything on each tray's own cards, for helpers without a phone
trays-show-code = Show tray { $tray }'s code
trays-show-codes = Show a tray's code
trays-codes-hint = A helper scans it and gets that tray's current step. Nothing has to be printed.
trays-code-title = Tray { $tray }'s code
trays-code-of = The code of tray { $tray }
trays-code-type = No camera? Open { $address } and type the eight characters.
trays-code-given = { $step } on this tray is assigned to { $person }. A friend can do it once anyone may.
trays-code-anyone = Anyone may do it
trays-only-here = Codes made here open on this computer only. With 'runboard serve', a phone in the shop's Wi-Fi can open them.
trays-code-over = This run is over. Its codes open nothing anymore.
trays-other-codes = Other trays' codes
trays-paper-size = Paper
trays-language = Language
trays-only-some-trays = Only some trays
trays-which-trays = Which trays
trays-none-ticked = None ticked: every tray that holds pieces.
trays-print-from-browser = Print from the browser
trays-make-pdf = Make the PDF
trays-print-at-100 = Print at 100 %, on paper of that size. Each printing of a traveller gets its own number, at its foot.
trays-entered = Tray { $entered } is saved.
trays-whose-card = Enter what was written on a card while nothing else could record it. Whose card is it?
trays-tray = Tray { $tray }
trays-pieces-in-process = { $in_process } in work
trays-pieces-good = { $good } good
trays-no-pieces = empty
trays-over-no-paper = This run is over. Nothing more can be entered.
trays-card-title = Card of tray { $tray }
trays-the-card-of = The card of tray { $tray }
trays-other-trays = { $run }, the other trays
trays-what-will-be-entered = What will be saved
trays-this-will-be-entered = This will be saved
trays-taken-as-done = not on the card, taken as done
trays-counted-already = already counted
trays-enter-it = Save it
trays-the-card = The card
trays-write-what-stands = Copy what's on the card. Leave the rest blank. A row without a day is from the day above it, or the last day that fits.
trays-look-at-it-again = Check again
trays-look-at-it-first = Check before saving
trays-so-many-made = { $cards } { $cards ->
    [one] card is
   *[other] cards are
  } made.
trays-open-pdf = Open PDF
trays-stopped = Stopped: no PDF was made.
trays-so-many-of = { $done } of { $total } cards
trays-beginning = Starting
trays-cards-made = Cards made
trays-other-cards = Other cards
trays-title = Trays

trays-ordered-last = { $link }The last cards you asked for{ $end_link } { $state ->
    [done] are ready
    [going] are being made
    [ended] were stopped
   *[failed] failed
  }.

trays-kind = { $kind ->
    [travellers] Travellers
    [stations] Station sheets
    [jigs] Jig labels
    [shelves] Shelf labels
    [slips] Packing slips
   *[sheet] Run sheet
  }
trays-kind-hint = { $kind ->
    [travellers] one card that goes with each tray
    [stations] for each station, once: cautions in full, instructions, setup
    [jigs] for machines with a jig or a setup sheet
    [shelves] for trays that dry or rest now
    [slips] for each order line with something ready, to go into the parcel
   *[sheet] the whole run, to hang up
  }

trays-marked = { $places ->
    [one] { $places } place is
   *[other] { $places } places are
  } marked below, at { $marked }. Nothing is saved yet, and nothing you typed is lost.

trays-written = { $who ->
    [0] nobody named
   *[other] { $who }
  }, { $at ->
    [0] no time
   *[other] { $at }
  }

trays-counted = { $good } good{ $scrap ->
    [0] { "" }
   *[other] , { $scrap } scrap
  }

trays-left-at = { $pieces } at { $step }
trays-nothing-left = nothing left to do
trays-afterwards = Then { $left }{ $good ->
    [0] { "" }
   *[other] ; { $good } good
  }. No times are recorded.
