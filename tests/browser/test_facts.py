"""The page writes each fact as the server does: moments, spans, lengths, lists, trays."""

from playwright.sync_api import Page

from tests.vectors.facts import DAYS_OF_A_YEAR, LENGTHS, LISTS, MOMENTS, NOW, SPANS, TRAYS, ZONE

WRITE = """async ({now, zone, moments, days, spans, lengths, lists, trays}) => {
    const clock = await import("/door/clock.js");
    const words = await import("/door/words.js");
    const {showLength} = await import("/door/lengths.js");
    const {dayOfYear} = await import("/views/finish.js");
    const [fetched, today] = [window.fetch, Date.now];
    window.fetch = (address) => fetched(address.replace("/static/", "/"));
    await words.openWords("en");
    window.fetch = fetched;
    Date.now = () => now;
    clock.setZone(zone);
    const said = {
        moments: moments.map((one) => clock.moment(one)),
        days: days.map((one) => dayOfYear(one)),
        spans: spans.map((one) => clock.span(one)),
        lengths: lengths.map(([mm, units]) => showLength(mm, units)),
        lists: lists.map((one) => words.list(one)),
        trays: trays.map((one) => words.trayWords(one)),
    };
    Date.now = today;
    return said;
}"""


def test_the_page_writes_facts_as_the_server_does(page: Page) -> None:
    given = {
        "now": NOW.timestamp() * 1000,
        "zone": ZONE,
        "moments": [at.isoformat() for at in MOMENTS],
        "days": [day.isoformat() for day in DAYS_OF_A_YEAR],
        "spans": [span.total_seconds() / 60 for span in SPANS],
        "lengths": [list(one) for one in LENGTHS],
        "lists": [list(one) for one in LISTS],
        "trays": [list(one) for one in TRAYS],
    }

    said = page.evaluate(WRITE, given)

    assert [span for span in said["spans"] if " " in span] == []
    assert {kind: [one.replace("\u00a0", " ") for one in some] for kind, some in said.items()} == {
        "moments": [*MOMENTS.values()],
        "days": [*DAYS_OF_A_YEAR.values()],
        "spans": [*SPANS.values()],
        "lengths": [*LENGTHS.values()],
        "lists": [*LISTS.values()],
        "trays": [*TRAYS.values()],
    }
