"""Money before a run: lines that add up to what is shown, measured hours, prices that leave what was asked, what is kept."""

import pickle
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.before.finding import BeforeRun
from runboard.plan.before.kinds import KINDS
from runboard.plan.estimates import estimates_from
from runboard.plan.money.cents import Amount, exact, shared_out
from runboard.plan.money.looked import findings
from runboard.plan.money.price import Priced, answer, keeps, price_for
from runboard.plan.money.question import CountedPieces, Expense, LearnedTime, Price, begin, learned
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.book_json import BookError, book_from_json
from runboard.shop.money import Money
from runboard.words.before.price import said
from runboard.words.before.run_sheet import found_in_words
from runboard.words.facts import money_in_words, quantity_in_words
from tests.core.pressing import Floor
from tests.scenario import a_pass, operation, shop

MONEY = {"currency": "EUR", "locale": "de-DE", "margin": 0.3, "fee_share": 0.1, "fee_each": 0.35, "packing_each": 1.2}


def book(**more: Any) -> Book:
    """Rails that are routed on the CNC and get their hooks at the bench."""
    record = shop() | {"money": MONEY, "hour_rate": 25}
    cut = operation("cut", "cnc", a_pass(size="board", pieces=10, setup=6, machine=30), attendance="watched")
    hooks = operation("hooks", "bench", a_pass(size="piece", hand=3), uses=[{"supply": "hook", "each": 4}])
    record["products"][0] |= {"operations": [cut, hooks], "price": 34}
    record["stations"][0]["hour_rate"] = 6
    record["supplies"] = [{"key": "hook", "name": "Brass hooks", "pack": 100, "price": 32}]
    return book_from_json(record | more)


def asked(pieces: int = 10, **more: Any) -> Price:
    return Price(**{"product": "rail", "pieces": pieces, "good_rate": 1.0, "material_each": 2.5, **more})


def amounts(found: Priced) -> dict[str, Decimal]:
    return {f"{line.code} {line.name}".strip(): line.amount for line in found.costs.lines}


def test_every_line_is_a_quantity_times_a_rate() -> None:
    found = answer(book(), asked(10))

    assert amounts(found) == {
        "material": Decimal("25.00"),
        "setup Cut": Decimal("2.50"),
        "watched Cut": Decimal("12.50"),
        "machine Cut": Decimal("3.00"),
        "hands Hooks": Decimal("12.50"),
        "supply Brass hooks": Decimal("12.80"),
        "packing": Decimal("12.00"),
    }
    assert (found.costs.total, found.costs.a_piece) == (Decimal("80.30"), Decimal("8.03"))


def test_what_does_not_come_good_is_paid_by_what_does() -> None:
    found = answer(book(), asked(10, start=20))

    assert found.costs.started == 20
    assert amounts(found)["material"] == Decimal("50.00")
    assert amounts(found)["packing"] == Decimal("12.00")


def test_a_good_rate_that_nobody_typed_is_counted_else_guessed() -> None:
    guessed = answer(book(), asked(10, good_rate=None)).costs
    counted = answer(book(), asked(10, good_rate=None, counted=(CountedPieces("hooks", 30, 30),))).costs

    assert (guessed.good_rate.source, counted.good_rate.source) == ("guess", "counted")
    assert counted.started > guessed.started


def test_setting_up_is_spread_over_a_quote_s_pieces() -> None:
    quotes = {quote.pieces: quote for quote in answer(book(), asked(10)).quotes}

    assert quotes[1].a_piece > quotes[10].a_piece > quotes[100].a_piece
    assert quotes[10].whole == quotes[10].price * 10  # type: ignore[operator]


def test_measured_times_are_reckoned_with_and_said_to_be_measured() -> None:
    times = (LearnedTime("hooks", "hand", timedelta(minutes=6), 9),)
    found = answer(book(), asked(10, times=times))
    (hooks,) = [line for line in found.costs.lines if line.name == "Hooks"]
    (cut,) = [line for line in found.costs.lines if line.code == "watched"]

    assert (hooks.amount, hooks.known, hooks.times) == (Decimal("25.00"), "measured", 9)
    assert (cut.known, cut.times) == ("guess", 0)


