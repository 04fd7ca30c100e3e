# A cut list: so many of each length, out of boards.

before-kind-lengths = Boards cut to length
before-about-lengths = What to cut from which board so that the least is bought, with few different cuts and one long offcut.

refused-lengths-none = Say at least one length, and how many of it.
refused-lengths-too-many = More than { $most } lengths are too many to be cut together. Ask about some of them first.
refused-lengths-too-long = No board that suits is long enough for the longest piece. Look at its length, and at what comes off the ends.

before-lengths-own = Board of { $length }
before-lengths-boards = { $count } × { $board }
before-lengths-of-length = { $count } × { $length }
before-lengths-head = Take { $boards }. { $buy ->
    [none] All of it is at hand.
   *[other] Buy { $buy }.
  }
before-lengths-head-short = No board is there for { $missing }, and none that suits is for sale.
before-lengths-yield = The pieces are { $percent } % of the boards' length; { $rest } % is cuts, ends and offcuts.
before-lengths-proved = It cannot be done with less: the bound is reached.
before-lengths-ways = { $ways ->
    [one] All boards are cut alike.
   *[other] They are cut in { $ways } different ways. { $known ->
        [yes] For these boards nothing is better, where one way fewer counts as much as a tenth of a board on the longest offcut.
       *[no] Whether fewer would do is not known.
    }
  }
before-lengths-above = Another way of cutting could save { $percent } % at most.
before-lengths-longest-rest = The longest offcut is { $length }.
before-lengths-cuts-taken = Each piece sawn off takes one cut, the last one too where something is left of the board.
before-lengths-trim = { $trim } comes off each end of a board first.
before-lengths-no-gap = The blade takes nothing here, so the last piece of a full board comes out too short. Say what a cut takes.
before-lengths-list = Cut list
before-lengths-board = Boards
before-lengths-cuts = Cut into
before-lengths-left = Left
before-lengths-drawn = The boards with their cuts
before-lengths-drawn-about = Each board once: { $cuts }. What is hatched is left over.

ask-lengths-question-lengths = What is to be cut
ask-lengths-question-lengths-one = length
ask-cut-length-length = Length
ask-cut-length-pieces = How many
ask-lengths-question-gap = What a cut takes
ask-lengths-question-gap-hint = The blade's width.
ask-lengths-question-trim = Off each end of a board
ask-lengths-question-trim-hint = What is sawn off first, split or dirty.
ask-lengths-question-width = Width of the pieces
ask-lengths-question-width-hint = Boards that are narrower do not count.
ask-lengths-question-thickness = Thickness of the pieces
ask-lengths-question-stocks = Out of these boards
ask-lengths-question-stocks-hint = None chosen: all that are wide and thick enough.
ask-lengths-question-own-length = Length of another board
ask-lengths-question-own-length-hint = One that the shop has not written down. With it, only this length counts.
ask-lengths-question-aim = What counts first
ask-lengths-question-aim-at-hand = what is at hand
ask-lengths-question-aim-cost = what costs least
ask-lengths-question-aim-waste = what leaves least
