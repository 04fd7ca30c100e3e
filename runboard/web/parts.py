"""The pages as one Flask app: its parts, in the order in which they look at a request."""

from flask import Flask

from runboard.places import folder
from runboard.web.before import page as before
from runboard.web.door import errors, guard, offline, pictures, run_pages, sessions, sizes, static_files
from runboard.web.door import pages as pages_support
from runboard.web.fittings import Fittings, fit_out
from runboard.web.help import page as help_page
from runboard.web.helper import guests
from runboard.web.helper import page as helper
from runboard.web.network import pairing, welcome
from runboard.web.now import calendar, care, state, taps
from runboard.web.now import page as now
from runboard.web.plan import lines as plan_lines
from runboard.web.plan import opening as plan_opening
from runboard.web.plan import page as plan
from runboard.web.plan import route as plan_route
from runboard.web.plan import run as plan_run
from runboard.web.plan import run_sheet as plan_run_sheet
from runboard.web.plan import schedule as plan_schedule
from runboard.web.plan import shopping as plan_shopping
from runboard.web.plan import trying as plan_try
from runboard.web.review import changes as review_changes
from runboard.web.review import friend, friend_code
from runboard.web.review import happened as review_happened
from runboard.web.review import held as review_held
from runboard.web.review import log as review_log
from runboard.web.review import made as review_made
from runboard.web.review import over_runs as review_over_runs
from runboard.web.review import page as review
from runboard.web.review import times as review_times
from runboard.web.shop import backup, first, outside, push, signals
from runboard.web.shop import book_file as shop_file
from runboard.web.shop import page as shop
from runboard.web.trays import cards, paper, tray_code

PARTS = (
    guard,
    sizes,
    sessions,
    errors,
    pages_support,
    pairing,
    welcome,
    helper,
    guests,
    friend,
    friend_code,
    static_files,
    taps,
    signals,
    state,
    now,
    calendar,
    offline,
    first,
    shop,
    shop_file,
    outside,
    push,
    backup,
    care,
    help_page,
    run_pages,
    pictures,
    plan,
    plan_route,
    plan_opening,
    plan_run,
    plan_run_sheet,
    plan_lines,
    plan_schedule,
    plan_try,
    before,
    plan_shopping,
    cards,
    paper,
    tray_code,
    review,
    review_log,
    review_times,
    review_happened,
    review_held,
    review_changes,
    review_made,
    review_over_runs,
)


def make_app(fittings: Fittings) -> Flask:
    """The app, which answers with what it is given."""
    app = Flask("runboard", static_folder=None, template_folder=str(folder("templates")))
    fit_out(app, fittings)
    for part in PARTS:
        if hasattr(part, "part"):
            app.register_blueprint(part.part)
        if hasattr(part, "init_app"):
            part.init_app(app)
    return app