def test_an_operation_of_which_a_part_is_measured_says_so() -> None:
    record = shop() | {"hour_rate": 25}
    passes = [a_pass("120", hand=3), a_pass("180", hand=2)]
    record["products"][0]["operations"] = [operation("sand", "sander", *passes)]
    times = (LearnedTime("sand:120", "hand", timedelta(minutes=4), 3),)

    (line,) = answer(book_from_json(record), asked(10, times=times, material_each=0)).costs.lines

    assert (line.amount, line.known, line.times) == (Decimal("25.00"), "partly", 3)


def test_what_the_log_measured_and_counted_comes_into_the_question() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(10)
    floor.press(
        "load done",
        run="r1",
        load="clean/1",
        body={"counts": {"1": {"good": 4, "scrap": [{"pieces": 1, "why": "split"}]}}},
    )

    found = learned(floor.book, floor.state, Price(product="rail"))

    assert [(one.step, one.kind, one.times) for one in found.times] == [("clean", "hand", 1)]
    assert [(one.operation, one.good, one.bad) for one in found.counted if one.operation == "clean"] == [
        ("clean", 4, 1)
    ]


def test_watched_time_counts_as_work_as_far_as_was_said() -> None:
    assert amounts(answer(book(), asked(10, watched=0.5)))["watched Cut"] == Decimal("6.25")


def test_a_worn_cutter_costs_the_share_of_its_life() -> None:
    record = shop() | {"cutters": [{"key": "bit", "name": "Straight bit", "life": 200, "price": 24}]}
    record["products"][0]["operations"] = [operation("cut", "bench", cutter="bit")]

    assert amounts(answer(book_from_json(record), asked(10, material_each=0))) == {
        "cutter Straight bit": Decimal("1.20")
    }


def test_a_supply_is_known_by_its_name_and_a_small_share_of_a_life_is_not_nothing() -> None:
    record = shop() | {"cutters": [{"key": "bit", "name": "Straight bit", "life": 5000, "price": 40}]}
    uses = [{"supply": "brass  Hooks", "each": 4}]
    record["products"][0]["operations"] = [operation("cut", "bench", cutter="bit", uses=uses)]
    record["supplies"] = [{"key": "h", "name": "Brass hooks", "pack": 100, "price": 32}]

    found = answer(book_from_json(record), asked(1, material_each=0))

    assert amounts(found) == {"supply Brass hooks": Decimal("1.28"), "cutter Straight bit": Decimal("0.01")}


def test_what_nobody_priced_is_named_and_not_counted() -> None:
    found = answer(book(supplies=[], hour_rate=None), asked(10, material_each=None))

    assert found.costs.unpriced == ("hook",)
    assert found.costs.no_hour_rate
    assert found.costs.no_material
    assert "supply hook" not in amounts(found)


def test_fees_are_in_the_price_and_what_was_asked_stays() -> None:
    found = answer(book(), asked(10))
    margin, markup = found.at("margin"), found.at("markup")

    assert margin and markup
    assert margin.of_price == Decimal("0.300")
    assert markup.of_cost == Decimal("0.300")
    assert found.meant == margin
    assert margin.price == Decimal("13.97")  # (8.03 + 0.35) / (1 - 0.1 - 0.3)
    assert markup.price == Decimal("11.99")  # (8.03 * 1.3 + 0.35) / (1 - 0.1)


def test_an_hour_of_work_earns_what_stays_and_what_it_was_counted_at() -> None:
    today = answer(book(), asked(10)).at("today")

    assert today is not None
    assert today.stays == Decimal("34.00") - Decimal("3.75") - Decimal("8.03")
    assert today.an_hour == Decimal("227.00")  # (22.22 * 10 + 27.50) / 1.1 h


def test_shares_that_leave_nothing_give_no_price() -> None:
    found = answer(book(), asked(10, margin=0.9))

    assert found.at("margin") is None
    assert found.at("markup") is not None
    assert [quote.price for quote in found.quotes] == [None] * len(found.quotes)


