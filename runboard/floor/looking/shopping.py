"""What to buy, as it stands now: made once for whoever looks at the same shop."""

from runboard.floor.changing.runs import Wish, product_to_run
from runboard.floor.looking.at_hand import made_once, shop_now
from runboard.floor.workshop import Workshop
from runboard.plan.opening import Opening
from runboard.plan.supplies.at_hand import AtHand, all_at_hand
from runboard.plan.supplies.shopping import Shopping, ToOpen, shopping


def shopping_now(workshop: Workshop) -> Shopping:
    """For what remains of all open runs."""
    book, state = shop_now(workshop)
    stands = workshop.ledger.last_seq, book.revision
    return made_once(workshop, "shopping", "", stands, lambda: shopping(book, state))


def at_hand_now(workshop: Workshop) -> list[AtHand]:
    """How much there should be of every supply."""
    book, state = shop_now(workshop)
    stands = workshop.ledger.last_seq, book.revision
    return made_once(workshop, "at hand", "", stands, lambda: all_at_hand(book, state))


def shopping_to_open(workshop: Workshop, wish: Wish, opening: Opening) -> Shopping:
    """For a run to be opened, beside what remains of the open ones. Its share is that of the run without an id."""
    book, state = shop_now(workshop)
    product = product_to_run(workshop, wish.product, wish.copied_from)
    if product is None:
        return shopping(book, state)
    name = wish.name.strip() or product.name
    return shopping(book, state, ToOpen(product, name, opening.trays, opening.boards, wish.wood or product.wood))
