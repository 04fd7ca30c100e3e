"""The nouns of changes that were tried on a run that is over."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from runboard.plan.change import Change, Instead, Times, singles
from runboard.review.measured.study import TimeStudy

NOUGHT = timedelta(0)


@dataclass(frozen=True)
class Span3:
    """A range of spans: of a hundred goes five are below ``low``, fifty below ``mid``, ninety-five below ``high``."""

    low: timedelta
    mid: timedelta
    high: timedelta


NOTHING = Span3(NOUGHT, NOUGHT, NOUGHT)


@dataclass(frozen=True)
class Idea:
    """A change to try on what was measured. ``because`` is the rule that offered it, a code of ``OFFERED`` with ``facts``;
    '' where a person did. ``cost`` is in the shop's money, None where nobody said."""

    id: str
    change: Change
    because: str = ""
    facts: Mapping[str, Any] = field(default_factory=dict)
    cost: float | None = None

    @property
    def is_wish(self) -> bool:
        """Whether a person said how much quicker or better some work is to be, for which nothing in the run speaks."""
        return not self.because and any(isinstance(single, Times | Instead) for single in singles(self.change))


@dataclass(frozen=True)
class Worth:
    """What a saving is worth in this shop: an hour of work in its money, how many runs of the product it makes a month, and the
    hands of a good piece, which a piece saved need not be made with again. None where nobody knows."""

    hour_rate: float | None = None
    runs_a_month: float | None = None
    a_good_piece: timedelta | None = None


@dataclass(frozen=True)
class Tried:
    """What an idea would have saved of the run: the finish so much ``earlier``, so much less of ``hands`` (work and walks
    between rooms), so many ``pieces`` more good. ``refused`` is the code where it cannot be tried at all, with its facts;
    ``is_done`` that the shop has done it since.
    ``sooner`` is the share of the goes that were done sooner at all. ``no_more_than`` is the id of a smaller idea of the same
    thing that saves as much."""

    idea: Idea
    earlier: Span3
    hands: Span3
    pieces: float = 0.0
    payback_runs: float | None = None
    payback_months: float | None = None
    refused: tuple[str, Mapping[str, Any]] | None = None
    is_done: bool = False
    sooner: float = 1.0
    no_more_than: str = ""

    @property
    def helps(self) -> bool:
        """Whether it would have saved anything, as likely as not, and more than a smaller one of the same."""
        return (
            self.refused is None
            and not self.no_more_than
            and (self.earlier.mid > NOUGHT or self.hands.mid > NOUGHT or self.pieces > 0)
        )


@dataclass(frozen=True)
class Together:
    """Two ideas at once (they overlap), and the best order to buy all that help in. ``steps`` say of each in that order what
    it saves beside those before it."""

    pair: tuple[str, str] | None
    earlier: Span3 | None
    hands: Span3 | None
    order: tuple[str, ...] = ()
    steps: tuple[tuple[Span3, Span3], ...] = ()


@dataclass(frozen=True)
class SeenRun:
    """What a verdict compares of a run: its times, the pieces it was worked with, what trays and stations waited for shared
    services, the hands of a good piece, and how long it ``took`` from opening to done (None where nobody looked)."""

    study: TimeStudy
    pieces: int
    waited: timedelta | None = None
    a_good_piece: timedelta | None = None
    took: timedelta | None = None


@dataclass(frozen=True)
class Verdict:
    """Whether an adopted change did what it promised, for as many pieces as the run before was of. ``of`` is what is compared:
    'hands' or 'machine' (of the elements that it touched), 'waiting' (for shared services), '' where it touched nothing that
    is measured. ``code`` is 'saved', 'no difference' (the interval holds nought), 'worse', or 'too little' measured to say:
    then ``saved`` is None. It is the 95 % interval with its middle, of waiting one number three times: that was measured once.
    ``promised`` is what the change promised, of hands or else of the finish; ``before`` and ``after`` count observations.
    Of a change of what is shared ``a_good_piece`` has the hands of one before and after, and ``took`` how long the runs took
    where they were of about as many pieces; ``hands_promised`` is what it promised of hands."""

    code: str
    of: str
    pieces: int
    saved: Span3 | None
    promised: Span3
    before: int = 0
    after: int = 0
    a_good_piece: tuple[timedelta, timedelta] | None = None
    hands_promised: timedelta = NOUGHT
    took: tuple[timedelta, timedelta] | None = None

    @property
    def likely(self) -> str:
        """What most would say of it: 'kept', or 'dropped' where it made things worse."""
        return "dropped" if self.code == "worse" else "kept"


@dataclass(frozen=True)
class Adopted:
    """A line of the ledger of changes. ``change`` is None where this version of the program reads it no more. ``verdict`` is
    'kept', 'dropped' or '' where nobody said; ``saved`` what was found then."""

    id: str
    run: str
    product: str
    change: Change | None
    because: str
    earlier: Span3
    hands: Span3
    cost: float | None
    did: str
    person: str
    at: datetime
    verdict: str = ""
    saved: Span3 | None = None
    judged_at: datetime | None = None
    judged_after: str = ""
