# What the pages about a friend's eyes on a review say: templates/review/friend*.html and _answers.html.

friend-title = A second pair of eyes
friend-title-of = A friend’s eyes on { $run }
friend-new-answers = { $answers ->
    [one] 1 new answer
   *[other] { $answers } new answers
  }
friend-none-yet = No answers yet. Send this review to a friend who makes things, or let one look at it here.

friend-take = Take answers in
friend-take-file = The file your friend sent
friend-take-text = Or the text, from a message
friend-take-text-hint = Paste the whole message.
friend-take-go = Take the answers in

friend-send-title = Send the review
friend-send-what = One file that opens in any browser, without a network. Your friend answers in it, saves the answers and sends them back.
friend-with-names = With the names of people and customers
friend-save-file = Save the file
friend-make-pdf = Make a PDF to write on
friend-pdf = The review as a PDF
friend-pdf-made = { $pages ->
    [one] Ready: one page.
   *[other] Ready: { $pages } pages.
  }
friend-pdf-open = Open PDF
friend-pdf-making = Making the PDF…

friend-code-title = Show it here
friend-code-what = A code opens this review on a phone on the shop’s network, and nothing else of the shop. The phone need not be paired. Answers come straight in.
friend-code-days = Valid for how many days
friend-code-days-hint = From 1 to { $most }.
friend-code-make = Make a code
friend-code-until = Open until { $until }{ $sheets ->
    [0] { "" }
    [one] , answered once
   *[other] , answered { $sheets } times
  }
friend-code-over = { $revoked ->
    [0] Ended { $until }
   *[other] Taken back
  }{ $sheets ->
    [0] { "" }
    [one] , answered once
   *[other] , answered { $sheets } times
  }
friend-code-revoke = Take back
friend-code-made = The code
friend-code-camera = Point your friend’s camera at it, on the shop’s network.
friend-code-or-link = Or send the link:
friend-code-good-until = It opens this review until { $until }.
friend-code-once = It is shown only once. Plain http: anyone on this network can read what it opens.

friend-saves-about = saves about { $minutes } min per piece
friend-from-whom = { $friend ->
    [0] No name given
   *[other] { $friend }
  }
friend-was-tried = tried
friend-was-set-aside = set aside
friend-try = Try it
friend-set-aside = Set aside
friend-bring-back = Bring back
