"""Facts and how each is written, on the page as on the server and on paper. Where a fact is set in lines, its spaces are no-break ones."""

from datetime import UTC, date, datetime, timedelta

NOW = datetime(2026, 3, 4, 15, 0, tzinfo=UTC)
ZONE = "Europe/Berlin"

MOMENTS = {
    datetime(2026, 3, 4, 7, 5, tzinfo=UTC): "08:05",
    datetime(2026, 3, 4, 23, 30, tzinfo=UTC): "Thu 00:30",
    datetime(2026, 3, 8, 7, 0, tzinfo=UTC): "Sun 08:00",
    datetime(2026, 3, 1, 7, 0, tzinfo=UTC): "Sun 08:00",
    datetime(2026, 3, 12, 16, 0, tzinfo=UTC): "Thu 12 Mar, 17:00",
    datetime(2026, 9, 3, 15, 0, tzinfo=UTC): "Thu 3 Sep, 17:00",
    datetime(2025, 11, 30, 23, 59, tzinfo=UTC): "Mon 1 Dec, 00:59",
}

DAYS_OF_A_YEAR = {date(2026, 3, 14): "14 Mar 2026", date(2026, 9, 1): "1 Sep 2026"}

SPANS = {
    timedelta(0): "0 min",
    timedelta(minutes=59): "59 min",
    timedelta(hours=1): "1 h",
    timedelta(minutes=65): "1 h 05",
    timedelta(minutes=90): "1 h 30",
    timedelta(hours=24): "24 h",
    timedelta(minutes=47 * 60 + 59): "47 h 59",
    timedelta(hours=48): "2 days",
    timedelta(minutes=48 * 60 + 30): "2 days 1 h",
    timedelta(hours=76): "3 days 4 h",
    timedelta(days=14): "14 days",
}

LENGTHS = {
    (0.0, "mm"): "0 mm",
    (12.5, "mm"): "12.5 mm",
    (60.0, "mm"): "60 mm",
    (0.0, "in"): "0 in",
    (19.05, "in"): "3/4 in",
    (25.4, "in"): "1 in",
    (139.7, "in"): "5 1/2 in",
    (3.0, "in"): "0.118 in",
}

LISTS = {("a",): "a", ("a", "b"): "a and b", ("a", "b", "c"): "a, b and c"}

TRAYS = {
    ("4",): "tray 4",
    ("2", "1"): "trays 1 and 2",
    ("4", "5", "6"): "trays 4 to 6",
    ("5", "1", "3"): "trays 1, 3 and 5",
    ("10", "9", "8", "1"): "trays 1 and 8 to 10",
    ("4a", "4", "5"): "trays 4, 4a and 5",
    ("1", "2", "3", "5", "6", "7", "9"): "trays 1 to 3, 5 to 7 and 9",
    ("1", "3", "5", "7", "9", "11"): "6 trays",
}
