"""The condition report: an assessment in, a PDF out. The sections are in the sibling modules; this one puts them in order and writes the file whole."""

from collections.abc import Callable, Sequence
from pathlib import Path

from reportlab.platypus import Flowable, PageBreak

from inspector.assess.shapes import Assessment
from inspector.checklists import Caution
from inspector.conversion.chapters import Chapter
from inspector.errors import InspectorError
from inspector.report import back, front
from inspector.report.conversion import conversion_sections
from inspector.report.front import Issue, vessel_name
from inspector.report.pages import Report, whole_file
from inspector.report.systems import not_looked_at, system_section
from inspector.report.theme import clean, page_of, plain, use_fonts
from inspector.report.wording import looked_at

_GROUP = 4


class UnknownUnits(InspectorError):
    """The reader's units are neither SI nor US. Attribute: ``units``."""


def build(assessment: Assessment, out: Path, *, photo_file: Callable[[str], Path | None], cautions: dict[str, Caution], paper: str = "a4",
          units: str = "si", made_at: str, revision: str, digest: str, chapters: Sequence[Chapter] = (), whole: bool = True) -> None:
    """Write the condition report of an assessment as a PDF.

    photo_file: digest -> path of the report copy (JPEG), None where it is not here. paper: "a4" or "letter". units: "si" or "us"; the typed values stay beside.
    chapters: what the conversion does, as computed from the same record. whole: False leaves out every single reading and rating, the list of what was
    not seen, sources and register: verdicts, reasons, findings, photos and the conversion stay.
    made_at, revision, digest: as printed on cover and foot; the same input gives the same bytes. `out` is replaced only by a whole file.
    Raises UnknownPaper and UnknownUnits.
    """
    page = page_of(paper)
    if units not in ("si", "us"):
        raise UnknownUnits(f"The units '{units}' are not known: they are 'si' or 'us'.", units=units)
    use_fonts()
    issue = Issue(page, units, plain(made_at, 60), plain(revision, 40), plain(digest, 128), back.cites(assessment), whole)
    name = vessel_name(assessment)
    with whole_file(out) as part:
        report = Report(part, page, head=f"Condition report · {name}", mark=_mark(issue),
                        author=clean(assessment.inspection.get("attending", ""), 200) or "not named",
                        title=clean(f"Condition report: {clean(assessment.vessel.get('name', '')) or name}", 200), subject=front.KIND,
                        keywords=["condition report", issue.revision or "draft", issue.digest], creator="inspector")
        report.typeset(_story(assessment, issue, photo_file, cautions, chapters))


def _story(assessment: Assessment, issue: Issue, photo_file: Callable[[str], Path | None], cautions: dict[str, Caution],
           chapters: Sequence[Chapter]) -> list[Flowable]:
    story = front.cover(assessment, issue) + front.summary(assessment, issue) + front.contents_page()
    story += front.vessel_and_brief(assessment, issue) + front.scope_and_limits(issue) + [PageBreak()]
    for one in assessment.systems:
        if looked_at(one, assessment):
            story += system_section(one, assessment, issue, photo_file)
    story += not_looked_at(assessment, issue)
    story += (back.not_seen(assessment, issue) if issue.whole else []) + back.elsewhere(assessment, issue, photo_file) + back.work_lines(assessment, issue)
    story += conversion_sections(chapters, issue) + back.rules_used(assessment, issue)
    if issue.whole:
        story += back.photo_register(assessment, issue) + back.sources(assessment, issue)
    story += back.cautions_section(assessment, issue, cautions)
    return story + back.signatures(assessment, issue)


def _mark(issue: Issue) -> str:
    """Revision and the first signs of the digest, in groups that the eye can compare."""
    short = issue.digest[: 2 * _GROUP]
    groups = " ".join(short[at : at + _GROUP] for at in range(0, len(short), _GROUP))
    return f"{issue.named} · {groups}" if groups else issue.named
