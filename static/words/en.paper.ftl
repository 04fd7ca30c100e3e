# What is said while a card that was written by hand is typed in, and while cards are made.

refused-counted-in-loads = { $step } was counted in several loads: { $good } good and { $scrap } scrap in all. Correct the load itself on Trays.
refused-moment-to-come = { $at } is still to come.
refused-earlier-than-row = { $at } is before { $step }, which stands above it.
refused-before-the-run = { $at } is before the run was opened.
refused-counted-later = What comes after it makes it { $good } good and { $scrap } scrap. Look at the rows below, and at what was pressed later on Trays.
refused-nothing-written = There is nothing new to enter for tray { $tray }.

paper-counted = counted: { $good } good{ $scrap ->
    [0] {""}
   *[other] , { $scrap } scrap
  }
paper-how-many-good = Write how many were good: 0 where none was.
paper-whole-number = Write a whole number, 0 or more, or leave it empty.
paper-no-time = Write the time too, or leave both empty.
paper-unreadable-moment = That is no time of day. Write it like 20:15.

refused-cards-busy = Other cards are still being made. Wait for those, then press again.
refused-no-cards = There is nothing to print: no card of that kind is wanted now.
refused-trays-unreadable = '{ $text }' names no trays. Write them like 1, 2, 5-8.
cards-more = { $left } of { $all } trays are not on this page. Print these first; then the next { $count }
cards-no-pango = This computer cannot make PDFs yet: its Pango is missing. Install it with sudo apt-get install { $packages }, or print the same cards from the browser.
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
