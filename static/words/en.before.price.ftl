# What a good piece costs and should sell for (runboard/plan/money/).

before-kind-price = What it costs, and its price
before-about-price = What a good piece costs line by line, what it should sell for, what a quote should be, after how many a new jig has paid.
before-keep-price = Keep { $price } as the price of { $product }
before-kept-price = The price of { $product } is { $price } now.

before-price-percent = { $number } %
before-price-head = A good piece costs { $cost }. With { $of ->
    [cost] a mark-up of { $share } on the cost
   *[price] a margin of { $share } of the price
  } it sells at { $price }.
before-price-head-without-price = A good piece costs { $cost }. No price leaves { $share } of it after fees: ask for less.
before-price-started = { $pieces ->
    [1] 1 good one is
   *[other] { $pieces } good ones are
  } wanted and { $started ->
    [1] 1 is
   *[other] { $started } are
  } started{ $sure ->
    [asked] , enough with { $certainty } certainty
    [said] , as you said, enough with { $certainty } certainty
   *[always] {""}
  }: { $rate } come good ({ $counted ->
    [said] as was said
    [0] a guess
   *[other] { $counted } counted
  }).{ $sure ->
    [always] {""}
   *[other] { " " }On average { $average ->
        [1] 1 comes
       *[other] { $average } come
      } good.
  }{ $spare ->
    [0] {""}
   *[other] { " " }{ $pieces ->
        [1] The one wanted pays
       *[other] The { $pieces } pay
      } for all { $started }: what comes good beyond { $pieces ->
        [1] it
       *[other] them
      } is counted as worth nothing.
  }
before-price-margin = With a margin, { $share } of the price stays: (cost { $cost } + fee { $fee }) / (1 − fees { $fees } − margin { $share }) = { $price }.
before-price-markup = With a mark-up, { $share } of the cost stays: (cost { $cost } × (1 + { $share }) + fee { $fee }) / (1 − fees { $fees }) = { $price }.
before-price-no-price = { $name ->
    [margin] No price leaves such a margin: fees and margin together take all of it.
   *[markup] No price gives such a mark-up: the fees take all of it.
  }
before-price-today = At { $price } today, { $fees } goes in fees and { $stays } stays, { $share } of the price.{ $hour ->
    [none] {""}
   *[other] { " " }An hour of work earns { $hour } at it.
  }
before-price-below-cost = At { $price } today each piece loses { $stays }: the cost and { $fees } of fees are more than the price.{ $hour ->
    [none] {""}
   *[other] { " " }An hour of work earns { $hour } at it.
  }
before-price-paid = The tool for { $cost } has paid after { $pieces } good { $pieces ->
    [1] piece
   *[other] pieces
  }. { $by ->
    [saves] It saves { $each } on each started one, and { $started } are started for { $size } good: { $cost } / ({ $each } × { $started } / { $size })
   *[stays] Of each { $each } stays: { $cost } / { $each }
  } = { $exactly }, which is { $runs } { $runs ->
    [1] run
   *[other] runs
  } of { $size }.{ $months ->
    [none] {""}
   *[other] { " " }At so many a month that is { $months } months.
  }
before-price-never-paid = The tool for { $cost } never pays: { $by ->
    [saves] it saves nothing.
   *[stays] nothing stays of a piece.
  }

before-price-bars = What a good piece costs, by kind
before-price-kind = { $of ->
    [material] Material
    [hands] Work
    [machine] Machines
    [supply] What is used up
    [packing] Packing
   *[other] Other costs
  }
before-price-costs = What it costs
before-price-total = In all
before-price-column-what = What
before-price-column-quantity = How much
before-price-column-run = The run
before-price-column-each = A good piece
before-price-quantity = { $word ->
    [pieces] { $number } { $number ->
        [1] piece
       *[other] pieces
      }
    [boards] { $number } { $number ->
        [1] board
       *[other] boards
      }
    [worn] { $number } worn out
    [run] once
   *[own] { $number } { $unit }
  }
before-price-line = { $code ->
    [setup] { $name }, setting up
    [hands] { $name }, hands
    [watched] { $name }, watching
    [machine] { $name }, the machine
    [material] Material
    [packing] Packing
   *[other] { $name }
  }
before-price-known = { $known ->
    [measured] , measured { $times ->
        [one] once
       *[other] { $times } times
      }
    [partly] , partly measured
   *[said] , set by hand
  }
before-price-reckoned = { $quantity } × { $rate }
before-price-loads = { $name } is reckoned in the route’s loads of { $each }: { $started ->
    [1] 1 piece is
   *[other] { $started } pieces are
  } { $loads ->
    [1] 1 load
   *[other] { $loads } loads
  }{ $last ->
    [0] .
   *[other] , the last with { $last } and reckoned in full. A few pieces more may cost less each.
  }{ $boards ->
    [0] {""}
    [1] { " " }The material is 1 board: it does not give { $each }.
   *[other] { " " }The material is { $boards } boards: not each of them gives { $each }.
  }

before-price-prices = What stays of a price
before-price-column-price = Price
before-price-column-one = One sells at
before-price-column-fees = Fees
before-price-column-stays = Stays
before-price-column-shares = Share of the price
before-price-column-hour = An hour earns
before-price-price-of = { $name ->
    [today] Today
    [margin] Margin { $share }
   *[markup] Mark-up { $share }
  }

before-price-quotes = A quote, with the { $of ->
    [cost] mark-up
   *[price] margin
  } asked
before-price-column-pieces = Good of started
before-price-column-all = All of them
before-price-good-of = { $pieces } of { $started }
before-price-by-count = What a good piece costs in a run of so many
before-price-formulas = How the prices are worked out
before-price-column-formula = With each of its figures

before-price-no-currency = The shop’s currency is not said yet: amounts are plain numbers. Say it on the Shop screen, under Money.
before-price-no-hour-rate = What an hour of work is worth is not said: work is counted at nothing.
before-price-no-material = { $why ->
    [no-piece] What a piece is made from is not written down for this product: its material is not counted.
    [no-stock] No board of the shop’s suits this piece: its material is not counted.
    [short] The boards at hand are too few and none can be bought: the material is not counted.
    [no-price] A board that it takes has no price: the material is not counted.
   *[nobody-said] What the material costs is not said: it is not counted.
  }
before-price-board-shared = Of a board that gives more pieces than are started, the share that these take is counted.
before-price-unpriced = Without a price, so not counted: { $names }.
before-price-no-rate = What an hour costs is not said, so it is not counted: { $names }.
before-price-other-units = Used in another unit than it is bought in, so not counted: { $names }.
before-price-guessed = Hours that are not called measured or set by hand are a guess: they get better with every measured run.
before-price-all-to-the-end = All that are started are reckoned to the last step, also those that do not come good.
before-price-watched = Somebody stays and watches: { $share } of that time is counted as work.

refused-fewer-started = { $started } started cannot give { $pieces } good ones. Start more, or want fewer.
refused-nothing-to-reckon = Nothing is said to reckon with. Choose a product, or write down what it costs.

before-found-price-below-cost = It sells at { $price }, and a good piece costs { $cost } with { $fees } of fees: each one loses { $loses }.
before-found-price-covers = It sells at { $price }: { $stays } a piece is left after cost and fees.
