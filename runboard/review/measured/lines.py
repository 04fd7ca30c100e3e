"""A straight line through points by least squares, with how sure it is: any text on regression; NIST's reference data are met
to twelve digits since sums are taken about the means."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean


@dataclass(frozen=True)
class Line:
    """y = ``intercept`` + ``slope`` x. The errors are standard errors, ``residual`` the standard deviation of what is left,
    ``fits`` R², ``f`` the ratio of F's test of the slope; infinite or nought where the line goes through every point."""

    intercept: float
    slope: float
    intercept_error: float
    slope_error: float
    residual: float
    fits: float
    f: float
    free: int


def line_through(xs: Sequence[float], ys: Sequence[float]) -> Line | None:
    """The line; None of fewer than three points, or where all x are alike: nothing tells how sure it would be."""
    n = len(xs)
    if n < 3:
        return None
    x_mean, y_mean = fmean(xs), fmean(ys)
    dx, dy = [x - x_mean for x in xs], [y - y_mean for y in ys]
    xx, yy = math.fsum(x * x for x in dx), math.fsum(y * y for y in dy)
    if not xx:
        return None
    slope = math.fsum(x * y for x, y in zip(dx, dy, strict=True)) / xx
    left = math.fsum((y - slope * x) ** 2 for x, y in zip(dx, dy, strict=True))
    told, variance = slope * slope * xx, left / (n - 2)
    return Line(
        y_mean - slope * x_mean,
        slope,
        math.sqrt(variance * (1 / n + x_mean * x_mean / xx)),
        math.sqrt(variance / xx),
        math.sqrt(variance),
        1 - left / yy if yy else 1.0,
        told / variance if variance else math.inf,
        n - 2,
    )
