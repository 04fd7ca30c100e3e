"""What a good piece costs, drawn: a bar for each kind of cost."""

from markupsafe import Markup

from runboard.charts.bars import Bar, bars
from runboard.plan.money.price import Priced
from runboard.plan.money.question import Price
from runboard.shop.book import Book
from runboard.words.before.price import cost_bars
from runboard.words.sentences import sentence


def draw_price(book: Book, question: Price, answer: Priced) -> tuple[Markup, ...]:
    """The bars; none where nothing costs anything."""
    rows = [Bar(name, length, said) for name, length, said in cost_bars(book, answer)]
    return (bars("price", sentence("before-price-bars"), rows),) if rows else ()
