"""Yields against published values."""

from runboard.plan.good_rate import rolled_throughput_yield, throughput_yield
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
