"""The back of the report: safety, what was not seen, other photos, cautions, signatures."""

from collections.abc import Mapping, Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment, SystemPart
from inspector.checklists.model import Caution
from inspector.report.client.client_summary import surveyors_of
from inspector.report.client.safety_items import SafetyItem, bad_without_finding
from inspector.report.document import heading, section
from inspector.report.issue import Issue
from inspector.report.page_references import ReferringText, referring
from inspector.report.sections.findings_section import photos_in_findings
from inspector.report.sections.photo_pages import photo_pages, photos_of
from inspector.report.tables import PAGE, Cell, Run, markup, rows_table
from inspector.report.theme import STYLES, plain, txt
from inspector.report.wording import all_results, unseen_reason, was_not_seen
from inspector.values.text import capital
from inspector.values.vocabulary import SIGNAL_WORDS

# Poor or failed checks without a finding that are named one by one.
_MOST_NAMED = 24


def safety_section(
    assessment: Assessment, issue: Issue, items: Sequence[SafetyItem]
) -> list[Flowable]:
    """Return all that is failed or overdue of safety, and what is bad and has no finding.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue
    items : sequence of SafetyItem

    Returns
    -------
    list of Flowable
    """
    lead = "Read from checks and certificates, whatever was written as a finding."
    if not items:
        lead = "Nothing that was seen is failed or overdue."
    rows = [_safety_row(item, issue) for item in items]
    widths = (24 * mm, issue.page.column - (24 + 34 + 40) * mm, 34 * mm, 40 * mm)
    heads = ("state", "what", "how far", "finding")
    table = [rows_table(heads, rows, widths, tight=True)] if rows else []
    without = _without_finding(assessment)
    title = "Safety: failed or overdue"
    return section(title, "safety", lead, *table, *without)


def _without_finding(assessment: Assessment) -> list[Flowable]:
    """The poor and failed checks that no finding is about, by system: each is told in full there.

    A handful is named; of a tired vessel's hundreds a list would bury the failed ones.
    """
    left = bad_without_finding(assessment)
    if not left:
        return []
    runs: list[Run] = [("Poor or failed, without a finding:", "b")]
    if len(left) <= _MOST_NAMED:
        named = [f"{each.unit_name}: {each.check.title} ({each.rating})" for each in left]
        runs.append((f"{'; '.join(named)}.", ""))
    else:
        for part in assessment.systems:
            own = [each for each in left if each.subject.split("/")[1] == part.system.id]
            if own:
                failed = sum(each.rating == "failed" for each in own)
                runs.append((f"{part.system.name}: {failed} failed, {len(own) - failed} poor", ""))
                runs.append((f"system-{part.system.id}", PAGE))
                runs.append(("·", "soft"))
    return [referring(ReferringText, markup(runs), STYLES["line"])]


def _safety_row(item: SafetyItem, issue: Issue) -> list[Cell]:
    findings = issue.findings.get(item.subject, ())
    runs = []
    for finding in findings:
        runs += [(str(finding.number), ""), (f"finding-{finding.number}", PAGE)]
    tone = "" if item.state == "poor" else "b"
    return [
        [(item.state, tone)],
        [(item.what, ""), (item.key, PAGE)],
        item.more,
        runs or [("none", "soft")],
    ]


