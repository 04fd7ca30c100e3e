"""Who may ask for what, written by hand: the promise that the guard is held to, and no copy of it.

A route that stands in neither table has no promise, and a test fails.
"""

from collections.abc import Mapping

NOBODY, SENSOR, REVOKED, GUEST, CREW, LEAD = "nobody", "sensor", "revoked lead", "guest", "helper's phone", "lead"
ROLES = (NOBODY, SENSOR, REVOKED, GUEST, CREW, LEAD)

Who = frozenset[str]
_ANYBODY: Who = frozenset(ROLES)
PAIRED: Who = frozenset({CREW, LEAD})
_LEAD: Who = frozenset({LEAD})
_GUEST: Who = frozenset({GUEST})
_SENSOR: Who = frozenset({SENSOR})

READ: Mapping[str, Who] = {
    # The way in: without a session.
    "pairing.welcome": _ANYBODY,
    "welcome.steps": _ANYBODY,
    "welcome.certificate": _ANYBODY,
    "welcome.profile": _ANYBODY,
    "helper.typed": _ANYBODY,
    "helper.card": _ANYBODY,
    # One review, to who has a code for it; whoever has none is told that it opens nothing.
    "friend_code.look": _ANYBODY,
    # A guest's own page. Who is paired has no tray of their own.
    "helper.page": _GUEST,
    "helper.state": _GUEST,
    "helper.picture": _GUEST,
    # What the shop does.
    "now.now": PAIRED,
    "now.trays": PAIRED,
    "now.wall": PAIRED,
    "state.shop_state": PAIRED,
    "state.table": PAIRED,
    "offline.worker": PAIRED,
    "static_files.composed_file": PAIRED,
    "calendar.put_in": PAIRED,
    "calendar.of_load": PAIRED,
    "calendar.of_wait": PAIRED,
    "care.care": PAIRED,
    "help.how": PAIRED,
    "state.history": PAIRED,
    "pictures.show": PAIRED,
    "push.key": PAIRED,
    # Plan and Review, to look at.
    "plan.plan": PAIRED,
    "plan.new_product": PAIRED,
    "plan.product": PAIRED,
    "plan_opening.new_run": PAIRED,
    "plan_route.route": PAIRED,
    "plan_route.one": PAIRED,
    "plan_run.run": PAIRED,
    "plan_run_sheet.look": PAIRED,
    "plan_lines.lines": PAIRED,
    "plan_schedule.search": PAIRED,
    "plan_try.look": PAIRED,
    "before.kinds": PAIRED,
    "before.look": PAIRED,
    "before.download": PAIRED,
    "plan_shopping.shopping": PAIRED,
    "cards.choose": PAIRED,
    "cards.progress": PAIRED,
    "cards.pdf": PAIRED,
    "cards.sheets": PAIRED,
    "paper.trays": PAIRED,
    "paper.card": PAIRED,
    "review.review": PAIRED,
    "review.run": PAIRED,
    "review.days": PAIRED,
    "review_log.log": PAIRED,
    "review_times.times": PAIRED,
    "review_times.overrule": _LEAD,
    "review_times.take_back": _LEAD,
    "review_changes.changes": PAIRED,
    "review_changes.keep": _LEAD,
    "review_changes.cost": _LEAD,
    "review_changes.adopt": _LEAD,
    "review_made.ledger": PAIRED,
    "review_made.judge": _LEAD,
    "review_held.held": PAIRED,
    "review_happened.happened": PAIRED,
    "review_log.as_csv": PAIRED,
    "review_over_runs.over_runs": PAIRED,
    "review_over_runs.as_json": _LEAD,
    "review_over_runs.as_zip": _LEAD,
    # A friend's eyes on a review: the answers, and the file to send.
    "friend.answers": PAIRED,
    "friend.as_file": PAIRED,
    "friend.progress": PAIRED,
    "friend.pdf": PAIRED,
    # The shop, to look at.
    "shop.shop": PAIRED,
    "shop.about": PAIRED,
    "shop.one": PAIRED,
    "first.first": PAIRED,
    # Who may come in, and everything at once.
    "pairing.one": _LEAD,
    "guests.one": _LEAD,
    "shop_file.download": _LEAD,
    "shop_file.choose": _LEAD,
    "plan_run.download": _LEAD,
    # What holds secrets of the shop's own.
    "outside.alarms": _LEAD,
    "signals.stations": _LEAD,
    "tray_code.trays": _LEAD,
    "tray_code.show": _LEAD,
    "signals.one": _LEAD,
}

