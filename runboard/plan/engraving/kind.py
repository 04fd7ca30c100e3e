"""The kind of question about engravings; what it needs to answer is loaded once somebody asks."""

from collections.abc import Iterator
from dataclasses import replace
from hashlib import sha256

from runboard.plan.before.kind import File, Keep, Kind, Told
from runboard.plan.before.taking import takes
from runboard.plan.engraving.question import Engraving, EngravingAnswer, begin, step_of
from runboard.run.fold.route import Step
from runboard.shop.book import Book
from runboard.shop.machines import Reckoned
from runboard.shop.product import Product


def answer(book: Book, question: Engraving, file: File | None, told: Told) -> EngravingAnswer:
    """Every method's time. Refused where nothing is engraved."""
    from runboard.plan.engraving.answer import worked_out

    return worked_out(book, question, file)


def keeps(book: Book, question: Engraving, answer: EngravingAnswer) -> Iterator[Keep]:
    """A press for each method that burns all of it, one for those that come to the same: its minutes into the step that engraves."""
    product = book.product(question.product or "")
    step = step_of(book, question.product, question.step)
    if product is None or step is None:
        return
    name = answer.file or f"{question.columns}×{question.rows}, {question.mark_width:g}×{question.mark_height:g} mm"
    digest = answer.digest or sha256(repr(question).encode()).hexdigest()
    for method in (some[0] for some in answer.joined if answer.does_all(some[0])):
        seconds = method.seconds * fulls_a_load(product, step, answer)
        reckoned = Reckoned("engraving", name[:200], digest, seconds)
        for keep in takes(book, product.key, reckoned, step=step.key):
            facts = {**keep.facts, "method": method.name}
            yield replace(keep, key=f"{method.name} {keep.key}", code="take-engraving", facts=facts)


def fulls_a_load(product: Product, step: Step, answer: EngravingAnswer) -> int:
    """How many jig-fulls one load of a step is: one, but where a load is more than the jig takes."""
    if step.pass_.size == "run":
        return answer.jig_fulls
    pieces = step.most_a_load or (product.pieces_a_tray if step.pass_.size == "tray" else 1)
    return max(1, -(-pieces // answer.places))


KIND = Kind(
    "engraving",
    Engraving,
    answer,
    begin,
    lambda book, question, found: tuple(keeps(book, question, found)),
    (".svg",),
    is_long=True,
)
