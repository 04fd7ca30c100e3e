# Pieces from boards and sheets: how many of which, how they lie, what is left.

before-kind-stock = Pieces from boards
before-about-stock = How many boards to take and buy, with a layout to scale and what is left over.
before-keep-stock-piece = Keep as material of { $product }
before-keep-stock-board = Use { $pieces ->
    [one] one piece
   *[other] { $pieces } pieces
  } per board at { $step }

before-kept-stock-piece = { $product } is now made of { $size }, with a gap of { $gap }.
before-kept-stock-board = { $step } now plans with { $pieces ->
    [one] one piece
   *[other] { $pieces } pieces
  } per board.

refused-stock-no-piece = Enter a piece’s length and width, choose a product that has them, or add a drawing.
refused-stock-no-boards = The shop has no boards yet. Add them on the Shop screen, or enter one board’s size.
refused-stock-empty-drawing = Nothing in { $name } is big enough for a piece. Check its unit.

before-stock-boards = { $count } × { $board }
before-stock-own = Board of { $size }
before-stock-head = Take { $boards } for { $pieces ->
    [one] one piece
   *[other] { $pieces } pieces
  }. { $buy ->
    [none] All are in stock.
   *[other] Buy { $buy }.
  }
before-stock-head-short = { $boards ->
    [none] There is no board in stock
   *[other] { $short } of { $pieces } pieces have no board
  }. No more that suits is for sale.
before-stock-no-stock = No board suits this piece.
before-stock-piece = A piece is { $size }, gap { $gap }{ $margin ->
    [none] {""}
   *[other] , edge margin { $margin }
  }{ $tabs ->
    [none] {""}
   *[other] , { $tabs } around it for tabs
  }.
before-stock-made-of = Made of { $size }, gap { $gap }, from { $boards ->
    [any] any board that suits
   *[other] { $boards }
  }.
before-stock-holds = { $board }: { $each ->
    [one] one piece per board.
   *[other] { $each } pieces per board.
  }
before-stock-proof-bound = No more fit, in any layout: there is no room for another.
before-stock-proof-search = No more fit: every other layout was ruled out.
before-stock-proof-open = No layout holds more than { $bound }. Nobody knows whether one holds more than { $each }.
before-stock-planed = { $board }: plane off { $off } of its thickness.
before-stock-spare = { $spare ->
    [one] One more piece fits on the last board.
   *[other] { $spare } more pieces fit on the last board.
  }
before-stock-yield = The pieces use { $percent } % of the area; { $rest } % is cuts, edges and offcuts.
before-stock-yield-room = The pieces use { $percent } % of the area, those that still fit { $room } %; { $rest } % is cuts, edges and offcuts.
before-stock-grain = { $places ->
    [none] The boards have no grain, so pieces may lie either way.
   *[some] { $turned ->
        [0] All pieces lie along the grain.
        [one] In the layouts, one piece lies across the grain.
       *[other] In the layouts, { $turned } pieces lie across the grain.
    }
  }
before-stock-aim-at-hand = Boards in stock go first. { $money ->
    [yes] Then the cheapest are bought, with the least wood.
   *[no] Then the least wood is bought and used. Some prices are missing, so none count.
  }
before-stock-aim-cost = { $money ->
    [yes] These boards cost least in all; those in stock count at their price.
   *[no] Some prices are missing, so these boards have the least area.
  }
before-stock-aim-waste = These boards have the least area, so the least is left.
before-stock-fill = The outline fills { $percent } % of its box. The layout uses boxes, not outlines: by hand, more may fit.
before-stock-no-gap = The cutter gap is 0: the pieces touch, and come out too small. Enter what the blade or bit takes.
before-stock-no-thickness = The piece’s thickness is missing, so boards of any thickness count.
before-stock-not-thorough = One more piece may fit on a board. Ask again with 'Look longer' ticked.

