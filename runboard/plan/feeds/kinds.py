"""The kind of question about feeds."""

from runboard.plan.before.kind import Kind
from runboard.plan.feeds import feeding

FEED = Kind("feed", feeding.Feed, feeding.answer, feeding.begin, feeding.keeps)