def not_seen(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return every check without a rating by system and reason, and what it could still turn.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    parts = [part for part in assessment.systems if any(map(was_not_seen, all_results(part)))]
    if not parts:
        nothing = "Nothing was left unseen among the checks of this inspection."
        return section("What was not seen", "unseen", nothing)
    lead = (
        "Each of these is unknown, not good. It widens the span of the condition; another visit, "
        "a docking, a run or the ship's papers may settle it."
    )
    rows = [_unseen_row(part, issue) for part in parts]
    widths = (30 * mm, issue.page.column - 30 * mm)
    table = rows_table(("system", "why, and which checks"), rows, widths, tight=True)
    return section("What was not seen", "unseen", lead, table)


def _unseen_row(part: SystemPart, issue: Issue) -> list[Cell]:
    """Return a system with its unseen checks by reason; like units are named together."""
    found: dict[str, dict[str, list[CheckResult]]] = {}
    for result in all_results(part):
        if was_not_seen(result):
            of_reason = found.setdefault(unseen_reason(result), {})
            of_reason.setdefault(result.check.title, []).append(result)
    runs = []
    for reason, checks in found.items():
        said = [_unseen_check(title, results, part) for title, results in checks.items()]
        runs.append((f"{capital(reason)}, {sum(map(len, checks.values()))}:", "b"))
        # The short report counts them; which they are is for the office.
        runs.append((f"{'; '.join(said)}." if issue.whole else "", ""))
    return [part.system.name, runs]


def _unseen_check(title: str, results: Sequence[CheckResult], part: SystemPart) -> str:
    notes = [result.note.strip().rstrip(".") for result in results if result.note.strip()]
    said = "; ".join(dict.fromkeys(notes))
    if len(part.units) < 2:
        return f"{title} ({said})" if said else title
    asked = sum(result.check.title == title for result in all_results(part))
    names = "all" if len(results) == asked > 1 else ", ".join(one.unit_name for one in results)
    return f"{title} ({names}: {said})" if said else f"{title} ({names})"


def elsewhere(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return the photos that belong to no system of this report.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
        Empty where there are none.
    """
    filed = {photo.sha for part in assessment.systems for photo in photos_of(part, assessment)}
    filed |= photos_in_findings(assessment, issue)
    photos = [photo for photo in assessment.photos if photo.sha not in filed]
    if not photos:
        return []
    title = heading("Photos of no system", "other")
    return [title, *photo_pages(photos, issue, "other")]


def cautions_section(
    assessment: Assessment, issue: Issue, cautions: Mapping[str, Caution]
) -> list[Flowable]:
    """Return the cautions of the systems in this report, the most serious first.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue
    cautions : mapping of str to Caution
        Every caution by its id.

    Returns
    -------
    list of Flowable
    """
    lead = (
        "For whoever goes aboard with this report in hand. Nothing here says that an entry, a "
        "live panel or a vessel is fit to be approached; permit, licence and law decide."
    )
    named: set[str] = set()
    for part in assessment.systems:
        named.update(part.system.cautions)
        named.update(name for check in part.system.checks for name in check.cautions)
    used = sorted((cautions[name] for name in named if name in cautions), key=_by_seriousness)
    if not used:
        return section("Cautions", "cautions", lead)
    table = rows_table(
        ("signal", "what hurts, what to do instead, who decides"),
        [_caution_row(caution) for caution in used],
        (20 * mm, issue.page.column - 20 * mm),
        fine=True,
    )
    return section("Cautions", "cautions", lead, table)


def _by_seriousness(caution: Caution) -> tuple[int, str]:
    """Return the key that sorts cautions, danger first."""
    # Appended, so that a checklist's own signal word is found as well, and comes last.
    signals = (*SIGNAL_WORDS, caution.signal)
    return signals.index(caution.signal), caution.id


def _caution_row(caution: Caution) -> list[Cell]:
    """Return the signal word beside what hurts, what to do instead and who decides."""
    tone = "now" if caution.signal == SIGNAL_WORDS[0] else "b"
    return [
        [(caution.signal.upper(), tone)],
        [(caution.hurts, ""), (caution.instead, "b"), (caution.decides, "soft")],
    ]


def signatures(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return room to sign, beside what is signed: revision and digest.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
        Kept together on one page.
    """
    width = issue.page.column
    lead = (
        f"Signed for {issue.named} of the record with digest {issue.digest}, made {issue.made_at}. "
        "A change of the record is a new revision."
    )
    if issue.signed_by:
        lead = f"Signed in the record by {issue.signed_by}. {lead}"
    body = [heading("Signatures", "signatures"), Paragraph(txt(lead), STYLES["body"])]
    surveyors = surveyors_of(assessment)
    if surveyors:
        body.append(Paragraph(txt(f"Surveyors: {', '.join(surveyors)}."), STYLES["body"]))
    present = plain(assessment.inspection.get("attending", ""), 400)
    if present:
        body.append(Paragraph(txt(f"Attending: {present}"), STYLES["body"]))
    signing: list[list[Cell]] = [[name, "surveyor", "", Spacer(1, 10 * mm)] for name in surveyors]
    signing += [["", "", "", Spacer(1, 10 * mm)] for _ in range(max(1, 3 - len(surveyors)))]
    body.append(
        rows_table(
            ("name", "capacity", "date", "signature"),
            signing,
            (width * 0.28, width * 0.24, width * 0.16, width * 0.32),
        )
    )
    # A signature alone on a page could be put below any text.
    return [KeepTogether(body)]