before-stock-all-boards = Boards that suit
before-stock-board = Board
before-stock-each = Pieces per board
before-stock-most = Most possible
before-stock-share = Used of the board
before-stock-percent = { $percent } %
before-stock-use = Take
before-stock-have = In stock
before-stock-buy = Buy
before-stock-price = Price each
before-stock-in-all = In all, the boards are { $area }, { $volume } or { $feet } board feet. { $left } of that is not in the pieces.
before-stock-in-all-flat = In all, the boards are { $area }. { $left } of that is not in the pieces.
before-stock-cost = The boards are worth { $cost }, { $each } per piece.{ $buy ->
    [none] {""}
   *[other] {" "}Those to buy cost { $buy }.
  }
before-stock-square-m = { $amount } m²
before-stock-square-ft = { $amount } sq ft
before-stock-cubic-m = { $amount } m³
before-stock-cubic-ft = { $amount } cu ft
before-stock-unsuited = Boards that do not suit
before-stock-why = Why
before-stock-unsuited-wood = different wood: { $wood }
before-stock-unsuited-thin = thinner than the piece
before-stock-unsuited-small = too small, or the grain runs the other way
before-stock-unsuited-many = too many pieces to lay out

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
  }. Hatched parts are left over.

before-found-stock-enough = Boards: { $boards } in stock { $pieces ->
    [one] is enough for one piece.
   *[other] is enough for { $pieces } pieces.
  }{ $kept ->
    [none] {""}
   *[other] {" "}Kept for { $runs }, opened before: { $kept } in stock.
  }
before-found-stock-buy = Buy { $buy } first: { $pieces ->
    [one] one piece takes
   *[other] { $pieces } pieces take
  } { $boards }.{ $kept ->
    [none] {""}
   *[other] {" "}Kept for { $runs }, opened before: { $kept } in stock.
  }
before-found-stock-cut = Every piece is cut: no more boards needed.
before-found-stock-short = { $short } of { $pieces } pieces have no board, and none that suits is for sale.{ $kept ->
    [none] {""}
   *[other] {" "}Kept for { $runs }, opened before: { $kept } in stock.
  }
before-found-stock-none = The shop has no board big and thick enough for a piece, in its wood.
before-found-stock-board-holds-fewer = { $step } says { $said } pieces per board, but { $board } holds { $each }.
before-found-stock-board-holds-more = { $step } says { $said } pieces per board, but { $board } holds { $each }.
before-found-stock-across = On { $boards } some pieces lie across the grain, as the product allows.
before-found-stock-along = In the layout, no piece lies across the grain.

ask-stock-question-pieces = Pieces to start
ask-stock-question-product = Product
ask-stock-question-product-nothing = none
ask-stock-question-length = Piece length
ask-stock-question-length-hint = Along the grain. A drawing's box wins over this.
ask-stock-question-width = Piece width
ask-stock-question-thickness = Piece thickness
ask-stock-question-gap = Gap for the cutter
ask-stock-question-gap-hint = What the blade or bit takes between two pieces.
ask-stock-question-margin = Edge margin
ask-stock-question-margin-hint = Left uncut all round the board.
ask-stock-question-tabs = Room for tabs
ask-stock-question-tabs-hint = Around each piece, on every side.
ask-stock-question-grain = Pieces may lie
ask-stock-question-grain-length = along the grain only
ask-stock-question-grain-none = either way
ask-stock-question-wood = Wood
ask-stock-question-wood-hint = Empty: boards of any wood count.
ask-stock-question-stocks = From these boards
ask-stock-question-stocks-hint = None ticked: all that suit.
ask-stock-question-own-length = Another board’s length
ask-stock-question-own-length-hint = For a board not in the shop’s book. Then only this size counts.
ask-stock-question-own-width = That board’s width
ask-stock-question-own-thickness = That board’s thickness
ask-stock-question-own-grain = That board’s grain
ask-stock-question-own-grain-length = along the length
ask-stock-question-own-grain-none = none, as in plain sheets
ask-stock-question-aim = First choice
ask-stock-question-aim-at-hand = use what is in stock
ask-stock-question-aim-cost = cost least
ask-stock-question-aim-waste = leave least
ask-stock-question-thorough = Look longer for one more piece per board
