# What the pages of templates/helper/ say.

helper-hours-label = Hours from when they give their name
helper-hours-wrong = Write a number of hours above 0, at most { $most }.
helper-hours-title = Helpers' hours
helper-hours-how-long = How long helpers may work
helper-one-helps = Helps at { $link }{ $tray } of { $run_name }{ $end_link }, and sees nothing else. Came { $paired_at }, last seen { $seen_at }.
helper-one-over = It is over: { $over }.
helper-one-until = Until { $b }{ $ends_at }{ $end_b }.
helper-one-shown = Was shown: { $shown }.
helper-one-shown-none = Was shown no machine yet, so starts none.
helper-one-run-over = The run is over, and with it every card of it.
helper-let-in-again = Let in again for { $hours } h
helper-shut-out = Shut this phone out now
helper-shut-out-hint = If { $name } watches a machine, somebody else goes there first. What was not sent yet stays on the phone.
helper-revoke-card = Revoke the card of { $tray }
helper-revoke-card-what = What is printed for { $tray } opens it no more, and everybody who came by it is shut out. Print a new card for the next helper.
helper-shop-title = Helpers by a tray's card
helper-shop-nobody = Nobody yet. A tray's card has a square code: somebody's own phone opens that tray's steps by it, and nothing else of the shop.
helper-shop-hours = They may work for { $hours } h

helper-which-tray = tray { $tray }

helper-at-tray = tray { $tray } of { $run }, { $over ->
    [0] until { $ends_at }
   *[other] { $over }
  }
