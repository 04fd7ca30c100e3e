"""Costing: problems that others have posed, each with the standing of its numbers. Break-even and payback of a change are in
``test_payback.py``."""

from decimal import Decimal

from runboard.plan.money.break_even import break_even
from runboard.plan.money.price import Priced, answer
from runboard.plan.money.question import Expense, Price
from runboard.shop.book_json import book_from_json
from tests.outside.said import calculated, from_memory
from tests.scenario import a_pass, operation, shop


@from_memory(
    "Heizer & Render, Operations Management, supplement 7: F 10,000, P 4.00, v 1.50 + 0.75", {10_000: 5714.3}, 0.05
)
def test_the_count_at_which_a_fixed_cost_breaks_even(fixed: float) -> float | None:
    return break_even(fixed, 4.00 - (1.50 + 0.75))


@from_memory("the same: in dollars", {10_000: 22_857}, 0.5)
def test_the_sales_at_which_a_fixed_cost_breaks_even(fixed: float) -> float:
    return (break_even(fixed, 4.00 - (1.50 + 0.75)) or 0) * 4.00


@calculated("cost 2,400, saves 600 a year", {2400: 4.0})
def test_the_simple_payback_in_years(cost: float) -> float | None:
    return break_even(cost, 600)


def grindit_and_floggit(margin: float = 0.10) -> Priced:
    """100 widgets ordered, 97 of 100 come good, $10,000 to set up and $150 for each that is started."""
    others = (Expense("setup", 10_000, "run"), Expense("widget", 150, "started piece"))
    asked = Price(pieces=100, good_rate=0.97, certainty=0.95, others=others, margin=margin)
    return answer(book_from_json(shop()), asked)


GRINDIT = "inputs of the 'Grindit & Floggit' problem: 100 widgets, 97 % good, $10,000 and $150 each, 95 % sure"


@calculated(GRINDIT, {"started": 106, "total": Decimal("25900.00"), "a_piece": Decimal("259.00")})
def test_what_a_good_widget_costs(what: str) -> object:
    return getattr(grindit_and_floggit().costs, what)


@calculated(f"{GRINDIT}; 10 %", {"markup": Decimal("284.90"), "margin": Decimal("287.78")})
def test_ten_percent_as_a_mark_up_and_as_a_margin(name: str) -> Decimal | None:
    at = grindit_and_floggit().at(name)  # type: ignore[arg-type]
    return at and at.price


@calculated(
    "Groover, Automation, Production Systems: an operator at $12 an hour tends two machines at $18",
    {2: Decimal("48.00")},
)
def test_an_attended_hour_costs_the_operator_and_each_machine(machines: int) -> Decimal:
    """One machine of twice the rate: what counts is an hour of each."""
    record = shop()
    record["stations"][0]["hour_rate"] = 18 * machines
    cut = operation("cut", "cnc", a_pass(size="run", machine=60), attendance="watched")
    record["products"][0] |= {"operations": [cut], "pieces_a_tray": 1}
    asked = Price(product="rail", pieces=1, good_rate=1, hour_rate=12)
    return answer(book_from_json(record), asked).costs.total
