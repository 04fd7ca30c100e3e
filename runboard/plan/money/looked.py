"""What is found of money when a run is looked through before it starts: whether today's price covers what a piece costs."""

from collections.abc import Iterator
from dataclasses import replace

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.money.price import priced
from runboard.plan.money.question import CountedPieces, Price, begin, known_times
from runboard.plan.opening import counted_before
from runboard.run.refusal import Refused
from runboard.shop.limits import MOST_PIECES


def findings(asked: BeforeRun) -> Iterator[Finding]:
    """One finding where the product has a price and an hour its worth; else nothing can be said of it."""
    question = _question(asked)
    if question is None:
        return
    try:
        found = priced(asked.book, question)
    except Refused:
        return  # the run's own size is looked at elsewhere
    today = found.at("today")
    if today is None:
        return
    facts = {"price": float(today.price), "cost": float(found.costs.a_piece), "fees": float(today.fees)}
    link = f"/before/price?product={question.product}"
    if today.stays < 0:
        yield Finding("price", "look", "price below cost", facts | {"loses": float(-today.stays)}, link)
    else:
        yield Finding("price", "green", "price covers", facts | {"stays": float(today.stays)}, link)


def _question(asked: BeforeRun) -> Price | None:
    book, run = asked.book, asked.run
    product = book.product(run.product)
    wanted = sum(order.pieces for order in run.orders)
    if product is None or product.price is None or book.hour_rate is None or not 0 < wanted <= MOST_PIECES:
        return None
    counted = counted_before(asked.state, product.key).items()
    return replace(
        begin(book, {"product": product.key}),
        pieces=wanted,
        times=known_times(product, asked.estimates),
        counted=tuple(CountedPieces(key, good, bad) for key, (good, bad) in counted),
    )
