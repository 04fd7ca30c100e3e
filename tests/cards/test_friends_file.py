"""A review as one file for a friend: whole in itself, without anybody's name, and with the questions at every operation."""

import json
import re
from dataclasses import replace
from datetime import timedelta
from html import unescape
from html.parser import HTMLParser
from pathlib import Path

import pytest
from pypdf import PdfReader

from runboard.cards.friends_file import QUESTIONS, FriendsFile, friends_file
from runboard.cards.friends_page import file_html, review_html, said_html, shown_html, write_friends_pdf
from runboard.floor.letting_in.guest_rights import guest_person
from runboard.review.answers import WAYS, read_answers
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import Lost
from runboard.run.fold.state import PersonState
from runboard.words.facts import dated, unbroken, zone_of
from runboard.words.review_things import what_in_words
from tests.cards.friends import NAMES, essentials_of, named_shop


def with_a_guest(found: Essentials) -> Essentials:
    key = guest_person("phone")
    state = replace(found.past.state, people={**found.past.state.people, key: PersonState(key, name="Zora")})
    return replace(found, past=replace(found.past, state=state))


def said_of(found: Essentials) -> tuple[str, ...]:
    """Lines as a first screen may word them: with whatever stands in the essentials."""
    book, run = found.past.book, found.past.run
    return (
        f"{run.name}: 58 of 60 good.",
        f"Held by: {book.people[0].name}.",
        f"Late: {[(one.line, one.whom, one.text) for one in found.happened.order_lines]}",
        f"In work: {[(one.line, one.whom, one.text) for one in run.orders]}",
        f"Lost: {found.happened.lost[0].reason} from board {found.happened.lost[0].board}",
        f"Here were {[one.name for one in found.past.state.people.values()]}",
    )


@pytest.fixture(scope="module")
def essentials() -> Essentials:
    return with_a_guest(essentials_of(named_shop()))


@pytest.fixture(scope="module")
def file(essentials: Essentials) -> FriendsFile:
    return friends_file(essentials, said_of)


@pytest.fixture(scope="module")
def printed(file: FriendsFile, tmp_path_factory: pytest.TempPathFactory) -> tuple[str, ...]:
    """The text of each page of the PDF."""
    place = tmp_path_factory.mktemp("friend") / "file.pdf"
    pages = write_friends_pdf(file, place, lambda done, total: None)
    found = tuple(page.extract_text() for page in PdfReader(place).pages)
    assert len(found) == pages
    return found


class Loading(HTMLParser):
    """What a page would load, send or go to, and what it runs."""

    def __init__(self) -> None:
        super().__init__()
        self.addresses: list[tuple[str, str]] = []
        self.tags: list[str] = []
        self.handlers: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        for name, value in attrs:
            if name in (
                "src",
                "href",
                "srcset",
                "action",
                "formaction",
                "data",
                "poster",
                "background",
                "ping",
                "xlink:href",
            ):
                self.addresses.append((tag, value or ""))
            if name.startswith("on") or name == "style":
                self.handlers.append(name)


@pytest.mark.parametrize("make", [file_html, review_html])
def test_the_file_loads_nothing_and_goes_nowhere(file: FriendsFile, make: object) -> None:
    page = make(file)  # type: ignore[operator]
    seen = Loading()
    seen.feed(page)

    assert seen.addresses == []
    assert seen.handlers == []
    assert {"link", "img", "iframe", "object", "embed", "base", "audio", "video"}.isdisjoint(seen.tags)
    assert not re.search(
        r"url\((?!#)|@import|https?:|//[a-z]|fetch|XMLHttp|import\b|sendBeacon|WebSocket", page.replace("https://", "!")
    )
    assert "default-src 'none'" in unescape(page) and "unsafe" not in page


def test_no_name_of_a_person_or_a_customer_is_in_the_file_unless_it_is_wanted(
    essentials: Essentials, file: FriendsFile, printed: tuple[str, ...]
) -> None:
    everywhere = (file_html(file), review_html(file), shown_html(file, "/friend/x").text, *printed)

    for text in everywhere:
        assert [name for name in NAMES if name in text] == []
    wanted = file_html(friends_file(essentials, said_of, names=True))
    assert {"Annelies Borg", "Bendix", "Tessa Quill", "Quill House 7"} <= {
        name for name in (*NAMES, "Tessa Quill") if name in wanted
    }


def test_who_has_no_name_is_told_apart_by_what_they_are(file: FriendsFile) -> None:
    assert "Held by: the maker." in file.lines
    assert [one.name for one in file.operations][1] == "Clean up as the helper likes it"
    assert file.operations[0].told == ("Ask the maker for the ash.",)


def test_the_head_says_when_and_who_was_there_and_leaves_the_counts_to_the_first_line(file: FriendsFile) -> None:
    assert " good " not in file.about
    assert file.about.endswith(" In the shop: the maker and the helper.")


def test_a_why_that_has_no_place_to_write_is_only_on_paper(file: FriendsFile) -> None:
    page = file_html(file)

    assert '<em class="paper">Why there?</em>' in page
    assert ".questions em { display: none }" in page


