"""What one sender may cost the others: how long the server waits for it, and how much it takes of it at a time."""

from dataclasses import dataclass

# Of these workers one device may have so many at a time, and so many all guests together, and all that are unknown: the
# rest of what they ask waits its turn on the event loop. So a press of somebody else finds a free one beside any flood.
WORKERS, MOST_A_SENDER, MOST_STRANGERS = 10, 3, 4


@dataclass(frozen=True)
class Bounds:
    """Spans are seconds, sizes bytes. What a request may bring stands in ``sizes.py``.

    ``headers``: from the connection, or the last answer, until a request's headers are there. ``body``: until all of it
    is there, and a second more for each ``body_rate`` that came, so that a picture may come by a slow Wi-Fi and a byte a
    second may not. ``unread``: in each such span somebody who is sent an answer reads ``read_least`` of it, or all.
    ``connections`` in all, of which ``from_one`` address; whoever has been silent for longest makes room. A shop's phones
    have two to ten each, behind a proxy all have one address. ``bodies`` are held of all requests together, those above
    ``in_memory`` in files. ``ending``: how long a stop waits for what is being answered.
    """

    headers: float = 10.0
    body: float = 10.0
    body_rate: int = 64_000
    unread: float = 20.0
    read_least: int = 64_000
    connections: int = 512
    from_one: int = 128
    in_memory: int = 64_000
    bodies: int = 500_000_000
    ending: float = 1.0
