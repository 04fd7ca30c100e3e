"""What ``runboard review --json`` prints of a run, as a record for other programs: times in minutes, moments in UTC."""

from collections.abc import Mapping
from datetime import timedelta
from typing import Any

from runboard.review.changes.nouns import Span3, Tried
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import Waiting
from runboard.review.held.nouns import Held
from runboard.review.measured.study import ElementStudy
from runboard.review.past import Past
from runboard.run.log.event import write_moment
from runboard.words.review_things import idea_in_words, what_in_words
from runboard.words.sentences import say

Record = dict[str, Any]
_MINUTE = timedelta(minutes=1)


def review_record(essentials: Essentials) -> Record:
    """The record. What is not known is null, never nought. ``guess`` and ``median`` are of a load, for hand time of a
    piece; ``left_out`` is how many observations of an element teach nothing. ``finish_minutes`` and ``hands_minutes`` are
    what is saved: of a hundred goes five save less than the first, fifty less than the second, ninety-five less than the
    third; of ``value_of_an_hour``, by how much earlier, in minutes in which somebody is in the
    shop, the run would have been done for an hour less of it, or for all of it where there is less. ``held_by`` is by the replay;
    its ``minutes``, too, are those in which somebody was in the shop."""
    past, happened = essentials.past, essentials.happened
    return {
        "run": past.run.id,
        "pieces": {
            "wanted": happened.wanted,
            "started": happened.started,
            "good": happened.good,
            "scrap": happened.scrap,
        },
        "hands_on_minutes": minutes(happened.hands),
        "minutes_a_good_piece": minutes(happened.a_good_piece),
        "measured_share": None if essentials.study.share is None else round(essentials.study.share, 3),
        "elements": [_element(study) for study in essentials.study.elements],
        "lost": [
            {
                "operation": lost.step_name,
                "reason": lost.reason,
                "wood": lost.wood,
                "board": lost.board,
                "pieces": lost.pieces,
            }
            for lost in happened.lost
        ],
        "waiting": [
            {
                "who": _who(past, waiting),
                "why": waiting.why,
                "minutes": minutes(waiting.length),
            }
            for waiting in happened.waiting
        ],
        "order_lines": [
            {
                "for": line.whom or line.text,
                "due": write_moment(line.due) if line.due else None,
                "done": write_moment(line.done) if line.done else None,
                "late_minutes": minutes(line.late),
            }
            for line in happened.order_lines
        ],
        **_held(past, essentials.held),
        "changes": [_tried(past, tried) for tried in essentials.tried or () if tried.refused is None],
    }


def minutes(span: timedelta | None) -> float | None:
    """Minutes to the hundredth; None where there is no span."""
    return None if span is None else round(span / _MINUTE, 2)


def _element(study: ElementStudy) -> Record:
    return {
        "operation": study.step_name,
        "element": study.kind,
        "guess": minutes(study.guess),
        "median": minutes(study.median),
        "n": study.n,
        "left_out": len(study.left_out),
    }


def _who(past: Past, waiting: Waiting) -> str:
    """Whose name it is, or which machine's; the trays' all together."""
    kind = {"person": "hands", "station": "station"}.get(waiting.row)
    return say("review", "the trays") if kind is None else what_in_words(past, (kind, waiting.key))


def _held(past: Past, held: Held | None) -> Mapping[str, Any]:
    stretches, values = (held.stretches, held.values) if held is not None else ((), ())
    return {
        "held_by": [
            {
                "what": what_in_words(past, stretch.what),
                "from": write_moment(stretch.began_at),
                "to": write_moment(stretch.ended_at),
                "minutes": minutes(stretch.open),
            }
            for stretch in stretches
        ],
        "value_of_an_hour": [
            {"what": what_in_words(past, value.what), "finish_minutes": minutes(value.earlier)} for value in values
        ],
    }


def _tried(past: Past, tried: Tried) -> Record:
    return {
        "sentence": idea_in_words(past, tried.idea.change),
        "finish_minutes": _range(tried.earlier),
        "hands_minutes": _range(tried.hands),
        "pieces": tried.pieces,
        "cost": tried.idea.cost,
        "payback_runs": tried.payback_runs,
    }


def _range(span: Span3) -> list[float | None]:
    return [minutes(span.low), minutes(span.mid), minutes(span.high)]
