"""What a refused request was told."""

from html import unescape

from werkzeug.test import TestResponse


def sentence_in(answer: TestResponse) -> str:
    """What a refused request was told."""
    if answer.is_json:
        assert isinstance(answer.json, dict)
        return str(answer.json["sentence"])
    assert answer.content_type == "text/html; charset=utf-8"
    return unescape(answer.text)
