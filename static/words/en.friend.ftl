# A review that is sent to a friend: what stands in the file, and what is said to whoever has a code or brings answers.
# The server alone says them; the friend's file carries its own.
# The questions are those of critical examination (International Labour Office, Introduction to Work Study, 4th edition, edited
# by G. Kanawaty, 1992) and the ways those of work simplification (A. H. Mogensen, after F. B. Gilbreth), both from memory.

## The file
friend-intro = You weren’t there. That’s why we ask you: fresh eyes see what we no longer see.
friend-how-to = Read the five lines. Then open the operations you have an opinion on, ask the questions there, and say what you would do. Leave out the rest.
friend-about = { $from } to { $to }.{ $people ->
    [0] { "" }
   *[other] { " " }In the shop: { $people }.
  }
friend-names-are-out = People and customers are not named in this file.
friend-names-are-in = People and order lines are named in this file.
friend-run-of = { $product }, started { $day }
friend-bars = Hands-on and machine time, by operation
friend-bars-title = Hands-on and machine time of each operation, guessed and measured
friend-bar-unknown = not{ "\u00a0" }measured
friend-guess = guess
friend-measured = measured
friend-operations = Operation by operation
friend-told = What is done
friend-lost = Lost here
friend-element = Time
friend-median = typical
friend-n = measured
friend-times = { $n ->
    [0] never
    [one] once
   *[other] { $n } times
  }
friend-questions = Questions to ask
friend-now = As it is now
friend-what-else = What else could be done?
friend-your-answer = What would you do with it?
friend-why = In a sentence: how, and why?
friend-why-hint = A stop on the jig, so nobody has to measure.
friend-saves = Saves about
friend-saves-unit = min per piece
friend-optional = if you like
friend-from = Your name
friend-save = Save the answers
friend-saved = Saved. Send that file back.
friend-not-saved = No answers yet.
friend-send-back = The answers are saved as a small file on your device. Send it to the person who sent you this one. Nothing leaves your device by itself.
friend-as-text = Or copy them as text
friend-as-text-hint = If no file can be saved here, copy this text into a message.
friend-no-script = This program shows the file but cannot save answers. Open the file in a browser. Or copy the text at the end into a message, fill it in and send it back.
friend-send = Send the answers to the shop
friend-saves-wrong = Write the minutes as a number, such as 1.5.
friend-manual = Whatever you suggest: guards and extraction stay, and a machine that is watched stays watched. The machine's manual comes first.
friend-source = The questions come from a handbook of the International Labour Office (Introduction to Work Study, 4th edition, 1992); eliminate, combine, rearrange and simplify from F. B. Gilbreth and A. H. Mogensen. We wrote them down as we remember them.

friend-way-eliminate = Eliminate
friend-way-combine = Combine
friend-way-rearrange = Rearrange
friend-way-simplify = Simplify
friend-way-leave = Leave as it is
friend-hint-eliminate = it does not need doing at all
friend-hint-combine = with another step, in one go
friend-hint-rearrange = another order, place, time or person
friend-hint-simplify = an easier way, another tool or jig
friend-hint-leave = it is good as it is

friend-asks-purpose = What does it achieve?
friend-asks-place = Where is it done?
friend-asks-sequence = When is it done?
friend-asks-person = Who does it?
friend-asks-means = How is it done?
friend-asks-why-purpose = Why is it needed at all?
friend-asks-why-place = Why there?
friend-asks-why-sequence = Why then?
friend-asks-why-person = Why that person?
friend-asks-why-means = Why that way?
friend-checked = Checked for: { $checks }.
friend-station = { $station }, { $room }
friend-where = { $where }.{ $walks ->
    [0] { "" }
    [one] { " " }One walk to another room
   *[other] { " " }{ $walks } walks to another room
  }{ $walks ->
    [0] { "" }
   *[other] { $walking ->
        [0] .
       *[other] , { $walking } in all.
      }
  }
friend-when = { $before ->
    [0] { $after ->
        [0] It is the only operation.
       *[other] First; then { $after }.
      }
   *[other] { $after ->
        [0] Last, after { $before }.
       *[other] After { $before }, before { $after }.
      }
  }
friend-then-dry = Then it dries for at least { $least }.
friend-then-cure = Then it cures for at least { $least }.
friend-then-clamp = Then it stays in clamps for at least { $least }.
friend-then-cool = Then it cools for at least { $least }.
friend-then-settle = Then it settles for at least { $least }.
friend-size-piece = piece by piece
friend-size-board = { $pieces ->
    [0] by the board
   *[other] { $pieces } from a board
  }
friend-size-jig = { $pieces ->
    [0] by the jig
   *[other] { $pieces } in a jig
  }
