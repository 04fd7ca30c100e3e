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
supplies-row-enough = { $needed } needed, { $there } there.
supplies-row-idle = { $there } there.
supplies-missing = { $needed } needed, { $there } there: { $missing } missing.
supplies-low = Enough for the runs, but then { $left } would be left, and you always keep { $low }.
supplies-lasts = { $covered ->
    [none] { $run }: too little from tray { $tray } on, at { $step }.
   *[other] { $run }: enough for { $covered }, not for tray { $tray } at { $step }.
  }
supplies-for-cutters = { $count ->
    [one] 1 of it is a new cutter.
   *[other] { $count } of it are new cutters.
  }
supplies-out = It ran out, and nobody wrote down that some was bought.
supplies-uncounted = Not counted yet.
supplies-there = Counted { $at }: { $counted }{ $bought ->
    [none] {""}
   *[other] , { $bought } bought since
  }{ $used ->
    [none] {""}
   *[other] , { $used } used since
  }.{ $over ->
    [yes] {" "}More was used than there was: count it.
   *[no] {""}
  }
supplies-learned = { $supply } at { $step } ({ $product }): you write { $written }, it is { $each } a piece, over { $pairs ->
    [one] 1 pair of counts
   *[other] { $pairs } pairs of counts
  } and { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }. { $enough ->
    [yes] What to buy goes by it.
   *[no] What to buy goes by it from { $pairs_enough } pairs and { $pieces_enough } pieces on.
  }
supplies-wear = { $life ->
    [none] { $in ->
        [minutes] { $used } min of cutting
       *[pieces] { $used } pieces
      }
   *[other] { $worn ->
        [unknown] { $in ->
            [minutes] { $used } min of cutting, and it lasts for { $life }: when was it changed?
           *[pieces] { $used } pieces, and it lasts for { $life }: when was it changed?
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
    [none] No change of it is written down.
   *[other] Changed { $at }.
  }
supplies-change-before = { $run }: change it before { $trays }.
supplies-new-cutters = Buy { $count }{ $cost ->
    [none] {""}
   *[other] , { $cost }
  }
supplies-lasted = From one change to the next it did { $in ->
    [minutes] { $mean } min of cutting
   *[pieces] { $mean } pieces
  } on average, over { $count ->
    [one] 1 change
   *[other] { $count } changes
  }{ $written ->
    [none] {""}
   *[other] ; you write { $written }
  }.
supplies-boards = { $buy ->
    [0] { $use } needed for { $product }, { $have } there.
    [one] Buy 1{ $cost ->
        [none] {""}
       *[other] , { $cost }
      }. { $use } needed for { $product }, { $have } there.
   *[other] Buy { $buy }{ $cost ->
        [none] {""}
       *[other] , { $cost }
      }. { $use } needed for { $product }, { $have } there.
  }
supplies-boards-no-stock = No board in the book suits it.
supplies-boards-short = { $short ->
    [one] For 1 piece there is no board, and none can be bought.
   *[other] For { $short } pieces there is no board, and none can be bought.
  }
supplies-line = { $name }: { $head }
supplies-top-short = { $covered ->
    [none] { $supply }: too little from tray { $tray } on, at { $step }
   *[other] { $supply }: enough for { $covered }, not for tray { $tray } at { $step }
  }{ $run ->
    [none] .
   *[other] {" "}({ $run }).
  } { $needed } needed, { $there } there{ $before ->
    [none] {""}
   *[other] , { $taken } of it for { $before }
  }: { $missing } short.
supplies-top-worn = { $cutter }: change it before { $trays }{ $run ->
    [none] .
   *[other] {" "}({ $run }).
  }

before-found-supplies-there = There is enough of { $supplies }.
before-found-supply-short = { $covered ->
    [none] { $supply }: too little from tray { $tray } on, at { $step }.
   *[other] { $supply }: enough for { $covered }, not for tray { $tray } at { $step }.
  } { $needed } needed, { $there } there{ $before ->
    [none] {""}
   *[other] , { $taken } of it for { $before }
  }: { $missing } short.
before-found-supplies-uncounted = Nobody counted what there is of { $supplies }.
before-found-cutter-unknown = { $cutter }: { $in ->
    [minutes] { $used } min of cutting are written down, and it lasts for { $life }. When was it changed?
   *[pieces] { $used } pieces are written down, and it lasts for { $life }. When was it changed?
  }
before-found-cutter-worn = { $cutter } is worn in the middle: change it before { $trays }.

refused-nothing-counted = Write at least one number.
refused-no-amount = Write how much, as a number.
refused-amount-below-nothing = Write how much, not less than 0.
refused-cutter-at-work = By what is written down the { $station } runs now. Press again only if it is off and the new cutter is really in.
refused-said-no-more = Nothing of it is left to take back.
refused-supply-said = Somebody counted or bought { $supply } meanwhile. If this is another purchase, press again.
refused-cutter-changed = Somebody changed { $cutter } meanwhile. If it was changed again, press again.
refused-use-unknown = The route says something else by now. Look at the page again.
