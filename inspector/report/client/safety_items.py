"""What is failed or overdue of safety, read from the checks and certificates themselves.

Nobody has to have typed a finding for it: a summary that depends on that leaves out what matters.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment, SystemPart
from inspector.assess.papers.surveys_due import due_list
from inspector.report.page_references import key_of
from inspector.report.wording import all_results
from inspector.values.text import counted

# All that is failed there is about safety; elsewhere what is critical, and every service.
SAFETY_SYSTEMS = ("fire-protection", "life-saving")
CERTIFICATES = "chapter-papers"


@dataclass(frozen=True)
class SafetyItem:
    """One thing of safety that is failed or overdue.

    Parameters
    ----------
    what : str
        The check, with its unit where that is not clear.
    state : str
        "failed", "overdue", "poor".
    more : str
        How far, "" where nothing is to be added.
    key : str
        Where in the report it is told.
    subject : str
        Of the check, "" for a certificate.
    """

    what: str
    state: str
    more: str
    key: str
    subject: str = ""


def safety_items(assessment: Assessment, today: date | None = None) -> list[SafetyItem]:
    """Return what is failed or overdue of safety, the worst first.

    Parameters
    ----------
    assessment : Assessment
    today : date, optional
        The day on which certificates are looked at; without it that of the inspection.

    Returns
    -------
    list of SafetyItem
        Failed before overdue; poor ones of fire protection and life saving last.
    """
    # Fire protection and life saving first: the others are critical for the ship as well.
    systems = sorted(assessment.systems, key=lambda part: part.system.id not in SAFETY_SYSTEMS)
    found = [
        _item(part, result)
        for part in systems
        for result in all_results(part)
        if _counts(part, result)
    ]
    found += _surveys(assessment, today or assessment.recorded.day)
    order = ("failed", "overdue", "poor")
    return sorted(found, key=lambda item: order.index(item.state))


def _counts(part: SystemPart, result: CheckResult) -> bool:
    if not result.applicable or result.rating not in ("poor", "failed"):
        return False
    if part.system.id in SAFETY_SYSTEMS:
        return True
    return result.rating == "failed" and (result.check.critical or result.is_service)


def _item(part: SystemPart, result: CheckResult) -> SafetyItem:
    judged = result.judgement
    state, more = result.rating, ""
    if judged is not None and judged.unit == "days" and (judged.value or 0) < 0:
        state, more = "overdue", f"{counted(-round(judged.value), 'day')} over"
    several = len(part.units) > 1
    what = f"{result.unit_name}: {result.check.title}" if several else result.check.title
    return SafetyItem(what, state, more, key_of("check", result.subject), result.subject)


def _surveys(assessment: Assessment, today: date | None) -> Iterator[SafetyItem]:
    """Yield the surveys of certificates that are overdue."""
    if today is None:
        return
    for due in due_list(assessment.recorded.certificates, today):
        if due.survey is not None and due.survey.state == "overdue":
            name = f"{due.certificate.kind}, {due.survey.name} survey"
            more = f"{counted(-due.survey.left, 'day')} over"
            yield SafetyItem(name, "overdue", more, CERTIFICATES)


def bad_without_finding(assessment: Assessment) -> list[CheckResult]:
    """Return the poor and failed checks on which nobody made a finding.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    list of CheckResult
        The failed ones first.
    """
    named = {(one.system, one.unit, one.check) for one in assessment.findings if one.check}
    # A finding on the unit as a whole may be about any of its checks.
    whole = {(one.system, one.unit) for one in assessment.findings if not one.check}
    found = [
        result
        for part in assessment.systems
        for result in all_results(part)
        if result.applicable
        and result.bad
        and (part.system.id, result.unit, result.check.title) not in named
        and (part.system.id, result.unit) not in whole
    ]
    return sorted(found, key=lambda result: result.rating != "failed")