friend-size-tray = a tray at a time
friend-size-run = all at once
friend-by-machine = the machine works, and { $attendance ->
    [hands-on] hands stay at it
    [watched] someone stays and watches
   *[none] hands are free
  }
friend-how = Today: { $how }.

friend-figure-taken = Hands-on and machine
friend-figure-hands = Of that, hands-on
friend-figure-a-piece = Hands-on per good piece
friend-figure-first-good = Good first time
friend-figure-waited = Trays waited before it
friend-taken-for = { $taken } (guess { $guess })
friend-not-measured-beside = not measured (guess { $guess })
friend-so-many-of = { $some } of { $all }
friend-hurts = { $most ->
    [0] Here it hurts: { $lost ->
        [one] 1 piece lost.
       *[other] { $lost } pieces lost.
      }
   *[other] Here it hurts most: furthest from its guess{ $lost ->
        [0] .
        [one] , and 1 piece lost.
       *[other] , and { $lost } pieces lost.
      }
  }
friend-element-of = { $step }: { $element }
friend-lost-so = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }: { $reason ->
    [0] no reason noted
   *[other] { $reason }
  }{ $wood ->
    [0] { "" }
   *[other] , { $wood }
  }{ $board ->
    [0] { "" }
   *[other] , from board { $board }
  }

## Who stands there where no names are wanted
friend-lead = { $number ->
    [0] the maker
   *[other] maker { $number }
  }
friend-crew = { $number ->
    [0] the helper
   *[other] helper { $number }
  }
friend-guest = guest
friend-order = order { $number }
friend-order-text = (text)
friend-customer = (customer)
friend-this-run = this run

## Answers that come back
refused-answers-empty = There is nothing in it. Choose the file your friend sent, or paste the text.
refused-answers-too-long = That is too long for a friend's answers: { $most } kB at most. Nothing was taken in.
refused-answers-no-file = These are not answers to a review. Answers begin with 'runboard_answers', or as text with 'runboard answers 1'. Nothing was taken in.
refused-answers-broken = Nothing was taken in: the file is broken. { $why }
refused-answers-version = These answers come from a newer version of runboard. Nothing was taken in.
refused-answers-many = It has too many answers: { $most } at most. Nothing was taken in.
refused-answers-wrong = Nothing was taken in: { $number ->
    [0] the head of the file
   *[other] answer { $number } of the file
  } { $field ->
    [do] says to do something other than eliminate, combine, rearrange, simplify or leave
    [why] has a sentence that is too long
    [saves] saves no number of minutes from 0 up
   *[other] is not in the right form ({ $field })
  }.
refused-answers-other-run = These are answers to the review of { $there }. Open that review, and take them in there.
refused-answers-elsewhere = These are answers to the review of a run that is not in this shop.
refused-answers-none = It has no answer yet: nothing was chosen or written.
refused-answers-step-gone = Nothing was taken in: the run has no operation '{ $operation }'.
refused-answers-kept-many = There are already { $most } answers here, and no more are kept. Nothing was taken in.
refused-answer-unknown = That answer is no longer here. Load the page again.

friends-answers-taken = { $new ->
    [0] Nothing new: { $known ->
        [one] the answer was
       *[other] all { $known } answers were
      } already here.
    [one] One answer taken in.{ $known ->
        [0] { "" }
        [one] { " " }One was already here.
       *[other] { " " }{ $known } were already here.
      }
   *[other] { $new } answers taken in.{ $known ->
        [0] { "" }
        [one] { " " }One was already here.
       *[other] { " " }{ $known } were already here.
      }
  }
friends-thanks = Thank you! Your answers are in the shop, and nothing else was sent.

## A code that opens a review
refused-friend-days = Choose from 1 to { $most } days.
refused-friend-codes-many = { $most } codes are already open. Take one back first.
refused-friend-code-unknown = That code is no longer here.
refused-friend-too-often = Too many wrong codes came from here. Try again in { $minutes ->
    [one] a minute
   *[other] { $minutes } minutes
  }.
refused-friend-unknown = This code opens no review. Check that the whole link is there.
refused-friend-revoked = This code was taken back and no longer opens anything. Ask the shop for another.
refused-friend-over = This code ended { $at }. Ask the shop for another.
refused-friend-sheets-many = Enough answers came by this code. Nothing was taken in: ask the shop for another code.
friends-qr = The link as a QR code: it opens this review
friends-pdf-failed = The PDF could not be made. Try again. If it fails again, print the file from the browser.
friends-pdf-waiting = The shop's computer is busy. Try again in a minute.
friends-still-weighing = The bottleneck is still being worked out, and the file needs it. Try again in a few seconds.
