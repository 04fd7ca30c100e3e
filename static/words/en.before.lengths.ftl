# A cut list: so many of each length, out of boards.

before-kind-lengths = Boards cut to length
before-about-lengths = What to cut from which board: least to buy, few different cuts, one long offcut.

refused-lengths-none = Enter at least one length, and how many.
refused-lengths-too-many = Over { $most } lengths are too many at once. Ask about some of them first.
refused-lengths-too-long = No suitable board is long enough for the longest piece. Check its length, and what comes off the ends.

before-lengths-own = Board of { $length }
before-lengths-boards = { $count } × { $board }
before-lengths-of-length = { $count } × { $length }
before-lengths-head = Take { $boards }. { $buy ->
    [none] All are in stock.
   *[other] Buy { $buy }.
  }
before-lengths-head-short = There is no board for { $missing }, and none for sale that suits.
before-lengths-yield = The pieces use { $percent } % of the boards' length; { $rest } % is cuts, ends and offcuts.
before-lengths-proved = This is the least possible: the bound is reached.
before-lengths-ways = { $ways ->
    [one] All boards are cut the same way.
   *[other] They are cut in { $ways } different ways. { $known ->
        [yes] For these boards nothing is better, if one way fewer counts as much as a tenth of a board on the longest offcut.
       *[no] Nobody knows whether fewer would do.
    }
  }
before-lengths-above = Cutting another way could save { $percent } % at most.
before-lengths-longest-rest = Longest offcut: { $length }.
before-lengths-cuts-taken = Each piece takes one cut, the last one too if some board is left.
before-lengths-trim = First, { $trim } comes off each end of a board.
before-lengths-no-gap = The cut width is 0 here, so the last piece of a full board comes out too short. Enter what a cut takes.
before-lengths-list = Cut list
before-lengths-board = Boards
before-lengths-cuts = Cut into
before-lengths-left = Left
before-lengths-drawn = The boards with their cuts
before-lengths-drawn-about = Each board once: { $cuts }. Hatched parts are left over.

ask-lengths-question-lengths = Pieces to cut
ask-lengths-question-lengths-one = length
ask-cut-length-length = Length
ask-cut-length-pieces = How many
ask-lengths-question-gap = Cut width
ask-lengths-question-gap-hint = The blade's width.
ask-lengths-question-trim = Off each board end
ask-lengths-question-trim-hint = Sawn off first, split or dirty.
ask-lengths-question-width = Piece width
ask-lengths-question-width-hint = Narrower boards do not count.
ask-lengths-question-thickness = Piece thickness
ask-lengths-question-stocks = From these boards
ask-lengths-question-stocks-hint = None ticked: all that are wide and thick enough.
ask-lengths-question-own-length = Another board’s length
ask-lengths-question-own-length-hint = For a board not in the shop’s book. Then only this length counts.
ask-lengths-question-aim = First choice
ask-lengths-question-aim-at-hand = use what is in stock
ask-lengths-question-aim-cost = cost least
ask-lengths-question-aim-waste = leave least
