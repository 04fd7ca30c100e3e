"""Requests made from the app's routes and from the forms that its pages show, with something wrong in them."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from random import Random
from typing import Any

from flask.testing import FlaskClient
from werkzeug.routing import Rule

import runboard.web
from runboard.house import House
from tests.attack import nasty
from tests.attack.matrix import addresses

METHODS = ("GET", "POST", "PUT", "DELETE", "OPTIONS", "HEAD", "PATCH", "TRACE", "QUERY", "get")
TYPES = (
    "application/json",
    "application/x-www-form-urlencoded",
    "multipart/form-data; boundary=x",
    "multipart/form-data",
    "text/plain",
    "",
)
HEADERS: Mapping[str, tuple[str, ...]] = {
    "Accept": ("*/*", "text/html", "application/json;q=NaN", ",,,"),
    "Accept-Language": ("de", "xx-YY", "en;q=9" * 50, "*"),
    "Accept-Encoding": ("gzip", "br;q=1e9", "identity;q=0,*;q=0"),
    "Authorization": ("Bearer x", "Basic !!!", "Bearer", "Digest a=b", "é"),
    "Content-Encoding": ("gzip", "br"),
    "Content-Length": ("-1", "x", "99999999999999999999", "0"),
    "Cookie": ("runboard=", "runboard=\"", "person=ann; lang=xx", "a=b" * 999, "language=\u00e9"),
    "Expect": ("100-continue",),
    "HX-Request": ("true",),
    "HX-History-Restore-Request": ("true",),
    "If-Modified-Since": ("x", "Thu, 01 Jan 1970 00:00:00 GMT", "Thu, 99 Jan 99999 00:00:00 GMT"),
    "If-None-Match": ("*", 'W/"x"', '"', "a" * 5000),
    "Origin": ("http://localhost", "null", "http://["),
    "Range": ("bytes=0-0", "bytes=-1", "bytes=9-1", "bytes=" + "0-1," * 300, "x=1-2"),
    "Referer": ("http://[", "x"),
    "Sec-Fetch-Site": ("cross-site", "none", "x"),
    "User-Agent": ("iPhone", "\u00e9" * 500),
    "X-Forwarded-For": ("127.0.0.1", "x" * 500),
}  # fmt: skip
# Made in processes of their own, or in seconds: once in a while is enough, and others are asked while they are made.
SELDOM = frozenset({"cards.order", "cards.sheets", "backup.make", "outside.test", "outside.sound", "plan_try.look", "plan_try.keep",
                    "plan_schedule.look_further", "plan.plan", "plan_opening.preview", "signals.save_broker"})  # fmt: skip
VALUES: Mapping[str, tuple[str, ...]] = {
    "run": ("r1", "r2"), "key": ("r1", "rail", "cnc", "ann", "shop", "new"), "tray": ("1", "2"), "station": ("cnc", "laser"),
    "thing": ("stations", "people", "rooms", "jobs", "services", "finishes", "walks"), "where": ("runs", "products"),
    "operation": ("cut", "oil", "new"), "name": ("now/now.js", "en", "de", "tokens.css"), "load": ("cut/1", "clean/1"), "step": ("oil",),
}  # fmt: skip


@dataclass(frozen=True)
class Wrong:
    """One request."""

    method: str
    path: str
    query: Any = None
    headers: Mapping[str, str] = field(default_factory=dict)
    data: Any = None

    def send(self, client: FlaskClient) -> Any:
        return client.open(
            self.path, method=self.method, query_string=self.query, headers=dict(self.headers), data=self.data
        )

    def __str__(self) -> str:
        return (
            f"{self.method} {self.path[:120]} ?{str(self.query)[:200]} {dict(self.headers)!s:.200} {self.data!s:.300}"
        )


@dataclass(frozen=True)
class Shown:
    """A form as a page shows it."""

    path: str
    method: str
    fields: tuple[tuple[str, str], ...]


class Requests:
    """Makes requests for a house whose forms were read."""

    def __init__(self, random: Random, rules: list[Rule], forms: list[Shown]) -> None:
        self._random, self._rules, self._forms = random, rules, forms

    def wrong(self) -> Wrong:
        if self._random.random() < 0.45:
            return self._form()
        return self._route()

    def _form(self) -> Wrong:
        random = self._random
        form = random.choice(self._forms)
        if random.random() < 0.3 or not form.path.startswith("/"):
            return self._route()
        fields = list(form.fields)
        for _ in range(random.choice((0, 1, 1, 2, 4))):
            at = random.randrange(len(fields)) if fields else 0
            name = fields[at][0] if fields else nasty.text(random)
            chance = random.random()
            if chance < 0.75 or not fields:
                fields[at : at + 1] = [(name, nasty.text(random))]
            elif chance < 0.85:
                del fields[at]
            else:
                fields.append((nasty.text(random) if chance > 0.95 else name, nasty.text(random)))
        if form.method == "GET":
            return Wrong("GET", form.path, _encoded(fields))
        typed = {"Content-Type": "application/x-www-form-urlencoded"}
        return Wrong("POST", form.path, None, typed | self._headers(0.1), _encoded(fields))

    def _route(self) -> Wrong:
        random = self._random
        rule = random.choice(self._rules)
        if rule.endpoint in SELDOM and random.random() < 0.97:
            rule = random.choice(self._rules)
        takes = sorted(rule.methods or ("GET",))
        method = random.choice(takes) if random.random() < 0.9 else random.choice(METHODS)
        query = _encoded(self._query()) if random.random() < 0.4 else None
        data = self._body() if method not in ("GET", "HEAD", "OPTIONS") or random.random() < 0.05 else None
        typed = {"Content-Type": random.choice(TYPES)} if data is not None and random.random() < 0.9 else {}
        return Wrong(method, self._path(rule), query, typed | self._headers(0.3), data)

    def _path(self, rule: Rule) -> str:
        random = self._random

        def part(match: re.Match[str]) -> str:
            name = match[1]
            if random.random() < 0.7:
                return random.choice(VALUES.get(name, ("x",)))
            return _quoted(nasty.text(random)[:300])

        return re.sub(r"<(?:[^<>:]+:)?(\w+)>", part, rule.rule)

    def _query(self) -> list[tuple[str, str]]:
        random = self._random
        names = query_names()
        return [
            (
                random.choice(names),
                random.choice(("ann", "r1", "1", "0")) if random.random() < 0.4 else nasty.text(random),
            )
            for _ in range(random.choice((1, 1, 2, 5)))
        ]

    def _headers(self, often: float) -> dict[str, str]:
        random = self._random
        if random.random() > often:
            return {}
        names = random.sample(list(HEADERS), random.choice((1, 1, 2, 3)))
        return {name: random.choice(HEADERS[name]) for name in names}

    def _body(self) -> bytes:
        random = self._random
        chance = random.random()
        if chance < 0.3:
            return nasty.written(
                nasty.mutated(random, {"taps": [{}], "device": "x", "watts": 1, "endpoint": "x"})
            ).encode()
        if chance < 0.5:
            return nasty.written(nasty.value(random)).encode()
        if chance < 0.8:
            return _encoded(
                [(random.choice(query_names()), nasty.text(random)) for _ in range(random.choice((1, 2, 6)))]
            ).encode()
        parts = b'--x\r\nContent-Disposition: form-data; name="file"; filename="a"\r\n\r\nGIF89a\r\n--x--\r\n'
        cut = random.randrange(len(parts))
        return random.choice((parts, parts[:cut], random.randbytes(random.choice((1, 30, 3000))), b"\xff" * 9))


def read_forms(house: House, client: FlaskClient) -> list[Shown]:
    """Every form that a lead's pages show."""
    found: dict[tuple[str, str], Shown] = {}
    pages = [one.address for one in addresses(house) if "GET" in one.takes and not one.file]
    more = ["/shop/people/new", "/shop/stations/new", "/plan/runs/r1/route", "/plan/runs/r1/operations/oil", "/shop/people/ann",
            "/plan/try?run=r1", "/plan/products/rail/operations/oil", "/shop/finishes/new", "/shop/walks/new", "/shop/jobs/new"]  # fmt: skip
    for page in [*pages, *more]:
        answer = client.get(page)
        if answer.mimetype == "text/html":
            reader = _Forms(page.partition("?")[0])
            reader.feed(answer.text)
            found |= {(one.path, one.method): one for one in reader.found}
    return list(found.values())


