# What is said while a card that was written by hand is typed in, and while cards are made.

refused-counted-in-loads = { $step } was counted in several loads: { $good } good and { $scrap } scrap in all. Correct the load itself on Trays.
refused-moment-to-come = { $at } is still to come.
refused-earlier-than-row = { $at } is before { $step }, which stands above it.
refused-before-the-run = { $at } is before the run was opened.
refused-counted-later = A later press counts it again: { $good } good and { $scrap } scrap. Correct that one on Trays, or leave the time empty.
refused-nothing-written = There is nothing new to enter for tray { $tray }.

paper-counted = counted: { $good } good{ $scrap ->
    [0] {""}
   *[other] , { $scrap } scrap
  }
paper-how-many-good = Write how many were good: 0 where none was.
paper-whole-number = Write a whole number, 0 or more, or leave it empty.
paper-no-time = Write the time too, or leave both empty.
paper-unreadable-moment = That is no time of day. Write it like 20:15.
