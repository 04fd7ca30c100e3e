"""Why somebody, a machine or a tray waited, in words."""

from runboard.review.past import Past
from runboard.words.review_things import within
from runboard.words.sentences import message_name, sentence


def why_waited(past: Past, why: str, of: str = "") -> str:
    """'No drying rack places free', 'Drying'; ``of`` is the key of the service that was taken."""
    service = next((known.name for known in past.book.services if known.key == of), of)
    if service:
        return sentence("review-waits-none-free", {"service": within(service)})
    return sentence(message_name("review-waits", why))
