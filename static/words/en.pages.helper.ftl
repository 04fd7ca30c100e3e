# What the pages of templates/helper/ say.

helper-hours-label = Hours from when they give their name
helper-hours-wrong = Write a number of hours above 0, at most { $most }.
helper-hours-title = Helpers' hours
helper-hours-how-long = How long helpers may work
helper-one-helps = Helps at { $link }{ $tray } of { $run_name }{ $end_link }, sees nothing else. Came { $paired_at }, last seen { $seen_at }.
helper-one-over = Over: { $over }.
helper-one-until = Until { $b }{ $ends_at }{ $end_b }.
helper-one-shown = Trained on: { $shown }.
helper-one-shown-none = Not trained on any machine yet, so can't start one.
helper-one-run-over = The run is over, and so are its cards.
helper-let-in-again = Let in again for { $hours } h
helper-shut-out = Shut this phone out now
helper-shut-out-hint = If { $name } is watching a machine, send someone else there first. Entries not sent yet stay on the phone.
helper-revoke-card = Revoke the card of { $tray }
helper-revoke-card-what = Printed cards for { $tray } stop working, and everyone who came in by one is shut out. Print a new card for the next helper.
helper-shop-title = Helpers by a tray's card
helper-shop-nobody = Nobody yet. Scan the QR code on a tray's card with any phone: it opens that tray's steps and nothing else of the shop.
helper-shop-hours = They can help for { $hours } h

helper-which-tray = tray { $tray }

helper-at-tray = tray { $tray } of { $run }, { $over ->
    [0] until { $ends_at }
   *[other] { $over }
  }
