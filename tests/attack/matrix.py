"""Every route × role × method, made from the app's URL map, with the promised answer beside what came."""

from collections.abc import Iterator
from dataclasses import dataclass

from werkzeug.exceptions import MethodNotAllowed
from werkzeug.routing import Rule
from werkzeug.test import TestResponse

from runboard.house import House
from tests.attack.cast import RUN, STATION, TRAY, Cast
from tests.attack.promises import FILES, PAIRED, READ, WRITE, refused_with, who_may, without_the_method

METHODS = ("GET", "HEAD", "OPTIONS", "PUT", "DELETE", "POST")
READING = ("GET", "HEAD", "OPTIONS")
OTHER_SITES = ("https://shop.example", "http://localhost:9", "null", "http://[", "file://")
NAMES = {
    "run": RUN, "tray": TRAY, "thing": "stations", "where": "products", "operation": "cut", "name": "en",
    "device_id": "nobody", "station": STATION,
}  # fmt: skip


@dataclass(frozen=True)
class Route:
    """An address of the app: ``takes`` has for each method that it takes the endpoint which answers."""

    address: str
    takes: dict[str, str]
    file: str = ""


def unpromised(house: House) -> list[str]:
    """The endpoints that the app answers and nobody wrote a promise for, and the promises for what is no more."""
    answered = {rule.endpoint for rule in house.app.url_map.iter_rules()} - {"static_files.static"}
    return sorted(answered ^ (READ.keys() | WRITE.keys()))


def routes(house: House, card: str = "/t/token") -> list[tuple[str, str, str]]:
    """(method, address, endpoint) of everything that the app answers, with names that are in the shop."""
    return [
        (method, one.address, endpoint)
        for one in addresses(house, card)
        for method, endpoint in sorted(one.takes.items())
    ]


def addresses(house: House, card: str = "/t/token") -> list[Route]:
    """Every address once, the files that stand for others among them; last what ends a guest's session."""
    rules = [rule for rule in house.app.url_map.iter_rules() if rule.endpoint != "static_files.static"]
    files = {f"/static/{name}": name for name in FILES}
    found = [*dict.fromkeys(_address(house, rule, card) for rule in rules), *files]
    return [
        Route(one, _taken(house, one), files.get(one, ""))
        for one in sorted(found, key=lambda one: one.endswith("/leave"))
    ]


def _address(house: House, rule: Rule, card: str) -> str:
    key = RUN if "runs" in rule.rule else "rail" if "products" in rule.rule else "cnc"
    with house.app.test_request_context():
        built = rule.build({one: (NAMES | {"key": key}).get(one, one) for one in rule.arguments})
    assert built is not None
    return card if rule.rule == "/t/<token>" else built[1]


def _taken(house: House, address: str) -> dict[str, str]:
    """For each method that an address takes the endpoint that answers: two rules may fit one address."""
    adapter, found = house.app.url_map.bind("localhost"), {}
    for method in METHODS:
        try:
            found[method] = str(adapter.match(address, method)[0])
        except MethodNotAllowed:
            continue
    return {method: endpoint for method, endpoint in found.items() if method != "OPTIONS"}


def promised(route: Route, role: str, method: str) -> set[int] | None:
    """The statuses of which one is promised; None for every one that lets in: not 401, not 403, no failure."""
    if method == "OPTIONS":
        return _asked_what_is_taken(route, role)
    endpoint = route.takes.get(method)
    if endpoint is None:
        return {without_the_method(role, method in READING)}
    who = who_may(endpoint, route.file)
    assert who is not None, f"{endpoint} has no promise"
    return None if role in who else {refused_with(endpoint, role)}


def _asked_what_is_taken(route: Route, role: str) -> set[int]:
    """OPTIONS says which methods there are, and nothing else: to a lead's and a helper's phone, and at what is one's own."""
    told = role in PAIRED or any(role in (who_may(one, route.file) or ()) for one in route.takes.values())
    refused = {refused_with(one, role) for one in route.takes.values()} | {without_the_method(role, True)}
    return refused | {200} if told else refused


def kept(answer: TestResponse, wanted: set[int] | None) -> bool:
    """Whether an answer is the promised one."""
    if wanted is None:
        return answer.status_code not in (401, 403, 405) and answer.status_code < 500
    return answer.status_code in wanted


def broken(cast: Cast, role: str) -> Iterator[str]:
    """A line for each promise to a role that is not kept."""
    for route in addresses(cast.house, cast.card):
        for method in METHODS:
            wanted = promised(route, role, method)
            answer = cast.clients[role].open(route.address, method=method)
            if not kept(answer, wanted):
                said = "let in" if wanted is None else " or ".join(map(str, sorted(wanted)))
                yield f"{method} {route.address} by {role}: promised {said}, came {answer.status_code}"