def test_what_is_called_after_a_customer_goes_by_what_it_is(file: FriendsFile, essentials: Essentials) -> None:
    assert file.lines[0].startswith("Entry key rails, started Mon\u00a01\u00a0Jun 2026")

    lines = friends_file(essentials, lambda _: ["Late for Harbour Café.", "Rails for Tessa Quill again."]).lines

    assert lines == ("Late for (customer).", "This run again.")


def called(essentials: Essentials, name: str) -> FriendsFile:
    run = replace(essentials.past.run, name=name)
    state = replace(essentials.past.state, runs={run.id: run})
    return friends_file(replace(essentials, past=replace(essentials.past, run=run, state=state)), said_of)


def test_a_run_whose_name_names_nobody_keeps_it(essentials: Essentials) -> None:
    file = called(essentials, "Key rails, third batch")

    assert file.title == "Key rails, third batch"
    assert file.lines[0].startswith("Key rails, third batch: ")
    assert file.slug == "key-rails-third-batch"


@pytest.mark.parametrize("name", ["Rails for Tessa Quill", "rails for quill", "Otto’s rails", "Rails for Otto", "山田"])
def test_a_run_that_may_be_called_after_somebody_goes_by_its_product_and_day(essentials: Essentials, name: str) -> None:
    file = called(essentials, name)

    assert file.title == "Entry key rails, started Mon 1 Jun 2026"
    assert file.slug == "entry-key-rails-started-mon-1-jun-2026"


def test_a_file_is_called_by_letters_that_every_disk_takes(essentials: Essentials) -> None:
    assert called(essentials, "../Rails: größte ").slug == "rails-grosste"


def test_the_end_of_the_run_is_when_its_last_load_was_through(essentials: Essentials) -> None:
    finished = essentials.past.run.opened_at + timedelta(hours=30)
    found = replace(essentials, happened=replace(essentials.happened, finished=finished))

    about = friends_file(found, said_of).about

    assert f"to {dated(finished, zone_of(found.past.book.time_zone))}." in about


def test_where_every_operation_came_within_a_tenth_none_hurts_most(essentials: Essentials) -> None:
    bars = tuple(replace(bar, taken=bar.guess) for bar in essentials.happened.bars)

    file = friends_file(replace(essentials, happened=replace(essentials.happened, bars=bars)), said_of)

    assert [one.mark for one in file.operations if one.mark] == ["Here it hurts: 2 pieces lost."]


def test_where_it_hurts_most_is_open_at_first_and_says_why(file: FriendsFile) -> None:
    marked = {one.key: one.mark for one in file.operations if one.mark}

    assert marked == {
        "hooks": "Here it hurts most: furthest from its guess.",
        "clean": "Here it hurts: 2 pieces lost.",
    }
    assert [one.key for one in file.operations if one.is_open] == ["clean", "hooks"]
    page = file_html(file)
    assert page.count('<details class="one" open>') == 2 and page.count('<details class="one">') == 4


def test_no_more_than_three_operations_are_open_at_first(essentials: Essentials) -> None:
    lost = tuple(Lost(key, key, "split", "", "", at) for at, key in enumerate(("cut", "sand", "engrave", "oil"), 1))
    found = replace(essentials, happened=replace(essentials.happened, lost=lost))

    file = friends_file(found, said_of)

    assert [one.key for one in file.operations if one.is_open] == ["engrave", "oil", "hooks"]


def test_what_an_operation_took_stands_where_it_is_closed_too(file: FriendsFile) -> None:
    assert file.operations[0].short == "2\u00a0h\u00a030 (guess 2\u00a0h\u00a040)"


def test_an_answer_that_could_not_be_taken_is_open(file: FriendsFile) -> None:
    shown = shown_html(file, "/friend/abc", {"why-cut": "Why not."}, "Too long.")

    assert shown.text.count('<details class="one" open>') == 3


def test_a_short_time_has_its_seconds(file: FriendsFile) -> None:
    assert file.operations[-1].elements[0][2] == "2\u00a0min\u00a050\u00a0s"
    assert dict(file.operations[-1].figures)["Hands-on per good piece"] == "1\u00a0min\u00a045\u00a0s"


def test_several_of_a_kind_have_numbers(essentials: Essentials) -> None:
    people = essentials.past.book.people
    book = replace(essentials.past.book, people=(*people, replace(people[0], key="cleo", name="Cleo")))
    found = replace(essentials, past=replace(essentials.past, book=book))

    lines = friends_file(found, lambda one: [str([person.name for person in one.past.book.people])]).lines

    assert lines == ("['maker 1', 'the helper', 'maker 2']",)


def test_who_came_after_the_run_was_opened_is_not_named_by_their_key_either(essentials: Essentials) -> None:
    """The review looks at the book of then, in which they are not."""
    cleo = replace(essentials.past.book.people[0], key="cleopatra", name="Cleopatra", access="crew")

    def lines(found: Essentials) -> list[str]:
        return [what_in_words(found.past, ("hands", "cleopatra")), "Ask Cleopatra."]

    file = friends_file(essentials, lines, people=(*essentials.past.book.people, cleo))

    assert file.lines == ("Helper 2’s time", "Ask helper 2.")