@given(
    st.decimals("0.01", "5000", places=2),
    st.floats(0, 0.6),
    st.floats(0, 0.3),
    st.floats(0, 10),
    st.sampled_from(("price", "cost")),
)
def test_what_stays_of_a_price_is_the_share_that_was_asked(
    cost: Decimal, margin: float, fee_share: float, fee: float, of: Any
) -> None:
    question = Price(margin=margin, fee_share=fee_share, fee_each=fee)

    price = price_for(question, cost, of, 2)

    assert price is not None
    stays = float(price) * (1 - fee_share) - fee - float(cost)
    assert stays == pytest.approx(margin * float(price if of == "price" else cost), abs=0.011)


@given(st.lists(st.decimals("-50", "900", places=2), max_size=12), st.integers(1, 200))
def test_shares_of_a_piece_add_up_to_the_total_a_piece(parts: list[Decimal], pieces: int) -> None:
    found = shared_out(parts, pieces, 2)

    total = sum(parts, Decimal(0))
    assert abs(sum(found, Decimal(0)) - total / pieces) <= Decimal("0.005")
    assert all(abs(each - part / pieces) <= Decimal("0.01") for each, part in zip(found, parts, strict=True))


@given(
    st.integers(1, 60),
    st.floats(0.3, 1),
    st.floats(0, 90),
    st.lists(st.tuples(st.floats(0, 50), st.sampled_from(("good piece", "started piece", "run"))), max_size=4),
    st.sampled_from(("EUR", "JPY", "")),
)
def test_the_lines_that_are_shown_add_up_to_what_is_shown(
    pieces: int, good_rate: float, rate: float, others: list[tuple[float, Any]], currency: str
) -> None:
    shop_ = book(money=MONEY | {"currency": currency})
    more = tuple(Expense("more", amount, each) for amount, each in others)
    question = asked(pieces, good_rate=good_rate, hour_rate=rate, others=more)

    found = answer(shop_, question)

    lines = found.costs.lines
    assert sum((line.amount for line in lines), Decimal(0)) == found.costs.total
    assert sum((line.each for line in lines), Decimal(0)) == found.costs.a_piece
    places = 0 if currency == "JPY" else 2
    assert all(line.amount == line.amount.quantize(Decimal(1).scaleb(-places)) for line in lines)
    assert all(abs(line.quantity * line.rate - line.amount) <= Decimal("0.5").scaleb(-places) for line in lines)
    (table,) = [each for each in said(shop_, question, found).tables if each.title == "Costs"]
    assert len(table.rows) == len(lines) + 1


def test_a_tool_has_paid_after_what_it_costs_over_what_it_saves() -> None:
    found = answer(book(), asked(10, tool=60, tool_saves=timedelta(minutes=1.2), pieces_a_month=20)).paid

    assert found is not None
    assert (found.saves, found.each, found.pieces) == (True, Decimal("0.50"), Decimal("120.0"))
    assert (found.runs, found.months) == (Decimal("12.0"), Decimal("6.0"))


def test_what_a_tool_saves_is_divided_unrounded_and_saved_on_every_started_piece() -> None:
    saves = {"hour_rate": 35, "tool": 60, "tool_saves": timedelta(minutes=1)}

    plain = answer(book(), asked(60, **saves)).paid
    some_bad = answer(book(), asked(60, start=71, **saves)).paid

    assert plain is not None
    assert some_bad is not None
    assert float(plain.pieces or 0) == pytest.approx(60 / (35 / 60))  # 102.86
    assert float(some_bad.pieces or 0) == pytest.approx(60 / (35 / 60 * 71 / 60))  # 86.93


def test_a_tool_that_pays_at_a_whole_count_pays_at_that_count() -> None:
    found = answer(book(), asked(10, hour_rate=35, tool=35, tool_saves=timedelta(minutes=1)))

    (told,) = [line for line in said(book(), found.asked, found).lines if "has paid" in line]

    assert "after 60 good pieces" in told


