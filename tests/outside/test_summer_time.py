"""The days on which clocks change, and how long they are: by the laws that set them, through the shop's own days."""

from datetime import UTC, date, datetime, timedelta

from runboard.shop.hours import day_bounds, local_day
from tests.outside.said import from_memory

BERLIN, NEW_YORK = "Europe/Berlin", "America/New_York"


# Directive 2000/84/EC: last Sunday of March and of October, 01:00 UTC. Energy Policy Act of 2005: second Sunday of March,
# first Sunday of November, 02:00 local time.
@from_memory(
    "Directive 2000/84/EC, articles 2 and 3; Energy Policy Act of 2005, section 110",
    {
        (date(2026, 3, 29), BERLIN): 23,
        (date(2026, 10, 25), BERLIN): 25,
        (date(2026, 3, 28), BERLIN): 24,
        (date(2026, 3, 8), NEW_YORK): 23,
        (date(2026, 11, 1), NEW_YORK): 25,
        (date(2026, 11, 2), NEW_YORK): 24,
    },
)
def test_the_hours_of_a_day_of_the_shop(day: date, zone: str) -> float:
    begins, ends = day_bounds(day, zone)
    return (ends.astimezone(UTC) - begins.astimezone(UTC)) / timedelta(hours=1)


@from_memory(
    "Directive 2000/84/EC: one hour ahead of UTC in winter, two in summer, in central Europe",
    {
        datetime(2026, 3, 28, 22, 59, tzinfo=UTC): date(2026, 3, 28),
        datetime(2026, 3, 28, 23, 0, tzinfo=UTC): date(2026, 3, 29),
        datetime(2026, 3, 29, 22, 0, tzinfo=UTC): date(2026, 3, 30),
    },
)
def test_the_day_of_a_moment(moment: datetime) -> date:
    return local_day(moment, BERLIN)
