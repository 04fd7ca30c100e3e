"""Spans of time in words, one way everywhere: '45 s', '12 min', '1 h 30', '2 d 4 h'."""

from datetime import timedelta


def span_in_words(span: timedelta | None) -> str:
    """A span as '45 s', '12 min', '1 h 30' or '2 d 4 h'; a dash where there is none."""
    if span is None:
        return "–"
    seconds = round(span.total_seconds())
    if seconds < 60:
        return f"{seconds} s"
    minutes = round(seconds / 60)
    if minutes < 60:
        return f"{minutes} min"
    if minutes < 24 * 60:
        return f"{minutes // 60} h" + (f" {minutes % 60:02d}" if minutes % 60 else "")
    hours = round(minutes / 60)
    return f"{hours // 24} d" + (f" {hours % 24} h" if hours % 24 else "")
