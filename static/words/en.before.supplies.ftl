# What to buy: supplies and cutters, on the shopping list, at the top of Plan and of a run, on the run sheet.

supplies-row-short = Buy { $packets ->
    [0] { $buy }
    [one] 1 packet ({ $buy })
   *[other] { $packets } packets ({ $buy })
  }{ $cost ->
    [none] {""}
   *[other] , { $cost }
  }
supplies-row-low = Buy { $packets ->
    [0] { $buy }
    [one] 1 packet ({ $buy })
   *[other] { $packets } packets ({ $buy })
  }{ $cost ->
    [none] {""}
   *[other] , { $cost }
  }
supplies-row-unknown = { $needed } needed. Not counted yet.
supplies-row-enough = { $needed } needed, { $there } in stock.
supplies-row-idle = { $there } in stock.
supplies-missing = { $needed } needed, { $there } in stock: { $missing } missing.
supplies-low = Enough for the runs, but only { $left } would be left. You always keep { $low }.
supplies-lasts = { $covered ->
    [none] { $run }: too little from tray { $tray } on, at { $step }.
   *[other] { $run }: enough for { $covered }, not for tray { $tray } at { $step }.
  }
supplies-for-cutters = { $count ->
    [one] 1 of these is a new cutter.
   *[other] { $count } of these are new cutters.
  }
supplies-out = It ran out, and no purchase is entered since.
supplies-uncounted = Not counted yet.
supplies-there = Counted { $at }: { $counted }{ $bought ->
    [none] {""}
   *[other] , { $bought } bought since
  }{ $used ->
    [none] {""}
   *[other] , { $used } used since
  }.{ $over ->
    [yes] {" "}More was used than was there: count it.
   *[no] {""}
  }
supplies-learned = { $supply } at { $step } ({ $product }): you enter { $written }, real use is { $each } per piece, from { $pairs ->
    [one] 1 pair of counts
   *[other] { $pairs } pairs of counts
  } and { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }. { $enough ->
    [yes] What to buy uses it.
   *[no] What to buy uses it from { $pairs_enough } pairs and { $pieces_enough } pieces on.
  }
supplies-wear = { $life ->
    [none] { $in ->
        [minutes] { $used } min of cutting
       *[pieces] { $used } pieces
      }
   *[other] { $worn ->
        [unknown] { $in ->
            [minutes] { $used } min of cutting, and it lasts { $life }: when was it changed?
           *[pieces] { $used } pieces, and it lasts { $life }: when was it changed?
          }
        [yes] Worn: { $in ->
            [minutes] { $used } of { $life } min of cutting
           *[pieces] { $used } of { $life } pieces
          }
       *[no] { $in ->
            [minutes] { $left } of { $life } min of cutting left
           *[pieces] { $left } of { $life } pieces left
          }
      }
  }{ $worn ->
    [unknown] {""}
   *[other] .
  } { $at ->
    [none] No change entered.
   *[other] Changed { $at }.
  }
supplies-change-before = { $run }: change it before { $trays }.
supplies-new-cutters = Buy { $count }{ $cost ->
    [none] {""}
   *[other] , { $cost }
  }
supplies-lasted = It lasted { $in ->
    [minutes] { $mean } min of cutting
   *[pieces] { $mean } pieces
  } on average, over { $count ->
    [one] 1 change
   *[other] { $count } changes
  }{ $written ->
    [none] {""}
   *[other] ; you entered { $written }
  }.
supplies-boards = { $buy ->
    [0] { $use } needed for { $product }, { $have } in stock.
    [one] Buy 1{ $cost ->
        [none] {""}
       *[other] , { $cost }
      }. { $use } needed for { $product }, { $have } in stock.
   *[other] Buy { $buy }{ $cost ->
        [none] {""}
       *[other] , { $cost }
      }. { $use } needed for { $product }, { $have } in stock.
  }
supplies-boards-no-stock = No board in the shop’s book suits it.
supplies-boards-short = { $short ->
    [one] 1 piece has no board, and none is for sale.
   *[other] { $short } pieces have no board, and none is for sale.
  }
supplies-line = { $name }: { $head }
supplies-top-short = { $covered ->
    [none] { $supply }: too little from tray { $tray } on, at { $step }
   *[other] { $supply }: enough for { $covered }, not for tray { $tray } at { $step }
  }{ $run ->
    [none] .
   *[other] {" "}({ $run }).
  } { $needed } needed, { $there } in stock{ $before ->
    [none] {""}
   *[other] , { $taken } of that for { $before }
  }: { $missing } short.
supplies-top-worn = { $cutter }: change it before { $trays }{ $run ->
    [none] .
   *[other] {" "}({ $run }).
  }

before-found-supplies-there = Enough of { $supplies }.
before-found-supply-short = { $covered ->
    [none] { $supply }: too little from tray { $tray } on, at { $step }.
   *[other] { $supply }: enough for { $covered }, not for tray { $tray } at { $step }.
  } { $needed } needed, { $there } in stock{ $before ->
    [none] {""}
   *[other] , { $taken } of that for { $before }
  }: { $missing } short.
before-found-supplies-uncounted = Not counted: { $supplies }.
before-found-cutter-unknown = { $cutter }: { $in ->
    [minutes] { $used } min of cutting so far, and it lasts { $life }. When was it changed?
   *[pieces] { $used } pieces so far, and it lasts { $life }. When was it changed?
  }
before-found-cutter-worn = { $cutter } wears out part-way: change it before { $trays }.

refused-nothing-counted = Enter at least one number.
refused-no-amount = Enter how much, as a number.
refused-amount-below-nothing = Enter how much, 0 or more.
refused-cutter-at-work = The { $station } is entered as running. Press again only if it is off and the new cutter is really in.
refused-said-no-more = Nothing is left to undo.
refused-supply-said = Somebody counted or bought { $supply } meanwhile. If this is another purchase, press again.
refused-cutter-changed = Somebody changed { $cutter } meanwhile. If it was changed again, press again.
refused-use-unknown = The route says something else by now. Check the page again.