def test_how_a_tool_pays_is_said_with_every_figure() -> None:
    found = answer(book(), asked(60, start=71, hour_rate=35, tool=60, tool_saves=timedelta(minutes=1)))

    (told,) = [line for line in said(book(), found.asked, found).lines if "has paid" in line]

    assert "after 87 good pieces" in told
    assert "60,00 € / (0,5833 € × 71 / 60) = 86,9" in spaced(told)


def test_a_tool_that_saves_nothing_is_paid_by_what_stays_or_never() -> None:
    pays = answer(book(), asked(10, tool=222.2)).paid
    never = answer(book(), asked(10, tool=60, price=1)).paid

    assert pays is not None
    assert never is not None
    assert (pays.saves, pays.each, pays.pieces) == (False, Decimal("22.22"), Decimal("10.0"))
    assert never.pieces is None


def test_a_form_begins_with_what_the_book_says_and_what_is_left_empty_is_the_book_s() -> None:
    begun = begin(book(), {"product": "rail"})

    assert (begun.product, begun.price, begun.hour_rate, begun.fee_each) == ("rail", 34, 25, 0.35)
    assert answer(book(), begun).costs == answer(book(), Price(product="rail")).costs


@pytest.mark.parametrize(
    ("question", "code"),
    [
        (Price(), "nothing to reckon"),
        (asked(10, start=9), "fewer started"),
        (asked(3000, good_rate=0.5), "run too large"),
    ],
)
def test_what_cannot_be_reckoned_is_refused_with_why(question: Price, code: str) -> None:
    with pytest.raises(Refused, match=code):
        answer(book(), question)


def test_the_price_is_kept_with_one_press_and_not_where_the_product_is_gone() -> None:
    found = answer(book(), asked(10))
    (meant,) = keeps(book(), found.asked, found)
    record = {"products": [{"key": "rail", "price": 34}]}

    meant.put(record)

    assert record["products"][0]["price"] == 13.97
    assert meant.facts["price"] == Amount(Decimal("13.97"), book().money)
    with pytest.raises(Refused, match="product unknown"):
        meant.put({"products": []})


def test_a_price_that_was_typed_may_be_kept_too() -> None:
    found = answer(book(), asked(10, price=29.5))

    assert [str(keep.facts["price"].number) for keep in keeps(book(), found.asked, found)] == ["13.97", "29.50"]


def test_an_answer_goes_into_a_child_and_back() -> None:
    found = answer(book(), asked(10))

    assert pickle.loads(pickle.dumps(found)) == found
    assert KINDS["price"].question is Price


# in words


def spaced(text: str) -> str:
    """The text with plain spaces."""
    return text.replace("\u00a0", " ").replace("\u202f", " ")


def test_every_figure_of_the_formula_is_said() -> None:
    found = answer(book(), asked(10))

    told = said(book(), found.asked, found)

    assert spaced(told.head) == "A good piece costs 8,03 €. With a margin of 30 % of the price, sell it at 13,97 €."
    tables = {table.title: table for table in told.tables}
    margin, markup = (spaced(row[0]) for row in tables["How the prices are worked out"].rows)
    assert "(cost 8,03 € + fee 0,35 €) / (1 − fees 10 % − margin 30 %) = 13,97 €" in margin
    assert "(cost 8,03 € × (1 + 30 %) + fee 0,35 €) / (1 − fees 10 %) = 11,99 €" in markup
    assert [spaced(text) for text in tables["Costs"].rows[-1]] == ["Total", "", "80,30 €", "8,03 €"]
    assert told.record["cost"]["each"] == 8.03
    assert spaced(told.lines[0]) == "10 good wanted, 10 started: 100 % turn out good (as entered)."


def test_the_quote_stands_first_with_one_line_a_count_and_what_it_costs_is_folded() -> None:
    found = answer(book(), asked(12, good_rate=0.9))

    tables = said(book(), found.asked, found).tables

    assert [(table.title, table.folded) for table in tables] == [
        ("A quote, with that margin", False),
        ("What stays at each price", False),
        ("Costs", True),
        ("Cost of a good piece, by run size", True),
        ("How the prices are worked out", True),
    ]
    assert [len(table.heads) for table in tables if table.title != "What stays at each price"] == [3, 4, 2, 1]
    assert "12 of 15" in [row[0] for row in tables[0].rows]
    assert ("Hooks, hands-on", "0,75 h × 25,00 €") in [(row[0], spaced(row[1])) for row in tables[2].rows]


