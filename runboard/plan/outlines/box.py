"""The box that a drawing takes up, and how much of it its outline fills."""

from dataclasses import dataclass

from runboard.plan.outlines.outline import Points, Shapes


@dataclass(frozen=True)
class DrawnBox:
    """``length`` along x and ``width`` along y, in mm; ``fill`` is the share of it within the largest closed outline, None where
    none is closed."""

    length: float
    width: float
    fill: float | None


def read_drawing(name: str, content: bytes) -> Shapes:
    """A drawing by the ending of its name; refuses as its reader does."""
    if name.lower().endswith(".dxf"):
        from runboard.plan.outlines.dxf import read_dxf

        return read_dxf(content)
    from runboard.plan.outlines.svg import read_svg

    return read_svg(content)


def box_of(shapes: Shapes) -> DrawnBox | None:
    """The box round all that is drawn; None where nothing is."""
    lines = [outline for outline in shapes.outlines if len(outline.points)]
    if not lines:
        return None
    left = min(float(line.points[:, 0].min()) for line in lines)
    right = max(float(line.points[:, 0].max()) for line in lines)
    top = min(float(line.points[:, 1].min()) for line in lines)
    bottom = max(float(line.points[:, 1].max()) for line in lines)
    length, width = right - left, bottom - top
    areas = [_area(line.points) for line in lines if line.closed]
    fill = min(1.0, max(areas) / (length * width)) if areas and length > 0 and width > 0 else None
    return DrawnBox(length, width, fill)


def _area(points: Points) -> float:
    """What a closed line encloses (the surveyor's formula)."""
    x, y = points[:, 0] - points[0, 0], points[:, 1] - points[0, 1]
    return abs(float(x @ _next(y) - _next(x) @ y)) / 2


def _next(values: Points) -> Points:
    import numpy as np

    return np.roll(values, -1)
