# Pieces from boards and sheets: how many of which, how they lie, what is left.

before-kind-stock = Pieces from boards
before-about-stock = How many boards to take and to buy, with the layout drawn to scale and what is left over.
before-keep-stock-piece = Keep as what { $product } is made of
before-keep-stock-board = A board holds { $pieces ->
    [one] one piece
   *[other] { $pieces } pieces
  }: take it into step { $step }

before-kept-stock-piece = { $product } is made of { $size } now, with a gap of { $gap }.
before-kept-stock-board = { $step } is planned with { $pieces ->
    [one] one piece
   *[other] { $pieces } pieces
  } a board now.

refused-stock-no-piece = Say how long and how wide a piece is, choose a product that says it, or give a drawing of it.
refused-stock-no-boards = The shop has no boards written down yet. Add them on the Shop screen, or type in the size of one.
refused-stock-empty-drawing = Nothing in { $name } is as large as a piece. See whether its unit is right.

before-stock-boards = { $count } × { $board }
before-stock-own = Board of { $size }
before-stock-head = Take { $boards } for { $pieces ->
    [one] one piece
   *[other] { $pieces } pieces
  }. { $buy ->
    [none] All of it is at hand.
   *[other] Buy { $buy }.
  }
before-stock-head-short = { $boards ->
    [none] No board is at hand
   *[other] { $short } of { $pieces } pieces have no board
  }. Nothing more that suits is for sale.
before-stock-no-stock = None of the boards suits this piece.
before-stock-piece = A piece is { $size }, with a gap of { $gap }{ $margin ->
    [none] {""}
   *[other] , { $margin } free at the edge
  }{ $tabs ->
    [none] {""}
   *[other] , { $tabs } around it for tabs
  }.
before-stock-made-of = Made of { $size }, with a gap of { $gap }, from { $boards ->
    [any] any board that suits
   *[other] { $boards }
  }.
before-stock-holds = { $board }: { $each ->
    [one] one piece comes
   *[other] { $each } pieces come
  } from one.
before-stock-proof-bound = No more fit, by any layout: there is no room for another.
before-stock-proof-search = No more fit: every other layout was ruled out.
before-stock-proof-open = No layout holds more than { $bound }. Whether one holds more than { $each } is not known.
before-stock-planed = { $board }: { $off } of its thickness is planed off.
before-stock-spare = { $spare ->
    [one] One more piece fits on the last board.
   *[other] { $spare } more pieces fit on the last board.
  }
before-stock-yield = The pieces are { $percent } % of the area; { $rest } % is cuts, edges and offcuts.
before-stock-yield-room = The pieces are { $percent } % of the area, room for those that still fit is { $room } %; { $rest } % is cuts, edges and offcuts.
before-stock-grain = { $places ->
    [none] The boards have no grain, so pieces may lie either way.
   *[some] { $turned ->
        [0] All pieces lie along the grain.
        [one] On the layouts, one piece lies across the grain.
       *[other] On the layouts, { $turned } pieces lie across the grain.
    }
  }
before-stock-aim-at-hand = What is at hand goes first; then { $money ->
    [yes] what costs least is bought, and the least wood is used.
   *[no] the least wood is bought and used. Not every price is known, so none counts.
  }
before-stock-aim-cost = { $money ->
    [yes] The boards that cost least in all are taken, those at hand at their price.
   *[no] Not every price is known, so the boards with the least area are taken.
  }
before-stock-aim-waste = The boards with the least area are taken, so that the least is left.
before-stock-fill = The outline fills { $percent } % of its box. Boxes are laid out here, not outlines: more may fit if you lay them by hand.
before-stock-no-gap = No gap for the cutter: the pieces touch, and come out too small. Say what the blade or the bit takes between two.
before-stock-no-thickness = Nobody says how thick a piece is, so boards of every thickness count.
before-stock-not-thorough = One piece more may fit on a board. Ask once more with 'Look longer' ticked.

before-stock-all-boards = The boards that suit
before-stock-board = Board
before-stock-each = A board gives
before-stock-most = Most possible
before-stock-share = Used of the board
before-stock-percent = { $percent } %
before-stock-use = Take
before-stock-have = At hand
before-stock-buy = Buy
before-stock-price = Price of one
before-stock-in-all = Together the boards are { $area }, { $volume } or { $feet } board feet. { $left } of it is not in the pieces.
before-stock-in-all-flat = Together the boards are { $area }. { $left } of it is not in the pieces.
before-stock-cost = The boards taken are worth { $cost }, { $each } a piece.{ $buy ->
    [none] {""}
   *[other] {" "}The ones to buy cost { $buy }.
  }
