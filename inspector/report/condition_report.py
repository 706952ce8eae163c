"""The condition report: an assessment in, a PDF out. The sections are in the sibling modules."""

import tempfile
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from reportlab.platypus import Flowable

from inspector.assess.model import Assessment
from inspector.checklists.model import Caution
from inspector.conversion.core.chapter import Chapter
from inspector.conversion.core.particulars import Rows
from inspector.report.client import client_summary as client
from inspector.report.client.all_in_cost import AllIn
from inspector.report.client.safety_items import safety_items
from inspector.report.conversion_section import conversion_sections
from inspector.report.document import Report, whole_file
from inspector.report.issue import Issue, findings_by_check, vessel_name
from inspector.report.printed_pictures import PrintShop
from inspector.report.sections import back_matter as back
from inspector.report.sections import front_matter as front
from inspector.report.sections import rules_and_sources as rules
from inspector.report.sections.changes_section import Changes, changes_section
from inspector.report.sections.findings_section import findings_section
from inspector.report.sections.scope_and_limits import scope_and_limits
from inspector.report.sections.system_section import not_looked_at, system_section
from inspector.report.sections.typed_particulars import typed_particulars
from inspector.report.sections.work_lines_section import work_lines
from inspector.report.theme import clean, page_of, plain, use_fonts
from inspector.report.wording import looked_at
from inspector.values.errors import InspectorError
from inspector.values.vocabulary import UNIT_SYSTEMS

# The first signs of the digest are printed in groups that the eye can compare.
_GROUP = 4
_GROUPS_SHOWN = 2
# The report whole, without every reading, or its first two pages alone.
WHOLE, SHORT, SUMMARY = EXTENTS = ("whole", "short", "summary")


class UnknownUnits(InspectorError):
    """The reader's units are neither SI nor US. Attribute: ``units``."""


class UnknownExtent(InspectorError):
    """The extent is none of EXTENTS. Attribute: ``extent``."""


def build(
    assessment: Assessment,
    out: Path,
    *,
    photo_file: Callable[[str], Path | None],
    cautions: Mapping[str, Caution],
    paper: str = "a4",
    units: str = "si",
    made_at: str,
    revision: str,
    digest: str,
    chapters: Sequence[Chapter] = (),
    cost: AllIn | None = None,
    tables: Mapping[str, Rows] | None = None,
    extent: str = WHOLE,
    signed_by: str = "",
    changes: Changes | None = None,
) -> None:
    """Write the condition report of an assessment as a PDF.

    Parameters
    ----------
    assessment : Assessment
    out : Path
        Replaced only by a whole file.
    photo_file : callable
        Digest -> path of the report's copy (JPEG), None where it is not here.
    cautions : mapping of str to Caution
        Every caution by its id.
    paper : str
        "a4" or "letter".
    units : str
        "si" or "us": the reader's units.
    made_at, revision, digest : str
        As printed on the first pages and the foot; the same input gives the same bytes.
    chapters : sequence of Chapter
        The conversion, calculated from the same record.
    cost : AllIn, optional
        What she costs until she reaches the brief.
    tables : mapping of str to Rows, optional
        The particulars that the chapters are calculated from.
    extent : str
        "whole"; "short" without every single reading and rating, sources and most photos;
        "summary", the first two pages of the whole report with its page numbers.

    signed_by : str
        Name and capacity of who signed this revision; "" for a draft.
    changes : Changes, optional
        What changed since the revision before; None where there is none.

    Raises
    ------
    UnknownPaper, UnknownUnits, UnknownExtent
    OSError
        The file cannot be written.
    """
    page = page_of(paper)
    # Before the first page: a report half in other units must never be begun.
    if units not in UNIT_SYSTEMS:
        sentence = f"The units '{units}' are not known: they are 'si' or 'us'."
        raise UnknownUnits(sentence, units=units)
    if extent not in EXTENTS:
        sentence = f"The extent '{extent}' is not known: it is 'whole', 'short' or 'summary'."
        raise UnknownExtent(sentence, extent=extent)
    # Before anything is measured: a text is cut and broken by the widths of these letters.
    use_fonts()
    decision = client.Decision(chapters, cost or AllIn(), safety_items(assessment), tables or {})
    with tempfile.TemporaryDirectory() as folder, whole_file(out) as part:
        issue = Issue(
            page,
            units,
            plain(made_at, 60),
            plain(revision, 40),
            plain(digest, 128),
            rules.cites(assessment),
            extent != SHORT,
            findings_by_check(assessment),
            PrintShop(photo_file, Path(folder)),
            plain(signed_by, 200),
        )
        how = f"{paper} {units} {extent}"
        report = _document(assessment, issue, part, how)
        report.typeset(_story(assessment, issue, cautions, decision, changes))
        if extent == SUMMARY:
            # Its numbers are those of the report that it is the beginning of.
            alone = _document(assessment, issue, part, how, of_whole=report.places)
            alone.typeset(client.client_summary(assessment, issue, decision))


def _document(
    assessment: Assessment,
    issue: Issue,
    out: Path,
    how: str,
    of_whole: Mapping[str, int] | None = None,
) -> Report:
    """The empty document with its running head, foot and particulars.

    ``how`` says in which paper, units and extent, so that the same file can be made again.
    """
    name = vessel_name(assessment)
    # A PDF viewer shows the title in letters of its own, so none is marked as lacking.
    in_title = clean(assessment.vessel.get("name", "")) or name
    surveyors = ", ".join(client.surveyors_of(assessment))
    return Report(
        out,
        issue.page,
        head=f"Condition report · {name}",
        mark=_mark(issue),
        of_whole=of_whole,
        author=clean(surveyors, 200) or "not named",
        title=clean(f"Condition report: {in_title}", 200),
        subject=client.KIND,
        keywords=["condition report", issue.revision or "draft", issue.digest, how],
        creator="inspector",
    )


def _story(
    assessment: Assessment,
    issue: Issue,
    cautions: Mapping[str, Caution],
    decision: client.Decision,
    changes: Changes | None,
) -> list[Flowable]:
    """All sections in their order."""
    story = [
        *client.client_summary(assessment, issue, decision),
        *front.contents_page(),
        *front.vessel_and_brief(assessment, issue),
        *findings_section(assessment, issue),
        *back.safety_section(assessment, issue, decision.safety),
        *scope_and_limits(issue),
    ]
    # In the order of the checklists, in which the surveyor walked.
    for part in assessment.systems:
        if looked_at(part, assessment):
            story += system_section(part, assessment, issue)
    # Systems without any record take a line each, so that they do not bury what was seen.
    story += not_looked_at(assessment, issue)
    story += back.not_seen(assessment, issue)
    story += back.elsewhere(assessment, issue) if issue.whole else []
    story += work_lines(assessment, issue)
    story += conversion_sections(decision.chapters, issue)
    if issue.whole:
        story += typed_particulars(decision.tables, issue)
        story += rules.rules_used(assessment, issue)
        story += rules.sources(assessment, issue)
        story += back.cautions_section(assessment, issue, cautions)
    story += changes_section(changes, issue) if changes else []
    return [*story, *back.signatures(assessment, issue)]


def _mark(issue: Issue) -> str:
    """Revision and the first signs of the digest."""
    shown = issue.digest[: _GROUPS_SHOWN * _GROUP]
    groups = " ".join(shown[at : at + _GROUP] for at in range(0, len(shown), _GROUP))
    return f"{issue.named} · {groups}" if groups else issue.named