def test_a_short_name_is_put_out_as_it_is_written(essentials: Essentials) -> None:
    jo = replace(essentials.past.book.people[1], key="jo", name="Jo", access="crew")

    file = friends_file(essentials, lambda _: ["Jo was at it, at major and jo."], people=[jo])

    assert file.lines == ("Helper 2 was at it, at major and jo.",)


def test_a_figure_is_no_name(file: FriendsFile) -> None:
    """The second order's number is 12, which stands in times and counts."""
    assert "order 2" in file.lines[2]
    assert friends_file(essentials_of(named_shop()), lambda _: ["12 min"]).lines == ("12\u00a0min",)
    assert unbroken("4 min 45 s") == "4\u00a0min\u00a045\u00a0s"


def test_every_operation_has_each_question_with_its_why_and_each_way(file: FriendsFile) -> None:
    page = file_html(file)

    assert [one.key for one in file.operations] == ["cut", "clean", "sand", "engrave", "oil", "hooks"]
    for one in file.operations:
        assert len(one.asked) == len(QUESTIONS) and all(asked.why.startswith("Why") for asked in one.asked)
        assert [f'name="do-{one.key}" value="{way}"' in page for way in WAYS] == [True] * 5


def test_what_is_known_stands_beside_its_question(file: FriendsFile) -> None:
    hooks = {asked.question: asked.now for asked in file.operations[-1].asked}

    assert hooks["Where is it done?"] == "Bench, Shop. 2 walks to another room, 4\u00a0min in all."
    assert hooks["When is it done?"] == "Last, after Oil."
    assert file.operations[4].asked[2].now.endswith("Then it dries for at least 12\u00a0h.")
    assert ("Trays waited before it", "15\u00a0h") in file.operations[-1].figures


def test_what_was_not_measured_is_never_nought(file: FriendsFile) -> None:
    sand = file.operations[2]

    assert ("Hands-on and machine", "not measured (guess 5\u00a0h)") in sand.figures
    assert sand.elements == (("Sand 120: hand time", "3\u00a0min", "–", "never"),)
    assert file.bars.count('rect class="guess"') == 4 and file.bars.count('rect class="unknown"') == 1
    assert file.bars.endswith("–</text></svg>")


def test_what_people_typed_is_text_in_every_place(essentials: Essentials) -> None:
    nasty = '"><script>alert(1)</script>&'
    bars = (replace(essentials.happened.bars[0], name=nasty),)
    found = replace(essentials, happened=replace(essentials.happened, bars=bars))

    page = file_html(friends_file(found, lambda _: [nasty]))

    assert "<script>alert" not in page
    assert page.count("<script>") == 1


def test_the_lines_to_copy_can_be_read_back(file: FriendsFile) -> None:
    page = file_html(file)
    text = unescape(re.findall(r'<textarea class="text"[^>]*>(.*?)</textarea>', page, re.DOTALL)[0])

    found = read_answers(text.replace("do: \n", "do: combine\n", 1).encode())

    assert (found.run, found.opened) == (file.run, file.opened)
    assert [(one.operation, one.do) for one in found.answers] == [("cut", "combine")]


def test_the_printed_file_has_room_to_write_and_a_page_an_operation(
    file: FriendsFile, printed: tuple[str, ...]
) -> None:
    assert len(printed) == 1 + len(file.operations)
    assert all(said in printed[1] for said in ("What else could be done?", "Rearrange", "min per piece"))


def test_a_review_to_keep_asks_nothing(file: FriendsFile) -> None:
    page = review_html(file)

    assert "<input" not in page and "<script" not in page and "Why there" not in page
    assert file.operations[-1].name in page


def test_the_page_that_the_shop_shows_sends_to_the_shop_alone_and_runs_nothing(file: FriendsFile) -> None:
    shown = shown_html(file, "/friend/abc", {"do-cut": "combine", "why-cut": "<b>", "from": "Sam"}, "Too long.")

    assert 'method="post" action="/friend/abc"' in shown.text and "<script" not in shown.text
    assert 'value="combine" checked' in shown.text and "&lt;b&gt;" in shown.text and "Too long." in shown.text
    assert shown.policy.startswith("default-src 'self'; ") and "frame-ancestors 'none'" in shown.policy
    assert "unsafe" not in shown.policy + said_html("Title", "Over.").policy


def test_the_form_of_the_file_is_the_one_that_is_read() -> None:
    """The script makes the fields that ``review/answers.py`` writes down."""
    script = (Path(__file__).parents[2] / "templates" / "cards" / "friend.js").read_text("utf-8")
    record = {"runboard_answers": 1, "run": "r1", "opened": "x", "from": "", "answers": []}

    assert all(re.search(rf"\b{field}\b", script) for field in (*record, "operation", "do", "why", "saves_minutes"))
    assert read_answers(json.dumps(record).encode()).run == "r1"
