"""What identifies one issue of the report, how it is to be read, and what its parts refer to."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from inspector.assess.model import Assessment
from inspector.assess.registers import Finding
from inspector.criteria.core.source import Source
from inspector.report.theme import Page, plain
from inspector.report.wording import all_results


@dataclass(frozen=True)
class Issue:
    """What identifies this issue of the report, and how it is to be read.

    Parameters
    ----------
    page : Page
        The paper.
    units : str
        "si" or "us".
    made_at, revision, digest : str
        As printed on the first pages and the foot.
    cites : mapping of (str, Source) to int
        Criterion and source -> the number of its publication in the list of sources.
    whole : bool
        False for the short report, without every reading and rating.
    findings : mapping of str to sequence of Finding
        Subject of a check -> the findings made on it.
    pictures : PrintShop or None
        Makes the printed pictures; None where none are printed.
    signed_by : str
        Name and capacity of who signed this revision; "" for a draft.
    """

    page: Page
    units: str
    made_at: str
    revision: str
    digest: str
    cites: Mapping[tuple[str, Source], int] = field(default_factory=dict)
    whole: bool = True
    findings: Mapping[str, Sequence[Finding]] = field(default_factory=dict)
    pictures: Any = None
    signed_by: str = ""

    @property
    def named(self) -> str:
        """The revision in words: "revision 1", or "draft"."""
        # A revision is typed freely: "2" needs the word before it, "final" does not.
        if self.revision[:1].isdigit():
            return f"revision {self.revision}"
        # A report without a revision was never issued, and says so on each page.
        return self.revision or "draft"


def findings_by_check(assessment: Assessment) -> dict[str, list[Finding]]:
    """Return the findings by the check on which they were made.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    dict of str to list of Finding
        By the subject of the check.
    """
    by_place: dict[tuple[str, str, str], list[Finding]] = {}
    for finding in assessment.findings:
        if finding.check:
            place = (finding.system, finding.unit, finding.check)
            by_place.setdefault(place, []).append(finding)
    found = {}
    for part in assessment.systems:
        for result in all_results(part):
            place = (part.system.id, result.unit, result.check.title)
            if place in by_place:
                found[result.subject] = by_place[place]
    return found


def checks_of_findings(issue: Issue) -> dict[int, str]:
    """Return the subject of the check on which each finding was made.

    Parameters
    ----------
    issue : Issue

    Returns
    -------
    dict of int to str
        Number of the finding -> subject.
    """
    return {
        finding.number: subject
        for subject, findings in issue.findings.items()
        for finding in findings
    }


def vessel_name(assessment: Assessment) -> str:
    """Return the vessel's name, or words that say that there is none.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    str
    """
    return plain(assessment.vessel.get("name", "")) or "Vessel not named"
