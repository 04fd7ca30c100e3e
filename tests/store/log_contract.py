"""What every log, book and list of due moments must keep: run on the real store and on the floor's fake."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from runboard.run.calls.dues import Due
from runboard.run.log.event import Event
from runboard.run.refusal import AnsweredBefore
from runboard.store.events import MOST_REFUSED_OF_ONE

NOON = datetime(2026, 3, 7, 12, 0, tzinfo=UTC)
MINUTE = timedelta(minutes=1)


def an_event(id_: str, **fields: Any) -> Event:
    return Event(
        **{"id": id_, "kind": "note written", "at": NOON, "run": "r1", "body": {"text": "ash, ½ in"}, **fields}
    )


def a_due(id_: str, minutes: int = 0, **fields: Any) -> Due:
    return Due(**{"id": id_, "kind": "machine end", "due_at": NOON + minutes * MINUTE, "run": "r1", **fields})


class LogContract:
    """Subclasses give a fixture ``log``: an empty one."""

    def test_events_come_back_in_order_of_arrival(self, log: Any) -> None:
        late, early = an_event("b", at=NOON + MINUTE), an_event("a")

        with log.write() as write:
            numbers = [write.append(late, NOON), write.append(early, NOON)]

        assert numbers == [1, 2]
        assert [(one.id, one.seq) for one in log.events()] == [("b", 1), ("a", 2)]

    def test_an_event_comes_back_whole(self, log: Any) -> None:
        sent = an_event(
            "a", kind="load done", load="cut/1", tray="4", operation="cut", revision=2, station="cnc", person="ann",
            device="phone", entered_by="bo", offset_ms=-420_010, seen=7, basis="paper", v=1,
            body={"counts": {"4": {"good": 5, "scrap": [{"pieces": 1, "why": "tear-out"}]}}},
        )  # fmt: skip

        with log.write() as write:
            write.append(sent, NOON)

        assert log.events() == [replace(sent, seq=1)]

    def test_only_what_came_after_is_read(self, log: Any) -> None:
        with log.write() as write:
            for name in "abc":
                write.append(an_event(name), NOON)
            assert [one.id for one in write.events(2)] == ["c"]

        assert [one.id for one in log.events(after=1)] == ["b", "c"]
        assert log.last_seq() == 3

    def test_an_empty_log_ends_at_nought(self, log: Any) -> None:
        assert log.last_seq() == 0
        assert log.events() == []

    def test_a_block_that_raises_leaves_nothing(self, log: Any) -> None:
        with pytest.raises(RuntimeError), log.write() as write:
            write.append(an_event("a"), NOON)
            write.refuse({"id": "b"}, "station busy", {}, NOON)
            write.set_dues([a_due("end")], [])
            raise RuntimeError("the power went")

        with log.write() as write:
            assert log.events() == []
            assert write.known(["a", "b"]) == {}
            assert write.dues_held() == {}

    def test_what_was_answered_is_known(self, log: Any) -> None:
        with log.write() as write:
            write.append(an_event("a"), NOON)
            write.refuse({"id": "b", "kind": "load started"}, "station busy", {"station": "CNC"}, NOON)

        with log.write() as write:
            known = write.known(["a", "b", "c"])

        assert known == {
            "a": AnsweredBefore("accepted"),
            "b": AnsweredBefore("refused", "station busy", {"station": "CNC"}),
        }

    def test_the_first_refusal_stands(self, log: Any) -> None:
        with log.write() as write:
            write.refuse({"id": "b"}, "station busy", {}, NOON)
            write.refuse({"id": "b"}, "nobody there", {}, NOON)

            assert write.known(["b"])["b"].code == "station busy"

    def test_the_oldest_refusals_of_a_device_make_room(self, log: Any) -> None:
        with log.write() as write:
            write.refuse({"id": "other"}, "station busy", {}, NOON, "tablet")
            for at in range(MOST_REFUSED_OF_ONE + 3):
                write.refuse({"id": f"press-{at}"}, "station busy", {}, NOON + at * MINUTE, "phone")

            known = write.known(["other", "press-2", "press-3", f"press-{MOST_REFUSED_OF_ONE + 2}"])

        assert sorted(known) == sorted(["other", "press-3", f"press-{MOST_REFUSED_OF_ONE + 2}"])

    def test_the_version_rises_with_each_append_and_rests_otherwise(self, log: Any) -> None:
        before = log.version()
        with log.write() as write:
            write.append(an_event("a"), NOON)
        after = log.version()

        assert after > before
        assert log.version() == after

    def test_due_moments_are_put_moved_and_dropped(self, log: Any) -> None:
        with log.write() as write:
            write.set_dues([a_due("one", 5), a_due("two", 6)], [])
            write.set_dues([a_due("two", 9)], ["one"])

            assert write.dues_held() == {"two": NOON + 9 * MINUTE}

    def test_a_due_moment_comes_back_to_the_microsecond(self, log: Any) -> None:
        reckoned = a_due("end", due_at=NOON + MINUTE / 7)

        with log.write() as write:
            write.set_dues([reckoned], [])

            assert write.dues_held() == {"end": reckoned.due_at}


class DuesContract:
    """Subclasses give fixtures ``log`` and ``dues`` over the same empty store."""

    def put(self, log: Any, *dues: Due, drop: tuple[str, ...] = ()) -> None:
        with log.write() as write:
            write.set_dues(dues, drop)

    def test_only_what_has_fallen_due_is_unclaimed_earliest_first(self, log: Any, dues: Any) -> None:
        later, now, past = a_due("later", 1), a_due("now"), a_due("past", -3, load="cut/1", station="cnc")
        self.put(log, later, now, past)

        assert dues.unclaimed(NOON) == [past, now]

    def test_a_moment_is_claimed_once(self, log: Any, dues: Any) -> None:
        self.put(log, a_due("end"))

        assert [dues.claim("end", NOON), dues.claim("end", NOON)] == [True, False]
        assert dues.unclaimed(NOON) == []

    def test_a_moment_that_is_not_yet_due_or_unknown_cannot_be_claimed(self, log: Any, dues: Any) -> None:
        self.put(log, a_due("end", 1))

        assert not dues.claim("end", NOON)
        assert not dues.claim("never", NOON)

    def test_a_moment_that_moved_is_told_anew(self, log: Any, dues: Any) -> None:
        self.put(log, a_due("end"))
        dues.claim("end", NOON)

        self.put(log, a_due("end", 10))

        assert dues.next_at() == NOON + 10 * MINUTE

    def test_a_moment_put_again_where_it_stood_stays_told(self, log: Any, dues: Any) -> None:
        self.put(log, a_due("end"))
        dues.claim("end", NOON)

        self.put(log, a_due("end"))

        assert dues.unclaimed(NOON) == []

    def test_the_next_moment_is_the_earliest_untold(self, log: Any, dues: Any) -> None:
        assert dues.next_at() is None

        self.put(log, a_due("one", 1), a_due("two", 2))
        dues.claim("one", NOON + MINUTE)

        assert dues.next_at() == NOON + 2 * MINUTE
