"""Yields against published values."""

from dataclasses import replace

from runboard.plan.good_rate import good_rate_from_counts, rolled_throughput_yield, route_good_rate
from runboard.review.pace import throughput_yield
from runboard.shop.product import Operation, Pass
from tests.outside.said import calculated, published

# M. Harry's 'e^0.10' signs are typos for e^-0.10, and his first yield is printed .904834 where e^-0.10 is .904837.
HARRY = "M. Harry, rolled throughput yield, iSixSigma 2004"
DEFECTS_PER_UNIT = (0.10, 0.05, 0.008)


@published(HARRY, dict(zip(DEFECTS_PER_UNIT, (0.904834, 0.951229, 0.992032), strict=True)), within=4e-6)
def test_the_yield_of_a_step(defects: float) -> float:
    return throughput_yield(defects, 1)


@published(HARRY, {(DEFECTS_PER_UNIT,): 0.853850}, within=2e-6)
def test_rolled_throughput_yield_is_the_product_of_the_steps(defects: tuple[float, ...]) -> float:
    return rolled_throughput_yield(throughput_yield(one, 1) for one in defects)


@published("https://qammunity.org/11431882", {(7, 50): 0.869}, within=5e-4)
def test_throughput_yield_of_7_defects_on_50_units(defects: int, units: int) -> float:
    return throughput_yield(defects, units)


@calculated("1 less 0.99 for each of four steps", {((0.99,) * 4,): 0.96059601}, within=1e-12)
def test_four_steps_of_a_good_rate(rates: tuple[float, ...]) -> float:
    return rolled_throughput_yield(rates)


# The mean of Beta(10 g + good, 10 (1 - g) + bad): a guess that weighs as much as ten counted pieces.
@calculated(
    "the conjugate update of a Beta distribution by binomial counts (any text on Bayesian statistics)",
    {(10, 0, 0.9): 19 / 20, (45, 5, 0.9): 54 / 60, (0, 10, 0.9): 9 / 20, (0, 0, 0.9): 0.9},
    within=1e-12,
)
def test_a_good_rate_from_counted_pieces_and_a_guess(good: int, bad: int, guess: float) -> float:
    return good_rate_from_counts(good, bad, guess).rate


PLAIN = Operation("plain", "Plain", "bench", (Pass("all", "all"),), good_rate=0.9)
ROUTES = {
    "two steps": (PLAIN, replace(PLAIN, key="other", good_rate=0.8)),
    "the second makes pieces personal": (
        PLAIN,
        replace(PLAIN, key="engrave", good_rate=0.8, personal=True),
        replace(PLAIN, key="after", good_rate=0.5),
    ),
}


@calculated("the product of the steps' rates", dict.fromkeys(ROUTES, 0.72), within=1e-12)
def test_the_good_rate_of_a_route(route: str) -> float:
    return route_good_rate(ROUTES[route]).rate