def test_boards_are_called_boards_and_shares_have_no_more_figures_than_mean_something() -> None:
    record = shop() | {"cutters": [{"key": "bit", "name": "Straight bit", "life": 170, "price": 24}]}
    record["products"][0] |= {
        "operations": [operation("cut", "bench", cutter="bit")],
        "piece": {"length": 300, "width": 80, "thickness": 18},
    }
    sizes = {"length": 1000, "width": 80, "thickness": 18}
    record["stocks"] = [{"key": "ash", "name": "Ash board", **sizes, "wood": "ash", "price": 12}]
    shop_ = book_from_json(record)
    found = answer(shop_, Price(product="rail", pieces=8, good_rate=1))

    costs = [row[:2] for table in said(shop_, found.asked, found).tables for row in table.rows]

    assert ("Ash board", "2.67 boards × 12.00") in costs
    assert ("Straight bit", "0.0471 worn out × 24.00") in costs
    assert all(line.amount == round(line.quantity * line.rate, 2) for line in found.costs.lines)


def test_loads_that_are_not_the_boards_are_said_and_that_one_is_not_full() -> None:
    record = shop()
    cut = operation("cut", "cnc", a_pass(size="board", pieces=5, machine=30), attendance="watched")
    record["products"][0] |= {"operations": [cut], "piece": {"length": 300, "width": 80, "thickness": 18}}
    sizes = {"length": 1000, "width": 80, "thickness": 18}
    record["stocks"] = [{"key": "ash", "name": "Ash board", **sizes, "wood": "ash", "price": 12}]
    shop_ = book_from_json(record)

    def told(pieces: int) -> list[str]:
        found = answer(shop_, Price(product="rail", pieces=pieces, good_rate=1, price=1))
        return [line for line in said(shop_, found.asked, found).lines if line.startswith("Cut counts")]

    assert told(12) == [
        (
            "Cut counts in the route’s loads of 5: 12 pieces make 3 loads, the last with 2 and counted in full. A few more pieces may cost "
            "less each. The material is 4 boards: not each of them gives 5."
        )
    ]
    assert told(3) == [
        (
            "Cut counts in the route’s loads of 5: 3 pieces make 1 load, the last with 3 and counted in full. A few more pieces may cost "
            "less each."
        )
    ]


def first_line(**more: Any) -> str:
    found = answer(book(), asked(**more))
    return spaced(said(book(), found.asked, found).lines[0])


def test_how_surely_the_started_ones_suffice_and_that_the_rest_is_worth_nothing_is_said() -> None:
    assert first_line(pieces=40, good_rate=0.895) == (
        "40 good wanted, 48 started, enough with 90 % certainty: 89,5 % turn out good (as entered). "
        "On average 43 turn out good. The 40 wanted pay for all 48: more good ones count as worth nothing."
    )


def test_one_good_piece_is_one() -> None:
    assert first_line(pieces=1).startswith("1 good wanted, 1 started")


def test_a_start_that_was_said_has_its_own_chance() -> None:
    assert first_line(pieces=10, good_rate=0.9, start=10) == (
        "10 good wanted, 10 started, as you entered, enough with 34,9 % certainty: 90 % turn out good (as "
        "entered). On average 9 turn out good."
    )


def test_a_cost_of_the_whole_run_is_there_once() -> None:
    asked_ = Price(pieces=4, others=(Expense("Stall", 50, "run"),))

    tables = said(book(money={}), asked_, answer(book(money={}), asked_)).tables

    assert ("Stall", "once × 50.00", "50.00", "12.50") in [row for table in tables for row in table.rows]


