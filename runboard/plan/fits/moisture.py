"""How moist wood becomes in some air, and how much wider or narrower that makes it.

Equilibrium moisture content: Wood Handbook 2021 (FPL-GTR-282), equation 4-5. Change of width: ΔD = D C (M - M'), good from 6 to 14 %
(the same, chapter 13).
"""

# Where the change of width is straight enough, and where the table of the equation ends.
LEAST_MOISTURE, MOST_MOISTURE = 0.06, 0.14
LEAST_HUMIDITY, MOST_HUMIDITY = 0.05, 0.95


def emc(celsius: float, humidity: float) -> float:
    """The moisture, as a share of the dry wood's weight, that wood comes to in air of so many °C and this relative humidity (a share
    below 1)."""
    t, h = celsius, humidity
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    kh = k * h
    bound = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 18 / w * (kh / (1 - kh) + bound)


def change_of_width(coefficient: float, width: float, before: float, after: float) -> float:
    """By how much a width changes, in its own unit, from one moisture to another (shares): more is wider."""
    return width * coefficient * (after - before) * 100
