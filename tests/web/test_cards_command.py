"""``runboard cards``: a PDF, whole or not at all; what was asked for wrongly gets a sentence and exit code 2."""

import io
from pathlib import Path

import pytest
from pypdf import PdfReader

from runboard.cards.pdf import PACKAGES, NoPango
from runboard.cli import main
from runboard.commands import cards
from runboard.floor.changing.runs import close_run
from runboard.floor.warm import catch_up
from runboard.lan.addresses import Whereabouts
from runboard.opening import open_workshop
from tests.web.at_terminal import Terminal, with_a_run


def prints(folder: Path) -> list[int]:
    store, workshop = open_workshop(folder)
    with workshop.lock:
        catch_up(workshop)
        found = [tray.print for tray in workshop.ledger.state.runs["r1"].trays.values()]
    store.close()
    return found


def ask(data: Path, out: Path, *more: str) -> int:
    return main(["cards", *more, "--data", str(data), "--out", str(out)])


def test_the_cards_of_the_one_open_run_are_printed(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "cards.pdf"

    assert ask(data, out, "--address", "http://192.168.1.5:8210") == 0

    told = capsys.readouterr()
    assert told.out.startswith(f"{out}: ")
    assert "open http://192.168.1.5:8210" in told.out
    assert told.err == ""
    text = "\n".join(page.extract_text() for page in PdfReader(out).pages)
    assert "Entry key rails" in text
    assert prints(data) == [1, 1, 1]


def test_some_trays_of_a_named_run_on_another_paper(data: Path, tmp_path: Path) -> None:
    out = tmp_path / "cards.pdf"

    assert ask(data, out, "r1", "--trays", "1,3", "--paper", "letter", "--kinds", "travellers,sheet") == 0

    assert prints(data) == [1, 0, 1]
    box = PdfReader(io.BytesIO(out.read_bytes())).pages[0].mediabox
    assert (round(float(box.width)), round(float(box.height))) == (612, 792)


def test_two_open_runs_are_listed(data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with_a_run(data, "r2")

    assert ask(data, tmp_path / "cards.pdf") == 2

    said = capsys.readouterr().err
    assert said == "runboard: several runs are open: r1 (r1), r2 (r2). Name one.\n"


def test_without_an_open_run_a_sentence_says_so(data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    store, workshop = open_workshop(data)
    close_run(workshop, "r1", "run finished")
    store.close()

    assert ask(data, tmp_path / "cards.pdf") == 2
    assert "no run is open" in capsys.readouterr().err
    assert ask(data, tmp_path / "cards.pdf", "r1") == 2
    assert "is finished" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("more", "sentence"),
    [
        (["r9"], "There is no run 'r9'."),
        (["--trays", "12"], "This run has no tray 12. Look at Trays."),
        (["--trays", "a-b"], "'a-b' names no trays."),
        (["--kinds", "shelves"], "There is nothing to print"),
        (["--address", "http://shop:8210/page"], "is not a server address"),
        (["--address", "ftp://shop"], "is not a server address"),
    ],
)
def test_what_is_wrong_gets_a_sentence_and_leaves_nothing(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], more: list[str], sentence: str
) -> None:
    place = tmp_path / "prints"
    place.mkdir()

    assert ask(data, place / "cards.pdf", *more) == 2

    assert sentence in capsys.readouterr().err
    assert list(place.iterdir()) == []
    assert prints(data) == [0, 0, 0]


@pytest.mark.parametrize("more", [["--paper", "a5"], ["--language", "la"], ["--kinds", "stamps"], ["--kinds", ","]])
def test_a_word_that_is_not_known_gets_the_known_ones(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], more: list[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        ask(data, tmp_path / "cards.pdf", *more)

    assert ended.value.code == 2
    assert any(word in capsys.readouterr().err for word in ("letter", "fr", "travellers"))


def test_a_folder_without_a_shop_is_left_alone(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert ask(tmp_path / "nothing", tmp_path / "cards.pdf") == 2

    assert "there is no shop in" in capsys.readouterr().err
    assert not (tmp_path / "nothing").exists()


@pytest.mark.parametrize(("out", "sentence"), [("shop", "is a folder"), ("not/there.pdf", "there is no folder")])
def test_a_file_that_cannot_be_is_said_before_anything_is_made(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], out: str, sentence: str
) -> None:
    assert ask(data, tmp_path / out) == 2

    assert sentence in capsys.readouterr().err


def test_what_fails_half_way_leaves_the_old_file(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "cards.pdf"
    out.write_text("the old one")

    def half(_order: object, part: Path, _told: object) -> int:
        part.write_text("half")
        raise NoPango

    monkeypatch.setattr(cards, "write_pdf", half)

    assert ask(data, out) == 2
    assert PACKAGES in capsys.readouterr().err
    assert out.read_text() == "the old one"
    assert [one.name for one in tmp_path.iterdir() if one.is_file()] == ["cards.pdf"]
    assert prints(data) == [0, 0, 0]


def test_on_a_terminal_it_says_how_far_it_is() -> None:
    screen = Terminal()
    told, clear = cards.progress(screen)

    told(3, 60)
    clear()

    assert screen.getvalue().startswith("\r3 of 60 cards")
    assert screen.getvalue().endswith("\r\x1b[K")


def test_the_codes_lead_to_this_computer_where_nothing_else_is_said() -> None:
    alone = Whereabouts("workshop")

    assert cards.served_address(8210, lambda: alone) == "http://runboard-workshop.local:8210/"