@cache
def query_names() -> tuple[str, ...]:
    """The names by which the app looks into a query or a form."""
    sources = "".join(path.read_text("utf-8") for path in Path(str(runboard.web.__path__[0])).rglob("*.py"))
    return tuple(sorted(set(re.findall(r"(?:args|form|values|given)\.get(?:list)?\(\"(\w+)\"", sources))))


class _Forms(HTMLParser):
    def __init__(self, page: str) -> None:
        super().__init__()
        self._page = page
        self.found: list[Shown] = []
        self._fields: list[tuple[str, str]] = []
        self._at = ("", "")

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: text or "" for name, text in attrs}
        if tag == "form":
            self._at, self._fields = (given.get("action") or self._page, given.get("method", "get").upper()), []
        elif tag in ("input", "textarea", "select", "button") and given.get("name"):
            self._fields.append((given["name"], given.get("value", "")))
        elif tag == "option" and self._fields and "selected" in given:
            self._fields[-1] = (self._fields[-1][0], given.get("value", ""))

    def handle_endtag(self, tag: str) -> None:
        if tag == "form":
            self.found.append(Shown(*self._at, tuple(self._fields)))


def _encoded(fields: list[tuple[str, str]]) -> str:
    return "&".join(f"{_quoted(name)}={_quoted(text)}" for name, text in fields)


def _quoted(text: str) -> str:
    """Percent-encoded, also what is no text."""
    plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.-_"
    return "".join(
        sign if sign in plain else "".join(f"%{byte:02X}" for byte in sign.encode("utf-8", "surrogatepass"))
        for sign in text
    )
