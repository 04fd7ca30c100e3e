# What is said while a card that was written by hand is typed in, and while cards are made.

refused-counted-in-loads = { $step } was counted in several loads: { $good } good and { $scrap } scrap in all. Correct the load itself on Trays.
refused-moment-to-come = { $at } is still to come. Check the day and the time.
refused-earlier-than-row = { $at } is before { $step } in a row above. Check both.
refused-before-the-run = { $at } is before the run was opened. Check the day and the time.
refused-counted-later = Later steps make it { $good } good and { $scrap } scrap. Check the rows below, and later entries on Trays.
refused-nothing-written = Nothing new to save for tray { $tray }.

paper-counted = counted: { $good } good{ $scrap ->
    [0] {""}
   *[other] , { $scrap } scrap
  }
paper-how-many-good = Write how many were good, 0 if none.
paper-whole-number = Write a whole number, 0 or more, or leave it empty.
paper-no-time = Write the time too, or leave both empty.
paper-unreadable-moment = That is no time of day. Write it like 20:15.

refused-cards-busy = Other cards are still being made. Wait for those, then press again.
refused-no-cards = There is nothing to print: no card of that kind is needed now.
refused-trays-unreadable = '{ $text }' names no trays. Write them like 1, 2, 5-8.
cards-sides-trays = { $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
  }: { $sides ->
    [one] { $sides } side
   *[other] { $sides } sides
  }
cards-sides-stations = { $stations ->
    [one] { $stations } station sheet
   *[other] { $stations } station sheets
  }: { $sides ->
    [one] { $sides } side
   *[other] { $sides } sides
  }
cards-sides-others = { $sides ->
    [one] { $sides } other side
   *[other] { $sides } other sides
  }
cards-sides-pages = { $pages ->
    [one] { $pages } page
   *[other] { $pages } pages
  } to print
cards-more = { $left } of { $all } trays are not on this page. Print these first, then the next { $count }
cards-no-pango = This computer can't make PDFs yet: Pango is missing. Install it with sudo apt-get install { $packages }, or print the same cards from the browser.
cards-died = The cards could not be made: the work was killed. There may be too little memory; print fewer trays at once.
cards-failed = The cards could not be made: { $why }

paper-size-a6 = A6, one card
paper-size-4x6 = 4 × 6 in, one card
paper-size-a4 = A4, four cards to cut
paper-size-letter = Letter, four cards to cut
paper-good = Good
paper-scrap = Scrap
paper-why-scrap = Why scrap
paper-who = Who
paper-day = Day
paper-finished-at = Finished at
paper-nobody = not written
