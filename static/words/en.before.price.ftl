# What a good piece costs and should sell for (runboard/plan/money/).

before-kind-price = What it costs, and its price
before-about-price = What a good piece costs, line by line; its price; a quote; when a new jig has paid off.
before-keep-price = Keep { $price } as price of { $product }
before-kept-price = The price of { $product } is now { $price }.

before-price-percent = { $number } %
before-price-head = A good piece costs { $cost }. With { $of ->
    [cost] a mark-up of { $share } on the cost
   *[price] a margin of { $share } of the price
  }, sell it at { $price }.
before-price-head-without-price = A good piece costs { $cost }. No price leaves { $share } of it after fees: ask for less.
before-price-started = { $pieces } good wanted, { $started } started{ $sure ->
    [asked] , enough with { $certainty } certainty
    [said] , as you entered, enough with { $certainty } certainty
   *[always] {""}
  }: { $rate } turn out good ({ $counted ->
    [said] as entered
    [0] a guess
   *[other] { $counted } counted
  }).{ $sure ->
    [always] {""}
   *[other] { " " }On average { $average } { $average ->
        [1] turns
       *[other] turn
      } out good.
  }{ $spare ->
    [0] {""}
   *[other] { " " }The { $pieces } wanted { $pieces ->
        [1] pays
       *[other] pay
      } for all { $started }: more good ones count as worth nothing.
  }
before-price-margin = With a margin, { $share } of the price stays: (cost { $cost } + fee { $fee }) / (1 − fees { $fees } − margin { $share }) = { $price }.
before-price-markup = With a mark-up, { $share } of the cost stays: (cost { $cost } × (1 + { $share }) + fee { $fee }) / (1 − fees { $fees }) = { $price }.
before-price-no-price = { $name ->
    [margin] No price leaves that margin: fees and margin together take all of it.
   *[markup] No price gives that mark-up: fees take all of it.
  }
before-price-today = At { $price } today, fees take { $fees } and { $stays } stays, { $share } of the price.{ $hour ->
    [none] {""}
   *[other] { " " }An hour of work then earns { $hour }.
  }
before-price-below-cost = At { $price } today, each piece loses { $stays }: the cost plus { $fees } fees are more than the price.{ $hour ->
    [none] {""}
   *[other] { " " }An hour of work then earns { $hour }.
  }
before-price-paid = The tool for { $cost } has paid off after { $pieces } good { $pieces ->
    [1] piece
   *[other] pieces
  }. { $by ->
    [saves] It saves { $each } per started piece, with { $started } started for { $size } good: { $cost } / ({ $each } × { $started } / { $size })
   *[stays] { $each } of each piece stays: { $cost } / { $each }
  } = { $exactly }, or { $runs } { $runs ->
    [1] run
   *[other] runs
  } of { $size }.{ $months ->
    [none] {""}
   *[other] { " " }At your monthly sales, that is { $months } months.
  }
before-price-never-paid = The tool for { $cost } never pays off: { $by ->
    [saves] it saves nothing.
   *[stays] nothing stays of a piece.
  }

before-price-bars = Cost of a good piece, by kind
before-price-kind = { $of ->
    [material] Material
    [hands] Work
    [machine] Machines
    [supply] Supplies
    [packing] Packing
   *[other] Other costs
  }
before-price-costs = Costs
before-price-total = Total
before-price-column-what = What
before-price-column-quantity = Amount
before-price-column-run = Whole run
before-price-column-each = Per good piece
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
    [setup] { $name }, setup
    [hands] { $name }, hands-on
    [watched] { $name }, watching
    [machine] { $name }, machine
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
before-price-loads = { $name } counts in the route’s loads of { $each }: { $started } { $started ->
    [1] piece makes
   *[other] pieces make
  } { $loads } { $loads ->
    [1] load
   *[other] loads
  }{ $last ->
    [0] .
   *[other] , the last with { $last } and counted in full. A few more pieces may cost less each.
  }{ $boards ->
    [0] {""}
    [1] { " " }The material is 1 board: it does not give { $each }.
   *[other] { " " }The material is { $boards } boards: not each of them gives { $each }.
  }

before-price-prices = What stays at each price
before-price-column-price = Price
before-price-column-one = Price per piece
before-price-column-fees = Fees
before-price-column-stays = Stays
before-price-column-shares = Share of the price
before-price-column-hour = Earned per hour
before-price-price-of = { $name ->
    [today] Today
    [margin] Margin { $share }
   *[markup] Mark-up { $share }
  }

before-price-quotes = A quote, with that { $of ->
    [cost] mark-up
   *[price] margin
  }
before-price-column-pieces = Good of started
before-price-column-all = Whole quote
before-price-good-of = { $pieces } of { $started }
before-price-by-count = Cost of a good piece, by run size
before-price-formulas = How the prices are worked out
before-price-column-formula = With its figures

before-price-no-currency = The shop’s currency is not set, so amounts are plain numbers. Set it on the Shop screen, under Money.
before-price-no-hour-rate = An hour of work has no value set: work counts as nothing.
before-price-no-material = { $why ->
    [no-piece] The product does not say what a piece is made from: its material is not counted.
    [no-stock] None of the shop’s boards suits this piece: its material is not counted.
    [short] Too few boards in stock and none to buy: the material is not counted.
    [no-price] One of its boards has no price: the material is not counted.
   *[nobody-said] The material has no cost set: it is not counted.
  }
before-price-board-shared = If a board gives more pieces than are started, only their share counts.
before-price-unpriced = No price, so not counted: { $names }.
before-price-no-rate = No cost per hour, so not counted: { $names }.
before-price-other-units = Used in another unit than bought, so not counted: { $names }.
before-price-guessed = Hours not marked measured or set by hand are a guess. Every measured run improves them.
before-price-all-to-the-end = All started pieces count to the last step, even those that do not turn out good.
before-price-watched = Somebody stays and watches: { $share } of that time counts as work.

refused-fewer-started = { $started } started cannot give { $pieces } good ones. Start more, or want fewer.
refused-nothing-to-reckon = There is nothing to work with. Choose a product, or enter its costs.

before-found-price-below-cost = It sells at { $price }, but a good piece costs { $cost } plus { $fees } fees: each one loses { $loses }.
before-found-price-covers = It sells at { $price }: { $stays } per piece stays after cost and fees.
