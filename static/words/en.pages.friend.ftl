# What the pages about a friend's eyes on a review say: templates/review/friend*.html and _answers.html.

friend-title = A second pair of eyes
friend-title-of = A friend’s eyes on { $run }
friend-new-answers = { $answers ->
    [one] 1 new answer
   *[other] { $answers } new answers
  }
friend-none-yet = Nobody has answered yet. Send this review to a friend who makes things, or let one look at it here.

friend-take = Take answers in
friend-take-file = The file that your friend sent
friend-take-text = Or the text, from a message
friend-take-text-hint = Paste the whole message.
friend-take-go = Take the answers in

friend-send-title = Send the review
friend-send-what = One file, which opens in any browser without a network. Your friend answers in it, saves the answers, and sends those back.
friend-with-names = With the names of people and customers
friend-save-file = Save the file
friend-make-pdf = Make a PDF to write on
friend-pdf = The review as a PDF
friend-pdf-made = { $pages ->
    [one] One page is made.
   *[other] { $pages } pages are made.
  }
friend-pdf-open = Open the PDF
friend-pdf-making = Being made…

friend-code-title = Show it here
friend-code-what = A code opens this review on a phone in the shop’s network, and nothing else of the shop. The phone need not be paired; answers come straight in.
friend-code-days = Good for how many days
friend-code-days-hint = From 1 to { $most }.
friend-code-make = Make a code
friend-code-until = Open until { $until }{ $sheets ->
    [0] { "" }
    [one] , answered once
   *[other] , answered { $sheets } times
  }
friend-code-over = { $revoked ->
    [0] Over since { $until }
   *[other] Taken back
  }{ $sheets ->
    [0] { "" }
    [one] , answered once
   *[other] , answered { $sheets } times
  }
friend-code-revoke = Take back
friend-code-made = The code
friend-code-camera = Hold your friend’s camera at it, in the shop’s network.
friend-code-or-link = Or send the link:
friend-code-good-until = It opens this review until { $until }.
friend-code-once = It is shown once only. By plain http whoever is on this network can read what it opens.

friend-saves-about = saves about { $minutes } min a piece
friend-from-whom = { $friend ->
    [0] Somebody without a name
   *[other] { $friend }
  }
friend-was-tried = tried
friend-was-set-aside = set aside
friend-try = Try it
friend-set-aside = Set aside
friend-bring-back = Bring back
