"""The answer to a question about an engraving: every method beside the others, from a drawing or from sizes."""

import hashlib
import math
from collections.abc import Sequence

import numpy as np

from runboard.plan.before.kind import File
from runboard.plan.engraving.marks import boxes_of, marks_of
from runboard.plan.engraving.methods import piece_by_piece, row_by_row, unsplit, whole
from runboard.plan.engraving.pieces import by_gaps, by_places
from runboard.plan.engraving.question import (
    ACCELERATION,
    SPACING,
    SPEED,
    TRACE_SPEED,
    Engraving,
    EngravingAnswer,
    Method,
    motion_of,
)
from runboard.plan.engraving.sweep import Sweep
from runboard.plan.engraving.trace import traced
from runboard.plan.outlines.outline import Outline, Shapes
from runboard.plan.outlines.svg import read_svg
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.machines import Motion


def worked_out(book: Book, question: Engraving, file: File | None) -> EngravingAnswer:
    """Every method's seconds for one jig-full. Refused where nothing is engraved, or its lines would have no end."""
    motion = motion_of(book, question.station)
    sweep, assumed, short = _sweep(question, motion)
    shapes = read_svg(file.content) if file else typed(question)
    outlines = engraved(shapes, question.left_out if file else "")
    if not outlines:
        raise Refused("engraving-nothing-drawn")
    boxes = boxes_of(outlines, sweep.spacing)
    piece = _pieces(question, boxes, is_typed=file is None)
    marks = marks_of(outlines, sweep.spacing, lambda at: int(piece[at]))
    if not len(marks):
        raise Refused("engraving-nothing-drawn")
    methods = [make(marks, sweep, question.trims) for make in (whole, row_by_row, piece_by_piece)]
    trace = _trace(question, outlines, sweep, motion, is_typed=file is None)
    methods += [trace] if trace else []
    has_fills = any(one.filled for one in outlines)
    swept = [one for one in methods if one.name != "trace" or not has_fills]
    low, high = boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)
    places = max(question.columns * question.rows, len(np.unique(piece)))
    return EngravingAnswer(
        methods,
        _best(swept).name,
        question.jig_fulls or math.ceil((question.pieces or 1) / places),
        places,
        (float(low[0]), float(low[1]), float(high[0] - low[0]), float(high[1] - low[1])),
        sweep.speed,
        sweep.accel,
        sweep.spacing,
        sweep.overscan,
        (question.trace_speed or TRACE_SPEED) if trace else None,
        assumed,
        unsplit(marks, sweep, question.trims),
        short,
        _fits(motion, float(high[0] - low[0]) + 2 * sweep.overscan, float(high[1] - low[1])),
        file.name if file else "",
        hashlib.sha256(file.content).hexdigest() if file else "",
        has_fills,
        [*shapes.unclear],
    )


def _best(methods: Sequence[Method]) -> Method:
    """The fastest; of those within a hundredth of it the first, which is the simplest to set."""
    least = min(one.seconds for one in methods)
    return next(one for one in methods if one.seconds <= least * 1.01)


def typed(question: Engraving) -> Shapes:
    """The marks that sizes say: a box on each place, as high as the share of its lines that burn something."""
    wide, high = question.mark_width, question.mark_height * question.filled
    if question.columns > 1 and question.pitch_x < wide:
        raise Refused("engraving-pitch-too-small", pitch=question.pitch_x, size=wide)
    if question.rows > 1 and question.pitch_y < question.mark_height:
        raise Refused("engraving-pitch-too-small", pitch=question.pitch_y, size=question.mark_height)
    outlines = []
    for place in range(question.rows * question.columns):
        row, column = divmod(place, question.columns)
        left, top = column * question.pitch_x, row * question.pitch_y
        corners = [[left, top], [left + wide, top], [left + wide, top + high], [left, top + high]]
        outlines.append(Outline(np.array(corners), True, True, part=place))
    width = (question.columns - 1) * question.pitch_x + wide
    return Shapes(outlines, width, (question.rows - 1) * question.pitch_y + high)


def engraved(shapes: Shapes, left_out: str) -> list[Outline]:
    """The outlines but those of groups that are left out; names apart by commas."""
    names = {name.strip().lower() for name in left_out.split(",")} - {""}
    return [one for one in shapes.outlines if not names & {*one.group.lower().split("/")}]


def _sweep(question: Engraving, motion: Motion) -> tuple[Sweep, tuple[str, ...], float]:
    """(how the head sweeps, which values nobody said, by how much the run-up is too short)."""
    said = {
        "speed": (question.speed or motion.scan_speed, SPEED),
        "accel": (question.accel or motion.scan_accel, ACCELERATION),
        "spacing": (question.spacing or motion.line_spacing, SPACING),
    }
    speed, accel, spacing = (value or usual for value, usual in said.values())
    assumed = tuple(name for name, (value, _) in said.items() if value is None)
    needed = speed**2 / (2 * accel)
    run_up = needed if question.run_up is None else question.run_up
    # No laser goes faster while it burns than when it does not.
    rapid = max(question.rapid / 60 if question.rapid else motion.rapid / 60, speed)
    return Sweep(speed, accel, spacing, rapid, max(0.0, run_up - needed)), assumed, max(0.0, needed - run_up)


def _pieces(question: Engraving, boxes: np.ndarray, *, is_typed: bool) -> np.ndarray:
    if is_typed:
        return np.arange(len(boxes))
    if question.columns * question.rows > 1:
        return np.asarray(by_places(boxes, question.columns, question.rows))
    return np.asarray(by_gaps(boxes, question.apart))


def _trace(
    question: Engraving, outlines: Sequence[Outline], sweep: Sweep, motion: Motion, *, is_typed: bool
) -> Method | None:
    """Of sizes, None where nobody said how long the line of a piece is; else it goes to and fro over the box of the piece."""
    if is_typed and question.line is None:
        return None
    if is_typed and question.line is not None:
        outlines = [_as_long(one, question.line) for one in outlines]
    return traced(outlines, question.trace_speed or TRACE_SPEED, sweep.rapid, sweep.accel, motion)


def _as_long(box: Outline, length: float) -> Outline:
    """A line of that length to and fro in a box, for want of the real one."""
    (left, top), (right, bottom) = box.points.min(axis=0), box.points.max(axis=0)
    back = bottom - top  # from the first line to the last, which is a part of the length
    goes = max(1, min(10_000, math.ceil((length - back) / (right - left))))
    wide = length if goes == 1 else (length - back) / goes
    y = np.linspace(top, bottom, goes) if goes > 1 else np.array([top])
    ends = np.where(np.arange(goes)[:, None] % 2 == 0, [left, left + wide], [left + wide, left])
    return Outline(np.column_stack([ends.ravel(), np.repeat(y, 2)]), False)


def _fits(motion: Motion, width: float, height: float) -> bool:
    return width <= (motion.travel_x or math.inf) and height <= (motion.travel_y or math.inf)
