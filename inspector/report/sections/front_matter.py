"""The front of the report: contents, the vessel's particulars, and the client's brief."""

from collections.abc import Mapping

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Spacer

from inspector.assess.model import Assessment, SystemPart
from inspector.report.document import CONTENTS, contents, heading
from inspector.report.issue import Issue
from inspector.report.reading_text import conversion_note, typed_value
from inspector.report.tables import pairs_table
from inspector.report.theme import STYLES, plain, txt
from inspector.report.verdict_text import NEED_WORDS
from inspector.values.formatting import grouped

# Key in the record, label, and the unit that it was typed in.
VESSEL = (
    ("name", "name", ""),
    ("imo", "IMO number", ""),
    ("flag", "flag", ""),
    ("class", "class", ""),
    ("built", "keel laid", ""),
    ("year", "year built", ""),
    ("yard", "builder", ""),
    ("length", "length", "m"),
    ("breadth", "breadth", "m"),
    ("depth", "depth", "m"),
    ("draught", "draught", "m"),
    ("tonnage", "gross tonnage", ""),
    ("deck_area", "deck area", "m²"),
    ("dp_class", "DP class", ""),
    ("particulars", "particulars", ""),
)
BRIEF = (
    ("client", "client", ""),
    ("speed", "speed", "kn"),
    ("range", "range", "nmi"),
    ("endurance", "endurance", "days"),
    ("station", "of these, days on station", "days"),
    ("persons", "persons", ""),
    ("horizon", "horizon", "years"),
    ("budget", "budget for vessel and work", ""),
    ("waters", "waters", ""),
    ("ship", "kind of ship she is to be", ""),
)


def contents_page() -> list[Flowable]:
    """Return the list of sections with their pages."""
    return [heading("Contents", CONTENTS), Spacer(1, 2 * mm), contents()]


def vessel_and_brief(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return the vessel's particulars and the client's brief.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    body: list[Flowable] = [
        heading("Vessel and brief", "vessel"),
        heading("The vessel", "vessel-particulars", 1),
        *_particulars(assessment.vessel, VESSEL, issue),
        heading("The client's brief", "brief", 1),
        *_particulars(assessment.brief, BRIEF, issue),
    ]
    if assessment.systems:
        # A verdict can be followed only beside what the brief asked of that system.
        needs: dict[str, list[str]] = {}
        for name, need in map(_need, assessment.systems):
            needs.setdefault(need, []).append(name)
        pairs = [(need, "; ".join(names)) for need, names in needs.items()]
        body.append(heading("What the brief needs of each system", "needs", 1))
        body.append(pairs_table(pairs, issue.page.column, 46 * mm, tight=True))
    return body


def _need(part: SystemPart) -> tuple[str, str]:
    """Return a system's name and how much the brief needs it."""
    need = part.whole.facts.need
    return part.system.name, NEED_WORDS[need]


def _as_printed(key: str, values: Mapping[str, str]) -> str:
    """What was typed; a budget in groups of digits, as every other sum."""
    text = plain(values.get(key, ""))
    return grouped(float(text)) if key == "budget" and text.isdigit() else text


def _particulars(
    values: Mapping[str, str], names: tuple[tuple[str, str, str], ...], issue: Issue
) -> list[Flowable]:
    """A table of what is known of these names, and from which units it was converted."""
    typed = [(label, _as_printed(key, values), unit) for key, label, unit in names]
    known = [(label, typed_value(text, unit, issue.units)) for label, text, unit in typed if text]
    if not known:
        return [Paragraph("Nothing was recorded.", STYLES["body"])]
    note = conversion_note([(text, unit) for _, text, unit in typed], issue.units)
    notes = [Paragraph(txt(note), STYLES["small"])] if note else []
    return [pairs_table(known, issue.page.column, 46 * mm, tight=True), *notes]