def test_without_a_currency_amounts_are_plain_numbers_and_it_is_said_where_to_say_it() -> None:
    plain = book(money={})
    found = answer(plain, asked(10))

    told = said(plain, found.asked, found)

    assert "A good piece costs 6.83." in told.head
    assert any("Shop screen, under Money" in doubt for doubt in told.doubts)


@pytest.mark.parametrize(
    ("currency", "locale", "told"),
    [
        ("EUR", "de-DE", "1.234,50 €"),
        ("USD", "en-US", "$1,234.50"),
        ("EUR", "fr-FR", "1 234,50 €"),
        ("CHF", "", "CHF 1,234.50"),
        ("EUR", "xx-QQ", "€1,234.50"),
        ("", "de-DE", "1.234,50"),
    ],
)
def test_an_amount_is_written_as_the_shop_s_locale_writes_it(currency: str, locale: str, told: str) -> None:
    found = money_in_words(Decimal("1234.50"), Money(currency, locale))

    assert spaced(found) == told


@pytest.mark.parametrize(
    ("currency", "locale", "told"),
    [("CHF", "de-CH", "CHF -1.90"), ("CHF", "en-IE", "-CHF 1.90"), ("EUR", "de-DE", "-1,90 €"), ("EUR", "", "-€1.90")],
)
def test_an_amount_that_is_lost_stands_as_far_from_its_currency(currency: str, locale: str, told: str) -> None:
    assert spaced(money_in_words(Decimal("-1.90"), Money(currency, locale))) == told


def test_a_rate_keeps_its_decimals_and_an_amount_has_its_own() -> None:
    euros = Money("EUR", "de-DE")

    assert money_in_words(Decimal("0.0320"), euros, exact=True) == "0,032\u00a0€"
    assert money_in_words(Decimal("25.0000"), euros, exact=True) == "25,00\u00a0€"
    assert quantity_in_words(Decimal("1.250"), euros) == "1,25"
    assert exact(0.1) == Decimal("0.1")


@pytest.mark.parametrize("money", [{"currency": "E1R"}, {"locale": "../de"}, {"locale": "German"}, {"currency": "EU"}])
def test_no_book_has_a_currency_or_a_locale_that_is_none(money: dict[str, str]) -> None:
    with pytest.raises(BookError):
        book_from_json({"runboard_book": 1, "money": money})


# looking a run through


def looked(price: float | None, hour_rate: float | None = 25) -> list[Any]:
    floor = Floor()
    floor.open_run()
    record = shop() | {"money": MONEY, "hour_rate": hour_rate}
    record["products"][0]["price"] = price
    shop_ = book_from_json(record)
    before = BeforeRun(shop_, floor.state, floor.run, estimates_from(floor.state, shop_), date(2026, 6, 1))
    return list(findings(before))


def test_a_price_below_the_cost_is_to_be_looked_at() -> None:
    (found,) = looked(3)

    assert (found.check, found.level, found.code) == ("price", "look", "price below cost")
    assert found.link == "/before/price?product=rail"
    said_ = spaced(found_in_words(book(), found))
    assert said_.startswith("It sells at 3,00 €, but a good piece costs ")
    assert said_.endswith("€.")


def test_a_price_that_covers_is_right_and_without_one_nothing_is_said() -> None:
    (found,) = looked(300)

    assert (found.level, found.code) == ("green", "price covers")
    assert looked(None) == []
    assert looked(3, hour_rate=None) == []


def test_of_a_board_that_gives_more_only_the_share_is_counted() -> None:
    record = shop() | {"hour_rate": 25}
    record["products"][0] |= {
        "operations": [operation("hooks", "bench")],
        "piece": {"length": 300, "width": 80, "thickness": 18},
    }
    record["stocks"] = [
        {"key": "ash", "name": "Ash board", "length": 1250, "width": 80, "thickness": 18, "wood": "ash", "price": 12}
    ]

    (found, *_) = answer(book_from_json(record), Price(product="rail", pieces=2, good_rate=1)).costs.lines

    assert (found.name, found.quantity, found.amount) == ("Ash board", Decimal("0.500"), Decimal("6.00"))
