"""The run sheet in words: each finding a sentence, beside its level and who went past it."""

from collections.abc import Mapping
from datetime import tzinfo
from importlib import import_module
from typing import Any

from runboard.plan.before.finding import Finding
from runboard.plan.before.run_sheet import Checked, RunSheet
from runboard.run.log.event import write_moment
from runboard.shop.book import Book
from runboard.words.before import supplies
from runboard.words.facts import dated
from runboard.words.sentences import say, sentence

# Checks about such a thing say their facts in units and trays; those of ``_BY_KIND`` as the kind of that name words them, whose
# module is loaded when somebody looks.
_SUPPLIES = ("supply", "cutter")
_SAME = {"supply": "supplies"}
_BY_KIND = ("screw", "feed", "price", "program")


def found_in_words(book: Book, finding: Finding) -> str:
    """What a check found, as one sentence or two."""
    return say("before-found", finding.code, _facts(book, finding))


def _facts(book: Book, finding: Finding) -> Mapping[str, Any]:
    about = finding.check.split(" ")[0]
    if about in _SUPPLIES:
        return supplies.found_facts(finding)
    if about in _BY_KIND:
        found: Mapping[str, Any] = import_module(f"runboard.words.before.{about}").found_facts(book, finding.facts)
        return found
    return finding.facts


def level_in_words(each: Checked) -> str:
    """'OK', 'look', 'stop'; 'seen' where somebody went past it."""
    return say("before-level", "passed" if each.passed is not None else each.finding.level)


def passed_in_words(checked: Checked, zone: tzinfo) -> str:
    """'Looked at by RS, Sun 29 Nov 2026, 08:00'; '' where nobody did."""
    if checked.passed is None:
        return ""
    facts = {"initials": checked.passed.initials, "at": dated(checked.passed.at, zone)}
    return sentence("before-passed", facts)


def head_of(sheet: RunSheet) -> str:
    """How it stands, in one sentence."""
    facts = {"stops": sheet.stops, "looks": sheet.looks, "passed": sheet.passed, "begun": sheet.is_begun}
    return sentence("before-sheet-head", facts)


def unchecked_in_words(sheet: RunSheet) -> str:
    """What no check could say anything of, since the shop wrote nothing down; '' where there is nothing."""
    met = {each.finding.check.split(" ")[0].split("-")[0] for each in sheet.checked}
    met |= {_SAME.get(word, word) for word in met}
    what = [say("before-unchecked", word) for word in ("stock", "supplies", "screw", "price") if word not in met]
    return sentence("before-unchecked", {"what": what}) if what else ""


def run_sheet_lines(book: Book, sheet: RunSheet, zone: tzinfo) -> list[str]:
    """The sheet as a command prints it."""
    lines = [head_of(sheet), *filter(None, [unchecked_in_words(sheet)])]
    for each in sheet.checked:
        said = [level_in_words(each), found_in_words(book, each.finding), passed_in_words(each, zone)]
        lines.append("  ".join(part for part in said if part))
    return lines


def run_sheet_record(book: Book, sheet: RunSheet) -> dict[str, Any]:
    """The sheet as JSON: ``checks`` each with its word, level, sentence, and the initials of who went past it."""
    return {
        "kind": "run-sheet",
        "ready": sheet.is_ready,
        "stops": sheet.stops,
        "looks": sheet.looks,
        "checks": [
            {
                "check": each.finding.check,
                "level": each.finding.level,
                "text": found_in_words(book, each.finding),
                "facts": dict(each.finding.facts),
                "passed": _passed(each),
            }
            for each in sheet.checked
        ],
    }


def _passed(each: Checked) -> dict[str, str] | None:
    if each.passed is None:
        return None
    return {"initials": each.passed.initials, "at": write_moment(each.passed.at)}
