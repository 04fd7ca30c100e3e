"""The kind of question about jigs, and the jig that the book keeps of an answer."""

from collections.abc import Iterator
from functools import partial

from runboard.plan.before.kind import File, Keep, Kind, Record, Told
from runboard.plan.jig.places import laid_out
from runboard.plan.jig.question import JigAnswer, Layout, begin, step_meant
from runboard.shop.book import Book
from runboard.shop.keys import key_for
from runboard.shop.machines import Jig
from runboard.shop.record import to_json


def answer(book: Book, question: Layout, file: File | None, told: Told) -> JigAnswer:
    """Where the places lie."""
    return laid_out(book, question, file)


def keeps(book: Book, question: Layout, answer: JigAnswer) -> Iterator[Keep]:
    """The jig with its station, and the same as the jig of the product's step on that machine. Nothing where no station is, or
    where it does not fit."""
    station = book.station(question.station or "")
    if station is None or not answer.fits:
        return
    product = book.product(question.product or "")
    name = question.name.strip() or (product.name if product else station.name)
    same = next((jig for jig in book.jigs if (jig.name, jig.station) == (name, station.key)), None)
    key = same.key if same else key_for(name, {jig.key for jig in book.jigs})
    plate, (corner_x, corner_y) = answer.plate, answer.corner or (None, None)
    jig = Jig(
        key, name, station.key, plate.columns, plate.rows, *answer.piece, plate.pitch_x, plate.pitch_y, corner_x, corner_y,
        plate.margin, answer.clearance, plate.kerf, same.note if same else "",
    )  # fmt: skip
    step = step_meant(book, question)
    facts = {"name": name, "station": station.name, "step": step.name if step else "", "link": f"/shop/jigs/{key}"}
    if product and step and not (same and step.operation.jig == key):
        yield Keep("step", "jig-step", partial(_put, jig, (product.key, step.operation.key)), facts)
    yield Keep("jig", "jig-again" if same else "jig", partial(_put, jig, None), facts)


def _put(jig: Jig, where: tuple[str, str] | None, record: Record) -> None:
    others = [each for each in record["jigs"] if each["key"] != jig.key]
    record["jigs"] = [*others, to_json(jig)]
    for product in record["products"] if where else ():
        for operation in product["operations"] if product["key"] == where[0] else ():  # type: ignore[index]
            if operation["key"] == where[1]:  # type: ignore[index]
                operation["jig"] = jig.key


KIND = Kind("jig", Layout, answer, begin, lambda book, question, found: tuple(keeps(book, question, found)), (".svg",))