before-stock-square-m = { $amount } m²
before-stock-square-ft = { $amount } sq ft
before-stock-cubic-m = { $amount } m³
before-stock-cubic-ft = { $amount } cu ft
before-stock-unsuited = Boards that do not suit
before-stock-why = Why
before-stock-unsuited-wood = another wood: { $wood }
before-stock-unsuited-thin = less thick than the piece
before-stock-unsuited-small = too small, or the grain runs the other way
before-stock-unsuited-many = too many pieces to be laid out

before-stock-grain-word = grain
before-stock-drawn = { $each ->
    [one] One piece
   *[other] { $each } pieces
  } on { $count ->
    [one] one
   *[other] each of { $count }
  }: { $board }
before-stock-drawn-label = Layout of { $board }
before-stock-drawn-about = { $long } by { $wide }, with { $each ->
    [one] one piece
   *[other] { $each } pieces
  } of { $piece_long } by { $piece_wide }{ $turned ->
    [0] {""}
    [one] , one of them turned
   *[other] , { $turned } of them turned
  }. What is hatched is left over.

before-found-stock-enough = Boards: { $boards } of what is at hand { $pieces ->
    [one] does for one piece.
   *[other] does for { $pieces } pieces.
  }{ $kept ->
    [none] {""}
   *[other] {" "}Kept for { $runs }, opened before: { $kept } of what is at hand.
  }
before-found-stock-buy = Buy { $buy } first: { $pieces ->
    [one] one piece takes
   *[other] { $pieces } pieces take
  } { $boards }.{ $kept ->
    [none] {""}
   *[other] {" "}Kept for { $runs }, opened before: { $kept } of what is at hand.
  }
before-found-stock-cut = Every piece is cut: no board is wanted any more.
before-found-stock-short = { $short } of { $pieces } pieces have no board, and none that suits is for sale.{ $kept ->
    [none] {""}
   *[other] {" "}Kept for { $runs }, opened before: { $kept } of what is at hand.
  }
before-found-stock-none = No board of the shop is large and thick enough for a piece, and of its wood.
before-found-stock-board-holds-fewer = { $step } says { $said } pieces a board, but { $board } holds { $each }.
before-found-stock-board-holds-more = { $step } says { $said } pieces a board; { $board } would hold { $each }.
before-found-stock-across = On { $boards } some pieces lie across the grain, as the product allows.
before-found-stock-along = The layout turns no piece across the grain.

ask-stock-question-pieces = Pieces to start
ask-stock-question-product = Product
ask-stock-question-product-nothing = none
ask-stock-question-length = Length of a piece
ask-stock-question-length-hint = Along the grain. A drawing's box wins over what is typed here.
ask-stock-question-width = Width of a piece
ask-stock-question-thickness = Thickness of a piece
ask-stock-question-gap = Gap for the cutter
ask-stock-question-gap-hint = What the blade or the bit takes between two pieces.
ask-stock-question-margin = Free at the edge
ask-stock-question-margin-hint = What stays uncut all round the board.
ask-stock-question-tabs = Room for tabs
ask-stock-question-tabs-hint = Around each piece, at every side.
ask-stock-question-grain = A piece may lie
ask-stock-question-grain-length = along the grain only
ask-stock-question-grain-none = either way
ask-stock-question-wood = Wood
ask-stock-question-wood-hint = Left empty, boards of every wood count.
ask-stock-question-stocks = Out of these boards
ask-stock-question-stocks-hint = None chosen: all that suit.
ask-stock-question-own-length = Length of another board
ask-stock-question-own-length-hint = One that the shop has not written down. With it, only this size counts.
ask-stock-question-own-width = Width of that board
ask-stock-question-own-thickness = Thickness of that board
ask-stock-question-own-grain = Its grain
ask-stock-question-own-grain-length = runs along it
ask-stock-question-own-grain-none = none, as in sheets of one colour
ask-stock-question-aim = What counts first
ask-stock-question-aim-at-hand = what is at hand
ask-stock-question-aim-cost = what costs least
ask-stock-question-aim-waste = what leaves least
ask-stock-question-thorough = Look longer for one piece more on a board