WRITE: Mapping[str, Who] = {
    "pairing.pair_this": _ANYBODY,
    "helper.open_typed": _ANYBODY,
    "helper.come": _ANYBODY,
    "friend_code.answer": _ANYBODY,
    "helper.leave_tray": _GUEST,
    "taps.taps": frozenset({GUEST, CREW, LEAD}),
    "signals.receive": _SENSOR,
    "signals.press": frozenset(),  # a token of its own opens it, which no role here has
    # Whoever hands a piece over ticks it off: as a press of an event that crew may make.
    "plan_lines.tick": PAIRED,
    "welcome.go_over": PAIRED,
    "push.subscription": PAIRED,
    "push.end": PAIRED,
    "before.ask": PAIRED,
    "before.drop": PAIRED,
    "before.end": PAIRED,
    # What is counted, bought and changed: crew too, as by a press.
    "plan_shopping.bought": PAIRED,
    "plan_shopping.back": PAIRED,
    "plan_shopping.changed": PAIRED,
    "plan_shopping.count": PAIRED,
    "plan_shopping.learned": _LEAD,
    "backup.make": _LEAD,
    "cards.order": _LEAD,
    "friend.make_code": _LEAD,
    "friend.order_pdf": _LEAD,
    "friend.revoke_code": _LEAD,
    "friend.settle": _LEAD,
    "friend.take": _LEAD,
    "cards.end": _LEAD,
    "guests.again": _LEAD,
    "guests.cards": _LEAD,
    "guests.hours": _LEAD,
    "guests.revoke": _LEAD,
    "now.put_right": _LEAD,
    "outside.add": _LEAD,
    "outside.remove": _LEAD,
    "outside.save_steps": _LEAD,
    "outside.sound": _LEAD,
    "outside.test": _LEAD,
    "pairing.rename": _LEAD,
    "pairing.revoke": _LEAD,
    "pairing.show_code": _LEAD,
    "paper.enter": _LEAD,
    "pictures.take": _LEAD,
    "plan.add_product": _LEAD,
    "plan.copy_product": _LEAD,
    "plan.preview_product": _LEAD,
    "plan.remove_product": _LEAD,
    "plan.save_product": _LEAD,
    "plan_opening.open_it": _LEAD,
    "plan_opening.preview": _LEAD,
    "plan_route.change_route": _LEAD,
    "plan_route.save_one": _LEAD,
    "plan_run.boards": _LEAD,
    "plan_run.change_orders": _LEAD,
    "plan_run.end": _LEAD,
    "plan_run_sheet.go_past": _LEAD,
    "plan_run_sheet.take_back": _LEAD,
    "plan_schedule.end": _LEAD,
    "plan_schedule.look_further": _LEAD,
    "plan_try.drop": _LEAD,
    "plan_try.keep": _LEAD,
    "before.keep": _LEAD,
    "shop.remove_one": _LEAD,
    "shop.save_about": _LEAD,
    "shop.save_one": _LEAD,
    "shop_file.look": _LEAD,
    "first.save_first": _LEAD,
    "tray_code.anyone": _LEAD,
    "signals.make": _LEAD,
    "signals.make_press": _LEAD,
    "signals.revoke": _LEAD,
    "signals.save_broker": _LEAD,
    "signals.save_limits": _LEAD,
}

# The files of one route: what the way in is drawn with, what a guest's page is drawn with, and the shop's own pages.
FILES: Mapping[str, Who] = {
    "tokens.css": _ANYBODY,
    "base.css": _ANYBODY,
    "icon.svg": _ANYBODY,
    "icons/icon-192.png": _ANYBODY,
    "welcome/welcome.css": _ANYBODY,
    "helper/helper.css": _ANYBODY,
    "helper/helper.js": frozenset({GUEST, CREW, LEAD}),
    "door/outbox.js": frozenset({GUEST, CREW, LEAD}),
    "now/now.js": PAIRED,
    "icons/../now/now.js": PAIRED,
    "trays/trays.js": PAIRED,
}

# How somebody is turned away who may not: a stranger is told to pair, a known device that this is not its own.
_TURNED_AWAY = {NOBODY: 401, SENSOR: 401, REVOKED: 401, GUEST: 403, CREW: 403, LEAD: 403}
# A page that is a guest's own is not there for a phone without a tray; a lead's phone has no sensor's token.
_OTHERWISE = {
    **{(endpoint, role): 404 for endpoint in ("helper.page", "helper.state", "helper.picture") for role in PAIRED},
    ("helper.leave_tray", LEAD): 404,
    ("signals.receive", LEAD): 401,
    ("signals.press", LEAD): 401,
}


def who_may(endpoint: str, file: str = "") -> Who | None:
    """The roles that a route is promised to; None where nobody wrote a promise for it."""
    return FILES.get(file) if file else READ.get(endpoint, WRITE.get(endpoint))


def refused_with(endpoint: str, role: str) -> int:
    """The status that somebody gets who may not."""
    return _OTHERWISE.get((endpoint, role), _TURNED_AWAY[role])


def without_the_method(role: str, reading: bool) -> int:
    """The status for a method that the route does not take. Whoever may not write at all is not told what is taken."""
    return 405 if role == LEAD or (role == CREW and reading) else _TURNED_AWAY[role]
